"""A mixing run whose working time runs out: the big button becomes the thing to do then.

Resin that is mixed goes into the mould at once; resin that is not yet on ratio, or no longer thin and cool, goes out of the bucket and
into the tray. Nothing here is decided for the maker: whether it is still thin and cool is theirs to say.
"""

from __future__ import annotations

from typing import Any

from calc.runs import Screen
from calc.runs._mix_view import View, press

_OVERDUE = "Past the working time. Thick, stringy or warm: it does not go into the mould."
_WAY_OUT = "Spread it in the tray. Smoke: get out, card E1b."
_LITTLE_LEFT = "Little of the working time is left"
#: What still lies before the pour, and may be left out, when the time is up.
_LEFT_OUT = {
    "mix": "Scrape walls and floor, fold it, then straight into the mould.",
    "second": "Straight into the mould: no second bucket now.",
    "clear": "Straight into the mould: no colour now.",
    "colour": "Straight into the mould with the colour that is in.",
}


def in_time(view: View, screen: Screen) -> Screen:
    """The screen as it stands at this moment: changed only when little of the working time is left, or none.

    Parameters
    ----------
    view : the state and the clock.
    screen : what the step shows while there is time.

    Returns
    -------
    dict
    """
    if view.overdue:
        return screen | _overdue(view, screen)
    return screen | _hurry(view, screen) if view.hurry else screen


def _overdue(view: View, screen: Screen) -> Screen:
    phase = view.state.phase
    if view.state.doubt is not None:  # a weight is asked about first: its answer leads to one of the screens below
        return {"tone": "stop"}
    if phase in _LEFT_OUT:
        thin = "Mixed, thin and cool" if phase == "mix" else "Still thin and cool"
        buttons = [press("main", f"{thin}: pour it now", "pour-now"), _into_the_tray("danger")]
        return {"tone": "stop", "say": _OVERDUE, "note": f"{_WAY_OUT} Still thin and cool? {_LEFT_OUT[phase]}", "buttons": buttons}
    if phase == "pour":
        buttons = [*screen["buttons"], _into_the_tray("danger")]
        return {"tone": "stop", "say": _OVERDUE, "note": f"{_WAY_OUT} Still thin and cool? {screen['say']}", "buttons": buttons}
    rest = [_second(button) for button in screen["buttons"] if button["id"] != "discard"]
    note = f"Thick, stringy or warm: into the tray. Still thin and cool? {screen['say']}"
    return {"tone": "stop", "say": "Past the working time.", "note": note, "buttons": [_into_the_tray("main"), *rest]}


def _hurry(view: View, screen: Screen) -> Screen:
    phase = view.state.phase
    tone = screen["tone"] if screen["tone"] in ("caution", "stop") else "caution"
    if phase == "clear":
        plain = press("main", "Clear: pour it now", "plain")
        rest = [_second(button) for button in screen["buttons"] if button["id"] != "plain"]
        return {"tone": tone, "note": f"{_LITTLE_LEFT}: colour takes more of it.", "buttons": [plain, *rest]}
    if phase == "pour":
        now = "Pour now, to the mark, and stop there." if len(view.state.todo) == 1 else "Pour this bucket in now, never past the mark."
        return {"tone": tone, "say": now}
    then = ": then pour at once" if phase in _LEFT_OUT else ""
    return {"tone": tone, "note": f"{screen['note']} {_LITTLE_LEFT}{then}."}


def _into_the_tray(kind: str) -> dict[str, Any]:
    label = "Out of the bucket: into the tray" if kind == "main" else "Thick, stringy or warm: into the tray"
    return press(kind, label, "discard")


def _second(button: dict[str, Any]) -> dict[str, Any]:
    """A button that no longer leads."""
    return button | {"kind": "other"} if button["kind"] == "main" else button
