"""The clocks of a checklist: of the batch, of the look at it, of the pressure, of the gloves."""

from __future__ import annotations

from typing import Any

from calc import sources
from calc.questions import Given
from calc.runs._list_lines import TO_USE, Presses, glove_time
from calc.safety.checklists import Checklist

#: Lists during which mixed resin is liquid in a bucket: its working time is shown.
_LIQUID = ("C2", "C9")


def clocks(checklist: Checklist, given: Given, presses: Presses, now: float) -> list[dict[str, Any]]:
    """What runs: each with its start, its end where one is known, and what to say past it.

    The watch goes by the newest batch, by its own clocks; each one before it that may still be hot has one of its own.
    """
    words = sources.document("checklists")["clocks"]
    out: list[dict[str, Any]] = []

    def clock(id: str, starts: float | None, lasts_s: float | None) -> None:
        if starts is not None:
            ends = None if lasts_s is None else starts + lasts_s
            running, past = words[id]
            out.append({"id": id, "label": running, "starts": starts, "ends": ends, "overdue_label": past})

    if checklist.id in _LIQUID:
        usable = TO_USE[checklist.question](given)
        clock("since" if usable is None else "poured", presses.mixed_at, usable)
    over = {item.ends for item in checklist.items if item.number in presses.closed}
    for item in checklist.items:
        if item.clock and item.number in presses.closed and item.clock not in over:
            lasts = given.maybe("demould")
            clock(item.clock if lasts is not None else "pressed", float(presses.closed[item.number]["at"]), lasts)
    if checklist.rounds:
        clock("look", presses.looked_at, given.si("look_every"))
        for id, lasts in _peaks(given.maybe("peak_after"), given.maybe("peak_latest")):
            clock(id, presses.mixed_at, lasts)
        for batch in presses.earlier:
            if now < batch.watched_until:
                clock("older" if batch.latest is None else "older_stay", batch.at, batch.latest)
        if given.maybe("earliest") is not None:
            clock("layer", presses.mixed_at, given.maybe("earliest"))
    if checklist.gloves == "on":
        clock("gloves", presses.gloves_at, glove_time(given))
    return out


def _peaks(soonest: float | None, latest: float | None) -> list[tuple[str, float | None]]:
    """The clocks of the watch: to the soonest and to the latest hour at which it may peak, or to the one that is planned."""
    if soonest is not None and latest is not None and soonest < latest:
        return [("soonest", soonest), ("stay", latest)]
    known = [one for one in (soonest, latest) if one is not None]
    return [("peak", max(known))] if known else [("since", None)]


def latest_peak(given: Given) -> float | None:
    """The latest hour at which the batch of this plan may peak, s after its parts met; None where no hour is planned."""
    return max((one for one in (given.maybe("peak_after"), given.maybe("peak_latest")) if one is not None), default=None)
