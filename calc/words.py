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


#: Odds as they are said, and the least that each stands for.
_ODDS = (
    (0.99, "99 in 100"), (0.95, "19 in 20"), (0.90, "9 in 10"), (0.80, "8 in 10"), (0.75, "3 in 4"), (0.70, "7 in 10"), (2 / 3, "2 in 3"),
    (0.60, "6 in 10"), (0.50, "1 in 2"), (0.40, "4 in 10"), (1 / 3, "1 in 3"), (0.25, "1 in 4"), (0.20, "1 in 5"), (0.10, "1 in 10"),
    (0.05, "1 in 20"), (0.01, "1 in 100"),
)  # fmt: skip


def odds(share: float) -> str:
    """Odds in words, never better than they are.

    >>> odds(0.784), odds(0.95), odds(0.003)
    ('3 in 4', '19 in 20', 'under 1 in 100')
    """
    return next((words for least, words in _ODDS if share >= least - 1e-9), "under 1 in 100")


_RISKS = (
    (0.01, "fewer than 1 in 100"), (0.02, "about 1 in 50"), (0.03, "about 1 in 30"), (0.05, "about 1 in 20"), (1 / 15, "about 1 in 15"),
    (0.10, "about 1 in 10"), (0.125, "about 1 in 8"), (1 / 6, "about 1 in 6"), (0.20, "about 1 in 5"), (0.25, "about 1 in 4"),
    (1 / 3, "about 1 in 3"), (0.40, "about 4 in 10"), (0.50, "about half"), (0.60, "about 6 in 10"), (0.70, "about 7 in 10"),
    (0.80, "about 8 in 10"), (0.90, "about 9 in 10"),
)  # fmt: skip


def risk(share: float) -> str:
    """A risk in words, never less than it is.

    >>> risk(0.004), risk(0.026), risk(0.3), risk(0.93)
    ('fewer than 1 in 100', 'about 1 in 30', 'about 1 in 3', 'more than 9 in 10')
    """
    return next((words for most, words in _RISKS if share <= most + 1e-9), "more than 9 in 10")


def _listed(words: Sequence[str], last: str) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {last} {words[-1]}"
