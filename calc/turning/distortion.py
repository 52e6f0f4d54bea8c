"""How far heat and water move a piece: dish, shift of the rim, steps at wood, ovality. Lengths in m, temperatures in K.

Free, elastic, thin: a mount that holds the piece lets less of it show. Figures are in ``data/out_of_true.csv``.
"""

from __future__ import annotations

from calc.casting.moisture import percent


def sag(curvature: float, radius_m: float) -> float:
    """Height of a shallow dish over a radius: kappa R² / 2.

    Parameters
    ----------
    curvature : kappa, 1/m.
    radius_m : R, m, small beside 1/kappa.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(1000 * sag(1 / 41.7, 0.225), 2)
    0.61

    References
    ----------
    thermal-bow.
    """
    return curvature * radius_m**2 / 2


def dish(expansion: float, difference_k: float, radius_m: float, thickness_m: float) -> float:
    """Dish of a free disc that is warmer on one face: a dT R² / (2 t).

    Parameters
    ----------
    expansion : a, 1/K.
    difference_k : dT, from face to face, K.
    radius_m, thickness_m : R and t, m.

    Returns
    -------
    float
        m, from centre to rim; the same all round.

    Examples
    --------
    >>> round(1000 * dish(60e-6, 20, 0.225, 0.050), 4)
    0.6075

    References
    ----------
    thermal-bow.
    """
    return sag(expansion * difference_k / thickness_m, radius_m)


def rim_runout(expansion: float, difference_k: float, radius_m: float) -> float:
    """Once-a-turn runout of the rim of a disc that is warmer on one side: a dT R / 2, twice the shift of its centre.

    Parameters
    ----------
    expansion : a, 1/K.
    difference_k : dT, from side to side, K.
    radius_m : R, m.

    Returns
    -------
    float
        m, from lowest to highest.

    Examples
    --------
    >>> round(1000 * rim_runout(60e-6, 10, 0.225), 4)
    0.0675

    References
    ----------
    Plane thermoelasticity of a linear field: it stays free of stress.
    """
    return expansion * difference_k * radius_m / 2


def strip_growth(expansion: float, wood_expansion: float, difference_k: float, width_m: float) -> float:
    """How much more resin grows than a strip of wood of the same width: (a1 - a2) dT W.

    Parameters
    ----------
    expansion, wood_expansion : a1 of resin and a2 of the wood, 1/K.
    difference_k : dT, K.
    width_m : W, m.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(1000 * strip_growth(100e-6, 30e-6, 20, 0.150), 3)
    0.21

    References
    ----------
    Definition.
    """
    return (expansion - wood_expansion) * difference_k * width_m


def layers_curvature(expansions: tuple[float, float], difference_k: float, thicknesses_m: tuple[float, float], stiffnesses: tuple[float, float]) -> float:
    """Curvature of two bonded layers, warmed: 6 (a1-a2) dT (1+m)² / (h (3 (1+m)² + (1+m n)(m² + 1/(m n)))).

    Parameters
    ----------
    expansions : a1, a2, 1/K.
    difference_k : dT since they were flat, K.
    thicknesses_m : t1, t2, m; m = t1/t2, h = t1 + t2.
    stiffnesses : E1, E2, in one unit; n = E1/E2.

    Returns
    -------
    float
        1/m.

    Examples
    --------
    >>> round(layers_curvature((100e-6, 30e-6), 20, (0.020, 0.020), (2.4, 1.0)), 5)
    0.04995

    References
    ----------
    timoshenko-1925.
    """
    m, n, height = thicknesses_m[0] / thicknesses_m[1], stiffnesses[0] / stiffnesses[1], sum(thicknesses_m)
    top = 6 * (expansions[0] - expansions[1]) * difference_k * (1 + m) ** 2
    return top / (height * (3 * (1 + m) ** 2 + (1 + m * n) * (m**2 + 1 / (m * n))))


def change_coefficient(shrinkage: float) -> float:
    """Change of a size for each percent of moisture near 10 %: C = 1 / (30/S - 30 + 10), 30 the fibre saturation in percent.

    Parameters
    ----------
    shrinkage : S, green to oven-dry along that direction, fraction, above 0.

    Returns
    -------
    float
        fraction of the size for each percent.

    Examples
    --------
    American beech along its rings:

    >>> round(change_coefficient(0.119), 5)
    0.00431

    References
    ----------
    wood-handbook-13-5: its column is this for most woods.
    """
    full = 100 * percent("fibre saturation")
    return 1 / (full / shrinkage - full + 10)


def wood_change(coefficient: float, width_m: float, moisture_change: float) -> float:
    """Change of a width of wood: C W dM.

    Parameters
    ----------
    coefficient : C, for each percent.
    width_m : W, m.
    moisture_change : dM, fraction (0.02 for 2 %).

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(1000 * wood_change(0.00431, 0.150, 0.02), 2)
    1.29

    References
    ----------
    wood-handbook-13-5.
    """
    return coefficient * width_m * 100 * moisture_change


def drying_time(depth_m: float, diffusivity: float) -> float:
    """Order of the time in which wood follows the air: L² / D.

    Parameters
    ----------
    depth_m : L, half the thickness, or all of it with one face sealed; m.
    diffusivity : of water in the wood, m²/s.

    Returns
    -------
    float
        s.

    Examples
    --------
    >>> round(drying_time(0.025, 2e-10) / 86400)
    36

    References
    ----------
    recalled-diffusion.
    """
    return depth_m**2 / diffusivity
