"""A list of measures, kept in the order they came."""

from __future__ import annotations

import pytest

from calc.errors import InputError
from calc.fields import Typed
from calc.several import Series

WIDTHS = Series(name="widths", label="Widths", kind="length", units=("mm", "in"), low=0, high=3000, usual=(0, 1500), accepts=("mm", "cm", "in"), fewest=3)


def values(text: str, imperial: bool = False) -> list[float]:
    found, _ = WIDTHS.parse(Typed(text, "imperial" if imperial else "metric"))
    assert isinstance(found, tuple)
    return [round(1000 * value, 3) for value in found]


@pytest.mark.parametrize("text", ["120 135 120", "120, 135, 120", "120; 135; 120", "120,135,120", " 120  135 120 mm ", "12 cm 135 120"])
def test_the_order_and_what_is_the_same_are_kept(text: str) -> None:
    assert values(text) == [120, 135, 120]


@pytest.mark.parametrize("text", ["4 3/4 5 5 1/2", "4 3/4, 5, 5 1/2", "4-3/4 5 5-1/2", "4¾ 5 5½", "4 ¾ 5 5 ½", '4 3/4" 5" 5 1/2"', "4 3/4 in, 5 in, 5 1/2 in"])
def test_a_fraction_goes_with_the_number_before_it(text: str) -> None:
    assert values(text, imperial=True) == [120.65, 127, 139.7]


def test_a_decimal_comma_is_one_number() -> None:
    assert values("12,5 13,5 14,5") == [12.5, 13.5, 14.5]


@pytest.mark.parametrize("text", ["4 3/4,5,5 1/2", "4 3/4,5, 5 1/2", "4¾,5,5½"])
def test_beside_a_fraction_a_comma_parts_two_numbers(text: str) -> None:
    assert values(text, imperial=True) == [120.65, 127, 139.7]


@pytest.mark.parametrize("text", ["5,2", "12,5 mm"])
def test_one_comma_and_nothing_else_is_asked_about(text: str) -> None:
    with pytest.raises(InputError) as caught:
        WIDTHS.parse(Typed(text))
    assert caught.value.code == "comma" and len(caught.value.choices) == 2


@pytest.mark.parametrize(
    ("text", "code"),
    [("120 130", "too-few"), ("1 " * 30, "too-many"), ("120 x 130", "unit"), ("x", "not-a-number"), ("1' 2\" 3\"", "unit"), ("-1 2 3", "too-small")],
)
def test_what_cannot_be_read_is_said(text: str, code: str) -> None:
    with pytest.raises(InputError) as caught:
        WIDTHS.parse(Typed(text))
    assert caught.value.code == code


def test_one_that_looks_like_a_slip_is_asked_about() -> None:
    _, query = WIDTHS.parse(Typed("120 2000 130"))
    assert query is not None and query.given == "2000 mm"


def test_the_other_units_show_the_same_measures() -> None:
    assert WIDTHS.convert(Typed("127 254 381"), "imperial") == "5, 10, 15"
    assert WIDTHS.convert(Typed("5, 10, 15", "imperial"), "metric") == "127, 254, 381"
    assert WIDTHS.convert(Typed("5, x", "imperial"), "metric") == "5, x"
