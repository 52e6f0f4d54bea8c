"""What Where is the weight? asks: what the maker has, the blank, one wood; more woods, the weight and the lathe are folded away."""

from __future__ import annotations

from dataclasses import replace

from calc.casting.species import UNKNOWN, options
from calc.fields import Choice, Field, Option, Quantity, measure, under
from calc.questions._lathes import lathe_options
from calc.several import Series

Asked = tuple[str, tuple[str, ...]]
MADE = ("plan", "cast", "mounted")  # the make-up is known
#: Each wood's field name, and what it is called.
WOODS = {"wood1": "wood"} | {
    f"wood{number}": f"{counted} wood" for number, counted in enumerate(("second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"), start=2)
}
NONE = "none"

_SHAPES = (
    Option("round", "Round"),
    Option("half", "Half of the blank"),
    Option("side", "One side, from a straight edge"),
    Option("strip", "Strip right across"),
    Option("slice", "Slice, point in the middle"),
    Option("block", "Block with square corners"),
    Option("outline", "Free outline, by corners"),
)
_ALL = tuple(option.value for option in _SHAPES)
_NO_MORE = "The last. For more, give several of a kind as one outline, or weigh it on two supports."
_IS_MADE: Asked = ("way", MADE)
_IS_SHAPED: Asked = ("way", (*MADE, "swing"))
_IS_SCALE: Asked = ("way", ("scale",))
_IS_HUNG: Asked = ("way", ("hung",))
_IS_FREE: Asked = ("spindle", ("free",))
_LET_GO: tuple[Asked, ...] = (("way", ("swing",)), _IS_FREE)
_SWINGS: tuple[Asked, ...] = (*_LET_GO, ("swings", ("yes",)))
_STAYS: tuple[Asked, ...] = (*_LET_GO, ("swings", ("no",)))


def _clock(name: str, label: str, when: tuple[Asked, ...], hint: str = "", default: str | None = None, required: bool = True) -> Quantity:
    return Quantity(
        name=name, label=label, hint=hint, kind="count", units=("", ""), low=0, high=12,
        default=default, basis="judgement" if default else "", required=required, fold=True, when=when,
    )


def _wood(number: int, name: str, called: str) -> tuple[Field, ...]:
    """The fields of one wood; those of the first stand open, and each further one is asked once the one before it is given."""
    first, last = number == 1, number == len(WOODS)

    def only(*shapes: str) -> tuple[Asked, ...]:
        return (_IS_MADE, (f"{name}_shape", shapes))

    any_shape = only(*_ALL)
    none = () if first else (Option(NONE, "None"),)
    lies_in = Choice(
        name=f"{name}_in", label="It lies in", default="resin", when=any_shape,
        options=(Option("resin", "The resin"), Option("wood", "A wood named above, let into it", "For as deep as both go.")),
    )
    asked: tuple[Field, ...] = (
        Choice(
            name=f"{name}_shape", label="Wood" if first else "Another wood, or an insert",
            hint="Seen on the face of the blank." if first else _NO_MORE if last else "A metal disc, a coin, a stone, a ring: anything set in.",
            options=(*none, *_SHAPES), default="round" if first else NONE,
            when=(_IS_MADE,) if first else (_IS_MADE, (f"wood{number - 1}_shape", _ALL)),
        ),
        *(() if first else (lies_in,)),
        measure(f"{name}_across", "Wood, across", "mm", 1, 1500, usual=(5, 1000), when=only("round")),
        measure(f"{name}_length", "Wood, outwards", "mm", 1, 1500, usual=(5, 1000), when=only("block")),
        measure(f"{name}_width", "Wood, width", "mm", 1, 1500, usual=(2, 1000), when=only("strip", "block")),
        measure(f"{name}_out", "Its middle, from the centre", "mm", 0, 1500, usual=(0, 750), when=only("round", "block")),
        measure(
            f"{name}_edge", "Its nearer edge, from the centre", "mm", -750, 750,
            usual=(-500, 500), hint="With a minus if the centre lies in the wood.", when=only("side", "strip"),
        ),
        Quantity(
            name=f"{name}_angle", label="Slice, in degrees", hint="A quarter is 90.", kind="count", units=("", ""), low=1, high=359,
            when=only("slice"),
        ),
        Series(
            name=f"{name}_points", label="Corners: right, up",
            hint=("From the centre, two for each corner: 30 -80 160 -60 90 120", "From the centre, two for each corner: 1 -3 6 -2 4 5"), kind="length",
            units=("mm", "in"), low=-1000, high=1000, usual=(-750, 750), accepts=("mm", "cm", "in"), fewest=6, most=80, when=only("outline"),
        ),
        Choice(
            name=f"{name}_by", label="How heavy, by",
            options=(Option("kind", "Kind of wood"), Option("weight", "Weight of the piece"), Option("density", "Its density", "Metal, too.")),
            default="kind", when=any_shape,
        ),
        Choice(
            name=f"{name}_species", label="Kind of wood", options=options(), default=UNKNOWN, basis="judgement",
            when=(*any_shape, (f"{name}_by", ("kind",))),
        ),
        measure(f"{name}_weight", "Weight of the piece", "g", 0.1, 200_000, usual=(1, 50_000), when=(*any_shape, (f"{name}_by", ("weight",)))),
        measure(
            f"{name}_density", "Density", "g/mL", 0.05, 20, usual=(0.2, 12), hint="Brass about 8.5, aluminium 2.7, stone 2.6.",
            when=(*any_shape, (f"{name}_by", ("density",))),
        ),
    )  # fmt: skip
    rest: tuple[Field, ...] = (
        _clock(
            f"{name}_clock", "Where, by the clock", only(*(shape for shape in _ALL if shape != "outline")),
            "12 at the top of the drawing. Half past 2 is 2.5.", "3" if first else None,
        ),
        measure(
            f"{name}_depth", "How deep it goes", "mm", 0.1, 2000, usual=(1, 1000),
            hint="Empty: right through." if first else "Empty: right through. From the face that the first goes in from.",
            required=False, fold=True, when=any_shape,
        ),
        measure(
            f"{name}_moisture", "Moisture", "%", 0, 300, usual=(4, 30), default="8", basis="wood-handbook-13-1", fold=True,
            when=(*any_shape, (f"{name}_by", ("kind",))),
        ),
    )  # fmt: skip
    if first:
        return (*asked, *under("More about the wood", *rest))
    return under(f"{called.capitalize()}, or an insert", *(replace(field, fold=True) for field in (*asked, *rest)))


