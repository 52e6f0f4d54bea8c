"""Why is it out of true? A short interview and the numbers of this piece: causes, the test that tells them apart, how long to leave it."""

from __future__ import annotations

from calc.answers import Answer
from calc.casting.species import UNKNOWN, options
from calc.fields import NO, YES, Choice, Field, Option, Quantity, measure, under
from calc.questions import Given, Question, Rule, Table
from calc.questions._why_out_of_true.answer import answer
from calc.questions._why_out_of_true.words import WORDS
from calc.several import Series
from calc.turning.cooling import figure_of

_WARM = (("warm", ("all", "side", "face")),)
_MOVES = (("sign", ("rim-twice", "face-twice", "dish")),)
_FACE = (("sign", ("face-once", "face-twice", "dish")),)

FIELDS: tuple[Field, ...] = (
    Choice(
        name="sign",
        label="What is out",
        hint="Turn it by hand past a dial, a pointer or a pencil.",
        options=(
            Option("rim-once", "Rim, once a turn"),
            Option("face-once", "Face, once a turn", "it wobbles"),
            Option("rim-twice", "Rim, twice a turn", "it is oval"),
            Option("face-twice", "Face, twice a turn", "a saddle; it rocks on a bench"),
            Option("dish", "Face, the same all round", "dished or domed"),
        ),
    ),
    measure("diameter", "Diameter", "mm", 20, 1500, usual=(40, 1000)),
    measure("thickness", "Thickness", "mm", 2, 500, usual=(5, 200)),
    Choice(
        name="hold",
        label="Held by",
        options=(Option("glue", "Glue block"), Option("faceplate", "Faceplate"), Option("chuck", "Chuck"), Option("centres", "Between centres")),
        default="glue",
        basis="judgement",
    ),
    Choice(
        name="warm",
        label="How warm it is",
        options=(
            Option("cold", "Cold, like the shop"),
            Option("all", "Warm all through"),
            Option("side", "Warmer on one side"),
            Option("face", "Warmer on one face"),
        ),
        default="cold",
        basis="judgement",
    ),
    Choice(
        name="since",
        label="Since when",
        options=(
            Option("unknown", "Not known"),
            Option("start", "Since it was mounted"),
            Option("turned", "Since it was turned round"),
            Option("stood", "Ran true, then stood", "a night or more"),
            Option("caught", "Ran true, then a catch"),
            Option("working", "Ran true, then got warm", "came while I worked, or grows"),
            Option("cut", "Ran true, then hollowed", "or heavy cuts"),
        ),
        default="unknown",
    ),
    Choice(
        name="mount",
        label="At the mount, near the spindle",
        options=(Option("unknown", "Not measured"), Option("same", "Out there as well"), Option("true", "True there")),
        default="unknown",
    ),
    measure("runout", "Out by", "mm", 0, 50, usual=(0.01, 5), hint="At the rim, lowest to highest over a turn.", required=False),
    Choice(name="one_face", label="Cut mostly from one face", options=(NO, YES), default="no", fold=True),
    Choice(
        name="opened",
        label="A crack or an open line shows",
        options=(NO, Option("mount", "At the mount", "a line, or it has shifted"), Option("piece", "In the piece")),
        default="no",
        basis="judgement",
        fold=True,
    ),
    measure("change", "Changed in 5 minutes by", "mm", 0, 20, usual=(0, 3), hint="Two measurements, nothing cut between.", required=False, fold=True),
    *under(
        "How warm, and how it cools",
        measure(
            "temperature", "Its warmest place", "°C", -10, 120, usual=(15, 90), hint="Hand-warm is about this.",
            default=(f"{figure_of('hand-warm'):g}", "104"), basis="judgement", fold=True, when=_WARM,
        ),
        measure("room", "The shop", "°C", -10, 45, usual=(2, 38), default=("20", "68"), basis="judgement", fold=True, when=_WARM),
        Quantity(
            name="difference", label="Warmer side or face, by", kind="temperature difference", units=("°C", "°F"), low=0, high=100, usual=(0, 60),
            hint="Empty: as much as it can be.", required=False, fold=True, when=_WARM,
        ),
        Choice(
            name="cover",
            label="It cools",
            options=(
                Option("mounted", "With one face on its mount", "faceplate or glue block"),
                Option("open", "With both faces open", "on battens, or in a chuck"),
            ),
            default="mounted",
            basis="judgement",
            fold=True,
            when=(*_WARM, ("hold", ("glue", "faceplate"))),
        ),
        Choice(
            name="air",
            label="In",
            options=(Option("still", "Still air"), Option("fan", "Moving air", "a fan on it, or turning slowly"), Option("boxed", "A box, or wrapped")),
            default="still",
            basis="film-formula",
            fold=True,
            when=_WARM,
        ),
        Choice(
            name="stuff", label="It is mostly", options=(Option("resin", "Resin"), Option("wood", "Wood")),
            default="resin", basis="judgement", fold=True, when=_WARM,
        ),
        measure(
            "soft", "The resin softens at", "°C", 30, 200, usual=(38, 150), hint="Tg or HDT on its sheet.",
            default=(f"{figure_of('soft'):g}", "122"), basis="judgement", fold=True, when=_WARM,
        ),
    ),
    *under(
        "The wood in it",
        Choice(name="wood", label="Wood", options=options(), default=UNKNOWN, fold=True, when=_MOVES),
        Choice(
            name="grain",
            label="Grain",
            options=(Option("face", "Across the disc", "face grain"), Option("end", "Through the disc", "end grain: you see the rings")),
            default="face",
            basis="judgement",
            fold=True,
            when=_MOVES,
        ),
        measure("wood_across", "Wood across", "mm", 2, 1500, usual=(5, 1000), hint="Empty: all of it.", required=False, fold=True, when=_MOVES),
        measure(
            "moisture_change", "Moisture changed by", "%", 0, 25, usual=(0, 12),
            default=f"{figure_of('moisture change'):g}", basis="judgement", fold=True, when=_MOVES,
        ),
        measure(
            "layer", "Thickness of a wood layer", "mm", 1, 400, usual=(2, 150),
            hint="If wood lies under resin all over.", required=False, fold=True, when=(("sign", ("dish",)),),
        ),
    ),
    *under(
        "It rocks on a flat bench",
        Series(
            name="feelers",
            label="Three gaps under the rim",
            hint="Press where it rests. Gaps at a quarter, half and three quarters round from there.",
            kind="length", units=("mm", "in"), low=0, high=30, usual=(0, 10), accepts=("mm", "in"), fewest=3, most=3, required=False, fold=True, when=_FACE,
        ),
    ),
)


