"""Mixed resin that stays in its bucket or cup: how long it can be poured, and what state it is in when it is."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from calc.casting.cure.cells import round_footprint
from calc.casting.cure.kinetics import FIRST, WORKING_END
from calc.casting.cure.pour import COARSE, Fineness, Mould, Resin, Start, field_of
from calc.casting.cure.running import LONGEST_S, go_on
from calc.casting.cure.standards import standard
from calc.casting.cure.thermal import Wall, materials

BUCKET_DEPTH = standard("bucket depth")
CUP_DEPTH = standard("cup depth")
_WALL_M = standard("cup wall")
#: Time in the bucket where none is told: this long, or this share of the time it would be workable kept cool.
_USUAL_S, _SHORT_OF_IT = standard("usual wait"), standard("usual wait share")
#: What a cup or bucket stands on.
BENCH = Wall(materials()["plywood"], standard("cup bench"))


def vessel(mass_kg: float, resin: Resin, depth_share: float = BUCKET_DEPTH) -> Mould:
    """A round plastic vessel that holds a mass: thin polypropylene, on a bench of plywood.

    Parameters
    ----------
    mass_kg : of mixed resin, kg.
    resin : its density counts.
    depth_share : depth over width; 0.8 a bucket, 0.55 a cup.

    Returns
    -------
    Mould

    Examples
    --------
    100 g in a cup stand 32.5 mm deep in 59 mm:

    >>> from calc.casting.cure.kinetics import Kinetics
    >>> cup = vessel(0.1, Resin(Kinetics(1e-5)), CUP_DEPTH)
    >>> round(cup.depth_m * 1e3, 1), round(cup.footprint.half_width_m * 2e3)
    (32.5, 59)

    References
    ----------
    judgement for its shape.
    """
    across = math.cbrt(4 * mass_kg / resin.density / (math.pi * depth_share))
    plastic = materials()["pp"]
    below = (BENCH, Wall(plastic, _WALL_M))
    return Mould(round_footprint(across), depth_share * across, Wall(plastic, _WALL_M), below)


def after(resin: Resin, mass_kg: float, air_k: float, resin_k: float, seconds: float, cut: Fineness = COARSE) -> Start:
    """What comes out of a bucket after a time in it: mean temperature and mean conversion, to pour with.

    Parameters
    ----------
    resin, mass_kg : what is in it.
    air_k, resin_k : the shop, and the resin as it was mixed, K.
    seconds : in the bucket, s.
    cut : how finely.

    Returns
    -------
    Start

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> poured = after(Resin(Kinetics(2e-5)), 2.4, 296.15, 296.15, 7200)
    >>> round(poured.resin_k - 296.15), round(poured.conversion, 2)
    (3, 0.02)

    References
    ----------
    cure-solver.
    """
    field = field_of(resin, vessel(mass_kg, resin), Start(air_k, resin_k), cut)
    go_on(field, seconds, cut.pace)
    return Start(air_k, field.mean_k(), max(field.mean_a(), FIRST))


@dataclass(frozen=True)
class PotLife:
    """A pot life as a sheet prints it: time (s), of a mass (kg), at a temperature (K)."""

    seconds: float
    mass_kg: float
    at_k: float


@dataclass(frozen=True)
class InBucket:
    """How long a batch can be poured, s after it was mixed.

    Parameters
    ----------
    runs_s : by the middle of what is known, never longer than the sheet's pot life; None where it does not set.
    within_s : plan to have it poured: half of that, and no later than the fastest that the resin may well be.
    """

    runs_s: float | None
    within_s: float | None


@lru_cache(maxsize=64)
def in_bucket(resin: Resin, rate_up: float, mass_kg: float, air_k: float, resin_k: float, printed: PotLife | None = None) -> InBucket:
    """How long a batch can be poured out of its bucket: one figure, whoever asks.

    Parameters
    ----------
    resin : by the middle of what is known of it; of two rates the faster.
    rate_up : how many times faster it may well be.
    mass_kg : kg.
    air_k, resin_k : the shop, and the resin as mixed, K.
    printed : the sheet's pot life, where there is one.

    Returns
    -------
    InBucket

    Notes
    -----
    A batch as large as the sheet's or larger is never given longer than the sheet's pot life; in a warmer shop that is shorter.

    Examples
    --------
    3 kg of a slow resin at 23 °C:

    >>> from calc.casting.cure.kinetics import Kinetics
    >>> found = in_bucket(Resin(Kinetics(2.0e-5)), 1.6, 3.0, 296.15, 296.15)
    >>> round(found.runs_s / 3600), round(found.within_s / 3600)
    (6, 3)

    References
    ----------
    cure-solver; practice for the half.
    """
    runs = pourable_for(resin, mass_kg, air_k, resin_k)
    fastest = pourable_for(resin.faster(rate_up), mass_kg, air_k, resin_k)
    if printed is not None and mass_kg >= printed.mass_kg:
        warmer = max(1.0, resin.kinetics.speed_up(max(air_k, resin_k)) / resin.kinetics.speed_up(printed.at_k))
        runs = min(runs, printed.seconds / warmer)
    within = min(runs / 2, fastest)
    return InBucket(runs if runs < LONGEST_S else None, within if within < LONGEST_S / 2 else None)


def pourable_for(resin: Resin, mass_kg: float, air_k: float, resin_k: float, cut: Fineness = COARSE) -> float:
    """Until the first of a batch in its bucket can no longer be poured.

    Parameters
    ----------
    resin : its rate counts as it is.
    mass_kg : kg.
    air_k, resin_k : K.
    cut : how finely.

    Returns
    -------
    float
        s after it was mixed; 40 days where it has not set by then.

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.pour import FINE
    >>> round(pourable_for(Resin(Kinetics(8.8e-5)), 1.0, 296.15, 296.15, FINE) / 60)
    74

    References
    ----------
    cure-solver.
    """
    field = field_of(resin, vessel(mass_kg, resin), Start(air_k, resin_k), cut)
    dt, before, then = cut.pace.first_s, 0.0, FIRST
    while field.time_s < LONGEST_S:
        _, dt = field.advance(dt, cut.pace)
        now = max(field.conversions)
        if now >= WORKING_END:
            return float(before + (field.time_s - before) * (WORKING_END - then) / (now - then))
        before, then = field.time_s, now
    return LONGEST_S


def usual_wait(cool_s: float, found: InBucket) -> float:
    """Time from mixing to pouring where none is told.

    Parameters
    ----------
    cool_s : how long the resin could be poured if it kept the temperature of the shop, s.
    found : of the batch.

    Returns
    -------
    float
        s: a quarter of an hour, less for a fast resin.

    Examples
    --------
    >>> usual_wait(36000.0, InBucket(7200.0, 3600.0)), usual_wait(6000.0, InBucket(1500.0, 540.0))
    (900.0, 270.0)

    References
    ----------
    judgement.
    """
    return min(_USUAL_S, _SHORT_OF_IT * cool_s, math.inf if found.within_s is None else found.within_s / 2)
