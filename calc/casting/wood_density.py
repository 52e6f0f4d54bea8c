"""How heavy wood is: by its kind, its moisture and its shrinkage, and how much of it is air.

Specific gravity is oven-dry mass over the volume it has at that moisture, water = 1.
Moisture and shrinkage are fractions; densities kg/m3.
"""

from __future__ import annotations

from calc.casting.moisture import percent
from calc.casting.species import Species
from calc.sources import value

WATER = 1000.0  # kg/m3: what a specific gravity of one stands for
_SHRINKS_BY_GRAVITY = value("displacement", "shrinks by gravity")


def gravity_from_basic(basic: float, moisture: float) -> float:
    """Specific gravity at a moisture where the shrinkage is not known: G_x = G_b / [1 - 0.265 G_b (1 - x/30)].

    Parameters
    ----------
    basic : G_b, oven-dry mass over green volume.
    moisture : x, fraction; above fibre saturation G_x is G_b.

    Returns
    -------
    float

    Examples
    --------
    Black walnut at 8 %:

    >>> round(gravity_from_basic(0.51, 0.08), 4)
    0.5661

    References
    ----------
    wood-handbook-4, equations 4-12 and 4-13.
    """
    return basic / (1 - shrunk(_SHRINKS_BY_GRAVITY * basic, moisture))


def gravity_from_12(at_12: float, shrinkage: float, moisture: float) -> float:
    """Specific gravity at a moisture from the tabulated one: G_x = G_12 (1 - S_12) / (1 - S_x).

    Parameters
    ----------
    at_12 : G_12, at 12 % moisture.
    shrinkage : S_0, volumetric, green to oven-dry, fraction.
    moisture : x, fraction.

    Returns
    -------
    float

    Examples
    --------
    >>> round(gravity_from_12(0.55, 0.128, 0.08), 4)
    0.5604

    References
    ----------
    wood-handbook-4, equation 4-10.
    """
    return at_12 * (1 - shrunk(shrinkage, 0.12)) / (1 - shrunk(shrinkage, moisture))


def shrunk(shrinkage: float, moisture: float) -> float:
    """Shrinkage from green to a moisture: S_x = S_0 (1 - x/30), nothing above fibre saturation.

    Parameters
    ----------
    shrinkage : S_0, green to oven-dry, fraction.
    moisture : x, fraction.

    Returns
    -------
    float
        fraction.

    Examples
    --------
    >>> round(shrunk(0.128, 0.12), 4)
    0.0768

    References
    ----------
    wood-handbook-4, equation 4-9.
    """
    return shrinkage * max(0.0, 1 - moisture / percent("fibre saturation"))


def density(gravity: float, moisture: float) -> float:
    """Density of wood with its water: 1000 G_x (1 + x).

    Parameters
    ----------
    gravity : G_x, at that moisture.
    moisture : x, fraction.

    Returns
    -------
    float
        kg/m3.

    Examples
    --------
    >>> round(density(0.605, 0.12), 1)
    677.6

    References
    ----------
    wood-handbook-4, equation 4-14.
    """
    return WATER * gravity * (1 + moisture)


def density_of_species(wood: Species, moisture: float) -> float:
    """Density of a wood of the table: from its gravity at 12 % and its shrinkage where both are known, else from the basic one.

    Parameters
    ----------
    wood : of the table.
    moisture : fraction.

    Returns
    -------
    float
        kg/m3.

    Examples
    --------
    >>> from calc.casting.species import all_species
    >>> round(density_of_species(all_species()["walnut-black"], 0.08), 1)
    605.2

    References
    ----------
    As :func:`gravity_from_12` and :func:`gravity_from_basic`.
    """
    if wood.at_12 is not None and wood.shrinkage is not None and wood.shrinkage.volumetric is not None:
        return density(gravity_from_12(wood.at_12, wood.shrinkage.volumetric, moisture), moisture)
    return density(gravity_from_basic(wood.basic, moisture), moisture)


def fullest(basic: float) -> float:
    """Moisture at which wood is full of water and holds no more: (1.54 - G_b) / (1.54 G_b).

    Parameters
    ----------
    basic : G_b.

    Returns
    -------
    float
        fraction.

    Examples
    --------
    >>> round(100 * fullest(0.55), 1)
    116.9

    References
    ----------
    wood-handbook-4, equation 4-3.
    """
    cell_wall = value("displacement", "cell wall")
    return (cell_wall - basic) / (cell_wall * basic)


def air_share(density_kg_m3: float, moisture: float) -> float:
    """Share of the wood that is air: 1 - G_x (1/1.54 + x). No more resin than that can soak in.

    Parameters
    ----------
    density_kg_m3 : with its water.
    moisture : x, fraction.

    Returns
    -------
    float
        fraction, 0 or more.

    Examples
    --------
    >>> round(air_share(density(0.605, 0.12), 0.12), 4)
    0.5345

    References
    ----------
    Follows from wood-handbook-4, equation 4-3.
    """
    gravity = density_kg_m3 / WATER / (1 + moisture)
    return max(0.0, 1 - gravity * (1 / value("displacement", "cell wall") + moisture))
