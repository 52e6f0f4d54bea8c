"""Will the mount hold? At this speed, under the tool, and once it is turned round."""

from __future__ import annotations

from typing import Any

from calc.answers import Answer
from calc.fields import NO, YES, Choice, Field, Option, Quantity, measure, under
from calc.questions import Given, Question, Rule, Table
from calc.questions._on_the_lathe import FAR_ENDS, NOT_CHECKED
from calc.questions._will_the_mount_hold.bends import bends
from calc.questions._will_the_mount_hold.centres import centres
from calc.questions._will_the_mount_hold.holds import holds
from calc.questions._will_the_mount_hold.turned import turned
from calc.questions._will_the_mount_hold.words import LEAST_MM
from calc.turning.case import GUESSES


def _choice(name: str, label: str, default: str, options: tuple[Option, ...], **more: Any) -> Choice:
    return Choice(name=name, label=label, default=default, basis="judgement", options=options, **more)


_HOLDS, _BENDS, _TURNED = (("asked", (kind,)) for kind in ("holds", "bends", "turned"))
_GLUE, _PLATE, _CHUCK, _CENTRES = (("hold", (kind,)) for kind in ("glue", "faceplate", "chuck", "centres"))
_ONE_END = ("hold", ("glue", "faceplate", "chuck"))


def _strength(name: str, label: str, hint: str) -> Quantity:
    return Quantity(
        name=name, label=label, hint=hint, kind="pressure", units=("MPa", "psi"), low=0.01, high=50, usual=(0.05, 10), accepts=("MPa", "psi", "kPa"),
        required=False, fold=True, when=(_HOLDS, _GLUE),
    )  # fmt: skip


