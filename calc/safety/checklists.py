"""The checklists as runs: a list of presses in, the screen out.

The items and every word stand in ``data/checklists.toml``. The page keeps the presses (events) and shows the
screen; undo takes the last press away. A press is bound to the figures its gate showed: when they change, or a
new batch begins, the press is stale and the line is open again. A list ends in 'No stop found - your call', or it
says what was gone past.

Events, each with ``at`` (epoch seconds):

``tick``, ``noted`` (gone on, not checked), ``past`` (gone on past a stop), ``away`` (does not apply, with ``reason``)
and ``no``, each with ``item`` (from 1) and ``figures`` (what the button carried);
``reading`` (``field``, ``typed``, ``units``), ``gloves``, ``mixed``, ``round``, ``new-batch``, ``end``, ``leave``.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cache, partial
from typing import Any

from calc import sources
from calc.errors import InputError, RequestError
from calc.fields import Quantity, Typed
from calc.questions import Given, before_a_pour
from calc.runs import Event, Run, Screen
from calc.safety import gates, wording
from calc.safety.facts import facts
from calc.safety.gates import Finding, State
from calc.safety.wording import Said

#: The ways a line can be closed.
_CLOSING = ("tick", "noted", "past", "away", "no")
#: A list's own moment of a gate that stands for two: (list, gate) -> key of ``before_a_pour.findings``.
_MOMENT: Mapping[tuple[str, str], str] = {("C2", "G5"): "G5-weighed", ("C3", "G3"): "G3-cure"}


@dataclass(frozen=True)
class Item:
    """One line of a list. ``with_figures`` is its text when the plan has the figures it names."""

    number: int
    text: str
    why: str
    facts: tuple[str, ...]
    gate: str = ""
    with_figures: str = ""
    reasons: tuple[str, ...] = ()
    no: bool = False
    gravest: bool = False
    card: str = ""


@dataclass(frozen=True)
class Checklist:
    """One list: DC (do, then confirm) or RD (read, do), with its items in order."""

    id: str
    name: str
    type: str
    gloves: str
    lead: str
    items: tuple[Item, ...]
    next: str = ""
    rounds: bool = False


@cache
def all_checklists() -> Mapping[str, Checklist]:
    """Every list by its id, from ``data/checklists.toml``; an item with no known fact does not load."""
    found = {}
    for entry in sources.document("checklists")["checklist"]:
        items = tuple(_item(number, row) for number, row in enumerate(entry["item"], start=1))
        kept = {key: entry[key] for key in ("id", "name", "type", "gloves", "lead", "next", "rounds") if key in entry}
        found[entry["id"]] = Checklist(items=items, **kept)
    return found


def _item(number: int, row: Mapping[str, Any]) -> Item:
    kept = {key: row[key] for key in ("text", "why", "gate", "no", "gravest", "card") if key in row}
    facts(row["facts"])
    return Item(
        number=number, facts=tuple(row["facts"]), with_figures=row.get("with", ""), reasons=tuple(row.get("reasons", ())), **kept
    )


@cache
def _words() -> Mapping[str, str]:
    found: Mapping[str, str] = sources.document("checklists")["words"]
    return found


# ---------------------------------------------------------------- what the events say


@dataclass
class _Presses:
    """The events played from the first to the last."""

    closed: dict[int, Event] = field(default_factory=dict)
    before: dict[int, str] = field(default_factory=dict)  # lines whose press no longer counts, and why
    readings: dict[str, Event] = field(default_factory=dict)
    gloves_at: float | None = None
    mixed_at: float | None = None
    looked_at: float | None = None
    looks: int = 0
    ended: Event | None = None

    def clear(self, why: str) -> None:
        self.before = dict.fromkeys((*self.before, *self.closed), why)
        self.closed, self.readings = {}, {}


def _play(checklist: Checklist, events: Sequence[Event]) -> _Presses:
    found = _Presses()
    for event in events:
        kind, at = event["type"], float(event["at"])
        if kind in _CLOSING:  # also after an end: the figures may have changed since and opened a line again
            found.ended = None
            _press(checklist, found, event, at)
        elif kind == "reading":
            found.readings[event["field"]] = event
        elif kind == "gloves":
            found.gloves_at = at
        elif kind == "mixed":
            found.mixed_at = at
        elif kind == "round":
            found.clear("")
            found.before, found.looked_at, found.looks = {}, at, found.looks + 1
        elif kind == "new-batch":
            found.clear("stale_batch")
            found.ended = found.mixed_at = found.gloves_at = None
        elif kind in ("end", "leave"):
            found.ended = event
        else:
            raise RequestError(f"a checklist knows no event '{kind}'")
    return found


def _press(checklist: Checklist, found: _Presses, event: Event, at: float) -> None:
    number = int(event["item"])
    if not 1 <= number <= len(checklist.items):
        raise RequestError(f"{checklist.id} has no line {number}")
    item = checklist.items[number - 1]
    found.closed[item.number] = event
    if checklist.rounds and found.looked_at is None:
        found.looked_at = at
    if item.gate == "G17" and event["type"] == "tick":
        found.gloves_at = at
    if checklist.id == "C2" and item.number == 1:
        found.mixed_at = at
        found.gloves_at = found.gloves_at or at


# ---------------------------------------------------------------- one line on the screen


@dataclass(frozen=True)
class _Line:
    """One item as it stands now."""

    item: Item
    text: str
    said: Said | None
    figures: str
    press: Event | None
    stale: str

    @property
    def must_go_past(self) -> bool:
        return self.said is not None and self.said.state == State.STOP.value and not self.informs

    @property
    def informs(self) -> bool:
        """During the watch the next layer's gate tells how long to wait; waiting is what the line asks."""
        return self.item.gate == "G6"


