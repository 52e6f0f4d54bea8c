"""How deep and how hot?: what it says in cases a maker has, and what it refuses."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any

import pytest

from calc import desk

SHEET = {"deepest": "50 mm", "pot_life": "11 h", "length": "600 mm", "width": "300 mm", "room": "21 °C"}
CUP = {"known": "cup", "cup_gel": "36 h", "cup_heat": "380 J/g", "cup_shape": "0.33"}
KIND = {"known": "kind", "kind": "slow", "length": "600 mm", "width": "300 mm", "room": "21 °C"}


def ask(inputs: dict[str, str], units: str = "metric", **more: str) -> dict[str, Any]:
    given = inputs | more
    return desk.answer("how-deep-how-hot", given, units=units, confirmed=given)


def line(reply: dict[str, Any], label: str) -> str:
    found = next(line for line in reply["lines"] if line["label"] == label)
    return f"{found['text']} {found['unit']}".strip()


def test_well_below_every_line_no_stop_is_found() -> None:
    reply = ask(SHEET, depth="25 mm")
    assert reply["headline"]["tone"] == "go"
    assert reply["headline"]["say"].startswith("25 mm is planned") and "No stop found - your call" in reply["headline"]["say"]
    assert reply["values"]["margin"]["si"] > 1 and reply["values"]["stops"]["si"] == 0
    assert not [caution for caution in reply["cautions"] if caution["tone"] == "stop"]


def test_a_stop_leads_with_layers_and_their_wait() -> None:
    reply = ask(SHEET, depth="45 mm")
    headline = reply["headline"]
    assert headline["tone"] == "stop" and headline["label"] == "One layer, at most"
    assert headline["say"].startswith("Pour 23 mm, wait ") and "pour the rest" in headline["say"]
    assert float(headline["text"]) < 45
    assert line(reply, "Next layer not before")


def test_what_it_says_to_pour_in_a_layer_is_no_stop_when_asked_again() -> None:
    reply = ask(SHEET, depth="45 mm")
    again = ask(SHEET, depth=f"{reply['headline']['text']} mm")
    assert again["headline"]["tone"] != "stop"


def test_the_sheet_is_a_ceiling() -> None:
    cold = ask(SHEET, depth="48 mm", room="12 °C", stands="raised", fan="yes", mould="aluminium")
    limits = {limit["id"]: limit for limit in cold["limits"]}
    assert limits["sheet"]["rules"] and float(limits["no-stop"]["text"]) > 50
    assert (cold["headline"]["text"], cold["headline"]["unit"]) == ("50", "mm")
    over = ask(SHEET, depth="60 mm", room="12 °C", stands="raised", fan="yes", mould="aluminium")
    assert over["headline"]["tone"] != "go"


def test_over_the_sheet_in_a_narrow_mould_names_both_depths_and_is_the_makers_call() -> None:
    reply = ask(SHEET, depth="60 mm", length="600 mm", width="40 mm", room="18 °C", stands="raised")
    assert reply["headline"]["tone"] == "caution"
    assert "The sheet allows 50 mm" in reply["headline"]["say"] and "as hot as a wide pour of" in reply["headline"]["say"]


def test_over_the_sheet_in_a_wide_mould_is_a_stop() -> None:
    reply = ask(SHEET, depth="60 mm")
    assert reply["headline"]["tone"] == "stop"
    assert any("The sheet allows 50 mm" in caution["text"] for caution in reply["cautions"])


def test_a_test_cup_does_not_raise_the_sheets_ceiling() -> None:
    reply = ask({**CUP, "deepest": "20 mm", "length": "600 mm", "width": "300 mm", "room": "15 °C"}, depth="18 mm")
    assert (reply["headline"]["text"], reply["headline"]["unit"]) == ("20", "mm")


def test_in_a_tall_mould_the_width_decides() -> None:
    post = {**CUP, "shape": "round", "depth": "300 mm", "room": "22 °C", "mould": "pvc"}
    slim, stout = ask(post, across="50 mm"), ask(post, across="90 mm")
    assert slim["headline"]["label"] == "Mould no wider than" and slim["headline"]["tone"] == "go"
    assert stout["headline"]["tone"] == "stop" and "layers" in stout["headline"]["say"]
    assert slim["headline"]["text"] == stout["headline"]["text"]


def test_the_better_known_the_more_it_allows() -> None:
    kind = ask(KIND, depth="20 mm")["values"]["no_stop"]["si"]
    cup = ask({**CUP, "length": "600 mm", "width": "300 mm", "room": "21 °C", "depth": "20 mm"})["values"]["no_stop"]["si"]
    assert kind < cup


def test_a_slow_kind_is_held_by_its_range() -> None:
    reply = ask(KIND, depth="40 mm")
    assert reply["headline"]["tone"] == "stop"
    assert any(caution["id"] == "kind-only" for caution in reply["cautions"])
    assert reply["changes"][0]["do"]


@pytest.mark.parametrize(
    ("better", "worse"),
    [
        ({"room": "18 °C"}, {"room": "24 °C"}),
        ({"fan": "yes"}, {"fan": "no"}),
        ({"wood": "40 %", "lies": "through"}, {"wood": "0 %"}),
        ({"wood": "40 %", "lies": "through"}, {"wood": "40 %", "lies": "parts"}),
        ({"stands": "raised"}, {"stands": "bench"}),
        ({"mould": "aluminium"}, {"mould": "board"}),
        ({"wood": "40 %", "lies": "through", "piece": "20 mm"}, {"wood": "40 %", "lies": "through", "piece": "400 mm"}),
    ],
)
def test_what_helps_helps(better: dict[str, str], worse: dict[str, str]) -> None:
    good, bad = ask(KIND | better, depth="20 mm", detail="depths"), ask(KIND | worse, depth="20 mm", detail="depths")
    assert good["values"]["no_stop"]["si"] > bad["values"]["no_stop"]["si"]


def test_on_a_warm_layer_it_says_how_long_to_wait() -> None:
    early = ask(SHEET, depth="26 mm", below="26 mm", below_since="22 h")
    assert early["headline"]["tone"] == "stop" and early["headline"]["say"].startswith("Wait until ")
    number, unit = early["headline"]["say"].split()[2:4]
    hours = float(number) * {"h": 1, "days": 24}[unit]
    late = ask(SHEET, depth="26 mm", below="26 mm", below_since=f"{hours} h")
    assert late["headline"]["tone"] != "stop"


def test_a_mould_that_gives_way_is_named_with_its_limit() -> None:
    reply = ask(SHEET, depth="38 mm", mould="pla", wall="3 mm")
    assert any("Printed plastic (PLA) gives way from 55 °C" in text for text in [reply["headline"]["say"], *[c["text"] for c in reply["cautions"]]])


def test_too_long_in_the_bucket_is_not_poured() -> None:
    reply = ask({"pot_life": "25 min", "length": "300 mm", "width": "300 mm", "room": "23 °C", "depth": "3 mm", "bucket": "40 min"})
    assert (reply["headline"]["text"], reply["headline"]["tone"]) == ("Do not pour it", "stop")


def test_the_bucket_never_outlasts_the_pot_life_of_the_sheet() -> None:
    """A deep layer says 'slow', a short pot life says when: out of the bucket goes by the shorter."""
    reply = ask({"deepest": "50 mm", "pot_life": "8 h", "pot_means": "doubled", "length": "600 mm", "width": "300 mm", "room": "25 °C", "depth": "20 mm"})
    assert float(line(reply, "Out of the bucket within").split()[0]) < 8


def test_pot_life_and_depth_that_disagree_are_told() -> None:
    reply = ask(SHEET, pot_life="30 min", depth="5 mm")
    assert any(caution["id"] == "disagree" for caution in reply["cautions"])
    assert reply["headline"]["tone"] == "caution" and "ask the supplier" in reply["headline"]["say"]


@pytest.mark.parametrize("sheet", ["3/8 in", "5/8 in", "1 in"])
@pytest.mark.parametrize("planned", ["7/16 in", "5/8 in", "11/16 in"])
def test_no_layer_of_the_steps_passes_the_deepest_that_is_told(sheet: str, planned: str) -> None:
    """And as many of them as are told fill the mould; by the figures as they are read."""
    given = {"deepest": sheet, "pot_life": "45 min", "length": "16 in", "width": "16 in", "room": "73 °F", "depth": planned, "shape": "oblong"}
    reply = desk.answer("how-deep-how-hot", given, "imperial", confirmed=given)
    most, say = Fraction(reply["headline"]["text"]), reply["headline"]["say"]
    found = re.match(r"Pour it in (\d) layers of no more than (\d+/\d+) in|Pour (\d+/\d+) in, wait", say)
    assert found is not None
    count, each = (int(found[1]), Fraction(found[2])) if found[1] else (2, Fraction(found[3]))
    whole = Fraction(planned.removesuffix(" in"))
    assert each <= most and each * (count - 1) < whole <= each * count
    rows = next(grid for grid in reply["grids"] if grid["title"].startswith("Layer by layer"))["rows"]
    thick, marks = ([Fraction(row[at].removesuffix(" in")) for row in rows] for at in (1, 2))
    assert len(rows) == count and max(thick) == each and sum(thick) == whole == marks[-1]
    carried = {carry["to"]: carry["inputs"] for carry in reply["carries"]}
    assert carried["before-a-pour"]["depth"] == carried["is-it-enough"]["depth"] == carried["when-can-i"]["depth"] == f"{each} in"


def test_the_first_layer_goes_on_with_its_own_wood_and_resin() -> None:
    """300 x 300 mm, 7 mm deep, a third of it wood, 1.1 g/mL: 210 mL of wood, 420 mL of resin; the last layer is 6 mm.

    To weigh: 30 mL more, which stay in the bucket, 495 g.
    """
    inputs = {"deepest": "10 mm", "pot_life": "6 h", "pot_means": "pour", "length": "300 mm", "width": "300 mm", "room": "20 °C", "depth": "20 mm"}
    reply = ask(inputs, wood="33.3333 %", density="1.1 g/mL", ratio="100:45")
    carried = {carry["to"]: carry["inputs"] for carry in reply["carries"]}
    enough, weigh = carried["is-it-enough"], carried["how-much-to-weigh"]
    assert (enough["depth"], enough["shape"], enough["wood_by"]) == ("7 mm", "box", "volume")
    assert (float(enough["wood"].split()[0]), float(weigh["total"].split()[0])) == pytest.approx((210, 495), abs=1)
    assert (weigh["known"], weigh["ratio"], weigh["by"]) == ("weight", "100:45", "weight")
    for to in ("is-it-enough", "when-can-i", "before-a-pour"):
        taken = desk.answer(to, carried[to], confirmed=carried[to])
        assert not taken["unasked"] and not {error["field"] for error in taken["errors"]} & set(carried[to])
    rows = next(grid for grid in reply["grids"] if grid["title"].startswith("Layer by layer"))["rows"]
    assert [list(row[:3]) for row in rows] == [["1", "7 mm", "7 mm"], ["2", "7 mm", "14 mm"], ["3", "6 mm", "20 mm"]]
    assert all(row[3].endswith(" g") and " mL, " in row[3] for row in rows) and rows[0][4] == "now"


def test_the_curve_and_its_table_say_the_same() -> None:
    reply = ask(SHEET, depth="25 mm")
    drawing, grid = reply["drawings"][0], reply["grids"][1]
    assert grid["title"] == drawing["title"] and len(grid["rows"]) >= 8
    traces = [mark for mark in drawing["marks"] if mark["kind"] == "line" and mark["look"] in ("trace", "edge")]
    assert len(traces) == 2 and all(len(mark["points"]) <= 130 for mark in traces)
    assert "peaks at" in drawing["says"]


def test_only_how_deep_leaves_the_rest_out() -> None:
    quick, whole = ask(SHEET, depth="25 mm", detail="depths"), ask(SHEET, depth="25 mm")
    assert not quick["drawings"] and quick["headline"]["text"] == whole["headline"]["text"]


def test_it_tells_its_progress() -> None:
    from calc.fields import Typed
    from calc.questions import all_questions
    from calc.questions._how_deep import runs

    runs._looked.clear()
    question = all_questions()["how-deep-how-hot"]
    given, _ = question.parse({name: Typed(text) for name, text in (SHEET | {"depth": "44 mm"}).items()}, "metric", {})
    shares = list(question.steps(given))
    assert len(shares) > 8 and shares == sorted(shares) and 0 <= shares[0] and shares[-1] < 1
    assert list(question.steps(given)) == []  # kept: no run again


@pytest.mark.parametrize(
    ("inputs", "field", "code"),
    [
        ({"depth": "0 mm"}, "depth", "not-positive"),
        ({"depth": "-3 mm"}, "depth", "not-positive"),
        ({"depth": "9 m"}, "depth", "too-large"),
        ({"room": "70 °C"}, "room", "too-hot"),
        ({"depth": "deep"}, "depth", "not-a-number"),
        ({"below": "20 mm"}, "below_since", "since"),
        ({"deepest": "", "pot_life": ""}, "deepest", "nothing-known"),
        ({"deepest": "", "pot_life": "20 h", "pot_means": "hot50"}, "pot_life", "never-so-hot"),
    ],
)
def test_what_cannot_be_used_is_named(inputs: dict[str, str], field: str, code: str) -> None:
    reply = ask({"depth": "20 mm"} | SHEET | inputs)
    assert (field, code) in [(error["field"], error["code"]) for error in reply["errors"]]
    assert all(error["message"] for error in reply["errors"])


def test_a_number_of_the_other_system_is_asked_about() -> None:
    given = SHEET | {"depth": "20 mm", "room": "70"}
    reply = desk.answer("how-deep-how-hot", given)
    assert reply["errors"][0]["choices"][0]["value"] == "70 °F"


def test_imperial_reads_in_inches_and_fahrenheit() -> None:
    reply = ask(SHEET, units="imperial", depth="45 mm")
    assert reply["headline"]["unit"] == "in" and "°F" in reply["headline"]["say"] and "mm" not in reply["headline"]["say"]


def test_the_gates_are_handed_the_headline_and_hold_the_plan_against_it() -> None:
    def handed(**more: str) -> dict[str, str]:
        return next(carry["inputs"] for carry in ask(SHEET, **more)["carries"] if carry["to"] == "before-a-pour")

    headline = ask(SHEET, depth="25 mm")["headline"]
    gates = handed(depth="25 mm")
    assert gates["own_depth"] == f"{headline['text']} {headline['unit']}"
    over = desk.answer("before-a-pour", gates | {"depth": "45 mm"}, confirmed=gates | {"depth": "45 mm"})
    assert over["headline"]["text"] == "STOP" and f"'How deep and how hot?' allows {gates['own_depth']}." in over["headline"]["say"]
    narrow = handed(depth="60 mm", length="600 mm", width="40 mm", room="18 °C", stands="raised")
    told = desk.answer("before-a-pour", narrow, confirmed=narrow)["grids"][0]["rows"][0]
    assert told[1] == "Your call"  # as this question says it


QUICK_DEEP = {"deepest": "50 mm", "pot_life": "60 min", "shape": "round", "across": "332 mm", "room": "22 °C", "ratio": "100:45"}


@pytest.mark.parametrize(("depth", "wood"), [("42 mm", "0 %"), ("42 mm", "34 %"), ("15 mm", "0 %")])
def test_a_faster_resin_never_leaves_the_mould_cooler(depth: str, wood: str) -> None:
    reply = ask(QUICK_DEEP, depth=depth, wood=wood)
    ends = next(grid for grid in reply["grids"] if grid["title"].startswith("In the mould"))["rows"]
    resin, mould = (next(row for row in ends if row[0] == name)[1:] for name in ("Hottest", "Mould, hottest spot"))
    shown = [float(text.removeprefix("over ").split()[0]) for text in mould]
    assert shown == sorted(shown)
    for hottest, spot, degrees in zip(resin, mould, shown, strict=True):
        assert spot.startswith("over") == hottest.startswith("over")
        assert degrees >= 100 or not spot.startswith("over")  # board under resin of over 150 °C takes most of its heat
    picture = reply["drawings"][0]["says"]
    assert ("stays at or below" in picture) != ("middle estimate runs past" in picture)
    assert "tape on board lets go" in next(line for line in reply["lines"] if line["label"] == "Mould, hottest spot")["note"]


@pytest.mark.parametrize("wood", ["0 %", "34 %"])
@pytest.mark.parametrize("known", [{}, {"pot_means": "pour"}, {"deepest": ""}, {"pot_life": ""}, {"deepest": "12 mm"}, CUP | {"cup_gel": "9 h"}])
def test_the_ceiling_never_lies_inside_the_range_of_depths_that_run_away(known: dict[str, str], wood: str) -> None:
    reply = ask(QUICK_DEEP, wood=wood, depth="4 mm", detail="depths", **known)
    assert float(reply["headline"]["text"]) <= float(reply["band"]["low"].split()[0])


def _minutes(text: str) -> float:
    parts = text.split()
    return sum(float(figure) * {"min": 1, "h": 60, "days": 1440}[unit] for figure, unit in zip(parts[::2], parts[1::2], strict=True))


@pytest.mark.parametrize("pot", [{"pot_life": "60 min"}, {"pot_life": "60 min", "pot_means": "pour"}, {"pot_life": "8 h", "pot_means": "doubled"}])
def test_out_of_the_bucket_is_one_figure_in_every_question(pot: dict[str, str]) -> None:
    """1 kg fills 450 mm across to 5.716 mm; the sheet's pot life is for 100 g."""
    sheet = pot | {"deepest": "50 mm", "ratio": "100:45", "room": "22 °C"}
    mould = {"shape": "round", "across": "450 mm", "depth": "5.716 mm"}
    deep = ask(sheet | mould)
    resin = desk.answer("what-is-this-resin", sheet, confirmed=sheet)
    clock = {"resin": "pot"} | sheet | mould
    when = desk.answer("when-can-i", clock, confirmed=clock)
    told = line(deep, "Out of the bucket within")
    within = _minutes(told)
    assert line(resin, "1 kg in a bucket: pour within") == told
    said = next(one for one in when["lines"] if one["label"] == "Pour, level, top up")
    assert said["note"].startswith(f"out of the bucket within {told} of mixing")
    assert _minutes(said["text"].removeprefix("within ")) < within
    note = next(one for one in deep["lines"] if one["label"] == "Out of the bucket within")["note"]
    printed = _minutes(sheet["pot_life"])
    assert _minutes(note.split(" about ")[1].split(",")[0]) <= printed and within <= printed / 2


