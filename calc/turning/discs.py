"""A piece of resin as a body: what a full disc weighs, where a long one whirls, what a lump of it hits like."""

from __future__ import annotations

import math

from calc.constants import STANDARD_GRAVITY
from calc.sources import value

SHIELD_TEST_J = value("turning", "shield test mass") * STANDARD_GRAVITY * value("turning", "shield test drop")  # 6.23 J
FREE_END_FACTOR = (1.8751 / math.pi) ** 2  # first root of a clamped bar over that of a pinned one (timoshenko)
RESIN_MODULUS = value("out_of_true", "resin stiffness") * 1e9  # Pa; the softer of resin and wood
RESIN_DENSITY = value("out_of_true", "resin density")  # kg/m3; wood is nearly always lighter


def whip_speed(diameter_m: float, length_m: float, far_end_held: bool = True) -> float:
    """Speed at which a round bar of resin whirls: n = 60 (pi D / (8 L^2)) sqrt(E / rho) between centres.

    Parameters
    ----------
    diameter_m : D, m, more than 0.
    length_m : length L, m, more than 0.
    far_end_held : false when it stands free at one end; it then whirls at 0.356 of that speed.

    Returns
    -------
    float
        rpm.

    Notes
    -----
    Pinned at both ends, or clamped at one. Means nothing for a disc, where it is far above any lathe.

    Examples
    --------
    >>> round(whip_speed(0.025, 0.600))
    2364

    References
    ----------
    timoshenko, from memory.
    """
    pinned = 60.0 * (math.pi * diameter_m / (8.0 * length_m**2)) * math.sqrt(RESIN_MODULUS / RESIN_DENSITY)
    return pinned if far_end_held else FREE_END_FACTOR * pinned


def whip_length(diameter_m: float, speed_rpm: float, far_end_held: bool = True) -> float:
    """Length at which a round bar of resin whirls at a speed: :func:`whip_speed` turned round.

    Parameters
    ----------
    diameter_m : D, m, more than 0.
    speed_rpm : rpm, more than 0.
    far_end_held : false when it stands free at one end.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(whip_length(0.025, 2364), 3)
    0.6

    References
    ----------
    timoshenko, from memory.
    """
    return math.sqrt(whip_speed(diameter_m, 1.0, far_end_held) / speed_rpm)


def disc_mass(diameter_m: float, thickness_m: float, density_kg_per_m3: float = RESIN_DENSITY) -> float:
    """Mass of a full disc of resin: m = rho pi D^2 t / 4.

    Parameters
    ----------
    diameter_m : D, m, 0 or more.
    thickness_m : t along the lathe, m, 0 or more.
    density_kg_per_m3 : rho, kg/m3.

    Returns
    -------
    float
        kg.

    Notes
    -----
    Too heavy for a blank with corners or with wood in it, which lowers the speed: the safe side.

    Examples
    --------
    >>> round(disc_mass(0.450, 0.050), 3)
    9.145

    References
    ----------
    Plain geometry.
    """
    return density_kg_per_m3 * math.pi / 4.0 * diameter_m**2 * thickness_m


def shield_fragment_mass(rim_m_per_s: float) -> float:
    """Mass of a fragment that, at rim speed, hits as hard as a face shield is tested for: m = 2 E / v^2.

    Parameters
    ----------
    rim_m_per_s : v, m/s, more than 0.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> [round(1000 * shield_fragment_mass(v)) for v in (6, 8, 12)]
    [346, 195, 86]

    References
    ----------
    z87-1: 500 g from 1.27 m.
    """
    return 2.0 * SHIELD_TEST_J / rim_m_per_s**2
