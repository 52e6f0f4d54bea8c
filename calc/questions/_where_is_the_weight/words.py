"""What a maker reads of a blank's balance: the one thing to do, the lines, the sizes as it shrinks, the band and the cautions."""

from __future__ import annotations

import math

from calc.answers import Band, Change, Grid, Headline, Line, Tone
from calc.constants import STANDARD_GRAVITY
from calc.quantity.writing import Style, round_to, rpm_text
from calc.questions import Given
from calc.questions._how_fast.remedies import MOST_SHIFT
from calc.questions._where_is_the_weight import moves
from calc.questions._where_is_the_weight.case import BOTH_SIDES, Case
from calc.questions._where_is_the_weight.moves import Centre, Shift, Stage
from calc.questions._where_is_the_weight.parts import NOTHING_KG, clock, standard
from calc.turning import balance

_TONES: tuple[Tone, ...] = ("go", "caution", "stop")
_FINE = 0.1  # mm or a hundredth of an inch: how closely a centre is told


def length(case: Case, metres: float) -> str:
    """A length on a tape."""
    return str(case.given.write(metres, "length"))


def finely(case: Case, metres: float) -> str:
    """A length as finely as a centre can be marked."""
    return str(case.given.write(metres, ("length", fine_length(case.given))))


def fine_length(given: Given) -> Style:
    """How a centre is told."""
    return Style("mm", step=_FINE) if given.system == "metric" else Style("in", step=0.01)


def near_rpm(speed: float) -> str:
    """A speed to stay under, on a round figure."""
    return rpm_text(round_to(speed, 10, "down") if speed >= 10 else speed)


def weights_text(case: Case) -> str:
    """'78 g at 130 mm, at 3 o'clock', or two of them."""
    told = [f"{case.grams(weight)} at {clock(towards)}" for weight, towards in case.weights]
    return f"{' and '.join(told)}, {length(case, case.place)} out"


# --- the one thing to do ------------------------------------------------------------------------------


def headline(case: Case, shift: Shift | None, cut: Centre | None) -> Headline:
    """What to do first; how loud it is said hangs on what it does to the lathe."""
    level = case.matters
    if case.hidden:
        return _stays(case)
    if case.weight < NOTHING_KG:
        return _nothing(case)
    loose: Tone = "go" if level == 0 else "caution"
    if level == 0:
        return _little(case)
    if case.way == "plan":
        return _plan(case, shift)
    if case.way == "cast" and cut is not None:
        shown = case.given.write(cut.far, "length")
        say = f"Towards {clock(cut.towards)}. Saw it round to {length(case, cut.across)} about that centre before it goes on: it is then in balance."
        return Headline("Move the centre", shown.text, shown.unit, say, loose)
    if case.way == "scale":
        half = Style("mm", step=0.5) if case.given.system == "metric" else Style("in", step=1 / 32, fraction=True)
        shown = case.given.write(case.body.eccentricity_m, ("length", half))
        say = f"Towards {clock(case.body.heavy)}, the heavy side. {_then_sweeps(case)}"
        if not case.unhung:
            say += f" Or mount it in the middle and hang {weights_text(case)}."
        return Headline("Move the centre", shown.text, shown.unit, say, loose)
    if case.unhung:
        return _move(case)
    return _hang(case, _TONES[level] if case.way != "cast" else loose)


def _then_sweeps(case: Case) -> str:
    """About another centre the far side stands out further, until it is round again."""
    wider = case.given.write(case.swept + 2 * case.body.eccentricity_m, "length", "up")
    return f"It then sweeps up to {wider} until it is round again: ask for fit, mount and speed with that."


def _move(case: Case) -> Headline:
    """Where a weight would be more than may be hung: another centre, or another size."""
    there = moves.centre_of_mass(case)
    why = f"A weight for it, {case.grams(case.weight)}, would be over a sixth of the piece."
    slowest = f"Until then stay under {near_rpm(case.under)} rpm{_lowest(case)}."
    if there.across < (1 - 2 * MOST_SHIFT) * case.round:
        return Headline("Too far out of balance", "Do not run it", "", f"Make it smaller, or take off from the heavy side. {why}", "stop")
    half = Style("mm", step=0.5) if case.given.system == "metric" else Style("in", step=1 / 32, fraction=True)
    shown = case.given.write(case.body.eccentricity_m, ("length", half))
    say = f"Towards {clock(case.body.heavy)}, the heavy side. {_then_sweeps(case)} {slowest} {why}"
    return Headline("Move the centre", shown.text, shown.unit, say, "stop")


