"""Vacuum over a bucket: what it leaves, what the gauge has to show, and how much goes in at a time.

Pressures in Pa: absolute, or as a vacuum gauge shows them, below the air outside.
"""

from __future__ import annotations

from calc.casting.pressure import SEA_LEVEL, figure_of


def vacuum_left(outside_pa: float, reading_pa: float) -> float:
    """Pressure left in the chamber: p = p0 - reading, and never told below what a dial can show.

    Parameters
    ----------
    outside_pa : p0, Pa.
    reading_pa : what the vacuum gauge shows, Pa, 0 to about p0.

    Returns
    -------
    float
        Pa.

    Examples
    --------
    >>> round(vacuum_left(101325, 28 * 3386.389) / 100)
    65

    References
    ----------
    Definition of gauge pressure; the least is our judgement.
    """
    return max(outside_pa - reading_pa, figure_of("least absolute"))


def reading_needed(outside_pa: float, sea_level_reading_pa: float) -> float:
    """Gauge reading that leaves the same pressure here as another reading leaves at sea level.

    Parameters
    ----------
    outside_pa : p0 here, Pa.
    sea_level_reading_pa : Pa.

    Returns
    -------
    float
        Pa.

    Examples
    --------
    29 inHg, at 1600 m:

    >>> from calc.casting.pressure import air_pressure
    >>> round(reading_needed(air_pressure(1600), 29 * 3386.389) / 3386.389, 1)
    23.7

    References
    ----------
    Arithmetic.
    """
    return outside_pa - (SEA_LEVEL - sea_level_reading_pa)


def degas_mass(bucket_m3: float, fill_share: float, density: float) -> float:
    """Mixed resin that may go into a bucket under vacuum: what is left of it takes the foam.

    Parameters
    ----------
    bucket_m3 : to its brim, m3.
    fill_share : fraction, 0 to 1.
    density : kg/m3.

    Returns
    -------
    float
        kg.

    Examples
    --------
    2.5 L, a quarter full, at 1.10 g/mL:

    >>> round(degas_mass(0.0025, 0.25, 1100), 4)
    0.6875

    References
    ----------
    degas-suppliers.
    """
    return bucket_m3 * fill_share * density
