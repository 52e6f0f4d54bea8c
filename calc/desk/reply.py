"""What goes out of the door: an answer, an error, a suspected slip, each as JSON."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from calc import sources
from calc.answers import Answer, Carry, bar_lengths
from calc.desk.plain import plain
from calc.drawing import Drawing
from calc.errors import QUERY, WORDS, InputError
from calc.fields import Choice, Query, Typed
from calc.quantity.kinds import System
from calc.questions import Given, Question, all_questions, defaults_used
from calc.words import inside

Json = dict[str, Any]


def as_error(question: Question, error: InputError, typed: Mapping[str, Typed], system: System) -> Json:
    """What is wrong with a field, in the question's own words where it has some."""
    words = question.words.get(f"{error.name}:{error.code}") or question.words.get(error.code) or WORDS[error.code]
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


def as_query(question: Question, query: Query) -> Json:
    """A suspected slip, and what it may have been meant for."""
    label = question.named(query.name).label
    return {
        "field": query.name,
        "message": QUERY.format(label=label, given=query.given, meaning=query.meaning),
        "choices": [{"label": text, "value": value} for text, value in query.choices],
        "keep": query.given,
    }


_PARTS = ("lines", "limits", "changes", "cautions", "working", "grids", "drawings", "carries")


def unanswered(question: Question, system: System, errors: list[Json] | None = None, queries: list[Json] | None = None) -> Json:
    """The reply that has no answer: all parts are there, and empty."""
    reply: Json = {"id": question.id, "name": question.name, "units": system, "errors": errors or [], "queries": queries or []}
    reply |= {part: [] for part in _PARTS} | {"headline": None, "band": None, "assumed": [], "sources": [], "values": {}, "extra": {}, "unasked": []}
    reply["text"] = "\n".join(entry["message"] for entry in [*reply["errors"], *reply["queries"]])
    return reply


def answered(question: Question, given: Given, found: Answer) -> Json:
    """The reply with its answer, what was assumed for it, and where everything comes from."""
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
    reply["text"] = plain(question, given, reply)
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
    question = all_questions()[carry.to]
    taken = [(question.named(name), text) for name, text in carry.inputs.items()]
    typed = [f"{inside(field.label)}: {text}" for field, text in taken if not isinstance(field, Choice)]
    chosen = [f"{inside(field.label)}: {field.label_of(text)}" for field, text in taken if isinstance(field, Choice)]
    says = "; ".join(typed or chosen)
    return {"to": carry.to, "name": question.name, "inputs": dict(carry.inputs), "leaves": list(carry.leaves), "says": says}
