"""Fields: limits, slips, choices, ratios, several numbers, and the order of what is asked."""

from __future__ import annotations

import re

import pytest

from calc.answers import Answer, Headline, Working
from calc.errors import InputError, InputErrors
from calc.fields import Choice, Option, Quantity, Text, Typed, wanting
from calc.quantity.kinds import SYSTEMS
from calc.questions import Given, Question, Table, all_questions, defaults_used
from calc.several import Numbers, Ratio, Series

DIAMETER = Quantity(
    name="diameter", label="Diameter", kind="length", units=("mm", "in"), low=5, high=2000, usual=(20, 1000), accepts=("mm", "cm", "in")
)
STEPS = Numbers(name="steps", label="Belt steps", kind="rotational speed", units=("rpm", "rpm"), low=10, high=10000)
RATIO = Ratio(name="ratio", label="Ratio A to B")
WAY = Choice(name="way", label="How", options=(Option("weighed", "By weight"), Option("measured", "By volume")), default="weighed", basis="practice")


def _code(field: object, text: str, units: str = "metric") -> str:
    with pytest.raises(InputError) as caught:
        field.parse(Typed(text, units))  # type: ignore[attr-defined]
    return caught.value.code


def test_a_bare_number_is_in_the_unit_that_the_switch_shows() -> None:
    assert DIAMETER.parse(Typed("300", "metric"))[0] == pytest.approx(0.3)
    assert DIAMETER.parse(Typed("12", "imperial"))[0] == pytest.approx(0.3048)
    assert DIAMETER.parse(Typed("30 cm", "imperial"))[0] == pytest.approx(0.3)


def test_limits_name_what_would_do() -> None:
    assert _code(DIAMETER, "0") == "not-positive"
    assert _code(DIAMETER, "-3") == "not-positive"
    assert _code(DIAMETER, "2") == "too-small"
    assert _code(DIAMETER, "2001") == "too-large"
    assert DIAMETER.parse(Typed("2000"))[0] == pytest.approx(2.0)  # the limit itself is fine
    assert DIAMETER.would_do("metric") == "20 to 1000 mm"
    assert DIAMETER.would_do("imperial") == "0.8 to 39 in"  # 20 mm is 0.787 in, 1000 mm is 39.37 in


def test_a_slip_is_asked_about_with_what_was_likely_meant() -> None:
    value, query = DIAMETER.parse(Typed("12", "metric"))
    assert value == pytest.approx(0.012)
    assert query is not None and query.given == "12 mm"
    assert query.choices[0] == ("12 in", "12 in")
    _, query = DIAMETER.parse(Typed("60 in", "metric"))
    assert query is not None and query.meaning == " is 1524 mm" and query.choices == (("60 mm", "60 mm"),)


def test_far_out_of_range_offers_the_likely_unit_too() -> None:
    with pytest.raises(InputError) as caught:
        DIAMETER.parse(Typed("500 in"))
    assert caught.value.code == "too-large"
    assert caught.value.choices == (("500 mm", "500 mm"),)


def test_several_numbers() -> None:
    assert STEPS.parse(Typed("650, 200 400/1000 rpm"))[0] == (200.0, 400.0, 650.0, 1000.0)
    assert _code(STEPS, "200 fast") == "not-a-number"
    assert _code(STEPS, " ".join(["100"] * 25)) == "too-many"
    assert _code(STEPS, "200 99999") == "too-large"


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("12,5 11,5", (11.5, 12.5)),
        ("12,5; 11,5; 9", (9.0, 11.5, 12.5)),
        ("12,5, 11,5", (11.5, 12.5)),
        ("12.5 11.5", (11.5, 12.5)),
        ("12, 15", (12.0, 15.0)),
        ("900,700,400", (400.0, 700.0, 900.0)),
        ("12,15,13,15", (12.0, 13.0, 15.0)),  # commas only: a list
    ],
)
def test_a_comma_between_digits_is_a_decimal_comma_where_something_else_separates(text: str, values: tuple[float, ...]) -> None:
    low = Numbers(name="low", label="Low", kind="rotational speed", units=("rpm", "rpm"), low=1, high=10000)
    assert low.parse(Typed(text))[0] == values


def test_one_comma_and_nothing_else_is_asked_about() -> None:
    assert _code(STEPS, "12,5") == "comma"
    assert _code(STEPS, "200,400 650") == "comma"  # thousands, or 200.4


@pytest.mark.parametrize("text", ["100:45", "100/45", "100 to 45", "100 45", " 100 : 45 "])
def test_ratio(text: str) -> None:
    assert RATIO.parse(Typed(text))[0] == (100.0, 45.0)


@pytest.mark.parametrize("text", ["100", "2:1:1", "0:1", "two to one", "-2:1"])
def test_not_a_ratio(text: str) -> None:
    assert _code(RATIO, text) == "ratio"


def test_a_far_ratio_is_asked_about() -> None:
    assert RATIO.parse(Typed("100:2"))[1] is not None


def test_a_hint_may_be_told_in_the_units_that_are_shown() -> None:
    told = Text(name="note", label="Note", hint=("Like 14:30.", "Like 2:30 pm."))
    assert told.as_json()["hint"] == {"metric": "Like 14:30.", "imperial": "Like 2:30 pm."}
    assert DIAMETER.as_json()["hint"] == {"metric": "", "imperial": ""}


