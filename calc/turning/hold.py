"""What pulls at a mount when the tool catches, and what screws and a tenon bear; glue is in :mod:`calc.turning.glue`.

Symbols inside the functions: m mass, e centre of mass to axis, w angular speed, L mount to centre of mass along
the lathe, D diameter swept, F the catch at the rim, V load across the mount, M bending, P pull along the lathe,
T turning moment. The catch is taken to pull along, across and round at once, at the rim: the worst of its places.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from calc.constants import STANDARD_GRAVITY
from calc.quantity.units import to_si
from calc.sources import table, value
from calc.turning.balance import push
from calc.turning.mounts import FarEnd

BENDING_LEFT = {far_end: value("turning", f"bending left {far_end}") for far_end in ("none", "pad", "live")}  # of the bending, by the far end
WITHDRAWAL_PA = value("turning", "screw withdrawal") * 1e6  # ultimate, times G^2 D L
ALLOWABLE_LB_PER_IN = value("turning", "screw allowable")  # times G^2 D, D in inches
END_GRAIN_SHARE = value("turning", "end grain")
LEAST_SCREWS = 3  # fewer do not resist bending all round: geometry


@dataclass(frozen=True)
class Loads:
    """At the mount: across it (N), bending (N m), pull (N), turning (N m)."""

    across_n: float
    bending_n_m: float
    pull_n: float
    turning_n_m: float


def loads(mass_kg: float, eccentricity_m: float, speed_rpm: float, overhang_m: float, diameter_m: float, catch_n: float, far_end: FarEnd) -> Loads:
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
