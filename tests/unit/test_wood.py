"""Wood in resin: both sides of every branch, and shapes whose answer is plain."""

from __future__ import annotations

import pytest

from calc.casting import wood, wood_density
from calc.casting.species import all_species
from calc.casting.wood import Shape


def test_gravity_does_not_change_above_fibre_saturation() -> None:
    assert wood_density.gravity_from_basic(0.5, 0.30) == wood_density.gravity_from_basic(0.5, 0.80) == 0.5
    below, above = wood_density.gravity_from_basic(0.5, 0.2999999), wood_density.gravity_from_basic(0.5, 0.3000001)
    assert below == pytest.approx(above, abs=1e-6)


def test_gravity_at_12_from_itself() -> None:
    assert wood_density.gravity_from_12(0.55, 0.128, 0.12) == pytest.approx(0.55)


def test_no_air_is_left_in_full_wood() -> None:
    full = wood_density.fullest(0.55)
    assert wood_density.air_share(wood_density.density(0.55, full), full) == pytest.approx(0, abs=1e-12)
    assert wood_density.air_share(wood_density.density(0.55, full + 0.5), full + 0.5) == 0


@pytest.mark.parametrize("widths", [[0.1, 0.1], [0.1, 0.1, 0.1], [0.1] * 4, [0.1] * 7])
def test_a_rectangle_by_its_widths(widths: list[float]) -> None:
    assert wood.area_by_widths(0.5, widths) == pytest.approx(0.05)


def test_a_triangle_and_a_parabola_by_their_widths() -> None:
    assert wood.area_by_widths(1.0, [0.0, 0.2]) == pytest.approx(0.1)
    assert wood.area_by_widths(1.0, [0.0, 0.1, 0.2, 0.3]) == pytest.approx(0.15)
    assert wood.area_by_widths(1.0, [0.0, 1.0, 0.0]) == pytest.approx(2 / 3)


def test_share_below_runs_from_nothing_to_all() -> None:
    shape = Shape(0.09, 0.096, 0.102, 0.045)
    assert shape.share_below(-0.01) == 0 and shape.share_below(0.045) == pytest.approx(1) and shape.share_below(1.0) == pytest.approx(1)
    shares = [shape.share_below(0.045 * step / 20) for step in range(21)]
    assert shares == sorted(shares)


def test_a_cone_on_its_base_has_seven_eighths_in_its_lower_half() -> None:
    cone = Shape(bottom=1.0, middle=0.25, top=0.0, height=1.0)
    assert cone.volume == pytest.approx(1 / 3) and cone.share_below(0.5) == pytest.approx(7 / 8)


def test_wood_heavier_than_the_resin_has_no_lift_depth() -> None:
    shape = Shape(0.01, 0.01, 0.01, 0.05)
    assert wood.lift_depth(shape, shape.volume, 1101 * shape.volume, 1100) is None
    depth = wood.lift_depth(shape, shape.volume, 1099.9 * shape.volume, 1100)
    assert depth is not None and depth == pytest.approx(0.05, rel=0.001)


def test_open_voids_do_not_lift() -> None:
    shape = Shape(0.01, 0.01, 0.01, 0.05)
    depth = wood.lift_depth(shape, 0.8 * shape.volume, 600 * 0.8 * shape.volume, 1100)
    assert depth == pytest.approx(0.05 * 600 / 1100, rel=1e-6)


def test_the_two_ways_to_a_density_agree_for_every_wood_that_has_both() -> None:
    for row in all_species().values():
        if row.at_12:
            other = wood_density.density(wood_density.gravity_from_basic(row.basic, 0.08), 0.08)
            assert wood_density.density_of_species(row, 0.08) == pytest.approx(other, rel=0.12), row.name