def _valid(line: _Line, event: Event) -> str:
    """Why a press does not count: a key of the words, or nothing when it does."""
    kind = event["type"]
    if event.get("figures", "") != line.figures:
        return "stale"
    if kind == "away" and (line.item.gate or not str(event.get("reason", "")).strip()):
        return "stale"
    if kind == "no" and not line.item.no:
        return "stale"
    if line.must_go_past and kind not in ("past", "no"):
        return "stale"
    if line.said is not None and line.said.state == State.UNCHECKED.value and kind == "tick" and not line.informs:
        return "stale"
    return ""


def _lines(checklist: Checklist, given: Given, presses: _Presses, now: float) -> list[_Line]:
    planned = before_a_pour.findings(given)
    lines = []
    for item in checklist.items:
        finding = _finding(checklist, item, planned, given, presses, now)
        figures = _signature(finding) if finding is not None and item.gate not in ("G6", "G17") else ""
        said = None if finding is None else wording.say(finding, given.system)
        line = _Line(item, _text(item, given), said, figures, None, presses.before.get(item.number, ""))
        press = presses.closed.get(item.number)
        if press is not None:
            fault = _valid(line, press)
            line = replace(line, press=None if fault else press, stale=fault)
        lines.append(line)
    if checklist.type == "RD":  # no jumps: a line pressed before one that is open does not count
        first_open = next((line.item.number for line in lines if line.press is None), len(lines) + 1)
        lines = [line if line.item.number < first_open else replace(line, press=None) for line in lines]
    return lines


def _finding(
    checklist: Checklist, item: Item, planned: Mapping[str, Finding], given: Given, presses: _Presses, now: float
) -> Finding | None:
    """What the item's gate says at this moment of this list."""
    if not item.gate:
        return None
    if item.gate == "G17":
        if presses.gloves_at is None:
            return None
        return gates.gloves(max(0.0, now - presses.gloves_at), given.si("glove_time"))
    if checklist.id == "C3" and item.gate == "G3":
        read = _read(given, presses, "hottest")
        return gates.hotter_than_planned(read if read is not None else given.maybe("hottest"), given.maybe("planned_peak"))
    if checklist.id == "C3" and item.gate == "G6":
        waited = given.maybe("waited") if presses.mixed_at is None else max(0.0, now - presses.mixed_at)
        surface = given.maybe("surface")
        return gates.next_layer("layer", waited, given.maybe("earliest"), given.maybe("latest"), surface, given.maybe("room"))
    return planned[_MOMENT.get((checklist.id, item.gate), item.gate)]


