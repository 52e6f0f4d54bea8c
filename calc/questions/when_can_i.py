"""When can I? The clock of a casting: swirl, top up, the next layer, out of the mould, under a tool, in use."""

from __future__ import annotations

from functools import partial

from calc.answers import Answer
from calc.casting.cure.kinetics import resin_classes
from calc.casting.cure.stages import step_of
from calc.fields import NO, YES, Choice, Field, Option, Quantity, measure
from calc.questions import Given, Question, Rule, Steps, Table
from calc.questions._resin.fields import POT_MEANS
from calc.questions._when.answer import answer
from calc.several import Ratio, Series
from calc.times import Clock

_POT = (("resin", ("pot",)),)
_CUP = (("resin", ("cup",)),)
_ROUND = (("shape", ("round",)),)
_OBLONG = (("shape", ("oblong",)),)
_NIGHT = (("night_cools", ("yes",)),)

_resin = partial(measure, fold=True, group="The resin")
_sheet = partial(measure, unit="h", low=0.1, high=2000, required=False, fold=True, group="The sheet's times", accepts=("min", "h", "days"))
_seen = partial(measure, unit="h", low=0.05, high=2000, required=False, fold=True, group="What you saw", accepts=("min", "h", "days"))
_others = partial(Series, kind="length", units=("mm", "in"), low=1, fewest=1, most=8, required=False, fold=True, group="Other moulds of this batch")

FIELDS: tuple[Field, ...] = (
    Choice(
        name="resin",
        label="Resin",
        options=(
            Option("pot", "I have its pot life"),
            Option("cup", "I have its test cup", "Worked out under What is this resin?"),
            *(Option(kind.id, kind.name) for kind in resin_classes()),
        ),
        default="pot",
    ),
    measure("pot_life", "Pot life on the sheet", "min", 2, 6000, usual=(8, 3000), hint="Or working time.", when=_POT),
    measure("cup_gel", "Gels, thin, at 25 °C (77 °F) in", "h", 0.02, 1000, usual=(0.3, 100), hint="'What is this resin?' gives these three.", when=_CUP),
    measure("cup_heat", "Heat of the mix", "J/g", 100, 700, usual=(220, 520), when=_CUP),
    Quantity(name="cup_shape", label="Shape number", kind="count", units=("", ""), low=-0.3, high=1.3, when=_CUP),
    measure("depth", "Depth of resin", "mm", 1, 500, usual=(2, 150)),
    Choice(name="shape", label="Mould", options=(Option("round", "Round or square"), Option("oblong", "Oblong")), default="round"),
    measure("across", "Inside across", "mm", 10, 3000, usual=(20, 1200), when=_ROUND),
    measure("length", "Length inside", "mm", 10, 5000, usual=(20, 3000), when=_OBLONG),
    measure("width", "Width inside", "mm", 10, 3000, usual=(20, 1200), when=_OBLONG),
    measure("room", "Shop temperature", "°C", 5, 40, usual=(10, 32), default=("20", "68"), basis="judgement", hint="By day."),
    Clock(name="poured", label="Poured at", hint=("Like 14:30, for the time of day.", "Like 2:30 pm, for the time of day."), required=False),
    # more
    Choice(
        name="night_cools", label="Cooler by night", options=(YES, NO), default="no", fold=True, group="The shop",
    ),
    measure("night", "Shop by night", "°C", 0, 40, usual=(5, 30), fold=True, group="The shop", when=_NIGHT),
    Clock(name="night_from", label="Night from", default=("21:00", "9 pm"), basis="judgement", fold=True, group="The shop", when=_NIGHT),
    Clock(name="night_to", label="Night to", default=("7:00", "7 am"), basis="judgement", fold=True, group="The shop", when=_NIGHT),
    Choice(name="fan", label="Fan over the mould", options=(YES, NO), default="no", fold=True, group="The shop"),
    Choice(
        name="wall",
        label="Mould of",
        options=(
            Option("board", "Board, 16 mm (5/8 in)"),
            Option("hdpe", "Plastic, 3 mm (1/8 in)"),
            Option("silicone", "Silicone, 8 mm (5/16 in)"),
        ),
        default="board",
        fold=True,
        group="The mould",
    ),
    measure("wood", "Wood in it, share of the volume", "%", 0, 90, default="0", basis="judgement", fold=True, group="The mould"),
    Choice(
        name="pot_means", label="What ends the sheet's pot life", options=POT_MEANS, default="unknown", basis="judgement",
        fold=True, group="The resin", when=_POT,
    ),
    _resin("pot_mass", "Pot life was for", "g", 5, 20_000, usual=(20, 2000), default=("100", "3 1/2"), basis="practice", when=_POT),
    _resin("pot_temperature", "Pot life was at", "°C", 5, 40, usual=(15, 35), default=("25", "77"), basis="practice", when=_POT),
    _resin("deepest", "Deepest layer on the sheet", "mm", 1, 500, usual=(2, 150), required=False),
    Ratio(name="ratio", label="Ratio by weight, A first", required=False, fold=True, group="The resin"),
    _resin("viscosity", "Viscosity at 25 °C (77 °F)", "mPa·s", 20, 100_000, usual=(80, 15_000), required=False),
    _resin("waited", "From mixing to pouring", "min", 0, 600, usual=(0, 120), hint="Empty: a quarter of an hour, less for fast resin.", required=False),
    _resin("warmth", "Resin as poured", "°C", 5, 60, usual=(10, 45), hint="Empty: as warm as the shop.", required=False),
    _sheet("earliest", "Next layer not before", usual=(0.5, 200)),
    _sheet("latest", "Next layer not after", usual=(1, 400), hint="To bond without scuffing."),
    _sheet("demould", "Leave the mould after", usual=(1, 400)),
    _sheet("cure", "Full cure after", usual=(4, 1000)),
    measure(
        "sheet_temperature", "Those times are for", "°C", 5, 40, usual=(15, 35),
        default=(f"{step_of('full cure at'):g}", "77"), basis="practice", fold=True, group="The sheet's times",
    ),
    _seen("seen_gel", "It pulled strings that break at", usual=(0.2, 100), hint="Hours after the pour, in the mould. Sets the clock right."),
    _seen("seen_hard", "A fingernail left no mark at", usual=(1, 400), hint="Hours after the pour. Counts instead of ours."),
    _others(name="other_depths", label="Their depths", high=500, usual=(2, 150), hint="One for each, in order."),
    _others(name="other_widths", label="Their narrowest widths", high=3000, usual=(20, 1200)),
)


