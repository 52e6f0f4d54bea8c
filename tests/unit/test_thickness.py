"""Thickness, stacks and hoops: edges, and the layers held against a warped plate that is cut point by point."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from calc.casting import stack, thickness, walls
from calc.casting.stack import Joint
from calc.casting.thickness import Budget, Lies

WARPED = {"top": 0.003, "under": 0.002, "warp": 0.0015, "bow": 0.001, "cover": 0.004, "cover_under": 0.005}


@pytest.mark.parametrize(
    "impossible",
    [
        lambda: Budget(0),
        lambda: Budget(0.04, top=-0.001),
        lambda: Budget(0.04, drop=1.0),
        lambda: thickness.mould_across(0, 0.006),
        lambda: Joint("dowel", 0),
        lambda: Joint("tenon", 0.010, 0.010),
        lambda: stack.parts([0.04, 0], Joint("flat"), 0),
        lambda: walls.strips_needed(0.3, 0.04, 0.001, 0.04),
        lambda: walls.strip_length(0, 0.04),
    ],
)
def test_the_impossible_is_refused(impossible: Callable[[], object]) -> None:
    with pytest.raises(ValueError, match=r"\S"):
        impossible()


@pytest.mark.parametrize("up", [1, -1], ids=["dished", "domed"])
@pytest.mark.parametrize("lies", ["none", "under", "inside"])
def test_a_warped_plate_cut_flat(lies: Lies, up: int) -> None:
    """Every point of the plate is followed: what two flat cuts leave, and the least resin over and under the wood."""
    budget = Budget(0.040, lies=lies, **WARPED)
    floor = [up * budget.warp * (n / 50) ** 2 for n in range(-50, 51)]
    low_cut = max(floor) + budget.under
    high_cut = min(z + budget.cured for z in floor) - budget.top
    assert high_cut - low_cut == pytest.approx(budget.finished)
    wood = 0.015
    top_of_wood = [z + budget.raised + budget.bow + wood for z in floor]
    assert high_cut - max(top_of_wood) == pytest.approx(budget.over(wood))
    if lies == "inside":
        assert min(z + budget.raised for z in floor) - low_cut == pytest.approx(budget.cover_under)


def test_a_slab_that_shows_on_both_faces_is_as_thick_as_all_that_is_cut_away() -> None:
    budget = Budget(0.040, lies="through", **WARPED)
    assert budget.slab == pytest.approx(0.040 + 0.003 + 0.002 + 0.0015 + 0.001)
    assert budget.left_of_slab(budget.slab) == pytest.approx(0.040)
    assert Budget(0.040, lies="under", **WARPED).slab is None and budget.most_wood is None


def test_the_thickest_wood_keeps_its_cover() -> None:
    for lies in ("under", "inside"):
        budget = Budget(0.040, lies=lies, **WARPED)  # type: ignore[arg-type]
        assert budget.most_wood is not None and budget.over(budget.most_wood) == pytest.approx(budget.cover)
        thicker = Budget(budget.for_wood(0.050), lies=lies, **WARPED)  # type: ignore[arg-type]
        assert thicker.over(0.050) == pytest.approx(budget.cover)


def test_the_depth_leaves_the_finished_thickness() -> None:
    budget = Budget(0.040, tilt=0.0005, drop=0.03, **WARPED)
    assert budget.left(budget.depth) == pytest.approx(0.040)
    assert budget.left(0.0) < 0 and budget.after(0.0) == 0.0


@pytest.mark.parametrize(
    ("kind", "sockets", "casts"),
    [("dowel", (1, 2, 1), (0.043, 0.123, 0.028)), ("tenon", (0, 1, 1), (0.057, 0.137, 0.028)), ("flat", (0, 0, 0), (0.043, 0.123, 0.028))],
)
def test_three_parts(kind: stack.Kind, sockets: tuple[int, ...], casts: tuple[float, ...]) -> None:
    joint = Joint(kind) if kind == "flat" else Joint(kind, 0.015, 0.001)
    found = stack.parts([0.040, 0.120, 0.025], joint, 0.0015)
    assert tuple(part.sockets for part in found) == sockets
    assert [part.cast for part in found] == pytest.approx(list(casts))
    if kind == "flat":
        assert math.isinf(stack.deepest_socket(found, 0.006))


@pytest.mark.parametrize("longest", [0.200, 0.300, 0.500, 1.0, 2.0])
def test_as_few_strips_as_go_round(longest: float) -> None:
    count = walls.strips_needed(0.300, 0.040, 0.0015, longest)
    assert walls.strip_length(0.300, 0.040, 0.0015, count) / count <= longest
    if count > 1:
        assert walls.strip_length(0.300, 0.040, 0.0015, count - 1) / (count - 1) > longest


def test_more_laps_stand_rounder_than_two() -> None:
    losses = [0.300 - walls.narrowest(0.300, 0.040, laps) for laps in (2, 3, 4, 8)]
    assert losses == sorted(losses, reverse=True) and losses[0] == pytest.approx(0.040 / math.pi)
