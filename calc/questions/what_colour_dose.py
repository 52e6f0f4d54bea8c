"""What colour dose? From an effect, a colour that was right, or a bucket being tinted, to grams for every batch of the piece."""

from __future__ import annotations

from functools import partial

from calc.answers import Answer
from calc.casting import colour
from calc.casting.standards import standard
from calc.fields import Choice, Field, Option, Text, measure
from calc.questions import Given, Question, Rule, Table
from calc.questions._what_colour_dose.answer import answer
from calc.questions._what_colour_dose.case import WATER, Case
from calc.questions._what_colour_dose.refusals import refusal
from calc.several import Series

When = tuple[tuple[str, tuple[str, ...]], ...]

_EFFECT: When = (("way", ("effect",)),)
_REPEAT: When = (("way", ("repeat",)),)
_TINTING: When = (("way", ("tinting",)),)
_PLANNED: When = (("way", ("effect", "repeat")),)
_WEIGHTS: When = (*_REPEAT, ("was", ("weights",)))
_SHARE: When = (*_REPEAT, ("was", ("share",)))
_BY_WEIGHT: When = (*_TINTING, ("ledger", ("weighed",)))
_BY_BOTTLE: When = (*_TINTING, ("ledger", ("bottle",)))
_BY_DROPS: When = (*_TINTING, ("ledger", ("drops",)))
_ORDINAL = {1: "First colour", 2: "Second colour", 3: "Third colour"}

_resin_list = partial(Series, kind="mass", units=("g", "oz"), low=1, high=200_000, usual=(20, 50_000), fewest=1, most=20)
_of_colour = partial(measure, unit="g", low=0.001, high=20_000, usual=(0.01, 2000))


def _fields_of(n: int) -> tuple[Field, ...]:
    """What is asked of one colour."""
    more: When = () if n == 1 else (("colours", ("2", "3") if n == 2 else ("3",)),)

    def label(text: str) -> str:
        return text if n == 1 else f"Colour {n}: {text[0].lower()}{text[1:]}"

    return (
        Choice(name=f"kind_{n}", label=label("Kind of colour"), options=KINDS, when=more),
        Choice(name=f"effect_{n}", label=label("Effect wanted"), options=EFFECTS, when=(*more, *_EFFECT)),
        _of_colour(f"was_{n}", label("Colour that was in it"), when=(*more, *_WEIGHTS)),
        measure(
            f"share_{n}", label("Share that was right"), "%", 0.001, 50,
            usual=(0.005, 20), hint="Of the mixed resin, by weight.", when=(*more, *_SHARE),
        ),
        Series(
            name=f"added_{n}", label=label("What went in so far"), hint=("One by one: 4 2 1.5.", "One by one: 0.15 0.07 0.05."), kind="mass", units=("g", "oz"),
            low=0, high=20_000, usual=(0, 2000), fewest=1, most=30, when=(*more, *_BY_WEIGHT),
        ),
        _of_colour(f"before_{n}", label("Bottle or stick before"), when=(*more, *_BY_BOTTLE)),
        _of_colour(f"after_{n}", label("Bottle or stick now"), when=(*more, *_BY_BOTTLE)),
        Series(
            name=f"drops_{n}", label=label("Drops so far"), hint="One by one: 10 5 5.", kind="count", units=("", ""),
            low=0, high=2000, usual=(0, 400), fewest=1, most=30, when=(*more, *_BY_DROPS),
        ),
        measure(
            f"jar_{n}", label("In the jar"), "g", 0, 50_000,
            usual=(0, 5000), hint="What is left in it now. Empty: not checked.", required=False, when=more,
        ),
    )  # fmt: skip


def _folded_of(n: int) -> tuple[Field, ...]:
    """What may be said of one colour besides."""
    more: When = () if n == 1 else (("colours", ("2", "3") if n == 2 else ("3",)),)
    return (
        Text(name=f"name_{n}", label="Its name", hint="Blue, say.", most=24, required=False, fold=True, group=_ORDINAL[n], when=more),
        measure(
            f"most_{n}", "Label's most", "%", 0.01, 50,
            usual=(0.05, 25), hint="Of the mixed resin. It overrules ours.", required=False, fold=True, group=_ORDINAL[n], when=more,
        ),
        measure(
            f"strength_{n}", "Pre-mix, colour in it", "%", 0.1, 90,
            usual=(0.5, 60), hint="Stirred into part A beforehand.", required=False, fold=True, group=_ORDINAL[n], when=more,
        ),
    )  # fmt: skip


