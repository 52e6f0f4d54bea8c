"""What pulls at a mount when the tool catches, and what glue, screws and a tenon bear.

Symbols inside the functions: m mass, e centre of mass to axis, w angular speed, L mount to centre of mass along
the lathe, D diameter swept, F the catch at the rim, V load across the mount, M bending, P pull along the lathe,
T turning moment. The catch is taken to pull along, across and round at once, at the rim: the worst of its places.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from calc.quantity import to_si
from calc.sources import table
from calc.turning.balance import STANDARD_GRAVITY, push
from calc.turning.mounts import FarEnd

BENDING_LEFT = {"none": 1.0, "pad": 0.4, "live": 0.1}  # share of the bending that the mount keeps, by the far end: our judgement
GLUED_SHARE = 0.6  # of a full face that glue really joins; it chills as it is pressed: our judgement
FULL_HOLD_K = 303.15  # 30 C: up to here hot glue counts in full (our judgement)
NO_HOLD_K = 333.15  # 60 C: from here it counts for nothing (our judgement)
BRITTLE_K = 283.15  # 10 C: below, hot glue turns brittle (our judgement)
WITHDRAWAL_PA = 108.25e6  # ultimate, times G^2 D L, side grain (wood-handbook-8)
ALLOWABLE_LB_PER_IN = 2850.0  # times G^2 D, D in inches (screw-allowable)
END_GRAIN_SHARE = 0.5  # lag screws hold three quarters of it in end grain; a screw is given half: our judgement
LEAST_SCREWS = 3  # fewer do not resist bending all round: geometry


@dataclass(frozen=True)
class Loads:
    """At the mount: across it (N), bending (N m), pull (N), turning (N m)."""

    across_n: float
    bending_n_m: float
    pull_n: float
    turning_n_m: float


def loads(
    mass_kg: float, eccentricity_m: float, speed_rpm: float, overhang_m: float, diameter_m: float, catch_n: float, far_end: FarEnd
) -> Loads:
    """What the mount takes: weight, out of balance and a catch at the rim.

    V = m g + m e w^2; across it V + F; M = (V L + F D / 2) times what the far end leaves; P = F, or 0 with a far end; T = F D / 2.

    Parameters
    ----------
    mass_kg : m, kg, more than 0.
    eccentricity_m : e, m, 0 or more.
    speed_rpm : rpm, 0 or more.
    overhang_m : L, mount to centre of mass, m, 0 or more.
    diameter_m : D, m, more than 0.
    catch_n : F, N, 0 or more.
    far_end : ``none``, a flat ``pad``, a ``live`` centre.

    Returns
    -------
    Loads

    Notes
    -----
    A tailstock does nothing against turning: a catch still twists the mount.

    Examples
    --------
    >>> at = loads(4, 0.002, 500, 0.040, 0.300, 300, "none")
    >>> round(at.across_n - 300, 1), round(at.bending_n_m, 1)
    (61.2, 47.4)

    References
    ----------
    Statics; what the far end leaves is our judgement.
    """
    side = mass_kg * STANDARD_GRAVITY + push(mass_kg * eccentricity_m, speed_rpm)
    bending = (side * overhang_m + catch_n * diameter_m / 2) * BENDING_LEFT[far_end]
    return Loads(side + catch_n, bending, catch_n if far_end == "none" else 0.0, catch_n * diameter_m / 2)


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
def glue_strength(face: str) -> tuple[float, float]:
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
    >>> glue_strength("wood")
    (1000000.0, 1500000.0)

    References
    ----------
    Our judgement: no published value was found (hot-melt).
    """
    row = next(row for row in table("glue") if row["name"] == face)
    return 1e6 * float(row["pull_mpa"]), 1e6 * float(row["shear_mpa"])


def glue_warmth(temperature_k: float) -> float:
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
    >>> round(glue_warmth(313.15), 3)
    0.667

    References
    ----------
    Our judgement; hot-melt for the softening.
    """
    return min(max((NO_HOLD_K - temperature_k) / (NO_HOLD_K - FULL_HOLD_K), 0.0), 1.0)


def glue_stress(on: Loads, face: GluedFace) -> tuple[float, float]:
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
    >>> s, tau = glue_stress(loads(4, 0.001, 500, 0.030, 0.300, 300, "none"), full_face(0.100))
    >>> round(s / 1e6, 3), round(tau / 1e6, 3)
    (0.853, 0.456)

    References
    ----------
    Strength of materials.
    """
    return on.pull_n / face.area_m2 + on.bending_n_m / face.section_m3, on.across_n / face.area_m2 + on.turning_n_m / (2 * face.section_m3)


