"""Dew points, warm-up and warm resin against published figures.

CHART: a coating supplier's dew-point chart, whole degrees Fahrenheit, name left out; its steps and rounding leave 1.5 °F.
GUIDE: a coating guide's worked example on ISO 8502-4, whole degrees Celsius.
WMO: the Magnus form of WMO-No. 8, annex 4.B, worked by hand; half the last digit.
WALL: Yovanovich, one-term solution of a plane wall; SERIES: the same summed to many terms and by finite differences.
VISCOSITY: data set of Polymer 2022, doi 10.1016/j.polymer.2022.125216: two measured series.
MAKERS: working time halves for every 10 °C; an adhesive maker, a laminating manual, a maker of building epoxies.
"""

from __future__ import annotations

import math

import pytest

from calc.casting import air, warm_resin, warming
from calc.quantity.units import from_si, to_si


@pytest.mark.parametrize(
    ("room", "humidity", "dew"),
    [
        (70, 0.65, 57),  # A1, CHART
        (80, 0.50, 59),  # A2, CHART
        (60, 0.80, 54),  # A3, CHART
    ],
)
def test_dew_point_of_a_chart(room: float, humidity: float, dew: float) -> None:
    found = air.dew_point(to_si(room, "temperature", "°F"), humidity)
    assert from_si(found, "temperature", "°F") == pytest.approx(dew, abs=1.5)


@pytest.mark.parametrize(
    ("room", "humidity", "dew", "tolerance"),
    [
        (16, 0.71, 11, 0.5),  # A4, GUIDE
        (20, 0.65, 13.22, 0.01),  # A5, WMO
        (25, 0.60, 16.69, 0.01),  # A6, WMO
    ],
)
def test_dew_point(room: float, humidity: float, dew: float, tolerance: float) -> None:
    assert air.dew_point(room + 273.15, humidity) - 273.15 == pytest.approx(dew, abs=tolerance)


def test_saturation_pressure_at_the_ice_point() -> None:
    assert air.saturation_pressure(273.15) == pytest.approx(611.2, abs=0.05)  # WMO prints 6.112 hPa


def test_the_other_set_of_magnus_constants_says_the_same() -> None:
    """17.625 and 243.04, the other set in use, to 0.05 °C over a shop's range; reference pages give 0.4 °C for either."""
    for celsius in range(5, 36, 5):
        for humidity in (0.4, 0.6, 0.8, 1.0):
            g = math.log(humidity) + 17.625 * celsius / (243.04 + celsius)
            other = 243.04 * g / (17.625 - g)
            assert air.dew_point(celsius + 273.15, humidity) - 273.15 == pytest.approx(other, abs=0.05)


def test_root_of_the_plane_wall() -> None:  # WALL: Bi 1.25, z = 0.9308
    assert warming.plane_wall_root(1.25) == pytest.approx(0.9308, abs=0.00005)


@pytest.mark.parametrize(
    ("thickness_mm", "film", "hours"),
    [
        (25, 5, 2.56),  # SERIES: wood of specific gravity 0.6, hours to a twentieth of the difference
        (50, 5, 5.81),
        (75, 5, 9.77),
        (25, 10, 1.45),
        (50, 10, 3.61),
        (75, 10, 6.48),
    ],
)
def test_hours_to_warm_through(thickness_mm: float, film: float, hours: float, monkeypatch: pytest.MonkeyPatch) -> None:
    figures = {"room film": film, "wood conductivity": air.limit("wood conductivity"), "wood diffusivity": air.limit("wood diffusivity")}
    monkeypatch.setattr(warming, "limit", figures.__getitem__)
    found = warming.time_to_warm(thickness_mm / 1000, 273.15, 293.15, 292.15)
    assert found / 3600 == pytest.approx(hours, rel=0.005)  # the printed digits


THICK = {25: 6395, 30: 3334, 35: 1784, 40: 1028, 45: 635, 50: 416, 55: 257, 60: 181, 65: 136, 70: 91}
THIN = {29.7: 598, 34.9: 395, 39.8: 284, 44.9: 201, 49.8: 166}


def fitted_energy(series: dict[float, float]) -> float:
    """Slope of ln(viscosity) against 1 / T by least squares, times R: J/mol."""
    points = [(1 / (celsius + 273.15), math.log(measured)) for celsius, measured in series.items()]
    mean_x, mean_y = (sum(column) / len(points) for column in zip(*points, strict=True))
    return 8.314 * sum((x - mean_x) * (y - mean_y) for x, y in points) / sum((x - mean_x) ** 2 for x, _ in points)


def test_the_band_of_energies_spans_the_measured_series() -> None:  # VISCOSITY: 79 and 53 kJ/mol
    assert fitted_energy(THICK) == pytest.approx(79000, abs=1000) and fitted_energy(THIN) == pytest.approx(53000, abs=1000)
    low, usual, high = (air.limit(f"viscosity energy{end}") for end in (" low", "", " high"))
    assert low < fitted_energy(THIN) < usual < fitted_energy(THICK) < high


@pytest.mark.parametrize(("series", "end"), [(THICK, "high"), (THIN, "low")])
def test_resin_is_never_told_thinner_than_measured(series: dict[float, float], end: str) -> None:
    """VISCOSITY. The lightly thinned one thins faster than its end of the band up to 50 °C: we stay on the thick side of it."""
    (start, first), *rest = series.items()
    for celsius, measured in rest:
        if celsius <= 50:
            ratio = warm_resin.viscosity_ratio(celsius + 273.15, start + 273.15, air.limit(f"viscosity energy {end}"))
            assert measured / first <= ratio <= 1.7 * measured / first


def test_ten_degrees_warmer_is_less_than_half_as_thick() -> None:
    """VISCOSITY: 25 to 35 °C leaves 0.43 of it, 0.35 to 0.52 by kind."""
    for end, left in (("", 0.43), (" high", 0.35), (" low", 0.52)):
        found = warm_resin.viscosity_ratio(308.15, 298.15, air.limit(f"viscosity energy{end}"))
        assert found == pytest.approx(left, abs=0.005)


def test_working_time_halves() -> None:  # MAKERS
    assert warm_resin.working_time_ratio(308.15, 298.15, air.limit("halving step")) == pytest.approx(0.5, abs=1e-12)
    # and is what an activation energy of 53 kJ/mol does from 25 to 35 °C, to 1 %
    assert math.exp(53000 / 8.314 * (1 / 308.15 - 1 / 298.15)) == pytest.approx(0.5, rel=0.01)
