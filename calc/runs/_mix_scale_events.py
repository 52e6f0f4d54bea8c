"""What each weighing does to a mixing run: the bucket or jug on the scale, A, B, and what puts the ratio right.

Each handler changes the state, or raises :class:`RefusedError` when the event cannot be what happened.
"""

from __future__ import annotations

from calc.casting import mixing, off_ratio
from calc.casting.mixing import Parts
from calc.casting.standards import standard
from calc.errors import InputError
from calc.quantity.reading import read
from calc.runs import Event
from calc.runs._mix_state import RefusedError, State, fix_by_amount, half_step, shown_for

#: A weight this many times over or under its target is asked about before it is believed.
_DOUBTFUL_OVER, _DOUBTFUL_UNDER = standard("doubtful over"), standard("doubtful under")


def reading_of(state: State, event: Event, shown: float | None) -> float:
    """The weight keyed in, kg; ``shown`` when the event says 'done as shown'."""
    text = event.get("reading")
    if text is None:
        if shown is None:
            raise RefusedError("Key in what the scale shows.")
        return shown
    try:
        reading = read("reading", str(text), "mass", str(event.get("unit") or state.job.face.unit)).si
    except InputError as error:
        raise RefusedError(f"'{text}' is not a weight I can read. Key in the figure on the scale.") from error
    if reading > state.job.capacity * 1.001:
        raise RefusedError(f"{state.job.face.show(reading)} is more than this scale weighs. Key it in again.")
    return reading


def _mass_from(state: State, part: str, reading: float) -> float:
    """The part's mass when the scale shows this."""
    if state.job.way == "decant":
        # A jug set to 0 on the scale falls below zero; a keypad without a minus sign leaves the sign out.
        return state.base - (-abs(reading) if state.tared else reading)
    return reading - state.base - (state.b if part == "a" else state.a)


def _weighed(state: State, event: Event, part: str, target: float) -> float:
    """The part's mass after a weighing; asks before it believes what is far off."""
    reading = reading_of(state, event, shown_for(state, part, target))
    mass = _mass_from(state, part, reading) if event.get("reading") is not None else target
    if mass < half_step(state):
        raise RefusedError(f"Then no {part.upper()} would be in. Key in what the scale shows with everything on it.")
    before = state.a if part == "a" else state.b
    if state.phase != "a-over" and mass < before - state.job.face.step_kg:
        raise RefusedError(f"Then less {part.upper()} would be in than before. Key in what the scale shows with everything on it.")
    if not event.get("sure") and not _DOUBTFUL_UNDER * target <= mass <= _DOUBTFUL_OVER * target:
        state.doubt = event
    return mass


def on_base(state: State, event: Event, at: float) -> None:
    """What the scale shows with the empty bucket on it, or the jug."""
    job = state.job
    inside = state.a + state.b if job.way == "pour" else 0.0
    known = state.empty + inside if state.empty is not None and job.way == "pour" else 0.0
    reading = 0.0 if event.get("tared") else reading_of(state, event, known)
    base = reading - inside
    if job.way == "pour" and base + state.target.total > job.capacity * 1.001:
        raise RefusedError(
            f"The bucket is {job.face.show(base)}: with {job.face.show(state.target.total)} of resin that is more than"
            f" the {job.face.show(job.capacity)} this scale weighs. Use a lighter bucket."
        )
    if job.way == "decant" and 0 < reading < _missing_now(state):
        raise _too_small_a_jug(state, _missing_now(state))
    state.base = base
    if job.way == "decant":
        state.tared = bool(event.get("tared"))
        state.base += state.a if state.target.a - state.a > half_step(state) else state.b
    if base > half_step(state) and job.way == "pour":
        state.empty = base
    if state.a and state.b and state.met is None:
        state.met = at
    _next_weighing(state)


def _missing_now(state: State) -> float:
    return max(state.target.a - state.a, 0.0) or max(state.target.b - state.b, 0.0)


def _too_small_a_jug(state: State, needed: float) -> RefusedError:
    return RefusedError(f"That jug cannot hold the {state.job.face.show(needed)} that is needed. Key it in again, or use a fuller jug.")


def _next_weighing(state: State) -> None:
    """On to the part that is missing: A first, then B."""
    if state.target.a - state.a > half_step(state):
        state.phase = "a"
    elif state.target.b - state.b > half_step(state):
        state.phase = "meet" if state.met is None else "b"
    else:
        judge(state)


def on_a(state: State, event: Event, at: float) -> None:
    """A is in."""
    job = state.job
    planned = state.todo[0] if state.phase == "a-over" else state.target
    mass = _weighed(state, event, "a", planned.a)
    if state.doubt is not None:
        return
    state.a = mass
    batch = mixing.parts_from_a(mass, job.ratio)
    if state.b == 0 and batch.total > job.net + job.face.step_kg:
        state.phase = "a-over"
        return
    state.target = Parts(mass, job.face.near(batch.b))
    if state.b:
        state.met = state.met or at
    if state.target.b - state.b > half_step(state):
        state.phase = "meet" if state.met is None else "b"
    else:
        judge(state)


def on_more_a(state: State, event: Event, at: float) -> None:
    """A fell short of its plan: more of it goes in before B."""
    state.target = state.todo[0]
    state.phase = "a"


def on_meet(state: State, event: Event, at: float) -> None:
    """B is about to go in: the clock starts."""
    if state.job.way == "decant":
        reading = 0.0 if event.get("tared") else reading_of(state, event, 0.0)
        if 0 < reading < state.target.b - state.b:
            raise _too_small_a_jug(state, state.target.b - state.b)
        state.tared = bool(event.get("tared"))
        state.base = reading + state.b
    state.met = at
    state.phase = "b" if state.job.way != "kit" else "mix" if state.full_b is None else "left-b"
    if state.phase == "mix":
        state.b = state.target.b


def on_b(state: State, event: Event, at: float) -> None:
    """B is in."""
    mass = _weighed(state, event, "b", state.target.b)
    if state.doubt is None:
        state.b = mass
        judge(state)


def judge(state: State) -> None:
    """On to mixing when the ratio is right, else to what puts it right."""
    job = state.job
    error = off_ratio.ratio_error(state.parts, job.ratio)
    missing = off_ratio.correction(state.parts, job.ratio).mass
    right = off_ratio.grade(error, job.good, job.worst) == "green" or missing <= half_step(state)
    state.phase = "mix" if right else "fix"


def on_fix(state: State, event: Event, at: float) -> None:
    """The missing part is in."""
    fix = off_ratio.correction(state.parts, state.job.ratio)
    inside = state.base + state.a + state.b
    before = 0.0 if fix_by_amount(state) else inside
    added = reading_of(state, event, before + fix.mass) - before
    if added <= 0:
        raise RefusedError("Then nothing was added. Key in what the scale shows now.")
    if not event.get("sure") and added > _DOUBTFUL_OVER * fix.mass + state.job.face.step_kg:
        state.doubt = event
        return
    if fix.part == "A":
        state.a += added
    else:
        state.b += added
    judge(state)
