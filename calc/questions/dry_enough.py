"""Dry enough? What the wood holds, what the air brings it to, and whether to cast it now."""

from __future__ import annotations

from dataclasses import replace

from calc.answers import Answer
from calc.casting.species import UNKNOWN, all_species, options
from calc.fields import NO, YES, Choice, Field, Option, Quantity, measure
from calc.questions import Given, Question, Rule, Table
from calc.questions._dry_enough.answer import answer
from calc.questions._dry_enough.case import Wood
from calc.several import Numbers

_METER = (("judged", ("meter",)),)
_READ = (("judged", ("meter", "analyser")),)
_OVEN = (("judged", ("oven",)),)
_LOG = (("judged", ("log",)),)
_OWN_AIR = (("home", ("own",)),)
_LONG = ("days", "days")



def _woods() -> tuple[Option, ...]:
    """The woods, and of which of them the table does not say how much they move."""
    known = {key for key, wood in all_species().items() if wood.shrinkage is not None}
    return tuple(option if option.value in {*known, UNKNOWN} else replace(option, label=f"{option.label} (movement not known)") for option in options())


FIELDS: tuple[Field, ...] = (
    Choice(
        name="judged",
        label="How it was measured",
        options=(
            Option("meter", "Hand meter"),
            Option("log", "Weighed week by week", "The surest for burl and spalted wood."),
            Option("oven", "A sample dried in the oven", "The surest for one spot."),
            Option("analyser", "Moisture analyser", "It gives percent of the wet weight."),
            Option("none", "Not measured"),
        ),
        default="meter",
    ),
    Numbers(
        name="readings", label="Readings", kind="share", units=("%", "%"), low=0.1, high=90, usual=(4, 30), most=12,
        hint="Several, on a fresh end cut too. The wettest counts.", when=_READ,
    ),
    measure("before", "Sample before the oven", "g", 0.1, 50_000, usual=(5, 5_000), when=_OVEN),
    measure(
        "oven_dry", "Sample oven-dry", "g", 0.1, 50_000,
        usual=(5, 5_000), hint=("103 °C until it loses no more.", "217 °F until it loses no more."), when=_OVEN,
    ),
    measure("last", "Weight at the last weighing", "g", 5, 500_000, usual=(20, 100_000), when=_LOG),
    measure("now", "Weight now", "g", 5, 500_000, usual=(20, 100_000), when=_LOG),
    Quantity(name="apart", label="Days between the two", kind="time", units=_LONG, low=2, high=200, usual=(4, 60), hint="A week or more.", when=_LOG),
    measure(
        "earlier", "Weight at the weighing before that", "g", 5, 500_000,
        usual=(20, 100_000), hint="As many days before. Steady twice running counts.", required=False, when=_LOG,
    ),
    Choice(
        name="figure",
        label="Kind of wood",
        options=(Option("plain", "Plain"), Option("burl", "Burl, crotch or root"), Option("spalted", "Spalted or punky")),
        default="plain",
    ),
    measure(
        "shop", "Temperature of the shop air", "°C", 0, 50,
        usual=(5, 40), default=("21", "70"), basis="judgement",
    ),
    measure("humidity", "Humidity of the shop air", "%", 5, 95, usual=(15, 90), default="50", basis="judgement"),
    Choice(
        name="home",
        label="The piece will live",
        options=(
            Option("average", "In heated rooms"),
            Option("dry", "In heated rooms, dry country"),
            Option("humid", "In rooms by a warm, humid coast"),
            Option("own", "In air that I know"),
        ),
        default="average",
        basis="wood-handbook-13-1",
    ),
    measure("home_temperature", "Temperature there", "°C", 0, 50, usual=(5, 40), when=_OWN_AIR),
    measure("home_humidity", "Humidity there", "%", 5, 95, usual=(15, 90), when=_OWN_AIR),
    Choice(name="species", label="Wood", hint="For how much it moves.", options=_woods(), default=UNKNOWN, basis="judgement"),
    measure(
        "size", "Size across the grain", "mm", 5, 3000,
        usual=(15, 1500), hint="The largest, square to the fibres.", default=("150", "6"), basis="judgement",
    ),
    measure(
        "wood", "Temperature of the wood", "°C", 0, 60,
        usual=(2, 45), hint="Left empty: as warm as the shop air.", required=False, fold=True, when=_METER,
    ),
    Choice(
        name="corrects", label="The meter allows for temperature itself", options=(YES, NO), default="no", basis="judgement", fold=True, when=_METER,
    ),
    measure(
        "mass", "The whole piece weighs", "g", 5, 500_000,
        usual=(20, 100_000), hint="For what it will weigh when it is dry.", required=False, fold=True,
        when=(("judged", ("meter", "oven", "analyser")),),
    ),
)

WORDS = {
    "dry-heavier": "{label}: {given} is more than the sample weighed before the oven. Look which is which.",
    "wettest": "{label}: {given} makes the wood {found} water by its dry weight, more than wood holds. Weigh both again.",
    "humidity-for-log": "Enter {label_lower}. A steady weight says that the wood is as dry as the air it stood in, and no more.",
}

def work(given: Given) -> Answer:
    """Answer the question; a stop leads with how the wood gets dry, or gets measured."""
    return answer(Wood(given))


#: One plain meter on plain wood in plain rooms: what the rules below are about.
_METERED = {"judged": "meter", "figure": "plain", "home": "average", "corrects": "no"}

_OVENED = {"judged": "oven", "before": "112 g", "oven_dry": "100 g"}

QUESTION = Question(
    id="dry-enough",
    name="Dry enough?",
    moment="before the pour",
    order=5,
    summary="Cast the wood now or wait, and what it would move.",
    lead="What the wood holds, what this air brings it to, and whether to cast it now.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="Moisture that the air brings wood to",
        rows=("shop", (("5 °C", "10 °C", "15 °C", "20 °C", "25 °C", "30 °C", "35 °C"), ("40 °F", "50 °F", "60 °F", "70 °F", "80 °F", "90 °F", "100 °F"))),
        columns=("humidity", ("20 %", "30 %", "40 %", "50 %", "60 %", "70 %", "80 %", "90 %")),
        fixed={"judged": "none"},
        cell=lambda answer: answer.values["emc_here"].shown,
        note="Percent of the oven-dry weight, by humidity, for any wood left long enough.",
    ),
    rules=(
        Rule("readings", "moisture", "falls", given=_METERED, why="a wetter reading never means drier wood"),
        Rule("readings", "grade", "falls", given=_METERED, why="wetter wood is never judged better"),
        Rule("wood", "moisture", "rises", given=_METERED, why="in colder wood a meter reads too low, so it is set up"),
        Rule("figure", "grade", "falls", order=("plain", "burl", "spalted"), given={"judged": "meter"}, why="a meter that may mislead never helps"),
        Rule("humidity", "emc_here", "falls", given={"judged": "none"}, why="damper air never makes wood drier"),
        Rule("home", "grade", "rises", order=("dry", "average", "humid"), given=_OVENED, why="a damper home never asks for drier wood"),
        Rule("before", "grade", "falls", given={"judged": "oven", "oven_dry": "100 g"}, span=(100, 250), why="a wetter sample is never judged better"),
    ),
)
