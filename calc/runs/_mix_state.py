"""Where a mixing run stands, and what each event does to it; see :mod:`calc.runs.mix`.

Each handler changes the state, or raises :class:`RefusedError` when the event cannot be what happened.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from calc.casting import mixing, weighing
from calc.casting.batch import Job, Way
from calc.casting.mixing import Parts
from calc.errors import InputError
from calc.quantity import Style, read, write
from calc.runs import Event

#: A weight this many times over or under its target is asked about before it is believed (our judgement).
_DOUBTFUL_OVER, _DOUBTFUL_UNDER = 2.0, 0.3
#: An emptied jug may be this far from what was to leave it before it is asked about (our judgement).
_DOUBTFUL_JUG = 0.3
#: A pour this many scale steps off its plan leaves the others as they were.
_AS_PLANNED = 2

#: The steps of one pour, for the count of steps; what belongs to a step counts as that step.
_MIXED = (("mix",), ("second",), ("clear", "colour"), ("pour",), ("tray",))
_WEIGHED = (("base",), ("a", "a-over"), ("meet",), ("b", "fix", "give-up"))
_TIPPED = (("full-a",), ("full-b",), ("a",), ("left-a",), ("meet",), ("left-b", "fix", "give-up"))
STEPS: Mapping[Way, tuple[tuple[str, ...], ...]] = {
    "pour": _WEIGHED + _MIXED,
    "decant": _WEIGHED + _MIXED,
    "kit": _TIPPED + _MIXED,
}
#: Where no mixed resin is in a bucket any more, and the clock has done its work.
OUT_OF_THE_BUCKET = ("tray", "end")


class RefusedError(Exception):
    """The event cannot be what happened; the text says why."""


@dataclass(frozen=True)
class Done:
    """A pour that is in the mould."""

    parts: Parts
    error: float
    checked: bool = True


@dataclass
class State:
    """Where a run stands. Masses in kg, times in epoch seconds."""

    job: Job
    todo: tuple[Parts, ...]
    phase: str = "base"
    #: What the scale shows (or would show) with none of this pour's resin out of the jug, or in the bucket.
    base: float = 0.0
    #: Decanting: the jug was set to 0 on the scale, so its figure falls below zero.
    tared: bool = False
    empty: float | None = None
    a: float = 0.0
    b: float = 0.0
    target: Parts = field(default_factory=lambda: Parts(0.0, 0.0))
    full_a: float | None = None
    full_b: float | None = None
    met: float | None = None
    #: When the parts of the last pour that went into a mould met.
    met_before: float | None = None
    since: float = 0.0
    discarded: bool = False
    back_to: str = ""
    doubt: Event | None = None
    done: tuple[Done, ...] = ()
    record: tuple[str, ...] = ()

    @property
    def number(self) -> int:
        return len(self.done) + 1

    @property
    def poured(self) -> float:
        return sum(pour.parts.total for pour in self.done)

    @property
    def parts(self) -> Parts:
        return Parts(self.a, self.b)


def begin(job: Job) -> State:
    """The state before the first press."""
    state = State(job, job.pours(), empty=job.empty)
    _open_pour(state, job.in_a, job.in_b)
    return state


def _open_pour(state: State, in_a: float = 0.0, in_b: float = 0.0) -> None:
    state.target = state.todo[0]
    state.a, state.b = in_a, in_b
    state.base, state.met, state.discarded = 0.0, None, False
    state.full_a = state.full_b = None
    state.phase = "full-a" if state.job.way == "kit" else "base"


# --- events --------------------------------------------------------------------------------------


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


def _reading(state: State, event: Event, shown: float | None) -> float:
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


def half_step(state: State) -> float:
    """Half of the scale's step, kg: less than this, it does not show."""
    return state.job.face.step_kg / 2


def shown_for(state: State, part: str, mass: float) -> float:
    """What the scale shows when ``mass`` kg of the part is out of the jug, or in the bucket."""
    if state.job.way == "decant":
        return weighing.emptied_jug(state.base, mass)
    return state.base + mass + (state.b if part == "a" else state.a)


def _mass_from(state: State, part: str, reading: float) -> float:
    """The part's mass when the scale shows this."""
    if state.job.way == "decant":
        # A jug set to 0 on the scale falls below zero; a keypad without a minus sign leaves the sign out.
        return state.base - (-abs(reading) if state.tared else reading)
    return reading - state.base - (state.b if part == "a" else state.a)


