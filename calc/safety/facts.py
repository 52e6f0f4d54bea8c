"""The facts that the safety pages rest on, each with its source: ``data/safety_facts.toml``."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from calc import sources


@dataclass(frozen=True)
class Fact:
    """One fact in a sentence, where it comes from, and whether the document was read."""

    id: str
    text: str
    source: str
    seen: str

    @property
    def cited(self) -> str:
        """The title of its source."""
        return sources.source(self.source).title

    def as_json(self) -> dict[str, str]:
        """For a page."""
        return {"id": self.id, "text": self.text, "source": self.cited, "seen": self.seen}


@cache
def all_facts() -> Mapping[str, Fact]:
    """Every fact by its number; a fact with no known source does not load."""
    found = {entry["id"]: Fact(**entry) for entry in sources.document("safety_facts")["fact"]}
    for fact in found.values():
        sources.source(fact.source)
    return found


def facts(ids: Iterable[str]) -> tuple[Fact, ...]:
    """The facts with these numbers, in this order.

    Raises
    ------
    LookupError
        when there is no such fact: a mistake in our data.
    """
    known = all_facts()
    missing = [id for id in ids if id not in known]
    if missing:
        raise LookupError(f"no fact {', '.join(missing)} in data/safety_facts.toml")
    return tuple(known[id] for id in ids)
