"""What warm resin gains and loses: it runs more thinly, and hardens sooner.

Temperatures in kelvin. Figures, each with its source, are in ``data/air.csv``.
"""

from __future__ import annotations

import math

GAS_CONSTANT = 8.314  # J/(mol K), as the fits of the viscosity series used it


def viscosity_ratio(temperature_k: float, reference_k: float, energy: float) -> float:
    """Viscosity over that at the reference: exp((E / R) (1 / T - 1 / T_ref)).

    Parameters
    ----------
    temperature_k, reference_k : resin, K.
    energy : activation energy E, J/mol; see ``data/air.csv``.

    Returns
    -------
    float

    Notes
    -----
    Fitted from 25 to 70 °C on two thinned resins; the unmixed resin, before it thickens by curing.

    Examples
    --------
    Ten degrees warmer than 25 °C:

    >>> round(viscosity_ratio(308.15, 298.15, 65000), 2)
    0.43

    References
    ----------
    viscosity-series.
    """
    return math.exp(energy / GAS_CONSTANT * (1 / temperature_k - 1 / reference_k))


def working_time_ratio(temperature_k: float, reference_k: float, halving_step_k: float) -> float:
    """Working time over that at the reference: half for every step warmer, 2^-((T - T_ref) / step).

    Parameters
    ----------
    temperature_k, reference_k : resin, K.
    halving_step_k : K; 10 by the rule, 15 by one maker.

    Returns
    -------
    float

    Notes
    -----
    Says nothing of the heat that a batch makes by itself, which shortens it further in a full bucket.

    Examples
    --------
    >>> working_time_ratio(308.15, 298.15, 10)
    0.5

    References
    ----------
    pot-life-rule.
    """
    return math.exp2(-(temperature_k - reference_k) / halving_step_k)
