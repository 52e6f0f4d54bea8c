"""Run by Pyodide on Node: pytest on the folders named, in the repository mounted at /repository.

pytest and hypothesis come from their own wheels; pint from the engine that the browser gets, searched last. A property that
fails here is not made smaller here, which takes very long: CPython does that.
"""

from __future__ import annotations

import os
import sys

import pytest
from hypothesis import Phase, settings

os.chdir("/repository")
sys.path.insert(0, "/repository")
sys.path.append("/engine/python.zip")
sys.dont_write_bytecode = True
os.environ["HYPOTHESIS_STORAGE_DIRECTORY"] = "/home/pyodide/hypothesis"
settings.register_profile("again", phases=(Phase.explicit, Phase.generate), deadline=None)
settings.load_profile("again")
options = ("addopts=--strict-markers --import-mode=importlib", "cache_dir=/home/pyodide/pytest")
sys.exit(int(pytest.main([*sys.argv[1:], "-q", *(part for option in options for part in ("-o", option))])))
