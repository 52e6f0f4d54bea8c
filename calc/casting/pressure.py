"""Pressure in a pot or a vacuum chamber: what it does to a bubble, to the lid, and to the level in a mould.

Symbols inside the functions: p absolute pressure, p0 pressure of the air outside, both Pa; V volume. A gauge
shows p - p0, or p0 - p for vacuum. Figures that are not physics, each with its source, are in ``data/pressure.csv``.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from calc.constants import STANDARD_GRAVITY
from calc.sources import in_si

SEA_LEVEL = 101325.0  # Pa (standard-atmosphere)
SEA_LEVEL_K = 288.15  # (standard-atmosphere)
LAPSE_K_PER_M = 0.0065  # (standard-atmosphere)
LAPSE_POWER = 5.25588  # g M / (R lapse), dimensionless (standard-atmosphere)
HEAT_RATIO = 1.4  # of air (gas-laws)


#: A figure of ``data/pressure.csv`` by the name of its row, in SI.
figure_of = in_si("pressure")


# ---------------------------------------------------------------- air and bubbles


def air_pressure(altitude_m: float) -> float:
    """Pressure of the air at a height: p0 = 101325 (1 - 0.0065 h / 288.15)^5.256.

    Parameters
    ----------
    altitude_m : h above the sea, m, -500 to 11 000.

    Returns
    -------
    float
        Pa; weather moves it by about three percent either way.

    Examples
    --------
    >>> round(air_pressure(0)), round(air_pressure(1600) / 3386.389, 1)
    (101325, 24.7)

    References
    ----------
    standard-atmosphere.
    """
    return SEA_LEVEL * math.pow(1 - LAPSE_K_PER_M * altitude_m / SEA_LEVEL_K, LAPSE_POWER)


def bubble_volume(outside_pa: float, absolute_pa: float) -> float:
    """Volume of a bubble over what it was in the open: V / V0 = p0 / p.

    Parameters
    ----------
    outside_pa : p0, Pa, more than 0.
    absolute_pa : p, Pa, more than 0; above p0 in a pot, below it in vacuum.

    Returns
    -------
    float

    Notes
    -----
    Air that stays air, at one temperature. Some dissolves as well, and comes out again if the pressure goes too soon.

    Examples
    --------
    60 psi on the gauge:

    >>> round(bubble_volume(101325, 101325 + 60 * 6894.757), 3)
    0.197

    References
    ----------
    gas-laws.
    """
    return outside_pa / absolute_pa


def bubble_width(outside_pa: float, absolute_pa: float) -> float:
    """Width of a bubble over what it was in the open: the cube root of its volume's ratio.

    Parameters
    ----------
    outside_pa, absolute_pa : as for :func:`bubble_volume`.

    Returns
    -------
    float

    Examples
    --------
    >>> round(bubble_width(101325, 101325 + 60 * 6894.757), 3)
    0.582

    References
    ----------
    gas-laws.
    """
    return math.cbrt(bubble_volume(outside_pa, absolute_pa))


def level_before(wanted_m: float, air_share: float, volume_ratio: float) -> float:
    """How high to fill so that the level stands where it is wanted once its bubbles are squeezed.

    h0 = h / (1 - a (1 - V / V0)), with a the share of air in what is poured.

    Parameters
    ----------
    wanted_m : h, depth wanted under pressure, m.
    air_share : a, fraction, 0 to below 1.
    volume_ratio : V / V0 of :func:`bubble_volume`, 0 to 1.

    Returns
    -------
    float
        m.

    Examples
    --------
    80 mm with 2 % of air, bubbles to a quarter:

    >>> round(1000 * level_before(0.080, 0.02, 0.25), 1)
    81.2

    References
    ----------
    Geometry of straight walls.
    """
    return wanted_m / (1 - air_share * (1 - volume_ratio))


# ---------------------------------------------------------------- the pot


def lid_push(difference_pa: float, across_m: float) -> float:
    """Force on a round lid: F = (p - p0) pi D^2 / 4.

    Parameters
    ----------
    difference_pa : what the gauge shows, Pa.
    across_m : D, inside the pot, m.

    Returns
    -------
    float
        N; outwards in a pot, inwards under vacuum.

    Examples
    --------
    >>> round(lid_push(40 * 6894.757, 0.300))
    19494

    References
    ----------
    Definition of pressure.
    """
    return difference_pa * math.pi * across_m**2 / 4


def stored_energy(volume_m3: float, outside_pa: float, absolute_pa: float) -> float:
    """Work that the air in a pot can do when it is let go at once: p V / (g - 1) (1 - (p0 / p)^((g - 1) / g)).

    Parameters
    ----------
    volume_m3 : V of the air, m3; the empty pot is the safe side.
    outside_pa, absolute_pa : Pa.

    Returns
    -------
    float
        J.

    Examples
    --------
    10 L at 60 psi:

    >>> round(stored_energy(0.010, 101325, 101325 + 60 * 6894.757))
    4784

    References
    ----------
    gas-laws.
    """
    power = (HEAT_RATIO - 1) / HEAT_RATIO
    return absolute_pa * volume_m3 / (HEAT_RATIO - 1) * (1 - math.pow(outside_pa / absolute_pa, power))


def drop_height(energy_j: float, mass_kg: float) -> float:
    """Height from which a weight brings this energy: E / (m g).

    Parameters
    ----------
    energy_j : E, J.
    mass_kg : m, kg, more than 0.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(drop_height(4784, 10))
    49

    References
    ----------
    Definition of potential energy.
    """
    return energy_j / (mass_kg * STANDARD_GRAVITY)


@dataclass(frozen=True)
class Pot:
    """Inside of a pot and what must stay free in it, m."""

    across_m: float
    height_m: float
    free_beside_m: float
    free_above_m: float

    @property
    def volume_m3(self) -> float:
        """Of the empty pot, m3."""
        return math.pi * self.across_m**2 / 4 * self.height_m

    @property
    def widest_m(self) -> float:
        """Largest circle that goes in with room beside it, m; 0 when there is none."""
        return max(0.0, self.across_m - 2 * self.free_beside_m)

    @property
    def highest_m(self) -> float:
        """Highest that may stand in it, with all that is under it, m; 0 when there is no room."""
        return max(0.0, self.height_m - self.free_above_m)


def across_corners(length_m: float, width_m: float) -> float:
    """Circle that a rectangle needs: sqrt(l^2 + w^2).

    Parameters
    ----------
    length_m, width_m : outside, m.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(across_corners(0.3, 0.4), 6)
    0.5

    References
    ----------
    Geometry.
    """
    return math.hypot(length_m, width_m)


def weakest(ratings: Mapping[str, float | None]) -> str | None:
    """The part with the lowest marked pressure; a part that was not read does not count, and is no pass.

    Parameters
    ----------
    ratings : part -> marked pressure, Pa, or None where nobody read it.

    Returns
    -------
    str or None
        the part; None when nothing was read.

    Examples
    --------
    >>> weakest({"pot": 5e5, "relief": 4e5, "hose": None})
    'relief'

    References
    ----------
    pressure-rules.
    """
    marked = {part: limit for part, limit in ratings.items() if limit is not None}
    return min(marked, key=lambda part: marked[part]) if marked else None
