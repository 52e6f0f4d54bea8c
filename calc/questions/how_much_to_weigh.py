"""How much to weigh? A and B for a batch, split into pours that the scale and the bucket can take; what can be done once they are mixed."""

from __future__ import annotations

from dataclasses import replace

from calc.answers import Answer, Carry, figure
from calc.casting import mixing, weighing
from calc.casting.batch import Job, ScaleFace, Way, face_of
from calc.casting.mixing import Parts
from calc.casting.mixing import Ratio as Proportion
from calc.casting.standards import standard
from calc.errors import InputError
from calc.fields import Choice, Option, measure
from calc.quantity.reading import read
from calc.quantity.writing import Style
from calc.questions import Given, Question, Rule, Table
from calc.questions._how_much import words
from calc.questions._how_much.mixed import added, fresh
from calc.questions._how_much.plan import Plan
from calc.questions._how_much.scales import Pair
from calc.questions._how_much.working import working
from calc.several import Ratio

_BY_WEIGHT = (("by", ("weight",)),)
_BY_VOLUME = (("by", ("volume",)),)
_KIT = ("how", ("kit",))
_WEIGHED = (("how", ("pour", "decant")),)
_HOW, _INSIDE, _RESIN, _PAIR = "How it is weighed", "In the bucket already", "Bucket, resin and sheet", "A second scale, the same thing on both"

#: So many pours go on to the colour question; more of them are equal anyway.
_TO_COLOUR = 20

FIELDS = (
    Choice(
        name="known",
        label="What I know is",
        options=(Option("weight", "the weight"), Option("volume", "the volume")),
        default="weight",
    ),
    measure("total", "Mixed resin wanted", "g", 1, 200_000, usual=(20, 50_000), hint="A and B together.", when=(("known", ("weight",)),)),
    measure("volume", "Volume of mixed resin wanted", "mL", 1, 200_000, usual=(20, 50_000), hint="A and B together.", when=(("known", ("volume",)),)),
    Ratio(name="ratio", label="Ratio A:B", hint="A first, as on the label: 100:45 or 2:1."),
    Choice(
        name="by",
        label="The label gives that ratio",
        hint="The two differ. The label says which.",
        options=(Option("weight", "by weight"), Option("volume", "by volume")),
    ),
    measure(
        "density_a", "Density of A", "g/mL", 0.7, 2.5,
        usual=(0.85, 1.6), hint="From the data sheet: a ratio by volume needs both to be weighed.", when=_BY_VOLUME,
    ),
    measure("density_b", "Density of B", "g/mL", 0.7, 2.5, usual=(0.85, 1.6), hint="From the data sheet.", when=_BY_VOLUME),
    measure(
        "capacity", "The scale weighs up to", "g", 50, 300_000,
        usual=(200, 150_000), default=(f"{standard('scale capacity') * 1000:g}", "11 lb"), basis="practice",
    ),
    measure("step", "The scale shows steps of", "g", 0.001, 500, usual=(0.01, 50), default=(f"{standard('scale step'):g}", "0.1"), basis="practice"),
    measure("bucket", "Mixing bucket, full to the brim", "L", 0.05, 200, usual=(0.1, 60), required=False),
    Choice(
        name="how",
        label="How it is weighed",
        options=(
            Option("pour", "Into the bucket, on the scale"),
            Option("decant", "Out of the jug, on the scale", "The jug stands on the scale and its figure falls."),
            Option("kit", "Whole kits, both jugs tipped in", "Checked by what the emptied jugs weigh."),
        ),
        default="pour",
        fold=True,
        group=_HOW,
    ),
    measure(
        "empty", "Empty bucket weighs", "g", 1, 20_000,
        usual=(5, 5_000), hint="Weighed and written down, it saves the batch when the scale switches itself off.",
        default=(f"{standard('empty bucket'):g}", "9"), basis="judgement", fold=True, group=_HOW, when=(("how", ("pour",)),),
    ),
    measure(
        "jug", "Fullest jug weighs", "g", 10, 300_000,
        hint="It has to stand on the scale.", required=False, fold=True, group=_HOW, when=(("how", ("decant", "kit")),),
    ),
    measure("kit_a", "A in one kit", "g", 10, 300_000, hint="From the label.", fold=True, group=_HOW, when=(_KIT, *_BY_WEIGHT)),
    measure("kit_b", "B in one kit", "g", 5, 300_000, fold=True, group=_HOW, when=(_KIT, *_BY_WEIGHT)),
    measure("kit_a_volume", "A in one kit", "L", 0.01, 300, hint="From the label.", fold=True, group=_HOW, when=(_KIT, *_BY_VOLUME)),
    measure("kit_b_volume", "B in one kit", "L", 0.005, 300, fold=True, group=_HOW, when=(_KIT, *_BY_VOLUME)),
    measure(
        "in_a", "A already in the bucket", "g", 0, 200_000,
        hint="Poured too much? Type what is in it.", required=False, fold=True, group=_INSIDE, when=_WEIGHED,
    ),
    measure("in_b", "B already in the bucket", "g", 0, 200_000, required=False, fold=True, group=_INSIDE, when=_WEIGHED),
    Choice(
        name="mixed",
        label="They are",
        options=(
            Option("apart", "Not stirred yet"),
            Option("cool", "Mixed, thin and cool"),
            Option("warm", "Mixed, thick or warm"),
        ),
        default="apart",
        fold=True,
        group=_INSIDE,
        when=_WEIGHED,
    ),
    measure(
        "fill", "Fill the bucket to", "%", 10, 100,
        hint="Room to stir without spilling.", default=f"{standard('bucket fill') * 100:g}", basis="practice", fold=True, group=_RESIN,
    ),
    measure(
        "density", "Density of the mixed resin", "g/mL", 0.7, 2.5,
        usual=(0.95, 1.6), hint="The label's figure is better.",
        default=f"{standard('density usual'):.2f}", basis="practice", fold=True, group=_RESIN, when=_BY_WEIGHT,
    ),
    measure(
        "tolerance", "The sheet lets the ratio be off by", "%", 0.1, 20,
        usual=(0.5, 10), hint="Where the sheet is silent: 2 %, and 5 % at the very worst.", required=False, fold=True, group=_RESIN,
    ),
    measure(
        "working", "Working time on the sheet", "min", 2, 1_440,
        usual=(5, 600), hint="Or pot life, as printed. A full bucket has less: the clock counts that.", required=False, fold=True, group=_RESIN,
    ),
    measure(
        "room", "Shop and bottles", "°C", 5, 40,
        usual=(10, 33), hint="For the clock: warm resin has less time.", default=("23", "73"), basis="judgement", fold=True, group=_RESIN,
    ),
    measure(
        "mixing", "Mixing time on the sheet", "min", 0.5, 60,
        usual=(1, 20), hint="Where the sheet is silent: 3 to 5 min by hand (common practice).", required=False, fold=True, group=_RESIN,
    ),
    measure(
        "this_scale", "This scale shows", "g", 1, 300_000,
        hint="Of about a batch's weight.", required=False, fold=True, group=_PAIR,
    ),
    measure("other_scale", "The other scale shows", "g", 1, 300_000, required=False, fold=True, group=_PAIR),
    measure("other_step", "The other shows steps of", "g", 0.001, 500, hint="Empty: the same steps.", required=False, fold=True, group=_PAIR),
)


