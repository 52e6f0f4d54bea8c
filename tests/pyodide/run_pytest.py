"""Run by Pyodide on Node: pytest on the folders named, in the repository mounted at /repository.

pytest and hypothesis come from their own wheels; pint from the engine that the browser gets, searched last.
"""

from __future__ import annotations

import os
import sys

import pytest


class NoShrinking:
    """A property that fails here is not made smaller here, which takes very long: CPython does that."""

    @staticmethod
    def pytest_configure() -> None:
        """Before any test is read."""
        from hypothesis import Phase, settings

        settings.register_profile("again", phases=(Phase.explicit, Phase.generate), deadline=None)
        settings.load_profile("again")


os.chdir("/repository")
sys.path.insert(0, "/repository")
sys.path.append("/engine/python.zip")
sys.dont_write_bytecode = True
os.environ["HYPOTHESIS_STORAGE_DIRECTORY"] = "/home/pyodide/hypothesis"
options = ("addopts=--strict-markers --import-mode=importlib", "cache_dir=/home/pyodide/pytest")
arguments = [*sys.argv[1:], "-q", *(part for option in options for part in ("-o", option))]
sys.exit(int(pytest.main(arguments, plugins=[NoShrinking()])))
