"""Is it enough? What the maker reads, case by case."""

from __future__ import annotations

import math
from typing import Any

import pytest

from calc import desk

ROUND = {"across": "300", "depth": "60", "wood_by": "none"}  # 4241.2 mL
HELD = {"across": "300", "depth": "60", "wood": "1200", "wood_way": "dip"}
CUP = {"shape": "cup", "floor_across": "100", "wood_by": "none"}
BURL = {
    "across": "13 3/4 in", "depth": "2 in", "wood": "2386.5", "wood_way": "weigh", "off": "1/32 in", "depth_off": "1", "level": "eye",
    "loss": "30", "density": "1.09", "density_off": "2",
}  # fmt: skip


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("is-it-enough", confirmed, units, confirmed)


def code(reply: dict[str, Any]) -> tuple[str, str]:
    assert reply["headline"] is None and len(reply["errors"]) == 1 and reply["errors"][0]["message"]
    return reply["errors"][0]["field"], reply["errors"][0]["code"]


def si(reply: dict[str, Any], name: str) -> Any:
    return reply["values"][name]["si"]


def line(reply: dict[str, Any], label: str) -> Any:
    return next(line for line in reply["lines"] if line["label"] == label)


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


# ---------------------------------------------------------------- how much, and is it there


@pytest.mark.parametrize("have", ["1.5 gal", "64 fl oz", "2 L"])
def test_a_volume_on_a_shelf_counted_by_weight_names_the_choice(have: str) -> None:
    (error,) = ask(**ROUND, have=have)["errors"]
    assert error["field"] == "have" and "Count resin by volume" in error["message"] and "'Resin is counted by'" in error["message"]
    other = ask(**ROUND | {"across": "300 g"})["errors"][0]
    assert other["code"] == "unit" and "is not a unit" in other["message"]


def test_kits_that_may_be_counted_twice() -> None:
    kits = {"kits": "3 kg", "kits_there": "2"}
    twice = ask(**ROUND, have="6000", **kits)
    assert "twice" in cautions(twice)
    assert "twice" not in cautions(ask(**ROUND, have="500", **kits)) and "twice" not in cautions(ask(**ROUND, **kits))


def test_a_mould_alone_asks_for_an_amount_rounded_up() -> None:
    reply = ask(**ROUND)
    assert si(reply, "mould") == pytest.approx(4241.2e-6, abs=0.1e-6)
    # loss 1.5 % of it, 63.6 mL; 1.10 g/mL
    assert si(reply, "likely") == pytest.approx(1.1 * 4.2412 * 1.015, rel=1e-3)
    assert reply["headline"]["label"] == "Have this much resin ready" and reply["headline"]["tone"] == "go"
    assert int(reply["headline"]["text"]) >= 1000 * si(reply, "wanted") > int(reply["headline"]["text"]) - 10
    assert reply["headline"]["say"].startswith("Enough 19 times in 20.")
    assert si(reply, "wanted_90") < si(reply, "wanted_95") == si(reply, "wanted") < si(reply, "wanted_99")


def test_burl_in_a_round_mould() -> None:
    reply = ask(**BURL, have="3000")
    # most likely 2788.1 g; the level by eye, 5 mm in a metre, is a little worse than 1/16 in across: u 270.9 g
    assert si(reply, "likely") == pytest.approx(2.7881, abs=0.001) and si(reply, "u") == pytest.approx(0.2709, abs=0.0005)
    assert si(reply, "wanted") == pytest.approx(3.2337, abs=0.002)
    assert si(reply, "odds") == pytest.approx(0.783, abs=0.002)
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["label"] == "Get this much more first"
    assert reply["headline"]["text"] == "240"  # 3234 - 3000, up to two figures
    assert reply["headline"]["say"] == "Then it is enough 19 times in 20. As it is, the odds are about 3 in 4."