_BLANK: tuple[Field, ...] = (
    Choice(
        name="way",
        label="What you have",
        options=(
            Option("plan", "Not cast yet", "The wood can still be shifted."),
            Option("cast", "Cast, not yet on the lathe", "The centre can still be moved."),
            Option("mounted", "On the lathe, make-up known"),
            Option("scale", "Two supports and a scale", "Off the lathe; the make-up need not be known."),
            Option("hung", "A weight on the free spindle", "Hung on the light side until it stays anywhere."),
            Option("swing", "Its swing on the free spindle", "The heavy side let go a little to one side, and timed."),
        ),
        default="plan",
    ),
    Choice(
        name="blank", label="Blank", options=(Option("round", "Round", "A disc or a cylinder."), Option("square", "Square corners")),
        default="round", when=(_IS_SHAPED,),
    ),
    measure("across", "Blank, across", "mm", 10, 1500, usual=(25, 1000), when=(_IS_SHAPED, ("blank", ("round",)))),
    measure("side", "Blank, side", "mm", 10, 1500, usual=(25, 1000), when=(_IS_SHAPED, ("blank", ("square",)))),
    measure("thickness", "Thickness, or length", "mm", 3, 2000, usual=(5, 1000), hint="Along the lathe.", when=(_IS_MADE,)),
    measure("sweep", "Widest it is", "mm", 10, 1500, usual=(25, 1000), hint="Corner to corner.", when=(("way", ("scale", "hung")),)),
    measure(
        "mass", "Weight of the blank", "g", 5, 300_000, usual=(20, 100_000), hint="Alone. Too heavy for the scale: on two supports, add both readings.",
        when=(("way", ("scale", "swing")),),
    ),
    measure("apart", "Supports apart", "mm", 10, 1500, usual=(25, 1000), hint="The blank's marked centre half-way between them.", when=(_IS_SCALE,)),
    measure("at_3", "Scale, 3 o'clock over it", "g", 0, 300_000, hint="Its support taken off by zero.", when=(_IS_SCALE,)),
    measure("at_12", "Scale, 12 o'clock over it", "g", 0, 300_000, hint="The blank turned a quarter, nothing else moved.", when=(_IS_SCALE,)),
    Choice(
        name="spindle", label="Spindle",
        options=(
            Option("free", "Free", "The belt is off; it turns at a touch."),
            Option("belt", "Belt still on"),
            Option("direct", "Direct drive", "The motor sits on the spindle."),
        ),
        default="free", when=(("way", ("hung", "swing")),),
    ),
    measure("hung", "Weight that balances it", "g", 0.5, 20_000, usual=(2, 5000), when=(_IS_HUNG, _IS_FREE)),
    measure("hung_at", "How far out it hung", "mm", 5, 750, hint="From the centre of the spindle.", when=(_IS_HUNG, _IS_FREE)),
    Choice(
        name="swings", label="Let go, it", options=(Option("yes", "Swings to and fro"), Option("no", "Stays, wherever it is left")),
        default="yes", when=_LET_GO,
    ),
    Quantity(
        name="counted", label="Swings counted", hint="There and back is one.", kind="count", units=("", ""), low=1, high=200, usual=(3, 60),
        default="10", basis="judgement", whole=True, when=_SWINGS,
    ),
    Series(
        name="timings", label="Seconds they took", hint="Two or three timings: 40.2 39.6 40.4", kind="time", units=("s", "s"), low=0.5, high=3600,
        usual=(3, 600), accepts=("s", "min"), fewest=1, most=12, when=_SWINGS,
    ),
    measure("least", "Smallest weight that moves it", "g", 0.5, 20_000, usual=(1, 2000), hint="Hung level with the spindle.", required=False, when=_STAYS),
    measure("least_at", "How far out it hung", "mm", 5, 750, hint="From the centre of the spindle.", required=False, when=_STAYS),
)  # fmt: skip

