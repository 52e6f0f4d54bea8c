"""Where is the weight? A disc, a ring or a pin let into a wood takes the wood's place for as deep as both go."""

from __future__ import annotations

import math
from typing import Any

import pytest

from calc import desk

ROUND = {"across": "300", "thickness": "50", "wood1_across": "100", "wood1_out": "60", "wood1_by": "density", "wood1_density": "0.7"}
LET_IN = {**ROUND, "wood2_shape": "round", "wood2_in": "wood", "wood2_across": "60", "wood2_out": "60", "wood2_clock": "3", "wood2_by": "density"}
LET_IN |= {"wood2_density": "8.5", "wood2_depth": "5"}


def ask(**inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("where-is-the-weight", confirmed, "metric", confirmed)


def value(reply: dict[str, Any], name: str) -> float:
    found: float = reply["values"][name]["si"]
    return found


def code(reply: dict[str, Any]) -> tuple[str, str]:
    assert reply["headline"] is None and reply["errors"][0]["message"] and "{" not in reply["errors"][0]["message"]
    return reply["errors"][0]["field"], reply["errors"][0]["code"]


def test_brass_let_into_the_wood_takes_its_place() -> None:
    """(8500 - 700) x pi 30^2 x 5 mm3 = 110.3 g more at 60 mm: 10.603 - 6.616 = 3.987 kg mm; in the resin it would have been 7350."""
    reply = ask(way="mounted", **LET_IN)
    assert value(reply, "unbalance") == pytest.approx(0.003987, abs=1e-6)
    assert "What lay there swapped for the second wood" in [step["title"] for step in reply["working"]]
    assert [mark["look"] for mark in reply["drawings"][0]["marks"]][:3] == ["resin", "wood", "metal"]


def test_a_ring_is_a_disc_with_another_let_into_it() -> None:
    """Brass of 60 mm, and of 40 mm the wood back in it: 7800 x pi (30^2 - 20^2) x 5 mm3 = 61.26 g at 60 mm."""
    ring = {"wood3_shape": "round", "wood3_in": "wood", "wood3_across": "40", "wood3_out": "60", "wood3_clock": "3", "wood3_by": "density"}
    reply = ask(way="mounted", **LET_IN, **ring, wood3_density="0.7", wood3_depth="5")
    assert value(reply, "unbalance") == pytest.approx(0.010603 - 7800 * math.pi * (0.03**2 - 0.02**2) * 0.005 * 0.060, abs=1e-6)


def test_deeper_than_its_wood_it_goes_on_into_the_resin() -> None:
    """Wood 20 mm deep, a brass pin of 10 mm through all 50 mm: 7800 for the first 20 mm, 7350 for the rest."""
    pin = LET_IN | {"wood1_depth": "20", "wood2_across": "10", "wood2_depth": ""}
    wood = -450 * math.pi * 0.05**2 * 0.020
    more = math.pi * 0.005**2 * (7800 * 0.020 + 7350 * 0.030)
    assert value(ask(way="mounted", **pin), "unbalance") == pytest.approx(abs(wood + more) * 0.060, rel=1e-6)


def test_what_is_let_in_goes_with_the_wood_that_is_shifted() -> None:
    reply = ask(**LET_IN)
    assert (reply["headline"]["label"], reply["headline"]["text"]) == ("Shift the wood", "60") and value(reply, "shift") == pytest.approx(0.060)
    assert reply["headline"]["say"].startswith("Towards 9 o'clock, in the mould, with what is let into it.")
    assert "1 wood and 1 of metal or stone drawn in it" in reply["drawings"][0]["says"]
    assert [change["do"] for change in reply["changes"] if change["then"] == "in balance"] == [], "the brass alone does not leave its wood"


def test_let_into_nothing_and_not_let_in() -> None:
    assert code(ask(**LET_IN | {"wood2_clock": "9"})) == ("wood2_in", "in-none")
    assert code(ask(**LET_IN | {"wood2_in": "resin"})) == ("wood2_shape", "overlap")
