"""What every question that holds a plan against its gates says in the same way."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from calc.answers import Answer, Caution, Change, Figure, Grid, Headline, Line, Working
from calc.quantity.kinds import System
from calc.questions import Given
from calc.safety import facts, wording
from calc.safety.findings import Finding, State
from calc.safety.wording import Said

#: Rows of a gate that stands there twice, by the name of its finding.
_ROWS = {"G9": "Tailstock", "G10-sand": "Speed for sanding"}


@dataclass(frozen=True)
class Told:
    """The gates in words, in the order of the grid."""

    found: Mapping[str, Finding]
    said: Mapping[str, Said]

    def of(self, state: State) -> list[Said]:
        """Those that say this."""
        return [self.said[key] for key, finding in self.found.items() if finding.state is state]


def tell(found: Mapping[str, Finding], system: System) -> Told:
    """Put the findings into words."""
    return Told(found, {key: wording.say(finding, system) for key, finding in found.items()})


def gated(
    told: Told,
    label: str,
    empty: str,
    clear: str,
    lines: tuple[Line, ...] = (),
    cautions: tuple[Caution, ...] = (),
    working: tuple[Working, ...] = (),
    values: Mapping[str, Figure] | None = None,
) -> Answer:
    """The answer of a question that holds a plan against its gates.

    Parameters
    ----------
    told : from :func:`tell`.
    label, empty, clear : what the headline is of, and what it says with nothing given, and with no stop found.
    lines, cautions, working, values : what the question has besides.
    """
    stops, gaps = told.of(State.STOP), told.of(State.UNCHECKED)
    used = facts.facts(dict.fromkeys(id for finding in told.found.values() for id in wording.gate_words(finding.gate)["facts"]))
    return Answer(
        headline=_headline(told, label, empty, clear),
        lines=lines,
        changes=tuple(Change(one.action.removesuffix("."), f"then no stop: {one.name.lower()}") for one in stops),
        cautions=(*_reminders(told), *cautions, *_silent(gaps)),
        working=(_count(told.found), *working),
        sources=tuple(dict.fromkeys(fact.source for fact in used)),
        grids=(
            Grid(
                "One by one",
                ("What", "Says", "Figures, and where the limit is from"),
                tuple((_ROWS.get(key, one.name), one.word, f"{one.text} ({one.limit_from})") for key, one in told.said.items()),
            ),
        ),
        values={
            "stops": Figure(float(len(stops)), "count", str(len(stops))),
            "not_checked": Figure(float(len(gaps)), "count", str(len(gaps))),
            **(values or {}),
        },
        extra={"gates": [one.as_json() for one in told.said.values()]},
    )


def yes(given: Given, name: str) -> bool | None:
    """What was said to a yes-or-no question; None where nobody said."""
    word = given.words(name)
    return None if not word else word == "yes"


def _headline(told: Told, label: str, empty: str, clear: str) -> Headline:
    stops, gaps, count = told.of(State.STOP), told.of(State.UNCHECKED), len(told.said)
    if stops:
        return Headline(label, "STOP", "", f"{stops[0].action} {stops[0].text}".strip(), "stop")
    names = ", ".join(dict.fromkeys(gap.name.lower() for gap in gaps))
    if len(gaps) == count:
        return Headline(label, "Not checked", "", empty, "caution")
    if gaps:  # what is not checked leads: a gap must not read as a pass
        return Headline(label, f"{len(gaps)} of {count} not checked", "", f"Still to check: {names}. The others show no stop.", "caution")
    return Headline(label, "No stop found - your call", "", clear, "go")


def _reminders(told: Told) -> Iterator[Caution]:
    for one in {one.gate: one for one in told.of(State.REMINDER)}.values():
        yield Caution(f"reminder-{one.gate}", "caution", f"{one.text} {one.action}")


def _silent(gaps: list[Said]) -> Iterator[Caution]:
    hint = next((one.hint for one in gaps if one.hint), "")
    if hint:
        yield Caution("sheet-silent", "caution", hint)


def _count(found: Mapping[str, Finding]) -> Working:
    told = [sum(finding.state is state for finding in found.values()) for state in State]
    words = ", ".join(f"{number} {state.value}" for number, state in zip(told, State, strict=True) if number)
    return Working("Gates", "figure against limit; equal is not past it, missing is not checked", f"{len(found)} gates", words)
