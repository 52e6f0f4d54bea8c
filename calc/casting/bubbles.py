"""Bubbles in curing resin: how fast they rise, how the resin thickens, and which are out before it gels.

Symbols inside the functions: a conversion, 0 to 1; eta viscosity, Pa s; T temperature, K.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

from calc.casting import air, warm_resin
from calc.casting.cure.kinetics import GEL, REFERENCE_K
from calc.constants import STANDARD_GRAVITY

#: Power of the thickening at conversion 0 (castro-macosko); it grows by the conversion itself.
_POWER = 1.5
_SPHERE = 2 / 9  # Stokes, for a sphere that the liquid sticks to


def thickening(conversion: float) -> float:
    """How many times thicker than just mixed, at the same temperature: (a_gel / (a_gel - a))^(1.5 + a).

    Parameters
    ----------
    conversion : a, 0 to 1.

    Returns
    -------
    float
        1 at the start, infinite from the gel on.

    Examples
    --------
    >>> [round(thickening(a), 1) for a in (0.19, 0.33, 0.41)]
    [2.0, 4.7, 10.4]

    References
    ----------
    castro-macosko.
    """
    return math.inf if conversion >= GEL else math.pow(GEL / (GEL - conversion), _POWER + conversion)


def viscosity_at(temperature_k: float, conversion: float, at_25: float) -> float:
    """Viscosity of curing resin: eta_25 exp[(E / R) (1 / T - 1 / 298.15)] times :func:`thickening`.

    Parameters
    ----------
    temperature_k : T, K; 283 to 343.
    conversion : a, 0 to 1.
    at_25 : viscosity of the mix at 25 °C, Pa s.

    Returns
    -------
    float
        Pa s; infinite from the gel on.

    Examples
    --------
    >>> round(viscosity_at(308.15, 0, 1.0), 2)
    0.43

    References
    ----------
    viscosity-series; castro-macosko.
    """
    return at_25 * warm_resin.viscosity_ratio(temperature_k, REFERENCE_K, air.limit("viscosity energy")) * thickening(conversion)


def rise_speed(radius_m: float, viscosity: float, density: float) -> float:
    """How fast a small bubble rises: v = 2 r^2 g rho / (9 eta).

    Parameters
    ----------
    radius_m : r, m; up to about 1 mm in resin, so that the flow around it stays slow.
    viscosity : eta, Pa s, more than 0.
    density : rho, of the liquid less that of the gas in it, kg/m3.

    Returns
    -------
    float
        m/s.

    Notes
    -----
    Alone in wide still liquid. Bubbles held by wood, by a wall or in foam do not rise by it.

    Examples
    --------
    A bubble 0.5 mm wide in resin as thick as honey that runs, 1 Pa s, in mm a minute:

    >>> round(rise_speed(0.00025, 1.0, 1100) * 60e3)
    9

    References
    ----------
    stokes.
    """
    return _SPHERE * radius_m**2 * STANDARD_GRAVITY * density / viscosity


def fluidity(history: Iterable[tuple[float, float, float]], at_25: float) -> list[tuple[float, float]]:
    """How much a bubble has been let rise: the time integral of 1 / viscosity.

    Parameters
    ----------
    history : (time, s; temperature, K; conversion) as the resin cures, in order of time.
    at_25 : viscosity of the mix at 25 °C, Pa s.

    Returns
    -------
    list of (float, float)
        (time, s; integral so far, 1/Pa). It stands still from the gel on.

    Examples
    --------
    An hour at 25 °C in resin of 1 Pa s that does not cure:

    >>> fluidity([(0, 298.15, 0), (3600, 298.15, 0)], 1.0)
    [(0.0, 0.0), (3600.0, 3600.0)]

    References
    ----------
    Trapezium rule over the steps given.
    """
    found: list[tuple[float, float]] = []
    total = 0.0
    samples = [(time, 1 / viscosity_at(temperature, conversion, at_25)) for time, temperature, conversion in history]
    for (t0, f0), (t1, f1) in pairwise(samples):
        if not found:
            found.append((float(t0), 0.0))
        total += (f0 + f1) / 2 * (t1 - t0)
        found.append((float(t1), total))
    return found


def smallest_out(depth_m: float, integral: float, density: float) -> float:
    """The finest bubble that rises through the whole depth: d = 2 sqrt(9 depth / (2 g rho integral)).

    Parameters
    ----------
    depth_m : from the floor to the surface, m, more than 0.
    integral : of 1 / viscosity over time up to the gel, 1/Pa, more than 0; see :func:`fluidity`.
    density : of the resin, kg/m3.

    Returns
    -------
    float
        width (diameter), m.

    Examples
    --------
    40 mm of resin that stays at 1 Pa s for an hour, in mm:

    >>> round(smallest_out(0.040, 3600, 1100) * 1000, 2)
    0.14

    References
    ----------
    stokes.
    """
    return 2 * math.sqrt(depth_m / (_SPHERE * STANDARD_GRAVITY * density * integral))


def time_out(depth_m: float, width_m: float, density: float, so_far: Sequence[tuple[float, float]]) -> float | None:
    """When bubbles of a width have all risen through the depth.

    Parameters
    ----------
    depth_m : from the floor to the surface, m.
    width_m : of the bubble, m.
    density : of the resin, kg/m3.
    so_far : (time, s; integral of 1 / viscosity, 1/Pa), see :func:`fluidity`.

    Returns
    -------
    float or None
        s; None where they do not get out before the gel.

    Examples
    --------
    >>> time_out(0.040, 0.0005, 1100, [(0.0, 0.0), (3600.0, 3600.0)])
    267.0

    References
    ----------
    stokes.
    """
    needed = depth_m / rise_speed(width_m / 2, 1.0, density)
    for (t0, f0), (t1, f1) in pairwise(so_far):
        if f1 >= needed:
            return t0 + (t1 - t0) * (needed - f0) / (f1 - f0)
    return None
