"""Weighing A and B: the split, the pours, what a scale can do, and what to do when too much went in.

Masses in kg, volumes in m3, densities in kg/m3. A ratio inside is always by
weight; a ratio by volume is turned into one first, with both densities.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

Part = Literal["A", "B"]
Grade = Literal["green", "amber", "red"]

#: A count or a reading this near a whole number of steps is that number: floats, not grams.
_NEAR = 1e-9
#: Rounding to the scale's step may move the ratio this much before a slightly larger A is tried (our judgement:
#: a tenth of the two percent to weigh to), and so many steps larger.
_ROUNDING = 0.002
_EXTRA_STEPS = 3


@dataclass(frozen=True)
class Ratio:
    """Parts by weight, as on the sheet: 100:45 is ``Ratio(100, 45)``.

    Parameters
    ----------
    a, b : parts of A and of B by weight, both more than zero.

    Raises
    ------
    ValueError
        A part is zero, negative or not a number.

    Examples
    --------
    >>> Ratio(100, 45).b_per_a
    0.45
    """

    a: float
    b: float

    def __post_init__(self) -> None:
        _positive(parts_of_a=self.a, parts_of_b=self.b)

    @property
    def b_per_a(self) -> float:
        """How much B goes with one of A, by weight."""
        return self.b / self.a


@dataclass(frozen=True)
class Parts:
    """What is weighed for one pour: mass of A and of B, kg."""

    a: float
    b: float

    @property
    def total(self) -> float:
        """Mixed resin, kg."""
        return self.a + self.b


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


@dataclass(frozen=True)
class Correction:
    """What brings a batch back to its ratio: add ``mass`` kg of ``part``."""

    part: Part
    mass: float


# --- the ratio -----------------------------------------------------------------------------------


def ratio_by_weight(volume_of_a: float, volume_of_b: float, density_of_a: float, density_of_b: float) -> Ratio:
    """Turn a ratio by volume into one by weight: a:b becomes a*rho_A : b*rho_B.

    Parameters
    ----------
    volume_of_a, volume_of_b : parts by volume, more than zero.
    density_of_a, density_of_b : kg/m3, from the label, more than zero.

    Returns
    -------
    Ratio
        By weight, with A scaled to 100.

    Raises
    ------
    ValueError
        Something is zero or negative.

    Examples
    --------
    >>> round(ratio_by_weight(2, 1, 1150, 980).b, 1)
    42.6

    References
    ----------
    Exact: mass is density times volume.
    """
    _positive(density_of_a=density_of_a, density_of_b=density_of_b)
    by_volume = Ratio(volume_of_a, volume_of_b)
    return Ratio(100.0, 100.0 * by_volume.b_per_a * density_of_b / density_of_a)


def ratio_by_volume(ratio: Ratio, density_of_a: float, density_of_b: float) -> float:
    """Volume of B that goes with 100 volumes of A.

    Parameters
    ----------
    ratio : by weight.
    density_of_a, density_of_b : kg/m3, more than zero.

    Returns
    -------
    float
        Parts of B by volume for 100 of A.

    Examples
    --------
    >>> round(ratio_by_volume(Ratio(100, 45), 1130, 1010), 1)
    50.3

    References
    ----------
    Exact: volume is mass over density.
    """
    _positive(density_of_a=density_of_a, density_of_b=density_of_b)
    return 100.0 * ratio.b_per_a * density_of_a / density_of_b


def mixed_density(ratio: Ratio, density_of_a: float, density_of_b: float) -> float:
    """Density of the mixed liquid when the two volumes simply add: (mA+mB)/(mA/rho_A+mB/rho_B).

    Parameters
    ----------
    ratio : by weight.
    density_of_a, density_of_b : kg/m3, more than zero.

    Returns
    -------
    float
        kg/m3.

    Notes
    -----
    The liquids shrink a little as they cure; this is the liquid just mixed.

    Examples
    --------
    >>> round(mixed_density(Ratio(100, 45), 1130, 1010), 1)
    1089.8

    References
    ----------
    Exact for volumes that add.
    """
    _positive(density_of_a=density_of_a, density_of_b=density_of_b)
    return (ratio.a + ratio.b) / (ratio.a / density_of_a + ratio.b / density_of_b)


def split(total: float, ratio: Ratio) -> Parts:
    """A and B for a total: mA = M a/(a+b), mB = M b/(a+b).

    Parameters
    ----------
    total : mixed resin wanted, kg, more than zero.
    ratio : by weight.

    Returns
    -------
    Parts
        Exact, not rounded to a scale.

    Examples
    --------
    >>> parts = split(1.870, Ratio(100, 45))
    >>> round(parts.a, 4), round(parts.b, 4)
    (1.2897, 0.5803)

    References
    ----------
    Exact arithmetic.
    """
    _positive(total=total)
    mass_of_a = total * ratio.a / (ratio.a + ratio.b)
    return Parts(mass_of_a, total - mass_of_a)


def parts_from_a(mass_of_a: float, ratio: Ratio) -> Parts:
    """The batch that a weighed amount of A makes: mB = mA b/a. For A over-poured, too.

    Parameters
    ----------
    mass_of_a : kg really in the bucket, more than zero.
    ratio : by weight.

    Returns
    -------
    Parts
        That A, and the B it needs.

    Examples
    --------
    >>> round(parts_from_a(1.342, Ratio(100, 45)).b, 4)
    0.6039

    References
    ----------
    Exact arithmetic.
    """
    _positive(mass_of_a=mass_of_a)
    return Parts(mass_of_a, mass_of_a * ratio.b_per_a)


def parts_from_b(mass_of_b: float, ratio: Ratio) -> Parts:
    """The batch that a weighed amount of B makes: mA = mB a/b.

    Parameters
    ----------
    mass_of_b : kg really in the bucket, more than zero.
    ratio : by weight.

    Returns
    -------
    Parts
        The A it needs, and that B.

    Examples
    --------
    >>> round(parts_from_b(0.600, Ratio(100, 45)).a, 4)
    1.3333

    References
    ----------
    Exact arithmetic.
    """
    _positive(mass_of_b=mass_of_b)
    return Parts(mass_of_b / ratio.b_per_a, mass_of_b)


def parts_with(planned: Parts, in_bucket_a: float, in_bucket_b: float, ratio: Ratio) -> Parts:
    """The smallest batch on ratio that holds the plan and what is already in the bucket.

    Parameters
    ----------
    planned : what this pour was to be, kg.
    in_bucket_a, in_bucket_b : already in, kg, zero or more.
    ratio : by weight.

    Returns
    -------
    Parts
        The plan itself while neither part is over it; else grown to fit the part that is.

    Examples
    --------
    >>> round(parts_with(Parts(1.2897, 0.5803), 1.342, 0, Ratio(100, 45)).total, 4)
    1.9459

    References
    ----------
    Exact arithmetic.
    """
    if in_bucket_a < 0 or in_bucket_b < 0:
        raise ValueError("what is in the bucket cannot be less than nothing")
    batch = planned
    if in_bucket_a > batch.a:
        batch = parts_from_a(in_bucket_a, ratio)
    if in_bucket_b > batch.b:
        batch = parts_from_b(in_bucket_b, ratio)
    return batch


# --- the pours -----------------------------------------------------------------------------------


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

    Examples
    --------
    >>> round(pour_limit(2.0, 0.060, 1.5e-3, 0.8, 1100).net, 3)
    1.32

    References
    ----------
    Exact arithmetic; the fill share is the caller's.
    """
    _positive(density=density)
    if not 0 < fill_share <= 1:
        raise ValueError(f"the fill share must be over 0 and at most 1, not {fill_share}")
    if empty_bucket < 0:
        raise ValueError("an empty bucket cannot weigh less than nothing")
    return PourLimit(
        scale=None if scale_capacity is None else scale_capacity - empty_bucket,
        bucket=None if bucket_volume is None else bucket_volume * fill_share * density,
    )


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
    _positive(total=total, step=step)

    def enough(steps_of_a: int) -> bool:
        return (steps_of_a + _steps_of_b(steps_of_a, ratio)) * step >= total * (1 - _NEAR)

    least = max(1, _whole_steps_up(split(total, ratio).a, step))
    while not enough(least):
        least += 1
    tries = range(least, least + 1 + _EXTRA_STEPS)
    steps = next((n for n in tries if abs(_steps_of_b(n, ratio) / (n * ratio.b_per_a) - 1) <= _ROUNDING), least)
    return Parts(steps * step, _steps_of_b(steps, ratio) * step)


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
    _positive(total=total, limit=limit, step=step)
    if weighable(step, ratio, step).total > limit:
        raise ValueError("one pour cannot hold even the smallest amount this scale shows")
    count = 1 if math.isinf(limit) else max(1, math.ceil(total / limit - _NEAR))
    while (pour := weighable(total / count, ratio, step)).total > limit * (1 + _NEAR):
        count += 1
    return (pour,) * count


