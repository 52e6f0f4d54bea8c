"""A shop that cools by night, and resin at a temperature that is given."""

from __future__ import annotations

import pytest

from calc.casting.cure.clock import DAY, Shop, march
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


def test_a_colder_night_slows_it() -> None:
    steady, night = ([*march(STANDARD, shop.at, 0.0, 0.001, 12 * HOUR)][-1] for shop in (STEADY, COLD_NIGHT))
    assert night[1] < steady[1]


def test_the_mean_speed_lies_between_day_and_night() -> None:
    cold, mean, warm = STANDARD.speed_up(285.15), COLD_NIGHT.mean_speed_up(STANDARD), STANDARD.speed_up(293.15)
    assert cold < mean < warm
    assert STEADY.mean_speed_up(STANDARD) == warm
