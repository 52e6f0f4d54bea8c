"""The checklists as runs: presses in, screens out. Nothing ticks itself, nothing stale counts, no list is a dead end."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from calc import desk, sources
from calc.safety.checklists import all_checklists
from tests.unit.lists import END, FINE, LATHE, LISTS, PLANS, POT, press, press_all, screen


def test_the_lists_have_their_items_in_number() -> None:
    counts = {"C0": 7, "C1": 9, "C2": 6, "C3": 5, "C4": 6, "C5": 9, "C6": 6, "C7": 8, "C8": 8, "C9": 6, "C10": 6, "C11": 8}
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
        "C6": ["", "G9", "", "G11", "G10", ""],
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


def test_what_holds_where_the_sheet_is_silent_is_said_once_a_list() -> None:
    gates = [item["gate"] for item in screen("C1", [])["items"] if item["gate"]]
    assert sum("the sheet" in gate["text"] for gate in gates) > 2 and [bool(gate["hint"]) for gate in gates].count(True) == 1


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
    names = {*all_checklists()[to].after.split(), *all_checklists()[to].reads.split()}
    carried = [event for id in sorted(names) if id in others for event in screen(id, others[id], PLANS[id])["carry"]]
    return sorted((event for event in carried if event["at"] > since), key=lambda event: float(event["at"]))


def later(events: list[dict[str, Any]], by: float) -> list[dict[str, Any]]:
    return [{**event, "at": event["at"] + by} for event in events]


@pytest.mark.parametrize(
    ("open_list", "begun"),
    [("C5", "C6"), ("C7", "C6"), ("C7", "C5"), ("C5", "C4"), ("C6", "C4"), ("C7", "C4"), ("C5", "C7"), ("C6", "C7"), ("C2", "C1"), ("C3", "C2"), ("C9", "C1")],
)
def test_what_begins_anew_on_one_list_clears_an_open_one_after_it(open_list: str, begun: str) -> None:
    """A remount on C6 clears C5, and so does the rest moved out of the way on C7: the first press there is enough."""
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
    assert handed("C5", 1000.0, C6=stops) == [{"type": "anew", "at": 2000.0, "from": "C6"}]


READ = {"type": "reading", "field": "speed", "typed": "50", "units": "metric", "at": 30.0}


@pytest.mark.parametrize(("to", "number", "clears"), [("C6", 5, False), ("C7", 4, True)])
def test_what_was_read_on_the_dial_is_read_once(to: str, number: int, clears: bool) -> None:
    """Put in on C5 it is what C6 and C7 show; only C7 begins anew with C5, and a reading of its own comes after."""
    first = [*press_all("C5", LATHE)[:2], READ]
    got = handed(to, 0.0, C5=first)
    shown = screen(to, got, LATHE)
    assert {total["label"]: f"{total['text']} {total['unit']}" for total in shown["totals"]}["On the dial"] == "50 rpm"
    assert "50 rpm" in shown["items"][number - 1]["text"] and shown["progress"][0] == 0 and not any(item["stale"] for item in shown["items"])
    pressed = later(press_all(to, LATHE)[:2], -1000.0)
    assert screen(to, [*pressed, *got], LATHE)["progress"][0] == (0 if clears else 2)
    own = screen(to, [*got, {**READ, "typed": "60", "at": 40.0}], LATHE)
    assert "60 rpm" in own["items"][number - 1]["text"]
    anew = screen("C5", handed("C5", 0.0, **{to: [{**READ, "typed": "60"}]}), LATHE)  # a mounting reads its own
    assert "350 rpm on the dial" in anew["items"][5]["gate"]["text"]


def test_after_a_catch_the_glue_is_pushed_cracks_are_always_looked_for_and_c5_comes_next() -> None:
    one = all_checklists()["C6"]
    texts = [item.text for item in one.items]
    glue = next(item for item in one.items if item.text.startswith("Glued mount: push the rim"))
    assert "gap at the glue" in glue.text and glue.reasons
    assert not next(item for item in one.items if "cracks" in item.text).reasons and glue.number < texts.index(next(t for t in texts if "rest" in t)) + 1
    assert one.next == "C5" and "C5" in one.lead and "C6" in all_checklists()["C5"].lead


def test_parts_that_met_again_clear_the_watch_and_move_its_clock() -> None:
    watched = [{"type": "mixed", "at": 1.0}, *press_all("C3", FINE)[:2]]
    shown = screen("C3", [*watched, {"type": "mixed", "at": 3000.0}], FINE)
    assert shown["progress"][0] == 0 and shown["items"][0]["stale"]
    assert {clock["starts"] for clock in shown["clocks"] if clock["id"] in ("since", "peak", "layer")} == {3000.0}


SLOW, FAST = {"peak_after": "70 min", "peak_latest": "8.5 h"}, {"peak_after": "20 min", "peak_latest": "50 min"}


def _older(events: list[dict[str, Any]], plan: dict[str, str], now: float) -> list[tuple[str, float, float | None]]:
    clocks = screen("C3", events, FINE | plan, now=now)["clocks"]
    assert [clock["starts"] for clock in clocks if clock["id"] in ("stay", "layer")] == [3000.0] * (1 + bool(plan)), "the newest by its own clocks"
    return [(clock["id"], clock["starts"], clock["ends"]) for clock in clocks if clock["id"].startswith("older")]


def test_a_batch_that_still_cures_is_watched_on_when_another_is_mixed() -> None:
    """A slow one, then a fast one 50 minutes later: each to its own latest hour, though the plan on the page is the fast one's by now."""
    one, two = {"type": "mixed", "at": 1.0}, {"type": "mixed", "at": 3000.0}
    shown = screen("C3", [one], FINE | SLOW)
    looked = [one, press(shown, 2, 10.0), press(shown, 3, 20.0)]
    assert not [clock for clock in screen("C3", looked, FINE | SLOW)["clocks"] if clock["id"].startswith("older")], "one batch, one set of clocks"
    mended = [*looked, press(screen("C3", looked, FINE | FAST), 5, 30.0)]  # the next plan, typed while the first is looked at, does not shorten its watch
    for events in ([*looked, two], [*mended, two]):
        assert _older(events, FAST, 3000.0) == [("older_stay", 1.0, 1.0 + 8.5 * 3600)]
        assert len(_older(events, FAST, 16.9 * 3600)) == 1 and not _older(events, FAST, 17.1 * 3600)  # well past: twice its hour, our judgement
    assert _older([one, two], {}, 3000.0) == [("older", 1.0, None)] and not _older([one, two], {}, 24 * 3600 + 2.0)


