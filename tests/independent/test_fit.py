"""How far a wheel reaches into a disc, by trying every place that the disc can be held at."""

from __future__ import annotations

import math

import numpy as np
import pytest

from calc.turning.fit import Wheel, reach

CLEAR = 0.015
CASES = [
    Wheel(0.050, 0.150, 0.070, 0.120, 0.085),
    Wheel(0.090, 0.150, 0.070, 0.120, 0.085),
    Wheel(0.060, 0.120, 0.070, 0.160, 0.120, 0.200, 0.040),
    Wheel(0.050, 0.200, 0.070, 0.160, 0.120, 0.110, 0.040),
]


@pytest.mark.parametrize("wheel", CASES)
@pytest.mark.parametrize("across", [0.16, 0.24, 0.32, 0.40])
def test_every_place_tried(wheel: Wheel, across: float) -> None:
    """The wheel touches at the origin; a disc whose middle is at (x, y) must keep clear of what does not pass behind it."""
    step = 0.001
    half = across / 2
    x, y = np.meshgrid(np.arange(-half, half + step / 2, step), np.arange(-half, half + step / 2, step))
    held = np.hypot(x, y) <= half + 1e-9
    if wheel.radius < wheel.bed_half + CLEAR:
        held &= y - half >= -wheel.height + CLEAR - 1e-9
    if wheel.radius < wheel.head_half + CLEAR:
        held &= x - half >= -wheel.to_head + CLEAR - 1e-9
    if wheel.to_tail is not None and wheel.radius < wheel.tail_half + CLEAR:
        held &= x + half <= wheel.to_tail - CLEAR + 1e-9
    nearest = float(np.hypot(x, y)[held].min()) if held.any() else half
    assert reach(wheel, across, CLEAR).unreached == pytest.approx(nearest, abs=math.sqrt(2) * step)
