"""Kits, demand, the order of filling, a pour half done and the top-up."""

from __future__ import annotations

import itertools
import math
import random

import pytest

from calc.casting import budget, kits, level
from calc.casting import sufficiency as enough
from calc.casting.budget import Spread
from calc.casting.sufficiency import Demand, Portion, Wood


def test_kits_against_every_combination() -> None:
    rng = random.Random(11)
    for _ in range(200):
        sizes = [rng.choice((0.5, 0.75, 1.0, 1.134, 1.5, 2.0, 3.0)) for _ in range(rng.randint(1, 3))]
        prices = [rng.randint(5, 60) for _ in sizes]
        stock = [rng.randint(0, 3) for _ in sizes]
        wanted = rng.uniform(0.3, 6)
        ways = [way for way in itertools.product(*(range(n + 1) for n in stock)) if sum(n * s for n, s in zip(way, sizes, strict=True)) >= wanted]
        least, cheap = kits.fewest_left(wanted, sizes, stock, prices), kits.cheapest(wanted, sizes, prices, stock)
        if not ways:
            assert least is None and cheap is None
            continue
        assert least is not None and cheap is not None and cheap.price is not None
        assert least.left == pytest.approx(min(sum(n * s for n, s in zip(way, sizes, strict=True)) for way in ways) - wanted)
        assert cheap.price == pytest.approx(min(sum(n * p for n, p in zip(way, prices, strict=True)) for way in ways))
        assert least.kits == sum(least.counts) and all(n <= most for n, most in zip(least.counts, stock, strict=True))


def test_kits_of_exactly_the_amount_are_enough() -> None:
    assert kits.fewest_left(4.5, [1.5]) == kits.Choice((3,), 0.0)
    assert kits.fewest_left(0.3, [0.1]) is not None
    found = kits.fewest_left(0.3, [0.1])
    assert found is not None and found.counts == (3,)  # 3 x 0.1 is a hair over 0.3 in floats


def test_too_many_ways_are_not_tried() -> None:
    assert not kits.can_be_tried(200, [0.5]) and not kits.can_be_tried(40, [1, 1.1, 1.2, 1.3]) and not kits.can_be_tried(1, [1, 2, 3, 4, 5])
    with pytest.raises(ValueError):
        kits.fewest_left(200, [0.5])


def test_few_readings_ask_for_more() -> None:
    assert budget.amount_for(0.95, 100, 1, 3) > budget.amount_for(0.95, 100, 1) > 100
    assert budget.amount_for(0.05, 100, 1, 3) == pytest.approx(200 - budget.amount_for(0.95, 100, 1, 3))
    assert budget.odds_of_enough(100, 100, 0) == 1 and budget.odds_of_enough(99.9, 100, 0) == 0
    with pytest.raises(ValueError):
        budget.repeated([1.0])


def test_student_passes_into_the_normal_without_a_step() -> None:
    assert budget.deviate(0.95, 0.9e6) == pytest.approx(budget.deviate(0.95, 1.1e6), abs=1e-5)
    assert budget.below(1.3, 0.9e6) == pytest.approx(budget.below(1.3), abs=1e-6)


def test_moulds_alike_are_off_alike_and_others_are_not() -> None:
    one = Demand(1.0, (Spread("wood", 0.1),))
    assert one.times(4).u == pytest.approx(0.4)  # one tape, one density: the error comes four times
    assert one.plus(one, one, one).u == pytest.approx(0.2)


def test_wood_takes_off_more_than_it_soaks_in() -> None:
    room = Demand(1.0, ())
    assert enough.resin_in_mould(room, Wood(0.4, 0.04, 0.05, 0.05)).likely == pytest.approx(1 - 0.4 * 0.95)
    assert enough.resin_in_mould(room, Wood(0.5, 0.05, 0.05, 0.05)).likely < enough.resin_in_mould(room, Wood(0.4, 0.04, 0.05, 0.05)).likely


def test_the_loss_is_of_each_batch() -> None:
    assert enough.lost(0.001, 1).likely == pytest.approx(30e-6)  # 15 mL would be 1.5 %
    assert enough.lost(0.001, 3).likely == pytest.approx(90e-6)
    assert enough.lost(0.010, 1).likely == pytest.approx(150e-6)
    assert enough.lost(0.010, 1).u == pytest.approx(100e-6 / math.sqrt(3), rel=1e-5)


def test_a_part_measured_better_saves_its_own_share() -> None:
    whole = Demand(100.0, (Spread("wood", 8.0), Spread("depth", 6.0)))
    assert whole.but("wood", 2.0).u == pytest.approx(math.hypot(2, 6)) and whole.but("wood", 9.0).u == pytest.approx(10)
    assert [part.name for part in whole.by_name()] == ["wood", "depth"]


def test_filling_order_leaves_the_shortage_where_it_hurts_least() -> None:
    table, clear, backing = Portion("table", Demand(2.0, ())), Portion("clear", Demand(0.5, ())), Portion("backing", Demand(0.4, ()), 0.2)
    assert [one.name for one in enough.filling_order([backing, table, clear])] == ["clear", "table", "backing"]
    odds = enough.odds_along(enough.filling_order([table, clear]), 2.2)
    assert odds == [1.0, 0.0]


def test_odds_along_never_rise() -> None:
    order = [Portion(str(n), Demand(1.0, (Spread("wood", u),))) for n, u in enumerate((0.5, 0.01, 0.9))]
    odds = enough.odds_along(order, 2.5)
    assert odds == sorted(odds, reverse=True)


def test_a_level_read_at_the_line_leaves_only_the_reading() -> None:
    whole = Demand(1000.0, (Spread("wood", -80.0), Spread("density", 10.0)))
    after = enough.corrected(whole, whole, 1100.0, 5.0)
    assert after.likely == pytest.approx(1100, abs=1) and after.u == pytest.approx(5, abs=0.1)


def test_a_level_that_says_nothing_changes_nothing() -> None:
    whole, nothing = Demand(1000.0, (Spread("wood", -80.0),)), Demand(0.0, (Spread("wood", 0.0),))
    assert enough.corrected(whole, nothing, 50.0, 0.0) == Demand(1000.0, (Spread("left", 80.0),))
    assert enough.corrected(whole, whole, 1300.0, 1e9).likely == 1300.0  # never less than is in it already
    with pytest.raises(ValueError):
        enough.corrected(whole, Demand(1.0, (Spread("depth", 1.0),)), 1.0, 1.0)


def test_a_wedge_reaches_a_full_floor_without_a_step() -> None:
    r, slope = 0.15, 0.02
    assert level.wedge_in_a_round(r, r, slope) == pytest.approx(math.pi * r**2 * slope * r)  # area times the depth in the middle
    assert level.wedge_in_a_round(r, -r, slope) == pytest.approx(0, abs=1e-12)
    with pytest.raises(ValueError):
        level.wedge_in_a_round(r, 0.2, slope)


def test_the_later_top_up_is_what_shrinks_and_what_a_pot_squeezes() -> None:
    found = enough.top_up(0.002, 48e-6, 0.045, 0.025, 0.02)
    assert (found.soon, found.later, found.later_off) == (48e-6, pytest.approx(130e-6), pytest.approx(50e-6))
