"""What one question found of one piece or one mount says nothing of another: the speeds, the mount, and what is handed on with them."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk
from tests.unit.lists import LATHE, screen

#: A spindle's ceiling is no disc's.
SPINDLE = {"speed": "900 rpm", "ceiling": "2540 rpm", "ceiling_for": "30 mm", "balanced": "920 rpm", "balanced_for": "30 mm"}


def ask(id: str, **inputs: str) -> dict[str, Any]:
    reply = desk.answer(id, inputs, "metric", inputs)
    assert not reply["errors"], reply["text"]
    return reply


def row(reply: dict[str, Any], name: str) -> tuple[str, str]:
    return next((said, text) for what, said, text in reply["grids"][0]["rows"] if what == name)


def carried(reply: dict[str, Any], to: str = "before-the-lathe") -> dict[str, str]:
    return next(dict(carry["inputs"]) for carry in reply["carries"] if carry["to"] == to)


def test_a_spindle_s_speeds_are_none_of_a_disc() -> None:
    for name in ("Speed", "Out of balance"):
        said, text = row(ask("before-the-lathe", sweeps="340 mm", highest="3200", **SPINDLE), name)
        assert said == "Not checked" and "the size it sweeps now" in text


def test_past_a_smaller_piece_s_ceiling_a_wider_one_stops_and_is_sent_to_ask() -> None:
    reply = ask("before-the-lathe", sweeps="340 mm", **(SPINDLE | {"speed": "2600 rpm"}))
    said, text = row(reply, "Speed")
    assert said == "STOP" and "of a smaller piece is 2540 rpm" in text
    assert "Ask 'How fast?' for the size it sweeps now" in reply["headline"]["say"] and "to 2540" not in reply["headline"]["say"]


@pytest.mark.parametrize(("sweeps", "said"), [("340 mm", "STOP"), ("150 mm", "STOP"), ("30 mm", "Not checked")])
def test_a_disc_s_speeds_go_with_it_as_it_shrinks_and_are_none_of_a_spindle(sweeps: str, said: str) -> None:
    told = ask("before-the-lathe", sweeps=sweeps, speed="1500", balanced="920", balanced_for="340 mm", ceiling="440", ceiling_for="340 mm")
    assert row(told, "Speed")[0] == row(told, "Out of balance")[0] == said


def test_the_lists_neither_judge_nor_show_a_ceiling_of_another_size() -> None:
    plan = LATHE | {"speed": "400 rpm", "sweeps": "280 mm"}
    for id, line, name, size in (("C5", 6, "ceiling_for", "Ceiling"), ("C6", 5, "ceiling_for", "Ceiling"), ("C7", 4, "sand_for", "Ceiling, sanding")):
        there, elsewhere = screen(id, [], plan | {name: "280 mm"}), screen(id, [], plan | {name: "30 mm"})
        assert there["items"][line - 1]["gate"]["state"] == "no stop found" and elsewhere["items"][line - 1]["gate"]["state"] == "not checked"
        assert size in [total["label"] for total in there["totals"]] and size not in [total["label"] for total in elsewhere["totals"]]


def test_speeds_are_handed_on_with_the_size_they_were_found_for() -> None:
    disc = {"diameter": "340 mm", "condition": "solid", "balance": "done"}
    told = carried(ask("how-fast", **disc))
    assert told["ceiling_for"] == told["balanced_for"] == told["sweeps"] == "340 mm"
    assert carried(ask("how-fast", operation="sand", **disc))["sand_for"] == "340 mm"
    mount = carried(ask("will-the-mount-hold", hold="chuck", diameter="300 mm", tenon="120 mm", far_end="live"))
    assert ("ceiling" in mount) is ("ceiling_for" in mount)


#: As the mount question hands it on, of a faceplate.
PLATE = {"found": "tailstock", "found_hold": "faceplate", "found_across": "130 mm", "found_for": "340 mm"}


def test_a_verdict_does_not_outlive_its_mount() -> None:
    mounted = {"tailstock": "yes", "sweeps": "340 mm", "mount": "130 mm", "least": "80 mm", "sound": "yes"}
    assert row(ask("before-the-lathe", hold="faceplate", **mounted, **PLATE), "Mount")[0] == "No stop found"
    assert row(ask("before-the-lathe", hold="glue", **mounted, **PLATE), "Mount")[0] == "Not checked"
    piece = {"diameter": "340 mm", "condition": "solid", "balance": "done", "far_end": "live"}
    assert carried(ask("how-fast", hold="faceplate", **piece, **PLATE))["found"] == "tailstock"
    assert "found" not in carried(ask("how-fast", hold="glue", **piece, **PLATE))


def test_a_no_stays_with_its_mount_and_with_every_smaller_one_of_its_kind() -> None:
    weak = {"found": "no", "found_hold": "glue", "found_across": "120 mm", "sound": "yes", "least": "110 mm", "tailstock": "yes"}
    said = {size: row(ask("before-the-lathe", hold="glue", mount=size, **weak), "Mount")[0] for size in ("120 mm", "115 mm", "140 mm")}
    assert said == {"120 mm": "STOP", "115 mm": "STOP", "140 mm": "No stop found"}
    piece = {"diameter": "340 mm", "condition": "solid", "balance": "done", "found": "no", "found_hold": "glue"}
    assert ask("how-fast", hold="glue", **piece)["headline"]["text"] == "Mend the mount first"
    assert ask("how-fast", hold="faceplate", **piece)["values"]["speed"]["si"]


def test_that_it_holds_is_not_said_of_a_smaller_mount() -> None:
    alone = {"hold": "glue", "tailstock": "no", "found": "alone", "found_hold": "glue", "found_across": "175 mm", "found_for": "340 mm", "sweeps": "340 mm"}
    assert row(ask("before-the-lathe", mount="175 mm", **alone), "Tailstock")[0] == "No stop found"
    assert row(ask("before-the-lathe", mount="120 mm", **alone), "Tailstock")[0] == "STOP"


def test_the_mount_hands_on_which_one_it_was_and_how_fast_passes_it_along() -> None:
    asked = ask("will-the-mount-hold", hold="glue", diameter="340 mm", thickness="70 mm", block="120 mm")
    speed = carried(asked, "how-fast")
    assert (speed["found"], speed["found_hold"], speed["found_across"]) == ("no", "glue", "120 mm")
    along = carried(ask("how-fast", condition="filled", **speed))
    assert (along["found"], along["found_hold"], along["found_across"], along["mount"]) == ("no", "glue", "120 mm", "120 mm")


def test_what_nobody_said_of_the_mount_while_sanding_is_not_laid_over_it() -> None:
    sanded = {"grit_p": "p180", "diameter": "340 mm"}
    assert "hold" not in carried(ask("which-grit-next", **sanded), "how-fast")
    assert carried(ask("which-grit-next", hold="faceplate", **sanded), "how-fast")["hold"] == "faceplate"


#: A disc that clears the bed and not the banjo, which is told to stand beyond its face; and one too thick for a rest to reach back.
DISC = {"form": "round", "across": "340 mm", "swing": "400 mm", "banjo": "320 mm", "lathe": "floor"}


def test_the_swing_that_counts_is_the_one_of_the_set_up_that_was_told() -> None:
    told = carried(ask("does-it-fit-the-lathe", along="70 mm", **DISC))
    assert (told["swing"], told["banjo"]) == ("400 mm", "beyond")
    said, text = row(ask("before-the-lathe", **told), "Swing")
    assert said == "No stop found" and "asks for 350 mm" in text and "beyond its face" in text
    far = carried(ask("does-it-fit-the-lathe", along="300 mm", **DISC))
    assert (far["swing"], far["banjo"]) == ("320 mm", "under")
    assert row(ask("before-the-lathe", **far), "Swing")[0] == "STOP"


def test_no_least_size_is_told_or_handed_on_that_the_field_would_ask_about() -> None:
    screwed = ask("will-the-mount-hold", hold="faceplate", diameter="340 mm", thickness="70 mm", circle="130 mm", screws="6", far_end="live")
    assert screwed["lines"][0]["text"] == "30" and carried(screwed)["least"] == "30 mm"
    assert not desk.answer("before-the-lathe", carried(screwed) | {"sound": "yes"}, "imperial")["queries"]
    assert "9999" not in str(screwed["limits"][0])


def test_all_that_is_wrong_with_a_mount_is_told_at_once() -> None:
    """A vase on a tenon: it neither bears enough nor stands close enough, and with the tailstock up less would do."""
    vase = ask("will-the-mount-hold", hold="chuck", diameter="120 mm", thickness="200 mm", tenon="50 mm")
    assert {"X5", "size"} <= {caution["id"] for caution in vase["cautions"]}
    told = {line["label"]: f"{line['text']} {line['unit']}" for line in vase["lines"]}
    assert told["With the tailstock up"] == carried(vase)["least"] != told["Least tenon"]


def test_what_a_mount_holds_up_to_lowers_and_never_lifts_the_limit_of_the_rim() -> None:
    piece = {"diameter": "340 mm", "balance": "done", "hold": "glue", "far_end": "live", "lathe": "floor"}
    held = {"found": "tailstock", "found_hold": "glue", "found_across": "175 mm", "found_for": "340 mm"}
    for condition in ("solid", "loose"):
        free = ask("how-fast", condition=condition, **piece)["values"]["speed"]["si"]
        high = ask("how-fast", condition=condition, found_rpm="5000 rpm", **piece, **held)["values"]["speed"]["si"]
        low = ask("how-fast", condition=condition, found_rpm="100 rpm", **piece, **held)["values"]["speed"]["si"]
        assert free == high > low == 100
    other = ask("how-fast", condition="solid", found_rpm="100 rpm", **(piece | held | {"hold": "faceplate"}))["values"]["speed"]["si"]
    assert other and other > 100, "another mount's speed is none of this one's"


def test_the_dial_stands_at_the_lathe_s_lowest_at_first_power_where_that_is_known() -> None:
    plan = LATHE | {"speed": "100 rpm"}
    assert screen("C5", [], plan)["items"][5]["gate"]["state"] == "no stop found"
    gate = screen("C5", [], plan | {"lowest": "60 rpm"})["items"][5]["gate"]
    assert gate["state"] == "stop" and "60 rpm, for the first power" in gate["action"]
    assert screen("C5", [], plan | {"lowest": "100 rpm"})["items"][5]["gate"]["state"] == "no stop found"
    assert screen("C6", [], plan | {"lowest": "60 rpm"})["items"][4]["gate"]["state"] == "no stop found", "under way it may be higher"
    assert row(ask("before-the-lathe", **(plan | {"lowest": "60 rpm"})), "Speed")[0] == "No stop found"
    belts = ask("how-fast", diameter="100", condition="solid", balance="done", lathe="floor", speeds="steps", steps="500 900 1400")
    assert carried(belts)["lowest"] == "500 rpm"


def test_after_a_catch_a_mount_that_was_found_not_to_hold_stops() -> None:
    weak = {"found": "no", "found_hold": "glue", "found_across": "100 mm"}
    line = screen("C6", [], LATHE | weak)["items"][1]
    assert line["gate"]["state"] == "stop" and not [button for button in line["buttons"] if button["event"]["type"] == "tick"]
    assert screen("C6", [], LATHE)["items"][1]["gate"]["state"] == "no stop found" and screen("C6", [], {})["items"][1]["gate"] is None


def test_a_speed_for_sanding_counts_for_the_piece_it_was_asked_of() -> None:
    spindle = {"grit_p": "p180", "piece": "150 rpm", "piece_for": "30 mm"}
    here, wider = ask("which-grit-next", diameter="30 mm", **spindle), ask("which-grit-next", diameter="340 mm", **spindle)
    assert carried(here)["sand_ceiling"] == "150 rpm" and "sand_ceiling" not in carried(wider)
    assert "How fast?" in wider["headline"]["say"] and wider["values"]["speed"]["si"] == 150, "past it the wider one is too fast as well"
    assert ask("which-grit-next", diameter="30 mm", **(spindle | {"piece_for": "340 mm"}))["values"]["speed"]["si"] > 150
    told = carried(ask("how-fast", operation="sand", diameter="340 mm", condition="solid", balance="done"), "which-grit-next")
    assert told["piece_for"] == told["diameter"]


def test_turned_round_the_ring_left_bare_takes_the_block_that_is_asked_for() -> None:
    reply = ask("will-the-mount-hold", asked="turned", hold="glue", diameter="340 mm", thickness="70 mm", block="120 mm")
    (wanted,) = {line["text"] for line in reply["lines"] if line["text"].startswith("No: make it ")} or {""}
    bare = next(line for line in reply["lines"] if line["label"] == "Leave bare")
    least = ask("will-the-mount-hold", hold="glue", diameter="340 mm", thickness="70 mm", block="120 mm")["lines"][0]
    assert float(bare["text"]) == float(least["text"]) + 20 and wanted in ("", f"No: make it {least['text']} mm")


def test_how_fast_asks_for_the_mount_s_verdict_until_it_is_in() -> None:
    piece = {"diameter": "340 mm", "condition": "solid", "balance": "done", "far_end": "live"}
    told = {hold: "X5" in [caution["id"] for caution in ask("how-fast", hold=hold, **piece, **PLATE)["cautions"]] for hold in ("faceplate", "glue")}
    assert told == {"faceplate": False, "glue": True}, "another mount is to be asked anew"


def test_a_centre_that_is_moved_makes_it_sweep_wider_and_that_is_told() -> None:
    """The far side of a round stands out by so much more: 340 + 2 x 8.0, with 300 (3265 / 6200 - 1 / 2) = 8.0 mm."""
    scale = {"way": "scale", "sweep": "340 mm", "mass": "6200 g", "apart": "300 mm", "at_3": "3265 g", "at_12": "3100 g"}
    headline = ask("where-is-the-weight", **scale)["headline"]
    assert headline["text"] == "8" and "It then sweeps up to 356 mm" in headline["say"]
