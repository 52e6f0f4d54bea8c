"""Input specifications: what a question asks, and how a typed text becomes a value.

A field is declared once, in Python. Its form control, hint, limits, error texts,
shell argument and test values all come from the declaration.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, TypedDict, Unpack

from calc.errors import InputError
from calc.quantity.kinds import KINDS, SYSTEMS, System
from calc.quantity.reading import Reading, read
from calc.quantity.units import from_si, to_si
from calc.quantity.writing import Rounding, Style, restate, trimmed, write_number
from calc.words import either

#: A limit may be told this much narrower than it is, to be a rounder number.
_GIVEN_AWAY = 0.02

Value = float | str | tuple[float, ...] | tuple[float, float] | None


@dataclass(frozen=True)
class Typed:
    """What the maker typed, and which unit system the page showed at the time."""

    text: str
    units: System = "metric"


@dataclass(frozen=True)
class Parsed:
    """One field's value. ``typed`` is false when the default stands in; ``units`` is the system of the text, where it is not the one answered in."""

    value: Value
    typed: bool
    text: str
    units: System | None = None


@dataclass(frozen=True)
class Query:
    """A suspected slip: computable, but it looks like a wrong unit or a wrong key."""

    name: str
    given: str
    meaning: str
    choices: tuple[tuple[str, str], ...]


def _under(text: str | tuple[str, str], system: System) -> str:
    return text if isinstance(text, str) else text[system == "imperial"]


@dataclass(frozen=True, kw_only=True)
class Field:
    """What every kind of field has.

    Parameters
    ----------
    name : identifier, also the shell's argument and the address's key.
    label : what the maker reads.
    hint : one short line below it, or empty; ``(metric, imperial)`` where figures stand in it, or one text for both.
    default : text that stands in when nothing is typed, a pair or one text in the same way.
    basis : where the default comes from: a key of ``sources.toml`` (``practice``, ``judgement``, or a document).
    required : with no default, whether leaving it empty is an error.
    fold : asked only when the maker opens 'More'.
    group : a heading under which fields that follow each other stand together; empty for none.
    when : the field is asked only if each named choice field has one of the values given.
    """

    name: str
    label: str
    hint: str | tuple[str, str] = ""
    default: str | tuple[str, str] | None = None
    basis: str = ""
    required: bool = True
    fold: bool = False
    group: str = ""
    when: tuple[tuple[str, tuple[str, ...]], ...] = ()

    @property
    def type(self) -> str:
        """The kind of field, for forms."""
        return type(self).__name__.lower()

    def missing(self) -> InputError:
        """The error when a required field is left empty."""
        return InputError(self.name, "missing")

    def default_text(self, system: System) -> str:
        """The default as a maker would type it under this unit system; empty when there is none."""
        return _under("" if self.default is None else self.default, system)

    def would_do(self, system: System) -> str:
        """What may be entered, in words for an error text."""
        raise NotImplementedError

    def parse(self, typed: Typed) -> tuple[Value, Query | None]:
        """The value of a non-empty text, and a query when it looks like a slip."""
        raise NotImplementedError

    def convert(self, typed: Typed, system: System) -> str:
        """The text that the other unit system shows for what was typed."""
        return typed.text

    def as_json(self) -> dict[str, Any]:
        """The declaration for forms and for the shell's ``describe``."""
        return {
            "name": self.name,
            "type": self.type,
            "label": self.label,
            "hint": {system: _under(self.hint, system) for system in SYSTEMS},
            "required": self.required and self.default is None,
            "fold": self.fold,
            "group": self.group,
            "when": [[name, list(values)] for name, values in self.when],
            "default": None if self.default is None else {system: self.default_text(system) for system in SYSTEMS},
            "basis": self.basis,
        }


