"""The checklists as runs: presses in, screens out. Nothing ticks itself, nothing stale counts, no list is a dead end."""

from __future__ import annotations

import json
from typing import Any

import pytest

from calc import desk
from calc.safety.checklists import all_checklists

LISTS = ("C0", "C1", "C2", "C3", "C4", "C5", "C6", "C7", "C8", "C9", "C10", "C11")
#: A plan with every figure there and none past its limit.
FINE = {
    "depth": "40 mm", "sheet_depth": "50 mm", "mass": "2200 g", "sheet_mass": "5 kg", "moulds_take": "3 kg",
    "working": "60 min", "handling": "30 min", "room": "21 C", "resin": "21 C", "lowest": "18 C", "highest": "25 C",
    "ratio_by": "same", "ratio": "100:45", "weighed_a": "1000 g", "weighed_b": "450 g", "tolerance": "2 %", "beneath": "none",
    "mask": "tight", "filters": "sheet", "filter_hours": "2 h", "filter_schedule": "8 h", "filter_date": "yes",
    "shaved": "yes", "fit_tested": "yes", "sealed": "yes", "tray_length": "500 mm", "tray_width": "400 mm",
    "planned_peak": "45 C", "hottest": "30 C", "earliest": "8 h", "latest": "24 h", "surface": "22 C",
    "solvent": "30 mL", "room_length": "4 m", "room_width": "3 m", "room_height": "2.5 m", "put_away": "yes", "wiped_dry": "yes",
}  # fmt: skip
POT = {"pressure": "3 bar", "rated": "4 bar", "relief": "4 bar", "hose": "10 bar", "gauge_scale": "7 bar", "demould": "24 h"}
VACUUM = {"chamber": "yes", "pump": "5 min", "hands": "20 min", "working": "60 min", "batch": "500 g", "bucket": "2 L", "deepest": "98 kPa"}
LATHE = {
    "then": "rough", "age": "80 h", "leave": "24 h", "full": "72 h", "sheet_temperature": "20 C", "coolest": "20 C", "hard": "yes",
    "hold": "glue", "tailstock": "yes", "mount": "100 mm", "least": "80 mm", "overhang": "40 mm", "sound": "yes",
    "sweeps": "290 mm", "swing": "300 mm", "balanced": "500 rpm", "ceiling": "450 rpm", "highest": "3000 rpm", "sand_ceiling": "400 rpm", "speed": "350 rpm",
    "mask": "tight", "filters": "particles", "filter_date": "yes", "shaved": "yes", "fit_tested": "yes", "sealed": "yes",
    "noise": "94", "heard": "1 h", "loose": "10 g",
}  # fmt: skip
PLANS = {id: LATHE if id in ("C4", "C5", "C6", "C7") else FINE for id in LISTS} | {"C8": POT, "C9": VACUUM}
END = "No stop found - your call"


def screen(id: str, events: list[dict[str, Any]], inputs: dict[str, str] | None = None, now: float | None = None) -> dict[str, Any]:
    at = max([event["at"] for event in events], default=0.0) if now is None else now
    request = {"call": "run", "args": {"id": id, "inputs": inputs or {}, "units": "metric", "events": events, "now": at}}
    reply = json.loads(desk.handle(json.dumps(request)))
    assert reply["ok"], reply
    result: dict[str, Any] = reply["result"]
    return result


def press(shown: dict[str, Any], number: int, at: float, which: int = 0, **more: Any) -> dict[str, Any]:
    return {**shown["items"][number - 1]["buttons"][which]["event"], "at": at, **more}


def press_all(id: str, inputs: dict[str, str] | None = None) -> list[dict[str, Any]]:
    """The main press of every line in order, then the end."""
    events: list[dict[str, Any]] = []
    for number in range(1, len(all_checklists()[id].items) + 1):
        events.append(press(screen(id, events, inputs), number, 10.0 * number))
    shown = screen(id, events, inputs)
    end = next(button for button in shown["buttons"] if button["id"] == "end")
    return [*events, {**end["event"], "at": 10.0 * (len(events) + 1)}]


