"""How deep a pour may be, against a second solver.

KINDS: depths at which slab, disc and pillar of each kind reach 45 and 65 °C; 16 mm board, raised, 23 °C; told to the tenth or the millimetre.
SHOP: the slow kind's depth for 65 °C in shops of 16 to 29 °C.
POWERS: that depth goes with the rate to the power -0.87 and the heat to the power -1.2.
LAYERS: 30 mm on 30 mm, rate 1.7e-5, after so many hours; and both at once.
CHANGES: what one change does to the peak of a 40 mm slab, rate 1.7e-5; told to the kelvin by that solver.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from calc.casting.cure.calibrate import wide
from calc.casting.cure.cells import round_footprint
from calc.casting.cure.clock import Shop
from calc.casting.cure.depth import critical_depth_steps, critical_width_steps
from calc.casting.cure.kinetics import Kinetics
from calc.casting.cure.pour import FINE, ROUGH, Mould, Resin, Start, field_of
from calc.casting.cure.running import go_on, peak_of, run
from calc.casting.cure.stages import next_layer, stages
from calc.casting.cure.thermal import Films, Wall, materials
from calc.constants import ZERO_C
from calc.steps import at_once

M = materials()
BOARD = Wall(M["board"], 0.016)
SHOP = Start(ZERO_C + 23, ZERO_C + 23)


def deepest(k25: float, heat: float, mould: Mould, target_c: float = 65, start: Start = SHOP) -> float:
    resin = Resin(Kinetics(k25, heat * 1e3))
    return at_once(critical_depth_steps(resin, mould, start, 0.02, ROUGH, ZERO_C + target_c)) * 1e3


@pytest.mark.parametrize(
    ("k25", "heat", "target", "slab", "disc", "pillar"),
    [  # KINDS
        (1.6e-5, 380, 45, 37, 71, 64), (1.6e-5, 380, 65, 42, 91, 71),
        (8.8e-5, 380, 45, 8.7, 10.6, 21), (8.8e-5, 380, 65, 10.1, 12.6, 24),
        (2.9e-4, 300, 45, 4.5, 4.9, 13.4), (2.9e-4, 300, 65, 5.7, 6.1, 15.8),
    ],
)
def test_depth_of_each_kind(k25: float, heat: float, target: float, slab: float, disc: float, pillar: float) -> None:
    assert deepest(k25, heat, wide(0.03), target) == pytest.approx(slab, rel=0.03)
    assert deepest(k25, heat, Mould(round_footprint(0.1), 0.03, BOARD, (BOARD,)), target) == pytest.approx(disc, rel=0.03)
    resin, post = Resin(Kinetics(k25, heat * 1e3)), Mould(round_footprint(0.05), 0.3, BOARD, (BOARD,))
    width = 50 * at_once(critical_width_steps(resin, post, SHOP, 1.0, ROUGH, ZERO_C + target))
    assert width == pytest.approx(pillar, abs=0.5 + 0.015 * pillar)  # half its last digit, and the rough cut


@pytest.mark.parametrize(("celsius", "depth"), [(16, 64), (18, 57), (20, 50), (23, 42), (26, 35), (29, 29)])  # SHOP
def test_a_warmer_shop_allows_less(celsius: float, depth: float) -> None:
    assert deepest(1.6e-5, 380, wide(0.03), start=Start(ZERO_C + celsius, ZERO_C + celsius)) == pytest.approx(depth, rel=0.025)


def test_depth_goes_with_powers_of_rate_and_heat() -> None:
    plain, faster, hotter = deepest(1.7e-5, 380, wide(0.03)), deepest(3.4e-5, 380, wide(0.03)), deepest(1.7e-5, 418, wide(0.03))
    assert math.log(faster / plain) / math.log(2) == pytest.approx(-0.87, abs=0.04)  # POWERS
    assert math.log(hotter / plain) / math.log(1.1) == pytest.approx(-1.2, abs=0.08)


@pytest.mark.parametrize(("hours", "peak"), [(14, 163), (18, 109), (22, 73), (26, 58), (30, 52), (36, 46), (48, 43), (72, 41)])  # LAYERS
def test_a_second_layer(hours: float, peak: float) -> None:
    resin = Resin(Kinetics(1.7e-5))
    first = field_of(resin, wide(0.03), SHOP, ROUGH)
    go_on(first, hours * 3600, ROUGH.pace)
    found = peak_of(resin, wide(0.03), SHOP, ROUGH, ZERO_C + 300, first) - ZERO_C
    assert found == pytest.approx(peak, abs=max(1.5, 0.03 * (peak - 23)))


def test_one_layer_alone_and_both_at_once() -> None:
    resin = Resin(Kinetics(1.7e-5))
    assert peak_of(resin, wide(0.03), SHOP, FINE) - ZERO_C == pytest.approx(36.5, abs=0.5)  # LAYERS
    assert peak_of(resin, wide(0.06), SHOP, FINE, ZERO_C + 300) - ZERO_C == pytest.approx(187, abs=5)


def test_when_the_next_layer_may_go_on_and_until_when_it_bonds() -> None:
    resin = Resin(Kinetics(1.7e-5))
    window = next_layer(stages(resin, wide(0.03), SHOP, Shop(SHOP.air_k, SHOP.air_k), FINE), 1.0)
    assert window.first_s is not None and window.last_s is not None
    assert window.first_s / 3600 == pytest.approx(28, rel=0.12)  # LAYERS; ours takes the mean of the skin, its rim too
    assert window.last_s / 3600 == pytest.approx(48, rel=0.15)


_RESIN = Resin(Kinetics(1.7e-5))
_FOUR = wide(0.04)
_ALUMINIUM = Wall(M["aluminium"], 0.003)
_BENCH = Wall(M["plywood"], 0.04)


@pytest.mark.parametrize(
    ("name", "resin", "mould", "change"),
    [  # CHANGES
        ("rate up", _RESIN.faster(1.2), _FOUR, 61),
        ("rate down", _RESIN.faster(1 / 1.2), _FOUR, -26),
        ("heat up", replace(_RESIN, kinetics=replace(_RESIN.kinetics, heat=418e3)), _FOUR, 59),
        ("heat down", replace(_RESIN, kinetics=replace(_RESIN.kinetics, heat=342e3)), _FOUR, -22),
        ("films up", _RESIN, replace(_FOUR, films=Films(factor=1.2)), -18),
        ("films down", _RESIN, replace(_FOUR, films=Films(factor=0.8)), 40),
        ("conductivity down", replace(_RESIN, conductivity=0.17), _FOUR, 18),
        ("conductivity up", replace(_RESIN, conductivity=0.23), _FOUR, -10),
        ("deeper", _RESIN, wide(0.044), 39),
        ("shallower", _RESIN, wide(0.036), -21),
        ("on a bench", _RESIN, replace(_FOUR, below=(_BENCH, BOARD)), 33),
        ("fan", _RESIN, replace(_FOUR, films=Films(fan=True)), -23),
        ("aluminium", _RESIN, replace(_FOUR, side=_ALUMINIUM, below=(_ALUMINIUM,)), -34),
        ("bare aluminium", _RESIN, replace(_FOUR, side=_ALUMINIUM, below=(_ALUMINIUM,), films=Films(bare=True)), -21),
        ("polyethylene", _RESIN, replace(_FOUR, side=Wall(M["hdpe"], 0.003), below=(Wall(M["hdpe"], 0.003),)), -26),
        ("silicone", _RESIN, replace(_FOUR, side=Wall(M["silicone"], 0.008), below=(Wall(M["silicone"], 0.008),)), -23),
        ("some wood", _RESIN, replace(_FOUR, wood_share=0.2), -29),
        ("much wood", _RESIN, replace(_FOUR, wood_share=0.4), -37),
    ],
)
def test_what_one_change_does_to_the_peak(name: str, resin: Resin, mould: Mould, change: float) -> None:
    assert peak_of(resin, mould, SHOP, FINE) - peak_of(_RESIN, _FOUR, SHOP, FINE) == pytest.approx(change, abs=max(4.0, 0.12 * abs(change)))


@pytest.mark.parametrize(("celsius", "change"), [(26, 64), (20, -31)])  # CHANGES
def test_what_the_shop_does_to_the_peak(celsius: float, change: float) -> None:
    start = Start(ZERO_C + celsius, ZERO_C + celsius)
    assert peak_of(_RESIN, _FOUR, start, FINE) - peak_of(_RESIN, _FOUR, SHOP, FINE) == pytest.approx(change, abs=max(3.0, 0.12 * abs(change)))


def test_when_and_how_hot_the_plain_slab_is() -> None:
    course = run(_RESIN, _FOUR, SHOP, FINE, "peak")
    assert course.peak.hottest_k - ZERO_C == pytest.approx(70, abs=2.5)  # CHANGES
    assert course.peak.time_s / 3600 == pytest.approx(14.6, rel=0.02)
