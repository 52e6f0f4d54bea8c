"""How far a disc on a small block bends under the tool: a thin plate, clamped where it is held, pushed at one place of its rim.

Symbols inside the functions: R radius of the disc, a radius held, t thickness, F the push, E modulus, nu Poisson's
ratio, B = E t^3 / (12 (1 - nu^2)) bending stiffness, beta = a / R. The push at one place is spread into waves round the rim,
cos(n theta), n = 0, 1, 2 ...; each wave has four constants, from no deflection and no slope at a, no moment and the push at R.
"""

from __future__ import annotations

import math
from functools import cache

from calc.sources import value
from calc.turning.discs import RESIN_MODULUS

PUSH_N = value("turning", "firm cut")
MOST_BEND_M = value("turning", "most bend") / 1e3
POISSON = value("turning", "poisson")
_NODES = 50  # the table that is read between has this many steps of beta
_WAVES, _MOST_WAVES = 40, 400
_Row = tuple[float, float, float, float]


def _shapes(n: int, r: float, beta: float) -> tuple[_Row, _Row, _Row, _Row]:
    """The four free shapes of a wave at r (radius over R), each with its first three slopes."""
    log = math.log(r)
    if n == 0:
        return (
            (1.0, 0.0, 0.0, 0.0),
            (r * r, 2 * r, 2.0, 0.0),
            (log, 1 / r, -1 / r**2, 2 / r**3),
            (r * r * log, 2 * r * log + r, 2 * log + 3, 2 / r),
        )
    if n == 1:
        return (
            (r, 1.0, 0.0, 0.0),
            (r**3, 3 * r * r, 6 * r, 6.0),
            (1 / r, -1 / r**2, 2 / r**3, -6 / r**4),
            (r * log, log + 1, 1 / r, -1 / r**2),
        )
    return _power(n, r, 1.0), _power(n + 2, r, 1.0), _power(-n, r, beta**n), _power(2 - n, r, beta**n)


def _power(k: int, r: float, scale: float) -> _Row:
    return scale * r**k, scale * k * r ** (k - 1), scale * k * (k - 1) * r ** (k - 2), scale * k * (k - 1) * (k - 2) * r ** (k - 3)


def _wave(n: int, beta: float, nu: float) -> float:
    """Deflection of the rim under a line load cos(n theta) of 1, in R^3 / B."""
    nn = float(n * n)
    held, rim = _shapes(n, beta, beta), _shapes(n, 1.0, beta)
    rows = [
        [w for w, _, _, _ in held] + [0.0],
        [slope for _, slope, _, _ in held] + [0.0],
        [w2 + nu * (w1 - nn * w) for w, w1, w2, _ in rim] + [0.0],
        [(1 - nu) * nn * (w1 - w) - (w3 + w2 - w1 - nn * w1 + 2 * nn * w) for w, w1, w2, w3 in rim] + [1.0],
    ]
    return sum(c * w for c, (w, _, _, _) in zip(_solved(rows), rim, strict=True))


def _solved(rows: list[list[float]]) -> list[float]:
    """Gauss, with the largest of each column as pivot, rows weighed by their largest."""
    size = len(rows)
    for column in range(size):
        pivot = max(range(column, size), key=lambda i: abs(rows[i][column]) / max(map(abs, rows[i][:size])))
        rows[column], rows[pivot] = rows[pivot], rows[column]
        for below in range(column + 1, size):
            factor = rows[below][column] / rows[column][column]
            rows[below] = [x - factor * y for x, y in zip(rows[below], rows[column], strict=True)]
    out = [0.0] * size
    for i in reversed(range(size)):
        out[i] = (rows[i][size] - sum(rows[i][j] * out[j] for j in range(i + 1, size))) / rows[i][i]
    return out


@cache
def ring_bend(beta: float, nu: float = POISSON) -> float:
    """Deflection of the rim under a load spread evenly round it, as a share of F R^2 / B.

    Parameters
    ----------
    beta : radius held over radius of the disc, 0.005 to less than 1.
    nu : Poisson's ratio, 0 to 0.5.

    Returns
    -------
    float

    Examples
    --------
    Held at half its radius, nu 0.3, in P R^2 / (E t^3):

    >>> round(12 * (1 - 0.3**2) * ring_bend(0.5, 0.3), 4)
    0.0877

    References
    ----------
    plate-theory.
    """
    return _wave(0, beta, nu) / (2 * math.pi)


