"""Where is the weight? The heavy spot of a blank, the weight that balances it, and where to shift the wood or the centre."""

from __future__ import annotations

from calc.answers import Answer, Caution, Figure, Headline, Line, Working, figure
from calc.constants import STANDARD_GRAVITY
from calc.quantity.writing import rpm_text
from calc.questions import Given, Question, Rule, Steps, Table
from calc.questions._where_is_the_weight import moves, words
from calc.questions._where_is_the_weight.case import Case
from calc.questions._where_is_the_weight.cautions import cautions
from calc.questions._where_is_the_weight.drawing import drawing
from calc.questions._where_is_the_weight.fields import FIELDS
from calc.questions._where_is_the_weight.handed import handed
from calc.questions._where_is_the_weight.moves import Centre, Shift
from calc.questions._where_is_the_weight.parts import clock
from calc.questions._where_is_the_weight.working import sources, working
from calc.steps import at_once
from calc.turning import balance

WORDS = {
    "overlap": "{label}: part of it lies where {other} is, and would be counted twice. Move one of the two, or say that this one is let into it.",
    "in-none": "{label}: no wood named above lies there. Choose the resin, or look at its place again.",
    "times-apart": "{label}: {low} and {high} are not of the same swing. Count again; there and back is one.",
    "too-quick": "{label}: one swing in {period} puts the centre of mass {found} from the spindle, outside the blank. There and back is one: count again.",
    "too-deep": "{label}: {given} is more than the blank's thickness, {thickness}.",
    "outside-blank": "{label}: {given} puts all of it outside the blank, which reaches {reach} from its centre.",
    "odd-corners": "{label}: {count} numbers came, and each corner has two. Write right, then up, for each in turn.",
    "crossing": "{label}: that outline touches or crosses itself. Go round the wood corner by corner, in one direction.",
    "too-light": "{label}: {given} makes this {found}, lighter than any wood. Look at the unit, its sizes and its depth.",
    "too-heavy": "{label}: {given} makes this {found}, heavier than any metal. Look at the unit, its sizes and its depth.",
    "too-wet": "{label}: {given} is more water than this wood holds, {found} at most. Look at the reading or the kind of wood.",
    "which-way": "{label}: enter an hour from 0 to 12. Mounted off the centre counts only with its direction.",
    "off-blank": "{label}: {given} leaves no round to turn; the rim is {reach} from the middle.",
    "too-wide": "{label}: {given} is wider than the largest round in it, {round}.",
    "beyond": "{label}: {given} is outside the piece, which reaches {rim} from the spindle.",
    "apart": "{label}: {given} is wider than the blank, {sweep}. Both supports stand under it.",
    "more-than-all": "{label}: {given} is more than the blank weighs, {mass}. Zero the scale with its support on, and weigh again.",
    "sum-off": "{label}: with the opposite reading it makes {sum}, and the blank weighs {mass}. Zero the scale, and weigh again.",
    "centre-outside": "{label}: the readings put the centre of mass {found} from the middle, outside the blank. Weigh again.",
    "places": "{label}: the weight belongs at {light}. Choose one place on either side of that, less than half a turn apart.",
}


def work(given: Given) -> Answer | Steps:
    """Answer the question: at once, but for a nest of many whose shifts take their time."""
    if given.choice("way") in ("hung", "swing") and given.choice("spindle") != "free":
        return _held(given)
    case = Case(given)
    steps = _answering(case)
    return steps if case.nested else at_once(steps)


def _answering(case: Case) -> Steps:
    told = moves.stages(case) if case.made else []
    found = (yield from moves.shifts(case)) if case.way == "plan" else []
    shift = found[0] if found and case.weight > 0 else None
    cut = moves.cut_in_balance(case) if case.way in ("plan", "cast") else None
    weights = case.weights
    grids = (words.grid(case, told),) if case.made else ()
    return Answer(
        words.headline(case, shift, cut),
        lines=words.lines(case, shift, cut),
        changes=words.changes(case, found, cut, told),
        band=words.band(case),
        cautions=cautions(case, told, shift, cut),
        working=working(case),
        sources=sources(case),
        grids=grids,
        drawings=(drawing(case, shift if case.matters else None),),
        carries=handed(case),
        values=_values(case, shift, cut),
        extra={"weights": [] if case.hidden else [{"kg": weight, "rad": towards} for weight, towards in weights], "heavy": case.body.heavy},
    )


def _held(given: Given) -> Answer:
    """A spindle that is not free tells nothing."""
    if given.choice("spindle") == "belt":
        head = Headline("First", "Belt off", "", "Slip the belt off its pulley, then try again: the spindle has to turn at a touch.", "stop")
        why = "The belt and the motor hold it still, and hide more than a small weight moves. They brake a swing as well."
    else:
        head = Headline("First", "Off the lathe", "", "Use two supports and a kitchen scale instead, before it is mounted: choose that above.", "stop")
        why = "A motor on the spindle drags and catches: it stands still well out of balance, and swings as its magnets will."
    return Answer(
        head,
        lines=(Line("Or feel for it", "Lowest speed", note="Out of the line of the rim; stop at the first tremble. 'How fast?' takes what you felt."),),
        cautions=(Caution("drive", "stop", f"Why not: {why}"),),
        working=(Working("Free spindle", "U = w r", given.label_of("spindle"), "told by no weight and no swing"),),
        sources=("practice",),
        values={name: figure(None, kind) for name, kind in (("weight", "mass"), ("unbalance", "out of balance"))},
    )


