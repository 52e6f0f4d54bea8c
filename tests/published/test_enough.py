"""Mould volumes, level, uncertainty and sufficiency against published figures and worked cases.

GUM: JCGM 100:2008. QUAM: Eurachem/CITAC Quantifying Uncertainty in Analytical Measurement, example A1. UM: University of Missouri, forestry
functions page. Cases without a document are exact arithmetic worked apart from our code; their tolerance is what the digits given support.
"""

from __future__ import annotations

import math

import pytest

from calc.casting import budget, hollow_shapes, level, shapes
from calc.casting import sufficiency as enough
from calc.casting.budget import Spread
from calc.casting.shapes import Shape
from calc.quantity.units import from_si, to_si

INCH = 0.0254
ML = 1e-6

VOLUMES: list[tuple[Shape, float, float]] = [  # shape, depth, mL
    (shapes.Cylinder(13.75 * INCH), 2 * INCH, 4866.6),
    (shapes.Cylinder(0.300), 0.060, 4241.2),
    (shapes.Ring(0.250, 0.150), 0.040, 1256.6),
    (shapes.Box(24 * INCH, 8.5 * INCH), 1.625 * INCH, 5432.3),
    (hollow_shapes.TaperedRound(0.100, 0.120, 0.150), 0.150, 1429.4),
    (hollow_shapes.TaperedBox(0.380, 0.280, 0.400, 0.300, 0.050), 0.050, 5656.7),
    (shapes.Polygon(6, 0.200, "flats"), 0.050, 1732.1),
    (shapes.Ellipse(0.320, 0.220), 0.040, 2211.7),
    (shapes.Outline((0.0, 0.0, 0.180, 0.010, 0.240, 0.090, 0.200, 0.170, 0.090, 0.200, -0.020, 0.110)), 0.035, 1316.0),
    (shapes.Widths(0.600, (0.120, 0.135, 0.128, 0.140, 0.110)), 0.045, 3568.5),
    (hollow_shapes.Ball(0.300), 0.040, 687.0),
    (shapes.Slot(0.500, 0.180), 0.030, 2491.4),
]


@pytest.mark.parametrize("shape, depth, millilitres", VOLUMES, ids=[type(shape).__name__ + str(place) for place, (shape, _, _) in enumerate(VOLUMES)])
def test_mould_volumes(shape: Shape, depth: float, millilitres: float) -> None:  # exact
    assert shape.volume(depth) == pytest.approx(millilitres * ML, abs=0.1 * ML)


def test_a_round_mould_in_other_units() -> None:  # exact: 296.98 in3, 164.6 US fl oz, 5.142 US qt
    found = shapes.Cylinder(13.75 * INCH).volume(2 * INCH)
    for unit, expected, tolerance in (("in³", 296.98, 0.01), ("US fl oz", 164.6, 0.05), ("US qt", 5.142, 0.001)):
        assert from_si(found, "volume", unit) == pytest.approx(expected, abs=tolerance)


def test_a_log_as_a_cone_trunk() -> None:  # UM: diameters 10 and 12 in, 16 ft: 10.588 ft3
    foot = to_si(1, "length", "ft")
    found = hollow_shapes.TaperedRound(10 * INCH, 12 * INCH, 16 * foot).volume(16 * foot)
    assert found / foot**3 == pytest.approx(10.588, abs=0.001)


def test_outline_of_six_corners() -> None:  # shoelace: 37 600 mm2
    shape = shapes.Outline((0.0, 0.0, 0.180, 0.010, 0.240, 0.090, 0.200, 0.170, 0.090, 0.200, -0.020, 0.110))
    assert shape.floor == pytest.approx(37600e-6)


def test_a_bowl_by_its_rim_is_the_same_cap() -> None:  # pi h (3 a^2 + h^2) / 6, a^2 = 2 R h - h^2
    rim = 2 * math.sqrt(2 * 150 * 40 - 40**2) / 1000
    assert hollow_shapes.Bowl(rim, 0.040).volume(0.040) == pytest.approx(687.0 * ML, abs=0.1 * ML)


# ---------------------------------------------------------------- out of level


@pytest.mark.parametrize(
    "shape, slope, off_mm, millilitres",
    [
        (shapes.Cylinder(0.300), 0.001, 0.15, 10.6),
        (shapes.Cylinder(0.300), 0.005, 0.75, 53.0),
        (shapes.Cylinder(13.75 * INCH), (1 / 16) / 13.75, 1.5875 / 2, 76.0),  # 1/16 in across the diameter
    ],
)
def test_one_wall_misreads(shape: Shape, slope: float, off_mm: float, millilitres: float) -> None:  # geometry
    off = level.misread(slope, shape.reach(0.05))
    assert off == pytest.approx(off_mm / 1000, abs=5e-6)
    assert off * shape.area(0.05) == pytest.approx(millilitres * ML, abs=0.1 * ML)


def test_a_box_that_slopes_both_ways() -> None:  # 600 x 200, 2 mm/m the long way and 1 mm/m the short way: 0.7 mm, 84 mL
    off = level.misread(0.002, 0.300) + level.misread(0.001, 0.100)
    assert off == pytest.approx(0.0007)
    assert off * shapes.Box(0.600, 0.200).area(0.05) == pytest.approx(84.0 * ML, abs=0.1 * ML)
    assert shapes.Box(0.600, 0.200).reach(0.05) == pytest.approx(0.300 + 0.100)


