"""Centre of mass of blanks with woods in them by shapely's polygons, against our exact clipping; random outlines, sizes and mountings."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence

import numpy as np
import pytest
from scipy.optimize import fsolve
from shapely import Point, Polygon, affinity, box
from shapely.geometry.base import BaseGeometry

from calc.turning import clipping, make_up, rebalance
from calc.turning.make_up import Blank, Wood

FINE = 400  # segments to a quarter of a circle: area within 3e-6


def _disc(across: float, x: float = 0.0, y: float = 0.0) -> BaseGeometry:
    return Point(x, y).buffer(across / 2, quad_segs=FINE)


def _star(rng: random.Random, reach: float) -> list[tuple[float, float]]:
    """An outline that goes in and out, round a middle of its own, so that it never crosses itself."""
    x, y = rng.uniform(-reach / 2, reach / 2), rng.uniform(-reach / 2, reach / 2)
    turns = sorted(rng.uniform(0, 2 * math.pi) for _ in range(rng.randint(5, 14)))
    return [(x + far * math.cos(turn), y + far * math.sin(turn)) for turn in turns for far in [rng.uniform(0.1, 1.1) * reach]]


def _weighed(blank: Blank, woods: Sequence[Wood], axis: tuple[float, float], turned: float | None) -> tuple[float, float, float]:
    """Mass and moments about the axis by shapely."""
    shape = _disc(blank.across_m) if blank.width_m is None else box(-blank.across_m / 2, -blank.width_m / 2, blank.across_m / 2, blank.width_m / 2)
    if turned is not None:
        shape = shape.intersection(_disc(turned, *axis))
    parts = [(shape, blank.density * blank.thickness_m)]
    parts += [(shape.intersection(Polygon(wood.corners)), (wood.density - blank.density) * wood.depth_m) for wood in woods]
    mass = sum(part.area * per_area for part, per_area in parts)
    moments = [sum(part.area * per_area * (getattr(part.centroid, c) - o) for part, per_area in parts if part.area) for c, o in zip("xy", axis, strict=True)]
    return mass, moments[0], moments[1]


@pytest.mark.parametrize("seed", range(40))
def test_any_outline_in_any_blank(seed: int) -> None:
    rng = random.Random(seed)
    across = rng.uniform(0.1, 0.6)
    width = across * rng.uniform(0.7, 1.3) if seed % 2 else None
    blank = Blank(across, rng.uniform(0.02, 0.3), rng.uniform(1000, 1600), width)
    woods = []
    for _ in range(rng.randint(1, 3)):
        corners = _star(rng, across / 2)
        while not Polygon(corners).is_valid:
            corners = _star(rng, across / 2)
        woods.append(Wood(tuple(corners), rng.uniform(300, 1400), blank.thickness_m * rng.uniform(0.1, 1)))
    axis = (rng.uniform(-0.1, 0.1) * across, rng.uniform(-0.1, 0.1) * across)
    for turned in (None, rng.uniform(0.4, 1.0) * make_up.true_round(blank, axis)):
        body = make_up.weigh(blank, woods, axis, turned)
        mass, x, y = _weighed(blank, woods, axis, turned)
        assert body.mass_kg == pytest.approx(mass, rel=1e-5)
        assert (body.x, body.y) == pytest.approx((x, y), abs=1e-5 * mass * across)


@pytest.mark.parametrize("seed", range(20))
def test_turning_the_drawing_turns_the_answer(seed: int) -> None:
    rng = random.Random(seed)
    corners = _star(rng, 0.15)
    turn = rng.uniform(0, 2 * math.pi)
    turned = list(affinity.rotate(Polygon(corners), turn, origin=(0, 0), use_radians=True).exterior.coords)[:-1]
    blank = Blank(0.3, 0.05, 1150)
    before, after = (make_up.weigh(blank, [Wood(tuple(points), 650, 0.05)]) for points in (corners, turned))
    assert after.mass_kg == pytest.approx(before.mass_kg)
    assert (after.x, after.y) == pytest.approx(make_up.turned([(before.x, before.y)], turn)[0], abs=1e-12)


@pytest.mark.parametrize("seed", range(20))
def test_shared_area(seed: int) -> None:
    rng = random.Random(seed)
    outlines = [_star(rng, 1.0), _star(rng, 1.0)]
    shapes = [Polygon(outline) for outline in outlines]
    if all(shape.is_valid for shape in shapes):
        assert clipping.shared_area(outlines) == pytest.approx(shapes[0].intersection(shapes[1]).area, abs=0.02 * min(shape.area for shape in shapes))


@pytest.mark.parametrize("out_mm, across_mm", [(15, 60), (25, 80), (10, 40)])
def test_the_centre_cut_in_balance(out_mm: float, across_mm: float) -> None:
    """Two round woods; scipy looks for the centre whose largest round shapely finds in balance."""
    blank = Blank(0.3, 0.05, 1150)
    woods = [Wood(make_up.round_wood(across_mm / 1000, (out_mm / 1000, 0.0)), 700, 0.05), Wood(make_up.round_wood(0.03, (0.0, -0.07)), 900, 0.05)]

    def out_of_balance(at: np.ndarray) -> tuple[float, float]:
        axis = float(at[0]), float(at[1])
        return _weighed(blank, woods, axis, 0.3 - 2 * math.hypot(*axis))[1:]

    found = rebalance.balanced_centre(blank, woods)
    assert found == pytest.approx(tuple(fsolve(out_of_balance, (out_mm / 1000, 0.0))), abs=1e-4)