def _read(given: Given, presses: _Presses, name: str) -> float | None:
    """A figure typed into the list itself, SI."""
    event = presses.readings.get(name)
    if event is None:
        return None
    declared = before_a_pour.QUESTION.named(name)
    value, _ = declared.parse(Typed(str(event["typed"]), event.get("units", given.system)))
    return float(value) if isinstance(value, float) else None


def _signature(finding: Finding) -> str:
    """The figures a gate showed, so that a press for other figures can be told."""
    parts = sorted(finding.parts, key=lambda part: part.id)
    return ";".join([finding.state.value, *(f"{part.id}={_digits(part.value)}/{_digits(part.limit)}" for part in parts)])


def _digits(value: float | None) -> str:
    return "-" if value is None else f"{value:.6g}"


def _text(item: Item, given: Given) -> str:
    """The item's words with the plan's figures in them, where the plan has them."""
    names = {name for name in ("depth", "mass", "earliest", "planned_peak") if "{" + name + "}" in item.with_figures}
    if not names or any(given.maybe(name) is None for name in names):
        return item.text
    return item.with_figures.format(**{name: _written(given, name) for name in names})


def _written(given: Given, name: str) -> str:
    declared = before_a_pour.QUESTION.named(name)
    assert isinstance(declared, Quantity)
    kind = {"length": "length", "mass": "mass", "temperature": "temperature", "time": "duration"}[declared.kind]
    return wording.pair(gates.Part(name, kind, given.si(name), None), given.system)[0]


# ---------------------------------------------------------------- the screen


def screen(checklist: Checklist, given: Given, events: Sequence[Event], now: float) -> Screen:
    """The list's screen after its presses so far.

    Parameters
    ----------
    checklist : which list.
    given : the inputs of 'Before a deep pour'; any may be missing.
    events : the presses, oldest first.
    now : the page's clock, epoch seconds.

    Returns
    -------
    dict
        See the module's head and the page's script for its keys.

    Raises
    ------
    InputError
        when a reading typed into the list cannot be read.
    """
    presses = _play(checklist, events)
    lines = _lines(checklist, given, presses, now)
    done = sum(line.press is not None for line in lines)
    ended = presses.ended is not None and (presses.ended["type"] == "leave" or done == len(lines))
    outcome = _outcome(checklist, lines, ended)
    return {
        "id": checklist.id,
        "title": f"{checklist.id} {checklist.name}",
        "type": checklist.type,
        "gloves": checklist.gloves,
        "step": min(done + 1, len(lines)),
        "progress": [done, len(lines)],
        "progress_text": _words()["progress"].format(done=done, all=len(lines)),
        "ended": ended,
        **outcome,
        "buttons": _buttons(checklist, lines, done, ended, bool(events)),
        "totals": _totals(given),
        "clocks": _clocks(checklist, given, presses),
        "items": [_item_json(checklist, lines, line, ended) for line in lines],
        "record": _record(lines),
        "carry": _carry(presses),
        "cautions": [],
        "errors": [],
    }


def _outcome(checklist: Checklist, lines: Sequence[_Line], ended: bool) -> dict[str, Any]:
    """Big words, what to do, tone and card: of a 'no', of the end, or of a list under way."""
    words = _words()
    watch = sources.document("checklists")["watch"]
    refused = [line for line in lines if line.press is not None and line.press["type"] == "no"]
    if refused:
        grave = any(line.item.gravest for line in refused)
        say = watch["no_gravest" if grave else "no"]
        return {**_big(words["end_stop"]), "say": say, "note": "", "tone": "stop", "outcome": "stop", "card": "e1b" if grave else "e1a"}
    open_lines = [line for line in lines if line.press is None]
    if not ended:
        say = words["ready_say"] if not open_lines else ""
        return {"big": None, "say": say, "note": checklist.lead, "tone": "plain", "outcome": "", "card": ""}
    past = [line for line in lines if line.press is not None and line.press["type"] == "past"]
    gaps = [line.said.name for line in lines if line.said and line.press is not None and line.press["type"] == "noted"]
    if open_lines:
        say = words["left_say"].format(open=len(open_lines), all=len(lines))
        return {**_big(words["end_left"]), "say": say, "note": "", "tone": "caution", "outcome": "left", "card": ""}
    if past:
        return {**_big(words["end_past"]), "say": words["past_say"], "note": "", "tone": "stop", "outcome": "past", "card": ""}
    say = words["unchecked_say"].format(names=", ".join(name.lower() for name in gaps)) if gaps else words["clear_say"]
    tone = "caution" if gaps else "go"
    return {**_big(words["end_clear"]), "say": say, "note": "", "tone": tone, "outcome": "clear", "card": ""}


