"""Balance: weights cancel what is out, a turned drawing turns the answer, and the ladder of sizes follows the same arithmetic."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import desk
from calc.turning import balance, make_up, rebalance, wood_shapes
from calc.turning.make_up import Blank, Wood

HOURS = st.floats(0, 11.9).map(lambda hour: round(hour, 2))
MM = st.integers(0, 90)


def _answer(inputs: dict[str, str]) -> dict[str, Any]:
    return desk.answer("where-is-the-weight", inputs, "metric", inputs)


def _mounted(out: int, first: float, second: float) -> dict[str, str]:
    typed = {"way": "mounted", "across": "300", "thickness": "50", "wood1_across": "60", "wood1_out": str(out), "wood1_clock": str(first)}
    return typed | {"wood2_shape": "side", "wood2_edge": "125", "wood2_clock": str(second), "off": "3", "off_clock": "2"}


@given(st.floats(0.001, 5), st.floats(0, 6.28), st.floats(0.01, 3.1), st.floats(0, 1))
def test_two_weights_pull_like_the_one(weight: float, first: float, apart: float, share: float) -> None:
    at, second = first + share * apart, first + apart
    one, other = rebalance.split_weight(weight, at, first, second)
    assert one >= -1e-9 and other >= -1e-9
    for part in (math.cos, math.sin):
        assert one * part(first) + other * part(second) == pytest.approx(weight * part(at), abs=1e-6 * weight)


@given(MM, HOURS, HOURS, HOURS)
def test_the_weights_cancel_what_is_out(out: int, first: float, second: float, place: float) -> None:
    reply = _answer(_mounted(out, first, second))
    values = {name: value["si"] for name, value in reply["values"].items()}
    for weight in reply["extra"]["weights"]:
        moment = weight["kg"] * values["radius"]
        assert moment * math.cos(weight["rad"]) == pytest.approx(-values["off_x"] * values["mass"], abs=1e-9)
        assert moment * math.sin(weight["rad"]) == pytest.approx(-values["off_y"] * values["mass"], abs=1e-9)


@given(MM, HOURS, HOURS, st.floats(0, 11.9).map(lambda hour: round(hour, 2)))
def test_turning_the_drawing_turns_the_answer(out: int, first: float, second: float, by: float) -> None:
    typed = _mounted(out, first, second)
    turned = typed | {name: f"{(float(typed[name]) + by) % 12:.9f}" for name in ("wood1_clock", "wood2_clock", "off_clock")}
    before, after = ({name: value["si"] for name, value in _answer(inputs)["values"].items()} for inputs in (typed, turned))
    for name in ("mass", "off", "unbalance", "weight", "radius", "under", "pull"):
        assert after[name] == pytest.approx(before[name], rel=1e-6, abs=1e-9), name
    assert wood_shapes.turned([(before["off_x"], before["off_y"])], -by * math.pi / 6)[0] == pytest.approx((after["off_x"], after["off_y"]), abs=1e-9)


@given(st.floats(0.05, 0.3), st.floats(300, 1100), st.floats(0, 0.09), st.floats(0.02, 0.1))
def test_a_weight_set_in_as_metal_balances_the_blank(thick: float, density: float, out: float, across: float) -> None:
    """The weight that is told, put into the make-up as a brass plug over and above the resin it stands in, leaves nothing out."""
    blank = Blank(0.3, thick, 1150)
    wood = Wood(wood_shapes.round_wood(across, (out, 0.0)), density, thick)
    body = make_up.weigh(blank, [wood])
    kg = balance.balance_weight(body.unbalance, 0.130)
    depth = kg / (8500 - 1150) / (math.pi * 0.01**2)
    plug = Wood(wood_shapes.round_wood(0.02, (0.130 * math.cos(body.heavy + math.pi), 0.130 * math.sin(body.heavy + math.pi))), 8500, depth)
    assert make_up.weigh(blank, [wood, plug]).unbalance == pytest.approx(0.0, abs=1e-4 * body.unbalance + 1e-12)