@pytest.mark.parametrize(
    ("sheet", "taken"),
    [({"pot_life": "60 min", "deepest": "50 mm"}, "on a sheet, no deeper: that was taken"), ({"pot_life": "11 h", "deepest": "4 mm"}, "The depth was taken")],
)
def test_pot_life_and_depth_of_two_resins_are_told_with_the_one_taken_and_what_settles_it(sheet: dict[str, str], taken: str) -> None:
    given = sheet | {"room": "20 °C"}
    mould = {"across": "300 mm", "shape": "round", "depth": "3 mm"}
    replies = [
        ask(given | mould), desk.answer("what-is-this-resin", given, confirmed=given),
        desk.answer("when-can-i", {"resin": "pot"} | given | mould, confirmed={"resin": "pot"} | given | mould),
    ]
    texts = [next(one["text"] for one in reply["cautions"] if one["id"] == "disagree") for reply in replies]
    assert texts[0] == texts[1] == texts[2] and taken in texts[0] and "test cup" in texts[0]
    assert all("deepest layer that goes with it" in reply["band"]["text"] or "does not fit it" in reply["band"]["text"] for reply in replies)


def test_a_depth_alone_is_told_that_the_pot_life_may_lower_it() -> None:
    alone, both = ask(QUICK_DEEP, depth="20 mm", pot_life=""), ask(QUICK_DEEP, depth="20 mm")
    assert alone["cautions"][0]["id"] == "no-pot-life" and alone["cautions"][0]["text"].startswith("Pot life not given: one of less than ")
    assert both["values"]["no_stop"]["si"] < alone["values"]["no_stop"]["si"]
    assert not any(caution["id"] == "no-pot-life" for caution in both["cautions"])


