"""What is known of a resin, made into its reaction and how far that may be off.

A kind alone, a pot life, a deepest layer, both, or a test cup: the better the knowledge, the narrower the band
(``data/cure_levels.csv``).
"""

from __future__ import annotations

import math
from collections.abc import Generator
from dataclasses import dataclass, replace
from functools import cache
from typing import Literal

from calc.casting.cure.bucket import PotLife
from calc.casting.cure.calibrate import (
    FASTEST,
    OPEN_SLOW,
    POT_MASS_KG,
    SLOWEST,
    bracket,
    meanings,
    pot_life,
    rate_from_depth_steps,
    rate_from_pot_life,
    sheet_peak_k,
)
from calc.casting.cure.cup_test import CupFit, CupTest, fit_steps, shaped
from calc.casting.cure.depth import equivalent_depth_steps
from calc.casting.cure.kinetics import GEL, REFERENCE_K, Kinetics, resin_class
from calc.casting.cure.pour import Resin
from calc.casting.cure.standards import standard
from calc.sources import table, value
from calc.steps import at_once, unmeasured

SHEET_ROOM_K = standard("sheet room")
_AT_END = 1.02  # this near to an end of what the pot life leaves open, the depth has met that end

#: How a sheet's deepest layer and its pot life go together: both fit one resin, or the depth is for a slower or a faster one.
Agreement = Literal["alone", "agree", "deep", "shallow"]


@dataclass(frozen=True)
class Level:
    """How well a resin is known, and what that is worth.

    Parameters
    ----------
    id, name : as in ``data/cure_levels.csv``.
    rate_up, rate_down : the band of its rate, factors. stop_over : deeper than the middle depth over this is a stop.
    mean, spread : predicted over true depth: its mean, and the factor of one standard deviation; hours : the same factor of
        hours to gel.
    """

    id: str
    name: str
    rate_up: float
    rate_down: float
    stop_over: float
    mean: float
    spread: float
    hours: float

    @property
    def true_over_predicted(self) -> tuple[float, float]:
        """Between which the true depth lies over the predicted one in 19 of 20 resins; log-normal."""
        sigma = math.log(self.spread)
        middle = sigma * sigma / 2 - math.log(self.mean)
        return math.exp(middle - 1.96 * sigma), math.exp(middle + 1.96 * sigma)

    def odds(self, depth_over_middle: float) -> float:
        """The share of resins so known that run away at a depth, told over the middle critical depth; log-normal."""
        if depth_over_middle <= 0:
            return 0.0
        sigma = math.log(self.spread)
        middle = math.log(self.mean) - sigma * sigma / 2
        return 0.5 * math.erfc((-math.log(depth_over_middle) - middle) / sigma / math.sqrt(2))


@cache
def levels() -> dict[str, Level]:
    """All levels by id, the poorest first.

    Returns
    -------
    dict of str to Level

    Examples
    --------
    >>> levels()["both"].rate_up, levels()["cup"].hours
    (1.6, 1.15)

    References
    ----------
    cure-trials.
    """
    return {
        row["id"]: Level(
            row["id"], row["name"], float(row["rate_up"]), float(row["rate_down"]), float(row["stop_over"]), float(row["mean"]),
            float(row["spread"]), value("clock", f"hours {row['id']}"),
        )
        for row in table("cure_levels")
    }


@dataclass(frozen=True)
class Facts:
    """What a maker has on one resin.

    Parameters
    ----------
    kind : of :func:`calc.casting.cure.kinetics.resin_class`; its rate counts only where there is no pot life, no depth and no cup.
    heat : of the whole reaction, J/kg; None takes that of the kind.
    density : of the mix, kg/m³. glass_k : Tg fully cured, K; None the default.
    pot_life_s, meaning, pot_mass_kg, pot_k : as the sheet prints them; s, a key of ``data/cure_meanings.csv`` or ``unknown``, kg, K.
    deepest_m, deepest_k : the sheet's deepest layer, m, and its temperature, K.
    cup : a test cup, or None. fitted : the reaction that a test cup was fitted to before, or None.
    """

    kind: str = "standard"
    heat: float | None = None
    density: float = 1100.0
    glass_k: float | None = None
    pot_life_s: float | None = None
    meaning: str = "unknown"
    pot_mass_kg: float = POT_MASS_KG
    pot_k: float = REFERENCE_K
    deepest_m: float | None = None
    deepest_k: float = SHEET_ROOM_K
    cup: CupTest | None = None
    fitted: Kinetics | None = None

    @property
    def raw(self) -> Resin:
        """Everything but its rate."""
        kinetics = resin_class(self.kind).kinetics
        heat = kinetics.heat if self.heat is None else self.heat
        glass = kinetics.tginf if self.glass_k is None else self.glass_k
        return Resin(replace(kinetics, heat=heat, tginf=glass), self.density)


@dataclass(frozen=True)
class Known:
    """A resin with its reaction.

    Parameters
    ----------
    resin : with its rate. level : how well it is known. agreement : of pot life and deepest layer.
    fit : of the test cup, where there is one. by_pot_life : the resin as its pot life alone tells it, where both are printed.
    printed : the sheet's pot life, where there is one.
    fitting_m : the deepest layer that its pot life goes with, m, where the sheet's is deeper than that.
    lowered_by_s : a pot life shorter than this would lower the depth, s, where the depth alone is known.
    """

    resin: Resin
    level: Level
    agreement: Agreement = "alone"
    fit: CupFit | None = None
    by_pot_life: Resin | None = None
    printed: PotLife | None = None
    fitting_m: float | None = None
    lowered_by_s: float | None = None

    @property
    def in_bucket(self) -> Resin:
        """The resin for a bucket: of two rates the faster."""
        return max((self.resin, self.by_pot_life or self.resin), key=lambda resin: resin.kinetics.k25)

    @property
    def kinetics(self) -> Kinetics:
        """The reaction."""
        return self.resin.kinetics


