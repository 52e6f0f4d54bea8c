"""Outlines cut to a circle, to straight sides and to each other; the centre about which what is left is in balance."""

from __future__ import annotations

import math

import pytest

from calc.turning import clipping, make_up, rebalance, wood_shapes
from calc.turning.clipping import Outline
from calc.turning.make_up import Blank, Wood


def test_a_circle_wholly_inside_or_outside() -> None:
    square = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
    assert clipping.inside_circle(square, 2.0).area == pytest.approx(4.0)
    assert clipping.inside_circle(square, 0.5).area == pytest.approx(math.pi / 4)
    assert clipping.inside_circle(clipping.moved(square, 5.0, 0.0), 2.0).area == pytest.approx(0.0, abs=1e-12)
    assert clipping.inside_convex(clipping.moved(square, 5.0, 0.0), square) == ()


def test_a_centre_cut_in_balance_is_in_balance() -> None:
    blank = Blank(0.300, 0.050, 1150)
    woods = [Wood(wood_shapes.round_wood(0.060, (0.020, 0.010)), 700, 0.050), Wood(wood_shapes.round_wood(0.040, (-0.040, 0.0)), 900, 0.050)]
    at = rebalance.balanced_centre(blank, woods)
    assert at is not None
    across = make_up.true_round(blank, at)
    assert make_up.weigh(blank, woods, at, across).unbalance < 1e-3 * make_up.weigh(blank, woods).unbalance * 1.01


SQUARE = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))
HOOK = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (3.0, 4.0), (3.0, 1.0), (0.0, 1.0))  # 4 + 3 = 7


def _shared(one: tuple[tuple[float, float], ...], other: tuple[tuple[float, float], ...]) -> float:
    return sum(sign * kept.whole.area for sign, kept in clipping.common(Outline(one), Outline(other)))


@pytest.mark.parametrize("back", [False, True])
def test_what_two_outlines_share(back: bool) -> None:
    """A hook in a square, beside one, and laid over itself turned half round: it meets itself in two corners of 1 each."""
    hook = HOOK[::-1] if back else HOOK
    assert _shared(hook, SQUARE) == pytest.approx(7) and _shared(SQUARE, hook) == pytest.approx(7)
    assert clipping.common(Outline(hook), Outline(clipping.moved(SQUARE, 4.0, 0.0))) == ()
    over = tuple((4.0 - x, 4.0 - y) for x, y in HOOK)
    assert _shared(hook, over) == pytest.approx(2) and _shared(over, hook) == pytest.approx(2)
    assert _shared(hook, HOOK) == pytest.approx(7)


def test_one_wholly_in_another_or_in_its_notch() -> None:
    hook, small = Outline(HOOK), ((0.0, 0.0), (0.3, 0.0), (0.3, 0.3), (0.0, 0.3))
    in_arm, in_notch = Outline(clipping.moved(small, 3.3, 2.0)), Outline(clipping.moved(small, 1.0, 2.0))
    assert clipping.common(hook, in_arm) == clipping.common(in_arm, hook) == ((1, in_arm),)
    assert clipping.common(hook, in_notch) == clipping.common(in_notch, hook) == ()
