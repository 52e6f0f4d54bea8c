"""The answer: what to weigh, what is in it, whether the jars hold it."""

from __future__ import annotations

import math

from calc.answers import Answer, Caution, Figure, Grid, Headline, Limit, Tone, figure
from calc.casting import colour, small_doses
from calc.questions._how_much.plan import step_text
from calc.questions._what_colour_dose.case import Case, Colour
from calc.questions._what_colour_dose.cautions import cautions
from calc.questions._what_colour_dose.lines import band, changes, lines
from calc.questions._what_colour_dose.working import sources, working
from calc.words import both, either


def answer(case: Case) -> Answer:
    """Everything that is said of a case that can be.

    Parameters
    ----------
    case : what was typed.

    Returns
    -------
    Answer
    """
    first = case.colours[0]
    stops = len(case.short) + case.over_stop
    values = {
        "share": figure(case.percent(first.share), "share", first.share),
        "need": figure(case.fine(case.need(first)), "mass", case.need(first)),
        "least": figure(case.fine(case.least), "mass", case.least),
        "load": Figure(case.load("caution"), "ratio", f"{case.load('caution'):.2f}"),
        "stops": Figure(float(stops), "count", str(stops)),
    }
    if case.batches:
        values["dose"] = figure(case.grams(first.share * case.batches[0], first), "mass", first.share * case.batches[0])
    return Answer(
        headline=_headline(case),
        lines=tuple(lines(case)),
        limits=_limits(case),
        changes=tuple(changes(case)),
        band=band(case),
        cautions=(*_stops_after_the_first(case), *cautions(case)),
        working=tuple(working(case)),
        sources=sources(case),
        grids=_grids(case),
        values=values,
    )


# ---------------------------------------------------------------- headline


def _headline(case: Case) -> Headline:
    if case.over_stop:
        return _too_strong_in_the_bucket(case) if case.tinting else _too_strong(case)
    if case.short:
        return _short(case, case.short[0])
    return _so_far(case) if case.tinting else _dose(case)


def _dose(case: Case) -> Headline:
    """What goes into the first batch, or into each."""
    names = both([f"pre-mix of {one.name}" if one.strength is not None else one.name for one in case.colours])
    lead = f"Start with {names}" if case.way == "effect" else f"The same again, {names}"
    where = "" if len(case.batches) == 1 else ", each batch" if case.equal else ", batch 1"
    shown = [case.on_scale(one, case.batches[0]) for one in case.colours]
    small = case.small
    say = _how(case, small[0]) if small else _look(case) if case.way == "effect" else _write_down(case)
    tone: Tone = "caution" if small or case.over_caution else "go"
    return Headline(lead + where, " + ".join(one.text for one in shown), shown[0].unit, say, tone)


def _how(case: Case, one: Colour) -> str:
    """How a dose too small for this scale is weighed all the same."""
    whose = f"The smallest dose of {one.name}" if len(case.colours) > 1 else "The smallest dose"
    what = f"{whose}, {case.fine(case.smallest_weighed(one), 2)}," if len(case.batches) + len(case.colours) > 2 else "That"
    ways = ["pre-mix it"] if case.premix(one) is not None else []
    ways += ["count drops"] if one.kind.liquid else []
    below = f" Or {either(ways)}: below." if ways else ""
    say = f"{what} is too little for steps of {case.face.show(case.step)}."
    if one.strength is not None:
        return f"{say} A pre-mix of {case.round_percent(small_doses.premix_strength(case.smallest(one), case.least))} colour or less can be weighed."
    return f"{say} Weigh the bottle or stick before and after, in steps of {step_text(case.finer(one))}.{below}"


def _look(case: Case) -> str:
    """How the start is judged."""
    return f"Stir it in, then judge it {smear(case)}. Too pale? Half of that again at a time."


def smear(case: Case) -> str:
    """The test that tells the truth about a colour."""
    if case.depth is None:
        return "as thick as it will be, on white"
    thick = case.given.write(case.depth, "length")
    return f"as a smear {thick} thick on white" if case.depth <= 0.005 else f"in a clear cup, {thick} deep on white"


def _write_down(case: Case) -> str:
    shares = both([f"{one.name} {case.percent(one.share)}" for one in case.colours])
    return f"By weight of the mixed resin: {shares}. Judge it {smear(case)}."


def _so_far(case: Case) -> Headline:
    """The share that is in it: it is the colour, whatever it took to get there."""
    inside = both([f"{case.fine(one.inside)} of {one.name}" for one in case.colours])
    text = " + ".join(case.percent(one.share).text for one in case.colours)
    say = f"That is {inside} in {case.resin_text(case.in_bucket)}."
    if case.batches:
        dose = " + ".join(case.on_scale(one, case.batches[0]).text for one in case.colours)
        say += f" Next batch: {dose} {case.face.unit}."
        say += f" {_how(case, case.small[0])}" if case.small else ""
    if case.over_caution:
        say += " No more: it is past where to take care."
    elif not case.batches:
        say += f" Judge it {smear(case)}."
    return Headline("Colour so far, write it down", text, "%", say, "caution" if case.over_caution else "go")


