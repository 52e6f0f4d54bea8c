"""The checklists and the gates of their lines: what stops, what is missing, what only reminds, and what each list may end in."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from calc.safety.checklists import all_checklists
from tests.unit.lists import END, FINE, LATHE, LISTS, PLANS, POT, VACUUM, press, press_all, screen

# --- the pot and the vacuum ----------------------------------------------------------------------


@pytest.mark.parametrize("id", ["C8", "C9"])
def test_with_all_figures_there_the_vessels_lists_end_clear(id: str) -> None:
    shown = screen(id, press_all(id, PLANS[id]), PLANS[id])
    assert shown["ended"] and shown["big"]["text"] == END and shown["tone"] == "go"
    assert shown["record"] == (["Pressure let down after 0 min, 24 h planned"] if id == "C8" else [])


@pytest.mark.parametrize(("after", "stood", "record"), [(2.0, "0 min", True), (2 * 3600.0, "2 h", True), (24 * 3600.0, "24 h", False)])
def test_resin_hard_takes_a_second_press_with_the_time_it_stood_and_ends_the_clock(after: float, stood: str, record: bool) -> None:
    raised = press_all("C8", POT)[:6]
    shown = screen("C8", raised, POT, now=60.0 + after)
    (tick,) = shown["items"][6]["buttons"]
    assert f"at least {stood}, 24 h planned" in tick["confirm"]["say"] and tick["confirm"]["yes"] and tick["confirm"]["no"]
    assert "oggles on" in shown["items"][6]["text"]
    done = screen("C8", [*raised, press(shown, 7, 60.0 + after)], POT, now=1e6)
    assert done["items"][6]["done"] == f"Let down after {stood}" and not [clock for clock in done["clocks"] if clock["id"] == "pressure"]
    assert bool(done["record"]) is record
    assert f"at least {stood}. Hard" in screen("C8", press_all("C8")[:6], {}, now=60.0 + after)["items"][6]["buttons"][0]["confirm"]["say"]


@pytest.mark.parametrize("id", ["C8", "C9"])
def test_the_vessels_lines_are_read_in_order_and_all_of_them_apply(id: str) -> None:
    events: list[dict[str, Any]] = []
    for item in all_checklists()[id].items:
        shown = screen(id, events, PLANS[id])
        assert [line["number"] for line in shown["items"] if line["buttons"]] == [item.number]
        assert [button["id"] for button in shown["items"][item.number - 1]["buttons"]] == ["tick"]
        forged = {"type": "away", "item": item.number, "figures": "", "reason": "I say so", "at": 1.0}
        assert not screen(id, [*events, forged], PLANS[id])["items"][item.number - 1]["closed"]
        events.append(press(shown, item.number, 10.0 * item.number))


@pytest.mark.parametrize(
    ("id", "inputs", "name"), [("C5", {"age": "23 h"}, "age of the casting"), ("C1", {"beneath": "layer", "waited": "2 h"}, "the layer beneath")]
)
def test_what_a_list_does_not_ask_of_may_stop_its_end(id: str, inputs: dict[str, str], name: str) -> None:
    """Every line pressed: the end still says what the figures of its question stop at."""
    plan = PLANS[id] | inputs
    shown = screen(id, press_all(id, plan), plan)
    assert shown["ended"] and shown["big"]["text"] == "STOP" and shown["tone"] == "stop"
    assert name in shown["say"].lower() and END not in json.dumps(shown)


@pytest.mark.parametrize(
    ("id", "inputs", "number", "action"),
    [
        ("C8", POT | {"pressure": "4.1 bar"}, 2, "Set the regulator to 4 bar or less."),
        ("C8", POT | {"hose": "2 bar"}, 2, "Set the regulator to 2 bar or less, or fit a hose that is marked for more."),
        ("C8", POT | {"relief": "5 bar"}, 3, "Have the pot's maker fit a relief valve that opens at 4 bar or less."),
        ("C9", VACUUM | {"chamber": "no"}, 1, "Use a chamber sold for full vacuum, or a pressure pot after the pour."),
    ],
)
def test_a_vessels_stop_has_no_way_past_it(id: str, inputs: dict[str, str], number: int, action: str) -> None:
    events: list[dict[str, Any]] = []
    for before in range(1, number):
        events.append(press(screen(id, events, inputs), before, 10.0 * before))
    line = screen(id, events, inputs)["items"][number - 1]
    assert line["gate"]["word"] == "STOP" and line["gate"]["action"] == action
    assert line["buttons"] == [] and line["waits"].startswith("There is no way past this one.")
    past = {"type": "past", "item": number, "figures": "", "at": 99.0}
    assert not screen(id, [*events, past], inputs)["items"][number - 1]["closed"]
    left = screen(id, [*events, {"type": "leave", "at": 100.0}], inputs)
    assert left["big"]["text"] == ("Left unfinished" if number > 1 else "Went on without this list")


def test_a_marking_that_nobody_read_is_noted_and_never_a_pass() -> None:
    inputs = {name: text for name, text in POT.items() if name != "relief"}
    shown = screen("C8", press_all("C8", inputs), inputs)
    assert shown["tone"] == "caution" and shown["say"].startswith("Not checked: pressure in the pot")
    assert any("the relief valve's setting" in line for line in shown["record"])


def test_the_lists_make_their_own_choice_between_pot_and_vacuum() -> None:
    """What the page's draft says under 'What you use' does not matter here."""
    assert screen("C9", [], {"method": "pot", "chamber": "no"})["items"][0]["gate"]["word"] == "STOP"
    assert screen("C8", [], {"method": "vacuum", **POT})["items"][1]["text"] == "The pressure planned, 3 bar, is no more than the lowest marking."


