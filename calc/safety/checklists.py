"""The checklists as data: their lists, items and words, from ``data/checklists.toml``."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any

from calc import sources
from calc.safety.facts import facts


@dataclass(frozen=True)
class Item:
    """One line of a list.

    ``with_figures`` is its text when the plan has the figures it names, ``running`` when its clock runs already; ``moment`` is the
    gate's own moment where it has several, ``firm`` that its stop has no way past it, ``fed`` that the gate is left out until a figure
    feeds it, ``asks`` the field that the line asks for, ``clock`` what a press of it starts,
    ``ends`` the clock that a press of it ends; that press is asked for twice, with the time the clock has run.
    """

    number: int
    text: str
    why: str
    facts: tuple[str, ...]
    gate: str = ""
    moment: str = ""
    firm: bool = False
    fed: bool = False
    asks: str = ""
    clock: str = ""
    ends: str = ""
    with_figures: str = ""
    running: str = ""
    reasons: tuple[str, ...] = ()
    no: bool = False
    gravest: bool = False
    card: str = ""


@dataclass(frozen=True)
class Checklist:
    """One list: DC (do, then confirm) or RD (read, do), with its items in order.

    It goes by the figures of ``question``, under the choices that ``under`` makes there. ``after`` names the lists (and ``mix``, the mixing
    steps) that hand on to it: what they left running within the last ``carry_hours``, and that something began anew since its own last press,
    which clears its ticks unless it ``stays``. ``reads`` names the lists whose readings at the bench it takes over. ``fresh`` is what begins
    anew when its ticks are cleared: batch, piece, mounting, stop, heat or day. A press on it counts for ``lasts_hours``; 0 is for as long as
    nothing begins anew. One that is ``offered`` may be left out with no note of it.
    One that stands ``before_mix`` is for the batch that is mixed next: a batch that is poured clears it. One that is ``whole`` does not end
    clear while its question finds a stop, be it of a gate that none of its lines asks of.
    """

    id: str
    name: str
    type: str
    gloves: str
    lead: str
    items: tuple[Item, ...]
    next: str = ""
    rounds: bool = False
    question: str = "before-a-pour"
    under: Mapping[str, str] = field(default_factory=dict)
    after: str = ""
    reads: str = ""
    carry_hours: float = 24
    stays: bool = False
    lasts_hours: float = 0
    fresh: str = "batch"
    offered: bool = False
    before_mix: bool = False
    whole: bool = False
    gloves_more: str = ""


@cache
def all_checklists() -> Mapping[str, Checklist]:
    """Every list by its id, from ``data/checklists.toml``; an item with no known fact does not load."""
    found: dict[str, Checklist] = {}
    for entry in sources.document("checklists")["checklist"]:
        items = tuple(_item(number, row) for number, row in enumerate(entry["item"], start=1))
        kept = {key: entry[key] for key in entry if key != "item"}
        found[entry["id"]] = Checklist(items=items, **kept)
    return found


def _item(number: int, row: Mapping[str, Any]) -> Item:
    known = ("text", "why", "gate", "moment", "firm", "fed", "asks", "clock", "ends", "running", "no", "gravest", "card")
    kept = {key: row[key] for key in known if key in row}
    facts(row["facts"])
    return Item(
        number=number, facts=tuple(row["facts"]), with_figures=row.get("with", ""), reasons=tuple(row.get("reasons", ())), **kept
    )


@cache
def begun_anew(fresh: str) -> Mapping[str, str]:
    """What clears all ticks says, and what a tick from before it says: ``button`` and ``stale``."""
    found: Mapping[str, str] = sources.document("checklists")["fresh"][fresh]
    return found


@cache
def phrases() -> Mapping[str, str]:
    """What every list says in the same words, by key."""
    found: Mapping[str, str] = sources.document("checklists")["words"]
    return found
