"""Mixing step by step, in gloves: from what happened so far to the screen that comes next.

A run is a list of events. :func:`screen_of` folds them into a state and shows it; it keeps nothing and
reads no clock, so a reload, a locked screen or an undo (the page drops the last event) all come out right.

An event has ``type`` and ``at`` (epoch seconds); one that carries a weight has ``reading`` (as keyed in) and
``unit``. Without a reading it means 'done as shown'. An event that makes no sense where it stands changes
nothing; when it is the last one, the screen says why in ``errors``, and the page drops it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from calc.casting import mixing
from calc.casting.batch import Job, Way, standard
from calc.casting.mixing import Parts
from calc.errors import InputError
from calc.quantity import Shown, Style, read, write
from calc.questions import Given
from calc.runs import Run

Screen = dict[str, Any]
Event = Mapping[str, Any]

_MINUTE = 60.0
#: A weight this many times over or under its target is asked about before it is believed (our judgement).
_DOUBTFUL_OVER, _DOUBTFUL_UNDER = 2.0, 0.3

#: A pour this many scale steps off its plan leaves the others as they were.
_AS_PLANNED = 2

#: An error of the ratio that is not worth a word.
_ON_RATIO = 0.0005

#: The steps of one pour, for the count of steps; what belongs to a step counts as that step.
_MIXED = (("mix",), ("second",), ("clear", "colour"), ("pour",), ("tray",))
_WEIGHED = (("base",), ("a", "a-over"), ("meet",), ("b", "fix", "give-up"))
_TIPPED = (("full-a",), ("full-b",), ("a",), ("left-a",), ("meet",), ("left-b", "fix", "give-up"))
_STEPS: Mapping[Way, tuple[tuple[str, ...], ...]] = {
    "pour": _WEIGHED + _MIXED,
    "decant": _WEIGHED + _MIXED,
    "kit": _TIPPED + _MIXED,
}
#: Where no mixed resin is in a bucket any more, and the clock has done its work.
_OUT_OF_THE_BUCKET = ("tray", "end")


class _RefusedError(Exception):
    """The event cannot be what happened; the text says why."""


@dataclass(frozen=True)
class _Done:
    """A pour that is in the mould."""

    parts: Parts
    error: float
    checked: bool = True


@dataclass
class _State:
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
    since: float = 0.0
    accepted: bool = False
    discarded: bool = False
    back_to: str = ""
    doubt: Event | None = None
    done: tuple[_Done, ...] = ()
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


def screen_of(job: Job, events: Sequence[Event], now: float) -> Screen:
    """The screen after these events.

    Parameters
    ----------
    job : what is mixed, with what; :attr:`calc.casting.batch.Job.weighable`.
    events : what happened, oldest first.
    now : the page's clock, epoch seconds; only says whether a clock has run out.

    Returns
    -------
    dict
        JSON-able: what to do, its figure, the buttons with the event each appends, clocks, totals.

    Examples
    --------
    >>> from calc.casting.batch import ScaleFace
    >>> from calc.casting.mixing import PourLimit, Ratio
    >>> job = Job(1.3, Ratio(100, 45), ScaleFace("g", 1), 0.001, 2.0, PourLimit(1.94, None), 1100, 0.02, 0.05, empty=0.06)
    >>> screen_of(job, [{"type": "base", "at": 0.0}], 1.0)["big"]
    {'label': 'The scale goes up to', 'text': '957', 'unit': 'g'}

    References
    ----------
    US Army TM 1-1500-204-23-11 (weigh, fold, one even colour, then the clock); resin makers' pages; common practice.
    """
    state = _begin(job)
    error = ""
    for event in events:
        before = replace(state)
        try:
            state.doubt = None
            _take(state, event)
            error = ""
        except _RefusedError as refused:
            state = before
            error = str(refused)
    return _Shown(state, now, started=bool(events), error=error).screen()


def _begin(job: Job) -> _State:
    state = _State(job, job.pours(), empty=job.empty)
    _open_pour(state, job.in_a, job.in_b)
    return state


def _open_pour(state: _State, in_a: float = 0.0, in_b: float = 0.0) -> None:
    state.target = state.todo[0]
    state.a, state.b = in_a, in_b
    state.base, state.met, state.accepted, state.discarded = 0.0, None, False, False
    state.full_a = state.full_b = None
    state.phase = "full-a" if state.job.way == "kit" else "base"


# --- events --------------------------------------------------------------------------------------


def _take(state: _State, event: Event) -> None:
    """Fold one event into the state."""
    kind = str(event["type"])
    at = float(event["at"])
    handlers = _HANDLERS.get(state.phase, {})
    if kind not in handlers:
        raise _RefusedError("That button belongs to another step. Press again.")
    before = state.phase
    handlers[kind](state, event, at)
    if state.phase != before:
        state.since = at


def _reading(state: _State, event: Event, shown: float | None) -> float:
    """The weight keyed in, kg; ``shown`` when the event says 'done as shown'."""
    text = event.get("reading")
    if text is None:
        if shown is None:
            raise _RefusedError("Key in what the scale shows.")
        return shown
    try:
        reading = read("reading", str(text), "mass", str(event.get("unit") or state.job.face.unit)).si
    except InputError as error:
        raise _RefusedError(f"'{text}' is not a weight I can read. Key in the figure on the scale.") from error
    if reading > state.job.capacity * 1.001:
        raise _RefusedError(f"{state.job.face.show(reading)} is more than this scale weighs. Key it in again.")
    return reading


def _half(state: _State) -> float:
    return state.job.face.step_kg / 2


def _shown_for(state: _State, part: str, mass: float) -> float:
    """What the scale shows when ``mass`` kg of the part is out of the jug, or in the bucket."""
    if state.job.way == "decant":
        return mixing.emptied_jug(state.base, mass)
    return state.base + mass + (state.b if part == "a" else state.a)


def _mass_from(state: _State, part: str, reading: float) -> float:
    """The part's mass when the scale shows this."""
    if state.job.way == "decant":
        # A jug set to 0 on the scale falls below zero; a keypad without a minus sign leaves the sign out.
        return state.base - (-abs(reading) if state.tared else reading)
    return reading - state.base - (state.b if part == "a" else state.a)


