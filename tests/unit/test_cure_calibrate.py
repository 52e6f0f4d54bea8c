"""From pot life, depth or test cup to a rate: what must hold whatever the resin."""

from __future__ import annotations

import pytest

from calc.casting.cure.calibrate import NoFit, bracket, meanings, pot_life, rate_from_depth, rate_from_pot_life, taken_as
from calc.casting.cure.cup_test import CupTest, fit, shaped
from calc.casting.cure.cups import dish, foam_cup, plastic_cup
from calc.casting.cure.kinetics import Kinetics
from calc.casting.cure.pour import Resin, Start, field_of
from calc.casting.cure.search import meeting
from calc.steps import at_once

ANY = Resin(Kinetics(1e-5))
ROOM = 296.15


@pytest.mark.parametrize("meaning", ["gel", "pour", "doubled", "hot50", "hot40"])
def test_a_rate_gives_back_its_pot_life(meaning: str) -> None:
    resin = ANY.at_rate(1.2e-4)
    printed = pot_life(resin, meanings()[meaning])
    assert printed is not None
    if meaning == "hot40":  # a sheet prints ten minutes or a fifth less
        printed -= min(600.0, 0.2 * printed)
    assert rate_from_pot_life(ANY, printed, meaning) == pytest.approx(1.2e-4, rel=0.02)


def test_the_less_a_pot_life_asks_the_slower_the_resin() -> None:
    rates = [rate_from_pot_life(ANY, 3 * 3600, meaning) for meaning in ("doubled", "unknown", "pour", "gel")]
    assert rates == sorted(rates)
    found = bracket(ANY, 3 * 3600)
    assert found.slowest < rates[0] and found.fastest > rates[-1]


def test_a_slow_cup_never_gets_as_hot_as_that() -> None:
    with pytest.raises(NoFit, match="never-so-hot"):
        rate_from_pot_life(ANY, 15 * 3600, "hot50")


def test_a_pot_life_of_unknown_end_goes_by_its_length() -> None:
    assert [taken_as("unknown", minutes * 60).conversion for minutes in (59, 61, 239, 241)] == [0.33, 0.25, 0.25, 0.19]


def test_a_deeper_layer_means_a_slower_resin() -> None:
    rates = [rate_from_depth(ANY, depth) for depth in (0.006, 0.02, 0.05)]
    assert rates == sorted(rates, reverse=True)
    assert rate_from_depth(ANY, 0.05, slowest=2e-5) == pytest.approx(2e-5)
    assert rate_from_depth(ANY, 0.05, fastest=8e-6) == pytest.approx(8e-6)


def seen(resin: Resin, test: CupTest) -> tuple[float, ...]:
    """The middle of the cup at the test's times, with the fine settings."""
    from calc.casting.cure.pour import FINE
    from calc.casting.cure.running import moments

    field = field_of(resin, test.vessel, test.start, FINE)
    found = []
    before = next(moments(field, FINE.pace))
    times = list(test.times_s)
    for one in moments(field, FINE.pace):
        while times and one.time_s >= times[0]:
            share = (times.pop(0) - before.time_s) / (one.time_s - before.time_s)
            found.append(before.hottest_k + share * (one.hottest_k - before.hottest_k))
        before = one
        if not times:
            return tuple(found)
    raise AssertionError


def test_a_cup_gives_back_its_resin() -> None:
    """Made with the fine settings, read with the coarse ones: rate, heat and shape come back within the band of a test cup."""
    true = Resin(shaped(Kinetics(2.4e-5, 400e3), 0.7))
    hours = (1, 3, 5, 7, 8, 9, 10, 12, 14, 18)
    blank = CupTest(foam_cup(0.3, true), Start(ROOM, ROOM), tuple(3600.0 * hour for hour in hours), (), 0.0)
    temperatures = seen(true, blank)
    gel = pot_life_of_cup(true, blank)
    found = fit(CupTest(blank.vessel, blank.start, blank.times_s, temperatures, gel), ANY)
    assert found.off_k < 0.6
    assert found.gel_s == pytest.approx(gel, rel=0.06)
    assert found.kinetics.k25 == pytest.approx(2.4e-5, rel=0.25)
    assert found.kinetics.heat == pytest.approx(400e3, rel=0.1)


def pot_life_of_cup(resin: Resin, test: CupTest) -> float:
    from calc.casting.cure.pour import FINE

    field = field_of(resin, test.vessel, test.start, FINE)
    dt = 1.0
    while field.mean_a() < 0.58:
        _, dt = field.advance(dt, FINE.pace)
    return field.time_s


@pytest.mark.parametrize(("hottest", "code"), [(ROOM + 5, "rise-low"), (ROOM + 80, "rise-high")])
def test_a_cup_that_warmed_too_little_or_too_much_is_not_fitted(hottest: float, code: str) -> None:
    test = CupTest(plastic_cup(0.1, ANY), Start(ROOM, ROOM), (3600.0, 7200.0), (ROOM + 1, hottest), 9000.0)
    with pytest.raises(NoFit, match=code):
        fit(test, ANY)


def test_foam_keeps_a_cup_warmer_and_a_dish_colder() -> None:
    from calc.casting.cure.pour import COARSE
    from calc.casting.cure.running import peak_of

    resin, start = ANY.at_rate(2e-5), Start(ROOM, ROOM)
    peaks = [peak_of(resin, mould, start, COARSE) for mould in (dish(0.01), plastic_cup(0.1, resin), foam_cup(0.1, resin))]
    assert peaks == sorted(peaks)


@pytest.mark.parametrize(("target", "expected"), [(310.0, 1.0), (301.0, 0.1), (400.0, 10.0), (300.5, 0.1)])
def test_an_end_comes_back_where_it_does_not_meet(target: float, expected: float) -> None:
    found = at_once(meeting(lambda x: 300 + 10 * x, 300.0, target, 0.5, 0.1, 10.0))
    assert found == pytest.approx(expected, rel=0.02)


def test_a_peak_that_is_told_only_up_to_a_cap() -> None:
    tries = []

    def peak(x: float) -> float:
        tries.append(x)
        return min(300 + 20 / max(1.3 - x, 1e-6), 360.0)

    found = at_once(meeting(peak, 300.0, 340.0, 4.0, 0.01, 10.0, 360.0))
    assert found == pytest.approx(0.8, rel=0.02)
    assert len(tries) < 10