def _stays(case: Case) -> Headline:
    """Under the spindle's friction."""
    hides = f"Friction may hide up to {case.given.write(case.weight, ('mass', Style(case.given.pick('g', 'oz'), figures=2)), 'up')}"
    say = f"It stays wherever it is left: what is out is under the spindle's friction. {hides}, {length(case, case.place)} out."
    if case.matters == 0:
        return Headline("To balance it", "Nothing shows", "", say, "go")
    say = f"{hides}, {length(case, case.place)} out, and this lathe would feel that. Free the spindle, or use two supports and a scale; until then stay under "
    return Headline("To balance it", "Nothing shows", "", f"{say}{near_rpm(case.under)} rpm.", "caution")


def _plan(case: Case, shift: Shift | None) -> Headline:
    if shift is None:
        head = _hang(case, "caution")
        return Headline("It will want", head.text, head.unit, f"{head.say} No shift of the wood does away with it.", "caution")
    what = shift.what
    shown = case.given.write(shift.far, "length")
    along = ", with what is let into it" if shift.rides else ""
    say = f"Towards {clock(shift.towards)}, in the mould{along}. Or leave it there: it will want {weights_text(case)}."
    return Headline(f"Shift {what}", shown.text, shown.unit, say, "caution")


def _hang(case: Case, tone: Tone) -> Headline:
    verb = "Fix on the light side" if case.way == "hung" else "Hang on the light side"
    then = f"Until then stay under {near_rpm(case.under)} rpm{_lowest(case)}."
    where = f"{length(case, case.place)} out"
    if len(case.weights) > 1:
        shown = [case.small(weight) for weight, _ in case.weights]
        places = " and ".join(clock(towards) for _, towards in case.weights)
        return Headline(verb, " + ".join(weight.text for weight in shown), shown[0].unit, f"{where}, at {places} in that order. {then}", tone)
    shown_one = case.small(case.weight)
    at = "where it hung" if case.way == "hung" else f"at {clock(case.light)}"
    return Headline(verb, shown_one.text, shown_one.unit, f"{where}, {at}. {then}", tone)


def _lowest(case: Case) -> str:
    """What to do where no lathe of its kind goes as slow."""
    return "; if the lathe's lowest is above that, do not start it" if case.too_slow else ""


def _little(case: Case) -> Headline:
    shown = case.small(case.weight)
    at = "where it hung" if case.way == "hung" else f"at {clock(case.light)}"
    say = f"{length(case, case.place)} out, {at}."
    if case.may_matter:
        return Headline("To balance it", shown.text, shown.unit, f"{say} {_try(case)}", "caution")
    say += f" At {near_rpm(case.speed)} rpm a lathe of {_heavy(case)} hardly feels it without."
    return Headline("To balance it", shown.text, shown.unit, say, "go")


def _nothing(case: Case) -> Headline:
    """In balance as far as the figures go; what they leave open is tried where the lathe would feel it."""
    if case.may_matter == 0:
        return Headline("To balance it", "Nothing", "", "The centre of mass lies on the spindle, as near as this can tell.", "go")
    return Headline("To balance it", "Nothing known", "", _try(case), "caution")


def _try(case: Case) -> str:
    """How to find what the figures leave open."""
    most = case.most_grams(balance.balance_weight(case.most, case.place))
    where = f", {length(case, case.place)} out" if case.weight < NOTHING_KG else ""
    return f"It may want up to {most}{where}, on any side: try it on a free spindle. Until then stay under {near_rpm(case.under)} rpm."


def _heavy(case: Case) -> str:
    return str(case.given.write(case.standing, ("mass", Style(case.given.pick("kg", "lb"), figures=2)), "down"))


# --- what goes with it --------------------------------------------------------------------------------


