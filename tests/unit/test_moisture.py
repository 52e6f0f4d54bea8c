"""Water in wood: edges, inverses, and the grades on both sides of every limit."""

from __future__ import annotations

import pytest

from calc.casting import moisture
from calc.casting.moisture import Limits
from calc.casting.species import all_species, largest_shrinkage, options
from calc.sources import source

ROOM_K = 294.15


@pytest.mark.parametrize("humidity", [0.05, 0.3, 0.5, 0.8, 0.95])
@pytest.mark.parametrize("temperature_k", [273.15, 294.15, 323.15])
def test_humidity_for_undoes_equilibrium(humidity: float, temperature_k: float) -> None:
    assert moisture.humidity_for(moisture.equilibrium(temperature_k, humidity), temperature_k) == pytest.approx(humidity, abs=1e-6)


def test_humidity_for_wetter_than_any_air_is_held_at_the_end() -> None:
    assert moisture.humidity_for(0.60, ROOM_K) == pytest.approx(0.98)


def test_wood_does_not_move_above_fibre_saturation() -> None:
    assert moisture.movement(0.1, 0.60, 0.35, 0.1) == 0
    assert moisture.movement(0.1, 0.60, 0.08, 0.1) == moisture.movement(0.1, 0.30, 0.08, 0.1)


def test_movement_there_and_back_is_nothing() -> None:
    shrunk = 0.3 + moisture.movement(0.3, 0.12, 0.07, 0.099)
    assert shrunk + moisture.movement(shrunk, 0.07, 0.12, 0.099) == pytest.approx(0.3)


def test_a_meter_at_its_own_temperature_is_not_corrected() -> None:
    assert moisture.corrected_reading(0.09, 294.2611) == pytest.approx(0.09)
    assert moisture.corrected_reading(0.09, 300.0) < 0.09
    assert moisture.corrected_reading(0.001, 333.0) == 0.0


def test_gaining_weight_is_a_loss_below_zero() -> None:
    assert moisture.lost_per_week(1.0, 1.01, moisture.WEEK_S) < 0


@pytest.mark.parametrize(
    "home, percent, grade",
    [
        (0.08, 10.0, "go"), (0.08, 10.1, "caution"), (0.08, 12.0, "caution"), (0.08, 12.1, "strong"), (0.08, 15.0, "strong"), (0.08, 15.1, "stop"),
        (0.06, 8.0, "go"), (0.06, 8.1, "caution"), (0.06, 10.1, "strong"), (0.06, 15.0, "strong"),  # dry country asks for drier wood
        (0.11, 10.0, "go"), (0.11, 10.1, "caution"), (0.11, 12.1, "strong"),  # a damp home does not lift the ten
        (0.20, 15.1, "stop"),
    ],
)  # fmt: skip
def test_grades(home: float, percent: float, grade: str) -> None:
    assert Limits(home).grade(percent / 100) == grade


def test_the_species_table_is_whole() -> None:
    woods = all_species()
    assert len(woods) == 64 and [option.value for option in options()][1:] == list(woods)
    for wood in woods.values():
        assert 0.25 < wood.basic < 1.1 and wood.name and wood.binomial
        assert wood.at_12 is None or wood.basic < wood.at_12 < 0.8
        assert all(source(key) for key in wood.sources)
        assert (wood.spread is None) == (wood.key == "sycamore-american")
        assert wood.spread is None or 0.05 <= wood.spread <= 0.25
        if wood.shrinkage is not None:
            assert wood.shrinkage.radial < wood.shrinkage.tangential and source(wood.shrinkage.source)
            assert (wood.shrinkage.volumetric is None) == (wood.key == "apple")
            assert wood.shrinkage.tangential < (wood.shrinkage.volumetric or 1) <= 1
            assert (wood.shrinkage.volumetric or 0) <= largest_shrinkage().shrinkage.volumetric * 1.01