def test_the_pour_tells_the_watch_of_each_batch_with_its_hour() -> None:
    first = screen("C2", [], FINE | SLOW)
    poured = [press(first, 1, 1.0), {"type": "new-batch", "at": 2000.0}]
    poured.append(press(screen("C2", poured, FINE | FAST), 1, 3000.0))
    carry = screen("C2", poured, FINE | FAST)["carry"]
    met = [(event["at"], event["latest"]) for event in carry if event["type"] == "mixed"]
    assert met == [(1.0, 8.5 * 3600), (3000.0, 50 * 60.0)]
    assert _older(carry, FAST, 3000.0) == [("older_stay", 1.0, 1.0 + 8.5 * 3600)]


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


def takes(id: str, events: list[dict[str, Any]]) -> int | None:
    """The place of the press that Undo takes; None where there is none to take."""
    return next((one["takes"] for one in screen(id, events, PLANS[id])["buttons"] if one["kind"] == "undo"), None)


@pytest.mark.parametrize(("id", "begun"), [("C2", "C1"), ("C3", "C2"), ("C5", "C6"), ("C9", "mix")])
def test_undo_goes_back_press_by_press_but_to_none_that_news_made_stale(id: str, begun: str) -> None:
    """Fresh gloves on another list clear no tick, so Undo goes on past them; a batch or a mounting begun there does, and Undo stops at it."""
    ticks = [event for event in press_all(id, PLANS[id]) if event["type"] != "end"][:4]
    gloves = {"type": "gloves", "at": 25.0, "from": begun}
    anew = {"type": "mixed", "at": 100.0} if begun in ("C2", "mix") else {"type": "anew", "at": 100.0, "from": begun}
    events, undone = [*ticks[:2], gloves, *ticks[2:]], []
    while (place := takes(id, events)) is not None:
        undone.append(events.pop(place))
    assert undone == ticks[::-1] and events == [gloves]
    after = [*ticks, anew, *later(ticks[:1], 200.0)]
    assert takes(id, after) == 5 and takes(id, after[:5]) is None
    assert screen(id, after[:5], PLANS[id])["progress"][0] == 0


