"""The one door: JSON in, JSON out. The page's worker, the shell and the tests all come through here.

Calls: ``catalogue``, ``describe``, ``answer``, ``begin``, ``go_on``, ``convert``, ``table``, ``run`` and ``safety``.
"""

from __future__ import annotations

import json
import sys
import traceback
from collections.abc import Callable, Generator, Mapping
from typing import Any, cast

from calc import runs, sources
from calc.desk.reply import Json, answered, as_error, as_query, unanswered
from calc.errors import InputError, InputErrors, RequestError
from calc.fields import Field, Quantity, Typed
from calc.quantity.kinds import SYSTEMS, System
from calc.questions import Question, all_questions
from calc.steps import at_once


def catalogue() -> list[Json]:
    """The questions, in the order of the home page."""
    return [
        {"id": q.id, "name": q.name, "summary": q.summary, "moment": q.moment, "order": q.order} for q in all_questions().values()
    ]


def describe(id: str) -> Json:
    """One question's declaration."""
    question = _question(id)
    return {
        "id": question.id,
        "name": question.name,
        "moment": question.moment,
        "summary": question.summary,
        "lead": question.lead,
        "fields": [
            field.as_json() | {"basis_text": sources.source(field.basis).title if field.basis else ""} for field in question.fields
        ],
    }


def answer(
    id: str, inputs: Mapping[str, Any] | None = None, units: str = "metric", confirmed: Mapping[str, str] | None = None
) -> Json:
    """Answer one question.

    Parameters
    ----------
    id : the question.
    inputs : field -> text, or field -> ``{"typed": text, "units": system}`` with the system it was typed under.
    units : the system to answer in.
    confirmed : field -> text of suspected slips that the maker has said yes to.

    Returns
    -------
    dict
        all parts of an answer; with ``errors`` or ``queries`` there is no headline. ``unasked`` names inputs that were
        not used because of what was chosen elsewhere: the page keeps such texts hidden, the shell tells of them.
    """
    return at_once(_answering(id, inputs, units, confirmed))


def begin(
    id: str, inputs: Mapping[str, Any] | None = None, units: str = "metric", confirmed: Mapping[str, str] | None = None
) -> Json:
    """As :func:`answer`, a step at a time: ``{"pending": share done}`` until :func:`go_on` has the answer. A new start ends the one before."""
    _desk["steps"] = _answering(id, inputs, units, confirmed)
    return go_on()


def go_on() -> Json:
    """The next step of what :func:`begin` began."""
    if "steps" not in _desk:
        raise RequestError("nothing was begun")
    try:
        return {"pending": next(_desk["steps"])}
    except StopIteration as done:
        del _desk["steps"]
        return cast(Json, done.value)


def convert(id: str, inputs: Mapping[str, Any], units: str) -> dict[str, str]:
    """What each field shows under the other unit system; a text comes back as typed under its own."""
    question = _question(id)
    system = _system(units)
    known = {field.name: field for field in question.fields}
    return {name: known[name].convert(typed, system) for name, typed in _typed(inputs, system).items() if name in known}


def table(id: str, units: str = "metric") -> Json:
    """The question's common case, worked out cell by cell."""
    question = _question(id)
    declared = question.table
    system = _system(units)
    row_field, column_field = declared.rows[0], declared.columns[0]
    texts, column_texts = (_of_system(told[1], system) for told in (declared.rows, declared.columns))
    fixed = {name: text if isinstance(text, str) else text[system == "imperial"] for name, text in declared.fixed.items()}
    column = question.named(column_field)
    label_of = getattr(column, "label_of", str)
    rows = []
    for row_text in texts:
        cells = []
        for column_text in column_texts:
            inputs = {name: Typed(text, system) for name, text in {**fixed, row_field: row_text, column_field: column_text}.items()}
            given, _ = question.parse(inputs, system, {row_field: row_text, **fixed})
            cells.append(declared.cell(question.answer(given)))
        rows.append([_with_unit(question.named(row_field), row_text, system), *cells])
    return {
        "caption": declared.caption,
        "head": [question.named(row_field).label, *(_with_unit(column, label_of(text), system) for text in column_texts)],
        "rows": rows,
        "note": declared.note,
    }