def test_the_dip_saves_the_most_and_says_how_much() -> None:
    reply = ask(**BURL)
    assert reply["changes"][0]["do"] == "Dip the wood on a scale"
    # u of the wood 35.1 mL instead of 233.9: u_M 99.2 g, 2788 + 163 = 2952 g
    assert reply["changes"][0]["then"] == "2960 g would do, 280 g less"
    assert reply["grids"][0]["rows"][0][0] == "Wood"


def test_odds_lead_where_there_is_a_shelf() -> None:
    amounts = [ask(**HELD, have=have)["headline"] for have in ("2700 g", "3500 g", "3.8 kg")]
    assert [headline["tone"] for headline in amounts] == ["stop", "caution", "go"]
    assert amounts[2]["text"] == "99 in 100" and "spare" in amounts[2]["say"]
    assert "more makes it 19 times in 20" in amounts[1]["say"]
    assert "short" in amounts[0]["say"] and "under 1 in 100" in amounts[0]["say"]


def test_a_shortage_offers_other_ways() -> None:
    reply = ask(**ROUND, have="4500 g")
    # 4850 g wanted, 350 g missing: 318 mL over pi 150^2 mm2 is 4.5 mm
    dos = [change["do"] for change in reply["changes"]]
    assert dos[0] == "Fill 5 mm less deep" and dos[1].startswith("Set in 3") and dos[1].endswith("mL more wood")


def test_how_sure_is_a_choice() -> None:
    assert ask(**ROUND, sure="0.99")["headline"]["say"].startswith("Enough 99 times in 100.")
    assert ask(**HELD, have="3.6 kg", sure="0.9")["headline"]["tone"] == "go"


def test_wood_by_its_weight() -> None:
    reply = ask(across="300", depth="60", wood_by="weight", wood_mass="1240", wood_density="0.5196")
    assert si(reply, "in_one") == pytest.approx(4241.2e-6 - 0.98 * 2386.5e-6, rel=1e-4)
    burl = ask(across="300", depth="60", wood_by="weight", wood_mass="1240", wood_density="0.5196", kind="burl")
    assert si(burl, "u") > si(reply, "u")  # 15 % instead of 10 %


def test_what_how_much_wood_hands_over() -> None:
    reply = ask(across="300", depth="60", wood="1380 mL", wood_off="41 mL")
    same = ask(across="300", depth="60", wood="1380 mL", wood_way="dip")
    assert si(reply, "u") == pytest.approx(si(same, "u"), rel=0.01)  # 2 x 1.5 % of 1380 mL is 41 mL


def test_depths_read_all_round_overrule_the_one_and_the_level() -> None:
    reply = ask(**ROUND, depths="50.2 51.0 50.6 50.9")
    assert si(reply, "mould") == pytest.approx(math.pi * 0.15**2 * 0.050675, rel=1e-6)
    assert "Level" not in [row[0] for row in reply["grids"][0]["rows"]]
    assert any("degrees of freedom" in step["numbers"] for step in reply["working"])


def test_soak_in_seal_and_kind() -> None:
    whole = si(ask(**HELD), "in_one")
    for kind, share in (("plain", 0.02), ("burl", 0.05), ("spalted", 0.10)):
        assert si(ask(**HELD, kind=kind), "in_one") == pytest.approx(whole + (share - 0.02) * 1200e-6)
    assert si(ask(**HELD, sealed="yes"), "in_one") == pytest.approx(whole - 0.02 * 1200e-6)
    assert si(ask(**HELD, soak="8"), "in_one") == pytest.approx(whole + 0.06 * 1200e-6)
    assert "drinks" in {caution["id"] for caution in ask(**HELD, kind="spalted")["cautions"]}


# ---------------------------------------------------------------- moulds


