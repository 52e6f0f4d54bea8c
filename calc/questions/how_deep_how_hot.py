"""How deep and how hot? The deepest single layer of this resin in this mould and shop, how hot it may get, and how to pour it in layers."""

from __future__ import annotations

from calc.answers import Answer
from calc.questions import Given, Question, Rule, Steps, Table
from calc.questions._how_deep.case import Case
from calc.questions._how_deep.fields import FIELDS
from calc.questions._how_deep.runs import look
from calc.questions._how_deep.tell import tell


def work(given: Given) -> Steps:
    """Run the pour, at both ends of its band.

    Parameters
    ----------
    given : this question's inputs.

    Yields
    ------
    float
        the share done.

    Returns
    -------
    Answer
        see :func:`calc.questions._how_deep.tell.tell`.

    Raises
    ------
    InputError
        ``nothing-known``, ``never-so-hot``, ``since``.
    """
    case = Case(given)
    case.check()
    key = (given.system, *(given.maybe(field.name) for field in FIELDS))
    found = yield from look(case, key)
    answer: Answer = tell(case, found)
    return answer


_PLATE = {
    "known": "kind", "kind": "slow", "shape": "oblong", "length": "300 mm", "width": "300 mm", "depth": "20 mm", "detail": "depths",
    "batch": "2000 g", "bucket": "15 min", "below": "",
}
_DEEPER = ("5 mm", "12 mm", "18 mm", "25 mm", "40 mm", "70 mm", "120 mm", "300 mm")
_BY_SHEET = {**_PLATE, "known": "sheet", "pot_means": "unknown", "depth": "10 mm", "room": "22 °C"}
_SHEETS = ("3 mm", "6 mm", "9 mm", "12 mm", "16 mm", "25 mm", "60 mm")
_WARMER = ("12 °C", "16 °C", "20 °C", "24 °C", "28 °C", "33 °C")

QUESTION = Question(
    id="how-deep-how-hot",
    name="How deep and how hot?",
    moment="before the pour",
    order=17,
    summary="The deepest single layer in this mould and shop, how hot it may get and when, and how to pour it in layers.",
    lead="Below a certain depth a pour stays mild, a little above it runs away. What is known of the resin decides how near you may go.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="One layer, at most, where only the kind of resin is known: 300 × 300 mm (12 × 12 in), board on the bench",
        rows=("room", (("18", "23", "28"), ("65", "73", "82"))),
        columns=("kind", ("slow", "standard", "fast")),
        fixed={name: text for name, text in _PLATE.items() if name not in ("kind", "below")},
        note="With a pot life, a deepest layer or a test cup the band is narrower, and the layer may be deeper. The sheet's depth stays a ceiling.",
        warm=False,
    ),
    rules=(
        Rule("depth", "margin", "rises", order=_DEEPER, given=_PLATE, why="deeper never leaves more in hand"),
        Rule("depth", "peak", "falls", order=_DEEPER, given=_PLATE, why="deeper never cools the peak"),
        Rule("depth", "stops", "falls", order=_DEEPER, given=_PLATE, why="deeper never ends a stop"),
        Rule("deepest", "no_stop", "falls", order=_SHEETS, given={**_BY_SHEET, "pot_life": "45 min"}, why="a deeper sheet never allows less"),
        Rule("deepest", "no_stop", "falls", order=_SHEETS, given={**_BY_SHEET, "pot_life": ""}, why="a deeper sheet never allows less"),
        Rule("room", "no_stop", "rises", order=_WARMER, given=_PLATE, why="a warmer shop never allows more"),
    ),
    words={
        "nothing-known": "Enter the sheet's deepest layer or its pot life; both are best where they fit. Neither printed? Choose 'Only what kind it is'.",
        "never-so-hot": "{label}: no resin whose cup takes {given} to its end gets that hot. Choose another end of the pot life, or 'does not say'.",
        "since": "Enter how long before this pour the layer below was poured.",
    },
)