FIELDS: tuple[Field, ...] = (
    _choice(
        "asked",
        "What you ask",
        "holds",
        (
            Option("holds", "Does it hold?", "weight, speed and a catch"),
            Option("bends", "Does it bend under the tool?", "a wide disc on a small block"),
            Option("turned", "Turning it round", "how true it comes back, and the block off again"),
        ),
    ),
    _choice(
        "hold",
        "Held by",
        "glue",
        (
            Option("glue", "Glue block, hot glue"),
            Option("faceplate", "Faceplate and screws"),
            Option("chuck", "Tenon in a chuck"),
            Option("centres", "Between centres"),
        ),
    ),
    measure("diameter", "Widest it sweeps", "mm", 10, 1500, usual=(25, 1000), hint="Corner to corner while it is out of round."),
    measure("block", "Block across", "mm", 5, 1500, usual=(LEAST_MM["glue"], 500), when=(_GLUE,)),
    measure("circle", "Screw circle across", "mm", 10, 1000, usual=(LEAST_MM["faceplate"], 400), when=(_PLATE,),
            hint="From screw to screw through the middle."),
    measure("tenon", "Tenon across", "mm", 5, 1000, usual=(LEAST_MM["chuck"], 300), when=(_CHUCK,)),
    measure("length", "Length between centres", "mm", 20, 3000, usual=(40, 1500), when=(_HOLDS, _CENTRES)),
    _choice(
        "face",
        "Glued to",
        "resin",
        (
            Option("wood", "Bare wood", "scuffed and clean"),
            Option("resin", "Bare resin, or part resin", "scuffed and clean"),
            Option("slick", "Waxed, oiled, polished or finished"),
        ),
        when=(_HOLDS, _GLUE),
    ),
    Quantity(
        name="screws", label="How many screws", kind="count", units=("", ""), low=3, high=24, usual=(3, 16), whole=True, hint="One in every hole.",
        when=(_HOLDS, _PLATE),
    ),
    _choice(
        "far_end",
        "Tailstock",
        "none",
        FAR_ENDS,
        when=(_HOLDS, _ONE_END),
    ),
    measure("speed", "Speed you want", "rpm", 10, 6000, hint="Empty: the ceiling is worked out.", required=False, when=(_HOLDS,)),
    measure("thin", "Thickness it will have", "mm", 1, 500, usual=(3, 150), hint="At its thinnest, while you cut the rim.", when=(_BENDS,)),
    _choice(
        "centred",
        "Centred by",
        "eye",
        (
            Option("eye", "Eye, to a drawn ring", "off by 1.5 mm (1/16 in)"),
            Option("point", "Tailstock's point in a centre mark", "off by 0.5 mm (0.02 in)"),
            Option("register", "A recess or step turned to fit", "off by 0.1 mm (0.004 in)"),
        ),
        when=(_TURNED,),
    ),
    measure(
        "runout", "The rim moves in and out by", "mm", 0, 200,
        usual=(0, 20), hint="On the lathe already: the full reading.", required=False, when=(_TURNED,),
    ),
    measure("stock", "Left on the rim, each side", "mm", 0, 200, usual=(0, 40), required=False, when=(_TURNED,)),
    *under(
        "The work",
        measure(
            "thickness", "Thickness", "mm", 3, 2000,
            usual=(5, 1000), default=("50", "2"), basis="judgement", hint="Along the lathe.", fold=True, when=(("asked", ("holds", "turned")), _ONE_END),
        ),
        measure("mass", "What it weighs", "kg", 0.005, 300, usual=(0.02, 100), hint="Empty: as a full disc of resin.", required=False, fold=True,
                when=(("asked", ("holds", "turned")), _ONE_END)),
        measure(
            "overhang", "Mount to the middle of the work", "mm", 0, 1500,
            usual=(1, 500), hint="Empty: half its thickness.", required=False, fold=True, when=(_HOLDS, _ONE_END),
        ),
        _choice("stage", "Is it round yet", "rough", (Option("rough", "Not yet"), Option("round", "Turned round")), fold=True, when=(_HOLDS,)),
        _choice(
            "balance",
            "Balance",
            "side",
            (
                *NOT_CHECKED,
                Option("done", "Balanced"),
                Option("known", "I know how far off centre it is", "centre of mass to spindle axis"),
            ),
            fold=True,
            when=(_HOLDS, _ONE_END),
        ),
        measure("eccentricity", "How far off centre", "mm", 0, 300, usual=(0, 100), fold=True, when=(_HOLDS, _ONE_END, ("balance", ("known",)))),
        _choice("steady", "Steady rest in the middle", "no", (NO, YES), fold=True, when=(_HOLDS, _CENTRES)),
    ),
    *under(
        "Glue",
        _choice(
            "lies", "How it lies", "full",
            (Option("full", "Full face", "counted as six tenths of it: it chills as it is pressed"), Option("ring", "A ring round the edge")),
            fold=True, when=(_HOLDS, _GLUE),
        ),
        measure(
            "bead", "Width of the ring", "mm", 1, 200,
            usual=(2, 60), default=("8", "5/16"), basis="judgement", fold=True, when=(_HOLDS, _GLUE, ("lies", ("ring",))),
        ),
        measure(
            "warm", "Warmest the glue gets", "°C", -20, 100,
            usual=(0, 60), default=("25", "77"), basis="judgement", fold=True, when=(_HOLDS, _GLUE),
            hint=("Hand-warm from sanding: about 40 °C.", "Hand-warm from sanding: about 104 °F."),
        ),
        _strength("pull", "My glue, pulled off", "Pull at which it let go, over its area. Empty: our judgement."),
        _strength("shear", "My glue, pushed off sideways", "Empty: our judgement."),
    ),
    *under(
        "Screws",
        _choice(
            "gauge", "Screws", "10",
            (
                Option("8", "Number 8", "4.2 mm (0.16 in)"), Option("10", "Number 10", "4.8 mm (0.19 in)"), Option("12", "Number 12", "5.5 mm (0.22 in)"),
                Option("14", "Number 14", "6.1 mm (0.24 in)"), Option("drywall", "Drywall or deck screws"),
            ),
            fold=True, when=(_HOLDS, _PLATE),
        ),
        measure(
            "bite", "Thread in the wood", "mm", 3, 150,
            usual=(8, 80), default=("20", "3/4"), basis="judgement", fold=True, when=(_HOLDS, _PLATE),
        ),
        _choice(
            "into", "Into", "middling",
            (
                Option("soft", "Soft wood", "pine, poplar"), Option("middling", "Middling", "soft maple, cherry"),
                Option("hard", "Hard wood", "maple, oak, ash"), Option("dense", "Very hard wood", "hickory, hornbeam"), Option("resin", "Resin"),
            ),
            fold=True, when=(_HOLDS, _PLATE),
        ),
        _choice("grain", "Driven", "side", (Option("side", "Across the grain"), Option("end", "Along it, into end grain")), fold=True, when=(_HOLDS, _PLATE)),
    ),
    *under(
        "Tenon",
        _choice(
            "tenon_of", "Tenon of", "softwood",
            (
                Option("softwood", "Soft wood, or not known"), Option("hardwood", "Hard wood, sound"),
                Option("bond", "Wood and resin, a joint across it"), Option("resin", "Resin"),
            ),
            fold=True, when=(_HOLDS, _CHUCK),
        ),
    ),
    *under(
        "Running",
        _choice(
            "catch", "Catch to allow for", "ordinary",
            (
                Option("light", "Light", "careful hands, light cuts"), Option("ordinary", "Ordinary", "a dig-in at the rim"),
                Option("hard", "Hard", "deep dig-in, long tool over the rest"),
            ),
            fold=True, when=(_HOLDS, _ONE_END),
        ),
        _choice(
            "runs", "It runs", "forward",
            (Option("forward", "Forward, coasts to a stop"), Option("brake", "Forward, stops hard", "brake or quick drive"), Option("reverse", "In reverse")),
            fold=True, when=(_HOLDS, _ONE_END),
        ),
        _choice("lock", "Lock screw in", "no", (NO, YES), fold=True, when=(_HOLDS, _ONE_END, ("runs", ("brake", "reverse")))),
        Quantity(
            name="stop", label="It stops in", kind="time", units=("s", "s"), low=0.05, high=120, usual=(0.2, 30), default="1", basis="judgement",
            fold=True, when=(_HOLDS, _ONE_END, ("runs", ("brake",))),
        ),
    ),
)  # fmt: skip

