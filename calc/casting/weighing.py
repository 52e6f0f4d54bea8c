"""Weighing A and B: the pours that a scale and a bucket take, and how well a scale holds a ratio.

Masses in kg, volumes in m3, densities in kg/m3; ratios by weight.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from calc.casting.mixing import NEAR, Parts, Ratio, split
from calc.casting.standards import standard
from calc.guards import require_positive

#: Rounding to the scale's step may move the ratio this much before a slightly larger A is tried, and so many steps larger.
_ROUNDING = standard("step rounding")
_EXTRA_STEPS = 3


@dataclass(frozen=True)
class PourLimit:
    """How much mixed resin one pour can have, kg, and what holds it there.

    ``scale`` and ``bucket`` are None where that limit was not given.
    """

    scale: float | None
    bucket: float | None

    @property
    def net(self) -> float:
        """The smaller of the two, kg; infinite when neither was given."""
        return min((limit for limit in (self.scale, self.bucket) if limit is not None), default=math.inf)

    @property
    def rules(self) -> Literal["scale", "bucket", ""]:
        """Which of the two decides."""
        if math.isinf(self.net):
            return ""
        return "scale" if self.scale == self.net else "bucket"


def pour_limit(
    scale_capacity: float | None,
    empty_bucket: float,
    bucket_volume: float | None,
    fill_share: float,
    density: float,
) -> PourLimit:
    """The most mixed resin in one pour: what the scale still lifts, and what the bucket holds to its fill line.

    Parameters
    ----------
    scale_capacity : kg; None when nothing heavy stands on the scale.
    empty_bucket : weight of what stands on the scale beside the resin, kg, zero or more. It counts even after taring.
    bucket_volume : brim-full, m3; None when not known.
    fill_share : how full it may get, more than 0, at most 1.
    density : of the mixed resin, kg/m3.

    Returns
    -------
    PourLimit
        Both limits. The scale's may be zero or negative: the bucket alone is too heavy for it.

    Raises
    ------
    ValueError
        A density or a fill share of nothing, or a bucket that weighs less than nothing.

    Examples
    --------
    >>> round(pour_limit(2.0, 0.060, 1.5e-3, 0.8, 1100).net, 3)
    1.32

    References
    ----------
    Exact arithmetic; the fill share is the caller's.
    """
    require_positive(density=density)
    if not 0 < fill_share <= 1:
        raise ValueError(f"the fill share must be over 0 and at most 1, not {fill_share}")
    if empty_bucket < 0:
        raise ValueError("an empty bucket cannot weigh less than nothing")
    return PourLimit(
        scale=None if scale_capacity is None else scale_capacity - empty_bucket,
        bucket=None if bucket_volume is None else bucket_volume * fill_share * density,
    )


def equal_pours(total: float, ratio: Ratio, limit: float, step: float) -> tuple[Parts, ...]:
    """Share a total out over the fewest equal pours that keep under the limit.

    Parameters
    ----------
    total : mixed resin wanted, kg, more than zero.
    ratio : by weight.
    limit : most mixed resin in one pour, kg; may be infinite.
    step : the scale's step, kg.

    Returns
    -------
    tuple of Parts
        Equal pours, each rounded as :func:`weighable` does.

    Raises
    ------
    ValueError
        The limit is under what the scale's smallest two steps make.

    Examples
    --------
    >>> len(equal_pours(2.6, Ratio(100, 45), 1.32, 0.001))
    2

    References
    ----------
    Exact arithmetic: n = ceil(M / limit), then M / n each.
    """
    require_positive(total=total, limit=limit, step=step)
    if weighable(step, ratio, step).total > limit:
        raise ValueError("one pour cannot hold even the smallest amount this scale shows")
    count = 1 if math.isinf(limit) else max(1, math.ceil(total / limit - NEAR))
    while (pour := weighable(total / count, ratio, step)).total > limit * (1 + NEAR):
        count += 1
    return (pour,) * count


def weighable(total: float, ratio: Ratio, step: float) -> Parts:
    """A and B as a scale can show them, together never less than asked for.

    A goes up to the scale's next step, or up to three steps more where B then falls on
    a step too; B is worked out from that A and goes to its nearest step.

    Parameters
    ----------
    total : mixed resin wanted, kg, more than zero.
    ratio : by weight.
    step : the scale's step (resolution), kg, more than zero.

    Returns
    -------
    Parts
        Both whole steps, and both at least one step.

    Examples
    --------
    >>> parts = weighable(1.3, Ratio(100, 45), 0.001)
    >>> round(parts.a, 3), round(parts.b, 3)
    (0.897, 0.404)
    >>> parts = weighable(0.1, Ratio(2, 1), 0.001)
    >>> round(parts.a, 3), round(parts.b, 3)
    (0.068, 0.034)

    References
    ----------
    Our judgement: short resin cannot be mended in time, a few grams over can be thrown away.
    """
    require_positive(total=total, step=step)

    def enough(steps_of_a: int) -> bool:
        return (steps_of_a + _steps_of_b(steps_of_a, ratio)) * step >= total * (1 - NEAR)

    least = max(1, _whole_steps_up(split(total, ratio).a, step))
    while not enough(least):
        least += 1
    tries = range(least, least + 1 + _EXTRA_STEPS)
    steps = next((n for n in tries if abs(_steps_of_b(n, ratio) / (n * ratio.b_per_a) - 1) <= _ROUNDING), least)
    return Parts(steps * step, _steps_of_b(steps, ratio) * step)


def kits_needed(total: float, kit: Parts) -> int:
    """How many whole kits hold at least this much.

    Parameters
    ----------
    total : kg of mixed resin, more than zero.
    kit : A and B in one kit, kg.

    Returns
    -------
    int
        At least one.

    Examples
    --------
    >>> kits_needed(5.9, Parts(2.0, 1.0))
    2

    References
    ----------
    Exact arithmetic.
    """
    require_positive(total=total, kit=kit.total)
    return max(1, math.ceil(total / kit.total - NEAR))


def emptied_jug(full: float, used: float) -> float:
    """What a jug should weigh once ``used`` has left it; also the falling figure when decanting.

    Parameters
    ----------
    full : what the jug weighed before, kg (zero when tared with it on).
    used : what has to leave it, kg.

    Returns
    -------
    float
        kg; negative on a scale tared with the full jug on it.

    Examples
    --------
    >>> round(emptied_jug(2.310, 0.900), 3)
    1.41

    References
    ----------
    Exact arithmetic.
    """
    return full - used


def smallest_batch(ratio: Ratio, step: float, tolerance: float, coverage: float) -> float:
    """The smallest total whose ratio this scale can hold: k u (a+b) sqrt(1/a^2+1/b^2)/tau.

    Parameters
    ----------
    ratio : by weight.
    step : the scale's step, kg, more than zero.
    tolerance : of the ratio, tau, a fraction more than zero.
    coverage : k, how many standard uncertainties must fit inside the tolerance.

    Returns
    -------
    float
        kg of mixed resin.

    Examples
    --------
    >>> round(smallest_batch(Ratio(100, 30), 0.001, 0.02, 2), 4)
    0.1847

    References
    ----------
    JCGM 100:2008 equation (10), solved for the total.
    """
    require_positive(tolerance=tolerance, coverage=coverage)
    return coverage * net_uncertainty(step) * _lopsidedness(ratio) / tolerance


def coarsest_step(total: float, ratio: Ratio, tolerance: float, coverage: float) -> float:
    """The coarsest scale step that still holds the ratio of this batch: :func:`smallest_batch` turned round.

    Parameters
    ----------
    total : kg of mixed resin, more than zero.
    ratio, tolerance, coverage : as there.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> round(coarsest_step(0.1847, Ratio(100, 30), 0.02, 2), 4)
    0.001

    References
    ----------
    JCGM 100:2008 equation (10), solved for the step.
    """
    require_positive(total=total, tolerance=tolerance, coverage=coverage)
    return total * tolerance * math.sqrt(6) / (coverage * _lopsidedness(ratio))


def ratio_uncertainty(parts: Parts, net: float) -> float:
    """Relative standard uncertainty of the ratio: u(R)/R = sqrt((u/mA)^2 + (u/mB)^2).

    Parameters
    ----------
    parts : what is weighed, kg.
    net : standard uncertainty of each net weight, kg.

    Returns
    -------
    float
        As a fraction.

    Notes
    -----
    The two weighings are taken as independent. A running total shares one reading
    between A and B, which makes it at most 1.23 times this (at 1:1).

    Examples
    --------
    >>> round(ratio_uncertainty(split(0.150, Ratio(100, 30)), net_uncertainty(0.001)), 4)
    0.0123

    References
    ----------
    JCGM 100:2008 equation (10).
    """
    require_positive(mass_of_a=parts.a, mass_of_b=parts.b)
    return math.hypot(net / parts.a, net / parts.b)


def net_uncertainty(step: float) -> float:
    """Standard uncertainty of a net weight, two readings of one scale: u = d/sqrt 6.

    Parameters
    ----------
    step : the digital step d, kg, more than zero.

    Returns
    -------
    float
        kg.

    Notes
    -----
    Only the step is in it. A scale that drifts, or stands out of level, is worse than this.

    Examples
    --------
    >>> round(net_uncertainty(0.001), 6)
    0.000408

    References
    ----------
    JCGM 100:2008 clause 4.3.7, two rectangular readings.
    """
    require_positive(step=step)
    return step / math.sqrt(6)


def _lopsidedness(ratio: Ratio) -> float:
    """(a+b) sqrt(1/a^2 + 1/b^2): how much a small part makes the ratio harder to hold."""
    return (ratio.a + ratio.b) * math.hypot(1 / ratio.a, 1 / ratio.b)


def _steps_of_b(steps_of_a: int, ratio: Ratio) -> int:
    return max(1, math.floor(steps_of_a * ratio.b_per_a + 0.5))


def _whole_steps_up(mass: float, step: float) -> int:
    return math.ceil(mass / step - NEAR * max(1.0, mass / step))