def _weighed(state: State, event: Event, part: str, target: float) -> float:
    """The part's mass after a weighing; asks before it believes what is far off."""
    reading = _reading(state, event, shown_for(state, part, target))
    mass = _mass_from(state, part, reading) if event.get("reading") is not None else target
    if mass < half_step(state):
        raise RefusedError(f"Then no {part.upper()} would be in. Key in what the scale shows with everything on it.")
    before = state.a if part == "a" else state.b
    if state.phase != "a-over" and mass < before - state.job.face.step_kg:
        raise RefusedError(f"Then less {part.upper()} would be in than before. Key in what the scale shows with everything on it.")
    if not event.get("sure") and not _DOUBTFUL_UNDER * target <= mass <= _DOUBTFUL_OVER * target:
        state.doubt = event
    return mass


def _on_base(state: State, event: Event, at: float) -> None:
    job = state.job
    inside = state.a + state.b if job.way == "pour" else 0.0
    known = state.empty + inside if state.empty is not None and job.way == "pour" else 0.0
    reading = 0.0 if event.get("tared") else _reading(state, event, known)
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
        _judge(state)


def _on_a(state: State, event: Event, at: float) -> None:
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
        _judge(state)


def _on_more_a(state: State, event: Event, at: float) -> None:
    state.target = state.todo[0]
    state.phase = "a"


def _on_meet(state: State, event: Event, at: float) -> None:
    if state.job.way == "decant":
        reading = 0.0 if event.get("tared") else _reading(state, event, 0.0)
        if 0 < reading < state.target.b - state.b:
            raise _too_small_a_jug(state, state.target.b - state.b)
        state.tared = bool(event.get("tared"))
        state.base = reading + state.b
    state.met = at
    state.phase = "b" if state.job.way != "kit" else "mix" if state.full_b is None else "left-b"
    if state.phase == "mix":
        state.b = state.target.b


def _on_b(state: State, event: Event, at: float) -> None:
    mass = _weighed(state, event, "b", state.target.b)
    if state.doubt is None:
        state.b = mass
        _judge(state)


def _judge(state: State) -> None:
    """On to mixing when the ratio is right, else to what puts it right."""
    job = state.job
    error = mixing.ratio_error(state.parts, job.ratio)
    missing = mixing.correction(state.parts, job.ratio).mass
    right = mixing.grade(error, job.good, job.worst) == "green" or missing <= half_step(state)
    state.phase = "mix" if right else "fix"


def fix_by_amount(state: State) -> bool:
    """Whether the missing part is weighed on its own: no bucket on the scale, or no room left on it."""
    if state.job.way != "pour":
        return True
    missing = mixing.correction(state.parts, state.job.ratio).mass
    return state.base + state.a + state.b + missing > state.job.capacity


def _on_fix(state: State, event: Event, at: float) -> None:
    fix = mixing.correction(state.parts, state.job.ratio)
    inside = state.base + state.a + state.b
    before = 0.0 if fix_by_amount(state) else inside
    added = _reading(state, event, before + fix.mass) - before
    if added <= 0:
        raise RefusedError("Then nothing was added. Key in what the scale shows now.")
    if not event.get("sure") and added > _DOUBTFUL_OVER * fix.mass + state.job.face.step_kg:
        state.doubt = event
        return
    if fix.part == "A":
        state.a += added
    else:
        state.b += added
    _judge(state)


def _on_accept(state: State, event: Event, at: float) -> None:
    state.record += (f"Pour {state.number}: used with B {how_far_off(mixing.ratio_error(state.parts, state.job.ratio))}.",)
    state.phase = "mix"


def _on_discard(state: State, event: Event, at: float) -> None:
    state.discarded = True
    state.record += (f"Pour {state.number}: a batch of {state.job.face.show(state.parts.total)} was not used.",)
    state.phase = "tray"


def _on_poured(state: State, event: Event, at: float) -> None:
    working = state.job.working
    if state.met is not None and working is not None and at > state.met + working:
        late = math.ceil((at - state.met - working) / 60)
        state.record += (f"Pour {state.number}: poured {late} min after its working time.",)
    state.phase = "tray"


def _on_tray(state: State, event: Event, at: float) -> None:
    if not state.discarded:
        checked = state.job.way != "kit" or state.full_b is not None
        state.met_before = state.met
        state.done += (Done(state.parts, mixing.ratio_error(state.parts, state.job.ratio), checked),)
        planned, *rest = state.todo
        as_planned = abs(state.parts.total - planned.total) <= _AS_PLANNED * state.job.face.step_kg
        state.todo = tuple(rest) if as_planned or not rest else state.job.shared(state.job.total - state.poured)
    if state.todo:
        _open_pour(state)
    else:
        state.phase = "end"


