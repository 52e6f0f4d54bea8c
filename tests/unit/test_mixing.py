"""The arithmetic of A and B: edges and branches."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from calc.casting import mixing, off_ratio, scales, stoichiometry, weighing
from calc.casting.batch import Job, ScaleFace, face_of
from calc.casting.mixing import Parts, Ratio
from calc.casting.off_ratio import Correction
from calc.casting.standards import standard
from calc.casting.weighing import PourLimit

RATIO = Ratio(100, 45)
GRAM = 0.001


@pytest.mark.parametrize(
    "impossible",
    [
        lambda: Ratio(0, 1),
        lambda: Ratio(1, math.nan),
        lambda: mixing.split(0, RATIO),
        lambda: mixing.ratio_by_weight(2, 1, 0, 980),
        lambda: weighing.pour_limit(2, 0.1, 1e-3, 0, 1100),
        lambda: weighing.pour_limit(2, -0.1, 1e-3, 0.8, 1100),
        lambda: mixing.parts_with(Parts(1, 1), -1, 0, RATIO),
        lambda: weighing.equal_pours(1, RATIO, 0.001, 0.001),
        lambda: off_ratio.correction(Parts(0, 0), RATIO),
        lambda: weighing.smallest_batch(RATIO, 0.001, 0, 2),
        lambda: scales.reading_uncertainty(-1, 0, 0),
        lambda: scales.apart(0, 1),
        lambda: stoichiometry.equivalent(0, 2),
        lambda: stoichiometry.blend_equivalent([]),
        lambda: stoichiometry.gel_limit(1, 4),
    ],
)
def test_the_impossible_is_refused(impossible: Callable[[], object]) -> None:
    with pytest.raises(ValueError, match=r"\S"):
        impossible()


def test_a_ratio_by_volume_with_equal_densities_is_the_same_by_weight() -> None:
    assert mixing.ratio_by_weight(2, 1, 1100, 1100).b_per_a == pytest.approx(0.5)


def test_no_limit_is_one_pour() -> None:
    limit = weighing.pour_limit(None, 0, None, 0.8, 1100)
    assert limit.rules == "" and math.isinf(limit.net)
    assert len(weighing.equal_pours(100.0, RATIO, limit.net, GRAM)) == 1


def test_the_smaller_limit_rules() -> None:
    assert PourLimit(1.0, 2.0).rules == "scale"
    assert PourLimit(2.0, 1.0).rules == "bucket"
    assert PourLimit(None, 1.0).net == 1.0


def test_a_total_right_at_the_limit_is_one_pour() -> None:
    assert len(weighing.equal_pours(1.45, RATIO, 1.45, GRAM)) == 1
    assert len(weighing.equal_pours(1.452, RATIO, 1.45, GRAM)) == 2


def test_rounding_up_past_the_limit_takes_one_pour_more() -> None:
    # 1320 g at 100:45 needs 911 + 410 = 1321 g on a gram scale: more than the 1320 g that fit.
    pours = weighing.equal_pours(2.640, RATIO, 1.320, GRAM)
    assert len(pours) == 3 and max(pour.total for pour in pours) <= 1.320


@pytest.mark.parametrize(
    ("total", "ratio", "step", "a", "b"),
    [
        (1.3, RATIO, 0.001, 0.897, 0.404),  # 896.55 goes up; B from 897 is 403.65
        (0.1, Ratio(2, 1), 0.001, 0.068, 0.034),  # 67 would need 33.5
        (1.0, Ratio(1, 1), 0.001, 0.5, 0.5),
        (0.012, Ratio(100, 30), 0.005, 0.010, 0.005),  # never less than a step
    ],
)
def test_what_a_scale_can_show(total: float, ratio: Ratio, step: float, a: float, b: float) -> None:
    parts = weighing.weighable(total, ratio, step)
    assert (parts.a, parts.b) == (pytest.approx(a), pytest.approx(b))


@pytest.mark.parametrize(
    ("in_a", "in_b", "a", "b"),
    [
        (0, 0, 1.0, 0.45),
        (0.9, 0, 1.0, 0.45),  # under the plan: nothing changes
        (1.2, 0, 1.2, 0.54),
        (0, 0.9, 2.0, 0.9),
        (1.2, 0.9, 2.0, 0.9),  # both over: the bigger batch holds both
        (2.2, 0.9, 2.2, 0.99),
    ],
)
def test_what_is_in_the_bucket_already(in_a: float, in_b: float, a: float, b: float) -> None:
    found = mixing.parts_with(Parts(1.0, 0.45), in_a, in_b, RATIO)
    assert (found.a, found.b) == (pytest.approx(a), pytest.approx(b))


def test_correction_adds_the_part_that_is_short() -> None:
    assert off_ratio.correction(Parts(1.0, 0.40), RATIO) == Correction("B", pytest.approx(0.05))
    assert off_ratio.correction(Parts(1.0, 0.54), RATIO) == Correction("A", pytest.approx(0.2))
    assert off_ratio.correction(Parts(0.0, 0.45), RATIO) == Correction("A", pytest.approx(1.0))


def test_grade_with_the_sheets_own_tolerance_has_no_amber() -> None:
    assert off_ratio.grade(0.03, 0.03, 0.03) == "green"
    assert off_ratio.grade(0.031, 0.03, 0.03) == "red"


def test_kits() -> None:
    assert weighing.kits_needed(6.0, Parts(2.0, 1.0)) == 2
    assert weighing.kits_needed(6.001, Parts(2.0, 1.0)) == 3
    assert weighing.emptied_jug(0.0, 0.9) == -0.9  # tared with the full jug on


@pytest.mark.parametrize(
    ("unit", "step", "mass", "shown"),
    [
        ("g", 1, 0.8966, "897 g"),
        ("g", 5, 0.8966, "895 g"),
        ("g", 0.1, 0.89664, "896.6 g"),
        ("g", 0.5, 0.8963, "896.5 g"),
        ("kg", 0.01, 12.344, "12.34 kg"),
        ("oz", 0.125, 0.45359237, "16.000 oz"),
        ("oz", 0.1, 0.0283495, "1.0 oz"),
        ("g", 1, -0.0004, "0 g"),
        ("g", 1, -0.897, "-897 g"),
    ],
)
def test_what_the_scale_shows(unit: str, step: float, mass: float, shown: str) -> None:
    assert str(ScaleFace(unit, step).show(mass)) == shown


def test_a_gram_scale_read_in_ounces_goes_up_to_a_step_that_exists() -> None:
    assert face_of(0.001, "oz") == ScaleFace("oz", 0.05)
    assert face_of(0.0001, "oz") == ScaleFace("oz", 0.005)
    assert face_of(0.001, "g") == ScaleFace("g", 1.0)
    assert face_of(0.25 * 0.028349523125, "oz") == ScaleFace("oz", 0.25)


def test_every_figure_of_the_table_loads() -> None:
    assert standard("coverage") == 2 and standard("ratio worst") == 0.05


def job(**changes: object) -> Job:
    plain: dict[str, object] = {
        "total": 2.6,
        "ratio": RATIO,
        "face": ScaleFace("g", 1),
        "step": GRAM,
        "capacity": 2.0,
        "limit": PourLimit(1.94, 1.32),
        "density": 1100.0,
        "good": 0.02,
        "worst": 0.05,
    }
    return Job(**{**plain, **changes})  # type: ignore[arg-type]


def test_a_first_pour_that_has_grown_leaves_less_for_the_others() -> None:
    first, second = job(in_a=0.905).pours()
    assert first.a == 0.905 and first.b == pytest.approx(0.407)
    assert second.total == pytest.approx(2.6 - first.total, abs=3 * GRAM)


def test_a_first_pour_that_is_enough_is_the_only_one() -> None:
    assert len(job(total=1.2, in_a=0.9).pours()) == 1


def test_a_bucket_too_heavy_for_the_scale_is_not_weighable() -> None:
    assert not job(limit=PourLimit(-0.05, None)).weighable
    assert not job(limit=PourLimit(0.001, None)).weighable
    assert job().weighable


def test_a_mixed_batch_is_brought_back_or_left() -> None:
    assert job(mixed=True, in_a=1.0, in_b=0.455).mended == Parts(1.0, 0.455)  # 1.1 percent: left
    assert job(mixed=True, in_a=1.0, in_b=0.42).mended == Parts(1.0, pytest.approx(0.45))
    first, second = job(mixed=True, in_a=1.0, in_b=0.5).pours()
    assert first.a == pytest.approx(1.111) and second.total == pytest.approx(2.6 - first.total, abs=3 * GRAM)


def test_two_scales_swap_without_a_trace() -> None:
    assert (1 + scales.apart(1.0, 1.012)) * (1 + scales.apart(1.012, 1.0)) == pytest.approx(1)
    weighed = Parts(1.0, 0.45 * (1 + scales.apart(1.0, 1.012)))  # B as the other scale would show it
    assert off_ratio.ratio_error(Parts(weighed.a, weighed.b / 1.012), RATIO) == pytest.approx(0)


def test_consequences_have_sides() -> None:
    assert off_ratio.consequences(0.0) == ()
    assert {row["side"] for row in off_ratio.consequences(0.1)} == {"over"}
    assert {row["side"] for row in off_ratio.consequences(2.5)} == {"over", "lost"}
    assert {row["side"] for row in off_ratio.consequences(-0.6)} == {"short"}


def test_a_blend_of_filler_alone_has_no_equivalent() -> None:
    assert math.isinf(stoichiometry.blend_equivalent([(10, math.inf)]))
