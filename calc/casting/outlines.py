"""Flat outlines by their corners: area, middle, whether the line crosses itself, and even ones made to measure. Lengths m, areas m2."""

from __future__ import annotations

import math
from collections.abc import Sequence

Point = tuple[float, float]
_ROUND = 48  # corners that stand for a circle in a drawing


def enclosed_area(corners: Sequence[Point]) -> float:
    """Area inside a line through the corners and back: |sum(x_i y_(i+1) - x_(i+1) y_i)| / 2.

    Parameters
    ----------
    corners : three or more, in order either way round; the line must not cross itself.

    Returns
    -------
    float
        m2.

    Examples
    --------
    >>> enclosed_area([(0, 0), (3, 0), (0, 4)])
    6.0

    References
    ----------
    The shoelace formula.
    """
    return abs(_signed(corners))


def middle_of(corners: Sequence[Point]) -> Point:
    """Centroid of the area inside the line.

    Parameters
    ----------
    corners : as for :func:`enclosed_area`.

    Returns
    -------
    tuple of float
        m; the mean of the corners where they enclose nothing.

    Examples
    --------
    >>> middle_of([(0, 0), (3, 0), (3, 2), (0, 2)])
    (1.5, 1.0)

    References
    ----------
    The shoelace formula's first moments.
    """
    area = _signed(corners)
    if not area:
        return sum(x for x, _ in corners) / len(corners), sum(y for _, y in corners) / len(corners)
    x = y = 0.0
    for (x1, y1), (x2, y2) in _sides(corners):
        cross = x1 * y2 - x2 * y1
        x += (x1 + x2) * cross
        y += (y1 + y2) * cross
    return x / (6 * area), y / (6 * area)


def crosses(corners: Sequence[Point]) -> bool:
    """Whether the line through the corners and back touches or crosses itself.

    Parameters
    ----------
    corners : in order.

    Returns
    -------
    bool

    Examples
    --------
    >>> crosses([(0, 0), (1, 1), (1, 0), (0, 1)]), crosses([(0, 0), (1, 0), (1, 1), (0, 1)])
    (True, False)

    References
    ----------
    Two straight pieces meet where the ends of each lie on both sides of, or on, the other.
    """
    sides = list(_sides(corners))
    if any(start == end for start, end in sides):
        return True
    count = len(sides)
    for i in range(count):
        for j in range(i + 2, count):
            if (j + 1) % count != i and _meet(*sides[i], *sides[j]):
                return True
    return any(_turns_back(sides[i - 1], sides[i]) for i in range(count))


def regular(sides: int, corner_radius_m: float) -> tuple[Point, ...]:
    """Corners of an even-sided shape round the origin, one flat below.

    Parameters
    ----------
    sides : three or more.
    corner_radius_m : centre to a corner.

    Returns
    -------
    tuple of points

    Examples
    --------
    >>> round(enclosed_area(regular(6, 1.0)), 4)
    2.5981

    References
    ----------
    Geometry.
    """
    first = -math.pi / 2 - math.pi / sides
    return tuple(
        (corner_radius_m * math.cos(first + 2 * math.pi * n / sides), corner_radius_m * math.sin(first + 2 * math.pi * n / sides)) for n in range(sides)
    )


def oval(length_m: float, width_m: float) -> tuple[Point, ...]:
    """An ellipse round the origin, as corners close enough to look round.

    Parameters
    ----------
    length_m, width_m : full axes.

    Returns
    -------
    tuple of points

    Examples
    --------
    >>> len(oval(0.3, 0.2))
    48

    References
    ----------
    Geometry.
    """
    turns = [2 * math.pi * n / _ROUND for n in range(_ROUND)]
    return tuple((length_m / 2 * math.cos(t), width_m / 2 * math.sin(t)) for t in turns)


def oblong(length_m: float, width_m: float) -> tuple[Point, ...]:
    """A rectangle round the origin.

    Parameters
    ----------
    length_m, width_m : along x and y.

    Returns
    -------
    tuple of points

    Examples
    --------
    >>> oblong(4, 2)
    ((-2.0, -1.0), (2.0, -1.0), (2.0, 1.0), (-2.0, 1.0))

    References
    ----------
    Geometry.
    """
    x, y = length_m / 2, width_m / 2
    return (-x, -y), (x, -y), (x, y), (-x, y)


def scaled(corners: Sequence[Point], factor: float) -> tuple[Point, ...]:
    """The same outline about its middle, larger or smaller.

    Parameters
    ----------
    corners : in order.
    factor : of every length.

    Returns
    -------
    tuple of points

    Examples
    --------
    >>> scaled(oblong(4, 2), 0.5)[2]
    (1.0, 0.5)

    References
    ----------
    Geometry.
    """
    mx, my = middle_of(corners)
    return tuple((mx + factor * (x - mx), my + factor * (y - my)) for x, y in corners)


def _signed(corners: Sequence[Point]) -> float:
    return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in _sides(corners)) / 2


def _sides(corners: Sequence[Point]) -> zip[tuple[Point, Point]]:
    return zip(corners, [*corners[1:], corners[0]], strict=True)


def _side_of(a: Point, b: Point, p: Point) -> float:
    """Which side of the line a to b the point lies on: positive to the left, 0 on it."""
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])


def _between(a: Point, b: Point, p: Point) -> bool:
    """Whether a point on the line a to b lies between them."""
    return min(a[0], b[0]) <= p[0] <= max(a[0], b[0]) and min(a[1], b[1]) <= p[1] <= max(a[1], b[1])


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    of_c, of_d, of_a, of_b = _side_of(a, b, c), _side_of(a, b, d), _side_of(c, d, a), _side_of(c, d, b)
    if of_c * of_d < 0 and of_a * of_b < 0:
        return True
    on = ((of_c, a, b, c), (of_d, a, b, d), (of_a, c, d, a), (of_b, c, d, b))
    return any(side == 0 and _between(start, end, point) for side, start, end, point in on)


def _turns_back(before: tuple[Point, Point], after: tuple[Point, Point]) -> bool:
    """Whether a side runs straight back over the one before it."""
    (a, b), (_, c) = before, after
    return _side_of(a, b, c) == 0 and (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0