def _of_system(texts: tuple[str, ...] | tuple[tuple[str, ...], tuple[str, ...]], system: System) -> tuple[str, ...]:
    """The texts of a row or column, of a pair those of the system."""
    return texts[system == "imperial"] if isinstance(texts[0], tuple) else texts


def _with_unit(field: Field, text: str, system: System) -> str:
    """A head of the table with the unit that it has."""
    return f"{text} {field.unit(system)}".strip() if isinstance(field, Quantity) and text[-1:].isnumeric() else text


def run(id: str, inputs: Mapping[str, Any], units: str, events: list[Json], now: float) -> Json:
    """The screen of a step-by-step run (a mixing run, a checklist) after its events so far.

    ``inputs`` are those of the question that the run belongs to; ``now`` is the page's clock, epoch seconds.
    """
    known = runs.all_runs()
    if id not in known:
        raise RequestError(f"there is no run '{id}'; there are {', '.join(known)}")
    declared = known[id]
    question = _question(declared.question)
    system = _system(units)
    typed = _typed({**inputs, **declared.under}, system)
    try:
        confirmed = {name: text.text for name, text in typed.items()}
        given, _ = question.parse(typed, system, confirmed, gaps=declared.gaps)
        return declared.screen(given, events, now)
    except InputErrors as several:
        wrong = several.errors
    except InputError as error:
        wrong = (error,)
    return {"id": id, "ended": False, "errors": [as_error(question, error, typed, system) for error in wrong]}


def safety() -> Json:
    """The checklists, emergency cards and respirator tables as they are read with no script."""
    from calc.safety import reading

    return reading.everything()


def warm() -> None:
    """Load everything that is read from files, so that a memory snapshot holds it."""
    for id, question in all_questions().items():
        describe(id)
        if question.table.warm:
            table(id)
    runs.all_runs()


_CALLS: Mapping[str, Callable[..., Any]] = {
    "catalogue": catalogue,
    "describe": describe,
    "answer": answer,
    "begin": begin,
    "go_on": go_on,
    "convert": convert,
    "table": table,
    "run": run,
    "safety": safety,
}


def handle(text: str) -> str:
    """One request as JSON text, one reply as JSON text; never raises."""
    try:
        request = json.loads(text)
        call = _CALLS.get(request["call"])
        if call is None:
            raise RequestError(f"there is no call '{request['call']}'; there are {', '.join(_CALLS)}")
        return json.dumps({"ok": True, "result": call(**request.get("args", {}))}, ensure_ascii=False, allow_nan=False)
    except RequestError as error:
        reply = {"kind": "request", "message": str(error)}
    except Exception as error:  # the door's last resort: a bug is reported as one, never as bad input
        traceback.print_exc(file=sys.stderr)
        reply = {"kind": "bug", "message": f"{type(error).__name__}: {error}"}
    return json.dumps({"ok": False, "error": reply}, ensure_ascii=False)


#: The work that was begun and is not done, as "steps"; one at a time.
_desk: dict[str, Generator[float, None, Json]] = {}


def _answering(
    id: str, inputs: Mapping[str, Any] | None, units: str, confirmed: Mapping[str, str] | None
) -> Generator[float, None, Json]:
    question = _question(id)
    system = _system(units)
    typed = _typed(inputs or {}, system)
    try:
        given, queries = question.parse(typed, system, confirmed or {})
        if queries:
            return unanswered(question, system, queries=[as_query(question, query) for query in queries])
        found = yield from question.steps(given)
    except InputErrors as several:
        return unanswered(question, system, errors=[as_error(question, error, typed, system) for error in several.errors])
    except InputError as error:
        return unanswered(question, system, errors=[as_error(question, error, typed, system)])
    return answered(question, given, found)


def _question(id: str) -> Question:
    questions = all_questions()
    if id not in questions:
        raise RequestError(f"there is no question '{id}'; there are {', '.join(questions)}")
    return questions[id]


def _system(units: str) -> System:
    if units not in SYSTEMS:
        raise RequestError(f"units are 'metric' or 'imperial', not '{units}'")
    return units


def _typed(inputs: Mapping[str, Any], system: System) -> dict[str, Typed]:
    return {
        name: Typed(value["typed"], _system(value["units"])) if isinstance(value, Mapping) else Typed(str(value), system)
        for name, value in inputs.items()
    }
