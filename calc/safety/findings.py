"""What a gate can say, and how its comparisons add up to that.

A missing figure is never a pass, and a figure equal to its limit is not past it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

#: Two figures that differ by less than this share are the same figure written in two units.
SAME = 1e-9


class Of(StrEnum):
    """What a limit was found for, beside the piece as it is now."""

    THIS = "this"
    SMALLER = "smaller"
    ANOTHER = "another"


class State(StrEnum):
    """What a gate can say."""

    STOP = "stop"
    CLEAR = "no stop found"
    UNCHECKED = "not checked"
    REMINDER = "reminder"


@dataclass(frozen=True)
class Part:
    """One comparison inside a gate.

    Parameters
    ----------
    id : the key of its wording in ``data/gates.toml``.
    kind : how both figures are written: length, mass, volume, temperature, temperature difference, duration, pressure,
        rotational speed, energy, share, flag.
    value, limit : SI floats; None where the figure is missing. A flag is 1.0 (as it must be) or 0.0 against 1.0.
    at_most : True when the value may not exceed the limit, False when it may not fall below it.
    lacks : what is short and by how much, kg, where adding it ends the stop.
    """

    id: str
    kind: str
    value: float | None
    limit: float | None
    at_most: bool = True
    lacks: tuple[str, float] | None = None

    @property
    def state(self) -> State:
        """Stop, no stop found or not checked, for this comparison alone."""
        if self.value is None or self.limit is None:
            return State.UNCHECKED
        if math.isclose(self.value, self.limit, rel_tol=SAME, abs_tol=1e-12):
            return State.CLEAR
        past = self.value > self.limit if self.at_most else self.value < self.limit
        return State.STOP if past else State.CLEAR


@dataclass(frozen=True)
class Finding:
    """What one gate says, and the comparisons behind it.

    Parameters
    ----------
    gate : "G1" and so on.
    state : the gate's own word.
    parts : all its comparisons, the deciding one first.
    why : a key of the gate's wording where no comparison says it ("first layer", "no mask asked").
    """

    gate: str
    state: State
    parts: tuple[Part, ...]
    why: str = ""

    @property
    def deciding(self) -> Part | None:
        """The comparison that gives the gate its state, if one does."""
        return next((part for part in self.parts if part.state is self.state), None)


def judge(gate: str, parts: Iterable[Part], why: str = "") -> Finding:
    """Put a gate's comparisons together: one stop stops, then one gap leaves it not checked.

    Parameters
    ----------
    gate : its number.
    parts : its comparisons; none at all counts as not checked.
    why : a wording key to carry along.

    Returns
    -------
    Finding
        The deciding comparison stands first.

    Examples
    --------
    >>> judge("G1", [Part("depth", "length", 0.05, 0.05)]).state.value
    'no stop found'
    """
    found = tuple(parts)
    for state in (State.STOP, State.UNCHECKED):
        hits = [part for part in found if part.state is state]
        if hits:
            rest = [part for part in found if part.state is not state]
            return Finding(gate, state, tuple(hits + rest), why)
    return Finding(gate, State.CLEAR if found else State.UNCHECKED, found, why)


def must(id: str, holds: bool | None) -> Part:
    """A yes-or-no comparison: 1 as it must be, 0 against it, None where nobody said.

    Parameters
    ----------
    id : the key of its wording.
    holds : what was said, or None.

    Returns
    -------
    Part

    Examples
    --------
    >>> must("filter-date", False).state.value
    'stop'
    """
    return Part(id, "flag", None if holds is None else float(holds), 1.0, at_most=False)


def found_for(part: Part, of: Of) -> Part:
    """A comparison with a limit that was found for one piece: for a wider one only what is past it counts, for another piece nothing does.

    Parameters
    ----------
    part : as it is where the limit is of this piece; the wording of ``id``-elsewhere stands in ``data/gates.toml`` beside it.
    of : what the limit was found for.

    Returns
    -------
    Part

    Examples
    --------
    >>> part = Part("ceiling", "rotational speed", 900, 2540)
    >>> [found_for(part, of).state.value for of in (Of.THIS, Of.SMALLER, Of.ANOTHER)]
    ['no stop found', 'not checked', 'not checked']
    """
    if of is Of.THIS or part.limit is None:
        return part
    other = replace(part, id=f"{part.id}-elsewhere")
    return other if of is Of.SMALLER and part.state is State.STOP else replace(other, limit=None)
