"""Weighing and mixing against published figures and worked cases.

GUM: JCGM 100:2008. Cases M and S are exact arithmetic,
worked by hand from the same definitions; their tolerance is half the last digit they are given to.
"""

from __future__ import annotations

import math

import pytest

from calc.casting import mixing, off_ratio, scales, stoichiometry, weighing
from calc.casting.mixing import Parts, Ratio

GRAM = 0.001


def test_ratio_by_volume_to_weight() -> None:  # M6
    ratio = mixing.ratio_by_weight(2, 1, 1150, 980)
    assert ratio.b == pytest.approx(42.6, abs=0.05)
    assert mixing.mixed_density(ratio, 1150, 980) == pytest.approx(1093.3, abs=0.05)


def test_density_of_the_mix() -> None:  # M7
    assert mixing.mixed_density(Ratio(100, 45), 1130, 1010) == pytest.approx(1089.8, abs=0.05)


def test_split() -> None:  # M8
    parts = mixing.split(1.870, Ratio(100, 45))
    assert parts.a == pytest.approx(1.2897, abs=0.1 * GRAM)
    assert parts.b == pytest.approx(0.5803, abs=0.1 * GRAM)


def test_a_over_poured() -> None:  # M9: 1342 g of A instead of 1289.7 g
    batch = mixing.parts_with(mixing.split(1.870, Ratio(100, 45)), 1.342, 0.0, Ratio(100, 45))
    assert batch.b == pytest.approx(0.6039, abs=0.1 * GRAM)
    assert batch.total == pytest.approx(1.9459, abs=0.1 * GRAM)
    assert batch.total - 1.870 == pytest.approx(0.0759, abs=0.1 * GRAM)


def test_b_over_poured() -> None:  # M10
    assert mixing.parts_from_b(0.600, Ratio(100, 45)).a == pytest.approx(1.3333, abs=0.1 * GRAM)


def test_pours_that_scale_and_bucket_take() -> None:  # S1
    limit = weighing.pour_limit(2.0, 0.060, 1.5e-3, 0.8, 1100)
    assert limit.net == pytest.approx(1.320, abs=1e-9) and limit.rules == "bucket"
    pours = weighing.equal_pours(2.6, Ratio(100, 45), limit.net, GRAM)
    assert len(pours) == 2
    assert pours[0].total == pytest.approx(1.300, abs=1.5 * GRAM)  # the scale's step rounds it up


@pytest.mark.parametrize(
    ("ratio", "step", "tolerance", "smallest"),
    [
        (Ratio(100, 30), 1.0, 0.02, 184.7),  # S3
        (Ratio(100, 30), 0.1, 0.02, 18.5),  # S4
        (Ratio(100, 45), 5.0, 0.05, 288.5),  # S5
        (Ratio(1, 1), 1.0, 0.02, 115.5),  # S6
    ],
)
def test_smallest_batch(ratio: Ratio, step: float, tolerance: float, smallest: float) -> None:
    found = weighing.smallest_batch(ratio, step * GRAM, tolerance, 2)
    assert found == pytest.approx(smallest * GRAM, abs=0.1 * GRAM)


def test_two_readings() -> None:  # S3: u = d / sqrt 6, GUM 4.3.7
    assert weighing.net_uncertainty(GRAM) == pytest.approx(0.408 * GRAM, abs=0.0005 * GRAM)


def test_small_batch_on_a_gram_scale() -> None:  # S7
    u = weighing.ratio_uncertainty(mixing.split(0.150, Ratio(100, 30)), weighing.net_uncertainty(GRAM))
    assert u == pytest.approx(0.0123, abs=0.0001)


@pytest.mark.parametrize(
    ("b", "grade"),
    [(0.45, "green"), (0.459, "green"), (0.441, "green"), (0.47, "amber"), (0.43, "amber"), (0.48, "red"), (0.42, "red")],
)
def test_two_and_five_percent(b: float, grade: str) -> None:  # two resin makers: weigh to 2 %, 5 % at the very worst
    assert off_ratio.grade(off_ratio.ratio_error(Parts(1.0, b), Ratio(100, 45)), 0.02, 0.05) == grade


# --- ratios from chemistry: M1 to M5; S2 ------------------------------------------------------------


def test_blend_with_a_filler() -> None:  # M1, a formulators' note: 80 g of 189, 10 g of 183, 10 g of filler: 209
    assert stoichiometry.blend_equivalent([(80, 189), (10, 183), (10, math.inf)]) == pytest.approx(209, abs=0.5)


def test_hardener_for_that_blend() -> None:  # M2, the same note: 43 to 209 is 20.6 parts
    assert stoichiometry.parts_per_hundred(43, 209) == pytest.approx(20.6, abs=0.05)


def test_diethylenetriamine() -> None:  # M3, an adhesives text: 103 g/mol, five N-H: 20.6; 10.3 parts to a resin of 200
    amine = stoichiometry.equivalent(103, 5)
    assert amine == pytest.approx(20.6, abs=0.05)
    assert stoichiometry.parts_per_hundred(amine, 200) == pytest.approx(10.3, abs=0.05)


def test_polyamine_system() -> None:  # M4, Garcia and Soares: 187 and 27.5: 14.7 parts
    assert stoichiometry.parts_per_hundred(27.5, 187) == pytest.approx(14.7, abs=0.05)


def test_isophorone_diamine() -> None:  # M5, from molar masses: 340.42 with two epoxides, 170.30 with four N-H; 22.4 parts to a resin of 190
    assert stoichiometry.equivalent(340.42, 2) == pytest.approx(170.2, abs=0.1)
    amine = stoichiometry.equivalent(170.30, 4)
    assert amine == pytest.approx(42.6, abs=0.1)
    assert stoichiometry.parts_per_hundred(amine, 190) == pytest.approx(22.4, abs=0.1)


def test_an_error_of_the_mass_ratio_is_the_same_error_of_the_chemical_one() -> None:  # 4 percent more hardener
    right = stoichiometry.parts_per_hundred(42.6, 190)
    r = (1.04 * right / 42.6) / (100 / 190)
    assert r - 1 == pytest.approx(off_ratio.ratio_error(Parts(100, 1.04 * right), Ratio(100, right))) == pytest.approx(0.04)


def test_where_nothing_gels() -> None:  # Flory and Stockmayer, from memory: a third to three times, for two and four groups
    assert stoichiometry.gel_limit(2, 4) == pytest.approx(1 / 3)


def test_one_reading_whose_parts_are_known() -> None:  # S2, University of Tartu: 0.00017, 0.0002 and 0.00005 g make 0.0002075 g
    u = scales.reading_uncertainty(0.00017 * GRAM, 0.0002 * GRAM, 0.00005 * GRAM)
    assert u == pytest.approx(0.0002075 * GRAM, abs=1e-7 * GRAM)
