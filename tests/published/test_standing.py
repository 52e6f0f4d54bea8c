"""Standing pieces: statics worked apart from our code, and the figures of the documents that are named.

Cases without a document are exact statics, worked by hand; their tolerance is what the digits given support.
"""

from __future__ import annotations

import math

import pytest

from calc.turning import bearing, standing
from calc.turning.standing import Mass, Part

CELSIUS = 273.15


def test_a_plain_cylinder() -> None:  # 120 across, 300 tall: h = 150, r = 60, atan(0.4) = 21.80 degrees
    middle = standing.centre_of_mass([Part(0.0, 0.300, 2.0, 0.0)])
    assert middle.height == pytest.approx(0.150)
    assert math.degrees(standing.tipping_tilt(0.060, middle.height)) == pytest.approx(21.80, abs=0.005)


def test_three_parts() -> None:  # 0.5 kg at 15, 0.4 kg at 140 and 1.1 kg at 270 mm: (7.5 + 56 + 297) / 2.0 = 180.25 mm
    parts = [Part(0.0, 0.030, 0.5, 0.0), Part(0.030, 0.220, 0.4, 0.0), Part(0.250, 0.040, 1.1, 0.0)]
    assert standing.centre_of_mass(parts).height * 1000 == pytest.approx(180.25)


def test_ten_degrees_of_iec_60335_1_clause_20_1() -> None:  # tan 10 degrees is 0.17633: a middle 300 mm up asks for a foot of 105.8
    assert standing.foot_for_tilt("round", 0.300, math.radians(10)) * 1000 == pytest.approx(105.8, abs=0.05)
    assert standing.foot_for_tilt("three", 0.300, math.radians(10)) * 1000 == pytest.approx(211.6, abs=0.05)


@pytest.mark.parametrize("foot, inner", [("three", 50.0), ("four", 70.71), ("round", 100.0), ("square", 100.0)])  # triangle r = R / 2, square R / sqrt 2
def test_inner_radius_of_a_foot_200_across(foot: standing.Foot, inner: float) -> None:
    assert standing.tipping_radius(foot, 0.200) * 1000 == pytest.approx(inner, abs=0.005)


def test_ballast_brings_the_middle_down_to_the_height_it_was_asked_for() -> None:  # 2 kg at 300 mm, foot 80: h' = 40 / 0.17633 = 226.9 mm
    ballast = standing.ballast_for_tilt(Mass(2.0, 0.300), 0.040, math.radians(10), 0.010)
    assert ballast is not None
    assert (2.0 * 300 + ballast * 10) / (2.0 + ballast) == pytest.approx(226.9, abs=0.1)


def test_dowel_in_bending() -> None:  # 1 kgf at 200 mm on 10 mm: 32 x 9.80665 x 0.2 / (pi x 1e-6) = 19.98 MPa
    assert bearing.peg_stress(1.0, 0.200, 0.010) / 1e6 == pytest.approx(19.98, abs=0.005)


def test_levered_socket() -> None:  # 1 kgf at 200 mm, 10 mm peg, 20 mm deep: 6 x 1.96133 / (0.010 x 0.0004) = 2.942 MPa
    assert bearing.socket_pressure(1.0, 0.200, 0.010, 0.020) / 1e6 == pytest.approx(2.942, abs=0.0005)


def test_euler_column() -> None:  # round 20 mm, 400 mm free, E 2.4 GPa: I = 7.854e-9 m4, pi2 E I / (4 L2) = 290.7 N
    assert bearing.column_load(0.020, 0.400) * 9.80665 == pytest.approx(290.7, abs=0.1)


def test_a_car_in_the_sun() -> None:  # dashboards after an hour in summer: 157 degrees F on average (Temperature, May 2018)
    assert bearing.places()["car"].temperature - CELSIUS == pytest.approx((157 - 32) / 1.8, abs=1)
