"""An unfamiliar resin: whether the figures of its sheet agree, and what stands in for those that it does not print."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from calc.casting.cure.kinetics import ResinClass, resin_classes
from calc.casting.mixing import Ratio, ratio_by_weight
from calc.sources import figures, table

#: A figure of ``data/resin.csv`` by the name of its row, in its printed unit.
stand_in = figures("resin")
_DEEPEST_DISH_M = stand_in("deepest dish") / 1e3  # sets cups behind dishes


def hardener_over_resin(by_weight: Ratio, parts_a: float, parts_b: float) -> float:
    """Density of B over that of A that two printed ratios need: (b / a by weight) / (b / a by volume).

    Parameters
    ----------
    by_weight : the ratio by weight.
    parts_a, parts_b : the ratio by volume, each more than 0.

    Returns
    -------
    float

    Examples
    --------
    100:43 by weight and 2:1 by volume:

    >>> hardener_over_resin(Ratio(100, 43), 2, 1)
    0.86

    References
    ----------
    Exact: mass is density times volume.
    """
    return by_weight.b_per_a / (parts_b / parts_a)


def ratio_gap(by_weight: Ratio, parts_a: float, parts_b: float, density_a: float, density_b: float) -> float:
    """How far the printed ratio by weight is from the one that the volumes and densities give, as a fraction of the latter.

    Parameters
    ----------
    by_weight : as printed.
    parts_a, parts_b : by volume, as printed.
    density_a, density_b : kg/m3, more than 0.

    Returns
    -------
    float
        above 0 where the print asks for more B.

    Examples
    --------
    100:50 printed beside 2:1 by volume, at 1.15 and 0.98 g/mL:

    >>> round(ratio_gap(Ratio(100, 50), 2, 1, 1150, 980), 2)
    0.17

    References
    ----------
    Exact arithmetic.
    """
    return by_weight.b_per_a / ratio_by_weight(parts_a, parts_b, density_a, density_b).b_per_a - 1


def kind_of(k25: float) -> ResinClass:
    """The kind of resin that a rate belongs to: the borders lie half-way, as ratios, between the ranges of two kinds.

    Parameters
    ----------
    k25 : rate at 25 °C, 1/s.

    Returns
    -------
    ResinClass

    Examples
    --------
    >>> kind_of(2.2e-5).id, kind_of(6e-5).id, kind_of(2e-4).id
    ('slow', 'standard', 'fast')

    References
    ----------
    cure-fit.
    """
    kinds = resin_classes()
    for slower, faster in pairwise(kinds):
        if k25 < math.sqrt(slower.k25_high * faster.k25_low):
            return slower
    return kinds[-1]


def usual_viscosity(kind: ResinClass) -> float:
    """Viscosity of a kind of resin just mixed, where the sheet prints none.

    Parameters
    ----------
    kind : of resin.

    Returns
    -------
    float
        Pa s at 25 °C.

    Examples
    --------
    >>> usual_viscosity(kind_of(1.6e-5))
    0.4

    References
    ----------
    judgement.
    """
    return stand_in(f"viscosity {kind.id}")


@dataclass(frozen=True)
class CupSize:
    """Which test cup to make: ``vessel`` is ``dish`` (80 mm across) or ``foam``; ``amount`` is its layer in m, or its mass in kg."""

    vessel: str
    amount: float


@cache
def cup_sizes() -> tuple[tuple[float, CupSize], ...]:
    """The test cups, the smallest first, each with the pot life (s, of 100 g at 25 °C) below which it serves.

    Returns
    -------
    tuple of (float, CupSize)

    Examples
    --------
    >>> cup_sizes()[0]
    (1500.0, CupSize(vessel='dish', amount=0.004))

    References
    ----------
    cure-trials.
    """
    return tuple(
        (float(row["below"]) * 60 if row["below"] else math.inf, CupSize(row["vessel"], float(row["amount"]) / 1000)) for row in table("cup_vessels")
    )


def cup_for(pot_life_s: float) -> CupSize:
    """The test cup that is likely to warm as it should.

    Parameters
    ----------
    pot_life_s : of 100 g at 25 °C, s.

    Returns
    -------
    CupSize

    Examples
    --------
    >>> cup_for(90 * 60), cup_for(11 * 3600)
    (CupSize(vessel='dish', amount=0.01), CupSize(vessel='foam', amount=0.1))

    References
    ----------
    cure-trials.
    """
    return next(size for below, size in cup_sizes() if pot_life_s < below)


def next_cup(size: CupSize, larger: bool) -> CupSize | None:
    """The test cup one size larger or smaller than one that warmed too little or too much.

    Parameters
    ----------
    size : as it was.
    larger : too little warmth asks for a larger one.

    Returns
    -------
    CupSize or None
        None where there is none in that direction.

    Examples
    --------
    >>> next_cup(CupSize("foam", 0.1), True), next_cup(CupSize("dish", 0.004), False)
    (CupSize(vessel='foam', amount=0.2), None)

    References
    ----------
    cure-trials.
    """
    rows = [row for _, row in cup_sizes()]
    ordered = rows if larger else rows[::-1]
    beyond = [row for row in ordered if _rank(row) > _rank(size) * 1.05] if larger else [row for row in ordered if _rank(row) < _rank(size) / 1.05]
    return beyond[0] if beyond else None


def _rank(size: CupSize) -> float:
    """Dishes before cups, each by its amount."""
    return size.amount if size.vessel == "dish" else _DEEPEST_DISH_M + size.amount
