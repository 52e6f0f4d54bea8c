"""The worked example of DEVELOPERS.md is a whole question as it stands there."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from calc import desk
from calc.questions import Question

PAGE = Path(__file__).resolve().parents[2] / "DEVELOPERS.md"


@pytest.fixture
def example(monkeypatch: pytest.MonkeyPatch) -> Question:
    found = re.search(r"```python\n(.*?)```", PAGE.read_text(encoding="utf-8"), re.DOTALL)
    assert found
    namespace: dict[str, Any] = {}
    exec(compile(found[1], "DEVELOPERS.md", "exec"), namespace)
    question: Question = namespace["QUESTION"]
    monkeypatch.setattr(desk, "all_questions", lambda: {question.id: question})
    return question


def test_it_answers(example: Question) -> None:
    reply = desk.answer(example.id, {"across": "300"})
    # pi x 300 mm + 40 mm is 982.48 mm, and a strip is cut long rather than short
    assert (reply["headline"]["text"], reply["headline"]["unit"]) == ("983", "mm")
    assert reply["assumed"][0]["label"] == "Lap"


def test_it_asks_about_a_slip_and_has_a_table(example: Question) -> None:
    assert desk.answer(example.id, {"across": "30"})["queries"][0]["choices"][0] == {"label": "30 in", "value": "30 in"}
    assert desk.table(example.id, "imperial")["rows"][0][0] == "6"
