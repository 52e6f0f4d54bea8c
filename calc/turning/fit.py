"""Does a blank clear the lathe? What it sweeps, what sawing its corners gives, how long it may be, how far a wheel reaches into its face.

Lengths in m. Everything here is plain geometry; what has to be left clear is in ``data/fit.csv``.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from calc.guards import require_positive
from calc.sources import in_si, table

#: How a blank may be cut before it is mounted: sides of its outline, from the fewest saw cuts to the band saw's round.
SAWN = (4, 8, 16, 0)


#: A figure of ``data/fit.csv`` by the name of its row, in SI.
standard = in_si("fit")


@dataclass(frozen=True)
class Size:
    """Size of a lathe, m: ``swing`` over the bed, longest between ``centres``, width of the ``bed``, axis to the ``housing``'s front."""

    swing: float
    centres: float
    bed: float
    housing: float


@cache
def lathe_sizes() -> Mapping[str, Size]:
    """The sizes that stand in where the maker's own are not known, by the kind of lathe.

    Returns
    -------
    Mapping

    Examples
    --------
    >>> lathe_sizes()["bench"].swing
    0.254

    References
    ----------
    lathes-sold for the bench lathe's swing and length; the rest is our judgement: data/lathe_sizes.csv.
    """
    names = ("swing_mm", "centres_mm", "bed_mm", "housing_mm")
    return {row["name"]: Size(*(float(row[name]) / 1000 for name in names)) for row in table("lathe_sizes")}


def sweep(across_m: float, sides: int) -> float:
    """Circle that a regular outline sweeps about its middle: D = s / cos(pi / N); a round one sweeps its own width.

    Parameters
    ----------
    across_m : s, across the flats, m, more than 0.
    sides : N: 4 for a square, 8, 16; 0 for a round.

    Returns
    -------
    float
        diameter, m.

    Examples
    --------
    >>> [round(sweep(0.300, sides), 4) for sides in (4, 8, 16, 0)]
    [0.4243, 0.3247, 0.3059, 0.3]

    References
    ----------
    Plain geometry.
    """
    require_positive(across=across_m)
    return across_m if sides == 0 else across_m / math.cos(math.pi / sides)


def sweep_of_box(length_m: float, width_m: float) -> float:
    """Circle that a rectangle sweeps about its middle: corner to corner.

    Parameters
    ----------
    length_m, width_m : its sides, m, more than 0.

    Returns
    -------
    float
        diameter, m.

    Examples
    --------
    >>> round(sweep_of_box(0.400, 0.300), 3)
    0.5

    References
    ----------
    Plain geometry.
    """
    require_positive(length=length_m, width=width_m)
    return math.hypot(length_m, width_m)


def gap(swing_m: float, sweep_m: float) -> float:
    """Distance of what sweeps from what lies under it: (S - D) / 2.

    Parameters
    ----------
    swing_m : S, largest circle that clears it, m.
    sweep_m : D, m.

    Returns
    -------
    float
        m; below zero it strikes.

    Examples
    --------
    >>> round(gap(0.460, 0.4243), 4), round(gap(0.350, 0.4243), 4)
    (0.0178, -0.0371)

    References
    ----------
    lathe-size-text: swing is twice the height of the centres over the bed.
    """
    return (swing_m - sweep_m) / 2


def corner_cut(across_m: float) -> float:
    """How far from a square's corner, along either edge, a cut is marked that leaves eight equal sides: s (1 - 1 / sqrt 2).

    Parameters
    ----------
    across_m : s, side of the square, m, more than 0.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(corner_cut(0.300), 4)
    0.0879

    References
    ----------
    Plain geometry.
    """
    require_positive(across=across_m)
    return across_m * (1 - 1 / math.sqrt(2))


def usable_length(centres_m: float, spur_m: float, mount_m: float) -> float:
    """Room for the work between a mount and the tailstock's centre: C + spur - mount.

    Parameters
    ----------
    centres_m : C, longest between centres, spur to live centre, m.
    spur_m : how far the spur stands out, m; it is taken off for the mount.
    mount_m : how far the mount stands out from the spindle's end, block and all, m; the spur itself between centres.

    Returns
    -------
    float
        m; zero or less where the mount alone is too long.

    Examples
    --------
    >>> round(usable_length(0.380, 0.025, 0.095), 3)
    0.31

    References
    ----------
    Plain geometry.
    """
    return centres_m + spur_m - mount_m


@dataclass(frozen=True)
class Wheel:
    """A polishing wheel on the lathe and what stands round it, m.

    Parameters
    ----------
    radius : of the wheel.
    height : of the axis over the bed. bed_half : half the bed's width.
    to_head : from the headstock to the wheel's middle. head_half : from the axis to the headstock's front.
    to_tail, tail_half : the same of the tailstock; None where the mandrel ends free.
    """

    radius: float
    height: float
    bed_half: float
    to_head: float
    head_half: float
    to_tail: float | None = None
    tail_half: float = 0.0


@dataclass(frozen=True)
class Reach:
    """What a wheel reaches of a disc, m.

    Parameters
    ----------
    down, head, tail : the most it may hang over towards bed, headstock and tailstock; None where it passes in front of them.
    unreached : radius in the middle that is not reached.
    """

    down: float | None
    head: float | None
    tail: float | None
    unreached: float


def reach(wheel: Wheel, across_m: float, clear_m: float) -> Reach:
    """How near to the middle of a disc's face a wheel comes, the disc held upright against the wheel's front.

    Parameters
    ----------
    wheel : and what stands round it.
    across_m : D, of the disc, m, more than 0.
    clear_m : to be left on all sides, m.

    Returns
    -------
    Reach

    Notes
    -----
    The face stands in the plane that touches the wheel level with the axis, so it passes whatever is narrower than the wheel: bed,
    headstock or tailstock. Past a wider one it may hang over by no more than the distance to it. Lower on the wheel it comes nearer to the bed.

    Examples
    --------
    >>> narrow = Wheel(radius=0.050, height=0.150, bed_half=0.070, to_head=0.120, head_half=0.085)
    >>> round(reach(narrow, 0.300, 0.015).unreached, 4)
    0.0474
    >>> reach(Wheel(0.100, 0.150, 0.070, 0.120, 0.085), 0.300, 0.015).unreached
    0.0

    References
    ----------
    Plain geometry.
    """
    require_positive(across=across_m, wheel=wheel.radius)
    half = across_m / 2

    def limit(wide: float, distance: float | None) -> float | None:
        if distance is None or wheel.radius >= wide + clear_m - 1e-12:
            return None
        return max(0.0, distance - clear_m)

    down, head = limit(wheel.bed_half, wheel.height), limit(wheel.head_half, wheel.to_head)
    tail = limit(wheel.tail_half, wheel.to_tail)
    if head is not None and tail is not None and head + tail < across_m:
        return Reach(down, head, tail, half)
    below = max(0.0, half - down) if down is not None else 0.0
    beside = max(0.0, *(half - side for side in (head, tail) if side is not None)) if head is not None or tail is not None else 0.0
    return Reach(down, head, tail, min(half, math.hypot(below, beside)))


def least_stand_out(across_m: float, clear_m: float) -> float:
    """How far out a wheel has to stand for a disc's middle to be reached past a wide headstock: D / 2 + clear.

    Parameters
    ----------
    across_m : of the disc, m.
    clear_m : to be left, m.

    Returns
    -------
    float
        m, from the headstock to the wheel's middle.

    Examples
    --------
    >>> round(least_stand_out(0.300, 0.015), 3)
    0.165

    References
    ----------
    Plain geometry.
    """
    return across_m / 2 + clear_m
