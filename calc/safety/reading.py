"""What can be read with no script and no arithmetic: the lists, the cards, the respirator tables, the hazards, with their sources.

The pages are rendered from this at build time; the live lists come from the same data.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from calc import sources
from calc.safety.checklists import Item, all_checklists
from calc.safety.facts import facts
from calc.safety.wording import gate_words


def everything() -> dict[str, Any]:
    """All of it, for the pages.

    Returns
    -------
    dict
        ``standing`` and ``issued``; ``checklists`` with their items; ``cards``; ``respirators``; ``hazards`` by id and
        their ``index``. Fact numbers are replaced by the facts themselves, codes of signs by the signs.

    Raises
    ------
    LookupError
        when a row names a fact, a gate, a card or a sign that is not there.
    """
    lists = sources.document("checklists")
    return {
        "standing": lists["standing"]["text"],
        "issued": lists["issued"],
        "types": lists["types"],
        "gloves": lists["gloves"],
        "words": lists["words"],
        "checklists": {
            one.id: {
                "id": one.id,
                "name": one.name,
                "type": one.type,
                "gloves": one.gloves,
                "gloves_more": one.gloves_more or lists["gloves"][f"{one.gloves}_more"],
                "lead": one.lead,
                "next": one.next,
                "after": " ".join(dict.fromkeys(f"{one.after} {one.reads}".split())),
                "carry_hours": one.carry_hours,
                "rounds": one.rounds,
                "question": one.question,
                "items": [_item(item) for item in one.items],
            }
            for one in all_checklists().values()
        },
        "no_number": sources.document("cards")["no_number"],
        "cards": [_with_facts({"lead": "", "then": "", **card}) for card in sources.document("cards")["card"]],
        "respirators": {key: _deep(entry) for key, entry in sources.document("respirators").items()},
        "index": _hazard({"cards": [], **sources.document("hazards")["index"]}),
        "hazards": {row["id"]: _hazard(row) for row in sources.document("hazards")["hazard"]},
    }


@cache
def signs() -> Mapping[str, Mapping[str, str]]:
    """The registered signs by code, from ``data/signs.csv``: ``code``, ``shape`` and ``meaning``."""
    return {row["code"]: {key: row[key] for key in ("code", "shape", "meaning")} for row in sources.table("signs")}


def _item(item: Item) -> dict[str, Any]:
    gate = gate_words(item.gate) if item.gate else None
    limit = "" if gate is None else f"{item.gate}: {gate['name'].lower()}; limit from {gate['from']}"
    return {"number": item.number, "text": item.text, "why": item.why, "gate": limit, "card": item.card, "fed": item.fed, "facts": _cited(item.facts)}


def _hazard(row: Mapping[str, Any]) -> dict[str, Any]:
    cards = {card["id"]: card for card in sources.document("cards")["card"]}
    if unknown := [id for id in row["cards"] if id not in cards]:
        raise LookupError(f"no card {', '.join(unknown)} in data/cards.toml")
    return {
        "facts": _cited(row["facts"]),
        "cards": [{key: cards[id][key] for key in ("id", "code", "name")} for id in row["cards"]],
        "signs": [{**signs()[code], "when": when} for code, when in row["signs"]],
    }


def _with_facts(row: Mapping[str, Any]) -> dict[str, Any]:
    return {**row, "facts": _cited(row["facts"])} if "facts" in row else dict(row)


def _deep(entry: Any) -> Any:
    if isinstance(entry, list):
        return [_with_facts(row) for row in entry]
    return _with_facts(entry)


def _cited(ids: Any) -> list[dict[str, str]]:
    return [fact.as_json() for fact in facts(ids)]
