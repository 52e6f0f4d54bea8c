"""Will it stand? What tips a stacked or footed piece, what its joints and columns bear, and what heat its resin takes."""

from __future__ import annotations

from calc.answers import Answer
from calc.casting.standards import standard as mixing
from calc.fields import NO, YES, Choice, Field, Option, Quantity, measure
from calc.questions import Given, Question, Rule, Table
from calc.questions._will_it_stand.words import answer, place_hint
from calc.several import Series
from calc.turning.bearing import places

_FOOT, _WEIGHT, _TOP, _JOINTS, _HEAT = "The foot", "Its weight", "On top", "Joints", "Heat"
_CARRIES = ("carries", ("yes",))
_JOINED = ("joint", ("dowel", "tenon"))

FIELDS: tuple[Field, ...] = (
    Series(
        name="heights", label="Heights of its parts", kind="length", units=("mm", "in"), low=1, high=2500, usual=(5, 1500), accepts=("mm", "cm", "in"),
        fewest=1, most=12,
        hint=("Bottom first: 30 220 40. One figure if it is all one.", "Bottom first: 1 1/4, 8 5/8, 1 1/2. One figure if it is all one."),
    ),
    Series(
        name="widths", label="Widths of its parts", kind="length", units=("mm", "in"), low=2, high=2500, usual=(10, 1200), accepts=("mm", "cm", "in"),
        fewest=1, most=12, hint=("In the same order: 140 50 180", "In the same order: 5 1/2, 2, 7"),
    ),
    Choice(
        name="foot",
        label="It stands on",
        options=(
            Option("round", "A round foot"),
            Option("ring", "A foot ring"),
            Option("square", "A square foot"),
            Option("three", "Three feet"),
            Option("four", "Four feet"),
        ),
        default="round",
    ),
    Choice(
        name="place",
        label="Where it will be",
        options=(
            *(Option(name, place.label, place_hint(name)) for name, place in places().items()),
            Option("own", "I know how warm it gets"),
        ),
        default="room",
    ),
    measure("place_temp", "How warm it gets", "°C", -40, 400, usual=(10, 250), when=(("place", ("own",)),)),
    measure("soft", "Its resin softens at", "°C", 10, 250, usual=(20, 150), hint="Tg or heat resistance of the sheet. Empty: a guess.", required=False),
    # the foot
    measure(
        "foot_across", "Foot is wide", "mm", 2, 2500, usual=(10, 1200), hint="Feet: the circle they stand on. Empty: as the lowest part.",
        required=False, fold=True, group=_FOOT,
    ),
    Quantity(
        name="tilt", label="Tilt it should stand, degrees", kind="count", units=("", ""), low=1, high=45, usual=(3, 30), default="10",
        basis="iec-60335-1", fold=True, group=_FOOT,
    ),
    measure(
        "off", "Heavy side, off the middle", "mm", 0, 500, usual=(0, 100), hint="Middle of its weight to the middle of the foot.",
        default=("0", "0"), basis="judgement", fold=True, group=_FOOT,
    ),
    # its weight
    Series(
        name="masses", label="What each part weighs", kind="mass", units=("kg", "lb"), low=0.005, high=500, usual=(0.01, 200), accepts=("kg", "g", "lb", "oz"),
        fewest=1, most=12, hint="In the same order. Empty: by size.", required=False, fold=True, group=_WEIGHT,
    ),
    measure(
        "density", "Density", "g/mL", 0.1, 12, usual=(0.35, 1.6), hint="Resin about 1.1, wood 0.4 to 1.", default=f"{mixing('density usual'):.2f}",
        basis="practice", fold=True, group=_WEIGHT,
    ),
    Choice(
        name="section", label="Its parts are", options=(Option("round", "Round"), Option("square", "Square")), default="round",
        fold=True, group=_WEIGHT,
    ),
    # on top
    Choice(name="carries", label="It carries something", options=(NO, YES), default="no", fold=True, group=_TOP),
    measure("load", "That weighs", "kg", 0.01, 500, usual=(0.05, 150), fold=True, group=_TOP, when=(_CARRIES,)),
    measure(
        "load_high", "Its middle, over the top", "mm", 0, 2000, usual=(0, 500), default=("50", "2"), basis="judgement",
        fold=True, group=_TOP, when=(_CARRIES,),
    ),
    measure(
        "load_off", "It may stand off the middle by", "mm", 0, 1000, usual=(0, 400), default=("0", "0"), basis="judgement",
        fold=True, group=_TOP, when=(_CARRIES,),
    ),
    # joints
    Choice(
        name="joint",
        label="Parts joined by",
        options=(Option("none", "Not asked"), Option("dowel", "A dowel", "hardwood, grain lengthwise"), Option("tenon", "A turned tenon")),
        default="none",
        fold=True, group=_JOINTS,
    ),
    measure("peg", "Dowel or tenon, across", "mm", 2, 300, usual=(5, 120), fold=True, group=_JOINTS, when=(_JOINED,)),
    measure("socket", "Sockets are deep", "mm", 2, 500, usual=(4, 120), required=False, fold=True, group=_JOINTS, when=(_JOINED,)),
    Choice(
        name="peg_of",
        label="The tenon is of",
        options=(
            Option("hardwood", "Hardwood, across its grain"),
            Option("softwood", "Soft wood, across its grain"),
            Option("resin", "Resin"),
            Option("bond", "Resin and wood, the bond in it"),
        ),
        default="bond", basis="judgement",
        fold=True, group=_JOINTS, when=(("joint", ("tenon",)),),
    ),
    # heat
    Choice(
        name="warmed", label="Cured warm, as its sheet says", options=(NO, YES), default="no", basis="judgement",
        fold=True, group=_HEAT,
    ),
    measure(
        "shop", "Shop while it cured", "°C", 0, 50, usual=(10, 35), default=("20", "68"), basis="practice",
        fold=True, group=_HEAT, when=(("warmed", ("no",)),),
    ),
)

