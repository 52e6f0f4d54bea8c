"""The answer in a maker's words."""

from __future__ import annotations

from calc.answers import Answer, Band, Caution, Figure, Grid, Headline, Limit, Line, Working, figure
from calc.casting.cure.course import RUNAWAY_K, Course
from calc.casting.cure.plan import GO_K, STOP_K, tier_of
from calc.casting.cure.stages import Window
from calc.casting.cure.standards import standard
from calc.drawing import Drawing
from calc.quantity.writing import Shown
from calc.questions._how_deep.case import Case
from calc.questions._how_deep.curve import curve
from calc.questions._how_deep.handed import BOUNDLESS_M, carries, ceiling, layer_by_layer
from calc.questions._how_deep.reasons import Reason, changes, layered, reasons
from calc.questions._how_deep.runs import COLD_K, Looked
from calc.questions._how_deep.words import depth, difference, hours, hours_band, mould, mould_band, typed_depth, warm, warm_band
from calc.questions._resin.agreement import disagreement, judged_by, no_pot_life
from calc.questions._when.hours import after, rounded


def tell(case: Case, found: Looked) -> Answer:
    """The answer.

    Parameters
    ----------
    case, found : the pour, and what was worked out.

    Returns
    -------
    Answer
    """
    given, outlook = case.given, found.outlook
    against = reasons(case, found)
    drawings: tuple[Drawing, ...] = ()
    grids = [*layer_by_layer(case, found, against), _ends(case, found)]
    if not case.quick:
        drawing, grid = curve(given, outlook, case.material)
        drawings = (drawing,)
        grids.append(grid)
    hot = outlook.hot
    assert hot is not None
    stops = sum(reason.tone == "stop" for reason in against)
    return Answer(
        headline=_headline(case, found, against),
        lines=_lines(case, found),
        limits=_limits(case, found),
        changes=changes(case, found),
        band=_band(case, found),
        cautions=_cautions(case, found, against),
        working=_working(case, found),
        sources=("cure-solver", "cure-fit", "cure-trials", "film-formula", "building-thermal", tier_of(hot.peak.hottest_k).source),
        grids=tuple(grids),
        drawings=drawings,
        values={
            "no_stop": figure(_line(case, found, outlook.go), "length", _metres(case, found, outlook.go)),
            "margin": Figure(outlook.go / outlook.planned, "ratio", f"{outlook.go / outlook.planned:.2f}"),
            "peak": Figure(min(hot.peak.hottest_k, RUNAWAY_K), "temperature", warm(given, hot.peak.hottest_k)),
            "stops": Figure(float(stops), "count", str(stops)),
        },
        carries=carries(case, found, against),
    )


# ---------------------------------------------------------------- the lines


def _metres(case: Case, found: Looked, line: float) -> float:
    """A line as a length: a depth, or a width for a tall mould."""
    return line * case.narrowest_m if found.outlook.plan.tall else line


def _line(case: Case, found: Looked, line: float) -> Shown:
    return depth(case.given, _metres(case, found, line))


def _headline(case: Case, found: Looked, against: tuple[Reason, ...]) -> Headline:
    given, outlook = case.given, found.outlook
    tall = outlook.plan.tall
    label = "Mould no wider than" if tall else "One layer, at most"
    shown = depth(given, _metres(case, found, outlook.go) if tall else ceiling(case, found))
    text, unit = shown.text, shown.unit
    if not tall and outlook.go > BOUNDLESS_M and case.sheet_m is None:
        text, unit = "No end found", ""
    planned, metres = typed_depth(given, case.narrowest_field if tall else "depth"), case.narrowest_m if tall else outlook.plan.mould.depth_m
    plan = f"{planned} {'across ' if tall else ''}is planned"
    if not against or all(reason.tone != "stop" for reason in against):
        if against and against[0].id == "over-sheet":
            return Headline(label, text, unit, against[0].text, "caution")
        if against:
            return Headline(label, text, unit, f"{plan[:1].upper()}{plan[1:]}. {against[0].text}", "caution")
        spare = depth(given, max(0.0, shown.si - metres) + 1e-9)  # of the two figures told, so that they agree
        left = f", {spare} to spare" if text != "No end found" and spare.text != "0" else ""
        return Headline(label, text, unit, f"{plan[:1].upper()}{plan[1:]}{left}. No stop found - your call.", "go")
    first = against[0]
    if first.id == "set-in-bucket":
        return Headline("This batch", "Do not pour it", "", f"Spread it thin outdoors and mix anew. {first.text}", "stop")
    if first.id in ("runaway", "over-sheet", "strain"):
        remedy = layered(case, found) or _without_layers(case, found)
        return Headline(label, text, unit, f"{remedy} {first.text}", "stop")
    return Headline("The mould", "Of another material", "", f"Board, silicone or metal would stand it. {first.text}", "stop")


