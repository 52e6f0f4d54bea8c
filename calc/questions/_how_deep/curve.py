"""The curve of a pour: its hottest place over the hours, in the middle estimate and at the hot end of the band."""

from __future__ import annotations

from collections.abc import Sequence

from calc.answers import Grid
from calc.casting.cure.course import RUNAWAY_K, Course, Moment
from calc.casting.cure.outlook import Outlook
from calc.casting.cure.standards import standard
from calc.casting.cure.thermal import Material
from calc.constants import ZERO_C
from calc.drawing import Axis, Drawing, chart
from calc.quantity.units import from_si
from calc.questions import Given
from calc.questions._how_deep.words import hours, warm

_POINTS = 60  # of a curve, at most
_ROWS = 9
_SHORTEST_S = 600.0
_LEAST_TOP_K = 70 + ZERO_C
_APART = 0.12  # of the height of the chart: closer than this two names would lie on each other
_APART_K = 8.0  # the same for two lines
YELLOWS_K, BOILS_K = standard("stop peak"), 100 + ZERO_C


def curve(given: Given, outlook: Outlook, material: Material) -> tuple[Drawing, Grid]:
    """The drawing, and a table of the same.

    Parameters
    ----------
    given : for the units.
    outlook : with its courses.
    material : of the mould.

    Returns
    -------
    tuple of Drawing and Grid
    """
    hot, middle = outlook.hot, outlook.middle
    assert hot is not None and middle is not None
    unit = given.pick("°C", "°F")
    last = max(hot.moments[-1].time_s, _worth_seeing(middle), _SHORTEST_S)
    scale, word = (3600.0, "hours") if last > 3 * 3600 else (60.0, "minutes")

    def points(course: Course, what: str) -> list[tuple[float, float]]:
        return [(one.time_s / scale, from_si(min(getattr(one, what), RUNAWAY_K), "temperature", unit)) for one in _thinned(course, last)]

    air = from_si(outlook.plan.air_k, "temperature", unit)
    most = max(min(max(hot.peak.hottest_k, middle.peak.hottest_k), RUNAWAY_K), _LEAST_TOP_K)
    limit = material.gives_way_k
    marks = [] if limit is None else [(f"{material.name} gives way", limit)]
    marks += [(name, level) for name, level in (("yellows", YELLOWS_K), ("water boils", BOILS_K)) if limit is None or abs(level - limit) > _APART_K]
    marks = [(name, level) for name, level in marks if level < most]
    apart = (middle.peak.hottest_k - middle.mould_k) / (most - outlook.plan.air_k)
    drawing = chart(
        "How hot, and when",
        _says(given, outlook, marks),
        Axis.of(word, 0, last / scale),
        Axis.of(unit, air, from_si(most, "temperature", unit)),
        traces=[
            ("hot end", "edge", points(hot, "hottest_k")),
            ("middle" if apart > _APART else "middle, and mould", "trace", points(middle, "hottest_k")),
            ("mould" if apart > _APART else "", "measure", points(middle, "mould_k")),
        ],
        levels=[(name, from_si(level, "temperature", unit)) for name, level in marks],
    )
    return drawing, _grid(given, hot, middle, last)


def _worth_seeing(course: Course) -> float:
    """Till it is nearly as cool as the shop, s."""
    return course.cools_to(3.0) or course.moments[-1].time_s


def _thinned(course: Course, last: float) -> Sequence[Moment]:
    """Some of its moments: the more the faster it changes, and always its peak."""
    seen = [one for one in course.moments if one.time_s <= last]
    share = max(1, len(seen) // _POINTS)
    return sorted({*seen[::share], seen[-1], course.peak}, key=lambda one: one.time_s) if course.peak in seen else seen[::share]


def _says(given: Given, outlook: Outlook, marks: Sequence[tuple[str, float]]) -> str:
    hot, middle = outlook.hot, outlook.middle
    assert hot is not None and middle is not None
    ends = []
    for name, course in (("The middle estimate", middle), ("the hot end of the band", hot)):
        peak, at = warm(given, course.peak.hottest_k), hours(given, course.peak.time_s)
        ends.append(f"{name} runs past {peak.removeprefix('over ')} after {at}" if course.ran_away else f"{name} peaks at {peak} after {at}")
    spot = warm(given, outlook.mould_k[1]).removeprefix("over ")
    mould = f"gets hotter than {spot}" if middle.ran_away else f"stays at or below {spot}"
    says = f"Hottest place in the resin over time. {'; '.join(ends)}. The mould {mould} in the middle estimate."
    across = [f"{name}, {given.write(level, 'temperature')}" for name, level in marks]
    return f"{says} Lines across: {'; '.join(across)}." if across else says


def _grid(given: Given, hot: Course, middle: Course, last: float) -> Grid:
    step = last / (_ROWS - 1)
    times = sorted({*(round(i * step / 1800) * 1800.0 if last > 6 * 3600 else i * step for i in range(_ROWS)), middle.peak.time_s, hot.peak.time_s})
    rows = tuple(
        (hours(given, time) if time else "0", _at(given, middle, time, "hottest_k"), _at(given, hot, time, "hottest_k"), _at(given, middle, time, "mould_k"))
        for time in times
    )
    return Grid("How hot, and when", ("After", "Middle", "Hot end", "Mould"), tuple({row[0]: row for row in rows}.values()))


def _at(given: Given, course: Course, time: float, what: str) -> str:
    """A temperature at a time, to the degree; nothing after the end of its run."""
    before = course.moments[0]
    for one in course.moments:
        if one.time_s >= time - 1e-6:
            share = 1.0 if one.time_s == before.time_s else (time - before.time_s) / (one.time_s - before.time_s)
            value = getattr(before, what) + share * (getattr(one, what) - getattr(before, what))
            return warm(given, value) if value >= RUNAWAY_K else str(given.write(value, "temperature", "up"))
        before = one
    return "-"
