"""The top speed keeps its promises of form: it rounds down, it never jumps, and nothing worse ever raises it."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.turning import caps, speed
from calc.turning.case import GUESSES, Case, ballast_to_next_limit, on_footing, turned_down
from calc.turning.job import Measured
from calc.turning.speed import Speeds

#: Room for floating point, relative.
ROUND_OFF = 1e-9
#: For what a hand is most likely to be hurt by: more examples than the profile gives.
MANY = 4 * settings.default.max_examples
CONDITIONS: tuple[caps.Condition, ...] = ("solid", "filled", "loose", "cracked")
OPERATIONS: tuple[caps.Operation, ...] = ("rough", "finish", "sand", "power", "paste")

diameters = st.floats(0.010, 1.5)
rpms = st.floats(10, 6000)
dials = st.tuples(st.floats(5, 1000), st.floats(0, 5000)).map(lambda ends: Speeds(ends[0], ends[0] + ends[1]))
belts = st.lists(st.integers(20, 6000), min_size=1, max_size=8).map(lambda steps: Speeds.of_steps(tuple(map(float, steps))))
measured = st.none() | st.builds(Measured, rpms, st.floats(0.00005, 0.2))
cases = st.builds(
    Case,
    operation=st.sampled_from(OPERATIONS),
    diameter_m=diameters,
    thickness_m=st.floats(0.003, 2.0),
    condition=st.sampled_from(CONDITIONS),
    make_up=st.sampled_from((*GUESSES, "done")),
    hold=st.sampled_from(("centres", "glue", "faceplate", "chuck")),
    far_end=st.sampled_from(("none", "pad", "live")),
    lathe_kg=st.floats(5, 2000),
    bolted=st.booleans(),
    speeds=dials | belts,
    weighed_kg=st.none() | st.floats(0.01, 200),
    marked_rpm=st.none() | rpms,
    own_rpm=st.none() | rpms,
    measured=measured,
)


def _never_above(worse: Case, better: Case) -> None:
    """Neither the ceiling, nor the hard limit, nor the setting of the worse case is above the better one's."""
    assert worse.top.speed_rpm <= better.top.speed_rpm * (1 + ROUND_OFF)
    assert worse.top.hard_rpm <= better.top.hard_rpm * (1 + ROUND_OFF)
    if not worse.top.too_quick and worse.top.setting_rpm is not None:
        assert better.top.setting_rpm is not None
        assert worse.top.setting_rpm <= better.top.setting_rpm * (1 + ROUND_OFF)


@settings(max_examples=MANY)
@given(cases)
def test_the_setting_is_rounded_down_to_what_the_lathe_can_do(case: Case) -> None:
    top = case.top
    setting = top.setting_rpm
    if setting is None:
        assert case.speeds.lowest_rpm > top.hard_rpm
        return
    ceiling = top.hard_rpm if top.too_quick else top.speed_rpm
    assert setting <= ceiling * (1 + ROUND_OFF)
    assert case.speeds.lowest_rpm <= setting <= case.speeds.highest_rpm
    if case.speeds.steps_rpm:
        assert setting in case.speeds.steps_rpm
        assert not [step for step in case.speeds.steps_rpm if setting < step <= top.speed_rpm]
    else:
        assert setting % 10 == 0 or setting == case.speeds.lowest_rpm
        assert top.too_quick or top.speed_rpm - setting < 10 * (1 + ROUND_OFF)


@given(cases)
def test_one_limit_rules_and_it_is_the_lowest_that_counts(case: Case) -> None:
    top = case.top
    assert top.rules.speed_rpm == min(limit.speed_rpm for limit in top.limits if limit.counts)
    assert all(limit.speed_rpm > 0 for limit in top.limits)


@settings(max_examples=MANY)
@given(cases, st.floats(1, 3))
def test_a_larger_piece_never_turns_faster(case: Case, factor: float) -> None:
    # Below four diameters of length nothing whips; a thicker bar between centres is stiffer, and may.
    case = replace(case, thickness_m=min(case.thickness_m, 4 * case.diameter_m))
    _never_above(replace(case, diameter_m=case.diameter_m * factor), case)


@given(cases, st.floats(1, 10))
def test_a_heavier_or_longer_piece_never_turns_faster(case: Case, factor: float) -> None:
    _never_above(replace(case, weighed_kg=case.mass_kg * factor), replace(case, weighed_kg=case.mass_kg))
    _never_above(replace(case, thickness_m=case.thickness_m * factor), case)


@settings(max_examples=MANY)
@given(cases, st.floats(0, 0.1), st.floats(0, 0.1))
def test_more_out_of_balance_never_turns_faster(case: Case, one: float, other: float) -> None:
    small, large = sorted((one, other))
    known = replace(case, make_up="known", known_eccentricity_m=small)
    _never_above(replace(known, known_eccentricity_m=large), known)
    _never_above(replace(case, known_unbalance_kg_m=large), replace(case, known_unbalance_kg_m=small))
    for better, worse in itertools.pairwise(GUESSES):
        _never_above(replace(case, make_up=worse), replace(case, make_up=better))


@given(cases)
def test_a_worse_condition_or_weaker_mount_never_turns_faster(case: Case) -> None:
    for better, worse in itertools.pairwise(CONDITIONS):
        _never_above(replace(case, condition=worse), replace(case, condition=better))
    live, pad, none = (replace(case, far_end=far_end) for far_end in ("live", "pad", "none"))
    _never_above(pad, live)
    _never_above(none, pad)
    _never_above(replace(case, hold="glue"), replace(case, hold="chuck"))