def _without_layers(case: Case, found: Looked) -> str:
    if found.wait_s is not None:
        return f"Wait until {after(found.wait_s, 'up')} after the layer below was poured."
    if found.below_runs_away:
        return "Enter the newest layer alone as the layer below: poured in one, so deep a layer runs away itself."
    if found.outlook.plan.beneath is not None:
        return "Wait longer before this layer, and pour less of it."
    if case.quick:
        return "Pour it in layers of no more than that, each cool before the next."
    return "Use a slower resin, a cooler shop, or a narrower mould."


def _lines(case: Case, found: Looked) -> tuple[Line, ...]:
    given, outlook = case.given, found.outlook
    hot, middle, cool = outlook.hot, outlook.middle, outlook.cool
    assert hot is not None and middle is not None and cool is not None
    lines = [Line("Hottest it gets", warm_band(given, cool.peak.hottest_k, hot.peak.hottest_k), note="a range, no forecast")]
    tops = [one.warmest_again for one in (hot, middle, cool)]
    lines.append(Line("At its hottest after", hours_band(given, [top.time_s for top in tops if top is not None]) if any(tops) else "none: it only cools"))
    if outlook.equal_m is not None:
        lines.append(Line.of("Counts as a wide pour of", depth(given, outlook.equal_m, "up"), "for the depth on the sheet"))
    if case.quick:
        return tuple(lines)
    assert outlook.bucket is not None
    in_bucket, within = outlook.bucket.runs_s, outlook.bucket.within_s
    if in_bucket is not None and within is not None:
        note = f"after mixing; it should pour for about {after(in_bucket, 'down')}, its fastest for less; leave no rest in it"
        lines.append(Line("Out of the bucket within", after(within, "down"), note=note))
    lines.append(Line("Mould, hottest spot", mould_band(given, outlook), note=_mould_note(case, outlook.mould_k[2])))
    window = found.window if found.layers is None else found.layers.window
    if window is not None and window.first_s is not None:
        note = f"skin firm and core as cool as the shop; {_scuff(window)}"
        lines.append(Line("Next layer not before", after(window.first_s, "up"), note=note))
    cold = middle.cools_to(3.0)
    if found.layers is None and not middle.ran_away and cold is not None:
        lines.append(Line("As cool as the shop after", hours(given, cold * outlook.plan.level.hours, "up")))
    return tuple(lines)


def _scuff(window: Window) -> str:
    if window.first_s is None or window.last_s is None or rounded(window.first_s, "up") >= rounded(window.last_s, "down"):
        return "scuff it first"
    return f"it bonds until about {after(window.last_s, 'down')}, later scuff it"


def _mould_note(case: Case, hot_k: float) -> str:
    """From when the mould, its tape and its hot glue give way."""
    given, limit = case.given, case.material.gives_way_k
    notes = [] if limit is None else [f"{case.material.name} gives way from {given.write(limit, 'temperature', 'down')} on"]
    for name, where in (("hot glue", "hot glue"), ("tape on board", "tape")):
        gives_way = standard(f"{where} gives way")
        if hot_k > gives_way and (where != "tape" or case.material.id == "board"):
            notes.append(f"{name} lets go at about {given.write(gives_way, 'temperature', 'down')}")
    return "; ".join(notes)


