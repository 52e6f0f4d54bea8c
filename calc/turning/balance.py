"""Out of balance: what it pushes, and the weight that cures it; what it makes the lathe do stands in :mod:`calc.turning.vibrating`.

Symbols inside the functions: m mass of the work, e distance from its centre of mass
to the spindle axis, U = m e (kg m), M mass of the lathe with stand and ballast,
w = 2 pi n / 60 angular speed.
"""

from __future__ import annotations

import math
from functools import cache

from calc.constants import STANDARD_GRAVITY
from calc.sources import table, value

PUSH_SHARE = value("turning", "push share")  # of the lathe's weight


def angular_speed(speed_rpm: float) -> float:
    """Angular speed w = 2 pi n / 60.

    Parameters
    ----------
    speed_rpm : spindle speed n, rpm, 0 or more.

    Returns
    -------
    float
        w, rad/s.

    Examples
    --------
    >>> round(angular_speed(500), 2)
    52.36

    References
    ----------
    Definition.
    """
    return 2.0 * math.pi * speed_rpm / 60.0


def unbalance_of_weight(weight_kg: float, radius_m: float) -> float:
    """Out of balance U = w r that a weight on the light side cancels.

    With the belt slack and the spindle free, hang weights on the light side until
    the piece stays where it is put, anywhere round.

    Parameters
    ----------
    weight_kg : weight hung, kg, 0 or more.
    radius_m : its distance from the spindle axis, m, more than 0.

    Returns
    -------
    float
        U, kg m.

    Examples
    --------
    80 g at 140 mm:

    >>> round(unbalance_of_weight(0.080, 0.140), 5)
    0.0112

    References
    ----------
    Moments about the axis.
    """
    return weight_kg * radius_m


def balance_weight(unbalance_kg_m: float, radius_m: float) -> float:
    """Weight on the light side that cancels an out of balance: w = U / r.

    Parameters
    ----------
    unbalance_kg_m : U, kg m, 0 or more.
    radius_m : where the weight can be fixed, m, more than 0.

    Returns
    -------
    float
        weight, kg.

    Examples
    --------
    >>> round(balance_weight(0.05625, 0.130), 3)
    0.433

    References
    ----------
    Moments about the axis.
    """
    return unbalance_kg_m / radius_m


def push(unbalance_kg_m: float, speed_rpm: float) -> float:
    """Turning force of the out of balance: F = U w^2.

    Parameters
    ----------
    unbalance_kg_m : U, kg m, 0 or more.
    speed_rpm : spindle speed, rpm.

    Returns
    -------
    float
        N.

    Examples
    --------
    >>> round(push(0.010603, 300), 1)
    10.5

    References
    ----------
    Newton's second law.
    """
    return unbalance_kg_m * angular_speed(speed_rpm) ** 2


def speed_at_push(unbalance_kg_m: float, standing_mass_kg: float, share: float = PUSH_SHARE) -> float:
    """Speed at which the push is a share of the lathe's weight: n = (60 / 2 pi) sqrt(k M g / U).

    Parameters
    ----------
    unbalance_kg_m : U, kg m, 0 or more.
    standing_mass_kg : M, from :func:`calc.turning.vibrating.standing_mass`, kg.
    share : k, 0 to 1.

    Returns
    -------
    float
        rpm; infinite when U is 0.

    Examples
    --------
    >>> round(speed_at_push(0.010603, 60), 1)
    503.0

    References
    ----------
    Newton's second law; the share is our judgement.
    """
    if unbalance_kg_m <= 0.0:
        return math.inf
    return 60.0 / (2.0 * math.pi) * math.sqrt(share * standing_mass_kg * STANDARD_GRAVITY / unbalance_kg_m)


def balance_grade(unbalance_kg_m: float, mass_kg: float, speed_rpm: float) -> float:
    """Balance quality grade G = e w, as rotating machines are ranked.

    Parameters
    ----------
    unbalance_kg_m : U, kg m, 0 or more.
    mass_kg : mass m of the work, kg, more than 0.
    speed_rpm : spindle speed, rpm.

    Returns
    -------
    float
        G, m/s (the standard's number is in mm/s).

    Notes
    -----
    Ranks only; it decides nothing here. A casting with one wooden side runs at G 100 to G 900 mm/s.

    Examples
    --------
    >>> round(1000 * balance_grade(0.010603, 3.8877, 500), 1)
    142.8

    References
    ----------
    iso-21940-11, Table 1.
    """
    return unbalance_kg_m / mass_kg * angular_speed(speed_rpm)


def guessed_eccentricity(make_up: str, diameter_m: float, out_of_round: bool) -> float:
    """Distance from the centre of mass to the axis, guessed from where the wood sits.

    Parameters
    ----------
    make_up : ``even``, ``some``, ``side`` or ``half`` for a blank nobody balanced; ``done`` for one balanced
        with weights on a free spindle, whose friction hides the rest.
    diameter_m : largest circle swept, m.
    out_of_round : not yet turned true; adds a share for how it was cut and centred (not to ``done``).

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(1000 * guessed_eccentricity("half", 0.300, out_of_round=True), 1)
    18.9
    >>> round(1000 * guessed_eccentricity("done", 0.300, out_of_round=True), 1)
    0.9

    References
    ----------
    Our judgement, in ``data/balance_guesses.csv``.
    """
    shape = _guess("out-of-round") if out_of_round and make_up != "done" else 0.0
    return (_guess(make_up) + shape) * diameter_m


@cache
def _guess(name: str) -> float:
    """A row of ``data/balance_guesses.csv`` as a share of the diameter."""
    return next(float(row["share_percent"]) for row in table("balance_guesses") if row["name"] == name) / 100.0
