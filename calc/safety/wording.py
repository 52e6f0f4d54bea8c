"""What a gate says: its finding in a maker's words, both figures written so that the difference shows.

The sentences stand in ``data/gates.toml``. :func:`say` is the only place that puts figures into them.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from functools import cache
from typing import Any

from calc import sources
from calc.quantity.kinds import System
from calc.quantity.units import from_si
from calc.quantity.writing import STYLES, Rounding, Style, round_to, trimmed, write, write_number
from calc.safety.findings import SAME, Finding, Part, State

#: From this time on a duration is written in hours, s; two that differ by less than this factor are written in one unit.
_HOURS_FROM_S = 2 * 3600.0
_ONE_UNIT = 2.0
#: How finely two lengths that stand in one sentence are read off a tape, in.
_TAPE_IN = (1 / 16, 1 / 32)
#: Where a tape does not tell them apart: the steps of decimals, in.
_DECIMALS_IN = (1e-2, 1e-3, 1e-4, 1e-6, 1e-9)


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
        told = [_fill(parts[part.id]["both"], part, system, finding.parts) for part in finding.parts]
        text = " ".join([*told, entry["why"][finding.why]["text"]])
        record = ", ".join(_fill(parts[part.id]["record"], part, system, finding.parts) for part in finding.parts)
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


def pair(part: Part, system: System, told: Sequence[Part] = ()) -> tuple[str, str]:
    """Both figures of a comparison, written so that they differ on the page exactly when they differ.

    Parameters
    ----------
    part : a comparison; a missing figure is written as nothing.
    system : "metric" or "imperial".
    told : what is told beside it: a figure that stands there too is written in one way.

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
    if _at_its_limit(part):
        return limits[0].text, limits[0].text
    alike = [one for one in told if one is not part and _same_figure(one, part)]
    if any(_at_its_limit(one) for one in alike):  # then it is written as that limit is
        worse, alike = better, [one for one in alike if not _at_its_limit(one)]
    if part.kind == "length" and system == "imperial":
        beside = [one for one in told if one is not part and one not in alike and one.limit == part.limit and one.at_most == part.at_most]
        return _inches(part, [*alike, *beside], worse, better)
    # rounding may not hide a difference, nor turn it round
    hairs = [abs(one.value - one.limit) / 2 for one in (part, *alike) if one.value is not None and one.limit is not None]
    values = _ways(part.value, part.kind, system, worse, beside=part.limit)
    limits = _ways(part.limit, part.kind, system, better, beside=part.value)
    return _near(values, part.value, min(hairs)), _near(limits, part.limit, hairs[0])


def _same_figure(one: Part, part: Part) -> bool:
    return one.value == part.value and one.kind == part.kind and one.at_most == part.at_most and one.limit is not None


def _at_its_limit(part: Part) -> bool:
    return part.value is not None and part.limit is not None and math.isclose(part.value, part.limit, rel_tol=SAME, abs_tol=1e-12)


def _inches(part: Part, alike: Sequence[Part], worse: Rounding, better: Rounding) -> tuple[str, str]:
    """Two lengths in one precision: as they were typed where a tape or hundredths read them, else in the coarsest steps that keep their order."""
    rows = [(from_si(one.value or 0.0, "length", "in"), from_si(one.limit or 0.0, "length", "in"), one.state) for one in (part, *alike)]
    tape, decimals = ([Style("in", step=step, fraction=at is _TAPE_IN) for step in at] for at in (_TAPE_IN, _DECIMALS_IN))
    if all(_reads(figure, tape[-1]) for row in rows for figure in row[:2]):
        styles = tape[-1:]
    elif _reads(rows[0][0], decimals[0]) and not _reads(rows[0][0], tape[-1]):  # typed in hundredths
        styles = decimals
    else:
        styles = [*tape, *decimals]
    style = next((style for style in styles if all(_kept(*row, style, worse, better) for row in rows)), styles[-1])
    if all(row[2] is State.CLEAR for row in rows) and style.step < _DECIMALS_IN[1]:  # nobody reads closer than a thousandth
        style, worse = Style("in", step=_DECIMALS_IN[1]), better
    texts = [write_number(figure, style, rounding)[0] for figure, rounding in zip(rows[0][:2], (worse, better), strict=True)]
    value, limit = texts if style.fraction else [trimmed(text) for text in texts]
    return f"{value} in", f"{limit} in"


