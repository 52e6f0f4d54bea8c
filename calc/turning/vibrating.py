"""What an out of balance makes the lathe do, and what the lathe's own vibration tells of it.

Symbols as in :mod:`calc.turning.balance`; M mass of the lathe with stand and ballast, v vibration speed (root mean square).

A rigid lathe on soft feet, run above the speed at which it rocks: where to start, not the truth. A measured vibration overrules it.
"""

from __future__ import annotations

import math
from functools import cache

from calc.constants import STANDARD_GRAVITY
from calc.sources import table, value
from calc.turning import balance

BOLTED_FACTOR = value("turning", "bolted")


def standing_mass(lathe_mass_kg: float, bolted: bool) -> float:
    """Mass the lathe stands like: its own, or three times that when bolted down.

    Parameters
    ----------
    lathe_mass_kg : lathe with stand and ballast, kg, more than 0.
    bolted : bolted to floor or wall.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> standing_mass(60, bolted=True)
    180.0

    References
    ----------
    Our judgement.
    """
    return lathe_mass_kg * (BOLTED_FACTOR if bolted else 1.0)


def vibration(unbalance_kg_m: float, mass_kg: float, standing_mass_kg: float, speed_rpm: float) -> float:
    """Vibration of the lathe: v = U w / (sqrt(2) (M + m)).

    Parameters
    ----------
    unbalance_kg_m : U, kg m, 0 or more.
    mass_kg : mass m of the work, kg.
    standing_mass_kg : M, from :func:`standing_mass`, kg.
    speed_rpm : spindle speed, rpm.

    Returns
    -------
    float
        root mean square speed, m/s.

    Notes
    -----
    Rigid lathe, soft feet, above the rocking resonance. A real bench can ring at one speed.

    Examples
    --------
    >>> round(1000 * vibration(0.010603, 3.8877, 60, 366.2), 2)
    4.5

    References
    ----------
    Steady motion of a free body under a turning force; limits: iso-10816-1, Class I, borrowed.
    """
    return unbalance_kg_m * balance.angular_speed(speed_rpm) / (math.sqrt(2.0) * (standing_mass_kg + mass_kg))


def speed_at_vibration(unbalance_kg_m: float, mass_kg: float, standing_mass_kg: float, limit_m_per_s: float) -> float:
    """Speed at which the vibration reaches a limit: n = (60 / 2 pi) sqrt(2) v (M + m) / U.

    Parameters
    ----------
    unbalance_kg_m : U, kg m, 0 or more.
    mass_kg : mass m of the work, kg.
    standing_mass_kg : M, from :func:`standing_mass`, kg.
    limit_m_per_s : vibration limit v, root mean square, m/s.

    Returns
    -------
    float
        rpm; infinite when U is 0.

    Notes
    -----
    Inverse of :func:`vibration`; the same doubts.

    Examples
    --------
    >>> round(speed_at_vibration(0.010603, 3.8877, 60, 0.0045), 1)
    366.2

    References
    ----------
    As :func:`vibration`.
    """
    if unbalance_kg_m <= 0.0:
        return math.inf
    return 60.0 / (2.0 * math.pi) * math.sqrt(2.0) * limit_m_per_s * (standing_mass_kg + mass_kg) / unbalance_kg_m


def standing_mass_for_speed(unbalance_kg_m: float, mass_kg: float, limit_m_per_s: float, speed_rpm: float) -> float:
    """Mass M the lathe must stand like to hold both the vibration and the push limit at a speed.

    The greater of M = U w / (sqrt(2) v) - m and M = U w^2 / (k g).

    Parameters
    ----------
    unbalance_kg_m : U, kg m, 0 or more.
    mass_kg : mass m of the work, kg.
    limit_m_per_s : vibration limit v, m/s, more than 0.
    speed_rpm : speed wanted, rpm.

    Returns
    -------
    float
        M, kg; 0 or more.

    Examples
    --------
    >>> round(standing_mass_for_speed(0.010603, 3.8877, 0.0045, 366.2))
    60

    References
    ----------
    :func:`speed_at_vibration` and :func:`calc.turning.balance.speed_at_push`, turned round.
    """
    for_vibration = unbalance_kg_m * balance.angular_speed(speed_rpm) / (math.sqrt(2.0) * limit_m_per_s) - mass_kg
    for_push = balance.push(unbalance_kg_m, speed_rpm) / (balance.PUSH_SHARE * STANDARD_GRAVITY)
    return max(for_vibration, for_push, 0.0)


def speed_from_measured_vibration(measured_rpm: float, measured_m_per_s: float, limit_m_per_s: float) -> float:
    """Speed at which a vibration that was measured would reach a limit: n = n_measured v_limit / v_measured.

    Parameters
    ----------
    measured_rpm : speed at which it was measured, rpm, more than 0.
    measured_m_per_s : vibration there, root mean square, m/s, more than 0.
    limit_m_per_s : vibration limit, m/s.

    Returns
    -------
    float
        rpm.

    Notes
    -----
    Vibration grows in step with speed in the model of :func:`vibration`. It may grow faster
    near a resonance, so speed is still raised in steps.

    Examples
    --------
    >>> speed_from_measured_vibration(300, 0.009, 0.0045)
    150.0

    References
    ----------
    As :func:`vibration`.
    """
    return measured_rpm * (limit_m_per_s / measured_m_per_s)


def unbalance_from_vibration(measured_rpm: float, measured_m_per_s: float, mass_kg: float, standing_mass_kg: float) -> float:
    """Out of balance that a measured vibration speaks of: U = sqrt(2) v (M + m) / w.

    Parameters
    ----------
    measured_rpm : speed at which it was measured, rpm, more than 0.
    measured_m_per_s : vibration there, root mean square, m/s.
    mass_kg : mass m of the work, kg.
    standing_mass_kg : M, from :func:`standing_mass`, kg.

    Returns
    -------
    float
        U, kg m.

    Examples
    --------
    >>> round(unbalance_from_vibration(366.2, 0.0045, 3.8877, 60), 4)
    0.0106

    References
    ----------
    As :func:`vibration`.
    """
    return math.sqrt(2.0) * measured_m_per_s * (standing_mass_kg + mass_kg) / balance.angular_speed(measured_rpm)


@cache
def vibration_limit(name: str) -> float:
    """A row of ``data/vibration_limits.csv``: a zone limit, or the figure that stands for a maker's word.

    Parameters
    ----------
    name : ``zone-b``, ``zone-c``, ``felt-still``, ``felt-trembles`` or ``felt-walks``.

    Returns
    -------
    float
        root mean square speed, m/s.

    Examples
    --------
    >>> vibration_limit("zone-c")
    0.0045

    References
    ----------
    iso-10816-1, Class I, borrowed; the words are our judgement.
    """
    return next(float(row["mm_per_s"]) for row in table("vibration_limits") if row["name"] == name) / 1000.0
