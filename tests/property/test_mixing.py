"""What must hold for any ratio, total and scale."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.casting import mixing, off_ratio, weighing
from calc.casting.batch import Job, ScaleFace
from calc.casting.mixing import Parts, Ratio
from calc.casting.weighing import PourLimit
from calc.runs.mix import screen_of

ratios = st.builds(Ratio, st.just(100.0), st.floats(5, 200))
totals = st.floats(0.02, 50)
steps = st.sampled_from([0.0001, 0.0005, 0.001, 0.002, 0.005])
densities = st.floats(800, 2000)


def _is_whole(mass: float, step: float) -> bool:
    return abs(mass / step - round(mass / step)) < 1e-6


@given(totals, ratios)
def test_a_split_adds_up_and_is_on_ratio(total: float, ratio: Ratio) -> None:
    parts = mixing.split(total, ratio)
    assert parts.total == pytest.approx(total, rel=1e-12)
    assert off_ratio.ratio_error(parts, ratio) == pytest.approx(0, abs=1e-12)


@given(st.floats(1, 100), st.floats(1, 100), densities, densities)
def test_by_volume_and_by_weight_are_the_same_batch(a: float, b: float, density_a: float, density_b: float) -> None:
    ratio = mixing.ratio_by_weight(a, b, density_a, density_b)
    assert (ratio.b / density_b) / (ratio.a / density_a) == pytest.approx(b / a, rel=1e-12)
    mixed = mixing.mixed_density(ratio, density_a, density_b)
    assert min(density_a, density_b) - 1e-6 <= mixed <= max(density_a, density_b) + 1e-6


@given(totals, ratios, steps)
def test_weighable_is_whole_steps_never_short_and_hardly_over(total: float, ratio: Ratio, step: float) -> None:
    parts = weighing.weighable(total, ratio, step)
    assert _is_whole(parts.a, step) and _is_whole(parts.b, step)
    assert parts.total >= total * (1 - 1e-9)
    assert parts.total <= total + step * (6 + 4 * ratio.b_per_a)
    assert abs(parts.b - parts.a * ratio.b_per_a) <= step * max(0.5 + 1e-6, 1 - parts.a / step * ratio.b_per_a)


@given(st.tuples(totals, totals), ratios, steps)
def test_more_resin_never_weighs_less(pair: tuple[float, float], ratio: Ratio, step: float) -> None:
    less, more = (weighing.weighable(total, ratio, step) for total in sorted(pair))
    assert less.a <= more.a and less.b <= more.b


@given(totals, ratios, st.floats(0.1, 5), steps)
def test_pours_are_the_fewest_equal_ones_under_the_limit(total: float, ratio: Ratio, limit: float, step: float) -> None:
    pours = weighing.equal_pours(total, ratio, limit, step)
    assert all(pour == pours[0] for pour in pours)
    assert pours[0].total <= limit * (1 + 1e-9)
    assert sum(pour.total for pour in pours) >= total * (1 - 1e-9)
    if len(pours) > 1:
        assert weighing.weighable(total / (len(pours) - 1), ratio, step).total > limit


@given(st.floats(0.001, 10), st.floats(0.001, 10), ratios)
def test_a_correction_brings_it_back_on_ratio(a: float, b: float, ratio: Ratio) -> None:
    fix = off_ratio.correction(Parts(a, b), ratio)
    assert fix.mass >= 0
    mended = Parts(a + fix.mass, b) if fix.part == "A" else Parts(a, b + fix.mass)
    assert off_ratio.ratio_error(mended, ratio) == pytest.approx(0, abs=1e-9)


@given(ratios, steps, st.floats(0.005, 0.1))
def test_smallest_batch_and_coarsest_step_are_each_others_inverse(ratio: Ratio, step: float, tolerance: float) -> None:
    batch = weighing.smallest_batch(ratio, step, tolerance, 2)
    assert weighing.coarsest_step(batch, ratio, tolerance, 2) == pytest.approx(step, rel=1e-9)
    held = 2 * weighing.ratio_uncertainty(mixing.split(batch, ratio), weighing.net_uncertainty(step))
    assert held == pytest.approx(tolerance, rel=1e-9)


@given(st.floats(-0.2, 0.2), st.floats(0.001, 0.05), st.floats(0.001, 0.05))
def test_grades_are_in_order_on_both_sides(error: float, good: float, wider: float) -> None:
    order = ("green", "amber", "red")
    grade = off_ratio.grade(error, good, good + wider)
    assert grade == off_ratio.grade(-error, good, good + wider)
    assert order.index(off_ratio.grade(error * 1.01, good, good + wider)) >= order.index(grade)


@given(st.floats(0.3, 4), ratios, st.floats(-0.3, 0.8), st.floats(0.7, 1.4))
def test_a_run_ends_on_ratio_whatever_was_poured(total: float, ratio: Ratio, slip_a: float, slip_b: float) -> None:
    """Any A, any B: following what the screen then says always ends in a batch on ratio."""
    face = ScaleFace("g", 0.1)
    job = Job(total, ratio, face, 0.0001, 1000.0, PourLimit(None, None), 1100.0, 0.02, 0.05, empty=0.1)
    planned = job.pours()[0]
    poured_a = 0.1 + planned.a * (1 + slip_a)
    events = [
        {"type": "base", "at": 1.0},
        {"type": "a", "at": 2.0, "reading": f"{poured_a * 1000:.1f}", "unit": "g", "sure": True},
        {"type": "meet", "at": 3.0},
    ]
    poured_b = poured_a + planned.a * (1 + slip_a) * ratio.b_per_a * slip_b
    events.append({"type": "b", "at": 4.0, "reading": f"{poured_b * 1000:.1f}", "unit": "g", "sure": True})
    screen = screen_of(job, events, 5.0)
    if screen["step"] != "Mix":
        events.append({"type": "fix", "at": 5.0})
        screen = screen_of(job, events, 6.0)
    assert screen["step"] == "Mix" and not screen["errors"]
    a, b = (float(row["text"]) for row in screen["totals"])
    assert abs(off_ratio.ratio_error(Parts(a, b), ratio)) <= 0.02 + 0.2 / a + 0.2 / b
