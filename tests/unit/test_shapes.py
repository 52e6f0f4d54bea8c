"""Mould shapes and outlines: what contradicts itself, how errors move the volume, and what is drawn."""

from __future__ import annotations

import math

import pytest

from calc.casting import outlines
from calc.casting.hollow_shapes import Ball, Bowl, TaperedBox, TaperedRound, Trough
from calc.casting.shapes import Box, Cylinder, Ellipse, Outline, Polygon, Ring, Shape, Slot, Widths

EVERY: list[tuple[Shape, float]] = [
    (Cylinder(0.3), 0.06),
    (Ring(0.25, 0.15), 0.04),
    (Box(0.6, 0.2), 0.04),
    (Ellipse(0.3, 0.2), 0.04),
    (Slot(0.5, 0.18), 0.03),
    (Polygon(6, 0.2, "flats"), 0.05),
    (Polygon(5, 0.1, "side"), 0.05),
    (Polygon(7, 0.1, "corner"), 0.05),
    (Outline((0.0, 0.0, 0.18, 0.01, 0.24, 0.09, 0.2, 0.17, 0.09, 0.2, -0.02, 0.11)), 0.035),
    (Widths(0.6, (0.0, 0.135, 0.128, 0.14, 0.11)), 0.045),
    (TaperedRound(0.1, 0.12, 0.15), 0.09),
    (TaperedBox(0.38, 0.28, 0.4, 0.3, 0.05), 0.04),
    (Bowl(0.204, 0.04), 0.03),
    (Ball(0.08), 0.07),
    (Trough(0.1, 0.4), 0.06),
]
NAMES = [f"{type(shape).__name__}-{n}" for n, (shape, _) in enumerate(EVERY)]


@pytest.mark.parametrize("shape, depth", EVERY, ids=NAMES)
def test_the_plan_and_the_cut_are_to_size(shape: Shape, depth: float) -> None:
    """The outline drawn encloses the area reckoned, within what 48 corners lose of a circle; the widths one lies between its two rules."""
    outer, *holes = shape.plan(depth)
    drawn = outlines.enclosed_area(outer) - sum(outlines.enclosed_area(hole) for hole in holes)
    if not isinstance(shape, (Ball, Trough)):  # filled past the middle they are drawn at their widest
        assert drawn == pytest.approx(shape.area(depth), rel=0.08 if isinstance(shape, Widths) else 0.01)
    assert not any(outlines.crosses(loop) for loop in shape.plan(depth))
    heights = [z for loop in shape.cut(depth) for _, z in loop]
    assert min(heights) == pytest.approx(0) and max(heights) == pytest.approx(depth)


@pytest.mark.parametrize("shape, depth", EVERY, ids=NAMES)
def test_deeper_holds_more_by_the_area_of_the_surface(shape: Shape, depth: float) -> None:
    step = 1e-6
    assert (shape.volume(depth + step) - shape.volume(depth - step)) / (2 * step) == pytest.approx(shape.area(depth), rel=1e-5)
    assert shape.volume(0.0) == pytest.approx(0.0, abs=1e-12)


def test_an_error_of_a_size_moves_the_volume_by_its_own_rule() -> None:
    # cylinder 2 V/D; box V/L and V/W; ring 2 pi D h/4 and the core the other way; all per millimetre
    assert dict(Cylinder(0.3).moved(0.06, 0.001))["across"] == pytest.approx(2 * Cylinder(0.3).volume(0.06) / 0.3 * 0.001)
    box = dict(Box(0.6, 0.2).moved(0.04, 0.001))
    assert box == {"length": pytest.approx(0.2 * 0.04 * 0.001), "width": pytest.approx(0.6 * 0.04 * 0.001)}
    ring = dict(Ring(0.25, 0.15).moved(0.04, 0.001))
    assert ring == {"across": pytest.approx(math.pi * 0.25 / 2 * 0.04 * 0.001), "core": pytest.approx(-math.pi * 0.15 / 2 * 0.04 * 0.001)}


def test_every_corner_of_an_outline_counts_alone() -> None:
    square = Outline((0.0, 0.0, 0.2, 0.0, 0.2, 0.1, 0.0, 0.1))
    moved = [u for _, u in square.moved(0.05, 0.001)]
    # each corner moved outwards along x adds a triangle 100 mm high, along y one 200 mm long; all 50 mm deep
    along, across = 0.1 / 2 * 0.001 * 0.05, 0.2 / 2 * 0.001 * 0.05
    assert moved == pytest.approx([-along, -across, along, -across, along, across, -along, across])
    turned = Outline((0.0, 0.1, 0.2, 0.1, 0.2, 0.0, 0.0, 0.0))
    assert sorted(u for _, u in turned.moved(0.05, 0.001)) == pytest.approx(sorted(moved))


def test_a_size_at_its_limit_can_still_be_nudged() -> None:
    assert Slot(0.2, 0.2).volume(0.03) == pytest.approx(Cylinder(0.2).volume(0.03))
    assert len(Slot(0.2, 0.2).moved(0.03, 0.001)) == 2 and len(Bowl(0.2, 0.1).moved(0.1, 0.001)) == 2
    assert Ball(0.1).volume(0.1) == pytest.approx(math.pi * 0.1**3 / 6) and Ball(0.1).area(0.1) == 0
    assert Trough(0.1, 0.3).volume(0.1) == pytest.approx(Cylinder(0.1).volume(0.3))


@pytest.mark.parametrize(
    "make",
    [
        lambda: Ring(0.2, 0.2),
        lambda: Slot(0.1, 0.2),
        lambda: Polygon(5, 0.1, "flats"),
        lambda: Polygon(2, 0.1, "side"),
        lambda: Bowl(0.2, 0.11),
        lambda: Outline((0.0, 0.0, 1.0, 1.0, 1.0, 0.0, 0.0, 1.0)),
        lambda: Outline((0.0, 0.0, 1.0, 0.0, 1.0)),
    ],
)
def test_sizes_that_contradict_each_other(make: object) -> None:
    assert callable(make)
    with pytest.raises(ValueError):
        make()


@pytest.mark.parametrize(
    "corners, wrong",
    [
        ([(0, 0), (2, 0), (2, 1), (0, 1)], False),
        ([(0, 0), (2, 0), (2, 1), (1, 0.2), (0, 1)], False),  # a dent
        ([(0, 0), (2, 0), (0, 1), (2, 1)], True),
        ([(0, 0), (2, 0), (2, 1), (1, 0), (0, 1)], True),  # a dent down to the other side
        ([(0, 0), (2, 0), (2, 0), (0, 1)], True),  # one corner twice
        ([(0, 0), (2, 0), (1, 0), (0, 1)], True),  # back along the same line
    ],
)
def test_outlines_that_cross(corners: list[tuple[float, float]], wrong: bool) -> None:
    assert outlines.crosses(corners) is wrong
    assert outlines.crosses(corners[::-1]) is wrong and outlines.crosses([*corners[1:], corners[0]]) is wrong


def test_the_reach_is_what_a_level_counts_from() -> None:
    assert Cylinder(0.3).reach(0.06) == pytest.approx(0.15)
    assert Box(0.6, 0.2).reach(0.06) == pytest.approx(0.4)
    assert Ball(0.1).reach(0.1) == 0
    assert Polygon(6, 0.2, "flats").reach(0.05) == pytest.approx(0.1 / math.cos(math.pi / 6))
