"""A pour by the method of lines with scipy's BDF, written for itself: all cells at once, adaptive order.

The equations are those of the solver; the way to solve them is not.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import lil_matrix

R, DENSITY, CONDUCTIVITY, CAPACITY = 8.314462618, 1120.0, 0.2, 1700.0
Case = tuple[float, float, float, float, float, float, tuple[float, float, float]]

#: k25, heat kJ/kg, depth and half-width m, j, shop °C, films top, side and bottom.
MILD = (1.4e-5, 380e3, 0.050, 0.100, 1.0, 23.0, (10.0, 6.0, 5.0))
PILLAR = (3.0e-5, 400e3, 0.300, 0.025, 1.0, 20.0, (10.0, 8.0, 5.0))
EDGE = (1.6e-5, 380e3, 0.050, 0.100, 1.0, 23.0, (10.0, 6.0, 5.0))


def rate_of(k25: float, a: np.ndarray, t: np.ndarray) -> np.ndarray:
    """da/dt with the default figures, written out."""
    a = np.clip(a, 0.0, 0.9995)
    tg = 223.15 + 135.0 * 0.38 * a / (1 - 0.62 * a)
    brake = np.where(a > 0.5, 1 / (1 + np.exp((tg - t) / 6)), 1.0)
    return k25 * np.exp(-54e3 / R * (1 / t - 1 / 298.15)) * (0.08 + a**0.6) * (1 - a) ** 1.6 * brake


def _lines(case: Case, rows: int, columns: int) -> tuple[Callable[..., np.ndarray], np.ndarray]:
    """Right-hand side of all cells, temperatures first, and its start."""
    k25, heat, depth, half, j, celsius, (top, side, bottom) = case
    air = 273.15 + celsius
    dx, dr = depth / rows, half / columns
    edge = np.linspace(0, half, columns + 1)
    ring = (edge[1:] ** (j + 1) - edge[:-1] ** (j + 1)) / (j + 1)
    store = DENSITY * CAPACITY * dx * ring[None, :]
    up = CONDUCTIVITY / dx * ring[None, :]
    out = CONDUCTIVITY / dr * dx * edge[1:-1][None, :] ** j
    to_air = [film / (1 + film * size / 2 / CONDUCTIVITY) for film, size in ((top, dx), (bottom, dx), (side, dr))]

    def side_of(_: float, y: np.ndarray) -> np.ndarray:
        t, a = y[: rows * columns].reshape(rows, columns), y[rows * columns :].reshape(rows, columns)
        rate = rate_of(k25, a, t)
        flow = DENSITY * heat * dx * ring[None, :] * rate
        upward, outward = up * np.diff(t, axis=0), out * np.diff(t, axis=1)
        flow[:-1] += upward
        flow[1:] -= upward
        flow[:, :-1] += outward
        flow[:, 1:] -= outward
        flow[-1] += to_air[0] * ring * (air - t[-1])
        flow[0] += to_air[1] * ring * (air - t[0])
        flow[:, -1] += to_air[2] * dx * half**j * (air - t[:, -1])
        return np.concatenate([(flow / store).ravel(), rate.ravel()])

    return side_of, np.concatenate([np.full(rows * columns, air), np.full(rows * columns, 0.001)])


def _pattern(rows: int, columns: int) -> lil_matrix:
    """Which cell acts on which, so that the Jacobian is cheap."""
    size = rows * columns
    found = lil_matrix((2 * size, 2 * size))
    for i in range(rows):
        for c in range(columns):
            cell = i * columns + c
            near = [cell]
            near += [cell - columns] if i else []
            near += [cell + columns] if i < rows - 1 else []
            near += [cell - 1] if c else []
            near += [cell + 1] if c < columns - 1 else []
            found[cell, near] = 1
            found[cell, size + cell] = found[size + cell, cell] = found[size + cell, size + cell] = 1
    return found


def bdf(case: Case, seconds: float, rows: int = 20, columns: int = 20, close: float = 1e-6) -> tuple[float, float, float, float]:
    """Peak (°C), its time, first working end and first gel (min)."""
    side_of, start = _lines(case, rows, columns)
    found = solve_ivp(side_of, (0, seconds), start, "BDF", rtol=close, atol=close / 10, jac_sparsity=_pattern(rows, columns), max_step=600.0)
    assert found.success
    size = rows * columns
    hottest, most = found.y[:size].max(axis=0), found.y[size:].max(axis=0)
    at = int(hottest.argmax())
    return hottest[at] - 273.15, found.t[at] / 60, float(np.interp(0.33, most, found.t)) / 60, float(np.interp(0.58, most, found.t)) / 60