def _too_strong(case: Case) -> Headline:
    """A dose over its stop line: what may go in instead."""
    if len(case.colours) > 1:
        most = str(math.floor(100 / case.load("stop")))
        say = f"Together they are {case.load('stop'):.2g} times the most. Paler then, or fewer colours; a kind that covers needs less."
        return Headline("Of every colour, at most", most, "% of that", say, "stop")
    one = case.colours[0]
    most_shown = case.fine(one.stop * case.batches[0], 3, "down")
    where = "" if len(case.batches) == 1 else " in batch 1"
    whose = "the label's most" if one.from_label else f"the most of {one.name} (common practice)"
    other = "or a paste, which covers" if one.kind.clear else "or a stronger colour"
    say = f"{case.round_percent(one.stop)} is {whose}; this look takes {case.round_percent(one.share)}. Paler, {other}."
    return Headline(f"Of {one.name}{where}, at most", most_shown.text, most_shown.unit, say, "stop")


def _too_strong_in_the_bucket(case: Case) -> Headline:
    """Overdone: clear resin brings it back."""
    shown = case.given.write(colour.clear_to_add(case.in_bucket, case.load("stop")), ("mass", case.resin_style), "up")
    inside = both([f"{one.name} {case.round_percent(one.share)}" for one in case.colours])
    back = f"to {case.round_percent(case.colours[0].stop)}, the most" if len(case.colours) == 1 else "to the most"
    say = f"No more colour. Mixed to its ratio and stirred in while all is liquid, that brings it back {back}. In it now: {inside}."
    return Headline("Clear resin to add", shown.text, shown.unit, say, "stop")


def _short(case: Case, one: Colour) -> Headline:
    """The jar does not hold it: found before the first spoon."""
    assert one.jar is not None  # only a jar that was told can be short
    missing = case.fine(case.need(one) - one.jar, 3, "up")
    what = "The other batches take" if case.tinting else "All batches take" if len(case.batches) > 1 else "It takes"
    whose = f" of {one.name}" if len(case.colours) > 1 else ""
    say = f"{what} {case.fine(case.need(one))}{whose}, the jar has {case.fine(one.jar)}."
    if not case.tinting:
        shared = case.given.write(one.jar / case.resin, ("share", case.share_style), "down")
        say += f" Or shared out, {shared}{whose} in every batch." if one.jar else ""
    return Headline(f"More {one.name} to get first", missing.text, missing.unit, say, "stop")


def _stops_after_the_first(case: Case) -> tuple[Caution, ...]:
    """Jars that are short and did not lead."""
    rest = case.short if case.over_stop else case.short[1:]
    return tuple(Caution("short", "stop", f"{_short(case, one).label}: {_short(case, one).shown}. {_short(case, one).say}") for one in rest)


# ---------------------------------------------------------------- ladder and table


def _limits(case: Case) -> tuple[Limit, ...]:
    """Of one colour, in grams for the bucket at hand."""
    if len(case.colours) > 1:
        return ()
    one, resin = case.colours[0], case.in_bucket
    whose = "The label's." if one.from_label else "Common practice; the label rules."

    def rung(id: str, name: str, share: float, why: str, rules: bool) -> Limit:
        shown = case.fine(share * resin, 3, "down") if why else case.grams(share * resin, one)
        return Limit(id, name, shown.text, shown.unit, f"{case.round_percent(share)} of {case.resin_text(resin)}. {why}".strip(), rules)

    here = "In it now" if case.tinting else "Start" if case.way == "effect" else "This dose"
    rungs = [rung("here", here, one.share, "", False)]
    if not one.from_label:
        rungs.append(rung("caution", "Take care above", one.caution, whose, case.over_caution and not case.over_stop))
    rungs.append(rung("stop", "Stop at", one.stop, whose, case.over_stop))
    return tuple(rungs)


def _grids(case: Case) -> tuple[Grid, ...]:
    """Every batch with every colour, the sum, and the jars."""
    if (len(case.batches) + case.tinting < 2 and len(case.colours) == 1) or (case.over_stop and not case.tinting):
        return ()
    word = "To come" if case.tinting else "Batch"
    rows = [
        (f"{word} {number}", str(case.resin_text(resin)), *(str(case.on_scale(one, resin)) for one in case.colours))
        for number, resin in enumerate(case.batches, start=1)
    ]
    if case.tinting:
        rows.insert(0, ("This bucket, so far", str(case.resin_text(case.in_bucket)), *(str(case.fine(one.inside)) for one in case.colours)))
    if len(case.batches) > 1:
        rows.append((f"{word}, in all", str(case.resin_text(case.resin)), *(str(case.in_all(one)) for one in case.colours)))
    if any(one.jar is not None for one in case.colours):
        rows.append(("In the jar", "", *("not checked" if one.jar is None else str(case.fine(one.jar)) for one in case.colours)))
    heads = tuple(f"Pre-mix of {one.name}" if one.strength is not None else f"{one.name[0].upper()}{one.name[1:]}" for one in case.colours)
    return (Grid("Batch by batch", (word, "Mixed resin", *heads), tuple(rows)),)
