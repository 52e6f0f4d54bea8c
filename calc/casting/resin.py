"""An unfamiliar resin: whether the figures of its sheet agree, and what stands in for those that it does not print."""

from __future__ import annotations

import math
from itertools import pairwise

from calc.casting.cure.kinetics import ResinClass, resin_classes
from calc.casting.mixing import Ratio, ratio_by_weight
from calc.sources import value


def stand_in(name: str) -> float:
    """A figure of ``data/resin.csv``, in its printed unit.

    Parameters
    ----------
    name : of the row.

    Returns
    -------
    float

    Examples
    --------
    >>> stand_in("ratio gap")
    0.04

    References
    ----------
    Each row of the table names its own.
    """
    return value("resin", name)


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
