"""The checklists as runs: a list of presses in, the screen out.

The items and every word stand in ``data/checklists.toml``. The page keeps the presses (events) and shows the
screen; undo takes the last press made here away, but none that something begun elsewhere made stale. A press is bound
to the figures its gate showed: when they change, or a new batch begins, the press is stale and the line is open again.
A list ends in 'No stop found - your call', or it says what was gone past.

Events, each with ``at`` (epoch seconds):

``tick``, ``noted`` (gone on, not checked), ``past`` (gone on past a stop), ``away`` (does not apply, with ``reason``)
and ``no``, each with ``item`` (from 1) and ``figures`` (what the button carried), and ``latest`` where the plan has it (hour of the peak, s);
``reading`` (``field``, ``typed``, ``units``), ``gloves``, ``mixed``, ``anew``, ``round``, ``new-batch``, ``end``, ``leave``.

``spent`` (all of a batch is poured) comes from the mixing steps to the list that stands before them: what was pressed there was for that batch.
``mixed`` (the parts met; ``latest`` as above) and ``anew`` (a batch, a piece or a mounting began) come from other lists: what their screens say under
``carry``, the page adds to a list that goes after them, if it is newer than that list's last press; ``from`` names the list it comes from. So
comes a ``reading``, to the lists that take it over: what was read on the dial is read once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

from calc import sources
from calc.errors import InputError
from calc.fields import Parsed
from calc.questions import Given
from calc.questions._found_for import counts
from calc.runs import Event, Run, Screen, button, undo
from calc.runs._list_clocks import clocks, latest_peak
from calc.runs._list_lines import Batch, Line, Presses, lines_of, play, question_of, stops_outside, with_readings, written
from calc.safety.checklists import Checklist, all_checklists, begun_anew, phrases
from calc.safety.facts import facts
from calc.safety.findings import State

#: From this time on the time under pressure is told in hours, s.
_IN_HOURS_S = 2 * 3600.0


def screen(checklist: Checklist, given: Given, events: Sequence[Event], now: float) -> Screen:
    """The list's screen after its presses so far.

    Parameters
    ----------
    checklist : which list.
    given : the inputs of the question that the list goes by; any may be missing.
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
    presses = play(checklist, events)
    given = with_readings(checklist, given, presses)
    lines = lines_of(checklist, given, presses, now)
    done = sum(line.press is not None for line in lines)
    ended = presses.ended is not None and (presses.ended["type"] == "leave" or done == len(lines))
    outcome = _outcome(checklist, lines, ended, stops_outside(checklist, given))
    return {
        "id": checklist.id,
        "title": f"{checklist.id} {checklist.name}",
        "type": checklist.type,
        "gloves": checklist.gloves,
        "step": min(done + 1, len(lines)),
        "progress": [done, len(lines)],
        "progress_text": phrases()["progress"].format(done=done, all=len(lines)),
        "ended": ended,
        **outcome,
        "buttons": [*_buttons(checklist, lines, done, ended), *_undo(presses)],
        "totals": _totals(checklist, given),
        "clocks": clocks(checklist, given, presses, now),
        "items": _hints_once([_item_json(checklist, lines, line, ended, given, now) for line in lines]),
        "record": _record(lines, ended, given),
        "carry": _carry(checklist, given, presses),
        "cautions": [],
        "errors": [],
    }


def _run(id: str, given: Given, events: Sequence[Event], now: float) -> Screen:
    checklist = all_checklists()[id]
    try:
        return screen(checklist, given, events, now)
    except InputError as error:  # told where it was typed; no other figure stands in for it
        return _not_taken(checklist, given, events, now, error)


def _not_taken(checklist: Checklist, given: Given, events: Sequence[Event], now: float, error: InputError) -> Screen:
    """The screen without a reading that cannot be one, and what would do on the line that asks for it."""
    declared = question_of(checklist).named(error.name)
    typed = next(event["typed"] for event in reversed(events) if event["type"] == "reading" and event["field"] == error.name)
    message = phrases()["not_taken"].format(label=declared.label, typed=typed, would_do=declared.would_do(given.system))
    kept = [event for event in events if event["type"] != "reading" or event["field"] != error.name]
    shown = _run(checklist.id, given.but({error.name: Parsed(None, False, "")}), kept, now)
    items = [
        item | {"stale": True, "stale_text": message} if checklist.items[item["number"] - 1].asks == error.name else item for item in shown["items"]
    ]
    buttons = [*(one for one in shown["buttons"] if one["kind"] != "undo"), *_undo(play(checklist, events))]
    told = [*shown["errors"], {"field": error.name, "code": error.code, "message": message}]
    return shown | {"items": items, "buttons": buttons, "errors": told}


