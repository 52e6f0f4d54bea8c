"""Makers' text: every form they type, and every form that is refused."""

from __future__ import annotations

import pytest

from calc.errors import InputError
from calc.quantity.kinds import KINDS
from calc.quantity.reading import read
from calc.quantity.writing import STYLES, Rounding, Style, write_number


def _read(text: str, kind: str = "length", unit: str = "mm") -> float:
    return read("it", text, kind, unit).si


@pytest.mark.parametrize(
    "text, kind, unit, si",
    [
        # 1 inch is 25.4 mm exactly, so 13 3/4 in is 349.25 mm.
        ("13 3/4", "length", "in", 0.34925),
        ("13-3/4", "length", "in", 0.34925),
        ("13 - 3/4", "length", "in", 0.34925),
        ("13¾", "length", "in", 0.34925),
        ("13.75", "length", "in", 0.34925),
        ("13,75", "length", "in", 0.34925),
        ("0.3 MPa", "pressure", "bar", 3e5),
        ("28 in Hg", "pressure", "kPa", 94818.892),  # 28 x 3386.389 (NIST SP 811)
        ("28\" Hg", "pressure", "kPa", 94818.892),
        ("40 psig", "pressure", "bar", 275790.29172673443),  # 40 x 6894.757293168 (NIST SP 811)
        ("13 3/4 in", "length", "mm", 0.34925),
        ("13-3/4 in", "length", "mm", 0.34925),
        ("1' 1 3/4\"", "length", "mm", 0.34925),
        ("1 ft 1 3/4 in", "length", "mm", 0.34925),
        ("1 ft 1 3/4", "length", "mm", 0.34925),
        ("5/8\"", "length", "mm", 0.015875),
        ("5/8", "length", "in", 0.015875),
        ("½ in", "length", "mm", 0.0127),
        ("349 mm", "length", "in", 0.349),
        ("34.9cm", "length", "mm", 0.349),
        (".5", "length", "in", 0.0127),
        ("1.2 kg", "mass", "g", 1.2),
        ("1,5 kg", "mass", "g", 1.5),
        ("450 Grams", "mass", "oz", 0.45),
        # 1 lb is 453.59237 g, 1 oz a sixteenth of it: 1 lb 3 oz is 19 oz.
        ("1 lb 3 oz", "mass", "g", 19 * 0.028349523125),
        ("1lb3oz", "mass", "g", 19 * 0.028349523125),
        ("3 kg 200 g", "mass", "g", 3.2),
        ("2 h 30 min", "time", "min", 9000.0),
        ("70 F", "temperature", "°C", 294.2611111),
        ("70°F", "temperature", "°C", 294.2611111),
        ("-5", "temperature", "°C", 268.15),
        ("1.12 g/cm3", "density", "kg/m³", 1120.0),
        ("400 r/min", "rotational speed", "rpm", 400.0),
        ("2 in3", "volume", "mL", 2 * 16.387064e-6),
        ("5 %", "share", "%", 0.05),
    ],
)
def test_reads_what_makers_type(text: str, kind: str, unit: str, si: float) -> None:
    assert _read(text, kind, unit) == pytest.approx(si, rel=1e-8)


@pytest.mark.parametrize(
    "text, kind, code",
    [
        ("", "length", "not-a-number"),
        ("about 30", "length", "not-a-number"),
        ("12 13", "length", "not-a-number"),
        ("1.2.3", "length", "not-a-number"),
        ("nan", "length", "not-a-number"),
        ("3 oz 1 lb", "mass", "not-a-number"),
        ("13/3/4", "length", "fraction"),
        ("1/0", "length", "fraction"),
        ("3 5/4", "length", "fraction"),
        ("0/4", "length", "fraction"),
        ("1,200", "length", "comma"),
        ("1,234.5", "length", "comma"),
        ("12 stone", "length", "unit"),
        ("3 kg", "length", "unit"),
        ("1e5", "length", "unit"),
        ("12 fl oz", "mass", "fluid-ounce"),
        ("12 fluid ounces", "mass", "fluid-ounce"),
        ("12 oz", "volume", "weight-ounce"),
        ("3 qt", "volume", "which-gallon"),
        ("3 fl oz", "volume", "which-gallon"),
    ],
)
def test_refuses_what_can_be_read_two_ways_or_not_at_all(text: str, kind: str, code: str) -> None:
    with pytest.raises(InputError) as caught:
        _read(text, kind, next(iter(KINDS[kind].units)))
    assert caught.value.code == code


def test_only_the_units_that_a_field_accepts() -> None:
    with pytest.raises(InputError) as caught:
        read("it", "3 kg", "mass", "g", accepted=("g", "oz"))
    assert caught.value.code == "unit"
    assert caught.value.details["units"] == "g or oz"


@pytest.mark.parametrize(
    "value, style, rounding, text",
    [
        (366.2, Style("rpm", step=10), "down", "360"),
        (360.0, Style("rpm", step=10), "up", "360"),
        (0.30000000000000004, Style("g", step=0.1), "up", "0.3"),
        (580.34, Style("g", step=0.5), "up", "580.5"),
        (580.2, Style("g", step=0.5), "up", "580.5"),
        (13.74, Style("in", step=1 / 16, fraction=True), "nearest", "13 3/4"),
        (0.25, Style("in", step=1 / 16, fraction=True), "nearest", "1/4"),
        (0.01, Style("in", step=1 / 16, fraction=True), "nearest", "0"),
        (433.2, Style("g", figures=2), "nearest", "430"),
        (0.13, Style("oz", step=0.125), "nearest", "0.125"),
        (3.1, Style("oz", step=0.05), "down", "3.1"),
        (580.9, Style("g", step=0.5), "nearest", "581"),
        (581.04, Style("g", step=0.1), "nearest", "581.0"),
        (0.0123, Style("g", figures=2), "nearest", "0.012"),
        (0.0, Style("g", figures=2), "nearest", "0"),
        (-0.2, Style("°C", step=1), "nearest", "0"),
        (-3.6, Style("°C", step=1), "nearest", "-4"),
    ],
)
def test_writes_to_the_step(value: float, style: Style, rounding: Rounding, text: str) -> None:
    assert write_number(value, style, rounding)[0] == text


def test_every_style_has_a_unit_of_its_kind() -> None:
    for name, (kind, metric, imperial) in STYLES.items():
        for style in (metric, imperial):
            assert style.unit in KINDS[kind].units, name
            assert bool(style.step) != bool(style.figures), name


def test_every_alias_names_a_unit() -> None:
    for kind in KINDS.values():
        assert set(kind.aliases.values()) <= set(kind.units), kind.name
