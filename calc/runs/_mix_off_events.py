"""What a scale that switched itself off does to a mixing run, and how its weights are found again."""

from __future__ import annotations

from calc.casting import mixing
from calc.casting.mixing import Parts
from calc.runs import Event
from calc.runs._mix_scale_events import reading_of
from calc.runs._mix_state import RefusedError, State


def on_off(state: State, event: Event, at: float) -> None:
    """The scale switched itself off."""
    state.back_to, state.phase = state.phase, "off"


def on_off_zero(state: State, event: Event, at: float) -> None:
    """It shows 0 with everything on it, and nothing was poured since the last press."""
    state.base = _poured_of(state) if state.job.way == "decant" else -(state.a + state.b)
    state.tared = True
    state.phase = state.back_to


def _poured_of(state: State) -> float:
    """What of the part being poured has already left its jug, kg."""
    return state.a if state.back_to in ("a", "a-over") else state.b


def on_off_reading(state: State, event: Event, at: float) -> None:
    """The scale came back to 0 empty; what stands on it was put back and read."""
    reading = reading_of(state, event, None)
    if state.job.way == "decant":
        state.base = reading + _poured_of(state)
        state.tared = False
        state.phase = state.back_to
        return
    assert state.empty is not None  # the button is only there when the empty weight is known
    inside = reading - state.empty
    if inside < state.a + state.b - state.job.face.step_kg * 2 and state.back_to != "a-over":
        raise RefusedError(f"That is less than was in it before: {state.job.face.show(state.empty + state.a + state.b)}. Key it in again.")
    state.base = state.empty
    if state.back_to in ("a", "a-over"):
        state.a = max(inside - state.b, 0.0)
    elif state.back_to == "meet":
        state.a = inside - state.b
        state.target = Parts(state.a, state.job.face.near(mixing.parts_from_a(state.a, state.job.ratio).b))
    else:
        state.b = max(inside - state.a, 0.0)
    state.phase = state.back_to


def on_twin(state: State, event: Event, at: float) -> None:
    """What an empty bucket of the same kind weighs."""
    state.empty = reading_of(state, event, None)
