"""How much to weigh? What the maker reads, case by case."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk

PLAIN = {"total": "2600", "ratio": "100:45", "by": "weight", "bucket": "1.5", "capacity": "2000", "empty": "60"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("how-much-to-weigh", confirmed, units, confirmed)


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


def test_two_pours_each_with_its_own_a_and_b() -> None:
    reply = ask(**PLAIN)
    assert reply["headline"]["say"] == "2 pours: each A 897 g, then B 404 g."
    assert reply["headline"]["tone"] == "go"
    assert [limit["id"] for limit in reply["limits"] if limit["rules"]] == ["bucket"]
    assert reply["lines"][0]["note"] == "the scale shows 957, then 1361 g with the bucket"
    assert reply["extra"]["batch_kg"] == pytest.approx(1.301)


def test_a_ratio_by_volume_goes_through_the_densities() -> None:
    reply = ask(**{**PLAIN, "ratio": "2:1", "by": "volume", "density_a": "1.15", "density_b": "0.98"})
    assert reply["values"]["b_per_100_a"]["shown"] == "42.6"
    caution = next(entry for entry in reply["cautions"] if entry["id"] == "ratio-by-volume")
    assert "17 % too much B" in caution["text"]  # 0.5 / 0.4261 - 1


def test_a_ratio_by_volume_without_densities_is_refused() -> None:
    reply = ask(**{**PLAIN, "by": "volume"})
    assert [error["field"] for error in reply["errors"]] == ["density_a", "density_b"] and reply["headline"] is None


def test_weight_or_volume_has_to_be_said() -> None:
    assert [error["field"] for error in ask(total="500", ratio="2:1")["errors"]] == ["by"]


def test_fluid_ounces_are_not_ounces() -> None:
    assert ask(**{**PLAIN, "total": "64 fl oz"})["errors"][0]["code"] == "fluid-ounce"


def test_a_volume_wanted_is_weighed_through_the_density_and_carries_its_band() -> None:
    reply = ask(known="volume", volume="1 L", ratio="1:1", by="weight")
    assert reply["values"]["total"]["shown"] == "1100 g"
    assert "1060 to 1120 g" in reply["band"]["text"]
    assert any(entry["field"] == "density" for entry in reply["assumed"])


@pytest.mark.parametrize(
    ("inputs", "text", "say"),
    [
        ({"in_a": "1342", "bucket": "", "total": "1870", "capacity": "5000"}, "A 1342 + B 604", "Add B 604 g. It makes 1946 g, 76 g more"),
        ({"in_b": "600", "bucket": "", "total": "1870", "capacity": "5000"}, "A 1333 + B 600", "Add A 1333 g. It makes 1933 g, 63 g more"),
        ({"in_a": "500"}, "A 897 + B 404", "Add A 397 g and B 404 g."),
    ],
)
def test_already_in_the_bucket(inputs: dict[str, str], text: str, say: str) -> None:
    reply = ask(**{**PLAIN, **inputs})
    assert reply["headline"]["text"] == text and reply["headline"]["say"].startswith(say)


def test_too_much_a_for_the_bucket_leads_with_what_to_take_out() -> None:
    reply = ask(**{**PLAIN, "in_a": "1000"})
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["label"] == "Take A back out"
    assert reply["headline"]["text"] == "103" and "897 g stays in" in reply["headline"]["say"]


def test_a_and_b_that_have_met_are_never_taken_out() -> None:
    reply = ask(**{**PLAIN, "in_a": "1000", "in_b": "404"})
    assert reply["headline"]["label"] == "Bigger bucket" and "met" in cautions(reply)


def test_a_scale_too_coarse_leads_with_the_scale_that_would_do() -> None:
    reply = ask(total="150", ratio="100:30", by="weight", step="5")
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["text"] == "0.5"
    assert reply["lines"][0]["label"] == "On that scale"
    assert reply["values"]["smallest_batch"]["si"] == pytest.approx(0.9235, abs=0.001)  # five times S3


def test_a_scale_between_two_and_five_percent_is_a_caution() -> None:
    reply = ask(total="100", ratio="100:30", by="weight")
    assert reply["headline"]["tone"] == "caution" and "coarse-scale" in cautions(reply)
    assert (reply["headline"]["label"], reply["headline"]["text"], reply["headline"]["unit"]) == ("Finer scale", "0.5", "g steps")
    assert "A 80 g, then B 24 g" in reply["headline"]["say"]


def test_what_is_over_is_told_as_it_is_not_in_the_scales_steps() -> None:
    """2939 g at 100:45 is A 2026.9: up to 2040 in 20 g steps, and B 918 to 920."""
    reply = ask(total="2939", ratio="100:45", by="weight", step="20")
    mixed = next(line for line in reply["lines"] if line["label"] == "Mixed in all")
    assert mixed["text"] == "2960" and mixed["note"] == "21 g over what you asked for"


def test_more_b_than_a_is_asked_about_and_weighed_all_the_same() -> None:
    reply = ask(total="900", ratio="45:100", by="weight")
    assert "more-b" in cautions(reply) and reply["headline"]["tone"] == "go" and not reply["errors"]
    assert "more-b" not in cautions(ask(total="900", ratio="100:45", by="weight"))


def test_the_sheets_tolerance_overrules_ours() -> None:
    reply = ask(total="100", ratio="100:30", by="weight", tolerance="1")
    assert reply["headline"]["tone"] == "stop"


def test_a_bucket_heavier_than_the_scale_carries_leads_with_a_way() -> None:
    reply = ask(total="100", ratio="100:45", by="weight", capacity="200")
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["text"] == "Decant"
    assert reply["working"][0]["numbers"] == "200 g − 250 g"  # the pail of data/mixing.csv
    assert reply["values"]["pours"]["si"] is None


def test_decanting_is_not_held_by_what_the_bucket_weighs() -> None:
    reply = ask(**{**PLAIN, "empty": "", "how": "decant", "bucket": "5"})
    assert reply["values"]["pours"]["si"] == 1 and "jug-not-checked" in cautions(reply)


def test_a_jug_too_heavy_for_the_scale_is_an_error_that_names_it() -> None:
    reply = ask(total="500", ratio="2:1", by="weight", how="decant", jug="6000")
    assert reply["errors"][0]["field"] == "jug" and reply["errors"][0]["message"]


def test_whole_kits() -> None:
    reply = ask(total="5600", ratio="100:45", by="weight", how="kit", kit_a="2000", kit_b="900", bucket="5", jug="2200")
    assert reply["headline"]["text"] == "2" and reply["headline"]["tone"] == "go"
    assert reply["lines"][0]["text"] == "40"  # 2 % of 2000 g


@pytest.mark.parametrize(("kit_b", "tone"), [("900", "go"), ("930", "caution"), ("1000", "stop")])
def test_a_kit_off_its_own_ratio(kit_b: str, tone: str) -> None:
    reply = ask(total="2000", ratio="100:45", by="weight", how="kit", kit_a="2000", kit_b=kit_b, bucket="5")
    assert reply["headline"]["tone"] == tone


def test_a_kit_too_big_for_the_bucket_names_the_bucket() -> None:
    reply = ask(total="2900", ratio="100:45", by="weight", how="kit", kit_a="2000", kit_b="900", bucket="2")
    assert reply["headline"]["label"] == "Bigger bucket"
    assert float(reply["headline"]["text"]) >= 2.9 / 1.1 / 0.8


def test_a_kit_by_volume() -> None:
    inputs = {"by": "volume", "density_a": "1.15", "density_b": "0.98", "how": "kit", "kit_a_volume": "2 L", "kit_b_volume": "1 L"}
    reply = ask(total="3000", ratio="2:1", **inputs)
    assert reply["headline"]["tone"] == "go" and reply["values"]["total"]["si"] == pytest.approx(3.28)


def test_ounces_on_an_ounce_scale_and_grams_on_a_gram_scale() -> None:
    assert ask("imperial", total="32", ratio="2:1", by="weight")["headline"]["unit"] == "oz"
    assert ask("imperial", total="32", ratio="2:1", by="weight", step="1 g")["headline"]["unit"] == "g"


def test_the_working_time_becomes_what_is_left_for_mixing_and_pouring() -> None:
    lines = {line["label"]: line["text"] for line in ask(**PLAIN, working="45")["lines"]}
    resin = desk.answer("what-is-this-resin", {"ratio": PLAIN["ratio"], "pot_life": "45", "room": "23"}, "metric", {})
    (told,) = [line["text"] for line in resin["lines"] if "in a bucket: pour within" in line["label"]]
    assert f"{lines['Mixed and poured within']} min" == told == "14 min"  # what is said of a resin is what is said of its bucket
    room = {line["label"]: line["text"] for line in ask(**PLAIN, working="45", room="30")["lines"]}
    assert float(room["Mixed and poured within"]) < 14


def test_a_bucket_that_sets_before_it_is_mixed_is_told() -> None:
    assert "bucket-time" in {caution["id"] for caution in ask(**PLAIN, working="5")["cautions"]}
    assert "bucket-time" not in {caution["id"] for caution in ask(**PLAIN, working="45")["cautions"]}


def test_what_would_change_it() -> None:
    changes = ask(**PLAIN)["changes"]
    assert changes[0]["do"].startswith("A bucket of 2.9") and changes[0]["then"] == "1 pour, on a bigger scale"
    changes = ask(total="3000", ratio="2:1", by="weight", capacity="2000")["changes"]
    assert {change["then"] for change in changes} == {"1 pour"}


# --- A and B are mixed already ------------------------------------------------------------------------

MIXED = {"total": "1400", "ratio": "100:45", "by": "weight", "in_a": "1000", "mixed": "cool"}


def labelled(reply: dict[str, Any]) -> dict[str, str]:
    return {line["label"]: f"{line['text']} {line['unit']}".strip() for line in reply["lines"]}


@pytest.mark.parametrize(
    ("in_b", "label", "figure", "tone"),
    [
        ("450", "Already mixed", "Add nothing", "go"),
        ("459", "Already mixed", "Add nothing", "go"),  # 2 percent over
        ("460", "Add A now", "22", "caution"),  # 460 / 0.45 - 1000
        ("430", "Add B now", "20", "caution"),
        ("420", "Add B now", "30", "stop"),  # 6.7 percent short
        ("500", "Add A now", "111", "stop"),
    ],
)
def test_what_can_still_be_added(in_b: str, label: str, figure: str, tone: str) -> None:
    reply = ask(**MIXED, in_b=in_b)
    assert (reply["headline"]["label"], reply["headline"]["text"], reply["headline"]["tone"]) == (label, figure, tone)
    if tone != "go":
        assert "Only while everything is thin and cool" in reply["headline"]["say"] and "off-ratio" in cautions(reply)
        assert reply["changes"][0]["do"].endswith("left: leave it as it is")


def test_the_class_is_told_with_its_meaning_and_no_slope() -> None:
    reply = ask(**MIXED, in_b="420")
    assert labelled(reply)["As it is"] == "B 6.7 % short"
    assert [limit["id"] for limit in reply["limits"] if limit["rules"]] == ["worst"]
    text = next(caution["text"] for caution in reply["cautions"] if caution["id"] == "off-ratio")
    assert "slow to cure" in text and "more brittle" in text and "not known" in text and "%" not in text
    over = next(caution["text"] for caution in ask(**MIXED, in_b="500")["cautions"] if caution["id"] == "off-ratio")
    assert "moisture" in over and "slow to cure" not in over


def test_far_off_it_may_never_set() -> None:
    assert any("never set" in caution["text"] for caution in ask(**MIXED, in_b="140")["cautions"])  # less than a third of 450
    assert not any("never set" in caution["text"] for caution in ask(**MIXED, in_b="160")["cautions"])


def test_the_sheets_own_tolerance_has_no_middle_class() -> None:
    reply = ask(**MIXED, in_b="435", tolerance="3")
    assert reply["headline"]["tone"] == "stop" and [limit["name"] for limit in reply["limits"]] == ["The sheet allows"]
    assert ask(**MIXED, in_b="437", tolerance="3")["headline"]["tone"] == "go"


def test_thick_or_warm_nothing_goes_in() -> None:
    reply = ask(**{**MIXED, "mixed": "warm"}, in_b="500")
    assert reply["headline"]["text"] == "Add nothing" and reply["headline"]["tone"] == "stop"
    assert reply["headline"]["say"].startswith("Spread it shallow in a metal tray, outside") and "weigh A 966 g, then B 435 g" in reply["headline"]["say"]
    right = ask(**{**MIXED, "mixed": "warm"}, in_b="452")["headline"]
    assert right["tone"] == "stop" and right["say"].startswith("B 0.4 % over: nothing is missing. Pour it at once if it still runs thin")


def test_what_is_still_wanted_goes_into_a_fresh_bucket() -> None:
    reply = ask(**{**MIXED, "total": "2600"}, in_b="420")
    assert labelled(reply)["It makes"] == "1450 g" and labelled(reply)["Pour 2"] == "A 794, then B 357 g"
    assert reply["values"]["pours"]["si"] == 2
    assert "Bigger bucket" in [line["text"] for line in ask(**MIXED, in_b="500", bucket="1.5")["lines"]]


def test_less_than_the_scale_shows_is_not_added() -> None:
    reply = ask(total="14", ratio="100:45", by="weight", in_a="10", in_b="4.3", mixed="cool")
    assert reply["headline"]["text"] == "Add nothing" and "less than this scale shows" in reply["headline"]["say"]


@pytest.mark.parametrize("missing", ["in_a", "in_b"])
def test_mixed_needs_both_weights(missing: str) -> None:
    reply = ask(**{**MIXED, "in_b": "450", missing: "0"})
    assert [(error["field"], error["code"]) for error in reply["errors"]] == [(missing, "mixed-weight")]


# --- two scales -----------------------------------------------------------------------------------------


def test_two_scales_that_differ() -> None:
    reply = ask(total="1400", ratio="100:45", by="weight", this_scale="1000", other_scale="1012")
    assert labelled(reply)["The scales differ by"] == "12 g"
    assert labelled(reply)["B, if it must be on the other scale"] == "440 g"  # 435 x 1.012
    caution = next(entry for entry in reply["cautions"] if entry["id"] == "two-scales")
    assert "B 1.2 % short" in caution["text"] and "998 g for a litre" in caution["text"] and caution["tone"] == "go"


@pytest.mark.parametrize(("other", "tone"), [("1001", "go"), ("1030", "caution"), ("940", "stop"), ("1060", "stop")])
def test_how_far_apart_they_are_has_the_ratios_classes(other: str, tone: str) -> None:
    reply = ask(total="1400", ratio="100:45", by="weight", this_scale="1000", other_scale=other)
    caution = next(entry for entry in reply["cautions"] if entry["id"] == "two-scales")
    assert caution["tone"] == tone and ("agree" in caution["text"]) == (other == "1001")
    assert reply["headline"]["tone"] == "go"  # one scale for both parts keeps the ratio


def test_the_finer_scale_is_named() -> None:
    reply = ask(total="1400", ratio="100:45", by="weight", this_scale="1000", other_scale="1001", other_step="0.1")
    assert "finer steps" in next(entry["text"] for entry in reply["cautions"] if entry["id"] == "two-scales")


def test_one_reading_is_no_comparison() -> None:
    reply = ask(total="1400", ratio="100:45", by="weight", this_scale="1000")
    assert [(error["field"], error["code"]) for error in reply["errors"]] == [("other_scale", "one-scale")]


def test_ounces_compare_as_ounces() -> None:
    reply = ask("imperial", total="32", ratio="2:1", by="weight", this_scale="32", other_scale="32.8")
    assert labelled(reply)["The scales differ by"] == "0.8 oz"


def test_a_bucket_under_a_step_of_each_part_asks_for_a_finer_scale_or_a_larger_bucket() -> None:
    reply = desk.answer("how-much-to-weigh", {"total": "2600 g", "ratio": "100:10", "by": "weight", "bucket": "0.05 L", "step": "50 g"}, "metric",
                        {"bucket": "0.05 L", "step": "50 g"})
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["text"] == "Finer scale"
    assert "larger bucket" in reply["headline"]["say"] and "5000" not in reply["headline"]["say"]
    assert reply["values"]["smallest_batch"]["si"] > 2.6  # the ratio's own need does not hang on the bucket


def test_a_bucket_that_leaves_just_its_room_on_the_scale_has_nothing_to_take_out() -> None:
    reply = ask(total="5000", ratio="100:45", by="weight", capacity="2000", empty="1900")
    assert reply["headline"]["label"] == "Finer scale" and "-" not in reply["headline"]["text"]
    assert "50 pours" in reply["headline"]["say"]


def test_very_fine_steps_in_ounces_are_told_in_grams_too() -> None:
    say = ask("imperial", total="2", ratio="100:10", by="weight", step="0.1")["headline"]["say"]
    assert say.startswith("Weigh this batch on a scale with 0.002 oz (0.05 g) steps")  # 0.002 oz is 0.0567 g


def test_the_table_tells_grams_also_where_the_scale_is_coarse() -> None:
    rows = {row[0].split()[0]: row[1:] for row in desk.table("how-much-to-weigh", "metric")["rows"]}
    assert rows["100"][0] == "50 + 50, roughly" and rows["1000"][1] == "667 + 334"  # A up to the next gram, B half of it
    assert not any(cell.startswith("0.5") for row in rows.values() for cell in row)


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize(
    ("more", "inputs"),
    [
        ({}, {"ratio": "100:45"}),
        ({"density": "1.12 g/mL"}, {"ratio": "100:45", "density": "1.12 g/mL"}),
        ({"ratio": "2:1", "by": "volume", "density_a": "1.15 g/mL", "density_b": "0.98 g/mL"}, {"ratio": "100:42.6", "density": "1.09 g/mL"}),  # 0.98 / 2.30
    ],
)
def test_the_whole_amount_is_poured_in_one_go_only_where_its_depth_allows(more: dict[str, str], inputs: dict[str, str], units: str) -> None:
    reply = ask(units, **{"total": "2810 g", "ratio": "100:45", "by": "weight"} | more)
    (caution,) = [entry for entry in reply["cautions"] if "How deep and how hot?" in entry["text"]]
    assert caution["id"] == "layers" and "one layer at a time" in caution["text"]
    carry = reply["carries"][0]
    assert carry["to"] == "how-deep-how-hot" and carry["inputs"] == inputs
    pour = {"deepest": "50 mm", "depth": "42 mm", "shape": "round", "across": "332 mm", "room": "20 °C", "detail": "depths"}
    taken = desk.answer("how-deep-how-hot", pour | carry["inputs"], units, {})
    assert not taken["errors"] and not taken["queries"] and not taken["unasked"]


def test_pours_are_no_layers_and_a_stop_keeps_the_way_to_them() -> None:
    assert "The 2 pours here are what scale or bucket takes, not layers." in ask(**PLAIN)["text"]
    coarse = ask(total="60", ratio="100:45", by="weight", step="5")
    assert coarse["headline"]["tone"] == "stop" and [carry["to"] for carry in coarse["carries"]] == ["how-deep-how-hot"]