def test_the_time_under_pressure_runs_from_the_line_that_raises_it() -> None:
    raised = press_all("C8", POT)[:6]
    clock = next(clock for clock in screen("C8", raised, POT)["clocks"] if clock["id"] == "pressure")
    assert clock["starts"] == 60.0 and clock["ends"] == 60.0 + 24 * 3600
    bare = press_all("C8")[:6]
    assert next(clock for clock in screen("C8", bare)["clocks"] if clock["id"] == "pressed")["ends"] is None


def test_the_vacuum_counts_as_working_time() -> None:
    shown = screen("C9", [{"type": "mixed", "at": 0.0}], VACUUM, now=60.0)
    clocks = {clock["id"]: clock for clock in shown["clocks"]}
    assert clocks["poured"]["ends"] < 0.6 * 3600  # this batch in one bucket sets before 60 % of the sheet's 60 min
    assert shown["items"][3]["text"] == "Bucket filled to 25 % at most. Hand on the vent."
    late = VACUUM | {"hands": "32 min"}  # and 5 under vacuum: more than 36
    events = [{**event} for event in press_all("C9", VACUUM)[:4]]
    line = screen("C9", events, late)["items"][4]
    assert line["gate"]["text"] == "37 min to mix, degas and pour; 36 min may be used."
    assert [button["id"] for button in line["buttons"]] == ["past"]


# --- out of the mould, the lathe, flame, and the shop's day ---------------------------------------


@pytest.mark.parametrize("id", ["C0", "C4", "C5", "C6", "C7", "C10", "C11"])
def test_with_all_figures_there_the_other_lists_end_clear(id: str) -> None:
    shown = screen(id, press_all(id, PLANS[id]), PLANS[id])
    assert shown["ended"] and shown["big"]["text"] == END and shown["tone"] == "go" and not shown["record"]


