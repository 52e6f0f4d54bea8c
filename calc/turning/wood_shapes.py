"""Outlines of woods as makers set them in: round, strips and sides with straight edges, slices. Conventions as in :mod:`calc.turning.make_up`."""

from __future__ import annotations

import math
from collections.abc import Sequence

from calc.casting.outlines import Point

_CORNERS = 96  # corners that stand for a circle of wood, made to have its area
_SWEEP = math.pi / 4  # most that one side of a slice's far edge sweeps


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
    >>> from calc.turning.clipping import inside_outline
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
    >>> from calc.turning.clipping import inside_circle
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
