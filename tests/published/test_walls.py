"""Walls and strips against worked cases.

Cases without a document are hydrostatics, p = rho g h, worked apart from our code with g = 9.80665 m/s2; their tolerance is what the digits given
support. The thin ring is an engineering handbook's page.
"""

from __future__ import annotations

import math

import pytest

from calc import desk
from calc.casting import walls


def test_wall_60_mm_deep() -> None:  # 1100 kg/m3: 647.2 Pa at the floor, 19.4 N on each metre of wall
    assert walls.pressure_at(0.060, 1100) == pytest.approx(647.2, abs=0.1)
    assert walls.wall_push(0.060, 1100, 1.0) == pytest.approx(19.4, abs=0.1)


def test_round_strip() -> None:  # 300 mm across, 1.5 mm thick: 97.1 N/m at the floor, 2.91 N along the band, 64.7 kPa
    assert walls.hoop_stress(0.060, 1100, 0.300, 0.0015) * 0.0015 == pytest.approx(97.1, abs=0.1)
    assert walls.hoop_pull(0.060, 1100, 0.300) == pytest.approx(2.91, abs=0.005)
    assert walls.hoop_stress(0.060, 1100, 0.300, 0.0015) == pytest.approx(64_700, abs=100)


def test_long_wall() -> None:  # 1090 kg/m3, 100 mm, 600 mm long: 32.07 N, 1.069 N m about the floor
    assert walls.wall_push(0.100, 1090, 0.600) == pytest.approx(32.07, abs=0.01)
    assert walls.wall_moment(0.100, 1090, 0.600) == pytest.approx(1.069, abs=0.001)


def test_water_tank() -> None:  # a textbook problem: water 2.8 m, 2.5 m across, 8 mm, g 9.81: 4.292 MPa
    assert walls.hoop_stress(2.8, 1000, 2.5, 0.008) == pytest.approx(4.292e6, abs=0.002e6)


def test_strip_of_a_round_mould() -> None:  # pi D + lap: 300 mm and 40 mm make 982.5 mm
    assert walls.strip_length(0.300, 0.040) == pytest.approx(0.9825, abs=0.0001)


def test_the_question_gives_the_long_wall_as_a_weight() -> None:  # 32.07 N / 9.80665 = 3.270 kg
    reply = desk.answer("how-thick-how-tall", {"ask": "push", "wall": "600", "fill": "100", "density": "1.09"})
    assert reply["values"]["push"]["si"] == pytest.approx(3.270, abs=0.001)


def test_hydrostatic_paradox() -> None:  # the push on a wall is the mean pressure on its face, whatever stands behind it
    depth, density, length = 0.08, 1100, 0.5
    slices = 2000
    summed = sum(walls.pressure_at(depth * (n + 0.5) / slices, density) * depth / slices * length for n in range(slices))
    assert walls.wall_push(depth, density, length) == pytest.approx(summed, rel=1e-6)
    around = sum(walls.pressure_at(depth / 2, density) * math.sin(math.pi * (n + 0.5) / slices) * math.pi / slices * 0.15 * depth for n in range(slices))
    assert 2 * walls.hoop_pull(depth, density, 0.300) == pytest.approx(around, rel=1e-6)  # half a ring, held at both ends