KINDS = (
    *(Option(kind.id, kind.name) for kind in colour.kinds().values()),
    Option(WATER, "Water-based", "Food colour, poster or acrylic paint."),
)
EFFECTS = (
    Option("tint", "A tint", "A breath of colour, clear."),
    Option("translucent", "Translucent", "Light comes through, wood shows."),
    Option("opaque", "Opaque"),
    Option("pearl", "Pearl"),
    Option("metal", "Metallic"),
    Option("glow", "Glow in the dark"),
)

FIELDS: tuple[Field, ...] = (
    Choice(
        name="way",
        label="What you have",
        options=(
            Option("effect", "An effect in mind"),
            Option("repeat", "A colour that was right", "For another batch, or another depth."),
            Option("tinting", "A bucket being tinted", "What went in so far."),
        ),
        default="effect",
    ),
    _resin_list(
        name="batches", label="Mixed resin, batch by batch",
        hint=("Every batch of the piece: 900 900 400.", "Every batch of the piece: 32 32 14."), when=_PLANNED,
    ),
    measure("tinted", "Mixed resin in this bucket", "g", 1, 200_000, usual=(20, 50_000), hint="Without the colour.", when=_TINTING),
    _resin_list(name="rest", label="Batches still to come", hint=("All of the piece: 900 400.", "All of the piece: 32 14."), required=False, when=_TINTING),
    Choice(
        name="was",
        label="You wrote down",
        options=(Option("weights", "Its weights"), Option("share", "Its share")),
        default="weights",
        when=_REPEAT,
    ),
    measure("was_resin", "Mixed resin it went into", "g", 1, 200_000, usual=(10, 50_000), hint="Without the colour.", when=_WEIGHTS),
    Choice(
        name="ledger",
        label="You know it by",
        options=(
            Option("weighed", "Each addition weighed"),
            Option("bottle", "The bottle or stick, before and now"),
            Option("drops", "Drops counted"),
        ),
        default="weighed",
        when=_TINTING,
    ),
    Choice(name="colours", label="How many colours", options=(Option("1", "One"), Option("2", "Two"), Option("3", "Three")), default="1"),
    *(field for n in (1, 2, 3) for field in _fields_of(n)),
    measure("depth", "Finished thickness", "mm", 0.2, 1000, usual=(1, 300), hint="Of the resin that one looks through.", required=False),
    measure("was_depth", "The sample was this thick", "mm", 0.2, 1000, usual=(1, 300), hint="Looked through.", required=False, when=_REPEAT),
    measure(
        "step", "Scale for the colour, steps of", "g", 0.0001, 50,
        usual=(0.001, 5), default=(f"{standard('scale step'):g}", "0.1"), basis="practice",
    ),
    *(field for n in (1, 2, 3) for field in _folded_of(n)),
    measure(
        "part", "Colour only this much of each", "%", 1, 100, hint="Of each batch; the rest stays clear. Empty: all of it.",
        required=False, fold=True, group="Doses and depth", when=_PLANNED,
    ),
    measure(
        "drops_50", "50 drops weigh", "g", 0.1, 50,
        usual=(0.5, 10), hint=("From this bottle. Empty: 2.5 g, like water.", "From this bottle. Empty: 0.088 oz, like water."),
        required=False, fold=True, group="Doses and depth",
    ),
    measure(
        "tolerance", "A dose may be off by", "%", 0.5, 50,
        usual=(1, 25), default=f"{100 * colour.standard('tolerance'):g}", basis="judgement", fold=True, group="Doses and depth",
    ),
    measure(
        "bucket_depth", "Resin stands in the bucket", "mm", 1, 1000,
        usual=(10, 500), hint="How much stronger it looks in there.", required=False, fold=True, group="Doses and depth",
    ),
)  # fmt: skip

