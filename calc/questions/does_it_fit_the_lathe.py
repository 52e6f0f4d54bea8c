"""Does it fit the lathe? Over the bed, over the banjo, along the bed; what each set-up reaches; whether a wheel comes to the middle of a face."""

from __future__ import annotations

from calc.answers import Answer
from calc.fields import Choice, Field, Option, measure
from calc.questions import Given, Question, Rule, Table
from calc.questions._does_it_fit.turn_words import turning
from calc.questions._does_it_fit.wheel import polishing
from calc.questions._weighed import in_keeping
from calc.turning.fit import lathe_sizes

_TURN, _WHEEL = ("ask", ("turn",)), ("ask", ("wheel",))
_BED = ("side", ("bed",))
_HELD = ("hold", ("faceplate", "chuck", "block", "mandrel"))
_MINE, _GAP, _MOUNT, _PIECE = "Your lathe, measured", "A gap in the bed", "The mount", "The piece"
_USUAL = "Empty: as usual for that kind of lathe."


FIELDS: tuple[Field, ...] = (
    Choice(
        name="ask",
        label="What you want to do",
        options=(Option("turn", "Turn it"), Option("wheel", "Polish a disc on a wheel", "The wheel on the lathe, the disc in your hands.")),
        default="turn",
    ),
    # turning
    Choice(
        name="form",
        label="The blank is",
        options=(
            Option("square", "Square", "measured across the flats"),
            Option("round", "Round"),
            Option("eight", "Eight-sided", "measured across the flats"),
            Option("rect", "A rectangle"),
            Option("other", "Any other outline"),
        ),
        default="square",
        when=(_TURN,),
    ),
    measure("across", "Across", "mm", 5, 2000, usual=(20, 1000), when=(_TURN, ("form", ("square", "round", "eight")))),
    measure("length", "Length across the lathe", "mm", 5, 2000, usual=(20, 1000), when=(_TURN, ("form", ("rect",)))),
    measure("width", "Width", "mm", 5, 2000, usual=(20, 1000), when=(_TURN, ("form", ("rect",)))),
    measure(
        "widest", "Widest it sweeps", "mm", 5, 2000, usual=(20, 1000), hint="Twice from the mounting centre to the farthest corner.",
        when=(_TURN, ("form", ("other",))),
    ),
    measure("along", "Thick or long, along the lathe", "mm", 2, 3000, usual=(5, 1500), when=(_TURN,)),
    Choice(
        name="hold",
        label="Held by",
        options=(
            Option("block", "Glue block"),
            Option("faceplate", "Faceplate"),
            Option("chuck", "Chuck"),
            Option("centres", "Between centres", "A spur and a live centre."),
            Option("mandrel", "Arbor", "Through a hole in its middle."),
        ),
        default="block", basis="judgement",
        when=(_TURN,),
    ),
    Choice(
        name="side",
        label="Where on the lathe",
        options=(Option("bed", "Over the bed"), Option("outboard", "Outboard", "On the far side of the headstock.")),
        default="bed",
        when=(_TURN,),
    ),
    # a wheel
    measure("disc", "Disc across", "mm", 10, 2000, usual=(40, 1000), when=(_WHEEL,)),
    measure("wheel", "Wheel across", "mm", 20, 400, usual=(50, 300), when=(_WHEEL,)),
    measure("stands", "Wheel stands out from the headstock", "mm", 5, 1500, usual=(30, 800), hint="From the housing to the wheel's middle.", when=(_WHEEL,)),
    Choice(
        name="end",
        label="Far end of the mandrel",
        options=(Option("free", "Free"), Option("tail", "In the tailstock")),
        default="free",
        when=(_WHEEL,),
    ),
    measure("to_tail", "Wheel to the tailstock", "mm", 5, 3000, usual=(20, 1500), hint="From the wheel's middle.", when=(_WHEEL, ("end", ("tail",)))),
    # the lathe
    Choice(
        name="lathe",
        label="Lathe",
        options=tuple(
            Option(name, label, f"swing about {1000 * lathe_sizes()[name].swing:.0f} mm ({lathe_sizes()[name].swing / 0.0254:.0f} in)")
            for name, label in (("bench", "Bench lathe"), ("midi", "Midi lathe"), ("floor", "Floor lathe"), ("heavy", "Heavy floor lathe"))
        ),
        default="bench", basis="judgement",
    ),
    measure("swing", "Swing over the bed", "mm", 40, 3000, usual=(150, 1200), hint="Twice from the centre to the bed. " + _USUAL, required=False),
    measure(
        "outboard_swing", "Swing outboard", "mm", 40, 4000, usual=(200, 2500), hint="Twice from the spindle to the nearest thing.",
        when=(_TURN, ("side", ("outboard",))),
    ),
    measure(
        "banjo", "Swing over the banjo", "mm", 20, 3000, usual=(80, 1000), hint="Twice from the centre to its top. Empty: 3/4 of that over the bed.",
        required=False, fold=True, group=_MINE, when=(_TURN, _BED),
    ),
    measure(
        "centres", "Longest between centres", "mm", 50, 6000, usual=(200, 3000), hint="Spur to live centre. " + _USUAL,
        required=False, fold=True, group=_MINE, when=(_TURN, _BED),
    ),
    measure("bed_wide", "Bed is wide", "mm", 20, 1000, usual=(60, 500), hint=_USUAL, required=False, fold=True, group=_MINE, when=(_WHEEL,)),
    measure(
        "housing", "Axis to the headstock's front", "mm", 15, 600, usual=(30, 300), hint=_USUAL,
        required=False, fold=True, group=_MINE, when=(_WHEEL,),
    ),
    Choice(
        name="gap_bed", label="The bed has a gap", options=(Option("no", "No"), Option("yes", "Yes")), default="no",
        fold=True, group=_GAP, when=(_TURN, _BED),
    ),
    measure("gap_swing", "Swing in the gap", "mm", 50, 4000, usual=(200, 1500), fold=True, group=_GAP, when=(_TURN, _BED, ("gap_bed", ("yes",)))),
    measure(
        "gap_long", "The gap is long", "mm", 10, 1000, usual=(40, 500), hint="From the spindle's end.",
        fold=True, group=_GAP, when=(_TURN, _BED, ("gap_bed", ("yes",))),
    ),
    # the mount
    Choice(
        name="tail", label="Tailstock", options=(Option("up", "Up"), Option("none", "Not used")), default="none", basis="judgement",
        fold=True, group=_MOUNT, when=(_TURN, _BED, _HELD),
    ),
    measure(
        "mount", "Mount stands out", "mm", 2, 1000, usual=(10, 400),
        hint="From the spindle's end, block and all. Empty: as usual.",
        required=False, fold=True, group=_MOUNT, when=(_TURN, _HELD),
    ),
    measure(
        "covers", "Mount hides, across", "mm", 5, 1000, usual=(20, 400), hint="Of the face it is on.",
        required=False, fold=True, group=_MOUNT, when=(_TURN, _HELD),
    ),
    measure(
        "wanted", "Round you want from it", "mm", 5, 2000, usual=(20, 1000), hint="With what is turned off. Empty: the largest in it.",
        required=False, fold=True, group=_PIECE, when=(_TURN,),
    ),
    measure("mass", "It weighs", "kg", 0.01, 1000, usual=(0.05, 200), hint="Empty: as if all resin.", required=False, fold=True, group=_PIECE, when=(_TURN,)),
    measure(
        "load", "Heaviest that is marked", "kg", 0.5, 2000, usual=(2, 500), hint="On lathe or chuck.",
        required=False, fold=True, group=_PIECE, when=(_TURN,),
    ),
)

