"""The clock of resin that has the temperature of the shop."""

from __future__ import annotations

import pytest

from calc.casting.cure.clock import DAY, Shop, march, time_hard
from calc.casting.cure.kinetics import Kinetics

HOUR = 3600.0
STANDARD = Kinetics(8.8e-5)
STEADY = Shop(293.15, 293.15)
COLD_NIGHT = Shop(293.15, 285.15, poured=14.5 * HOUR, night_from=21 * HOUR, night_to=7 * HOUR)


def test_the_night_comes_round_midnight() -> None:
    assert COLD_NIGHT.at(0) == 293.15
    assert COLD_NIGHT.at(6.4 * HOUR) == 293.15 and COLD_NIGHT.at(6.6 * HOUR) == 285.15
    assert COLD_NIGHT.at(16.4 * HOUR) == 285.15 and COLD_NIGHT.at(16.6 * HOUR) == 293.15
    assert COLD_NIGHT.at(6.6 * HOUR + 3 * DAY) == 285.15


def test_the_next_change_of_temperature() -> None:
    assert COLD_NIGHT.next_change(0) == 6.5 * HOUR
    assert COLD_NIGHT.next_change(6.5 * HOUR) == 16.5 * HOUR
    assert STEADY.next_change(0) == float("inf")


def test_a_night_of_no_length_is_none() -> None:
    shop = Shop(293.15, 285.15, night_from=HOUR, night_to=HOUR)
    assert shop.steady and shop.coldest_k == shop.at(2 * HOUR) == 293.15


def test_marching_agrees_with_the_integral() -> None:
    """The integral is worked out another way: over the conversion, not over time."""
    for hours in (2, 8, 24, 60):
        *_, (seconds, conversion) = march(STANDARD, STEADY.at, 0.0, 0.001, hours * HOUR)
        assert conversion == pytest.approx(STANDARD.conversion_after(seconds, 293.15, 0.001), abs=0.002)


@pytest.mark.parametrize("above", [-10.0, 5.0, 10.0])
def test_time_to_a_glass_agrees_with_the_integral(above: float) -> None:
    wanted = STANDARD.time_to(STANDARD.conversion_at_tg(293.15 + above), 293.15, 0.001)
    found = time_hard(STANDARD, STEADY, 0.0, 0.001, above, 30 * DAY)
    assert found == pytest.approx(wanted, rel=0.01)


def test_a_cold_night_puts_it_off_and_a_warm_one_does_not_bring_it_forward_of_the_warmest() -> None:
    steady, night = (time_hard(STANDARD, shop, 0.0, 0.001, 5.0, 30 * DAY) for shop in (STEADY, COLD_NIGHT))
    assert steady is not None and night is not None and night > steady


def test_what_is_not_reached_is_said() -> None:
    assert time_hard(STANDARD, STEADY, 0.0, 0.001, 5.0, HOUR) is None
    assert time_hard(STANDARD, STEADY, 0.0, 0.001, 80.0, 30 * DAY) is None


def test_the_mean_speed_lies_between_day_and_night() -> None:
    cold, mean, warm = STANDARD.speed_up(285.15), COLD_NIGHT.mean_speed_up(STANDARD), STANDARD.speed_up(293.15)
    assert cold < mean < warm
    assert STEADY.mean_speed_up(STANDARD) == warm
