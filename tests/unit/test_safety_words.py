"""The words and facts behind the safety pages: sourced, and never a promise."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from calc import desk, sources
from calc.questions import before_a_pour, before_the_lathe, pot_or_vacuum
from calc.questions._before_a_pour.findings import findings
from calc.questions._pot_or_vacuum import gates
from calc.safety import reading, wording
from calc.safety.checklists import all_checklists
from calc.safety.facts import all_facts
from calc.safety.gates import pour

EVERYTHING = reading.everything()
PROMISE = re.compile(r"\b(safe|safely|ok|okay|approved|guaranteed?)\b", re.IGNORECASE)


def texts(value: Any) -> list[str]:
    if isinstance(value, str):
        return [value]
    if isinstance(value, dict):
        return [text for part in value.values() for text in texts(part)]
    if isinstance(value, (list, tuple)):
        return [text for part in value for text in texts(part)]
    return []


@pytest.mark.parametrize("name", ["checklists", "cards", "gates", "respirators", "hazards", "safety_facts"])
def test_no_text_promises(name: str) -> None:
    assert not [text for text in texts(sources.document(name)) if PROMISE.search(text)]


def test_no_answer_promises_whatever_is_given() -> None:
    for inputs in ({}, {"depth": "40", "sheet_depth": "50"}, {"depth": "60", "sheet_depth": "50"}):
        answer = desk.answer("before-a-pour", inputs)
        assert not PROMISE.search(json.dumps(answer))


def test_every_item_card_and_table_row_has_a_fact_with_a_source_or_says_common_practice() -> None:
    rows = [item for one in EVERYTHING["checklists"].values() for item in one["items"]] + EVERYTHING["cards"]
    rows += list(EVERYTHING["respirators"]["task"] + EVERYTHING["respirators"]["region"] + EVERYTHING["respirators"]["step"])
    for row in rows:
        assert row["facts"]
        assert all(fact["source"] and fact["text"] for fact in row["facts"])


def test_every_fact_says_whether_it_was_read_and_practice_never_claims_to_be() -> None:
    for fact in all_facts().values():
        assert fact.seen in ("yes", "quoted", "no", "-")
        assert (fact.seen == "-") == (fact.source in ("practice", "judgement", "arithmetic"))


def test_no_fact_stands_unused() -> None:
    used = {fact for one in all_checklists().values() for item in one.items for fact in item.facts}
    for name in ("cards", "respirators", "gates", "hazards"):
        used |= set(re.findall(r"'(\d+\.\d+[a-z]?)'", str(sources.document(name))))
    assert not set(all_facts()) - used


def test_every_gate_of_an_item_has_words_for_all_its_parts() -> None:
    for finding in (
        *findings(_nothing()).values(),
        *before_the_lathe.findings(before_the_lathe.QUESTION.parse({}, "metric", {})[0]).values(),
        *gates.findings(pot_or_vacuum.QUESTION.parse({}, "metric", {}, gaps=True)[0]).values(),
    ):
        entry = wording.gate_words(finding.gate)
        assert entry["facts"] and entry["from"] and sources.source(entry["basis"])
        for part in finding.parts:
            assert entry["parts"][part.id]["both"]


def test_no_emergency_number_is_given() -> None:
    cards = " ".join(texts(EVERYTHING["cards"]))
    assert not re.search(r"\b(911|112|999|000|1-?800)\b", cards)
    assert "{number}" in cards and EVERYTHING["no_number"] == "your local emergency number"


def test_a_card_has_its_steps_in_the_order_that_hurts_least() -> None:
    steps = {card["id"]: card["steps"] for card in EVERYTHING["cards"]}

    def place(card: str, words: str) -> int:
        return next(number for number, step in enumerate(steps[card]) if words in step)

    assert place("e1a", "Touch") < place("e1a", "gloves") < place("e1a", "tip")  # through a heavy glove nobody feels the heat
    assert "leave it" in steps["e1a"][place("e1a", "Touch")] and "Still runny" in steps["e1a"][place("e1a", "tip")]
    assert place("e3", "20 minutes") < place("e3", "soap") < place("e3", "{number}")
    assert place("e2", "Water now") == place("e7", "Cool it") == place("e5", "Leave") == 0


def test_a_batch_that_takes_too_long_is_never_told_to_be_mixed_for_less() -> None:
    said = wording.say(pour.working_time(3000, 3000, 0.6), "metric")
    assert "never cut the mixing short" in said.action and "takes longest" not in said.action


def test_the_lists_use_the_words_of_the_trade() -> None:
    for text in texts(EVERYTHING):
        assert not re.search(r"\b(lift|shake|insert)\b", text.lower()), text


def _nothing() -> Any:
    return before_a_pour.QUESTION.parse({}, "metric", {})[0]
