"""What a casting can take at which hour."""

from __future__ import annotations

import pytest

from calc.casting.cure.cells import Footprint
from calc.casting.cure.clock import Shop
from calc.casting.cure.kinetics import Kinetics, resin_class
from calc.casting.cure.pour import Mould, Resin, Start
from calc.casting.cure.stages import LONGEST_S, Stages, stages
from calc.casting.cure.thermal import Wall, materials

HOUR = 3600.0
BOARD = Wall(materials()["board"], 0.016)
STEADY = Shop(293.15, 293.15)
NIGHT = Shop(293.15, 284.15, poured=14 * HOUR, night_from=21 * HOUR, night_to=7 * HOUR)


def of(kind: str, depth_m: float, shop: Shop = STEADY, tginf_k: float = 358.15) -> Stages:
    kinetics = Kinetics(resin_class(kind).kinetics.k25, resin_class(kind).kinetics.heat, tginf=tginf_k)
    return stages(Resin(kinetics), Mould(Footprint(0.1, 1.0), depth_m, BOARD, (BOARD,)), Start(shop.day_k, shop.day_k), shop)


@pytest.mark.parametrize(("kind", "depth"), [("slow", 0.03), ("standard", 0.01), ("fast", 0.003)])
def test_stages_come_in_their_order(kind: str, depth: float) -> None:
    found = of(kind, depth)
    hardening = [found.working_s, found.gel_s, found.gelled_s, found.dry_s, found.leave_s, found.rough_s]
    assert None not in hardening and hardening == sorted(hardening, key=lambda when: when or 0.0)
    cooling = [found.peak_s, found.loose_s, found.near_s, found.back_s]
    assert cooling == sorted(cooling, key=lambda when: when or 0.0)
    assert not found.ran_away


def test_what_stays_cool_keeps_to_the_integral() -> None:
    """A thin slow layer warms by a kelvin or so: a little sooner than resin that does not warm at all, which is worked out another way."""
    found, kinetics = of("slow", 0.004), resin_class("slow").kinetics
    for when, conversion in ((found.gel_s, 0.58), (found.rough_s, kinetics.conversion_at_tg(303.15))):
        alone = kinetics.time_to(conversion, 293.15, 0.001)
        assert when is not None and 0.93 * alone < when <= 1.01 * alone


def test_a_cold_night_puts_everything_off() -> None:
    steady, night = of("standard", 0.008), of("standard", 0.008, NIGHT)
    assert steady.gel_s == pytest.approx(night.gel_s, rel=0.02)  # set before the night came
    assert steady.rough_s is not None and night.rough_s is not None and night.rough_s > 1.2 * steady.rough_s


def test_a_slow_pour_lives_through_the_night() -> None:
    steady, night = of("slow", 0.03), of("slow", 0.03, NIGHT)
    assert steady.gel_s is not None and night.gel_s is not None and night.gel_s > 1.2 * steady.gel_s


def test_after_a_runaway_nothing_is_told() -> None:
    found = of("fast", 0.06)
    assert found.ran_away and found.leave_s is None and found.near_s is None


def test_a_resin_that_never_gets_that_hard_is_not_said_to() -> None:
    found = of("fast", 0.003, tginf_k=300.15)
    assert found.dry_s is not None and found.rough_s is None
    assert LONGEST_S == 60 * 86400


def test_the_history_ends_at_the_gel() -> None:
    found = of("standard", 0.01)
    times = [time for time, _, _ in found.history]
    assert times[0] == 0 and found.gel_s is not None and times[-1] <= found.gel_s
