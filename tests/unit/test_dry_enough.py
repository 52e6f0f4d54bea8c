"""Dry enough? What the maker reads, case by case."""

from __future__ import annotations

import re
from typing import Any

import pytest

from calc import desk


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("dry-enough", confirmed, units, confirmed)


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


def rules(reply: dict[str, Any]) -> list[str]:
    return [limit["id"] for limit in reply["limits"] if limit["rules"]]


@pytest.mark.parametrize(
    ("readings", "tone", "decides"),
    [("9 9.5 10", "go", "go"), ("9 10 11", "caution", "go"), ("12 12.5 13", "caution", "strong"), ("14 15.5 15", "stop", "stop")],
)
def test_the_wettest_reading_decides(readings: str, tone: str, decides: str) -> None:
    reply = ask(readings=readings)
    assert reply["headline"]["tone"] == tone and rules(reply) == [decides]


def test_a_strong_caution_shows_the_movement_and_what_may_open() -> None:
    say = ask(readings="12 13 13.5", species="maple-sugar", size="300")["headline"]["say"]
    # 300 (8 - 13.5) / (3000/9.9 - 30 + 13.5) = -5.76, rounded up
    assert "shrink by up to 5.8 mm across 300 mm" in say and "The bond opens, or the wood cracks" in say


def test_a_stop_leads_with_weighing_and_the_weight_when_dry() -> None:
    reply = ask(readings="18", mass="1240")
    assert reply["headline"]["text"] == "Wait" and reply["headline"]["tone"] == "stop"
    # 1240 * 1.10 / 1.18 = 1155.9, rounded down
    assert reply["headline"]["say"] == "Weigh it each week until it changes by less than 0.5 %. At 10 % it will weigh 1155 g."


def test_air_that_never_dries_it_says_how_dry_air_must_be() -> None:
    reply = ask(readings="18", humidity="70")
    assert "damp-shop" not in cautions(reply)  # it is said once
    assert reply["headline"]["say"].startswith("Dry it in air below 54 % humidity: in this air it stops at 13.")
    assert reply["changes"][0]["do"].startswith("Air below 54 % humidity")


def test_more_than_a_meter_can_tell() -> None:
    reply = ask(readings="12 40", mass="1000")
    assert "over 30 %" in reply["headline"]["label"] and "off-scale" in cautions(reply)
    assert "will weigh" not in reply["text"]  # nobody knows from what


def test_less_than_a_meter_can_tell_counts_as_its_lowest() -> None:
    reply = ask(readings="2 3 3")
    assert reply["values"]["moisture"]["shown"] == "4.0 %" and "below-scale" in cautions(reply)
    assert reply["lines"][0]["label"] == "It would swell up to"


def test_wood_too_dry_for_where_it_will_live_is_told_to_wait_and_never_to_hurry() -> None:
    reply = ask(readings="5 5.5 5", humidity="70")
    assert reply["headline"]["tone"] == "caution" and "few weeks in air of about 42 % humidity" in reply["headline"]["say"]
    assert "wrap" not in cautions(reply) and "damp-shop" not in cautions(reply) and "soon" not in reply["text"]
    assert "Cast it soon" in ask(readings="7 7 7.5", humidity="70")["text"]


def test_wood_that_is_as_dry_as_where_it_will_live_hardly_moves() -> None:
    line = ask(readings="8 8 8")["lines"][0]
    assert (line["label"], line["text"]) == ("It would hardly move", "0")


def test_inches_are_told_as_fractions_throughout() -> None:
    text = ask("imperial", readings="14 13 12", size="8 1/2")["text"]
    assert "across 8 1/2 in" in text and not re.search(r"\d\.\d+ in\b", text)


def test_cold_wood_is_set_up_and_a_meter_that_allows_for_it_is_not() -> None:
    assert ask(readings="9", wood="10")["values"]["moisture"]["shown"] == "10.0 %"
    assert ask(readings="9", shop="10")["values"]["moisture"]["shown"] == "10.0 %"
    assert ask(readings="9", wood="10", corrects="yes")["values"]["moisture"]["shown"] == "9.0 %"


def test_a_reading_of_ten_at_the_usual_temperature_is_ten_in_both_systems() -> None:
    for units in ("metric", "imperial"):
        assert ask(units, readings="10 10 10")["headline"]["tone"] == "go"


@pytest.mark.parametrize("figure", ["burl", "spalted"])
def test_a_meter_in_burl_or_spalted_wood_is_never_a_go(figure: str) -> None:
    reply = ask(readings="8 8 8", figure=figure)
    assert reply["headline"]["tone"] == "caution" and "Weigh it each week" in reply["headline"]["say"]
    assert ask(judged="oven", before="108", oven_dry="100", figure=figure)["headline"]["tone"] == "go"


@pytest.mark.parametrize(
    ("inputs", "tone", "label"),
    [
        ({"last": "1004", "now": "1000", "earlier": "1008"}, "go", "Moisture, steady in this air"),
        ({"last": "1004", "now": "1000"}, "caution", "Moisture, steady in this air"),
        ({"last": "1006", "now": "1000"}, "stop", "Not steady yet"),
        ({"last": "1004", "now": "1000", "earlier": "1030"}, "stop", "Not steady yet"),
        ({"last": "1000", "now": "1010"}, "stop", "Not steady yet"),
    ],
)
def test_a_weighing_log(inputs: dict[str, str], tone: str, label: str) -> None:
    headline = ask(judged="log", apart="7", humidity="45", **inputs)["headline"]
    assert (headline["tone"], headline["label"]) == (tone, label)


