"""Speed caps, the ladder of limits, and the setting it leaves on a lathe: the worked cases of our reference."""

from __future__ import annotations

import math

import pytest

from calc.turning import caps, discs, speed
from calc.turning.case import Case
from calc.turning.speed import Limit, Measured, Speeds

#: Half a unit of the last digit printed in the worked cases (0.1 rpm), or 0.5 % where a case prints whole rpm.
PRINTED = 0.005

STEPS_A3 = Speeds.of_steps((200, 400, 650, 1000, 1500, 2200))
STEPS_A6 = Speeds.of_steps((500, 750, 1100, 1600, 2500, 3750))


def _case(
    diameter_mm: float,
    operation: caps.Operation,
    condition: caps.Condition,
    mass_kg: float,
    eccentricity_mm: float,
    lathe_kg: float,
    speeds: Speeds,
    glue: bool = False,
) -> Case:
    return Case(
        operation=operation,
        diameter_m=diameter_mm / 1000,
        thickness_m=0.05,
        condition=condition,
        make_up="known",
        hold="glue" if glue else "centres",
        far_end="none" if glue else "live",
        lathe_kg=lathe_kg,
        bolted=False,
        speeds=speeds,
        weighed_kg=mass_kg,
        known_eccentricity_m=eccentricity_mm / 1000,
    )


# Worked by hand and by a second script when the reference was made; rim, vibration, push, hard, soft (heat), setting.
WORKED = {
    "A1": (_case(300, "rough", "solid", 3.888, 2.727, 60, Speeds(250, 3000)), 509.3, 366.2, 503.0, 366.2, None, 360),
    "A2": (_case(300, "finish", "solid", 3.888, 0.2, 60, Speeds(250, 3000)), 763.9, 4993, 1857, 763.9, None, 760),
    "A3": (_case(450, "rough", "loose", 9.145, 3, 150, STEPS_A3), 254.6, 352.5, 494.4, 254.6, None, 200),
    "A4": (_case(300, "rough", "solid", 3.181, 17.684, 60, Speeds(250, 3000)), 509.3, 68.3, 218.4, 68.3, None, None),
    "A5": (_case(450, "paste", "solid", 8.0, 0.3, 150, Speeds(100, 2500), glue=True), 509.3, 4001, 1672, 382.0, 400, 380),
    "A6": (_case(200, "finish", "loose", 1.8, 0.5, 40, STEPS_A6), 573.0, 2822, 1410, 573.0, None, 500),
    "A7": (_case(250, "sand", "cracked", 3.0, 1, 90, Speeds(60, 3200)), 229.2, 1884, 1158, 229.2, 400, 220),
    "A8": (_case(150, "finish", "solid", 0.8, 0.1, 30, Speeds(650, 3800), glue=True), 1527.9, 23397, 4095, 1145.9, None, 1140),
    "A9": (_case(250, "sand", "solid", 2.8, 0.2, 45, STEPS_A6), 916.7, 5187, 1896, 916.7, 400, 500),
    "A10": (_case(424.264, "rough", "solid", 7.0, 0.5, 100, Speeds(100, 2000)), 360.4, 1858, 1130, 360.4, None, 360),
}


@pytest.mark.parametrize("name", WORKED)
def test_worked_case(name: str) -> None:
    case, rim, vibration, push, hard, heat, setting = WORKED[name]
    top = case.top
    found = {limit.id: limit.speed_rpm for limit in top.limits}
    assert found["rim"] == pytest.approx(rim, rel=PRINTED)
    assert found["vibration"] == pytest.approx(vibration, rel=PRINTED)
    assert found["push"] == pytest.approx(push, rel=PRINTED)
    assert top.hard_rpm == pytest.approx(hard, rel=PRINTED)
    assert found.get("heat") == heat
    assert top.setting_rpm == setting
    assert top.too_quick is (name == "A9")


# The reference's floors by rim speed, m/s, each 60000 v / (pi D) rounded down (geometry).
FLOORS = """
100 572 954 1145 1527 2291
150 381 636 763 1018 1527
200 286 477 572 763 1145
250 229 381 458 611 916
300 190 318 381 509 763
400 143 238 286 381 572
450 127 212 254 339 509
600 95 159 190 254 381
"""


@pytest.mark.parametrize("row", FLOORS.split("\n")[1:-1])
def test_floor_of_speed_at_rim_speed(row: str) -> None:
    diameter_mm, *floors = map(int, row.split())
    assert [math.floor(caps.speed_at_rim_speed(diameter_mm / 1000, v)) for v in (3, 5, 6, 8, 12)] == floors


@pytest.mark.parametrize("wheel_mm, at_15", [(100, 2864), (150, 1909), (200, 1432)])  # reference, 15 m/s, rounded down (geometry)
def test_wheel_at_its_caution(wheel_mm: float, at_15: int) -> None:
    assert math.floor(caps.speed_at_rim_speed(wheel_mm / 1000, caps.caps()["wheel-caution"]["rim"])) == at_15


def test_a_200_mm_wheel_on_a_1750_rpm_motor_is_within_the_unmarked_cap() -> None:
    # Common practice, no source: pi x 0.2 x 1750 / 60 = 18.3 m/s.
    (rim,) = speed.wheel_limits(0.200, None)
    assert 1750 < rim.speed_rpm < 1800


def test_condition_caps_are_those_decided() -> None:
    assert [caps.condition_rim_speed(c) for c in ("solid", "filled", "loose", "cracked")] == [12, 9, 6, 3]


