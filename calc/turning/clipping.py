"""Flat outlines cut to a blank: area and first moments inside a circle or inside straight sides, and what two share. Lengths m."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

from calc.casting.outlines import Point

_TOUCHES = 1e-12  # of the radius: a side this near to the circle only touches it


@dataclass(frozen=True)
class Moments:
    """Area, m2, and its first moments about the origin, m3: area times the place of its middle."""

    area: float
    x: float
    y: float

    def moved(self, dx: float, dy: float) -> Moments:
        """The same area moved by so much."""
        return Moments(self.area, self.x + self.area * dx, self.y + self.area * dy)

    def times(self, factor: float) -> Moments:
        """So many times as much; with a thickness, m, a volume, m3, and its moments, m4."""
        return Moments(factor * self.area, factor * self.x, factor * self.y)

    def plus(self, other: Moments) -> Moments:
        """Both together."""
        return Moments(self.area + other.area, self.x + other.x, self.y + other.y)


@dataclass(frozen=True, eq=False)
class Outline:
    """Corners in order either way round, of any shape that does not cross itself; what is asked of it again is worked out once."""

    corners: tuple[Point, ...]

    @cached_property
    def whole(self) -> Moments:
        """Its area and moments."""
        return inside_outline(self.corners)

    @cached_property
    def box(self) -> tuple[float, float, float, float]:
        """The box round it: left, low, right, top."""
        xs, ys = [x for x, _ in self.corners], [y for _, y in self.corners]
        return min(xs), min(ys), max(xs), max(ys)

    @cached_property
    def middle(self) -> Point:
        """Middle of that box."""
        left, low, right, top = self.box
        return (left + right) / 2, (low + top) / 2

    @cached_property
    def reach(self) -> float:
        """Radius of a circle round that middle that holds all of it, m."""
        mx, my = self.middle
        return math.sqrt(max([(x - mx) * (x - mx) + (y - my) * (y - my) for x, y in self.corners]))

    @cached_property
    def is_convex(self) -> bool:
        """Whether no corner is turned in."""
        before = [*self.corners[-1:], *self.corners[:-1]]
        turns = [_left_of(a, b, c) for a, b, c in zip(before, self.corners, [*self.corners[1:], *self.corners[:1]], strict=True)]
        return min(turns) >= 0 or max(turns) <= 0

    @cached_property
    def edges(self) -> tuple[tuple[float, float, float, float, float], ...]:
        """Its sides anticlockwise: where each starts, how far it runs to the right and up, and its length."""
        ahead = self.corners if _left_about(self.corners) > 0 else self.corners[::-1]
        return tuple((ax, ay, bx - ax, by - ay, math.hypot(bx - ax, by - ay)) for (ax, ay), (bx, by) in _sides(ahead))

    def part(self, corners: tuple[Point, ...]) -> Outline:
        """This one where it was left whole, or what was left of it."""
        return self if corners == self.corners else Outline(corners)


def moved(corners: Sequence[Point], dx: float, dy: float) -> tuple[Point, ...]:
    """The same outline moved by so much.

    Parameters
    ----------
    corners : in order.
    dx, dy : to the right and up, m.

    Returns
    -------
    tuple of points

    Examples
    --------
    >>> moved([(0, 0), (1, 0), (0, 1)], 2, 0)
    ((2, 0), (3, 0), (2, 1))

    References
    ----------
    Geometry.
    """
    return tuple((x + dx, y + dy) for x, y in corners)


def inside_outline(corners: Sequence[Point]) -> Moments:
    """Area and first moments inside a line through the corners and back.

    Parameters
    ----------
    corners : in order either way round; the line must not cross itself.

    Returns
    -------
    Moments

    Examples
    --------
    >>> inside_outline([(0, 0), (2, 0), (2, 2), (0, 2)])
    Moments(area=4.0, x=4.0, y=4.0)

    References
    ----------
    The shoelace formula and its first moments.
    """
    area = x = y = 0.0
    for (x1, y1), (x2, y2) in _sides(corners):
        cross = x1 * y2 - x2 * y1
        area += cross / 2
        x += (x1 + x2) * cross / 6
        y += (y1 + y2) * cross / 6
    return _upright(area, x, y)


def inside_circle(corners: Sequence[Point], radius_m: float) -> Moments:
    """Area and first moments of the part of an outline that lies in a circle round the origin, exact.

    Parameters
    ----------
    corners : in order either way round, of any shape that does not cross itself.
    radius_m : of the circle, m, more than 0.

    Returns
    -------
    Moments

    Notes
    -----
    Seen from the centre, each side sweeps triangles where it is inside, r^2 a / 2 of a sector where it is outside.

    Examples
    --------
    Half of a disc: its middle lies 4 r / (3 pi) from the centre.

    >>> half = inside_circle([(0, -9), (9, -9), (9, 9), (0, 9)], 1.0)
    >>> round(half.area, 6), round(half.x / half.area, 6)
    (1.570796, 0.424413)

    References
    ----------
    Geometry.
    """
    near = [cx * cx + cy * cy <= radius_m * radius_m for cx, cy in corners]
    if all(near):
        return inside_outline(corners)
    area = x = y = 0.0
    for (start, end), starts_near, ends_near in zip(_sides(corners), near, [*near[1:], near[0]], strict=True):
        for p, q, within in [(start, end, True)] if starts_near and ends_near else _cut_by_circle(start, end, radius_m):
            cross = p[0] * q[1] - p[1] * q[0]
            if within:
                area += cross / 2
                x += (p[0] + q[0]) * cross / 6
                y += (p[1] + q[1]) * cross / 6
                continue
            area += radius_m**2 / 2 * math.atan2(cross, p[0] * q[0] + p[1] * q[1])
            p_far, q_far = math.hypot(*p), math.hypot(*q)
            x += radius_m**3 / 3 * (q[1] / q_far - p[1] / p_far)
            y -= radius_m**3 / 3 * (q[0] / q_far - p[0] / p_far)
    return _upright(area, x, y)


def inside_convex(corners: Sequence[Point], frame: Sequence[Point]) -> tuple[Point, ...]:
    """The part of an outline inside a frame with no corner turned in.

    Parameters
    ----------
    corners : of any shape that does not cross itself.
    frame : corners in order, anticlockwise.

    Returns
    -------
    tuple of points
        none when nothing is inside; parts that fall asunder stay joined by a line with no area.

    Examples
    --------
    >>> inside_convex([(0, 0), (4, 0), (4, 1), (0, 1)], [(-2, -2), (2, -2), (2, 2), (-2, 2)])
    ((2.0, 0.0), (2.0, 1.0), (0, 1), (0, 0))

    References
    ----------
    One side of the frame after the other cuts off what lies beyond it (Sutherland and Hodgman).
    """
    return _cut(Outline(tuple(corners)), Outline(tuple(frame)))


@lru_cache(maxsize=256)
def common(one: Outline, other: Outline) -> tuple[tuple[int, Outline], ...]:
    """What two outlines share, as outlines to be counted in (1) or taken off (-1).

    Parameters
    ----------
    one, other : of any shape.

    Returns
    -------
    tuple of (int, Outline)
        none where they share nothing; one of the two itself where the other holds all of it.

    Notes
    -----
    An outline with a corner turned in is the sum of the triangles from its first corner to each side, those swept backwards taken off.

    Examples
    --------
    >>> two = common(Outline(((0, 0), (2, 0), (2, 2), (0, 2))), Outline(((1, 1), (3, 1), (3, 3), (1, 3))))
    >>> [(sign, kept.corners) for sign, kept in two]
    [(1, ((2.0, 2.0), (1.0, 2.0), (1, 1), (2.0, 1.0)))]

    References
    ----------
    As :func:`inside_convex`.
    """
    if _apart(one, other):
        return ()
    for holds, held in ((one, other), (other, one)):
        if _clear_of(held, holds):
            return ((1, held),) if _holds(holds, held.middle) else ()
    frames = sorted((outline for outline in (one, other) if outline.is_convex), key=lambda outline: len(outline.corners))
    if frames:
        subject = other if frames[0] is one else one
        kept = _cut(subject, frames[0])
        return ((1, subject.part(kept)),) if kept else ()
    first, out = other.corners[0], []
    for a, b in itertools.pairwise(other.corners[1:]):
        turn = _left_of(first, a, b)
        kept = _cut(one, Outline((first, a, b))) if turn else ()
        if kept:
            out.append((1 if turn > 0 else -1, one.part(kept)))
    way = 1 if _left_about(other.corners) > 0 else -1
    return tuple((way * sign, kept) for sign, kept in out)


def _clear_of(outline: Outline, other: Outline) -> bool:
    """Whether the circle round an outline meets no side of another, so that the other holds all of it or nothing."""
    (mx, my), reach = outline.middle, outline.reach
    for ax, ay, dx, dy, long in other.edges:
        if abs(dx * (my - ay) - dy * (mx - ax)) < reach * long:  # the circle meets the line; the side as well?
            along = min(max(((mx - ax) * dx + (my - ay) * dy) / (long * long), 0.0), 1.0)
            if math.hypot(mx - ax - along * dx, my - ay - along * dy) < reach:
                return False
    return True


def _holds(outline: Outline, point: Point) -> bool:
    """Whether a point lies in an outline: a line from it to the right crosses its sides an odd number of times."""
    px, py = point
    crossed = False
    for ax, ay, dx, dy, _ in outline.edges:
        if (ay > py) != (ay + dy > py) and ax + dx * (py - ay) / dy > px:
            crossed = not crossed
    return crossed


def _cut(outline: Outline, frame: Outline) -> tuple[Point, ...]:
    """The part of an outline inside a frame with no corner turned in; a side of it too far off to cut is passed over."""
    kept = list(outline.corners)
    (mx, my), reach = outline.middle, outline.reach
    for ax, ay, dx, dy, long in frame.edges:
        off = dx * (my - ay) - dy * (mx - ax)
        if off >= reach * long:
            continue
        if off < -reach * long:
            return ()
        left = [dx * (y - ay) - dy * (x - ax) for x, y in kept]  # above 0 on the side that is kept
        if min(left) >= 0:
            continue
        before, kept = kept, []
        for (start, s), (end, e) in zip(zip(before, left, strict=True), zip([*before[1:], before[0]], [*left[1:], left[0]], strict=True), strict=True):
            if (s < 0) != (e < 0):
                share = s / (s - e)
                kept.append((start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])))
            if e >= 0:
                kept.append(end)
        if not kept:
            return ()
    return tuple(kept)


def _cut_by_circle(start: Point, end: Point, radius: float) -> list[tuple[Point, Point, bool]]:
    """A side in pieces, each wholly inside or outside the circle, and which."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    a, b, c = dx * dx + dy * dy, start[0] * dx + start[1] * dy, start[0] ** 2 + start[1] ** 2 - radius**2
    root = b * b - a * c
    places = [0.0]
    if a > 0 and root > 0:
        places += [t for t in ((-b - math.sqrt(root)) / a, (-b + math.sqrt(root)) / a) if 0 < t < 1]
    points = [*((start[0] + t * dx, start[1] + t * dy) for t in places), end]
    return [(p, q, math.hypot(p[0] + q[0], p[1] + q[1]) < 2 * radius * (1 - _TOUCHES)) for p, q in itertools.pairwise(points)]


def _apart(one: Outline, other: Outline) -> bool:
    """Whether the two lie beside or over each other, by the boxes round them."""
    (left, low, right, top), (other_left, other_low, other_right, other_top) = one.box, other.box
    return right <= other_left or other_right <= left or top <= other_low or other_top <= low


def _left_about(corners: Sequence[Point]) -> float:
    """Twice the area, above 0 where the corners go anticlockwise."""
    return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in _sides(corners))


def _left_of(a: Point, b: Point, p: Point) -> float:
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])


def _sides(corners: Sequence[Point]) -> zip[tuple[Point, Point]]:
    return zip(corners, [*corners[1:], corners[0]], strict=True)


def _upright(area: float, x: float, y: float) -> Moments:
    """The same whichever way round the corners came."""
    return Moments(area, x, y) if area >= 0 else Moments(-area, -x, -y)
