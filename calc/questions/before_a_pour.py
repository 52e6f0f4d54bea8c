"""Before a deep pour: what the plan says, gate by gate, before A meets B."""

from __future__ import annotations

from calc.questions import Question, Rule, Table
from calc.questions._before_a_pour.answer import work
from calc.questions._before_a_pour.fields import FIELDS

QUESTION = Question(
    id="before-a-pour",
    name="Before a deep pour",
    moment="before the pour",
    order=30,
    summary="Your plan against the sheet's limits, the mask, and three checklists for the bench.",
    lead="Put in what the plan and the data sheet say. What is missing stays not checked; you may still go on.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="Time for mixing, degassing and pouring together, by the sheet's working time",
        rows=("working", ("15 min", "30 min", "40 min", "60 min", "90 min", "4 h", "8 h")),
        columns=("share", ("50 %", "60 %", "70 %")),
        cell=lambda answer: answer.values["may_use"].shown,
        note="60 % is common practice, no source. The rest is for what goes wrong.",
    ),
    rules=(
        Rule("depth", "stops", "falls", given={"sheet_depth": "50 mm"}, why="a deeper layer never ends a stop"),
        Rule("own_depth", "stops", "rises", given={"depth": "50 mm", "sheet_depth": "60 mm"}, why="more worked out for this pour never adds a stop"),
        Rule("mass", "stops", "falls", given={"sheet_mass": "5 kg", "moulds_take": "4 kg"}, why="a heavier batch never ends a stop"),
        Rule("handling", "stops", "falls", given={"working": "60 min"}, why="more time at the bucket never ends a stop"),
        Rule("sheet_depth", "stops", "rises", given={"depth": "50 mm"}, why="a sheet that allows more never adds a stop"),
        Rule("mass", "may_use", "rises", given={"working": "45 min"}, why="more in the bucket never gives more time"),
        Rule("working", "may_use", "falls", why="a longer working time never leaves less"),
    ),
)