def _weighed(state: _State, event: Event, part: str, target: float) -> float:
    """The part's mass after a weighing; asks before it believes what is far off."""
    reading = _reading(state, event, _shown_for(state, part, target))
    mass = _mass_from(state, part, reading) if event.get("reading") is not None else target
    if mass < _half(state):
        raise _RefusedError(f"Then no {part.upper()} would be in. Key in what the scale shows with everything on it.")
    before = state.a if part == "a" else state.b
    if state.phase != "a-over" and mass < before - state.job.face.step_kg:
        raise _RefusedError(f"Then less {part.upper()} would be in than before. Key in what the scale shows with everything on it.")
    if not event.get("sure") and not _DOUBTFUL_UNDER * target <= mass <= _DOUBTFUL_OVER * target:
        state.doubt = event
    return mass


def _on_base(state: _State, event: Event, at: float) -> None:
    job = state.job
    inside = state.a + state.b if job.way == "pour" else 0.0
    known = state.empty + inside if state.empty is not None and job.way == "pour" else 0.0
    reading = 0.0 if event.get("tared") else _reading(state, event, known)
    base = reading - inside
    if job.way == "pour" and base + state.target.total > job.capacity * 1.001:
        raise _RefusedError(
            f"The bucket is {job.face.show(base)}: with {job.face.show(state.target.total)} of resin that is more than"
            f" the {job.face.show(job.capacity)} this scale weighs. Use a lighter bucket."
        )
    if job.way == "decant" and 0 < reading < _missing_now(state):
        raise _too_small_a_jug(state, _missing_now(state))
    state.base = base
    if job.way == "decant":
        state.tared = bool(event.get("tared"))
        state.base += state.a if state.target.a - state.a > _half(state) else state.b
    if base > _half(state) and job.way == "pour":
        state.empty = base
    if state.a and state.b and state.met is None:
        state.met = at
    _next_weighing(state)


def _missing_now(state: _State) -> float:
    return max(state.target.a - state.a, 0.0) or max(state.target.b - state.b, 0.0)


def _too_small_a_jug(state: _State, needed: float) -> _RefusedError:
    return _RefusedError(f"That jug cannot hold the {state.job.face.show(needed)} that is needed. Key it in again, or use a fuller jug.")


def _next_weighing(state: _State) -> None:
    """On to the part that is missing: A first, then B."""
    if state.target.a - state.a > _half(state):
        state.phase = "a"
    elif state.target.b - state.b > _half(state):
        state.phase = "meet" if state.met is None else "b"
    else:
        _judge(state)


def _on_a(state: _State, event: Event, at: float) -> None:
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
    if state.target.b - state.b > _half(state):
        state.phase = "meet" if state.met is None else "b"
    else:
        _judge(state)


def _on_more_a(state: _State, event: Event, at: float) -> None:
    state.target = state.todo[0]
    state.phase = "a"


def _on_meet(state: _State, event: Event, at: float) -> None:
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


def _on_b(state: _State, event: Event, at: float) -> None:
    mass = _weighed(state, event, "b", state.target.b)
    if state.doubt is None:
        state.b = mass
        _judge(state)


def _judge(state: _State) -> None:
    """On to mixing when the ratio is right, else to what puts it right."""
    job = state.job
    error = mixing.ratio_error(state.parts, job.ratio)
    missing = mixing.correction(state.parts, job.ratio).mass
    right = mixing.grade(error, job.good, job.worst) == "green" or missing <= _half(state)
    state.phase = "mix" if right else "fix"


