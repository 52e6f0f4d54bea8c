"""What hot glue bears: a full face or a ring, on wood or resin, cool or warm.

Symbols inside the functions: d block, b width of a bead, A area, Z section modulus, s pull and tau shear in the glue.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from calc.constants import ZERO_C
from calc.sources import table, value
from calc.turning.hold import Loads

GLUED_SHARE = value("turning", "glued share")
FULL_HOLD_K = value("turning", "glue full hold") + ZERO_C
NO_HOLD_K = value("turning", "glue no hold") + ZERO_C
BRITTLE_K = value("turning", "glue brittle") + ZERO_C


@dataclass(frozen=True)
class GluedFace:
    """What is glued: area (m2), and section modulus against bending (m3); against turning it is twice that."""

    area_m2: float
    section_m3: float


def full_face(across_m: float, share: float = GLUED_SHARE) -> GluedFace:
    """A round block glued all over: c pi d^2 / 4 and c pi d^3 / 32.

    Parameters
    ----------
    across_m : d, m, more than 0.
    share : c, share of the face that glue joins, 0 to 1.

    Returns
    -------
    GluedFace

    Examples
    --------
    >>> round(1e6 * full_face(0.100).area_m2)
    4712

    References
    ----------
    Plain geometry; the share is our judgement.
    """
    return GluedFace(share * math.pi / 4 * across_m**2, share * math.pi / 32 * across_m**3)


def ring_bead(across_m: float, bead_m: float) -> GluedFace:
    """A bead of glue round the edge of a block, as far as it is no more than a full face.

    pi b (d - b), and pi (d^4 - (d - 2 b)^4) / (32 d); neither counts for more than in :func:`full_face`.

    Parameters
    ----------
    across_m : d, outside of the bead, m, more than 0.
    bead_m : b, its width, m, more than 0; from d / 2 on it is a full face.

    Returns
    -------
    GluedFace

    Examples
    --------
    >>> ring = ring_bead(0.100, 0.005)
    >>> round(1e6 * ring.area_m2), round(1e9 * ring.section_m3)
    (1492, 33762)

    References
    ----------
    Plain geometry; that a ring counts for no more than a full face is our judgement.
    """
    full = full_face(across_m)
    bead = min(bead_m, across_m / 2)
    section = math.pi * (across_m**4 - (across_m - 2 * bead) ** 4) / (32 * across_m)
    return GluedFace(min(math.pi * bead * (across_m - bead), full.area_m2), min(section, full.section_m3))


@cache
def strength(face: str) -> tuple[float, float]:
    """Hot glue on a scuffed, clean face: what it bears in pull and in shear.

    Parameters
    ----------
    face : ``wood`` or ``resin``; a row of ``data/glue.csv``.

    Returns
    -------
    tuple
        pull, shear; Pa.

    Examples
    --------
    >>> strength("wood")
    (1000000.0, 1500000.0)

    References
    ----------
    Our judgement: no published value was found (hot-melt).
    """
    row = next(row for row in table("glue") if row["name"] == face)
    return 1e6 * float(row["pull_mpa"]), 1e6 * float(row["shear_mpa"])


def warmth(temperature_k: float) -> float:
    """Share of its strength that hot glue keeps: all up to 30 C, in a straight line to none at 60 C.

    Parameters
    ----------
    temperature_k : warmest the glue line gets, K.

    Returns
    -------
    float
        0 to 1.

    Notes
    -----
    Below 10 C it keeps its strength but turns brittle, which no share can tell.

    Examples
    --------
    >>> round(warmth(313.15), 3)
    0.667

    References
    ----------
    Our judgement; hot-melt for the softening.
    """
    return min(max((NO_HOLD_K - temperature_k) / (NO_HOLD_K - FULL_HOLD_K), 0.0), 1.0)


def stress(on: Loads, face: GluedFace) -> tuple[float, float]:
    """Stress in a glued face: s = P / A + M / Z and tau = V / A + T / 2 Z.

    Parameters
    ----------
    on : loads at the mount.
    face : what is glued.

    Returns
    -------
    tuple
        pull, shear; Pa.

    Examples
    --------
    >>> from calc.turning import hold
    >>> s, tau = stress(hold.loads(4, 0.001, 500, 0.030, 0.300, 300, "none"), full_face(0.100))
    >>> round(s / 1e6, 3), round(tau / 1e6, 3)
    (0.853, 0.456)

    References
    ----------
    Strength of materials.
    """
    return on.pull_n / face.area_m2 + on.bending_n_m / face.section_m3, on.across_n / face.area_m2 + on.turning_n_m / (2 * face.section_m3)


def factor(on: Loads, face: GluedFace, pull_pa: float, shear_pa: float) -> float:
    """How many times its loads a glued face bears: 1 / sqrt((s / su)^2 + (tau / tu)^2).

    Parameters
    ----------
    on : loads at the mount.
    face : what is glued.
    pull_pa, shear_pa : strength su and tu as it is now, warmth taken off, Pa; 0 or more.

    Returns
    -------
    float
        0 when there is no strength.

    Examples
    --------
    >>> from calc.turning import hold
    >>> round(factor(hold.loads(4, 0.001, 500, 0.030, 0.300, 300, "none"), full_face(0.100), 1.0e6, 1.5e6), 2)
    1.1

    References
    ----------
    Strength of materials; the sum of squares is our judgement.
    """
    if pull_pa <= 0.0 or shear_pa <= 0.0:
        return 0.0
    pull, shear = stress(on, face)
    return 1.0 / math.hypot(pull / pull_pa, shear / shear_pa)
