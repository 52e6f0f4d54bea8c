"""The runs behind the answer, a few milliseconds at a time."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Generator, Hashable, Iterator
from dataclasses import dataclass, field, replace

from calc.casting.cure.known import Known, levels
from calc.casting.cure.layers import Layers, layers_steps, wait_for, window_of
from calc.casting.cure.outlook import DEPTH_BY_RATE, Outlook, courses_steps, equal_steps, headroom_steps, line_steps, lines_steps
from calc.casting.cure.plan import GO_K, Plan, narrow
from calc.casting.cure.stages import Window
from calc.casting.cure.standards import standard
from calc.casting.cure.thermal import Films, Wall, materials
from calc.questions._how_deep.case import Case
from calc.questions._how_deep.words import depth_step_m
from calc.steps import part, unmeasured

_COOLER_K = standard("cooler")
COLD_K = standard("cold shop")
_KEPT = 24


@dataclass
class Looked:
    """Everything that was worked out.

    Parameters
    ----------
    known : the resin. outlook : of the pour. layers : how to pour it in several, or None. window : for a layer on this pour.
    deepest_m : one layer of it with no stop found.
    wait_s : how old the layer below must be for this pour, s, or None. changed : by what was changed, the line up to which no stop is found.
    below_ready_s : how old the layer below must be for any pour, s, or None. below_runs_away : the layer below, taken as one pour, does not stay mild.
    bare_m : no stop found up to here in a layer with no wood in it, m; None where none is counted.
    """

    known: Known
    outlook: Outlook
    layers: Layers | None = None
    window: Window | None = None
    deepest_m: float = 0.0
    wait_s: float | None = None
    below_ready_s: float | None = None
    below_runs_away: bool = False
    bare_m: float | None = None
    changed: dict[str, float] = field(default_factory=dict)


#: The last few, so that a change of words runs nothing again.
_looked: OrderedDict[Hashable, Looked] = OrderedDict()


def look(case: Case, key: Hashable) -> Generator[float, None, Looked]:
    """All of it.

    Parameters
    ----------
    case : the pour as typed.
    key : equal for equal pours.

    Returns
    -------
    generator
        yields the share done.
    """
    if key in _looked:
        _looked.move_to_end(key)
        return _looked[key]
    known = yield from part(case.known_steps(), 0.0, 0.15)
    plan = case.plan(known)
    found = Looked(known, Outlook(plan))
    yield from part(lines_steps(found.outlook), 0.15, 0.28)
    if plan.beneath is None and not case.quick:
        yield from part(headroom_steps(found.outlook), 0.28, 0.3)
    yield from part(courses_steps(found.outlook, whole=not case.quick), 0.3, 0.65)
    found.deepest_m = found.outlook.go
    if not case.quick:
        yield from _rest(case, found)
    _looked[key] = found
    while len(_looked) > _KEPT:
        _looked.popitem(last=False)
    return found


def _rest(case: Case, found: Looked) -> Generator[float, None, None]:
    outlook = found.outlook
    plan = outlook.plan
    if case.sheet_m is not None and (narrow(plan.mould.footprint, plan.mould.depth_m) or plan.mould.depth_m > case.sheet_m):
        yield from part(equal_steps(outlook), 0.65, 0.7)
    if plan.beneath is not None:
        found.below_ready_s = window_of(replace(plan, mould=replace(plan.mould, depth_m=plan.beneath.depth_m), beneath=None)).first_s
        found.below_runs_away = found.below_ready_s is None
    if outlook.planned > outlook.go or (case.sheet_m is not None and plan.mould.depth_m > case.sheet_m):
        if plan.tall:
            found.deepest_m = yield from unmeasured(line_steps(plan.hot, GO_K, outlook.go * plan.mould.footprint.half_width_m), 0.7, 1.0)
        deepest = min(found.deepest_m, case.sheet_m or found.deepest_m)
        if plan.beneath is not None:
            found.wait_s = wait_for(plan, plan.beneath)
            return
        if deepest < plan.mould.depth_m:
            found.layers = yield from part(layers_steps(plan, deepest, depth_step_m(case.given, deepest)), 0.7, 0.8)
    if plan.beneath is not None:
        return
    if plan.mould.wood_share and not plan.tall:
        bare = replace(plan, mould=replace(plan.mould, wood_share=0.0))
        line = yield from unmeasured(line_steps(bare.hot, max(GO_K, plan.air_k + 10), outlook.go * (1 - plan.mould.wood_share)), 0.79, 1.0)
        found.bare_m = min(line * outlook.held, outlook.go)
    if found.layers is None:
        found.window = window_of(plan)
    for number, (id, other) in enumerate(_others(plan)):
        target = max(GO_K, other.air_k + 10)
        line = yield from unmeasured(line_steps(other.hot, target, outlook.go * 1.15, plan.tall), 0.8 + 0.05 * number, 1.0)
        found.changed[id] = line * outlook.held


def _others(plan: Plan) -> Iterator[tuple[str, Plan]]:
    """The same pour with one thing changed, for what would change the answer most."""
    if plan.air_k - _COOLER_K >= COLD_K:
        cooler = plan.air_k - _COOLER_K
        yield "cooler", replace(plan, air_k=cooler, resin_k=min(plan.resin_k, cooler) if plan.resin_k <= plan.air_k else plan.resin_k)
    films = plan.mould.films
    if not films.fan:
        yield "fan", replace(plan, mould=replace(plan.mould, films=replace(films, fan=True)))
    if plan.mould.side is not None and plan.mould.side.material.id != "aluminium":
        metal = Wall(materials()["aluminium"], materials()["aluminium"].usual_m)
        yield "metal", replace(plan, mould=replace(plan.mould, side=metal, below=(metal,), films=Films(fan=films.fan, bare=True)))


def widened(known: Known, go: float) -> float:
    """The line up to which no stop is found if a test cup comes out in the middle: by the narrower band alone."""
    return go * float((known.level.rate_up / levels()["cup"].rate_up) ** -DEPTH_BY_RATE)