def _fix_by_amount(state: _State) -> bool:
    """Whether the missing part is weighed on its own: no bucket on the scale, or no room left on it."""
    if state.job.way != "pour":
        return True
    missing = mixing.correction(state.parts, state.job.ratio).mass
    return state.base + state.a + state.b + missing > state.job.capacity


def _on_fix(state: _State, event: Event, at: float) -> None:
    fix = mixing.correction(state.parts, state.job.ratio)
    inside = state.base + state.a + state.b
    before = 0.0 if _fix_by_amount(state) else inside
    added = _reading(state, event, before + fix.mass) - before
    if added <= 0:
        raise _RefusedError("Then nothing was added. Key in what the scale shows now.")
    if not event.get("sure") and added > _DOUBTFUL_OVER * fix.mass + state.job.face.step_kg:
        state.doubt = event
        return
    if fix.part == "A":
        state.a += added
    else:
        state.b += added
    _judge(state)


def _on_accept(state: _State, event: Event, at: float) -> None:
    state.accepted = True
    state.record += (f"Pour {state.number}: used with B {_off(mixing.ratio_error(state.parts, state.job.ratio))}.",)
    state.phase = "mix"


def _on_discard(state: _State, event: Event, at: float) -> None:
    state.discarded = True
    state.record += (f"Pour {state.number}: a batch of {state.job.face.show(state.parts.total)} was not used.",)
    state.phase = "tray"


def _on_poured(state: _State, event: Event, at: float) -> None:
    state.phase = "tray"


def _on_tray(state: _State, event: Event, at: float) -> None:
    if not state.discarded:
        checked = state.job.way != "kit" or state.full_b is not None
        state.done += (_Done(state.parts, mixing.ratio_error(state.parts, state.job.ratio), checked),)
        planned, *rest = state.todo
        as_planned = abs(state.parts.total - planned.total) <= _AS_PLANNED * state.job.face.step_kg
        state.todo = tuple(rest) if as_planned or not rest else state.job.shared(state.job.total - state.poured)
    if state.todo:
        _open_pour(state)
    else:
        state.phase = "end"


def _on_full(state: _State, event: Event, at: float) -> None:
    reading = _reading(state, event, None)
    part = state.phase[-1]
    if reading < getattr(state.target, part) * 0.5:
        raise _RefusedError(f"A full jug of {part.upper()} weighs more than that. Key in what the scale shows.")
    if part == "a":
        state.full_a = reading
        state.phase = "full-b"
    else:
        state.full_b = reading
        state.phase = "a"


def _on_skip(state: _State, event: Event, at: float) -> None:
    state.full_a = state.full_b = None
    state.record += (f"Pour {state.number}: whole jugs tipped in, not checked by weight.",)
    state.phase = "a"


def _on_tipped(state: _State, event: Event, at: float) -> None:
    state.a = state.target.a
    state.phase = "meet" if state.full_a is None else "left-a"


def _on_left(state: _State, event: Event, at: float) -> None:
    part = state.phase[-1]
    full = state.full_a if part == "a" else state.full_b
    assert full is not None  # the phase is only entered with a full jug weighed
    target = getattr(state.target, part)
    used = full - _reading(state, event, mixing.emptied_jug(full, target))
    if used < _half(state):
        raise _RefusedError("Then the jug is as full as before. Key in what the emptied jug weighs.")
    if not event.get("sure") and not 0.7 * target <= used <= 1.3 * target:
        state.doubt = event
        return
    if part == "a":
        state.a = used
        state.target = Parts(used, used * state.job.ratio.b_per_a)
        state.phase = "meet"
    else:
        state.b = used
        _judge(state)


def _on_off(state: _State, event: Event, at: float) -> None:
    state.back_to, state.phase = state.phase, "off"


def _on_off_zero(state: _State, event: Event, at: float) -> None:
    """It shows 0 with everything on it, and nothing was poured since the last press."""
    state.base = _poured_of(state) if state.job.way == "decant" else -(state.a + state.b)
    state.tared = True
    state.phase = state.back_to


def _poured_of(state: _State) -> float:
    """What of the part being poured has already left its jug, kg."""
    return state.a if state.back_to in ("a", "a-over") else state.b


def _on_off_reading(state: _State, event: Event, at: float) -> None:
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
        raise _RefusedError(f"That is less than was in it before: {state.job.face.show(state.empty + state.a + state.b)}. Key it in again.")
    state.base = state.empty
    if state.back_to in ("a", "a-over"):
        state.a = max(inside - state.b, 0.0)
    elif state.back_to == "meet":
        state.a = inside - state.b
        state.target = Parts(state.a, state.job.face.near(mixing.parts_from_a(state.a, state.job.ratio).b))
    else:
        state.b = max(inside - state.a, 0.0)
    state.phase = state.back_to


