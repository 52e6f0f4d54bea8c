"""Step-by-step runs: a mixing run, a checklist. Each is a pure function from events to a screen.

The page only keeps the list of events, each with its time, and shows the screen that comes back; undo
takes the last event away. So a run survives a reload, and no step is decided outside ``calc``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.questions import Given

Screen = dict[str, Any]
Event = Mapping[str, Any]


@dataclass(frozen=True)
class Run:
    """One kind of run: its id, the question whose inputs it goes by, and its screen."""

    id: str
    question: str
    screen: Callable[[Given, Sequence[Event], float], Screen]


@cache
def all_runs() -> Mapping[str, Run]:
    """Every run by id: the mixing run, then the checklists."""
    from calc.casting import mix_run
    from calc.safety import checklists

    return {run.id: run for run in (*mix_run.RUNS, *checklists.RUNS)}
