"""The answer to a question: what to do first, then everything that backs it.

Parts as every answer has them: the one thing to do, what limits it, what would move it
most, its band, the cautions, the working, what was assumed, the sources.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Literal

from calc.drawing import Drawing
from calc.errors import InputError
from calc.quantity.reading import read
from calc.quantity.writing import Shown

Tone = Literal["go", "caution", "stop"]


_GLANCE = 100  # characters that are read at a glance


@dataclass(frozen=True)
class Headline:
    """The one thing to do. ``text`` is the big figure, or a few words when the answer is a refusal.

    A stop leads with the remedy in ``say``; a go never says more than 'ceiling'. ``steps`` are several things to
    do in their order, told before ``say``.
    """

    label: str
    text: str
    unit: str
    say: str
    tone: Tone
    steps: tuple[str, ...] = ()

    @property
    def shown(self) -> str:
        """The figure with its unit, or the few words."""
        return f"{self.text} {self.unit}".strip()

    @property
    def parts(self) -> tuple[str, str]:
        """What stands out of ``say``, and what follows: its first sentence where the whole is long, else all of it."""
        first, stop, rest = self.say.partition(". ")
        return (first + ".", rest) if stop and len(self.say) > _GLANCE else (self.say, "")


@dataclass(frozen=True)
class Line:
    """A further figure that is acted on."""

    label: str
    text: str
    unit: str = ""
    note: str = ""

    @classmethod
    def of(cls, label: str, shown: Shown, note: str = "") -> Line:
        """A line whose figure is written already."""
        return cls(label, shown.text, shown.unit, note)


@dataclass(frozen=True)
class Limit:
    """One rung of the ladder of limits; ``rules`` marks the one that decides."""

    id: str
    name: str
    text: str
    unit: str
    why: str
    rules: bool = False


def bar_lengths(limits: Sequence[Limit]) -> list[float]:
    """How long each rung's bar stands beside the others, as a share of the place for it: 0 is none, more than 1 goes on beyond.

    Bars stand where all figures are numbers of one unit. The place ends at the longest of them, or at three times the figure that decides.

    Examples
    --------
    >>> bar_lengths([Limit("bed", "Clears the bed", "18", "in", ""), Limit("banjo", "Clears the banjo", "13 1/2", "in", "", rules=True)])
    [1.0, 0.75]
    """
    sizes: dict[str, float] = {}
    for limit in limits:
        try:
            if any(letter.isdigit() for letter in limit.text):
                sizes[limit.id] = read(limit.id, limit.text, "count", "").number
        except InputError:
            return [0.0] * len(limits)
    if not sizes or len({limit.unit for limit in limits if limit.id in sizes}) > 1:
        return [0.0] * len(limits)
    decides = max((sizes.get(limit.id, 0.0) for limit in limits if limit.rules), default=0.0)
    place = min(max(sizes.values()), 3 * decides) if decides > 0 else max(sizes.values())
    return [max(sizes.get(limit.id, 0.0) / place, 0.0) if place > 0 else 0.0 for limit in limits]


@dataclass(frozen=True)
class Change:
    """Something the maker can do, and the figure the answer would then have."""

    do: str
    then: str


@dataclass(frozen=True)
class Band:
    """How far the answer may be off, in words first."""

    text: str
    low: str = ""
    high: str = ""


@dataclass(frozen=True)
class Caution:
    """A warning where the decision is made. ``id`` is the trigger's stable name; its source stands in ``data/cautions.csv``."""

    id: str
    tone: Tone
    text: str


@dataclass(frozen=True)
class Working:
    """One step of the arithmetic: formula in symbols, then with the numbers in, then the result."""

    title: str
    formula: str
    numbers: str
    result: str


@dataclass(frozen=True)
class Grid:
    """A small table of figures."""

    title: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Carry:
    """What an answer hands on: inputs of another question, as a maker would type them, units written.

    It is all that this question has to say there. What it handed on before and does not say now is taken back: an older piece's mount is never
    judged with a new piece. What the maker typed there, or another question handed on, stays; so does what it ``leaves`` as it stands.
    """

    to: str
    inputs: Mapping[str, str]
    leaves: tuple[str, ...] = ()


@dataclass(frozen=True)
class Figure:
    """A value of the answer in SI beside the text shown, for ``--json``, tests and other questions."""

    si: float | None
    dimension: str
    shown: str


@dataclass(frozen=True)
class Answer:
    """What a question's ``work`` returns; :mod:`calc.desk` adds what was assumed and the sources' titles."""

    headline: Headline
    lines: tuple[Line, ...] = ()
    limits: tuple[Limit, ...] = ()
    changes: tuple[Change, ...] = ()
    band: Band | None = None
    cautions: tuple[Caution, ...] = ()
    working: tuple[Working, ...] = ()
    sources: tuple[str, ...] = ()
    grids: tuple[Grid, ...] = ()
    drawings: tuple[Drawing, ...] = ()
    carries: tuple[Carry, ...] = ()
    values: dict[str, Figure] = field(default_factory=dict)
    #: Facts that a page other than the answer's own needs (gates for a checklist, say); JSON-able.
    extra: dict[str, Any] = field(default_factory=dict)


def figure(shown: Shown | None, dimension: str, exact_si: float | None = None) -> Figure:
    """A :class:`Figure` from what is shown; ``exact_si`` keeps the value before rounding.

    A refusal has no figure: ``figure(None, "rotational speed")``.
    """
    if shown is None:
        return Figure(None, dimension, "none")
    return Figure(shown.si if exact_si is None else exact_si, dimension, str(shown))
