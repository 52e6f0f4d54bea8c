"""Is the air right for a pour: does water settle on anything, will it blush, and what does warm resin cost?"""

from __future__ import annotations

from calc.fields import Field, Quantity, measure
from calc.questions import Question, Rule, Table
from calc.questions._is_the_air.answer import answer
from calc.sources import value

FIELDS: tuple[Field, ...] = (
    measure("room", "Room temperature", "°C", -10, 50, usual=(5, 38)),
    measure("humidity", "Humidity in the room", "%", 5, 100, usual=(20, 95), hint="Hygrometer beside the work, a quarter of an hour."),
    measure(
        "surface", "Coldest surface", "°C", -20, 80, usual=(0, 45),
        hint="Wood, mould or layer beneath. Empty: as warm as the room.", required=False,
    ),
    measure(
        "store", "Where wood and bottles came from", "°C", -30, 60, usual=(-20, 45),
        hint="If they have just come in; stands in for the surface.", required=False, fold=True,
    ),
    measure("thickness", "Thickness of the wood", "mm", 2, 500, usual=(5, 200), hint="For how long it takes to warm.", required=False, fold=True),
    measure("resin", "Resin warmed to", "°C", 0, 80, usual=(10, 45), required=False, fold=True),
    measure("working", "Working time on the sheet", "min", 1, 6000, usual=(5, 1500), required=False, fold=True),
    measure(
        "sheet_temperature", "The sheet's temperature for it", "°C", 10, 40,
        default=(f"{value('air', 'sheet temperature'):g}", "77"), basis="practice", fold=True,
    ),
    measure(
        "humidity_error", "Hygrometer may be off by", "%", 0, 20,
        default=f"{100 * value('air', 'hygrometer error'):g}", basis="hygrometer-trade", fold=True,
    ),
    Quantity(
        name="temperature_error", label="Thermometer may be off by", kind="temperature difference", units=("°C", "°F"),
        low=0, high=5, default=(f"{value('air', 'thermometer error'):g}", "2"), basis="judgement", fold=True,
    ),
)

QUESTION = Question(
    id="is-the-air-right",
    name="Is the air right?",
    moment="before the pour",
    order=24,
    summary="Dew point, blush, cold wood brought in, and what warm resin costs.",
    lead="Water that settles on wood, mould or the layer beneath spoils the bond. It cannot always be seen.",
    fields=FIELDS,
    work=answer,
    table=Table(
        caption="Dew point. Every surface should be 3 °C (5.4 °F) warmer than this",
        rows=("room", (("10", "15", "20", "25", "30"), ("50", "60", "70", "80", "90"))),
        columns=("humidity", ("40 %", "50 %", "60 %", "70 %", "80 %", "90 %")),
        cell=lambda answer: answer.values["dew_point"].shown,
        note="Over 85 % humidity: no coating. Under 20 °C (68 °F) and over 70 % together: blush is likely.",
    ),
    rules=(
        Rule("humidity", "dew_point", "falls", why="more water in the air never drops later"),
        Rule("room", "dew_point", "falls", why="warmer air at the same humidity holds more water"),
        Rule("humidity", "verdict", "falls", why="damper air is never a better hour to pour"),
        Rule("surface", "margin", "falls", why="a warmer surface is never nearer to the dew point"),
        Rule("surface", "verdict", "rises", why="a warmer surface never turns a go into a stop"),
        Rule("resin", "viscosity", "rises", why="warmer resin is never thicker"),
        Rule("resin", "working", "rises", given={"working": "40 min"}, why="warmer resin never leaves more time"),
        Rule("working", "working", "falls", given={"resin": "30 °C"}, why="a longer time on the sheet never leaves less"),
    ),
)
