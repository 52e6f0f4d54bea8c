"""How deep a resin allows, against what another solver made of the same model.

SHOP: depth of a slow kind that peaks at 65 °C in a wide mould, by shop temperature; of a fast kind at the two ends; half a millimetre, or 4 percent.
POWER: that depth goes with the rate to the power of -0.87 and with the heat to that of -1.2; two digits of the power.
BANDS: what a band of the rate makes of the depth, roughly divided by 2.6, 2.0, 1.5 and 1.3.
RATIO: worked by hand: 2:1 by volume at 1.15 and 0.98 g/mL is 100:42.6 by weight, 1.0933 g/mL mixed; 100:45 at 1.13 and 1.01 is 100:50.3 by volume.
"""

from __future__ import annotations

import math

import pytest

from calc.casting.cure.calibrate import wide
from calc.casting.cure.depth import critical_depth_steps
from calc.casting.cure.kinetics import Kinetics, resin_class
from calc.casting.cure.known import levels
from calc.casting.cure.pour import COARSE, Resin, Start
from calc.casting.mixing import Ratio
from calc.casting.resin import hardener_over_resin, ratio_gap
from calc.constants import ZERO_C
from calc.steps import at_once

TARGET_K = 65 + ZERO_C


def depth_mm(k25: float, heat: float, celsius: float) -> float:
    shop = celsius + ZERO_C
    return 1e3 * at_once(critical_depth_steps(Resin(Kinetics(k25, heat)), wide(0.04), Start(shop, shop), 0.04, COARSE, TARGET_K))


@pytest.mark.parametrize(("celsius", "depth"), [(16, 64), (18, 57), (20, 50), (23, 42), (26, 35), (29, 29)])  # SHOP
def test_a_warmer_shop_costs_depth(celsius: float, depth: float) -> None:
    assert depth_mm(1.6e-5, 380e3, celsius) == pytest.approx(depth, rel=0.04, abs=0.5)


@pytest.mark.parametrize(("celsius", "depth"), [(16, 8.2), (29, 4.2)])  # SHOP
def test_so_it_does_of_a_fast_kind(celsius: float, depth: float) -> None:
    fast = resin_class("fast").kinetics
    assert depth_mm(fast.k25, fast.heat, celsius) == pytest.approx(depth, rel=0.04)


def test_powers_of_rate_and_heat() -> None:  # POWER
    middle = depth_mm(1.7e-5, 380e3, 23)
    by_rate = math.log(depth_mm(1.7e-5 * 1.3, 380e3, 23) / middle) / math.log(1.3)
    by_heat = math.log(depth_mm(1.7e-5, 380e3 * 1.15, 23) / middle) / math.log(1.15)
    assert by_rate == pytest.approx(-0.87, abs=0.05)
    assert by_heat == pytest.approx(-1.2, abs=0.1)


@pytest.mark.parametrize(("level", "over"), [("unknown", 2.6), ("defined", 2.0), ("both", 1.5), ("cup", 1.3)])  # BANDS
def test_what_a_band_of_the_rate_makes_of_the_depth(level: str, over: float) -> None:
    slow = 1.6e-5
    assert depth_mm(slow, 380e3, 23) / depth_mm(slow * levels()[level].rate_up, 380e3, 23) == pytest.approx(over, rel=0.05)


def test_ratios_by_weight_and_by_volume_that_go_together() -> None:  # RATIO
    assert ratio_gap(Ratio(100, 42.6), 2, 1, 1150, 980) == pytest.approx(0, abs=0.001)
    assert ratio_gap(Ratio(100, 45), 100, 50.3, 1130, 1010) == pytest.approx(0, abs=0.001)
    assert hardener_over_resin(Ratio(100, 45), 100, 50.3) == pytest.approx(1.01 / 1.13, abs=0.001)
