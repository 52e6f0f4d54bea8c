"""A pour that is too deep, in layers: how many, how deep, and how long between them."""

from __future__ import annotations

import math
from collections.abc import Generator
from dataclasses import dataclass, replace

from calc.casting.cure.clock import Shop
from calc.casting.cure.depth import critical_k
from calc.casting.cure.plan import Beneath, Plan
from calc.casting.cure.pour import COARSE, ROUGH
from calc.casting.cure.stages import Window, next_layer, stages

MOST_LAYERS = 8
_STEP_M = 0.001


@dataclass(frozen=True)
class Layers:
    """A way to pour it.

    Parameters
    ----------
    count, depth_m : how many, and the depth of each, m; the last may be less.
    window : from one pour to the next; after its end, scuff first.
    second_k : hottest of a layer on the one before, at the hot end of the band, K.
    """

    count: int
    depth_m: float
    window: Window
    second_k: float


def layers_steps(plan: Plan, deepest_m: float, step_m: float = _STEP_M) -> Generator[float, None, Layers | None]:
    """The fewest layers of which even one on another keeps clear of a runaway at the hot end of the band.

    Parameters
    ----------
    plan : the whole depth.
    deepest_m : deepest single layer with no stop found, m.
    step_m : a layer is poured to this, m; none of them passes the deepest, nor a step of it.

    Returns
    -------
    generator
        yields the share done; its value is None where there would be more than eight.

    Notes
    -----
    Resin below holds the warmth in: a second layer of the same depth gets a few degrees hotter than the first,
    and very much hotter when it comes too soon.

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.known import levels
    >>> from calc.casting.cure.pour import Resin
    >>> steps = layers_steps(Plan(Resin(Kinetics(1.6e-5)), levels()["cup"], wide(0.06), 296.15, 296.15), 0.001)
    >>> try: next(steps)
    ... except StopIteration as done: print(done.value)
    None

    References
    ----------
    cure-solver; practice for the bond.
    """
    whole = plan.mould.depth_m
    most = math.floor(deepest_m / step_m + 1e-6) * step_m or deepest_m
    count = max(2, math.ceil(whole / most - 1e-6))
    done = 0.0
    while count <= MOST_LAYERS:
        depth = min(math.ceil(whole / count / step_m - 1e-6) * step_m, most)
        layer = replace(plan, mould=replace(plan.mould, depth_m=depth), batch_kg=plan.batch_kg * depth / whole)
        window = window_of(layer)
        done += (1 - done) * 0.4
        yield done
        wait = window.first_s
        if wait is not None:
            second = _hottest(layer, Beneath(depth, wait))
            done += (1 - done) * 0.4
            yield done
            if second <= critical_k(plan.air_k):
                return Layers(math.ceil(whole / depth - 1e-6), depth, window, second)
        count += 1
    return None


def window_of(plan: Plan) -> Window:
    """When another layer may go on this pour, in a shop that keeps its temperature.

    Parameters
    ----------
    plan : the pour, with no layer below it.

    Returns
    -------
    Window
        s after the pour.

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.known import levels
    >>> from calc.casting.cure.pour import Resin
    >>> window_of(Plan(Resin(Kinetics(1.6e-5)), levels()["cup"], wide(0.025), 296.15, 296.15)).open
    True

    References
    ----------
    cure-solver; practice for the bond.
    """
    middle, slowest = (stages(end.resin, end.mould, end.start(), Shop(end.air_k, end.air_k), COARSE) for end in (plan, plan.cool))
    return next_layer(middle, plan.level.hours, slowest)


def wait_for(plan: Plan, beneath: Beneath) -> float | None:
    """How old the layer below must be for a pour on it, where waiting is enough.

    Parameters
    ----------
    plan : the pour.
    beneath : the layer below it; its age does not count.

    Returns
    -------
    float or None
        s after that layer was poured; None where this one is too deep even then.

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.known import levels
    >>> from calc.casting.cure.pour import Resin
    >>> plan = Plan(Resin(Kinetics(1.6e-5)), levels()["cup"], wide(0.025), 296.15, 296.15)
    >>> 28 < wait_for(plan, Beneath(0.025, 0.0)) / plan.level.hours / 3600 < 40
    True

    References
    ----------
    cure-solver; practice for the bond.
    """
    below = replace(plan, mould=replace(plan.mould, depth_m=beneath.depth_m), beneath=None)
    wait = window_of(below).first_s
    return None if wait is None or _hottest(plan, replace(beneath, since_s=wait)) > critical_k(plan.air_k) else wait


def _hottest(plan: Plan, beneath: Beneath) -> float:
    """The hottest of a pour on a layer, wherever in the band the resin lies, K."""
    return max(end.course(ROUGH, "peak").peak.hottest_k for end in replace(plan, beneath=beneath).worst)
