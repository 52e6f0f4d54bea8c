"""How fast?: the next stage, the sizes on the way down, the turning card, and thin work."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk
from calc.questions._how_fast.stages import AFTER
from calc.turning import discs
from calc.turning.case import Case, turned_down
from calc.turning.job import Measured
from calc.turning.speed import Speeds

#: 300 mm, balanced, between centres, on a floor lathe: only the rim counts.
EASY = {"diameter": "300", "condition": "solid", "balance": "done", "hold": "centres", "length": "50 mm", "lathe": "floor"}
THIN = {"operation": "finish", "diameter": "25", "condition": "solid", "balance": "done", "hold": "centres", "length": "50 mm", "lathe": "floor"}


def _ask(inputs: dict[str, str], units: str = "metric", **more: str) -> dict[str, Any]:
    return desk.answer("how-fast", inputs | more, units)


def _cautions(reply: dict[str, Any]) -> dict[str, str]:
    return {caution["id"]: caution["text"] for caution in reply["cautions"]}


def _rows(reply: dict[str, Any]) -> list[list[str]]:
    (grid,) = reply["grids"]
    return [list(row) for row in grid["rows"]]


def test_the_rim_sets_the_speeds_on_the_way_down() -> None:
    reply = _ask(EASY, lathe_mass="1500", bolted="yes")  # a lathe that nothing shakes
    rows = _rows(reply)
    assert [row[0] for row in rows] == ["300 mm", "250 mm", "200 mm", "150 mm", "125 mm"]
    # 8 m/s at 300 and 250 mm, then the line to 4 m/s at 75 mm: 6.857, 5.714 and 5.143 m/s; floors to ten
    assert [row[1] for row in rows] == ["500", "610", "650", "720", "780"]
    # 12 m/s: the floors of reference 3.2 at 300, 250, 200 and 150 mm are 763, 916, 1145 and 1527
    assert [row[2] for row in rows][:4] == ["760", "910", "1140", "1520"]
    assert [row[3] for row in rows] == ["400", "400", "470", "630", "760"]  # by hand: 400 rpm from 239 mm, below that 5 m/s


def test_the_first_row_is_the_answer_itself() -> None:
    for more in ({}, {"balance": "side"}, {"balance": "known", "eccentricity": "2"}, {"hold": "glue"}, {"operation": "finish"}):
        reply = _ask(EASY | more)
        assert _rows(reply)[0][1] == reply["headline"]["text"]


def test_sizes_in_inches_stand_on_marks_of_a_rule() -> None:
    assert [row[0] for row in _rows(_ask(EASY | {"diameter": "15"}, "imperial"))] == ["15 in", "14 in", "12 in", "10 in", "8 in"]


def test_a_size_next_to_the_one_it_has_is_left_out() -> None:
    assert [row[0] for row in _rows(_ask(EASY | {"diameter": "310"}))][:2] == ["310 mm", "250 mm"]


@pytest.mark.parametrize("operation", ["sand", "power", "paste"])
def test_what_is_not_turned_down_has_no_sizes(operation: str) -> None:
    assert not _ask(EASY, operation=operation)["grids"]


def test_what_is_out_of_balance_stays_when_the_blank_is_turned_down() -> None:
    """A round of wood beside the centre: the resin goes, the round stays (reference E1: 10.603 kg mm on the 300 mm disc)."""
    whole = Case("rough", 0.300, 0.050, "solid", "known", "centres", "live", 60, False, Speeds(50, 3000), 3.8877, known_eccentricity_m=0.0027273)
    smaller = turned_down(whole, 0.220)
    assert smaller.job.unbalance_kg_m == pytest.approx(0.010603, rel=1e-4)
    # The same round in the smaller disc, by moments: 450 kg/m3 lighter, 50 mm radius, 60 mm out; what is out is the same.
    assert 450 * 3.14159265 * 0.05**2 * 0.05 * 0.06 == pytest.approx(smaller.job.unbalance_kg_m, rel=1e-3)
    by_vibration = {limit.id: limit.speed_rpm for limit in smaller.top.limits}["vibration"]
    assert by_vibration <= {limit.id: limit.speed_rpm for limit in whole.top.limits}["vibration"] == pytest.approx(366.2, abs=0.1)  # V1


def test_a_guess_gives_no_higher_speed_by_getting_smaller_where_balance_rules() -> None:
    rows = _rows(_ask(EASY, balance="side"))
    figures = [float(row[1]) for row in rows]
    assert figures == sorted(figures, reverse=True)


def test_a_vibration_that_was_measured_stands_at_every_size() -> None:
    felt = Case("rough", 0.4, 0.05, "solid", "side", "centres", "live", 150, False, Speeds(50, 3000), measured=Measured(150, 0.0018))
    limits = [{limit.id: limit.speed_rpm for limit in turned_down(felt, size).top.limits}["vibration"] for size in (0.4, 0.3, 0.2)]
    assert limits == pytest.approx([375.0] * 3)  # 150 rpm x 4.5 / 1.8


def test_the_next_stage_says_what_to_mind() -> None:
    following = _ask(EASY)["lines"][0]
    assert (following["label"], following["unit"], following["note"]) == ("Next: finishing cut", "rpm", "Once it is round and runs still.")
    sanding = _ask(EASY, operation="finish")["lines"][0]
    assert (sanding["label"], sanding["text"], sanding["note"]) == ("Next: sanding by hand", "400", "Slow down to it first.")
    assert not [line for line in _ask(EASY, operation="paste")["lines"] if line["label"].startswith("Next")]


def test_the_next_stage_is_what_the_question_gives_for_it() -> None:
    for operation, after in AFTER.items():
        if after:
            found = [line for line in _ask(EASY, operation=operation)["lines"] if line["label"].startswith("Next")]
            assert found[0]["text"] == _ask(EASY, operation=after[0])["headline"]["text"]


def test_the_card_has_one_number_the_stage_the_next_and_three_reflexes() -> None:
    reply = _ask(EASY, hold="glue")
    card = reply["extra"]["card"]
    assert (card["text"], card["unit"]) == (reply["headline"]["text"], "rpm")
    assert card["stage"] == "Roughing, 300 mm"
    assert card["next"].startswith("Next: finishing cut, ") and card["next"].endswith(" rpm")
    assert len(card["reflex"]) == 3
    assert [text for text, line in zip(("by hand", "Lowest speed", "rim's line"), card["reflex"], strict=True) if text not in line] == []
    assert card["sizes"][0].startswith("250 mm: ")
    assert card["by"] == "Solid; balanced; glue block; no tailstock; floor lathe"


@pytest.mark.parametrize("more", [{"condition": "broken"}, {"balance": "half", "lathe": "bench", "diameter": "600"}])
def test_a_card_of_what_may_not_run_starts_nothing(more: dict[str, str]) -> None:
    card = _ask(EASY | more)["extra"]["card"]
    assert card["tone"] == "stop" and not card["reflex"] and not card["next"]
    assert not any(character.isdigit() for character in card["text"])
    assert card["say"] and all(card["say"])


def test_the_card_of_a_wheel_goes_by_the_wheel() -> None:
    card = _ask({"operation": "buff", "wheel": "200", "lathe": "floor"})["extra"]["card"]
    assert card["stage"] == "Buffing wheel, 200 mm" and not card["next"] and not card["sizes"]


def test_a_lowest_speed_that_is_quick_says_so_on_the_card() -> None:
    reply = _ask(EASY, operation="paste", diameter="450", lowest="500")
    assert reply["extra"]["card"]["say"] == [reply["headline"]["say"]]
    assert "cool" in reply["headline"]["say"]


def test_every_card_has_a_text_for_every_place() -> None:
    places = {frozenset(_ask(EASY | more)["extra"]["card"]) for more in ({}, {"condition": "broken"}, {"operation": "buff", "wheel": "200"})}
    assert len(places) == 1


def test_thin_work_turned_thinner_turns_slower() -> None:
    rows = _rows(_ask(THIN, length="600"))
    assert [row[0] for row in rows] == ["25 mm", "20 mm", "15 mm"]
    assert [row[1] for row in rows] == ["1180", "940", "700"]  # half of 2364 rpm (reference 3.2), and as the diameter: 945.6, 709.2


def test_thin_work_is_told_of_whip() -> None:
    assert "steady rest" in _cautions(_ask(THIN, length="600"))["X14"]
    slow = _cautions(_ask(THIN, length="301", operation="power"))  # 12 times its width, and too slow for whip to rule
    assert "steady rest" in slow["X14"]
    assert "X14" not in _cautions(_ask(THIN, length="299", operation="power"))


def test_a_length_that_was_not_given_is_asked_for_where_it_could_decide() -> None:
    on_plate = THIN | {"hold": "faceplate", "far_end": "live"}
    text = _cautions(_ask(on_plate))["X14"]
    # at 4000 rpm, whirling at 8000: 600 mm x the root of 2364 / 8000 = 326 mm
    assert "From 326 mm on it can whip" in text
    assert "X14" not in _cautions(_ask(on_plate, thickness="50"))
    assert "X14" not in _cautions(_ask(EASY))


def test_whip_length_is_whip_speed_turned_round() -> None:
    for free in (True, False):
        length = discs.whip_length(0.03, 1500, free)
        assert discs.whip_speed(0.03, length, free) == pytest.approx(1500)


def test_turning_down_to_its_own_size_changes_nothing() -> None:
    case = Case("finish", 0.3, 0.05, "filled", "side", "glue", "none", 60, False, Speeds(50, 3000), 4.0)
    assert turned_down(case, 0.3).top == case.top


def test_the_card_tells_the_stages_after_the_next_and_the_steps_up_to_the_top_speed() -> None:
    inputs = EASY | {"diameter": "100", "operation": "rough"}
    card = _ask(inputs)["extra"]["card"]
    speeds = {stage: _ask(inputs, operation=stage)["headline"]["text"] for stage in ("finish", "sand")}
    assert card["next"] == f"Next: finishing cut, {speeds['finish']} rpm"
    assert card["later"] == [f"Then: sanding by hand, {speeds['sand']} rpm"]
    assert card["steps"] == ""
    belt = _ask(THIN, length="100 mm", speeds="steps", steps="2200 500 1400 900 3500 6000")
    # 12 m/s at 25 mm is 9167 rpm, and four times its width is too short for whip to be looked at
    assert belt["extra"]["card"]["steps"] == "Up in steps: 500, 900, 1400, 2200, 3500, 6000 rpm"
    assert "In steps, 500, 900, 1400, 2200, 3500, 6000." in belt["headline"]["say"]
    slow = _ask(EASY, diameter="100", speeds="steps", steps="500 900 1400 2200")  # roughing: 4.57 m/s at 100 mm, 873 rpm
    assert (slow["headline"]["text"], slow["extra"]["card"]["steps"]) == ("500", "Up in steps: 500 rpm")


def test_the_card_says_how_far_off_centre_in_the_figure_that_was_given() -> None:
    by = _ask(EASY, balance="known", eccentricity="6.1 mm")["extra"]["card"]["by"]
    assert "6.1 mm off centre" in by and "how far" not in by


@pytest.mark.parametrize("off", ["0.5", "3", "6.1", "12"])
@pytest.mark.parametrize("hold", ["centres", "glue", "faceplate"])
def test_one_disc_one_story(off: str, hold: str) -> None:
    """Sanding is never faster than the finishing cut, and a finishing cut that is slower than roughing says why."""
    piece = EASY | {"diameter": "350", "balance": "known", "eccentricity": f"{off} mm", "hold": hold, "condition": "filled", "lowest": "10"}
    speed = {stage: _ask(piece, operation=stage)["values"]["ceiling"]["si"] for stage in ("rough", "finish", "sand", "power")}
    assert max(speed["sand"], speed["power"]) <= speed["finish"]
    if speed["finish"] < speed["rough"]:
        assert "clean surface wants it still" in _ask(piece)["extra"]["card"]["mind"]
    reply = _ask(piece, operation="sand")
    (grits,) = [carry["inputs"] for carry in reply["carries"] if carry["to"] == "which-grit-next"]
    papers = desk.answer("which-grit-next", grits | {"grit_p": "p220"})
    assert papers["values"]["ceiling"]["si"] <= reply["values"]["ceiling"]["si"]
    assert papers["values"]["speed"]["si"] <= float(reply["headline"]["text"])


@pytest.mark.parametrize("more", [{}, {"condition": "filled"}, {"balance": "side"}, {"speeds": "steps", "steps": "90 140 220 333"}])
def test_a_speed_is_the_same_on_the_page_the_card_and_in_what_is_handed_on(more: dict[str, str]) -> None:
    reply = _ask(EASY | more)
    (carry,) = [carry for carry in reply["carries"] if carry["to"] == "before-the-lathe"]
    assert carry["inputs"]["ceiling"] == f"{reply['headline']['text']} rpm" == f"{reply['extra']['card']['text']} rpm"


def test_a_rod_between_centres_has_its_length_asked_for() -> None:
    rod = {key: text for key, text in THIN.items() if key != "length"}
    assert [(error["field"], error["code"]) for error in _ask(rod)["errors"]] == [("length", "missing")]
    figures = [float(_ask(rod, length=f"{length} mm", lowest="10")["headline"]["text"]) for length in (100, 400, 1000)]
    assert figures[0] > figures[1] > figures[2]
    listed = {field["name"]: field for field in desk.describe("how-fast")["fields"]}
    assert not listed["length"]["fold"] and listed["length"]["required"]


def test_thinner_than_25_mm_can_be_asked() -> None:
    inputs = THIN | {"diameter": "6 mm", "length": "100 mm"}
    reply = desk.answer("how-fast", inputs, "metric", inputs)
    assert reply["headline"]["tone"] != "stop" and reply["values"]["whip"]["si"] == pytest.approx(1 / 2 * 2364 * 6 / 25 * 36, rel=1e-3)  # as D / L²
    (error,) = _ask(THIN, diameter="4 mm")["errors"]
    assert error["code"] == "too-small" and "5 mm" in error["message"]
