"""Cells, pours and outlooks: what must hold whatever the resin and the mould."""

from __future__ import annotations

from dataclasses import replace

import pytest

from calc.casting.cure.bucket import PotLife, after, in_bucket, pourable_for, vessel
from calc.casting.cure.calibrate import wide
from calc.casting.cure.cells import Footprint, conductances, layout, oblong_footprint, round_footprint
from calc.casting.cure.depth import DEEPEST_M, critical_depth_steps, equivalent_depth_steps
from calc.casting.cure.kinetics import GEL, Kinetics
from calc.casting.cure.known import levels
from calc.casting.cure.layers import layers_steps, wait_for
from calc.casting.cure.outlook import Outlook, courses_steps, headroom_steps, lines_steps
from calc.casting.cure.plan import Beneath, Plan, tier_of, tiers
from calc.casting.cure.pour import COARSE, ROUGH, Mould, Resin, Start, field_of
from calc.casting.cure.running import go_on, peak_of, run
from calc.casting.cure.thermal import Films, Wall, materials
from calc.constants import ZERO_C
from calc.steps import at_once

M = materials()
SLOW = Resin(Kinetics(1.7e-5))
SHOP = Start(ZERO_C + 23, ZERO_C + 23)
PLAN = Plan(SLOW, levels()["both"], wide(0.02), SHOP.air_k, SHOP.resin_k)


def test_the_cells_fill_the_mould() -> None:
    board = Wall(M["board"], 0.016)
    cut = layout(round_footprint(0.2), [(0.02, 4), (0.03, 6)], 5, board, [(Wall(M["plywood"], 0.04), 2), (board, 2)])
    assert sum(cut.heights) == pytest.approx(0.02 + 0.03 + 0.04 + 0.016)
    assert cut.edges()[-1] == pytest.approx(0.116)
    assert (cut.first_row, cut.fresh_row, cut.columns) == (4, 8, 5)
    assert cut.depth() == pytest.approx(0.05)
    assert sum(map(sum, cut.volumes())) == pytest.approx(0.116**2 / 2 * 0.106)
    between = conductances(cut, 0.2)
    assert len(between.up) == len(cut.heights) - 1 and all(len(row) == len(cut.widths) - 1 for row in between.out)


def test_a_square_is_told_as_a_little_more_than_a_round_and_a_long_bar_as_a_bar() -> None:
    assert oblong_footprint(0.1, 0.1) == Footprint(0.1 / 2 * 1.065, 1.0)
    assert oblong_footprint(3.0, 0.1).j < 0.01
    assert oblong_footprint(0.1, 0.6) == oblong_footprint(0.6, 0.1)


def test_what_is_still_stays_still() -> None:
    """No reaction, no difference: not a degree moves."""
    field = field_of(Resin(Kinetics(1e-30)), wide(0.03), SHOP, ROUGH)
    go_on(field, 86400.0, ROUGH.pace)
    assert all(kelvin == pytest.approx(SHOP.air_k, abs=1e-9) for kelvin in field.k)


def test_heat_made_is_heat_kept_where_none_leaves() -> None:
    closed = replace(wide(0.03), films=Films(0, 0, 0))
    field = field_of(replace(SLOW, capacity=1700.0), closed, SHOP, COARSE)
    go_on(field, 8 * 3600.0, COARSE.pace)
    cut = field.cut
    stored = 0.0
    for i, (row, volumes) in enumerate(zip(field.t, cut.volumes(), strict=True)):
        for c, (kelvin, volume) in enumerate(zip(row, volumes, strict=True)):
            solid = cut.solids[i][c]
            stored += volume * (kelvin - SHOP.air_k) * (SLOW.density * 1700 if solid is None else solid.density * solid.capacity)
    resin = sum(sum(row[: cut.columns]) for row in cut.volumes()[cut.first_row :])
    made = resin * SLOW.density * SLOW.kinetics.heat * (field.mean_a() - 0.001)
    assert stored == pytest.approx(made, rel=1e-3)


def test_a_course_tells_its_moments_in_order() -> None:
    course = run(SLOW, wide(0.03), SHOP, COARSE)
    times = [course.working_s, course.gel_s, course.cools_to(5.0), course.cools_to(3.0)]
    assert times == sorted(times)  # type: ignore[type-var]
    assert course.gelled_s is not None and course.gelled_s > times[1]  # type: ignore[operator]
    assert course.reaches("most", 0.9999) is None and course.cools_to(-5.0) is None
    assert 0 < course.peak.at < 1 and course.mould_k <= course.peak.hottest_k
    assert course.moments[-1].least >= GEL


def test_the_peak_alone_is_the_peak_of_the_course() -> None:
    assert peak_of(SLOW, wide(0.03), SHOP, COARSE) == run(SLOW, wide(0.03), SHOP, COARSE).peak.hottest_k


def test_a_runaway_ends_where_it_is_no_forecast_any_more() -> None:
    course = run(SLOW.faster(5), wide(0.06), SHOP, ROUGH)
    assert course.ran_away
    assert peak_of(SLOW.faster(5), wide(0.06), SHOP, ROUGH, ZERO_C + 90) < ZERO_C + 120


