"""Where is the weight? On the free spindle: by a weight hung on, by the time of its swing, and when neither tells anything."""

from __future__ import annotations

import math
from typing import Any

import pytest

from calc import desk
from calc.turning import swing

HUNG = {"way": "hung", "sweep": "400", "hung": "80", "hung_at": "140"}
SWING = {"way": "swing", "across": "400", "mass": "5 kg", "timings": "40"}
STAYS = {"way": "swing", "across": "300", "mass": "4 kg", "swings": "no"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("where-is-the-weight", confirmed, units, confirmed)


def value(reply: dict[str, Any], name: str) -> float:
    found: float = reply["values"][name]["si"]
    return found


def cautions(reply: dict[str, Any]) -> dict[str, str]:
    return {caution["id"]: caution["tone"] for caution in reply["cautions"]}


def lines(reply: dict[str, Any]) -> dict[str, tuple[str, str]]:
    return {line["label"]: (line["text"], line["note"]) for line in reply["lines"]}


def code(reply: dict[str, Any]) -> tuple[str, str]:
    assert reply["headline"] is None and reply["errors"][0]["message"] and "{" not in reply["errors"][0]["message"]
    return reply["errors"][0]["field"], reply["errors"][0]["code"]


# --- a weight hung on --------------------------------------------------------------------------------------


def test_a_weight_on_the_free_spindle() -> None:
    reply = ask(**HUNG)
    assert (reply["headline"]["label"], reply["headline"]["text"]) == ("Fix on the light side", "80")
    assert "140 mm out, where it hung" in reply["headline"]["say"]
    assert value(reply, "unbalance") == pytest.approx(0.0112)
    told = {"diameter": "400 mm", "balance": "weight", "weight": "80 g", "weight_radius": "140 mm"}
    assert [carry["inputs"] for carry in reply["carries"]] == [told, {"diameter": "400 mm"}]
    assert code(ask(**{**HUNG, "hung_at": "210"})) == ("hung_at", "beyond")


def test_friction_is_told_and_may_hide_it_all() -> None:
    assert "up to 12 g" in ask(**HUNG, sticks="12")["band"]["text"] and "friction" not in cautions(ask(**HUNG, sticks="12"))
    assert "friction" in cautions(ask(**HUNG, sticks="90"))


@pytest.mark.parametrize("spindle, first", [("belt", "Belt off"), ("direct", "Off the lathe")])
def test_a_spindle_that_is_not_free_tells_nothing(spindle: str, first: str) -> None:
    for way in ({"way": "hung", "sweep": "400"}, {"way": "swing", "across": "400", "mass": "5 kg"}):
        reply = ask(**way, spindle=spindle)
        assert (reply["headline"]["text"], reply["headline"]["tone"]) == (first, "stop") and reply["values"]["weight"]["si"] is None


# --- its swing -----------------------------------------------------------------------------------------------


def test_ten_swings_in_forty_seconds() -> None:
    """J = 5 x 0.4^2 / 8 = 0.1 kg m2; 4 pi^2 x 0.1 / (9.80665 x 16) = 25.16 kg mm; 170 mm out that is 148 g, at the top as it hangs still."""
    reply = ask(**SWING)
    assert value(reply, "unbalance") == pytest.approx(0.02516, abs=0.00001) and value(reply, "off") == pytest.approx(0.00503, abs=0.00001)
    head = reply["headline"]
    assert (head["label"], head["text"], head["unit"]) == ("Hang on the light side", "150", "g") and head["say"].startswith("170 mm out, at 12 o'clock.")
    assert lines(reply)["Heavy spot"][0] == "6 o'clock" and "overrules the timing" in lines(reply)["Then it should"][1]
    assert "up to 30° to each side" in lines(reply)["One swing"][1] and "throw" in cautions(reply)
    assert value(ask(**SWING | {"timings": "80"}, counted="20"), "unbalance") == pytest.approx(value(reply, "unbalance"))


def test_a_chuck_swings_along() -> None:
    """4 kg and 150 mm across: 0.01125 kg m2 more, so 11.25 % more out of balance, but no heavier a blank."""
    alone, chucked = ask(**SWING), ask(**SWING, chuck_mass="4", chuck_across="150")
    assert value(chucked, "unbalance") == pytest.approx(1.1125 * value(alone, "unbalance")) and value(chucked, "mass") == value(alone, "mass")
    assert code(ask(**SWING, chuck_mass="4")) == ("chuck_across", "missing")
    small = SWING | {"across": "150", "mass": "1 kg", "timings": "15"}
    assert "chuck" in cautions(ask(**small)) and "chuck" not in cautions(alone) | cautions(ask(**small, chuck_mass="2", chuck_across="100"))


def test_corners_swing_slower_than_a_round_of_that_side() -> None:
    """m a^2 / 6 for a square, m D^2 / 8 for the round in it; and m (a^2 + b^2) / 12 where the sides differ."""
    square = {"way": "swing", "blank": "square", "side": "300", "mass": "5 kg", "timings": "40"}
    round_one = ask(**SWING | {"across": "300"})
    assert value(ask(**square), "unbalance") == pytest.approx(8 / 6 * value(round_one, "unbalance"))
    assert value(ask(**square, other_side="150"), "unbalance") == pytest.approx((1 + 0.25) / 12 * 8 * value(round_one, "unbalance"))
    assert "Square cornered" in ask(**square)["drawings"][0]["says"]


def test_a_wide_swing_is_reckoned_in_and_said() -> None:
    """30 degrees to each side take 1.74 % longer than a small swing: 3.51 % more out of balance than its formula tells."""
    small, thirty, wide = ask(**SWING), ask(**SWING, reach="30"), ask(**SWING, reach="60")
    assert value(thirty, "unbalance") == pytest.approx(1.0351 * value(small, "unbalance"), rel=1e-4)
    assert "wide" in cautions(wide) and "wide" not in cautions(thirty) | cautions(small)
    assert "reckoned in" in lines(thirty)["One swing"][1]


def test_several_timings_tell_how_sure_it_is() -> None:
    def width(reply: dict[str, Any]) -> float:
        low, high = (float(reply["band"][end].split()[0]) for end in ("low", "high"))
        return high - low

    light = SWING | {"mass": "2 kg"}
    one, three, apart = ask(**light | {"counted": "1", "timings": "4"}), ask(**light | {"timings": "40.1 39.9 40"}), ask(**light | {"timings": "38 42 40"})
    assert width(three) < width(one) and width(three) < width(apart)
    assert value(three, "unbalance") == pytest.approx(value(apart, "unbalance"))
    assert "miscount" in cautions(apart) and "miscount" not in cautions(three)
    assert code(ask(**SWING | {"timings": "40 20"})) == ("timings", "times-apart")


def test_timings_that_cannot_be() -> None:
    """Ten swings in 5 s: 1610 kg mm of 5 kg is 322 mm off, past the rim. Half swings counted as whole ones look like that."""
    assert code(ask(**SWING | {"timings": "5"})) == ("timings", "too-quick")
    assert code(ask(**SWING | {"timings": "0"})) == ("timings", "not-positive")
    assert code(ask(**SWING | {"timings": "-40"}))[0] == "timings"
    assert code(ask(**SWING, counted="2.5")) == ("counted", "not-whole")
    assert code(ask(**SWING | {"mass": "0"})) == ("mass", "not-positive")


def test_what_stays_is_under_the_spindles_friction() -> None:
    """12 g at 130 mm moves it: up to 1.56 kg mm may be out of it."""
    reply = ask(**STAYS, least="12", least_at="130", lathe="floor")
    head = reply["headline"]
    assert (head["text"], head["tone"]) == ("Nothing shows", "go") and "under the spindle's friction" in head["say"] and "up to 12 g" in head["say"]
    assert value(reply, "unbalance") == pytest.approx(0.00156) and not reply["extra"]["weights"] and not {"throw", "friction"} & set(cautions(reply))
    assert "no heavy spot shows" in reply["drawings"][0]["says"] and "spot" not in [mark["look"] for mark in reply["drawings"][0]["marks"]]
    felt = ask(**STAYS, least="60", least_at="130")
    assert felt["headline"]["tone"] == "caution" and "two supports and a scale" in felt["headline"]["say"]
    # nothing tried: 0.3 % of 300 mm, times 4 kg
    assert value(ask(**STAYS), "unbalance") == pytest.approx(0.0036) and "friction" in cautions(ask(**STAYS))
    assert code(ask(**STAYS, least="12")) == ("least_at", "missing")
    assert code(ask(**STAYS, least="12", least_at="160")) == ("least_at", "beyond")


def test_a_make_up_tells_how_long_it_would_swing() -> None:
    """Half wood: 3.1809 kg and 300 mm make 0.03578 kg m2; with 56.25 kg mm one swing takes 2 pi sqrt(0.03578 / (0.05625 x 9.80665)) = 1.60 s."""
    half = {"way": "mounted", "across": "300", "thickness": "50", "wood1_shape": "half", "wood1_by": "density", "wood1_density": "0.65"}
    text, note = lines(ask(**half))["To check it, one swing takes"]
    assert text == "1.6" and "choose its swing above" in note
    timed = ask(way="swing", across="300", mass="3.1809 kg", timings="16.00")
    assert value(timed, "unbalance") == pytest.approx(value(ask(**half), "unbalance"), rel=0.005)
    # mounted 20 mm off: 3.1809 kg x 20^2 mm2 more about the spindle
    off = ask(**half | {"wood1_density": "1.15"}, off="20", off_clock="3")
    inertia, out = value(off, "mass") * (0.3**2 / 8 + 0.020**2), value(off, "mass") * 0.020
    assert lines(off)["To check it, one swing takes"][0] == f"{2 * math.pi * math.sqrt(inertia / (out * 9.80665)):.1f}"


def test_the_time_of_a_swing_there_and_back() -> None:
    assert swing.unbalance_of_swing(0.1, swing.period_of_swing(0.1, 0.0123)) == pytest.approx(0.0123)
    assert swing.lengthening(0.0) == 1 and swing.lengthening(math.radians(90)) == pytest.approx(1.18034, abs=1e-5)  # tables of pendulums


def test_units_never_change_the_answer() -> None:
    inches = SWING | {"across": f"{400 / 25.4:.9f} in", "mass": f"{5 / 0.45359237:.9f} lb"}
    one, other = ask(**SWING, at="100 mm"), ask("imperial", **inches, at="100 mm")
    for name in ("mass", "off", "unbalance", "weight", "under", "pull"):
        assert value(other, name) == pytest.approx(value(one, name), rel=1e-6), name


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize(
    "inputs",
    [
        HUNG,
        HUNG | {"about": "6 kg"},
        SWING | {"lathe": "floor", "lathe_mass": "180 kg"},
        STAYS,
        {"way": "scale", "sweep": "300", "mass": "4000", "apart": "250", "at_3": "2100", "at_12": "2000"},
        {"way": "mounted", "across": "300", "thickness": "50", "wood1_across": "100", "wood1_out": "60", "lathe": "midi"},
    ],
    ids=["hung", "hung and weighed", "swing", "stays", "scale", "mounted"],
)
def test_what_it_hands_on_is_taken(inputs: dict[str, str], units: str) -> None:
    typed = {name: {"typed": text, "units": "metric"} for name, text in inputs.items()}
    carries = {carry["to"]: carry["inputs"] for carry in desk.answer("where-is-the-weight", typed, units, inputs)["carries"]}
    assert set(carries) == {"how-fast", "will-the-mount-hold"}
    speed = desk.answer("how-fast", carries["how-fast"], units, {})
    assert speed["headline"] and not speed["unasked"], speed["text"]
    mount = desk.answer("will-the-mount-hold", carries["will-the-mount-hold"] | {"block": "100 mm"}, units, {})
    assert mount["headline"] and not mount["unasked"], mount["text"]
