"""Settings that every kind of test shares."""

from __future__ import annotations

import sys

import pytest
from hypothesis import settings

# The same examples in every run, so that a change is judged by what it changed; what they miss is sought at random and at length:
# pytest --hypothesis-profile=long tests/property
# Python in the browser is several times slower: the same properties, on fewer examples there.
settings.register_profile("here", max_examples=30, deadline=None, derandomize=True)
settings.register_profile("browser", max_examples=10, deadline=None, derandomize=True)
settings.register_profile("long", max_examples=1000, deadline=None)
settings.load_profile("browser" if sys.platform == "emscripten" else "here")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The run inside Pyodide is waited for last of all."""
    items.sort(key=lambda item: item.path.parent.name == "pyodide")


def pytest_runtest_setup(item: pytest.Item) -> None:
    """It is one long wait on one core, so it starts beside the tests of the build, when no browser runs any more."""
    if item.path.parent.name == "build":
        for again in item.session.items:
            if again.path.parent.name == "pyodide":
                again.module.begun()  # type: ignore[attr-defined]
