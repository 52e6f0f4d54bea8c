"""The one door: JSON in, JSON out. The page's worker, the shell and the tests all come through here.

Calls: ``catalogue``, ``describe``, ``answer``, ``begin``, ``go_on``, ``convert``, ``table``, ``run`` and ``safety``.
"""

from __future__ import annotations

import json
import math
import sys
import traceback
from collections.abc import Callable, Generator, Mapping
from typing import Any, cast

from calc import errors, runs, sources
from calc.answers import Answer, Carry, bar_lengths
from calc.drawing import Drawing
from calc.errors import InputError, InputErrors, RequestError
from calc.fields import Choice, Field, Quantity, Query, Typed
from calc.quantity.kinds import SYSTEMS, System
from calc.questions import Given, Question, all_questions, defaults_used
from calc.words import inside

Json = dict[str, Any]


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
    steps = _answering(id, inputs, units, confirmed)
    while True:
        try:
            next(steps)
        except StopIteration as done:
            return cast(Json, done.value)


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
    return {"id": id, "ended": False, "errors": [_error(question, error, typed, system) for error in wrong]}


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


# ---------------------------------------------------------------- helpers

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
            return _unanswered(question, system, queries=[_query(question, query) for query in queries])
        found = yield from question.steps(given)
    except InputErrors as several:
        return _unanswered(question, system, errors=[_error(question, error, typed, system) for error in several.errors])
    except InputError as error:
        return _unanswered(question, system, errors=[_error(question, error, typed, system)])
    return _answered(question, given, found)


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


def _error(question: Question, error: InputError, typed: Mapping[str, Typed], system: System) -> Json:
    words = question.words.get(f"{error.name}:{error.code}") or question.words.get(error.code) or errors.WORDS[error.code]
    known = {field.name: field for field in question.fields}
    details: dict[str, str] = {}
    if error.name in known:
        field = known[error.name]
        label = field.label
        details = {
            "label": label,
            "label_lower": inside(label),
            "would_do": field.would_do(system),
            "given": typed[error.name].text.strip() if error.name in typed else "",
        }
    details |= error.details
    return {
        "field": error.name,
        "code": error.code,
        "message": words.format(**details),
        "given": details.get("given", ""),
        "choices": [{"label": label, "value": value} for label, value in error.choices],
    }


def _query(question: Question, query: Query) -> Json:
    label = question.named(query.name).label
    return {
        "field": query.name,
        "message": errors.QUERY.format(label=label, given=query.given, meaning=query.meaning),
        "choices": [{"label": text, "value": value} for text, value in query.choices],
        "keep": query.given,
    }


_PARTS = ("lines", "limits", "changes", "cautions", "working", "grids", "drawings", "carries")


def _unanswered(question: Question, system: System, errors: list[Json] | None = None, queries: list[Json] | None = None) -> Json:
    reply: Json = {"id": question.id, "name": question.name, "units": system, "errors": errors or [], "queries": queries or []}
    reply |= {part: [] for part in _PARTS} | {"headline": None, "band": None, "assumed": [], "sources": [], "values": {}, "extra": {}, "unasked": []}
    reply["text"] = "\n".join(entry["message"] for entry in [*reply["errors"], *reply["queries"]])
    return reply


