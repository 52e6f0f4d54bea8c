"""The same door from a shell: ``list``, ``describe ID``, and ``ID name=value ...``."""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Sequence

from calc import desk
from calc.desk.reply import Json
from calc.errors import RequestError
from calc.words import both


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python3 -m calc",
        description="Ask a question from the shell. 'list' names the questions; 'describe ID' tells what one asks.",
    )
    parser.add_argument("what", help="list, describe, or a question's id")
    parser.add_argument("rest", nargs="*", metavar="name=value", help="the inputs; for 'describe', the question's id")
    parser.add_argument("--units", choices=("metric", "imperial"), default="metric", help="the unit of a bare number, and of the answer")
    parser.add_argument("--yes", action="store_true", help="keep figures that look like a slip")
    parser.add_argument("--json", action="store_true", help="print the whole answer, with values in SI beside those shown")
    return parser


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code (2 for bad input, with the error text on stderr)."""
    parser = _parser()
    given = parser.parse_intermixed_args(arguments)
    try:
        if given.what == "list":
            _print(desk.catalogue(), given.json, "\n".join(f"{q['id']:<20} {q['name']} {q['summary']}" for q in desk.catalogue()))
        elif given.what == "describe":
            if len(given.rest) != 1:
                parser.error("describe takes one question's id; 'list' names them")
            description = desk.describe(given.rest[0])
            _print(description, given.json, _described(description, given.units))
        else:
            return _answer(parser, given)
    except RequestError as error:
        print(error, file=sys.stderr)
        return 2
    return 0


def _answer(parser: argparse.ArgumentParser, given: argparse.Namespace) -> int:
    inputs = {}
    for pair in given.rest:
        name, equals, value = pair.partition("=")
        if not equals:
            parser.error(f"'{pair}' is not name=value; 'describe {given.what}' lists the names")
        inputs[name.replace("-", "_")] = value
    reply = desk.answer(given.what, inputs, given.units, inputs if given.yes else {})
    if not reply["headline"]:
        if given.json:
            _print(reply, True, "")
        for entry in [*reply["errors"], *reply["queries"]]:
            choices = [choice["value"] for choice in entry["choices"]]
            hint = f" Perhaps {' or '.join(choices)}?" if choices else ""
            print(f"{entry['message']}{hint}{'' if entry in reply['errors'] else ' (--yes keeps it.)'}", file=sys.stderr)
        return 2
    _print(reply, given.json, reply["text"])
    for entry in reply["unasked"]:
        print(f"Not used: {entry['field']} (asked when {both(entry['wanting'])}).", file=sys.stderr)
    return 0


def _described(description: Json, units: str) -> str:
    out = [f"{description['name']} {description['lead']}", ""]
    for field in description["fields"]:
        out.append(f"{field['name']}: {field['label']}" + (f" [{field['unit'][units]}]" if field.get("unit", {}).get(units) else ""))
        if field.get("options"):
            out += [f"    {option['value']}: {option['label']}" for option in field["options"]]
        notes = [field["hint"][units]]
        if field.get("limits"):
            notes.append(f"limits {field['limits'][units]}")
        if field["default"]:
            notes.append(f"default {field['default'][units]} ({field['basis_text']})")
        if field["required"]:
            notes.append("required")
        notes += [f"asked when {name} is {' or '.join(values)}" for name, values in field["when"]]
        out.append("    " + "; ".join(note for note in notes if note))
    return "\n".join(out)


def _print(data: object, as_json: bool, text: str) -> None:
    print(json.dumps(data, ensure_ascii=False, indent=2) if as_json else text)


if __name__ == "__main__":
    try:
        code = main()
        sys.stdout.flush()
    except BrokenPipeError:  # whoever reads has read enough: 'head', a pager that was left
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        code = 0
    sys.exit(code)
