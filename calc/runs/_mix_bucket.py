"""Screens of a mixing run from the stirring to the tray."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from calc.casting import off_ratio
from calc.casting.standards import standard
from calc.runs import Screen
from calc.runs._mix_state import how_far_off, in_the_moulds, into_the_mould
from calc.runs._mix_view import View, press

#: An error of the ratio that is not worth a word.
_ON_RATIO = 0.0005


def mix(view: View) -> Screen:
    """A and B are stirred."""
    state, job = view.state, view.state.job
    error = off_ratio.ratio_error(state.parts, job.ratio)
    how_long = "The sheet's mixing time."
    if job.mixing is None:
        shortest, longest = standard("mix shortest"), standard("mix longest")
        how_long = f"{shortest:g} to {longest:g} min by hand (common practice). The sheet's time comes first."
    ratio = ""
    if job.way != "kit" or state.full_b is not None:
        ratio = f" Weighed: B {how_far_off(error)}." if abs(error) >= _ON_RATIO else " Weighed: on ratio."
    return {
        "step": "Mix",
        "tone": "go",
        "say": "Scrape walls and floor. Fold it, do not whip.",
        "note": how_long + ratio,
        "buttons": [press("main", "Mixed", "mixed")],
    }


def second(view: View) -> Screen:
    """Into a second bucket."""
    return {
        "step": "Second bucket",
        "tone": "go",
        "say": "Tip it into a second clean bucket, and stir again.",
        "note": "Let it drain, but do not scrape the wall film over: that is where unmixed resin hides.",
        "buttons": [press("main", "In the second bucket, stirred", "second")],
    }


def clear(view: View) -> Screen:
    """No streaks?"""
    return {
        "step": "Clear?",
        "tone": "go",
        "say": "No streaks against the light? Only then colour.",
        "note": "Mixed clear first: colour hides streaks.",
        "buttons": [
            press("main", "Clear: colour goes in", "colour"),
            press("other", "Clear: no colour", "plain"),
            press("other", "Streaks: stir on", "streaks"),
        ],
    }


def colour(view: View) -> Screen:
    """Colour goes in."""
    return {
        "step": "Colour",
        "tone": "go",
        "say": "Stir the colour in, walls and floor too.",
        "note": "Write down the weight of colour for the next pour.",
        "buttons": [press("main", "One even colour", "coloured")],
    }


def pour(view: View) -> Screen:
    """Into the mould: to the mark, or where more pours follow all of this one."""
    state, clings = view.state, "What clings to the bucket stays there: do not drain it into the mould."
    screen: Screen = {"step": "Pour", "tone": "go", "say": "Pour to the mark, and stop there.", "note": clings}
    if len(state.todo) > 1:
        screen |= {
            "big": view.big("Goes in, about", into_the_mould(state.parts.total, state.job)),
            "say": "Pour this bucket in, never past the mark.",
            "note": f"The mark itself is for the last pour; in layers each has its own. {clings}",
        }
    return screen | {"buttons": [press("main", "Poured", "poured")]}


def tray(view: View) -> Screen:
    """What is left, spread."""
    last = len(view.state.todo) == 1 and not view.state.discarded
    return {
        "step": "Leftovers",
        "tone": "go",
        "say": "Spread what is left in the shallow tray, now.",
        "note": "A full bucket is what gets hot. Look at your gloves: splashed or half an hour old, peel them.",
        "buttons": [press("main", "Spread: all poured" if last else "Spread: next pour", "tray")],
    }


def end(view: View) -> Screen:
    """All of it is poured."""
    state = view.state
    return {
        "step": "Done",
        "big": view.big("Mixed in all", state.poured),
        "say": "Watch the cure: checklist C3.",
        "note": " ".join((f"About {view.mass(in_the_moulds(state))} of it is in the mould.", *_shortfall(view), *state.record)),
    }


def _shortfall(view: View) -> tuple[str, ...]:
    short = view.state.job.total - view.state.poured
    return (f"That is {view.mass(short)} less than you asked for.",) if short > 2 * view.state.job.face.step_kg else ()


STIRRING: Mapping[str, Callable[[View], Screen]] = {
    "mix": mix, "second": second, "clear": clear, "colour": colour, "pour": pour, "tray": tray, "end": end,
}  # fmt: skip
