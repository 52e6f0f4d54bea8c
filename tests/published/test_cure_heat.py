"""The heat solver against solutions in closed form.

CARSLAW: cooling of slab, cylinder and ball with a film, centre temperature; eigen-series of the textbook, evaluated elsewhere.
SOURCE: steady rise of the middle with an even source: q L² / (2, 4, 6 k) + q L / (1, 2, 3 h), by hand.
FRANK: thermal explosion after Frank-Kamenetskii: critical 0.878 (slab) and 2.000 (cylinder); an abstract prints 0.88 and 2.
ADIABATIC: energy balance by hand.
Options: capacity 1700, conductivity 0.2, density 1120.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import pytest

from calc.casting.cure.cells import Footprint, layout
from calc.casting.cure.kinetics import Kinetics
from calc.casting.cure.solver import Curing, Field, Pace
from calc.casting.cure.thermal import Films, Material, Wall, materials
from calc.constants import ZERO_C

DENSITY, CAPACITY, K = 1120.0, 1700.0, 0.2
STORE = DENSITY * CAPACITY
ALPHA = K / STORE
AIR = 293.15
#: Nothing leaves.
NO_FACE = Films(0, 0, 0)


@dataclass(frozen=True)
class Even:
    """A source that is the same everywhere and always, W/m³."""

    watts: float = 0.0

    def row(
        self, t: Sequence[float], warming: Sequence[float], a: Sequence[float], growing: Sequence[float], dt: float
    ) -> tuple[list[float], list[float], list[float]]:
        return [0.0] * len(t), [self.watts * dt] * len(t), [STORE] * len(t)


@dataclass(frozen=True)
class Explosive:
    """Frank-Kamenetskii's source: q0 exp(E (T - T0) / (R T0²)), nothing used up."""

    watts: float
    per_kelvin: float

    def row(
        self, t: Sequence[float], warming: Sequence[float], a: Sequence[float], growing: Sequence[float], dt: float
    ) -> tuple[list[float], list[float], list[float]]:
        heat = [self.watts * math.exp(min((kelvin + half - AIR) * self.per_kelvin, 50.0)) * dt for kelvin, half in zip(t, warming, strict=True)]
        return [0.0] * len(t), heat, [STORE] * len(t)


def run(field: Field, seconds: float, pace: Pace) -> None:
    dt = pace.first_s
    while field.time_s < seconds * (1 - 1e-9):
        _, dt = field.advance(min(dt, seconds - field.time_s), pace)


def across(j: float, half_width: float, columns: int, film: float, source: Even | Explosive, start_k: float) -> Field:
    """Heat that flows outwards only: one row."""
    cut = layout(Footprint(half_width, j), [(0.01, 1)], columns, None, [])
    return Field(cut, source, K, Films(0, film, 0), AIR, start_k)


@pytest.mark.parametrize(
    ("j", "biot", "fourier", "expected"),
    [  # CARSLAW
        (0, 1, 0.5, 0.7725), (0, 1, 1, 0.5339), (0, 2, 0.5, 0.6596), (0, 5, 0.3, 0.7363), (0, 0.5, 0.6, 0.8283), (0, 0.2, 2, 0.7089),
        (1, 1, 0.5, 0.5486), (1, 1, 1, 0.2494), (1, 2, 0.5, 0.3724), (1, 0.5, 0.6, 0.6552),
        (2, 1, 0.5, 0.3708), (2, 0.5, 0.6, 0.5064),
    ],
)
def test_cooling_of_the_middle(j: float, biot: float, fourier: float, expected: float) -> None:
    half = 0.025
    field = across(j, half, 20 if j == 0 else 10, biot * K / half, Even(), AIR + 60)
    run(field, fourier * half**2 / ALPHA, Pace(0.5, longest_s=60))
    assert (field.t[0][0] - AIR) / 60 == pytest.approx(expected, abs=0.003)


@pytest.mark.parametrize(("across_mm", "high_mm", "film", "seconds", "expected"), [(100, 50, 8, 3600, 0.6282), (120, 30, 10, 1800, 0.6627)])  # CARSLAW, product
def test_cooling_of_a_short_cylinder(across_mm: float, high_mm: float, film: float, seconds: float, expected: float) -> None:
    cut = layout(Footprint(across_mm / 2000, 1.0), [(high_mm / 1000, 11)], 8, None, [])
    field = Field(cut, Even(), K, Films(film, film, film), AIR, AIR + 60)
    run(field, seconds, Pace(0.5, longest_s=60))
    assert (field.t[5][0] - AIR) / 60 == pytest.approx(expected, abs=0.003)


def test_cooling_of_a_thin_slab_as_one_lump() -> None:
    half, film, seconds = 0.003, 3.0, 1800.0
    field = across(0, half, 5, film, Even(), AIR + 60)
    run(field, seconds, Pace(0.5, longest_s=60))
    lump = math.exp(-film * seconds / (half * STORE))
    assert lump == pytest.approx(0.3885, abs=0.0001)
    mean = (sum(field.t[0]) / 5 - AIR) / 60
    assert mean == pytest.approx(lump, abs=0.008) and mean > lump  # the exact mean is a little higher


@pytest.mark.parametrize(("j", "rise"), [(0, 9.375), (1, 4.688), (2, 3.125)])  # SOURCE
def test_steady_rise_with_an_even_source(j: float, rise: float) -> None:
    half, watts, film = 0.025, 2000.0, 8.0
    assert watts * half**2 / (2 * (j + 1) * K) + watts * half / ((j + 1) * film) == pytest.approx(rise, abs=0.001)
    field = across(j, half, 10, film, Even(watts), AIR)
    run(field, 40 * STORE * half / film, Pace(1, longest_s=3600))
    assert field.t[0][0] - AIR == pytest.approx(rise, abs=0.02)


