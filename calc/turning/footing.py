"""How hard a heavy side may shove before a lathe that only stands there tips over."""

from __future__ import annotations

from calc.constants import STANDARD_GRAVITY
from calc.sources import value

HALF_FOOT_M = value("turning", "half foot") / 1e3
SPINDLE_M = value("turning", "spindle height") / 1e3


def tipping_push(standing_kg: float, half_foot_m: float = HALF_FOOT_M, spindle_m: float = SPINDLE_M) -> float:
    """Sideways push at the spindle that lifts one foot: F = M g b / h.

    Parameters
    ----------
    standing_kg : M, mass the lathe stands like, kg, 0 or more.
    half_foot_m : b, from under the middle of mass to the edge of the foot, m, more than 0.
    spindle_m : h, spindle over the floor, m, more than 0.

    Returns
    -------
    float
        N.

    Examples
    --------
    >>> round(tipping_push(60)), round(tipping_push(200, 0.30, 1.15))
    (107, 512)

    References
    ----------
    Plain statics; the sizes that stand in are our judgement.
    """
    return standing_kg * STANDARD_GRAVITY * half_foot_m / spindle_m