def test_undo_takes_a_reading_that_cannot_be_one_and_brings_back_what_was_cleared_here() -> None:
    slip = {"type": "reading", "field": "speed", "typed": "fast", "units": "metric", "at": 50.0}
    assert takes("C5", [*press_all("C5", LATHE)[:2], slip]) == 2
    cleared = [*press_all("C1", FINE)[:2], {"type": "new-batch", "at": 500.0}]
    assert takes("C1", cleared) == 2 and screen("C1", cleared[:2], FINE)["progress"][0] == 2


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
    lasts = clocks["poured"]["ends"] - 1000.0
    assert lasts < 0.6 * 3600 and lasts % 60 == 0  # this batch in one bucket sets before 60 % of the sheet's 60 min
    small = {clock["id"]: clock for clock in screen("C2", events, {name: text for name, text in FINE.items() if name != "mass"})["clocks"]}
    assert small["poured"]["ends"] == pytest.approx(1000.0 + 0.6 * 3600)  # its mass not known: 60 % of 60 min, common practice
    assert clocks["gloves"]["ends"] == pytest.approx(1000.0 + 1800)  # 30 min: a resin maker's article
    assert (clocks["poured"]["label"], clocks["poured"]["overdue_label"]) == ("Pour within", "Pour late by")


def test_fresh_gloves_start_their_clock_again_and_late_gloves_stop_nobody() -> None:
    events = [press(screen("C2", [], FINE), 1, 0.0)]
    late = screen("C2", events, FINE, now=1900.0)
    assert late["items"][4]["gate"]["state"] == "reminder"
    fresh = [*events, {"type": "gloves", "at": 1900.0}]
    assert screen("C2", fresh, FINE, now=1905.829)["items"][4]["gate"]["text"] == "1 min in this pair, 30 min is their time."
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
    assert screen("C3", [reading], FINE)["card"] == "e1a"
    bad = screen("C3", [reading | {"typed": "..."}], FINE)
    assert bad["errors"] and bad["items"]


@pytest.mark.parametrize("planned", [{}, {"planned_peak": "45 C"}, {"planned_peak": "200 C"}])
def test_a_reading_over_any_pours_limit_opens_the_card_for_getting_out(planned: dict[str, str]) -> None:
    reading = {"type": "reading", "field": "hottest", "typed": "140", "units": "metric", "at": 5.0}
    shown = screen("C3", [reading], planned)
    item = shown["items"][0]
    assert item["gate"]["state"] == "stop" and "140 °C" in item["gate"]["text"] and "80 °C" in item["gate"]["text"] and "E1b" in item["gate"]["action"]
    assert (shown["outcome"], shown["card"], shown["tone"]) == ("stop", "e1b", "stop") and item["buttons"][0]["id"] == "past"
    assert screen("C3", [reading, press(shown, 1, 6.0)], planned)["card"] == "e1b"  # no press ends it
    assert not screen("C3", [reading, {"type": "round", "at": 9.0}], planned)["card"]