def test_the_lists_have_their_items_in_number() -> None:
    counts = {"C0": 7, "C1": 9, "C2": 6, "C3": 5, "C4": 6, "C5": 9, "C6": 5, "C7": 8, "C8": 8, "C9": 6, "C10": 6, "C11": 8}
    lists = all_checklists()
    assert {id: len(one.items) for id, one in lists.items()} == counts
    assert {id for id, one in lists.items() if one.type == "RD"} == {"C2", "C8", "C9"}
    assert {id for id, one in lists.items() if one.gloves == "off"} == {"C0", "C5", "C6", "C7", "C10"}
    assert {id: [item.gate for item in one.items] for id, one in lists.items()} == {
        "C0": ["", "", "", "", "", "", ""],
        "C1": ["G3", "G1", "G2", "G5", "G4", "G17", "G16", "", "G19"],
        "C2": ["G4", "G5", "G1", "G19", "G17", ""],
        "C3": ["G3", "", "", "G6", ""],
        "C4": ["G7", "", "", "G8", "G9", "G9"],
        "C5": ["", "", "G9", "G9", "G11", "G10", "", "G14", "G18"],
        "C6": ["", "", "G11", "G10", ""],
        "C7": ["", "G7", "G16", "G10", "", "", "", ""],
        "C8": ["", "G12", "G12", "", "", "", "", ""],
        "C9": ["G13", "", "", "", "G4", ""],
        "C10": ["G15", "G15", "", "", "G3", ""],
        "C11": ["G19", "", "", "", "", "G16", "", ""],
    }


def test_between_them_the_lists_ask_every_gate() -> None:
    assert {item.gate for one in all_checklists().values() for item in one.items} - {""} == {f"G{number}" for number in range(1, 20)}


@pytest.mark.parametrize("id", [id for id in LISTS if id not in ("C0", "C10")])  # with no figure these hold nothing against a limit
def test_with_no_figure_at_all_a_list_can_be_ended_by_one_press_a_line(id: str) -> None:
    events = press_all(id)
    shown = screen(id, events)
    assert len(events) == len(all_checklists()[id].items) + 1
    assert shown["ended"] and shown["big"]["text"] == END
    assert shown["tone"] == "caution" and shown["say"].startswith("Not checked: ")
    assert any(line.startswith("Figures not checked: ") for line in shown["record"])


@pytest.mark.parametrize("id", LISTS)
def test_nothing_is_ticked_by_itself(id: str) -> None:
    for now in (0.0, 1e6):
        shown = screen(id, [], PLANS[id], now=now)
        assert shown["progress"][0] == 0 and not any(item["ticked"] for item in shown["items"])
        assert not [button for button in shown["buttons"] if button["id"] == "end"]


def test_a_stop_says_so_with_its_figures_and_one_next_action_and_takes_a_second_press() -> None:
    over = FINE | {"depth": "62 mm"}
    shown = screen("C1", [], over)
    gate = shown["items"][1]["gate"]
    assert gate["word"] == "STOP" and gate["text"] == "62 mm planned, the sheet allows 50 mm."
    assert gate["action"].startswith("Pour 50 mm at most")
    (button,) = shown["items"][1]["buttons"]
    assert button["id"] == "past" and "62 mm" in button["confirm"]["yes"] and button["confirm"]["no"]
    shown = screen("C1", press_all("C1", over), over)
    assert shown["big"]["text"] == "Gone on past a stop - your call" and shown["tone"] == "stop"
    assert shown["record"] == ["Gone on past a stop: layer 62 mm, the sheet's 50 mm"]


def test_a_plain_tick_does_not_pass_a_stop_nor_a_gap() -> None:
    for inputs in (FINE | {"depth": "62 mm"}, {key: text for key, text in FINE.items() if key != "sheet_depth"}):
        event = press(screen("C1", [], inputs), 2, 10.0) | {"type": "tick"}
        assert not screen("C1", [event], inputs)["items"][1]["closed"]


def test_a_press_is_stale_once_its_figures_change() -> None:
    events = press_all("C1", FINE)
    shown = screen("C1", events, FINE | {"depth": "45 mm"})
    assert not shown["ended"] and shown["items"][1]["stale"] and not shown["items"][1]["ticked"]
    assert shown["items"][1]["stale_text"] == "Pressed before the figures changed. Look again."
    assert [item["number"] for item in shown["items"] if item["stale"]] == [2]
    again = [*events, press(shown, 2, 200.0)]
    assert screen("C1", again, FINE | {"depth": "45 mm"})["progress"] == [9, 9]


def test_a_new_batch_clears_every_tick() -> None:
    events = press_all("C1", FINE)[:-1]
    shown = screen("C1", [*events, {"type": "new-batch", "at": 500.0}], FINE)
    assert shown["progress"] == [0, 9] and all(item["stale"] for item in shown["items"])
    assert shown["clocks"] == []


