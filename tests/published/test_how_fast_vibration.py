"""Vibration zones and balance grades against the standards.

ISO10816: ISO 10816-1 (now ISO 20816-1), Class I zone limits; two agreeing reproductions, the standard not read.
ISO21940: ISO 21940-11:2016 (was ISO 1940-1), permissible residual unbalance U = 9549 G m / n (g mm, mm/s, kg, rpm),
    as quoted with its Table 1 by a balancing firm; the standard not read.
WORKED: pieces worked by hand and by a second script: U = m e, v_rms = U w / (sqrt 2 (M + m)), F = U w^2, G = e w.
"""

from __future__ import annotations

import math

import pytest

from calc.turning import balance, vibrating
from calc.turning.sensed import sense


@pytest.mark.parametrize("zone, mm_per_s", [("zone-b", 1.8), ("zone-c", 4.5)])  # ISO10816
def test_zone_limits(zone: str, mm_per_s: float) -> None:
    assert 1000 * vibrating.vibration_limit(zone) == pytest.approx(mm_per_s)


@pytest.mark.parametrize(
    "mass_kg, rpm, grade_mm_per_s, unbalance_g_mm, off_um",
    [
        # 9549 G m / n and 9549 G / n, to the digits printed
        (3600, 3000, 2.5, 28648, 7.958),  # ISO21940: the size of the worked rotor in the old ISO 1940-1 text
        (5, 1000, 6.3, 300.8, 60.16),  # ISO21940
        (9.145, 500, 40, 6986, 763.9),  # ISO21940
        (50, 1500, 6.3, 2005, 40.11),  # ISO21940
    ],
)
def test_balance_grade(mass_kg: float, rpm: float, grade_mm_per_s: float, unbalance_g_mm: float, off_um: float) -> None:
    assert 1000 * balance.balance_grade(unbalance_g_mm / 1e6, mass_kg, rpm) == pytest.approx(grade_mm_per_s, rel=0.0005)
    assert 1000 * balance.balance_grade(mass_kg * off_um / 1e6, mass_kg, rpm) == pytest.approx(grade_mm_per_s, rel=0.0005)


# WORKED, to 0.5 %: mass kg, eccentricity mm, lathe kg; U kg mm, rpm at 1.8 and 4.5 mm/s, rpm at 5 % push, N at 300 and 500 rpm, G at 500 (mm/s).
PIECES = {
    "V1": (3.8877, 2.7273, 60, 10.603, 146.5, 366.2, 503.0, 10.5, 29.1, 142.8),
    "V2": (3.8877, 2.7273, 200, 10.603, 467.4, 1168.6, 918.4, 10.5, 29.1, 142.8),
    "V3": (3.1809, 17.684, 60, 56.251, 27.3, 68.3, 218.4, 55.5, 154.2, 925.9),
    "V4": (9.145, 3, 150, 27.435, 141.0, 352.5, 494.4, 27.1, 75.2, 157.1),
}


@pytest.mark.parametrize("name", PIECES)
def test_a_worked_piece(name: str) -> None:
    mass, e_mm, lathe, u_kg_mm, at_green, at_red, at_push, f300, f500, grade = PIECES[name]
    u = mass * e_mm / 1000
    assert 1000 * u == pytest.approx(u_kg_mm, rel=0.005)
    assert vibrating.speed_at_vibration(u, mass, lathe, 0.0018) == pytest.approx(at_green, rel=0.005)
    assert vibrating.speed_at_vibration(u, mass, lathe, 0.0045) == pytest.approx(at_red, rel=0.005)
    assert balance.speed_at_push(u, lathe) == pytest.approx(at_push, rel=0.005)
    assert balance.push(u, 300) == pytest.approx(f300, rel=0.005)
    assert balance.push(u, 500) == pytest.approx(f500, rel=0.005)
    assert 1000 * balance.balance_grade(u, mass, 500) == pytest.approx(grade, rel=0.005)


def test_a_phone_on_the_headstock() -> None:
    # WORKED: 0.30 m/s2 root mean square at 600 rpm is 1000 a / w = 4.77 mm/s. A spindle's own motion, 60 readings a second, to 2 %.
    turning = [(i / 60, 0.30 * math.sqrt(2) * math.cos(2 * math.pi * 10 * i / 60), 0.0, 9.81) for i in range(480)]
    found = sense(turning)
    assert found.speed_rpm == pytest.approx(600, rel=0.02)
    assert 1000 * found.vibration_m_per_s == pytest.approx(4.77, rel=0.02)
