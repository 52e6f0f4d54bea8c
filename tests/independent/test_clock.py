"""The march of the clock and the rise of bubbles against scipy's own integrators."""

from __future__ import annotations

import pytest
from scipy.integrate import quad, solve_ivp

from calc.casting import bubbles, warm_resin
from calc.casting.cure.clock import Shop, march
from calc.casting.cure.kinetics import Kinetics

HOUR = 3600.0
NIGHT = Shop(294.15, 283.15, poured=15 * HOUR, night_from=20 * HOUR, night_to=8 * HOUR)


@pytest.mark.parametrize("k25", [1.6e-5, 8.8e-5])
def test_conversion_through_cold_nights(k25: float) -> None:
    kinetics = Kinetics(k25)
    *_, (end, ours) = march(kinetics, NIGHT.at, 0.0, 0.001, 60 * HOUR)
    start, theirs = 0.0, 0.001
    while start < end:  # a piece for each stretch of constant temperature, so that no step straddles a jump
        until = min(NIGHT.next_change(start), end)
        kelvin = NIGHT.at((start + until) / 2)
        solved = solve_ivp(lambda _, a, kelvin=kelvin: [kinetics.rate(a[0], kelvin)], (start, until), [theirs], method="LSODA", rtol=1e-9, atol=1e-12)
        start, theirs = until, float(solved.y[0, -1])
    assert ours == pytest.approx(theirs, abs=0.004)


def test_how_much_a_bubble_is_let_rise() -> None:
    """Conversion that grows evenly at 25 °C: the integral of 1 / viscosity by adaptive quadrature."""
    history = [(60.0 * n, 298.15, 0.4 * n / 600) for n in range(601)]
    ours = bubbles.fluidity(history, 0.8)[-1][1]
    theirs, _ = quad(lambda t: 1 / (0.8 * bubbles.thickening(0.4 * t / 36000)), 0, 36000)
    assert ours == pytest.approx(theirs, rel=1e-4)
    assert warm_resin.viscosity_ratio(298.15, 298.15, 65e3) == 1
