"""Small pieces of sentences that every floor puts together: lists of names, and a text run on inside another."""

from __future__ import annotations

from collections.abc import Sequence


def either(words: Sequence[str]) -> str:
    """Names to choose from, in one breath.

    >>> either(["mm"]), either(["mm", "cm", "in"])
    ('mm', 'mm, cm or in')
    """
    return _listed(words, "or")


def both(words: Sequence[str]) -> str:
    """Names that all count, in one breath.

    >>> both(["A 30 g", "B 14 g"])
    'A 30 g and B 14 g'
    """
    return _listed(words, "and")


def inside(text: str) -> str:
    """A text as it stands inside a sentence: its first letter small, but not one that is a name by itself.

    >>> inside("Lathe weighs"), inside("A in one kit")
    ('lathe weighs', 'A in one kit')
    """
    return text if text[1:2] == " " else text[:1].lower() + text[1:]


def _listed(words: Sequence[str], last: str) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {last} {words[-1]}"