def test_longer_in_the_bucket_is_warmer_and_further() -> None:
    short, long = (after(SLOW, 3.0, SHOP.air_k, SHOP.air_k, hours * 3600) for hours in (0.5, 3))
    assert SHOP.air_k < short.resin_k < long.resin_k and short.conversion < long.conversion
    assert vessel(3.0, SLOW).depth_m > vessel(0.1, SLOW).depth_m


def test_warm_resin_on_cold_wood_starts_in_between() -> None:
    field = field_of(SLOW, replace(wide(0.03), wood_share=0.4), Start(ZERO_C + 15, ZERO_C + 35), ROUGH)
    assert ZERO_C + 15 < field.mean_k() < ZERO_C + 35


def test_a_mould_too_small_to_run_away_has_no_depth() -> None:
    thimble = Mould(round_footprint(0.01), 0.01, Wall(M["aluminium"], 0.003), (Wall(M["aluminium"], 0.003),))
    assert at_once(critical_depth_steps(SLOW, thimble, SHOP, 0.05)) == pytest.approx(DEEPEST_M)


def test_a_wide_pour_equals_itself() -> None:
    peak = peak_of(SLOW, wide(0.03), SHOP, ROUGH)
    assert at_once(equivalent_depth_steps(SLOW, peak, SHOP.air_k, 0.02)) == pytest.approx(0.03, rel=0.02)


def test_the_ends_of_the_band_lie_on_either_side() -> None:
    found = Outlook(PLAN)
    assert [share for share in lines_steps(found) if not 0 <= share <= 1] == []
    assert [share for share in courses_steps(found, whole=False) if not 0 <= share <= 1] == []
    assert found.hot is not None and found.middle is not None and found.cool is not None
    assert found.cool.peak.hottest_k < found.middle.peak.hottest_k < found.hot.peak.hottest_k
    assert found.go <= found.stop <= found.edge / PLAN.level.stop_over
    for _ in headroom_steps(found):
        pass
    assert found.headroom > 1.6 and found.odds < 0.1


def test_odds_grow_with_depth_and_shrink_with_knowledge() -> None:
    for level in levels().values():
        odds = [level.odds(share) for share in (0.3, 0.6, 1.0, 1.5)]
        assert odds == sorted(odds) and 0 < odds[0] and odds[-1] < 1
        low, high = level.true_over_predicted
        assert level.odds(low) == pytest.approx(0.025, abs=0.001) and level.odds(high) == pytest.approx(0.975, abs=0.001)
    assert levels()["cup"].odds(0.7) < levels()["defined"].odds(0.7) < levels()["unknown"].odds(0.7)


def test_on_a_layer_that_is_warm_still_all_ends_are_looked_at() -> None:
    assert len(PLAN.worst) == 1 and len(replace(PLAN, beneath=Beneath(0.02, 3600.0)).worst) == 3


def test_layers_are_as_many_as_it_takes() -> None:
    steps = layers_steps(replace(PLAN, mould=wide(0.05)), 0.02)
    while True:
        try:
            share = next(steps)
            assert 0 < share < 1
        except StopIteration as done:
            layers = done.value
            break
    assert layers is not None and layers.count * layers.depth_m >= 0.05 - 1e-9 and layers.depth_m <= 0.02
    assert layers.window.first_s is not None and layers.window.last_s is not None and min(layers.window.first_s, layers.window.last_s) > 86400


def test_a_second_layer_that_is_too_deep_even_on_a_cold_one() -> None:
    assert wait_for(replace(PLAN, mould=wide(0.06)), Beneath(0.02, 0.0)) is None


def test_the_tiers_rise() -> None:
    assert [tier.up_to_k for tier in tiers()] == sorted(tier.up_to_k for tier in tiers())
    assert [tier_of(ZERO_C + celsius).tone for celsius in (40, 55, 75, 95, 140, 300)] == ["go", "go", "caution", "stop", "stop", "stop"]


def test_a_batch_is_never_given_longer_than_its_fastest_nor_than_the_sheet() -> None:
    slow, printed = Resin(Kinetics(2e-5)), PotLife(3600.0, 0.1, 298.15)
    for mass in (0.05, 0.1, 3.0):
        free, told = (in_bucket(slow, 3.0, mass, 296.15, 296.15, sheet) for sheet in (None, printed))
        assert free.within_s is not None and told.runs_s is not None and told.within_s is not None
        assert free.within_s <= pourable_for(slow.faster(3.0), mass, 296.15, 296.15)
        assert (told.runs_s <= 3600 and told.within_s <= 1800) == (mass >= 0.1)
    warmer = in_bucket(slow, 3.0, 0.1, 308.15, 308.15, printed)
    assert warmer.runs_s == pytest.approx(3600 * 0.493, rel=0.01)  # 54 kJ/mol: exp(-6495 K * (1/298.15 - 1/308.15))