def test_steady_rise_over_a_board() -> None:
    """Resin 40 mm, film 10 above; board 16 mm, film 6 below: 6.514 K at 13.8 mm, 5.80 K where they touch (by hand)."""
    board = Material("board", "board", 700, 1700, 0.14, None, 0.016, 2, "", "")
    cut = layout(Footprint(0.1, 0.0), [(0.04, 20)], 1, None, [(Wall(board, 0.016), 2)])
    field = Field(cut, Even(1500), K, Films(10, 0, 6), AIR, AIR)
    run(field, 60 * 3600, Pace(1, longest_s=1800))
    resin = [row[0] - AIR for row in field.t[2:]]
    assert max(resin) == pytest.approx(6.514, abs=0.03)
    assert (resin.index(max(resin)) + 0.5) * 2 == pytest.approx(13.8, abs=1.0)  # mm; cells are 2 mm
    under = field.t[1][0] - AIR
    touch = (resin[0] * K / 0.001 + under * 0.14 / 0.004) / (K / 0.001 + 0.14 / 0.004)
    assert touch == pytest.approx(5.80, abs=0.03)


def explodes(j: float, delta: float, columns: int, e: float = 54e3) -> tuple[bool, float]:
    """Whether it runs away, and theta of the middle otherwise."""
    half, per_kelvin = 0.025, e / (8.314462618 * AIR**2)
    watts = delta * K / (per_kelvin * half**2)
    field = across(j, half, columns, 1e9, Explosive(watts, per_kelvin), AIR)
    dt = 1.0
    while field.time_s < 60 * half**2 / ALPHA:
        _, dt = field.advance(dt, Pace(0.5, longest_s=300))
        if (field.t[0][0] - AIR) * per_kelvin > 6:
            return True, math.inf
    return False, (field.t[0][0] - AIR) * per_kelvin


@pytest.mark.parametrize(("j", "critical"), [(0, 0.878), (1, 2.000)])  # FRANK
def test_thermal_explosion(j: float, critical: float) -> None:
    assert explodes(j, critical * 1.01, 12)[0]
    runs_away, theta = explodes(j, critical * 0.985, 12)
    assert not runs_away and 0.9 < theta < 1.3


def test_time_to_a_thermal_explosion_that_loses_nothing() -> None:
    e, start = 54e3, 296.15
    per_kelvin = e / (8.314462618 * start**2)
    expected = STORE / (per_kelvin * 500) * (1 - math.exp(-6))
    assert expected == pytest.approx(51296, abs=2)  # FRANK, by hand
    field = Field(layout(Footprint(0.05, 0.0), [(0.05, 1)], 1, None, []), Explosive(500, per_kelvin), K, NO_FACE, AIR, AIR)
    dt = 1.0
    while (field.t[0][0] - AIR) * per_kelvin < 6:
        _, dt = field.advance(dt, Pace(0.5))
    assert field.time_s == pytest.approx(expected, rel=0.003)


@pytest.mark.parametrize(
    ("heat", "capacity", "start_c", "end_c", "tolerance"),
    [(400, 1900.0, 0, 210.5, 0.5), (300, None, 23, 188.6, 0.6), (380, None, 23, 229.1, 0.6), (486, None, 23, 280.8, 0.6)],  # ADIABATIC
)
def test_end_of_a_cure_that_loses_nothing(heat: float, capacity: float | None, start_c: float, end_c: float, tolerance: float) -> None:
    reaction = Curing(Kinetics(1e-4, heat * 1e3), DENSITY, capacity=capacity)
    cut = layout(Footprint(0.05, 0.0), [(0.05, 1)], 1, None, [])
    field = Field(cut, reaction, K, NO_FACE, ZERO_C + start_c, ZERO_C + start_c, 0.0)
    run(field, 40 * 3600, Pace())
    assert field.t[0][0] - ZERO_C == pytest.approx(end_c, abs=tolerance)


def test_pieces_of_wood_take_their_share_of_the_heat() -> None:
    wood = materials()["hardwood"]
    reaction = Curing(Kinetics(1e-4, 380e3), DENSITY, 0.4, wood.density * wood.capacity, 1700.0)
    cut = layout(Footprint(0.05, 0.0), [(0.05, 1)], 1, None, [])
    field = Field(cut, reaction, K, NO_FACE, AIR, AIR, 0.0)
    run(field, 40 * 3600, Pace())
    by_hand = 0.6 * DENSITY * 380e3 / (0.6 * DENSITY * 1700 + 0.4 * 650 * 1600)
    assert by_hand == pytest.approx(163.9, abs=0.1)
    assert field.t[0][0] - AIR == pytest.approx(by_hand, abs=0.5)


@pytest.mark.parametrize(
    ("k", "m", "n", "b", "seconds", "expected"),
    [(1e-4, 1, 1, 0.05, 20000, 0.2544), (1e-7, 1, 1, 1000, 8000, 0.5507), (5e-8, 1, 2, 1000, 30000, 0.6000)],  # closed forms, textbook
)
def test_cure_at_constant_temperature_step_by_step(k: float, m: float, n: float, b: float, seconds: float, expected: float) -> None:
    reaction = Curing(Kinetics(k, 0.0, m=m, n=n, b=b, brake=False), DENSITY, capacity=CAPACITY)
    cut = layout(Footprint(0.05, 0.0), [(0.05, 1)], 1, None, [])
    field = Field(cut, reaction, K, NO_FACE, 298.15, 298.15, 0.0)
    run(field, seconds, Pace())
    assert field.a[0][0] == pytest.approx(expected, abs=0.001)
