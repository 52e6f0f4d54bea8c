"""Wood in resin against the handbook's figures and worked cases.

WH: USDA Wood Handbook, FPL-GTR-282 (2021), equations 4-3 and 4-9 to 4-14; FPL-GTR-190 (2010), pages 4-9 and 4-10, table 5-3a. FIA: USDA
Forest Service reference species table, 2021. Cases without a document are the handbook's equations or exact arithmetic worked
apart from our code; their tolerance is what the digits given support.
"""

from __future__ import annotations

import itertools

import pytest

from calc import desk
from calc.casting import wood, wood_density
from calc.casting.species import all_species
from calc.casting.wood import Shape
from calc.quantity.units import to_si

ML = 1e-6
STANDARD_GRAVITY = 9.80665  # m/s2, exact by definition


def test_white_ash_at_12_percent() -> None:  # WH page 4-10: basic 0.55 reads 0.605 off the chart
    assert wood_density.gravity_from_basic(0.55, 0.12) == pytest.approx(0.605, abs=0.003)


def test_density_of_white_ash() -> None:  # WH page 4-10: 678 kg/m3, 42.2 lb/ft3
    found = wood_density.density(0.605, 0.12)
    assert found == pytest.approx(678, abs=1)
    assert found / to_si(1, "density", "lb/ft³") == pytest.approx(42.2, abs=0.15)


@pytest.mark.parametrize(
    "basic, moisture, kg_m3, tolerance",
    [(0.51, 0.08, 611.4, 0.2), (0.44, 0.08, 519.6, 0.2), (0.836, 0.10, 1079.0, 0.5)],  # WH equations 4-13, 4-14: walnut, bigleaf maple, olive
)
def test_density_from_the_basic_gravity(basic: float, moisture: float, kg_m3: float, tolerance: float) -> None:
    assert wood_density.density(wood_density.gravity_from_basic(basic, moisture), moisture) == pytest.approx(kg_m3, abs=tolerance)


@pytest.mark.parametrize("key, kg_m3", [("walnut-black", 605.2), ("maple-sugar", 695.3)])  # WH table 5-3a, 4-3 and equation 4-10, at 8 %
def test_density_from_the_tabulated_gravity(key: str, kg_m3: float) -> None:
    assert wood_density.density_of_species(all_species()[key], 0.08) == pytest.approx(kg_m3, abs=0.3)


def test_olive_has_no_tabulated_gravity() -> None:  # WH equation 4-13 from the database's basic gravity
    assert wood_density.density_of_species(all_species()["olive"], 0.10) == pytest.approx(1079.0, abs=0.5)


@pytest.mark.parametrize("basic, percent", [(0.55, 116.9), (0.30, 268.4), (0.90, 46.2)])  # WH equation 4-3; its text prints 267 and 44
def test_full_of_water(basic: float, percent: float) -> None:
    assert 100 * wood_density.fullest(basic) == pytest.approx(percent, abs=0.1)


def test_air_in_white_ash() -> None:  # follows from WH equation 4-3
    assert wood_density.air_share(wood_density.density(0.605, 0.12), 0.12) == pytest.approx(0.5345, abs=0.0005)


def test_basic_and_tabulated_gravities_agree() -> None:  # WH table 5-3a against FIA by equation 4-13; 48 species: mean -0.6 %, -8.9 to +6.9 %
    off = [wood_density.gravity_from_basic(row.basic, 0.12) / row.at_12 - 1 for row in all_species().values() if row.at_12]
    assert len(off) == 29
    assert -0.089 <= min(off) and max(off) <= 0.069 and abs(sum(off) / len(off) + 0.006) < 0.015


def test_burl_by_weight() -> None:  # 1240 g at 519.6 kg/m3
    assert 1.240 / wood_density.density(wood_density.gravity_from_basic(0.44, 0.08), 0.08) == pytest.approx(2386.5 * ML, abs=0.5 * ML)


def test_dipped_piece() -> None:  # Archimedes: 842 g, the scale rises 1378 g, water 0.9982 g/mL
    volume = wood.volume_by_dip(1.378)
    assert volume == pytest.approx(1380.5 * ML, abs=0.2 * ML)
    assert 0.842 / volume == pytest.approx(609.9, abs=0.1)


def test_live_edge_faces() -> None:  # prismatoid: 900, 960, 1020 cm2, 4.5 cm thick
    assert Shape(0.102, 0.096, 0.090, 0.045).volume == pytest.approx(4320 * ML, abs=0.1 * ML)


def test_slab_by_five_widths() -> None:  # Simpson: 79 300 mm2; trapeziums give 77 700
    widths = [0.120, 0.135, 0.128, 0.140, 0.110]
    assert wood.area_by_widths(0.600, widths) == pytest.approx(0.0793)
    assert sum(wood.area_by_widths(0.150, pair) for pair in itertools.pairwise(widths)) == pytest.approx(0.0777)
    assert wood.area_by_widths(0.600, widths) * 0.045 == pytest.approx(3568.5 * ML, abs=0.1 * ML)


def test_cube_in_water() -> None:  # a teaching page: 40 lb/ft3, 1 ft, water 62.4 lb/ft3, sinks 0.641 ft
    foot, pound_foot = to_si(1, "length", "ft"), to_si(1, "density", "lb/ft³")
    cube = Shape(foot**2, foot**2, foot**2, foot)
    depth = wood.lift_depth(cube, cube.volume, 40 * pound_foot * cube.volume, 62.4 * pound_foot)
    assert depth is not None and depth / foot == pytest.approx(0.641, abs=0.001)


def test_walnut_slab_in_resin() -> None:  # 611 kg/m3, 3568.5 mL, resin 1100: up 17.11 N, 1.745 kgf; 45 mm thick lifts at 25.0 mm
    volume = 3568.5 * ML
    lift = wood.net_lift(volume, 611 * volume, 1100)
    assert lift == pytest.approx(1.745, abs=0.002) and lift * STANDARD_GRAVITY == pytest.approx(17.11, abs=0.02)
    face = volume / 0.045
    depth = wood.lift_depth(Shape(face, face, face, 0.045), volume, 611 * volume, 1100)
    assert depth == pytest.approx(0.025, abs=0.0001)


def test_olive_hardly_floats() -> None:  # 1079 kg/m3, 900 mL, resin 1100: 18.9 gf
    assert wood.net_lift(900 * ML, 1079 * 900 * ML, 1100) == pytest.approx(0.0189, abs=0.0002)


def test_air_in_the_walnut_slab() -> None:  # G 0.5661 at 8 %: 0.587 of 3568.5 mL is 2095 mL, the most that can soak in
    share = wood_density.air_share(wood_density.density(0.5661, 0.08), 0.08)
    assert share == pytest.approx(0.587, abs=0.0005) and share * 3568.5 == pytest.approx(2095, abs=1)


def test_dipping_instead_of_weighing_cuts_the_spread_of_the_wood() -> None:  # worked budgets: u of the wood 238.6 mL by weight (10 %), 1.5 % by dipping
    weighed = desk.answer("how-much-wood", {"way": "weigh", "mass": "1240", "density": "", "species": "walnut-black"})["values"]
    dipped = desk.answer("how-much-wood", {"rise": "2382", "weight": "1240"})["values"]
    assert dipped["volume_u"]["si"] == pytest.approx(0.015 * 2386.5 * ML, rel=0.01)
    assert weighed["volume_u"]["si"] / weighed["volume"]["si"] == pytest.approx(0.07)  # the database's spread of black walnut trees
