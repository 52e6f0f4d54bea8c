"""Where a checklist stands: its presses played from the first to the last, and each line as it is now."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from calc.casting.standards import standard
from calc.errors import RequestError
from calc.fields import Parsed, Quantity, Typed
from calc.questions import Given, Question, all_questions, before_the_lathe
from calc.questions._before_a_pour import findings as before_a_pour
from calc.questions._pot_or_vacuum import gates as pot_or_vacuum
from calc.questions._pot_or_vacuum.words import time_to_use
from calc.runs import Event
from calc.safety import gates, wording
from calc.safety.checklists import Checklist, Item
from calc.safety.findings import Finding, Part, State
from calc.safety.wording import Said

#: The ways a line can be closed.
_CLOSING = ("tick", "noted", "past", "away", "no")
#: The gates that a question's inputs feed.
_FINDINGS: Mapping[str, Callable[[Given], Mapping[str, Finding]]] = {
    "before-a-pour": before_a_pour.findings,
    "before-the-lathe": before_the_lathe.findings,
    "pot-or-vacuum": pot_or_vacuum.findings,
}
#: Of those, what its own page tells of: a later moment's gate only once something feeds it.
_SHOWN: Mapping[str, Callable[[Given, Mapping[str, Finding]], Mapping[str, Finding]]] = {
    "before-a-pour": before_a_pour.shown,
    "before-the-lathe": before_the_lathe.shown,
}
#: By when a batch is to be poured, s from when A meets B.
TO_USE: Mapping[str, Callable[[Given], float | None]] = {"before-a-pour": before_a_pour.time_to_use, "pot-or-vacuum": time_to_use}


@dataclass(frozen=True)
class Batch:
    """A batch whose parts met at a time, epoch s, and may peak up to ``latest`` s after it; None where no hour is known."""

    at: float
    latest: float | None = None

    @property
    def watched_until(self) -> float:
        """Well past its latest hour; one with no known hour is told for as long as any resin may take."""
        if self.latest is None:
            return self.at + 3600 * standard("watched unknown")
        return self.at + standard("watched past") * self.latest

    def as_json(self) -> dict[str, float]:
        """For an event: its time, and its hour where that is known."""
        return {"at": self.at} | ({} if self.latest is None else {"latest": self.latest})


@dataclass
class Presses:
    """The events played from the first to the last."""

    closed: dict[int, Event] = field(default_factory=dict)
    before: dict[int, str] = field(default_factory=dict)  # lines whose press no longer counts, and why
    readings: dict[str, Event] = field(default_factory=dict)
    begun_at: float | None = None
    gloves_at: float | None = None
    mixed_at: float | None = None
    latest: float | None = None  # hour at which the batch that runs may peak, s after its parts met, as it was planned when it was last told
    earlier: list[Batch] = field(default_factory=list)  # mixed before that one
    looked_at: float | None = None
    looks: int = 0
    ended: Event | None = None
    own: list[int] = field(default_factory=list)  # places of the presses made here, but for those that what came from elsewhere made stale

    def clear(self, why: str) -> None:
        self.before = dict.fromkeys((*self.before, *self.closed), why)
        self.closed, self.readings = {}, {}

    def begin_anew(self, at: float | None) -> None:
        """Nothing pressed or started so far counts any more; begun elsewhere, and so at None, no undo brings it back."""
        self.clear("anew")
        if at is None:
            self.own = []
        self.mix(None)
        self.ended = self.gloves_at = None
        self.begun_at = at

    def mix(self, at: float | None, latest: float | None = None) -> None:
        """Another batch runs now, or none: the one before goes on curing."""
        if self.mixed_at not in (None, at):
            self.earlier.append(Batch(self.mixed_at, self.latest))
        self.mixed_at, self.latest = at, latest


@dataclass(frozen=True)
class Line:
    """One item as it stands now."""

    item: Item
    text: str
    said: Said | None
    figures: str
    press: Event | None
    stale: str
    decided_by: str = ""

    @property
    def must_go_past(self) -> bool:
        return self.said is not None and self.said.state == State.STOP.value and not self.informs

    @property
    def informs(self) -> bool:
        """During the watch the next layer's gate tells how long to wait; waiting is what the line asks."""
        return self.item.gate == "G6"


