"""What 'Will the mount hold?' found, as the questions after it take it: in one word, so that none of them works it out anew.

It is a finding of one mount and one piece. That it holds covers no wider piece, and no smaller mount; that it does not hold covers
every wider piece on it, and every smaller one of its kind. Of another kind of mount it says nothing.
"""

from __future__ import annotations

from calc.fields import Choice, Field, Option, measure
from calc.questions import Given
from calc.questions._found_for import WIDER

#: With nothing at the far end; with the tailstock up; not at all.
ALONE, TAILSTOCK, NO = "alone", "tailstock", "no"


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
    asked = (*when, ("found", (ALONE, TAILSTOCK, NO)))
    return (
        said,
        Choice(
            name="found_hold",
            label="Asked of",
            options=(Option("glue", "Glue block"), Option("faceplate", "Faceplate"), Option("chuck", "Chuck")),
            required=False,
            fold=True,
            when=asked,
        ),
        measure("found_across", "Asked of a mount across", "mm", 1, 3000, required=False, fold=True, when=asked),
        measure("found_for", "Asked for work that sweeps", "mm", 5, 1500, required=False, fold=True, when=(*when, ("found", (ALONE, TAILSTOCK)))),
    )


def heard(given: Given, sweeps_m: float | None, *, tailstock: bool | None, across_m: float | None = None) -> str | None:
    """The word that counts for this mount, and a piece that sweeps so much.

    Parameters
    ----------
    given : inputs with the fields of :func:`found_of_mount`, and ``hold``.
    sweeps_m : what the piece sweeps, m; None where it was not said.
    tailstock : something holds the far end; None where it was not said.
    across_m : the mount as it is, m; None where it was not said.

    Returns
    -------
    str or None
        None where it was not asked, or where it was asked of another mount or a smaller piece and says nothing of this one. What did not hold
        a smaller piece does not hold a larger one, so a 'no' stays, and so does the need of a tailstock while there is none.
    """
    found = given.words("found") or None
    if found is None or other_mount(given):
        return None
    size = given.maybe("found_across")
    larger = size is not None and across_m is not None and across_m > size * WIDER
    smaller = size is not None and across_m is not None and across_m * WIDER < size
    if found == NO:
        return None if larger else NO
    if found == TAILSTOCK and tailstock is False:
        return None if larger else TAILSTOCK
    return None if smaller or _wider(given, sweeps_m) else found


def other_mount(given: Given) -> bool:
    """It was asked of another kind of mount than the one there is now."""
    of = given.words("found_hold")
    return bool(of) and of != given.words("hold")


def _wider(given: Given, sweeps_m: float | None) -> bool:
    of = given.maybe("found_for")
    return of is not None and sweeps_m is not None and sweeps_m > of * WIDER


def handed_on(given: Given, sweeps_m: float | None, *, tailstock: bool | None) -> dict[str, str]:
    """What counts, for another question to take, with the mount and the piece that it was found of. Parameters as in :func:`heard`."""
    found = heard(given, sweeps_m, tailstock=tailstock)
    if found is None:
        return {}
    of = {name: given.as_typed(name) for name in ("found_hold", "found_across", "found_for") if given.typed(name)}
    return {"found": found} | of
