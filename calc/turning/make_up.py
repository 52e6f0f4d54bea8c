"""A blank of resin with woods in it: what it weighs, and where its centre of mass lies from the axis it turns about.

A wood, a metal disc or a stone may be let into woods named before it: it then takes their place for as deep as both go, counted from one face.

Seen from the face: x to the right, y up, the blank's middle at the origin; directions as angles in radians, anticlockwise from the
right. Lengths m, masses kg, densities kg/m3, out of balance kg m.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from calc.casting.outlines import Point, oblong
from calc.turning.clipping import Moments, Outline, inside_circle, inside_convex, inside_outline, moved
from calc.turning.let_in import Lot, in_place_of


@dataclass(frozen=True)
class Blank:
    """Round, or with four square corners where it has a width; of one thickness, of resin all through but for the woods."""

    across_m: float
    thickness_m: float
    density: float
    width_m: float | None = None

    @property
    def corners(self) -> tuple[Point, ...]:
        """Its corners; none when it is round."""
        return () if self.width_m is None else oblong(self.across_m, self.width_m)


@dataclass(frozen=True)
class Wood:
    """One wood, or anything else set into the resin: its outline, its density, how deep it goes, and whether it is let into those before it."""

    corners: tuple[Point, ...]
    density: float
    depth_m: float
    let_in: bool = False

    @cached_property
    def outline(self) -> Outline:
        """Its corners, with what is worked out of them."""
        return Outline(self.corners)

    def moved(self, dx: float, dy: float) -> Wood:
        """The same one moved by so much."""
        return replace(self, corners=moved(self.corners, dx, dy))


@dataclass(frozen=True)
class Body:
    """What turns: its mass, kg, and its out of balance about the axis, kg m, as a vector."""

    mass_kg: float
    x: float
    y: float

    @property
    def unbalance(self) -> float:
        """U = m e, kg m."""
        return math.hypot(self.x, self.y)

    @property
    def eccentricity_m(self) -> float:
        """e: centre of mass to axis, m."""
        return self.unbalance / self.mass_kg

    @property
    def heavy(self) -> float:
        """Direction of the heavy spot, rad."""
        return math.atan2(self.y, self.x)


def true_round(blank: Blank, axis: Point = (0.0, 0.0)) -> float:
    """Largest round that can be turned from a blank about an axis.

    Parameters
    ----------
    blank : as it is.
    axis : where it is mounted, from its middle, m; inside it.

    Returns
    -------
    float
        m across.

    Examples
    --------
    >>> round(true_round(Blank(0.300, 0.05, 1150), (0.003, 0.004)), 3)
    0.29

    References
    ----------
    Geometry.
    """
    if blank.width_m is None:
        return blank.across_m - 2 * math.hypot(*axis)
    return min(blank.across_m - 2 * abs(axis[0]), blank.width_m - 2 * abs(axis[1]))


def swept(blank: Blank, axis: Point = (0.0, 0.0)) -> float:
    """Circle that a blank sweeps as it is.

    Parameters
    ----------
    blank, axis : as for :func:`true_round`.

    Returns
    -------
    float
        m across.

    Examples
    --------
    >>> round(swept(Blank(0.300, 0.05, 1150, width_m=0.400)), 3)
    0.5

    References
    ----------
    Geometry.
    """
    if blank.width_m is None:
        return blank.across_m + 2 * math.hypot(*axis)
    return 2 * max(math.hypot(x - axis[0], y - axis[1]) for x, y in blank.corners)


def inside(blank: Blank, corners: Sequence[Point], axis: Point = (0.0, 0.0), turned_m: float | None = None) -> Moments:
    """The part of an outline that lies in the blank, with its moments about the axis.

    Parameters
    ----------
    blank : as it was before turning.
    corners : of the outline, from the blank's middle, m.
    axis : where the blank is mounted, from its middle, m.
    turned_m : turned down to this size across, about the axis; None for not turned at all.

    Returns
    -------
    Moments

    Examples
    --------
    >>> side = [(0.0, -1.0), (1.0, -1.0), (1.0, 1.0), (0.0, 1.0)]
    >>> round(inside(Blank(0.300, 0.05, 1150), side).x, 9)
    0.00225

    References
    ----------
    Geometry.
    """
    if blank.width_m is not None:
        corners = inside_convex(corners, blank.corners)
        if not corners:
            return Moments(0.0, 0.0, 0.0)
    if turned_m is not None:
        return inside_circle(moved(corners, -axis[0], -axis[1]), turned_m / 2)
    kept = inside_circle(corners, blank.across_m / 2) if blank.width_m is None else inside_outline(corners)
    return kept.moved(-axis[0], -axis[1])


def weigh(blank: Blank, woods: Sequence[Wood], axis: Point = (0.0, 0.0), turned_m: float | None = None) -> Body:
    """Mass and out of balance: m = rho_0 A t + sum dm, U = sum dm c - o m, dm = rho A_wood t_wood less what was there before.

    Parameters
    ----------
    blank : as it was before turning.
    woods : what is set in it; they do not overlap, but for one that is let into those before it.
    axis : o, where it is mounted, from its middle, m.
    turned_m : turned down to this size across; for a round blank no more than :func:`true_round`.

    Returns
    -------
    Body

    Examples
    --------
    300 mm of resin, 50 mm thick, half of it wood:

    >>> from calc.turning.wood_shapes import band
    >>> half = weigh(Blank(0.300, 0.050, 1150), [Wood(band(0.0, 0.0, 1.0, 1.0), 650, 0.050)])
    >>> round(half.mass_kg, 4), round(1000 * half.eccentricity_m, 3)
    (3.1809, 17.684)

    References
    ----------
    Sum of masses and of their moments.
    """
    mass = x = y = 0.0
    for density, part in zip((blank.density, *(wood.density for wood in woods)), volumes(blank, woods, axis, turned_m), strict=True):
        mass, x, y = mass + density * part.area, x + density * part.x, y + density * part.y
    return Body(mass, x, y)


def volumes(blank: Blank, woods: Sequence[Wood], axis: Point = (0.0, 0.0), turned_m: float | None = None) -> list[Moments]:
    """What the resin and each wood fill once all are in place: volume, m3, and its first moments about the axis, m4.

    Parameters
    ----------
    blank, woods, axis, turned_m : as for :func:`weigh`.

    Returns
    -------
    list of Moments
        the resin's first; volumes where a Moments says area.

    Examples
    --------
    >>> from calc.turning.wood_shapes import band
    >>> half = volumes(Blank(0.300, 0.050, 1150), [Wood(band(0.0, 0.0, 1.0, 1.0), 650, 0.050)])
    >>> [round(1e6 * part.area, 1) for part in half]
    [1767.1, 1767.1]

    References
    ----------
    Geometry.
    """
    if blank.width_m is not None:
        whole = inside(blank, blank.corners, axis, turned_m)
    elif turned_m is None:
        whole = Moments(math.pi * blank.across_m**2 / 4, 0.0, 0.0).moved(-axis[0], -axis[1])
    else:
        whole = Moments(math.pi * turned_m**2 / 4, 0.0, 0.0)
    found = [whole.times(blank.thickness_m), *(Moments(0.0, 0.0, 0.0) for _ in woods)]
    for lots in in_place_of(_places(woods)):
        for outline, depths in lots:
            kept = kept_of(blank, outline, axis, turned_m)
            for which, depth in depths:
                found[which] = found[which].plus(kept.times(depth))
    return found


def swaps(blank: Blank, woods: Sequence[Wood], axis: Point = (0.0, 0.0), turned_m: float | None = None) -> list[Body]:
    """What each wood adds to what was in its place before it, as mass and moments about the axis; below 0 where it is lighter.

    Parameters
    ----------
    blank, woods, axis, turned_m : as for :func:`weigh`.

    Returns
    -------
    list of Body
        one for each wood.

    Examples
    --------
    A brass disc 4 mm deep, let into wood that goes right through:

    >>> from calc.turning.wood_shapes import band, round_wood
    >>> wood, brass = Wood(band(0.0, 0.0, 1.0, 1.0), 650, 0.050), Wood(round_wood(0.050, (0.060, 0.020)), 8500, 0.004, let_in=True)
    >>> round(1000 * swaps(Blank(0.300, 0.050, 1150), [wood, brass])[1].mass_kg, 3)
    61.654

    References
    ----------
    As :func:`weigh`.
    """
    densities = (blank.density, *(wood.density for wood in woods))
    return [_sum(densities, lots, lambda outline: kept_of(blank, outline, axis, turned_m)) for lots in in_place_of(_places(woods))]


def _sum(densities: Sequence[float], lots: Sequence[Lot], kept: Callable[[Outline], Moments]) -> Body:
    mass = x = y = 0.0
    for outline, depths in lots:
        per_area, part = sum(densities[which] * depth for which, depth in depths), kept(outline)
        mass, x, y = mass + per_area * part.area, x + per_area * part.x, y + per_area * part.y
    return Body(mass, x, y)


def _places(woods: Sequence[Wood]) -> tuple[tuple[Outline, float, bool], ...]:
    """Where the woods are, whatever they weigh."""
    return tuple((wood.outline, wood.depth_m, wood.let_in) for wood in woods)


def kept_of(blank: Blank, outline: Outline, axis: Point = (0.0, 0.0), turned_m: float | None = None) -> Moments:
    """As :func:`inside`, quicker where all or none of the outline is kept.

    Parameters
    ----------
    blank, axis, turned_m : as for :func:`inside`.
    outline : from the blank's middle, m.

    Returns
    -------
    Moments

    Examples
    --------
    >>> from calc.turning.wood_shapes import band
    >>> round(kept_of(Blank(0.300, 0.05, 1150), Outline(band(0.0, 0.0, 1.0, 1.0))).x, 9)
    0.00225

    References
    ----------
    Geometry.
    """
    (mx, my), reach = outline.middle, outline.reach
    if blank.width_m is None or turned_m is not None:
        (cx, cy), rim = (axis, turned_m / 2) if turned_m is not None else ((0.0, 0.0), blank.across_m / 2)
        far = math.hypot(mx - cx, my - cy)
        if far - reach >= rim:
            return Moments(0.0, 0.0, 0.0)
        within = far + reach <= rim
    else:
        within = True
    if within and (blank.width_m is None or (abs(mx) + reach <= blank.across_m / 2 and abs(my) + reach <= blank.width_m / 2)):
        return outline.whole.moved(-axis[0], -axis[1])
    return inside(blank, outline.corners, axis, turned_m)
