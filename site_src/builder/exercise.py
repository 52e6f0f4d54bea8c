"""Use all of `calc` inside Pyodide, then print which modules outside it that took, as JSON.

The engine carries only the modules listed in `vendor/modules.txt`. This file finds out what belongs there, and a test
runs it again inside the finished engine: a module that is needed and not listed fails there, by name.
"""

from __future__ import annotations

import json
import pkgutil
import random
import sys
import traceback
from typing import Any

import calc
from calc import desk


def ask(call: str, **arguments: Any) -> Any:
    """One call through the door; a bug behind it stops us."""
    reply = json.loads(desk.handle(json.dumps({"call": call, "args": arguments})))
    if not reply["ok"] and reply["error"]["kind"] == "bug":
        raise SystemExit(f"{call} {arguments}: {reply['error']['message']}")
    return reply.get("result")


def exercise() -> int:
    """Every module, every question in both unit systems, every run, every way to be wrong; returns the number of answers."""
    for module in pkgutil.walk_packages(calc.__path__, "calc."):
        if not module.name.endswith("__main__"):
            __import__(module.name)
    desk.warm()
    answers = 0
    for question in ask("catalogue"):
        fields = ask("describe", id=question["id"])["fields"]
        for units in ("metric", "imperial"):
            ask("table", id=question["id"], units=units)
            given = {field["name"]: field["default"][units] for field in fields if isinstance(field.get("default"), dict)}
            for inputs in ({}, given, {field["name"]: "1 1/2" for field in fields}, {field["name"]: "?" for field in fields}):
                ask("answer", id=question["id"], inputs=inputs, units=units)
                ask("convert", id=question["id"], inputs=inputs, units=units)
                answers += 1
    for run in desk.runs.all_runs():
        ask("run", id=run, inputs={}, units="metric", events=[], now=0)
    desk.handle("no JSON")
    try:
        raise ValueError("for the way a bug is shown")
    except ValueError:
        traceback.format_exc()
    random.seed()
    return answers


def used() -> list[str]:
    """Names of the modules loaded by now that come from files and are not ours."""
    found = []
    for name, module in sys.modules.items():
        file = getattr(module, "__file__", None) or ""
        if file.startswith(("/lib/python", "/packages/")) and name.split(".")[0] not in ("calc", "bridge"):
            found.append(name)
    return sorted(found)


if __name__ == "__main__":
    print(json.dumps({"answers": exercise(), "modules": used()}))
