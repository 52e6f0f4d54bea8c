"""What a stacked piece bears: its joints under the push that tips it, its columns under what stands on them, its resin in the heat of a place.

Lengths in m, pushes and loads as the weight of so many kg, strengths in Pa, temperatures in K.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from calc.constants import STANDARD_GRAVITY
from calc.guards import require_positive
from calc.quantity.units import to_si
from calc.sources import table
from calc.turning.discs import RESIN_MODULUS
from calc.turning.standing import Section, standard


@dataclass(frozen=True)
class Place:
    """Where a piece is used: what it is called, a hint, how warm the piece gets there (K), and the source of that."""

    label: str
    hint: str
    temperature: float
    source: str


@cache
def places() -> Mapping[str, Place]:
    """The places of ``data/stand_places.csv``, the coolest first.

    Returns
    -------
    Mapping

    Examples
    --------
    >>> round(places()["car"].temperature, 2)
    343.15

    References
    ----------
    Each row names its own.
    """
    return {row["name"]: Place(row["label"], row["hint"], to_si(float(row["degc"]), "temperature", "°C"), row["source"]) for row in table("stand_places")}


def peg_stress(push_kg: float, lever_m: float, peg_m: float) -> float:
    """Bending stress in a dowel or a tenon where it leaves its socket: 32 M / (pi d^3).

    Parameters
    ----------
    push_kg : level push, as a weight.
    lever_m : of the push over the joint, m.
    peg_m : d, m, more than 0.

    Returns
    -------
    float
        Pa.

    Examples
    --------
    >>> round(peg_stress(1.0, 0.200, 0.010) / 1e6, 2)
    19.98

    References
    ----------
    Bending of a round bar; the shoulder's own help is left out.
    """
    require_positive(peg=peg_m)
    return 32 * push_kg * STANDARD_GRAVITY * lever_m / (math.pi * peg_m**3)


def peg_for(push_kg: float, lever_m: float, strength_pa: float, times: float) -> float:
    """The peg that bears a push so many times over: (32 M times / (pi strength))^(1/3).

    Parameters
    ----------
    push_kg : level push, as a weight.
    lever_m : of the push over the joint, m.
    strength_pa : of the peg, Pa.
    times : how many times over.

    Returns
    -------
    float
        across, m.

    Examples
    --------
    >>> round(peg_for(1.0, 0.200, 40e6, 4), 4)
    0.0126

    References
    ----------
    :func:`peg_stress`, turned round.
    """
    return float((32 * push_kg * STANDARD_GRAVITY * lever_m * times / (math.pi * strength_pa)) ** (1 / 3))


def socket_pressure(push_kg: float, lever_m: float, peg_m: float, deep_m: float) -> float:
    """Greatest pressure of a levered peg on the wall of its socket: 6 M / (d L^2).

    Parameters
    ----------
    push_kg : level push, as a weight.
    lever_m : of the push over the socket's mouth, m.
    peg_m : d, m, more than 0.
    deep_m : L, of the socket, m, more than 0.

    Returns
    -------
    float
        Pa.

    Notes
    -----
    A stiff peg that turns about the middle of its depth; glue and the shoulder, which help, are left out.

    Examples
    --------
    >>> round(socket_pressure(1.0, 0.200, 0.010, 0.020) / 1e6, 2)
    2.94

    References
    ----------
    Statics.
    """
    require_positive(peg=peg_m, socket=deep_m)
    return 6 * push_kg * STANDARD_GRAVITY * lever_m / (peg_m * deep_m**2)


def socket_for(push_kg: float, lever_m: float, peg_m: float, strength_pa: float, times: float) -> float:
    """The depth of socket that bears a push so many times over: sqrt(6 M times / (d strength)).

    Parameters
    ----------
    push_kg : level push, as a weight.
    lever_m : of the push over the socket's mouth, m.
    peg_m : d, m, more than 0.
    strength_pa : of the socket's wall, Pa.
    times : how many times over.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(socket_for(1.0, 0.200, 0.010, 5e6, 4), 4)
    0.0307

    References
    ----------
    :func:`socket_pressure`, turned round.
    """
    require_positive(peg=peg_m)
    return math.sqrt(6 * push_kg * STANDARD_GRAVITY * lever_m * times / (peg_m * strength_pa))


def column_load(width_m: float, length_m: float, section: Section = "round", modulus_pa: float = RESIN_MODULUS) -> float:
    """The load at which a column bows out, clamped below and free on top: pi^2 E I / (4 L^2), as a weight.

    Parameters
    ----------
    width_m : m.
    length_m : from its foot to the load, m, more than 0.
    section : ``round`` or ``square``.
    modulus_pa : E, Pa.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> round(column_load(0.020, 0.400))
    30

    References
    ----------
    euler-column.
    """
    require_positive(length=length_m)
    moment = width_m**4 * (math.pi / 64 if section == "round" else 1 / 12)
    return math.pi**2 * modulus_pa * moment / (4 * length_m**2) / STANDARD_GRAVITY


def softens_at(sheet_k: float | None, unwarmed_k: float | None) -> float:
    """Where this resin softens: its sheet's figure counts in full only if it was cured as warm as the sheet asks.

    Parameters
    ----------
    sheet_k : glass transition or heat resistance of the sheet, K; None where there is none.
    unwarmed_k : where it may soften for want of warmth, K, :func:`calc.casting.cure.stages.softens_unwarmed`; None when it was cured warm.

    Returns
    -------
    float
        K, the lower of the two.

    Examples
    --------
    >>> [round(softens_at(sheet, shop) - 273.15) for sheet, shop in ((None, None), (353.15, None), (353.15, 303.15), (298.15, 303.15))]
    [50, 80, 30, 25]

    References
    ----------
    Our judgement for 50 degC where there is no sheet.
    """
    sheet = standard("soft") if sheet_k is None else sheet_k
    return sheet if unwarmed_k is None else min(sheet, unwarmed_k)


def warmest(sheet_k: float | None, unwarmed_k: float | None) -> float:
    """How warm it may get: a margin under the sheet's figure, and not over where it may soften for want of warmth.

    Parameters
    ----------
    sheet_k, unwarmed_k : see :func:`softens_at`.

    Returns
    -------
    float
        K.

    Examples
    --------
    >>> [round(warmest(sheet, shop) - 273.15) for sheet, shop in ((None, None), (353.15, None), (353.15, 303.15), (308.15, 303.15))]
    [40, 70, 30, 25]

    References
    ----------
    Our judgement for the margin.
    """
    return min(softens_at(sheet_k, None) - standard("soft margin"), softens_at(sheet_k, unwarmed_k))