@pytest.mark.parametrize(
    "resin", [{"pot_life": "60 min", "deepest": "50 mm", "ratio": "100:45"}, {"pot_life": "11 h", "deepest": "40 mm"}, {"pot_life": "90 min"}]
)
def test_the_wait_between_layers_is_one_figure_in_every_question(resin: dict[str, str]) -> None:
    """Of a layer alone, of the same as one of several, and by the clock."""
    mould = {"shape": "round", "across": "332 mm", "room": "22 °C", "wood": "20 %", "lies": "through"}
    deep = ask(resin | mould, depth={"11 h": "60 mm", "60 min": "25 mm"}.get(resin["pot_life"], "12 mm"))
    assert deep["headline"]["tone"] == "stop"
    each = f"{deep['headline']['say'].split(' mm')[0].split()[-1]} mm"
    alone = ask(resin | mould, depth=each)
    clock = {"resin": "pot"} | resin | {name: text for name, text in mould.items() if name != "lies"} | {"depth": each}
    when = desk.answer("when-can-i", clock, confirmed=clock)
    first = when["values"]["layer_from"]["shown"]
    assert line(deep, "Next layer not before") == line(alone, "Next layer not before") == first
    assert f"wait {first}," in deep["headline"]["say"] or f"{first} between them" in deep["headline"]["say"]
    scuffed = [any("scuff it first" in one["note"] for one in reply["lines"]) for reply in (deep, alone)]
    assert scuffed == [any(one["label"] == "Next layer, scuffed" for one in when["lines"])] * 2