def glue_factor(on: Loads, face: GluedFace, pull_pa: float, shear_pa: float) -> float:
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
    >>> round(glue_factor(loads(4, 0.001, 500, 0.030, 0.300, 300, "none"), full_face(0.100), 1.0e6, 1.5e6), 2)
    1.1

    References
    ----------
    Strength of materials; the sum of squares is our judgement.
    """
    if pull_pa <= 0.0 or shear_pa <= 0.0:
        return 0.0
    pull, shear = glue_stress(on, face)
    return 1.0 / math.hypot(pull / pull_pa, shear / shear_pa)


@cache
def screw_diameter(gauge: str) -> float:
    """Outside diameter of a wood screw by its number: 0.060 + 0.013 N inches.

    Parameters
    ----------
    gauge : ``8``, ``10``, ``12`` or ``14``; a row of ``data/screws.csv``.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(1000 * screw_diameter("10"), 3)
    4.826

    References
    ----------
    screw-gauge.
    """
    return next(float(row["value"]) for row in table("screws") if row["name"] == gauge) / 1000.0


def screw_withdrawal(gravity: float, diameter_m: float, bite_m: float, end_grain: bool = False) -> float:
    """Pull at which a wood screw comes out of side grain: 108.25 G^2 D L (N, mm); half of it out of end grain.

    Parameters
    ----------
    gravity : specific gravity G of the wood, 0.2 to 1.2.
    diameter_m : D of the screw, m.
    bite_m : L, thread in the wood, m, 0 or more.
    end_grain : driven along the grain.

    Returns
    -------
    float
        N, ultimate.

    Examples
    --------
    >>> round(screw_withdrawal(0.55, 0.004826, 0.025))
    3951

    References
    ----------
    wood-handbook-8; the half in end grain is our judgement.
    """
    return WITHDRAWAL_PA * gravity**2 * diameter_m * bite_m * (END_GRAIN_SHARE if end_grain else 1.0)


def screw_allowable(gravity: float, diameter_m: float, bite_m: float) -> float:
    """Pull that building rules allow on a wood screw in side grain: 2850 G^2 D pounds an inch, D in inches.

    Parameters
    ----------
    gravity : specific gravity G of the wood, 0.2 to 1.2.
    diameter_m : D of the screw, m.
    bite_m : thread in the wood, m, 0 or more.

    Returns
    -------
    float
        N.

    Examples
    --------
    >>> round(screw_allowable(0.45, 0.004826, 0.0254))
    488

    References
    ----------
    screw-allowable.
    """
    inch = to_si(1, "length", "in")
    return ALLOWABLE_LB_PER_IN * to_si(1, "mass", "lb") * STANDARD_GRAVITY * gravity**2 * diameter_m / inch * bite_m / inch


def screw_pull(on: Loads, count: int, circle_m: float) -> float:
    """Pull on the worst of the screws on a circle: 4 M / (n d) + P / n.

    Parameters
    ----------
    on : loads at the mount.
    count : n, 3 or more.
    circle_m : d, the circle they stand on, m, more than 0.

    Returns
    -------
    float
        N.

    Examples
    --------
    >>> round(screw_pull(loads(4, 0.002, 500, 0.040, 0.300, 300, "none"), 4, 0.070))
    753

    References
    ----------
    Statics of a bolt circle.
    """
    return 4 * on.bending_n_m / (count * circle_m) + on.pull_n / count


@cache
def tenon_strength(made_of: str) -> float:
    """Pull across it at which a tenon breaks.

    Parameters
    ----------
    made_of : ``softwood``, ``hardwood``, ``bond`` or ``resin``; a row of ``data/tenons.csv``.

    Returns
    -------
    float
        Pa.

    Examples
    --------
    >>> tenon_strength("hardwood")
    3000000.0

    References
    ----------
    record-1914 for wood; the rest is our judgement, see the table.
    """
    return 1e6 * next(float(row["value"]) for row in table("tenons") if row["name"] == made_of)


def tenon_stress(on: Loads, across_m: float) -> float:
    """Stress at the root of a round tenon: 32 M / (pi d^3) + 4 P / (pi d^2).

    Parameters
    ----------
    on : loads at the mount.
    across_m : d, m, more than 0.

    Returns
    -------
    float
        Pa.

    Examples
    --------
    >>> round(tenon_stress(loads(4, 0.001, 500, 0.050, 0.300, 300, "none"), 0.100) / 1e6, 3)
    0.522

    References
    ----------
    Strength of materials.
    """
    return 32 * on.bending_n_m / (math.pi * across_m**3) + 4 * on.pull_n / (math.pi * across_m**2)


@cache
def catch(name: str) -> float:
    """Force at the rim of a catch: ``light``, ``ordinary`` or ``hard``.

    Parameters
    ----------
    name : a row of ``data/catches.csv``.

    Returns
    -------
    float
        N.

    Examples
    --------
    >>> catch("ordinary")
    300.0

    References
    ----------
    Our judgement.
    """
    return next(float(row["value"]) for row in table("catches") if row["name"] == name)
