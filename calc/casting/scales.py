"""Scales held against each other, and what is known of one reading. Masses in kg."""

from __future__ import annotations

import math

from calc.casting.weighing import net_uncertainty
from calc.guards import require_positive


def reading_uncertainty(repeatability: float, drift: float, half_step: float) -> float:
    """Standard uncertainty of one reading whose parts are known: u^2 = s^2 + (drift/sqrt 3)^2 + (half step/sqrt 3)^2.

    Parameters
    ----------
    repeatability : s, standard deviation of one load weighed again and again, kg.
    drift : half-width of how far the scale wanders, kg.
    half_step : half of the digital step, kg.

    Returns
    -------
    float
        kg.

    Raises
    ------
    ValueError
        One of them is less than nothing.

    Examples
    --------
    >>> round(reading_uncertainty(0.00017e-3, 0.0002e-3, 0.00005e-3) * 1e6, 4)
    0.2075

    References
    ----------
    JCGM 100:2008 equation (10) and clause 4.3.7.
    """
    if min(repeatability, drift, half_step) < 0:
        raise ValueError("a spread cannot be less than nothing")
    return math.hypot(repeatability, drift / math.sqrt(3), half_step / math.sqrt(3))


def apart(shown: float, other: float) -> float:
    """How far a second scale is over (+) or under (-) the first with the same thing on it: other / shown - 1.

    Parameters
    ----------
    shown, other : net readings, kg, more than zero.

    Returns
    -------
    float
        fraction; what the ratio is off by when A is weighed on the first and B on the second, with the sign turned.

    Notes
    -----
    A scale that reads everything a share too high reads A and B alike: on one scale it leaves the ratio alone.

    Examples
    --------
    >>> round(apart(1.000, 1.012), 4)
    0.012

    References
    ----------
    Exact arithmetic.
    """
    require_positive(shown=shown, other=other)
    return other / shown - 1


def steps_explain(step: float, other_step: float, coverage: float) -> float:
    """How far two scales may differ by their steps alone: k sqrt(u1^2 + u2^2).

    Parameters
    ----------
    step, other_step : of the two scales, kg, more than zero.
    coverage : k.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> round(steps_explain(0.001, 0.001, 2) * 1000, 2)
    1.15

    References
    ----------
    JCGM 100:2008 equation (10), two net weights.
    """
    return coverage * math.hypot(net_uncertainty(step), net_uncertainty(other_step))