@pytest.mark.parametrize(
    ("id", "inputs", "number", "action"),
    [
        ("C4", {"then": "use", "age": "71 h"}, 1, "Wait until 72 h have passed before it is used or handed over."),
        ("C4", {"age": "23 h"}, 1, "Leave it in the mould until 24 h have passed."),
        ("C4", {"hard": "no"}, 1, "No tool yet: keep it warm, and cut out what stays soft."),
        ("C4", {"balanced": "300 rpm"}, 4, "Cut or weight it to balance, or turn at 300 rpm at most."),
        ("C4", {"mount": "79 mm"}, 5, "Make the mount 80 mm across or larger."),
        ("C4", {"tailstock": "no"}, 6, "Bring the tailstock up: hot glue lets go when it warms."),
        ("C5", {"sound": "no"}, 3, "Mount it where the material is sound."),
        ("C5", {"hold": "chuck", "tailstock": "no", "overhang": "101 mm"}, 4, "Bring the tailstock up, or make the mount wider."),
        ("C5", {"sweeps": "291 mm"}, 5, "Do not start: saw it round until it clears, use a larger lathe, "
         "or ask 'Does it fit the lathe?' about the banjo."),  # 301 in all
        ("C5", {"speed": "451 rpm"}, 6, "Set it to 450 rpm or less; start at the lowest."),
        ("C6", {"speed": "451 rpm"}, 5, "Set it to 450 rpm or less; start at the lowest."),
        ("C7", {"age": "71 h"}, 2, "Wait until 72 h have passed, or sand wet: dust of part-cured resin is the hazard."),
        ("C7", {"filters": "other"}, 3, "Fit P100, P3 or FFP3: a cloth, a nuisance mask or a gas filter alone lets fine dust through."),
        ("C7", {"speed": "401 rpm"}, 4, "Set it to 400 rpm or less: faster heats and grabs."),
        ("C10", {"put_away": "no"}, 1, "No flame: shut the solvent and carry it and its rags out first."),
        ("C10", {"hottest": "46 C"}, 5, "Hotter than planned: card E1a. Smoke, froth, or too hot to hold: card E1b."),
        ("C10", {"wiped_dry": "no"}, 2, "No flame: let it dry with air moving until nothing smells."),
        ("C11", {"tray_length": "300 mm"}, 1, "Use a larger tray or several, apart, so that nothing stands deeper than 10 mm."),
    ],
)
def test_a_figure_past_its_limit_stops_its_line_and_the_way_past_is_on_the_record(id: str, inputs: dict[str, str], number: int, action: str) -> None:
    plan = PLANS[id] | inputs
    line = screen(id, [], plan)["items"][number - 1]
    assert line["gate"]["word"] == "STOP" and line["gate"]["action"] == action
    assert line["buttons"][0]["id"] == "past" and line["buttons"][0]["confirm"]
    shown = screen(id, press_all(id, plan), plan)
    assert shown["outcome"] == "past" and any(text.startswith("Gone on past a stop: ") for text in shown["record"])


@pytest.mark.parametrize(("id", "gap", "number"), [("C4", "age", 1), ("C4", "balanced", 4), ("C4", "least", 5), ("C4", "hold", 6), ("C5", "swing", 5),
                                                   ("C5", "ceiling", 6), ("C6", "swing", 4), ("C7", "filters", 3)])  # fmt: skip
def test_a_figure_that_is_missing_is_noted_and_never_a_pass(id: str, gap: str, number: int) -> None:
    plan = {name: text for name, text in PLANS[id].items() if name != gap}
    line = screen(id, [], plan)["items"][number - 1]
    assert line["gate"]["word"] == "Not checked" and line["buttons"][0]["id"] == "noted"
    shown = screen(id, press_all(id, plan), plan)
    assert shown["tone"] == "caution" and any(text.startswith("Figures not checked: ") for text in shown["record"])


def test_a_rough_cut_does_not_wait_for_full_cure() -> None:
    plan = LATHE | {"age": "30 h"}
    assert screen("C4", [], plan)["items"][0]["gate"]["state"] == "no stop found"
    assert screen("C7", [], plan)["items"][1]["gate"]["state"] == "stop"


def test_the_speed_is_read_on_the_line_and_another_reading_opens_it_again() -> None:
    plan = {name: text for name, text in LATHE.items() if name != "speed"}
    shown = screen("C5", [], plan)
    reading = next(button for button in shown["items"][5]["buttons"] if button["id"] == "reading")
    assert reading["ask"]["field"] == "speed" and reading["ask"]["unit"]["metric"] == "rpm"
    events = [{**reading["event"], "typed": "400", "units": "metric", "at": 1.0}]
    read = screen("C5", events, plan)
    assert "400 rpm on the dial" in read["items"][5]["gate"]["text"]
    events.append(press(read, 6, 2.0))
    assert screen("C5", events, plan)["items"][5]["ticked"]
    faster = screen("C5", [*events, {**reading["event"], "typed": "500", "units": "metric", "at": 3.0}], plan)
    assert faster["items"][5]["stale"] and faster["items"][5]["gate"]["word"] == "STOP"


