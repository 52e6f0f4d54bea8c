"""Questions a maker asks: each module here declares one, as ``QUESTION``.

From the declaration come the form, its hints, limits and error texts, the table for readers
without script, the shell command, and the property-test matrix. To add one, add one file.
A name that starts with an underscore is no question: a long one keeps its words and working there.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Generator, Mapping
from dataclasses import dataclass
from dataclasses import field as attribute
from functools import cache
from typing import Any, cast

from calc.answers import Answer
from calc.errors import InputError, InputErrors
from calc.fields import Choice, Field, Parsed, Quantity, Query, Typed, Value, wanting
from calc.quantity.kinds import System
from calc.quantity.writing import Rounding, Shown, Style, write
from calc.steps import at_once

#: Work that takes its time: it yields the share that is done, 0 to 1, now and then, and returns the answer.
Steps = Generator[float, None, Answer]


class Given:
    """The parsed inputs of one question, and the unit system to answer in.

    ``si``, ``choice``, ``many`` and ``ratio`` return a value that is there; ``maybe`` returns None
    for a field that was left empty with no default, or is not asked. ``unasked`` holds the fields that were
    typed all the same, each with what would have to be chosen first; a page keeps such texts, a shell tells.
    """

    def __init__(
        self, values: Mapping[str, Parsed], system: System, fields: Mapping[str, Field], unasked: Mapping[str, tuple[str, ...]]
    ) -> None:
        self._values = values
        self._fields = fields
        self.system = system
        self.unasked = unasked

    def si(self, name: str) -> float:
        """A quantity in SI (spindle speed in rpm)."""
        return cast(float, self._there(name))

    def choice(self, name: str) -> str:
        """The value of the option chosen."""
        return cast(str, self._there(name))

    def many(self, name: str) -> tuple[float, ...]:
        """Several numbers in SI, smallest first."""
        return cast("tuple[float, ...]", self._there(name))

    def ratio(self, name: str) -> tuple[float, float]:
        """The parts of A and of B, as typed."""
        return cast("tuple[float, float]", self._there(name))

    def maybe(self, name: str) -> float | None:
        """A quantity in SI, or None where there is none."""
        return cast("float | None", self._values[name].value if name in self._values else None)

    def words(self, name: str) -> str:
        """A text field's words, or a choice's value; empty when there are none."""
        return cast(str, (self._values[name].value if name in self._values else None) or "")

    def label_of(self, name: str) -> str:
        """The words of the option chosen, for the working and the plain text."""
        return cast(Choice, self._fields[name]).label_of(self.choice(name))

    def typed(self, name: str) -> bool:
        """Whether the maker typed it; false when the default stands in or it is empty."""
        return name in self._values and self._values[name].typed

    def text(self, name: str) -> str:
        """The field as typed."""
        return self._values[name].text if name in self._values else ""

    def as_typed(self, name: str) -> str:
        """The field as typed, or its default, with the unit that a bare number has: for another question to take."""
        text, declared = self.text(name), self._fields[name]
        system = (self._values[name].units if name in self._values else None) or self.system
        return f"{text} {declared.unit(system)}".strip() if isinstance(declared, Quantity) and text[-1:].isnumeric() else text

    def typed_here(self, name: str) -> bool:
        """Whether the maker typed it, and under the units that are answered in: the page shows it as it came."""
        return self.typed(name) and self._values[name].units in (None, self.system)

    def but(self, read: Mapping[str, Parsed]) -> Given:
        """The same, but for what was read since."""
        return Given({**self._values, **read}, self.system, self._fields, self.unasked)

    def write(self, si: float, style: str | tuple[str, Style], rounding: Rounding = "nearest") -> Shown:
        """Write ``si`` in the system that the maker has chosen; see :func:`calc.quantity.writing.write`."""
        return write(si, style, self.system, rounding)

    def pick(self, metric: str, imperial: str) -> str:
        """One of two wordings, by the system chosen."""
        return metric if self.system == "metric" else imperial

    def _there(self, name: str) -> Value:
        parsed = self._values.get(name)
        if parsed is None or parsed.value is None:
            raise InputError(name, "missing")
        return parsed.value


@dataclass(frozen=True)
class Table:
    """The common case as a table, worked out by the question itself at build time.

    ``rows`` and ``columns`` are a field and its texts, in either way a pair, metric and imperial, where units differ; ``fixed`` the other
    inputs; ``cell`` makes a cell's text from an answer (its headline by default). ``warm`` is false where a cell takes so long
    that a start must not wait for it.
    """

    caption: str
    rows: tuple[str, tuple[str, ...] | tuple[tuple[str, ...], tuple[str, ...]]]
    columns: tuple[str, tuple[str, ...] | tuple[tuple[str, ...], tuple[str, ...]]]
    fixed: Mapping[str, str | tuple[str, str]] = attribute(default_factory=dict)
    cell: Callable[[Answer], str] = lambda answer: answer.headline.shown
    note: str = ""
    warm: bool = True


@dataclass(frozen=True)
class Rule:
    """A property that every pair of answers must have, for the property-test matrix.

    As ``field`` goes up (a quantity grows; a choice moves along ``order``), the answer's ``value`` never
    moves in the direction ``never`` ('rises' or 'falls'). A refusal counts as ``refusal`` (0 for a speed).
    ``given`` fixes other inputs of the trial; ``span`` narrows the trial's range of a quantity, in its metric unit, to
    what goes with them.
    """

    field: str
    value: str
    never: str
    order: tuple[str, ...] = ()
    given: Mapping[str, str] = attribute(default_factory=dict)
    refusal: float = 0.0
    why: str = ""
    span: tuple[float, float] | None = None


@dataclass(frozen=True)
class Question:
    """One question: its fields, and the function that answers it.

    Parameters
    ----------
    id : url folder and shell name; name : as a maker asks it; moment : 'before the pour', 'at the bench' or 'at the lathe'.
    summary : one line for the home page; lead : one or two lines on the question's page.
    order : place on the home page.
    work : parsed inputs to an :class:`Answer`, or to :data:`Steps` where that takes longer than a keystroke may;
        raises :class:`InputError` for what only it can see.
    words : wording of the error codes that only this question raises; ``field:code`` where one field says a common code in its own way.
    """

    id: str
    name: str
    moment: str
    order: int
    summary: str
    lead: str
    fields: tuple[Field, ...]
    work: Callable[[Given], Answer | Steps]
    table: Table
    rules: tuple[Rule, ...] = ()
    words: Mapping[str, str] = attribute(default_factory=dict)

    def named(self, name: str) -> Field:
        """The field of that name."""
        return self._by_name()[name]

    def answer(self, given: Given) -> Answer:
        """The answer, however many steps its work takes."""
        return at_once(self.steps(given))

    def steps(self, given: Given) -> Steps:
        """The work in steps; work that is done at once has none."""
        found = self.work(given)
        return found if isinstance(found, Answer) else (yield from found)

    def _by_name(self) -> Mapping[str, Field]:
        return {f.name: f for f in self.fields}

    def parse(
        self, inputs: Mapping[str, Typed], units: System, confirmed: Mapping[str, str], *, gaps: bool = False
    ) -> tuple[Given, list[Query]]:
        """All fields in one pass; with ``gaps``, a required one that was left empty is no error.

        Raises
        ------
        InputErrors
            every field that cannot be used, not the first only.
        """
        by_name = self._by_name()
        errors = [InputError("", "unknown-field", given=name, options=", ".join(by_name)) for name in inputs if name not in by_name]
        queries: list[Query] = []
        values: dict[str, Parsed] = {}
        choices: dict[str, str] = {}
        unasked: dict[str, tuple[str, ...]] = {}
        for declared in self.fields:
            typed = inputs.get(declared.name, Typed(""))
            is_typed = bool(typed.text.strip())
            missing = wanting(declared, choices)
            if missing:
                if is_typed:
                    unasked[declared.name] = missing
                continue
            effective = typed if is_typed else Typed(declared.default_text(units), units)
            if not effective.text:
                if declared.required and not gaps:
                    errors.append(declared.missing())
                continue
            try:
                value, query = declared.parse(effective)
            except InputError as error:
                errors.append(error)
                continue
            values[declared.name] = Parsed(value, is_typed, effective.text.strip(), effective.units)
            if isinstance(value, str):
                choices[declared.name] = value
            if query is not None and confirmed.get(declared.name, "").strip() != typed.text.strip():
                queries.append(query)
        if errors:
            raise InputErrors(errors)
        return Given(values, units, by_name, unasked), queries


@cache
def all_questions() -> Mapping[str, Question]:
    """Every question by id, in the order of the home page."""
    found: list[Question] = []
    for module in pkgutil.iter_modules(__path__):
        if not module.name.startswith("_"):  # a question's own parts, not a question
            found.append(importlib.import_module(f"{__name__}.{module.name}").QUESTION)
    return {question.id: question for question in sorted(found, key=lambda question: question.order)}


def taking(question: str, field: str) -> Quantity:
    """The field of another question that a figure is to be handed to, for its limits; asked for while answering, when all questions are there.

    Raises
    ------
    LookupError
        when it is no field for one number with a unit.
    """
    found = all_questions()[question].named(field)
    if not isinstance(found, Quantity):
        raise LookupError(f"'{field}' of {question} takes no quantity")
    return found


def takes(question: str, field: str, si: float) -> bool:
    """Whether another question's field takes a figure, in SI.

    Examples
    --------
    >>> takes("when-can-i", "room", 293.15), takes("when-can-i", "room", 320.0)
    (True, False)
    """
    low, high = taking(question, field).limits_si
    return low <= si <= high


def defaults_used(question: Question, given: Given) -> list[dict[str, Any]]:
    """The defaults that an answer stands on, for its 'assumed' part."""
    used = []
    for declared in question.fields:
        parsed = given._values.get(declared.name)
        if parsed is None or parsed.typed or parsed.value is None or not declared.basis:
            continue
        unit = getattr(declared, "unit", None)
        text = declared.label_of(cast(str, parsed.value)) if isinstance(declared, Choice) else parsed.text
        if unit is not None and text.replace(".", "").replace("/", "").replace(" ", "").isdigit():
            text = f"{text} {unit(given.system)}".strip()
        used.append({"field": declared.name, "label": declared.label, "text": text, "basis": declared.basis})
    return used