def play(checklist: Checklist, events: Sequence[Event]) -> Presses:
    """Play the presses from the first to the last; an event that no list knows is the page's mistake."""
    found = Presses()
    for place, event in enumerate(events):
        kind, at, handed_by = event["type"], float(event["at"]), event.get("from", "")
        if kind not in ("mixed", "anew", "spent") and not handed_by:
            found.own.append(place)
        if found.begun_at is None and kind not in ("mixed", "anew", "spent") and not handed_by:
            found.begun_at = at
        if kind in _CLOSING:  # also after an end: the figures may have changed since and opened a line again
            found.ended = None
            _press(checklist, found, event, at)
        elif kind == "reading":
            if not handed_by or handed_by in checklist.reads.split():
                found.readings[event["field"]] = event
        elif kind == "gloves":
            found.gloves_at = at
        elif kind == "mixed":
            if not checklist.before_mix:
                _met(checklist, found, at, event.get("latest"))
        elif kind == "spent":
            if checklist.before_mix:
                found.begin_anew(None)
        elif kind == "anew":
            if not checklist.stays and (not handed_by or handed_by in checklist.after.split()):
                found.begin_anew(None)
        elif kind == "round":
            found.clear("")
            found.before, found.looked_at, found.looks = {}, at, found.looks + 1
        elif kind == "new-batch":
            found.begin_anew(at)
        elif kind in ("end", "leave"):
            found.ended = event
        else:
            raise RequestError(f"a checklist knows no event '{kind}'")
    return found


def _met(checklist: Checklist, found: Presses, at: float, latest: float | None) -> None:
    """Parts met elsewhere: what was pressed here before them was for an earlier batch."""
    if found.closed and not checklist.stays:
        found.begin_anew(None)
    if not (found.closed and checklist.stays):
        found.mix(at, found.latest if at == found.mixed_at and latest is None else latest)


def _press(checklist: Checklist, found: Presses, event: Event, at: float) -> None:
    number = int(event["item"])
    if not 1 <= number <= len(checklist.items):
        raise RequestError(f"{checklist.id} has no line {number}")
    item = checklist.items[number - 1]
    found.closed[item.number] = event
    found.latest = max((told for told in (found.latest, event.get("latest")) if told is not None), default=None)
    if checklist.rounds and found.looked_at is None:
        found.looked_at = at
    if item.gate == "G17" and event["type"] == "tick":
        found.gloves_at = at
    if checklist.id == "C2" and item.number == 1:
        found.mixed_at = found.mixed_at or at  # the mixing steps may have started the clock
        found.gloves_at = found.gloves_at or at


def lines_of(checklist: Checklist, given: Given, presses: Presses, now: float) -> list[Line]:
    """Every line as it stands now: a press counts only for the figures it was made for.

    ``given`` as :func:`with_readings` makes it.
    """
    planned = _FINDINGS[checklist.question](given)
    lines = []
    for item in checklist.items:
        finding = _finding(checklist, item, planned, given, presses, now)
        figures = _signature(finding) if finding is not None and item.gate not in ("G6", "G17") else ""
        said = None if finding is None else wording.say(finding, given.system)
        text = _text(checklist, item, given, running=presses.mixed_at is not None)
        line = Line(item, text, said, figures, None, presses.before.get(item.number, ""), _decided_by(finding))
        press = presses.closed.get(item.number)
        if press is not None:
            fault = _valid(line, press) or _aged(checklist, presses, press, now)
            line = replace(line, press=None if fault else press, stale=fault)
        lines.append(line)
    if checklist.type == "RD":  # no jumps: a line pressed before one that is open does not count
        first_open = next((line.item.number for line in lines if line.press is None), len(lines) + 1)
        lines = [line if line.item.number < first_open else replace(line, press=None) for line in lines]
    return lines


def stops_outside(checklist: Checklist, given: Given) -> list[str]:
    """Names of the gates that stop on the page of a list's question, and that none of its lines asks of; of a list that is ``whole``."""
    if not checklist.whole:
        return []
    asked = {item.gate for item in checklist.items}
    found = _SHOWN[checklist.question](given, _FINDINGS[checklist.question](given))
    stops = (finding.gate for finding in found.values() if finding.state is State.STOP and finding.gate not in asked)
    return [wording.gate_words(gate)["name"] for gate in dict.fromkeys(stops)]


