"""When can I? What the maker reads, case by case."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk
from calc.errors import InputError
from calc.questions._when.hours import after, clock_time
from calc.times import HOUR, time_of_day

POUR = {"resin": "standard", "depth": "8", "across": "200", "room": "20"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    asked = {name: text for name, text in (POUR | inputs).items() if text}
    return desk.answer("when-can-i", asked, units, asked)


def hours(reply: dict[str, Any], name: str) -> float:
    return float(reply["values"][name]["si"]) / HOUR


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


def error(reply: dict[str, Any]) -> dict[str, str]:
    (only,) = reply["errors"]
    return {"field": only["field"], "code": only["code"], "message": only["message"]}


# ---------------------------------------------------------------- the clock


@pytest.mark.parametrize("depth", ["8", "10", "12"])
def test_what_is_handed_to_the_gates_is_no_less_than_what_is_told(depth: str) -> None:
    """Told as days, in halves: the gate does not open before them."""
    reply = ask(depth=depth, resin="slow")
    head = reply["headline"]
    told_h = float(head["text"]) * {"days": 24, "h": 1}[head["unit"]]
    handed = next(carry["inputs"]["leave"] for carry in reply["carries"] if carry["to"] == "before-the-lathe")
    assert told_h <= float(handed.removesuffix(" h")) <= 1.05 * told_h


def test_it_leads_with_when_it_leaves_the_mould() -> None:
    reply = ask()
    assert reply["headline"]["label"] == "Leave the mould after" and reply["headline"]["tone"] == "go"
    assert reply["headline"]["say"].startswith("Until then: pour, level and top up within ")
    assert [line["label"] for line in reply["lines"]][:2] == ["Pour, level, top up", "Swirl"]
    assert hours(reply, "working") < hours(reply, "dry") < hours(reply, "leave") < hours(reply, "rough") <= hours(reply, "cured")


def test_what_is_read_is_never_sooner_than_what_was_worked_out() -> None:
    reply = ask()
    for name in ("layer_from", "dry", "leave", "rough", "cured"):
        shown, exact = reply["values"][name]["shown"], reply["values"][name]["si"]
        number, unit = shown.split()
        assert float(number) * {"h": HOUR, "days": 24 * HOUR, "min": 60.0}[unit] >= exact


def test_the_hour_of_the_pour_gives_times_of_day() -> None:
    reply = ask(poured="2:30 pm")
    (grid,) = reply["grids"]
    assert grid["head"][-1] == "By the clock"
    assert any("the next day" in row[-1] for row in grid["rows"])
    assert reply["headline"]["say"].startswith("That is ")
    assert len(ask()["grids"][0]["head"]) == 2


def test_a_cold_night_makes_it_wait_and_says_what_a_warm_one_would_do() -> None:
    even, night = ask(poured="16:00"), ask(poured="16:00", night_cools="yes", night="10")
    for name in ("dry", "leave", "rough", "cured"):
        assert hours(night, name) > hours(even, name)
    assert any(change["do"] == "No colder by night" for change in night["changes"])


def test_the_sheet_counts_where_it_is_longer() -> None:
    free = ask()
    long, short = ask(demould="400 h", cure="40 days", sheet_temperature="20"), ask(demould="1 h", cure="10 h", sheet_temperature="20")
    assert hours(long, "leave") == 400 and hours(long, "cured") == 960
    assert hours(short, "leave") == hours(free, "leave") and hours(short, "cured") == hours(short, "rough")
    assert [limit["id"] for limit in long["limits"] if limit["rules"]] == ["sheet"]


def test_the_sheets_times_are_longer_in_a_colder_shop_and_never_shorter() -> None:
    cold, warm = ask(demould="400 h", sheet_temperature="30"), ask(demould="400 h", sheet_temperature="12")
    assert hours(cold, "leave") > 700 and hours(warm, "leave") == 400  # 54 kJ/mol: 20 against 30 °C is a factor of 2.08


def test_the_window_for_the_next_layer() -> None:
    known = ask(resin="cup", cup_gel="38", cup_heat="380", cup_shape="0.33", depth="30", room="23")
    assert hours(known, "layer_from") < hours(known, "layer_to")
    line = next(line for line in known["lines"] if line["label"] == "Next layer")
    assert " to " in line["text"]
    vague = ask(resin="slow", depth="30", room="23")
    assert hours(vague, "layer_from") > hours(vague, "layer_to")
    assert any(line["label"] == "Next layer, scuffed" and line["text"].startswith("from ") for line in vague["lines"])


def test_the_swirl_of_a_slow_deep_pour_is_common_practice() -> None:
    """Three to five hours for the pour they are told of: 50 mm deep at 23 °C."""
    reply = ask(resin="slow", depth="50", across="200", room="23", wall="board", waited="0", wood="20")
    assert 2.5 < hours(reply, "swirl_from") < 5 and 4.2 < hours(reply, "swirl_to") < 8
    for depth in ("4", "15", "40"):
        thin = ask(resin="slow", depth=depth, room="18")
        assert hours(thin, "swirl_from") < hours(thin, "swirl_to") < hours(thin, "layer_from")
    quick = ask(resin="fast", depth="3")
    assert hours(quick, "swirl_to") < 1


def test_thick_fast_resin_keeps_bubbles_that_are_seen() -> None:
    assert "bubbles" in cautions(ask(resin="fast", depth="4", viscosity="9000"))
    slow = ask(resin="slow", depth="20")
    assert "bubbles" not in cautions(slow) and any(line["label"] == "Bubbles" for line in slow["lines"])


def test_each_mould_has_its_own_clock() -> None:
    reply = ask(other_depths="4 12", other_widths="60 100")
    assert [grid["title"] for grid in reply["grids"]] == ["This mould, 8 mm deep", "Mould 2, 4 mm deep", "Mould 3, 12 mm deep"]
    assert len({str(grid["rows"]) for grid in reply["grids"]}) == 3


@pytest.mark.parametrize(
    "resin",
    [
        {},
        {"deepest": "10"},
        {"resin": "pot", "pot_life": "90", "pot_means": "pour", "ratio": "100:43", "deepest": "10"},
        {"resin": "cup", "cup_gel": "7 h", "cup_heat": "380", "cup_shape": "0.2"},
    ],
)
def test_the_same_pour_is_asked_how_deep_and_how_hot(resin: dict[str, str]) -> None:
    for more in ({}, {"shape": "oblong", "length": "300", "width": "100", "across": "", "fan": "yes", "wood": "20"}):
        carry = ask(**resin, **more)["carries"][0]
        there = desk.answer(carry["to"], carry["inputs"])
        assert carry["to"] == "how-deep-how-hot" and not there["errors"] and not there["queries"] and not there["unasked"], there["text"]


# ---------------------------------------------------------------- what was seen counts


def test_a_gel_that_was_seen_sets_the_clock_right() -> None:
    free = ask()
    late = ask(seen_gel="16")
    for name in ("dry", "leave", "rough"):
        assert hours(late, name) > hours(free, name)
    assert "in 2 of 3 cases within 15 %" in late["band"]["text"]


def test_a_fingernail_counts_instead_of_the_model() -> None:
    reply = ask(seen_hard="30")
    assert hours(reply, "leave") == pytest.approx(30) and hours(reply, "rough") > 30
    assert next(limit for limit in reply["limits"] if limit["id"] == "stiff")["why"] == "As you saw."


# ---------------------------------------------------------------- refusals


def test_a_thin_film_of_a_very_fast_system_is_refused() -> None:
    bare, printed = ask(resin="pot", pot_life="10", depth="3"), ask(resin="pot", pot_life="10", depth="3", demould="9 h")
    assert bare["headline"]["tone"] == printed["headline"]["tone"] == "stop"
    assert bare["headline"]["text"] == "Go by the sheet" and printed["headline"]["text"] == "9"
    assert bare["values"]["leave"]["si"] is None
    assert ask(resin="pot", pot_life="25", depth="3")["values"]["leave"]["si"] is not None


def test_a_pour_that_runs_away_has_no_hours() -> None:
    reply = ask(resin="fast", depth="60")
    assert reply["headline"]["text"] == "Pour it in layers" and reply["headline"]["tone"] == "stop"
    assert reply["values"]["leave"]["si"] is None and "runaway" in cautions(reply)


def test_deeper_than_the_sheet_is_a_stop_beside_the_hours() -> None:
    reply = ask(resin="pot", pot_life="90", depth="12", deepest="10")
    assert any(caution["id"] == "over-sheet" and caution["tone"] == "stop" for caution in reply["cautions"])


# ---------------------------------------------------------------- input


@pytest.mark.parametrize(
    ("inputs", "field", "code"),
    [
        ({"poured": "half past"}, "poured", "clock"),
        ({"poured": "25:10"}, "poured", "clock"),
        ({"night_cools": "yes", "night": "12"}, "poured", "poured-needed"),
        ({"poured": "14:00", "night_cools": "yes", "night": "25"}, "night", "warmer-night"),
        ({"poured": "14:00", "night_cools": "yes", "night": "12", "night_from": "7:00"}, "night_to", "no-night"),
        ({"other_depths": "10 20", "other_widths": "60"}, "other_widths", "one-each"),
        ({"other_depths": "10"}, "other_widths", "one-each"),
        ({"resin": "pot", "pot_life": "900", "pot_means": "hot50"}, "pot_means", "never-so-hot"),
        ({"resin": "fast", "waited": "110"}, "waited", "stood-too-long"),
        ({"seen_gel": "90"}, "seen_gel", "far-off"),
        ({"depth": "-3"}, "depth", "not-positive"),
        ({"depth": "0"}, "depth", "not-positive"),
        ({"depth": "9000"}, "depth", "too-large"),
    ],
)
def test_what_cannot_be_used_is_said(inputs: dict[str, str], field: str, code: str) -> None:
    found = error(ask(**inputs))
    assert (found["field"], found["code"]) == (field, code)
    assert found["message"] and "{" not in found["message"]


def test_times_of_day_as_they_are_written() -> None:
    written = {"14:30": 14.5, "2.30pm": 14.5, "2 p.m.": 14, "0:05": 1 / 12, "12:15 am": 0.25, "24:00": 0, "9h15": 9.25, "0715": 7.25}
    for text, hour in written.items():
        assert time_of_day("poured", text, "metric") / HOUR == pytest.approx(hour), text
    for text in ("", "noonish", "13 pm", "0 am", "12:60", "1:2:3"):
        with pytest.raises(InputError):
            time_of_day("poured", text, "metric")


def test_where_clocks_have_am_and_pm_the_half_is_asked_for_and_told() -> None:
    found = error(ask("imperial", across="8", depth="1/4", room="68", poured="2:30"))
    assert (found["field"], found["code"]) == ("poured", "which-half")
    assert found["message"] == "Poured at: '2:30' may be morning or evening. Write 2:30 am or 2:30 pm."
    by_clock = [ask("imperial", across="8", depth="1/4", room="68", poured=text)["grids"][0]["rows"] for text in ("2:30 pm", "14:30")]
    assert by_clock[0] == by_clock[1] and all(row[-1].count(":") == row[-1].count(" am") + row[-1].count(" pm") for row in by_clock[0])
    assert desk.convert("when-can-i", {"poured": "2:30 pm"}, "imperial") == {"poured": "2:30 pm"}
    there = desk.convert("when-can-i", {"poured": {"typed": "2:30 pm", "units": "imperial"}}, "metric")
    back = desk.convert("when-can-i", {"poured": {"typed": "0:05", "units": "metric"}}, "imperial")
    assert (there["poured"], back["poured"]) == ("14:30", "12:05 am")


def test_hours_are_rounded_away_from_harm() -> None:
    assert (after(10.1 * HOUR, "up"), after(10.1 * HOUR, "down")) == ("10.5 h", "10 h")
    assert after(80 * HOUR, "up") == "3.5 days"
    assert clock_time(14.5 * HOUR, 9.6 * HOUR, "up", "metric") == "0:30 the next day"
    assert clock_time(14.5 * HOUR, 80 * HOUR, "up", "metric") == "the morning of the 4th day after"  # 2:30 on that day
    assert clock_time(8 * HOUR, 80 * HOUR, "up", "metric") == "the morning of the 4th day after"  # 20:00 on the third: looked at next morning
