"""The bibliography and the data tables: no row without a source loads."""

from __future__ import annotations

import csv
import math
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache, partial
from pathlib import Path
from typing import Any

from calc.quantity.kinds import KINDS
from calc.quantity.units import to_si

_DATA = Path(__file__).with_name("data")
#: Kind of quantity of a printed unit; the kinds whose units stand in tables with a name and a value.
_KIND_OF = {symbol: kind for kind in ("length", "mass", "density", "time", "pressure", "temperature") for symbol in KINDS[kind].units} | {"degC": "temperature"}
#: Slopes, angles and what is told for a mole or an equivalent: what one of the unit is.
_FACTORS = {"mm/m": 1e-3, "degrees": math.pi / 180, "kJ/mol": 1e3, "kJ/eq": 1e3, "g/eq": 1e-3}
#: Printed units that the arithmetic takes as they are.
_AS_PRINTED = ("", "1", "share", "K", "N", "J/mol", "W/(m K)", "W/(m² K)", "m²/s", "kg m2", "J/kgK", "J/kgK2", "W/m2K", "1/s")


@dataclass(frozen=True)
class Source:
    """A document, or a basis such as common practice."""

    key: str
    title: str
    note: str
    seen: str


@cache
def bibliography() -> Mapping[str, Source]:
    """All sources by key, from ``data/sources.toml``."""
    with (_DATA / "sources.toml").open("rb") as file:
        entries = tomllib.load(file)
    return {key: Source(key, entry["title"], entry["note"], entry["seen"]) for key, entry in entries.items()}


def source(key: str) -> Source:
    """One source.

    Raises
    ------
    LookupError
        when ``sources.toml`` has no such key: a mistake in our data, not in the maker's input.
    """
    try:
        return bibliography()[key]
    except KeyError:
        raise LookupError(f"'{key}' is not in data/sources.toml") from None


@cache
def table(name: str) -> tuple[Mapping[str, str], ...]:
    """The rows of ``data/NAME.csv``; every row's ``source`` column must name a known source.

    Lines that start with ``#`` are notes. Values stay text; the caller converts the printed unit.

    Raises
    ------
    LookupError
        when a row has no known source.
    """
    with (_DATA / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        rows = tuple(csv.DictReader(line for line in file if not line.startswith("#")))
    for row in rows:
        source(row["source"])
    return rows


def tables() -> tuple[str, ...]:
    """The names of all tables in ``data/``, in their order."""
    return tuple(sorted(path.stem for path in _DATA.glob("*.csv")))


def remarks(name: str) -> str:
    """What stands above the rows of ``data/NAME.csv``: what they are, and in which units."""
    lines = (_DATA / f"{name}.csv").read_text(encoding="utf-8").splitlines()
    return " ".join(line.removeprefix("#").strip() for line in lines if line.startswith("#"))


@cache
def value(name: str, row: str) -> float:
    """One figure of ``data/NAME.csv``, in its printed unit, for tables that have a ``name`` and a ``value`` column.

    Raises
    ------
    LookupError
        when there is no such row.

    Examples
    --------
    >>> value("air", "dew margin")
    3.0
    """
    found = [float(entry["value"]) for entry in table(name) if entry["name"] == row]
    if len(found) != 1:
        raise LookupError(f"data/{name}.csv has {len(found)} rows named '{row}'")
    return found[0]


def figures(name: str) -> Callable[[str], float]:
    """The figures of ``data/NAME.csv`` by the names of their rows, as :func:`value` gives them.

    Examples
    --------
    >>> figures("mixing")("ratio good")
    0.02
    """
    return partial(value, name)


@cache
def _value_in_si(name: str, row: str) -> float:
    printed, unit = value(name, row), next(entry["unit"] for entry in table(name) if entry["name"] == row)
    if unit in _KIND_OF:
        return to_si(printed, _KIND_OF[unit], unit.replace("degC", "°C"))
    if unit in _FACTORS:
        return printed * _FACTORS[unit]
    if unit not in _AS_PRINTED:
        raise LookupError(f"data/{name}.csv, '{row}': no SI unit is known for '{unit}'")
    return printed


def in_si(name: str) -> Callable[[str], float]:
    """The figures of ``data/NAME.csv`` by the names of their rows, in SI: the column ``unit`` says what is printed.

    Lengths come in m, masses in kg, times in s, temperatures in K; shares and slopes as fractions, angles in rad.

    Raises
    ------
    LookupError
        when there is no such row, or its unit has no place here.

    Examples
    --------
    >>> of_air = in_si("air")
    >>> of_air("blush temperature"), of_air("dew margin"), of_air("humidity limit")
    (293.15, 3.0, 0.85)
    """
    return partial(_value_in_si, name)


@cache
def _cautions() -> Mapping[tuple[str, str], Source]:
    return {(row["question"], row["caution"]): source(row["source"]) for row in table("cautions")}


def of_caution(question: str, caution: str) -> Source:
    """Where a caution of a question comes from, from ``data/cautions.csv``.

    One that stands in no row is our judgement: a maker in the shop gets his answer and its caution, and the tests find the gap.

    Examples
    --------
    >>> of_caution("how-fast", "X12").key
    'z87-1'
    """
    return _cautions().get((question, caution)) or source("judgement")


@cache
def document(name: str) -> Mapping[str, Any]:
    """``data/NAME.toml`` as a mapping, for data that is not a table."""
    with (_DATA / f"{name}.toml").open("rb") as file:
        return tomllib.load(file)
