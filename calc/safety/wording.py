"""What a gate says: its finding in a maker's words, both figures written so that the difference shows.

The sentences stand in ``data/gates.toml``. :func:`say` is the only place that puts figures into them.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from functools import cache
from typing import Any

from calc import sources
from calc.quantity.kinds import System
from calc.quantity.units import from_si
from calc.quantity.writing import STYLES, Rounding, Style, trimmed, write
from calc.safety.findings import SAME, Finding, Part, State

#: From this time on a duration is written in hours, s.
_HOURS_FROM_S = 2 * 3600.0


@dataclass(frozen=True)
class Said:
    """A gate in words.

    Parameters
    ----------
    gate, name : its number and its plain name.
    state : stop, no stop found, not checked or reminder; ``word`` the same as it is printed.
    text : the figures, or what is missing; ``action`` the one thing to do when it stops.
    limit_from : where the limit comes from; ``basis`` a source key.
    record : one line for the record when the maker goes on in spite of it.
    hint : what holds where the sheet does not print a limit; empty otherwise.
    """

    gate: str
    name: str
    state: str
    word: str
    text: str
    action: str
    limit_from: str
    basis: str
    record: str
    hint: str = ""

    def as_json(self) -> dict[str, str]:
        """For a screen or an answer."""
        return {"id": self.gate, **{key: text for key, text in asdict(self).items() if key != "gate"}}


@cache
def _words() -> Mapping[str, Any]:
    return sources.document("gates")


def gate_words(gate: str) -> Mapping[str, Any]:
    """The entry of one gate in ``data/gates.toml``."""
    entry: Mapping[str, Any] = _words()[gate]
    return entry


def say(finding: Finding, system: System) -> Said:
    """Write a finding in one unit system.

    Parameters
    ----------
    finding : from :mod:`calc.safety.gates`.
    system : "metric" or "imperial".

    Returns
    -------
    Said

    Examples
    --------
    >>> from calc.safety import gates
    >>> said = say(gates.pour.depth(0.062, 0.05), "metric")
    >>> said.word, said.text
    ('STOP', '62 mm planned, the sheet allows 50 mm.')
    """
    words, entry = _words()["words"], gate_words(finding.gate)
    parts: Mapping[str, Mapping[str, str]] = entry["parts"]
    deciding = finding.deciding
    action = hint = ""
    if finding.state is State.STOP and deciding is not None:
        fact = "failed" if "failed" in parts[deciding.id] else "both"
        text, action, record = (_fill(parts[deciding.id][key], deciding, system) for key in (fact, "stop", "record"))
        word = words["stop"]
    elif finding.state is State.UNCHECKED and finding.why:
        told = [_fill(parts[part.id]["both"], part, system) for part in finding.parts]
        text = " ".join([*told, entry["why"][finding.why]["text"]])
        record = ", ".join(_fill(parts[part.id]["record"], part, system) for part in finding.parts)
        word = words["call"]
    elif finding.state is State.UNCHECKED:
        needs = list(dict.fromkeys(need for part in finding.parts for need in _needs(part, parts[part.id])))
        silent = any(part.limit is None and "sheet" in parts[part.id]["need_limit"] for part in finding.parts)
        text = " ".join([f"Missing: {', '.join(needs)}.", *_compared(finding, parts, system)])
        hint = words["silent"] if silent else ""
        record = f"{entry['name'].lower()} (missing: {', '.join(needs)})"
        word = words["unchecked"]
    elif finding.state is State.REMINDER:
        part = finding.parts[0]
        text = entry["why"][finding.why]["text"]
        if part.value is not None:
            text = f"{_fill(parts[part.id]['both'], part, system)} {text}"
        action, record, word = parts[part.id]["stop"], "", words["reminder"]
    else:
        text = entry["why"][finding.why]["text"] if finding.why else " ".join(_compared(finding, parts, system))
        record, word = "", words["clear"]
    return Said(
        gate=finding.gate,
        name=entry["name"],
        state=finding.state.value,
        word=word,
        text=text,
        action=action,
        limit_from=entry["from"],
        basis=entry["basis"],
        record=record,
        hint=hint,
    )


def pair(part: Part, system: System) -> tuple[str, str]:
    """Both figures of a comparison, written so that they differ on the page exactly when they differ.

    Parameters
    ----------
    part : a comparison; a missing figure is written as nothing.
    system : "metric" or "imperial".

    Returns
    -------
    tuple of str
        value and limit, each with its unit.

    Examples
    --------
    >>> pair(Part("depth", "length", 0.0501, 0.05), "metric")
    ('50.1 mm', '50 mm')
    """
    if part.kind == "flag":
        return "", ""
    if part.value is None or part.limit is None:
        alone = [_ways(figure, part.kind, system, "nearest")[0].text if figure is not None else "" for figure in (part.value, part.limit)]
        return alone[0], alone[1]
    worse: Rounding = "up" if part.at_most else "down"
    better: Rounding = "down" if part.at_most else "up"
    limits = _ways(part.limit, part.kind, system, better)
    if part.value == part.limit or (part.state is State.CLEAR and math.isclose(part.value, part.limit, rel_tol=SAME, abs_tol=1e-12)):
        return limits[0].text, limits[0].text
    hair = abs(part.value - part.limit) / 2  # rounding may not hide the difference, nor turn it round
    values = _ways(part.value, part.kind, system, worse)
    return _near(values, part.value, hair), _near(limits, part.limit, hair)


@dataclass(frozen=True)
class _Way:
    """One way to write a figure, and the figure that the text says, SI."""

    text: str
    si: float


def _near(ways: list[_Way], si: float, hair: float) -> str:
    """The plainest that is no further off than that, else the finest."""
    return next((way.text for way in ways if abs(way.si - si) < hair), ways[-1].text)


def _ways(si: float, kind: str, system: System, rounding: Rounding) -> list[_Way]:
    """How to write a figure: as it is where a tape, a scale or a thermometer could read it so, else in the steps of its kind, then ever finer."""
    if kind == "energy":  # no maker thinks in it: joules for all
        told = [float(f"{si:.{n}g}") for n in (2, 4, 9)]
        return [_Way(f"{joules:.10g} J", joules) for joules in told]
    name = {"duration": "minutes" if si < _HOURS_FROM_S else "hours", "rotational speed": "speed"}.get(kind, kind)
    quantity, metric, imperial = STYLES[name]
    style = metric if system == "metric" else imperial
    unit = style.unit
    if style.fraction:
        readable = Style(unit, step=1 / 32, fraction=True)
    elif kind.startswith("temperature"):
        readable = Style(unit, step=0.1)
    else:
        readable = Style(unit, figures=3 if kind == "length" else 4)
    whole = write(si, (quantity, readable), system)
    if math.isclose(from_si(whole.si, quantity, unit), from_si(si, quantity, unit), rel_tol=SAME, abs_tol=1e-9):
        return [_Way(f"{whole.text if style.fraction else trimmed(whole.text)} {unit}", si)]
    steps = [write(si, (quantity, one), system, rounding) for one in (style, *(Style(unit, figures=n) for n in (3, 4, 6, 9)))]
    return [_Way(f"{shown.text if '/' in shown.text else trimmed(shown.text)} {unit}", shown.si) for shown in steps if shown.si]


def _fill(text: str, part: Part, system: System) -> str:
    value, limit = pair(part, system)
    short, more = part.lacks or ("", 0.0)
    return text.format(value=value, limit=limit, short=short, more=_to_add(more, system))


def _to_add(mass_kg: float, system: System) -> str:
    """To the nearest gram or twentieth of an ounce; under ten such steps in tenths of them, then in two figures: never nothing.

    >>> _to_add(0.0556, "metric"), _to_add(0.00456, "metric"), _to_add(0.0556, "imperial")
    ('56 g', '4.6 g', '1.95 oz')
    """
    unit, step = ("g", 1.0) if system == "metric" else ("oz", 0.05)
    amount = from_si(mass_kg, "mass", unit)
    fine = step if amount >= 10 * step else step / 10
    style = Style(unit, step=fine) if amount >= 10 * fine else Style(unit, figures=2)
    return str(write(mass_kg, ("mass", style), system))


def _needs(part: Part, words: Mapping[str, str]) -> list[str]:
    if part.state is not State.UNCHECKED:
        return []
    needs = [words["need_value"] if part.value is None else "", words["need_limit"] if part.limit is None else ""]
    return [need for need in needs if need]


def _compared(finding: Finding, parts: Mapping[str, Mapping[str, str]], system: System) -> list[str]:
    """The sentences of what was compared and did not stop; figures before yes and no."""
    clear = [part for part in finding.parts if part.state is State.CLEAR]
    numbers = [part for part in clear if part.kind != "flag"]
    return [_fill(parts[part.id]["both"], part, system) for part in numbers or clear]