WORDS = {
    "more-colour": "{label}: {given} is more colour than the {resin} of resin. Look at the unit.",
    "heavier-now": "{label}: {given} is more than the {before} before. Something was put back, or the two are the wrong way round.",
    "nothing-in": "{label}: nothing went in yet. Enter the first addition when it is in.",
    "weak-premix": "{label}: {given} is too weak. It would take {stock} of it, more than half of a batch of {resin}. From {least} it fits.",
}


def work(given: Given) -> Answer:
    """Answer the question.

    Parameters
    ----------
    given : the parsed fields of :data:`QUESTION`.

    Returns
    -------
    Answer
        ``values``, of the first colour where there are several: ``share`` (of the mixed resin), ``dose`` (kg, first batch), ``need``
        (kg, all batches to come), ``least`` (kg this scale weighs well), ``load`` (part of the caution lines used up, all colours) and
        ``stops`` (count); a kind that cannot give the effect has ``stops`` alone.

    Raises
    ------
    InputError
        ``more-colour``, ``heavier-now``, ``nothing-in`` or ``weak-premix``.
    """
    return refusal(given) or answer(Case(given))


_PASTE = {"way": "effect", "colours": "1", "kind_1": "paste", "effect_1": "translucent", "most_1": "", "strength_1": ""}
_DYE = _PASTE | {"kind_1": "dye"}
_AGAIN = {"way": "repeat", "was": "weights", "colours": "1", "kind_1": "paste", "strength_1": "", "batches": "900 g", "was_resin": "900 g", "was_1": "12 g"}
_LEDGER = {"way": "tinting", "ledger": "weighed", "colours": "1", "kind_1": "paste", "strength_1": "", "tinted": "900 g", "added_1": "6 3 2 g", "rest": "900 g"}

QUESTION = Question(
    id="what-colour-dose",
    name="What colour dose?",
    moment="at the bench",
    order=22,
    summary="Grams of colour for every batch of the piece, and whether the jar holds it.",
    lead="From an effect, from a colour that was right, or while you tint: the same share of colour in every batch, and how to weigh very little.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="Where to start, share of the mixed resin by weight",
        rows=("effect_1", ("tint", "translucent", "opaque", "pearl", "metal", "glow")),
        columns=("kind_1", tuple(colour.kinds())),
        fixed={"way": "effect", "batches": ("1000", "32"), "step": ("0.01", "0.001"), "tolerance": "50"},
        cell=lambda found: found.values["share"].shown if "share" in found.values else "another kind",
        note="Low on purpose, our judgement: pigments differ several times over, and the label rules. Clear dye as seen through 50 mm (2 in).",
    ),
    rules=(
        Rule("batches", "need", "falls", given=_PASTE, why="more resin never takes less colour"),
        Rule("part", "need", "falls", given=_PASTE, why="a larger part of the resin never takes less colour"),
        Rule("effect_1", "share", "falls", order=("tint", "translucent", "opaque"), given=_PASTE, why="covering more never starts lower"),
        Rule("depth", "share", "rises", given=_DYE, why="a clear dye in thicker resin never starts higher"),
        Rule("step", "least", "falls", given=_PASTE, why="coarser steps never weigh a smaller dose"),
        Rule("jar_1", "stops", "rises", given=_PASTE, why="a fuller jar never adds a stop"),
        Rule("was_1", "need", "falls", given=_AGAIN, span=(0.5, 500), why="a stronger sample never takes less"),
        Rule("was_resin", "need", "rises", given=_AGAIN, span=(50, 50_000), why="the same colour in more resin was paler"),
        Rule("was_depth", "share", "falls", given=_AGAIN | {"kind_1": "dye", "depth": "25 mm"}, why="a colour right at more depth never needs less"),
        Rule("most_1", "stops", "rises", given=_AGAIN, why="a label that allows more never adds a stop"),
        Rule("tinted", "share", "rises", given=_LEDGER, span=(50, 50_000), why="the same colour in more resin is paler"),
        Rule("tinted", "stops", "rises", given=_LEDGER, span=(50, 50_000), why="more resin in the bucket never adds a stop"),
    ),
)
