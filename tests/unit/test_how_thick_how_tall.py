"""How thick, how tall? What the maker reads, case by case."""

from __future__ import annotations

import math
import re
from typing import Any

import pytest

from calc import desk

DISC = {"thickness": "45", "across": "300"}
STACK = {"ask": "stack", "heights": "40 120 25"}
HOOP = {"ask": "hoop", "inside": "300"}
WALL = {"ask": "push", "wall": "600", "fill": "60"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("how-thick-how-tall", confirmed, units, confirmed)


def lines(reply: dict[str, Any]) -> dict[str, str]:
    return {line["label"]: f"{line['text']} {line['unit']}".strip() for line in reply["lines"]}


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


def code(reply: dict[str, Any]) -> tuple[str, str]:
    assert reply["headline"] is None and reply["errors"][0]["message"]
    return reply["errors"][0]["field"], reply["errors"][0]["code"]


# --- a panel or a disc ------------------------------------------------------------------------------


def test_a_disc_with_wood_right_through() -> None:
    """45 + 3 + 2 off, 0.312 m x 4 mm/m of warp, 1 mm bow: 52.25, which falls by 3 % and is 0.16 mm out of level."""
    reply = ask(**DISC)
    assert reply["values"]["depth"]["si"] == pytest.approx(0.05225 / 0.97 + 0.000156, abs=0.00001)
    assert (reply["headline"]["text"], reply["headline"]["tone"]) == ("55", "go")
    assert reply["headline"]["say"] == "Take a slab of 53 mm or thicker and make the mould 312 mm across inside."
    assert reply["grids"][0]["rows"][-1][1] == "54 mm"


def test_a_slab_too_thin_leads_with_the_slab_that_would_do() -> None:
    reply = ask(**DISC, slab="48")
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["say"].startswith("Take a slab of 53 mm or thicker, or finish at 40 mm.")
    assert ask(**{**DISC, "thickness": "40"}, slab="48")["headline"]["tone"] == "go"  # 47.25


def test_a_slab_with_nothing_left_offers_no_thickness() -> None:
    assert "or finish" not in ask(**DISC, slab="6")["headline"]["say"]


def test_a_plan_too_shallow_leads_with_how_much_deeper() -> None:
    reply = ask(**DISC, depth="49")
    assert reply["headline"]["say"].startswith("Pour 6 mm deeper, 55 mm in all. 49 mm would leave only 40 mm at the thinnest")
    assert ask(**DISC, depth="54")["headline"]["tone"] == "go"  # 54.02 are needed: less than a tape shows
    assert lines(ask(**DISC, depth="60"))["Left at the thinnest"] == "50 mm"
    assert "nothing at the thinnest" in ask(**DISC, depth="5")["headline"]["say"]


def test_wood_that_stands_out_of_the_resin_is_said() -> None:
    assert lines(ask(**DISC, slab="60"))["Wood stands out of the resin by"] == "5 mm"


def test_wood_under_resin() -> None:
    """20 + 2 off below - 1 bow - 3 cover: 18 mm of wood at most."""
    thin = {"thickness": "20", "across": "200", "wood": "under"}
    assert lines(ask(**thin))["Wood, at most"] == "18 mm"
    fits = ask(**thin, slab="17")
    assert fits["headline"]["tone"] == "go" and lines(fits)["Resin over the wood, where it is least"] == "4 mm"
    stop = ask(**thin, slab="19")
    assert stop["headline"]["say"].startswith("Plane the wood to 18 mm or thinner, or finish at 21 mm") and "leave only 2 mm" in stop["headline"]["say"]
    assert "would be cut into" in ask(**thin, slab="25")["headline"]["say"]


def test_resin_on_one_side_warps_more_than_resin_on_both() -> None:
    common = {"thickness": "40", "across": "600", "slab": "20"}
    one, both = ask(**common, wood="under"), ask(**common, wood="inside")
    assert one["values"]["depth"]["si"] > both["values"]["depth"]["si"]
    assert any("below the wood as above" in change["do"] for change in one["changes"])
    assert ask(**common, wood="under", warp="0")["values"]["depth"]["si"] < both["values"]["depth"]["si"]


def test_wood_inside_is_held_off_the_floor() -> None:
    """3 under it, 2 off below, 912 mm x 4 mm/m of warp: 8.65 mm."""
    reply = ask(form="panel", thickness="40", length="900", width="400", wood="inside", slab="20")
    assert "hold it" not in reply["headline"]["say"] and reply["headline"]["say"].startswith("Hold it 9 mm off the floor and make the mould 912 × 412 mm")
    assert "floats" in cautions(reply)


def test_no_room_for_wood() -> None:
    reply = ask(thickness="4", across="200", wood="inside", cover="1.5", cover_under="1.5")
    assert reply["headline"]["label"] == "Finish it thicker than" and reply["values"]["most_wood"]["si"] == 0
    assert code(ask(thickness="4", across="200", wood="under", cover="4")) == ("cover", "all-cover")


def test_bow_shows_where_it_is_more_than_is_cut_away() -> None:
    assert "bow-shows" in cautions(ask(**DISC, wood="under", bow="4"))
    assert "bow-shows" not in cautions(ask(**DISC, wood="under", bow="2"))
    assert code(ask(**DISC, slab="20", bow="20")) == ("bow", "all-bow")


def test_clear_resin_asks_for_no_wood() -> None:
    reply = ask(**DISC, wood="none")
    assert reply["headline"]["say"] == "Make the mould 312 mm across inside." and "slab" not in reply["values"]


def test_a_mould_levelled_by_eye_is_poured_deeper() -> None:
    wide = {"thickness": "40", "across": "800", "wood": "none"}
    assert ask(**wide, levelled="eye")["values"]["depth"]["si"] - ask(**wide)["values"]["depth"]["si"] == pytest.approx(0.812 * 0.004 / 2)
    assert any("spirit level" in change["do"] for change in ask(**wide, levelled="eye")["changes"])


def test_the_band_has_more_and_less_warp() -> None:
    band = ask(**DISC)["band"]
    assert float(band["low"].split()[0]) < 45 < float(band["high"].split()[0])


def test_the_depth_goes_on_to_the_wood_and_to_the_layers() -> None:
    """Not to the gates of one layer: how deep that is, How deep and how hot? tells."""
    carried = {carry["to"]: carry["inputs"] for carry in ask(**DISC, wood="inside", slab="20")["carries"]}
    assert "before-a-pour" not in carried
    assert carried["how-much-wood"]["fill"] == carried["how-deep-how-hot"]["depth"] and carried["how-much-wood"]["raised"].endswith("mm")
    assert carried["is-it-enough"] == {
        "shape": "round", "across": "312 mm", "depth": carried["how-deep-how-hot"]["depth"], "wood_height": "26 mm"  # 3 + 2 and 1.2 of warp under it
    }  # fmt: skip
    assert carried["does-it-fit-the-lathe"] == {"form": "round", "along": carried["how-deep-how-hot"]["depth"], "across": "312 mm"}
    panel = ask(form="panel", thickness="40", length="900", width="400", wood="none")["carries"]
    assert [carry["to"] for carry in panel] == ["is-it-enough", "how-deep-how-hot"]
    assert panel[0]["inputs"] == {"shape": "box", "length": "912 mm", "width": "412 mm", "depth": panel[1]["inputs"]["depth"], "wood_by": "none"}


def test_the_mould_goes_on_to_its_layers_and_a_stop_keeps_what_still_holds() -> None:
    carried = {carry["to"]: carry["inputs"] for carry in ask(**DISC, wood="inside", slab="20")["carries"]}
    assert carried["how-deep-how-hot"] == {
        "shape": "round", "depth": carried["is-it-enough"]["depth"], "across": "312 mm", "lies": "parts"
    }  # fmt: skip
    assert carried["how-much-wood"]["height"] == "20 mm"
    for to, more in (("how-deep-how-hot", {"deepest": "50", "room": "20", "detail": "depths"}), ("how-much-wood", {"rise": "1250"})):
        taken = desk.answer(to, carried[to] | more, "metric", {})
        assert not taken["errors"] and not taken["queries"] and not taken["unasked"]
    deeper = {carry["to"]: carry["inputs"] for carry in ask(**DISC, depth="90")["carries"]}
    assert deeper["how-deep-how-hot"]["depth"] == deeper["is-it-enough"]["depth"] == "90 mm", "what is poured, not the least that would do"
    stop = {carry["to"]: carry["inputs"] for carry in ask(**DISC, slab="40")["carries"]}
    assert set(stop) == {"is-it-enough", "how-deep-how-hot", "how-much-wood"} and "height" not in stop["how-much-wood"]
    assert not ask(thickness="5", across="300", wood="inside", cover="2", cover_under="2")["carries"], "no room for wood, so no depth"


@pytest.mark.parametrize("wood", ["under", "through"])
def test_wood_with_nothing_to_spare_is_no_stop_in_the_other_units(wood: str) -> None:
    sizes = {"thickness": "45 mm", "across": "300 mm", "wood": wood}
    limit = ask(**sizes)["values"]["most_wood" if wood == "under" else "slab"]["si"]
    for units in ("metric", "imperial"):
        reply = ask(units, **sizes, slab=f"{1000 * limit:.3f} mm")
        assert reply["headline"]["tone"] == "caution" and "Nothing to spare: the wood at" in reply["headline"]["say"], units
        thin, thick = (ask(units, **sizes, slab=f"{1000 * limit + off:.3f} mm")["headline"]["tone"] for off in (-3, 3))
        assert [thin, thick] == (["go", "stop"] if wood == "under" else ["stop", "go"])


def test_a_plan_as_deep_as_it_has_to_be_is_no_stop_in_the_other_units() -> None:
    sizes = {"thickness": "45 mm", "across": "300 mm"}
    depth = ask(**sizes)["values"]["depth"]["si"]
    for units in ("metric", "imperial"):
        assert ask(units, **sizes, depth=f"{1000 * depth:.3f} mm")["headline"]["tone"] == "go", units
        assert ask(units, **sizes, depth=f"{1000 * depth - 3:.3f} mm")["headline"]["tone"] == "stop"


def test_the_core_is_drawn_and_told() -> None:
    (drawing,) = ask(**DISC)["drawings"]
    assert {mark["look"] for mark in drawing["marks"]} >= {"resin", "wood", "void", "level", "limit", "mould"}
    assert "finished, 45 mm" in drawing["says"] and "poured to 55 mm" in drawing["says"]


def test_inches_read_as_sixteenths() -> None:
    reply = ask("imperial", thickness="1 3/4", across="12")
    assert reply["headline"]["unit"] == "in" and reply["headline"]["text"] == "2 1/8"  # 2.059 cured by hand: 2.123 to pour


# --- stacked parts -----------------------------------------------------------------------------------


def test_three_parts_and_their_dowels() -> None:
    reply = ask(**STACK)
    assert [carry["to"] for carry in reply["carries"]] == ["will-it-stand"]
    assert (reply["headline"]["text"], reply["headline"]["tone"]) == ("43, 123, 28", "go")
    assert reply["headline"]["say"] == "Faced, the stack stands 185 mm. 2 dowels of 28 mm."
    assert lines(reply)["Left at the thinnest"] == "10 mm"  # the top part: 25 less one socket of 15


def test_a_height_wanted_that_the_parts_do_not_make() -> None:
    assert ask(**STACK, total="190")["headline"]["say"].startswith("For 190 mm in all, ask again with 5 mm more in the finished heights")
    assert ask(**STACK, total="180")["headline"]["say"].startswith("For 180 mm in all, ask again with 5 mm less in the finished heights")
    assert ask(**STACK, total="185")["headline"]["tone"] == "go"


@pytest.mark.parametrize(("socket", "tone"), [("19", "go"), ("19.5", "stop")])
def test_a_socket_that_leaves_too_little(socket: str, tone: str) -> None:
    assert ask(**STACK, socket=socket)["headline"]["tone"] == tone  # 25 - 19 = 6


def test_sockets_that_meet_lead_with_the_depth_that_does_not() -> None:
    reply = ask(ask="stack", heights="40 20 18")
    assert reply["headline"]["say"].startswith("Drill the sockets 7 mm deep, or make part 2 at least 36 mm high.") and "would meet" in reply["headline"]["say"]
    assert len(reply["changes"]) == 3
    assert "right through" in ask(ask="stack", heights="40 12 18", joint="tenon")["headline"]["say"]


def test_a_part_too_low_for_any_socket_leads_with_its_height() -> None:
    reply = ask(ask="stack", heights="40 12 18")
    assert reply["headline"]["label"] == "Part 2, at least" and reply["headline"]["text"] == "36"


def test_a_tenon_is_cast_on_and_flat_faces_need_none() -> None:
    assert ask(**STACK, joint="tenon")["headline"]["text"] == "57, 137, 28"
    flat = ask(**STACK, joint="flat")
    assert flat["headline"]["text"] == "43, 123, 28" and "dry-fit" not in cautions(flat)


def test_a_gap_as_deep_as_its_socket_is_an_error() -> None:
    assert code(ask(**STACK, socket="10", gap="10")) == ("gap", "all-gap")


def test_one_height_is_no_stack() -> None:
    assert code(ask(ask="stack", heights="40")) == ("heights", "too-few")


# --- the strip of a round mould ------------------------------------------------------------------------


def test_a_strip_and_how_round_it_stands() -> None:
    """pi x 301.5 + 40 = 987.2; narrowest 300 - 40 / 2 pi = 293.6, widest 303.6."""
    reply = ask(**HOOP)
    assert (reply["headline"]["text"], reply["headline"]["tone"]) == ("988", "go")
    assert lines(reply)["Largest true round in it"] == "293 mm" and reply["values"]["strip"]["si"] == pytest.approx(0.98719, abs=0.00001)


def test_what_was_measured_overrules_what_was_worked_out() -> None:
    reply = ask(**HOOP, narrow="298", wide="302")
    assert lines(reply)["Largest true round in it"] == "298 mm" and not reply["changes"]
    assert code(ask(**HOOP, narrow="305", wide="302")) == ("narrow", "narrow-wide")


def test_strips_too_short_become_several() -> None:
    reply = ask(**HOOP, stock="600")
    assert reply["headline"]["label"] == "Cut 2 strips to" and reply["headline"]["text"] == "514"  # (947.2 + 2 x 40) / 2
    assert code(ask(**HOOP, stock="80")) == ("stock", "short-stock")


def test_the_lap_holds_the_pull_of_the_resin() -> None:
    reply = ask(**HOOP, hoop_fill="60")  # 2.91 N
    assert lines(reply)["Pull on the lap"] == "0.30 kg" and lines(reply)["Strip is wide, at least"] == "70 mm"
    assert any(step["result"] == "64.7 kPa" for step in reply["working"])
    assert not any("Stress" in step["title"] for step in ask(**HOOP, hoop_fill="60", strip="20")["working"])  # no thin ring


def test_a_hoop_goes_on_to_the_resin_it_wants() -> None:
    (carry,) = ask(**HOOP, hoop_fill="60")["carries"]
    assert carry["inputs"] == {"shape": "round", "across": "300 mm", "depth": "60 mm"}
    taken = desk.answer(carry["to"], carry["inputs"] | {"wood_by": "none"}, "metric")
    assert taken["headline"] and not ask(**HOOP)["carries"]


def test_a_strip_too_thick_for_its_ring() -> None:
    reply = ask(ask="hoop", inside="60", strip="3")
    assert "stiff" in cautions(reply) and reply["headline"]["tone"] == "caution"


def test_a_lap_that_goes_half_round_is_a_slip() -> None:
    assert code(ask(ask="hoop", inside="60", lap="100")) == ("lap", "all-lap")


# --- the push -----------------------------------------------------------------------------------------------


def test_water_stands_higher_than_the_resin_will() -> None:
    reply = ask(**WALL)  # 60 x 1100 / 998.2 = 66.1
    assert (reply["headline"]["text"], reply["headline"]["tone"]) == ("67", "go")
    assert lines(reply)["Push on the longest wall"] == "1.2 kg"  # 11.65 N
    assert "Before the wood goes in" in reply["headline"]["say"] and "wood-in" in cautions(reply)


def test_half_as_deep_pushes_a_quarter() -> None:
    reply = ask(**{**WALL, "fill": "100", "density": "1.09"})
    assert reply["changes"][0]["then"].startswith("0.82 kg instead of 3.3 kg")


def test_wood_in_the_mould_leads_with_taking_it_out() -> None:
    reply = ask(**WALL, wood_in="yes")
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["say"].startswith("Take the wood out before any water goes in.")


def test_walls_too_low_for_the_whole_test() -> None:
    reply = ask(**WALL, height="63")
    assert reply["headline"]["tone"] == "caution" and "95 % of the resin's push" in reply["headline"]["say"]  # 63 / 66.1
    assert code(ask(**WALL, height="59")) == ("fill", "over-wall")


def test_resin_lighter_than_water_is_tested_to_its_own_level() -> None:
    assert ask(**WALL, density="0.9")["values"]["water"]["si"] == pytest.approx(0.060)


def test_what_the_floor_carries() -> None:
    assert lines(ask(**WALL, wall_other="200"))["Floor and bench carry"] == "8.0 kg"  # 0.6 x 0.2 x 0.06 x 1100 = 7.92
    reply = ask(ask="push", mould="round", round_across="300", fill="60")
    assert lines(reply)["Floor and bench carry"] == "4.7 kg" and lines(reply)["Pull on the seam"] == "0.30 kg"


@pytest.mark.parametrize("asked", [DISC, STACK, HOOP, WALL])
@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_both_systems_read_whole(asked: dict[str, str], units: str) -> None:
    named = {name: f"{text} mm" if text[0].isdigit() and " " not in text else text for name, text in asked.items()}
    if "heights" in named:
        named["heights"] = "40 mm 120 mm 25 mm"
    reply = ask(units, **named)
    assert reply["headline"]["tone"] == "go" and reply["drawings"] and reply["headline"]["unit"] == ("mm" if units == "metric" else "in")


@pytest.mark.parametrize("thick", ["33", "36", "37", "38"])
def test_the_layers_come_to_what_is_poured_to_within_its_rounding_up(thick: str) -> None:
    reply = desk.answer("how-thick-how-tall", {"thickness": thick, "across": "300", "wood": "under"}, "metric")
    told = re.search(r"In all ([0-9.]+) mm, poured to ([0-9]+) mm", reply["drawings"][0]["says"])
    assert told and math.ceil(float(told[1])) == int(told[2])
