"""What can be read with no script and no arithmetic: the lists, the cards, the respirator tables, with their sources.

The pages are rendered from this at build time; the live lists come from the same data.
"""

from __future__ import annotations

from collections.abc import Mapping
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
        ``standing`` and ``issued``; ``checklists`` with their items; ``cards``; ``respirators``. Fact numbers are
        replaced by the facts themselves.

    Raises
    ------
    LookupError
        when a row names a fact or a gate that is not there.
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
                "after": one.after,
                "carry_hours": one.carry_hours,
                "question": one.question,
                "items": [_item(item) for item in one.items],
            }
            for one in all_checklists().values()
        },
        "no_number": sources.document("cards")["no_number"],
        "cards": [_with_facts({"lead": "", "then": "", **card}) for card in sources.document("cards")["card"]],
        "respirators": {key: _deep(entry) for key, entry in sources.document("respirators").items()},
    }


def _item(item: Item) -> dict[str, Any]:
    gate = gate_words(item.gate) if item.gate else None
    limit = "" if gate is None else f"{item.gate}: {gate['name'].lower()}; limit from {gate['from']}"
    return {"number": item.number, "text": item.text, "why": item.why, "gate": limit, "card": item.card, "fed": item.fed, "facts": _cited(item.facts)}


def _with_facts(row: Mapping[str, Any]) -> dict[str, Any]:
    return {**row, "facts": _cited(row["facts"])} if "facts" in row else dict(row)


def _deep(entry: Any) -> Any:
    if isinstance(entry, list):
        return [_with_facts(row) for row in entry]
    return _with_facts(entry)


def _cited(ids: Any) -> list[dict[str, str]]:
    return [fact.as_json() for fact in facts(ids)]
