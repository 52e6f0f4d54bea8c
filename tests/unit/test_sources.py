"""The bibliography and the tables: a row without a known source does not load."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from calc import sources

CALC = Path(sources.__file__).parent
TABLES = sorted(path.stem for path in (CALC / "data").glob("*.csv"))


@pytest.mark.parametrize("name", TABLES)
def test_every_table_loads_with_a_known_source_in_every_row(name: str) -> None:
    rows = sources.table(name)
    assert rows and all(sources.source(row["source"]) for row in rows)
    assert all(None not in row and None not in row.values() for row in rows), "a row has more or fewer cells than the head"


def test_every_document_is_described_and_says_whether_it_was_read() -> None:
    for source in sources.bibliography().values():
        assert source.title and source.note
        assert source.seen in ("yes", "quoted", "no", "-"), source.key


def test_a_row_with_an_unknown_source_does_not_load(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    sources.bibliography()  # the real one, kept
    monkeypatch.setattr(sources, "_DATA", tmp_path)
    (tmp_path / "made-up.csv").write_text("# a note\nname,value,source\nheat,1,hearsay\n", encoding="utf-8")
    with pytest.raises(LookupError, match="hearsay"):
        sources.table("made-up")


def test_a_figure_that_is_not_there_is_named() -> None:
    with pytest.raises(LookupError, match="'lucky number'"):
        sources.value("mixing", "lucky number")


@pytest.mark.parametrize("name", ["air", "cure", "fit", "make_up", "pressure", "sizes", "stand"])
def test_every_figure_told_in_si_has_a_unit_that_is_known(name: str) -> None:
    of_table = sources.in_si(name)
    assert all(of_table(row["name"]) is not None for row in sources.table(name))


def test_a_figure_in_si_comes_by_its_unit() -> None:
    assert sources.in_si("pressure")("pressure asked") == pytest.approx(344737.9, abs=0.1)  # 50 x 6894.757 Pa (NIST SP 811)
    assert sources.in_si("sizes")("leak test") == 12 * 3600 and sources.in_si("sizes")("warp") == 0.004
    assert sources.in_si("stand")("soft") == pytest.approx(323.15) and sources.in_si("stand")("soft margin") == 10
    with pytest.raises(LookupError, match="'P'"):
        sources.in_si("sanding")("torn")


def test_a_figure_of_judgement_or_practice_stands_in_a_table() -> None:
    found = []
    for path in sorted(CALC.rglob("*.py")):
        text = path.read_text(encoding="utf-8")
        lines = text.splitlines()
        for node in ast.parse(text).body:
            if isinstance(node, (ast.Assign, ast.AnnAssign)) and node.end_lineno and any(_is_number(part) for part in ast.walk(node)):
                first = node.lineno - 1
                while first and lines[first - 1].startswith("#"):
                    first -= 1
                said = " ".join(line.partition("#")[2] for line in lines[first : node.end_lineno])
                if re.search(r"judgement|practice", said):
                    found.append(f"{path.relative_to(CALC)}:{node.lineno}")
    assert not found, "a table of calc/data names the basis of each figure"


def _is_number(node: ast.AST) -> bool:
    return isinstance(node, ast.Constant) and type(node.value) in (int, float)
