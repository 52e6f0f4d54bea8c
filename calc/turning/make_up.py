"""A blank of resin with woods in it: what it weighs, and where its centre of mass lies from the axis it turns about.

A wood, a metal disc or a stone may be let into woods named before it: it then takes their place for as deep as both go, counted from one face.

Seen from the face: x to the right, y up, the blank's middle at the origin; directions as angles in radians, anticlockwise from the
right. Lengths m, masses kg, densities kg/m3, out of balance kg m.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from calc.casting.outlines import Point, oblong
from calc.turning.clipping import Moments, common, inside_circle, inside_convex, inside_outline, moved

_CORNERS = 96  # corners that stand for a circle of wood, made to have its area
_SWEEP = math.pi / 4  # most that one side of a slice's far edge sweeps


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

    >>> half = weigh(Blank(0.300, 0.050, 1150), [Wood(band(0.0, 0.0, 1.0, 1.0), 650, 0.050)])
    >>> round(half.mass_kg, 4), round(1000 * half.eccentricity_m, 3)
    (3.1809, 17.684)

    References
    ----------
    Sum of masses and of their moments.
    """
    if blank.width_m is not None:
        whole = inside(blank, blank.corners, axis, turned_m)
    elif turned_m is None:
        whole = Moments(math.pi * blank.across_m**2 / 4, 0.0, 0.0).moved(-axis[0], -axis[1])
    else:
        whole = Moments(math.pi * turned_m**2 / 4, 0.0, 0.0)
    per_area = blank.density * blank.thickness_m
    bodies = [Body(per_area * whole.area, per_area * whole.x, per_area * whole.y), *swaps(blank, woods, axis, turned_m)]
    return Body(sum(body.mass_kg for body in bodies), sum(body.x for body in bodies), sum(body.y for body in bodies))


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

    >>> wood, brass = Wood(band(0.0, 0.0, 1.0, 1.0), 650, 0.050), Wood(round_wood(0.050, (0.060, 0.020)), 8500, 0.004, let_in=True)
    >>> round(1000 * swaps(Blank(0.300, 0.050, 1150), [wood, brass])[1].mass_kg, 3)
    61.654

    References
    ----------
    As :func:`weigh`.
    """

    def there(before: int, corners: tuple[Point, ...], depth: float) -> Body:
        """What an outline holds down to a depth, with so many of the woods in place."""
        mass, x, y = _of(blank.density * depth, inside(blank, corners, axis, turned_m))
        for number, wood in enumerate(woods[:before]):
            deep = min(depth, wood.depth_m)
            for sign, shared in common(corners, wood.corners):
                own = _of(wood.density * deep, inside(blank, shared, axis, turned_m))
                was = there(number if wood.let_in else 0, shared, deep)
                mass, x, y = mass + sign * (own[0] - was.mass_kg), x + sign * (own[1] - was.x), y + sign * (own[2] - was.y)
        return Body(mass, x, y)

    out = []
    for number, wood in enumerate(woods):
        own = _of(wood.density * wood.depth_m, inside(blank, wood.corners, axis, turned_m))
        was = there(number if wood.let_in else 0, wood.corners, wood.depth_m)
        out.append(Body(own[0] - was.mass_kg, own[1] - was.x, own[2] - was.y))
    return out


def _of(per_area: float, kept: Moments) -> tuple[float, float, float]:
    """Mass and moments of so much for each square metre."""
    return per_area * kept.area, per_area * kept.x, per_area * kept.y


def round_wood(across_m: float, middle: Point) -> tuple[Point, ...]:
    """Outline of a round one: many corners that enclose the area of the circle.

    Parameters
    ----------
    across_m : m.
    middle : its place, m.

    Returns
    -------
    tuple of points

    Examples
    --------
    >>> round(inside_outline(round_wood(0.100, (0.060, 0.0))).area * 1e6, 3)
    7853.982

    References
    ----------
    Geometry.
    """
    step = 2 * math.pi / _CORNERS
    reach = across_m / 2 * math.sqrt(step / math.sin(step))
    return tuple((middle[0] + reach * math.cos(n * step), middle[1] + reach * math.sin(n * step)) for n in range(_CORNERS))


def band(towards: float, edge_m: float, width_m: float, reach_m: float) -> tuple[Point, ...]:
    """Outline of what lies between two straight lines right across: a strip, or a whole side where it is wide enough.

    Parameters
    ----------
    towards : direction that looks straight at its edge from the middle, rad.
    edge_m : nearer edge from the middle, m; below 0 where the middle lies in it.
    width_m : m, on from there.
    reach_m : how far it runs to either side, m.

    Returns
    -------
    tuple of points

    Examples
    --------
    >>> band(0.0, 0.1, 0.2, 1.0)[0]
    (0.1, -1.0)

    References
    ----------
    Geometry.
    """
    far = edge_m + width_m
    return turned([(edge_m, -reach_m), (far, -reach_m), (far, reach_m), (edge_m, reach_m)], towards)


def slice_of(towards: float, opening: float, reach_m: float) -> tuple[Point, ...]:
    """Outline of a slice with its point in the middle.

    Parameters
    ----------
    towards : direction of its own middle, rad.
    opening : angle between its two straight edges, rad, under a full turn.
    reach_m : how far out it is needed, m.

    Returns
    -------
    tuple of points

    Examples
    --------
    A sixth of a disc: its middle lies 2 r sin(b) / (3 b) out, b half its opening.

    >>> import math
    >>> sixth = inside_circle(slice_of(0.0, math.pi / 3, 1.0), 1.0)
    >>> round(sixth.x / sixth.area, 6)
    0.63662

    References
    ----------
    Geometry.
    """
    pieces = max(1, math.ceil(opening / _SWEEP))
    far = reach_m / math.cos(_SWEEP / 2)
    turns = [towards - opening / 2 + opening * n / pieces for n in range(pieces + 1)]
    return ((0.0, 0.0), *((far * math.cos(turn), far * math.sin(turn)) for turn in turns))


def turned(corners: Sequence[Point], by: float) -> tuple[Point, ...]:
    """An outline turned about the middle.

    Parameters
    ----------
    corners : in order.
    by : rad, anticlockwise.

    Returns
    -------
    tuple of points

    Examples
    --------
    >>> turned([(1.0, 0.0)], 0.0)
    ((1.0, 0.0),)

    References
    ----------
    Geometry.
    """
    c, s = math.cos(by), math.sin(by)
    return tuple((c * x - s * y, s * x + c * y) for x, y in corners)