# --- what begins anew elsewhere ------------------------------------------------------------------


def handed(to: str, since: float, **others: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What a page adds to a list that was left open: what the lists before it carry, where it is newer than its last press."""
    carried = [event for id in all_checklists()[to].after.split() if id in others for event in screen(id, others[id], PLANS[id])["carry"]]
    return sorted((event for event in carried if event["at"] > since), key=lambda event: float(event["at"]))


def later(events: list[dict[str, Any]], by: float) -> list[dict[str, Any]]:
    return [{**event, "at": event["at"] + by} for event in events]


@pytest.mark.parametrize(
    ("open_list", "begun"),
    [("C5", "C6"), ("C7", "C6"), ("C7", "C5"), ("C5", "C4"), ("C6", "C4"), ("C7", "C4"), ("C2", "C1"), ("C3", "C2"), ("C9", "C1")],
)
def test_what_begins_anew_on_one_list_clears_an_open_one_after_it(open_list: str, begun: str) -> None:
    """A remount on C6 clears C5: the first press there is enough, and what was pressed before it stays no longer."""
    pressed = press_all(open_list, PLANS[open_list])[:2]
    begins = later(press_all(begun, PLANS[begun])[:1], 1000.0)
    shown = screen(open_list, [*pressed, *handed(open_list, 20.0, **{begun: begins})], PLANS[open_list])
    assert shown["progress"][0] == 0 and [item["number"] for item in shown["items"] if item["stale"]] == [1, 2]
    assert shown["items"][0]["stale_text"].startswith("Pressed for an earlier ")


@pytest.mark.parametrize(("open_list", "begun"), [("C5", "C6"), ("C2", "C1"), ("C3", "C2")])
def test_what_began_before_the_last_press_clears_nothing(open_list: str, begun: str) -> None:
    begins = press_all(begun, PLANS[begun])
    pressed = later(press_all(open_list, PLANS[open_list])[:2], 1000.0)
    assert not handed(open_list, 1020.0, **{begun: begins})
    assert screen(open_list, [*handed(open_list, 0.0, **{begun: begins}), *pressed], PLANS[open_list])["progress"][0] == 2


def test_a_stop_cleared_for_the_next_one_is_a_mounting_begun_anew() -> None:
    stops = [*press_all("C6", LATHE), {"type": "new-batch", "at": 2000.0}]
    assert handed("C5", 1000.0, C6=stops) == [{"type": "anew", "at": 2000.0}]


def test_parts_that_met_again_clear_the_watch_and_move_its_clock() -> None:
    watched = [{"type": "mixed", "at": 1.0}, *press_all("C3", FINE)[:2]]
    shown = screen("C3", [*watched, {"type": "mixed", "at": 3000.0}], FINE)
    assert shown["progress"][0] == 0 and shown["items"][0]["stale"]
    assert {clock["starts"] for clock in shown["clocks"] if clock["id"] in ("since", "peak", "layer")} == {3000.0}


def test_a_pot_under_pressure_stays_as_it_is_whatever_is_mixed_meanwhile() -> None:
    raised = [{"type": "mixed", "at": 1.0}, *press_all("C8", POT)[:6]]
    shown = screen("C8", [*raised, {"type": "anew", "at": 500.0}, {"type": "mixed", "at": 600.0}], POT)
    assert shown["progress"][0] == 6 and [clock["starts"] for clock in shown["clocks"] if clock["id"] == "pressure"] == [60.0]
    assert {"type": "mixed", "at": 1.0} in shown["carry"]


@pytest.mark.parametrize("id", [id for id in LISTS if all_checklists()[id].lasts_hours])
def test_a_list_left_open_over_night_is_looked_at_again_and_an_ended_one_stays(id: str) -> None:
    events, night = press_all(id, PLANS[id]), 17 * 3600.0
    first = screen(id, events[:1], PLANS[id], now=night)["items"][0]
    assert not first["closed"] and first["stale_text"] == "Pressed too long ago. Look again."
    assert screen(id, events[:1], PLANS[id], now=15 * 3600.0)["items"][0]["closed"]
    assert screen(id, events, PLANS[id], now=night)["ended"]


def test_only_the_watch_the_pot_and_a_piece_out_of_the_mould_last_longer_than_a_day() -> None:
    assert {id for id, one in all_checklists().items() if not one.lasts_hours} == {"C3", "C4", "C8"}


def test_what_hands_on_is_there() -> None:
    assert {id for one in all_checklists().values() for id in one.after.split()} <= {*LISTS, "mix"}


def test_does_not_apply_needs_a_reason_and_is_not_for_gates() -> None:
    shown = screen("C1", [], FINE)
    offers = {item["number"]: [button["id"] for button in item["buttons"]] for item in shown["items"]}
    assert [number for number, ids in offers.items() if "away" in ids] == [8]
    away = press(shown, 8, 10.0, which=1)
    assert not screen("C1", [away | {"reason": "  "}], FINE)["items"][7]["closed"]
    closed = screen("C1", [away | {"reason": "test cup only"}], FINE)
    assert closed["items"][7]["done"] == "Does not apply: test cup only"
    assert closed["record"] == ["Mould level, sealed, on a base that cannot burn. Does not apply: test cup only"]
    forged = {"type": "away", "item": 2, "figures": press(shown, 2, 10.0)["figures"], "reason": "I say so", "at": 10.0}
    assert not screen("C1", [forged], FINE)["items"][1]["closed"]


def test_undo_is_offered_from_the_first_press_to_after_the_end() -> None:
    events = press_all("C1", FINE)
    assert not [b for b in screen("C1", [], FINE)["buttons"] if b["kind"] == "undo"]
    for count in range(1, len(events) + 1):
        assert [b for b in screen("C1", events[:count], FINE)["buttons"] if b["kind"] == "undo"]
    assert not screen("C1", events[:-1], FINE)["ended"]


def test_the_same_presses_give_the_same_screen_after_a_reload() -> None:
    events = press_all("C2", FINE)[:3]
    assert screen("C2", json.loads(json.dumps(events)), FINE, now=99.0) == screen("C2", events, FINE, now=99.0)


def test_leaving_a_list_is_told_in_neutral_words() -> None:
    events = [*press_all("C1", FINE)[:4], {"type": "leave", "at": 90.0}]
    shown = screen("C1", events, FINE)
    assert shown["ended"] and shown["big"]["text"] == "Left unfinished"
    assert shown["say"] == "5 of 9 lines were open when you left."
    assert END not in json.dumps(shown)


def test_an_end_with_open_lines_ends_nothing() -> None:
    shown = screen("C1", [{"type": "end", "at": 1.0}], FINE)
    assert not shown["ended"] and shown["big"] is None


def test_the_pour_is_read_line_by_line_without_jumps() -> None:
    shown = screen("C2", [], FINE)
    assert [bool(item["buttons"]) for item in shown["items"]] == [True] + [False] * 5
    jump = {"type": "tick", "item": 3, "figures": "", "at": 5.0}
    assert screen("C2", [jump], FINE)["progress"] == [0, 6]


def test_the_first_line_of_the_pour_starts_the_clocks_and_says_when_they_are_over() -> None:
    events = [press(screen("C2", [], FINE), 1, 1000.0)]
    clocks = {clock["id"]: clock for clock in screen("C2", events, FINE)["clocks"]}
    assert clocks["poured"]["starts"] == 1000.0
    assert clocks["poured"]["ends"] == pytest.approx(1000.0 + 0.6 * 3600)  # 60 % of 60 min: common practice
    assert clocks["working"]["ends"] == pytest.approx(1000.0 + 3600)
    assert clocks["gloves"]["ends"] == pytest.approx(1000.0 + 1800)  # 30 min: a resin maker's article
    assert (clocks["poured"]["label"], clocks["poured"]["overdue_label"]) == ("Pour within", "Pouring overdue by")


def test_fresh_gloves_start_their_clock_again_and_late_gloves_stop_nobody() -> None:
    events = [press(screen("C2", [], FINE), 1, 0.0)]
    late = screen("C2", events, FINE, now=1900.0)
    assert late["items"][4]["gate"]["state"] == "reminder"
    fresh = [*events, {"type": "gloves", "at": 1900.0}]
    assert screen("C2", fresh, FINE, now=1910.0)["items"][4]["gate"]["state"] == "no stop found"
    pressed = press_all("C2", FINE)[:-1]
    shown = screen("C2", pressed, FINE, now=5000.0)
    assert shown["items"][4]["ticked"]


def test_what_one_list_hands_on_the_next_begins_with() -> None:
    handed = screen("C2", press_all("C2", FINE), FINE)["carry"]
    assert {event["type"] for event in handed} == {"gloves", "mixed"}
    clocks = {clock["id"] for clock in screen("C3", handed, FINE)["clocks"]}
    assert {"since", "layer", "gloves"} <= clocks


def test_each_look_at_the_cure_clears_the_ticks_and_sets_the_next() -> None:
    looked = press_all("C3", FINE)[:-1]
    shown = screen("C3", [*looked, {"type": "round", "at": 100.0}], FINE)
    assert shown["progress"] == [0, 5] and not any(item["stale"] for item in shown["items"])
    look = next(clock for clock in shown["clocks"] if clock["id"] == "look")
    assert look["ends"] == 100.0 + 15 * 60  # 15 min: our judgement


def test_a_no_opens_the_right_card() -> None:
    shown = screen("C3", [], FINE)
    for number, card in ((1, "e1a"), (2, "e1b"), (3, "e1a")):
        answered = screen("C3", [press(shown, number, 5.0, which=1)], FINE)
        assert answered["tone"] == "stop" and answered["big"]["text"] == "STOP" and answered["card"] == card


def test_a_reading_typed_into_the_list_is_held_against_the_plan() -> None:
    reading = {"type": "reading", "field": "hottest", "typed": "48", "units": "metric", "at": 5.0}
    gate = screen("C3", [reading], FINE)["items"][0]["gate"]
    assert gate["state"] == "stop" and gate["text"] == "Hottest spot 48 °C, planned 45 °C."
    bad = screen("C3", [reading | {"typed": "..."}], FINE)
    assert bad["errors"] and bad["items"]


def test_waiting_for_the_next_layer_is_a_tick_while_its_gate_says_stop() -> None:
    mixed = {"type": "mixed", "at": 0.0}
    item = screen("C3", [mixed], FINE, now=3600.0)["items"][3]
    assert item["gate"]["state"] == "stop" and item["buttons"][0]["event"]["type"] == "tick"
    assert item["text"].startswith("The next layer waits until 8 h after this one")


def test_a_figure_that_cannot_be_read_is_told_by_its_field() -> None:
    reply = screen("C1", [], {"depth": "deep"})
    assert reply["errors"][0]["field"] == "depth" and "items" not in reply


@pytest.mark.parametrize("event", [{"type": "tick", "item": 10, "at": 1.0}, {"type": "tick", "item": 0, "at": 1.0}, {"type": "shake", "at": 1.0}])
def test_a_press_that_does_not_exist_is_refused(event: dict[str, Any]) -> None:
    request = {"call": "run", "args": {"id": "C1", "inputs": {}, "units": "metric", "events": [event], "now": 1.0}}
    reply = json.loads(desk.handle(json.dumps(request)))
    assert not reply["ok"] and reply["error"]["kind"] == "request"


def test_a_clock_that_the_mixing_steps_started_is_not_started_again() -> None:
    met = {"type": "mixed", "at": 100.0}
    shown = screen("C2", [met], FINE, now=160.0)
    assert shown["items"][0]["text"] == "The parts have met: the clock runs."
    ticked = screen("C2", [met, press(shown, 1, 170.0)], FINE)
    assert {clock["starts"] for clock in ticked["clocks"] if clock["id"] == "working"} == {100.0}
    assert {"type": "mixed", "at": 100.0} in ticked["carry"]


@pytest.mark.parametrize("id", [id for id in LISTS if all_checklists()[id].gloves == "on"])
def test_a_clock_reads_well_running_and_past_its_end(id: str) -> None:
    """A time follows both: 'Pour within 12:03', 'Pouring overdue by 3:10'."""
    handed = [{"type": "gloves", "at": 0.0}, {"type": "mixed", "at": 0.0}]
    events = [*handed, *press_all(id, PLANS[id])[:-1]]
    clocks = screen(id, events, PLANS[id], now=1e6)["clocks"]
    assert clocks
    for clock in clocks:
        assert clock["label"] and clock["starts"] <= 1e6
        if clock["ends"] is not None:
            assert clock["overdue_label"].endswith((" by", " since")) and not clock["label"].endswith(" by")


# --- the pot and the vacuum ----------------------------------------------------------------------


@pytest.mark.parametrize("id", ["C8", "C9"])
def test_with_all_figures_there_the_vessels_lists_end_clear(id: str) -> None:
    shown = screen(id, press_all(id, PLANS[id]), PLANS[id])
    assert shown["ended"] and shown["big"]["text"] == END and shown["tone"] == "go" and not shown["record"]


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
    assert clocks["poured"]["ends"] == pytest.approx(0.6 * 3600)  # 60 % of 60 min: common practice
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
        ("C5", {"sweeps": "291 mm"}, 5, "Do not start: saw it round until it clears, or use a larger lathe."),  # 291 and 5 mm on both sides: 301
        ("C5", {"speed": "451 rpm"}, 6, "Set it to 450 rpm or less; start at the lowest."),
        ("C6", {"speed": "451 rpm"}, 4, "Set it to 450 rpm or less; start at the lowest."),
        ("C7", {"age": "71 h"}, 2, "Wait until 72 h have passed, or sand wet: dust of part-cured resin is the hazard."),
        ("C7", {"filters": "other"}, 3, "Fit P100, P3 or FFP3: a cloth, a nuisance mask or a gas filter alone lets fine dust through."),
        ("C7", {"speed": "401 rpm"}, 4, "Set it to 400 rpm or less: faster heats and grabs."),
        ("C10", {"put_away": "no"}, 1, "No flame: shut the solvent and carry it and its rags out first."),
        ("C10", {"hottest": "46 C"}, 5, "Hotter than planned: open card E1 and look for froth, bulge and smoke."),
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
                                                   ("C5", "ceiling", 6), ("C6", "swing", 3), ("C7", "filters", 3)])  # fmt: skip
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
    assert read["items"][5]["text"] == "Read the dial: 400 rpm. Start at the lowest speed."
    events.append(press(read, 6, 2.0))
    assert screen("C5", events, plan)["items"][5]["ticked"]
    faster = screen("C5", [*events, {**reading["event"], "typed": "500", "units": "metric", "at": 3.0}], plan)
    assert faster["items"][5]["stale"] and faster["items"][5]["gate"]["word"] == "STOP"


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
    assert {item["stale_text"] for item in cleared["items"]} == {f"Pressed for an earlier {word}. Look again."}


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
    ("C5", 6, {"speed": "451 rpm"}, "ceiling"), ("C5", 8, {"noise": "100"}, ""), ("C5", 9, {"loose": "1 kg"}, ""), ("C6", 3, {"sweeps": "291 mm"}, "sweeps"),
    ("C6", 4, {"speed": "451 rpm"}, "highest"), ("C7", 2, {"age": "71 h"}, "full"), ("C7", 3, {"filters": "other"}, "sealed"),
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


# --- by one thumb, in a hurry ----------------------------------------------------------------------

#: Words a minute of someone in a hurry, and seconds to find and press a button in gloves, half a second of it the bounce. Our judgement.
READ, PRESS_S = 200, 3.0


def test_the_nine_lines_take_under_ninety_seconds_by_one_thumb() -> None:
    """Nine presses and the end; no press asks a second one, and nothing has to be typed."""
    events = press_all("C1", FINE)
    assert len(events) == 10
    shown = screen("C1", [], FINE)
    assert not [button for item in shown["items"] for button in item["buttons"][:1] if button["ask"] or button.get("confirm")]
    words = sum(len(item["text"].split()) for item in shown["items"])
    assert words / READ * 60 + PRESS_S * len(events) < 90


@pytest.mark.parametrize("id", LISTS)
def test_a_list_is_short_and_so_are_its_lines(id: str) -> None:
    one = all_checklists()[id]
    assert 5 <= len(one.items) <= 9
    assert all(len(item.text.split()) <= 17 and len(item.why.split()) <= 24 for item in one.items)


def test_what_is_worn_comes_last_among_what_does_the_same() -> None:
    """Extraction before the mask and moving air before it; hands are washed when nothing dirty is left to touch."""
    text = {id: " ".join(item.text for item in all_checklists()[id].items) for id in LISTS}
    for id, first, then in (("C1", "Air moves", "Mask as"), ("C5", "Extraction", "dust mask"), ("C7", "Extraction", "Dust mask"), ("C9", "Shield", "Glasses"),
                            ("C11", "Wipe phone", "Gloves off"), ("C11", "Wipe the mask", "Gloves off"), ("C6", "Switch off", "Move the rest")):  # fmt: skip
        assert 0 <= text[id].find(first) < text[id].find(then)


def test_an_answer_to_a_line_that_says_no_cannot_be_meant_both_ways() -> None:
    """'No froth': a yes and a no to that can each be meant either way. True and not true cannot."""
    labels = [button["label"] for button in screen("C3", [], FINE)["items"][1]["buttons"]]
    assert labels == ["True", "Not true"]
