"""Walls of a mould: the strip of a round one, how true it stands, and how hard the liquid pushes.

Lengths in m, densities in kg/m3, pressures in Pa, forces in N. ``depth`` is how high the liquid stands.
"""

from __future__ import annotations

import math

from calc.constants import STANDARD_GRAVITY
from calc.guards import require_positive


def strip_length(across: float, lap: float, thickness: float = 0.0, laps: int = 1) -> float:
    """The strip for a round mould: pi (D + t) + n l, along the middle of its thickness.

    Parameters
    ----------
    across : D inside, m, more than zero.
    lap : l, how far the ends go over each other, m.
    thickness : t of the strip, m.
    laps : n, one for each strip in the ring.

    Returns
    -------
    float
        m, all strips together.

    Examples
    --------
    >>> round(strip_length(0.300, 0.040), 4), round(strip_length(0.300, 0.040, 0.002), 4)
    (0.9825, 0.9888)

    References
    ----------
    Exact: a bent strip keeps its length along the middle of its thickness.
    """
    require_positive(across=across)
    return math.pi * (across + thickness) + laps * lap


def strips_needed(across: float, lap: float, thickness: float, longest: float) -> int:
    """How many strips of a length make the ring: the smallest n with n s >= pi (D + t) + n l.

    Parameters
    ----------
    across, lap, thickness : as in :func:`strip_length`.
    longest : s, the longest strip at hand, m; more than the lap.

    Returns
    -------
    int
        At least one.

    Raises
    ------
    ValueError
        The strip is no longer than its lap.

    Examples
    --------
    >>> strips_needed(0.300, 0.040, 0.0015, 0.600)
    2

    References
    ----------
    Exact arithmetic.
    """
    if longest <= lap:
        raise ValueError("a strip no longer than its lap closes no ring")
    return max(1, math.ceil(strip_length(across, 0.0, thickness) / (longest - lap) - 1e-9))


def narrowest(across: float, lap: float, laps: int = 1) -> float:
    """Largest true round in a springy hoop that stands free: D - n l (1 - (pi/n) cot(pi/n)) / (2 pi); for one lap D - l / (2 pi).

    Where two layers lie on each other the same bending curves them half as much. The lap stays flatter, the rest
    bends more, and the whole ring goes out of round: by a share of the lap, whatever its size.

    Parameters
    ----------
    across : D, inside, if it were round, m, more than zero.
    lap : l, m.
    laps : n, evenly round the ring.

    Returns
    -------
    float
        m; across the lap it is the least width.

    Notes
    -----
    First order in l/D; layers that slide on each other as they are bent. Glued flat before it is bent, a lap costs 7/4 of this.
    Pegs or a ring outside, and the push of the resin, make it rounder.

    Examples
    --------
    >>> round(narrowest(0.300, 0.040), 4), round(narrowest(0.300, 0.040, 2), 4)
    (0.2936, 0.2873)

    References
    ----------
    Bending of a thin ring, worked out here: w + w'' = (n l / 2 pi) (sum of cos m x, m a multiple of n, over one), with w outwards.
    """
    require_positive(across=across, laps=laps)
    if laps == 1:
        return across - lap / (2 * math.pi)
    return across - laps * lap / (2 * math.pi) * (1 - math.pi / laps / math.tan(math.pi / laps))


def widest(across: float, lap: float) -> float:
    """Greatest width of a hoop with one lap that stands free, beside the lap: D + l (1/4 - 1/(2 pi)).

    Parameters
    ----------
    across, lap : as in :func:`narrowest`.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(widest(0.300, 0.040), 4)
    0.3036

    References
    ----------
    As :func:`narrowest`.
    """
    require_positive(across=across)
    return across + lap * (1 / 4 - 1 / (2 * math.pi))


def bend_strain(thickness: float, across: float) -> float:
    """How much the outside of a strip is stretched by bending it: t / (D + t).

    Parameters
    ----------
    thickness : t, m.
    across : D inside, m, more than zero.

    Returns
    -------
    float
        fraction.

    Examples
    --------
    >>> round(bend_strain(0.0015, 0.300), 5)
    0.00498

    References
    ----------
    Exact for a strip that keeps its thickness.
    """
    require_positive(across=across)
    return thickness / (across + thickness)


def pressure_at(depth: float, density: float) -> float:
    """Pressure at a depth: p = rho g h.

    Parameters
    ----------
    depth : h, m.
    density : of the liquid, kg/m3.

    Returns
    -------
    float
        Pa over the air.

    Examples
    --------
    >>> round(pressure_at(0.060, 1100), 1)
    647.2

    References
    ----------
    Hydrostatics.
    """
    return density * STANDARD_GRAVITY * depth


def wall_push(depth: float, density: float, length: float) -> float:
    """Push on a straight wall: rho g h^2 / 2 times its length; it acts a third of the depth above the floor.

    Parameters
    ----------
    depth : h, m.
    density : kg/m3.
    length : of the wall, m.

    Returns
    -------
    float
        N.

    Examples
    --------
    >>> round(wall_push(0.060, 1100, 1.0), 1)
    19.4

    References
    ----------
    Hydrostatics.
    """
    return pressure_at(depth, density) * depth / 2 * length


def wall_moment(depth: float, density: float, length: float) -> float:
    """What turns a straight wall over, about the floor: rho g h^3 / 6 times its length.

    Parameters
    ----------
    depth : h, m.
    density : kg/m3.
    length : of the wall, m.

    Returns
    -------
    float
        N m.

    Examples
    --------
    >>> round(wall_moment(0.100, 1090, 0.600), 3)
    1.069

    References
    ----------
    Hydrostatics.
    """
    return wall_push(depth, density, length) * depth / 3


def hoop_pull(depth: float, density: float, across: float) -> float:
    """Pull along a round wall, over its whole height: rho g h^2 D / 4; the lap or the seam has to hold it.

    Parameters
    ----------
    depth : h, m.
    density : kg/m3.
    across : D inside, m.

    Returns
    -------
    float
        N.

    Notes
    -----
    For walls thinner than a tenth of the radius.

    Examples
    --------
    >>> round(hoop_pull(0.060, 1100, 0.300), 2)
    2.91

    References
    ----------
    thin-hoop; hydrostatics.
    """
    return pressure_at(depth, density) * depth / 2 * across / 2


def hoop_stress(depth: float, density: float, across: float, thickness: float) -> float:
    """Stress in a round wall at the floor: p D / (2 t).

    Parameters
    ----------
    depth : h, m.
    density : kg/m3.
    across : D inside, m.
    thickness : t, m, more than zero.

    Returns
    -------
    float
        Pa.

    Examples
    --------
    >>> round(hoop_stress(0.060, 1100, 0.300, 0.0015))
    64724

    References
    ----------
    thin-hoop.
    """
    require_positive(thickness=thickness)
    return pressure_at(depth, density) * across / (2 * thickness)


def same_push(depth: float, density: float, other: float) -> float:
    """How high another liquid stands for the same pressure at the floor: h rho / rho'.

    Parameters
    ----------
    depth : h of the first, m.
    density : of the first, kg/m3.
    other : density of the other, kg/m3, more than zero.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(same_push(0.060, 1100, 998.2), 4)
    0.0661

    References
    ----------
    Hydrostatics.
    """
    require_positive(other=other)
    return depth * density / other