@pytest.mark.parametrize(
    "inputs, millilitres",
    [
        ({"shape": "ring", "across": "250", "core": "150", "depth": "40"}, 1256.6),
        ({"shape": "box", "length": "24 in", "width": "8 1/2 in", "depth": "1 5/8 in"}, 5432.3),
        ({"shape": "cup", "floor_across": "100", "top_across": "120", "depth": "150"}, 1429.4),
        ({"shape": "tray", "floor_length": "380", "floor_width": "280", "top_length": "400", "top_width": "300", "depth": "50"}, 5656.7),
        ({"shape": "sides", "sides": "6", "size": "200", "depth": "50"}, 1732.1),
        ({"shape": "oval", "length": "320", "width": "220", "depth": "40"}, 2211.7),
        ({"shape": "corners", "corners": "0 0 180 10 240 90 200 170 90 200 -20 110", "depth": "35"}, 1316.0),
        ({"shape": "widths", "length": "600", "widths": "120 135 128 140 110", "depth": "45"}, 3568.5),
        ({"shape": "ball", "across": "300", "depth": "40"}, 687.0),
        ({"shape": "slot", "length": "500", "width": "180", "depth": "30"}, 2491.4),
        ({"shape": "trough", "across": "100", "length": "500", "depth": "50"}, 1963.5),
        ({"shape": "measured", "volume": "2 L"}, 2000.0),
    ],
)
def test_every_shape(inputs: dict[str, str], millilitres: float) -> None:
    reply = ask(**inputs, wood_by="none")
    assert si(reply, "mould") == pytest.approx(millilitres * 1e-6, abs=0.1e-6)
    assert bool(reply["drawings"]) == (inputs["shape"] != "measured")


def test_a_tapered_mould_filled_below_its_rim() -> None:
    # 100 mm at the floor, 120 mm at a rim 150 mm up: 110 mm at half its height
    reply = ask(shape="cup", floor_across="100", top_across="120", wall="150", depth="75", wood_by="none")
    assert si(reply, "mould") == pytest.approx(math.pi * 0.075 * (0.05**2 + 0.05 * 0.055 + 0.055**2) / 3)
    bowl = ask(shape="bowl", rim="200", wall="60", depth="30", wood_by="none")
    radius = (100**2 + 60**2) / 120 / 1000
    assert si(bowl, "mould") == pytest.approx(math.pi * 0.03**2 * (3 * radius - 0.03) / 3)


def test_more_parts_and_more_moulds_add_up() -> None:
    reply = ask(**ROUND, part2="box", part2_length="200", part2_width="100", part3="volume", part3_volume="150", count="3")
    assert si(reply, "mould") == pytest.approx(4241.15e-6 + 0.2 * 0.1 * 0.06 + 150e-6, rel=1e-5)
    assert si(reply, "in_these") == pytest.approx(3 * 1.1 * 1000 * si(reply, "mould"))
    assert "Further parts are not drawn." in reply["drawings"][0]["says"]


def test_how_many_of_several_moulds_the_shelf_fills() -> None:
    # each takes about 1250 g and 30 mL stay behind: three and a half of them
    reply = ask(across="180", depth="45", wood_by="none", count="4", have="4500")
    assert line(reply, "It fills")["text"] == "3 of the 4"
    assert line(ask(across="180", depth="45", wood_by="none", count="4", have="9000"), "It fills")["text"] == "4 of the 4"
    assert line(ask(across="180", depth="45", wood_by="none", count="4", have="600"), "It fills")["text"] == "0 of the 4"


def test_a_known_slope_moves_the_depth_in_the_middle() -> None:
    middle, low, high = (si(ask(**ROUND, level="known", tilt="2", read_at=at), "mould") for at in ("middle", "deep", "shallow"))
    area = math.pi * 0.15**2
    assert middle == pytest.approx(area * 0.060) and low == pytest.approx(area * 0.059) and high == pytest.approx(area * 0.061)


def test_a_floor_dry_at_one_end_is_a_stop_that_says_how_far_to_raise_it() -> None:
    reply = ask(across="300", depth="4", wood_by="none", level="known", tilt="10")
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["label"] == "Raise the low end by" and reply["headline"]["text"] == "10"
    # just covered: area times 5 mm; 389 g of 1.10 g/mL
    assert "389 g at least" in reply["headline"]["say"] and si(reply, "wanted") is None


