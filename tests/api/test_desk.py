"""The door's contract: every call, every question, every error code."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from calc import desk, errors
from calc.fields import Choice, Field, Quantity
from calc.questions import Question, all_questions
from calc.sources import bibliography

IDS = list(all_questions())

#: One plain case of each question, as a maker would type it. A question without one fails below.
PLAIN = {
    "what-is-this-resin": {"ratio": "100:43", "pot_life": "11 h", "deepest": "50", "opened": "old"},
    "when-can-i": {"resin": "standard", "depth": "8", "across": "200", "room": "20"},
    "how-fast": {"diameter": "300"},
    "where-is-the-weight": {"across": "300", "thickness": "50", "wood1_across": "100", "wood1_out": "60"},
    "how-much-to-weigh": {"total": "1870", "ratio": "100:45", "by": "weight"},
    "before-a-pour": {"depth": "40"},
    "before-the-lathe": {"ceiling": "600", "speed": "500"},
    "dry-enough": {"readings": "9 9.5 10"},
    "what-colour-dose": {"batches": "900 900 400", "effect_1": "translucent", "kind_1": "paste"},
    "how-much-wood": {"rise": "1378", "weight": "842"},
    "how-thick-how-tall": {"thickness": "45", "across": "300"},
    "is-it-enough": {"across": "350", "depth": "50", "wood": "2400", "wood_way": "figured", "have": "3 kg"},
    "how-deep-how-hot": {"deepest": "50", "depth": "30", "length": "600", "width": "300", "room": "20"},
    "pot-or-vacuum": {"pot_across": "250", "pot_height": "300", "mould_across": "150", "mould_height": "120", "pressure": "3 bar"},
    "why-out-of-true": {"sign": "dish", "diameter": "300", "thickness": "50", "warm": "all"},
    "does-it-fit-the-lathe": {"across": "300", "along": "50", "lathe": "floor", "swing": "460"},
    "which-grit-next": {"grit_p": "p220", "diameter": "450"},
    "will-the-mount-hold": {"diameter": "300", "block": "150", "face": "wood"},
    "will-it-stand": {"heights": "30 220 40", "widths": "140 50 180"},
    "is-the-air-right": {"room": "20", "humidity": "65", "resin": "30"},
}


def call(name: str, **args: Any) -> Any:
    reply = json.loads(desk.handle(json.dumps({"call": name, "args": args})))
    assert reply["ok"], reply
    return reply["result"]


def refused(name: str, **args: Any) -> Any:
    reply = json.loads(desk.handle(json.dumps({"call": name, "args": args})))
    assert not reply["ok"]
    return reply["error"]


def test_the_catalogue_names_every_question_once() -> None:
    names = [entry["id"] for entry in call("catalogue")]
    assert names == IDS and len(set(names)) == len(names)
    assert set(PLAIN) == set(names)


@pytest.mark.parametrize("id", IDS)
def test_a_declaration_is_whole(id: str) -> None:
    described = call("describe", id=id)
    assert described["name"] and described["summary"] and described["lead"] and described["moment"]
    names = [field["name"] for field in described["fields"]]
    assert len(set(names)) == len(names)
    for position, field in enumerate(described["fields"]):
        assert field["label"], field["name"]
        if field["default"] and field["type"] != "choice":  # a choice may only say which way a thing is asked
            assert field["basis"] in bibliography(), f"{field['name']} has a default without a basis"
        for other, values in field["when"]:
            assert other in names[:position], f"{field['name']} depends on {other}, which is not before it"
            options = all_questions()[id].named(other)
            assert isinstance(options, Choice) and set(values) <= {option.value for option in options.options}


@pytest.mark.parametrize("id", IDS)
@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_a_plain_case_has_every_part_of_an_answer(id: str, units: str) -> None:
    inputs = {name: {"typed": text, "units": "metric"} for name, text in PLAIN[id].items()}
    reply = call("answer", id=id, inputs=inputs, units=units)
    assert not reply["errors"] and not reply["queries"], reply["text"]
    for part in ("headline", "cautions", "working", "assumed", "sources", "values", "text"):
        assert reply[part], part
    headline = reply["headline"]
    assert " ".join(filter(None, (headline["first"], headline["rest"]))) == headline["say"] and len(headline["first"]) <= 120
    for step in reply["working"]:
        assert step["title"] and step["formula"] and step["result"], step
    for value in reply["values"].values():
        assert value["shown"] and value["dimension"]


@pytest.mark.parametrize("id", IDS)
def test_the_two_unit_systems_give_the_same_values(id: str) -> None:
    """A figure may be rounded to the step of its system, but what is exact is the same."""
    inputs = {name: {"typed": text, "units": "metric"} for name, text in PLAIN[id].items()}
    question = all_questions()[id]
    for field in question.fields:  # defaults differ between the systems (50 mm, 2 in): give the metric ones
        if isinstance(field, Quantity) and field.default is not None and not field.when:
            inputs.setdefault(field.name, {"typed": field.default_text("metric"), "units": "metric"})
    metric = call("answer", id=id, inputs=inputs, units="metric")
    imperial = call("answer", id=id, inputs=inputs, units="imperial")
    assert metric["headline"]["tone"] == imperial["headline"]["tone"]
    for name, value in metric["values"].items():
        other = imperial["values"][name]["si"]
        assert value["si"] is other or value["si"] == pytest.approx(other, rel=0.02), name


@pytest.mark.parametrize("id", IDS)
def test_nothing_typed_names_what_is_missing(id: str) -> None:
    reply = call("answer", id=id, inputs={})
    needed = [f["name"] for f in call("describe", id=id)["fields"] if f["required"] and not f["when"]]
    assert {error["field"] for error in reply["errors"]} >= set(needed)
    assert all(error["code"] in ("missing", "choose") for error in reply["errors"])
    assert (reply["headline"] is None) == bool(reply["errors"])


def _asks(question: Question, field: Field) -> dict[str, str]:
    """Choices by which a field is asked, and those by which they are."""
    before = {name: text for name, _ in field.when for name, text in _asks(question, question.named(name)).items()}
    return before | {name: values[0] for name, values in field.when}


@pytest.mark.parametrize("id", IDS)
def test_every_field_says_what_would_do(id: str) -> None:
    for field in all_questions()[id].fields:
        if isinstance(field, Quantity):
            inputs = dict(PLAIN[id]) | _asks(all_questions()[id], field) | {field.name: "plenty"}
            errors_found = [e for e in call("answer", id=id, inputs=inputs)["errors"] if e["field"] == field.name]
            assert errors_found and field.label in errors_found[0]["message"] and "'plenty'" in errors_found[0]["message"]


@pytest.mark.parametrize("id", IDS)
def test_converting_there_and_back_gives_what_was_typed(id: str) -> None:
    inputs = {name: {"typed": text, "units": "metric"} for name, text in PLAIN[id].items()}
    assert call("convert", id=id, inputs=inputs, units="metric") == PLAIN[id]
    shown = call("convert", id=id, inputs=inputs, units="imperial")
    assert set(shown) == set(PLAIN[id])


@pytest.mark.parametrize("id", IDS)
@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_the_table_has_no_empty_cell(id: str, units: str) -> None:
    made = call("table", id=id, units=units)
    assert made["caption"] and made["rows"]
    assert all(cell for row in (made["head"], *made["rows"]) for cell in row)
    heads = [*made["head"][1:], *(row[0] for row in made["rows"])]
    wrong = r"\d ?(mm|cm|m|°C|g|kg)$" if units == "imperial" else r"\d ?(in|ft|°F|oz|lb|psi)$"
    assert not [head for head in heads if re.search(wrong, head)], "a head in the unit that is not shown"
    row = all_questions()[id].named(all_questions()[id].table.rows[0])
    assert not isinstance(row, Quantity) or not [head for head, *_ in made["rows"] if head[-1].isdigit()], "a size without its unit"


def test_every_shared_error_text_can_be_filled_in() -> None:
    details = dict.fromkeys(
        "label label_lower given would_do example plain decimal morning evening given_unit units options count most fewest".split()
        + "across along found usual".split(),
        "x",
    )
    for code, words in errors.WORDS.items():
        assert words.format(**details), code


def test_wrong_requests_are_named_as_such_and_bugs_as_bugs() -> None:
    calls = "catalogue, describe, answer, begin, go_on, convert, table, run, safety"
    assert refused("guess") == {"kind": "request", "message": f"there is no call 'guess'; there are {calls}"}
    assert refused("answer", id="how-deep-is-the-sea")["kind"] == "request"
    assert refused("answer", id=IDS[0], units="cubits")["kind"] == "request"
    assert refused("run", id="C99", inputs={}, units="metric", events=[], now=0)["kind"] == "request"
    assert refused("answer")["kind"] == "bug"
    assert json.loads(desk.handle("not json"))["error"]["kind"] == "bug"


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize("id", IDS)
def test_what_an_answer_hands_on_is_taken_there(id: str, units: str) -> None:
    for carry in call("answer", id=id, inputs=PLAIN[id], units=units)["carries"]:
        taken = call("answer", id=carry["to"], inputs=carry["inputs"], units=units)
        wrong = [error for error in taken["errors"] if error["code"] not in ("missing", "choose")]
        assert not wrong and not taken["queries"] and not taken["unasked"], (carry, wrong)
        fields = {field["name"] for field in call("describe", id=carry["to"])["fields"]}
        assert set(carry["leaves"]) <= fields - set(carry["inputs"])
        assert not fields & {"units", "other", "added", "leaves"}, "an address says these of its own"


def test_an_answer_in_steps_is_the_same_answer() -> None:
    for id in IDS:
        reply = call("begin", id=id, inputs=PLAIN[id])
        shares = [0.0]
        while "pending" in reply:
            shares.append(reply["pending"])
            reply = call("go_on")
        assert shares == sorted(shares) and shares[-1] <= 1
        assert reply == call("answer", id=id, inputs=PLAIN[id])
    assert refused("go_on")["kind"] == "request"
