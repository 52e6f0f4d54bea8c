"""Figures and phrases of this question."""

from __future__ import annotations

from collections.abc import Sequence

from calc.casting.cure.course import RUNAWAY_K, Course
from calc.casting.cure.outlook import Outlook
from calc.quantity.units import to_si
from calc.quantity.writing import Rounding, Shown, Style
from calc.questions import Given

_OVER = "over "


def depth(given: Given, metres: float, rounding: Rounding = "down") -> Shown:
    """A depth or width; thin ones to a fraction."""
    unit = given.pick("mm", "in")
    return given.write(metres, ("length", Style(unit, step=_step(given, metres), fraction=unit == "in")), rounding)


def _step(given: Given, metres: float) -> float:
    """The step of a depth, mm or inches."""
    if given.system == "metric":
        return 1 if metres >= 0.01 else 0.5
    return 1 / 16 if metres >= 0.0127 else 1 / 32


def depth_step_m(given: Given, metres: float) -> float:
    """The step that a depth is told with, m."""
    return to_si(_step(given, metres), "length", given.pick("mm", "in"))


def typed_depth(given: Given, name: str) -> str:
    """A depth or width as it was typed, or where the units were changed since, to a tenth of a millimetre or a 64th of an inch."""
    if given.typed_here(name):
        return given.as_typed(name)
    metres = given.si(name)
    style = Style("mm", step=0.1) if given.system == "metric" else Style("in", step=1 / 64, fraction=True)
    return str(given.write(metres, ("length", style)))


def warm(given: Given, kelvin: float) -> str:
    """A temperature, rounded up to 5 °C or 10 °F; one that is no forecast only as over its end."""
    if kelvin >= RUNAWAY_K:
        return _OVER + str(given.write(RUNAWAY_K, _warm(given), "nearest"))
    return str(given.write(kelvin, _warm(given), "up"))


def warm_band(given: Given, low_k: float, high_k: float) -> str:
    """Two of them with one unit."""
    low, high = warm(given, low_k), warm(given, high_k)
    if low == high:
        return low
    return f"{low.rsplit(' ', 1)[0]} to {high}"


def _warm(given: Given) -> tuple[str, Style]:
    return "temperature", Style("°C", step=5) if given.system == "metric" else Style("°F", step=10)


def mould(given: Given, kelvin: float, course: Course) -> str:
    """The hottest spot of the mould; after a runaway only as over a figure."""
    return f"{_OVER if course.ran_away else ''}{warm(given, kelvin).removeprefix(_OVER)}"


def mould_band(given: Given, outlook: Outlook) -> str:
    """The same, from the middle to the hot end."""
    assert outlook.middle is not None and outlook.hot is not None
    low, high = mould(given, outlook.mould_k[1], outlook.middle), mould(given, outlook.mould_k[2], outlook.hot)
    if low == high or outlook.middle.ran_away:
        return low
    return f"{low.rsplit(' ', 1)[0]} to {high}"


def hours(given: Given, seconds: float | None, rounding: Rounding = "nearest") -> str:
    """A time: minutes below two hours, else hours, days from three days on."""
    if seconds is None:
        return "not reached"
    if seconds < 5400:
        return str(given.write(seconds, ("time", Style("min", step=5 if seconds > 1200 else 1)), rounding))
    if seconds < 3 * 86400:
        return str(given.write(seconds, ("time", Style("h", step=1 if seconds > 36000 else 0.5)), rounding))
    return str(given.write(seconds, ("time", Style("days", step=0.5)), rounding))


def hours_band(given: Given, times: Sequence[float | None]) -> str:
    """The earliest and the latest of several, as far as they came."""
    known = sorted(time for time in times if time is not None)
    if not known:
        return "not reached"
    first, last = hours(given, known[0], "down"), hours(given, known[-1], "up")
    if first == last:
        return first
    unit = first.rsplit(" ", 1)[1]
    return f"{first.rsplit(' ', 1)[0]} to {last}" if last.endswith(f" {unit}") else f"{first} to {last}"


def difference(given: Given, course: Course) -> str:
    """Middle less skin at the peak."""
    return str(given.write(course.difference_k, "temperature difference", "up"))