WORDS = {
    "outside": "{label}: {given} is wider than the work, which sweeps {found}.",
    "outside-rim": "{label}: {given} is beyond the rim, {found} from the spindle.",
    "wide-bead": "{label}: {given} from both sides is more than the block's {found}. Choose full face, or a narrower ring.",
    "no-block": "{label}: between centres there is no block for the rim to bend on. Choose what holds it, or ask whether it holds.",
    "same-marks": "{label}: between centres it goes back on its own two marks. Choose what holds it once it is turned round.",
    "off-the-rim": "{label}: {given} is as much as the work, {found} across. Look at the unit, and measure again.",
}


def work(given: Given) -> Answer:
    """Answer what is asked of the mount.

    Parameters
    ----------
    given : the parsed fields of :data:`QUESTION`.

    Returns
    -------
    Answer
        ``values``: ``hold`` (times), ``ceiling`` (rpm; none for a refusal), ``least``; or ``bend``, ``backing``; or ``stock``, ``unbalance``.

    Raises
    ------
    InputError
        for sizes that cannot go together; see ``WORDS``.
    """
    asked = given.choice("asked")
    if asked == "bends":
        return bends(given)
    if asked == "turned":
        return turned(given)
    return centres(given) if given.choice("hold") == "centres" else holds(given)


_ON_BLOCK = {"asked": "holds", "hold": "glue", "pull": "", "shear": "", "lies": "full"}
_AT_SPEED = {**_ON_BLOCK, "speed": "300 rpm"}
_ON_PLATE = {"asked": "holds", "hold": "faceplate"}
_IN_CHUCK = {"asked": "holds", "hold": "chuck"}
_BENT = {"asked": "bends", "hold": "glue", "diameter": "450 mm", "block": "120 mm", "thin": "15 mm"}
_ROUND = {"asked": "turned", "hold": "glue", "block": "20 mm"}
_FAR_ENDS = ("live", "pad", "none")


def _but(given: dict[str, str], *names: str) -> dict[str, str]:
    return {name: text for name, text in given.items() if name not in names}


