"""The woods of the species table: specific gravity, shrinkage, and how far trees of one species differ."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from calc.casting.moisture import percent
from calc.fields import Option
from calc.sources import table

#: The choice of a maker who does not know what wood it is.
UNKNOWN = "unknown"


@dataclass(frozen=True)
class Shrinkage:
    """From green to oven-dry, as fractions of the green size, and the key of the source; by volume None where only its change of size was taken."""

    radial: float
    tangential: float
    volumetric: float | None
    source: str


@dataclass(frozen=True)
class Species:
    """One row of the table.

    ``basic`` is oven-dry mass over green volume, ``at_12`` oven-dry mass over volume at 12 % moisture, both with water = 1;
    ``spread`` is the standard deviation of trees within the species as a fraction of the mean. None where none was taken.
    """

    key: str
    name: str
    binomial: str
    basic: float
    at_12: float | None
    shrinkage: Shrinkage | None
    spread: float | None
    sources: tuple[str, ...]


@cache
def all_species() -> Mapping[str, Species]:
    """Every wood by its key, in the order of the alphabet.

    Returns
    -------
    Mapping[str, Species]

    Examples
    --------
    >>> all_species()["walnut-black"].at_12
    0.55

    References
    ----------
    Each row names its own: data/wood_species.csv.
    """
    return {row["key"]: _species(row) for row in table("wood_species")}


@cache
def largest_shrinkage() -> Species:
    """The wood of the table that shrinks most along its growth rings: what stands in where none is known.

    Returns
    -------
    Species

    Examples
    --------
    >>> largest_shrinkage().name
    'Madrone, Pacific'

    References
    ----------
    data/wood_species.csv; to take the largest is our judgement.
    """
    return max((wood for wood in all_species().values() if wood.shrinkage), key=lambda wood: wood.shrinkage.tangential if wood.shrinkage else 0.0)


def options() -> tuple[Option, ...]:
    """The choices of a species field: not known first, then the alphabet.

    Returns
    -------
    tuple[Option, ...]

    Examples
    --------
    >>> [option.label for option in options()[:2]]
    ['Not known', 'Alder, red']

    References
    ----------
    data/wood_species.csv.
    """
    return (Option(UNKNOWN, "Not known"), *(Option(wood.key, wood.name, wood.binomial) for wood in all_species().values()))


def shrinkage_from_change(coefficient: float) -> float:
    """Shrinkage green to oven-dry of a wood of which only the change for each percent near 10 % is known: S = 30 / (1/C + 30 - 10).

    Parameters
    ----------
    coefficient : C, fraction of the size for each percent, above 0.

    Returns
    -------
    float
        S along that direction, fraction.

    Examples
    --------
    Apple, along its rings:

    >>> round(shrinkage_from_change(0.00376), 4)
    0.1049

    References
    ----------
    wood-handbook-13-5: how its columns come from the shrinkage, turned round.
    """
    full = 100 * percent("fibre saturation")
    return full / (1 / coefficient + full - 10)


def _species(row: Mapping[str, str]) -> Species:
    shrinkage = None
    if row["shrinkage_source"]:
        radial, tangential, volumetric = (float(row[name]) / 100 for name in ("radial", "tangential", "volumetric"))
        shrinkage = Shrinkage(radial, tangential, volumetric, row["shrinkage_source"])
    elif row["change_source"]:
        radial, tangential = (shrinkage_from_change(float(row[name])) for name in ("change_radial", "change_tangential"))
        shrinkage = Shrinkage(radial, tangential, None, row["change_source"])
    return Species(
        key=row["key"],
        name=row["name"],
        binomial=row["binomial"],
        basic=float(row["basic"]),
        at_12=float(row["at12"]) if row["at12"] else None,
        shrinkage=shrinkage,
        spread=float(row["spread"]) / 100 if row["spread"] else None,
        sources=tuple(key for key in dict.fromkeys((row["source"], row["at12_source"], row["shrinkage_source"], row["spread_source"])) if key),
    )
