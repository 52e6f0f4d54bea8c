"""Mounting a piece again: how far off centre it comes out and what that costs; and what unscrews a chuck.

Symbols inside the functions: o distance from the old axis to the new one, m mass, D diameter, w angular speed, J moment of inertia.
"""

from __future__ import annotations

from functools import cache

from calc.sources import table, value
from calc.turning.balance import angular_speed

BARE_MARGIN_M = value("turning", "bare ring") / 1e3
SANDING_N = value("turning", "sanding drag")


@cache
def off_centre(way: str) -> float:
    """How far off centre a piece comes out.

    Parameters
    ----------
    way : ``eye``, ``point`` or ``register``; a row of ``data/centring.csv``.

    Returns
    -------
    float
        o, m.

    Examples
    --------
    >>> off_centre("register")
    0.0001

    References
    ----------
    Our judgement.
    """
    return next(float(row["value"]) for row in table("centring") if row["name"] == way) / 1000.0


def bare_across(mount_m: float) -> float:
    """Across what is left bare of finish for a glue block: the block and a margin all round.

    Parameters
    ----------
    mount_m : width of the block, m.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(bare_across(0.100), 3)
    0.12

    References
    ----------
    Our judgement.
    """
    return mount_m + 2 * BARE_MARGIN_M


def runout(off_m: float) -> float:
    """How far the rim moves in and out in one turn: 2 o.

    Parameters
    ----------
    off_m : o, m, 0 or more.

    Returns
    -------
    float
        m, full reading of a dial.

    Examples
    --------
    >>> runout(0.0005)
    0.001

    References
    ----------
    Plain geometry.
    """
    return 2 * off_m


def trued_diameter(diameter_m: float, off_m: float) -> float:
    """Largest circle about the new axis that is still in the piece: D - 2 o, so o comes off the rim on a side.

    Parameters
    ----------
    diameter_m : D before, m, more than 0.
    off_m : o, m, 0 to D / 2.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> trued_diameter(0.300, 0.0015)
    0.297

    References
    ----------
    Plain geometry.
    """
    return diameter_m - 2 * off_m


def unscrewing_by_stop(mass_kg: float, diameter_m: float, speed_rpm: float, stop_s: float) -> float:
    """Turning moment of a disc that is stopped: J w / t, with J = m D^2 / 8.

    Parameters
    ----------
    mass_kg : m, kg.
    diameter_m : D, m.
    speed_rpm : before the stop, rpm.
    stop_s : t, how long the stop takes, s, more than 0.

    Returns
    -------
    float
        N m.

    Examples
    --------
    >>> round(unscrewing_by_stop(9.145, 0.450, 500, 1.0), 1)
    12.1

    References
    ----------
    Newton's second law for turning.
    """
    return mass_kg * diameter_m**2 / 8 * angular_speed(speed_rpm) / stop_s


def unscrewing_by_sanding(diameter_m: float, drag_n: float = SANDING_N) -> float:
    """Turning moment of sanding at the rim: F D / 2.

    Parameters
    ----------
    diameter_m : D, m.
    drag_n : F, N.

    Returns
    -------
    float
        N m.

    Examples
    --------
    >>> unscrewing_by_sanding(0.450)
    4.5

    References
    ----------
    Statics; the drag is our judgement.
    """
    return drag_n * diameter_m / 2