def _limits(case: Case, found: Looked) -> tuple[Limit, ...]:
    given, outlook = case.given, found.outlook
    tall, sheet = outlook.plan.tall, case.sheet_m
    rungs = [
        ("no-stop", "No stop found up to", outlook.go, f"Below the whole range, and its hot end stays at {given.write(GO_K, 'temperature', 'down')}."),
        ("stop", "Stop above", outlook.stop, f"The hot end of the range passes {given.write(STOP_K, 'temperature', 'down')}, or the edge is too near."),
        ("edge", "Middle estimate runs away at", outlook.edge, "The edge itself: never plan by it."),
    ]
    if sheet is not None and not tall:
        rungs.append(("sheet", "The sheet's deepest layer", sheet, "A ceiling: nothing here goes over it."))
    ruling = "sheet" if sheet is not None and not tall and sheet < outlook.go else "no-stop"
    limits = []
    for id, name, line, why in sorted(rungs, key=lambda rung: rung[2]):
        shown = depth(given, _metres(case, found, line))
        text, unit = (shown.text, shown.unit) if tall or line < BOUNDLESS_M else ("no end found", "")
        limits.append(Limit(id, name, text, unit, why, id == ruling))
    return tuple(limits)


def _band(case: Case, found: Looked) -> Band:
    level = found.known.level
    low, high = (found.outlook.edge * over for over in level.true_over_predicted)
    if found.outlook.plan.beneath is not None:
        return Band(f"Judged by {judged_by(found.known)}. With a layer beneath, go by the temperatures above.")
    judged, way = f"Judged by {judged_by(found.known)}: 19 in 20 such resins begin to run away", "across" if found.outlook.plan.tall else "deep"
    if found.outlook.edge >= BOUNDLESS_M:
        return Band(f"Judged by {judged_by(found.known)}; no depth was found at which it runs away.")
    lowest, highest = _line(case, found, low), depth(case.given, _metres(case, found, high), "up")
    return Band(f"{judged} between {lowest} and {highest} {way}.", str(lowest), str(highest))


def _cautions(case: Case, found: Looked, against: tuple[Reason, ...]) -> tuple[Caution, ...]:
    shown = [Caution(reason.id, reason.tone, reason.text) for reason in against[1:] if reason.id != "disagree"]
    if found.known.lowered_by_s is not None:
        shown.insert(0, Caution("no-pot-life", "caution", no_pot_life(found.known)))
    if against and against[0].id == "runaway" and found.outlook.hot is not None and found.outlook.hot.ran_away:
        shown.append(Caution("card", "stop", "Should it smoke or froth all the same: leave. Read cards E1a and E1b before you pour."))
    if found.known.agreement in ("deep", "shallow"):
        shown.append(Caution("disagree", "caution", disagreement(case.given, found.known)))
    if case.given.si("wood") and not case.wood_share:
        text = "The clear part decides: wood elsewhere keeps none of it cool. If the wood lies all through, say so under 'The mould'."
        shown.append(Caution("wood-lies", "caution", text))
    if found.bare_m is not None:
        bare = min(found.bare_m, case.sheet_m or found.bare_m)
        text = f"Wood counts as spread evenly. A layer with none in it, as over a slab, bears {depth(case.given, bare)} at most: ask for it with 0 %."
        shown.append(Caution("bare", "caution", text))
    if case.air_k < COLD_K:
        shown.append(Caution("cold", "caution", "So cold, many resins stay soft or turn cloudy. Hold the shop against the lowest temperature on the sheet."))
    if found.known.level.id == "class":
        shown.append(Caution("kind-only", "caution", "By its kind alone this is for orientation. A pot life, a deepest layer or a test cup narrows it."))
    shown.append(Caution("not-in-it", "caution", "Sun, lamps, moulds side by side and a warm cupboard are not in it. Clear epoxy only."))
    return tuple(shown)


