"""Pot or vacuum: does the mould go into the pressure pot and may the pot hold it, or how much resin at a time under vacuum?"""

from __future__ import annotations

from calc.answers import Answer
from calc.casting.standards import standard
from calc.fields import Choice, Field, Option, measure
from calc.questions import Given, Question, Rule, Table
from calc.questions._pot_or_vacuum.pot import pot
from calc.questions._pot_or_vacuum.vacuum import vacuum
from calc.sources import value

_POT = ("method", ("pot",))
_VACUUM = ("method", ("vacuum",))
_ROUND = ("shape", ("round",))
_SQUARE = ("shape", ("square",))
_UNREAD = "Empty: not checked."


def work(given: Given) -> Answer:
    """The pot or the vacuum, whichever was chosen.

    Parameters
    ----------
    given : the parsed fields of :data:`QUESTION`.

    Returns
    -------
    Answer
        see :func:`calc.questions._pot_or_vacuum.pot.pot` and :func:`calc.questions._pot_or_vacuum.vacuum.vacuum`.

    Raises
    ------
    InputError
        ``tray-small``, ``deeper-than-mould``, ``deeper-than-air``.
    """
    return pot(given) if given.choice("method") == "pot" else vacuum(given)


FIELDS: tuple[Field, ...] = (
    Choice(
        name="method",
        label="What you use",
        default="pot",
        basis="judgement",
        options=(
            Option("pot", "Pressure pot", "the filled mould goes in and cures under pressure"),
            Option("vacuum", "Vacuum", "the mixed resin, before it is poured"),
        ),
    ),
    # the pot
    measure("pot_across", "Pot, across inside", "mm", 50, 1500, usual=(120, 700), hint="At its narrowest, liner in.", when=(_POT,)),
    measure("pot_height", "Pot, height inside", "mm", 50, 2000, usual=(120, 800), hint="Floor to underside of the lid.", when=(_POT,)),
    Choice(
        name="shape",
        label="Mould",
        default="round",
        basis="judgement",
        options=(Option("round", "Round"), Option("square", "Square or oblong")),
        when=(_POT,),
    ),
    measure("mould_across", "Mould, across outside", "mm", 10, 1500, usual=(20, 600), when=(_POT, _ROUND)),
    measure("mould_length", "Mould, length outside", "mm", 10, 1500, usual=(20, 600), when=(_POT, _SQUARE)),
    measure("mould_width", "Mould, width outside", "mm", 10, 1500, usual=(20, 600), when=(_POT, _SQUARE)),
    measure("mould_height", "Mould, height outside", "mm", 10, 2000, usual=(15, 600), hint="With anything that stands out of it.", when=(_POT,)),
    measure("pressure", "Pressure planned", "bar", 0.1, 20, usual=(0.5, 7), when=(_POT,)),
    measure(
        "rated", "Pot's plate, highest", "bar", 0.1, 50, usual=(1, 15),
        hint=f"Working pressure, not test pressure. {_UNREAD}", required=False, when=(_POT,),
    ),
    measure("relief", "Relief valve opens at", "bar", 0.1, 50, usual=(1, 15), hint=_UNREAD, required=False, when=(_POT,)),
    measure(
        "hose", "Hose and fittings, marked", "bar", 0.1, 400, usual=(2, 40),
        hint=f"The lowest of them. {_UNREAD}", required=False, fold=True, when=(_POT,),
    ),
    measure("gauge_scale", "Gauge goes up to", "bar", 0.1, 400, usual=(2, 25), hint=_UNREAD, required=False, fold=True, when=(_POT,)),
    measure("base", "Board or blocks under it", "mm", 0, 500, default="0", basis="judgement", fold=True, when=(_POT,)),
    measure("tray", "Cup or tray it stands in, across", "mm", 10, 1500, usual=(20, 700), hint="Corner to corner.", required=False, fold=True, when=(_POT,)),
    measure(
        "gap_side", "Room to leave beside it", "mm", 0, 100,
        default=(f"{value('pressure', 'free beside'):g}", "3/16"), basis="judgement", fold=True, when=(_POT,),
    ),
    measure(
        "gap_top", "Room to leave above it", "mm", 0, 300,
        default=(f"{value('pressure', 'free above'):g}", "1"), basis="judgement", fold=True, when=(_POT,),
    ),
    measure("depth", "Resin depth wanted", "mm", 2, 1000, usual=(5, 500), hint="For how far the level falls.", required=False, fold=True, when=(_POT,)),
    measure(
        "air_share", "Air caught in it", "%", 0, 50, usual=(0, 25), default=f"{100 * value('pressure', 'air caught'):g}", basis="judgement",
        hint="Open or soft unsealed wood: 10 and more.", fold=True, when=(_POT,),
    ),
    measure("demould", "Sheet's time to leave the mould", "h", 0.2, 400, usual=(1, 200), required=False, fold=True, when=(_POT,)),
    # vacuum
    measure("batch", "Mixed resin, all of it", "g", 5, 50000, usual=(20, 20000), when=(_VACUUM,)),
    measure("bucket", "Bucket, to the brim", "L", 0.05, 100, usual=(0.2, 30), when=(_VACUUM,)),
    measure("deepest", "Deepest your gauge goes", "kPa", 1, 105, usual=(40, 105), hint="Below the room, without a minus.", when=(_VACUUM,)),
    Choice(
        name="chamber",
        label="Chamber sold for full vacuum",
        default="unknown",
        basis="judgement",
        options=(Option("yes", "Yes"), Option("no", "No"), Option("unknown", "I do not know")),
        when=(_VACUUM,),
    ),
    measure("pump", "Time under vacuum", "min", 0.5, 240, usual=(1, 60), required=False, fold=True, when=(_VACUUM,)),
    measure("hands", "Mixing and pouring take", "min", 0.5, 600, usual=(1, 240), hint="Besides the vacuum.", required=False, fold=True, when=(_VACUUM,)),
    measure("chamber_across", "Chamber lid, across", "mm", 50, 1500, usual=(100, 700), required=False, fold=True, when=(_VACUUM,)),
    measure(
        "fill", "Share of the bucket", "%", 5, 50, default=f"{100 * value('pressure', 'vacuum fill'):g}", basis="degas-suppliers",
        hint="The rest is for foam.", fold=True, when=(_VACUUM,),
    ),
    measure(
        "density", "Density of the mixed resin", "g/mL", 0.8, 2.5, usual=(1.0, 1.3), default=f"{standard('density usual'):g}", basis="practice",
        fold=True, when=(_VACUUM,),
    ),
    # both
    measure("working", "Working time on the sheet", "min", 1, 6000, usual=(5, 1500), required=False, fold=True),
    measure("altitude", "Height above the sea", "m", -400, 5000, default="0", basis="judgement", fold=True),
    measure(
        "gauge_error", "Gauge may be off by", "%", 0, 10, default=f"{100 * value('pressure', 'gauge error'):g}", basis="dial-gauges",
        hint="Of its full scale.", fold=True,
    ),
)

