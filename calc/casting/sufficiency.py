"""How much resin moulds want, how sure that is, what a pour half done says about it, and what a brim-full mould asks for later.

Volumes m3, masses kg. Resin = mould - wood + what soaks in + what stays in the bucket, each with its own spread (:mod:`calc.casting.budget`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from calc.casting import budget
from calc.casting.budget import Spread
from calc.sources import figures

#: A figure of ``data/enough.csv`` by the name of its row, in its printed unit.
standard = figures("enough")


@dataclass(frozen=True)
class Wood:
    """Wood below the fill line of one mould.

    Parameters
    ----------
    volume : m3; u : its standard uncertainty, m3.
    soak : share of it that soaks in; soak_off : half-width of that share.
    """

    volume: float = 0.0
    u: float = 0.0
    soak: float = 0.0
    soak_off: float = 0.0

    @property
    def kept_out(self) -> float:
        """Resin that it keeps out of the mould: what it takes up less what soaks in, m3."""
        return (1 - self.soak) * self.volume

    def spreads(self) -> tuple[Spread, ...]:
        """What it adds to the spread of the resin, m3; more wood is less resin."""
        return Spread("wood", -(1 - self.soak) * self.u), Spread("soak", budget.within(self.soak_off * self.volume))


@dataclass(frozen=True)
class Demand:
    """An amount that is wanted most likely, and what makes it unsure; in one unit, m3 or kg."""

    likely: float
    spreads: tuple[Spread, ...]

    @cached_property
    def u(self) -> float:
        """Standard uncertainty."""
        return budget.combined(self.spreads)

    @cached_property
    def freedom(self) -> float:
        """Degrees of freedom behind it."""
        return budget.freedom_of(self.spreads)

    def for_odds(self, odds: float) -> float:
        """What to have so that it is enough with these odds."""
        return budget.amount_for(odds, self.likely, self.u, self.freedom)

    def odds(self, have: float) -> float:
        """Odds that so much is enough."""
        return budget.odds_of_enough(have, self.likely, self.u, self.freedom)

    def weighed(self, density: float, u_density: float) -> Demand:
        """A volume as a mass: rho V, with the spread of the density."""
        parts = tuple(replace(spread, u=density * spread.u) for spread in self.spreads)
        return Demand(density * self.likely, (*parts, Spread("density", self.likely * u_density)))

    def times(self, count: float) -> Demand:
        """The same several times over, off in the same way each time."""
        return Demand(count * self.likely, tuple(replace(spread, u=count * spread.u) for spread in self.spreads))

    def plus(self, *others: Demand) -> Demand:
        """Several together, each off in its own way."""
        both = (self, *others)
        return Demand(sum(one.likely for one in both), tuple(spread for one in both for spread in one.spreads))

    def but(self, name: str, u: float) -> Demand:
        """The same with the spread that one kind of part adds brought down to ``u``, where it is more."""
        kept = tuple(spread for spread in self.spreads if spread.name != name)
        own = budget.combined(spread for spread in self.spreads if spread.name == name)
        return Demand(self.likely, (*kept, Spread(name, min(own, u))))

    def by_name(self) -> list[Spread]:
        """The parts with their spread, the largest first, those of one name together."""
        names = dict.fromkeys(spread.name for spread in self.spreads)
        together = [Spread(name, budget.combined(spread for spread in self.spreads if spread.name == name)) for name in names]
        return sorted(together, key=lambda spread: -spread.u)


def resin_in_mould(room: Demand, wood: Wood) -> Demand:
    """Resin in one mould: V = V_mould - V_wood + V_soak.

    Parameters
    ----------
    room : the mould's volume below the fill line, with the spread of sizes, depth and level, m3.
    wood : in it.

    Returns
    -------
    Demand
        m3; below 0 where the wood is bigger than the mould.

    Examples
    --------
    >>> round(1e6 * resin_in_mould(Demand(4866.6e-6, ()), Wood(2386.5e-6, 238.7e-6, 0.02, 0.02)).likely, 1)
    2527.8

    References
    ----------
    Arithmetic.
    """
    return Demand(room.likely - wood.kept_out, (*room.spreads, *wood.spreads()))


def lost(poured_m3: float, pours: float) -> Demand:
    """What stays in bucket, cup and stick: of each pour the larger of a least amount and a share, give or take two thirds.

    Parameters
    ----------
    poured_m3 : all that goes into the moulds.
    pours : in how many batches, 1 or more.

    Returns
    -------
    Demand
        m3.

    Examples
    --------
    >>> round(1e6 * lost(2527.8e-6, 1).likely, 1), round(1e6 * lost(500e-6, 1).u, 1)
    (37.9, 11.5)

    References
    ----------
    Common practice, no source.
    """
    each = max(standard("loss least") * 1e-6, standard("loss share") * poured_m3 / pours)
    return stays_behind(pours * each, standard("loss off") * pours * each)


def stays_behind(likely_m3: float, half_width_m3: float) -> Demand:
    """A loss that is known, within limits.

    Parameters
    ----------
    likely_m3 : the loss.
    half_width_m3 : it is off by that at most.

    Returns
    -------
    Demand
        m3.

    Examples
    --------
    >>> round(1e6 * stays_behind(30e-6, 20e-6).u, 1)
    11.5

    References
    ----------
    As :func:`calc.casting.budget.within`.
    """
    return Demand(likely_m3, (Spread("loss", budget.within(half_width_m3)),))


def corrected(whole: Demand, so_far: Demand, seen: float, u_seen: float) -> Demand:
    """The whole amount once part of it has been poured and its level was read.

    Both sums share their parts: wood that turned out bigger halfway up is bigger as a whole. The best straight-line guess is
    T + K (seen - so far) with K = sum(a b) / (sum(b^2) + u^2), a and b what each part adds to the two.

    Parameters
    ----------
    whole : as reckoned before the pour.
    so_far : what the level read should have taken, by the same reckoning; its parts in the same order as those of ``whole``.
    seen : what was really poured.
    u_seen : standard uncertainty of that and of the level, in the same unit.

    Returns
    -------
    Demand
        with one part, 'left'; never below what was seen.

    Raises
    ------
    ValueError
        the two do not share their parts.

    Examples
    --------
    >>> before = Demand(2788.0, (Spread("wood", -260.0), Spread("depth", 60.0)))
    >>> half_way = Demand(1400.0, (Spread("wood", -130.0), Spread("depth", 0.0)))
    >>> after = corrected(before, half_way, 1250.0, 20.0)
    >>> round(after.likely), round(after.u)
    (2495, 72)

    References
    ----------
    The mean and spread of one normal quantity when another that goes with it is known.
    """
    if [spread.name for spread in whole.spreads] != [spread.name for spread in so_far.spreads]:
        raise ValueError("the two sums do not share their parts")
    pairs = [(a.u, b.u) for a, b in zip(whole.spreads, so_far.spreads, strict=True)]
    shared, known = sum(a * b for a, b in pairs), sum(b * b for _, b in pairs) + u_seen**2
    gain = shared / known if known > 0 else 0.0
    left = math.sqrt(max(0.0, sum(a * a for a, _ in pairs) - gain * shared))
    return Demand(max(seen, whole.likely + gain * (seen - so_far.likely)), (Spread("left", left),))


@dataclass(frozen=True)
class Portion:
    """What one mould wants of a batch, and how much less it could do with; kg."""

    name: str
    demand: Demand
    spare: float = 0.0


def filling_order(portions: Sequence[Portion]) -> list[Portion]:
    """Moulds in the order in which to fill them, so that a shortage lands in the one that can best do with less.

    Parameters
    ----------
    portions : the moulds.

    Returns
    -------
    list of Portion
        the least spare first; of equals the smallest first, since the same grams are the least of a large one.

    Examples
    --------
    >>> clear, backing = Portion("clear", Demand(0.9, ())), Portion("backing", Demand(0.4, ()), spare=0.1)
    >>> [portion.name for portion in filling_order([backing, clear])]
    ['clear', 'backing']

    References
    ----------
    Our judgement.
    """
    return sorted(portions, key=lambda portion: (portion.spare, portion.demand.likely))


def odds_along(order: Sequence[Portion], have: float) -> list[float]:
    """Odds that each mould in turn gets all that it wants.

    Parameters
    ----------
    order : as they are filled.
    have : what there is to pour.

    Returns
    -------
    list of float
        never rising.

    Examples
    --------
    >>> moulds = [Portion("first", Demand(1.0, (Spread("wood", 0.1),))), Portion("second", Demand(1.0, (Spread("wood", 0.1),)))]
    >>> [round(odds, 2) for odds in odds_along(moulds, 2.0)]
    [1.0, 0.5]

    References
    ----------
    The normal distribution of the sum so far.
    """
    out, least = [], 1.0
    for count in range(1, len(order) + 1):
        first, *rest = (portion.demand for portion in order[:count])
        least = min(least, first.plus(*rest).odds(have))
        out.append(least)
    return out


@dataclass(frozen=True)
class TopUp:
    """What a brim-full mould asks for after the pour, m3: ``soon`` while its batch still flows, ``later`` once it has set and the pot is open."""

    soon: float
    later: float
    later_off: float


def top_up(resin_m3: float, soaks_in_m3: float, shrinkage: float, shrinkage_off: float, air_share: float = 0.0) -> TopUp:
    """Level drop of a brim-full mould, as resin to fill up with.

    Parameters
    ----------
    resin_m3 : in the mould.
    soaks_in_m3 : of it, into the wood.
    shrinkage, shrinkage_off : by volume while it cures, and half-width, shares.
    air_share : bubbles and voids that a pressure pot squeezes small, share of the resin.

    Returns
    -------
    TopUp

    Examples
    --------
    >>> found = top_up(2500e-6, 48e-6, 0.045, 0.025)
    >>> round(1e6 * found.soon), round(1e6 * found.later, 1)
    (48, 112.5)

    References
    ----------
    Arithmetic; the shares are the caller's.
    """
    return TopUp(soaks_in_m3, (shrinkage + air_share) * resin_m3, shrinkage_off * resin_m3)
