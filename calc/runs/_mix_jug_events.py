"""What a whole kit does to a mixing run: full jugs weighed, tipped in, and weighed again when they are empty."""

from __future__ import annotations

from calc.casting import weighing
from calc.casting.mixing import Parts
from calc.casting.standards import standard
from calc.runs import Event
from calc.runs._mix_scale_events import judge, reading_of
from calc.runs._mix_state import RefusedError, State, half_step

#: An emptied jug may be this far from what was to leave it before it is asked about.
_DOUBTFUL_JUG = standard("doubtful jug")


def on_full(state: State, event: Event, at: float) -> None:
    """A full jug of the kit on the scale."""
    reading = reading_of(state, event, None)
    part = state.phase[-1]
    if reading < getattr(state.target, part) * 0.5:
        raise RefusedError(f"A full jug of {part.upper()} weighs more than that. Key in what the scale shows.")
    if part == "a":
        state.full_a = reading
        state.phase = "full-b"
    else:
        state.full_b = reading
        state.phase = "a"


def on_skip(state: State, event: Event, at: float) -> None:
    """The jugs are not weighed."""
    state.full_a = state.full_b = None
    state.record += (f"Pour {state.number}: whole jugs tipped in, not checked by weight.",)
    state.phase = "a"


def on_tipped(state: State, event: Event, at: float) -> None:
    """All of A is tipped in."""
    state.a = state.target.a
    state.phase = "meet" if state.full_a is None else "left-a"


def on_left(state: State, event: Event, at: float) -> None:
    """An emptied jug on the scale again."""
    part = state.phase[-1]
    full = state.full_a if part == "a" else state.full_b
    assert full is not None  # the phase is only entered with a full jug weighed
    target = getattr(state.target, part)
    used = full - reading_of(state, event, weighing.emptied_jug(full, target))
    if used < half_step(state):
        raise RefusedError("Then the jug is as full as before. Key in what the emptied jug weighs.")
    if not event.get("sure") and abs(used - target) > _DOUBTFUL_JUG * target:
        state.doubt = event
        return
    if part == "a":
        state.a = used
        state.target = Parts(used, used * state.job.ratio.b_per_a)
        state.phase = "meet"
    else:
        state.b = used
        judge(state)
