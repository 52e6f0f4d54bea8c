"""How much wood is in it? The volume it takes up, whether it floats, and what holds it down."""

from __future__ import annotations

from functools import partial

from calc.answers import Answer
from calc.casting.species import UNKNOWN, options
from calc.casting.wood import standard
from calc.fields import NO, YES, Choice, Field, Option, Quantity, measure
from calc.questions import Given, Question, Rule, Table
from calc.questions._how_much_wood.answer import answer
from calc.questions._how_much_wood.case import Wood
from calc.questions._how_much_wood.words import give_or_take
from calc.several import Series

_DIP = (("way", ("dip",)),)
_LEVEL = (("way", ("level",)),)
_WEIGH = (("way", ("weigh",)),)
_NOT_WEIGHED = (("way", ("dip", "level", "outline", "live")),)
_DRAWN = ("outline", "live")
_WRAPPED = (("wrapped", ("yes",)),)


_width_list = partial(
    Series, kind="length", units=("mm", "in"), low=0, high=3000, usual=(0, 1500), accepts=("mm", "cm", "in"), fewest=3, most=21
)


def _voids(name: str, when: tuple[tuple[str, tuple[str, ...]], ...]) -> Quantity:
    return measure(
        name, "Open holes and voids", "mL", 0, 200_000,
        usual=(0, 20_000), hint="Fill them with sand or rice and measure that. 0 if there are none.", required=False, when=when,
    )


FIELDS: tuple[Field, ...] = (
    Choice(
        name="way",
        label="How you measure it",
        options=(
            Option("dip", "Dip it, on a scale", f"The surest: {give_or_take('dip')} The spread of the order falls to about a third."),
            Option("live", "Live edge: widths of its faces", give_or_take("live")),
            Option("outline", "Outline and thickness", give_or_take("outline")),
            Option("level", "Level rise in a tub", f"{give_or_take('level')} For wood whose tub is too heavy for the scale."),
            Option("weigh", "Weigh it, by the kind of wood", give_or_take("weigh")),
        ),
        default="dip",
    ),
    measure(
        "rise", "The scale rises by", "g", 1, 500_000,
        usual=(10, 60_000), when=_DIP,
        hint="A tub of water on the scale, set to zero. Hold the wood just under with a thin rod. Tub and water load the scale too.",
    ),
    Choice(name="tub", label="Tub, straight up", options=(Option("box", "Box"), Option("round", "Round")), default="box", when=_LEVEL),
    measure("tub_length", "Tub, length inside", "mm", 20, 3000, usual=(100, 2000), when=(*_LEVEL, ("tub", ("box",)))),
    measure("tub_width", "Tub, width inside", "mm", 20, 3000, usual=(80, 1500), when=(*_LEVEL, ("tub", ("box",)))),
    measure("tub_across", "Tub, inside across", "mm", 20, 3000, usual=(80, 1500), when=(*_LEVEL, ("tub", ("round",)))),
    measure("level", "The water rises by", "mm", 0.5, 1000, usual=(3, 500), when=_LEVEL),
    measure("length", "Length", "mm", 5, 5000, usual=(20, 3000), hint="From the first width to the last.", when=(("way", _DRAWN),)),
    _width_list(name="widths", label="Widths at equal steps", hint="In order, both ends too, an odd count. A tip is 0.", when=(("way", ("outline",)),)),
    _width_list(name="top", label="Widths of the top face", hint="At equal steps, both ends too, an odd count. A tip is 0.", when=(("way", ("live",)),)),
    _width_list(name="middle", label="Widths half-way down", hint="Better with them.", required=False, when=(("way", ("live",)),)),
    _width_list(name="bottom", label="Widths of the bottom face", hint="As it lies in the mould.", when=(("way", ("live",)),)),
    measure("thickness", "Thickness", "mm", 1, 1000, usual=(3, 400), hint="Upright, as it lies in the mould.", when=(("way", _DRAWN),)),
    _voids("voids", (("way", _DRAWN),)),
    measure("mass", "Weight of the wood", "g", 1, 500_000, usual=(10, 60_000), when=_WEIGH),
    measure(
        "weight", "Weight of the wood", "g", 1, 500_000,
        usual=(10, 60_000), hint="Dry. Tells whether it floats.", required=False, when=_NOT_WEIGHED,
    ),
    Choice(
        name="form",
        label="Kind of wood",
        options=(
            Option("plain", "Plain"),
            Option("burl", "Burl, crotch or root"),
            Option("spalted", "Spalted or punky"),
            Option("stabilised", "Stabilised", "Full of resin: it has a density of its own."),
        ),
        default="plain",
    ),
    Choice(name="species", label="Wood", options=options(), default=UNKNOWN),
    measure("moisture", "Moisture", "%", 0, 90, usual=(4, 30), default="8", basis="wood-handbook-13-1"),
    measure("height", "Height as it lies", "mm", 1, 1000, usual=(3, 400), required=False, when=(("way", ("dip", "level", "weigh")),)),
    measure(
        "fill", "Resin will stand this deep", "mm", 1, 1000,
        usual=(3, 400), hint="Over the floor. Empty: it covers the wood.", required=False,
    ),
    measure("raised", "Wood held up off the floor by", "mm", 0, 500, usual=(0, 200), required=False, fold=True),
    Choice(
        name="wrapped", label="Dipped in a wrap", hint="A wrap keeps the water out of the open voids too.",
        options=(YES, NO), default="no", fold=True, when=(("way", ("dip", "level")),),
    ),
    _voids("wrapped_voids", (("way", ("dip", "level")), *_WRAPPED)),
    measure(
        "density", "Density of this wood, measured", "g/mL", 0.05, 2.0,
        usual=(0.2, 1.35), hint="Of an offcut, weighed and dipped. It overrules the table.", required=False, fold=True,
    ),
    Choice(name="sealed", label="Sealed all over", options=(YES, NO), default="no", basis="judgement", fold=True),
    measure(
        "soak", "It soaks in, share of the wood", "%", 0, 50,
        usual=(0, 20), hint="Empty: 2 % plain, 5 % burl, 10 % punky (common practice).", required=False, fold=True, when=(("sealed", ("no",)),),
    ),
    measure(
        "resin", "Density of the mixed resin", "g/mL", 0.7, 2.5,
        usual=(0.95, 1.6), hint="The label's figure is better.", default=f"{standard('resin'):.2f}", basis="practice", fold=True,
    ),
)

