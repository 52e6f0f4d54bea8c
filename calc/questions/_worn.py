"""The mask, as both questions of the last gates ask for it: how it sits, what is on it, whether it seals."""

from __future__ import annotations

from dataclasses import dataclass

from calc.fields import NO, YES, Choice, Field, Option
from calc.questions import Given
from calc.questions._gated import yes

#: Asked of every mask, and of one that seals on the face.
WORN, TIGHT = ("mask", ("tight", "hood")), ("mask", ("tight",))


def asked_yes_no(name: str, label: str, *when: tuple[str, tuple[str, ...]], fold: bool = True) -> Choice:
    """A question of yes or no that may stay open."""
    return Choice(name=name, label=label, options=(YES, NO), required=False, fold=fold, when=when)


def mask_fields(none: Option, filters: tuple[Option, ...], in_date: str, *more: Field, hint: str = "") -> tuple[Field, ...]:
    """What is asked of the mask.

    Parameters
    ----------
    none : the choice that no mask is worn.
    filters : what may be on it.
    in_date : the label of the question whether the filters are still good.
    more : what else is asked of the filters.
    hint : what decides which mask.
    """
    return (
        Choice(
            name="mask",
            label="Mask",
            hint=hint,
            options=(Option("tight", "Half or full mask, sealed on the face"), Option("hood", "Powered hood, loose on the face"), none),
            required=False,
            fold=True,
        ),
        Choice(name="filters", label="Filter on it", options=filters, required=False, fold=True, when=(WORN,)),
        *more,
        asked_yes_no("filter_date", in_date, WORN),
        asked_yes_no("shaved", "Skin smooth where the mask seals", TIGHT),
        asked_yes_no("fit_tested", "This mask fit-tested on you", TIGHT),
        asked_yes_no("sealed", "Seal check passed today", TIGHT),
    )


@dataclass(frozen=True)
class Mask:
    """What was said of it; None for what was not."""

    worn: str | None
    filters: str | None
    in_date: bool | None
    shaved: bool | None
    fit_tested: bool | None
    sealed: bool | None

    @classmethod
    def of(cls, given: Given) -> Mask:
        """As it was said under :func:`mask_fields`."""
        signs = (yes(given, name) for name in ("filter_date", "shaved", "fit_tested", "sealed"))
        return cls(given.words("mask") or None, given.words("filters") or None, *signs)
