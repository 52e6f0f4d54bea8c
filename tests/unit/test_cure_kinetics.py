"""The cure reaction: what holds whatever the resin."""

from __future__ import annotations

import pytest

from calc.casting.cure.kinetics import GEL, MOST, Kinetics, resin_class, resin_classes

SLOW = resin_class("slow").kinetics


def test_glass_transition_runs_from_one_end_to_the_other() -> None:
    assert SLOW.tg(0) == SLOW.tg0 and SLOW.tg(1) == pytest.approx(SLOW.tginf)
    temperatures = [SLOW.tg(share / 20) for share in range(21)]
    assert temperatures == sorted(temperatures)


@pytest.mark.parametrize("conversion", [0.1, 0.58, 0.75, 0.9])
def test_the_glass_transition_line_read_backwards(conversion: float) -> None:
    assert SLOW.conversion_at_tg(SLOW.tg(conversion)) == pytest.approx(conversion)


@pytest.mark.parametrize("conversion", [0.05, 0.33, 0.58, 0.7])
def test_time_and_conversion_are_each_others_inverse(conversion: float) -> None:
    seconds = SLOW.time_to(conversion, 293.15, 0.001)
    assert SLOW.conversion_after(seconds, 293.15, 0.001) == pytest.approx(conversion, rel=1e-6)


def test_the_glass_only_ever_holds_back() -> None:
    free = Kinetics(SLOW.k25, brake=False)
    assert SLOW.time_to(0.75, 293.15) > free.time_to(0.75, 293.15)
    assert SLOW.time_to(0.5, 293.15) == free.time_to(0.5, 293.15)
    assert all(SLOW.rate(a / 100, 293.15) <= free.rate(a / 100, 293.15) for a in range(100))


def test_a_reaction_that_is_done_stands_still() -> None:
    assert SLOW.rate(MOST, 400.0) == 0.0
    assert SLOW.conversion_after(1e12, 400.0) == MOST


def test_slower_kinds_come_first_and_their_ranges_hold_their_middle() -> None:
    kinds = resin_classes()
    assert [kind.kinetics.k25 for kind in kinds] == sorted(kind.kinetics.k25 for kind in kinds)
    assert all(kind.k25_low < kind.kinetics.k25 < kind.k25_high for kind in kinds)
    assert all(kind.kinetics.time_to(GEL, 298.15) > kind.kinetics.time_to(kind.conversion, 298.15) for kind in kinds)


def test_a_kind_that_is_not_there_is_named() -> None:
    with pytest.raises(LookupError, match="'quick'"):
        resin_class("quick")
