"""Rates from what a sheet prints, against a second solver.

CUPS: pot life, mass and temperature with the rate that belongs to them; fine grid; 4 percent.
KINDS: the depth at which a wide pour of each kind reaches 45 and 65 °C; the rate from a depth at 60 °C lies between.
"""

from __future__ import annotations

import pytest

from calc.casting.cure.calibrate import meanings, pot_life, rate_from_depth, rate_from_pot_life
from calc.casting.cure.kinetics import Kinetics, resin_classes
from calc.casting.cure.pour import Resin


@pytest.mark.parametrize(
    ("minutes", "grams", "heat", "meaning", "rate"),
    [  # CUPS
        (25, 100, 300, "pour", 2.93e-4), (35, 150, 300, "pour", 2.12e-4), (90, 100, 380, "pour", 8.76e-5),
        (480, 100, 390, "pour", 2.97e-5), (480, 100, 390, "doubled", 2.22e-5),
    ],
)
def test_rate_from_a_pot_life(minutes: float, grams: float, heat: float, meaning: str, rate: float) -> None:
    found = rate_from_pot_life(Resin(Kinetics(1e-5, heat * 1e3)), minutes * 60, meaning, grams / 1e3)
    assert found == pytest.approx(rate, rel=0.04)


def test_the_kinds_of_resin_have_the_pot_life_that_they_are_told_with() -> None:
    for kind in resin_classes():
        meaning = "doubled" if kind.id == "slow" else "pour"
        assert meanings()[meaning].conversion == kind.conversion
        assert pot_life(Resin(kind.kinetics), meanings()[meaning]) == pytest.approx(kind.pot_life_s, rel=0.07)  # rates of two digits, pot lives rounded


@pytest.mark.parametrize(("rate", "heat", "at_45", "at_65"), [(1.6e-5, 380, 37, 42), (8.8e-5, 380, 8.7, 10.1), (2.9e-4, 300, 4.5, 5.7)])  # KINDS
def test_rate_from_the_deepest_layer(rate: float, heat: float, at_45: float, at_65: float) -> None:
    resin = Resin(Kinetics(1e-5, heat * 1e3))
    assert rate_from_depth(resin, at_65 / 1e3) < rate < rate_from_depth(resin, at_45 / 1e3)