def _big(text: str) -> dict[str, Any]:
    return {"big": {"label": "", "text": text, "unit": ""}}


def _record(lines: Sequence[_Line]) -> list[str]:
    """What goes on the record besides the ticks, in neutral words."""
    words, out = _words(), []
    for line in lines:
        kind = "" if line.press is None else line.press["type"]
        if kind == "past" and line.said is not None:
            out.append(f"{words['gone_past']}: {line.said.record}")
        elif kind == "noted" and line.said is not None:
            out.append(f"{words['noted_record']}: {line.said.record}")
        elif kind == "away" and line.press is not None:
            out.append(f"{line.item.text} {words['away_done'].format(reason=line.press['reason'])}")
        elif kind == "no":
            out.append(f"{words['no_done']}: {line.item.text}")
    return out


def _buttons(checklist: Checklist, lines: Sequence[_Line], done: int, ended: bool, begun: bool) -> list[dict[str, Any]]:
    """The list's own buttons, below its lines."""
    words = _words()
    out = []
    if not ended:
        if done == len(lines):
            out.append(_button("end", words["end"], "main", {"type": "end"}))
            if checklist.rounds:
                again = sources.document("checklists")["round"]["button"]
                out.append(_button("round", again, "other", {"type": "round"}))
        elif done:
            out.append(_button("leave", words["leave"], "other", {"type": "leave"}))
        if checklist.gloves == "on":
            out.append(_button("gloves", words["fresh_gloves"], "other", {"type": "gloves"}))
    if done or ended:
        out.append(_button("new-batch", words["new_batch"], "other", {"type": "new-batch"}))
    if begun:
        out.append({"id": "undo", "label": words["undo"], "kind": "undo", "event": None, "ask": None})
    return out