def test_a_sagging_floor_takes_a_dish_more() -> None:
    assert si(ask(**ROUND, sag="3"), "mould") == pytest.approx(math.pi * 0.15**2 * (0.060 + 0.0015))
    assert code(ask(**{**ROUND, "depth": "5"}, sag="-15")) == ("sag", "bulge")


@pytest.mark.parametrize(
    "inputs, expected",
    [
        ({"across": "300", "depth": "60", "wood": "5000"}, ("wood", "bigger-than-mould")),
        ({"across": "300", "depth": "60", "wood_by": "weight", "wood_mass": "4 kg", "wood_density": "0.5"}, ("wood_mass", "bigger-than-mould")),
        ({**ROUND, "wall": "50"}, ("depth", "over-the-wall")),
        ({"shape": "ring", "across": "250", "core": "250", "depth": "40", "wood_by": "none"}, ("core", "core-too-wide")),
        ({"shape": "slot", "length": "100", "width": "180", "depth": "40", "wood_by": "none"}, ("width", "slot-too-wide")),
        ({"shape": "bowl", "rim": "200", "depth": "120", "wood_by": "none"}, ("depth", "bowl-too-deep")),
        ({"shape": "ball", "across": "80", "depth": "90", "wood_by": "none"}, ("depth", "over-the-top")),
        ({"shape": "sides", "sides": "5", "size": "200", "depth": "40", "wood_by": "none"}, ("side_by", "odd-flats")),
        ({"shape": "sides", "sides": "5.5", "size": "200", "depth": "40", "wood_by": "none"}, ("sides", "not-whole")),
        ({"shape": "corners", "corners": "0 0 100 100 100 0 0 100", "depth": "40", "wood_by": "none"}, ("corners", "crossing")),
        ({"shape": "corners", "corners": "0 0 100 0 100 80 0", "depth": "40", "wood_by": "none"}, ("corners", "odd-corners")),
        ({"shape": "widths", "length": "300", "widths": "0 0 0", "depth": "40", "wood_by": "none"}, ("widths", "no-width")),
        ({**CUP, "top_across": "4", "depth": "20", "level": "known", "tilt": "12"}, ("top_across", "closes")),
        ({**ROUND, "kits": "1 kg 2 kg", "prices": "20"}, ("prices", "other-count")),
        ({**ROUND, "kits": "20 g"}, ("kits", "too-many-kits")),
        ({**ROUND, "used": "900"}, ("reached", "both-or-none")),
        ({**ROUND, "reached": "20"}, ("used", "both-or-none")),
        ({**ROUND, "used": "900", "reached": "70"}, ("reached", "past-the-line")),
        ({**ROUND, "used": "900", "reached": "20", "full": "1"}, ("full", "all-full")),
        ({**ROUND, "part2": "round", "part2_across": "100", "depth": "", "shape": "measured", "volume": "900", "across": ""}, ("part2_depth", "missing")),
    ],
)
def test_contradictions_have_their_own_words(inputs: dict[str, str], expected: tuple[str, str]) -> None:
    assert code(ask(**inputs)) == expected


def test_several_errors_come_at_once() -> None:
    reply = ask(across="-5", depth="0", wood="abc")
    assert {error["field"] for error in reply["errors"]} == {"across", "depth", "wood"}


# ---------------------------------------------------------------- kits


def test_kits_to_buy_cover_the_amount_with_the_least_over() -> None:
    reply = ask(**ROUND, kits="1.5 kg 3 kg 6 kg", prices="60 100 190")
    # 4850 g: 6 kg leaves 1150 g, 1.5 + 1.5 + 3 kg as much from more kits; the cheapest is one of 6 kg
    assert line(reply, "Buy")["text"] == "1 × 6 kg"
    dear = ask(**ROUND, kits="1.5 kg 5 kg", prices="30 180")
    assert line(dear, "Buy")["text"] == "1 × 5 kg" and line(dear, "Or buy")["text"] == "4 × 1.5 kg"


