"""A disc clamped on a block, bent by scipy as a boundary value problem wave by wave, against the closed shapes."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import solve_bvp

from calc.turning import bending

NU = bending.POISSON


def _wave(n: int, beta: float) -> float:
    """The plate equation for w(r) cos(n theta), from the held ring to a rim that carries a line load cos(n theta) of 1."""

    def slopes(r: np.ndarray, y: np.ndarray) -> np.ndarray:
        w, w1, w2, w3 = y
        w4 = -2 / r * w3 + (1 + 2 * n**2) / r**2 * w2 - (1 + 2 * n**2) / r**3 * w1 + (4 * n**2 - n**4) / r**4 * w
        return np.vstack([w1, w2, w3, w4])

    def ends(a: np.ndarray, b: np.ndarray) -> np.ndarray:
        moment = b[2] + NU * (b[1] - n**2 * b[0])
        laplacian_slope = b[3] + b[2] - b[1] - n**2 * b[1] + 2 * n**2 * b[0]
        twist = (1 - NU) * -(n**2) * (b[1] - b[0])
        return np.array([a[0], a[1], moment, laplacian_slope + twist + 1])

    r = np.linspace(beta, 1, 200)
    found = solve_bvp(slopes, ends, r, np.zeros((4, r.size)), tol=1e-8, max_nodes=20000)
    assert found.success
    return float(found.sol(1.0)[0])


@pytest.mark.parametrize("beta", [0.25, 0.5, 0.75])
def test_a_push_at_one_place(beta: float) -> None:
    waves = [_wave(n, beta) for n in range(31)]
    expected = (waves[0] + 2 * sum(waves[1:]) + waves[-1] * 30) / (2 * np.pi)
    assert bending.point_bend(beta) == pytest.approx(expected, rel=1e-3)


@pytest.mark.parametrize("held", [0.06, 0.123, 0.2, 0.31, 0.429])
def test_the_table_read_between_its_steps(held: float) -> None:
    stiffness = 2.4e9 * 0.015**3 / (12 * (1 - NU**2))
    exact = bending.point_bend(held / 0.450) * 50 * 0.225**2 / stiffness
    assert bending.rim_bend(0.450, held, 0.015) == pytest.approx(exact, rel=1e-3)