_MOUNTED = "Off centre"
_WEIGHT = "The weight"
_LATHE = "The lathe"

_MORE: tuple[Field, ...] = (
    *under(
        "The blank",
        measure(
            "other_side", "The other side", "mm", 10, 1500, usual=(25, 1000), hint="Empty: the same.", required=False, fold=True,
            when=(_IS_SHAPED, ("blank", ("square",))),
        ),
        measure("resin", "Density of the cast resin", "g/mL", 0.7, 3, usual=(0.95, 1.8), default="1.15", basis="judgement", fold=True, when=(_IS_MADE,)),
        measure("finish", "Turned down to", "mm", 10, 1500, usual=(20, 1000), hint="Across, when it is done.", required=False, fold=True, when=(_IS_MADE,)),
    ),
    *under(
        _MOUNTED,
        measure(
            "off", "Mounted off the centre by", "mm", 0, 500, usual=(0, 100), required=False, fold=True, when=(("way", ("mounted",)),),
        ),
        _clock("off_clock", "Which way, by the clock", (("way", ("mounted",)),), "From the middle of the blank to the spindle.", required=False),
    ),
    *under(
        "Surer on the scale",
        measure(
            "at_9", "Scale, 9 o'clock over it", "g", 0, 300_000, hint="Then the centre may sit a little off half-way.", required=False, fold=True,
            when=(_IS_SCALE,),
        ),
        measure("at_6", "Scale, 6 o'clock over it", "g", 0, 300_000, required=False, fold=True, when=(_IS_SCALE,)),
    ),
    *under(
        "Surer on the spindle",
        measure(
            "sticks", "Smallest weight that still moves it", "g", 0, 20_000, usual=(0, 1000),
            hint="Beside the one that balances it. It tells what friction hides.", required=False, fold=True, when=(_IS_HUNG, _IS_FREE),
        ),
        measure(
            "about", "The blank weighs", "kg", 0.005, 300, usual=(0.02, 100), hint="Empty: as resin, 50 mm (2 in) thick.", required=False, fold=True,
            when=(_IS_HUNG, _IS_FREE),
        ),
        Quantity(
            name="reach", label="It swung to each side, in degrees", hint="At first. 5 minutes of the clock are 30. Empty: less than that.",
            kind="count", units=("", ""), low=1, high=120, usual=(2, 90), required=False, fold=True, when=_SWINGS,
        ),
        measure(
            "chuck_mass", "Chuck or faceplate weighs", "kg", 0.05, 60, usual=(0.2, 20), hint="It swings along. Empty: not counted.",
            required=False, fold=True, when=_SWINGS,
        ),
        measure("chuck_across", "Chuck or faceplate, across", "mm", 10, 1000, usual=(30, 400), required=False, fold=True, when=_SWINGS),
    ),
    *under(
        _WEIGHT,
        measure(
            "at", "Weight fixed this far out", "mm", 2, 750, hint="Empty: just inside the rim. A hung one stays where it hung.", required=False, fold=True,
            when=(("way", (*MADE, "scale", "swing")),),
        ),
        Series(
            name="places", label="Two places instead, by the clock", hint="Where it can be screwed on: 8 10.5", kind="count", units=("", ""),
            low=0, high=12, fewest=2, most=2, required=False, fold=True,
        ),
    ),
    *under(
        _LATHE,
        Choice(name="lathe", label="Lathe", options=lathe_options(), default="bench", basis="judgement", fold=True),
        measure(
            "lathe_mass", "What the lathe weighs", "kg", 5, 5000, usual=(15, 1500), hint="With stand and ballast. Empty: as usual for that kind.",
            required=False, fold=True,
        ),
        measure("speed", "Speed you mean to run", "rpm", 10, 6000, hint="Empty: the roughing ceiling for its size.", required=False, fold=True),
    ),
)  # fmt: skip

FIELDS: tuple[Field, ...] = (
    *_BLANK,
    *(field for number, (name, called) in enumerate(WOODS.items(), start=1) for field in _wood(number, name, called)),
    *_MORE,
)
