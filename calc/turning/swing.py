"""What a blank tells on a free spindle, let go with its heavy side a little to one side: how long it takes to swing there and back.

It swings like a pendulum. Symbols inside the functions: J moment of inertia of all that turns about the spindle's axis (kg m2),
U = m e out of balance (kg m), T time of one swing there and back, a how far it swings to each side. Dry friction stops the swinging
sooner, and leaves the time of a swing as it is.
"""

from __future__ import annotations

import math

from calc.constants import STANDARD_GRAVITY

_NEAR = 1e-12  # the two means of lengthening() have met


def disc_inertia(mass_kg: float, across_m: float) -> float:
    """Moment of inertia of a disc or cylinder about its axis: J = m D^2 / 8.

    Parameters
    ----------
    mass_kg : m, kg, 0 or more.
    across_m : D, m, 0 or more.

    Returns
    -------
    float
        J, kg m2.

    Examples
    --------
    >>> round(disc_inertia(5, 0.400), 6)
    0.1

    References
    ----------
    Mechanics; m R^2 / 2 with R = D / 2.
    """
    return mass_kg * across_m**2 / 8


def oblong_inertia(mass_kg: float, length_m: float, width_m: float) -> float:
    """Moment of inertia of a blank with four square corners about the axis through its middle: J = m (a^2 + b^2) / 12.

    Parameters
    ----------
    mass_kg : m, kg, 0 or more.
    length_m, width_m : a and b, across the axis, m.

    Returns
    -------
    float
        J, kg m2.

    Examples
    --------
    >>> round(oblong_inertia(6, 0.300, 0.300), 6)
    0.09

    References
    ----------
    Mechanics.
    """
    return mass_kg * (length_m**2 + width_m**2) / 12


def lengthening(reach_rad: float) -> float:
    """How many times as long a wide swing takes as a small one: 1 / M(1, cos(a/2)), M the arithmetic-geometric mean.

    Parameters
    ----------
    reach_rad : a, to each side, rad, 0 to under pi.

    Returns
    -------
    float
        1 or more; 1.017 at 30 degrees, 1.18 at 90.

    Examples
    --------
    >>> import math
    >>> round(lengthening(math.radians(30)), 4)
    1.0174

    References
    ----------
    The pendulum's period as a complete elliptic integral.
    """
    one, other = 1.0, math.cos(reach_rad / 2)
    while abs(one - other) > _NEAR:
        one, other = (one + other) / 2, math.sqrt(one * other)
    return 1 / one


def unbalance_of_swing(inertia: float, period_s: float, reach_rad: float = 0.0) -> float:
    """Out of balance behind the time of a swing: U = 4 pi^2 J / (g T^2), T brought to that of a small swing.

    Parameters
    ----------
    inertia : J of all that turns, kg m2, more than 0.
    period_s : T, there and back, s, more than 0.
    reach_rad : how far it swings to each side, rad; 0 for a small swing.

    Returns
    -------
    float
        U, kg m.

    Examples
    --------
    >>> round(1000 * unbalance_of_swing(0.1, 4.0), 2)
    25.16

    References
    ----------
    A body that swings about an axis: T = 2 pi sqrt(J / (U g)).
    """
    return 4 * math.pi**2 * inertia / (STANDARD_GRAVITY * period_s**2) * lengthening(reach_rad) ** 2


def period_of_swing(inertia: float, unbalance_kg_m: float) -> float:
    """Time of a small swing there and back: T = 2 pi sqrt(J / (U g)).

    Parameters
    ----------
    inertia : J of all that turns, kg m2.
    unbalance_kg_m : U, kg m, more than 0.

    Returns
    -------
    float
        T, s.

    Examples
    --------
    >>> round(period_of_swing(0.1, 0.025163), 2)
    4.0

    References
    ----------
    As :func:`unbalance_of_swing`.
    """
    return 2 * math.pi * math.sqrt(inertia / (unbalance_kg_m * STANDARD_GRAVITY))
