"""Further figures that are acted on, what would change them, and how far off they may be."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Band, Change, Line
from calc.casting import colour, small_doses
from calc.casting.standards import standard
from calc.casting.weighing import net_uncertainty
from calc.questions._how_much.plan import step_text
from calc.questions._what_colour_dose.case import Case, Colour


def _of(case: Case, one: Colour) -> str:
    """A colour's name where there are several."""
    return "" if len(case.colours) == 1 else f"{one.name[0].upper()}{one.name[1:]}: "


def _label(case: Case, one: Colour, text: str) -> str:
    """A line's label, with the colour's name before it where there are several."""
    name = _of(case, one)
    return f"{name}{text[0].lower()}{text[1:]}" if name else text


def lines(case: Case) -> Iterator[Line]:
    """Sums against the jars, shares to write down, ways to weigh very little, steps while tinting."""
    if case.part is not None and not case.over_stop:
        where = "" if len(case.batches) == 1 else ", batch 1" if not case.equal else ", of each batch"
        note = f"{case.round_percent(case.part)} of {case.resin_text(case.batches[0] / case.part)}: take it out of the mixed resin; the rest stays clear"
        yield Line.of(f"Resin to colour{where}", case.resin_text(case.batches[0]), note)
    for one in () if case.over_stop else case.colours:
        if len(case.batches) > 1 or (case.batches and (case.tinting or one.jar is not None)):
            yield _in_all(case, one)
        if case.way != "tinting":
            basis = "our start" if case.way == "effect" else "of the mixed resin, the same in every batch"
            yield Line.of(_label(case, one, "Share"), case.percent(one.share), f"{basis}; the label rules" if case.way == "effect" else basis)
        if one.strength is not None and case.batches:
            dose = small_doses.premix(one.share * case.batches[0], one.strength)
            note = f"for {case.fine(dose.colour)} of {one.name}; {case.fine(dose.part_a)} of it counts as part A"
            yield Line.of(_label(case, one, "Pre-mix, first batch"), case.grams(dose.stock), note)
        if one.strength is None and case.too_small(one):
            yield from _ways(case, one)
    if len(case.colours) > 1:
        yield Line("Together", f"{100 * case.load('caution'):.0f}", "%", "of the most without care, each colour's part of it added up; our judgement")
    if (case.way == "effect" or case.tinting) and not case.over_stop:
        yield from _tinting(case)
    deep = case.given.maybe("bucket_depth")
    if deep is not None and case.depth is not None and deep > case.depth:
        times = case.given.write(deep / case.depth, "count") if deep / case.depth >= 3 else f"{deep / case.depth:.1f}"
        yield Line("In the bucket it looks", f"{times}", "times as deep", "as in the casting; for what light goes through")


def _in_all(case: Case, one: Colour) -> Line:
    """All batches together against the jar."""
    need = case.need(one)
    label = _label(case, one, "In all" if not case.tinting else "For the other batches")
    shown = case.fine(need, 3, "up" if len(case.batches) > 1 else "nearest")
    if one.jar is None:
        return Line.of(label, shown, "jar not checked: weigh what is in it before the first spoon")
    left = one.jar - need
    if left < -1e-12:
        return Line.of(label, shown, f"{case.fine(-left, 3, 'up')} more than the jar has")
    spare = "next to nothing left for smears" if left < colour.standard("jar spare") * need else f"{case.fine(left, 3, 'down')} left in the jar"
    return Line.of(label, shown, spare)


def _ways(case: Case, one: Colour) -> Iterator[Line]:
    """What a scale too coarse for the dose can still do."""
    made = case.premix(one)
    if made is not None:
        strength, whole = made
        take = small_doses.premix(one.share * case.batches[0], strength)
        text = f"{case.fine(whole.colour)} in {case.fine(whole.part_a)} of part A"
        note = f"{case.round_percent(strength)} colour. First batch {case.fine(take.stock)} of it, and {case.fine(take.part_a)} less of A"
        yield Line(_label(case, one, "Or pre-mix"), text, "", note)
    if one.kind.liquid:
        count = small_doses.drops_for(one.share * case.batches[0], case.drop)
        if count < 1:
            yield Line(_label(case, one, "Or drops"), "under one drop", "", "pre-mix it, or mix a larger batch")
            return
        off = standard("coverage") * case.drops_spread(count)
        where = "" if len(case.batches) == 1 else " in the first batch"
        note = f"may be {100 * off:.0f} % off{where}; same bottle and tip for every batch"
        yield Line(_label(case, one, "Or count drops"), f"about {count}", "", note)


def _tinting(case: Case) -> Iterator[Line]:
    """How much at a time, and how much may still go in."""
    used = case.load("caution")
    for one in case.colours:
        inside = one.inside if case.tinting else one.share * case.batches[0]
        room = max(0.0, one.caution * (1 - used) * case.in_bucket)
        if case.tinting:
            whose = "the label's most" if one.from_label else f"{case.round_percent(one.caution)}, from where to take care"
            note = f"up to {whose}" if len(case.colours) == 1 else "if nothing else does"
            yield Line.of(_label(case, one, "May still go in"), case.fine(room, 2, "down"), note)
        step = min(colour.standard("addition") * inside, room)
        if step > 0:
            yield Line.of(_label(case, one, "At a time, at most"), case.fine(step, 2, "down"), "half of what is in; stir, look, then the next")


def changes(case: Case) -> Iterator[Change]:
    """A finer scale, a surer count of drops, a cup in the real colour."""
    small = case.small
    if case.over_stop:
        return
    for one in small[:1]:
        within = f"every dose within {case.round_percent(case.tolerance)}"
        yield Change(f"A scale with {step_text(case.finer(one))} steps, bottle or stick weighed before and after", within)
    counted = case.tinting and case.given.choice("ledger") == "drops"
    if (counted or any(one.kind.liquid and one.strength is None for one in small)) and case.given.maybe("drops_50") is None:
        yield Change("Fifty drops weighed once, from this bottle", "drops go by a figure of their own")
    if case.way == "effect":
        yield Change("One cup in this colour, as deep as the casting, left to cure", "settles the share, and shows whether it cures hard")


def band(case: Case) -> Band:
    """How far a dose, or what is in it, may be off."""
    k = standard("coverage")
    if case.tinting:
        one = max(case.colours, key=lambda each: each.spread)
        low, high = (case.percent(one.share * max(0.0, 1 + sign * k * one.spread)) for sign in (-1, 1))
        way = {"weighed": "weighed on this scale", "bottle": "weighed on this scale", "drops": "counted in drops"}[case.given.choice("ledger")]
        name = "" if len(case.colours) == 1 else f" of {one.name}"
        return Band(f"As {way}, about 19 times in 20 there is {low.text} to {high}{name} in it.", str(low), str(high))
    one = min(case.colours, key=case.smallest_weighed)
    off = k * net_uncertainty(case.step) / case.smallest_weighed(one)
    low, high = (case.fine(case.smallest(one) * max(0.0, 1 + sign * off)) for sign in (-1, 1))
    start = "A start, no more: pigments of one kind differ several times over. " if case.way == "effect" else ""
    if off > 1:
        return Band(f"{start}Steps of {case.face.show(case.step)} do not show this dose at all.", str(low), str(high))
    return Band(f"{start}Steps of {case.face.show(case.step)} keep the smallest dose within {100 * off:.2g} %.", str(low), str(high))
