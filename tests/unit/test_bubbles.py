"""Bubbles that rise in resin that thickens."""

from __future__ import annotations

import math

import pytest

from calc.casting import bubbles

STEADY = [(60.0 * minute, 298.15, 0.0) for minute in range(61)]
CURING = [(60.0 * minute, 298.15, 0.01 * minute) for minute in range(61)]


def test_no_bubble_rises_in_a_gel() -> None:
    assert bubbles.thickening(0.57) < math.inf and bubbles.thickening(0.58) == math.inf
    so_far = bubbles.fluidity(CURING, 1.0)
    assert so_far[-1][1] == so_far[-2][1]


def test_thicker_as_it_cures_and_thinner_as_it_warms() -> None:
    grown = [bubbles.thickening(a / 100) for a in range(58)]
    assert grown[0] == 1 and grown == sorted(grown)
    assert bubbles.viscosity_at(308.15, 0.1, 1.0) < bubbles.viscosity_at(298.15, 0.1, 1.0)


def test_the_finest_bubble_that_gets_out_gets_out_at_the_end() -> None:
    so_far = bubbles.fluidity(CURING, 0.8)
    width = bubbles.smallest_out(0.030, so_far[-1][1], 1100)
    assert bubbles.time_out(0.030, width * 1.0001, 1100, so_far) is not None
    assert bubbles.time_out(0.030, width * 0.9999, 1100, so_far) is None


def test_in_resin_that_does_not_cure_it_is_the_plain_speed() -> None:
    out = bubbles.time_out(0.030, 0.0005, 1100, bubbles.fluidity(STEADY, 0.8))
    assert out == pytest.approx(0.030 / bubbles.rise_speed(0.00025, 0.8, 1100))


def test_a_wider_bubble_is_out_sooner_and_curing_holds_it_up() -> None:
    steady, curing = bubbles.fluidity(STEADY, 0.8), bubbles.fluidity(CURING, 0.8)
    wide, fine = (bubbles.time_out(0.030, width, 1100, steady) for width in (0.001, 0.0004))
    assert wide is not None and fine is not None and wide < fine
    late = bubbles.time_out(0.030, 0.0004, 1100, curing)
    assert late is not None and late > fine
