"""What puts a blank in balance: the wood shifted, the centre moved, one weight or two; and where its centre of mass is by a scale.

Conventions as in :mod:`calc.turning.make_up`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from calc.casting.outlines import Point
from calc.turning import make_up
from calc.turning.make_up import Blank, Wood

_ROUNDS = 40  # centres tried before giving up
_SHIFTS = 12  # shifts tried before giving up
_GROWN = 1.05  # times what the woods lacked before: more of them lies in the blank now, and what was learnt no longer holds
_DEAD = 1e-3  # of a step: a step that changed less than this of what it should teaches nothing
_NEAR = 1e-3  # of what it was: out of balance that counts as none
_NEARBY = 0.5  # of the largest round about the middle: a smaller round is no longer a piece of it
_HAIR = 1e-9  # rad: two directions that are one
_LEAST = 1e-6  # of the blank's mass: a difference in mass too small to shift by


def shift_to_balance(blank: Blank, woods: Sequence[Wood], which: Sequence[int]) -> Point | None:
    """How far to move some of the woods, together, so that the blank is in balance about its middle.

    Parameters
    ----------
    blank, woods : the make-up.
    which : places in ``woods`` of those that move.

    Returns
    -------
    tuple of float or None
        to the right and up, m; None when no move does it.

    Examples
    --------
    >>> from calc.turning.wood_shapes import round_wood
    >>> wood = Wood(round_wood(0.100, (0.060, 0.0)), 700, 0.050)
    >>> x, y = shift_to_balance(Blank(0.300, 0.050, 1150), [wood], [0])
    >>> round(1000 * x, 3), round(1000 * y, 3) + 0.0
    (-60.0, 0.0)

    References
    ----------
    Moments about the middle; the first step moves by what is out over the mass that the woods lack, and each further one learns from those
    before it (Broyden 1965).
    """
    body = make_up.weigh(blank, woods)
    rest = make_up.weigh(blank, [wood for number, wood in enumerate(woods) if number not in which])
    near, more = _NEAR * body.unbalance, body.mass_kg - rest.mass_kg
    if abs(more) < _LEAST * body.mass_kg:
        return (0.0, 0.0) if body.unbalance == 0 else None
    dx = dy = 0.0
    yields = (1 / more, 0.0, 0.0, 1 / more)  # how far to move for each kg m that is out
    for _ in range(_SHIFTS):
        if body.unbalance <= near:
            return dx, dy
        step = -(yields[0] * body.x + yields[1] * body.y), -(yields[2] * body.x + yields[3] * body.y)
        dx, dy = dx + step[0], dy + step[1]
        if math.hypot(dx, dy) > blank.across_m:
            return None
        after = make_up.weigh(blank, [wood.moved(dx, dy) if number in which else wood for number, wood in enumerate(woods)])
        lacks = after.mass_kg - rest.mass_kg
        if abs(lacks) > _GROWN * abs(more):
            more, yields = lacks, (1 / lacks, 0.0, 0.0, 1 / lacks)
        else:
            yields = _learnt(yields, step, (after.x - body.x, after.y - body.y))
        body = after
    return None


def _learnt(yields: tuple[float, float, float, float], step: Point, change: Point) -> tuple[float, float, float, float]:
    """What a step and the change it made teach of how far to move (Broyden)."""
    a, b, c, d = yields
    gone = a * change[0] + b * change[1], c * change[0] + d * change[1]
    across = step[0] * a + step[1] * c, step[0] * b + step[1] * d
    by = step[0] * gone[0] + step[1] * gone[1]
    if abs(by) < _DEAD * (step[0] ** 2 + step[1] ** 2):
        return yields
    off = (step[0] - gone[0]) / by, (step[1] - gone[1]) / by
    return a + off[0] * across[0], b + off[0] * across[1], c + off[1] * across[0], d + off[1] * across[1]


def balanced_centre(blank: Blank, woods: Sequence[Wood]) -> Point | None:
    """Centre about which the largest round that can be cut is in balance.

    Parameters
    ----------
    blank, woods : the make-up.

    Returns
    -------
    tuple of float or None
        from the blank's middle, m; None when none leaves half of the largest round.

    Notes
    -----
    A round blank mounted at its centre of mass is in balance only until it is cut true there: the wood on one side is still on that side.
    The centre wanted here lies towards the lighter side instead.

    Examples
    --------
    >>> from calc.turning.wood_shapes import round_wood
    >>> wood = Wood(round_wood(0.060, (0.010, 0.0)), 700, 0.050)
    >>> x, _ = balanced_centre(Blank(0.300, 0.050, 1150), [wood])
    >>> round(1000 * x, 2)
    10.0

    References
    ----------
    As :func:`shift_to_balance`, with the blank cut round about each centre tried.
    """
    x = y = 0.0
    near = _NEAR * make_up.weigh(blank, woods, turned_m=make_up.true_round(blank)).unbalance
    for _ in range(_ROUNDS):
        across = make_up.true_round(blank, (x, y))
        if across < _NEARBY * make_up.true_round(blank):
            return None
        body = make_up.weigh(blank, woods, (x, y), across)
        if body.unbalance <= near:
            return x, y
        more = body.mass_kg - make_up.weigh(blank, (), (x, y), across).mass_kg
        if abs(more) < _LEAST * body.mass_kg:
            return None
        x, y = x + body.x / more, y + body.y / more
    return None


def split_weight(weight_kg: float, at: float, first: float, second: float) -> tuple[float, float]:
    """One weight shared between two places at the same distance: m_a = m sin(b - th) / sin(b - a), m_b = m sin(th - a) / sin(b - a).

    Parameters
    ----------
    weight_kg : m, kg.
    at : th, its direction, rad.
    first, second : a and b, the directions of the two places, rad; ``at`` lies between them, and they are less than half a turn apart.

    Returns
    -------
    tuple of float
        kg at the first and at the second.

    Raises
    ------
    ValueError
        the two are half a turn or more apart, or both on one side.

    Examples
    --------
    15 g at 40 degrees, between 0 and 60:

    >>> import math
    >>> [round(1000 * w, 2) for w in split_weight(0.015, math.radians(40), 0.0, math.radians(60))]
    [5.92, 11.13]

    References
    ----------
    weight-splitting.
    """
    apart = _between(first, second)
    way = math.copysign(1.0, apart)
    before, after = way * _between(first, at), way * _between(at, second)
    if not _HAIR < abs(apart) < math.pi - _HAIR or before < -_HAIR or after < -_HAIR:
        raise ValueError("the weight has to lie between the two places, less than half a turn apart")
    return weight_kg * math.sin(after) / math.sin(abs(apart)), weight_kg * math.sin(before) / math.sin(abs(apart))


def centre_by_scale(mass_kg: float, apart_m: float, reading_kg: float, opposite_kg: float | None = None) -> float:
    """Centre of mass of a blank on two supports, one of them on a scale: x = L (w / m - 1/2).

    Parameters
    ----------
    mass_kg : m of the blank, kg, more than 0.
    apart_m : L between the supports, m; the blank's middle lies half-way between them.
    reading_kg : w on the scale, the support's own weight taken off.
    opposite_kg : the reading with the blank turned half round; the middle then need not lie quite half-way: x = L (w - w') / (2 m).

    Returns
    -------
    float
        m from the middle, towards the side that lay over the scale first.

    Examples
    --------
    >>> round(1000 * centre_by_scale(4.000, 0.400, 2.100), 6)
    10.0

    References
    ----------
    Moments about the other support.
    """
    if opposite_kg is None:
        return apart_m * (reading_kg / mass_kg - 0.5)
    return apart_m * (reading_kg - opposite_kg) / (2 * mass_kg)


def _between(first: float, second: float) -> float:
    """Angle from one direction to another, the short way, rad."""
    return (second - first + math.pi) % (2 * math.pi) - math.pi