@pytest.mark.parametrize("dry_from_mm, millilitres", [(50, 87.8), (150, 212.1), (0, 45.0)])  # by quadrature
def test_wedge(dry_from_mm: float, millilitres: float) -> None:
    assert level.wedge_in_a_round(0.150, dry_from_mm / 1000, 0.02) == pytest.approx(millilitres * ML, abs=0.1 * ML)


def test_a_sagging_disc() -> None:  # pi R^2 s / 2
    assert level.sagged(math.pi * 0.150**2, 0.003) == pytest.approx(math.pi * 0.150**2 * 0.003 / 2)


# ---------------------------------------------------------------- how sure


def test_cadmium_standard() -> None:  # QUAM A1: 1002.7 mg/L, u 0.9; c = 1000 m P / V
    found = 1000 * 100.28 * 0.9999 / 100.0
    u = found * budget.combined([Spread("mass", 0.05 / 100.28), Spread("purity", 0.000058 / 0.9999), Spread("volume", 0.07 / 100.0)])
    assert found == pytest.approx(1002.70, abs=0.01) and u == pytest.approx(0.86, abs=0.01)


def test_a_cylinder_by_its_sizes() -> None:  # GUM equation (10): D 300 u 0.3, h 60 u 0.4 mm: 4241.2 mL, u 29.5
    shape = shapes.Cylinder(0.300)
    parts = [Spread(name, u) for name, u in shape.moved(0.060, 0.0003)]
    parts.append(Spread("depth", shape.area(0.060) * 0.0004))
    assert budget.combined(parts) == pytest.approx(29.5 * ML, abs=0.1 * ML)


def test_four_depths() -> None:  # Student's t, 3 degrees of freedom: mean 50.675, u 0.180, one-sided 95 % upper 51.10
    mean, u, freedom = budget.repeated([50.2, 51.0, 50.6, 50.9])
    assert (mean, u, freedom) == (pytest.approx(50.675), pytest.approx(0.180, abs=0.001), 3)
    assert budget.amount_for(0.95, mean, u, freedom) == pytest.approx(51.10, abs=0.01)


@pytest.mark.parametrize(
    "freedom, expected",
    [
        (math.inf, (1.282, 1.645, 1.960, 2.326)),  # NIST TN 1297, 6.2: 1.645 holds 90 % on both sides
        (3, (1.638, 2.353, 3.182, 4.541)),  # exact t
        (4, (1.533, 2.132, 2.776, 3.747)),
        (9, (1.383, 1.833, 2.262, 2.821)),
    ],
)
def test_one_sided_deviates(freedom: float, expected: tuple[float, ...]) -> None:
    for odds, deviate in zip((0.90, 0.95, 0.975, 0.99), expected, strict=True):
        assert budget.deviate(odds, freedom) == pytest.approx(deviate, abs=0.0006)


def burl_in_a_round(wood_u_share: float) -> enough.Demand:
    """A burl of 1240 g, 519.6 kg/m3, in a round of 13 3/4 in filled 2 in deep; resin 1.09 g/mL, u 1 %.

    Diameter to 1/32 in, depth to 1 mm, level to 76.0 mL, soak-in 2 % give or take 2 % of the wood, loss 30 give or take 20 mL.
    """
    shape, depth = shapes.Cylinder(13.75 * INCH), 2 * INCH
    parts = [Spread("size", u) for _, u in shape.moved(depth, budget.within(INCH / 32))]
    parts.append(Spread("depth", shape.area(depth) * budget.within(0.001)))
    assert budget.combined(parts) == pytest.approx(56.8 * ML, abs=0.1 * ML)
    parts.append(Spread("level", budget.within(76.0 * ML)))
    volume = 1.240 / 519.6
    wood = enough.Wood(volume, wood_u_share * volume, 0.02, 0.02)
    in_mould = enough.resin_in_mould(enough.Demand(shape.volume(depth), tuple(parts)), wood)
    return in_mould.plus(enough.stays_behind(30 * ML, 20 * ML))


@pytest.mark.parametrize(
    "wood_u_share, volume_u, mass_u, grams_95, grams_99",
    [(0.10, 246.5, 270.1, 3232, 3416), (0.015, 85.3, 97.0, 2948, 3014)],  # GUM equation (10); by weight, and by dipping
)
def test_burl_in_a_round(wood_u_share: float, volume_u: float, mass_u: float, grams_95: float, grams_99: float) -> None:
    volume = burl_in_a_round(wood_u_share)
    assert volume.likely == pytest.approx(2557.9 * ML, abs=1 * ML) and volume.u == pytest.approx(volume_u * ML, abs=1 * ML)
    mass = volume.weighed(1090, 10.9)
    assert mass.likely == pytest.approx(2.7881, abs=0.001) and mass.u == pytest.approx(mass_u / 1000, abs=0.001)
    assert mass.for_odds(0.95) == pytest.approx(grams_95 / 1000, abs=0.001)
    assert mass.for_odds(0.99) == pytest.approx(grams_99 / 1000, abs=0.001)
    assert mass.by_name()[0].name == ("wood" if wood_u_share == 0.10 else "depth")


@pytest.mark.parametrize("grams, odds", [(3000, 0.784), (3400, 0.988)])
def test_odds_of_what_is_in_hand(grams: float, odds: float) -> None:
    assert burl_in_a_round(0.10).weighed(1090, 10.9).odds(grams / 1000) == pytest.approx(odds, abs=0.002)
