"""What a test cup is made in: a plastic cup, a foam cup with a lid, a dish."""

from __future__ import annotations

from dataclasses import replace

from calc.casting.cure.bucket import BENCH, CUP_DEPTH, vessel
from calc.casting.cure.cells import round_footprint
from calc.casting.cure.pour import Mould, Resin
from calc.casting.cure.standards import standard
from calc.casting.cure.thermal import Films, Wall, materials


def plastic_cup(mass_kg: float, resin: Resin) -> Mould:
    """A thin plastic cup on the bench.

    Parameters
    ----------
    mass_kg : kg.
    resin : its density counts.

    Returns
    -------
    Mould

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> plastic_cup(0.1, Resin(Kinetics(1e-5))).side.material.id
    'pp'

    References
    ----------
    judgement for its shape.
    """
    return vessel(mass_kg, resin, CUP_DEPTH)


def foam_cup(mass_kg: float, resin: Resin) -> Mould:
    """A foam cup with a lid of foam, on the bench.

    Parameters
    ----------
    mass_kg : kg.
    resin : its density counts.

    Returns
    -------
    Mould

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> foam_cup(0.1, Resin(Kinetics(1e-5))).side.material.id
    'foam'

    References
    ----------
    judgement for its shape and wall.
    """
    cup = vessel(mass_kg, resin, CUP_DEPTH)
    foam = Wall(materials()["foam"], standard("foam wall"))
    lid = 1 / (1 / standard("film fixed") + foam.thickness_m / foam.material.conductivity)
    return replace(cup, side=foam, below=(BENCH, foam), films=Films(top=lid))


def dish(layer_m: float, across_m: float = 0.08) -> Mould:
    """A thin plastic dish on the bench.

    Parameters
    ----------
    layer_m : of resin, m.
    across_m : m.

    Returns
    -------
    Mould

    Examples
    --------
    >>> dish(0.006).depth_m
    0.006

    References
    ----------
    judgement.
    """
    plastic = Wall(materials()["pp"], standard("cup wall"))
    return Mould(round_footprint(across_m), layer_m, plastic, (BENCH, plastic))