@pytest.mark.parametrize(("id", "number"), [("C5", 6), ("C6", 5), ("C7", 4)])
def test_a_reading_that_cannot_be_one_is_refused_on_its_own_line_and_no_other_figure_stands_for_it(id: str, number: int) -> None:
    reading = {"type": "reading", "field": "speed", "units": "metric"}
    events = [{**reading, "typed": "200", "at": 1.0}, {**reading, "typed": "9999", "at": 2.0}]
    shown = screen(id, events, LATHE)
    line = shown["items"][number - 1]
    assert line["stale"] and "9999 is not taken" in line["stale_text"] and "6000 rpm" in line["stale_text"]
    assert line["gate"]["state"] == "not checked" and "On the dial" not in [total["label"] for total in shown["totals"]]
    assert not [item["number"] for item in shown["items"] if item["stale"] and item["number"] != number] and shown["errors"]
    again = screen(id, [*events, {**reading, "typed": "3500", "at": 3.0}], LATHE)  # over the ceiling, and over the machine's 3000
    assert not again["errors"] and again["items"][number - 1]["gate"]["word"] == "STOP"


def test_noise_and_thrown_parts_remind_and_stop_nobody() -> None:
    plan = LATHE | {"noise": "100", "loose": "1 kg"}
    items = screen("C5", [], plan)["items"]
    assert items[7]["gate"]["text"].startswith("60 min at this noise; 15 min a day is the most")
    assert items[8]["gate"]["state"] == "reminder" and [button["id"] for button in items[8]["buttons"]] == ["tick"]
    bare = screen("C5", [], {})["items"]
    assert bare[7]["gate"] is None and bare[8]["gate"] is None  # told once there is something to tell


def test_before_a_flame_a_line_that_nothing_was_said_of_asks_only_for_its_own_press() -> None:
    bare = screen("C10", [], {})
    assert [item["gate"] for item in bare["items"]] == [None] * 6
    full = screen("C10", [], FINE | {"solvent": "40 mL"})["items"][1]  # 30 m3 take 36 mL
    assert full["gate"]["state"] == "reminder" and "Door open, no flame." in full["gate"]["text"]


@pytest.mark.parametrize(
    ("id", "word"), [("C1", "batch"), ("C4", "piece"), ("C5", "mounting"), ("C6", "stop"), ("C7", "mounting"), ("C10", "time"), ("C11", "day")]
)
def test_what_begins_anew_clears_every_tick_and_says_what_it_was_for(id: str, word: str) -> None:
    ticked = press_all(id, PLANS[id])[:-1]
    cleared = screen(id, [*ticked, {"type": "new-batch", "at": 1e4}], PLANS[id])
    assert cleared["progress"][0] == 0 and all(item["stale"] for item in cleared["items"])
    assert all(re.match(f"Pressed for an earlier {word}[.,].* Look again.$", item["stale_text"]) for item in cleared["items"])


@pytest.mark.parametrize("id", LISTS)
def test_going_on_without_a_list_is_one_press_and_noted_but_for_the_one_that_is_offered(id: str) -> None:
    buttons = {button["id"]: button for button in screen(id, [], PLANS[id])["buttons"]}
    assert ("leave" in buttons) == (id != "C0")
    if id != "C0":
        assert buttons["leave"]["label"] == "Go on without this list"
        shown = screen(id, [{**buttons["leave"]["event"], "at": 5.0}], PLANS[id])
        assert shown["ended"] and shown["record"] == ["Went on without this list"] and shown["tone"] == "caution"


# --- every gate, on its own line -------------------------------------------------------------------