def work(given: Given) -> Steps:
    """The clock of every mould; see :func:`calc.questions._when.answer.answer`."""
    return answer(given)


def _cell(reply: Answer) -> str:
    """Out of the mould, or why not."""
    return reply.headline.shown if reply.values["leave"].si is not None else "not like this"


_PLAIN = {
    "resin": "slow", "shape": "round", "across": "200 mm", "depth": "20 mm", "room": "20 °C", "night_cools": "no", "waited": "15", "wall": "board",
    **dict.fromkeys(("poured", "deepest", "other_depths", "other_widths", "earliest", "latest", "warmth", "ratio", "seen_gel", "seen_hard"), ""),
}

QUESTION = Question(
    id="when-can-i",
    name="When can I?",
    moment="at the bench",
    order=22,
    summary="Swirl, top up, the next layer, out of the mould, under a tool, in use: the hours of each mould.",
    lead="Hours after the pour, at your shop's temperature; the time of day where you say when you pour.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="Leave the mould after: by kind of resin, round mould 200 mm (8 in) across, board",
        rows=("room", (("15", "20", "25"), ("59", "68", "77"))),
        columns=("resin", ("slow", "standard", "fast")),
        fixed={"depth": ("4", "3/16"), "across": ("200", "8"), "shape": "round"},
        cell=_cell,
        warm=False,
        note="4 mm (3/16 in) deep. The coldest part is stiff by then; twice what the model says. The sheet's time counts where it is longer.",
    ),
    rules=(
        Rule("demould", "leave", "falls", given=_PLAIN, why="a longer time on the sheet never lets it out sooner"),
        Rule("viscosity", "finest_bubble", "falls", given=_PLAIN, why="thicker resin never lets finer bubbles out"),
        Rule("waited", "working", "rises", given={**_PLAIN, "waited": ""}, span=(0, 100), why="resin that stood longer never leaves more time"),
        Rule("earliest", "layer_from", "falls", given=_PLAIN, why="the sheet's earliest time never brings the next layer forward"),
    ),
    words={
        "poured-needed": "{label}: enter the time, like {like}. It says how soon the night comes.",
        "warmer-night": "{label}: {given} is warmer than the day, {day}. Change one of them, or choose 'No' for a cooler night.",
        "no-night": "{label}: the night ends when it begins. Change one of the two times.",
        "one-each": "{label}: one for each of the other moulds, and there are {count}.",
        "never-so-hot": "{label}: resin with so long a pot life never gets that hot in its cup. Choose another end, or 'It does not say'.",
        "far-off": "{label}: {given} is more than five times off what this resin would do, {model}. Look at the pot life, or at the unit.",
        "stood-too-long": "{label}: after {given} this resin no longer pours. Mix less, or pour sooner.",
    },
)
