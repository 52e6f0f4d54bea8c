"""Step-by-step runs: a mixing run, a checklist. Each is a pure function from events to a screen.

The page only keeps the list of events, each with its time, and shows the screen that comes back; undo
takes the last press away. So a run survives a reload, and no step is decided outside ``calc``.

Each module here declares its runs, as ``RUNS``; one whose name starts with an underscore is a part of another.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from typing import Any

from calc.questions import Given

Screen = dict[str, Any]
Event = Mapping[str, Any]


@dataclass(frozen=True)
class Run:
    """One kind of run: its id, the question whose inputs it goes by, and its screen.

    ``under`` are choices of that question that the run makes itself; with ``gaps`` an input that is missing is no error.
    """

    id: str
    question: str
    screen: Callable[[Given, Sequence[Event], float], Screen]
    under: Mapping[str, str] = field(default_factory=dict)
    gaps: bool = False


@cache
def all_runs() -> Mapping[str, Run]:
    """Every run by id."""
    found: dict[str, Run] = {}
    for module in pkgutil.iter_modules(__path__):
        if not module.name.startswith("_"):
            found |= {run.id: run for run in importlib.import_module(f"{__name__}.{module.name}").RUNS}
    return found


def button(id: str, label: str, kind: str, event: Event | None, **more: Any) -> dict[str, Any]:
    """A button of a screen.

    Parameters
    ----------
    id, label : its name, and what it says.
    kind : ``main``, ``other``, ``danger`` or ``undo``.
    event : what a press appends, without its time; None where the page only asks or takes back.
    more : what else the page is told, such as ``ask``.
    """
    return {"id": id, "label": label, "kind": kind, "event": event, "ask": None, **more}


def undo(label: str) -> dict[str, Any]:
    """The button that takes the last press back; where others add events too, it is told which one it ``takes``."""
    return button("undo", label, "undo", None)