def _on_full(state: State, event: Event, at: float) -> None:
    reading = _reading(state, event, None)
    part = state.phase[-1]
    if reading < getattr(state.target, part) * 0.5:
        raise RefusedError(f"A full jug of {part.upper()} weighs more than that. Key in what the scale shows.")
    if part == "a":
        state.full_a = reading
        state.phase = "full-b"
    else:
        state.full_b = reading
        state.phase = "a"


def _on_skip(state: State, event: Event, at: float) -> None:
    state.full_a = state.full_b = None
    state.record += (f"Pour {state.number}: whole jugs tipped in, not checked by weight.",)
    state.phase = "a"


def _on_tipped(state: State, event: Event, at: float) -> None:
    state.a = state.target.a
    state.phase = "meet" if state.full_a is None else "left-a"


def _on_left(state: State, event: Event, at: float) -> None:
    part = state.phase[-1]
    full = state.full_a if part == "a" else state.full_b
    assert full is not None  # the phase is only entered with a full jug weighed
    target = getattr(state.target, part)
    used = full - _reading(state, event, weighing.emptied_jug(full, target))
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
        _judge(state)


def _on_off(state: State, event: Event, at: float) -> None:
    state.back_to, state.phase = state.phase, "off"


def _on_off_zero(state: State, event: Event, at: float) -> None:
    """It shows 0 with everything on it, and nothing was poured since the last press."""
    state.base = _poured_of(state) if state.job.way == "decant" else -(state.a + state.b)
    state.tared = True
    state.phase = state.back_to


def _poured_of(state: State) -> float:
    """What of the part being poured has already left its jug, kg."""
    return state.a if state.back_to in ("a", "a-over") else state.b


def _on_off_reading(state: State, event: Event, at: float) -> None:
    """The scale came back to 0 empty; what stands on it was put back and read."""
    reading = _reading(state, event, None)
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


def _on_twin(state: State, event: Event, at: float) -> None:
    state.empty = _reading(state, event, None)


def _go(phase: str) -> Callable[[State, Event, float], None]:
    def handler(state: State, event: Event, at: float) -> None:
        state.phase = phase

    return handler


_HANDLERS: Mapping[str, Mapping[str, Callable[[State, Event, float], None]]] = {
    "base": {"base": _on_base},
    "a": {"a": _on_a, "off": _on_off, "tipped": _on_tipped, "discard": _on_discard},
    "a-over": {"a": _on_a, "off": _on_off, "discard": _on_discard},
    "meet": {"meet": _on_meet, "more-a": _on_more_a, "off": _on_off},
    "b": {"b": _on_b, "off": _on_off, "discard": _on_discard},
    "fix": {"fix": _on_fix, "accept": _on_accept, "give-up": _go("give-up"), "discard": _on_discard},
    "give-up": {"back": _go("fix"), "discard": _on_discard, "use": _on_accept},
    "mix": {"mixed": _go("second"), "pour-now": _go("pour"), "discard": _on_discard},
    "second": {"second": _go("clear"), "pour-now": _go("pour"), "discard": _on_discard},
    "clear": {"colour": _go("colour"), "plain": _go("pour"), "streaks": _go("mix"), "pour-now": _go("pour"), "discard": _on_discard},
    "colour": {"coloured": _go("pour"), "pour-now": _go("pour"), "discard": _on_discard},
    "pour": {"poured": _on_poured, "discard": _on_discard},
    "tray": {"tray": _on_tray},
    "full-a": {"full": _on_full, "skip": _on_skip},
    "full-b": {"full": _on_full, "skip": _on_skip},
    "left-a": {"left": _on_left},
    "left-b": {"left": _on_left, "discard": _on_discard},
    "off": {"off-zero": _on_off_zero, "off-reading": _on_off_reading, "twin": _on_twin, "discard": _on_discard},
    "end": {},
}


def how_far_off(error: float) -> str:
    """How far B is off, in words.

    >>> how_far_off(-0.0423), how_far_off(0.104)
    ('4.2 % short', '10 % over')
    """
    style = Style("%", figures=2) if abs(error) >= 0.1 else Style("%", step=0.1)
    size = str(write(abs(error), ("share", style))).replace(".0 ", " ")
    return f"{size} {'over' if error > 0 else 'short'}"

