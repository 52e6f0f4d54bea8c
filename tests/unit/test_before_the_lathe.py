"""The question 'Before the lathe runs': what it leads with, what it leaves out, and what other questions hand to it."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    reply = desk.answer("before-the-lathe", inputs, units, inputs)
    assert not reply["errors"] and not reply["queries"], reply["text"]
    return reply


def rows(reply: dict[str, Any]) -> list[tuple[str, str]]:
    return [(row[0], row[1]) for row in reply["grids"][0]["rows"]]


def test_a_stop_leads_with_the_remedy_then_its_figures() -> None:
    headline = ask(speed="900", ceiling="600")["headline"]
    assert (headline["text"], headline["tone"]) == ("STOP", "stop")
    assert headline["say"] == "Set it to 600 rpm or less; start at the lowest. 900 rpm on the dial, the ceiling is 600 rpm."


def test_with_nothing_given_nothing_is_found_and_the_rest_is_left_out() -> None:
    reply = ask()
    assert reply["headline"]["text"] == "Not checked" and reply["values"]["not_checked"]["si"] == 6
    assert {state for _, state in rows(reply)} == {"Not checked"}


def test_noise_thrown_parts_and_dust_join_once_something_feeds_them() -> None:
    names = [name for name, _ in rows(ask(noise="94", heard="2", loose="1 kg", sweeps="250", speed="1000", mask="none"))]
    assert {"Noise", "Thrown work", "Mask and filters"} <= set(names)
    assert "Mask and filters" in [name for name, _ in rows(ask(then="sand"))]


def test_a_kilogram_off_a_250_mm_rim_at_1000_rpm_carries_86_joules() -> None:
    """v = pi 0.25 m 1000 / 60 = 13.09 m/s; 1 kg v^2 / 2 = 85.7 J."""
    thrown = ask(loose="1 kg", sweeps="250 mm", speed="1000")["values"]["energy"]
    assert thrown["si"] == pytest.approx(85.7, abs=0.05) and thrown["shown"] == "86 J"
    assert ask(loose="1 kg", sweeps="250 mm", speed="50", ceiling="1000")["values"]["energy"] == thrown, "it is turned up after the first power-on"
    assert ask(loose="1 kg", sweeps="250 mm", speed="50", ceiling="1000", ceiling_for="60 mm")["values"]["energy"]["si"] < 1, "of another piece"


@pytest.mark.parametrize(("level", "text"), [("85", "8.0 h"), ("88", "4.0 h"), ("94", "1.0 h"), ("100", "15 min")])
def test_hours_with_bare_ears(level: str, text: str) -> None:
    (line,) = ask(noise=level)["lines"]
    assert f"{line['text']} {line['unit']}" == text


def test_between_centres_there_is_no_least_size_of_the_mount() -> None:
    told = rows(ask(hold="centres", sound="yes"))
    assert {("Mount", "No stop found"), ("Tailstock", "No stop found")} <= set(told)


def test_every_figure_there_and_none_past_its_limit_ends_in_your_call() -> None:
    reply = ask(
        then="rough", age="48", leave="24", sheet_temperature="20", coolest="20", hard="yes", hold="chuck", tailstock="no", mount="60", least="50",
        overhang="60", sound="yes", sweeps="290", swing="300", balanced="500", ceiling="450", highest="3000", marked="2500", speed="450",
    )  # fmt: skip
    assert reply["headline"]["text"] == "No stop found - your call" and reply["headline"]["tone"] == "go"


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_how_fast_hands_on_its_ceiling_and_what_was_said_of_the_mount(units: str) -> None:
    inputs = {"diameter": "300 mm", "condition": "solid", "balance": "even", "hold": "glue", "far_end": "live"}
    source = desk.answer("how-fast", inputs, units, inputs)
    (carry,) = source["carries"]
    assert carry["to"] == "before-the-lathe" and carry["inputs"]["ceiling"] == source["values"]["speed"]["shown"]  # as on the page and the card
    assert (carry["inputs"]["hold"], carry["inputs"]["tailstock"]) == ("glue", "yes")
    taken = desk.answer("before-the-lathe", carry["inputs"] | {"speed": "5000 rpm"}, units)
    assert not taken["errors"] and not taken["unasked"] and taken["headline"]["text"] == "STOP"


def test_what_was_not_said_of_the_mount_is_not_handed_on() -> None:
    (carry,) = desk.answer("how-fast", {"diameter": "300", "condition": "solid", "balance": "even"})["carries"]
    assert "hold" not in carry["inputs"] and "tailstock" not in carry["inputs"]


def test_sanding_hands_on_its_own_ceiling_and_a_refusal_none() -> None:
    carry, _ = desk.answer("how-fast", {"operation": "sand", "diameter": "300", "condition": "solid", "balance": "done"})["carries"]
    assert "sand_ceiling" in carry["inputs"] and "ceiling" not in carry["inputs"]
    assert not desk.answer("how-fast", {"diameter": "300", "condition": "broken"})["carries"]


def test_when_can_i_hands_on_its_hours_rounded_up() -> None:
    inputs = {"resin": "standard", "depth": "8", "across": "200", "room": "20"}
    source = desk.answer("when-can-i", inputs)
    carry = next(carry for carry in source["carries"] if carry["to"] == "before-the-lathe")
    assert float(carry["inputs"]["leave"].split()[0]) * 3600 >= source["values"]["leave"]["si"] - 1
    assert float(carry["inputs"]["full"].split()[0]) * 3600 >= source["values"]["cured"]["si"] - 1
    early = desk.answer("before-the-lathe", carry["inputs"] | {"then": "sand", "age": "30 h"})
    assert early["headline"]["text"] == "STOP" and not early["unasked"]
