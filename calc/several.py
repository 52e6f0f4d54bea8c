"""Fields that take several numbers in one text: belt steps, widths in their order, the two parts of a ratio."""

from __future__ import annotations

import re
from dataclasses import dataclass

from calc.errors import InputError
from calc.fields import Field, Quantity, Query, Typed, Value
from calc.quantity.kinds import KINDS, System
from calc.quantity.reading import Reading, read
from calc.quantity.writing import restate


@dataclass(frozen=True, kw_only=True)
class Numbers(Quantity):
    """Several numbers of one kind in one text, apart by spaces, commas, semicolons or slashes: belt steps.

    A comma between two digits, with no space, is a decimal comma where something else keeps the numbers apart: ``12,5 11,5``. ``12, 5`` and ``9,12,10``
    are lists. One comma and nothing else, ``12,5``, is asked about.
    """

    most: int = 24

    def parse(self, typed: Typed) -> tuple[Value, Query | None]:
        unit = self.unit(typed.units)
        text = typed.text.strip()
        for alias in sorted((unit, *KINDS[self.kind].aliases), key=len, reverse=True):
            text = text.removesuffix(alias).strip()
        words = _apart(text)
        if len(words) == 1 and "," in words[0]:
            decimal, plain = words[0].replace(",", "."), words[0].replace(",", ", ")
            raise InputError(self.name, "comma", ((decimal, decimal), (plain, plain)), decimal=decimal, plain=plain)
        if len(words) > self.most:
            raise InputError(self.name, "too-many", count=str(len(words)), most=str(self.most))
        query: Query | None = None
        values = []
        for word in words:
            reading = read(self.name, word, self.kind, unit, self.accepts)
            query = query or self._check(reading, Typed(word, typed.units))
            values.append(reading.si)
        if not values:
            raise InputError(self.name, "not-a-number")
        return tuple(sorted(set(values))), query

    def convert(self, typed: Typed, system: System) -> str:
        return typed.text


@dataclass(frozen=True, kw_only=True)
class Series(Numbers):
    """Several numbers of one kind, kept in the order they came, fractions too: ``4 3/4, 5, 5 1/2`` or ``120 135 128``.

    Commas are read as in :class:`Numbers`; one comma and nothing else, ``5,2``, is asked about.

    Parameters
    ----------
    fewest : fewer are an error.
    """

    fewest: int = 2

    @property
    def type(self) -> str:
        return "numbers"

    def parse(self, typed: Typed) -> tuple[Value, Query | None]:
        readings = self._readings(typed)
        if len(readings) < self.fewest:
            raise InputError(self.name, "too-few", count=str(len(readings)), fewest=str(self.fewest))
        if len(readings) > self.most:
            raise InputError(self.name, "too-many", count=str(len(readings)), most=str(self.most))
        queries = [self._check(reading, Typed(word, typed.units)) for word, reading in readings]
        return tuple(reading.si for _, reading in readings), next((query for query in queries if query), None)

    def convert(self, typed: Typed, system: System) -> str:
        if system == typed.units:
            return typed.text
        try:
            return ", ".join(restate(reading.si, self.kind, self.unit(system)) for _, reading in self._readings(typed))
        except InputError:
            return typed.text

    def _readings(self, typed: Typed) -> list[tuple[str, Reading]]:
        unit = self.unit(typed.units)
        words = _one_by_one(typed.text)
        alone = re.fullmatch(r"([1-9]\d*),(\d+)( ?[^\d,]*)", words[0]) if len(words) == 1 else None
        if alone:
            decimal, plain = f"{alone[1]}.{alone[2]}{alone[3]}", f"{alone[1]}, {alone[2]}{alone[3]}"
            raise InputError(self.name, "comma", ((decimal, decimal), (plain, plain)), decimal=decimal, plain=plain)
        return [(word, read(self.name, word, self.kind, unit, self.accepts)) for word in words]


def _apart(text: str) -> list[str]:
    """One text for each number; a decimal comma stays in it. Several commas in a row are a list.

    >>> _apart("12,5 11,5 9"), _apart("12,5; 11,5"), _apart("12, 5"), _apart("900,900,400"), _apart("650, 200 400/1000"), _apart("12,5")
    (['12,5', '11,5', '9'], ['12,5', '11,5'], ['12', '5'], ['900', '900', '400'], ['650', '200', '400', '1000'], ['12,5'])
    """
    words = [word for word in re.split(r"[\s;/]+|,(?=[\s;/]|$)", text) if word]
    decimal = all(re.fullmatch(r"[^,]*\d,\d[^,]*", word) for word in words if "," in word)
    return words if decimal else [word for word in re.split(r"[\s,;/]+", text) if word]


def _one_by_one(text: str) -> list[str]:
    """One text for each number: a fraction goes with the whole number before it, and a unit with its number.

    Who types fractions types no decimal commas: beside one, a comma always parts two numbers.

    >>> _one_by_one("4 3/4, 5 1/2 in 120 5,2"), _one_by_one("120,135,128"), _one_by_one("9,5 12,5")
    (['4 3/4', '5 1/2 in', '120', '5', '2'], ['120', '135', '128'], ['9,5', '12,5'])
    """
    words: list[str] = []
    fractions = any(sign == "/" or (sign.isnumeric() and not sign.isdecimal()) for sign in text)
    for part in re.split(r"[\s;,]+" if fractions else r"[\s;]+|,(?=\s|$)", text):
        for piece in filter(None, part.split(",") if part.count(",") > 1 else [part]):
            is_fraction = bool(re.match(r"\d+/\d", piece)) or (piece[0].isnumeric() and not piece[0].isdecimal())
            if words and (not any(sign.isnumeric() for sign in piece) or (is_fraction and words[-1].isdecimal())):
                words[-1] = f"{words[-1]} {piece}"
            else:
                words.append(piece)
    return words


@dataclass(frozen=True, kw_only=True)
class Ratio(Field):
    """Two parts, A first: ``100:45``, ``2:1``, ``100 to 45``. The value is ``(a, b)``; more B than A is asked about."""

    lowest: float = 1 / 20
    highest: float = 20.0

    def would_do(self, system: System) -> str:
        return self.default_text(system) or "100:45 or 2:1"

    def parse(self, typed: Typed) -> tuple[Value, Query | None]:
        parts = re.split(r"\s*(?::|/|\bto\b)\s*", typed.text.strip().lower())
        if len(parts) == 1 and len(typed.text.split()) == 2:
            parts = typed.text.split()
        if len(parts) != 2:
            raise InputError(self.name, "ratio")
        try:
            a, b = (read(self.name, part, "count", "").si for part in parts)
        except InputError as error:
            raise InputError(self.name, "ratio") from error
        if a <= 0 or b <= 0:
            raise InputError(self.name, "ratio")
        given = typed.text.strip()
        if a / b > self.highest or a / b < self.lowest:
            return (a, b), Query(self.name, given, f" means {a / b:.3g} parts of A to one of B", ())
        if b > a:
            turned = f"{parts[1]}:{parts[0]}"
            return (a, b), Query(self.name, given, " is more B than A, and most resins take more A", ((turned, turned),))
        return (a, b), None