WORDS = {
    "round-too-big": "{label}: {given} is more than the blank holds, {inner}. Look at the unit, or cast it larger.",
    "banjo-over-bed": "{label}: {given} is not under the swing over the bed, {swing}. The banjo stands on the bed: measure to its top.",
    "gap-under-bed": "{label}: {given} is not more than the swing over the bed, {swing}. Look whether the two are swapped.",
}


def work(given: Given) -> Answer:
    """Whether it fits, or whether a wheel reaches.

    Parameters
    ----------
    given : the parsed fields of :data:`QUESTION`.

    Returns
    -------
    Answer
        ``values`` in m: ``sweep``, ``bed_gap``, ``banjo_gap``, ``length_spare``, ``corner``; or ``unreached``.

    Raises
    ------
    InputError
        with one of :data:`WORDS`, or ``weight-size``.
    """
    if given.choice("ask") != "turn":
        return polishing(given)
    if given.choice("form") in ("round", "square"):
        in_keeping(given, "mass", "across", "along")
    return turning(given)


_FIRM = {"ask": "turn", "side": "bed", "gap_bed": "no", "wanted": "", "banjo": ""}
_SQUARE = _FIRM | {"form": "square", "across": "300 mm", "swing": "460 mm"}
_LONG = _FIRM | {"form": "round", "across": "60 mm", "swing": "400 mm", "hold": "chuck", "tail": "up", "along": "240 mm"}
_HELD_UP = {"ask": "wheel", "end": "free", "disc": "300 mm"}

