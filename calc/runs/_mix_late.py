"""A mixing run whose time in the bucket runs out: the big button becomes the thing to do then.

Resin whose time is over goes out of the bucket and into the tray: that leads, on every screen. Whether it is still thin and cool is the
maker's to say; pouring it then is asked about on a screen of its own, and goes on the record.
"""

from __future__ import annotations

from typing import Any

from calc.runs import Screen
from calc.runs._mix_view import View, press

_OVERDUE = "Past its time in the bucket. Thick, stringy or warm: into the tray."
_WAY_OUT = "Smoke: get out, card E1b."
_LITTLE_LEFT = "Little time is left"
#: What still lies before the pour, and may be left out, when the time is up.
_LEFT_OUT = {
    "mix": "Scrape walls and floor, fold it, then straight into the mould.",
    "second": "Straight into the mould: no second bucket now.",
    "clear": "Straight into the mould: no colour now.",
    "colour": "Straight into the mould with the colour that is in.",
}


def in_time(view: View, screen: Screen) -> Screen:
    """The screen as it stands at this moment: changed only when little of its time in the bucket is left, or none.

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
    if view.state.doubt is not None or phase == "still":  # asked first: the answer leads to one of the screens below
        return {"tone": "stop"}
    if phase in _LEFT_OUT or (phase == "pour" and not view.state.still):
        buttons = [_into_the_tray("main"), press("other", "Still thin and cool", "still")]
        if phase == "pour":
            buttons.append(press("other", "It is poured", "poured"))
        return {"tone": "stop", "say": _OVERDUE, "note": _WAY_OUT, "buttons": buttons}
    if phase == "pour":
        return {"tone": "stop", "buttons": [*screen["buttons"], _into_the_tray("danger")]}
    rest = [_second(button) for button in screen["buttons"] if button["id"] != "discard"]
    note = f"Thick, stringy or warm: into the tray. Still thin and cool? {screen['say']}"
    return {"tone": "stop", "say": "Past its time in the bucket.", "note": note, "buttons": [_into_the_tray("main"), *rest]}


def still(view: View) -> Screen:
    """Asked before resin whose time is over goes into the mould."""
    way = _LEFT_OUT.get(view.state.back_to, "What clings to the bucket stays there.")
    return {
        "step": "Thin and cool?",
        "tone": "stop",
        "say": "Lift the stick: does it run off like water, and is the bucket as cool as the bench?",
        "note": f"Past its time it may set as you pour. {way}",
        "buttons": [press("main", "No: into the tray", "discard"), press("danger", "Yes to both: pour it, my call", "pour-now")],
    }


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
    label = "Into the tray, spread thin" if kind == "main" else "Thick, stringy or warm: into the tray"
    return press(kind, label, "discard")


def _second(button: dict[str, Any]) -> dict[str, Any]:
    """A button that no longer leads."""
    return button | {"kind": "other"} if button["kind"] == "main" else button