def _ends(case: Case, found: Looked) -> Grid:
    """The band, figure by figure."""
    given, outlook = case.given, found.outlook
    ends = [end for end in (outlook.cool, outlook.middle, outlook.hot) if end is not None]

    def peak(end: Course) -> str:
        return warm(given, end.peak.hottest_k)

    rows = [
        ("Hottest", *(peak(end) for end in ends)),
        ("Hottest after", *("only cools" if top is None else hours(given, top.time_s) for top in (end.warmest_again for end in ends))),
        ("No longer pours there after", *(hours(given, end.working_s, "down") for end in ends)),
        ("Gels after", *(hours(given, end.gel_s, "down") for end in ends)),
        ("Mould, hottest spot", *(mould(given, kelvin, end) for kelvin, end in zip(outlook.mould_k, ends, strict=True))),
        ("Middle hotter than skin by", *("no forecast" if end.ran_away else difference(given, end) for end in ends)),
    ]
    return Grid("In the mould: both ends of the range", ("", "Cool end", "Middle", "Hot end"), tuple(rows))


def _working(case: Case, found: Looked) -> tuple[Working, ...]:
    given, outlook = case.given, found.outlook
    plan, level, kinetics = outlook.plan, found.known.level, outlook.plan.resin.kinetics
    steps = [
        Working(
            "Rate of the reaction", "K25: da/dt = K25 · exp(-E/R (1/T - 1/298 K)) · (B + a^m)(1 - a)^n",
            f"judged by {level.name}; H {kinetics.heat / 1e3:.0f} J/g, E {kinetics.e / 1e3:.0f} kJ/mol",
            f"K25 {kinetics.k25 * 1e5:.3g} × 10⁻⁵ 1/s: workable {hours(given, kinetics.cool_s)} if kept at {given.write(298.15, 'temperature')}",
        ),
        Working(
            "Its band", "hot end: K25 × up, films × 0.9; cool end: K25 / down, films × 1.1", f"up {level.rate_up:g}, down {level.rate_down:g}",
            f"{plan.hot.resin.kinetics.k25 * 1e5:.3g} and {plan.cool.resin.kinetics.k25 * 1e5:.3g} × 10⁻⁵ 1/s",
        ),
        Working(
            "Shape of the mould", "half-width and exponent j = (W/L)²", f"{case.narrowest_m * 1e3:.0f} mm at its narrowest",
            f"half-width {plan.mould.footprint.half_width_m * 1e3:.1f} mm, j {plan.mould.footprint.j:.2f}",
        ),
    ]
    if plan.mould.side is not None:
        wall = plan.mould.side
        steps.append(
            Working("Mould", "wall and floor", wall.material.name, f"{wall.thickness_m * 1e3:.3g} mm, {wall.material.conductivity:g} W/(m K)")
        )
    if plan.bucket_s:
        mass = given.write(plan.batch_kg, "mass")
        steps.append(
            Working("Out of the bucket", "a run of the bucket first", f"{mass}, {hours(given, plan.bucket_s)}",
                    f"conversion {plan.start().conversion:.3f}, {given.write(plan.start().resin_k, 'temperature')}")
        )
    if plan.mould.wood_share:
        steps.append(
            Working("Wood", "share × min(1, reach / thickest piece)", f"{given.si('wood') * 100:.0f} %, reach {case.reach_m(plan.resin) * 1e3:.0f} mm",
                    f"{plan.mould.wood_share * 100:.0f} % takes up heat")
        )
    if plan.beneath is None and not case.quick:
        steps.append(
            Working("Odds", "log-normal spread of true over predicted, depth by rate to the power -0.87",
                    f"at the edge if {outlook.headroom:.2g} times as fast", f"{outlook.odds * 100:.0f} % of such resins would run away")
        )
    return tuple(steps)
