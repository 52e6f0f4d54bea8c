"""The question 'Before a deep pour': what it leads with, and what it works out."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk

ENOUGH = {"across": "350 mm", "depth": "50 mm", "wood": "2400 mL", "wood_way": "figured", "have": "3 kg"}


def answer(units: str = "metric", **inputs: str) -> dict[str, Any]:
    reply = desk.answer("before-a-pour", inputs, units, inputs)
    assert not reply["errors"] and not reply["queries"]
    return reply


def test_a_stop_leads_with_the_remedy_then_its_figures() -> None:
    headline = answer(depth="62", sheet_depth="50")["headline"]
    assert headline["text"] == "STOP" and headline["tone"] == "stop"
    assert headline["say"] == "Pour 50 mm at most, let it cool, then the next layer. 62 mm planned, the sheet allows 50 mm."


def test_the_lower_of_the_sheet_and_what_was_worked_out_counts() -> None:
    headline = answer(depth="50", sheet_depth="50", own_depth="9")["headline"]
    assert headline["tone"] == "stop"
    assert headline["say"] == "Pour 9 mm at most, let it cool, then the next layer. 50 mm planned, 'How deep and how hot?' allows 9 mm."
    assert answer(depth="60", sheet_depth="50", own_depth="80")["headline"]["say"].endswith("60 mm planned, the sheet allows 50 mm.")
    row = answer(depth="8", sheet_depth="50", own_depth="9")["grids"][0]["rows"][0]
    assert row[1] == "No stop found" and "'How deep and how hot?' allows 9 mm" in row[2]


def test_with_the_sheet_alone_the_other_question_is_named() -> None:
    def ids(**inputs: str) -> list[str]:
        return [caution["id"] for caution in answer(**inputs)["cautions"]]

    assert "fresh-resin" in ids(depth="12", sheet_depth="50")
    assert "fresh-resin" not in ids(depth="50", sheet_depth="50")  # that one is not checked, and names the question itself
    assert "fresh-resin" not in ids(depth="50", sheet_depth="50", own_depth="50") and "fresh-resin" not in ids(depth="50")


def test_a_deep_layer_is_not_cleared_by_the_sheet_alone() -> None:
    row = answer(depth="42", sheet_depth="50")["grids"][0]["rows"][0]
    assert row[1] == "Not checked" and row[2].startswith("Missing: what 'How deep and how hot?' allows for a layer this deep. 42 mm planned")
    assert answer(depth="12", sheet_depth="50")["grids"][0]["rows"][0][1] == "No stop found"


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_what_is_it_enough_adds_is_no_reason_to_stop(units: str) -> None:
    order = desk.answer("is-it-enough", ENOUGH, units)
    carried = next(carry["inputs"] for carry in order["carries"] if carry["to"] == "before-a-pour")
    weigh = next(carry["inputs"] for carry in order["carries"] if carry["to"] == "how-much-to-weigh")
    row = answer(units, mass=weigh["total"], sheet_mass="50 kg", **carried)["grids"][0]["rows"][1]
    assert row[1] == "No stop found", row


def test_a_batch_and_a_layer_that_do_not_fit_are_both_told() -> None:
    tray = {"depth": "7/16 in", "mould_length": "16 in", "mould_width": "16 in", "mass": "131.5 oz", "sheet_mass": "300 oz", "moulds_take": "263 oz"}
    row = answer("imperial", **tray)["grids"][0]["rows"][1]
    # 16 x 16 x 7/16 in are 112 in3, 1.835 L; at 1.1 g/mL 2.02 kg or 71 oz
    assert row[1] == "Your call" and "8.22 lb in this batch, but this layer takes 4.45 lb at most" in row[2] and "They do not fit" in row[2]
    assert answer("imperial", **tray, moulds="2")["grids"][0]["rows"][1][1] == "No stop found"
    assert answer("imperial", **tray | {"mass": "400 oz"})["headline"]["tone"] == "stop"


def test_more_in_one_bucket_has_less_time_and_the_time_says_so() -> None:
    plan = {"working": "45", "handling": "25", "room": "23"}
    assert answer(**plan)["values"]["may_use"]["shown"] == "27 min"
    row = next(row for row in answer(**plan, mass="3729")["grids"][0]["rows"] if row[0] == "Working time")
    assert row[1] == "Your call" and "25 min to mix, degas and pour; so much in one bucket may have only 14 min." in row[2]
    assert next(row for row in answer(**plan | {"handling": "28"}, mass="3729")["grids"][0]["rows"] if row[0] == "Working time")[1] == "STOP"


def test_what_is_missing_is_named_and_never_passes() -> None:
    reply = answer(depth="50", sheet_depth="50", own_depth="60")
    assert reply["headline"]["text"] == "7 of 8 not checked" and reply["headline"]["tone"] == "caution"
    assert "size of the batch" in reply["headline"]["say"]
    rows = {row[0]: row[1] for row in reply["grids"][0]["rows"]}
    assert rows["Depth of the layer"] == "No stop found" and rows["Size of the batch"] == "Not checked"


def test_with_nothing_given_nothing_is_found() -> None:
    reply = answer()
    assert reply["headline"]["text"] == "Not checked"
    assert {row[1] for row in reply["grids"][0]["rows"]} == {"Not checked"}


def test_over_the_sheet_the_mould_is_asked_about() -> None:
    assert "narrow-mould" in [caution["id"] for caution in answer(depth="60", sheet_depth="50")["cautions"]]
    assert "narrow-mould" not in [caution["id"] for caution in answer(depth="40", sheet_depth="50")["cautions"]]


def test_over_the_sheet_in_a_narrow_mould_names_both_depths_and_asks_for_a_press() -> None:
    row = answer(depth="60", sheet_depth="50", narrowest="40")["grids"][0]["rows"][0]
    assert row[1] == "Your call"
    assert row[2].startswith("60 mm planned, the sheet allows 50 mm. In a mould this narrow that gets as hot as a wide pour of ")
    gates = {gate["id"]: gate for gate in answer(depth="60", sheet_depth="50", narrowest="40")["extra"]["gates"]}
    assert gates["G1"]["state"] == "not checked" and "as a wide pour" in gates["G1"]["record"]


def test_over_the_sheet_in_a_wide_mould_is_a_stop_however_wide_it_is_told() -> None:
    for width in ("150", "400"):
        assert answer(depth="80", sheet_depth="50", narrowest=width)["headline"]["text"] == "STOP"


def test_the_tray_is_sized_for_the_whole_batch_rounded_up() -> None:
    reply = answer(mass="2200", sheet_depth="50", tray_length="400", tray_width="300")
    lines = {line["label"]: (line["text"], line["unit"]) for line in reply["lines"]}
    assert lines["Depth in the waste tray"] == ("17", "mm")  # 2 L on 0.12 m2 = 16.67 mm
    assert lines["Tray that takes it, square"] == ("448", "mm")  # root of 2 L / 10 mm = 447.2 mm
    assert answer(mass="2200", leftovers="300", sheet_depth="50", tray_length="400", tray_width="300")["values"]["tray_depth"]["si"] < 0.01


def test_the_time_that_may_be_used_rounds_down() -> None:
    assert answer(working="41")["values"]["may_use"]["shown"] == "24 min"  # 0.6 x 41 = 24.6


@pytest.mark.parametrize(("typed", "word"), [("2 in", "No stop found"), ("2 1/16 in", "STOP")])
def test_inches_are_first_class(typed: str, word: str) -> None:
    reply = answer("imperial", depth=typed, sheet_depth="2", own_depth="3")
    assert reply["grids"][0]["rows"][0][1] == word
    assert " in " in reply["grids"][0]["rows"][0][2]


def test_the_gates_are_there_for_other_pages() -> None:
    gates = {gate["id"]: gate["state"] for gate in answer(depth="60", sheet_depth="50")["extra"]["gates"]}
    assert gates["G1"] == "stop" and gates["G16"] == "not checked"


def test_too_much_solvent_for_the_room_is_told_once_and_stops_nobody() -> None:
    reply = answer(solvent="40", room_length="4", room_width="3", room_height="2.5", put_away="yes", wiped_dry="yes")  # 30 m3 take 36 mL
    told = [caution["text"] for caution in reply["cautions"] if caution["id"] == "reminder-G15"]
    assert len(told) == 1 and "Door open, no flame." in told[0] and reply["headline"]["tone"] != "stop"


def test_solvent_left_in_the_room_stops() -> None:
    headline = answer(put_away="no")["headline"]
    assert headline["say"] == "No flame: shut the solvent and carry it and its rags out first. Solvent is still in the room."