def test_kits_that_are_there_count_as_shelf() -> None:
    reply = ask(**ROUND, kits="1.5 kg 3 kg", kits_there="2 1", have="0.4 kg")
    assert line(reply, "Open")["text"] == "1 × 1.5 kg and 1 × 3 kg" and si(reply, "odds") > 0.99
    short = ask(**ROUND, kits="1.5 kg", kits_there="2")
    assert line(short, "Open")["text"] == "all of them" and short["headline"]["tone"] == "stop"


def test_a_shelf_counted_by_volume_leaves_the_density_out() -> None:
    reply = ask(**ROUND, shelf_by="volume", have_volume="5 L", kit_volumes="1 US gal")
    assert "Density of the resin" not in [row[0] for row in reply["grids"][0]["rows"]]
    assert reply["headline"]["tone"] == "go" and line(reply, "By weight, 19 times in 20")["unit"] == "g"
    assert line(reply, "Kits")["text"] == "none needed"


# ---------------------------------------------------------------- several moulds


def test_the_mould_that_can_do_without_comes_last() -> None:
    reply = ask(**HELD, others="900 300", others_spare="0 100", have="4300 g")
    assert line(reply, "Fill in this order")["text"] == "Mould 2, then This mould, then Mould 3"
    odds = [row[3] for row in reply["grids"][0]["rows"]]
    assert odds[0] == "99 in 100" and odds[2] != "99 in 100"
    plain = ask(**HELD, others="900 300")
    assert line(plain, "Fill in this order")["text"] == "Mould 3, then Mould 2, then This mould"
    assert si(plain, "likely") == pytest.approx(si(ask(**HELD), "likely") + 1.2, rel=0.01)


# ---------------------------------------------------------------- during the pour


def test_a_pour_as_reckoned_stays_as_reckoned() -> None:
    # half the depth: half of the mould and half of the wood
    half = 1.1 * (4.24115 - 0.98 * 1.2) / 2
    reply = ask(**HELD, used=f"{half:.4f} kg", reached="30")
    assert si(reply, "takes") == pytest.approx(2 * half, rel=1e-4) and si(reply, "owed") == pytest.approx(half, rel=1e-4)
    assert reply["headline"]["say"].startswith("As reckoned so far.") and reply["headline"]["label"] == "Still to pour into it"


def test_more_than_reckoned_moves_the_forecast_up_and_less_moves_it_down() -> None:
    half = 1.1 * (4.24115 - 0.98 * 1.2) / 2
    wood = {**HELD, "wood_way": "figured"}
    more, less = (si(ask(**wood, used=f"{share * half:.4f} kg", reached="30"), "takes") for share in (1.08, 0.92))
    assert less < 2 * half < more
    # the wood is what is least known, so that most of the difference doubles with the depth
    assert more == pytest.approx(2 * half + 2 * 0.08 * half, rel=0.05)


def test_a_leak_leads() -> None:
    reply = ask(**HELD, used="3000", reached="30")
    assert reply["headline"]["label"].startswith("Look for a leak") and reply["headline"]["tone"] == "stop"
    assert si(reply, "takes") <= 1.1 * 1000 * si(reply, "mould") * (1 + 1e-9)  # what it holds with no wood in it
    assert "foam" in {caution["id"] for caution in ask(**HELD, used="900", reached="30")["cautions"]}


def test_what_is_left_decides_during_the_pour() -> None:
    enough, short = (ask(**HELD, used="1700", reached="30", have=have) for have in ("4000", "3000"))
    assert enough["headline"]["tone"] == "go" and "99 in 100" in enough["headline"]["say"]
    assert short["headline"]["label"] == "Mix this much more now" and short["headline"]["tone"] == "stop"
    assert short["changes"][0]["do"].endswith("less deep") and not short["carries"]


def test_grams_owed_to_each_mould() -> None:
    reply = ask(**HELD, used="1700", reached="30", others="900 300", others_used="900 100")
    rows = {row[0]: row for row in reply["grids"][0]["rows"]}
    assert rows["Mould 2"][2] == "0 g" and rows["Mould 3"][2] == "200 g"