def work(given: Given) -> Answer:
    """Answer the question; a stop leads with what would make it possible."""
    job = job_of(given)
    jug = given.maybe("jug")
    if jug is not None and jug > job.capacity:
        raise InputError("jug", "heavy-jug", given=str(job.face.show(jug)))
    pair = Pair.of(given, job)
    if not job.weighable:
        return words.no_room(given, job)
    if job.mixed:
        return _mixed(given, job, pair)
    pours = job.pours()
    if job.way != "kit" and job.in_a and not job.in_b and pours[0].total > job.net * (1 + 1e-9):
        planned = replace(job, in_a=0.0).pours()
        return _answer(Plan(given, job, planned, take_out=job.in_a - planned[0].a), pair)
    return _answer(Plan(given, job, pours), pair)


def job_of(given: Given) -> Job:
    """The job in SI, from the fields; also what the step-by-step run goes by.

    Examples
    --------
    >>> from calc.fields import Typed
    >>> inputs = {"total": "2600", "ratio": "100:45", "by": "weight", "bucket": "1.5", "capacity": "2000", "empty": "60"}
    >>> given, _ = QUESTION.parse({name: Typed(text) for name, text in inputs.items()}, "metric", {})
    >>> len(job_of(given).pours())
    2
    """
    a, b = given.ratio("ratio")
    if given.choice("by") == "volume":
        density_a, density_b = given.si("density_a"), given.si("density_b")
        ratio = mixing.ratio_by_weight(a, b, density_a, density_b)
        density = mixing.mixed_density(ratio, density_a, density_b)
    else:
        ratio, density = Proportion(a, b), given.si("density")
    total = given.si("total") if given.choice("known") == "weight" else given.si("volume") * density
    way = _way(given)
    capacity = given.si("capacity")
    sheet = given.maybe("tolerance")
    return Job(
        total=total,
        ratio=ratio,
        face=_face(given),
        step=given.si("step"),
        capacity=capacity,
        limit=weighing.pour_limit(
            scale_capacity=capacity if way == "pour" else None,
            empty_bucket=given.si("empty") if way == "pour" else 0.0,
            bucket_volume=given.maybe("bucket"),
            fill_share=given.si("fill"),
            density=density,
        ),
        density=density,
        good=standard("ratio good") if sheet is None else sheet,
        worst=standard("ratio worst") if sheet is None else sheet,
        tolerance_from_sheet=sheet is not None,
        way=way,
        in_a=given.maybe("in_a") or 0.0,
        in_b=given.maybe("in_b") or 0.0,
        mixed=_is_mixed(given),
        empty=given.si("empty") if given.typed("empty") else None,
        working=given.maybe("working"),
        mixing=given.maybe("mixing"),
        room=given.si("room"),
        kit=_kit(given),
    )


