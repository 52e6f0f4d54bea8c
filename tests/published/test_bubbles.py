"""Bubbles in resin against figures of others.

SPHERE: a tutor's worked answer: a ball of 1.85 mm radius and 7729.476 kg/m3 sinks at 39 mm/s in glycerol of 1260 kg/m3; viscosity 1.237246 Pa s.
    A bubble is the same sphere with its weight the other way round.
GROWTH: where a reacting resin is twice and five times as thick, after Castro and Macosko; two digits of conversion.
"""

from __future__ import annotations

import pytest

from calc.casting import bubbles


def test_speed_of_a_sphere() -> None:
    assert bubbles.rise_speed(0.00185, 1.237246, 7729.476 - 1260) == pytest.approx(0.039, rel=1e-6)  # SPHERE


@pytest.mark.parametrize(("conversion", "times"), [(0.19, 2), (0.33, 5)])  # GROWTH
def test_thickening(conversion: float, times: float) -> None:
    assert bubbles.thickening(conversion - 0.01) < times < bubbles.thickening(conversion + 0.01)
