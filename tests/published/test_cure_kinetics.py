"""The cure reaction against closed forms and figures worked out elsewhere.

INTEGRAL: the time integral of the default shape, evaluated with another program (adaptive quadrature); three digits.
CLOSED: isothermal solutions of first, second and autocatalytic order, textbook.
RATIO: 106.6 kJ per epoxide (Garcia and Soares) times the share of resin over its equivalent weight, by hand.
GROUT: a construction-grout page: working time at 30 °C half of that at 20 °C.
"""

from __future__ import annotations

import math

import pytest

from calc.casting.cure.kinetics import Kinetics, heat_of_reaction, resin_class
from calc.constants import ZERO_C

DEFAULT = Kinetics(1.6e-5)


@pytest.mark.parametrize(
    ("conversion", "integral"),
    [(0.10, 0.497), (0.19, 0.793), (0.25, 0.978), (0.33, 1.228), (0.40, 1.459), (0.50, 1.833), (0.58, 2.194), (0.70, 2.934), (0.80, 3.956)],  # INTEGRAL
)
def test_time_integral_of_the_default_shape(conversion: float, integral: float) -> None:
    assert DEFAULT.integral(conversion) == pytest.approx(integral, abs=0.0006)


@pytest.mark.parametrize(("celsius", "factor"), [(15, 2.130), (20, 1.450), (30, 0.698)])  # Arrhenius by hand, 54 kJ/mol
def test_times_at_other_temperatures(celsius: float, factor: float) -> None:
    assert 1 / DEFAULT.speed_up(ZERO_C + celsius) == pytest.approx(factor, abs=0.0006)


def test_working_time_halves_in_ten_degrees() -> None:
    at_20, at_30 = (DEFAULT.time_to(0.33, ZERO_C + celsius, 0.001) for celsius in (20, 30))
    assert at_20 / at_30 == pytest.approx(2.05, abs=0.25)  # GROUT, with 1.8 to 2.3 taken as half


@pytest.mark.parametrize(
    ("a", "b", "equivalent", "kilojoules"),
    [(100, 43, 195, 382), (100, 85, 195, 295), (100, 32, 187, 432), (100, 50, 200, 355)],  # RATIO
)
def test_heat_from_the_mix_ratio(a: float, b: float, equivalent: float, kilojoules: float) -> None:
    assert heat_of_reaction(a, b, equivalent / 1e3) / 1e3 == pytest.approx(kilojoules, abs=0.6)


def test_autocatalytic_first_order() -> None:
    k, b, seconds = 1e-4, 0.05, 20000.0
    grown = math.exp((1 + b) * k * seconds)
    exact = b * (grown - 1) / (1 + b * grown)  # CLOSED: 0.2544
    reaction = Kinetics(k, m=1, n=1, b=b, brake=False)
    assert exact == pytest.approx(0.2544, abs=0.00005)
    assert reaction.conversion_after(seconds, 298.15) == pytest.approx(exact, abs=0.0005)


@pytest.mark.parametrize(("k", "n", "seconds", "exact"), [(1e-4, 1, 8000.0, 0.5507), (5e-5, 2, 30000.0, 0.6000)])  # CLOSED
def test_plain_orders(k: float, n: float, seconds: float, exact: float) -> None:
    # with a term that feeds itself as good as none: B a thousand times a^m, and K as much smaller
    reaction = Kinetics(k / 1000, b=1000, m=1, n=n, brake=False)
    assert reaction.conversion_after(seconds, 298.15) == pytest.approx(exact, abs=0.001)


def test_the_kinds_of_resin_keep_their_pot_life_when_they_stay_cool() -> None:
    """The cup of the slow kind hardly warms: the closed integral must come near 11 hours, and never fall short of it."""
    slow = resin_class("slow")
    assert 11 * 3600 <= slow.kinetics.time_to(slow.conversion, 298.15, 0.001) < 14 * 3600
