"""Water in wood against the handbook's table and worked cases.

WH: USDA Wood Handbook, FPL-GTR-282 (2021), equation 4-5 and table 4-2; FPL-GTR-190 (2010), chapter 13. DRY: Principles and
Practices of Drying Lumber, table I. HDK: Hardwood Dry Kiln Operation, page 41. Cases without a document are the handbook's
equation or exact algebra worked apart from our code; their tolerance is half the last digit they are given to, or wider where said.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from calc.casting import moisture
from calc.casting.species import all_species
from calc.quantity.units import to_si


def _cells() -> list[tuple[float, float, float]]:
    """Humidity in percent, temperature in degrees Fahrenheit, moisture in percent."""
    text = Path(__file__).with_name("emc_table.csv").read_text(encoding="utf-8").splitlines()
    head, *rows = csv.reader(line for line in text if not line.startswith("#"))
    return [
        (float(row[0]), float(column.removesuffix("F")), float(cell))
        for row in rows
        for column, cell in zip(head[1:], row[1:], strict=True)
        if cell
    ]


def emc(fahrenheit: float, humidity_percent: float) -> float:
    return 100 * moisture.equilibrium(to_si(fahrenheit, "temperature", "°F"), humidity_percent / 100)


def emc_celsius(celsius: float, humidity_percent: float) -> float:
    return 100 * moisture.equilibrium(to_si(celsius, "temperature", "°C"), humidity_percent / 100)


def test_every_cell_of_the_handbook_table() -> None:  # WH table 4-2; printed to 0.1, metric coefficients rounded apart from it
    cells = _cells()
    assert len(cells) == 123
    off = {cell: emc(cell[1], cell[0]) - cell[2] for cell in cells}
    assert max(map(abs, off.values())) < 0.06, max(off.items(), key=lambda entry: abs(entry[1]))


@pytest.mark.parametrize(
    "fahrenheit, humidity, percent, tolerance",
    [
        (70, 40, 7.7, 0.05),  # WH table 4-2; HDK quotes 7.7
        (70, 65, 12.0, 0.05),  # WH table 4-2
        (70, 40, 7.702, 0.02),  # WH equation 4-5, inch-pound form; the two forms differ by at most 0.013
        (70, 65, 11.964, 0.02),  # the same
        (140, 55, 8.4, 0.05),  # WH equation 4-5 as a reference page quotes it
    ],
)
def test_quoted_moistures(fahrenheit: float, humidity: float, percent: float, tolerance: float) -> None:
    assert emc(fahrenheit, humidity) == pytest.approx(percent, abs=tolerance)


@pytest.mark.parametrize("humidity, percent", [(50, 9.271), (65, 11.996)])  # WH equation 4-5, metric form, by hand
def test_metric_form(humidity: float, percent: float) -> None:
    assert emc_celsius(20, humidity) == pytest.approx(percent, abs=0.005)


@pytest.mark.parametrize("celsius, percent, humidity", [(21, 8, 42.0), (20, 12, 65.0)])  # inverse of equation 4-5
def test_humidity_for_a_moisture(celsius: float, percent: float, humidity: float) -> None:
    assert 100 * moisture.humidity_for(percent / 100, to_si(celsius, "temperature", "°C")) == pytest.approx(humidity, abs=0.1)


@pytest.mark.parametrize(
    "humidity, percent", [(15, 3.5), (30, 6), (50, 9), (65, 12), (80, 16), (90, 20), (95, 24)]
)  # DRY table I: room temperature, rounded to half a percent and more
def test_room_temperature_rule(humidity: float, percent: float) -> None:
    assert emc(70, humidity) == pytest.approx(percent, abs=0.6)


def test_oven_test() -> None:  # extension service's worked example, red oak: 136 g wet, 100 g oven-dry
    assert moisture.of_oven_test(0.136, 0.100) == pytest.approx(0.36, abs=1e-4)


def test_mass_after_drying() -> None:  # 1240 g at 14 %, dried to 8 %: loses 65.3 g
    assert 1000 * moisture.mass_after(1.240, 0.14, 0.08) == pytest.approx(1174.7, abs=0.1)


def test_cold_wood_reads_too_low() -> None:  # WH chapter 13: half a percent per 5.6 °C below 21.1 °C; 9.0 read at 10 °C
    assert 100 * moisture.corrected_reading(0.09, to_si(10, "temperature", "°C")) == pytest.approx(9.99, abs=0.02)


def test_movement_of_sugar_maple() -> None:  # WH equation 4-9 and table 4-3 (tangential 9.9 %): 300 mm from 12 to 7 %
    shrinkage = all_species()["maple-sugar"].shrinkage
    assert shrinkage is not None and shrinkage.tangential == pytest.approx(0.099)
    assert 1000 * moisture.movement(0.300, 0.12, 0.07, shrinkage.tangential) == pytest.approx(-5.26, abs=0.02)


def test_movement_from_green_to_oven_dry_is_the_tabulated_shrinkage() -> None:  # WH table 4-3: the definition of its columns
    for wood in all_species().values():
        if wood.shrinkage is not None:
            assert moisture.movement(1.0, 0.30, 0.0, wood.shrinkage.tangential) == pytest.approx(-wood.shrinkage.tangential)
