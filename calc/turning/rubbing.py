"""Heat of sanding and polishing on a turning face.

Symbols inside the functions: F press (N), mu friction, v speed under the hand (m/s), A area swept (m²), q heat (W/m²), t time in one place (s).
"""

from __future__ import annotations

import math

from calc.constants import ZERO_C
from calc.sources import value

_EFFUSIVITY = value("sanding", "resin effusivity")


def power(press_n: float, friction: float, speed_m_per_s: float) -> float:
    """Heat of rubbing: mu F v.

    Parameters
    ----------
    press_n : F, N.
    friction : mu, 0 to 1.
    speed_m_per_s : v, m/s.

    Returns
    -------
    float
        W.

    Examples
    --------
    >>> power(20, 0.5, 5)
    50.0

    References
    ----------
    Definition.
    """
    return friction * press_n * speed_m_per_s


def swept_area(diameter_m: float, width_m: float) -> float:
    """Area that a hand in one place rubs in a turn: pi D w.

    Parameters
    ----------
    diameter_m : D of the track, m.
    width_m : w across the track, m.

    Returns
    -------
    float
        m².

    Examples
    --------
    >>> round(swept_area(0.300, 0.040), 4)
    0.0377

    References
    ----------
    Plain geometry.
    """
    return math.pi * diameter_m * width_m


def rise(power_w: float, area_m2: float, seconds: float) -> float:
    """How much warmer the face gets: 2 q sqrt(t / (pi k rho c)), all heat into the resin.

    Parameters
    ----------
    power_w : W.
    area_m2 : swept, m², more than 0.
    seconds : in one place, s, 0 or more.

    Returns
    -------
    float
        K.

    Examples
    --------
    >>> round(rise(50, 0.02, 30), 1)
    26.3

    References
    ----------
    carslaw-jaeger; epoxy-properties.
    """
    return 2 * power_w / area_m2 * math.sqrt(seconds / math.pi) / _EFFUSIVITY


def seconds_for(rise_k: float, power_w: float, area_m2: float) -> float:
    """How long in one place until the face is so much warmer: the inverse of :func:`rise`.

    Parameters
    ----------
    rise_k : K; 0 or less gives 0.
    power_w : W, more than 0.
    area_m2 : swept, m², more than 0.

    Returns
    -------
    float
        s.

    Examples
    --------
    >>> round(seconds_for(rise(50, 0.02, 30), 50, 0.02), 6)
    30.0

    References
    ----------
    carslaw-jaeger; epoxy-properties.
    """
    return math.pi * (max(rise_k, 0.0) * _EFFUSIVITY * area_m2 / (2 * power_w)) ** 2


def warmest_face(soft_k: float) -> float:
    """How warm the face may get: 10 K below its softening, and hand-warm at most.

    Parameters
    ----------
    soft_k : where this resin softens, K.

    Returns
    -------
    float
        K.

    Examples
    --------
    >>> [round(warmest_face(c + 273.15) - 273.15, 6) for c in (45, 50, 80)]
    [35.0, 40.0, 40.0]

    References
    ----------
    Our judgement.
    """
    return min(soft_k - value("sanding", "soft margin"), value("sanding", "hand-warm") + ZERO_C)