def _values(case: Case, shift: Shift | None, cut: Centre | None) -> dict[str, Figure]:
    """Figures for tests, the shell and other questions."""
    given, body = case.given, case.body

    def long(metres: float | None) -> Figure:
        return figure(None if metres is None else given.write(metres, "length"), "length", metres)

    pull = balance.push(max(weight for weight, _ in case.weights) * case.place, case.speed) / STANDARD_GRAVITY
    return {
        "mass": figure(given.write(body.mass_kg, "mass"), "mass", body.mass_kg),
        "off": long(body.eccentricity_m),
        "off_x": long(body.x / body.mass_kg),
        "off_y": long(body.y / body.mass_kg),
        "unbalance": Figure(body.unbalance, "out of balance", f"{1000 * body.unbalance:.4g} kg·mm at {clock(body.heavy)}"),
        "weight": figure(case.small(case.weight), "mass", case.weight),
        "radius": long(case.place),
        "under": Figure(case.under, "rotational speed", f"{rpm_text(case.under)} rpm"),
        "pull": figure(given.write(pull, "mass", "up"), "mass", pull),
        "shift": long(None if shift is None else shift.far),
        "cut": long(None if cut is None else cut.far),
    }


#: A blank with nothing in it that may contradict it: what the rules below are about.
_PLAIN = {field.name: "" for field in FIELDS} | {"way": "mounted", "blank": "round", "across": "300 mm", "thickness": "50 mm", "resin": "1.15"}
_ROUND = _PLAIN | {"wood1_shape": "round", "wood1_across": "80 mm", "wood1_out": "60 mm", "wood1_by": "density", "wood1_density": "0.7"}
_HALF = _PLAIN | {"wood1_shape": "half", "wood1_by": "density", "wood1_density": "0.7"}
_LET_IN = _PLAIN | {"wood1_shape": "side", "wood1_edge": "-150 mm", "wood1_by": "density", "wood1_density": "0.7", "wood2_in": "wood"}
_LET_IN |= {"wood2_shape": "round", "wood2_across": "40 mm", "wood2_out": "60 mm", "wood2_clock": "9", "wood2_by": "density"}
_HUNG = _PLAIN | {"way": "hung", "sweep": "400 mm", "spindle": "free", "hung": "80 g", "hung_at": "140 mm"}
_SWING = _PLAIN | {"way": "swing", "thickness": "", "spindle": "free", "swings": "yes", "timings": "40", "mass": "5000 g", "across": "400 mm"}
_SCALE = _PLAIN | {"way": "scale", "sweep": "300 mm", "mass": "4000 g", "apart": "250 mm", "at_3": "2100 g", "at_12": "2000 g"}

QUESTION = Question(
    id="where-is-the-weight",
    name="Where is the weight?",
    moment="at the lathe",
    order=12,
    summary="The heavy spot, the weight that balances it, and where to shift the wood or the centre.",
    lead="From the make-up, from two supports and a kitchen scale, or on the free spindle: by a weight hung on, or by how it swings.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="Weight a little inside the rim that balances a disc 50 mm (2 in) thick, half of it wood",
        rows=("across", (("150", "200", "250", "300", "350", "400", "450"), ("6", "8", "10", "12", "14", "16", "18"))),
        columns=("wood1_species", ("maple-bigleaf", "walnut-black", "oak-white", "olive")),
        fixed={"way": "mounted", "wood1_shape": "half", "thickness": ("50 mm", "2 in")},
        cell=lambda answer: answer.values["weight"].shown,
        note="Resin of 1.15 g/mL, wood at 8 % moisture, the weight on the wood's side. Twice the thickness, twice the weight.",
    ),
    rules=(
        Rule("wood1_out", "unbalance", "falls", given=_ROUND, span=(0, 100), why="light wood farther out leaves it farther out of balance"),
        Rule("wood1_density", "unbalance", "rises", given=_HALF, span=(0.3, 1.1), why="wood nearer to the resin's weight leaves it nearer to balance"),
        Rule("wood2_density", "mass", "falls", given=_LET_IN, why="a heavier insert never leaves it lighter"),
        Rule("wood2_depth", "unbalance", "falls", given=_LET_IN | {"wood2_density": "8.5"}, span=(1, 50), why="deeper brass never pulls less to its side"),
        Rule("thickness", "weight", "falls", given=_HALF, why="a thicker blank never wants less"),
        Rule("across", "weight", "falls", given=_HALF | {"at": "50 mm"}, span=(110, 1000), why="a larger blank never wants less at one place"),
        Rule("at", "weight", "rises", given=_HALF, span=(20, 140), why="farther out a smaller weight does"),
        Rule("speed", "pull", "falls", given=_HALF, why="a faster spindle never pulls less at the weight"),
        Rule("lathe_mass", "under", "falls", given=_HALF, why="a heavier lathe never asks for a slower start"),
        Rule("hung", "unbalance", "falls", given=_HUNG, why="a heavier weight balances more"),
        Rule("hung", "under", "rises", given=_HUNG, why="more out of balance never runs faster"),
        Rule("counted", "unbalance", "falls", given=_SWING, span=(3, 20), why="quicker swings are never less out of balance"),
        Rule("mass", "unbalance", "falls", given=_SWING, why="a heavier blank that swings as quickly is never less out of balance"),
        Rule("reach", "unbalance", "falls", given=_SWING, why="a wider swing that is as quick is never less out of balance"),
        Rule("at_3", "off", "falls", given=_SCALE, span=(2000, 3900), why="more on one side is farther from the middle"),
    ),
)