def _mixed(given: Given, job: Job, pair: Pair | None) -> Answer:
    """A and B are mixed already: what is short is added while it is thin and cool; later, only a fresh batch helps."""
    plain = replace(job, in_a=0.0, in_b=0.0, mixed=False)
    if given.choice("mixed") == "warm":
        return fresh(_answer(Plan(given, plain, plain.pours()), pair), job, given)
    return added(_answer(Plan(given, job, job.pours()), pair), job, given)


def _answer(plan: Plan, pair: Pair | None = None) -> Answer:
    job = plan.job
    return Answer(
        headline=words.headline(plan),
        lines=(*words.lines(plan), *(pair.lines(plan.first.b) if pair else ())),
        limits=words.limits(plan),
        changes=words.changes(plan),
        band=words.band(plan),
        cautions=(*words.cautions(plan), *(pair.cautions() if pair else ())),
        working=(*working(plan), *(pair.working() if pair else ())),
        sources=_sources(plan),
        carries=_carries(plan),
        values={
            "a": figure(plan.mass(plan.first.a), "mass", plan.first.a),
            "b": figure(plan.mass(plan.first.b), "mass", plan.first.b),
            "total": figure(plan.mass(plan.poured), "mass", plan.poured),
            "pours": figure(plan.given.write(len(plan.pours), "count"), "count"),
            "limit": figure(None if job.limit.rules == "" else plan.mass(job.net), "mass", job.net if job.limit.rules else None),
            "smallest_batch": figure(plan.least_shown(), "mass", plan.least),
            "ratio_held": figure(plan.given.write(plan.hold, "share"), "share", plan.hold),
            "b_per_100_a": figure(plan.given.write(100 * job.ratio.b_per_a, ("count", Style("", step=0.1))), "count"),
            "mixed_density": figure(plan.given.write(job.density, "density"), "density", job.density),
        },
        extra={
            "batch_kg": max(pour.total for pour in plan.pours),
            "ratio_by": plan.given.choice("by"),
            "ratio_held": plan.hold,
            "ratio_tolerance": job.good if job.tolerance_from_sheet else None,
            "within_s": plan.within,
        },
    )


def _sources(plan: Plan) -> tuple[str, ...]:
    keys = ["arithmetic", "gum"]
    if not plan.job.tolerance_from_sheet:
        keys.append("resin-makers")
    return (*keys, "judgement")


def _carries(plan: Plan) -> tuple[Carry, ...]:
    """The resin to how much of it may be poured at a time; the largest bucket to the gates; the pours as batches to colour.

    What cannot be weighed goes no further than the first, and more pours than it takes not to the colour.
    """
    job, given = plan.job, plan.given
    ratio = given.text("ratio") if given.choice("by") == "weight" else f"100:{100 * job.ratio.b_per_a:.1f}"
    known = given.typed("density") or given.choice("by") == "volume"
    density = {"density": str(given.write(job.density, "density"))} if known else {}
    pot_life = {"pot_life": given.as_typed("working")} if given.typed("working") else {}
    layers = Carry("how-deep-how-hot", {"ratio": ratio} | density | pot_life)
    if plan.too_big or plan.grade == "red":
        return (layers,)
    batch = str(plan.mass(max(pour.total for pour in plan.pours)))
    sheet = {name: given.as_typed(name) for name in ("working", "tolerance", "room") if given.typed(name)}
    gates = {"mass": batch, "ratio": ratio, "ratio_by": "same" if given.choice("by") == "weight" else "densities"} | density | sheet
    lists = (Carry("before-a-pour", gates), Carry("pot-or-vacuum", {"batch": batch} | {name: text for name, text in sheet.items() if name == "working"}))
    if len(plan.pours) > _TO_COLOUR:
        return (layers, *lists)
    return (layers, *lists, Carry("what-colour-dose", {"batches": ", ".join(str(plan.mass(pour.total)) for pour in plan.pours)}),)


