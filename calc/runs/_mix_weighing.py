"""Screens of a mixing run while A and B are weighed, into the bucket or out of their jugs."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from calc.casting import off_ratio
from calc.casting.mixing import Parts
from calc.runs import Screen, button
from calc.runs._mix_state import fix_by_amount, half_step, how_far_off, shown_for
from calc.runs._mix_view import LAST_STOP, View, press


def base_pour(view: View) -> Screen:
    """The bucket on the scale."""
    state = view.state
    inside = state.a + state.b
    put = "Put the bucket on the scale, with what is in it." if inside else "Put the empty bucket on the scale."
    if state.empty is None:
        put += " Set it to 0, or key in what it shows."
    buttons = []
    start: float | None = None
    if state.empty is not None:
        start = state.empty + inside
        buttons.append(press("main", f"It shows {view.mass(start)}", "base"))
    buttons.append(press("other" if buttons else "main", "It shows 0", "base", tared=True))
    buttons.append(view.ask("base", "It shows something else", "The scale shows", start))
    note = "No need to set it to 0: the figures here count the bucket in."
    if state.empty is None:
        note = "Write the empty bucket's weight down: it saves the batch if the scale switches itself off."
    if state.number > 1:
        note += " Old resin in a bucket sets the new one off sooner: take a clean one."
    big = None if start is None else view.big("The scale should show", start)
    return {"step": "Bucket", "say": put, "note": note, "big": big, "buttons": buttons}


def base_decant(view: View) -> Screen:
    """The jug on the scale."""
    part = "A" if view.state.target.a - view.state.a > half_step(view.state) else "B"
    return {
        "step": f"Jug of {part}",
        "say": f"Put the jug of {part} on the scale.",
        "note": "Weigh out of the jug: its figure falls as you pour.",
        "buttons": [
            press("main", "It shows 0", "base", tared=True),
            view.ask("base", "It shows something else", "The scale shows", None),
        ],
    }


def a(view: View) -> Screen:
    """A, to a figure on the scale."""
    state = view.state
    return _part(view, "a", state.target.a, f"A {view.mass(state.target.a - state.a)} goes in.")


def _part(view: View, part: str, mass: float, note: str) -> Screen:
    """One part, to a figure on the scale."""
    name, target, decant = part.upper(), shown_for(view.state, part, mass), view.state.job.way == "decant"
    return {
        "step": f"Weigh {name}",
        "big": view.big("The jug falls to" if decant else "The scale goes up to", target),
        "say": f"Pour {name} out of the jug." if decant else f"Pour {name} in, slowly at the end.",
        "note": note,
        "buttons": [
            press("main", "Done as shown", part),
            view.ask(part, "It shows something else", "The scale shows", target),
            view.scale_off(),
        ],
    }


def a_over(view: View) -> Screen:
    """More A than scale or bucket takes."""
    state = view.state
    planned = state.todo[0]
    target = shown_for(state, "a", planned.a)
    out = view.mass(state.a - planned.a)
    return {
        "step": "Too much A",
        "tone": "caution",
        "big": view.big("The jug comes up to" if state.job.way == "decant" else "The scale comes down to", target),
        "say": f"Take {out} of clean A back out.",
        "note": "With its B it would be more than the scale or the bucket takes.",
        "buttons": [
            press("main", "Done as shown", "a"),
            view.ask("a", "It shows something else", "The scale shows", target),
            view.scale_off(),
        ],
    }


def meet(view: View) -> Screen:
    """The last look before B."""
    state = view.state
    planned = state.todo[0]
    part = {"step": "B is next", "tone": "caution", "say": LAST_STOP}
    buttons: list[dict[str, Any]] = []
    if state.job.way == "decant":
        start = "Then put the jug of B on the scale. The clock starts when you press."
        buttons = [
            press("main", "It shows 0: pour B", "meet", tared=True),
            view.ask("meet", "It shows something else", "The scale shows", None),
        ]
        big = view.big("B needed", state.target.b - state.b)
    else:
        start = "The clock starts when you press."
        buttons = [press("main", "B goes in now", "meet")]
        big = view.big("The scale will go up to", shown_for(state, "b", state.target.b))
    if state.a < planned.a - half_step(state):
        buttons.append(press("other", f"First add the missing A: {view.mass(planned.a - state.a)}", "more-a"))
    if state.job.way == "pour":
        buttons.append(view.scale_off())
    return part | {"big": big, "note": f"{_changed(view, planned)} {start}", "buttons": buttons}


def _changed(view: View, planned: Parts) -> str:
    """What an A that is not as planned does to B and to the total."""
    state = view.state
    difference = state.a - planned.a
    if abs(difference) < half_step(state):
        return f"B {view.mass(state.target.b)} goes in."
    total = state.target.total - planned.total
    what = f"A is {view.mass(abs(difference))} {'over' if difference > 0 else 'short'}."
    then = f" B is now {view.mass(state.target.b)} instead of {view.mass(planned.b)}."
    return what + then + f" This pour comes out {view.mass(abs(total))} {'bigger' if total > 0 else 'smaller'}."


def b(view: View) -> Screen:
    """B, to a figure on the scale."""
    state = view.state
    return _part(view, "b", state.target.b, f"B {view.mass(state.target.b - state.b)} for the A that is in.")


def fix(view: View) -> Screen:
    """Off ratio: what is missing goes in."""
    state, job = view.state, view.state.job
    error = off_ratio.ratio_error(state.parts, job.ratio)
    fix = off_ratio.correction(state.parts, job.ratio)
    amber = off_ratio.grade(error, job.good, job.worst) == "amber"
    by_amount = fix_by_amount(state)
    target = fix.mass if by_amount else state.base + state.a + state.b + fix.mass
    total = state.a + state.b + fix.mass
    worst = "Within the worst that makers allow, but not right." if amber else "Off ratio."
    note = f"B is {how_far_off(error)}. {worst} Add {fix.part} {view.mass(fix.mass)}: it makes {view.mass(total)}."
    if total > job.net:
        note += " That is over the fill line: have a bigger bucket at hand."
    prompt = f"{fix.part} added" if by_amount else "The scale shows"
    buttons = [
        press("main", f"Added: {view.mass(target)}" if by_amount else "Done as shown", "fix"),
        view.ask("fix", "Other amount" if by_amount else "It shows something else", prompt, target),
    ]
    if amber:
        buttons.append(press("other", f"Go on with B {how_far_off(error)}", "accept"))
    buttons.append(press("danger", "It cannot be put right", "give-up"))
    label = f"Add {fix.part}, weighed in a clean cup" if by_amount else "The scale goes up to"
    return {
        "step": f"Add {fix.part}",
        "tone": "caution" if amber else "stop",
        "big": view.big(label, target),
        "say": f"Add {fix.part} now, while all of it is still liquid.",
        "note": note,
        "buttons": buttons,
    }


def give_up(view: View) -> Screen:
    """Off ratio, and it cannot be put right."""
    state = view.state
    error = off_ratio.ratio_error(state.parts, state.job.ratio)
    return {
        "step": "Off ratio",
        "tone": "stop",
        "say": f"B is {how_far_off(error)}. Spread it in the tray; it is not for the mould.",
        "note": "Off ratio it may stay soft or sticky for good. The label's tolerance comes first.",
        "buttons": [
            press("main", "Back: add what is missing", "back"),
            press("danger", "Spread it in the tray", "discard"),
            press("danger", f"Use it with B {how_far_off(error)}: my call", "use"),
        ],
    }


def off(view: View) -> Screen:
    """The scale switched itself off."""
    state = view.state
    buttons: list[dict[str, Any]] = []
    if state.job.way == "decant":
        buttons.append(press("main", "Nothing poured since: it shows 0", "off-zero"))
        buttons.append(view.ask("off-reading", "Nothing poured since: it shows", "The jug shows", None))
        note = "If some was poured since, weigh the bucket: less its empty weight, that is what is in it."
    else:
        buttons.append(press("main", "Nothing poured since: it shows 0", "off-zero"))
        if state.empty is not None:
            buttons.append(view.ask("off-reading", "Bucket off, scale to 0, bucket back on", "The scale shows", None))
            note = f"The empty bucket weighs {view.mass(state.empty)}, so nothing is lost."
        else:
            buttons.append(view.ask("twin", "Weigh an empty bucket like it", "The empty bucket weighs", None))
            note = "If some was poured since, the empty weight is needed: weigh a bucket like this one."
    return {
        "step": "Scale went off",
        "tone": "caution",
        "say": "Switch it on with everything still on it.",
        "note": note,
        "buttons": buttons,
    }


def doubt(view: View) -> Screen:
    """A weight far from its target: asked about, not believed."""
    event = view.state.doubt
    assert event is not None  # only called with a doubt
    given = f"{event.get('reading')} {event.get('unit') or view.state.job.face.unit}"
    return {
        "step": "Is that right?",
        "tone": "caution",
        "big": {"label": "You keyed in", "text": str(event.get("reading")), "unit": str(event.get("unit") or "")},
        "say": "That is far from what was to be weighed.",
        "note": "Look at the scale again.",
        "buttons": [
            button("again", "No: key it in again", "main", None),
            button("sure", f"Yes: {given}", "other", {key: value for key, value in event.items() if key != "at"} | {"sure": True}),
        ],
    }


WEIGHING: Mapping[str, Callable[[View], Screen]] = {"a": a, "a-over": a_over, "meet": meet, "b": b, "off": off}
