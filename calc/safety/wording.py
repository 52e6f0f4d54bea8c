"""What a gate says: its finding in a maker's words, both figures written so that the difference shows.

The sentences stand in ``data/gates.toml``. :func:`say` is the only place that puts figures into them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import asdict, dataclass
from functools import cache
from typing import Any

from calc import sources
from calc.quantity import Style, System, from_si, restate, trimmed, write
from calc.safety.findings import Finding, Part, State

#: kind of a part -> (kind of quantity, metric unit, imperial unit)
_UNITS: Mapping[str, tuple[str, str, str]] = {
    "length": ("length", "mm", "in"),
    "mass": ("mass", "kg", "lb"),
    "temperature": ("temperature", "°C", "°F"),
    "share": ("share", "%", "%"),
    "pressure": ("pressure", "bar", "psi"),
}
#: From this time on a duration is written in hours, s.
_HOURS_FROM_S = 2 * 3600.0
#: One kelvin of difference in the units shown.
_DEGREES: Mapping[System, tuple[float, str]] = {"metric": (1.0, "°C"), "imperial": (1.8, "°F")}


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
    >>> said = say(gates.depth(0.062, 0.05), "metric")
    >>> said.word, said.text
    ('STOP', '62 mm planned, the sheet allows 50 mm.')
    """
    words, entry = _words()["words"], gate_words(finding.gate)
    parts: Mapping[str, Mapping[str, str]] = entry["parts"]
    deciding = finding.deciding
    action = hint = ""
    if finding.state is State.STOP and deciding is not None:
        told = "failed" if "failed" in parts[deciding.id] else "both"
        text, action, record = (_fill(parts[deciding.id][key], deciding, system) for key in (told, "stop", "record"))
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
    figures = [figure for figure in (part.value, part.limit) if figure is not None]
    if part.kind == "flag" or not figures:
        return "", ""
    first, *finer = _writers(part.kind, system, max(figures))
    for write_one in (first, *finer):
        texts = [write_one(figure) if figure is not None else "" for figure in (part.value, part.limit)]
        differ = part.state is not State.UNCHECKED and part.value != part.limit
        if not differ or texts[0] != texts[1] or part.state is State.CLEAR:
            break
    return texts[0], texts[1]


def _writers(kind: str, system: System, largest: float) -> list[Callable[[float], str]]:
    """Ways to write a figure of this kind, plain first, then ever finer."""
    if kind == "temperature difference":
        scale, unit = _DEGREES[system]
        return [lambda si, n=n: f"{si * scale:.{n}f}".removesuffix(".0") + f" {unit}" for n in (1, 3, 6)]  # type: ignore[misc]
    if kind == "duration":
        quantity, unit = "time", "h" if largest >= _HOURS_FROM_S else "min"
    else:
        quantity, metric, imperial = _UNITS[kind]
        unit = metric if system == "metric" else imperial
    plain: Callable[[float], str] = lambda si: f"{restate(si, quantity, unit)} {unit}"  # noqa: E731
    finer: list[Callable[[float], str]] = [
        lambda si, n=n: f"{trimmed(write(si, (quantity, Style(unit, figures=n)), system).text)} {unit}"  # type: ignore[misc]
        for n in (4, 6, 9)
    ]
    if from_si(largest, quantity, unit) == 0:
        return [plain]
    return [plain, *finer]


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
