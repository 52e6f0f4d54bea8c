"""Which grit next? From the scratches there are to the polish wanted, and how fast and how long it may be rubbed."""

from __future__ import annotations

from functools import partial

from calc.answers import Answer
from calc.fields import NO, YES, Choice, Field, Option, measure, under
from calc.questions import Given, Question, Rule, Table
from calc.questions._found_for import found_for
from calc.questions._which_grit.answer import answer
from calc.questions._which_grit.words import WORDS
from calc.several import Numbers
from calc.sources import value
from calc.turning import grits

_SANDED = ("start", ("sanded",))
_WHEEL = (("goal", ("wheel",)),)
_P, _CAMI = grits.grits("P"), grits.grits("CAMI")
_papers = partial(
    Numbers, kind="count", units=("", ""), low=12, high=2500, hint="Numbers only: 180 240 400. Empty: what most shops have.", required=False, fold=True
)

FIELDS: tuple[Field, ...] = (
    Choice(
        name="start",
        label="Where you are",
        options=(
            Option("sanded", "Sanded"),
            Option("clean", "Off the tool, a clean cut"),
            Option("torn", "Off the tool, torn or chipped"),
        ),
        default="sanded",
    ),
    Choice(
        name="scale",
        label="Your papers say",
        hint="On the back. Above 220 the same number is another grit.",
        options=(Option("p", "P and a number", "FEPA: P320"), Option("cami", "A number alone", "CAMI, United States: 320")),
        default="p",
        basis="judgement",
    ),
    Choice(
        name="grit_p", label="Last grit", options=tuple(Option(f"p{grit.number}", grit.name) for grit in _P if grit.number >= 30),
        when=(_SANDED, ("scale", ("p",))),
    ),
    Choice(
        name="grit_cami", label="Last grit, no P", options=tuple(Option(f"{grit.number}", f"{grit.number}") for grit in _CAMI if grit.number >= 30),
        when=(_SANDED, ("scale", ("cami",))),
    ),
    Choice(
        name="goal",
        label="Polish wanted",
        options=(
            Option("paste", "Gloss, paste by hand"),
            Option("wheel", "Gloss, on a buffing wheel"),
            Option("clear", "Glass clear, light shines through"),
            Option("satin", "Satin"),
            Option("coat", "A finish goes over it", "oil or varnish"),
        ),
        default="paste",
        basis="judgement",
    ),
    measure("diameter", "Diameter of the work", "mm", 5, 1500, usual=(25, 1000)),
    Choice(
        name="condition",
        label="How it looks",
        options=(
            Option("solid", "Solid", "nothing seen; cured; wood sound or none"),
            Option("filled", "Filled", "wood all encased, voids filled, glue lines"),
            Option("loose", "Loose or doubtful", "bark, open voids, bare or soft wood, or cure not known"),
            Option("cracked", "Cracked", "a crack that does not go through"),
            Option("broken", "Coming apart", "crack right through, bond opened, or wood loose in it"),
        ),
        default="loose",
        basis="judgement",
    ),
    Choice(
        name="surface",
        label="What you see",
        options=(
            Option("even", "Even scratches of the last grit"),
            Option("scratches", "Coarser scratches still show"),
            Option("hot", "Smears, clogged paper, sweet smell"),
        ),
        default="even",
        basis="judgement",
        fold=True,
    ),
    *under(
        "How you sand",
        Choice(
            name="way", label="By", options=(Option("hand", "Hand"), Option("power", "Power", "a spinning pad on slowly turning work")),
            default="hand", basis="judgement", fold=True,
        ),
        Choice(name="wet", label="Wet or dry", options=(Option("dry", "Dry"), Option("wet", "Wet")), default="dry", basis="judgement", fold=True),
        Choice(name="bare", label="Bare wood shows", options=(YES, NO), default="yes", basis="judgement", fold=True),
        Choice(
            name="press", label="Press", options=(Option("light", "Fingertips", "10 N, 2 lb"), Option("firm", "Firm hand", "20 N, 4 1/2 lb")),
            default="firm", basis="judgement", fold=True,
        ),
        measure("piece", "Top speed for sanding", "rpm", 1, 20000, hint="From 'How fast?': balance and mount.", required=False, fold=True),
        found_for("piece_for", "That speed: for work that sweeps"),
        measure("rpm", "It runs at", "rpm", 5, 6000, hint="Empty: at the ceiling.", required=False, fold=True),
        Choice(
            name="reverse",
            label="In reverse",
            options=(Option("no", "No"), Option("locked", "Yes, lock screw in"), Option("unlocked", "Yes, not locked")),
            default="no",
            basis="judgement",
            fold=True,
        ),
        Choice(
            name="hold",
            label="Held by",
            options=(Option("glue", "Glue block"), Option("faceplate", "Faceplate"), Option("chuck", "Chuck"), Option("centres", "Between centres")),
            default="glue",
            basis="judgement",
            fold=True,
        ),
    ),
    *under(
        "Heat",
        measure(
            "soft", "The resin softens at", "°C", 30, 200, usual=(38, 150), hint="Tg or HDT on its sheet.",
            default=(f"{value('sanding', 'soft'):g}", "122"), basis="judgement", fold=True,
        ),
        measure("face", "The face is at", "°C", -5, 100, usual=(5, 60), hint="Before you start.", default=("20", "68"), basis="judgement", fold=True),
    ),
    *under("Papers you have", _papers(name="have_p", label="With a P"), _papers(name="have_cami", label="With no P")),
    *under(
        "The wheel",
        measure("wheel", "Wheel across", "mm", 20, 400, usual=(50, 300), default=("200", "8"), basis="judgement", fold=True, when=_WHEEL),
        measure("wheel_marked", "Speed marked on the wheel", "rpm", 100, 20000, hint="Empty: it has none.", required=False, fold=True, when=_WHEEL),
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
        ``values``: ``next`` (its grain, m; none when there is nothing left to sand), ``path`` (how many steps), ``speed`` and ``ceiling`` (rpm),
        ``seconds`` in one place, and ``wheel`` (rpm) where one is used.

    Raises
    ------
    InputError
        ``no-such-grit`` for a paper that its scale does not have.
    """
    return answer(given)


_FIXED = {"start": "sanded", "scale": "p", "have_p": "", "have_cami": "", "condition": "filled", "rpm": "", "way": "hand"}
_GRITS = tuple(f"p{grit.number}" for grit in _P if grit.number >= 30)

QUESTION = Question(
    id="which-grit-next",
    name="Which grit next?",
    moment="at the lathe",
    order=36,
    summary="The next paper and those after it, how fast, and how long in one place.",
    lead="Each grit only has to take out the scratches of the one before. Heat spoils more polishes than a wrong grit.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="The papers from the last grit to the polish (FEPA P, as most shops have them)",
        rows=("grit_p", ("P80", "P120", "P180", "P220", "P240", "P320", "P400")),
        columns=("goal", ("coat", "paste", "clear")),
        fixed={"diameter": ("300", "12"), "condition": "filled"},
        cell=lambda answer: answer.values["path"].shown,
        note="With no P on the paper (CAMI): 320 is about P400, 400 about P800, 600 about P1200, 800 about P1500, 1000 about P2000.",
    ),
    rules=(
        Rule("grit_p", "next", "rises", _GRITS, _FIXED, why="after a finer grit the next is never coarser"),
        Rule("diameter", "ceiling", "rises", given=_FIXED, why="a larger piece"),
        Rule("condition", "ceiling", "rises", ("solid", "filled", "loose", "cracked"), {**_FIXED, "condition": "filled"}, why="a worse condition"),
        Rule("soft", "seconds", "falls", given=_FIXED, why="a resin that softens later never takes less"),
        Rule("face", "seconds", "rises", given=_FIXED, why="a warmer face never takes more"),
        Rule("press", "seconds", "rises", ("light", "firm"), _FIXED, why="a heavier hand never leaves more time"),
        Rule("rpm", "seconds", "rises", given={name: text for name, text in _FIXED.items() if name != "rpm"}, why="faster never leaves more time"),
        Rule("wheel", "wheel", "rises", given={**_FIXED, "goal": "wheel"}, why="a larger wheel"),
    ),
    words=WORDS,
)