_FIELDS = [(question.id, field) for question in all_questions().values() for field in question.fields]


def test_no_hint_speaks_in_the_units_of_the_other_system_alone() -> None:
    metric, imperial = (re.compile(rf"\d ?(?:{units})(?![a-z])") for units in ("mm|cm|g|kg|mL|L|°C|bar", r"in\b(?! \d)|oz|lb|US fl oz|°F|psi"))
    for id, field in _FIELDS:
        hint = field.as_json()["hint"]
        assert bool(metric.search(hint["imperial"])) <= bool(imperial.search(hint["imperial"])), (id, field.name)
        assert bool(imperial.search(hint["metric"])) <= bool(metric.search(hint["metric"])), (id, field.name)


def test_the_examples_in_the_hints_of_several_numbers_are_read_and_no_slip() -> None:
    tried = 0
    for id, field in _FIELDS:
        for system in SYSTEMS:
            example = re.search(r": (\d[^.]*(?:\.\d[^.]*)*)\.?$", field.as_json()["hint"][system])
            if isinstance(field, Series) and example:
                assert field.parse(Typed(example[1], system))[1] is None, (id, field.name, system)
                tried += 1
    assert tried >= 16


def test_choice_by_value_or_label() -> None:
    assert WAY.parse(Typed("weighed"))[0] == "weighed"
    assert WAY.parse(Typed("By Volume"))[0] == "measured"
    assert _code(WAY, "guessed") == "choice"


def _work(given: Given) -> Answer:
    if given.si("diameter") > 1.5:
        raise InputError("diameter", "own-words")
    return Answer(Headline("It", "1", "", "Do it.", "go"), working=(Working("", "", "", ""),), sources=("arithmetic",))


QUESTION = Question(
    id="trial", name="Trial?", moment="at the bench", order=1, summary="", lead="",
    fields=(DIAMETER, WAY, RATIO, Text(name="note", label="Note", required=False, when=(("way", ("measured",)),))),
    work=_work, table=Table("", ("diameter", ("300",)), ("way", ("weighed",))), words={"own-words": "{label} {given} will not do here."},
)


def test_all_errors_are_told_in_one_pass() -> None:
    with pytest.raises(InputErrors) as caught:
        QUESTION.parse({"diameter": Typed("wide"), "ratio": Typed("half"), "colour": Typed("blue")}, "metric", {})
    assert {(error.name, error.code) for error in caught.value.errors} == {
        ("diameter", "not-a-number"), ("ratio", "ratio"), ("", "unknown-field"),
    }


def test_what_is_missing_is_named() -> None:
    with pytest.raises(InputErrors) as caught:
        QUESTION.parse({}, "metric", {})
    assert [(error.name, error.code) for error in caught.value.errors] == [("diameter", "missing"), ("ratio", "missing")]


def test_a_field_that_is_not_asked_is_not_read() -> None:
    given, _ = QUESTION.parse({"diameter": Typed("300"), "ratio": Typed("2:1"), "note": Typed("hello")}, "metric", {})
    assert given.words("note") == ""
    assert given.unasked == {"note": ("way is measured",)} == {"note": wanting(QUESTION.named("note"), {"way": "weighed"})}
    given, _ = QUESTION.parse({"diameter": Typed("300"), "ratio": Typed("2:1"), "way": Typed("measured"), "note": Typed("hello")}, "metric", {})
    assert given.words("note") == "hello" and not given.unasked


def test_a_confirmed_slip_is_not_asked_again_until_it_is_typed_anew() -> None:
    inputs = {"diameter": Typed("12"), "ratio": Typed("2:1")}
    assert QUESTION.parse(inputs, "metric", {})[1]
    assert not QUESTION.parse(inputs, "metric", {"diameter": "12"})[1]
    assert QUESTION.parse(inputs | {"diameter": Typed("11")}, "metric", {"diameter": "12"})[1]


def test_defaults_that_stand_in_are_listed_with_their_basis() -> None:
    given, _ = QUESTION.parse({"diameter": Typed("300"), "ratio": Typed("2:1")}, "metric", {})
    assert defaults_used(QUESTION, given) == [{"field": "way", "label": "How", "text": "By weight", "basis": "practice"}]


@pytest.mark.parametrize(("text", "turned"), [("45:100", "100:45"), ("100:450", "450:100"), ("1 to 2", "2:1"), ("1/1.5", "1.5:1")])
def test_more_b_than_a_is_asked_about_with_the_ratio_turned_round(text: str, turned: str) -> None:
    value, query = RATIO.parse(Typed(text))
    assert query is not None and "more B than A" in query.meaning and query.choices == ((turned, turned),)
    assert isinstance(value, tuple) and value[0] < value[1] and RATIO.parse(Typed(turned))[1] is None


@pytest.mark.parametrize("text", ["1:1", "2:1", "100:45", "100:100", "3:1", "10:1"])
def test_a_usual_ratio_is_not_asked_about(text: str) -> None:
    assert RATIO.parse(Typed(text))[1] is None
