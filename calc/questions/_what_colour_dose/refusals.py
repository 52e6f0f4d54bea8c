"""What cannot be: a kind that does not give the effect, or that does not belong in resin at all."""

from __future__ import annotations

from calc.answers import Answer, Change, Figure, Headline, Working
from calc.casting import colour
from calc.questions import Given
from calc.questions._what_colour_dose.case import WATER
from calc.words import either


def refusal(given: Given) -> Answer | None:
    """The stop that leads with what to take instead; None where every kind can do what is asked of it.

    Parameters
    ----------
    given : the question's inputs.

    Returns
    -------
    Answer or None
    """
    for n in range(1, int(given.choice("colours")) + 1):
        kind = given.choice(f"kind_{n}")
        if kind == WATER:
            do = _named(tuple(colour.kinds()))
            say = "Water and whatever boils off early upset the cure and cloud the resin. Common practice, no source."
            return _stop("Take", "a colour made for resin", say, do, ("practice",))
        if given.choice("way") != "effect":
            continue
        effect = given.choice(f"effect_{n}")
        able = colour.kinds_for(effect)
        if kind not in able:
            do = _named(able)
            why = "stays clear at any dose" if colour.kinds()[kind].clear else "does not give that"
            return _stop(f"For {_effect(given, n)}, take", do, f"{colour.kinds()[kind].name} {why}.", do, ("judgement",))
    return None


def _stop(label: str, take: str, say: str, do: str, sources: tuple[str, ...]) -> Answer:
    return Answer(
        Headline(label, take, "", say, "stop"),
        changes=(Change(f"With {do}", "a dose for every batch"),),
        working=(Working("Kinds that do it", "from the table of starts", "", do),),
        sources=sources,
        values={"stops": Figure(1.0, "count", "1")},
    )


def _named(ids: tuple[str, ...]) -> str:
    return either([colour.kinds()[id].short for id in ids])


def _effect(given: Given, n: int) -> str:
    declared = given.label_of(f"effect_{n}")
    return declared[:1].lower() + declared[1:]
