"""Every public name of calc says what it is; arithmetic says its units, its result, an example and its source; examples run."""

from __future__ import annotations

import ast
import doctest
import importlib
import inspect
import pkgutil
import re
import textwrap
from collections.abc import Callable, Iterator
from types import FunctionType, ModuleType
from typing import Any

import pytest
from _pytest.doctest import _get_checker, _get_flag_lookup

import calc

MODULES = [
    importlib.import_module(found.name) for found in pkgutil.walk_packages(calc.__path__, "calc.") if not found.name.endswith("__main__")
]
#: Where trade figures are worked out.
ARITHMETIC = ("calc.casting.", "calc.turning.", "calc.safety.gates")
SECTIONS = ("Parameters", "Returns", "Raises", "Notes", "Examples", "References")


def _own(module: ModuleType) -> Iterator[tuple[str, Any]]:
    """Public functions and classes that the module itself defines."""
    for name, thing in vars(module).items():
        if not name.startswith("_") and getattr(thing, "__module__", "") == module.__name__ and (inspect.isclass(thing) or callable(thing)):
            yield name, thing


def _functions() -> list[tuple[str, Callable[..., Any]]]:
    """The public functions of the modules of arithmetic."""
    found = []
    for module in MODULES:
        if module.__name__.startswith(ARITHMETIC):
            found += [(f"{module.__name__}.{name}", inspect.unwrap(thing)) for name, thing in _own(module) if not inspect.isclass(thing)]
    return found


def _sections(doc: str) -> dict[str, str]:
    """Title -> text of the sections of a docstring; the words before the first one under an empty title."""
    parts = re.split(r"^(\w+)\n-{3,}\n", doc + "\n", flags=re.MULTILINE)
    return {"": parts[0], **dict(zip(parts[1::2], parts[2::2], strict=True))}


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.__name__)
def test_every_public_name_says_what_it_is(module: ModuleType) -> None:
    assert module.__doc__
    silent = []
    for name, thing in _own(module):
        silent += [] if inspect.getdoc(thing) else [name]
        if inspect.isclass(thing) and "._" not in module.__name__:  # a part that only its own question or run reads
            own = {part: member for part, member in vars(thing).items() if isinstance(member, (FunctionType, property)) and not part.startswith("_")}
            methods = [part for part, member in own.items() if getattr(member, "__name__", part) == part]  # not a lambda that is a default
            silent += [f"{name}.{part}" for part in methods if not inspect.getdoc(getattr(thing, part))]
    assert not silent


@pytest.mark.parametrize("function", [function for _, function in _functions()], ids=[name for name, _ in _functions()])
def test_arithmetic_says_its_units_its_result_an_example_and_its_source(function: Callable[..., Any]) -> None:
    sections = _sections(inspect.getdoc(function) or "")
    order = [title for title in sections if title]
    assert order == [title for title in SECTIONS if title in order], f"sections in another order, or unknown: {order}"
    told = {name for line in re.findall(r"^(\w+(?:, \w+)*) :", sections.get("Parameters", ""), re.MULTILINE) for name in line.split(", ")}
    assert told == set(inspect.signature(function).parameters)
    assert sections.get("Returns") or inspect.signature(function).return_annotation == "None"
    assert ">>> " in sections.get("Examples", "")
    assert sections.get("References", "").strip()
    raises = any(isinstance(node, ast.Raise) for node in ast.walk(ast.parse(textwrap.dedent(inspect.getsource(function)))))
    assert "Raises" in sections or not raises


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.__name__)
def test_examples_are_true(module: ModuleType) -> None:
    """As pytest runs them: a number is compared to the digits shown."""
    flags = _get_flag_lookup()["NUMBER"] | doctest.NORMALIZE_WHITESPACE
    runner = doctest.DocTestRunner(checker=_get_checker(), optionflags=flags)
    told: list[str] = []
    for example in doctest.DocTestFinder(exclude_empty=True).find(module):
        runner.run(example, out=told.append)
    assert not told, "".join(told)


def test_there_are_examples() -> None:
    found = [example for module in MODULES for example in doctest.DocTestFinder().find(module) if example.examples]
    assert len(found) > 80
