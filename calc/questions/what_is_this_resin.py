"""What is this resin? Its sheet, a test cup or only its kind, made into a profile: how deep, how long, how thick."""

from __future__ import annotations

from calc.answers import Answer
from calc.questions import Given, Question, Rule, Steps, Table
from calc.questions._resin.answer import answer
from calc.questions._resin.fields import FIELDS


def work(given: Given) -> Steps:
    """The profile; see :func:`calc.questions._resin.answer.answer`."""
    return answer(given)


def _cell(reply: Answer) -> str:
    """How deep at most, and how deep before care is needed."""
    return f"{reply.values['no_stop'].shown}, never over {reply.values['ceiling'].shown}"


_KIND = {"known": "kind", "chemistry": "epoxy", "room": "23 °C"}
_SHEET = {
    "known": "sheet", "chemistry": "epoxy", "pot_life": "90 min", "pot_means": "pour", "pot_mass": "100 g", "pot_temperature": "25 °C", "room": "23 °C",
    **dict.fromkeys(
        ("ratio", "ratio_volume", "density_a", "density_b", "density", "deepest", "glass", "lowest", "highest", "earliest", "latest", "demould", "cure"), ""
    ),
}

QUESTION = Question(
    id="what-is-this-resin",
    name="What is this resin?",
    moment="before the pour",
    order=15,
    summary="From its data sheet or a test cup: its kind, how deep in one layer, how long in the bucket.",
    lead="An unfamiliar resin becomes a profile that the other questions take over. What is assumed is marked.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="One layer in a wide mould, by kind of resin: no stop found up to, and the ceiling",
        rows=("room", (("18", "23", "28"), ("64", "73", "82"))),
        columns=("kind", ("slow", "standard", "fast")),
        fixed={"known": "kind"},
        cell=_cell,
        warm=False,
        note="For a kind alone the span is wide. The sheet's deepest layer counts where it is less; a test cup narrows it.",
    ),
    rules=(
        Rule("viscosity", "viscosity", "falls", given=_SHEET, why="a thicker mix on the sheet is never thinner here"),
        Rule(
            "density_b", "density", "falls", given={**_SHEET, "ratio": "100:43", "density_a": "1.13"}, span=(0.9, 1.1),
            why="a heavier hardener never makes a lighter mix",
        ),
        Rule("kind", "ceiling", "rises", order=("slow", "standard", "fast"), given=_KIND, why="a faster kind never allows more depth"),
        Rule("kind", "no_stop", "rises", order=("slow", "standard", "fast"), given=_KIND, why="a faster kind never allows more depth"),
    ),
    words={
        "pot_life:missing": "Enter the pot life or the deepest layer on the sheet; both are best. Neither printed? Choose 'Only what kind it is'.",
        "ratios-disagree": "{label}: {given} does not go with {volume} by volume and the densities, which give {weight}. One of them is misread.",
        "ratios-apart": "{label}: {given} and {volume} by volume would need a hardener {needs} times as heavy as the resin. One of them is misread.",
        "density-outside": "{label}: {given} does not lie between A and B, {low} and {high}. One of the three is misread.",
        "range-crossed": "{label}: {given} is not above the lowest, {other}. One of them is misread.",
        "window-crossed": "{label}: {given} is not later than the earliest time, {other}. One of them is misread.",
        "cured-first": "{label}: {given} is no later than leaving the mould, {other}. One of them is misread.",
        "hard-first": "{label}: {given} is no longer than the pot life, {other}. One of them is misread.",
        "cup-lengths": "{label}: {temperatures} temperatures for {minutes} times. One for each would do.",
        "cup-alone": "Enter {label_lower}: the cup warmed too little or too much to tell the rest by, so the sheet has to count.",
        "cup-order": "{label}: each has to be later than the one before it.",
        "never-so-hot": "{label}: resin with so long a pot life never gets that hot in its cup. Choose another end, or 'It does not say'.",
    },
)