def _outcome(checklist: Checklist, lines: Sequence[Line], ended: bool, outside: Sequence[str]) -> dict[str, Any]:
    """Big words, what to do, tone and card: of a 'no', of the end, or of a list under way. ``outside`` are stops that no line asks of."""
    words = phrases()
    watch = sources.document("checklists")["watch"]
    refused = [line for line in lines if line.press is not None and line.press["type"] == "no"]
    read = {line.decided_by for line in lines if checklist.rounds and _too_hot(line)}
    if refused or read:  # a reading past its limit needs no press to open its card
        grave = "hot" in read or any(line.item.gravest for line in refused)
        say = watch["no_gravest" if grave else "no"]
        return {**_big(words["end_stop"]), "say": say, "note": "", "tone": "stop", "outcome": "stop", "card": "e1b" if grave else "e1a"}
    open_lines = [line for line in lines if line.press is None]
    if not ended:
        say = words["ready_say"] if not open_lines else ""
        return {"big": None, "say": say, "note": checklist.lead, "tone": "plain", "outcome": "", "card": ""}
    past = [line for line in lines if line.press is not None and line.press["type"] == "past"]
    gaps = [line.said.name for line in lines if line.said and line.press is not None and line.press["type"] == "noted"]
    if len(open_lines) == len(lines):
        return {**_big(words["skipped"]), "say": words["skipped_say"], "note": "", "tone": "caution", "outcome": "left", "card": ""}
    if open_lines:
        say = words["left_say"].format(open=len(open_lines), all=len(lines))
        return {**_big(words["end_left"]), "say": say, "note": "", "tone": "caution", "outcome": "left", "card": ""}
    if past:
        return {**_big(words["end_past"]), "say": words["past_say"], "note": "", "tone": "stop", "outcome": "past", "card": ""}
    if outside:
        say = words["outside_say"].format(names=", ".join(name.lower() for name in outside), question=question_of(checklist).name)
        return {**_big(words["end_stop"]), "say": say, "note": "", "tone": "stop", "outcome": "stop", "card": ""}
    say = words["unchecked_say"].format(names=", ".join(name.lower() for name in gaps)) if gaps else words["clear_say"]
    tone = "caution" if gaps else "go"
    return {**_big(words["end_clear"]), "say": say, "note": "", "tone": tone, "outcome": "clear", "card": ""}


def _too_hot(line: Line) -> bool:
    """A reading past its limit: over what any pour may reach, nothing but another reading ends that."""
    return bool(line.item.asks) and line.must_go_past and (line.decided_by == "hot" or line.press is None)


def _big(text: str) -> dict[str, Any]:
    return {"big": {"label": "", "text": text, "unit": ""}}


@dataclass(frozen=True)
class _Stood:
    """How long the clock that a line ends has run, and how long was planned, as the words write it."""

    stood: str
    of: str
    early: bool

    def says(self, key: str) -> str:
        return phrases()[key].format(stood=self.stood, of=self.of)


def _stood(lines: Sequence[Line], line: Line, given: Given, now: float) -> _Stood | None:
    """Of a line that ends a clock: rounded down, so that a screen left open never says too much."""
    begun = next((float(other.press["at"]) for other in lines if line.item.ends and other.item.clock == line.item.ends and other.press), None)
    if begun is None:
        return None
    until, planned = now if line.press is None else float(line.press["at"]), given.maybe("demould")
    run = max(0.0, until - begun)
    text = str(given.write(run, "minutes" if run < _IN_HOURS_S else "hours", "down")).replace(".0 ", " ")
    of = "" if planned is None else phrases()["hard_of"].format(planned=given.write(planned, "hours", "up"))
    return _Stood(text, of, planned is not None and run < planned)


