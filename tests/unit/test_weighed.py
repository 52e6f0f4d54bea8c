"""A weight against the sizes beside it."""

from __future__ import annotations

import pytest

from calc import desk

HELD = {
    "how-fast": {"diameter": "340", "thickness": "70", "condition": "solid", "balance": "even", "lathe": "floor"},
    "will-the-mount-hold": {"diameter": "340", "thickness": "70", "block": "200"},
    "does-it-fit-the-lathe": {"form": "round", "across": "340", "along": "70", "lathe": "floor"},
}


@pytest.mark.parametrize("id", HELD)
def test_a_weight_that_no_piece_of_this_size_has_is_asked_about(id: str) -> None:
    """0.34 m round by 70 mm is 6.355 L: at 6.2 kg 0.98 kg/L; at 62 kg 9.76, at 62 g 0.0098, and 34 mm for 34 cm makes 97.6."""
    assert not desk.answer(id, HELD[id] | {"mass": "6.2"})["errors"]
    sizes = {"across": "34"} if "across" in HELD[id] else {"diameter": "34", "block": "30"} if "block" in HELD[id] else {"diameter": "34"}
    for slip, density in (({"mass": "62"}, "9.8 g/mL"), ({"mass": "0.062"}, "0.0098 g/mL"), ({"mass": "6.2"} | sizes, "98 g/mL")):
        (error,) = desk.answer(id, HELD[id] | slip)["errors"]
        assert (error["field"], error["code"]) == ("mass", "weight-size")
        assert all(part in error["message"] for part in (density, "70 mm", f"{slip['mass']} kg"))


def test_no_weight_no_judgement() -> None:
    assert not desk.answer("how-fast", HELD["how-fast"] | {"diameter": "34"})["errors"]


def test_the_larger_unit_of_the_same_system_is_offered_too() -> None:
    """6.2 typed for kilograms, where grams are asked."""
    scale = {"way": "scale", "sweep": "340", "mass": "6.2", "apart": "300", "at_3": "3", "at_12": "3"}
    (query,) = (query for query in desk.answer("where-is-the-weight", scale)["queries"] if query["field"] == "mass")
    assert [choice["value"] for choice in query["choices"]] == ["6.2 oz", "6.2 kg"]
