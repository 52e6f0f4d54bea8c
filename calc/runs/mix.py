"""Mixing step by step, in gloves: from what happened so far to the screen that comes next.

A run is a list of events. :func:`screen_of` folds them into a state and shows it; it keeps nothing and
reads no clock, so a reload, a locked screen or an undo (the page drops the last event) all come out right.

An event has ``type`` and ``at`` (epoch seconds); one that carries a weight has ``reading`` (as keyed in) and
``unit``. Without a reading it means 'done as shown'. An event that makes no sense where it stands changes
nothing; when it is the last one, the screen says why in ``errors``, and the page drops it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from calc.casting.batch import Job
from calc.questions import Given
from calc.questions.how_much_to_weigh import job_of, work
from calc.runs import Event, Run, Screen
from calc.runs._mix_events import take
from calc.runs._mix_screens import screen
from calc.runs._mix_state import RefusedError, begin
from calc.runs._mix_view import View


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
    >>> from calc.casting.mixing import Ratio
    >>> from calc.casting.weighing import PourLimit
    >>> job = Job(1.3, Ratio(100, 45), ScaleFace("g", 1), 0.001, 2.0, PourLimit(1.94, None), 1100, 0.02, 0.05, empty=0.06)
    >>> screen_of(job, [{"type": "base", "at": 0.0}], 1.0)["big"]
    {'label': 'The scale goes up to', 'text': '957', 'unit': 'g'}

    References
    ----------
    army-two-part (weigh, fold, one even colour, then the clock); resin makers' pages; common practice.
    """
    state = begin(job)
    error = ""
    for event in events:
        before = replace(state)
        try:
            state.doubt = None
            take(state, event)
            error = ""
        except RefusedError as refused:
            state = before
            error = str(refused)
    return screen(View(state, now), started=bool(events), error=error)


def _screen(given: Given, events: Sequence[Event], now: float) -> Screen:
    """The run's screen from the question's inputs; a job that cannot be weighed shows the question's own remedy."""
    job = job_of(given)
    headline = work(given).headline
    if headline.tone == "stop":
        return _cannot(f"{headline.label}: {headline.shown}", headline.say)
    return screen_of(job, events, now)


def _cannot(step: str, say: str) -> Screen:
    return {
        "id": "mix", "title": "Not yet", "step": step, "progress": [0, 0], "ended": False, "big": None, "say": say, "note": "",
        "tone": "stop", "buttons": [], "totals": [], "clocks": [], "items": [], "cautions": [], "errors": [], "record": [],
        "carry": [],
    }  # fmt: skip


RUNS = (Run("mix", "how-much-to-weigh", _screen),)