def fitted_before(gel_s: float, heat: float, shape: float, glass_k: float | None = None) -> Kinetics:
    """The reaction of a test cup from the three figures that tell it.

    Parameters
    ----------
    gel_s : time to gel of a thin layer at 25 °C, s.
    heat : of the whole reaction, J/kg.
    shape : its number s, see :func:`calc.casting.cure.cup_test.shaped`.
    glass_k : Tg fully cured, K; None the default.

    Returns
    -------
    Kinetics

    Examples
    --------
    >>> found = fitted_before(38.0 * 3600, 380e3, 1 / 3)
    >>> round(found.k25 * 1e5, 2)
    1.60

    References
    ----------
    cure-fit.
    """
    kinetics = shaped(Kinetics(1.0, heat), shape)
    glass = kinetics.tginf if glass_k is None else glass_k
    return replace(kinetics, k25=kinetics.integral(GEL) / gel_s, tginf=glass)


def known(facts: Facts) -> Known:
    """The reaction of a resin by the best that is known of it.

    Parameters
    ----------
    facts : what there is.

    Returns
    -------
    Known

    Raises
    ------
    NoFit
        ``never-so-hot``: no resin with such a pot life gets that hot; ``rise-low``, ``rise-high``: of the test cup.

    Examples
    --------
    >>> found = known(Facts("slow"))
    >>> found.level.id, found.kinetics.k25
    ('class', 1.6e-05)

    References
    ----------
    cure-fit; cure-trials.
    """
    return at_once(known_steps(facts))


def known_steps(facts: Facts) -> Generator[float, None, Known]:
    """As :func:`known`, a run or so at a time.

    Parameters
    ----------
    facts : as there.

    Returns
    -------
    generator
        yields the share done; its value is the resin.

    Raises
    ------
    NoFit
        as there.

    Examples
    --------
    >>> next(known_steps(Facts(pot_life_s=5400, deepest_m=0.012)))
    0.25

    References
    ----------
    cure-fit; cure-trials.
    """
    if facts not in _recent:
        found = yield from _found(facts)
        if facts.pot_life_s is not None:
            found = replace(found, printed=PotLife(facts.pot_life_s, facts.pot_mass_kg, facts.pot_k))
        while len(_recent) >= _KEPT:
            del _recent[next(iter(_recent))]
        _recent[facts] = found
    return _recent[facts]


#: The latest answers: one entry is changed at a time, and the rest of them need not be worked out again.
_recent: dict[Facts, Known] = {}
_KEPT = 16


def _found(facts: Facts) -> Generator[float, None, Known]:
    raw, ranks = facts.raw, levels()
    if facts.fitted is not None:
        return Known(replace(raw, kinetics=facts.fitted), ranks["cup"])
    if facts.cup is not None:
        fitted = yield from fit_steps(facts.cup, raw)
        return Known(replace(raw, kinetics=fitted.kinetics), ranks["cup"], fit=fitted)
    depth = facts.deepest_m
    if facts.pot_life_s is None:
        if depth is None:
            return Known(raw, ranks["class"])
        rate = yield from _by_depth(raw, depth, facts.deepest_k, SLOWEST, FASTEST, 0.0)
        return Known(raw.at_rate(rate), ranks["depth"], lowered_by_s=_lowered_by(raw, rate))
    level = ranks["unknown" if facts.meaning == "unknown" else "defined"]
    by_pot_life = raw.at_rate(rate_from_pot_life(raw, facts.pot_life_s, facts.meaning, facts.pot_mass_kg, facts.pot_k))
    if depth is None:
        return Known(by_pot_life, level)
    yield 0.25
    open_to = bracket(raw, facts.pot_life_s, facts.pot_mass_kg, facts.pot_k)
    rate = yield from _by_depth(raw, depth, facts.deepest_k, open_to.slowest, open_to.fastest, 0.5)
    if rate <= open_to.slowest * _AT_END:
        slowest = raw.at_rate(open_to.slowest)
        fitting = min(at_once(equivalent_depth_steps(slowest, sheet_peak_k(facts.deepest_k), facts.deepest_k, depth)), depth)
        return Known(slowest, ranks["both"], "deep", by_pot_life=by_pot_life, fitting_m=fitting)
    if rate >= open_to.fastest / _AT_END:
        return Known(raw.at_rate(rate), level, "shallow", by_pot_life=by_pot_life)
    return Known(raw.at_rate(rate), ranks["both"], "agree", by_pot_life=by_pot_life)


def _by_depth(raw: Resin, depth_m: float, at_k: float, slowest: float, fastest: float, done: float) -> Generator[float, None, float]:
    """The rate by the sheet's depth; tells the share done, from ``done`` on."""
    return (yield from unmeasured(rate_from_depth_steps(raw, depth_m, at_k, slowest, fastest), done, 1.0, 1 / 6))


def _lowered_by(raw: Resin, rate: float) -> float | None:
    """The pot life of 100 g at 25 °C with which the sheet's depth would just go no further than it does alone, s: a shorter one lowers it.

    With a pot life the band is narrower, so that one may be a little shorter than the depth's own before it tells.
    """
    ranks = levels()
    slowest = rate * ranks["depth"].rate_up / ranks["both"].rate_up
    return pot_life(raw.at_rate(slowest / OPEN_SLOW), meanings()["doubled"])
