"""Run by Pyodide on Node: pytest on the folders named, in the repository mounted at /repository.

pytest and hypothesis come from their own wheels; pint from the engine that the browser gets, searched last.
"""

from __future__ import annotations

import os
import sys

import pytest

os.chdir("/repository")
sys.path.insert(0, "/repository")
sys.path.append("/engine/python.zip")
sys.dont_write_bytecode = True
os.environ["HYPOTHESIS_STORAGE_DIRECTORY"] = "/home/pyodide/hypothesis"
settings = ("addopts=--strict-markers --import-mode=importlib", "cache_dir=/home/pyodide/pytest")
sys.exit(int(pytest.main([*sys.argv[1:], "-q", *(part for setting in settings for part in ("-o", setting))])))
