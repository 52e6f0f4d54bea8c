"""Every question, by its own declaration: answers whole for any input it accepts, and its rules hold."""

from __future__ import annotations

import inspect
import json
import math
import re
from collections import Counter
from collections.abc import Collection
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from calc import desk
from calc.fields import Choice, Field, Quantity, Text
from calc.quantity.kinds import SYSTEMS
from calc.questions import Question, Rule, all_questions
from calc.several import Numbers, Ratio
from calc.sources import table

QUESTIONS = list(all_questions().values())
RULES = {
    f"{question.id}: {rule.field}, {rule.value} never {rule.never}{''.join(f'; {name} {text}' for name, text in rule.given.items())}": (question, rule)
    for question in QUESTIONS
    for rule in question.rules
}
assert len(RULES) == sum(len(question.rules) for question in QUESTIONS), "of two rules of one name, one is never tried"
#: Words that no result may use: a ceiling is never a promise.
PROMISES = ("safe", "approved", "guarantee")


def _values(field: Quantity, low: float, high: float) -> st.SearchStrategy[float] | st.SearchStrategy[int]:
    return st.integers(math.ceil(low), math.floor(high)) if field.whole else st.floats(low, high, allow_nan=False)


def _one_of(field: Quantity, low: float, high: float) -> st.SearchStrategy[str]:
    return _values(field, low, high).map(lambda value: _written(field, value))


def _written(field: Quantity, value: float) -> str:
    return f"{value:d}" if isinstance(value, int) else f"{value:.6f} {field.units[0]}"


def _texts(field: Field) -> st.SearchStrategy[str]:
    """Texts that the field takes, from its own declaration."""
    if isinstance(field, Choice):
        return st.sampled_from([option.value for option in field.options])
    if isinstance(field, Numbers):
        low, high = field.usual or (field.low, field.high)
        return st.lists(st.integers(math.ceil(low), math.floor(high)), min_size=1, max_size=6).map(lambda xs: " ".join(map(str, xs)))
    if isinstance(field, Quantity):
        return _one_of(field, *(field.usual or (field.low, field.high)))
    if isinstance(field, Ratio):
        return st.integers(10, 100).map(lambda b: f"100:{b}")
    assert isinstance(field, Text)
    return st.text(max_size=10)


def _all_inputs(question: Question, but: Collection[str] = ()) -> st.SearchStrategy[dict[str, str]]:
    """Any inputs that the fields take, but for some. What may have to be there always is: most draws get an answer, not an error."""
    fields = [field for field in question.fields if field.name not in but]
    needed = {field.name: _texts(field) for field in fields if field.required and field.default is None}
    rest = {field.name: _texts(field) for field in fields if field.name not in needed}
    return st.fixed_dictionaries(needed, optional=rest)


INPUTS = {question.id: _all_inputs(question) for question in QUESTIONS}


def _answer(question: Question, inputs: dict[str, str], units: str = "metric") -> dict[str, Any]:
    asked = {name: text for name, text in inputs.items() if text.strip()}
    reply: dict[str, Any] = json.loads(
        desk.handle(json.dumps({"call": "answer", "args": {"id": question.id, "inputs": asked, "units": units, "confirmed": asked}}))
    )
    assert reply["ok"], (reply, inputs)
    result: dict[str, Any] = reply["result"]
    return result