def test_a_log_says_which_way_the_weight_went() -> None:
    common = {"judged": "log", "apart": "7", "humidity": "45"}
    assert "It gained 1.0 % a week." in ask(**common, last="1000", now="1010")["headline"]["say"]
    assert "It lost 2.0 % a week." in ask(**common, last="1020", now="1000")["headline"]["say"]


def test_steady_in_damp_air_is_still_wet() -> None:
    reply = ask(judged="log", apart="7", humidity="75", last="1000", now="1000", earlier="1000")
    assert reply["headline"]["tone"] == "caution" and rules(reply) == ["strong"]


def test_a_log_needs_the_humidity_it_stood_in() -> None:
    error = ask(judged="log", apart="7", last="1000", now="1000")["errors"][0]
    assert (error["field"], error["code"]) == ("humidity", "humidity-for-log")


def test_an_oven_sample_and_its_contradictions() -> None:
    assert ask(judged="oven", before="136", oven_dry="100")["values"]["moisture"]["shown"] == "36.0 %"
    assert ask(judged="oven", before="100", oven_dry="101")["errors"][0]["code"] == "dry-heavier"
    assert ask(judged="oven", before="500", oven_dry="100")["errors"][0]["code"] == "wettest"
    assert ask(judged="oven", before="100", oven_dry="100")["values"]["moisture"]["shown"] == "0 %"


def test_an_analyser_gives_a_share_of_the_wet_weight() -> None:
    assert ask(judged="analyser", readings="9")["values"]["moisture"]["si"] == pytest.approx(0.0989, abs=0.0001)


def test_not_measured_leads_with_how_to_measure() -> None:
    reply = ask(judged="none")
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["text"] == "Measure it"
    assert reply["values"]["moisture"]["si"] is None and reply["values"]["emc_here"]["si"] == pytest.approx(0.092, abs=0.001)


def test_dry_country_asks_for_drier_wood_and_own_air_is_worked_out() -> None:
    assert ask(readings="9 9 9", home="dry")["headline"]["tone"] == "caution"
    reply = ask(readings="9 9 9", home="own", home_temperature="20", home_humidity="50")
    assert reply["values"]["home"]["si"] == pytest.approx(0.0927, abs=0.0001)


def test_a_wood_without_a_shrinkage_says_what_stands_in() -> None:
    assert "species" in cautions(ask(readings="9", species="olive"))
    assert "species" not in cautions(ask(readings="9", species="walnut-black"))


def test_readings_far_apart_and_too_few() -> None:
    assert "uneven" in cautions(ask(readings="7 8 9.5")) and "uneven" not in cautions(ask(readings="7 8 9"))
    assert "few" in cautions(ask(readings="7 8"))


def test_decimal_commas_are_decimals() -> None:
    assert ask(readings="12,5 11,5")["values"]["moisture"] == ask(readings="12.5 11.5")["values"]["moisture"]
    assert ask(readings="12,5")["errors"][0]["message"] == "Readings: the comma in '12,5' can be read two ways. Write 12, 5 or 12.5."


def test_why_the_readings_told_are_not_those_typed_is_said_beside_them() -> None:
    cold = ask(readings="10 11 12", shop="18")
    assert cold["headline"]["label"] == "Moisture, wettest reading, in wood of 18 °C"
    assert cold["band"]["text"].endswith("You typed 10.0 to 12.0 %: a meter reads too low in cold wood, and yours is at 18 °C.")
    assert ask(readings="11", shop="20")["values"]["moisture"]["shown"] == "11.0 %", "near the 21 degrees that a meter is set for it is left alone"
    assert "too high in warm wood" in ask(readings="10", shop="30")["band"]["text"]
    assert "You typed" not in ask(readings="10 11 12", shop="18", corrects="yes")["text"]
    assert "of the wet weight" in ask(judged="analyser", readings="8 9")["band"]["text"]


def test_wood_whose_movement_nobody_took_says_so_in_the_list() -> None:
    for option in next(field for field in desk.describe("dry-enough")["fields"] if field["name"] == "species")["options"]:
        guessed = "species" in cautions(ask(readings="12", species=option["value"]))
        assert guessed == (option["label"].endswith("(movement not known)") or option["value"] == "unknown"), option


def test_wood_and_air_go_on() -> None:
    piece = {"species": "elm-wych", "figure": "burl", "mass": "780"}
    carried = {carry["to"]: carry["inputs"] for carry in ask(readings="8", shop="18", humidity="50", wood="16", **piece)["carries"]}
    assert carried["how-much-wood"] == {"species": "elm-wych", "form": "burl", "moisture": "8.5 %", "weight": "780 g"}  # 0.5 % for each 10 °F under 70: 0.46
    assert carried["is-the-air-right"] == {"room": "18 °C", "humidity": "50 %", "surface": "16 °C"}
    for to, inputs in carried.items():
        taken = desk.answer(to, {"rise": "1250", **inputs} if to == "how-much-wood" else inputs, "metric", {})
        assert not taken["errors"] and not taken["queries"] and not taken["unasked"]
    stop = {carry["to"]: carry["inputs"] for carry in ask(readings="20", humidity="50", **piece)["carries"]}
    assert stop == {"how-much-wood": {"species": "elm-wych", "form": "burl"}, "is-the-air-right": {"humidity": "50 %"}}