def _on_twin(state: _State, event: Event, at: float) -> None:
    state.empty = _reading(state, event, None)


def _go(phase: str) -> Callable[[_State, Event, float], None]:
    def handler(state: _State, event: Event, at: float) -> None:
        state.phase = phase

    return handler


_HANDLERS: Mapping[str, Mapping[str, Callable[[_State, Event, float], None]]] = {
    "base": {"base": _on_base},
    "a": {"a": _on_a, "off": _on_off, "tipped": _on_tipped},
    "a-over": {"a": _on_a, "off": _on_off},
    "meet": {"meet": _on_meet, "more-a": _on_more_a, "off": _on_off},
    "b": {"b": _on_b, "off": _on_off},
    "fix": {"fix": _on_fix, "accept": _on_accept, "give-up": _go("give-up")},
    "give-up": {"back": _go("fix"), "discard": _on_discard, "use": _on_accept},
    "mix": {"mixed": _go("second"), "discard": _on_discard},
    "second": {"second": _go("clear"), "discard": _on_discard},
    "clear": {"colour": _go("colour"), "plain": _go("pour"), "streaks": _go("mix"), "discard": _on_discard},
    "colour": {"coloured": _go("pour"), "discard": _on_discard},
    "pour": {"poured": _on_poured, "discard": _on_discard},
    "tray": {"tray": _on_tray},
    "full-a": {"full": _on_full, "skip": _on_skip},
    "full-b": {"full": _on_full, "skip": _on_skip},
    "left-a": {"left": _on_left},
    "left-b": {"left": _on_left},
    "off": {"off-zero": _on_off_zero, "off-reading": _on_off_reading, "twin": _on_twin},
    "end": {},
}


# --- the screen ----------------------------------------------------------------------------------


def _off(error: float) -> str:
    """How far B is off, in words: '4.2 % short'."""
    style = Style("%", figures=2) if abs(error) >= 0.1 else Style("%", step=0.1)
    size = str(write(abs(error), ("share", style))).replace(".0 ", " ")
    return f"{size} {'over' if error > 0 else 'short'}"


def _button(kind: str, label: str, type_: str, **details: Any) -> dict[str, Any]:
    name = f"{type_}-tared" if details.get("tared") else type_
    return {"id": name, "label": label, "kind": kind, "event": {"type": type_, **details}, "ask": None}