def _cell(answer: Answer) -> str:
    """``334 + 167``, A first, how many times, and whether the scale holds the ratio only roughly."""
    if answer.headline.tone == "stop":
        return "needs a finer scale"
    pours, a, b = answer.values["pours"].si or 0, answer.values["a"], answer.values["b"]
    rough = ", roughly" if any(caution.id == "coarse-scale" for caution in answer.cautions) else ""
    return " + ".join(one.shown.split()[0] for one in (a, b)) + ("" if pours == 1 else f", {pours:.0f} times") + rough


def _is_mixed(given: Given) -> bool:
    """Whether A and B have been stirred together; both weights are needed then.

    Raises
    ------
    InputError
        ``mixed-weight``.
    """
    if given.words("mixed") not in ("cool", "warm"):
        return False
    for name in ("in_a", "in_b"):
        if not given.maybe(name):
            raise InputError(name, "mixed-weight")
    return True


def _way(given: Given) -> Way:
    chosen = given.choice("how")
    return "decant" if chosen == "decant" else "kit" if chosen == "kit" else "pour"


def _face(given: Given) -> ScaleFace:
    """A unit written after the step is the scale's own; else the page's system says it."""
    unit = given.pick("g", "oz")
    return face_of(given.si("step"), read("step", given.text("step"), "mass", unit).unit)


def _kit(given: Given) -> Parts | None:
    if given.choice("how") != "kit":
        return None
    if given.choice("by") == "weight":
        return Parts(given.si("kit_a"), given.si("kit_b"))
    return Parts(
        given.si("kit_a_volume") * given.si("density_a"),
        given.si("kit_b_volume") * given.si("density_b"),
    )


#: A plain weighing into an empty bucket: what the rules below are about.
_POURED = {"known": "weight", "total": "2600 g", "by": "weight", "how": "pour", "in_a": "0", "in_b": "0", "mixed": "apart", "this_scale": ""}
#: Mixed, and B short of or over the 450 g it should be.
_MIXED = _POURED | {"ratio": "100:45", "in_a": "1000 g", "mixed": "cool", "tolerance": "", "step": "1 g", "capacity": "5 kg"}

QUESTION = Question(
    id="how-much-to-weigh",
    name="How much to weigh?",
    moment="at the bench",
    order=20,
    summary="A and B for a batch, split to fit the scale and the bucket.",
    lead="How much of A and of B to weigh, in how many pours, and whether this scale is good enough for it.",
    fields=FIELDS,
    work=work,
    words={
        "mixed-weight": "Enter {label_lower}, more than 0: mixed means that both are in. Or choose 'not stirred yet'.",
        "one-scale": "Enter {label_lower} too: it takes what both scales show of the same thing.",
        "heavy-jug": "{label}: {given} is more than the scale weighs. Use a bigger scale, or weigh into the bucket.",
    },
    table=Table(
        caption="A + B to weigh, for a ratio by weight",
        rows=("total", (("100", "250", "500", "1000", "2000", "4000"), ("8", "16", "32", "64", "128", "160"))),
        columns=("ratio", ("1:1", "2:1", "100:45", "100:30")),
        fixed={"by": "weight", "capacity": ("5000", "11 lb"), "step": ("1", "0.1")},
        cell=_cell,
        note="On a scale that weighs 5 kg in 1 g steps (11 lb in 0.1 oz). A goes up to the next step. The label's ratio must be by weight. "
        "Roughly: finer steps would hold it better.",
    ),
    rules=(
        Rule("total", "pours", "falls", given=_POURED, refusal=1e9, why="more resin never needs fewer pours"),
        Rule("capacity", "pours", "rises", given=_POURED, refusal=1e9, why="a scale that weighs more never needs more pours"),
        Rule("bucket", "pours", "rises", given=_POURED, refusal=1e9, why="a bigger bucket never needs more pours"),
        Rule("empty", "pours", "falls", given=_POURED, refusal=1e9, why="a heavier bucket never needs fewer pours"),
        Rule("step", "smallest_batch", "falls", given=_POURED, refusal=1e9, why="coarser steps never allow a smaller batch"),
        Rule("in_b", "ratio_error", "falls", given=_MIXED, span=(100, 900), why="more B in the bucket is never less over its ratio"),
        Rule("in_b", "add_b", "rises", given=_MIXED, span=(100, 900), why="the more B is in, the less is to be added"),
        Rule("in_b", "add_a", "falls", given=_MIXED, span=(100, 900), why="the more B is in, the more A it wants"),
        Rule("tolerance", "smallest_batch", "rises", given=_POURED, refusal=1e9, why="a wider tolerance never asks for a bigger batch"),
    ),
)