def work(given: Given) -> Answer:
    """Answer the question.

    Parameters
    ----------
    given : the parsed fields of :data:`QUESTION`.

    Returns
    -------
    Answer
        ``values``: ``wait`` (s, 0 when cold), ``cause_1`` to ``cause_3`` or ``cause_4``, how far heat or water can move it, by cause (m), and where
        it was measured ``runout``, ``left`` and ``twist`` (m).

    Raises
    ------
    InputError
        ``not-warmer``, ``more-than-warm``, ``off-the-rim``, ``wider`` or ``no-resin`` where two figures contradict each other.
    """
    return answer(given)


_PLAIN = {"layer": "", "difference": "", "feelers": "", "wood_across": ""}
_WARMED = {"sign": "dish", "warm": "all", "temperature": "45 °C", "room": "20 °C", "hold": "glue", "runout": "", **_PLAIN}
_MEASURED = {"warm": "cold", "diameter": "300 mm", "thickness": "60 mm", **_PLAIN}

QUESTION = Question(
    id="why-out-of-true",
    name="Why is it out of true?",
    moment="at the lathe",
    order=34,
    summary="What made it move, the test that tells, and how long to leave it.",
    lead="Answer what you see. Heat goes by itself, water and stress in days. A mount that gives never gets better: mount it anew.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="Cold through (within 1 °C, 1.8 °F) from 45 °C (113 °F), still air at 20 °C (68 °F), mostly resin",
        rows=("thickness", (("15", "25", "40", "50", "75", "100"), ("1/2", "1", "1 1/2", "2", "3", "4"))),
        columns=("cover", ("open", "mounted")),
        fixed={"sign": "dish", "diameter": ("300", "12"), "warm": "all", "temperature": ("45", "113"), "room": ("20", "68")},
        cell=lambda answer: answer.values["wait"].shown,
        note="In a box about twice as long; with a fan about half. Leave it overnight, 24 h for 75 mm (3 in) and more or with one face covered.",
    ),
    rules=(
        Rule("thickness", "wait", "falls", given=_WARMED, why="a thicker piece never cools sooner"),
        Rule("temperature", "wait", "falls", given={name: text for name, text in _WARMED.items() if name != "temperature"}, why="warmer never cools sooner"),
        Rule("cover", "wait", "falls", ("open", "mounted"), _WARMED, why="a covered face never cools it sooner"),
        Rule("air", "wait", "falls", ("fan", "still", "boxed"), _WARMED, why="stiller air never cools it sooner"),
        Rule("runout", "left", "rises", given={**_MEASURED, "sign": "face-once"}, why="more out never leaves more"),
        Rule("diameter", "gradient", "falls", given={**_WARMED, "warm": "face"}, why="a wider disc never dishes less"),
        Rule("thickness", "gradient", "rises", given={**_WARMED, "warm": "face"}, why="a thicker disc never dishes more"),
    ),
    words=WORDS,
)