WORDS = {
    "counts": "{label}: {count} came for {parts} parts, read as {read}. One figure for each, in the same order, a space between.",
    "outside": "{label}: {given} is outside the piece, which reaches {half} from its middle.",
    "deep-socket": "{label}: {given} goes through the tallest part, {height}.",
    "thick-peg": "{label}: {given} leaves no socket in a part {width} wide.",
}


def work(given: Given) -> Answer:
    """Whether it stands.

    Parameters
    ----------
    given : the parsed fields of :data:`QUESTION`.

    Returns
    -------
    Answer
        ``values``: ``tilt`` and ``least_tilt`` (rad), ``foot`` and ``height`` (m), ``mass``, ``push`` and ``rim_load`` (kg), ``heat_spare`` (K),
        ``joint`` (times over).

    Raises
    ------
    InputError
        with one of :data:`WORDS`.
    """
    return answer(given)


_STACK = {"heights": "30 220 40", "widths": "140 50 180", "masses": "", "off": "0 mm", "foot": "round", "place": "room", "load_off": "0 mm", "peg": "20 mm"}
_BARE = _STACK | {"carries": "no"}
_LOADED = _STACK | {"carries": "yes", "load": "2 kg"}
_PEG = _BARE | {"joint": "dowel"}

QUESTION = Question(
    id="will-it-stand",
    name="Will it stand?",
    moment="at the lathe",
    order=36,
    summary="What tips a stacked or footed piece, what it bears, and what heat it takes.",
    lead="The foot it needs, the push and the load that tip it, and where it must not stand.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="Tilt that a plain column stands, by its height and its foot",
        rows=("heights", (("100", "200", "300", "400", "600"), ("4", "8", "12", "16", "24"))),
        columns=("foot_across", (("60", "90", "120", "180"), ("2 1/2", "3 1/2", "4 3/4", "7"))),
        fixed={"widths": ("60", "2 1/2")},
        cell=lambda answer: answer.values["tilt"].shown,
        note="Alike from top to bottom. With a heavy top it tips sooner: 10 degrees is the least to aim for.",
    ),
    rules=(
        Rule("foot_across", "tilt", "falls", given=_STACK, why="a wider foot never tips sooner"),
        Rule("foot", "tilt", "falls", order=("three", "four", "round"), given=_STACK, why="more feet never tip sooner"),
        Rule("off", "tilt", "rises", given=_BARE, span=(0, 80), why="a heavier side never stands further"),
        Rule("off", "foot", "falls", given=_BARE, span=(0, 80), why="a heavier side never needs a smaller foot"),
        Rule("load", "tilt", "rises", given=_LOADED, why="a heavier load on top never stands further"),
        Rule("load_high", "tilt", "rises", given=_LOADED, why="a higher load never stands further"),
        Rule("load_off", "tilt", "rises", given=_LOADED, span=(0, 90), why="a load to one side never stands further"),
        Rule("tilt", "foot", "falls", given=_STACK, why="more tilt never needs a smaller foot"),
        Rule("density", "push", "falls", given=_BARE, why="a heavier piece never takes less of a push"),
        Rule("peg", "joint", "falls", given=_PEG, span=(5, 45), why="a thicker peg never bears less"),
        Rule("socket", "joint", "falls", given=_PEG, span=(5, 100), why="a deeper socket never bears less"),
        Rule("soft", "heat_spare", "falls", given=_STACK, why="a resin that softens later never takes less heat"),
        Rule("place", "heat_spare", "rises", order=tuple(places()), given=_STACK | {"soft": "80 °C"}, why="a warmer place never leaves more to spare"),
        Rule("shop", "heat_spare", "falls", given=_STACK | {"warmed": "no"}, why="a warmer shop never leaves it softer"),
        Rule("warmed", "heat_spare", "falls", order=("no", "yes"), given=_STACK, why="warmth never makes it softer"),
    ),
)
