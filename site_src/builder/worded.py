"""The words of each caution, read out of the code of its question."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

import calc

#: What makes a caution in code: the class itself, and what a question makes one from.
_MAKERS = ("Caution", "Reason", "Stop", "say")
_QUESTIONS = Path(calc.__file__).parent / "questions"


@cache
def worded(folder: Path = _QUESTIONS) -> Mapping[tuple[str, str], tuple[str, ...]]:
    """The ways in which each caution is worded, by its question and its name; a figure or a name in it is three dots.

    Parameters
    ----------
    folder : of the questions' modules. A question's own parts stand in the module or the package that it imports by the name ``_...``;
        a part whose fields alone it borrows is another question's.
    """
    found: dict[tuple[str, str], list[str]] = {}
    for path in sorted(folder.glob("[!_]*.py")):
        parts = re.findall(r"calc\.questions\.(_\w+)(?!\w|\.fields)[\w.]* import", path.read_text(encoding="utf-8"))
        files = [path, *(one for part in dict.fromkeys(parts) for one in _files(folder, part))]
        for id, text in (told for one in files for told in _cautions(ast.parse(one.read_text(encoding="utf-8")))):
            ways = found.setdefault((path.stem.replace("_", "-"), id), [])
            if text and text not in ways:
                ways.append(text)
    return {key: tuple(ways) for key, ways in found.items()}


def _files(folder: Path, part: str) -> list[Path]:
    return sorted((folder / part).glob("*.py")) if (folder / part).is_dir() else [folder / f"{part}.py"]


def _cautions(tree: ast.Module) -> Iterator[tuple[str, str]]:
    """Name and words of each caution in a module."""
    for function in (node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)):
        for call in (node for node in ast.walk(function) if isinstance(node, ast.Call)):
            if isinstance(call.func, ast.Name) and call.func.id in _MAKERS and len(call.args) >= 2:
                names = (call.args[0].body, call.args[0].orelse) if isinstance(call.args[0], ast.IfExp) else (call.args[0],)
                for name in names:
                    if isinstance(name, ast.Constant) and isinstance(name.value, str):
                        yield name.value, _told(call.args[1:], function)


def _told(arguments: list[ast.expr], function: ast.FunctionDef) -> str:
    """The longest of a call's texts: the others are a tone or a short label."""
    return max((text for one in arguments if " " in (text := _words(one, function))), key=len, default="")


def _words(node: ast.expr, function: ast.FunctionDef) -> str:
    if isinstance(node, ast.Constant):
        return node.value if isinstance(node.value, str) else ""
    if isinstance(node, ast.JoinedStr):
        return "".join(str(part.value) if isinstance(part, ast.Constant) else "..." for part in node.values)
    if isinstance(node, ast.IfExp):
        return " / ".join(filter(None, (_words(node.body, function), _words(node.orelse, function))))
    if isinstance(node, ast.BinOp):
        return f"{_words(node.left, function)}{_words(node.right, function)}"
    if isinstance(node, ast.Name):
        given = [one for one in ast.walk(function) if isinstance(one, ast.Assign) and one.lineno <= node.lineno
                 and any(isinstance(target, ast.Name) and target.id == node.id for target in one.targets)]  # fmt: skip
        nearest = max(given, key=lambda one: one.lineno, default=None)
        return _words(nearest.value, function) if nearest is not None else ""
    return ""
