"""Vibration zones and balance grades against the standards.

ISO10816: ISO 10816-1 (now ISO 20816-1), Class I zone limits; two agreeing reproductions, the standard not read.
ISO21940: ISO 21940-11:2016 (was ISO 1940-1), permissible residual unbalance U = 9549 G m / n (g mm, mm/s, kg, rpm),
    as quoted with its Table 1 by a balancing firm; the standard not read.
"""

from __future__ import annotations

import pytest

from calc.turning import balance


@pytest.mark.parametrize("zone, mm_per_s", [("zone-b", 1.8), ("zone-c", 4.5)])  # ISO10816
def test_zone_limits(zone: str, mm_per_s: float) -> None:
    assert 1000 * balance.vibration_limit(zone) == pytest.approx(mm_per_s)


@pytest.mark.parametrize(
    "mass_kg, rpm, grade_mm_per_s, unbalance_g_mm",
    [
        # 9549 G m / n, to the digits printed
        (3600, 3000, 2.5, 28648),  # ISO21940: the size of the worked rotor in the old ISO 1940-1 text
        (5, 1000, 6.3, 300.8),  # ISO21940
        (9.145, 500, 40, 6986),  # ISO21940
        (50, 1500, 6.3, 2005),  # ISO21940
    ],
)
def test_balance_grade(mass_kg: float, rpm: float, grade_mm_per_s: float, unbalance_g_mm: float) -> None:
    assert 1000 * balance.balance_grade(unbalance_g_mm / 1e6, mass_kg, rpm) == pytest.approx(grade_mm_per_s, rel=0.0005)
