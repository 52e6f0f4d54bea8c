"""How fast epoxy cures, and what that gives off.

Symbols: a conversion, the share of the reaction that is done, 0 to 1; T temperature, K; Tg(a) glass transition, K.
Rate of cure: da/dt = K25 exp[-E/R (1/T - 1/298.15)] (B + a^m) (1 - a)^n f, with f the brake of the glass
(Kamal's form; DiBenedetto's line for Tg). The defaults are in ``data/cure.csv``, kinds of resin in ``data/cure_classes.csv``.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from calc.casting.cure.standards import standard
from calc.constants import GAS_CONSTANT
from calc.sources import table

REFERENCE_K = 298.15  # 25 °C: where K25 is told

GEL = standard("gel")
WORKING_END = standard("working end")
DOUBLED = standard("doubled")
FIRST = standard("first conversion")
#: No cell is told to be further than this; the last thousandth takes for ever.
MOST = 0.9995

_BRAKE_FROM = standard("brake from")
_BRAKE_WIDTH = standard("brake width")
_FEWEST, _DENSEST = 40, 240  # strips of the integrals below: 5 digits


@dataclass(frozen=True)
class Kinetics:
    """One mixed resin's reaction. Defaults: a compromise fitted to several published shapes (cure-fit).

    Parameters
    ----------
    k25 : K25, rate at 25 °C, 1/s; about 1e-5 (slow deep-pour) to 4e-4 (fast).
    heat : H, heat of the whole reaction, J per kg of mixed resin; 250e3 to 500e3.
    e : E, activation energy, J/mol; 48e3 to 60e3.
    m, b, n : shape: how strongly the reaction feeds itself, what it starts from, how it dies away; dimensionless.
    tg0, tginf : glass transition unmixed and fully cured, K. lam : shape of the line between them, dimensionless.
    brake : false for a reaction that the glass does not hold back (for checks against closed forms).
    """

    k25: float
    heat: float = 380e3
    e: float = standard("activation energy")
    m: float = standard("order m")
    b: float = standard("start ratio")
    n: float = standard("order n")
    tg0: float = standard("glass start")
    tginf: float = standard("glass end")
    lam: float = standard("glass shape")
    brake: bool = True

    def speed_up(self, t_k: float) -> float:
        """How many times faster than at 25 °C, at ``t_k`` (K)."""
        return math.exp(min(-self.e / GAS_CONSTANT * (1 / t_k - 1 / REFERENCE_K), 60.0))

    def shape(self, a: float) -> float:
        """(B + a^m) (1 - a)^n of a conversion ``a``."""
        return (self.b + math.pow(a, self.m)) * math.pow(1 - a, self.n)

    def tg(self, a: float) -> float:
        """Glass transition at conversion ``a``, K."""
        return self.tg0 + (self.tginf - self.tg0) * self.lam * a / (1 - (1 - self.lam) * a)

    def conversion_at_tg(self, tg_k: float) -> float:
        """The conversion whose glass transition is ``tg_k`` (K); 1 or more where the resin never gets there."""
        share = (tg_k - self.tg0) / (self.tginf - self.tg0)
        return share / (self.lam + share * (1 - self.lam))

    def held_back(self, a: float, t_k: float) -> float:
        """f: 1 while the resin is no glass, towards 0 as its glass transition passes ``t_k`` (K)."""
        if not self.brake or a <= _BRAKE_FROM:
            return 1.0
        return 1 / (1 + math.exp(min((self.tg(a) - t_k) / _BRAKE_WIDTH, 60.0)))

    def rate(self, a: float, t_k: float) -> float:
        """da/dt at conversion ``a`` and temperature ``t_k`` (K), 1/s."""
        return self.k25 * self.speed_up(t_k) * self.shape(a) * self.held_back(a, t_k) if a < MOST else 0.0

    def integral(self, a: float, start: float = 0.0) -> float:
        """J: integral of da / [(B + a^m) (1 - a)^n] from ``start`` to ``a``, without the brake; K25 times the time at 25 °C."""
        return self._sum(start, a, None)

    @property
    def cool_s(self) -> float:
        """Working time if it stayed at 25 °C, s: what a rate is told as, to people."""
        return self.integral(WORKING_END, FIRST) / self.k25

    def time_to(self, a: float, t_k: float, start: float = 0.0) -> float:
        """Seconds at constant ``t_k`` (K) from conversion ``start`` to ``a``, with the brake; many where the glass stalls it."""
        return self._sum(start, a, t_k) / (self.k25 * self.speed_up(t_k))

    def conversion_after(self, seconds: float, t_k: float, start: float = 0.0) -> float:
        """Conversion after ``seconds`` at constant ``t_k`` (K) from ``start``; halving, so as sure as :meth:`time_to`."""
        low, high = start, MOST
        if self.time_to(high, t_k, start) <= seconds:
            return high
        for _ in range(40):
            middle = (low + high) / 2
            low, high = (middle, high) if self.time_to(middle, t_k, start) <= seconds else (low, middle)
        return (low + high) / 2

    def _sum(self, start: float, end: float, t_k: float | None) -> float:
        """Simpson's rule over u with a = u², which takes the root out of a^m at 0; in two parts at the brake's edge."""
        if end > _BRAKE_FROM > start:
            return self._sum(start, _BRAKE_FROM, t_k) + self._sum(_BRAKE_FROM * (1 + 1e-12), end, t_k)
        t_k = t_k if end > _BRAKE_FROM else None
        first, last = math.sqrt(start), math.sqrt(end)
        strips = 2 * max(_FEWEST, round(_DENSEST * (last - first)))
        step = (last - first) / strips

        def under(i: int) -> float:
            u = first + i * step
            a = u * u
            return 2 * u / (self.shape(a) * (1.0 if t_k is None else self.held_back(a, t_k)))

        inner = sum((4 if i % 2 else 2) * under(i) for i in range(1, strips))
        return step / 3 * (under(0) + inner + under(strips))


@dataclass(frozen=True)
class ResinClass:
    """A kind of resin, for when nothing is known of this one.

    Parameters
    ----------
    id, name : as in ``data/cure_classes.csv``.
    kinetics : its middle. k25_low, k25_high : the range of the kind, 1/s.
    pot_life_s : what its sheets print for 100 g at 25 °C. conversion : where that pot life ends.
    source : key of the bibliography.
    """

    id: str
    name: str
    kinetics: Kinetics
    k25_low: float
    k25_high: float
    pot_life_s: float
    conversion: float
    source: str


@cache
def resin_classes() -> tuple[ResinClass, ...]:
    """The kinds of resin, slowest first.

    Returns
    -------
    tuple of ResinClass

    Examples
    --------
    >>> [kind.id for kind in resin_classes()]
    ['slow', 'standard', 'fast']

    References
    ----------
    cure-fit.
    """
    return tuple(
        ResinClass(
            row["id"], row["name"], Kinetics(float(row["rate"]) * 1e-5, float(row["heat"]) * 1e3), float(row["rate_low"]) * 1e-5,
            float(row["rate_high"]) * 1e-5, float(row["pot_life"]) * 60, float(row["conversion"]), row["source"],
        )
        for row in table("cure_classes")
    )


def resin_class(id: str) -> ResinClass:
    """One kind of resin.

    Parameters
    ----------
    id : ``slow``, ``standard`` or ``fast``.

    Returns
    -------
    ResinClass

    Raises
    ------
    LookupError
        when there is no such kind.

    Examples
    --------
    >>> resin_class("standard").kinetics.k25
    8.8e-05

    References
    ----------
    cure-fit.
    """
    for kind in resin_classes():
        if kind.id == id:
            return kind
    raise LookupError(f"data/cure_classes.csv has no '{id}'")


def heat_of_reaction(a: float, b: float, equivalent_kg: float = standard("epoxide equivalent")) -> float:
    """Heat of the whole reaction from the mix ratio by weight: H = q w_A / EEW, w_A = A / (A + B), q = 106.6 kJ per epoxide.

    Parameters
    ----------
    a, b : parts by weight of resin and hardener, each more than 0.
    equivalent_kg : EEW, weight of resin for one epoxide, kg; 0.185 to 0.215. The sheet or the SDS may print it.

    Returns
    -------
    float
        J per kg of mixed resin; ten percent either way.

    Notes
    -----
    Holds for the ratio that the sheet asks for. A mix off its ratio gives less and is never modelled.

    Examples
    --------
    >>> round(heat_of_reaction(100, 43) / 1e3), round(heat_of_reaction(100, 85) / 1e3)
    (382, 295)

    References
    ----------
    polyamine-heat.
    """
    return standard("heat of epoxide") * a / (a + b) / equivalent_kg
