"""Where is the weight? Many woods and inserts in one blank, and what it hands on to other questions."""

from __future__ import annotations

import math

import pytest

from calc import desk
from tests.unit.test_where_is_the_weight import DISC, ROUND, ask, value


def _round_woods(count: int) -> dict[str, str]:
    """Round woods side by side, each of its own size and density."""
    found = {}
    for n in range(1, count + 1):
        own = {"shape": "round", "across": str(40 + 4 * n), "out": "130", "clock": str(1.5 * n), "by": "density", "density": f"{0.4 + 0.1 * n:.1f}"}
        found |= {f"wood{n}_{name}": text for name, text in own.items()}
    return found


def test_eight_woods_are_a_plain_sum() -> None:
    """Each swaps resin of 1150 kg/m3 for its own density over the area of its circle, all 50 mm thick, at 130 mm by its hour."""
    reply = ask(across="400", thickness="50", **_round_woods(8))
    mass, x, y = 1150 * math.pi * 0.2**2 * 0.05, 0.0, 0.0
    for n in range(1, 9):
        swapped = (400 + 100 * n - 1150) * math.pi * ((40 + 4 * n) / 2000) ** 2 * 0.05
        turn = math.pi / 2 - 1.5 * n * math.pi / 6
        mass, x, y = mass + swapped, x + swapped * 0.130 * math.cos(turn), y + swapped * 0.130 * math.sin(turn)
    assert (value(reply, "mass"), value(reply, "unbalance")) == (pytest.approx(mass), pytest.approx(math.hypot(x, y)))
    assert (value(reply, "off_x"), value(reply, "off_y")) == (pytest.approx(x / mass), pytest.approx(y / mass))
    assert "8 woods drawn in it" in reply["drawings"][0]["says"]


def test_a_nest_of_many_is_answered_in_steps() -> None:
    """Four discs, each let into the one before: the same mass as the rings they leave, and a share of the work done after each try."""
    nest = {**DISC, "wood1_across": "140", "wood1_out": "30", "wood1_by": "density", "wood1_density": "0.6"}
    for n, across in ((2, 100), (3, 60), (4, 20)):
        own = {"shape": "round", "in": "wood", "across": str(across), "out": "30", "clock": "3", "by": "density", "density": f"{0.6 + 0.2 * (n - 1):.1f}"}
        nest |= {f"wood{n}_{name}": text for name, text in own.items()}
    reply, shares = desk.begin("where-is-the-weight", nest), []
    while "pending" in reply:
        shares.append(reply["pending"])
        reply = desk.go_on()
    rings = ((0.140, 0.100, 600), (0.100, 0.060, 800), (0.060, 0.020, 1000), (0.020, 0.0, 1200))
    swapped = sum(math.pi / 4 * (outer**2 - inner**2) * 0.05 * (density - 1150) for outer, inner, density in rings)
    assert shares == [0.0, 0.25, 0.5, 0.75] and value(reply, "mass") == pytest.approx(1150 * math.pi * 0.15**2 * 0.05 + swapped, rel=1e-4)
    assert value(reply, "unbalance") == pytest.approx(-swapped * 0.030, rel=1e-4) and value(reply, "shift") == pytest.approx(0.030, rel=1e-3)


def test_a_wood_after_a_gap_is_not_asked() -> None:
    """The third is none: the fourth is not asked, told as unused, and changes nothing."""
    two, four = _round_woods(2), _round_woods(4)
    gap = {name: text for name, text in four.items() if not name.startswith("wood3")}
    before, after = ask(across="400", thickness="50", **two), ask(across="400", thickness="50", **gap)
    assert value(after, "mass") == value(before, "mass") and value(after, "unbalance") == value(before, "unbalance")
    assert "wood4_shape" in str(after["unasked"]) and not before["unasked"]
    fields = {field["name"]: field for field in desk.describe("where-is-the-weight")["fields"]}
    assert fields["wood8_shape"]["group"] == "Eighth wood, or an insert" and "wood9_shape" not in fields
    assert [name for name, _ in fields["wood8_shape"]["when"]] == ["way", "wood7_shape"]


# --- handed on --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "units, across, told",
    [("metric", "300", "300 mm"), ("imperial", "11 13/16", "11 13/16 in"), ("imperial", "300.1 mm", "300.1 mm"), ("metric", "11 13/16 in", "11 13/16 in")],
)
def test_what_is_handed_on_reads_as_it_was_typed(units: str, across: str, told: str) -> None:
    reply = ask(units, **{**ROUND, "across": across, "thickness": "50 mm", "wood1_across": "100 mm", "wood1_out": "60 mm"})
    assert [carry["inputs"]["diameter"] for carry in reply["carries"]] == [told, told]


@pytest.mark.parametrize("units, away", [("imperial", "metric"), ("metric", "imperial")])
def test_in_the_other_units_what_is_handed_on_is_no_smaller(units: str, away: str) -> None:
    """300 mm are 11.811 in: 11 13/16; 12 in are 304.8 mm. Off the centre by 3 mm, 306 mm are 12.047 in: 12 1/16, and never 12."""
    typed = {"across": ("300", "12")[units == "metric"], "thickness": ("50", "2")[units == "metric"], "wood1_across": "100 mm", "wood1_out": "60 mm"}
    inputs = {name: {"typed": text, "units": away} for name, text in typed.items()}
    on, off = (desk.answer("where-is-the-weight", inputs | more, units, typed) for more in ({}, {"way": "mounted", "off": "3 mm", "off_clock": "3"}))
    told = [reply["carries"][0]["inputs"]["diameter"] for reply in (on, off)]
    assert told == (["11 13/16 in", "12 1/16 in"] if units == "imperial" else ["304.8 mm", "311 mm"])
    assert on["carries"][0]["inputs"]["thickness"] == ("1 31/32 in" if units == "imperial" else "50.8 mm")
