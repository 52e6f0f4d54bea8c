"""A batch off its ratio: how far, what brings it back, and what it comes to in words, each with its source.

Masses in kg. What it comes to has no figure for each percent.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from calc.casting.mixing import NEAR, Parts, Ratio
from calc.casting.stoichiometry import gel_limit
from calc.guards import require_positive
from calc.sources import table

Part = Literal["A", "B"]
Grade = Literal["green", "amber", "red"]

#: A common epoxy has two groups, a common amine hardener four.
_LEAST = gel_limit(2, 4)


@dataclass(frozen=True)
class Correction:
    """What brings a batch back to its ratio: add ``mass`` kg of ``part``."""

    part: Part
    mass: float


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
    require_positive(mass_of_a=parts.a)
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
    The limits are the caller's: the sheet's, or those of ``data/mixing.csv``.
    """
    size = abs(error)
    if size <= good + NEAR:
        return "green"
    return "amber" if size <= worst + NEAR else "red"


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
    require_positive(total=parts.total)
    missing_b = parts.a * ratio.b_per_a - parts.b
    if missing_b >= 0:
        return Correction("B", missing_b)
    return Correction("A", -missing_b / ratio.b_per_a)


def consequences(error: float) -> tuple[Mapping[str, str], ...]:
    """Rows of ``data/off_ratio.csv`` that hold for an error of the ratio.

    Parameters
    ----------
    error : of B to A, a fraction, as :func:`ratio_error` gives it; B is taken for the hardener.

    Returns
    -------
    tuple of mapping
        ``text`` and ``source`` of each; empty when it is on ratio.

    Notes
    -----
    Which of them shows, and from how many percent, depends on the resin.

    Examples
    --------
    >>> [row["name"] for row in consequences(-0.08)]
    ['weak', 'brittle']
    >>> [row["name"] for row in consequences(-0.7)]
    ['weak', 'brittle', 'liquid']

    References
    ----------
    army-two-part, off-ratio-ageing, off-ratio-softening, gel-off-ratio.
    """
    if error == 0:
        return ()
    side = "short" if error < 0 else "over"
    lost = not _LEAST <= 1 + error <= 1 / _LEAST
    return tuple(row for row in table("off_ratio") if row["side"] == side or (lost and row["side"] == "lost"))