# --- what the scale can do -----------------------------------------------------------------------


def reading_uncertainty(step: float, repeatability: float = 0.0, drift: float = 0.0) -> float:
    """Standard uncertainty of one reading: u^2 = u_rep^2 + (drift/sqrt 3)^2 + (step/2/sqrt 3)^2.

    Parameters
    ----------
    step : the digital step, kg, zero or more.
    repeatability : standard deviation of repeated weighings, kg.
    drift : half-width of the drift between adjustments, kg.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> round(reading_uncertainty(0.0001, repeatability=0.00017, drift=0.0002), 7)
    0.0002075

    References
    ----------
    JCGM 100:2008 clause 4.3.7 (rectangular spread); University of Tartu, worked weighing example.
    """
    return math.hypot(repeatability, drift / math.sqrt(3), step / math.sqrt(12))


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
    _positive(step=step)
    return step / math.sqrt(6)


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
    _positive(mass_of_a=parts.a, mass_of_b=parts.b)
    return math.hypot(net / parts.a, net / parts.b)


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
    _positive(tolerance=tolerance, coverage=coverage)
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
    _positive(total=total, tolerance=tolerance, coverage=coverage)
    return total * tolerance * math.sqrt(6) / (coverage * _lopsidedness(ratio))


# --- off ratio -----------------------------------------------------------------------------------


