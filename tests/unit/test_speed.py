"""The ladder of limits on a speed, and the setting it leaves on a lathe."""

from __future__ import annotations

import pytest

from calc.turning import caps, discs, speed
from calc.turning.job import Job, Measured
from calc.turning.speed import Limit, Speeds

STEPS_A3 = Speeds.of_steps((200, 400, 650, 1000, 1500, 2200))
STEPS_A6 = Speeds.of_steps((500, 750, 1100, 1600, 2500, 3750))


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
    job = Job(0.3, "rough", more.pop("condition", "solid"), 4.0, 0.002, 60, 0.0045, 0.0018, **more)  # type: ignore[arg-type]
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
