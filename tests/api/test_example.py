"""The worked example of DEVELOPERS.md is a whole question as it stands there, and adding it takes its one file."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from calc import desk, questions
from calc.questions import Question, all_questions

PAGE = Path(__file__).resolve().parents[2] / "DEVELOPERS.md"


@pytest.fixture
def example(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Iterator[Question]:
    """The example, found as a file among the questions; a file beside it that starts with an underscore is not."""
    found = re.search(r"```python\n(.*?)```", PAGE.read_text(encoding="utf-8"), re.DOTALL)
    assert found
    (tmp_path / "how_long_a_strip.py").write_text(found[1], encoding="utf-8")
    (tmp_path / "_how_long_a_strip.py").write_text("raise AssertionError('a part was taken for a question')", encoding="utf-8")
    monkeypatch.setattr(questions, "__path__", [*questions.__path__, str(tmp_path)])
    all_questions.cache_clear()
    yield all_questions()["how-long-a-strip"]
    monkeypatch.undo()
    sys.modules.pop("calc.questions.how_long_a_strip", None)
    all_questions.cache_clear()


def test_it_answers(example: Question) -> None:
    reply = desk.answer(example.id, {"across": "300"})
    # pi x 300 mm + 40 mm is 982.48 mm, and a strip is cut long rather than short
    assert (reply["headline"]["text"], reply["headline"]["unit"]) == ("983", "mm")
    assert reply["assumed"][0]["label"] == "Lap"


def test_it_stands_on_the_home_page_in_its_order(example: Question) -> None:
    orders = [entry["order"] for entry in desk.catalogue()]
    assert orders == sorted(orders)
    assert example.id in [entry["id"] for entry in desk.catalogue()]


def test_it_asks_about_a_slip_and_has_a_table(example: Question) -> None:
    assert desk.answer(example.id, {"across": "30"})["queries"][0]["choices"][0] == {"label": "30 in", "value": "30 in"}
    assert desk.table(example.id, "imperial")["rows"][0][0] == "6 in"
