"""Centre of mass of blanks with woods in them by shapely's polygons, against our exact clipping; random outlines, sizes and mountings."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Sequence

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import fsolve
from scipy.special import ellipk
from shapely import Point, Polygon, affinity, box
from shapely.geometry.base import BaseGeometry

from calc.turning import clipping, make_up, rebalance, swing, wood_shapes
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


def _any_outline(rng: random.Random, reach: float) -> tuple[tuple[float, float], ...]:
    """A round, a strip, a slice or a star."""
    kind = rng.randrange(4)
    if kind == 0:
        return wood_shapes.round_wood(rng.uniform(0.3, 1.2) * reach, (rng.uniform(-0.4, 0.4) * reach, rng.uniform(-0.4, 0.4) * reach))
    if kind == 1:
        return wood_shapes.band(rng.uniform(0, 6.28), rng.uniform(-0.5, 0.3) * reach, rng.uniform(0.2, 0.8) * reach, rng.uniform(0.2, 1.0) * reach)
    if kind == 2:
        return wood_shapes.slice_of(rng.uniform(0, 6.28), rng.uniform(0.5, 5.5), reach)
    corners = _star(rng, reach)
    while not Polygon(corners).is_valid:
        corners = _star(rng, reach)
    return tuple(corners) if rng.random() < 0.5 else tuple(corners[::-1])


@pytest.mark.parametrize("seed", range(40))
def test_one_let_into_another(seed: int) -> None:
    """Layer by layer between the depths that occur, the last let in takes its place first."""
    rng = random.Random(seed)
    across = rng.uniform(0.1, 0.6)
    blank = Blank(across, rng.uniform(0.02, 0.3), rng.uniform(1000, 1600), across * rng.uniform(0.7, 1.3) if seed % 2 else None)
    woods = [
        Wood(_any_outline(rng, across / 2), rng.uniform(300, 9000), blank.thickness_m * rng.choice((1.0, rng.uniform(0.1, 1))), let_in=place > 0)
        for place in range(rng.randint(2, 3))
    ]
    axis = (rng.uniform(-0.1, 0.1) * across, rng.uniform(-0.1, 0.1) * across)
    turned = rng.uniform(0.4, 1.0) * make_up.true_round(blank, axis) if seed % 3 else None
    shape = _disc(blank.across_m) if blank.width_m is None else box(-blank.across_m / 2, -blank.width_m / 2, blank.across_m / 2, blank.width_m / 2)
    if turned is not None:
        shape = shape.intersection(_disc(turned, *axis))
    depths = sorted({0.0, blank.thickness_m, *(wood.depth_m for wood in woods)})
    parts = []
    for top, bottom in itertools.pairwise(depths):
        left = shape
        for wood in reversed([wood for wood in woods if wood.depth_m >= bottom]):
            parts.append((left.intersection(Polygon(wood.corners)), wood.density * (bottom - top)))
            left = left.difference(Polygon(wood.corners))
        parts.append((left, blank.density * (bottom - top)))
    mass = sum(part.area * per_area for part, per_area in parts)
    x, y = (sum(part.area * per_area * (getattr(part.centroid, c) - o) for part, per_area in parts if part.area) for c, o in zip("xy", axis, strict=True))
    body = make_up.weigh(blank, woods, axis, turned)
    assert body.mass_kg == pytest.approx(mass, rel=1e-5)
    assert (body.x, body.y) == pytest.approx((x, y), abs=1e-5 * mass * across)


def test_a_brass_disc_let_into_wood_on_a_plain_grid() -> None:
    """Cells of half a millimetre of a disc of 300 mm: wood from 30 mm on, a brass disc of 50 mm let 4 mm into it, across its edge."""
    step = 0.0005
    x, y = np.meshgrid(*[np.arange(-0.150 + step / 2, 0.150, step)] * 2)
    wood, brass = x > 0.030, np.hypot(x - 0.040, y - 0.060) < 0.025
    density = np.where(wood, 650.0, 1150.0) * 0.050
    density = np.where(brass, 8500 * 0.004 + np.where(wood, 650.0, 1150.0) * 0.046, density) * (np.hypot(x, y) < 0.150) * step**2
    woods = [Wood(wood_shapes.band(0.0, 0.030, 1.0, 1.0), 650, 0.050), Wood(wood_shapes.round_wood(0.050, (0.040, 0.060)), 8500, 0.004, let_in=True)]
    body = make_up.weigh(Blank(0.300, 0.050, 1150), woods)
    assert body.mass_kg == pytest.approx(density.sum(), rel=2e-4)
    assert (body.x, body.y) == pytest.approx(((density * x).sum(), (density * y).sum()), abs=1e-4 * body.mass_kg * 0.300)


@pytest.mark.parametrize("degrees", [1, 20, 45, 90, 120])
def test_a_wide_swing_takes_longer(degrees: float) -> None:
    """By the complete elliptic integral, and by the pendulum's equation of motion from letting go to the far side."""
    reach = math.radians(degrees)
    assert swing.lengthening(reach) == pytest.approx(2 / math.pi * ellipk(math.sin(reach / 2) ** 2), rel=1e-12)
    inertia, out = 0.1, 0.025

    def falls(_: float, state: np.ndarray) -> list[float]:
        return [state[1], -out * 9.80665 / inertia * math.sin(state[0])]

    def stands(_: float, state: np.ndarray) -> float:
        return float(state[1])

    stands.direction = 1.0  # type: ignore[attr-defined]
    found = solve_ivp(falls, (0, 20), [reach, 0.0], events=stands, rtol=1e-9, atol=1e-11)
    half = float(next(at for at in found.t_events[0] if at > 0.1))
    assert swing.unbalance_of_swing(inertia, 2 * half, reach) == pytest.approx(out, rel=1e-5)


