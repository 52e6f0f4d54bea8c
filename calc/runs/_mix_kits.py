"""Screens of a mixing run with whole kits: both jugs are tipped in, and weighed before and after."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from calc.casting import weighing
from calc.runs import Screen
from calc.runs._mix_view import LAST_STOP, View, press


def full(view: View) -> Screen:
    """A full jug, weighed."""
    part = view.state.phase[-1].upper()
    return {
        "step": f"Full jug of {part}",
        "say": f"Put the full jug of {part} on the scale, lid off.",
        "note": "What the jugs weigh before and after is the only check that all of it went in.",
        "buttons": [
            view.ask("full", "Key in what it shows", "The scale shows", None, kind="main"),
            press("other", "Go on without weighing", "skip"),
        ],
    }


def tip_a(view: View) -> Screen:
    """All of A goes in."""
    return {
        "step": "All of A",
        "say": "Tip all of A into the bucket. Let the jug drain.",
        "note": f"About {view.mass(view.state.target.a)}.",
        "buttons": [press("main", "A is in", "tipped")],
    }


def left(view: View) -> Screen:
    """An emptied jug, weighed."""
    state = view.state
    part = state.phase[-1]
    full = state.full_a if part == "a" else state.full_b
    assert full is not None  # the phase is only entered with a full jug weighed
    target = weighing.emptied_jug(full, getattr(state.target, part))
    return {
        "step": f"Emptied jug of {part.upper()}",
        "big": view.big("The emptied jug weighs", target),
        "say": f"Put the emptied jug of {part.upper()} back on the scale.",
        "note": "Heavier? Let it drain on." if part == "b" else "B is worked out from the A that really went in.",
        "buttons": [
            press("main", "As shown", "left"),
            view.ask("left", "It shows something else", "The scale shows", target),
        ],
    }


def meet_kit(view: View) -> Screen:
    """The last look before all of B."""
    state = view.state
    big = None
    note = "Tip all of B in, and let the jug drain."
    if state.full_b is not None:
        big = view.big("Jug of B falls to", weighing.emptied_jug(state.full_b, state.target.b))
        note = f"Tip B in: {view.mass(state.target.b)} for the A that went in."
    return {
        "step": "B is next",
        "tone": "caution",
        "big": big,
        "say": LAST_STOP,
        "note": f"{note} The clock starts when you press.",
        "buttons": [press("main", "B goes in now", "meet")],
    }


TIPPING: Mapping[str, Callable[[View], Screen]] = {"full-a": full, "full-b": full, "a": tip_a, "left-a": left, "meet": meet_kit, "left-b": left}