WORDS = {
    "no-density": "{label}: choose one, or dip the wood. A weight alone does not say how big it is.",
    "stabilised": "Enter {label_lower}. Stabilised wood is in no table: weigh an offcut and dip it.",
    "too-light": "{label}: {given} makes this {found}, lighter than any wood. Look at the unit, and measure again.",
    "too-heavy": "{label}: {given} makes this {found}, heavier than any wood. Look at the unit, and measure again.",
    "too-wet": "{label}: {given} is more water than this wood holds, {found} at most. Look at the reading or the kind of wood.",
    "voids-bigger": "{label}: {given} is as much as the whole outline, {found}. Look at the unit, and measure again.",
    "under-the-wood": "{label}: {given} does not reach the wood, which starts {found} over the floor.",
    "moisture:too-large": "{label}: {given} is far too wet to cast. Dry it first: 'Dry enough?' tells how far.",
    "no-height": "Enter {label_lower}. It says how much of the wood stands above the resin.",
    "no-width": "{label}: at least one of them has to be more than zero.",
}


def work(given: Given) -> Answer:
    """Answer the question."""
    return answer(Wood(given))


_ON_SCALE = {"way": "dip", "rise": "1378 g", "weight": "842 g", "form": "plain", "wrapped": "no", "height": "60 mm", "fill": "50 mm", "raised": "0"}
_WEIGHED = {"way": "weigh", "form": "plain", "species": "walnut-black", "density": "", "mass": "900 g", "height": "50 mm", "fill": "", "raised": ""}
_OUTLINED = {"way": "outline", "length": "600 mm", "widths": "120 135 128 140 110", "thickness": "45 mm", "weight": "", "fill": "", "raised": ""}

QUESTION = Question(
    id="how-much-wood",
    name="How much wood is in it?",
    moment="before the pour",
    order=6,
    summary="The volume the wood takes up, and whether it floats.",
    lead="What to take off the mould's volume, from what depth the wood lifts, and how much weight holds it down.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="Volume of wood by its weight, at 8 % moisture",
        rows=("mass", (("100 g", "250 g", "500 g", "1 kg", "2 kg", "4 kg"), ("4 oz", "8 oz", "1 lb", "2 lb", "4 lb", "8 lb"))),
        columns=("species", ("maple-bigleaf", "walnut-black", "oak-white", "olive")),
        fixed={"way": "weigh"},
        note="Plain wood; another tree of the same kind may be 10 % off either way. Dip the wood where that matters.",
    ),
    rules=(
        Rule("rise", "volume", "falls", given=_ON_SCALE | {"weight": "", "species": "unknown", "density": ""}, why="more water moved is more wood"),
        Rule("fill", "volume", "falls", given=_ON_SCALE, why="deeper resin never covers less wood"),
        Rule("fill", "hold", "falls", given=_ON_SCALE, why="deeper resin never lifts less"),
        Rule("raised", "volume", "rises", given=_ON_SCALE, why="wood held higher never has more of it under the resin"),
        Rule("resin", "hold", "falls", given=_ON_SCALE, why="heavier resin never lifts less"),
        Rule("weight", "hold", "rises", given=_ON_SCALE, span=(300, 1800), why="heavier wood of the same size never lifts more"),
        Rule("mass", "volume", "falls", given=_WEIGHED, why="more of the same wood is never smaller"),
        Rule("moisture", "volume", "rises", given=_WEIGHED, why="part of the weight of wetter wood is water"),
        Rule("voids", "volume", "rises", given=_OUTLINED, why="holes are not wood"),
        Rule("thickness", "volume", "falls", given=_OUTLINED | {"voids": ""}, why="thicker wood is never less of it"),
    ),
)
