"""How fast? against what people of the trade do. Common practice, no source.

PASTE: a large disc takes hand-rubbed paste at 350 to 400 rpm.
FELT: a 500 mm disc that is badly out of balance is felt (1.8 mm/s) long before 800 rpm.
LUMP: a big lump far out of balance may have to start near 100 rpm.
"""

from __future__ import annotations

import pytest

from calc import desk
from calc.turning import speed, vibrating
from calc.turning.case import Case


def _ask(**inputs: str) -> dict[str, float | None]:
    reply = desk.answer("how-fast", inputs)
    assert not reply["errors"], reply["errors"]
    assert not reply["queries"], reply["queries"]
    return {name: value["si"] for name, value in reply["values"].items()}


@pytest.mark.parametrize("diameter", ["400", "450", "475"])
@pytest.mark.parametrize("far_end", ["none", "live"])
def test_large_disc_takes_paste_at_350_to_400(diameter: str, far_end: str) -> None:
    # PASTE. Solid, balanced, on a floor lathe.
    found = _ask(operation="paste", diameter=diameter, condition="solid", balance="done", hold="faceplate", far_end=far_end, lathe="floor")
    setting = found["speed"]
    assert setting is not None
    assert 350 <= setting <= 400


def test_large_disc_on_a_glue_block_takes_paste_at_380() -> None:
    # PASTE; worked case A5 of our reference: 450 mm, 8 kg, 0.3 mm off, glue block, no tailstock, 150 kg lathe.
    found = _ask(
        operation="paste", diameter="450", condition="solid", balance="known", eccentricity="0.3", mass="8 kg", hold="glue", lathe="floor"
    )
    assert found["speed"] == 380


@pytest.mark.parametrize("make_up", ["side", "half"])
@pytest.mark.parametrize("lathe", ["bench", "midi", "floor", "heavy"])
@pytest.mark.parametrize("bolted", [False, True])
def test_lopsided_500_mm_disc_is_felt_long_before_800(make_up: str, lathe: str, bolted: bool) -> None:
    # FELT. On the heaviest lathe, bolted down, it is still felt below half of that.
    kind = speed.lathe_kinds()[lathe]
    speeds = speed.Speeds(kind.lowest_rpm, kind.highest_rpm)
    case = Case("finish", 0.5, 0.05, "solid", make_up, "faceplate", "none", kind.mass_kg, bolted, speeds)
    assert case.job.speed_at_vibration(vibrating.vibration_limit("zone-b")) < 400


def test_lopsided_lump_starts_near_100() -> None:
    # LUMP. 300 mm, half wood: on a lathe that goes slow enough, 50 to 150 rpm.
    found = _ask(diameter="300", condition="solid", balance="half", hold="centres", length="50", lathe="floor")
    setting = found["speed"]
    assert setting is not None
    assert 50 <= setting <= 150
