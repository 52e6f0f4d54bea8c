"""What goes on from this question, and the layers of a pour one by one."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Carry, Grid
from calc.casting.resin import kind_of
from calc.casting.sufficiency import lost
from calc.quantity.writing import Style
from calc.questions import takes
from calc.questions._how_deep.case import Case
from calc.questions._how_deep.fields import FIELDS
from calc.questions._how_deep.reasons import Reason
from calc.questions._how_deep.runs import Looked
from calc.questions._how_deep.words import depth, hours, typed_depth, warm
from calc.questions._when.hours import after, rounded

BOUNDLESS_M = 1.0  # deeper than this no line is told
_BY_LAYERS = ("runaway", "over-sheet", "strain")  # what layers are the way out of


def ceiling(case: Case, found: Looked) -> float:
    """The deepest that is told, m: never more than the sheet's."""
    outlook = found.outlook
    return found.deepest_m if outlook.plan.tall else min(outlook.go, case.sheet_m or outlook.go)


def in_layers(found: Looked, against: tuple[Reason, ...]) -> bool:
    """Whether pouring it in layers is the way."""
    return found.layers is not None and bool(against) and against[0].tone == "stop" and against[0].id in _BY_LAYERS


def layer_by_layer(case: Case, found: Looked, against: tuple[Reason, ...]) -> Iterator[Grid]:
    """Each layer with its mark on the wall, its resin, and from when it may go on; by the figures as they are told."""
    layers = found.layers
    if layers is None or layers.window.first_s is None or not in_layers(found, against):
        return
    given = case.given
    each, whole = depth(given, layers.depth_m), found.outlook.plan.mould.depth_m
    rows = []
    for number in range(layers.count):
        low, top = number * each.si, min((number + 1) * each.si, whole)
        last = number == layers.count - 1
        mark = typed_depth(given, "depth") if last else str(depth(given, top + _HAIR_M))
        thick = str(depth(given, top - low + _HAIR_M)) if last else str(each)
        start = after(number * rounded(layers.window.first_s, "up"), "up") if number else "now"
        rows.append((str(number + 1), thick, mark, _resin(case, top - low), start))
    evenly = ", wood spread evenly" if given.si("wood") else ""
    yield Grid(f"Layer by layer{evenly}", ("Layer", "Thick", "Mark over the floor", "Resin in the mould", "Not before"), tuple(rows))


_HAIR_M = 1e-9


def _litres(case: Case, thick_m: float) -> float:
    """Resin of a layer, m³: its share of the wood taken off."""
    return case.area_m2 * thick_m * (1 - case.given.si("wood"))


def _resin(case: Case, thick_m: float) -> str:
    volume = _litres(case, thick_m)
    return f"{case.given.write(volume, 'volume', 'up')}, {_weight(case, volume)}"


def _weight(case: Case, volume: float) -> str:
    """Of so much resin, as a scale shows it."""
    given = case.given
    return str(given.write(volume * given.si("density"), ("mass", Style(given.pick("g", "oz"), figures=3)), "up"))


def _first_layer(case: Case, found: Looked) -> tuple[Carry, ...]:
    """The first of the layers: to the list, to what it takes, to the scale, and to the clock."""
    given, layers = case.given, found.layers
    assert layers is not None
    shown = depth(given, layers.depth_m)
    first, volume = str(shown), _litres(case, shown.si)
    gates = {"depth": first, "own_depth": str(depth(given, ceiling(case, found)))}
    if case.sheet_m is not None:
        gates |= {"sheet_depth": given.as_typed("deepest"), "narrowest": str(given.write(case.narrowest_m, "length"))}
    if given.choice("shape") == "oblong":
        gates |= {"mould_length": given.as_typed("length"), "mould_width": given.as_typed("width")}
    sides = {name: given.as_typed(name) for name in (("across",) if given.choice("shape") == "round" else ("length", "width"))}
    share = given.si("wood")
    wood = {"wood_by": "volume", "wood": str(given.write(case.area_m2 * shown.si * share, "volume", "down")), "wood_way": "unknown"} if share else {}
    density = {"density": given.as_typed("density")} if given.typed("density") else {}
    enough = {"shape": "round" if given.choice("shape") == "round" else "box", "depth": first} | sides | wood | density
    weigh = {"known": "weight", "total": _weight(case, volume + lost(volume, 1).likely)}  # and what stays in the bucket
    weigh |= {"ratio": given.text("ratio"), "by": "weight"} if given.typed("ratio") else {}
    clock = _clock(case, found, first)
    fits = takes("when-can-i", "depth", shown.si) and takes("when-can-i", case.narrowest_field, case.narrowest_m)
    carried = (Carry("before-a-pour", gates), Carry("is-it-enough", enough), Carry("how-much-to-weigh", weigh))
    return (*carried, *((Carry("when-can-i", clock),) if fits else ()))


