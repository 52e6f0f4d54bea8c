"""Vibration from a phone's motion sensor, from motions whose figures are known beforehand."""

from __future__ import annotations

import math
import random
from typing import Any

import pytest

from calc import desk
from calc.turning.sensed import Sample, sense


def _turning(rpm: float, rms: float, rate: float = 60.0, seconds: float = 8.0, noise: float = 0.02, second: float = 0.0) -> list[Sample]:
    """To and fro across the lathe at once per turn, an overtone at twice, gravity, noise, and a clock that is not even."""
    chance = random.Random(7)
    w, top = 2 * math.pi * rpm / 60, rms * math.sqrt(2)
    out = []
    for i in range(round(rate * seconds)):
        t = 100 + i / rate + chance.uniform(-0.2, 0.2) / rate
        across = top * math.cos(w * t) + second * math.sqrt(2) * math.cos(2 * w * t)
        out.append((t, 0.8 * across + chance.gauss(0, noise), 0.6 * across + chance.gauss(0, noise), 9.81 + chance.gauss(0, noise)))
    return out


def _run(samples: list[Sample], units: str = "metric") -> Any:
    events = [dict(zip(("at", "x", "y", "z"), sample, strict=True)) for sample in samples]
    return desk.run("vibration", {}, units, events, 0)


@pytest.mark.parametrize(("rpm", "rate"), [(120, 60), (300, 60), (600, 60), (600, 100), (1500, 60)])
def test_a_known_motion_is_found(rpm: float, rate: float) -> None:
    found = sense(_turning(rpm, 0.30, rate))
    assert found.fault is None
    assert found.speed_rpm == pytest.approx(rpm, rel=0.02)
    assert found.vibration_m_per_s == pytest.approx(0.30 / (2 * math.pi * rpm / 60), rel=0.03)  # v = a / w; at 600 rpm 4.77 mm/s, reference 2.5


def test_an_overtone_does_not_pass_for_the_turn_and_never_makes_it_read_less() -> None:
    found = sense(_turning(400, 0.30, second=0.25))
    assert found.speed_rpm == pytest.approx(400, rel=0.02)
    assert found.vibration_m_per_s >= 0.30 / (2 * math.pi * 400 / 60) * 0.98


def test_what_cannot_be_told_is_not_told() -> None:
    assert sense([]).fault == "short"
    assert sense(_turning(600, 0.3, seconds=3)).fault == "short"
    assert sense(_turning(600, 0.3, rate=20)).fault == "coarse"
    assert sense(_turning(600, 0.0, noise=0.01)).fault == "quiet"
    assert sense(_turning(600, 0.0, noise=0.5)).fault == "unclear"


def test_what_came_before_the_last_seconds_does_not_count() -> None:
    handled = [(t - 8, 50 * x, y, z) for t, x, y, z in _turning(77, 2.0)]  # the phone being put down
    found = sense([*handled, *_turning(600, 0.30)])
    assert found.speed_rpm == pytest.approx(600, rel=0.02)


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_what_is_sensed_goes_into_how_fast_and_overrules_the_guess(units: str) -> None:
    take = _run(_turning(300, 0.30), units)["take"]
    job = {"diameter": "300 mm", "condition": "solid", "balance": "side", "hold": "centres", "length": "50 mm", "lathe": "floor"}
    reply = desk.answer("how-fast", job | take, units)
    assert not reply["errors"] and not reply["queries"]
    (vibration,) = [limit for limit in reply["limits"] if limit["id"] == "vibration"]
    # 0.30 m/s2 at 300 rpm is 9.55 mm/s: still again at 300 rpm x 1.8 / 9.55 = 56.5 rpm, and what is written errs to the slow side
    assert 0.9 * 56.5 <= float(vibration["text"]) <= 56.5
    assert "measured" in vibration["why"]


def test_nothing_told_is_nothing_to_take() -> None:
    for samples in ([], _turning(600, 0.0, noise=0.01)):
        screen = _run(samples)
        assert screen["say"] and not screen["take"]