def _hints_once(items: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What holds where the sheet is silent is said at the first line that it goes for."""
    hinted = [item for item in items if item["gate"] and item["gate"]["hint"]]
    for item in hinted[1:]:
        item["gate"] = item["gate"] | {"hint": ""}
    return items


def _record(lines: Sequence[Line], ended: bool, given: Given) -> list[str]:
    """What goes on the record besides the ticks, in neutral words."""
    words = phrases()
    out = [words["skipped"]] if ended and all(line.press is None for line in lines) else []
    for line in lines:
        kind = "" if line.press is None else line.press["type"]
        if kind == "past" and line.said is not None:
            out.append(f"{words['gone_past']}: {line.said.record}")
        elif kind == "noted" and line.said is not None:
            out.append(f"{words['noted_record']}: {line.said.record}")
        elif kind == "away" and line.press is not None:
            out.append(f"{line.item.text} {words['away_done'].format(reason=line.press['reason'])}")
        stood = _stood(lines, line, given, 0.0) if kind else None
        if stood is not None and stood.early:
            out.append(stood.says("hard_early"))
        if kind == "no":
            out.append(f"{words['no_done']}: {line.item.text}")
    return out


def _buttons(checklist: Checklist, lines: Sequence[Line], done: int, ended: bool) -> list[dict[str, Any]]:
    """The list's own buttons, below its lines."""
    words = phrases()
    out = []
    if not ended:
        if done == len(lines):
            out.append(button("end", words["end"], "main", {"type": "end"}))
            if checklist.rounds:
                again = sources.document("checklists")["round"]["button"]
                out.append(button("round", again, "other", {"type": "round"}))
        elif done:
            out.append(button("leave", words["leave"], "other", {"type": "leave"}))
        elif not checklist.offered:
            out.append(button("leave", words["skip"], "other", {"type": "leave"}))
        if checklist.gloves == "on":
            out.append(button("gloves", words["fresh_gloves"], "other", {"type": "gloves"}))
    if done or ended:
        out.append(button("new-batch", begun_anew(checklist.fresh)["button"], "other", {"type": "new-batch"}))
    return out


def _undo(presses: Presses) -> list[dict[str, Any]]:
    """The button that takes a press back, with the place of that press among the events; none where there is none to take."""
    return [undo(phrases()["undo"]) | {"takes": place} for place in presses.own[-1:]]


def _item_json(checklist: Checklist, lines: Sequence[Line], line: Line, ended: bool, given: Given, now: float) -> dict[str, Any]:
    words, item = phrases(), line.item
    stood = _stood(lines, line, given, now)
    first_open = next((other.item.number for other in lines if other.press is None), 0)
    waits = checklist.type == "RD" and line.press is None and item.number != first_open
    buttons = [] if ended or waits or line.press is not None else _item_buttons(checklist, line, stood, latest_peak(given))
    state = "" if line.press is None else str(line.press["type"])
    done = {
        "": "",
        "tick": stood.says("hard_done") if stood is not None else words["yes" if item.no else "ticked"],
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
        "stale_text": begun_anew(checklist.fresh)["stale"] if line.stale == "anew" else words[line.stale] if line.stale else "",
        "waits": "" if ended else words["wait"] if waits else words["firm"] if _barred(line) else "",
        "buttons": buttons,
        "card": item.card,
    }


def _barred(line: Line) -> bool:
    """A stop that nothing but other figures ends."""
    return line.press is None and line.must_go_past and line.item.firm


def _item_buttons(checklist: Checklist, line: Line, stood: _Stood | None, latest: float | None) -> list[dict[str, Any]]:
    """How this line may be closed now: one press, or past a stop two, in different places. ``latest`` is how long this batch is to be watched."""
    words, item = phrases(), line.item
    if _barred(line):
        return []

    def closing(kind: str) -> dict[str, Any]:
        return {"type": kind, "item": item.number, "figures": line.figures} | ({} if latest is None else {"latest": latest})

    buttons: list[dict[str, Any]] = []
    if line.must_go_past and line.said is not None:
        confirm = {"say": words["past_ask"], "yes": words["past_yes"].format(record=line.said.record), "no": words["past_no"]}
        buttons.append(button("past", words["past"], "danger", closing("past"), confirm=confirm))
    elif line.said is not None and line.said.state == State.UNCHECKED.value and not line.informs:
        buttons.append(button("noted", words["unchecked_yes" if item.no else "unchecked"], "main", closing("noted")))
    else:
        twice: dict[str, Any] = {} if stood is None else {"confirm": {"say": stood.says("hard_ask"), "yes": words["hard_yes"], "no": words["past_no"]}}
        buttons.append(button("tick", words["yes" if item.no else "tick"], "main", closing("tick"), **twice))
    if item.no:
        buttons.append(button("no", words["no"], "danger", closing("no")))
    if item.asks:
        declared = question_of(checklist).named(item.asks)
        ask = {"label": declared.label, "unit": declared.as_json()["unit"], "kind": "number", "field": item.asks}
        buttons.append({**button("reading", declared.label, "other", {"type": "reading", "field": item.asks}), "ask": ask})
    if item.reasons and not item.gate:
        choices = [{"label": reason, "value": reason} for reason in item.reasons]
        ask = {"label": words["away_ask"], "unit": "", "kind": "text", "field": "reason", "choices": choices}
        buttons.append({**button("away", words["away"], "other", closing("away")), "ask": ask})
    return buttons


def _totals(checklist: Checklist, given: Given) -> list[dict[str, str]]:
    """The plan's figures that the bench needs in sight, and the record keeps; a speed found for another size is none."""
    out = []
    for name, label in sources.document("checklists")["figures"].items():
        if given.maybe(name) is not None and counts(given, name):
            text, _, unit = written(checklist, given, name).rpartition(" ")
            out.append({"label": label, "text": text, "unit": unit})
    return out


def _carry(checklist: Checklist, given: Given, presses: Presses) -> list[dict[str, Any]]:
    """Events for the lists that go after this one; once the parts have met, that is what tells the batch."""
    out: list[dict[str, Any]] = [{**event, "from": checklist.id} for event in presses.readings.values()]
    if presses.begun_at is not None and presses.mixed_at is None:
        out.append({"type": "anew", "at": presses.begun_at, "from": checklist.id})
    if presses.gloves_at is not None:
        out.append({"type": "gloves", "at": presses.gloves_at, "from": checklist.id})
    out += [{"type": "mixed", **batch.as_json()} for batch in presses.earlier]
    if presses.mixed_at is not None:
        out.append({"type": "mixed", **Batch(presses.mixed_at, latest_peak(given)).as_json()})
    return out


RUNS: tuple[Run, ...] = tuple(
    Run(id, one.question, partial(_run, id), under=one.under, gaps=True) for id, one in all_checklists().items()
)