def test_the_watch_over_the_cure_is_handed_the_soonest_and_the_latest_peak() -> None:
    reply = ask(SHEET, depth="25 mm")
    handed = next(carry["inputs"] for carry in reply["carries"] if carry["to"] == "before-a-pour")
    ends = next(row for row in reply["grids"][0]["rows"] if row[0] == "Hottest after")[1:]
    times = sorted(_minutes(text) for text in ends)
    assert _minutes(handed["peak_after"]) <= times[0] and _minutes(handed["peak_latest"]) >= times[-1]


@pytest.mark.parametrize(
    ("typed", "units"), [("4.2 mm", "metric"), ("6.7 mm", "metric"), ("9.4 mm", "metric"), ("0.27 in", "imperial"), ("5/16 in", "imperial")]
)
def test_a_depth_typed_is_told_as_it_was_typed(typed: str, units: str) -> None:
    sheet = {"deepest": "6 mm", "pot_life": "25 min", "length": "300 mm", "width": "300 mm", "room": "20 °C"}
    reply = ask(sheet, units=units, depth=typed, known="sheet")
    says = [reply["headline"]["say"], *(one["text"] for one in reply["cautions"])]
    told = [text.split(" is planned")[0].split(" in one layer, ")[-1] for text in says if " is planned" in text]
    assert all(text == typed for text in told) and (told or reply["headline"]["tone"] == "stop")