def weight_leads(case: Case, shift: Shift | None, cut: Centre | None) -> bool:
    """Whether a weight is the first thing told, and no shift and no other centre."""
    if case.matters == 0 or case.way in ("mounted", "hung", "swing"):
        return True
    return (case.way == "cast" and cut is None) or (case.way == "plan" and shift is None)


def lines(case: Case, shift: Shift | None, cut: Centre | None) -> tuple[Line, ...]:
    """Figures that are acted on."""
    if case.hidden:
        return _of_friction(case)
    if case.weight < NOTHING_KG:
        return (Line.of("It weighs", case.given.write(case.body.mass_kg, "mass")),) if case.made else ()
    out = []
    leads = weight_leads(case, shift, cut)
    if case.way == "cast" and not leads and not case.unhung:
        out.append(Line("Or hang", weights_text(case)))
    told = {"hung": "12 is the top of the drawing. Opposite the weight.", "swing": "As it hangs still, the heavy side down. Mark the rim there."}
    out.append(Line("Heavy spot", clock(case.body.heavy), note=told.get(case.way, "")))
    if case.way not in ("hung", "swing"):
        out.append(Line("Centre of mass", finely(case, case.body.eccentricity_m), note="from where it turns" if case.way == "mounted" else "from the middle"))
    if case.made:
        out.append(Line.of("It weighs", case.given.write(case.body.mass_kg, "mass")))
    if case.matters and not leads:
        note = "If the lathe's lowest is above that, do not start it." if case.too_slow else ""
        out.append(Line("Out of balance, stay under", near_rpm(case.under), "rpm", note))
    return (*out, *_of_weight(case))


def _of_weight(case: Case) -> tuple[Line, ...]:
    """What the weight does once it hangs, and how to check it."""
    out = []
    which = ", the roughing ceiling for its size" if case.given.maybe("speed") is None else ""
    note = f"At {near_rpm(case.speed)} rpm{which}; twice the speed, four times the pull. Screws and glue have to hold it."
    pulls = [balance.push(weight * case.place, case.speed) / STANDARD_GRAVITY for weight, _ in case.weights]
    shown = [case.given.write(pull, ("mass", Style(case.given.pick("kg", "lb"), figures=2)), "up") for pull in pulls]
    label = "A weight there pulls like" if len(shown) == 1 else "The two pull like"
    if not case.unhung:
        out.append(Line(label, " and ".join(pull.text for pull in shown), shown[0].unit, note))
    if case.way == "mounted" and case.matters:
        note = "Belt off, the heavy side let go a little to one side. If yours takes clearly longer or less, go by that: choose its swing above."
        out.append(Line.of("To check it, one swing takes", case.given.write(case.would_swing, ("time", Style("s", figures=2))), note))
    if case.way == "swing":
        note = "If not, add or take off until it does. What you hung then overrules the timing: enter it instead."
        if not case.unhung:
            out.append(Line("Then it should", "Stay anywhere", note=note))
        out.append(Line.of("One swing", case.given.write(case.swing.period, ("time", Style("s", figures=2))), _small_swings(case)))
    if case.way == "hung" and case.given.maybe("sticks") is None:
        out.append(Line("What friction hides", "Try it", note="Add small weights beside it until it moves; enter the last one under 'More'."))
    return tuple(out)


def _small_swings(case: Case) -> str:
    """What the time of a swing is good for."""
    most = f"{math.degrees(standard('small swing')):.0f}°"
    if case.swing.reach == 0:
        return f"There and back. Counts for swings of up to {most} to each side, 5 minutes of the clock; wider ones read too little."
    return "There and back. How far it swung is reckoned in."


def _of_friction(case: Case) -> tuple[Line, ...]:
    """Where it stays wherever it is left."""
    out = [Line("Try it at", "Every quarter", note="Each quarter of the rim in turn level with the spindle: it must stay at all four.")]
    if not case.given.typed("least"):
        note = "Hang small weights level with the spindle until it moves; enter the last one. Until then a guess stands in."
        out.append(Line("What friction hides", "Try it", note=note))
    return tuple(out)