def ratio_error(parts: Parts, ratio: Ratio) -> float:
    """How far B is over (+) or under (-) what its A needs: (mB/mA)/(b/a) - 1.

    Parameters
    ----------
    parts : what is really in the bucket, kg; A more than zero.
    ratio : what it should be, by weight.

    Returns
    -------
    float
        A fraction: 0.05 is five percent too much B.

    Examples
    --------
    >>> round(ratio_error(Parts(1.0, 0.4725), Ratio(100, 45)), 3)
    0.05

    References
    ----------
    Exact arithmetic. A +x % error in the mass ratio is a +x % error in the chemical ratio.
    """
    _positive(mass_of_a=parts.a)
    return parts.b / parts.a / ratio.b_per_a - 1


def grade(error: float, good: float, worst: float) -> Grade:
    """Class an error of the ratio.

    Parameters
    ----------
    error : as :func:`ratio_error` gives it.
    good : up to this it is green, a fraction.
    worst : up to this it is amber; beyond, red. With the sheet's own tolerance, both are that.

    Returns
    -------
    str
        green, amber or red.

    Examples
    --------
    >>> grade(-0.03, 0.02, 0.05)
    'amber'

    References
    ----------
    The limits are the caller's: the sheet's, or those of ``data/mixing.toml``.
    """
    size = abs(error)
    if size <= good + _NEAR:
        return "green"
    return "amber" if size <= worst + _NEAR else "red"


def correction(parts: Parts, ratio: Ratio) -> Correction:
    """Which part to add, and how much, to come back on ratio. Nothing is taken out: it is mixed.

    Parameters
    ----------
    parts : what is in the bucket, kg, zero or more; not both zero.
    ratio : by weight.

    Returns
    -------
    Correction
        The part that is short, and kg of it.

    Examples
    --------
    >>> fix = correction(Parts(1.0, 0.4725), Ratio(100, 45))
    >>> fix.part, round(fix.mass, 3)
    ('A', 0.05)

    References
    ----------
    Exact arithmetic.
    """
    _positive(total=parts.total)
    missing_b = parts.a * ratio.b_per_a - parts.b
    if missing_b >= 0:
        return Correction("B", missing_b)
    return Correction("A", -missing_b / ratio.b_per_a)


# --- whole kits ----------------------------------------------------------------------------------


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
    _positive(total=total, kit=kit.total)
    return max(1, math.ceil(total / kit.total - _NEAR))


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


# --- helpers -------------------------------------------------------------------------------------


def _lopsidedness(ratio: Ratio) -> float:
    """(a+b) sqrt(1/a^2 + 1/b^2): how much a small part makes the ratio harder to hold."""
    return (ratio.a + ratio.b) * math.hypot(1 / ratio.a, 1 / ratio.b)


def _steps_of_b(steps_of_a: int, ratio: Ratio) -> int:
    return max(1, math.floor(steps_of_a * ratio.b_per_a + 0.5))


def _whole_steps_up(mass: float, step: float) -> int:
    return math.ceil(mass / step - _NEAR * max(1.0, mass / step))


def _positive(**values: float) -> None:
    for name, value in values.items():
        if not value > 0:
            raise ValueError(f"{name.replace('_', ' ')} must be more than zero, not {value}")
