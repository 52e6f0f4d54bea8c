"""Ratios from chemistry: equivalents of an epoxide and of an amine, and how far off ratio a mix still gels.

For those who formulate, from a shell; a label's ratio goes before anything here. Equivalents and molar masses in g/mol.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from calc.guards import require_positive


def equivalent(molar_mass: float, groups: int) -> float:
    """Mass that holds one reactive group: EEW of an epoxide, AHEW of an amine.

    Parameters
    ----------
    molar_mass : g/mol, more than zero.
    groups : epoxide groups, or N-H hydrogens, in one molecule; one or more.

    Returns
    -------
    float
        g/mol.

    Examples
    --------
    Diethylenetriamine, five N-H:

    >>> round(equivalent(103, 5), 1)
    20.6

    References
    ----------
    Definition.
    """
    require_positive(molar_mass=molar_mass, groups=groups)
    return molar_mass / groups


def blend_equivalent(parts: Iterable[tuple[float, float]]) -> float:
    """Equivalent of a blend: total mass over the sum of mass / equivalent.

    Parameters
    ----------
    parts : each part's mass, in any unit, and its equivalent, g/mol; infinite for a filler, which only adds mass.

    Returns
    -------
    float
        g/mol; infinite when nothing in it reacts.

    Examples
    --------
    >>> round(blend_equivalent([(80, 189), (10, 183), (10, math.inf)]), 1)
    209.2

    References
    ----------
    Definition.
    """
    listed = tuple(parts)
    total = sum(mass for mass, _ in listed)
    require_positive(total=total)
    reacting = sum(mass / each for mass, each in listed)
    return total / reacting if reacting else math.inf


def parts_per_hundred(hardener: float, resin: float) -> float:
    """Hardener for 100 parts of resin by weight: phr = 100 AHEW / EEW.

    Parameters
    ----------
    hardener : AHEW, g/mol, more than zero.
    resin : EEW, g/mol, more than zero.

    Returns
    -------
    float
        parts by weight.

    Examples
    --------
    >>> round(parts_per_hundred(27.5, 187), 1)
    14.7

    References
    ----------
    One amine hydrogen to each epoxide.
    """
    require_positive(hardener=hardener, resin=resin)
    return 100 * hardener / resin


def gel_limit(resin_groups: int, hardener_groups: int) -> float:
    """The least share of its right amount of hardener with which a mix still gels: r = 1 / ((f - 1) (g - 1)); the most is 1 / r.

    Parameters
    ----------
    resin_groups : f, epoxides in a molecule, two or more.
    hardener_groups : g, N-H hydrogens in a molecule, two or more.

    Returns
    -------
    float
        fraction of the ratio on the label.

    Raises
    ------
    ValueError
        chains of such molecules never make a net.

    Examples
    --------
    Two epoxides and four N-H:

    >>> round(gel_limit(2, 4), 3)
    0.333

    References
    ----------
    gel-off-ratio.
    """
    branching = (resin_groups - 1) * (hardener_groups - 1)
    if branching < 1:
        raise ValueError("molecules with one group make chains, and chains alone never gel")
    return 1 / branching