def _button(id: str, label: str, kind: str, event: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {"id": id, "label": label, "kind": kind, "event": event, "ask": None, **more}


def _item_json(checklist: Checklist, lines: Sequence[_Line], line: _Line, ended: bool) -> dict[str, Any]:
    words, item = _words(), line.item
    first_open = next((other.item.number for other in lines if other.press is None), 0)
    waits = checklist.type == "RD" and line.press is None and item.number != first_open
    buttons = [] if ended or line.press is not None else [] if waits else _item_buttons(line)
    state = "" if line.press is None else str(line.press["type"])
    done = {
        "": "",
        "tick": words["yes" if item.no else "ticked"],
        "noted": words["noted_yes" if item.no else "noted"],
        "past": words["gone_past"],
        "away": words["away_done"].format(reason=line.press.get("reason", "") if line.press else ""),
        "no": words["no_done"],
    }[state]
    return {
        "id": f"{checklist.id}-{item.number}",
        "number": item.number,
        "text": line.text,
        "why": item.why,
        "source": [fact.as_json() for fact in facts(item.facts)],
        "gate": None if line.said is None else line.said.as_json(),
        "ticked": state == "tick",
        "closed": state,
        "done": done,
        "at": None if line.press is None else float(line.press["at"]),
        "stale": bool(line.stale),
        "stale_text": words[line.stale] if line.stale else "",
        "waits": words["wait"] if waits and not ended else "",
        "buttons": buttons,
        "card": item.card,
    }


def _item_buttons(line: _Line) -> list[dict[str, Any]]:
    """How this line may be closed now: one press, or past a stop two, in different places."""
    words, item = _words(), line.item

    def closing(kind: str) -> dict[str, Any]:
        return {"type": kind, "item": item.number, "figures": line.figures}

    buttons = []
    if line.must_go_past and line.said is not None:
        confirm = {"say": words["past_ask"], "yes": words["past_yes"].format(record=line.said.record), "no": words["past_no"]}
        buttons.append(_button("past", words["past"], "danger", closing("past"), confirm=confirm))
    elif line.said is not None and line.said.state == State.UNCHECKED.value and not line.informs:
        buttons.append(_button("noted", words["unchecked_yes" if item.no else "unchecked"], "main", closing("noted")))
    else:
        buttons.append(_button("tick", words["yes" if item.no else "tick"], "main", closing("tick")))
    if item.no:
        buttons.append(_button("no", words["no"], "danger", closing("no")))
    if item.gate == "G3" and item.no:
        declared = before_a_pour.QUESTION.named("hottest")
        unit = declared.as_json()["unit"]
        ask = {"label": declared.label, "unit": unit, "kind": "number", "field": "hottest"}
        buttons.append({**_button("reading", declared.label, "other", {"type": "reading", "field": "hottest"}), "ask": ask})
    if not item.gate and not item.no and not item.card:
        choices = [{"label": reason, "value": reason} for reason in item.reasons]
        ask = {"label": words["away_ask"], "unit": "", "kind": "text", "field": "reason", "choices": choices}
        buttons.append({**_button("away", words["away"], "other", closing("away")), "ask": ask})
    return buttons


def _totals(given: Given) -> list[dict[str, str]]:
    """The plan's figures that the bench needs in sight, and the record keeps."""
    out = []
    for name, label in sources.document("checklists")["figures"].items():
        if given.maybe(name) is not None:
            text, _, unit = _written(given, name).rpartition(" ")
            out.append({"label": label, "text": text, "unit": unit})
    return out


def _clocks(checklist: Checklist, given: Given, presses: _Presses) -> list[dict[str, Any]]:
    """What runs: each with its start, its end where one is known, and what to say past it."""
    words = sources.document("checklists")["clocks"]
    out: list[dict[str, Any]] = []

    def clock(id: str, starts: float | None, lasts_s: float | None) -> None:
        if starts is not None:
            ends = None if lasts_s is None else starts + lasts_s
            out.append({"id": id, "label": words[id], "starts": starts, "ends": ends, "overdue_label": words["overdue"]})

    working = given.maybe("working")
    if checklist.id == "C2":
        clock("poured", presses.mixed_at, None if working is None else working * given.si("share"))
        if working is not None:
            clock("working", presses.mixed_at, working)
    if checklist.rounds:
        clock("look", presses.looked_at, given.si("look_every"))
        clock("peak" if given.maybe("peak_after") is not None else "since", presses.mixed_at, given.maybe("peak_after"))
        if given.maybe("earliest") is not None:
            clock("layer", presses.mixed_at, given.maybe("earliest"))
    if checklist.gloves == "on":
        clock("gloves", presses.gloves_at, given.si("glove_time"))
    return out


def _carry(presses: _Presses) -> list[dict[str, Any]]:
    """Events that the next list of the same batch begins with."""
    out: list[dict[str, Any]] = []
    if presses.gloves_at is not None:
        out.append({"type": "gloves", "at": presses.gloves_at})
    if presses.mixed_at is not None:
        out.append({"type": "mixed", "at": presses.mixed_at})
    return out


def _run(id: str, given: Given, events: Sequence[Event], now: float) -> Screen:
    checklist = all_checklists()[id]
    try:
        return screen(checklist, given, events, now)
    except InputError as error:  # a reading that cannot be read: told, and the list shown without it
        declared = before_a_pour.QUESTION.named(error.name)
        message = f"{declared.label}: {declared.would_do(given.system)}"
        kept = [event for event in events if event["type"] != "reading"]
        return screen(checklist, given, kept, now) | {"errors": [{"field": error.name, "code": error.code, "message": message}]}


RUNS: tuple[Run, ...] = tuple(Run(id, "before-a-pour", partial(_run, id)) for id in ("C1", "C2", "C3"))