@pytest.mark.parametrize("since", ["14 h", "60 h", "300 h"])
@pytest.mark.parametrize("depth", ["4 mm", "7 mm"])
def test_a_layer_below_never_allows_more_than_there_is_without_it(depth: str, since: str) -> None:
    plain = ask(QUICK_DEEP, depth=depth, detail="depths")
    layered = ask(QUICK_DEEP, depth=depth, detail="depths", below="4 mm", below_since=since)
    assert layered["values"]["no_stop"]["si"] <= plain["values"]["no_stop"]["si"]


def test_all_layers_so_far_entered_as_one_are_told_apart_from_one_that_is_too_warm() -> None:
    reply = ask(QUICK_DEEP, depth="7 mm", below="35 mm", below_since="14 h")
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["say"].startswith("Enter the newest layer alone")


def test_a_layer_over_the_wood_is_told_to_bear_less() -> None:
    wooden, plain = ask(QUICK_DEEP, depth="5 mm", wood="34 %", lies="through"), ask(QUICK_DEEP, depth="5 mm")
    text = next(one["text"] for one in wooden["cautions"] if one["id"] == "bare")
    bears = float(text.split(" bears ")[1].split()[0])
    assert bears == float(plain["headline"]["text"]) < float(wooden["headline"]["text"])
    assert not any(one["id"] == "bare" for one in plain["cautions"])
    parts = ask(QUICK_DEEP, depth="5 mm", wood="34 %")
    assert parts["headline"]["text"] == plain["headline"]["text"] and any(one["id"] == "wood-lies" for one in parts["cautions"])


