"""Woods in resin, and others let into those: which material takes which one's place, where, and how deep.

Materials are told by number: 0 is the resin, 1 the first wood, and so on.
"""

from __future__ import annotations

from functools import lru_cache

from calc.turning.clipping import Outline, common

RESIN = 0
#: Where a wood is: its outline, how deep it goes, m, and whether it is let into those before it.
Place = tuple[Outline, float, bool]
#: One part of the face, and how much of each material's depth, m, comes there with a wood; below 0 for what had to make way.
Lot = tuple[Outline, tuple[tuple[int, float], ...]]


@lru_cache(maxsize=32)
def in_place_of(places: tuple[Place, ...]) -> tuple[tuple[Lot, ...], ...]:
    """What each wood brings and what makes way for it, once those before it are in place.

    Parameters
    ----------
    places : of the woods, in the order they go in; all depths from one face.

    Returns
    -------
    tuple of tuple of Lot
        for each wood the parts of the face it changes.

    Examples
    --------
    A disc 5 mm deep, wholly in a wood that goes 50 mm deep:

    >>> square, disc = Outline(((0, 0), (9, 0), (9, 9), (0, 9))), Outline(((4, 4), (5, 4), (5, 5), (4, 5)))
    >>> wood, insert = in_place_of(((square, 50, False), (disc, 5, True)))
    >>> wood[0][1], insert[0][1]
    (((1, 50.0), (0, -50.0)), ((2, 5.0), (1, -5.0)))

    References
    ----------
    Sum of volumes.
    """
    out = []
    for number, (outline, depth, let_in) in enumerate(places):
        found: dict[Outline, dict[int, float]] = {outline: {number + 1: 1.0 * depth}}
        _take(found, places, number if let_in else 0, outline, depth, -1.0)
        lots = ((part, tuple((which, deep) for which, deep in depths.items() if deep)) for part, depths in found.items())
        out.append(tuple(lot for lot in lots if lot[1]))
    return tuple(out)


def _take(found: dict[Outline, dict[int, float]], places: tuple[Place, ...], before: int, outline: Outline, depth: float, times: float) -> None:
    """Add so many times what an outline holds down to a depth, with so many of the woods in place."""
    _add(found, outline, RESIN, times * depth)
    for number, (other, other_depth, let_in) in enumerate(places[:before]):
        deep = min(depth, other_depth)
        for sign, shared in common(outline, other):
            _add(found, shared, number + 1, times * sign * deep)
            _take(found, places, number if let_in else 0, shared, deep, -times * sign)


def _add(found: dict[Outline, dict[int, float]], outline: Outline, which: int, deep: float) -> None:
    depths = found.setdefault(outline, {})
    depths[which] = depths.get(which, 0.0) + deep
