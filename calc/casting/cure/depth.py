"""How deep a pour may be: the depth at which it runs away, how sure that is, and the wide pour that a narrow one equals."""

from __future__ import annotations

from collections.abc import Generator
from dataclasses import replace

from calc.casting.cure.calibrate import wide
from calc.casting.cure.cells import Footprint
from calc.casting.cure.pour import ROUGH, Fineness, Mould, Resin, Start
from calc.casting.cure.running import peak_of
from calc.casting.cure.search import meeting
from calc.casting.cure.solver import Field
from calc.casting.cure.standards import standard

CRITICAL_K = standard("critical peak")
SHALLOWEST_M, DEEPEST_M = 0.0005, 3.0
_LEAST_RISE_K = standard("least rise")
_CAP_K = 40.0


def of_depth(mould: Mould, depth_m: float) -> Mould:
    """The same mould, filled to another depth.

    Parameters
    ----------
    mould : any.
    depth_m : m.

    Returns
    -------
    Mould

    Examples
    --------
    >>> of_depth(wide(0.04), 0.02).depth_m
    0.02

    References
    ----------
    arithmetic.
    """
    return replace(mould, depth_m=depth_m)


def of_width(mould: Mould, factor: float) -> Mould:
    """The same mould with every width times a factor.

    Parameters
    ----------
    mould : any.
    factor : more than 0.

    Returns
    -------
    Mould

    Examples
    --------
    >>> of_width(wide(0.04), 0.5).footprint.half_width_m
    0.075

    References
    ----------
    arithmetic.
    """
    return replace(mould, footprint=Footprint(mould.footprint.half_width_m * factor, mould.footprint.j))


def critical_k(air_k: float) -> float:
    """The peak beyond which a pour is told to run away: 65 °C, or 15 K above a hotter shop.

    Parameters
    ----------
    air_k : the shop, K.

    Returns
    -------
    float
        K.

    Examples
    --------
    >>> round(critical_k(296.15) - 273.15)
    65

    References
    ----------
    cure-trials.
    """
    return max(CRITICAL_K, air_k + _LEAST_RISE_K)


def critical_depth_steps(
    resin: Resin, mould: Mould, start: Start, guess_m: float, cut: Fineness = ROUGH, target_k: float | None = None, beneath: Field | None = None
) -> Generator[None, None, float]:
    """The depth of this mould at which the pour just runs away, a run at a time.

    Parameters
    ----------
    resin, mould, start : the pour; the mould's depth does not count.
    guess_m : m, to begin with.
    cut : how finely.
    target_k : the peak looked for, K; the critical one if None.
    beneath : an earlier layer as it is now, cut into as many columns.

    Returns
    -------
    generator
        its value is the depth, m; :data:`DEEPEST_M` where no depth runs away.

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.steps import at_once
    >>> slow = Resin(Kinetics(1.6e-5))
    >>> round(at_once(critical_depth_steps(slow, wide(0.04), Start(296.15, 296.15), 0.04)) * 1e3)
    42

    References
    ----------
    cure-trials.
    """
    target = critical_k(start.air_k) if target_k is None else target_k

    def peak(depth_m: float) -> float:
        return peak_of(resin, of_depth(mould, depth_m), start, cut, target + _CAP_K, beneath)

    return (yield from meeting(peak, start.air_k, target, guess_m, SHALLOWEST_M, DEEPEST_M, target + _CAP_K))


def critical_width_steps(
    resin: Resin, mould: Mould, start: Start, guess: float, cut: Fineness = ROUGH, target_k: float | None = None
) -> Generator[None, None, float]:
    """How much wider or narrower this mould would be if it just ran away, a run at a time: for one that is taller than wide.

    Parameters
    ----------
    resin, mould, start : the pour; its depth stays.
    guess : factor on its widths, to begin with.
    cut : how finely.
    target_k : the peak looked for, K; the critical one if None.

    Returns
    -------
    generator
        its value is the factor on its widths, from a fiftieth to fifty.

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.steps import at_once
    >>> pillar = Mould(Footprint(0.03, 1.0), 0.3)
    >>> factor = at_once(critical_width_steps(Resin(Kinetics(1.6e-5)), pillar, Start(296.15, 296.15), 1.0))
    >>> 1 < factor < 2
    True

    References
    ----------
    cure-trials.
    """
    target = critical_k(start.air_k) if target_k is None else target_k

    def peak(factor: float) -> float:
        return peak_of(resin, of_width(mould, factor), start, cut, target + _CAP_K)

    return (yield from meeting(peak, start.air_k, target, guess, 0.02, 50.0, target + _CAP_K))


def equivalent_depth_steps(resin: Resin, peak_k: float, air_k: float, guess_m: float) -> Generator[None, None, float]:
    """The wide pour that gets as hot: what a sheet's deepest layer is held against in a narrow mould, a run at a time.

    Parameters
    ----------
    resin : as poured.
    peak_k : of the pour in its own mould, K.
    air_k : the shop, K.
    guess_m : m, to begin with.

    Returns
    -------
    generator
        its value is the depth, m; of a wide pour in 16 mm board, raised, in still air.

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.steps import at_once
    >>> round(at_once(equivalent_depth_steps(Resin(Kinetics(1.6e-5)), 318.15, 296.15, 0.04)) * 1e3)
    37

    References
    ----------
    judgement for what a sheet means by a wide pour.
    """
    target = max(peak_k, air_k + 0.3)
    start = Start(air_k, air_k)
    return (yield from critical_depth_steps(resin, wide(guess_m), start, guess_m, ROUGH, target))