def _decided_by(finding: Finding | None) -> str:
    """The part that gives a gate its state."""
    return finding.deciding.id if finding is not None and finding.deciding is not None else ""


def _finding(
    checklist: Checklist, item: Item, planned: Mapping[str, Finding], given: Given, presses: Presses, now: float
) -> Finding | None:
    """What the item's gate says at this moment of this list."""
    if not item.gate:
        return None
    if item.gate == "G17":
        if presses.gloves_at is None:
            return None
        minutes = math.ceil(max(0.0, now - presses.gloves_at) / 60)  # nobody reads seconds, and a minute begun counts
        return gates.worn.gloves(60.0 * minutes, glove_time(given))
    if checklist.id == "C3" and item.gate == "G6":
        waited = given.maybe("waited") if presses.mixed_at is None else max(0.0, now - presses.mixed_at)
        surface = given.maybe("surface")
        return gates.pour.next_layer("layer", waited, given.maybe("earliest"), given.maybe("latest"), surface, given.maybe("room"))
    finding = planned[item.moment or item.gate]
    unfed = item.fed and finding.state is State.UNCHECKED and all(part.value is None for part in finding.parts)
    return None if unfed else finding


def _valid(line: Line, event: Event) -> str:
    """Why a press does not count: a key of the words, or nothing when it does."""
    kind = event["type"]
    if event.get("figures", "") != line.figures:
        return "stale"
    if kind == "away" and (line.item.gate or not line.item.reasons or not str(event.get("reason", "")).strip()):
        return "stale"
    if kind == "no" and not line.item.no:
        return "stale"
    if line.must_go_past and (kind not in ("past", "no") or line.item.firm):
        return "stale"
    if line.said is not None and line.said.state == State.UNCHECKED.value and kind == "tick" and not line.informs:
        return "stale"
    return ""


def _aged(checklist: Checklist, presses: Presses, event: Event, now: float) -> str:
    """A press of a list that was left open counts for its time; one that was ended stays as it was."""
    lasts_s = checklist.lasts_hours * 3600
    return "old" if lasts_s and presses.ended is None and now - float(event["at"]) > lasts_s else ""


def question_of(checklist: Checklist) -> Question:
    """The question whose figures the list goes by."""
    return all_questions()[checklist.question]


def glove_time(given: Given) -> float:
    """How long one pair of gloves is worn, s: the maker's own time where the question asks for it."""
    return given.maybe("glove_time") or gates.worn.GLOVE_TIME_S


def with_readings(checklist: Checklist, given: Given, presses: Presses) -> Given:
    """The inputs with what was typed into the list itself.

    Raises
    ------
    InputError
        when a reading cannot be read.
    """
    read = {}
    for name, event in presses.readings.items():
        text = str(event["typed"])
        value, _ = question_of(checklist).named(name).parse(Typed(text, event.get("units", given.system)))
        read[name] = Parsed(value, True, text)
    return given.but(read)


def _signature(finding: Finding) -> str:
    """The figures a gate showed, so that a press for other figures can be told."""
    parts = sorted(finding.parts, key=lambda part: part.id)
    return ";".join([finding.state.value, *(f"{part.id}={_digits(part.value)}/{_digits(part.limit)}" for part in parts)])


def _digits(value: float | None) -> str:
    return "-" if value is None else f"{value:.6g}"


def _text(checklist: Checklist, item: Item, given: Given, *, running: bool) -> str:
    """The item's words, with the plan's figures in them where the plan has them."""
    if running and item.running:
        return item.running
    names = set(re.findall(r"\{(\w+)\}", item.with_figures))
    if not names or any(given.maybe(name) is None for name in names):
        return item.text
    return item.with_figures.format(**{name: written(checklist, given, name) for name in names})


def written(checklist: Checklist, given: Given, name: str) -> str:
    """A figure of the plan with its unit, as its gate would write it."""
    declared = question_of(checklist).named(name)
    assert isinstance(declared, Quantity)
    kind = "duration" if declared.kind == "time" else declared.kind
    return wording.pair(Part(name, kind, given.si(name), None), given.system)[0]