def test_without_a_planned_figure_a_reading_is_shown_and_stays_not_checked() -> None:
    reading = {"type": "reading", "field": "hottest", "typed": "50", "units": "metric", "at": 5.0}
    shown = screen("C3", [reading], {})
    assert shown["items"][0]["gate"]["state"] == "not checked" and "Hottest spot 50 °C" in shown["items"][0]["gate"]["text"] and not shown["card"]


def test_no_text_names_a_card_that_does_not_exist() -> None:
    cards = {card["code"] for card in sources.document("cards")["card"]}
    told = json.dumps([sources.document(name) for name in ("checklists", "gates", "cards")], default=str)
    assert set(re.findall(r"\bE\d\w?\b", told)) <= cards


def test_waiting_for_the_next_layer_is_a_tick_while_its_gate_says_stop() -> None:
    mixed = {"type": "mixed", "at": 0.0}
    item = screen("C3", [mixed], FINE, now=3600.0)["items"][3]
    assert item["gate"]["state"] == "stop" and item["buttons"][0]["event"]["type"] == "tick"
    assert item["text"].startswith("Next layer waits until 8 h after this one")


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
    assert {clock["starts"] for clock in ticked["clocks"] if clock["id"] == "poured"} == {100.0}
    assert {"type": "mixed", "at": 100.0} in ticked["carry"]


@pytest.mark.parametrize("id", [id for id in LISTS if all_checklists()[id].gloves == "on"])
def test_a_clock_reads_well_running_and_past_its_end(id: str) -> None:
    """A time follows both: 'Pour within 12:03', 'Pour late by 3:10'; short enough for the bar of a narrow phone."""
    handed = [{"type": "gloves", "at": 0.0}, {"type": "mixed", "at": 0.0}]
    events = [*handed, *press_all(id, PLANS[id])[:-1]]
    clocks = screen(id, events, PLANS[id], now=1e6)["clocks"]
    assert clocks
    for clock in clocks:
        assert clock["label"] and clock["starts"] <= 1e6
        assert max(len(clock["label"]), len(clock["overdue_label"])) <= 14
        if clock["ends"] is not None:
            assert clock["overdue_label"].endswith((" by", " since")) and not clock["label"].endswith(" by")


def _watch(plan: dict[str, str]) -> list[dict[str, Any]]:
    clocks: list[dict[str, Any]] = screen("C3", [{"type": "mixed", "at": 0.0}], FINE | plan)["clocks"]
    return clocks


def test_the_watch_runs_to_the_latest_peak_and_tells_the_soonest() -> None:
    """Of a range, neither end may stand for both: the soonest sends away too early, the latest has nobody look in time."""
    plan = {"peak_after": "70 min", "peak_latest": "8.5 h"}
    clocks = {clock["id"]: clock for clock in _watch(plan)}
    assert clocks["soonest"]["ends"] - clocks["soonest"]["starts"] == 70 * 60
    assert clocks["stay"]["ends"] - clocks["stay"]["starts"] == 8.5 * 3600 and "peak" not in clocks
    (single,) = (clock for clock in _watch({"peak_after": "4 h"}) if clock["id"] in ("peak", "soonest", "stay"))
    assert single["id"] == "peak" and single["ends"] - single["starts"] == 4 * 3600


def test_a_batch_that_is_poured_clears_the_list_before_the_mixing_and_no_other() -> None:
    pressed = press_all("C1", FINE)[:-1]
    assert screen("C1", pressed, FINE)["progress"] == [9, 9]
    during = [*pressed, {"type": "mixed", "at": 500.0}]
    assert screen("C1", during, FINE)["progress"] == [9, 9]  # the batch it was pressed for
    after = screen("C1", [*during, {"type": "spent", "at": 900.0}], FINE)
    assert after["progress"] == [0, 9] and all(item["stale_text"] for item in after["items"])
    pour = press_all("C2", FINE)[:-1]
    assert screen("C2", [*pour, {"type": "spent", "at": 900.0}], FINE)["progress"] == screen("C2", pour, FINE)["progress"]