QUESTION = Question(
    id="will-the-mount-hold",
    name="Will the mount hold?",
    moment="at the lathe",
    order=12,
    summary="Glue block, screws or tenon against a catch; the disc that bends; turning it round.",
    lead="A ceiling, never a promise. Ask again after every heating, and whenever the mount or the tailstock changes.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="Least glue block for a disc of 50 mm (2 in), hot glue over the full face on bare scuffed wood, at room warmth",
        rows=("diameter", (("150", "200", "250", "300", "400", "450", "600"), ("6", "8", "10", "12", "16", "18", "24"))),
        columns=("far_end", ("none", "pad", "live")),
        fixed={"block": ("100 mm", "4 in"), "face": "wood"},
        cell=lambda answer: answer.values["least"].shown,
        note="For an ordinary catch, three times over. Hot glue's strength on wood is our judgement; on resin the block must be wider. Warm glue holds less.",
    ),
    rules=(
        Rule("far_end", "ceiling", "rises", _FAR_ENDS, given=_ON_BLOCK, why="a weaker mount never runs faster"),
        Rule("far_end", "hold", "rises", _FAR_ENDS, given=_ON_PLATE, why="a weaker mount never holds more"),
        Rule("far_end", "hold", "rises", _FAR_ENDS, given=_IN_CHUCK, why="a weaker mount never holds more"),
        Rule("face", "ceiling", "rises", ("wood", "resin", "slick"), given=_ON_BLOCK, why="a worse face never holds more"),
        Rule("block", "hold", "falls", given=_but(_ON_BLOCK, "block") | {"diameter": "500 mm"}, why="a wider block never holds less"),
        Rule("block", "ceiling", "falls", given=_ON_BLOCK | {"diameter": "500 mm"}, why="a wider block never runs slower"),
        Rule("overhang", "hold", "rises", given=_ON_BLOCK, why="further out never holds more"),
        Rule("overhang", "ceiling", "rises", given=_ON_BLOCK, why="further out never runs faster"),
        Rule("overhang", "hold", "rises", given=_IN_CHUCK, why="further out never holds more"),
        Rule("warm", "hold", "rises", given=_ON_BLOCK, why="warmer glue never holds more"),
        Rule("warm", "ceiling", "rises", given=_ON_BLOCK, why="warmer glue never runs faster"),
        Rule("bead", "hold", "falls", given=_ON_BLOCK | {"lies": "ring", "diameter": "400 mm", "block": "150 mm"}, why="a wider ring never holds less"),
        Rule(
            "lies",
            "hold",
            "rises",
            ("full", "ring"),
            given=_but(_ON_BLOCK, "lies") | {"diameter": "400 mm", "block": "150 mm"},
            why="a ring is never more than the face",
        ),
        Rule("pull", "hold", "falls", given=_but(_ON_BLOCK, "pull"), why="stronger glue never holds less"),
        Rule("diameter", "hold", "rises", given=_AT_SPEED | {"block": "25 mm", "mass": ""}, why="a larger piece never holds better"),
        Rule("mass", "hold", "rises", given=_AT_SPEED, why="a heavier piece never holds better"),
        Rule("balance", "hold", "rises", GUESSES, given=_AT_SPEED, why="more out of balance never holds better"),
        Rule("catch", "hold", "rises", ("light", "ordinary", "hard"), given=_ON_BLOCK, why="a harder catch is never borne more often"),
        Rule("screws", "hold", "falls", given=_ON_PLATE, why="more screws never hold less"),
        Rule("bite", "hold", "falls", given=_ON_PLATE, why="more thread never holds less"),
        Rule("grain", "ceiling", "rises", ("side", "end"), given=_ON_PLATE, why="end grain never holds more"),
        Rule("tenon", "hold", "falls", given=_IN_CHUCK | {"diameter": "400 mm"}, why="a thicker tenon never holds less"),
        Rule("diameter", "bend", "falls", given=_but(_BENT, "diameter"), why="a wider disc never bends less"),
        Rule("block", "bend", "rises", given=_but(_BENT, "block"), span=(20, 450), why="a wider block never lets it bend more"),
        Rule("thin", "bend", "rises", given=_but(_BENT, "thin"), why="a thicker disc never bends more"),
        Rule("runout", "stock", "falls", given=_ROUND, why="more off centre never asks for less"),
    ),
)
