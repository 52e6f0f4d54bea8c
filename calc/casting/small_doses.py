"""Doses too small for a scale: the least that it weighs well, a pre-mix in part A, and drops with their spread.

Masses in kg; uncertainties and tolerances as fractions.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.casting.mixing import NEAR
from calc.casting.weighing import net_uncertainty
from calc.guards import require_positive

#: Half of one drop, taken as equally likely anywhere, in drops: which drop still fell is not known.
_COUNT = 0.5 / math.sqrt(3)


def least_dose(step: float, tolerance: float, coverage: float) -> float:
    """The smallest dose that a scale weighs well enough: k u / tau, about 16 steps for 5 % at k = 2.

    Parameters
    ----------
    step : the scale's step, kg, more than zero.
    tolerance : how far the dose may be off, tau, a fraction more than zero.
    coverage : k, how many standard uncertainties must fit inside the tolerance.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> round(least_dose(0.001, 0.05, 2) / 0.001, 1)
    16.3

    References
    ----------
    JCGM 100:2008 clause 4.3.7, two rectangular readings.
    """
    require_positive(tolerance=tolerance, coverage=coverage)
    return coverage * net_uncertainty(step) / tolerance


def coarsest_step_for(dose: float, tolerance: float, coverage: float) -> float:
    """The coarsest step that still weighs a dose: :func:`least_dose` turned round.

    Parameters
    ----------
    dose : kg, more than zero.
    tolerance, coverage : as there.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> round(1000 * coarsest_step_for(0.01633, 0.05, 2), 3)
    1.0

    References
    ----------
    JCGM 100:2008 clause 4.3.7.
    """
    require_positive(dose=dose, tolerance=tolerance, coverage=coverage)
    return dose * tolerance * math.sqrt(6) / coverage


@dataclass(frozen=True)
class Premix:
    """Colour stirred into part A beforehand: ``colour`` and ``part_a``, kg."""

    colour: float
    part_a: float

    @property
    def stock(self) -> float:
        """Both together, kg: what goes on the scale."""
        return self.colour + self.part_a


def premix(colour: float, strength: float) -> Premix:
    """The pre-mix that holds this much colour: m_c / s of it, and m_c (1 - s) / s of that is part A.

    Parameters
    ----------
    colour : m_c, kg.
    strength : s, colour over the whole pre-mix, above 0 and at most 1.

    Returns
    -------
    Premix
        Its part A counts as A of the batch.

    Raises
    ------
    ValueError
        a strength that is none.

    Examples
    --------
    >>> dose = premix(0.00035, 0.05)
    >>> round(1000 * dose.stock, 2), round(1000 * dose.part_a, 2)
    (7.0, 6.65)

    References
    ----------
    Exact arithmetic.
    """
    if not 0 < strength <= 1:
        raise ValueError(f"a strength is over 0 and at most 1, not {strength}")
    return Premix(colour, colour * (1 - strength) / strength)


def premix_strength(smallest: float, least: float) -> float:
    """The strongest round pre-mix (50, 20, 10, 5 % ...) of which even the smallest dose can be weighed.

    Parameters
    ----------
    smallest : colour in the smallest dose, kg, more than zero.
    least : the smallest weight the scale weighs well, kg, more than zero.

    Returns
    -------
    float
        A fraction, at most a half.

    Examples
    --------
    >>> round(premix_strength(0.35, 1.63), 3)
    0.2

    References
    ----------
    Our judgement: round figures are weighed out without a slip.
    """
    require_positive(smallest=smallest, least=least)
    most = min(smallest / least, 0.5) * (1 + NEAR)
    decade = 10.0 ** math.floor(math.log10(most))
    return next(digit * decade for digit in (5, 2, 1) if digit * decade <= most)


def drops_for(mass: float, drop: float) -> int:
    """The nearest whole number of drops.

    Parameters
    ----------
    mass : kg.
    drop : one drop, kg, more than zero.

    Returns
    -------
    int
        May be 0.

    Examples
    --------
    >>> drops_for(0.00035, 0.00005)
    7

    References
    ----------
    Exact arithmetic.
    """
    require_positive(drop=drop)
    return math.floor(mass / drop + 0.5)


def drops_spread(count: int, each: float) -> float:
    """Standard uncertainty of so many drops, as a fraction: one dropper's error on all of them, and half a drop in the count.

    Parameters
    ----------
    count : drops, 1 or more.
    each : standard uncertainty of one drop of this dropper, a fraction.

    Returns
    -------
    float

    Examples
    --------
    >>> round(drops_spread(6, 0.15 / math.sqrt(3)), 3)
    0.099

    References
    ----------
    usp-1101 for the drop; JCGM 100:2008 clause 4.3.7 for the count, rectangular.
    """
    require_positive(count=count)
    return math.hypot(each, _COUNT / count)