@dataclass(frozen=True, kw_only=True)
class Quantity(Field):
    """One number with a unit.

    Parameters
    ----------
    kind : a key of :data:`calc.quantity.kinds.KINDS`.
    units : the unit of a bare number, ``(metric, imperial)``.
    low, high : outside them the input is an error; in the metric unit of ``units``.
    usual : outside this range the input is questioned as a slip; in the same unit.
    accepts : units that may be written after the number; empty for all of the kind's.
    whole : only whole numbers will do.
    """

    kind: str
    units: tuple[str, str]
    low: float
    high: float
    usual: tuple[float, float] | None = None
    accepts: tuple[str, ...] = ()
    whole: bool = False

    def unit(self, system: System) -> str:
        """The unit of a bare number under this unit system."""
        return self.units[system == "imperial"]

    @property
    def limits_si(self) -> tuple[float, float]:
        """``low`` and ``high`` in the kind's SI unit."""
        return self._si(self.low), self._si(self.high)

    @property
    def usual_si(self) -> tuple[float, float]:
        """What is not questioned as a slip, in the kind's SI unit; the limits where there is no such range."""
        low, high = self.usual or (self.low, self.high)
        return self._si(low), self._si(high)

    def _si(self, value: float) -> float:
        return to_si(value, self.kind, self.units[0])

    def _range(self, low: float, high: float, system: System) -> str:
        """``low to high`` in words, never wider than it is: to one figure where that gives little away, else to two."""
        unit = self.unit(system)
        if unit == self.units[0]:
            return f"{low:g} to {high:g} {unit}".strip()
        style = Style(unit, step=1) if KINDS[self.kind].signed else Style(unit, figures=2)
        limits: tuple[tuple[float, Rounding], ...] = ((low, "up"), (high, "down"))
        texts = []
        for value, rounding in limits:
            exact = from_si(self._si(value), self.kind, unit)
            text, written = write_number(exact, replace(style, figures=1) if style.figures else style, rounding)
            if style.figures and abs(written - exact) > _GIVEN_AWAY * abs(exact):
                text = write_number(exact, style, rounding)[0]
            texts.append(trimmed(text))
        return f"{texts[0]} to {texts[1]} {unit}"

    def would_do(self, system: System) -> str:
        return self._range(*(self.usual or (self.low, self.high)), system)

    def _likely(self, reading: Reading) -> tuple[tuple[str, str], ...]:
        """The same number in another unit, where that is in the usual range: first the field's own, then what stands with the one that was read."""
        low, high = self.usual or (self.low, self.high)
        found = []
        for symbol in self.accepts or tuple(KINDS[self.kind].units):
            if symbol != reading.unit and self._si(low) <= to_si(reading.number, self.kind, symbol) <= self._si(high):
                text = f"{reading.number:g} {symbol}"
                found.append((text, text))
        pairs = KINDS[self.kind].pairs
        beside = tuple(unit for pair in pairs if reading.unit in pair for unit in pair)
        common = [choice for units in (self.units, beside) for choice in found if choice[0].rsplit(" ", 1)[1] in units]
        return tuple(dict.fromkeys(common or found))[:2]

    def _check(self, reading: Reading, typed: Typed) -> Query | None:
        given = typed.text.strip()
        shown = given if reading.unit_written or not reading.unit else f"{given} {reading.unit}"
        si = reading.si
        details = {"given": shown, "would_do": self.would_do(typed.units)}
        tolerance = 1e-9 * max(abs(self._si(self.low)), abs(self._si(self.high)), abs(si))
        below, above = ("too-cold", "too-hot") if self.kind == "temperature" else ("too-small", "too-large")
        if si < self._si(self.low) - tolerance:
            code = "not-positive" if self.low > 0 and reading.number <= 0 and not KINDS[self.kind].signed else below
            raise InputError(self.name, code, self._likely(reading), **details)
        if si > self._si(self.high) + tolerance:
            raise InputError(self.name, above, self._likely(reading), **details)
        if self.whole and abs(si - round(si)) > tolerance:
            raise InputError(self.name, "not-whole", (), **details)
        if self.usual and not self._si(self.usual[0]) - tolerance <= si <= self._si(self.usual[1]) + tolerance:
            other = self.units[0] if reading.unit != self.units[0] else self.units[1]
            meaning = "" if other == reading.unit else f" is {restate(si, self.kind, other)} {other}"
            return Query(self.name, shown, meaning, self._likely(reading))
        return None

    def parse(self, typed: Typed) -> tuple[Value, Query | None]:
        reading = read(self.name, typed.text, self.kind, self.unit(typed.units), self.accepts)
        return reading.si, self._check(reading, typed)

    def convert(self, typed: Typed, system: System) -> str:
        if system == typed.units:
            return typed.text
        try:
            reading = read(self.name, typed.text, self.kind, self.unit(typed.units), self.accepts)
        except InputError:
            return typed.text
        return restate(reading.si, self.kind, self.unit(system))

    def as_json(self) -> dict[str, Any]:
        return super().as_json() | {
            "kind": self.kind,
            "unit": {"metric": self.units[0], "imperial": self.units[1]},
            "accepts": list(self.accepts or KINDS[self.kind].units),
            "limits": {system: self._range(self.low, self.high, system) for system in SYSTEMS},
        }


