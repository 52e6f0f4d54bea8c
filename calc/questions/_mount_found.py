"""What 'Will the mount hold?' found, as the questions after it take it: in one word, so that none of them works it out anew.

A finding that it holds is for the piece it was found of: a wider one, entered since, is not covered by it.
"""

from __future__ import annotations

from calc.fields import Choice, Field, Option, measure
from calc.questions import Given

#: With nothing at the far end; with the tailstock up; not at all.
ALONE, TAILSTOCK, NO = "alone", "tailstock", "no"


#: Wider than it was found for, by more than a rounding.
_WIDER = 1.005


def found_of_mount(*when: tuple[str, tuple[str, ...]]) -> tuple[Field, ...]:
    """The fields that take it, asked under these choices."""
    said = Choice(
        name="found",
        label="'Will the mount hold?' said",
        options=(Option(ALONE, "Holds, no tailstock"), Option(TAILSTOCK, "Holds, tailstock up"), Option(NO, "Does not hold")),
        required=False,
        fold=True,
        when=when,
    )
    of = measure("found_for", "Found for work that sweeps", "mm", 5, 1500, required=False, fold=True, when=(*when, ("found", (ALONE, TAILSTOCK))))
    return (said, of)


def heard(given: Given, sweeps_m: float | None) -> str | None:
    """The word that counts for a piece that sweeps so much, m; None where it was not asked, or was asked of a smaller piece."""
    found, of = given.words("found") or None, given.maybe("found_for")
    return None if found != NO and of is not None and sweeps_m is not None and sweeps_m > of * _WIDER else found


def handed_on(given: Given, sweeps_m: float | None) -> dict[str, str]:
    """What counts, for another question to take, with the piece that it was found of."""
    found = heard(given, sweeps_m)
    if found is None:
        return {}
    return {"found": found} | ({"found_for": given.as_typed("found_for")} if given.typed("found_for") else {})