def _clock(case: Case, found: Looked, depth_told: str) -> dict[str, str]:
    """Resin and mould for the clock."""
    given = case.given
    typed = {field.name: given.as_typed(field.name) for field in FIELDS if given.typed(field.name)}
    known = given.choice("known")
    way = {"cup": "cup", "kind": given.words("kind"), "sheet": "pot" if "pot_life" in typed else kind_of(found.known.kinetics.k25).id}[known]
    names = ("pot_life", "pot_mass", "pot_temperature", "pot_means", "cup_gel", "cup_heat", "cup_shape", "ratio", "length", "width", "across", "room")
    clock = {"resin": way, "shape": given.choice("shape"), "depth": depth_told} | {name: typed[name] for name in names if name in typed}
    clock |= {"deepest": typed["deepest"]} if known == "sheet" and "deepest" in typed else {}
    clock |= {"wood": typed["wood"]} if case.wood_share and "wood" in typed else {}
    return clock


def _own_depth(case: Case, found: Looked, typed: str, against: tuple[Reason, ...]) -> str:
    """The headline's depth for this pour; what was typed where the headline is a width, no end or, by its rounding, a hair under it.

    Over the sheet in a narrow mould the headline is the sheet's own depth, which the gates know: then the line of the heat alone.
    """
    outlook = found.outlook
    planned = outlook.plan.mould.depth_m
    if outlook.planned <= outlook.go:
        line = outlook.go if any(reason.id == "over-sheet" for reason in against) else ceiling(case, found)
        shown = depth(case.given, line)
        return typed if outlook.plan.tall or shown.si < planned or line > BOUNDLESS_M else str(shown)
    return str(depth(case.given, min(found.deepest_m, planned)))


def carries(case: Case, found: Looked, against: tuple[Reason, ...]) -> tuple[Carry, ...]:
    """To the gates, with depth, sheet and the watch over the cure; to the clock, with resin and mould.

    After a stop only the first of its layers goes on, where layers are the way: with its resin to be reckoned and weighed.
    """
    given, outlook = case.given, found.outlook
    hot = outlook.hot
    assert hot is not None
    if any(reason.tone == "stop" for reason in against):
        return _first_layer(case, found) if in_layers(found, against) else ()
    typed = {field.name: given.as_typed(field.name) for field in FIELDS if given.typed(field.name)}
    tops = [course.warmest_again for course in (hot, outlook.middle, outlook.cool) if course is not None]
    peaks = [top.time_s for top in tops if top is not None]
    gates = {"depth": typed["depth"], "planned_peak": warm(given, hot.peak.hottest_k)}
    if peaks:
        gates |= {"peak_after": hours(given, min(peaks), "down"), "peak_latest": hours(given, max(peaks) + outlook.plan.bucket_s, "up")}
    gates["own_depth"] = _own_depth(case, found, typed["depth"], against)
    if case.sheet_m is not None:
        gates |= {"sheet_depth": typed["deepest"], "narrowest": str(given.write(case.narrowest_m, "length"))}
    if given.choice("shape") == "oblong":
        gates |= {"mould_length": typed["length"], "mould_width": typed["width"]}
    clock = _clock(case, found, typed["depth"])
    fits = takes("when-can-i", "depth", outlook.plan.mould.depth_m) and takes("when-can-i", case.narrowest_field, case.narrowest_m)
    return (Carry("before-a-pour", gates), *((Carry("when-can-i", clock),) if fits else ()))
