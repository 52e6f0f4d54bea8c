"""Pot or vacuum? What the maker reads, case by case."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk
from calc.casting.cure.working import pour_within

POT = {"pot_across": "250", "pot_height": "300", "mould_across": "150", "mould_height": "120", "pressure": "3"}
READ = {"rated": "4", "relief": "4", "hose": "10", "gauge_scale": "7"}
VACUUM = {"method": "vacuum", "batch": "500", "bucket": "2", "deepest": "99", "chamber": "yes"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("pot-or-vacuum", confirmed, units, confirmed)


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


def lines(reply: dict[str, Any]) -> dict[str, str]:
    return {line["label"]: f"{line['text']} {line['unit']}".strip() for line in reply["lines"]}


def test_a_pot_that_nobody_read_is_not_checked() -> None:
    reply = ask(**POT)
    assert reply["headline"]["text"] == "Not checked" and reply["headline"]["tone"] == "caution"
    assert reply["headline"]["say"].startswith("Read the pot's plate and the relief valve")
    assert all(limit["text"] == "not checked" and not limit["rules"] for limit in reply["limits"])


@pytest.mark.parametrize("missing", list(READ))
def test_one_marking_missing_is_never_a_pass(missing: str) -> None:
    reply = ask(**POT, **{**READ, missing: ""})
    assert "not checked" in reply["headline"]["text"].lower() and reply["headline"]["tone"] == "caution"


def test_all_read_is_the_makers_call() -> None:
    reply = ask(**POT, **READ)
    assert reply["headline"]["text"] == "No stop found - your call" and reply["headline"]["tone"] == "go"
    assert [limit["id"] for limit in reply["limits"] if limit["rules"]] == ["rated"]
    assert {"energy", "opening", "as-sold"} <= cautions(reply)


@pytest.mark.parametrize("part", list(READ))
def test_the_weakest_marking_decides(part: str) -> None:
    """Whichever is lowest: the remedy is under its figure, and no bubble is promised for a pressure that may not be used."""
    reply = ask(**POT, **{**READ, part: "2.5", "relief": "2.5"})
    under = "2.4" if part == "gauge_scale" else "2.3"  # 2.5 % of a 2.5 bar scale is 0.06 bar, of a 7 bar scale 0.18
    assert (reply["headline"]["text"], reply["headline"]["unit"]) == (under, "bar")
    assert reply["headline"]["tone"] == "stop" and "Bubbles are left at" not in lines(reply)


@pytest.mark.parametrize(
    ("markings", "text"),
    [
        ({"rated": "5.5"}, "5.3"),  # 5.5 less 2.5 % of the 6 bar planned
        ({"rated": "5.5", "relief": "5"}, "4.8"),  # 5 less 0.15: the valve stays shut
        ({"rated": "5.5", "relief": "5", "gauge_error": "0"}, "4.9"),  # no error known, still under it
        ({"rated": "5.5", "gauge_scale": "25"}, "4.8"),  # 5.5 less 0.625
        ({"rated": "5.5", "gauge_scale": "250"}, "A finer gauge"),  # off by 6.25
    ],
)
def test_the_pressure_to_set_is_under_the_lowest_marking(markings: dict[str, str], text: str) -> None:
    reply = ask(**{**POT, "pressure": "6"}, **markings)
    assert reply["headline"]["text"] == text and reply["headline"]["tone"] == "stop"
    assert ("a little under the lowest marking" in reply["headline"]["say"]) == (text != "A finer gauge")


def test_more_pressure_is_offered_only_up_to_the_setting() -> None:
    first = ask(**POT, **READ)["changes"][0]
    assert first["do"] == "At 3.8 bar, a little under the lowest marking"  # 4 less 2.5 % of 7


@pytest.mark.parametrize(("depth", "told"), [("", True), ("68", True), ("5", False)])
def test_a_pot_does_not_cool_the_resin(depth: str, told: bool) -> None:
    assert ("heat" in cautions(ask(**POT, depth=depth))) == told


@pytest.mark.parametrize(("planned", "tone"), [("4", "go"), ("4.01", "stop")])
def test_equal_to_the_marking_is_not_past_it(planned: str, tone: str) -> None:
    reply = ask(**{**POT, "pressure": planned}, **READ)
    assert reply["headline"]["tone"] == tone
    if tone == "go":
        assert "gauge" in cautions(reply)  # 2.5 % of a 7 bar scale is 0.2 bar


def test_a_relief_valve_above_the_plate_leads() -> None:
    reply = ask(**{**POT, "pressure": "5"}, **{**READ, "relief": "5"})
    assert reply["headline"]["text"] == "Not as it is" and "fitted by the pot's maker" in reply["headline"]["say"]
    assert len(reply["changes"]) == reply["values"]["stops"]["si"] == 2


@pytest.mark.parametrize(("across", "stops"), [("240", 0), ("240.1", 1)])
def test_a_round_mould_and_the_room_beside_it(across: str, stops: int) -> None:
    reply = ask(**{**POT, "mould_across": across})  # 250 less twice 5
    assert reply["values"]["stops"]["si"] == stops
    if stops:
        assert (reply["headline"]["label"], reply["headline"]["text"]) == ("Mould across, at most", "240")


def test_a_square_mould_counts_corner_to_corner() -> None:
    square = {**POT, "shape": "square", "mould_across": ""}
    assert ask(**square, mould_length="169", mould_width="169")["values"]["stops"]["si"] == 0  # 239.0
    reply = ask(**square, mould_length="200", mould_width="180")
    assert reply["headline"]["text"] == "169" and "corner to corner" in reply["headline"]["say"]


@pytest.mark.parametrize(("height", "stops"), [("275", 0), ("276", 1)])
def test_height_with_the_room_above(height: str, stops: int) -> None:
    reply = ask(**{**POT, "mould_height": height})  # 300 less 25
    assert reply["values"]["stops"]["si"] == stops


def test_a_board_that_is_too_much_leads_with_leaving_it_out() -> None:
    reply = ask(**{**POT, "mould_height": "270"}, base="18")
    assert reply["headline"]["text"] == "Without the board" and "5 mm" in reply["headline"]["say"]


def test_a_tray_that_is_too_wide_leads_with_leaving_it_out() -> None:
    assert ask(**POT, tray="245")["headline"]["text"] == "Without the tray"
    assert ask(**POT, tray="145")["errors"][0]["code"] == "tray-small"


def test_a_pot_too_small_for_anything() -> None:
    reply = ask(**{**POT, "pot_across": "50", "mould_across": "20"}, gap_side="30")
    assert reply["headline"]["text"] == "A larger pot"


def test_unread_markings_are_told_beside_another_stop() -> None:
    assert "unread" in cautions(ask(**{**POT, "mould_across": "245"}))


def test_the_level_falls_and_is_marked() -> None:
    reply = ask(**POT, depth="100")  # 100 / (1 - 0.02 (1 - 101.325 / 401.325)) = 101.5
    assert reply["values"]["fill"]["si"] == pytest.approx(0.10152, abs=0.00001)
    assert lines(reply)["Fill to"] == "102 mm"


def test_a_mould_without_room_for_the_level() -> None:
    assert "wall" in cautions(ask(**POT, depth="119"))
    assert ask(**POT, depth="121")["errors"][0]["code"] == "deeper-than-mould"


def test_how_long_the_pressure_stays_on() -> None:
    assert lines(ask(**POT))["Keep the pressure on"] == "until it is hard"
    read = {"pressure": "40 psi", "rated": "60 psi", "relief": "50 psi", "hose": "150 psi", "gauge_scale": "60 psi"}
    offered = [change["do"] for change in ask(**POT | read)["changes"]]
    assert any("a little under the lowest marking" in do for do in offered)
    unread = {name: text for name, text in read.items() if name not in ("hose", "gauge_scale")}
    bare = {name: text for name, text in POT.items() if name not in read}
    assert not any("a little under the lowest marking" in change["do"] for change in ask(**bare | unread)["changes"])
    assert lines(ask(**POT, demould="24"))["Keep the pressure on for"] == "24 h"


def test_the_working_time_counts_in_the_pot() -> None:
    assert lines(ask(**POT, working="40"))["Lid on and pressure up within"] == "24 min"
    assert lines(ask(**POT))["Lid on and pressure up within"] == "60 %"


def test_psi_and_bar_are_the_same_pot() -> None:
    metric = ask(**{**POT, "pressure": "40 psi"})
    imperial = desk.answer(
        "pot-or-vacuum", {name: {"typed": text, "units": "metric"} for name, text in {**POT, "pressure": "40 psi"}.items()}, "imperial"
    )
    assert metric["values"]["bubble"] == imperial["values"]["bubble"]
    assert metric["values"]["bubble"]["shown"] == "65 %"  # 0.645, up


def test_how_much_resin_under_vacuum_at_a_time() -> None:
    reply = ask(**VACUUM)  # 2 L, a quarter, 1.10 g/mL
    assert (reply["headline"]["text"], reply["headline"]["unit"], reply["headline"]["tone"]) == ("550", "g", "go")
    more = ask(**{**VACUUM, "batch": "900"})
    assert more["headline"]["tone"] == "caution" and lines(more)["Goes it takes"] == "2 of 450 g"
    assert {"do": "A bucket of 3.28 L", "then": "all in one go"} in more["changes"]  # 900 / 1.1 / 0.25


@pytest.mark.parametrize(("batch", "goes"), [("550", 1), ("551", 2)])
def test_a_bucket_just_full_enough(batch: str, goes: int) -> None:
    assert ask(**{**VACUUM, "batch": batch})["values"]["goes"]["si"] == goes


@pytest.mark.parametrize(
    ("deepest", "tone", "says"),
    [("29 inHg", "go", ""), ("28.9 inHg", "caution", "just short"), ("28 inHg", "caution", "just short"), ("27.9 inHg", "stop", "only swell")],
)
def test_how_deep_the_vacuum_has_to_be(deepest: str, tone: str, says: str) -> None:
    reply = ask(**{**VACUUM, "deepest": deepest})
    assert reply["headline"]["tone"] == tone and says in reply["headline"]["say"]


def test_a_high_shop_needs_less_on_the_gauge() -> None:
    """1600 m: the air has 83.5 kPa, and 80.4 leaves what 29 leaves at the sea."""
    reply = ask(**{**VACUUM, "deepest": "24 inHg", "altitude": "1600 m"})
    assert reply["headline"]["tone"] == "go"
    assert lines(reply)["Bubbles break from"] == "81 kPa"  # 83.5 less 3.1
    assert ask(**{**VACUUM, "deepest": "24 inHg"})["headline"]["tone"] == "stop"


def test_more_vacuum_than_there_is_air() -> None:
    error = ask(**{**VACUUM, "deepest": "29 inHg", "altitude": "1600 m"})["errors"][0]
    assert error["code"] == "deeper-than-air" and "83 kPa" in error["message"]


def test_a_dial_at_its_end_promises_no_figure() -> None:
    assert ask(**{**VACUUM, "deepest": "101.3"})["values"]["growth"]["shown"] == "over 100 times"


@pytest.mark.parametrize(("chamber", "text", "tone"), [("no", "Not in this one", "stop"), ("unknown", "Not checked", "caution")])
def test_the_chamber(chamber: str, text: str, tone: str) -> None:
    reply = ask(**{**VACUUM, "chamber": chamber})
    assert (reply["headline"]["text"], reply["headline"]["tone"]) == (text, tone)


def test_the_pump_takes_working_time() -> None:
    reply = ask(**VACUUM, working="40", pump="8")
    usable = pour_within(40 * 60, 0.9, 1100.0) / 60  # less than 60 % of 40 min: 900 g in one bucket
    assert lines(reply)["Left to mix and pour"] == f"{usable - 8:.0f} min" and usable < 24
    long = ask(**VACUUM, working="40", pump="8", hands=f"{usable - 7:.0f}")
    assert f"mixing and pouring take more than the {usable:.0f} min" in next(one["text"] for one in long["cautions"] if one["id"] == "time")
    assert "time" not in cautions(ask(**VACUUM, working="40", pump="8", hands=f"{usable - 8:.0f}"))
    late = ask(**VACUUM, working="10", pump="8")
    assert lines(late)["Left to mix and pour"] == "0 min" and "time" in cautions(late)


def test_full_vacuum_on_the_lid() -> None:
    assert lines(ask(**VACUUM, chamber_across="300"))["The lid is pressed in with"] == "740 kg"  # 7.16 kN
