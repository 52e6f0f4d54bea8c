"""Is the air right? What the maker reads, case by case."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk
from calc.casting import air, warming


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("is-the-air-right", confirmed, units, confirmed)


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


def test_a_dry_shop_shows_no_stop() -> None:
    reply = ask(room="20", humidity="55", surface="19")
    assert reply["headline"]["text"] == "No stop found" and reply["headline"]["tone"] == "go"
    assert reply["headline"]["say"] == "Pouring is your call. Dew point 11 °C; the coldest surface is 8 °C above it (3 °C wanted)."
    assert reply["cautions"] == []


def test_cold_wood_leads_with_what_to_wait_for() -> None:
    reply = ask(room="24", humidity="55", surface="12", thickness="50")  # dew point 14.4, 70 % at 20.0 °C
    headline = reply["headline"]
    assert headline["label"] == "Wait until the coldest surface is at" and headline["tone"] == "stop"
    assert int(headline["text"]) >= reply["values"]["dew_point"]["si"] - 273.15 + 3
    assert "dew" in cautions(reply)
    assert any(line["label"].startswith("Wood warm through") for line in reply["lines"])


def test_what_was_waited_for_is_then_enough() -> None:
    """The figure a stop leads with is no stop once it is reached, nor likely to blush."""
    for inputs in ({"room": "24", "humidity": "55", "surface": "12"}, {"room": "22", "humidity": "62", "surface": "3"}):
        first = ask(**inputs)
        assert first["values"]["verdict"]["si"] == 2
        again = ask(**{**inputs, "surface": first["headline"]["text"]})
        assert again["values"]["verdict"]["si"] < 2 and "blush" not in cautions(again)


def test_warming_the_room_keeps_the_water() -> None:
    """Room and surfaces at the figure told, at the humidity told: no stop and no blush."""
    first = ask(room="16", humidity="88")
    assert first["headline"]["label"] == "Warm the room to" and "flame" in cautions(first)
    warmed = first["headline"]["text"]
    humidity = 100 * air.humidity_at(first["values"]["dew_point"]["si"], float(warmed) + 273.15)
    again = ask(room=warmed, humidity=f"{humidity:.3f}")
    assert again["values"]["verdict"]["si"] < 2 and "blush" not in cautions(again)


def test_drying_the_air_to_the_figure_told_is_enough() -> None:
    first = ask(room="30", humidity="90")
    assert first["headline"]["label"] == "Dry the air to" and first["headline"]["unit"] == "%"
    assert ask(room="30", humidity=first["headline"]["text"])["values"]["verdict"]["si"] < 2


def test_cold_and_damp_is_a_caution() -> None:
    reply = ask(room="16", humidity="71")
    assert reply["headline"]["tone"] == "caution" and {"blush", "surface"} <= cautions(reply)
    assert [limit["id"] for limit in reply["limits"] if limit["rules"]] == ["blush"]


@pytest.mark.parametrize(("humidity", "blush"), [("69.9", False), ("70.1", True)])
def test_blush_at_its_humidity(humidity: str, blush: bool) -> None:
    assert ("blush" in cautions(ask(room="19", humidity=humidity, surface="19"))) is blush


@pytest.mark.parametrize(("room", "blush"), [("19.9", True), ("20.1", False)])
def test_blush_at_its_temperature(room: str, blush: bool) -> None:
    assert ("blush" in cautions(ask(room=room, humidity="75"))) is blush


@pytest.mark.parametrize(("over", "stopped"), [(3.01, False), (2.99, True)])
def test_three_degrees_over_the_dew_point(over: float, stopped: bool) -> None:
    dew = 16.69  # 25 °C at 60 %: case A6
    reply = ask(room="25", humidity="60", surface=f"{dew + over:.3f}")
    assert (reply["headline"]["tone"] == "stop") is stopped


@pytest.mark.parametrize(("humidity", "stopped"), [("84.9", False), ("85.1", True)])
def test_eighty_five_percent(humidity: str, stopped: bool) -> None:
    assert (ask(room="25", humidity=humidity, surface="30")["headline"]["tone"] == "stop") is stopped


def test_poor_instruments_make_a_close_call_a_caution() -> None:
    close = {"room": "20", "humidity": "80"}
    headline = ask(**close)["headline"]
    assert (headline["text"], headline["tone"]) == ("No stop found", "caution")
    assert headline["say"].startswith("Warm every surface by ") and "your call" in headline["say"]
    assert ask(**close, humidity_error="1", temperature_error="0.2")["headline"]["tone"] == "go"


def test_the_band_holds_the_margin() -> None:
    reply = ask(room="20", humidity="65", surface="18")
    low, high = (float(reply["band"][end].split()[0]) for end in ("low", "high"))
    assert low < reply["values"]["margin"]["si"] < high


def test_the_store_stands_in_until_it_is_measured() -> None:
    reply = ask(room="22", humidity="50", store="3")
    assert reply["headline"]["tone"] == "stop" and "store" in cautions(reply)
    measured = ask(room="22", humidity="50", store="3", surface="21")
    assert measured["headline"]["tone"] == "go" and "store" not in cautions(measured)
    assert ask(room="22", humidity="50", store="30")["headline"]["tone"] == "go"  # a warm store cools nothing


def test_cold_resin_counts_as_a_surface() -> None:
    reply = ask(room="22", humidity="50", surface="21", resin="8")
    assert reply["headline"]["label"] == "Wait until the resin is at"


def test_warm_resin_says_what_it_costs() -> None:
    reply = ask(room="20", humidity="50", surface="20", resin="35", working="40")
    assert "warm-resin" in cautions(reply)
    assert reply["values"]["working"]["shown"] == "20 min"  # the sheet's 25 °C and ten more: half
    lines = {line["label"]: line for line in reply["lines"]}
    assert lines["Resin at 35 °C is"]["text"] == "0.27 times"  # exp(65000 / 8.314 (1/308.15 - 1/293.15))


@pytest.mark.parametrize("room", ["10", "15", "24.9"])
def test_cold_resin_gains_no_time_over_the_sheet(room: str) -> None:
    reply = ask(room=room, humidity="50", working="240")
    assert reply["values"]["working"]["shown"] == "240 min"
    assert {line["label"]: line["text"] for line in reply["lines"]}["Working time, at most"] == "240"


def test_a_surface_under_the_dew_point_is_told_as_too_cold() -> None:
    """It lacks what it is to be warmed by, not what it lacks to the dew point."""
    headline = ask(room="24", humidity="55", surface="12")["headline"]
    target = int(headline["text"])
    assert f"the coldest surface is {target - 12} °C too cold: water settles on it; warm it to {target} °C." in headline["say"]
    assert "below it" not in headline["say"] and "wanted" not in headline["say"]


def test_warm_resin_without_a_sheet_says_the_share() -> None:
    lines = {line["label"]: line["text"] for line in ask(room="20", humidity="50", resin="30")["lines"]}
    assert lines["Working time left"] == "50 %"


def test_it_never_warms_where_the_room_is_too_cold() -> None:
    with pytest.raises(ValueError, match="not warmer"):
        warming.time_to_warm(0.05, 278.15, 285.15, 290.15)
    assert warming.time_to_warm(0.05, 291.15, 285.15, 290.15) == 0.0


def test_fahrenheit_typed_in_a_metric_shop_is_offered() -> None:
    error = ask(room="68", humidity="50")["errors"][0]
    assert error["field"] == "room" and {"label": "68 °F", "value": "68 °F"} in error["choices"]


def test_imperial_wants_five_point_four() -> None:
    assert "(5.4 °F wanted)" in ask("imperial", room="70", humidity="50")["headline"]["say"]


def test_the_hygrometer_has_its_margin_before_the_air_blushes() -> None:
    """68 % at 18 °C may be 73 %: past the 70 % from where it blushes this cold. With a better hygrometer it is not."""
    reply = ask(room="18", humidity="68")
    assert reply["headline"]["tone"] == "caution" and reply["headline"]["text"] == "No stop found"
    assert reply["headline"]["say"].startswith("Dry the air until it reads 65 %, or warm it: 5 % off, your hygrometer may mean over 70 %")
    assert ask(room="18", humidity="65")["headline"]["tone"] == "go"
    assert ask(room="18", humidity="68", humidity_error="1", temperature_error="0.5")["headline"]["tone"] == "go"
    damp = ask(room="28", humidity="83", humidity_error="3", surface="40", temperature_error="0")
    assert damp["headline"]["tone"] == "caution" and "may mean over 85 %" in damp["headline"]["say"]


def test_drying_leaves_the_hygrometers_error() -> None:
    reply = ask(room="18", humidity="80")
    assert "Or dry the air to 65 %. That leaves 5 % for your hygrometer." in reply["headline"]["say"]
    assert ask(room="18", humidity="65")["values"]["verdict"]["si"] == 0


def test_the_air_goes_on_and_a_stop_keeps_what_still_holds() -> None:
    carried = {carry["to"]: carry["inputs"] for carry in ask(room="22", humidity="50", resin="30")["carries"]}
    assert carried == {
        "dry-enough": {"shop": "22 °C", "humidity": "50 %"}, "before-a-pour": {"room": "22 °C", "resin": "30 °C"}, "when-can-i": {"room": "22 °C"}
    }  # fmt: skip
    assert [carry["to"] for carry in ask(room="16", humidity="90")["carries"]] == ["dry-enough"]
    assert not ask(room="-5", humidity="99")["carries"]


@pytest.mark.parametrize(("room", "code"), [("-40", "too-cold"), ("90", "too-hot")])
def test_a_temperature_is_never_small(room: str, code: str) -> None:
    (error,) = ask(room=room, humidity="60")["errors"]
    assert error["code"] == code and "small" not in error["message"] and f"{room} °C is" in error["message"]
