"""A pour under way, from A meets B until it is cold: what it does at which hour."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from calc.casting.cure.course import LAYER_BONDS, RUNAWAY_K, Course, Moment
from calc.casting.cure.kinetics import GEL
from calc.casting.cure.pour import COARSE, FINE, Fineness, Mould, Resin, Start, field_of
from calc.casting.cure.solver import Field, Pace

#: Past this conversion the reaction only slows: m / (m + n) is 0.40 at most for the shapes that a test cup may give.
_PAST_FASTEST = 0.42
LONGEST_S = 40 * 86400.0  # no run goes on for longer


def moments(field: Field, pace: Pace) -> Iterator[Moment]:
    """The course of a pour, step by step, without end: whoever looks stops when they have seen enough.

    Parameters
    ----------
    field : the pour as it begins; it goes on with each step.
    pace : of the steps.

    Returns
    -------
    iterator of Moment
        temperatures of all resin, conversions of the newest layer.

    Examples
    --------
    >>> from calc.casting.cure.cells import Footprint
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> pour = field_of(Resin(Kinetics(1e-5)), Mould(Footprint(0.1, 1.0), 0.04), Start(296.15, 296.15), COARSE)
    >>> next(moments(pour, COARSE.pace)).time_s
    0.0

    References
    ----------
    cure-solver.
    """
    dt = pace.first_s
    faces = _faces(field)
    while True:
        yield moment(field, faces)
        _, dt = field.advance(dt, pace)


#: Resin's cell, mould's cell, and the weight of the resin's temperature where they touch.
Face = tuple[int, int, float]


def moment(field: Field, faces: Sequence[Face]) -> Moment:
    """What a pour is like now.

    Parameters
    ----------
    field : the pour.
    faces : where resin touches the mould.

    Returns
    -------
    Moment

    Examples
    --------
    >>> from calc.casting.cure.cells import Footprint
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> moment(field_of(Resin(Kinetics(1e-5)), Mould(Footprint(0.1, 1.0), 0.04), Start(296.15, 296.15), COARSE), ()).hottest_k
    296.15

    References
    ----------
    arithmetic.
    """
    k, columns = field.k, field.cut.columns
    resin = field.resin_k()
    fresh = field.conversions[(field.cut.fresh_row - field.cut.first_row) * columns :]
    hottest = max(resin)
    return Moment(
        field.time_s,
        hottest,
        min(resin),
        max([share * k[inner] + (1 - share) * k[outer] for inner, outer, share in faces], default=field.air_k),
        max(fresh),
        min(fresh),
        sum(fresh[-columns:]) / columns,
        (resin.index(hottest) // columns + 0.5) * columns / len(resin),
    )


def _faces(field: Field) -> list[Face]:
    """Where resin touches the mould."""
    cut = field.cut
    first, columns = cut.first_row, cut.columns
    found: list[Face] = []

    def join(i: int, c: int, k: int, d: int, size: float, other: float) -> None:
        material = cut.solids[k][d]
        if material is not None:
            inner, outer = field.conductivity / size, material.conductivity / other
            wide = len(cut.widths)
            found.append((i * wide + c, k * wide + d, inner / (inner + outer)))

    if first:
        for c in range(columns):
            join(first, c, first - 1, c, cut.heights[first], cut.heights[first - 1])
    if columns < len(cut.widths):
        for i in range(first, len(cut.heights)):
            join(i, columns - 1, i, columns, cut.widths[columns - 1], cut.widths[columns])
    return found


def run(resin: Resin, mould: Mould, start: Start, cut: Fineness = FINE, until: str = "cold", beneath: Field | None = None) -> Course:
    """A pour from its start.

    Parameters
    ----------
    resin, mould, start, cut, beneath : as for :func:`field_of`.
    until : ``peak`` ends once it is past its peak and has gelled, ``cold`` when all has gelled and it is as cool as the shop;
        either ends at 150 °C.

    Returns
    -------
    Course

    Examples
    --------
    >>> from calc.casting.cure.cells import Footprint
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.constants import ZERO_C
    >>> from calc.casting.cure.thermal import Films
    >>> course = run(Resin(Kinetics(1.4e-5)), Mould(Footprint(0.1, 1.0), 0.05, films=Films(10, 6, 5)), Start(296.15, 296.15), until="peak")
    >>> round(course.peak.hottest_k - ZERO_C), course.ran_away
    (47, False)

    References
    ----------
    cure-solver.
    """
    field = field_of(resin, mould, start, cut, beneath)
    seen: list[Moment] = []
    peak_k = 0.0
    for one in moments(field, cut.pace):
        seen.append(one)
        peak_k = max(peak_k, one.hottest_k)
        if one.hottest_k >= RUNAWAY_K or one.time_s > LONGEST_S:
            break
        over = one.hottest_k < max(peak_k - 1.0, start.air_k + 2.0)
        if until == "peak" and one.most >= GEL and over:
            break
        if until == "cold" and one.least >= GEL and one.top >= LAYER_BONDS and one.hottest_k <= start.air_k + 2.0:
            break
    return Course(tuple(seen), start.air_k, field)


def go_on(field: Field, seconds: float, pace: Pace) -> None:
    """Take a pour on by a time, or until it passes 150 °C.

    Parameters
    ----------
    field : it changes.
    seconds : s.
    pace : of the steps.

    Examples
    --------
    >>> from calc.casting.cure.cells import Footprint
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.pour import ROUGH
    >>> pour = field_of(Resin(Kinetics(1e-5)), Mould(Footprint(0.1, 1.0), 0.04), Start(296.15, 296.15), ROUGH)
    >>> go_on(pour, 3600.0, ROUGH.pace)
    >>> round(pour.time_s)
    3600

    References
    ----------
    cure-solver.
    """
    end = field.time_s + seconds
    dt = pace.first_s
    while field.time_s < end - 1e-6 and max(field.k) < RUNAWAY_K:
        _, dt = field.advance(min(dt, end - field.time_s), pace)


#: After 150 °C only the mould is followed, and roughly: how hot the resin gets from there is no forecast.
_AFTER = Pace(8.0, 0.08, 1800.0)
_PAST_K = 2.0


def hottest_mould(course: Course) -> float:
    """The hottest that the mould gets where resin touches it, after a runaway too: the resin was followed to 150 °C, its mould gets hot after that.

    Parameters
    ----------
    course : to its end or to its runaway; from there its field goes on, so ask once.

    Returns
    -------
    float
        K; 150 °C is the most that is told.

    Examples
    --------
    40 mm of a fast resin: it runs away long before the board knows of it.

    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.pour import ROUGH
    >>> from calc.casting.cure.calibrate import wide
    >>> course = run(Resin(Kinetics(2e-4)), wide(0.04), Start(296.15, 296.15), ROUGH)
    >>> course.mould_k < 340 < hottest_mould(course)
    True

    References
    ----------
    cure-solver.
    """
    most = course.mould_k
    if not course.ran_away:
        return most
    field, dt = course.field, _AFTER.first_s
    faces = _faces(field)
    while most < RUNAWAY_K and field.time_s < LONGEST_S:
        _, dt = field.advance(dt, _AFTER)
        now = moment(field, faces).mould_k
        most = max(most, now)
        if now < most - _PAST_K:
            break
    return min(most, RUNAWAY_K)


def peak_of(resin: Resin, mould: Mould, start: Start, cut: Fineness = COARSE, cap_k: float = RUNAWAY_K, beneath: Field | None = None) -> float:
    """The hottest that a pour gets, and nothing else: it ends as soon as that is known.

    Parameters
    ----------
    resin, mould, start, cut, beneath : as for :func:`field_of`.
    cap_k : hotter than this it is not followed, K.

    Returns
    -------
    float
        K; ``cap_k`` or a little more where it passes that.

    Examples
    --------
    >>> from calc.casting.cure.cells import Footprint
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.constants import ZERO_C
    >>> from calc.casting.cure.thermal import Films
    >>> round(peak_of(Resin(Kinetics(1.4e-5)), Mould(Footprint(0.1, 1.0), 0.05, films=Films(10, 6, 5)), Start(296.15, 296.15)) - ZERO_C)
    47

    References
    ----------
    cure-solver.
    """
    field = field_of(resin, mould, start, cut, beneath)
    fresh = (field.cut.fresh_row - field.cut.first_row) * field.cut.columns
    pace, dt, peak_k = cut.pace, cut.pace.first_s, 0.0
    while field.time_s < LONGEST_S:
        _, dt = field.advance(dt, pace)
        hottest = max(field.resin_k())
        peak_k = max(peak_k, hottest)
        if hottest >= cap_k or (hottest < peak_k - 0.05 and min(field.conversions[fresh:]) > _PAST_FASTEST):
            break
    return peak_k
