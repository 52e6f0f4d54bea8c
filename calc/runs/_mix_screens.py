"""The screen of a mixing run: the frame around the words and buttons of its step; see :mod:`calc.runs.mix`."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from calc.casting.standards import standard
from calc.runs import Screen, undo
from calc.runs._mix_bucket import STIRRING
from calc.runs._mix_kits import TIPPING
from calc.runs._mix_late import in_time, still
from calc.runs._mix_state import OUT_OF_THE_BUCKET, STEPS, how_far_off, in_the_moulds
from calc.runs._mix_view import View
from calc.runs._mix_weighing import WEIGHING, base_decant, base_pour, doubt, fix, give_up

_MINUTE = 60.0
#: Parts that met this long apart are one layer, s.
ONE_LAYER_S = standard("one layer") * 3600
ONE_LAYER = "On the last pour within the hour it is one layer: ask How deep and how hot? for both first."
LATER_LAYER = "On the last pour it is a layer of its own: ask How deep and how hot? first when it may go on."

_COMMON: Mapping[str, Callable[[View], Screen]] = {"fix": fix, "give-up": give_up, "still": still, **STIRRING}
#: The step's own words and buttons, by the way A and B are weighed and the phase.
_STEPS_SHOWN: Mapping[str, Mapping[str, Callable[[View], Screen]]] = {
    "pour": {"base": base_pour, **WEIGHING, **_COMMON},
    "decant": {"base": base_decant, **WEIGHING, **_COMMON},
    "kit": {**TIPPING, **_COMMON},
}


def screen(view: View, *, started: bool, error: str) -> Screen:
    """The whole screen.

    Parameters
    ----------
    view : the state, and the page's clock.
    started : whether there is a press to take back.
    error : why the last event could not be what happened; empty when it could.

    Returns
    -------
    dict
    """
    state = view.state
    whole: Screen = {
        "id": "mix",
        "title": _title(view),
        "step": "",
        "progress": _progress(view),
        "ended": state.phase == "end",
        "big": None,
        "say": "",
        "note": "",
        "tone": "plain",
        "buttons": [],
        "totals": _totals(view),
        "clocks": _clocks(view),
        "items": [],
        "cautions": _cautions(view),
        "errors": [{"field": "reading", "code": "refused", "message": error, "given": ""}] if error else [],
        "record": list(state.record),
        "carry": _carry(view),
    }
    step = doubt if state.doubt is not None else _STEPS_SHOWN[state.job.way][state.phase]
    whole = in_time(view, whole | step(view))
    if started:
        whole["buttons"] = [*whole["buttons"], undo("Undo")]
    return whole


def _title(view: View) -> str:
    state = view.state
    if state.phase == "end":
        return "All poured"
    count = len(state.done) + len(state.todo)
    return f"Pour {state.number} of {count}" if count > 1 else "One pour"


def _progress(view: View) -> list[int]:
    state = view.state
    steps = STEPS[state.job.way]
    pours = len(state.done) + len(state.todo)
    if state.phase == "end":
        return [pours * len(steps), pours * len(steps)]
    phase = state.back_to if state.phase in ("off", "still") else state.phase
    index = next(n for n, group in enumerate(steps) if phase in group)
    return [len(state.done) * len(steps) + index + 1, pours * len(steps)]


def _totals(view: View) -> list[dict[str, str]]:
    state, show = view.state, view.state.job.face.show
    if state.phase == "end":
        return [
            {
                "label": f"Pour {number}: B {how_far_off(pour.error)}" if pour.checked else f"Pour {number}: not checked",
                "text": f"A {show(pour.parts.a).text} + B {show(pour.parts.b).text}",
                "unit": state.job.face.unit,
            }
            for number, pour in enumerate(state.done, 1)
        ]
    rows = [("A in the bucket", state.a), ("B in the bucket", state.b), ("In the mould, about", in_the_moulds(state))]
    return [{"label": label, "text": show(mass).text, "unit": state.job.face.unit} for label, mass in rows if mass > 0]


def _clocks(view: View) -> list[dict[str, Any]]:
    state, job = view.state, view.state.job
    clocks: list[dict[str, Any]] = []
    if state.met is None or state.phase in OUT_OF_THE_BUCKET:
        return clocks
    ends = view.pot_ends
    clocks.append(
        {
            "id": "pot",
            "label": "Since A met B" if ends is None else "Pour within",
            "starts": state.met,
            "ends": ends,
            "warns": view.pot_warns,
            "overdue_label": "Overdue by",
            "alarm": ends is not None,
        }
    )
    if state.phase == "mix" and not view.overdue:
        seconds = job.mixing if job.mixing is not None else standard("mix longest") * _MINUTE
        label = {"label": "Mix on for", "overdue_label": "Mixed over by"}
        clocks.append({"id": "mix", "starts": state.since, "ends": state.since + seconds, "warns": None, "alarm": False} | label)
    return clocks


def _cautions(view: View) -> list[dict[str, str]]:
    """Before A meets B for a further pour: whether that makes one layer of two, or a layer that has to wait."""
    state = view.state
    if not state.done or state.met is not None or state.met_before is None or state.phase == "end":
        return []
    text = ONE_LAYER if view.now - state.met_before <= ONE_LAYER_S else LATER_LAYER
    return [{"id": "step-layer", "tone": "caution", "text": text}]


def _carry(view: View) -> list[dict[str, Any]]:
    """What the checklists of the same batch begin with: when A met B, last; and for the next batch, that this one is poured."""
    state = view.state
    met = state.met if state.met is not None and not state.discarded else state.met_before
    spent = [{"type": "spent", "at": state.since}] if state.phase == "end" else []
    return [] if met is None else [{"type": "mixed", "at": met}, *spent]
