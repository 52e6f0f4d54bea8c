"""Cold wood brought in: how long until it is as warm as it has to be.

Temperatures in kelvin, lengths in m, times in s. Figures, each with its source, are in ``data/air.csv``.
"""

from __future__ import annotations

import math

from calc.casting.air import limit


def time_to_warm(thickness_m: float, start_k: float, room_k: float, target_k: float) -> float:
    """How long the middle of a board takes to reach ``target_k``, air on both faces.

    z tan z = h L / k; t = (L^2 / (a z^2)) ln(C / theta), with L half the thickness, C = 4 sin z / (2 z + sin 2 z)
    and theta = (room - target) / (room - start).

    Parameters
    ----------
    thickness_m : m, more than 0.
    start_k, room_k : wood and air, K.
    target_k : K, below ``room_k`` when ``start_k`` is below it.

    Returns
    -------
    float
        s; 0 when it is that warm already.

    Raises
    ------
    ValueError
        the room is not warmer than the target: it never gets there.

    Notes
    -----
    Hardwood of 670 kg/m3 in still air, slow side: a fan makes it quicker, a board flat on a bench slower.

    Examples
    --------
    50 mm of wood from 5 °C to 17 °C in a room of 20 °C, in hours:

    >>> round(time_to_warm(0.050, 278.15, 293.15, 290.15) / 3600, 1)
    2.8

    References
    ----------
    plane-wall; iso-6946; wood-handbook-4-15.
    """
    if start_k >= target_k:
        return 0.0
    if room_k <= target_k:
        raise ValueError("the room is not warmer than the target")
    half = thickness_m / 2
    z = plane_wall_root(limit("room film") * half / limit("wood conductivity"))
    c = 4 * math.sin(z) / (2 * z + math.sin(2 * z))
    theta = (room_k - target_k) / (room_k - start_k)
    return half**2 / (limit("wood diffusivity") * z**2) * math.log(c / theta)


def plane_wall_root(biot: float) -> float:
    """First root of z tan z = Bi, by halving the interval.

    Parameters
    ----------
    biot : h L / k, more than 0.

    Returns
    -------
    float
        z, radians, 0 to pi/2.

    Examples
    --------
    >>> round(plane_wall_root(1.25), 4)
    0.9308

    References
    ----------
    plane-wall.
    """
    low, high = 0.0, math.pi / 2
    for _ in range(60):
        z = (low + high) / 2
        low, high = (z, high) if z * math.tan(z) < biot else (low, z)
    return (low + high) / 2
