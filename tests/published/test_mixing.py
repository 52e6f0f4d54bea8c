"""Weighing and mixing against published figures and worked cases.

GUM: JCGM 100:2008. Cases M and S are exact arithmetic,
worked by hand from the same definitions; their tolerance is half the last digit they are given to.
"""

from __future__ import annotations

import pytest

from calc.casting import mixing, weighing
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
    assert mixing.grade(mixing.ratio_error(Parts(1.0, b), Ratio(100, 45)), 0.02, 0.05) == grade