@dataclass(frozen=True)
class _Shown:
    """Words and buttons for a state."""

    state: _State
    now: float
    started: bool
    error: str

    def screen(self) -> Screen:
        state, job = self.state, self.state.job
        screen: Screen = {
            "id": "mix",
            "title": self.title(),
            "step": "",
            "progress": self.progress(),
            "ended": state.phase == "end",
            "big": None,
            "say": "",
            "note": "",
            "tone": "plain",
            "buttons": [],
            "totals": self.totals(),
            "clocks": self.clocks(),
            "items": [],
            "cautions": [],
            "errors": [{"field": "reading", "code": "refused", "message": self.error, "given": ""}] if self.error else [],
            "record": list(state.record),
        }
        screen |= self.doubt() if state.doubt is not None else _SCREENS[(job.way, state.phase)](self)
        if self.overdue:
            screen["tone"] = "stop"
            if state.phase in ("mix", "second", "clear", "colour", "pour"):
                screen["note"] = f"{_OVERDUE_WAY_OUT} Still thin and cool? {screen['say']}"
                screen["say"] = _OVERDUE
                screen["buttons"].append(_button("danger", "Too thick or warm: do not pour it", "discard"))
        if self.started:
            screen["buttons"].append({"id": "undo", "label": "Undo", "kind": "undo", "event": None, "ask": None})
        return screen

    # --- parts of every screen ---

    def title(self) -> str:
        state = self.state
        if state.phase == "end":
            return "All poured"
        count = len(state.done) + len(state.todo)
        return f"Pour {state.number} of {count}" if count > 1 else "One pour"

    def progress(self) -> list[int]:
        state = self.state
        steps = _STEPS[state.job.way]
        pours = len(state.done) + len(state.todo)
        if state.phase == "end":
            return [pours * len(steps), pours * len(steps)]
        phase = state.back_to if state.phase == "off" else state.phase
        index = next(n for n, group in enumerate(steps) if phase in group)
        return [len(state.done) * len(steps) + index + 1, pours * len(steps)]

    def totals(self) -> list[dict[str, str]]:
        state, show = self.state, self.state.job.face.show
        if state.phase == "end":
            return [
                {
                    "label": f"Pour {number}: B {_off(pour.error)}" if pour.checked else f"Pour {number}: not checked",
                    "text": f"A {show(pour.parts.a).text} + B {show(pour.parts.b).text}",
                    "unit": state.job.face.unit,
                }
                for number, pour in enumerate(state.done, 1)
            ]
        rows = [("A in the bucket", state.a), ("B in the bucket", state.b), ("In the mould", state.poured)]
        return [{"label": label, "text": show(mass).text, "unit": state.job.face.unit} for label, mass in rows if mass > 0]

    @property
    def pot_ends(self) -> float | None:
        state = self.state
        return None if state.met is None or state.job.working is None else state.met + state.job.working

    @property
    def overdue(self) -> bool:
        return self.pot_ends is not None and self.now > self.pot_ends and self.state.phase not in _OUT_OF_THE_BUCKET

    def clocks(self) -> list[dict[str, Any]]:
        state, job = self.state, self.state.job
        clocks: list[dict[str, Any]] = []
        if state.met is None or state.phase in _OUT_OF_THE_BUCKET:
            return clocks
        ends = self.pot_ends
        clocks.append(
            {
                "id": "pot",
                "label": "Since A met B" if ends is None else "Pour within",
                "starts": state.met,
                "ends": ends,
                "warns": None if job.working is None else state.met + standard("working share") * job.working,
                "overdue_label": "Overdue by",
                "alarm": ends is not None,
            }
        )
        if state.phase == "mix" and not self.overdue:
            seconds = job.mixing if job.mixing is not None else standard("mix longest") * _MINUTE
            label = {"label": "Mix on for", "overdue_label": "Mixing time over by"}
            clocks.append({"id": "mix", "starts": state.since, "ends": state.since + seconds, "warns": None, "alarm": False} | label)
        return clocks

    def mass(self, kg: float) -> Shown:
        return self.state.job.face.show(kg)

    def big(self, label: str, kg: float) -> dict[str, str]:
        shown = self.mass(kg)
        return {"label": label, "text": shown.text, "unit": shown.unit}

    def ask(self, type_: str, label: str, prompt: str, start: float | None, kind: str = "other") -> dict[str, Any]:
        """A button that opens the keypad, filled with ``start`` kg."""
        face = self.state.job.face
        return {
            "id": f"{type_}-typed",
            "label": label,
            "kind": kind,
            "event": {"type": type_, "unit": face.unit},
            "ask": {
                "label": prompt,
                "unit": face.unit,
                "kind": "number",
                "field": "reading",
                "start": "" if start is None else self.mass(start).text,
                "step": face.step_text,
                "choices": [],
            },
        }

    def scale_off(self) -> dict[str, Any]:
        return _button("other", "The scale went off", "off")

    # --- the steps ---

    def base_pour(self) -> Screen:
        state = self.state
        inside = state.a + state.b
        put = "Put the bucket on the scale, with what is in it." if inside else "Put the empty bucket on the scale."
        buttons = []
        start: float | None = None
        if state.empty is not None:
            start = state.empty + inside
            buttons.append(_button("main", f"It shows {self.mass(start)}", "base"))
        buttons.append(_button("other" if buttons else "main", "It shows 0", "base", tared=True))
        buttons.append(self.ask("base", "It shows something else", "The scale shows", start))
        note = "No need to set it to 0: the figures here count the bucket in."
        if state.empty is None:
            note = "Write the empty bucket's weight down: it saves the batch if the scale switches itself off."
        if state.number > 1:
            note += " Old resin in a bucket sets the new one off sooner: take a clean one."
        big = None if start is None else self.big("The scale should show", start)
        return {"step": "Bucket", "say": put, "note": note, "big": big, "buttons": buttons}

    def base_decant(self) -> Screen:
        part = "A" if self.state.target.a - self.state.a > _half(self.state) else "B"
        return {
            "step": f"Jug of {part}",
            "say": f"Put the jug of {part} on the scale.",
            "note": "Weigh out of the jug: its figure falls as you pour.",
            "buttons": [
                _button("main", "It shows 0", "base", tared=True),
                self.ask("base", "It shows something else", "The scale shows", None),
            ],
        }

    def a(self) -> Screen:
        state = self.state
        target = _shown_for(state, "a", state.target.a)
        decant = state.job.way == "decant"
        return {
            "step": "Weigh A",
            "big": self.big("The jug falls to" if decant else "The scale goes up to", target),
            "say": "Pour A out of the jug." if decant else "Pour A in, slowly at the end.",
            "note": f"A {self.mass(state.target.a - state.a)} goes in.",
            "buttons": [
                _button("main", "Done as shown", "a"),
                self.ask("a", "It shows something else", "The scale shows", target),
                self.scale_off(),
            ],
        }

    def a_over(self) -> Screen:
        state = self.state
        planned = state.todo[0]
        target = _shown_for(state, "a", planned.a)
        out = self.mass(state.a - planned.a)
        return {
            "step": "Too much A",
            "tone": "caution",
            "big": self.big("The jug comes up to" if state.job.way == "decant" else "The scale comes down to", target),
            "say": f"Take {out} of clean A back out.",
            "note": "With its B it would be more than the scale or the bucket takes.",
            "buttons": [
                _button("main", "Done as shown", "a"),
                self.ask("a", "It shows something else", "The scale shows", target),
                self.scale_off(),
            ],
        }

    def meet(self) -> Screen:
        state = self.state
        planned = state.todo[0]
        part = {"step": "B is next", "tone": "caution", "say": _LAST_STOP}
        buttons: list[dict[str, Any]] = []
        if state.job.way == "decant":
            start = "Then put the jug of B on the scale. The clock starts when you press."
            buttons = [
                _button("main", "It shows 0: pour B", "meet", tared=True),
                self.ask("meet", "It shows something else", "The scale shows", None),
            ]
            big = self.big("B needed", state.target.b - state.b)
        else:
            start = "The clock starts when you press."
            buttons = [_button("main", "B goes in now", "meet")]
            big = self.big("The scale will go up to", _shown_for(state, "b", state.target.b))
        if state.a < planned.a - _half(state):
            buttons.append(_button("other", f"First add the missing A: {self.mass(planned.a - state.a)}", "more-a"))
        if state.job.way == "pour":
            buttons.append(self.scale_off())
        return part | {"big": big, "note": f"{self.changed(planned)} {start}", "buttons": buttons}

    def changed(self, planned: Parts) -> str:
        """What an A that is not as planned does to B and to the total."""
        state = self.state
        difference = state.a - planned.a
        if abs(difference) < _half(state):
            return f"B {self.mass(state.target.b)} goes in."
        total = state.target.total - planned.total
        what = f"A is {self.mass(abs(difference))} {'over' if difference > 0 else 'short'}."
        then = f" B is now {self.mass(state.target.b)} instead of {self.mass(planned.b)}."
        return what + then + f" This pour comes out {self.mass(abs(total))} {'bigger' if total > 0 else 'smaller'}."

    def b(self) -> Screen:
        state = self.state
        target = _shown_for(state, "b", state.target.b)
        decant = state.job.way == "decant"
        return {
            "step": "Weigh B",
            "big": self.big("The jug falls to" if decant else "The scale goes up to", target),
            "say": "Pour B out of the jug." if decant else "Pour B in, slowly at the end.",
            "note": f"B {self.mass(state.target.b - state.b)} goes in, for the A that is really there.",
            "buttons": [
                _button("main", "Done as shown", "b"),
                self.ask("b", "It shows something else", "The scale shows", target),
                self.scale_off(),
            ],
        }

    def fix(self) -> Screen:
        state, job = self.state, self.state.job
        error = mixing.ratio_error(state.parts, job.ratio)
        fix = mixing.correction(state.parts, job.ratio)
        amber = mixing.grade(error, job.good, job.worst) == "amber"
        by_amount = _fix_by_amount(state)
        target = fix.mass if by_amount else state.base + state.a + state.b + fix.mass
        total = state.a + state.b + fix.mass
        worst = "Within the worst that makers allow, but not right." if amber else "Off ratio."
        note = f"B is {_off(error)}. {worst} Add {fix.part} {self.mass(fix.mass)}: it makes {self.mass(total)}."
        if total > job.net:
            note += " That is over the fill line: have a bigger bucket at hand."
        prompt = f"{fix.part} added" if by_amount else "The scale shows"
        buttons = [
            _button("main", f"Added: {self.mass(target)}" if by_amount else "Done as shown", "fix"),
            self.ask("fix", "Other amount" if by_amount else "It shows something else", prompt, target),
        ]
        if amber:
            buttons.append(_button("other", f"Go on with B {_off(error)}", "accept"))
        buttons.append(_button("danger", "It cannot be put right", "give-up"))
        label = f"Add {fix.part}, weighed in a clean cup" if by_amount else "The scale goes up to"
        return {
            "step": f"Add {fix.part}",
            "tone": "caution" if amber else "stop",
            "big": self.big(label, target),
            "say": f"Add {fix.part} now, while all of it is still liquid.",
            "note": note,
            "buttons": buttons,
        }

    def give_up(self) -> Screen:
        state = self.state
        error = mixing.ratio_error(state.parts, state.job.ratio)
        return {
            "step": "Off ratio",
            "tone": "stop",
            "say": f"B is {_off(error)}. Spread it in the tray; it is not for the mould.",
            "note": "Off ratio it may stay soft or sticky for good. The label's tolerance comes first.",
            "buttons": [
                _button("main", "Back: add what is missing", "back"),
                _button("danger", "Spread it in the tray", "discard"),
                _button("danger", f"Use it with B {_off(error)}: my call", "use"),
            ],
        }

    def mix(self) -> Screen:
        state, job = self.state, self.state.job
        error = mixing.ratio_error(state.parts, job.ratio)
        how_long = "The sheet's mixing time."
        if job.mixing is None:
            shortest, longest = standard("mix shortest"), standard("mix longest")
            how_long = f"{shortest:g} to {longest:g} min by hand (common practice). The sheet's time comes first."
        ratio = ""
        if job.way != "kit" or state.full_b is not None:
            ratio = f" Weighed: B {_off(error)}." if abs(error) >= _ON_RATIO else " Weighed: on ratio."
        return {
            "step": "Mix",
            "tone": "go",
            "say": "Scrape walls and floor. Fold it, do not whip.",
            "note": how_long + ratio,
            "buttons": [_button("main", "Mixed", "mixed")],
        }

    def second(self) -> Screen:
        return {
            "step": "Second bucket",
            "tone": "go",
            "say": "Tip it into a second clean bucket, and stir again.",
            "note": "Let it drain, but do not scrape the wall film over: that is where unmixed resin hides.",
            "buttons": [_button("main", "In the second bucket, stirred", "second")],
        }

    def clear(self) -> Screen:
        return {
            "step": "Clear?",
            "tone": "go",
            "say": "No streaks against the light? Only then colour.",
            "note": "Mixed clear first: colour hides streaks.",
            "buttons": [
                _button("main", "Clear: colour goes in", "colour"),
                _button("other", "Clear: no colour", "plain"),
                _button("other", "Streaks: stir on", "streaks"),
            ],
        }

    def colour(self) -> Screen:
        return {
            "step": "Colour",
            "tone": "go",
            "say": "Stir the colour in, walls and floor too.",
            "note": "Write down the weight of colour for the next pour.",
            "buttons": [_button("main", "One even colour", "coloured")],
        }

    def pour(self) -> Screen:
        return {
            "step": "Pour",
            "tone": "go",
            "say": "Pour to the mark, and stop there.",
            "note": "What clings to the bucket stays there: do not drain it into the mould.",
            "buttons": [_button("main", "Poured", "poured")],
        }

    def tray(self) -> Screen:
        last = len(self.state.todo) == 1 and not self.state.discarded
        return {
            "step": "Leftovers",
            "tone": "go",
            "say": "Spread what is left in the shallow tray, now.",
            "note": "A full bucket is what gets hot. Look at your gloves: splashed or half an hour old, peel them.",
            "buttons": [_button("main", "Spread: all poured" if last else "Spread: next pour", "tray")],
        }

    def end(self) -> Screen:
        state = self.state
        return {
            "step": "Done",
            "big": self.big("Mixed and poured", state.poured),
            "say": "Watch the cure: checklist C3.",
            "note": " ".join((*self.shortfall(), *state.record)),
        }

    def shortfall(self) -> tuple[str, ...]:
        short = self.state.job.total - self.state.poured
        return (f"That is {self.mass(short)} less than you asked for.",) if short > 2 * self.state.job.face.step_kg else ()

    def full(self) -> Screen:
        part = self.state.phase[-1].upper()
        return {
            "step": f"Full jug of {part}",
            "say": f"Put the full jug of {part} on the scale, lid off.",
            "note": "What the jugs weigh before and after is the only check that all of it went in.",
            "buttons": [
                self.ask("full", "Key in what it shows", "The scale shows", None, kind="main"),
                _button("other", "Go on without weighing", "skip"),
            ],
        }

    def tip_a(self) -> Screen:
        return {
            "step": "All of A",
            "say": "Tip all of A into the bucket. Let the jug drain.",
            "note": f"About {self.mass(self.state.target.a)}.",
            "buttons": [_button("main", "A is in", "tipped")],
        }

    def left(self) -> Screen:
        state = self.state
        part = state.phase[-1]
        full = state.full_a if part == "a" else state.full_b
        assert full is not None  # the phase is only entered with a full jug weighed
        target = mixing.emptied_jug(full, getattr(state.target, part))
        return {
            "step": f"Emptied jug of {part.upper()}",
            "big": self.big("The emptied jug weighs", target),
            "say": f"Put the emptied jug of {part.upper()} back on the scale.",
            "note": "Heavier? Let it drain on." if part == "b" else "B is worked out from the A that really went in.",
            "buttons": [
                _button("main", "As shown", "left"),
                self.ask("left", "It shows something else", "The scale shows", target),
            ],
        }

    def meet_kit(self) -> Screen:
        state = self.state
        big = None
        note = "Tip all of B in, and let the jug drain."
        if state.full_b is not None:
            big = self.big("Jug of B falls to", mixing.emptied_jug(state.full_b, state.target.b))
            note = f"Tip B in: {self.mass(state.target.b)} for the A that went in."
        return {
            "step": "B is next",
            "tone": "caution",
            "big": big,
            "say": _LAST_STOP,
            "note": f"{note} The clock starts when you press.",
            "buttons": [_button("main", "B goes in now", "meet")],
        }

    def off(self) -> Screen:
        state = self.state
        buttons: list[dict[str, Any]] = []
        if state.job.way == "decant":
            buttons.append(_button("main", "Nothing poured since: it shows 0", "off-zero"))
            buttons.append(self.ask("off-reading", "Nothing poured since: it shows", "The jug shows", None))
            note = "If some was poured since, weigh the bucket: less its empty weight, that is what is in it."
        else:
            buttons.append(_button("main", "Nothing poured since: it shows 0", "off-zero"))
            if state.empty is not None:
                buttons.append(self.ask("off-reading", "Bucket off, scale to 0, bucket back on", "The scale shows", None))
                note = f"The empty bucket weighs {self.mass(state.empty)}, so nothing is lost."
            else:
                buttons.append(self.ask("twin", "Weigh an empty bucket like it", "The empty bucket weighs", None))
                note = "If some was poured since, the empty weight is needed: weigh a bucket like this one."
        return {
            "step": "Scale went off",
            "tone": "caution",
            "say": "Switch it on with everything still on it.",
            "note": note,
            "buttons": buttons,
        }

    def doubt(self) -> Screen:
        """A weight far from its target: asked about, not believed."""
        event = self.state.doubt
        assert event is not None  # only called with a doubt
        given = f"{event.get('reading')} {event.get('unit') or self.state.job.face.unit}"
        return {
            "step": "Is that right?",
            "tone": "caution",
            "big": {"label": "You keyed in", "text": str(event.get("reading")), "unit": str(event.get("unit") or "")},
            "say": "That is far from what was to be weighed.",
            "note": "Look at the scale again.",
            "buttons": [
                {"id": "again", "label": "No: key it in again", "kind": "main", "event": None, "ask": None},
                {
                    "id": "sure",
                    "label": f"Yes: {given}",
                    "kind": "other",
                    "event": {key: value for key, value in event.items() if key != "at"} | {"sure": True},
                    "ask": None,
                },
            ],
        }


