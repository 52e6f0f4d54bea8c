"""What 'Will the mount hold?' found, as the questions after it take it: in one word, so that none of them works it out anew.

A finding that it holds is for the piece it was found of: a wider one, entered since, is not covered by it. A finding that it
does not hold covers every wider one.
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


def heard(given: Given, sweeps_m: float | None, *, tailstock: bool | None) -> str | None:
    """The word that counts for a piece that sweeps so much.

    Parameters
    ----------
    given : inputs with the fields of :func:`found_of_mount`.
    sweeps_m : what the piece sweeps, m; None where it was not said.
    tailstock : something holds the far end; None where it was not said.

    Returns
    -------
    str or None
        None where it was not asked, or where it was asked of a smaller piece and says nothing of this one. What did not hold
        a smaller piece does not hold a larger one, so a 'no' stays, and so does the need of a tailstock while there is none.
    """
    found = given.words("found") or None
    if found == NO or not _wider(given, sweeps_m):
        return found
    return TAILSTOCK if found == TAILSTOCK and tailstock is False else None


def _wider(given: Given, sweeps_m: float | None) -> bool:
    of = given.maybe("found_for")
    return of is not None and sweeps_m is not None and sweeps_m > of * _WIDER


def handed_on(given: Given, sweeps_m: float | None, *, tailstock: bool | None) -> dict[str, str]:
    """What counts, for another question to take, with the piece that it was found of. Parameters as in :func:`heard`."""
    found = heard(given, sweeps_m, tailstock=tailstock)
    if found is None:
        return {}
    return {"found": found} | ({"found_for": given.as_typed("found_for")} if given.typed("found_for") else {})
