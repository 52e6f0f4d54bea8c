"""An answer as plain text, for copying and for the shell."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from calc.questions import Given, Question

Reply = Mapping[str, Any]


def plain(question: Question, given: Given, reply: Reply) -> str:
    """The answer in lines of text: what to do first, then what it rests on."""
    return "\n".join([question.name, *_told(reply), *_under_it(reply), *_behind(question, given, reply)])


def _told(reply: Reply) -> Iterator[str]:
    """The headline, the lines below it, and how sure it is."""
    headline = reply["headline"]
    yield f"{headline['label']}: {headline['text']} {headline['unit']}".rstrip()
    yield from (f"{number}. {step}" for number, step in enumerate(headline["steps"], 1))
    yield headline["say"]
    for line in reply["lines"]:
        yield f"- {line['label']}: {line['text']} {line['unit']}".rstrip() + (f" ({line['note']})" if line["note"] else "")
    if reply["band"]:
        yield reply["band"]["text"]


def _under_it(reply: Reply) -> Iterator[str]:
    """Limits, tables, drawings in words, changes, cautions, and where it goes on."""
    if reply["limits"]:
        yield "What limits it:"
    for limit in reply["limits"]:
        yield f"- {limit['name']}: {limit['text']} {limit['unit']}".rstrip() + (" <- this one rules" if limit["rules"] else "") + f"; {limit['why']}"
    for grid in reply["grids"]:
        yield grid["title"]
        yield from (" | ".join(row) for row in (grid["head"], *grid["rows"]))
    yield from (f"{drawing['title']}: {drawing['says']}" for drawing in reply["drawings"])
    if reply["changes"]:
        yield "What would change it most:"
    yield from (f"- {change['do']}: {change['then']}" for change in reply["changes"])
    if reply["cautions"]:
        yield "Cautions:"
    yield from (f"- {caution['text']}" for caution in reply["cautions"])
    yield from (f"Goes on to: {carry['name']} ({carry['says']})" for carry in reply["carries"])


def _behind(question: Question, given: Given, reply: Reply) -> Iterator[str]:
    """What was typed, what was assumed, and the sources."""
    typed = [(field.label, given.text(field.name)) for field in question.fields if given.typed(field.name)]
    if typed:
        yield "You gave: " + "; ".join(f"{label}: {text}" for label, text in typed)
    if reply["assumed"]:
        yield "Assumed: " + "; ".join(f"{entry['label']}: {entry['text']} ({entry['basis']})" for entry in reply["assumed"])
    yield "Sources: " + "; ".join(source["title"] for source in reply["sources"])