def changes(case: Case, found: list[Shift], cut: Centre | None, told: list[Stage]) -> tuple[Change, ...]:
    """What else would move it."""
    if not case.made or case.weight < NOTHING_KG:
        return ()
    out = []
    if case.way == "plan":
        for shift in found[1:3]:
            out.append(Change(f"Shift {shift.what} {length(case, shift.far)} towards {clock(shift.towards)}", "in balance"))
        if found:
            step = 0.010 if case.given.system == "metric" else 0.0127
            less = moves.cheaper(case, found[0], step) if found[0].far > step else 0.0
            if less >= NOTHING_KG:
                out.append(Change(f"Shift it only {length(case, step)} that way", f"{case.grams(less)} less to hang"))
    if not (case.way == "mounted" and case.too_heavy):
        there = moves.centre_of_mass(case)
        if there.across > 0 and case.matters and (case.finish is None or case.finish <= there.across * (1 + 1e-9)):
            after = balance.balance_weight(there.body.unbalance, case.inside_rim(there.across))
            far, towards = finely(case, case.body.eccentricity_m), clock(case.body.heavy)
            do = f"Move the mounting centre {far} towards {towards}" if case.way == "mounted" else f"Mount it {far} off, towards {towards}"
            out.append(Change(do, f"balanced till true, then {case.grams(after)}"))
    if case.way in ("plan", "cast") and cut is not None and not (case.way == "cast" and case.matters):
        out.append(Change(f"Saw it round about a centre {length(case, cut.far)} towards {clock(cut.towards)}", f"in balance at {length(case, cut.across)}"))
    true = moves.trued(case, told)
    if true is not None:
        weight, place = moves.at_rim(case, true)
        left = "in balance" if weight < NOTHING_KG else f"only {case.grams(weight)} at {length(case, place)}"
        out.append(Change(f"Turn it true, at {length(case, true.across)}, slowly", left))
    return tuple(out)


def grid(case: Case, told: list[Stage]) -> Grid:
    """As it is turned down: where the heavy spot is stands in the title while it stays, and takes a column where it moves."""
    rows, spots = [], []
    own_size = math.isclose(case.swept, case.round)
    for stage in told:
        weight, place = moves.at_rim(case, stage)
        still = weight < NOTHING_KG
        where = "-" if still else f"{case.grams(weight)} at {length(case, place)}"
        across = length(case, stage.across) + (" as it is" if stage.first and not own_size else "")
        spots.append("-" if still else clock(stage.body.heavy))
        rows.append((across, str(case.given.write(stage.body.mass_kg, "mass")), where, finely(case, stage.body.eccentricity_m)))
    found = set(spots) - {"-"}
    title, head = "As it is turned down", ("Across", "Weighs", "To balance it")
    if len(found) > 1:
        return Grid(title, (*head, "Heavy spot"), tuple((*row[:3], spot) for row, spot in zip(rows, spots, strict=True)))
    return Grid(f"{title}, heavy spot at {found.pop()}" if found else title, (*head, "Off centre"), tuple(rows))


def band(case: Case) -> Band | None:
    """How far the weight may be off, 19 times in 20."""
    sticks = case.given.maybe("sticks")
    if case.way == "hung":
        if sticks is None:
            return None
        hidden = case.grams(sticks)
        return Band(f"Friction hides up to {hidden} out there, either way.")
    if case.spread is None:
        return None
    off = BOTH_SIDES * case.spread / case.place
    if off < NOTHING_KG:
        return None
    low, high = max(0.0, case.weight - off), case.weight + off
    if case.way == "swing":
        high += case.swing.left_out * case.weight
        told = "each timing, and how the mass lies" if case.swing.chuck_inertia is not None else "each timing, and a chuck that was not counted"
        return Band(f"About {case.grams(low)} to {case.most_grams(high)}, 19 times in 20: {told}.", case.grams(low), case.most_grams(high))
    if case.way == "scale":
        said = f"Give or take {finely(case, BOTH_SIDES * case.spread / case.body.mass_kg)}, 19 times in 20"
        return Band(f"{said}: {case.grams(low)} to {case.most_grams(high)} to hang.", case.grams(low), case.most_grams(high))
    span = f"About {case.grams(low)} to {case.most_grams(high)}" if low >= NOTHING_KG else f"Anything up to {case.most_grams(high)}"
    return Band(f"{span}, 19 times in 20: no two trees weigh the same.", case.grams(low), case.most_grams(high))