def _reads(figure: float, style: Style) -> bool:
    """It stands on a step of that style."""
    return math.isclose(round_to(figure, style.step), figure, rel_tol=SAME)


def _kept(value: float, limit: float, state: State, style: Style, worse: Rounding, better: Rounding) -> bool:
    """Rounded to the safe side the two stand in their order; on a stop the value, which the maker knows, is hardly moved."""
    shown, most = (write_number(figure, style, rounding)[1] for figure, rounding in ((value, worse), (limit, better)))
    in_order = (shown - most) * (value - limit) > 0 and min(shown, most) > 0
    return in_order and (state is State.CLEAR or abs(shown - value) < abs(value - limit) / 2)


def measured(finding: Finding, system: System) -> str:
    """The figure that a gate of one figure is about, with its unit, as its sentence tells it; nothing where it is missing.

    Parameters
    ----------
    finding : from :mod:`calc.safety.gates`.
    system : "metric" or "imperial".

    Returns
    -------
    str

    Examples
    --------
    >>> from calc.safety import gates
    >>> measured(gates.pour.tray(0.0098, 0.05), "imperial"), measured(gates.pour.tray(0.0098, 0.05), "metric")
    ('0.386 in', '9.8 mm')
    """
    part = finding.deciding if finding.state is State.STOP else next((one for one in finding.parts if one.state is State.CLEAR), None)
    return "" if part is None else pair(part, system, () if finding.state is State.STOP else _clear(finding))[0]


@dataclass(frozen=True)
class _Way:
    """One way to write a figure, and the figure that the text says, SI."""

    text: str
    si: float


def _near(ways: list[_Way], si: float, hair: float) -> str:
    """The plainest that is no further off than that, else the finest."""
    return next((way.text for way in ways if abs(way.si - si) < hair), ways[-1].text)


def _ways(si: float, kind: str, system: System, rounding: Rounding, beside: float | None = None) -> list[_Way]:
    """How to write a figure: as it is where a tape, a scale or a thermometer could read it so, else in the steps of its kind, then ever finer."""
    if kind == "energy":  # no maker thinks in it: joules for all
        told = [float(f"{si:.{n}g}") for n in (2, 4, 9)]
        return [_Way(f"{joules:.10g} J", joules) for joules in told]
    least = si if beside is None or not si / _ONE_UNIT < beside < si else beside
    name = {"duration": "minutes" if least < _HOURS_FROM_S else "hours", "rotational speed": "speed"}.get(kind, kind)
    quantity, metric, imperial = STYLES[name]
    style = metric if system == "metric" else imperial
    unit = style.unit
    if style.fraction:
        readable, hundredths = Style(unit, step=_TAPE_IN[-1], fraction=True), Style(unit, step=_DECIMALS_IN[0])
        if not _reads(from_si(si, quantity, unit), readable) and _reads(from_si(si, quantity, unit), hundredths):
            readable = style = hundredths
    elif kind.startswith("temperature"):
        readable = Style(unit, step=0.1)
    else:
        readable = Style(unit, figures=3 if kind in ("length", "volume") else 4)
    whole = write(si, (quantity, readable), system)
    if math.isclose(from_si(whole.si, quantity, unit), from_si(si, quantity, unit), rel_tol=SAME, abs_tol=1e-9):
        return [_Way(f"{whole.text if style.fraction else trimmed(whole.text)} {unit}", si)]
    steps = [write(si, (quantity, one), system, rounding) for one in (style, *(Style(unit, figures=n) for n in (3, 4, 6, 9)))]
    return [_Way(f"{shown.text if '/' in shown.text else trimmed(shown.text)} {unit}", shown.si) for shown in steps if shown.si]


def _fill(text: str, part: Part, system: System, told: Sequence[Part] = ()) -> str:
    value, limit = pair(part, system, told)
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
    """The sentences of what was compared and did not stop, one for each figure; figures before yes and no."""
    clear = _clear(finding)
    numbers = [part for part in clear if part.kind != "flag"]
    told: dict[str, list[str]] = {}
    for part in numbers or clear:
        after = parts[part.id].get("after", "")
        if after in told:
            told[after].append(_fill(parts[part.id]["also"], part, system, clear))
        else:
            told[part.id] = [_fill(parts[part.id]["both"], part, system, clear)]
    return [f"{', '.join([first.removesuffix('.'), *more])}." for first, *more in told.values()]


def _clear(finding: Finding) -> list[Part]:
    return [part for part in finding.parts if part.state is State.CLEAR]
