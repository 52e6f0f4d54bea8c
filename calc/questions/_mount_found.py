"""What 'Will the mount hold?' found, as the questions after it take it: in one word, so that none of them works it out anew."""

from __future__ import annotations

from calc.fields import Choice, Option

#: With nothing at the far end; with the tailstock up; not at all.
ALONE, TAILSTOCK, NO = "alone", "tailstock", "no"


def found_of_mount(*when: tuple[str, tuple[str, ...]]) -> Choice:
    """The field that takes it, asked under these choices."""
    return Choice(
        name="found",
        label="'Will the mount hold?' said",
        options=(Option(ALONE, "Holds, no tailstock"), Option(TAILSTOCK, "Holds, tailstock up"), Option(NO, "Does not hold")),
        required=False,
        fold=True,
        when=when,
    )