THIN = {"shape": "round", "across": "4 in", "room": "62 °F", "deepest": "1/2 in", "pot_life": "40 min", "depth": "3/16 in"}


def test_a_layer_below_that_is_not_ready_leads_the_answer() -> None:
    """And the wait is that of a layer on the same pour."""
    wait = line(ask(THIN, "imperial"), "Next layer not before")
    early, late = (ask(THIN, "imperial", below="3/16 in", below_since=since) for since in ("8 h", "60 h"))
    assert early["headline"]["tone"] == "caution" and f"Wait until {wait} after the layer below was poured" in early["headline"]["say"]
    assert late["headline"]["tone"] == "go"


@pytest.mark.parametrize("given", [THIN, {**KIND, "kind": "slow", "depth": "12 mm", "room": "18 °C"}])
def test_no_layer_goes_on_before_the_slowest_has_gelled_and_no_peak_comes_at_once(given: dict[str, str]) -> None:
    reply = ask(given)
    rows = {row[0]: row[1:] for row in next(grid for grid in reply["grids"] if grid["title"].startswith("In the mould"))["rows"]}
    assert _minutes(line(reply, "Next layer not before")) >= _minutes(rows["Gels after"][0])
    assert "0 min" not in line(reply, "At its hottest after")
    handed = next(carry["inputs"] for carry in reply["carries"] if carry["to"] == "before-a-pour")
    assert "peak_after" not in handed or _minutes(handed["peak_after"]) > 60
