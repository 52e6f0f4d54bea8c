"""The cooling series against scipy: its roots, and the whole problem marched by a stiff solver on a fine grid."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from calc.turning import cooling
from calc.turning.cooling import Slab

CELLS = 200


@pytest.mark.parametrize("biot", [0.02, 0.4, 1.25, 6.0, 300.0])
def test_roots(biot: float) -> None:
    for n, found in enumerate(cooling.roots(biot, 12)):
        reference = brentq(lambda z: z * math.sin(z) - biot * math.cos(z), n * math.pi, n * math.pi + math.pi / 2)
        assert found == pytest.approx(reference, rel=1e-9)


def _marched(slab: Slab, seconds: float) -> tuple[float, float]:
    """Excess at the warmest plane and at the open face, by finite volumes."""
    width = slab.depth_m / CELLS
    k, a = slab.stuff.conductivity, slab.stuff.diffusivity
    to_air = 1 / (width / 2 / k + 1 / slab.film)  # half a cell, then the film

    def rate(_: float, theta: np.ndarray) -> np.ndarray:
        flux = np.zeros(CELLS + 1)  # none through the warmest plane
        flux[1:-1] = k * (theta[:-1] - theta[1:]) / width
        flux[-1] = to_air * theta[-1]
        return (flux[:-1] - flux[1:]) * a / (k * width)

    theta = solve_ivp(rate, (0, seconds), np.ones(CELLS), method="BDF", rtol=1e-8, atol=1e-10).y[:, -1]
    return float(theta[0] + (theta[0] - theta[1]) / 8), float(theta[-1] * to_air / slab.film)


@pytest.mark.parametrize(
    ("slab", "hours"),
    [
        (Slab(cooling.resin(), 0.050, 10), 0.05),
        (Slab(cooling.resin(), 0.050, 10), 5.40),
        (Slab(cooling.resin(), 0.075, 5, faces=1), 8.0),
        (Slab(cooling.wood(), 0.040, 20), 1.5),
    ],
)
def test_whole_problem(slab: Slab, hours: float) -> None:
    middle, face = _marched(slab, 3600 * hours)
    assert slab.middle(3600 * hours) == pytest.approx(middle, abs=2e-4)
    assert slab.face(3600 * hours) == pytest.approx(face, abs=2e-4)


def test_time_is_that_of_the_marched_problem() -> None:
    slab = Slab(cooling.resin(), 0.060, 10, faces=1)
    assert _marched(slab, slab.time_to(0.04))[0] == pytest.approx(0.04, abs=2e-5)
