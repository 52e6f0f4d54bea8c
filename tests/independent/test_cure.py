"""Cure and heat of a pour against scipy's own ways to solve the same equations, an explicit solver in three directions, and finer grids."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp

from calc.casting.cure.cells import Footprint, oblong_footprint
from calc.casting.cure.kinetics import Kinetics
from calc.casting.cure.pour import FINE, Fineness, Mould, Resin, Start
from calc.casting.cure.running import run
from calc.casting.cure.solver import Pace
from calc.casting.cure.thermal import Films
from calc.constants import ZERO_C
from tests.independent.lines import CAPACITY, CONDUCTIVITY, DENSITY, EDGE, MILD, PILLAR, Case, bdf, rate_of


@pytest.mark.parametrize(
    ("case", "hours", "printed"),
    [(MILD, 30, (47.0, 1084, 865, 1145)), (PILLAR, 20, (40.3, 637, 526, 722)), (EDGE, 24, (74.8, 912, 690, 817))],
    ids=["mild", "pillar", "edge"],
)
def test_a_pour_by_the_method_of_lines(
    case: Case, hours: float, printed: tuple[float, float, float, float]
) -> None:
    k25, heat, depth, half, j, celsius, films = case
    peak, at, work, gel = bdf(case, hours * 3600)
    assert (peak, at, work, gel) == pytest.approx(printed, rel=0.012)  # the printed figures come from 32 x 32 cells
    start = Start(ZERO_C + celsius, ZERO_C + celsius)
    course = run(Resin(Kinetics(k25, heat), capacity=CAPACITY), Mould(Footprint(half, j), depth, films=Films(*films)), start, FINE, "peak")
    assert course.peak.hottest_k - ZERO_C == pytest.approx(peak, abs=1.0 if peak < 60 else 2.0)
    assert course.peak.time_s / 60 == pytest.approx(at, rel=0.03)
    assert course.working_s is not None and course.gel_s is not None
    assert course.working_s / 60 == pytest.approx(work, rel=0.02)
    assert course.gel_s / 60 == pytest.approx(gel, rel=0.02)


def test_a_finer_grid_and_smaller_steps_say_the_same() -> None:
    k25, heat, depth, half, j, celsius, films = EDGE
    start, mould = Start(ZERO_C + celsius, ZERO_C + celsius), Mould(Footprint(half, j), depth, films=Films(*films))
    finest = run(Resin(Kinetics(k25, heat)), mould, start, Fineness(24, 16, Pace(0.25, 0.0025, 300.0)), "peak")
    plain = run(Resin(Kinetics(k25, heat)), mould, start, FINE, "peak")
    assert plain.peak.hottest_k == pytest.approx(finest.peak.hottest_k, abs=1.5)
    assert plain.peak.time_s == pytest.approx(finest.peak.time_s, rel=0.01)


@pytest.mark.parametrize("conversion", [0.10, 0.33, 0.58, 0.80])
def test_the_time_integral_by_adaptive_quadrature(conversion: float) -> None:
    found, _ = quad(lambda a: 1 / ((0.08 + a**0.6) * (1 - a) ** 1.6), 0, conversion, epsabs=1e-10)
    assert Kinetics(1e-5).integral(conversion) == pytest.approx(found, rel=1e-5)


def test_cure_at_constant_temperature_by_lsoda() -> None:
    kinetics = Kinetics(2e-5)
    found = solve_ivp(lambda _, a: rate_of(2e-5, a, np.array([293.15])), (0, 72 * 3600), [0.001], "LSODA", rtol=1e-9, atol=1e-12)
    assert kinetics.conversion_after(72 * 3600, 293.15, 0.001) == pytest.approx(found.y[0, -1], rel=1e-4)


def test_three_directions_explicitly_say_what_two_stand_for() -> None:
    """An eighth of a plate of 300 x 150 x 40 mm (its depth whole), forward steps; rate 1.7e-5, fixed films."""
    k25, heat, air = 1.7e-5, 380e3, ZERO_C + 23
    shape, size = (20, 10, 8), (0.300 / 2 / 20, 0.150 / 2 / 10, 0.040 / 8)
    t, a = np.full(shape, air), np.full(shape, 0.001)
    volume = size[0] * size[1] * size[2]
    dt = 0.4 * min(size) ** 2 / (2 * CONDUCTIVITY / (DENSITY * CAPACITY)) / 2
    peak, time, at = 0.0, 0.0, 0.0
    films = {(0, -1): 7.0, (1, -1): 7.0, (2, -1): 10.0, (2, 0): 6.0}
    while time < 20 * 3600:
        rate = rate_of(k25, a, t)
        flow = DENSITY * heat * volume * rate
        for axis in range(3):
            area = volume / size[axis]
            through = CONDUCTIVITY * area / size[axis] * np.diff(t, axis=axis)
            ahead, behind = [slice(None)] * 3, [slice(None)] * 3
            ahead[axis], behind[axis] = slice(1, None), slice(None, -1)
            flow[tuple(behind)] += through
            flow[tuple(ahead)] -= through
            for end in (0, -1):
                film = films.get((axis, end), 0.0)
                edge = [slice(None)] * 3
                edge[axis] = end
                flow[tuple(edge)] += area * film / (1 + film * size[axis] / 2 / CONDUCTIVITY) * (air - t[tuple(edge)])
        t, a = t + dt * flow / (volume * DENSITY * CAPACITY), a + dt * rate
        time += dt
        if t.max() > peak:
            peak, at = float(t.max()), time
    start = Start(air, air)
    course = run(Resin(Kinetics(k25, heat), capacity=CAPACITY), Mould(oblong_footprint(0.3, 0.15), 0.04, films=Films(10, 7, 6)), start, FINE, "peak")
    assert course.peak.hottest_k == pytest.approx(peak, abs=1.0)
    assert course.peak.time_s == pytest.approx(at, rel=0.03)