def test_full_moulds_before_it_count() -> None:
    one = 1.1 * (4.24115 - 0.98 * 1.2)
    reply = ask(**HELD, count="3", full="1", used=f"{1.5 * one:.4f} kg", reached="30")
    assert si(reply, "takes") == pytest.approx(3 * one, rel=1e-4)


# ---------------------------------------------------------------- brim-full


def test_the_top_up_is_what_shrinks_and_is_coloured_alike() -> None:
    reply = ask(**HELD, brim="yes", colour="2", step="0.1")
    resin = 4.24115 - 0.98 * 1.2
    assert si(reply, "top_up_later") == pytest.approx(1.1 * 0.045 * resin, rel=1e-3)
    assert si(reply, "top_up_soon") == pytest.approx(1.1 * 0.02 * 1.2, rel=1e-3)
    # 2 % of the most it may be, 7 % of the resin; a 0.1 g scale weighs 1.6 g well
    assert float(line(reply, "Colour for that batch")["text"]) == pytest.approx(1000 * 0.02 * 1.1 * 0.07 * resin, abs=0.05)
    assert "keep some of it back" not in line(reply, "Colour for that batch")["note"]
    assert "keep some of it back" in line(ask(**HELD, brim="yes", colour="0.2", step="1"), "Colour for that batch")["note"]
    assert "brim" in {caution["id"] for caution in ask(**HELD, wall="60")["cautions"]}


# ---------------------------------------------------------------- the drawing


def test_the_drawing_follows_what_is_typed() -> None:
    drawn = ask(**HELD)["drawings"][0]
    assert drawn["says"].startswith("Round, 300 mm across, filled 60 mm deep; wood takes 28 % of 4240 mL")
    texts = {mark["text"] for mark in drawn["marks"] if mark["kind"] == "text"}
    assert texts == {"300 mm", "60 mm"}
    assert {mark["look"] for mark in drawn["marks"]} >= {"mould", "resin", "wood", "level", "measure"}
    bare = ask("imperial", across="12", depth="2 1/2", wood_by="none")["drawings"][0]
    assert {mark["text"] for mark in bare["marks"] if mark["kind"] == "text"} == {"12 in", "2 1/2 in"}
    assert "wood" not in {mark["look"] for mark in bare["marks"]}
    pouring = ask(**HELD, used="1700", reached="30")["drawings"][0]
    assert "limit" in {mark["look"] for mark in pouring["marks"]} and "now 30 mm" in pouring["says"]


def test_every_mark_stays_in_its_box() -> None:
    for inputs in (HELD, {**HELD, "shape": "box", "across": "", "length": "3000", "width": "40"}, {**HELD, "across": "150", "depth": "900"}):
        drawn = ask(**inputs)["drawings"][0]
        for mark in drawn["marks"]:
            for x, y in mark["points"]:
                assert 0 <= x <= drawn["width"] and 0 <= y <= drawn["height"]


@pytest.mark.parametrize(("way", "name"), [("dip", "the fill depth"), ("figured", "the wood")])
def test_what_makes_it_most_unsure_is_told_from_its_own_table(way: str, name: str) -> None:
    reply = ask(across="332", depth="42", wood="1250", wood_way=way)
    unsure = next(grid for grid in reply["grids"] if grid["title"] == "What makes it unsure")
    assert reply["band"]["text"].endswith(f"from {name}.") and unsure["rows"][0][0].lower() in name
    largest = max(unsure["rows"], key=lambda row: int(row[2].split()[0]))
    assert largest == unsure["rows"][0]