_IN_A_POT = {
    "method": "pot",
    "shape": "round",
    "pot_across": "250 mm",
    "pot_height": "300 mm",
    "mould_across": "150 mm",
    "mould_height": "120 mm",
    "pressure": "3 bar",
}
_IN_VACUUM = {"method": "vacuum", "batch": "900 g", "bucket": "2 L", "deepest": "98 kPa"}

QUESTION = Question(
    id="pot-or-vacuum",
    name="Pot or vacuum?",
    moment="before the pour",
    order=26,
    summary="Does the mould go in, what may the pot hold, what is left of the bubbles; or how much at a time under vacuum.",
    lead="A pot squeezes bubbles small until the resin is hard. Vacuum pulls them out of the bucket before the pour.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="What is left of a bubble's width in a pressure pot, at two heights above the sea",
        rows=("pressure", (("1", "2", "2.75", "3.5", "4", "5"), ("15", "30", "40", "50", "60", "75"))),
        columns=("altitude", (("0 m", "1500 m"), ("0 ft", "5000 ft"))),
        fixed={name: text for name, text in _IN_A_POT.items() if name not in ("pressure", "altitude")},
        cell=lambda answer: answer.values["bubble"].shown,
        note="Never above the lowest marking of pot, relief valve, hose and gauge. Let go before the resin is hard, the bubbles grow back.",
    ),
    rules=(
        Rule("pressure", "bubble", "rises", given=_IN_A_POT, why="more pressure never leaves larger bubbles"),
        Rule("pressure", "energy", "falls", given=_IN_A_POT, why="more pressure never holds less"),
        Rule("pressure", "stops", "falls", given={**_IN_A_POT, "rated": "4 bar"}, why="more pressure never ends a stop"),
        Rule("rated", "not_checked", "rises", given=_IN_A_POT, why="a plate that was read is never less checked"),
        Rule("mould_across", "stops", "falls", given=_IN_A_POT, why="a wider mould never ends a stop"),
        Rule("mould_height", "stops", "falls", given=_IN_A_POT, why="a higher mould never ends a stop"),
        Rule("pot_across", "lid", "falls", given=_IN_A_POT, why="a wider lid is never pushed less"),
        Rule("air_share", "fill", "falls", given={**_IN_A_POT, "depth": "60 mm"}, why="more air never needs less"),
        Rule("altitude", "bubble", "rises", given=_IN_A_POT, why="thinner air outside never leaves larger bubbles"),
        Rule("deepest", "growth", "falls", given=_IN_VACUUM, why="a deeper vacuum never swells them less"),
        Rule("deepest", "stops", "rises", given=_IN_VACUUM, why="a deeper vacuum never adds a stop"),
        Rule("bucket", "goes", "rises", given=_IN_VACUUM, why="a larger bucket never takes more goes"),
        Rule("batch", "goes", "falls", given=_IN_VACUUM, why="more resin never takes fewer goes"),
    ),
    words={
        "tray-small": "{label}: {given} is smaller than the mould, which needs {mould} corner to corner.",
        "deeper-than-mould": "{label}: {given} is more than the mould is high, {mould}.",
        "deeper-than-air": "{label}: {given} is more than the air outside has, about {most} at that height. Look at the gauge's zero, or at the height.",
    },
)