@given(cases, st.floats(0, 1000))
def test_a_heavier_or_bolted_lathe_never_turns_slower(case: Case, added_kg: float) -> None:
    _never_above(case, on_footing(case, case.lathe_kg + added_kg, case.bolted))
    _never_above(case, on_footing(case, case.lathe_kg, True))
    _never_above(case, on_footing(case, case.lathe_kg + ballast_to_next_limit(case), case.bolted))


@given(cases, rpms, rpms)
def test_a_higher_own_limit_or_marking_never_turns_slower(case: Case, one: float, other: float) -> None:
    low, high = sorted((one, other))
    _never_above(replace(case, own_rpm=low), replace(case, own_rpm=high))
    _never_above(replace(case, marked_rpm=low), replace(case, marked_rpm=high))


@given(cases, rpms, st.floats(0.00005, 0.2), st.floats(1, 20))
def test_a_worse_vibration_never_turns_faster_and_never_moves_another_cap(case: Case, rpm: float, v: float, factor: float) -> None:
    better, worse = (replace(case, measured=Measured(rpm, vibration)) for vibration in (v, v * factor))
    _never_above(worse, better)
    for name in ("rim", "whip", "marked", "heat"):
        found = [[limit for limit in it.top.limits if limit.id == name] for it in (case, better, worse)]
        assert found[0] == found[1] == found[2]


@given(st.floats(0.02, 0.4), st.none() | st.floats(100, 20000), st.floats(1, 4), dials | belts)
def test_a_larger_wheel_never_turns_faster(wheel: float, marked: float | None, factor: float, speeds: Speeds) -> None:
    small, large = (speed.settle(speed.wheel_limits(size, marked), speeds) for size in (wheel, wheel * factor))
    assert large.speed_rpm <= small.speed_rpm * (1 + ROUND_OFF)
    if marked is not None:
        assert small.setting_rpm is None or small.setting_rpm <= marked * (1 + ROUND_OFF)


#: Diameters at which a cap changes its rule: both ends of the roughing line; 5 m/s at 800 rpm and at 400 rpm, 9.5 m/s at 400 rpm.
BRANCHES = [0.075, 0.250, *(60 * v / (math.pi * n) for v, n in ((5, 800), (5, 400), (9.5, 400)))]
STEP = 1e-7


@pytest.mark.parametrize("diameter_m", BRANCHES)
def test_no_jump_where_a_cap_changes_its_rule(diameter_m: float) -> None:
    for of_diameter in (caps.roughing_rim_speed, caps.rubbing_speed):
        below, above = of_diameter(diameter_m * (1 - STEP)), of_diameter(diameter_m * (1 + STEP))
        assert below == pytest.approx(above, rel=3 * STEP)


@given(cases, diameters)
def test_the_ceiling_never_jumps_with_size(case: Case, diameter_m: float) -> None:
    below, above = (replace(case, diameter_m=diameter_m * (1 + sign * STEP)).top.speed_rpm for sign in (-1, 1))
    assert below == pytest.approx(above, rel=20 * STEP)  # the steepest limit falls with the third power of the size


@given(cases)
def test_the_ceiling_never_jumps_where_whip_comes_into_view(case: Case) -> None:
    at = replace(case, thickness_m=speed.WHIP_FROM * case.diameter_m)
    below, above = (replace(at, thickness_m=at.thickness_m * (1 + sign * STEP)).top.speed_rpm for sign in (-1, 1))
    assert below == pytest.approx(above, rel=20 * STEP)


@given(cases)
def test_the_ceiling_never_jumps_where_the_own_limit_takes_over(case: Case) -> None:
    rim = next(limit.speed_rpm for limit in case.top.limits if limit.id == "rim")
    highest = caps.speed_at_rim_speed(case.diameter_m, caps.caps()["finish"]["rim"])
    for at in (rim, highest):
        below, above = (replace(case, own_rpm=at * (1 + sign * STEP)).top.speed_rpm for sign in (-1, 1))
        assert below == pytest.approx(above, rel=20 * STEP)


@given(cases)
def test_bringing_the_felt_vibration_to_the_limit_gives_the_speed_it_was_felt_at(case: Case) -> None:
    limit = case.job.vibration_limit_m_per_s
    felt = replace(case, measured=Measured(400.0, limit))
    assert felt.job.speed_at_vibration(limit) == pytest.approx(400.0)


@given(cases, st.floats(0.3, 1.0))
def test_turning_down_never_gets_more_out_of_balance_or_thinness(case: Case, share: float) -> None:
    """Only the rim, and what follows from its size, may allow more at a smaller size."""
    smaller = turned_down(case, case.diameter_m * share)
    before = {limit.id: limit.speed_rpm for limit in case.top.limits}
    after = {limit.id: limit.speed_rpm for limit in smaller.top.limits}
    for name in ("vibration", "whip", "marked"):
        assert after.get(name, 0.0) <= before.get(name, math.inf) * (1 + ROUND_OFF)
    if case.measured is None:
        assert after["push"] <= before["push"] * (1 + ROUND_OFF)


@given(cases)
def test_turned_down_to_its_own_size_it_is_the_same_piece(case: Case) -> None:
    again = turned_down(case, case.diameter_m).top
    assert (again.setting_rpm, again.rules.id) == (case.top.setting_rpm, case.top.rules.id)
    assert again.speed_rpm == pytest.approx(case.top.speed_rpm)
