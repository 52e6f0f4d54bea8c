"""Mixed resin that stays in its bucket or cup: how long it can be poured, and what state it is in when it is."""

from __future__ import annotations

import math

from calc.casting.cure.cells import round_footprint
from calc.casting.cure.kinetics import FIRST
from calc.casting.cure.pour import COARSE, Fineness, Mould, Resin, Start, field_of, go_on
from calc.casting.cure.thermal import Wall, materials
from calc.sources import value

BUCKET_DEPTH = value("cure", "bucket depth")
CUP_DEPTH = value("cure", "cup depth")
_WALL_M = value("cure", "cup wall") / 1e3
#: What a cup or bucket stands on.
BENCH = Wall(materials()["plywood"], value("cure", "cup bench") / 1e3)


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
