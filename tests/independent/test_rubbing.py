"""Heat of sanding: the closed form against a deep body marched by scipy, and its inverse."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from calc.turning import cooling, rubbing

CELLS = 120
DEPTH_M = 0.03  # far deeper than the warmth gets in these times


@pytest.mark.parametrize(("power", "area", "seconds"), [(50.0, 0.02, 30.0), (12.0, 0.03, 60.0), (84.0, 0.0377, 8.0)])
def test_rise_of_the_face(power: float, area: float, seconds: float) -> None:
    stuff = cooling.resin()
    edges = DEPTH_M * (np.arange(CELLS + 1) / CELLS) ** 2  # finest at the face
    width, centre = np.diff(edges), (edges[:-1] + edges[1:]) / 2
    flux_in = power / area

    def rate(_: float, theta: np.ndarray) -> np.ndarray:
        flux = np.concatenate([[flux_in], stuff.conductivity * -np.diff(theta) / np.diff(centre), [0.0]])
        return (flux[:-1] - flux[1:]) / width * stuff.diffusivity / stuff.conductivity

    theta = solve_ivp(rate, (0, seconds), np.zeros(CELLS), method="BDF", rtol=1e-6, atol=1e-6).y[:, -1]
    face = float(theta[0] + flux_in * centre[0] / stuff.conductivity)
    assert rubbing.rise(power, area, seconds) == pytest.approx(face, rel=0.004)
    assert rubbing.seconds_for(face, power, area) == pytest.approx(seconds, rel=0.008)
