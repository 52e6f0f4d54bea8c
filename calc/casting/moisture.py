"""Water in wood: what air brings it to, how it was measured, what it moves, and when it is dry enough to cast.

Moisture is a fraction of the oven-dry mass (0.08 for 8 %), humidity a fraction of
saturation; temperatures in kelvin, masses in kg, lengths in m.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal

from calc.constants import ZERO_C
from calc.quantity.units import to_si
from calc.sources import table

Grade = Literal["go", "caution", "strong", "stop"]

#: From best to worst.
GRADES: tuple[Grade, ...] = ("go", "caution", "strong", "stop")
WEEK_S = 7 * 86_400.0
#: Coefficients of 1, T and T squared, T in degrees Celsius: Wood Handbook (2021), equation 4-5, metric form.
_W = (349.0, 1.29, 0.0135)
_K = (0.805, 0.000736, -0.00000273)
_K1 = (6.27, -0.00938, -0.000303)
_K2 = (1.91, 0.0407, -0.000293)
#: Between these the inverse of equation 4-5 is looked for; it is not meant for air that drips.
_DRIEST, _DAMPEST = 0.001, 0.98


@cache
def percent(name: str) -> float:
    """A figure in percent of ``data/moisture.csv``, as a fraction.

    Parameters
    ----------
    name : of the row.

    Returns
    -------
    float

    Examples
    --------
    >>> percent("stop")
    0.15

    References
    ----------
    Each row of the table names its own.
    """
    return _printed(name) / 100


def equilibrium(temperature_k: float, humidity: float) -> float:
    """Moisture that wood comes to in steady air: EMC = (18/W) [Kh/(1-Kh) + (K1 Kh + 2 K1 K2 (Kh)^2)/(1 + K1 Kh + K1 K2 (Kh)^2)].

    Parameters
    ----------
    temperature_k : of the air, K; 272 to 328.
    humidity : h, fraction; 0.05 to 0.95.

    Returns
    -------
    float
        moisture, fraction.

    Notes
    -----
    For any species, midway between drying and wetting. One piece may differ by its history and what is in it.

    Examples
    --------
    >>> round(100 * equilibrium(293.15, 0.50), 2)
    9.27

    References
    ----------
    wood-handbook-4, equation 4-5, metric form; within 0.06 % of table 4-2.
    """
    celsius = temperature_k - ZERO_C
    w, k, k1, k2 = (a + b * celsius + c * celsius**2 for a, b, c in (_W, _K, _K1, _K2))
    kh = k * humidity
    return 18 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2))


def humidity_for(moisture: float, temperature_k: float) -> float:
    """Humidity of the air that brings wood to a moisture: the inverse of :func:`equilibrium`.

    Parameters
    ----------
    moisture : fraction, above 0.
    temperature_k : of the air, K; 272 to 328.

    Returns
    -------
    float
        humidity, fraction; held between 0.001 and 0.98.

    Examples
    --------
    >>> round(100 * humidity_for(0.08, 294.15), 1)
    42.0

    References
    ----------
    wood-handbook-4, equation 4-5, by bisection.
    """
    low, high = _DRIEST, _DAMPEST
    for _ in range(50):
        middle = (low + high) / 2
        if equilibrium(temperature_k, middle) < moisture:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def of_oven_test(before_kg: float, oven_dry_kg: float) -> float:
    """Moisture from an oven test: (m - m_od) / m_od.

    Parameters
    ----------
    before_kg : m, as it was.
    oven_dry_kg : m_od, dried at 103 degrees Celsius until it loses no more; above 0.

    Returns
    -------
    float
        fraction.

    Examples
    --------
    >>> of_oven_test(0.136, 0.100)
    0.36

    References
    ----------
    astm-d4442, clause 3.1.
    """
    return (before_kg - oven_dry_kg) / oven_dry_kg


def of_wet_basis(share: float) -> float:
    """Moisture from a share of the wet weight: s / (1 - s).

    Parameters
    ----------
    share : water as a fraction of the wet weight, 0 to below 1.

    Returns
    -------
    float
        fraction of the oven-dry mass.

    Examples
    --------
    >>> of_wet_basis(0.2)
    0.25

    References
    ----------
    Algebra.
    """
    return share / (1 - share)


def mass_after(mass_kg: float, before: float, after: float) -> float:
    """What a piece weighs at another moisture: m2 = m1 (1 + M2) / (1 + M1).

    Parameters
    ----------
    mass_kg : m1.
    before, after : M1 and M2, fractions.

    Returns
    -------
    float
        m2, kg.

    Examples
    --------
    >>> round(mass_after(1.240, 0.14, 0.08), 4)
    1.1747

    References
    ----------
    Algebra: the oven-dry mass stays.
    """
    return mass_kg * (1 + after) / (1 + before)


def corrected_reading(reading: float, wood_k: float) -> float:
    """A hand meter's reading set right for the wood's temperature: half a percent for each 10 degrees Fahrenheit.

    Parameters
    ----------
    reading : fraction, from a meter that does not correct itself.
    wood_k : temperature of the wood, K.

    Returns
    -------
    float
        fraction, never below 0; colder wood than the meter is set for reads too low, so it goes up.

    Examples
    --------
    >>> round(100 * corrected_reading(0.09, 283.15), 2)
    10.0

    References
    ----------
    wood-handbook-13.
    """
    step_k = _printed("meter step") / 1.8
    calibrated_k = to_si(_printed("meter calibrated"), "temperature", "°F")
    return max(0.0, reading + percent("meter shift") * (calibrated_k - wood_k) / step_k)


def movement(size_m: float, before: float, after: float, shrinkage: float) -> float:
    """How much a size across the grain changes: dD = D (M2 - M1) / (0.30/S - 0.30 + M1).

    Parameters
    ----------
    size_m : D, at moisture ``before``.
    before, after : M1 and M2, fractions; above fibre saturation wood does not move, and they count as 0.30.
    shrinkage : S, green to oven-dry along that direction, fraction above 0.

    Returns
    -------
    float
        m; below 0 where it shrinks.

    Examples
    --------
    300 mm of sugar maple along its rings, from 12 to 7 %:

    >>> round(1000 * movement(0.300, 0.12, 0.07, 0.099), 2)
    -5.26

    References
    ----------
    Follows from wood-handbook-4, equation 4-9.
    """
    full = percent("fibre saturation")
    m1, m2 = min(before, full), min(after, full)
    return size_m * (m2 - m1) / (full / shrinkage - full + m1)


def lost_per_week(before_kg: float, now_kg: float, time_s: float) -> float:
    """Share of its weight that a piece loses in a week; below 0 where it gains.

    Parameters
    ----------
    before_kg, now_kg : two weighings.
    time_s : between them, s, above 0.

    Returns
    -------
    float
        fraction of ``now_kg`` in a week.

    Examples
    --------
    >>> round(100 * lost_per_week(1.010, 1.000, 14 * 86_400), 2)
    0.5

    References
    ----------
    Definition.
    """
    return (before_kg - now_kg) / now_kg * WEEK_S / time_s


@dataclass(frozen=True)
class Limits:
    """Moisture above which each grade begins, for a piece that will live at ``home``; fractions."""

    home: float

    @property
    def match(self) -> float:
        """Near enough to where it will live."""
        return self.home + percent("match")

    @property
    def go(self) -> float:
        """Up to here nothing stands against casting it: the lower of the two."""
        return min(percent("go"), self.match)

    @property
    def caution(self) -> float:
        """Up to here a caution, and above it a strong one."""
        return min(percent("caution"), self.home + percent("far"))

    @property
    def stop(self) -> float:
        """Above here it is not cast."""
        return percent("stop")

    def grade(self, moisture: float) -> Grade:
        """What that moisture is.

        Parameters
        ----------
        moisture : fraction.

        Returns
        -------
        Grade

        Examples
        --------
        >>> [Limits(home=0.08).grade(moisture) for moisture in (0.10, 0.12, 0.15, 0.16)]
        ['go', 'caution', 'strong', 'stop']

        References
        ----------
        The two percent: drying-lumber, page 6. The rest is common practice.
        """
        near = 1e-9  # 10 % typed is 10 %, whatever the float
        if moisture > self.stop + near:
            return "stop"
        if moisture > self.caution + near:
            return "strong"
        return "caution" if moisture > self.go + near else "go"


@cache
def _printed(name: str) -> float:
    return next(float(row["value"]) for row in table("moisture") if row["name"] == name)