_LAST_STOP = "Last cheap moment to stop: is all of checklist C1 done?"
_OVERDUE = "Past the working time. Thick, stringy or warm: it does not go into the mould."
_OVERDUE_WAY_OUT = "Spread it in the tray. Smoke: get out, card E1b."

_WEIGHING: Mapping[str, Callable[[_Shown], Screen]] = {
    "a": _Shown.a, "a-over": _Shown.a_over, "meet": _Shown.meet, "b": _Shown.b, "off": _Shown.off,
}  # fmt: skip
_COMMON: Mapping[str, Callable[[_Shown], Screen]] = {
    "fix": _Shown.fix, "give-up": _Shown.give_up, "mix": _Shown.mix, "second": _Shown.second, "clear": _Shown.clear,
    "colour": _Shown.colour, "pour": _Shown.pour, "tray": _Shown.tray, "end": _Shown.end,
}  # fmt: skip
_BY_WAY: Mapping[str, Mapping[str, Callable[[_Shown], Screen]]] = {
    "pour": {"base": _Shown.base_pour} | dict(_WEIGHING) | dict(_COMMON),
    "decant": {"base": _Shown.base_decant} | dict(_WEIGHING) | dict(_COMMON),
    "kit": {
        "full-a": _Shown.full, "full-b": _Shown.full, "a": _Shown.tip_a, "left-a": _Shown.left, "meet": _Shown.meet_kit,
        "left-b": _Shown.left,
    } | dict(_COMMON),
}  # fmt: skip
_SCREENS: Mapping[tuple[str, str], Callable[[_Shown], Screen]] = {
    (way, phase): show for way, phases in _BY_WAY.items() for phase, show in phases.items()
}


def _screen(given: Given, events: Sequence[Event], now: float) -> Screen:
    """The run's screen from the question's inputs; a job that cannot be weighed shows the question's own remedy."""
    from calc.questions.how_much_to_weigh import job_of, work

    job = job_of(given)
    headline = work(given).headline
    if headline.tone == "stop":
        return _cannot(f"{headline.label}: {headline.text} {headline.unit}".strip(), headline.say)
    return screen_of(job, events, now)


def _cannot(step: str, say: str) -> Screen:
    return {
        "id": "mix", "title": "Not yet", "step": step, "progress": [0, 0], "ended": False, "big": None, "say": say, "note": "",
        "tone": "stop", "buttons": [], "totals": [], "clocks": [], "items": [], "cautions": [], "errors": [], "record": [],
    }  # fmt: skip


RUNS = (Run("mix", "how-much-to-weigh", _screen),)
