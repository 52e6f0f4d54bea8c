"""Where a mixing run stands, and what that says of the scale; see :mod:`calc.runs.mix`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from calc.casting import off_ratio, sufficiency, weighing
from calc.casting.batch import Job, Way
from calc.casting.mixing import Parts
from calc.quantity.writing import Style, write
from calc.runs import Event

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
    #: Past its time, and found thin and cool.
    still: bool = False
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
    def within(self) -> float | None:
        """How long this bucket has from when A met B, s, by all that is or will be in it; None where the sheet's time was not given."""
        return self.job.within(max(self.target.total, self.parts.total))

    @property
    def parts(self) -> Parts:
        return Parts(self.a, self.b)


def into_the_mould(mixed: float, job: Job) -> float:
    """What of a bucket of ``mixed`` kg reaches the mould, kg: less what stays in bucket and cup and on the stick."""
    return max(0.0, mixed - job.density * sufficiency.lost(mixed / job.density, 1).likely)


def in_the_moulds(state: State) -> float:
    """What the pours so far brought into the mould, kg."""
    return sum(into_the_mould(pour.parts.total, state.job) for pour in state.done)


def begin(job: Job) -> State:
    """The state before the first press."""
    state = State(job, job.pours(), empty=job.empty)
    open_pour(state, job.in_a, job.in_b)
    return state


def open_pour(state: State, in_a: float = 0.0, in_b: float = 0.0) -> None:
    """On to the next pour, with what may be in its bucket already, kg."""
    state.target = state.todo[0]
    state.a, state.b = in_a, in_b
    state.base, state.met, state.discarded, state.still = 0.0, None, False, False
    state.full_a = state.full_b = None
    state.phase = "full-a" if state.job.way == "kit" else "base"


def half_step(state: State) -> float:
    """Half of the scale's step, kg: less than this, it does not show."""
    return state.job.face.step_kg / 2


def shown_for(state: State, part: str, mass: float) -> float:
    """What the scale shows when ``mass`` kg of the part is out of the jug, or in the bucket."""
    if state.job.way == "decant":
        return weighing.emptied_jug(state.base, mass)
    return state.base + mass + (state.b if part == "a" else state.a)


def fix_by_amount(state: State) -> bool:
    """Whether the missing part is weighed on its own: no bucket on the scale, or no room left on it."""
    if state.job.way != "pour":
        return True
    missing = off_ratio.correction(state.parts, state.job.ratio).mass
    return state.base + state.a + state.b + missing > state.job.capacity


def how_far_off(error: float) -> str:
    """How far B is off, in words.

    >>> how_far_off(-0.0423), how_far_off(0.104)
    ('4.2 % short', '10 % over')
    """
    style = Style("%", figures=2) if abs(error) >= 0.1 else Style("%", step=0.1)
    size = str(write(abs(error), ("share", style))).replace(".0 ", " ")
    return f"{size} {'over' if error > 0 else 'short'}"
