"""Which way things point in calc: floor 3 uses floors 2 and 1, floor 2 uses floor 1, never the other way."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

import calc

ROOT = Path(calc.__file__).parent
FILES = sorted(path.relative_to(ROOT.parent) for path in ROOT.rglob("*.py"))
ROOMS = ("casting", "turning", "safety")
#: The doors may know everything; they are known by nothing.
DOORS = ("desk", "__main__")


def _floor(name: str) -> int:
    """1 for what stands in calc itself, 2 for the rooms of the trade, 3 for questions and runs, 4 for the doors."""
    room = name.split(".")[1] if "." in name else ""
    if room in DOORS:
        return 4
    return 3 if room in ("questions", "runs") else 2 if room in ROOMS else 1


def _imports(path: Path) -> set[str]:
    """Names that a file imports, also inside functions; ``from calc import x`` counts as calc.x."""
    found: set[str] = set()
    for node in ast.walk(ast.parse((ROOT.parent / path).read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {name.name for name in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {f"{node.module}.{name.name}" for name in node.names} if node.module == "calc" else {node.module}
    return found


@pytest.mark.parametrize("path", FILES, ids=str)
def test_nothing_points_up(path: Path) -> None:
    floor = _floor(".".join(path.with_suffix("").parts))
    above = [name for name in _imports(path) if name.split(".")[0] == "calc" and _floor(name) > floor]
    assert not above


def test_pint_has_one_place() -> None:
    assert [str(path) for path in FILES if any(name.split(".")[0] == "pint" for name in _imports(path))] == [str(Path("calc", "quantity", "units.py"))]
