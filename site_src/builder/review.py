"""Every caution, gate and limit of `calc` in one table, for a professional who checks them; its other figures in a second one.

Built from the same data that the pages and answers use, so it cannot say anything else. What the tables do not hold is counted in
:class:`Review` and said on the page: long tables of material figures. A data table that nobody has placed stands in the first.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc import sources
from calc.fields import Field
from calc.quantity.kinds import SYSTEMS
from calc.questions import all_questions
from calc.safety.checklists import all_checklists
from calc.safety.facts import all_facts, facts
from site_src.builder.worded import worded

#: Tables that feed the arithmetic and limit nothing by themselves: they stand in the second table.
FIGURES = (
    "balance_guesses", "centring", "colour_starts", "cup_vessels", "cure", "cure_classes", "cure_levels", "cure_meanings", "displacement", "enough",
    "lathe_sizes", "lathes", "make_up", "out_of_true", "roughing_cells", "screw_woods", "screws", "sizes",
)  # fmt: skip
#: Long tables of what things are like: named with their sources, not printed line by line.
MATERIAL = ("grits", "out_of_true_signs", "signs", "wood_species")
#: The figures that the gates bring along themselves: beside the gates.
GATES = ("gate_figures",)
#: Tables that stand in a form of their own: each caution with its words.
OWN = ("cautions",)
#: How a 'seen' mark is printed, the weakest last.
MARKS = {"yes": "read", "quoted": "quoted", "no": "memory", "-": "no document"}


@dataclass(frozen=True)
class Cited:
    """One source of a row, and its mark."""

    title: str
    seen: str


@dataclass(frozen=True)
class Row:
    """One line: its number or name, what it says, where it comes from."""

    id: str
    text: str
    cited: tuple[Cited, ...]

    @property
    def mark(self) -> str:
        """The weakest mark among its sources, as it is printed."""
        return MARKS[max((one.seen for one in self.cited), key=list(MARKS).index)]


@dataclass(frozen=True)
class Group:
    """Lines that belong together, under one heading."""

    name: str
    rows: tuple[Row, ...]
    note: str = ""


@dataclass(frozen=True)
class Table:
    """One printable table."""

    groups: tuple[Group, ...]

    @property
    def count(self) -> int:
        """How many rows it has."""
        return sum(len(group.rows) for group in self.groups)

    @property
    def marks(self) -> Mapping[str, int]:
        """How many rows have which mark."""
        return Counter(row.mark for group in self.groups for row in group.rows)


@dataclass(frozen=True)
class Review:
    """Both tables, and what they do not hold.

    Parameters
    ----------
    limits : cautions, gates, limits and the facts behind them.
    figures : what is assumed where nothing is typed, and the figures that feed the arithmetic.
    material : tables left out: name, number of rows, what they are, titles of their sources.
    """

    limits: Table
    figures: Table
    material: tuple[tuple[str, int, str, tuple[str, ...]], ...]


@cache
def review() -> Review:
    """All of it, from the data as it stands."""
    known = {*FIGURES, *MATERIAL, *GATES, *OWN}
    return Review(
        Table((*_safety_groups(), *_data_groups(name for name in sources.tables() if name not in known))),
        Table((*_default_groups(), *_data_groups(FIGURES))),
        tuple((name, len(sources.table(name)), sources.remarks(name), _titles(name)) for name in MATERIAL),
    )


def _safety_groups() -> Iterator[Group]:
    for one in all_checklists().values():
        yield Group(
            f"Checklist {one.id} {one.name}",
            tuple(
                Row(f"{one.id}.{item.number}", f"{item.text} {item.why}{f' Gate {item.gate}.' if item.gate else ''}", _facts(item.facts)) for item in one.items
            ),
        )
    yield Group("Gates", tuple(_gate_rows()), "A figure past its limit stops, a missing one is 'not checked', a figure equal to its limit is not past it.")
    yield from _data_groups(GATES)
    yield Group(
        "Emergency cards",
        tuple(
            Row(card["code"], f"{card['name']}: {' '.join(card['steps'])}".replace("{number}", "your local emergency number"), _facts(card["facts"]))
            for card in sources.document("cards")["card"]
        ),
    )
    yield Group("Mask and filters", tuple(_respirator_rows()))
    for question in all_questions().values():
        rows = [row for row in sources.table("cautions") if row["question"] == question.id]
        if rows:
            told = worded()
            yield Group(
                f"Cautions: {question.name}",
                tuple(Row(row["caution"], row["words"] or " / ".join(told[question.id, row["caution"]]), _source(row["source"])) for row in rows),
                "As the question words them; three dots are a figure or a name, a stroke parts the ways to say it.",
            )
    yield Group("Facts behind lists, cards and hazard pages", tuple(Row(one.id, one.text, _facts([one.id])) for one in all_facts().values()))


def _default_groups() -> Iterator[Group]:
    for question in all_questions().values():
        rows = tuple(Row(field.label, _default(field), _source(field.basis)) for field in question.fields if field.basis)
        if rows:
            yield Group(f"What is assumed where nothing is typed: {question.name}", rows)


def _data_groups(names: Iterable[str]) -> Iterator[Group]:
    for name in names:
        yield Group(f"Table: {name.replace('_', ' ')}", tuple(_figure(row) for row in sources.table(name)), sources.remarks(name))


def _gate_rows() -> Iterator[Row]:
    for id, entry in sources.document("gates").items():
        if id == "words":
            continue
        cited = (*_source(entry["basis"]), *_facts(entry["facts"]))
        for part in entry["parts"].values():
            said = re.sub(r"\{(\w+)\}", r"[\1]", f"{part['both']} {part['stop']}".replace("{value}", "[figure]")).strip()
            yield Row(id, f"{entry['name']}: {said} Limit from: {entry['from']}.", cited)
        for why in entry.get("why", {}).values():
            yield Row(id, f"{entry['name']}: {why['text']}", cited)


def _respirator_rows() -> Iterator[Row]:
    for key, value in sources.document("respirators").items():
        for entry in value if isinstance(value, list) else [value]:
            kept = [text for name, text in entry.items() if name not in ("id", "name", "facts", "card", "seconds")]
            words = [word for text in kept for word in (text if isinstance(text, list) else [text])]
            text = " ".join(words).replace("{seconds}", str(entry.get("seconds", "")))
            yield Row(entry.get("name", key.capitalize()), text, _facts(entry["facts"]))


def _default(field: Field) -> str:
    texts = [field.default_text(system) for system in SYSTEMS]
    label_of: Any = getattr(field, "label_of", str)
    units = field.as_json().get("unit") or {}
    told = [f"{label_of(text) or 'nothing'} {units.get(system, '')}".strip() for system, text in zip(SYSTEMS, texts, strict=True)]
    return ", or ".join(dict.fromkeys(told))


def _figure(row: Mapping[str, str]) -> Row:
    """A row of a table: its first column, then the others by name; a value with its unit."""
    origins = [column for column in row if column.endswith("source")]
    first, *rest = [column for column in row if column not in (*origins, "note", "unit")]
    told = [_cell(row, column) for column in rest if row[column]]
    text = "; ".join([", ".join(told), *([row["note"]] if row.get("note") else [])])
    cited = [one for column in origins if row[column] for one in _source(row[column])]
    return Row(row[first] or "no upper end", text, tuple(dict.fromkeys(cited)))


def _cell(row: Mapping[str, str], column: str) -> str:
    return f"{row[column]} {row.get('unit', '')}".strip() if column == "value" else f"{column.replace('_', ' ')} {row[column]}"


def _facts(ids: Iterable[str]) -> tuple[Cited, ...]:
    return tuple(dict.fromkeys(Cited(one.cited, one.seen) for one in facts(ids)))


def _source(key: str) -> tuple[Cited, ...]:
    one = sources.source(key)
    return (Cited(one.title, one.seen),)


def _titles(name: str) -> tuple[str, ...]:
    keys = [row[column] for row in sources.table(name) for column in row if column.endswith("source") and row[column]]
    return tuple(dict.fromkeys(sources.source(key).title for key in keys))
