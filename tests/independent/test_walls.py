"""A springy hoop with its laps, bent whole by scipy, against the closed forms for how round it stands."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import fsolve

from calc.casting import walls

STEPS = 4000


def _half(across: float, lap: float) -> np.ndarray:
    """Half of a ring with one lap in its middle: points from the lap to the far side, where the curve closes smoothly.

    Curvature is moment over stiffness; the moment is a constant and a share that grows with the distance from the middle (the force in the
    ring); where two layers lie on each other the stiffness is twice.
    """
    radius = across / 2
    ds = np.pi * radius / STEPS
    stiff = np.where((np.arange(STEPS) + 0.5) * ds < lap / 2, 0.5, 1.0)

    def bent(unknown: np.ndarray) -> tuple[float, np.ndarray]:
        heading, x, y = 0.0, 0.0, 0.0
        points = [(x, y)]
        for factor in stiff:
            turn = factor * (unknown[0] + unknown[1] * (1 - y / radius)) / radius * ds
            x, y = x + np.cos(heading + turn / 2) * ds, y + np.sin(heading + turn / 2) * ds
            heading += turn
            points.append((x, y))
        return heading, np.array(points)

    def misses(unknown: np.ndarray) -> list[float]:
        heading, points = bent(unknown)
        return [heading - np.pi, points[-1, 0] / radius]

    points = bent(fsolve(misses, [1.0, 0.0]))[1]
    return np.vstack([points, points * [-1, 1]])


@pytest.mark.parametrize(("across", "lap"), [(0.5, 0.02), (0.3, 0.02)])
def test_a_hoop_with_one_lap(across: float, lap: float) -> None:
    ring = _half(across, lap)
    upright, sideways = np.ptp(ring[:, 1]), np.ptp(ring[:, 0])
    assert across - upright == pytest.approx(across - walls.narrowest(across, lap), rel=0.05)
    assert sideways - across == pytest.approx(walls.widest(across, lap) - across, rel=0.05)
    middle = (ring[:, 1].max() + ring[:, 1].min()) / 2
    inscribed = 2 * np.hypot(ring[:, 0], ring[:, 1] - middle).min()
    assert inscribed == pytest.approx(upright, abs=0.0002)  # the narrowest width is the largest true round


@pytest.mark.parametrize("laps", [2, 3, 4])
def test_several_laps_by_adding_up_one(laps: int) -> None:
    """The deflections of small laps add: summed as a Fourier series, at one of the laps."""
    order = np.arange(2, 200_000)
    one = -0.040 / (2 * np.pi) / (order**2 - 1)
    at_a_lap = sum(np.sum(one * np.cos(order * 2 * np.pi * k / laps)) for k in range(laps))
    assert walls.narrowest(0.300, 0.040, laps) == pytest.approx(0.300 + 2 * at_a_lap, abs=1e-6)