@cache
def point_bend(beta: float, nu: float = POISSON) -> float:
    """Deflection under a push at one place of the rim, as a share of F R^2 / B.

    Parameters
    ----------
    beta : radius held over radius of the disc, 0.005 to less than 1.
    nu : Poisson's ratio, 0 to 0.5.

    Returns
    -------
    float

    Notes
    -----
    Bending only: a thick disc gives a little more by shear. The waves left out are added as a sum of 1 / n^3.

    Examples
    --------
    >>> round(point_bend(0.5), 4)
    0.0574

    References
    ----------
    plate-theory; worked out here by waves.
    """
    waves = min(max(_WAVES, math.ceil(20 / (1 - beta))), _MOST_WAVES)
    each = [_wave(n, beta, nu) for n in range(waves + 1)]
    return (each[0] + 2 * sum(each[1:]) + each[-1] * waves) / (2 * math.pi)


def rim_bend(diameter_m: float, held_m: float, thickness_m: float, push_n: float = PUSH_N, modulus_pa: float = RESIN_MODULUS) -> float:
    """How far the rim gives under a push at one place: k F R^2 / B.

    Parameters
    ----------
    diameter_m : of the disc, m, more than 0.
    held_m : diameter held or backed, m, more than 0; from the disc's own on, nothing gives.
    thickness_m : t, m, more than 0.
    push_n : F along the lathe, N.
    modulus_pa : E, Pa.

    Returns
    -------
    float
        m.

    Notes
    -----
    The block and the glue give too: what is felt is more. Warm resin is softer.

    Examples
    --------
    >>> round(1000 * rim_bend(0.450, 0.120, 0.015), 2)
    0.48

    References
    ----------
    plate-theory.
    """
    if held_m >= diameter_m:
        return 0.0
    stiffness = modulus_pa * thickness_m**3 / (12 * (1 - POISSON**2))
    return _between(held_m / diameter_m) * push_n * diameter_m**2 / 4 / stiffness


def _between(beta: float) -> float:
    """:func:`point_bend` read between the steps of a table; its share of (1 - beta)^2 is nearly straight."""
    place = min(max(beta * _NODES, 0.5), _NODES - 0.5)
    lower = max(math.floor(place), 0.5)
    upper = min(math.floor(place) + 1, _NODES - 0.5)
    along = (place - lower) / (upper - lower) if upper > lower else 0.0
    return (1 - beta) ** 2 * ((1 - along) * _node(lower) + along * _node(upper))


def _node(place: float) -> float:
    beta = place / _NODES
    return point_bend(beta) / (1 - beta) ** 2


def backing_diameter(diameter_m: float, thickness_m: float, most_m: float = MOST_BEND_M, push_n: float = PUSH_N) -> float:
    """Smallest disc to back the work with, so that its rim gives no more than a limit.

    Parameters
    ----------
    diameter_m : of the work, m, more than 0.
    thickness_m : of the work, m, more than 0.
    most_m : limit, m, more than 0.
    push_n : F, N.

    Returns
    -------
    float
        m, below ``diameter_m``; 1 % of it where next to nothing is needed.

    Examples
    --------
    >>> round(1000 * backing_diameter(0.450, 0.015))
    280

    References
    ----------
    :func:`rim_bend`, turned round.
    """
    low, high = 0.01 * diameter_m, diameter_m
    if rim_bend(diameter_m, low, thickness_m, push_n) <= most_m:
        return low
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (low, middle) if rim_bend(diameter_m, middle, thickness_m, push_n) <= most_m else (middle, high)
    return high


def thickness_for(diameter_m: float, held_m: float, most_m: float = MOST_BEND_M, push_n: float = PUSH_N) -> float:
    """Thickness at which the rim gives no more than a limit: the bend falls with its cube.

    Parameters
    ----------
    diameter_m : of the work, m, more than 0.
    held_m : diameter held or backed, m, more than 0.
    most_m : limit, m, more than 0.
    push_n : F, N.

    Returns
    -------
    float
        m; 0 where it is held all over.

    Examples
    --------
    >>> round(1000 * thickness_for(0.450, 0.120), 1)
    25.3

    References
    ----------
    :func:`rim_bend`, turned round.
    """
    at_one = rim_bend(diameter_m, held_m, 1.0, push_n)
    return math.cbrt(at_one / most_m)
