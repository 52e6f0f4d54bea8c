"""How sure a sum is: what each part adds to its spread, how much is wanted for given odds, and the odds that what is there is enough.

Standard uncertainties as in the GUM; ``freedom`` is the degrees of freedom behind one, infinite where it is not from repeated readings.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from statistics import NormalDist

_NORMAL = NormalDist()
_AS_NORMAL = 1e6  # with more degrees of freedom than that, Student's t and the normal differ by a few millionths
_TINY = 1e-300
_STEPS = 300  # of the continued fraction; it settles in fewer than sqrt(freedom) of them near the middle


@dataclass(frozen=True)
class Spread:
    """One part's standard uncertainty of the sum, with its name; ``u`` keeps its sign where two sums share a part."""

    name: str
    u: float
    freedom: float = math.inf


def within(half_width: float) -> float:
    """Standard uncertainty of what lies anywhere within limits: a / sqrt 3.

    Parameters
    ----------
    half_width : a, in any unit.

    Returns
    -------
    float
        in that unit.

    Examples
    --------
    >>> round(within(0.5), 4)
    0.2887

    References
    ----------
    JCGM 100:2008 clause 4.3.7.
    """
    return half_width / math.sqrt(3)


def combined(spreads: Iterable[Spread]) -> float:
    """Standard uncertainty of the sum of independent parts: the root of the sum of squares.

    Parameters
    ----------
    spreads : of the parts, in one unit.

    Returns
    -------
    float
        in that unit.

    Examples
    --------
    >>> combined([Spread("wood", 3.0), Spread("mould", 4.0)])
    5.0

    References
    ----------
    JCGM 100:2008 equation (10).
    """
    return math.sqrt(sum(spread.u**2 for spread in spreads))


def freedom_of(spreads: Sequence[Spread]) -> float:
    """Degrees of freedom behind the sum: u_c^4 / sum(u_i^4 / nu_i), by Welch and Satterthwaite.

    Parameters
    ----------
    spreads : of the parts, in one unit.

    Returns
    -------
    float
        infinite where no part is from repeated readings.

    Examples
    --------
    >>> freedom_of([Spread("read four times", 1.0, 3), Spread("known", 1.0)])
    12.0

    References
    ----------
    JCGM 100:2008 annex G.4, from memory.
    """
    below = sum(spread.u**4 / spread.freedom for spread in spreads)
    return combined(spreads) ** 4 / below if below > 0 else math.inf


def repeated(readings: Sequence[float]) -> tuple[float, float, float]:
    """Mean of several readings of one thing, its standard uncertainty s / sqrt n, and the degrees of freedom n - 1.

    Parameters
    ----------
    readings : two or more.

    Returns
    -------
    tuple of float

    Raises
    ------
    ValueError
        fewer than two.

    Examples
    --------
    >>> [round(x, 3) for x in repeated([50.2, 51.0, 50.6, 50.9])]
    [50.675, 0.18, 3.0]

    References
    ----------
    JCGM 100:2008 clause 4.2.
    """
    n = len(readings)
    if n < 2:
        raise ValueError("one reading shows no spread")
    mean = math.fsum(readings) / n
    return mean, math.sqrt(math.fsum((x - mean) ** 2 for x in readings) / (n - 1) / n), float(n - 1)


def amount_for(odds: float, mean: float, u: float, freedom: float = math.inf) -> float:
    """What to have ready so that it is enough with these odds: M + z u, or M + t u where it rests on few readings.

    Parameters
    ----------
    odds : 0 to 1, not either.
    mean : what is wanted most likely.
    u : its standard uncertainty.
    freedom : degrees of freedom behind it.

    Returns
    -------
    float
        in the unit of ``mean``.

    Examples
    --------
    >>> round(amount_for(0.95, 2788.1, 270.1))
    3232

    References
    ----------
    JCGM 100:2008 clause 6 and annex G, one side.
    """
    return mean + deviate(odds, freedom) * u


def odds_of_enough(have: float, mean: float, u: float, freedom: float = math.inf) -> float:
    """Odds that what is there is enough: P = Phi((M_have - M) / u).

    Parameters
    ----------
    have : what is there.
    mean : what is wanted most likely.
    u : its standard uncertainty; with none it is enough or not.
    freedom : degrees of freedom behind it.

    Returns
    -------
    float
        0 to 1.

    Examples
    --------
    >>> round(odds_of_enough(3000, 2788.1, 270.1), 3)
    0.784

    References
    ----------
    The normal distribution, or Student's t.
    """
    if u <= 0:
        return 1.0 if have >= mean else 0.0
    return below((have - mean) / u, freedom)


@lru_cache(maxsize=64)
def deviate(odds: float, freedom: float = math.inf) -> float:
    """The one-sided z, or t with few degrees of freedom, that leaves ``1 - odds`` above it.

    Parameters
    ----------
    odds : more than 0, less than 1.
    freedom : 1 or more; infinite for the normal distribution.

    Returns
    -------
    float

    Examples
    --------
    >>> round(deviate(0.95), 3), round(deviate(0.95, 3), 3)
    (1.645, 2.353)

    References
    ----------
    The normal distribution, or Student's t by halving.
    """
    z = _NORMAL.inv_cdf(odds)
    if freedom > _AS_NORMAL:
        return z
    if odds < 0.5:
        return -deviate(1 - odds, freedom)
    low, high = 0.0, max(1.0, 2 * z)
    while below(high, freedom) < odds:
        low, high = high, 2 * high
    while high - low > 1e-12 * high:
        middle = (low + high) / 2
        if middle in (low, high):
            break
        low, high = (middle, high) if below(middle, freedom) < odds else (low, middle)
    return (low + high) / 2


def below(deviation: float, freedom: float = math.inf) -> float:
    """Odds of less than so many standard uncertainties over the mean.

    Parameters
    ----------
    deviation : in standard uncertainties.
    freedom : 1 or more; infinite for the normal distribution.

    Returns
    -------
    float
        0 to 1.

    Examples
    --------
    >>> round(below(1.645), 3), round(below(2.353, 3), 3)
    (0.95, 0.95)

    References
    ----------
    The normal distribution; Student's t by the incomplete beta function.
    """
    if freedom > _AS_NORMAL:
        return _NORMAL.cdf(deviation)
    tail = _incomplete_beta(freedom / 2, 0.5, freedom / (freedom + deviation**2)) / 2
    return 1 - tail if deviation > 0 else tail


def _incomplete_beta(a: float, b: float, x: float) -> float:
    """The regularised I_x(a, b) by its continued fraction."""
    if x <= 0 or x >= 1:
        return float(x >= 1)
    front = math.exp(math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x))
    if x < (a + 1) / (a + b + 2):
        return front * _fraction(a, b, x) / a
    return 1 - front * _fraction(b, a, 1 - x) / b


def _fraction(a: float, b: float, x: float) -> float:
    """The continued fraction of the incomplete beta function, by Lentz's method."""
    c, d = 1.0, 1 / _not_nothing(1 - (a + b) * x / (a + 1))
    out = d
    for m in range(1, _STEPS):
        for term in (m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)), -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))):
            d = 1 / _not_nothing(1 + term * d)
            c = _not_nothing(1 + term / c)
            out *= c * d
        if abs(c * d - 1) < 1e-15:
            break
    return out


def _not_nothing(value: float) -> float:
    return value if abs(value) > _TINY else _TINY