def _answered(question: Question, given: Given, found: Answer) -> Json:
    assumed = defaults_used(question, given)
    behind = [sources.of_caution(question.id, caution.id) for caution in found.cautions]
    keys = dict.fromkeys([*found.sources, *(entry["basis"] for entry in assumed), *(one.key for one in behind)])
    reply: Json = {"id": question.id, "name": question.name, "units": given.system, "errors": [], "queries": []}
    reply |= {part: [_part(entry) for entry in getattr(found, part)] for part in _PARTS}
    reply |= {
        "limits": [_part(limit) | {"bar": bar} for limit, bar in zip(found.limits, bar_lengths(found.limits), strict=True)],
        "cautions": [_part(caution) | {"source": one.title} for caution, one in zip(found.cautions, behind, strict=True)],
        "headline": _part(found.headline) | dict(zip(("first", "rest"), found.headline.parts, strict=True)),
        "band": _part(found.band) if found.band else None,
        "assumed": [entry | {"basis": sources.source(entry["basis"]).title} for entry in assumed],
        "sources": [_part(sources.source(key)) for key in keys],
        "values": {name: _part(figure) for name, figure in found.values.items()},
        "extra": found.extra,
        "unasked": [
            {"field": name, "label": question.named(name).label, "wanting": list(missing)} for name, missing in given.unasked.items()
        ],
    }
    for name, figure in found.values.items():
        if figure.si is not None and not math.isfinite(figure.si):
            raise ArithmeticError(f"{question.id}: {name} is {figure.si}")
    reply["text"] = _plain(question, given, reply)
    return reply


def _part(part: Any) -> Json:
    """One part of an answer as JSON: its fields are texts, numbers, tuples of these, and the marks of a drawing."""
    if isinstance(part, Drawing):
        return vars(part) | {"marks": [dict(vars(mark)) for mark in part.marks]}
    if isinstance(part, Carry):
        return _carried(part)
    return dict(vars(part))


def _carried(carry: Carry) -> Json:
    """A carry with the name of the question it leads to, and in words what it takes there; a choice is told only where it is all there is."""
    question = _question(carry.to)
    taken = [(question.named(name), text) for name, text in carry.inputs.items()]
    typed = [f"{inside(field.label)}: {text}" for field, text in taken if not isinstance(field, Choice)]
    chosen = [f"{inside(field.label)}: {field.label_of(text)}" for field, text in taken if isinstance(field, Choice)]
    says = "; ".join(typed or chosen)
    return {"to": carry.to, "name": question.name, "inputs": dict(carry.inputs), "leaves": list(carry.leaves), "says": says}


def _plain(question: Question, given: Given, reply: Json) -> str:
    """The answer as plain text, for copying and for the shell."""
    headline = reply["headline"]
    out = [question.name, f"{headline['label']}: {headline['text']} {headline['unit']}".rstrip()]
    out += [f"{number}. {step}" for number, step in enumerate(headline["steps"], 1)]
    out.append(headline["say"])
    out += [f"- {line['label']}: {line['text']} {line['unit']}".rstrip() + (f" ({line['note']})" if line["note"] else "") for line in reply["lines"]]
    if reply["band"]:
        out.append(reply["band"]["text"])
    if reply["limits"]:
        out.append("What limits it:")
        out += [
            f"- {limit['name']}: {limit['text']} {limit['unit']}".rstrip() + (" <- this one rules" if limit["rules"] else "") + f"; {limit['why']}"
            for limit in reply["limits"]
        ]
    for grid in reply["grids"]:
        out.append(grid["title"])
        out += [" | ".join(row) for row in (grid["head"], *grid["rows"])]
    out += [f"{drawing['title']}: {drawing['says']}" for drawing in reply["drawings"]]
    if reply["changes"]:
        out.append("What would change it most:")
        out += [f"- {change['do']}: {change['then']}" for change in reply["changes"]]
    if reply["cautions"]:
        out.append("Cautions:")
        out += [f"- {caution['text']}" for caution in reply["cautions"]]
    out += [f"Goes on to: {carry['name']} ({carry['says']})" for carry in reply["carries"]]
    typed = [(field.label, given.text(field.name)) for field in question.fields if given.typed(field.name)]
    if typed:
        out.append("You gave: " + "; ".join(f"{label}: {text}" for label, text in typed))
    if reply["assumed"]:
        out.append("Assumed: " + "; ".join(f"{entry['label']}: {entry['text']} ({entry['basis']})" for entry in reply["assumed"]))
    out.append("Sources: " + "; ".join(source["title"] for source in reply["sources"]))
    return "\n".join(out)
