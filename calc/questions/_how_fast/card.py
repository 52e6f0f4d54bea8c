"""The turning card: what is read at the lathe from a step away, with the hands on the tool. Every text of it is made here."""

from __future__ import annotations

from typing import Any, cast

from calc.answers import Headline
from calc.questions import Given
from calc.questions._how_fast import stages
from calc.turning.caps import Operation
from calc.turning.case import Case
from calc.words import inside

REFLEX = ("Turned by hand, one full round", "Lowest speed first", "Out of the rim's line")
_WORDS = {"stop": "Stop", "caution": "Take care", "go": ""}
_SMALLER = "As it gets smaller, if it runs still:"
_CEILING = "A ceiling. Stop at the first tremble."
_BY = ("condition", "balance", "hold", "far_end", "lathe")


def card(given: Given, headline: Headline, case: Case | None = None, *, told: bool = False) -> dict[str, Any]:
    """One number, the stage, the steps up to it, the stages after it, three reflexes, and what it all goes by.

    Parameters
    ----------
    given : the question's inputs.
    headline : of the answer.
    case : the work; none for a buffing wheel, and for work that is not spun.
    told : the headline's own words are needed beside its figure (a lowest speed that is quick for the work).

    Returns
    -------
    dict
        a text, or a list of lines, for each place of the card. A stop has no reflexes: nothing is started.
    """
    stop = headline.tone == "stop"
    following = None if case is None else stages.next_line(case)
    rows = [] if case is None else stages.size_rows(given, case)[1:]
    return {
        "tone": headline.tone,
        "word": _WORDS[headline.tone],
        "stage": stage(given),
        "text": headline.text,
        "unit": headline.unit,
        "say": [*headline.steps, headline.say] if stop else [headline.say if told else _CEILING],
        "next": "" if following is None or stop else f"{following.label}, {following.text} {following.unit}".rstrip(),
        "mind": "" if following is None or stop else following.note,
        "later": [] if case is None or stop else stages.later(case),
        "steps": "" if case is None or stop else _steps(case),
        "reflex": [] if stop else list(REFLEX),
        "smaller": _SMALLER if rows else "",
        "sizes": [f"{size}: {inside(texts[0])}" + (" rpm" if texts[0] != stages.NONE else "") for size, texts in rows],
        "by": "; ".join(_by(given)),
    }


def _steps(case: Case) -> str:
    """'Up in steps: 500, 900, 1400, 2200 rpm'."""
    steps = stages.steps_text(case)
    return f"Up in steps: {steps} rpm" if steps else ""


def stage(given: Given) -> str:
    """'Roughing, 300 mm'."""
    if given.choice("operation") == "buff":
        return f"{given.label_of('operation')}, {given.write(given.si('wheel'), 'length')}"
    name = stages.NAMES[cast(Operation, given.choice("operation"))]
    return f"{name}, {given.write(given.si('diameter'), 'length')}"


def _by(given: Given) -> list[str]:
    """The choices that the figure stands on, as they are read on the form."""
    out = []
    for name in _BY:
        value = given.words(name)
        if value == "known":
            out.append(f"{given.as_typed('eccentricity')} off centre")
        elif value == "weight":
            out.append(f"balanced by {given.as_typed('weight')} at {given.as_typed('weight_radius')}, not on it now")
        elif value and name == "far_end":
            out.append(f"tailstock: {inside(given.label_of(name))}" if value != "none" else "no tailstock")
        elif value:
            out.append(given.label_of(name) if not out else inside(given.label_of(name)))
    return out
