"""Sums of uncertainty, odds and mould volumes against scipy and numpy, which our code does not use."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import integrate, stats

from calc.casting import budget, hollow_shapes, level, shapes
from calc.casting import sufficiency as enough
from calc.casting.budget import Spread
from calc.casting.shapes import Shape

FREEDOMS = (1, 1.5, 2, 3, 4.7, 9, 30, 250.5, 1e4)


@pytest.mark.parametrize("freedom", FREEDOMS)
def test_student(freedom: float) -> None:
    for odds in (0.01, 0.2, 0.5, 0.75, 0.9, 0.95, 0.975, 0.99, 0.999):
        assert budget.deviate(odds, freedom) == pytest.approx(stats.t.ppf(odds, freedom), rel=1e-8, abs=1e-9)
    for deviation in (-20, -2.5, -0.1, 0, 0.7, 3, 40):
        assert budget.below(deviation, freedom) == pytest.approx(stats.t.cdf(deviation, freedom), abs=1e-10)


def test_normal() -> None:
    for odds in (0.001, 0.2, 0.9, 0.95, 0.99, 0.9999):
        assert budget.deviate(odds) == pytest.approx(stats.norm.ppf(odds), rel=1e-9)
        assert budget.below(stats.norm.ppf(odds)) == pytest.approx(odds, rel=1e-9)


SHAPES: list[tuple[Shape, float]] = [
    (hollow_shapes.TaperedRound(0.100, 0.130, 0.150), 0.110),
    (hollow_shapes.TaperedRound(0.130, 0.100, 0.150), 0.110),
    (hollow_shapes.TaperedBox(0.380, 0.200, 0.400, 0.300, 0.050), 0.040),
    (hollow_shapes.Ball(0.200), 0.150),
    (hollow_shapes.Bowl(0.300, 0.080), 0.070),
    (hollow_shapes.Trough(0.120, 0.500), 0.090),
]


@pytest.mark.parametrize("shape, depth", SHAPES)
def test_volume_is_the_sum_of_its_levels(shape: Shape, depth: float) -> None:
    assert shape.volume(depth) == pytest.approx(integrate.quad(shape.area, 0, depth)[0], rel=1e-7)


def test_wedge_is_the_sum_of_its_depths() -> None:
    radius, dry, slope = 0.150, -0.040, 0.013
    found, _ = integrate.dblquad(
        lambda y, x: slope * (dry - x), -radius, dry, lambda x: -math.sqrt(radius**2 - x**2), lambda x: math.sqrt(radius**2 - x**2)
    )
    assert level.wedge_in_a_round(radius, dry, slope) == pytest.approx(found, rel=1e-6)


def test_the_sum_of_squares_is_what_many_moulds_do() -> None:
    """The propagation law leaves out second-order terms: a million random moulds show how little that matters."""
    rng = np.random.default_rng(20261125)
    n = 1_000_000
    inch = 0.0254
    across = 13.75 * inch + rng.uniform(-inch / 32, inch / 32, n)
    depth = 2 * inch + rng.uniform(-0.001, 0.001, n)
    wood = rng.normal(2386.5e-6, 0.1 * 2386.5e-6, n)
    soak, loss, tilt = rng.uniform(0, 0.04, n), rng.uniform(10e-6, 50e-6, n), rng.uniform(-76e-6, 76e-6, n)
    density = rng.normal(1090, 10.9, n)
    made = density * (np.pi * across**2 / 4 * depth - (1 - soak) * wood + loss + tilt)

    shape = shapes.Cylinder(13.75 * inch)
    parts = [Spread("size", u) for _, u in shape.moved(2 * inch, budget.within(inch / 32))]
    parts += [Spread("depth", shape.floor * budget.within(0.001)), Spread("level", budget.within(76e-6))]
    room = enough.Demand(shape.volume(2 * inch), tuple(parts))
    found = enough.resin_in_mould(room, enough.Wood(2386.5e-6, 238.65e-6, 0.02, 0.02)).plus(enough.stays_behind(30e-6, 20e-6)).weighed(1090, 10.9)
    assert found.likely == pytest.approx(float(made.mean()), rel=0.001)
    assert found.u == pytest.approx(float(made.std()), rel=0.005)
    assert found.for_odds(0.95) == pytest.approx(float(np.quantile(made, 0.95)), rel=0.003)
    assert found.odds(3.0) == pytest.approx(float((made < 3.0).mean()), abs=0.005)


def test_a_pour_half_done_is_a_normal_quantity_given_another() -> None:
    whole, so_far = np.array([-260.0, 60.0, 33.0, 15.0]), np.array([-130.0, 5.0, 16.0, 15.0])
    cov = np.array([[whole @ whole, whole @ so_far], [whole @ so_far, so_far @ so_far + 20.0**2]])
    mean = 2788.0 + cov[0, 1] / cov[1, 1] * (1250.0 - 1400.0)
    left = math.sqrt(cov[0, 0] - cov[0, 1] ** 2 / cov[1, 1])
    found = enough.corrected(
        enough.Demand(2788.0, tuple(Spread("part", u) for u in whole)), enough.Demand(1400.0, tuple(Spread("part", u) for u in so_far)), 1250.0, 20.0
    )
    assert (found.likely, found.u) == (pytest.approx(mean), pytest.approx(left))


def test_few_readings_by_the_mean_of_their_freedom() -> None:
    """Welch and Satterthwaite against a million sums of one part read four times and one known: the odds come out as asked."""
    rng = np.random.default_rng(7)
    n = 400_000
    readings = rng.normal(0.0, 2.0, (n, 4))
    known = rng.normal(0.0, 1.0, n)
    u_read = readings.std(axis=1, ddof=1) / 2
    u = np.hypot(u_read, 1.0)
    freedom = u**4 / (u_read**4 / 3)
    covered = stats.t.cdf((-(readings.mean(axis=1)) + known) / u, freedom) < 0.95
    assert float(covered.mean()) == pytest.approx(0.95, abs=0.01)
    assert budget.freedom_of([Spread("read", float(u_read[0]), 3), Spread("known", 1.0)]) == pytest.approx(float(freedom[0]))
