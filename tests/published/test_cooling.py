"""How long a slab cools, held against printed solutions and against a second solution by finite differences worked for our reference.

SERIES: plane wall, one-term solution (Yovanovich, University of Waterloo course); the many-term figures agree with Crank-Nicolson to the digits given.
HOURS: hours to a twentieth of the starting excess, by finite differences; to 1 % (the last printed digit).
WOOD: Wood Handbook (FPL-GTR-190), equation 4-15.
"""

from __future__ import annotations

import math

import pytest

from calc.turning import cooling
from calc.turning.cooling import Slab


@pytest.mark.parametrize(
    ("biot", "fourier", "middle", "face"),
    [(1.25, 1.0, 0.4785, 0.2858), (1.25, 2.0, 0.2012, 0.1202), (1.0, 0.5, 0.7725, None)],
)
def test_series(biot: float, fourier: float, middle: float, face: float | None) -> None:
    # SERIES
    assert cooling.excess(biot, fourier) == pytest.approx(middle, abs=6e-5)
    assert face is None or cooling.excess(biot, fourier, 1.0) == pytest.approx(face, abs=6e-5)


def test_first_root_and_one_term() -> None:
    # SERIES
    z = cooling.roots(1.25, 1)[0]
    assert z == pytest.approx(0.9308, abs=6e-5)
    assert cooling.coefficient(z) == pytest.approx(1.1379, abs=6e-5)
    assert cooling.excess(1.0, 0.5, terms=1) == pytest.approx(0.7730, abs=6e-5)


@pytest.mark.parametrize(
    ("thickness_mm", "resin_boxed", "resin_still", "resin_ideal", "wood_boxed", "wood_still", "bare"),
    [(25, 4.03, 2.24, 0.49, 2.56, 1.45, 0.37), (50, 8.96, 5.40, 1.97, 5.81, 3.61, 1.50), (75, 14.8, 9.51, 4.42, 9.77, 6.48, 3.37)],
)
def test_hours_to_a_twentieth(
    thickness_mm: float, resin_boxed: float, resin_still: float, resin_ideal: float, wood_boxed: float, wood_still: float, bare: float
) -> None:
    # HOURS
    resin, wood = cooling.resin(), cooling.wood()
    cases = [(resin, 5, resin_boxed), (resin, 10, resin_still), (resin, math.inf, resin_ideal), (wood, 5, wood_boxed), (wood, 10, wood_still)]
    for stuff, film, hours in cases:
        assert Slab(stuff, thickness_mm / 1000, film).time_to(0.05) / 3600 == pytest.approx(hours, rel=0.01)
    length_squared_over_diffusivity = (thickness_mm / 2000) ** 2 / resin.diffusivity / 3600
    assert length_squared_over_diffusivity == pytest.approx(bare, abs=0.006)
    assert Slab(resin, thickness_mm / 1000, 10).time_to(0.05) / 3600 > 2.5 * bare  # why the bare rule is not used


def test_on_a_faceplate() -> None:
    # HOURS: 50 mm, h 10, one face insulated
    assert Slab(cooling.resin(), 0.050, 10, faces=1).time_to(0.05) / 3600 == pytest.approx(14.6, abs=0.06)


@pytest.mark.parametrize(("thickness_mm", "start", "room", "hours"), [(50, 45, 20, 5.79), (30, 50, 22, 3.10)])
def test_to_within_one_degree_of_the_shop(thickness_mm: float, start: float, room: float, hours: float) -> None:
    # HOURS
    assert Slab(cooling.resin(), thickness_mm / 1000, 10).time_to(1 / (start - room)) / 3600 == pytest.approx(hours, abs=0.006)


def test_properties() -> None:
    # WOOD; epoxy from a materials database
    assert cooling.wood_conductivity(0.6, 0.12) == pytest.approx(0.1644, abs=6e-5)
    assert cooling.wood().diffusivity == pytest.approx(1.53e-7, rel=0.005)
    assert cooling.resin().diffusivity == pytest.approx(1.159e-7, rel=0.001)
