"""A pour as planned, at the middle of what is known of its resin and at both ends; and what a peak does.

The tier goes by the hot end: rate times the level's factor, films a tenth less.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cache, lru_cache

from calc.casting.cure.bucket import PotLife, after
from calc.casting.cure.cells import Footprint
from calc.casting.cure.course import Course
from calc.casting.cure.known import Level
from calc.casting.cure.pour import ROUGH, Fineness, Mould, Resin, Start, field_of
from calc.casting.cure.running import go_on, run
from calc.casting.cure.solver import Field
from calc.casting.cure.standards import standard
from calc.constants import ZERO_C
from calc.sources import table

FILM_BAND = standard("film band")
GO_K = standard("go peak")
STOP_K = standard("stop peak")
STRAIN_CAUTION_K, STRAIN_STOP_K = standard("strain caution"), standard("strain stop")
TALL = standard("tall")


@dataclass(frozen=True)
class Tier:
    """What a peak does.

    Parameters
    ----------
    id, tone, why : as in ``data/cure_tiers.csv``. up_to_k : its upper end, K. source : its basis.
    """

    id: str
    tone: str
    why: str
    up_to_k: float
    source: str


@cache
def tiers() -> tuple[Tier, ...]:
    """The tiers, the mildest first.

    Returns
    -------
    tuple of Tier

    Examples
    --------
    >>> [tier.id for tier in tiers()]
    ['mild', 'warm', 'hot', 'edge', 'boil', 'fire']

    References
    ----------
    Each row of the table names its own.
    """
    return tuple(
        Tier(row["id"], row["tone"], row["why"], float(row["up_to"]) + ZERO_C if row["up_to"] else math.inf, row["source"])
        for row in table("cure_tiers")
    )


def tier_of(peak_k: float) -> Tier:
    """The tier of a peak.

    Parameters
    ----------
    peak_k : K.

    Returns
    -------
    Tier

    Examples
    --------
    >>> tier_of(330.0).id, tier_of(450.0).id
    ('warm', 'fire')

    References
    ----------
    practice.
    """
    return next(tier for tier in tiers() if peak_k <= tier.up_to_k)


@dataclass(frozen=True)
class Beneath:
    """An earlier layer of the same resin in the same mould: its depth (m), and how long ago it was poured (s)."""

    depth_m: float
    since_s: float


@dataclass(frozen=True)
class Plan:
    """A pour as planned.

    Parameters
    ----------
    resin, level : how it reacts, and how well that is known. mould : with the depth planned.
    air_k, resin_k : shop, and resin as mixed, K. batch_kg, bucket_s : what was mixed, and how long it stays in its bucket.
    beneath : an earlier layer, or None. in_bucket : the resin as its pot life tells it, where that is another.
    expected : the middle of the band, where this is an end of it; None where it is the middle.
    printed : the sheet's pot life, or None.
    """

    resin: Resin
    level: Level
    mould: Mould
    air_k: float
    resin_k: float
    batch_kg: float = 1.0
    bucket_s: float = 0.0
    beneath: Beneath | None = None
    in_bucket: Resin | None = None
    expected: Resin | None = None
    printed: PotLife | None = None

    @property
    def tall(self) -> bool:
        """Whether its width decides, not its depth."""
        return self.mould.depth_m > TALL * 2 * self.mould.footprint.half_width_m and self.beneath is None

    @property
    def hot(self) -> Plan:
        """The hot end of the band."""
        return self._ended(self.level.rate_up, 1 - FILM_BAND)

    @property
    def cool(self) -> Plan:
        """The cool end of the band."""
        return self._ended(1 / self.level.rate_down, 1 + FILM_BAND)

    @property
    def worst(self) -> tuple[Plan, ...]:
        """The plans of which the hottest decides: the hot end; on an earlier layer, which may be hot still where the resin is slow, all."""
        if self.beneath is None:
            return (self.hot,)
        return tuple(self._ended(rate, 1 - FILM_BAND) for rate in (self.level.rate_up, 1.0, 1 / self.level.rate_down))

    def start(self) -> Start:
        """What is poured: as it comes out of its bucket. The bucket is that of the middle: a pot life is what is known of a resin best."""
        if self.bucket_s <= 0:
            return Start(self.air_k, self.resin_k)
        return _poured(self.in_bucket or self.expected or self.resin, self.batch_kg, self.air_k, self.resin_k, self.bucket_s)

    def old(self, cut: Fineness) -> Field | None:
        """The earlier layer as it is when this one is poured."""
        if self.beneath is None:
            return None
        return _aged(self.resin, replace(self.mould, depth_m=self.beneath.depth_m), self.air_k, self.beneath.since_s, cut)

    def course(self, cut: Fineness, until: str) -> Course:
        """How it goes."""
        return run(self.resin, self.mould, self.start(), cut, until, self.old(cut))

    def _ended(self, rate: float, film: float) -> Plan:
        films = replace(self.mould.films, factor=self.mould.films.factor * film)
        return replace(self, resin=self.resin.faster(rate), mould=replace(self.mould, films=films), expected=self.expected or self.resin)


@lru_cache(maxsize=8)
def _aged(resin: Resin, mould: Mould, air_k: float, seconds: float, cut: Fineness) -> Field:
    """An earlier layer after a time; whoever gets it copies from it."""
    field = field_of(resin, mould, Start(air_k, air_k), cut)
    go_on(field, seconds, cut.pace)
    return field


@lru_cache(maxsize=16)
def _poured(resin: Resin, batch_kg: float, air_k: float, resin_k: float, seconds: float) -> Start:
    """What comes out of the bucket."""
    return after(resin, batch_kg, air_k, resin_k, seconds, ROUGH)


def narrow(footprint: Footprint, depth_m: float) -> bool:
    """Whether a mould is so narrow that a sheet's depth, meant for a wide pour, says little of it.

    Parameters
    ----------
    footprint : of the mould.
    depth_m : planned, m.

    Returns
    -------
    bool

    Examples
    --------
    >>> narrow(Footprint(0.03, 1.0), 0.04), narrow(Footprint(0.15, 1.0), 0.04)
    (True, False)

    References
    ----------
    judgement: beyond three depths of half-width the sides no longer count.
    """
    return footprint.half_width_m < 3 * depth_m