#: list, line, a figure past its limit, and what a gap is; a gate that only tells what there is to tell has no gap of its own.
GATES: list[tuple[str, int, dict[str, str], str]] = [
    ("C1", 1, {"resin": "26 C"}, "room"), ("C1", 2, {"depth": "62 mm"}, "sheet_depth"), ("C1", 3, {"mass": "5.1 kg"}, "sheet_mass"),
    ("C1", 4, {"ratio_by": "other"}, "ratio_by"), ("C1", 5, {"handling": "37 min"}, "working"), ("C1", 7, {"filters": "particles"}, "filters"),
    ("C1", 9, {"tray_length": "300 mm"}, "tray_length"), ("C2", 2, {"weighed_b": "480 g"}, "weighed_b"), ("C3", 1, {"hottest": "46 C"}, "hottest"),
    ("C4", 1, {"age": "23 h"}, "age"), ("C4", 4, {"balanced": "300 rpm"}, "balanced"), ("C4", 5, {"mount": "79 mm"}, "least"),
    ("C4", 6, {"tailstock": "no"}, "tailstock"), ("C5", 3, {"sound": "no"}, "sound"), ("C5", 5, {"sweeps": "291 mm"}, "swing"),
    ("C5", 6, {"speed": "451 rpm"}, "ceiling"), ("C5", 8, {"noise": "100"}, ""), ("C5", 9, {"loose": "1 kg"}, ""), ("C6", 4, {"sweeps": "291 mm"}, "sweeps"),
    ("C6", 5, {"speed": "451 rpm"}, "highest"), ("C7", 2, {"age": "71 h"}, "full"), ("C7", 3, {"filters": "other"}, "sealed"),
    ("C7", 4, {"speed": "401 rpm"}, "sand_ceiling"), ("C8", 2, {"pressure": "4.1 bar"}, "rated"), ("C8", 3, {"relief": "4.1 bar"}, "relief"),
    ("C9", 1, {"chamber": "no"}, "chamber"), ("C9", 5, {"hands": "32 min"}, "working"), ("C10", 1, {"put_away": "no"}, ""),
    ("C10", 2, {"wiped_dry": "no"}, ""), ("C10", 2, {"solvent": "37 mL"}, ""), ("C10", 5, {"hottest": "46 C"}, ""), ("C11", 1, {"mass": "3 kg"}, "mass"),
    ("C11", 6, {"filter_hours": "9 h"}, "filter_schedule"),
]  # fmt: skip


@pytest.mark.parametrize(("id", "number", "over", "gap"), GATES)
def test_every_gate_tells_missing_over_and_stale_apart(id: str, number: int, over: dict[str, str], gap: str) -> None:
    """Within: one tick. Past: no tick stands, and what to do. Missing: not checked. And a tick for other figures is open again, and says why."""
    plan, events = PLANS[id], press_all(id, PLANS[id])[:number]
    within = screen(id, events, plan)["items"][number - 1]
    assert within["gate"]["state"] == "no stop found" and within["closed"] == "tick" and not within["stale"]
    past = screen(id, events, plan | over)["items"][number - 1]
    assert past["gate"]["state"] in ("stop", "reminder") and past["gate"]["action"]
    assert not past["closed"] and past["stale_text"] == "Pressed before the figures changed. Look again."
    lacks = screen(id, events, {name: text for name, text in plan.items() if name != gap})["items"][number - 1]
    if gap:
        assert lacks["gate"]["state"] == "not checked" and lacks["gate"]["text"].startswith("Missing: ")
        assert not lacks["closed"] and lacks["stale"]
    else:
        assert all_checklists()[id].items[number - 1].fed


def test_no_line_with_a_gate_is_left_out_of_that() -> None:
    """But for gloves and the next layer, whose clocks tell and stop nobody, and lines that ask a gate tried on another list."""
    tried = {(id, number) for id, number, *_ in GATES}
    asked = {(one.id, item.number): (item.gate, item.moment, one.question) for one in all_checklists().values() for item in one.items if item.gate}
    known = {asked[place] for place in tried}
    assert {key for place, key in asked.items() if place not in tried} - known <= {("G17", "", "before-a-pour"), ("G6", "", "before-a-pour")}
