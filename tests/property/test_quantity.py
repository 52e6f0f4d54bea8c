"""Properties of reading and writing quantities."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from calc.errors import InputError
from calc.fields import Quantity, Typed
from calc.quantity.kinds import KINDS
from calc.quantity.reading import read
from calc.quantity.units import from_si, to_si
from calc.quantity.writing import Style, round_to, write_number

_UNITS = [(kind.name, symbol) for kind in KINDS.values() for symbol in kind.units if symbol]
_sizes = st.floats(min_value=0.01, max_value=9999, allow_nan=False)


@given(st.sampled_from(_UNITS), _sizes)
def test_to_si_and_back_is_the_same(unit: tuple[str, str], value: float) -> None:
    kind, symbol = unit
    back = from_si(to_si(value, kind, symbol), kind, symbol)
    assert abs(back - value) <= 1e-9 * max(1.0, abs(value)) + (1e-9 if kind == "temperature" else 0)


@given(st.integers(0, 99), st.integers(1, 31))
def test_a_mixed_number_reads_as_its_value(whole: int, part: int) -> None:
    fraction = Fraction(part, 32)
    text = f"{whole} {fraction.numerator}/{fraction.denominator}" if whole else f"{fraction.numerator}/{fraction.denominator}"
    assert abs(read("it", text, "length", "in").number - float(whole + fraction)) < 1e-12


@given(_sizes, st.sampled_from([0.1, 0.5, 1.0, 5.0, 10.0, 1 / 16]))
def test_rounding_never_passes_the_safe_side(value: float, step: float) -> None:
    slack = 1e-8 * max(1.0, value)
    assert round_to(value, step, "down") <= value + slack
    assert round_to(value, step, "up") >= value - slack
    assert round_to(value, step, "up") - round_to(value, step, "down") <= step * (1 + 1e-9)


@given(_sizes, st.sampled_from([Style("g", step=0.1), Style("g", step=5), Style("g", figures=3), Style("in", step=1 / 16, fraction=True)]))
def test_what_is_written_reads_as_what_is_meant(value: float, style: Style) -> None:
    text, number = write_number(value, style)
    if number:
        kind = "length" if style.unit == "in" else "mass"
        assert abs(read("it", text, kind, style.unit).number - number) <= 1e-6 * max(1.0, number)


@given(st.text(max_size=20))
def test_any_text_is_read_or_refused_with_a_known_code(text: str) -> None:
    for kind in ("length", "mass", "volume", "temperature"):
        try:
            read("it", text, kind, next(iter(KINDS[kind].units)))
        except InputError as error:
            assert error.code in ("not-a-number", "fraction", "comma", "unit", "fluid-ounce", "weight-ounce", "which-gallon")


@given(st.floats(10, 1500), st.integers(1, 5))
def test_switching_units_back_and_forth_never_drifts(value: float, times: int) -> None:
    field = Quantity(name="d", label="Diameter", kind="length", units=("mm", "in"), low=10, high=1500)
    typed = Typed(f"{value:.1f}", "metric")
    for _ in range(times):
        shown = field.convert(typed, "imperial")
        assert abs(read("d", shown, "length", "in").si / field.parse(typed)[0] - 1) < 0.005  # type: ignore[operator]
    assert field.convert(typed, "metric") == typed.text