@pytest.mark.parametrize(
    "diameter_mm, rim",
    [(20, 4), (75, 4), (162.5, 6), (250, 8), (900, 8)],  # decided: 4 to 75 mm, 8 from 250 mm; half-way between is 6
)
def test_roughing_cap_grows_with_size(diameter_mm: float, rim: float) -> None:
    assert caps.roughing_rim_speed(diameter_mm / 1000) == pytest.approx(rim)


@pytest.mark.parametrize(
    "diameter_mm, rpm",
    [
        (100, 800),  # decided: min(800 rpm, 5 m/s); 5 m/s would be 955
        (150, 636.6),  # 5 m/s
        (250, 400),  # decided: min(400 rpm, 9.5 m/s); 9.5 m/s would be 726
        (450, 400),  # 9.5 m/s would be 403
        (600, 302.4),  # 9.5 m/s
    ],
)
def test_rubbing_speed(diameter_mm: float, rpm: float) -> None:
    assert caps.rubbing_speed(diameter_mm / 1000) == pytest.approx(rpm, abs=0.05)


def test_whip_of_a_thin_bar_of_resin() -> None:
    assert discs.whip_speed(0.025, 0.600) == pytest.approx(2364, abs=0.5)  # reference 3.2, E 2.4 GPa, density 1150
    assert discs.whip_speed(0.025, 0.600, far_end_held=False) == pytest.approx(2364 * 3.516 / math.pi**2, rel=1e-3)  # first roots squared


def test_whip_can_never_rule_below_the_length_where_it_is_looked_at() -> None:
    shortest = speed.WHIP_SHARE * discs.whip_speed(0.1, speed.WHIP_FROM * 0.1, far_end_held=False)
    assert shortest > caps.speed_at_rim_speed(0.1, caps.caps()["finish"]["rim"])


@pytest.mark.parametrize(
    "speeds, limit, setting",
    [
        (Speeds(250, 3000), 366.2, 360),
        (Speeds(250, 3000), 360.0, 360),
        (Speeds(250, 3000), 359.999, 350),
        (Speeds(255, 3000), 259, 255),
        (Speeds(250, 3000), 249.99, None),
        (Speeds(250, 3195), 9999, 3190),
        (STEPS_A3, 399.99, 200),
        (STEPS_A3, 400, 400),
        (STEPS_A3, 199, None),
    ],
)
def test_setting(speeds: Speeds, limit: float, setting: float | None) -> None:
    assert speeds.at_or_below(limit) == setting


def test_a_hard_limit_below_the_lowest_speed_refuses_and_a_soft_one_does_not() -> None:
    hard = speed.settle((Limit("rim", 400),), STEPS_A6)
    assert hard.refused
    soft = speed.settle((Limit("rim", 600), Limit("heat", 400, soft=True)), STEPS_A6)
    assert (soft.setting_rpm, soft.too_quick) == (500, True)


def _limits(**more: object) -> dict[str, Limit]:
    job = speed.Job(0.3, "rough", more.pop("condition", "solid"), 4.0, 0.002, 60, 0.0045, 0.0018, **more)  # type: ignore[arg-type]
    return {limit.id: limit for limit in speed.job_limits(job)}


def test_own_limit_lowers() -> None:
    limits = _limits(own_rpm=300.0)
    assert limits["own"].speed_rpm == 300
    assert limits["rim"].counts


def test_own_limit_takes_the_place_of_the_rim_cap_up_to_the_highest_for_any_cut() -> None:
    limits = _limits(own_rpm=650.0)
    assert limits["own"].speed_rpm == 650
    assert not limits["rim"].counts
    assert _limits(own_rpm=5000.0)["own"].speed_rpm == pytest.approx(763.94, abs=0.01)  # 12 m/s at 300 mm


def test_own_limit_never_lifts_the_cap_of_cracked_work() -> None:
    limits = _limits(own_rpm=5000.0, condition="cracked")
    assert limits["rim"].counts
    assert limits["rim"].speed_rpm == pytest.approx(190.99, abs=0.01)  # 3 m/s at 300 mm


def test_own_limit_lifted_is_still_cut_by_the_mount() -> None:
    assert _limits(own_rpm=600.0, mount_share=0.75)["mount"].speed_rpm == 450


def test_a_measured_vibration_overrules_both_ways_and_lifts_nothing_else() -> None:
    guess = _limits()
    still = _limits(measured=Measured(400, 0.0005), marked_rpm=900.0, mount_share=0.75)
    rough = _limits(measured=Measured(400, 0.0090), marked_rpm=900.0, mount_share=0.75)
    assert still["vibration"].speed_rpm == pytest.approx(3600)  # 400 x 4.5 / 0.5
    assert rough["vibration"].speed_rpm == pytest.approx(200)  # 400 x 4.5 / 9.0
    assert rough["vibration"].speed_rpm < guess["vibration"].speed_rpm < still["vibration"].speed_rpm
    assert still["rim"] == rough["rim"] == guess["rim"]
    assert still["marked"].speed_rpm == rough["marked"].speed_rpm == 900
    assert still["mount"].speed_rpm == pytest.approx(0.75 * still["rim"].speed_rpm)


def test_shield_lumps() -> None:
    # 12.45 / v^2 kg from the 6.23 J test (500 g from 50 in): 346 g at 6 m/s, 195 g at 8, 86 g at 12.
    assert [round(1000 * discs.shield_fragment_mass(v)) for v in (6, 8, 12)] == [346, 195, 86]
