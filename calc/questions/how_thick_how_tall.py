"""How thick, how tall? From the finished size back to the mould: depth, stacked heights, the strip of a round mould, the push on its walls."""

from __future__ import annotations

from calc.answers import Answer
from calc.casting.standards import standard as mixing
from calc.casting.thickness import standard
from calc.fields import NO, YES, Choice, Field, Option, measure
from calc.questions import Given, Question, Rule, Table
from calc.questions._how_thick.hoop import hoop
from calc.questions._how_thick.panel import panel
from calc.questions._how_thick.pile import pile
from calc.questions._how_thick.push import push
from calc.several import Series

_PANEL = ("ask", ("panel",))
_STACK = ("ask", ("stack",))
_HOOP = ("ask", ("hoop",))
_PUSH = ("ask", ("push",))
_JOINED = ("joint", ("dowel", "tenon"))
_COVERED = ("wood", ("under", "inside"))
_WOOD = ("wood", ("through", "under", "inside"))
_OFF, _LIES, _MOULD, _PLAN = "What is cut away", "The wood", "In the mould", "A plan to check"


def _mm(name: str) -> str:
    """A length of the table of sizes, in mm."""
    return f"{1000 * standard(name):g}"


FIELDS: tuple[Field, ...] = (
    Choice(
        name="ask",
        label="What you want to know",
        options=(
            Option("panel", "How deep to pour", "A panel or a disc, from its finished size."),
            Option("stack", "How high to cast parts that are stacked"),
            Option("hoop", "How long a strip makes a round mould"),
            Option("push", "How hard the resin pushes", "On walls and seams, and the leak test."),
        ),
        default="panel",
    ),
    # a panel or a disc
    Choice(name="form", label="The piece", options=(Option("disc", "A disc"), Option("panel", "A panel")), default="disc", when=(_PANEL,)),
    measure("thickness", "Finished thickness", "mm", 1, 500, usual=(3, 200), when=(_PANEL,)),
    measure("across", "Finished across", "mm", 10, 3000, usual=(30, 1200), when=(_PANEL, ("form", ("disc",)))),
    measure("length", "Finished length", "mm", 10, 5000, usual=(40, 3000), when=(_PANEL, ("form", ("panel",)))),
    measure("width", "Finished width", "mm", 10, 3000, usual=(20, 1500), when=(_PANEL, ("form", ("panel",)))),
    Choice(
        name="wood",
        label="The wood",
        options=(
            Option("through", "Shows on both faces"),
            Option("under", "On the floor, resin over it"),
            Option("inside", "Resin above and below it"),
            Option("none", "None"),
        ),
        default="through",
        when=(_PANEL,),
    ),
    measure(
        "slab", "Wood at hand, thick", "mm", 1, 500, usual=(3, 200), hint="Showing: where thinnest. Under resin: where thickest.",
        required=False, when=(_PANEL, _WOOD),
    ),
    measure(
        "cover", "Resin over it, at least", "mm", 0.2, 300, usual=(0.5, 100), hint="When finished, over its highest spot.",
        default=(_mm("cover"), "1/8"), basis="judgement", when=(_PANEL, _COVERED),
    ),
    measure(
        "bow", "Bow of the wood", "mm", 0, 100, usual=(0, 25), hint="The gap under a straight edge.",
        default=(_mm("bow"), "1/16"), basis="judgement", fold=True, group=_LIES, when=(_PANEL, _WOOD),
    ),
    measure(
        "cover_under", "Resin under it, at least", "mm", 0.2, 300, usual=(0.5, 100),
        default=(_mm("cover"), "1/8"), basis="judgement", fold=True, group=_LIES, when=(_PANEL, ("wood", ("inside",))),
    ),
    measure("top", "Off the top face", "mm", 0, 50, usual=(0, 15), default=(_mm("face top"), "1/8"), basis="judgement", fold=True, group=_OFF, when=(_PANEL,)),
    measure(
        "under", "Off the face below", "mm", 0, 50, usual=(0, 15),
        default=(_mm("face under"), "1/16"), basis="judgement", fold=True, group=_OFF, when=(_PANEL,),
    ),
    measure(
        "edge", "Off the edge, all round", "mm", 0, 100, usual=(0, 40),
        default=(_mm("edge"), "1/4"), basis="judgement", fold=True, group=_OFF, when=(_PANEL,),
    ),
    measure(
        "warp", "Warp to allow for", "mm", 0, 60, usual=(0, 15), hint="Empty: 4 in 1000 of the longest way; 8 with resin on one side.",
        required=False, fold=True, group=_OFF, when=(_PANEL,),
    ),
    # stacked parts
    Series(
        name="heights", label="Finished heights", kind="length", units=("mm", "in"), low=2, high=1000, usual=(8, 500), accepts=("mm", "cm", "in"),
        fewest=2, most=12, hint=("Bottom first, one after the other: 40 120 25", "Bottom first, one after the other: 1 5/8, 4 3/4, 1"), when=(_STACK,),
    ),
    Choice(
        name="joint",
        label="Joined by",
        options=(
            Option("dowel", "Loose dowels", "A socket in both parts."),
            Option("tenon", "A turned tenon", "On the lower part, with a socket in the next."),
            Option("flat", "Flat faces, glued"),
        ),
        default="dowel",
        when=(_STACK,),
    ),
    measure("socket", "Sockets are deep", "mm", 2, 200, usual=(4, 80), default=(_mm("socket"), "5/8"), basis="judgement", when=(_STACK, _JOINED)),
    measure("total", "Height wanted in all", "mm", 5, 5000, usual=(20, 2500), required=False, when=(_STACK,)),
    measure("face", "Off each end", "mm", 0, 30, usual=(0, 10), default=(_mm("face end"), "1/16"), basis="judgement", fold=True, when=(_STACK,)),
    measure(
        "gap", "Room at a socket's bottom", "mm", 0, 20, usual=(0, 5), hint="For glue, so that the shoulders close.",
        default=(_mm("socket gap"), "1/32"), basis="judgement", fold=True, when=(_STACK, _JOINED),
    ),
    measure(
        "web", "Left between sockets, at least", "mm", 0, 100, usual=(2, 30),
        default=(_mm("web"), "1/4"), basis="judgement", fold=True, when=(_STACK, _JOINED),
    ),
    # a strip
    measure("inside", "Inside across", "mm", 20, 3000, usual=(50, 1200), when=(_HOOP,)),
    measure("lap", "The ends lap by", "mm", 0, 500, usual=(10, 150), default=(_mm("lap"), "1 1/2"), basis="practice", when=(_HOOP,)),
    measure("strip", "The strip is thick", "mm", 0.05, 25, usual=(0.2, 6), default=(_mm("strip"), "1/16"), basis="practice", when=(_HOOP,)),
    measure(
        "hoop_fill", "Resin will stand", "mm", 1, 1000, usual=(3, 300), hint="For the width of the strip and the pull on its lap.",
        required=False, when=(_HOOP,),
    ),
    measure("stock", "Longest strip you have", "mm", 20, 20_000, usual=(100, 6000), required=False, fold=True, when=(_HOOP,)),
    measure("narrow", "Narrowest inside, measured", "mm", 10, 3000, usual=(40, 1200), hint="Once it stands.", required=False, fold=True, when=(_HOOP,)),
    measure("wide", "Widest inside, measured", "mm", 10, 3000, usual=(40, 1200), required=False, fold=True, when=(_HOOP,)),
    # the push
    Choice(name="mould", label="The mould", options=(Option("box", "Straight walls"), Option("round", "Round")), default="box", when=(_PUSH,)),
    measure("wall", "Longest wall, inside", "mm", 10, 5000, usual=(40, 3000), when=(_PUSH, ("mould", ("box",)))),
    measure("round_across", "Inside across", "mm", 20, 3000, usual=(50, 1200), when=(_PUSH, ("mould", ("round",)))),
    measure("fill", "Resin will stand", "mm", 1, 1000, usual=(3, 300), when=(_PUSH,)),
    measure("height", "Walls are high", "mm", 1, 1500, usual=(5, 400), hint="Says whether the water can test all of it.", required=False, when=(_PUSH,)),
    Choice(name="wood_in", label="Wood in the mould already", options=(YES, NO), default="no", when=(_PUSH,)),
    measure(
        "wall_other", "Other wall, inside", "mm", 10, 5000, usual=(20, 2000), hint="For what the floor carries.",
        required=False, fold=True, when=(_PUSH, ("mould", ("box",))),
    ),
    measure(
        "density", "Density of the mixed resin", "g/mL", 0.7, 2.5, usual=(0.95, 1.6), hint="The label's figure is better.",
        default=f"{mixing('density usual'):.2f}", basis="practice", fold=True, when=(("ask", ("hoop", "push")),),
    ),
    # what a casting does
    Choice(
        name="levelled",
        label="The mould is levelled",
        options=(Option("level", "With a spirit level"), Option("eye", "By eye")),
        default="level", basis="practice", fold=True, group=_MOULD, when=(_PANEL,),
    ),
    measure(
        "drop", "Level falls as it cures", "%", 0, 15, usual=(0, 8), hint="Of the depth. 2 to 7 % is commonly given for the volume.",
        default=f"{100 * standard('drop'):g}", basis="judgement", fold=True, group=_MOULD, when=(("ask", ("panel", "stack")),),
    ),
    measure(
        "depth", "Depth you planned", "mm", 1, 600, usual=(3, 250), hint="Or the most your mould takes.",
        required=False, fold=True, group=_PLAN, when=(_PANEL,),
    ),
)