QUESTION = Question(
    id="does-it-fit-the-lathe",
    name="Does it fit the lathe?",
    moment="at the lathe",
    order=11,
    summary="Over the bed, over the banjo, along the bed; what to saw off first; what each set-up reaches.",
    lead="Plan both set-ups, and the reach of a polishing wheel, before the first gluing.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="Clear of the bed all round, for a blank as it comes from the mould",
        rows=("across", (("100", "150", "200", "250", "300", "350", "400"), ("4", "6", "8", "10", "12", "14", "16"))),
        columns=("lathe", ("bench", "midi", "floor", "heavy")),
        fixed={"form": "square", "along": ("50", "2"), "tail": "none"},
        cell=lambda answer: answer.headline.shown,
        note="A square blank, on lathes of usual size: 254, 305, 400 and 500 mm (10, 12, 16, 20 in). Measure yours.",
    ),
    rules=(
        Rule("across", "bed_gap", "rises", given=_FIRM | {"swing": "460 mm"}, why="a wider blank never leaves more under it"),
        Rule("across", "banjo_gap", "rises", given=_FIRM | {"swing": "460 mm"}, why="a wider blank never leaves more over the banjo"),
        Rule("form", "bed_gap", "rises", order=("round", "eight", "square"), given=_SQUARE, why="more of a corner never leaves more under it"),
        Rule("swing", "bed_gap", "falls", given=_SQUARE, why="more swing never leaves less"),
        Rule("banjo", "banjo_gap", "falls", given=_SQUARE | {"swing": "1000 mm"}, span=(100, 990), why="a lower banjo never leaves less"),
        Rule("along", "length_spare", "rises", given=_LONG, why="longer work never leaves more room"),
        Rule("mount", "length_spare", "rises", given=_LONG, why="a longer mount never leaves more room"),
        Rule("centres", "length_spare", "falls", given=_LONG, why="a longer bed never leaves less room"),
        Rule("wanted", "corner", "falls", given=_SQUARE, span=(150, 300), why="a larger square never has smaller corners to saw off"),
        Rule("disc", "unreached", "falls", given={"ask": "wheel", "end": "free"}, why="a larger disc is never reached further in"),
        Rule("stands", "unreached", "rises", given=_HELD_UP, why="a wheel further out never reaches less"),
        Rule("wheel", "unreached", "rises", given=_HELD_UP, why="a larger wheel never reaches less"),
        Rule("end", "unreached", "falls", order=("free", "tail"), given=_HELD_UP | {"to_tail": "150 mm"}, why="a tailstock is never out of the way"),
    ),
)
