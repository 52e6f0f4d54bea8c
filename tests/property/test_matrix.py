"""Every question, by its own declaration: answers whole for any input it accepts, and its rules hold."""

from __future__ import annotations

import json
import math
import random
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from calc import desk
from calc.fields import Choice, Field, Numbers, Quantity, Ratio, Text
from calc.quantity import SYSTEMS
from calc.questions import Question, Rule, all_questions

QUESTIONS = list(all_questions().values())
RULES = [(question, rule) for question in QUESTIONS for rule in question.rules]
#: Words that no result may use: a ceiling is never a promise.
PROMISES = ("safe", "approved", "guarantee")


def _number(field: Quantity, low: float, high: float) -> st.SearchStrategy[str]:
    return st.floats(low, high, allow_nan=False).map(lambda value: f"{value:.6f} {field.units[0]}")


def _texts(field: Field) -> st.SearchStrategy[str]:
    """Texts that the field takes, from its own declaration."""
    if isinstance(field, Choice):
        return st.sampled_from([option.value for option in field.options])
    if isinstance(field, Numbers):
        low, high = field.usual or (field.low, field.high)
        return st.lists(st.integers(math.ceil(low), math.floor(high)), min_size=1, max_size=6).map(lambda xs: " ".join(map(str, xs)))
    if isinstance(field, Quantity):
        low, high = field.usual or (field.low, field.high)
        return _number(field, low, high)
    if isinstance(field, Ratio):
        return st.integers(10, 100).map(lambda b: f"100:{b}")
    assert isinstance(field, Text)
    return st.text(max_size=10)


def _inputs(question: Question) -> st.SearchStrategy[dict[str, str]]:
    needed = {field.name: _texts(field) for field in question.fields if field.required and field.default is None and not field.when}
    rest = {field.name: _texts(field) for field in question.fields if field.name not in needed}
    return st.fixed_dictionaries(needed, optional=rest)


def _answer(question: Question, inputs: dict[str, str], units: str = "metric") -> dict[str, Any]:
    asked = {name: text for name, text in inputs.items() if text.strip()}
    reply: dict[str, Any] = json.loads(
        desk.handle(json.dumps({"call": "answer", "args": {"id": question.id, "inputs": asked, "units": units, "confirmed": asked}}))
    )
    assert reply["ok"], (reply, inputs)
    result: dict[str, Any] = reply["result"]
    return result


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.id)
@settings(suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_any_input_gets_a_whole_answer_or_errors_that_name_a_field(question: Question, data: st.DataObject) -> None:
    inputs = data.draw(_inputs(question))
    for units in SYSTEMS:
        reply = _answer(question, inputs, units)
        if reply["errors"]:
            assert all(error["message"] for error in reply["errors"])
            continue
        headline = reply["headline"]
        assert headline["text"] and headline["say"] and headline["label"]
        assert headline["tone"] in ("go", "caution", "stop")
        assert reply["working"] and reply["sources"]
        assert sum(limit["rules"] for limit in reply["limits"]) <= 1
        words = reply["text"].lower()
        assert "nan" not in words.split() and "inf" not in words.split()
        assert not [promise for promise in PROMISES if promise in words.replace("safety", "")]


def _sorted_pair(rule: Rule, question: Question, data: st.DataObject) -> tuple[str, str]:
    field = question.named(rule.field)
    if rule.order:
        first, second = sorted(data.draw(st.tuples(*[st.integers(0, len(rule.order) - 1)] * 2)))
        return rule.order[first], rule.order[second]
    assert isinstance(field, Quantity)
    low, high = field.usual or (field.low, field.high)
    first_value, second_value = sorted(data.draw(st.tuples(*[st.floats(low, high, allow_nan=False)] * 2)))
    return f"{first_value:.6f} {field.units[0]}", f"{second_value:.6f} {field.units[0]}"


@pytest.mark.parametrize("question, rule", RULES, ids=lambda part: getattr(part, "id", None) or f"{part.field}-{part.value}")
@settings(suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
@given(data=st.data())
def test_rule(question: Question, rule: Rule, data: st.DataObject) -> None:
    inputs = data.draw(_inputs(question)) | dict(rule.given)
    values = []
    for text in _sorted_pair(rule, question, data):
        reply = _answer(question, inputs | {rule.field: text})
        assume(not reply["errors"] and rule.value in reply["values"])
        si = reply["values"][rule.value]["si"]
        values.append(rule.refusal if si is None else si)
    before, after = values
    slack = 1e-9 * max(abs(before), abs(after))
    assert after <= before + slack if rule.never == "rises" else after >= before - slack, (rule, inputs, values)


def test_every_question_has_rules_and_a_table() -> None:
    for question in QUESTIONS:
        assert question.rules, question.id
        for units in SYSTEMS:
            made = desk.table(question.id, units)
            assert len({len(row) for row in made["rows"]} | {len(made["head"])}) == 1


def test_the_order_of_inputs_does_not_matter() -> None:
    shuffle = random.Random(1)
    for question in QUESTIONS:
        needed = {f.name: f.default_text("metric") or f.would_do("metric").split(" to ")[0] for f in question.fields if f.required and not f.when}
        names = list(needed)
        shuffle.shuffle(names)
        assert _answer(question, needed) == _answer(question, {name: needed[name] for name in names})
