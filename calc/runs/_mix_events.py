"""What each event does to a mixing run, and in which step it may come; see :mod:`calc.runs.mix`.

Each handler changes the state, or raises :class:`RefusedError` when the event cannot be what happened.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from calc.casting import off_ratio
from calc.runs import Event
from calc.runs._mix_jug_events import on_full, on_left, on_skip, on_tipped
from calc.runs._mix_off_events import on_off, on_off_reading, on_off_zero, on_twin
from calc.runs._mix_scale_events import on_a, on_b, on_base, on_fix, on_meet, on_more_a
from calc.runs._mix_state import Done, RefusedError, State, how_far_off, open_pour

#: A pour this many scale steps off its plan leaves the others as they were.
_AS_PLANNED = 2


def take(state: State, event: Event) -> None:
    """Fold one event into the state."""
    kind = str(event["type"])
    at = float(event["at"])
    handlers = _HANDLERS.get(state.phase, {})
    if kind not in handlers:
        raise RefusedError("That button belongs to another step. Press again.")
    before = state.phase
    handlers[kind](state, event, at)
    if state.phase != before:
        state.since = at


def _on_accept(state: State, event: Event, at: float) -> None:
    state.record += (f"Pour {state.number}: used with B {how_far_off(off_ratio.ratio_error(state.parts, state.job.ratio))}.",)
    state.phase = "mix"


def _on_discard(state: State, event: Event, at: float) -> None:
    state.discarded = True
    state.record += (f"Pour {state.number}: a batch of {state.job.face.show(state.parts.total)} was not used.",)
    state.phase = "tray"


def _on_poured(state: State, event: Event, at: float) -> None:
    within = state.within
    if state.met is not None and within is not None and at > state.met + within:
        late = math.ceil((at - state.met - within) / 60)
        state.record += (f"Pour {state.number}: poured {late} min after its time in the bucket.",)
    state.phase = "tray"


def _on_tray(state: State, event: Event, at: float) -> None:
    if not state.discarded:
        checked = state.job.way != "kit" or state.full_b is not None
        state.met_before = state.met
        state.done += (Done(state.parts, off_ratio.ratio_error(state.parts, state.job.ratio), checked),)
        planned, *rest = state.todo
        as_planned = abs(state.parts.total - planned.total) <= _AS_PLANNED * state.job.face.step_kg
        state.todo = tuple(rest) if as_planned or not rest else state.job.shared(state.job.total - state.poured)
    if state.todo:
        open_pour(state)
    else:
        state.phase = "end"


def _on_still(state: State, event: Event, at: float) -> None:
    state.back_to = state.phase
    state.phase = "still"


def _on_pour_now(state: State, event: Event, at: float) -> None:
    state.still = True
    state.record += (f"Pour {state.number}: past its time in the bucket, found thin and cool.",)
    state.phase = "pour"


def _go(phase: str) -> Callable[[State, Event, float], None]:
    def handler(state: State, event: Event, at: float) -> None:
        state.phase = phase

    return handler


_HANDLERS: Mapping[str, Mapping[str, Callable[[State, Event, float], None]]] = {
    "base": {"base": on_base},
    "a": {"a": on_a, "off": on_off, "tipped": on_tipped, "discard": _on_discard},
    "a-over": {"a": on_a, "off": on_off, "discard": _on_discard},
    "meet": {"meet": on_meet, "more-a": on_more_a, "off": on_off},
    "b": {"b": on_b, "off": on_off, "discard": _on_discard},
    "fix": {"fix": on_fix, "accept": _on_accept, "give-up": _go("give-up"), "discard": _on_discard},
    "give-up": {"back": _go("fix"), "discard": _on_discard, "use": _on_accept},
    "mix": {"mixed": _go("second"), "still": _on_still, "discard": _on_discard},
    "second": {"second": _go("clear"), "still": _on_still, "discard": _on_discard},
    "clear": {"colour": _go("colour"), "plain": _go("pour"), "streaks": _go("mix"), "still": _on_still, "discard": _on_discard},
    "colour": {"coloured": _go("pour"), "still": _on_still, "discard": _on_discard},
    "pour": {"poured": _on_poured, "still": _on_still, "discard": _on_discard},
    "still": {"pour-now": _on_pour_now, "discard": _on_discard},
    "tray": {"tray": _on_tray},
    "full-a": {"full": on_full, "skip": on_skip},
    "full-b": {"full": on_full, "skip": on_skip},
    "left-a": {"left": on_left},
    "left-b": {"left": on_left, "discard": _on_discard},
    "off": {"off-zero": on_off_zero, "off-reading": on_off_reading, "twin": on_twin, "discard": _on_discard},
    "end": {},
}