WORDS = {
    "all-cover": "{label}: {cover} of resin leave no wood in a piece of {thickness}. Less cover, or a thicker piece.",
    "all-bow": "{label}: {given} is as much as the wood is thick, {slab}. Look at the unit, and measure again.",
    "all-gap": "{label}: {given} leaves nothing to hold in a socket of {socket}.",
    "all-lap": "{label}: {given} is half the way round or more; the strip goes round in {round}. Look at the unit.",
    "short-stock": "{label}: {given} is taken up by its laps of {lap}. Longer strips, or a shorter lap.",
    "narrow-wide": "{label}: {given} is more than the widest, {wide}. Look whether the two are swapped.",
    "over-wall": "{label}: {given} is higher than the walls, {wall}.",
}


def work(given: Given) -> Answer:
    """The answer to whichever of the four was asked.

    Parameters
    ----------
    given : the parsed fields of :data:`QUESTION`.

    Returns
    -------
    Answer
        see :mod:`calc.questions._how_thick`.

    Raises
    ------
    InputError
        with one of :data:`WORDS`.
    """
    return {"panel": panel, "stack": pile, "hoop": hoop, "push": push}[given.choice("ask")](given)


_SLAB = {"ask": "panel", "form": "disc", "thickness": "45 mm", "across": "300 mm", "wood": "through", "slab": "", "bow": "1 mm", "warp": "", "depth": ""}
_COVER = _SLAB | {"wood": "under", "cover": "3 mm"}
_RING = {"ask": "hoop", "inside": "300 mm", "stock": "", "narrow": "", "wide": "", "lap": "40 mm", "strip": "1.5 mm"}
_WALL = {"ask": "push", "mould": "box", "wall": "600 mm", "fill": "60 mm", "height": "", "wood_in": "no"}
_PILE = {"ask": "stack", "heights": "40 120 25", "joint": "dowel"}