#: Metric unit of a bare number -> kind, and the imperial unit that stands beside it.
BESIDE: Mapping[str, tuple[str, str]] = {
    "mm": ("length", "in"),
    "m": ("length", "ft"),
    "g": ("mass", "oz"),
    "kg": ("mass", "lb"),
    "mL": ("volume", "US fl oz"),
    "L": ("volume", "US qt"),
    "°C": ("temperature", "°F"),
    "g/mL": ("density", "g/mL"),
    "bar": ("pressure", "psi"),
    "kPa": ("pressure", "inHg"),
    "mPa·s": ("viscosity", "cP"),
    "J/g": ("heat", "J/g"),
    "min": ("time", "min"),
    "h": ("time", "h"),
    "rpm": ("rotational speed", "rpm"),
    "mm/s": ("vibration", "in/s"),
    "%": ("share", "%"),
}


class More(TypedDict, total=False):
    """What a quantity may have besides its name, label, unit and limits; see :class:`Quantity`."""

    hint: str | tuple[str, str]
    usual: tuple[float, float]
    accepts: tuple[str, ...]
    default: str | tuple[str, str]
    basis: str
    required: bool
    fold: bool
    group: str
    when: tuple[tuple[str, tuple[str, ...]], ...]


def measure(name: str, label: str, unit: str, low: float, high: float, **more: Unpack[More]) -> Quantity:
    """One number of the kind that its metric unit says: the plain way to declare a :class:`Quantity`.

    Parameters
    ----------
    name, label : as for every field.
    unit : a key of :data:`BESIDE`.
    low, high : limits, in that unit.
    more : anything else a quantity has.

    Returns
    -------
    Quantity

    Examples
    --------
    >>> measure("depth", "Depth", "mm", 1, 1000).units
    ('mm', 'in')
    """
    kind, imperial = BESIDE[unit]
    return Quantity(name=name, label=label, kind=kind, units=(unit, imperial), low=low, high=high, **more)


def under(group: str, *fields: Field) -> tuple[Field, ...]:
    """The fields, under one heading.

    Examples
    --------
    >>> [field.group for field in under("Mould", measure("wall", "Wall", "mm", 1, 50), measure("bench", "Bench", "mm", 1, 90))]
    ['Mould', 'Mould']
    """
    return tuple(replace(field, group=group) for field in fields)


@dataclass(frozen=True)
class Option:
    """One choice: its value, what the maker reads, and a short hint."""

    value: str
    label: str
    hint: str = ""


YES, NO = Option("yes", "Yes"), Option("no", "No")


@dataclass(frozen=True, kw_only=True)
class Choice(Field):
    """One of a few; the text is the option's value (its label is taken too)."""

    options: tuple[Option, ...]

    def would_do(self, system: System) -> str:
        return ", ".join(option.value for option in self.options)

    def missing(self) -> InputError:
        return InputError(self.name, "choose", options=either(tuple(option.label for option in self.options)))

    def parse(self, typed: Typed) -> tuple[Value, Query | None]:
        given = typed.text.strip().lower()
        for option in self.options:
            if given in (option.value, option.label.lower()):
                return option.value, None
        raise InputError(self.name, "choice", options=self.would_do(typed.units))

    def label_of(self, value: str) -> str:
        """What the maker reads for an option's value."""
        return next(option.label for option in self.options if option.value == value)

    def as_json(self) -> dict[str, Any]:
        return super().as_json() | {"options": [{"value": o.value, "label": o.label, "hint": o.hint} for o in self.options]}


@dataclass(frozen=True, kw_only=True)
class Text(Field):
    """Free words, kept as typed: a name, a note."""

    most: int = 200

    def would_do(self, system: System) -> str:
        return "A few words"

    def parse(self, typed: Typed) -> tuple[Value, Query | None]:
        return typed.text.strip()[: self.most], None


def wanting(field: Field, choices: Mapping[str, str]) -> tuple[str, ...]:
    """What would have to be chosen for the field to be asked, in the shell's names; nothing when it is asked.

    Parameters
    ----------
    field : any.
    choices : the values of the choice fields before it.

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> wanting(measure("depth", "Depth", "mm", 1, 9, when=(("shape", ("box", "tray")),)), {"shape": "ring"})
    ('shape is box or tray',)
    """
    return tuple(f"{name} is {either(values)}" for name, values in field.when if choices.get(name) not in values)
