"""What `calc` says in this Python: the page has to say the same."""

from __future__ import annotations

import json
from typing import Any

from calc import desk


def ask(call: str, **arguments: Any) -> Any:
    """One call through the same door as the page uses."""
    reply = json.loads(desk.handle(json.dumps({"call": call, "args": arguments})))
    assert reply["ok"], reply
    return reply["result"]


def answer(question: str, units: str = "metric", confirmed: dict[str, str] | None = None, **inputs: str) -> Any:
    """The whole answer to a question."""
    return ask("answer", id=question, inputs=inputs, units=units, confirmed=confirmed or {})


def figure(question: str, units: str = "metric", **inputs: str) -> str:
    """The one big figure with its unit, as the page reads it out."""
    headline = answer(question, units, **inputs)["headline"]
    return f"{headline['text']} {headline['unit']}".strip()