#: Work in steps takes a hundred times as long as the rest: a third of the examples.
STEPPED = {question.id for question in QUESTIONS if inspect.isgeneratorfunction(question.work)}
FEWER = max(4, settings.default.max_examples // 3)


@pytest.mark.parametrize("id", [id for id in INPUTS if id not in STEPPED])
@settings(suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_any_input_gets_a_whole_answer_or_errors_that_name_a_field(id: str, data: st.DataObject) -> None:
    _whole_or_errors(id, data)


@pytest.mark.parametrize("id", sorted(STEPPED))
@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=FEWER)
@given(data=st.data())
def test_any_input_of_long_work_gets_a_whole_answer_or_errors_that_name_a_field(id: str, data: st.DataObject) -> None:
    _whole_or_errors(id, data)


SOURCED = {(row["question"], row["caution"]) for row in table("cautions")}


def _whole_or_errors(id: str, data: st.DataObject) -> None:
    question = all_questions()[id]
    inputs = data.draw(INPUTS[id])
    for units in SYSTEMS:
        reply = _answer(question, inputs, units)
        if reply["errors"]:
            assert all(error["message"] for error in reply["errors"])
            continue
        assert _answer(question, dict(reversed(inputs.items())), units) == reply, "the order of inputs matters"
        headline = reply["headline"]
        assert headline["text"] and headline["say"] and headline["label"]
        assert headline["tone"] in ("go", "caution", "stop")
        assert reply["working"] and reply["sources"]
        assert sum(limit["rules"] for limit in reply["limits"]) <= 1
        assert not [caution["id"] for caution in reply["cautions"] if (id, caution["id"]) not in SOURCED], "no row in data/cautions.csv"
        assert not _told_twice(reply), _told_twice(reply)
        words = reply["text"].lower()
        assert "nan" not in words.split() and "inf" not in words.split()
        assert not [promise for promise in PROMISES if promise in words.replace("safety", "")]


def _told_twice(reply: dict[str, Any]) -> list[str]:
    """Sentences that the headline and the cautions say more than once between them."""
    texts = [*reply["headline"]["steps"], reply["headline"]["say"], *(caution["text"] for caution in reply["cautions"])]
    sentences = [sentence.strip(" .").lower() for text in texts for sentence in re.split(r"[.:] ", text)]
    return [sentence for sentence, count in Counter(sentences).items() if count > 1 and " " in sentence]


def _sorted_pair(question: Question, rule: Rule) -> st.SearchStrategy[list[str]]:
    """Two texts of the rule's field, the lesser first."""
    field = question.named(rule.field)
    if rule.order:
        return st.tuples(*[st.integers(0, len(rule.order) - 1)] * 2).map(lambda two: [rule.order[place] for place in sorted(two)])
    assert isinstance(field, Quantity)
    low, high = rule.span or field.usual or (field.low, field.high)
    return st.tuples(*[_values(field, low, high)] * 2).map(lambda two: [_written(field, value) for value in sorted(two)])


PAIRS = {name: _sorted_pair(*case) for name, case in RULES.items()}
#: What a rule's trial leaves open: drawing sixty fields only to overwrite them takes longer than the answers.
OPEN = {name: _all_inputs(question, {*rule.given, rule.field}) for name, (question, rule) in RULES.items()}


@pytest.mark.parametrize("name", [name for name, (question, _) in RULES.items() if question.id not in STEPPED])
@settings(suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
@given(data=st.data())
def test_rule(name: str, data: st.DataObject) -> None:
    _rule_holds(name, data)


@pytest.mark.parametrize("name", [name for name, (question, _) in RULES.items() if question.id in STEPPED])
@settings(suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much], max_examples=FEWER)
@given(data=st.data())
def test_rule_of_long_work(name: str, data: st.DataObject) -> None:
    _rule_holds(name, data)


def _rule_holds(name: str, data: st.DataObject) -> None:
    question, rule = RULES[name]
    inputs = data.draw(OPEN[name]) | dict(rule.given)
    values = []
    for text in data.draw(PAIRS[name]):
        reply = _answer(question, inputs | {rule.field: text})
        assume(not reply["errors"] and rule.value in reply["values"])
        si = reply["values"][rule.value]["si"]
        values.append(rule.refusal if si is None else si)
    before, after = values
    slack = 1e-9 * max(abs(before), abs(after))
    assert after <= before + slack if rule.never == "rises" else after >= before - slack, (rule.why, values)


def test_every_question_has_rules_and_a_table() -> None:
    for question in QUESTIONS:
        assert question.rules, question.id
        for units in SYSTEMS:
            made = desk.table(question.id, units)
            assert len({len(row) for row in made["rows"]} | {len(made["head"])}) == 1