@pytest.mark.parametrize("seed", range(20))
def test_turning_the_drawing_turns_the_answer(seed: int) -> None:
    rng = random.Random(seed)
    corners = _star(rng, 0.15)
    turn = rng.uniform(0, 2 * math.pi)
    turned = list(affinity.rotate(Polygon(corners), turn, origin=(0, 0), use_radians=True).exterior.coords)[:-1]
    blank = Blank(0.3, 0.05, 1150)
    before, after = (make_up.weigh(blank, [Wood(tuple(points), 650, 0.05)]) for points in (corners, turned))
    assert after.mass_kg == pytest.approx(before.mass_kg)
    assert (after.x, after.y) == pytest.approx(wood_shapes.turned([(before.x, before.y)], turn)[0], abs=1e-12)


@pytest.mark.parametrize("seed", range(20))
def test_what_two_outlines_share(seed: int) -> None:
    rng = random.Random(seed)
    outlines = [_star(rng, 1.0), _star(rng, 1.0)]
    shapes = [Polygon(outline) for outline in outlines]
    if all(shape.is_valid for shape in shapes):
        shared = sum(sign * kept.whole.area for sign, kept in clipping.common(*(clipping.Outline(tuple(outline)) for outline in outlines)))
        assert shared == pytest.approx(shapes[0].intersection(shapes[1]).area, abs=1e-9)


@pytest.mark.parametrize("out_mm, across_mm", [(15, 60), (25, 80), (10, 40)])
def test_the_centre_cut_in_balance(out_mm: float, across_mm: float) -> None:
    """Two round woods; scipy looks for the centre whose largest round shapely finds in balance."""
    blank = Blank(0.3, 0.05, 1150)
    woods = [Wood(wood_shapes.round_wood(across_mm / 1000, (out_mm / 1000, 0.0)), 700, 0.05), Wood(wood_shapes.round_wood(0.03, (0.0, -0.07)), 900, 0.05)]

    def out_of_balance(at: np.ndarray) -> tuple[float, float]:
        axis = float(at[0]), float(at[1])
        return _weighed(blank, woods, axis, 0.3 - 2 * math.hypot(*axis))[1:]

    found = rebalance.balanced_centre(blank, woods)
    assert found == pytest.approx(tuple(fsolve(out_of_balance, (out_mm / 1000, 0.0))), abs=1e-4)