QUESTION = Question(
    id="how-thick-how-tall",
    name="How thick, how tall?",
    moment="before the pour",
    order=7,
    summary="From the finished size to the mould: depth, wood, stacked heights, the strip of a hoop, the push on its walls.",
    lead="What to add for facing, warp, bow and joints, so that the size you want is still there at the thinnest place.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="How deep to pour for a disc with wood that shows on both faces",
        rows=("thickness", (("10", "20", "30", "40", "50", "75"), ("1/2", "3/4", "1", "1 1/2", "2", "3"))),
        columns=("across", (("150", "300", "450", "600"), ("6", "12", "18", "24"))),
        fixed={"ask": "panel", "form": "disc", "wood": "through"},
        note="With what is usually cut away, a warp of 4 mm per metre (1/20 in per foot), a bow of 1 mm (1/16 in), a level that falls by 3 %: our judgement.",
    ),
    rules=(
        Rule("thickness", "depth", "falls", given=_SLAB, why="a thicker piece never needs a shallower pour"),
        Rule("across", "depth", "falls", given=_SLAB, why="a wider piece never warps less"),
        Rule("bow", "slab", "falls", given=_SLAB, why="wood that bows more never needs a thinner slab"),
        Rule("top", "depth", "falls", given=_SLAB, why="more to cut away never needs a shallower pour"),
        Rule("drop", "depth", "falls", given=_SLAB, why="a level that falls more never needs a shallower pour"),
        Rule("depth", "left", "falls", given=_SLAB, why="a deeper pour never leaves less"),
        Rule("cover", "most_wood", "rises", given=_COVER, span=(0.5, 40), why="more resin over it never leaves room for thicker wood"),
        Rule("bow", "most_wood", "rises", given=_COVER, why="wood that bows more never may be thicker"),
        Rule("socket", "left_at_sockets", "rises", given=_PILE, why="deeper sockets never leave more between them"),
        Rule("face", "tallest", "falls", given=_PILE, why="more to face off never needs a lower part"),
        Rule("inside", "strip", "falls", given=_RING, why="a wider ring never needs a shorter strip"),
        Rule("lap", "true_round", "rises", given=_RING, why="a longer lap never stands rounder"),
        Rule("hoop_fill", "lap_pull", "falls", given=_RING, why="deeper resin never pulls less"),
        Rule("fill", "push", "falls", given=_WALL, why="deeper resin never pushes less"),
        Rule("fill", "water", "falls", given=_WALL, why="deeper resin never needs less water to test it"),
        Rule("density", "push", "falls", given=_WALL, why="heavier resin never pushes less"),
    ),
)
