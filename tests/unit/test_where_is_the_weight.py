"""Where is the weight? What the maker reads, case by case."""

from __future__ import annotations

import math
import re
from typing import Any

import pytest

from calc import desk
from calc.turning import balance, caps, make_up, rebalance, wood_shapes
from calc.turning.make_up import Blank, Wood

DISC = {"across": "300", "thickness": "50"}
ROUND = {**DISC, "wood1_across": "100", "wood1_out": "60", "wood1_by": "density", "wood1_density": "0.7"}
HALF = {**DISC, "wood1_shape": "half", "wood1_by": "density", "wood1_density": "0.65"}
SCALE = {"way": "scale", "sweep": "300", "mass": "4000", "apart": "250", "at_3": "2100", "at_12": "2000"}
TWO = {**ROUND, "wood2_shape": "block", "wood2_length": "40", "wood2_width": "60", "wood2_out": "90", "wood2_clock": "8", "wood2_by": "density"}
TWO |= {"wood2_density": "0.9"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("where-is-the-weight", confirmed, units, confirmed)


def value(reply: dict[str, Any], name: str) -> float:
    found: float = reply["values"][name]["si"]
    return found


def cautions(reply: dict[str, Any]) -> dict[str, str]:
    return {caution["id"]: caution["tone"] for caution in reply["cautions"]}


def code(reply: dict[str, Any]) -> tuple[str, str]:
    assert reply["headline"] is None and reply["errors"][0]["message"] and "{" not in reply["errors"][0]["message"]
    return reply["errors"][0]["field"], reply["errors"][0]["code"]


# --- the make-up ---------------------------------------------------------------------------------------


def test_before_the_pour_the_wood_is_shifted() -> None:
    """One round wood goes to the middle; or 10603 g·mm at 130 mm is 82 g on its side."""
    reply = ask(**ROUND)
    head = reply["headline"]
    assert (head["label"], head["text"], head["unit"], head["tone"]) == ("Shift the wood", "60", "mm", "caution")
    assert head["say"] == "Towards 9 o'clock, in the mould. Or leave it there: it will want 82 g at 3 o'clock, 130 mm out."
    assert value(reply, "shift") == pytest.approx(0.060)


def test_two_woods_are_balanced_by_the_shortest_shift_and_it_is_so() -> None:
    reply = ask(**TWO)
    assert reply["headline"]["label"].startswith("Shift ")
    far = value(reply, "shift")
    assert 0 < far < 0.060
    blank = Blank(0.300, 0.050, 1150)
    woods = [Wood(wood_shapes.round_wood(0.100, (0.060, 0.0)), 700, 0.050)]
    turn = math.pi / 2 - 8 * math.pi / 6
    woods.append(Wood(wood_shapes.band(turn, 0.070, 0.040, 0.030), 900, 0.050))
    groups: tuple[list[int], ...] = ([0], [1], [0, 1])
    moved = [rebalance.shift_to_balance(blank, woods, group) for group in groups]
    found = [(group, by) for group, by in zip(groups, moved, strict=True) if by is not None]
    assert len(found) == 2 and min(math.hypot(*by) for _, by in found) == pytest.approx(far)
    for group, by in found:
        after = [wood.moved(*by) if place in group else wood for place, wood in enumerate(woods)]
        assert make_up.weigh(blank, after).unbalance < 1.1e-3 * make_up.weigh(blank, woods).unbalance


def test_half_wood_cannot_be_shifted_and_says_so() -> None:
    reply = ask(**HALF)
    assert reply["headline"]["label"] == "It will want" and reply["headline"]["text"] == "430"
    assert reply["headline"]["say"].endswith("No shift of the wood does away with it.")


def test_on_the_lathe_a_big_lump_stops_until_the_weight_is_on() -> None:
    reply = ask(way="mounted", **HALF)
    assert (reply["headline"]["label"], reply["headline"]["text"], reply["headline"]["tone"]) == ("Hang on the light side", "430", "stop")
    # 4.5 mm/s x 1.414 x (40 + 3.18) kg / 0.05625 kg m = 4.88 /s = 46.6 rpm
    assert value(reply, "under") == pytest.approx(46.6, abs=0.1) and "stay under 40 rpm" in reply["headline"]["say"]
    assert cautions(reply)["X3"] == cautions(reply)["X4"] == "stop" and "throw" in cautions(reply)


def test_a_little_out_of_balance_hardly_matters() -> None:
    reply = ask(way="mounted", **{**ROUND, "wood1_out": "5"}, lathe="heavy")
    assert reply["headline"]["tone"] == "go" and "hardly feels it" in reply["headline"]["say"]
    assert not {"X3", "X4"} & set(cautions(reply))


def test_wood_in_the_middle_wants_nothing() -> None:
    reply = ask(way="mounted", **{**ROUND, "wood1_out": "0"})
    assert reply["headline"]["text"] == "Nothing" and value(reply, "weight") < 1e-9 and "throw" not in cautions(reply)


def test_a_faster_speed_makes_it_tremble_and_over_the_rim_limit_is_said() -> None:
    little = {**ROUND, "wood1_out": "5"}
    assert "X3" not in cautions(ask(way="mounted", lathe="heavy", **little))
    # 0.9 kg mm x 157 /s / (1.414 x 254 kg) = 0.4 mm/s, but 25 mm off 1.9 mm/s
    trembles = ask(way="mounted", lathe="heavy", speed="1500", **{**ROUND, "wood1_out": "25"})
    assert cautions(trembles)["X3"] == "caution" and cautions(trembles)["X11"] == "caution"


def test_cast_the_centre_moves_only_where_the_size_allows_it() -> None:
    near = {**ROUND, "wood1_out": "20"}
    reply = ask(way="cast", **near, finish="250")
    assert reply["headline"]["label"] == "Move the centre" and reply["headline"]["text"] == "20"
    assert reply["headline"]["say"].startswith("Towards 3 o'clock. Saw it round to 260 mm")
    reply = ask(way="cast", **near, finish="270")
    assert reply["headline"]["label"] == "Hang on the light side" and "centre" in cautions(reply)
    (change,) = [change for change in reply["changes"] if change["do"].startswith("Mount it")]
    # 0.0353 kg lacks 450 x 0.003927 m3 = 0.1767 kg at 20 mm: 3.534 kg mm / 3.8877 kg = 0.9 mm
    assert change["do"] == "Mount it 0.9 mm off, towards 9 o'clock" and re.fullmatch(r"balanced till true, then \d+ g", change["then"])


def test_it_may_get_worse_as_it_is_turned_down() -> None:
    """A wooden edge opposite the round wood all but balances it, until it is turned away."""
    edged = {**ROUND, "wood2_shape": "side", "wood2_edge": "125", "wood2_clock": "9", "wood2_by": "density", "wood2_density": "0.7"}
    first, *later = ask(way="mounted", **edged)["grids"][0]["rows"]
    assert float(first[2].split()[0]) < float(later[0][2].split()[0]) and "worse" in cautions(ask(way="mounted", **edged))


def test_the_heavy_spot_is_said_once_while_it_stays_and_row_by_row_where_it_moves() -> None:
    """Wood at 3 o'clock: heavy at 9 all through. Off the centre towards 2 more lies at 8; once true, only the light wood does, and 2 is heavy."""
    stays, moves = (ask(way="mounted", **more)["grids"][0] for more in (ROUND, {**ROUND, "wood1_out": "0", "off": "3", "off_clock": "2"}))
    assert stays["title"] == "As it is turned down, heavy spot at 9 o'clock" and stays["head"][-1] == "Off centre"
    assert moves["title"] == "As it is turned down" and [row[3] for row in moves["rows"]] == ["8 o'clock", *["2 o'clock"] * 4]
    assert moves["rows"][0][0] == "306 mm as it is" and {len(row) for grid in (stays, moves) for row in grid["rows"]} == {4}


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize("more", [{"way": "plan"}, {"way": "cast", "finish": "200 mm"}, {"way": "mounted", "off": "9 mm", "off_clock": "8"}])
def test_what_would_change_it_stands_beside_it_on_a_phone(units: str, more: dict[str, str]) -> None:
    changes = ask(units, **{**ROUND, "across": "300 mm", "thickness": "50 mm", "wood1_across": "90 mm", "wood1_out": "30 mm"}, **more)["changes"]
    assert changes and all(len(change["then"]) <= 31 for change in changes), changes


def test_a_weight_at_the_rim_is_in_the_way_when_it_is_turned_down() -> None:
    """As much out of balance as before, 10.603 kg mm, but no room at 130 mm in a round of 260."""
    reply = ask(way="mounted", **ROUND)
    assert cautions(reply)["in-the-way"] == "caution" and "worse" not in cautions(reply)
    assert not {"in-the-way", "worse"} & set(cautions(ask(way="mounted", **ROUND, finish="200")))
    assert "in-the-way" not in cautions(ask(**ROUND)), "the wood is shifted, not balanced by a weight"
    sizes = [row[0] for row in reply["grids"][0]["rows"]]
    assert sizes == ["300 mm", "260 mm", "220 mm", "180 mm"]
    assert "worse" not in cautions(ask(way="mounted", **HALF))
    assert [row[0] for row in ask(way="mounted", **HALF, finish="240")["grids"][0]["rows"]][-1] == "240 mm"


def test_the_weight_sits_where_nothing_is_cut_away() -> None:
    """0.87 of the radius, down to 5 mm: 130 mm in a round of 300, 100 mm where it is turned down to 240."""
    assert value(ask(way="mounted", **HALF), "radius") == pytest.approx(0.130)
    assert value(ask(way="mounted", **HALF, finish="240"), "radius") == pytest.approx(0.100)
    assert value(ask(way="mounted", **HALF, finish="240", at="120"), "radius") == pytest.approx(0.120)


def test_a_square_blank_in_the_middle_is_in_balance_until_its_corner_is_wood() -> None:
    square = {"blank": "square", "side": "300", "thickness": "50", "wood1_shape": "round", "wood1_across": "60", "wood1_by": "density", "wood1_density": "0.6"}
    assert ask(way="mounted", **square, wood1_out="0")["headline"]["text"] == "Nothing"
    corner = ask(way="mounted", **square, wood1_out="170", wood1_clock="1.5")
    # 550 x pi x 0.03^2 x 0.05 kg at 170 mm = 13.2 kg mm; the corner goes when it is turned round
    assert value(corner, "unbalance") == pytest.approx(550 * math.pi * 0.0009 * 0.05 * 0.170, rel=0.001)
    rows = corner["grids"][0]["rows"]
    assert rows[0][0] == "424 mm as it is" and rows[1][0] == "300 mm"


def test_mounted_off_the_centre_counts_like_wood_on_one_side() -> None:
    reply = ask(way="mounted", **{**ROUND, "wood1_out": "0"}, off="3", off_clock="12")
    assert value(reply, "off") == pytest.approx(0.003) and "6 o'clock" in reply["values"]["unbalance"]["shown"]
    assert code(ask(way="mounted", **ROUND, off="3")) == ("off_clock", "which-way")
    assert code(ask(way="mounted", **ROUND, off="150", off_clock="3")) == ("off", "off-blank")


def test_a_weighed_piece_gives_its_own_density() -> None:
    # pi 50^2 x 50 mm3 = 392.7 mL at 0.7 g/mL
    weighed = {**ROUND, "wood1_by": "weight", "wood1_weight": "274.89", "wood1_density": ""}
    assert value(ask(**weighed), "unbalance") == pytest.approx(value(ask(**ROUND), "unbalance"), rel=1e-4)
    assert "odd" in cautions(ask(**{**weighed, "wood1_weight": "80"}))
    assert code(ask(**{**weighed, "wood1_weight": "10"})) == ("wood1_weight", "too-light")
    assert code(ask(**{**weighed, "wood1_weight": "9 kg"})) == ("wood1_weight", "too-heavy")


def test_the_kind_of_wood_and_its_moisture() -> None:
    """Black walnut at 8 %: 605.2 kg/m3. Against resin of 1150 it lacks 544.8 x 392.7 mL = 213.9 g at 60 mm."""
    walnut = {**DISC, "wood1_across": "100", "wood1_out": "60", "wood1_species": "walnut-black"}
    assert value(ask(**walnut), "unbalance") == pytest.approx(0.01284, rel=0.002)
    assert value(ask(**walnut, wood1_moisture="40"), "unbalance") < value(ask(**walnut), "unbalance")
    assert code(ask(**walnut, wood1_moisture="290")) == ("wood1_moisture", "too-wet")
    unnamed = ask(**DISC, wood1_across="100", wood1_out="60")
    assert "unnamed" in cautions(unnamed) and "unnamed" not in cautions(ask(**walnut))


def test_a_better_known_wood_has_a_narrower_band() -> None:
    def width(reply: dict[str, Any]) -> float:
        low, high = (float(reply["band"][end].split()[0]) for end in ("low", "high"))
        return high - low

    assert width(ask(way="mounted", **ROUND)) < width(ask(way="mounted", **DISC, wood1_across="100", wood1_out="60"))


def test_long_work_with_wood_in_part_of_its_length_also_rocks() -> None:
    long = {"across": "80", "thickness": "300", "wood1_across": "30", "wood1_out": "15"}
    assert "rocks" in cautions(ask(**long, wood1_depth="100")) and "rocks" not in cautions(ask(**long))
    assert "rocks" not in cautions(ask(**ROUND, wood1_depth="10"))


@pytest.mark.parametrize(
    "shape, sizes", [("strip", {"wood1_edge": "20", "wood1_width": "40"}), ("slice", {"wood1_angle": "90"}), ("side", {"wood1_edge": "-20"})]
)
def test_every_shape_is_drawn_and_told(shape: str, sizes: dict[str, str]) -> None:
    reply = ask(**DISC, wood1_shape=shape, wood1_species="walnut-black", **sizes)
    looks = [mark["look"] for mark in reply["drawings"][0]["marks"]]
    assert {"resin", "wood", "spot", "metal"} <= set(looks)
    assert "heavy spot (red) at 9 o'clock" in reply["drawings"][0]["says"]


def test_metal_is_drawn_as_metal_and_pulls_to_its_side() -> None:
    reply = ask(way="mounted", **{**ROUND, "wood1_density": "8.5"}, wood1_depth="4")
    assert "3 o'clock" in reply["values"]["unbalance"]["shown"] and "odd" not in cautions(reply)


# --- turning the drawing turns the answer; units change nothing -------------------------------------------


@pytest.mark.parametrize("hours", [1, 2.5, 7])
def test_turning_the_drawing_turns_the_answer(hours: float) -> None:
    turn = -hours * math.pi / 6
    before = ask(way="mounted", **TWO, off="4", off_clock="1")
    clocks = {"wood1_clock": 3, "wood2_clock": 8, "off_clock": 1}
    after = ask(way="mounted", **{**TWO, "off": "4", **{name: str((hour + hours) % 12) for name, hour in clocks.items()}})
    x, y = value(before, "off_x"), value(before, "off_y")
    turned = wood_shapes.turned([(x, y)], turn)[0]
    assert (value(after, "off_x"), value(after, "off_y")) == pytest.approx(turned, abs=1e-9)
    assert value(after, "weight") == pytest.approx(value(before, "weight"), rel=1e-6)


def test_units_never_change_the_answer() -> None:
    inches = {name: f"{float(text) / 25.4:.9f} in" if name in ("across", "thickness", "wood1_across", "wood1_out") else text for name, text in ROUND.items()}
    one, other = ask(way="mounted", **ROUND, at="100 mm"), ask("imperial", way="mounted", **inches, at="100 mm")
    for name in one["values"]:
        assert value(other, name) == (None if value(one, name) is None else pytest.approx(value(one, name), rel=1e-6)), name
    assert other["headline"]["unit"] == "oz"


# --- the weights ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("places", ["2 5", "5 2", "1.5 3.5"])
def test_two_weights_cancel_what_one_would(places: str) -> None:
    reply = ask(way="mounted", **HALF, places=places)
    x, y = value(reply, "off_x") * value(reply, "mass"), value(reply, "off_y") * value(reply, "mass")
    for weight in reply["extra"]["weights"]:
        x += weight["kg"] * value(reply, "radius") * math.cos(weight["rad"])
        y += weight["kg"] * value(reply, "radius") * math.sin(weight["rad"])
    assert math.hypot(x, y) < 1e-9
    assert " + " in reply["headline"]["text"]


@pytest.mark.parametrize("places", ["12 6", "9 11", "3.5 5", "4 4"])
def test_two_places_that_cannot_hold_it(places: str) -> None:
    assert code(ask(way="mounted", **HALF, places=places)) == ("places", "places")


def test_off_the_centre_turning_it_true_is_most_of_the_cure() -> None:
    reply = ask(way="mounted", **{**ROUND, "wood1_out": "0"}, off="3", off_clock="2")
    (change,) = [change for change in reply["changes"] if change["do"].startswith("Turn it true")]
    assert change["do"] == "Turn it true, at 294 mm, slowly" and re.fullmatch(r"only \d\.\d g at 125 mm", change["then"])
    assert not [change for change in ask(way="mounted", **HALF)["changes"] if change["do"].startswith("Turn it true")]


def test_slower_than_a_lathe_goes_is_said() -> None:
    assert "if the lathe's lowest is above that, do not start it" in ask(way="mounted", **HALF)["headline"]["say"]
    assert "do not start it" not in ask(way="mounted", **{**ROUND, "wood1_out": "20"}, lathe="floor")["headline"]["say"]


def test_the_throw_of_two_weights() -> None:
    """433 g shared between 2 and 4 o'clock: each 1 / (2 cos 30) of it, 250 g, and so 0.577 of the 154.2 N at 500 rpm: 9.1 kg."""
    reply = ask(way="mounted", **HALF, speed="500", places="2 4")
    line = next(line for line in reply["lines"] if line["label"] == "The two pull like")
    assert (line["text"], line["unit"]) == ("9.1 and 9.1", "kg")


def test_the_throw_of_the_weight() -> None:
    reply = ask(way="mounted", **HALF, speed="500")
    # 0.05625 kg m x (52.36 /s)^2 = 154.2 N, as much as 15.7 kg weighs
    assert value(reply, "pull") == pytest.approx(0.05625 * balance.angular_speed(500) ** 2 / 9.80665, rel=1e-3) == pytest.approx(15.7, abs=0.05)
    line = next(line for line in reply["lines"] if line["label"] == "A weight there pulls like")
    assert (line["text"], line["unit"]) == ("16", "kg")


def test_the_throw_is_told_at_no_more_than_the_ceiling_it_gives() -> None:
    reply = ask(way="mounted", **HALF)
    # 8 m/s at the rim of 300 mm: 509 rpm
    ceiling = caps.speed_at_rim_speed(0.300, caps.operation_rim_speed("rough", 0.300))
    assert ceiling == pytest.approx(509.3, abs=0.1)
    assert value(reply, "pull") == pytest.approx(0.05625 * balance.angular_speed(ceiling) ** 2 / 9.80665, rel=1e-3)
    line = next(line for line in reply["lines"] if line["label"] == "A weight there pulls like")
    assert line["note"].startswith("At 500 rpm, the roughing ceiling for its size;")


def test_a_centre_that_leaves_less_than_is_wanted_is_no_remedy() -> None:
    """Its centre 2.7 mm off leaves less than 300 mm round: a finish of 299 mm does not come out of it."""
    told = {finish: [change["do"] for change in ask(**ROUND, way="cast", finish=finish)["changes"]] for finish in ("280", "299")}
    assert any(do.startswith("Mount it") for do in told["280"]) and not any(do.startswith("Mount it") for do in told["299"])


# --- off the lathe ------------------------------------------------------------------


def test_two_supports_and_a_scale() -> None:
    """2100 of 4000 g with 250 mm between: 250 (0.525 - 0.5) = 6.25 mm towards 3 o'clock."""
    reply = ask(**SCALE)
    assert (value(reply, "off_x"), value(reply, "off_y")) == (pytest.approx(0.00625), pytest.approx(0.0))
    assert reply["headline"]["label"] == "Move the centre" and reply["headline"]["say"].startswith("Towards 3 o'clock, the heavy side.")
    assert "true" in cautions(reply)


def test_opposite_readings_take_out_a_centre_set_wrong() -> None:
    """The marked centre 2 mm nearer to the scale: both readings gain 4000 x 2 / 250 = 32 g."""
    reply = ask(**{**SCALE, "at_3": "2132", "at_12": "2032"}, at_9="1932", at_6="2032")
    assert (value(reply, "off_x"), value(reply, "off_y")) == (pytest.approx(0.00625), pytest.approx(0.0))
    assert code(ask(**SCALE, at_9="1200")) == ("at_9", "sum-off")


def test_readings_that_cannot_be() -> None:
    assert code(ask(**{**SCALE, "at_3": "4100"})) == ("at_3", "more-than-all")
    assert code(ask(**{**SCALE, "apart": "350"})) == ("apart", "apart")
    assert code(ask(**{**SCALE, "apart": "300", "at_3": "3900", "at_12": "3900"})) == ("at_3", "centre-outside")


# --- what cannot be ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "inputs, field, why",
    [
        ({**ROUND, "wood1_out": "260"}, "wood1_out", "outside-blank"),
        ({**ROUND, "wood1_depth": "60"}, "wood1_depth", "too-deep"),
        ({**ROUND, "wood1_across": "0"}, "wood1_across", "not-positive"),
        ({**ROUND, "wood1_out": "-5"}, "wood1_out", "too-small"),
        ({**ROUND, "across": "90 m"}, "across", "too-large"),
        ({**ROUND, "wood1_clock": "13"}, "wood1_clock", "too-large"),
        ({**ROUND, "finish": "310"}, "finish", "too-wide"),
        ({**ROUND, "at": "160"}, "at", "beyond"),
        ({**ROUND, "wood2_shape": "half", "wood2_clock": "2"}, "wood2_shape", "overlap"),
        ({**DISC, "wood1_shape": "outline", "wood1_points": "0 0 50 0 50"}, "wood1_points", "too-few"),
        ({**DISC, "wood1_shape": "outline", "wood1_points": "0 0 50 0 50 50 0"}, "wood1_points", "odd-corners"),
        ({**DISC, "wood1_shape": "outline", "wood1_points": "0 0 50 50 50 0 0 50"}, "wood1_points", "crossing"),
        ({**DISC, "wood1_shape": "side", "wood1_edge": "160"}, "wood1_edge", "outside-blank"),
    ],
)
def test_errors_name_the_field(inputs: dict[str, str], field: str, why: str) -> None:
    found = code(ask(**inputs))
    assert found[0] == field and found[1] in (why, "not-positive" if why == "too-small" else why)


def test_woods_side_by_side_do_not_overlap() -> None:
    halves = {**DISC, "wood1_shape": "half", "wood1_clock": "3", "wood2_shape": "half", "wood2_clock": "9"}
    reply = ask(way="mounted", **halves)
    assert not reply["errors"] and value(reply, "weight") < 1e-9
    edges = {**DISC, "wood1_shape": "side", "wood1_edge": "120", "wood2_shape": "side", "wood2_edge": "120", "wood2_clock": "12"}
    assert not ask(way="mounted", **edges)["errors"]