def test_the_resin_is_asked_before_how_much_of_it() -> None:
    ids = [entry["id"] for entry in desk.catalogue()]
    chain = ["dry-enough", "how-much-wood", "how-thick-how-tall", "what-is-this-resin", "is-it-enough", "how-deep-how-hot", "how-much-to-weigh"]
    assert sorted(chain, key=ids.index) == chain


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize(
    ("mould", "seen"),
    [
        ({"across": "332 mm"}, {"shape": "round", "across": "332 mm"}),
        ({"shape": "cup", "floor_across": "250 mm", "top_across": "332 mm"}, {"shape": "round", "across": "332 mm"}),
        ({"shape": "oval", "length": "400 mm", "width": "300 mm"}, {"shape": "oblong", "length": "400 mm", "width": "300 mm"}),
        ({"shape": "ring", "across": "332 mm", "core": "50 mm"}, {}),
    ],
)
def test_the_layers_are_asked_before_the_weighing(mould: dict[str, str], seen: dict[str, str], units: str) -> None:
    layers, weigh, *_ = ask(units, **mould, depth="42 mm", wood="1250 mL", density="1.12 g/mL")["carries"]
    assert (layers["to"], weigh["to"]) == ("how-deep-how-hot", "how-much-to-weigh")
    inputs = layers["inputs"]
    share = float(inputs["wood"].split()[0]) / 100
    assert inputs == seen | {"depth": "42 mm", "wood": inputs["wood"], "density": "1.12 g/mL"} and 0.3 < share < 0.6
    own = {} if seen else {"length": "300 mm", "width": "100 mm"}
    taken = desk.answer("how-deep-how-hot", {"deepest": "50 mm", "room": "20 °C", "detail": "depths"} | inputs | own, units, {})
    assert not taken["errors"] and not taken["queries"] and not taken["unasked"]


def test_wood_is_handed_on_rounded_down_and_a_measured_mould_has_no_sizes() -> None:
    bare = ask(across="332", depth="42", wood_by="none")["carries"][0]["inputs"]
    assert bare["wood"] == "0 %"
    # 1250 of 3636 mL is 34.4 %
    assert ask(across="332", depth="42", wood="1250")["carries"][0]["inputs"]["wood"] == "34 %"
    assert ask(shape="measured", volume="3000", wood="1000")["carries"][0]["inputs"] == {"wood": "33 %"}
    assert ask(across="332", depth="42", wood="1250", have="100")["carries"], "a shortage is no reason to forget the heat"


@pytest.mark.parametrize("name", ["across", "width", "length"])
def test_a_mould_may_be_as_large_here_as_where_it_comes_from(name: str) -> None:
    inside = {"across": {}, "width": {"shape": "box", "length": "400"}, "length": {"shape": "box", "width": "400"}}[name]
    finished = {"form": "disc"} if name == "across" else {"form": "panel", "length": "400", "width": "400"}
    for size, refused in (("2999", False), ("3001", name != "length"), ("5001", True)):
        here = {error["field"] for error in ask(**inside, **{name: size}, depth="42", wood_by="none")["errors"]}
        there = {error["field"] for error in desk.answer("how-thick-how-tall", finished | {"thickness": "40", name: size}, "metric", {})["errors"]}
        assert (name in here) == (name in there) == refused, size


def test_resin_over_the_wood_holds_none_and_is_handed_on_as_resin_alone() -> None:
    slab = {"across": "332", "depth": "42", "wood": "1250"}
    for top, lies in (("30", "parts"), ("42", None), ("", None)):
        inputs = ask(**slab, wood_height=top)["carries"][0]["inputs"]
        assert (inputs["wood"], inputs.get("lies")) == ("34 %", lies), top
    thick = {"thickness": "32", "across": "320", "slab": "25"}
    for lies, top in (("under", "25 mm"), ("through", None)):
        inputs = thick | {"wood": lies, "slab": "45" if top is None else "25"}
        carried = {one["to"]: one["inputs"] for one in desk.answer("how-thick-how-tall", inputs, "metric", {})["carries"]}
        assert carried["is-it-enough"].get("wood_height") == top and carried["how-deep-how-hot"].get("lies") == (None if top is None else "parts")
    dipped = {"rise": "1250", "height": "30"}
    for fill, top in (("42", "30 mm"), ("25", None), ("", None)):
        assert desk.answer("how-much-wood", dipped | {"fill": fill}, "metric", {})["carries"][0]["inputs"].get("wood_height") == top
