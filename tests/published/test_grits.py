"""Grits, their steps, the heat of sanding, and the speeds of sanding, paste and wheel.

TABLE: FEPA P (ISO 6344) and CAMI, two agreeing reproductions; OTHER: a third that rounds the CAMI column otherwise, by up to 1.1 %.
STEPS, HEAT: worked cases of our reference (rule and coefficients our judgement; heat after Carslaw and Jaeger, recalled); last printed digit.
SPEEDS: worked cases of our reference, after lathe manuals and common practice.
GUIDEBOOK: Metal Finishing guidebook 2011-13: a 4 in wheel at 800 rpm; it prints 837.16 ft/min, which is a slip for 837.76.
"""

from __future__ import annotations

import pytest

from calc import desk
from calc.turning import caps, grits, rubbing

P = (
    "P12 1815, P16 1324, P20 1000, P24 764, P30 642, P36 538, P40 425, P50 336, P60 269, P80 201, P100 162, P120 125, P150 100, P180 82, P220 68, "
    "P240 58.5, P280 52.2, P320 46.2, P360 40.5, P400 35.0, P500 30.2, P600 25.8, P800 21.8, P1000 18.3, P1200 15.3, P1500 12.6, P2000 10.3, P2500 8.4"
)
CAMI = (
    "24 708, 30 632, 36 530, 40 425, 50 348, 60 265, 80 190, 100 140, 120 115, 150 92, 180 82, 220 68, 240 53.0, 320 36.0, 360 28.0, 400 23.0, "
    "500 20.0, 600 16.0, 800 12.6, 1000 10.3"
)
CAMI_OTHER = "24 715, 30 638, 36 535, 40 428, 50 351, 60 268, 80 192, 100 141"


def _printed(text: str) -> dict[int, float]:
    return {int(number.lstrip("P")): float(um) for number, um in (entry.split() for entry in text.split(", "))}


@pytest.mark.parametrize(("scale", "text"), [("P", P), ("CAMI", CAMI)])
def test_table(scale: grits.Scale, text: str) -> None:
    # TABLE
    assert {grit.number: round(1e6 * grit.size_m, 3) for grit in grits.grits(scale)} == _printed(text)


def test_the_other_reproduction() -> None:
    # OTHER
    for number, um in _printed(CAMI_OTHER).items():
        assert 1e6 * grits.grit("CAMI", number).size_m == pytest.approx(um, rel=0.0115)


@pytest.mark.parametrize(("cami", "p"), [(320, 400), (400, 800), (600, 1200), (800, 1500), (1000, 2000)])
def test_same_number_another_grit(cami: int, p: int) -> None:
    # TABLE
    assert grits.alike(grits.grit("CAMI", cami), "P").number == p


@pytest.mark.parametrize(
    ("now", "then", "ratio", "how"),
    [
        (120, 180, 1.52, "ok"),
        (180, 240, 1.40, "ok"),
        (240, 320, 1.27, "ok"),
        (400, 600, 1.36, "ok"),
        (600, 1200, 1.69, "ok"),
        (220, 400, 1.94, "long"),
        (60, 120, 2.15, "too-far"),
    ],
)
def test_steps(now: int, then: int, ratio: float, how: str) -> None:
    # STEPS
    a, b = grits.grit("P", now).size_m, grits.grit("P", then).size_m
    assert a / b == pytest.approx(ratio, abs=0.006)
    assert grits.step(a, b) == how


def test_skipping_one_grade() -> None:
    # STEPS: 1.27 to 1.81 over the whole scale, 1.67 at most from P30 on
    sizes = [grit.size_m for grit in grits.grits("P")]
    skips = [a / b for a, b in zip(sizes, sizes[2:], strict=False)]
    assert (min(skips), max(skips)) == pytest.approx((1.27, 1.81), abs=0.006)
    from_p30 = [a / b for a, b in zip(sizes[4:], sizes[6:], strict=False)]
    assert max(from_p30) == pytest.approx(1.67, abs=0.006)


@pytest.mark.parametrize(
    ("force", "friction", "speed", "area", "seconds", "power", "rise"),
    [(20, 0.5, 5, 0.02, 30, 50, 26.3), (20, 0.5, 10, 0.02, 30, 100, 52.6), (10, 0.4, 3, 0.03, 60, 12, 6.0)],
)
def test_heat(force: float, friction: float, speed: float, area: float, seconds: float, power: float, rise: float) -> None:
    # HEAT
    watts = rubbing.power(force, friction, speed)
    assert watts == pytest.approx(power)
    assert rubbing.rise(watts, area, seconds) == pytest.approx(rise, abs=0.06)


@pytest.mark.parametrize(
    ("inputs", "rpm"),
    [  # SPEEDS: 450 mm paste on a glue block with no tailstock; 250 mm sanded, cracked and sound
        ({"grit_p": "P600", "diameter": "450", "condition": "solid", "hold": "glue"}, 380),
        ({"grit_p": "P120", "diameter": "250", "condition": "cracked", "hold": "centres"}, 220),
        ({"grit_p": "P120", "diameter": "250", "condition": "solid", "hold": "centres"}, 400),
        ({"grit_p": "P120", "diameter": "450", "condition": "solid", "hold": "centres", "way": "power"}, 150),
    ],
)
def test_speed_of_what_comes_next(inputs: dict[str, str], rpm: float) -> None:
    assert desk.answer("which-grit-next", inputs)["values"]["speed"]["si"] == rpm


@pytest.mark.parametrize(("wheel_mm", "rpm"), [(100, 2864), (150, 1909), (200, 1432)])
def test_wheel_from_which_resin_heats_fast(wheel_mm: float, rpm: int) -> None:
    # SPEEDS: 15 m/s
    assert int(caps.speed_at_rim_speed(wheel_mm / 1000, caps.caps()["wheel-caution"]["rim"])) == rpm


def test_guidebook_wheel() -> None:
    # GUIDEBOOK
    feet_per_minute = caps.rim_speed(4 * 0.0254, 800) / 0.3048 * 60
    assert feet_per_minute == pytest.approx(837.76, abs=0.006)
