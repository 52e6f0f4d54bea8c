"""The mixing run: what each press does to the screen, and what goes wrong at the bench."""

from __future__ import annotations

import json
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from calc import desk
from calc.casting.batch import Job, ScaleFace
from calc.casting.mixing import Parts, Ratio
from calc.casting.weighing import PourLimit
from calc.runs.mix import screen_of

#: 2600 g at 100:45, 2 kg scale, 60 g bucket of 1.5 L: two pours of A 897 and B 404 g.
JOB = Job(
    total=2.6,
    ratio=Ratio(100, 45),
    face=ScaleFace("g", 1),
    step=0.001,
    capacity=2.0,
    limit=PourLimit(1.94, 1.32),
    density=1100.0,
    good=0.02,
    worst=0.05,
    empty=0.060,
    working=45 * 60.0,
)
START = 1_700_000_000.0
WEIGHED = ["base", "a", "meet", "b"]
FINISH = ["mixed", "second", "colour", "coloured", "poured", "tray"]


class Bench:
    """Presses buttons by their id, a minute apart, only where the screen offers them."""

    def __init__(self, job: Job = JOB) -> None:
        self.job = job
        self.events: list[dict[str, Any]] = []
        self.now = START

    @property
    def screen(self) -> dict[str, Any]:
        return screen_of(self.job, self.events, self.now)

    def press(self, *ids: str) -> dict[str, Any]:
        for id in ids:
            button = self.button(id)
            assert button["event"] is not None and button["ask"] is None, button
            self.now += 60
            self.events.append({**button["event"], "at": self.now})
            assert not self.screen["errors"], (id, self.screen["errors"])
        return self.screen

    def key(self, id: str, reading: str) -> dict[str, Any]:
        button = self.button(id)
        self.now += 60
        self.events.append({**button["event"], button["ask"]["field"]: reading, "at": self.now})
        return self.screen

    def undo(self) -> dict[str, Any]:
        assert any(button["kind"] == "undo" for button in self.screen["buttons"])
        self.events.pop()
        return self.screen

    def button(self, id: str) -> dict[str, Any]:
        found = [button for button in self.screen["buttons"] if button["id"] == id]
        assert len(found) == 1, (id, [button["id"] for button in self.screen["buttons"]], self.screen["step"])
        return found[0]

    def clock(self, id: str) -> dict[str, Any] | None:
        return next((clock for clock in self.screen["clocks"] if clock["id"] == id), None)


def figure(screen: dict[str, Any]) -> str:
    return f"{screen['big']['text']} {screen['big']['unit']}"


def test_as_shown_all_the_way() -> None:
    bench = Bench()
    assert bench.screen["title"] == "Pour 1 of 2" and figure(bench.screen) == "60 g"
    assert figure(bench.press("base")) == "957 g"  # 60 + 897
    assert figure(bench.press("a")) == "1361 g"  # 957 + 404, not started yet
    assert bench.clock("pot") is None
    assert figure(bench.press("meet")) == "1361 g"
    assert bench.press("b")["step"] == "Mix"
    assert bench.press(*FINISH)["title"] == "Pour 2 of 2"
    assert bench.press(*WEIGHED, *FINISH)["ended"]
    assert figure(bench.screen) == "2602 g"
    assert [row["text"] for row in bench.screen["totals"]] == ["A 897 + B 404"] * 2


def test_only_the_last_pour_goes_to_the_mark_and_what_stays_in_the_bucket_is_not_in_the_mould() -> None:
    bench = Bench()
    bench.press(*WEIGHED, "mixed", "second", "plain")
    assert bench.screen["say"] == "Pour this bucket in, never past the mark." and "last pour" in bench.screen["note"]
    assert figure(bench.screen) == "1268 g"  # 1301 g less 30 mL of 1.1 g/mL: common practice, of each pour at least
    bench.press("poured", "tray")
    assert [(row["label"], row["text"]) for row in bench.screen["totals"]] == [("In the mould, about", "1268")]
    bench.press(*WEIGHED, "mixed", "second", "plain")
    assert bench.screen["say"] == "Pour to the mark, and stop there." and bench.screen["big"] is None
    bench.press("poured", "tray")
    assert bench.screen["big"]["label"] == "Mixed in all" and bench.screen["note"].startswith("About 2536 g of it is in the mould.")


@pytest.mark.parametrize(("job", "met"), [(JOB, ["base", "a", "meet"]), (replace(JOB, way="kit", kit=Parts(0.9, 0.405)), ["skip", "tipped", "meet"])])
def test_before_the_next_pour_two_on_each_other_are_told_to_be_one_layer(job: Job, met: list[str]) -> None:
    bench = Bench(job)
    bench.press(*met, *([] if job.way == "kit" else ["b"]), *FINISH)
    assert not bench.screen["ended"]
    (told,) = bench.screen["cautions"]
    assert "within the hour it is one layer" in told["text"] and "How deep and how hot?" in told["text"]
    bench.now += 3600
    (told,) = bench.screen["cautions"]
    assert "a layer of its own" in told["text"] and "How deep and how hot?" in told["text"]
    bench.press(*met)
    assert not bench.screen["cautions"]  # too late for it
    assert not Bench(job).screen["cautions"]


def test_the_clock_starts_when_the_parts_meet_and_ends_at_an_epoch_time() -> None:
    bench = Bench()
    bench.press("base", "a", "meet")
    met = bench.now
    within = JOB.within(1.301)
    assert within is not None and within < 0.6 * 2700 and within % 60 == 0
    assert bench.clock("pot") == {
        "id": "pot",
        "label": "Pour within",
        "starts": met,
        "ends": met + within,
        "warns": met + 0.6 * within,
        "overdue_label": "Overdue by",
        "alarm": True,
    }
    bench.press("b")
    mixing = bench.clock("mix")
    assert mixing is not None and mixing["ends"] - mixing["starts"] == 300  # 3 to 5 min: the longer
    bench.press("mixed", "second", "plain", "poured")
    assert bench.clock("pot") is None


def test_overdue_is_a_stop_with_a_way_out() -> None:
    bench = Bench()
    bench.press(*WEIGHED)
    bench.now += 46 * 60
    screen = bench.screen
    assert screen["tone"] == "stop" and screen["say"].startswith("Past its time in the bucket")
    assert [clock["id"] for clock in screen["clocks"]] == ["pot"]
    assert bench.press("discard")["step"] == "Leftovers"
    assert bench.press("tray")["title"] == "Pour 1 of 2"  # the same pour again
    assert "was not used" in bench.screen["record"][0]


def test_overdue_while_b_is_weighed_says_so_before_it_says_to_pour() -> None:
    bench = Bench()
    bench.press("base", "a", "meet")
    bench.now += 46 * 60
    screen = bench.screen
    assert screen["tone"] == "stop" and screen["say"] == "Past its time in the bucket."
    assert screen["big"] and "Still thin and cool? Pour B in" in screen["note"]
    assert bench.press("discard")["step"] == "Leftovers"


def main_of(screen: dict[str, Any]) -> tuple[str, str]:
    (main,) = [button for button in screen["buttons"] if button["kind"] == "main"]
    return main["id"], main["label"]


def test_overdue_the_big_button_gets_it_out_of_the_bucket() -> None:
    bench = Bench()
    bench.press("base", "a", "meet")
    bench.now += 46 * 60
    assert main_of(bench.screen) == ("discard", "Into the tray, spread thin")
    assert bench.button("b")["kind"] == "other"  # still thin and cool: that is the maker's to say
    assert bench.press("b")["step"] == "Mix"
    assert main_of(bench.screen) == ("discard", "Into the tray, spread thin")
    assert bench.button("still")["kind"] == "other"


@pytest.mark.parametrize("pressed", [(), ("mixed",), ("mixed", "second"), ("mixed", "second", "colour"), ("mixed", "second", "plain")])
def test_overdue_and_mixed_the_tray_leads_and_pouring_is_asked_about_and_goes_on_the_record(pressed: tuple[str, ...]) -> None:
    bench = Bench()
    bench.press(*WEIGHED, *pressed)
    bench.now = START + 50 * 60
    assert main_of(bench.screen)[0] == "discard"
    asked = bench.press("still")
    assert asked["step"] == "Thin and cool?" and main_of(asked) == ("discard", "No: into the tray") and bench.button("pour-now")["kind"] == "danger"
    assert asked["progress"][0] >= 5
    assert bench.press("pour-now")["step"] == "Pour"
    assert main_of(bench.screen) == ("poured", "Poured")
    met = next(event["at"] for event in bench.events if event["type"] == "meet")
    bench.press("poured")
    within = JOB.within(1.301)
    assert within is not None
    assert bench.screen["record"] == [
        "Pour 1: past its time in the bucket, found thin and cool.",
        f"Pour 1: poured {(bench.now - met - within) / 60:.0f} min after its time in the bucket.",
    ]


def test_what_was_poured_as_the_clock_ran_out_is_one_press() -> None:
    bench = Bench()
    bench.press(*WEIGHED, "mixed", "second", "plain")
    bench.now += 46 * 60
    assert main_of(bench.screen)[0] == "discard"
    assert bench.press("poured")["step"] == "Leftovers"


def test_more_in_the_bucket_has_a_shorter_clock_and_none_has_the_sheets_pot_life() -> None:
    times = [JOB.within(mass) for mass in (0.02, 0.1, 0.5, 1.3, 3.7, 20.0)]
    assert all(earlier is not None and later is not None and later <= earlier < 0.6 * 2700 + 1 for earlier, later in pairwise(times))
    bench = Bench()
    bench.press("base", "a", "meet")
    bench.key("b-typed", "1403")  # twice the B: the A that mends it makes a heavier bucket
    clock, mended = bench.clock("pot"), JOB.within(1.346)
    assert clock is not None and mended is not None and clock["ends"] - clock["starts"] <= mended
    warm = replace(JOB, room=303.15).within(1.3)
    assert warm is not None and warm < (JOB.within(1.3) or 0)


def test_off_ratio_and_overdue_the_tray_leads() -> None:
    bench = Bench()
    bench.press("base", "a", "meet")
    bench.key("b-typed", "1403")
    bench.press("give-up")
    bench.now += 46 * 60
    assert main_of(bench.screen)[0] == "discard" and bench.button("back")["kind"] == "other" and bench.button("use")["kind"] == "danger"


def test_with_little_time_left_colour_no_longer_leads() -> None:
    bench = Bench()
    bench.press(*WEIGHED, "mixed", "second")
    assert main_of(bench.screen)[0] == "colour"
    bench.now += 9 * 60  # past 60 % of what this bucket has
    assert main_of(bench.screen) == ("plain", "Clear: pour it now") and bench.screen["tone"] == "caution"
    assert bench.button("colour")["kind"] == "other"
    assert bench.press("plain")["say"] == "Pour this bucket in now, never past the mark."
    late = Bench(replace(JOB, total=1.3))
    late.press(*WEIGHED, "mixed", "second")
    late.now += 9 * 60
    assert late.press("plain")["say"] == "Pour now, to the mark, and stop there."
    bench.press("poured", "tray")
    assert bench.screen["record"] == []


def test_with_little_time_left_the_weighing_goes_on_and_says_so() -> None:
    bench = Bench()
    bench.press("base", "a", "meet")
    bench.now += 11 * 60
    assert main_of(bench.screen) == ("b", "Done as shown") and "Little time is left." in bench.screen["note"]
    assert bench.press("b")["note"].endswith("Little time is left: then pour at once.")


def test_the_checklists_begin_with_the_time_a_met_b() -> None:
    bench = Bench()
    assert bench.screen["carry"] == []
    bench.press("base", "a", "meet")
    met = bench.now
    assert bench.screen["carry"] == [{"type": "mixed", "at": met}]
    bench.press("b", *FINISH)
    assert bench.screen["title"] == "Pour 2 of 2" and bench.screen["carry"] == [{"type": "mixed", "at": met}]


def test_without_a_working_time_the_clock_counts_up() -> None:
    bench = Bench(replace(JOB, working=None))
    bench.press(*WEIGHED)
    clock = bench.clock("pot")
    assert clock is not None and clock["ends"] is None and clock["label"] == "Since A met B"
    bench.now += 1e6
    assert bench.screen["tone"] != "stop"


def test_too_much_a_makes_a_new_b_and_says_the_surplus() -> None:
    bench = Bench(replace(JOB, total=1.3, limit=PourLimit(1.94, None)))
    bench.press("base")
    screen = bench.key("a-typed", "1002")  # A 942 instead of 897: B 423.9
    assert figure(screen) == "1426 g"  # 1002 + 424
    assert screen["note"].startswith("A is 45 g over. B is now 424 g instead of 404 g. This pour comes out 65 g bigger.")
    bench.press("meet", "b")
    assert bench.screen["step"] == "Mix" and "Weighed" in bench.screen["note"]


def test_too_much_a_for_the_bucket_is_taken_back_out() -> None:
    bench = Bench()
    bench.press("base")
    screen = bench.key("a-typed", "1100")  # 1040 g of A makes 1508 g: over 1320
    assert screen["step"] == "Too much A" and figure(screen) == "957 g" and "143 g" in screen["say"]
    assert bench.press("a")["step"] == "B is next"


def test_a_in_small_can_be_topped_up_or_left() -> None:
    bench = Bench()
    bench.press("base")
    screen = bench.key("a-typed", "900")
    assert "57 g short" in screen["note"] and figure(screen) == "1278 g"  # 840 x 0.45 = 378
    assert figure(bench.press("more-a")) == "957 g"
    assert figure(bench.press("a")) == "1361 g"


def test_a_short_pour_is_made_up_by_the_next() -> None:
    bench = Bench()
    bench.press("base")
    bench.key("a-typed", "900")
    bench.press("meet", "b", *FINISH)
    assert bench.screen["title"] == "Pour 2 of 3"  # 2600 - 1218 = 1382 is over 1320: two pours of 691
    assert figure(bench.press("base")) == "537 g"  # 60 + 477


def test_b_short_is_classed_and_made_up_while_liquid() -> None:
    bench = Bench()
    bench.press("base", "a", "meet")
    screen = bench.key("b-typed", "1345")  # 388 instead of 403.65: 3.9 % short
    assert screen["tone"] == "caution" and screen["step"] == "Add B" and "3.9 % short" in screen["note"]
    assert figure(screen) == "1361 g"
    assert bench.press("fix")["step"] == "Mix"


def test_b_over_asks_for_a() -> None:
    bench = Bench()
    bench.press("base", "a", "meet")
    screen = bench.key("b-typed", "1403")  # 446 instead of 403.65: 10 % over; A 94 g
    assert screen["tone"] == "stop" and screen["step"] == "Add A" and figure(screen) == "1497 g"
    assert "fill line" in screen["note"]  # 1437 g is more than the bucket's 1320
    assert all(button["id"] != "accept" for button in screen["buttons"])
    assert bench.press("fix")["step"] == "Mix"


def test_a_red_batch_is_used_only_by_two_presses_and_goes_on_the_record() -> None:
    bench = Bench()
    bench.press("base", "a", "meet")
    bench.key("b-typed", "1403")
    bench.press("give-up", "use")
    assert bench.screen["step"] == "Mix"
    assert bench.screen["record"] == ["Pour 1: used with B 10 % over."]


def test_an_amber_batch_may_go_on() -> None:
    bench = Bench()
    bench.press("base", "a", "meet")
    bench.key("b-typed", "1345")
    assert bench.press("accept")["step"] == "Mix"


def test_the_sheets_own_tolerance_rules() -> None:
    bench = Bench(replace(JOB, good=0.01, worst=0.01, tolerance_from_sheet=True))
    bench.press("base", "a", "meet")
    assert bench.key("b-typed", "1354")["tone"] == "stop"  # 397: 1.6 % short


def test_a_tared_bucket_counts_from_zero() -> None:
    bench = Bench(replace(JOB, empty=None))
    assert bench.screen["big"] is None
    assert figure(bench.press("base-tared")) == "897 g"
    assert figure(bench.press("a")) == "1301 g"


def test_another_bucket_than_planned() -> None:
    bench = Bench()
    assert figure(bench.key("base-typed", "112")) == "1009 g"


def test_a_bucket_too_heavy_for_the_scale_is_refused_and_dropped() -> None:
    bench = Bench()
    screen = bench.key("base-typed", "800")
    assert "more than" in screen["errors"][0]["message"] and screen["step"] == "Bucket"
    bench.undo()
    assert not bench.screen["errors"]


@pytest.mark.parametrize("reading", ["", "12,345,6", "abc", "2500", "60", "10"])
def test_a_reading_that_cannot_be_is_refused(reading: str) -> None:
    bench = Bench()
    bench.press("base")
    screen = bench.key("a-typed", reading)
    assert screen["errors"] and screen["step"] == "Weigh A"


def test_a_refused_reading_left_in_the_list_changes_nothing_later() -> None:
    bench = Bench()
    bench.press("base")
    bench.key("a-typed", "abc")
    assert figure(bench.press("a")) == "1361 g"


def test_a_reading_far_off_is_asked_about() -> None:
    bench = Bench(replace(JOB, capacity=20.0, limit=PourLimit(19.94, None)))
    bench.press("base")
    screen = bench.key("a-typed", "9570")
    assert screen["step"] == "Is that right?" and screen["big"]["text"] == "9570"
    bench.undo()
    assert bench.screen["step"] == "Weigh A"
    bench.key("a-typed", "9570")
    assert bench.press("sure")["step"] == "B is next"


def test_pounds_and_ounces_may_be_keyed_with_their_unit() -> None:
    bench = Bench()
    bench.press("base")
    assert "4 g over" in bench.key("a-typed", "2 lb 1.9 oz")["note"]  # 961.05 g less 60, and 897


def test_a_switch_of_units_does_not_touch_what_was_keyed() -> None:
    bench = Bench()
    bench.press("base")
    bench.key("a-typed", "960")
    assert bench.events[-1]["unit"] == "g"
    ounces = screen_of(replace(JOB, face=ScaleFace("oz", 0.05)), bench.events, bench.now)
    assert ounces["totals"][0]["text"] == "31.75"  # 900 g


# --- the scale switched itself off ---------------------------------------------------------------


def test_scale_off_with_nothing_poured_since() -> None:
    bench = Bench(replace(JOB, empty=None))
    bench.press("base-tared", "a", "meet", "off")
    assert figure(bench.press("off-zero")) == "404 g"  # zero is now with 897 g of A in it
    assert bench.press("b")["step"] == "Mix"


def test_scale_off_halfway_through_b_with_a_known_bucket() -> None:
    bench = Bench()
    bench.press("base", "a", "meet", "off")
    screen = bench.key("off-reading-typed", "1157")
    assert screen["step"] == "Weigh B" and figure(screen) == "1361 g" and "204 g" in screen["note"]


def test_scale_off_before_b_weighs_a_again() -> None:
    bench = Bench()
    bench.press("base-tared", "a", "off")
    screen = bench.key("off-reading-typed", "960")  # 900 g of A: B 405
    assert screen["step"] == "B is next" and figure(screen) == "1365 g"


def test_scale_off_with_an_unknown_bucket_weighs_a_twin() -> None:
    bench = Bench(replace(JOB, empty=None))
    bench.press("base-tared", "off")
    bench.key("twin-typed", "58")
    screen = bench.key("off-reading-typed", "558")
    assert screen["step"] == "Weigh A" and figure(screen) == "955 g" and "397 g" in screen["note"]


def test_scale_off_cannot_lose_resin() -> None:
    bench = Bench()
    bench.press("base", "a", "meet", "off")
    assert bench.key("off-reading-typed", "700")["errors"]


# --- decanting -----------------------------------------------------------------------------------

DECANT = replace(JOB, way="decant", limit=PourLimit(None, 1.32), empty=None, capacity=5.0)


def test_decanting_by_a_falling_figure() -> None:
    bench = Bench(DECANT)
    assert figure(bench.key("base-typed", "2310")) == "1413 g"
    assert bench.press("a")["step"] == "B is next"
    assert figure(bench.key("meet-typed", "1200")) == "796 g"
    assert bench.press("b")["step"] == "Mix"


def test_decanting_from_a_tared_jug_falls_below_zero() -> None:
    bench = Bench(DECANT)
    assert figure(bench.press("base-tared")) == "-897 g"
    assert "2 g over" in bench.key("a-typed", "899")["note"]  # no minus sign on the keypad
    assert figure(bench.press("meet-tared")) == "-405 g"


def test_a_jug_with_too_little_in_it_is_refused() -> None:
    bench = Bench(DECANT)
    assert "fuller jug" in bench.key("base-typed", "500")["errors"][0]["message"]


def test_decanting_after_the_scale_went_off() -> None:
    bench = Bench(DECANT)
    bench.key("base-typed", "2310")
    bench.press("off")
    assert figure(bench.key("off-reading-typed", "2300")) == "1403 g"
    bench.press("off")
    assert figure(bench.press("off-zero")) == "-897 g"


def test_decanting_b_short_is_added_by_its_amount() -> None:
    bench = Bench(DECANT)
    bench.key("base-typed", "2310")
    bench.press("a", "meet-tared")
    screen = bench.key("b-typed", "384")
    assert figure(screen) == "20 g" and screen["step"] == "Add B"
    assert bench.press("fix")["step"] == "Mix"


# --- whole kits ----------------------------------------------------------------------------------

KIT = replace(JOB, total=2.9, way="kit", kit=Parts(2.0, 0.9), limit=PourLimit(None, None), capacity=5.0)


def test_a_whole_kit_is_checked_by_its_emptied_jugs() -> None:
    bench = Bench(KIT)
    bench.key("full-typed", "2150")
    bench.key("full-typed", "1010")
    assert figure(bench.press("tipped")) == "150 g"
    screen = bench.key("left-typed", "170")  # 1980 g went in: B 891
    assert screen["step"] == "B is next" and figure(screen) == "119 g"
    bench.press("meet")
    assert bench.key("left-typed", "120")["step"] == "Mix"
    assert "0.1 % short" in bench.screen["note"]


def test_a_jug_that_kept_too_much_b() -> None:
    bench = Bench(KIT)
    bench.key("full-typed", "2150")
    bench.key("full-typed", "1010")
    bench.press("tipped", "left", "meet")
    screen = bench.key("left-typed", "160")  # 850 of 900 g: 5.6 % short
    assert screen["step"] == "Add B" and screen["tone"] == "stop" and figure(screen) == "50 g"
    assert bench.press("fix")["step"] == "Mix"


def test_a_kit_that_was_not_weighed_says_so() -> None:
    bench = Bench(KIT)
    bench.press("skip", "tipped", "meet", *FINISH)
    assert bench.screen["ended"] and bench.screen["totals"][0]["label"] == "Pour 1: not checked"
    assert "not checked by weight" in bench.screen["note"]


# --- what is in the bucket already ---------------------------------------------------------------


def test_a_already_in_the_bucket() -> None:
    bench = Bench(replace(JOB, total=1.87, in_a=1.342, limit=PourLimit(1.94, None), capacity=5.0))
    assert figure(bench.screen) == "1402 g"  # 60 + 1342
    screen = bench.press("base")
    assert screen["step"] == "B is next" and figure(screen) == "2006 g"  # 1402 + 604


def test_b_already_in_the_bucket_with_some_a() -> None:
    bench = Bench(replace(JOB, total=1.3, in_a=0.8, in_b=0.420, limit=PourLimit(1.94, None)))
    screen = bench.press("base")
    assert screen["step"] == "Weigh A" and figure(screen) == "1413 g"  # 60 + 420 + 933
    assert bench.clock("pot") is not None
    assert bench.press("a")["step"] == "Mix"


# --- all screens ---------------------------------------------------------------------------------


#: So short a working time that every screen after A meets B comes in its late form too.
SHORT = 90.0


@pytest.mark.parametrize(
    "job",
    [JOB, replace(JOB, empty=None), DECANT, KIT, replace(JOB, working=SHORT), replace(DECANT, working=SHORT), replace(KIT, working=SHORT)],
    ids=["pour", "unknown bucket", "decant", "kit", "pour, short", "decant, short", "kit, short"],
)
def test_every_screen_that_can_be_reached_is_whole(job: Job) -> None:
    """Press every button of every screen, to a depth, and look at what comes."""
    seen: set[tuple[str, ...]] = set()
    todo: list[list[dict[str, Any]]] = [[]]
    while todo:
        events = todo.pop()
        now = START + 60 * len(events)
        screen = screen_of(job, events, now)
        json.dumps(screen, allow_nan=False)
        assert screen["say"] and screen["tone"] in ("go", "caution", "stop", "plain")
        assert sum(button["kind"] == "main" for button in screen["buttons"]) == (0 if screen["ended"] else 1), screen
        assert len(screen["buttons"]) <= 6, screen["step"]
        ids = [button["id"] for button in screen["buttons"]]
        assert len(set(ids)) == len(ids), ids
        step, of = screen["progress"]
        assert 1 <= step <= of
        late = any(clock["id"] == "pot" and clock["ends"] is not None and now > clock["ends"] for clock in screen["clocks"])
        if late and screen["step"] != "Is that right?":
            (main,) = [button for button in screen["buttons"] if button["kind"] == "main"]
            assert main["event"]["type"] in ("discard",) if screen["step"] != "Pour" else ("discard", "poured"), (screen["step"], main)
            assert any(button["id"] == "discard" for button in screen["buttons"]) and screen["tone"] == "stop"
        thrown = any("not used" in line for line in screen["record"][-1:])
        key = (screen["title"], screen["step"], thrown, *ids)
        if key in seen or len(events) > 40:
            continue
        seen.add(key)
        for button in screen["buttons"]:
            if button["event"] is None:
                continue
            readings = [None] if button["ask"] is None else [button["ask"]["start"] or "2500", "1", "1300", "4000"]
            for reading in readings:
                event = {**button["event"], "at": now} | ({} if reading is None else {"reading": reading})
                todo.append([*events, event])
    assert any(title == "All poured" for title, *_ in seen)


def test_the_door_runs_it() -> None:
    inputs = {"total": "2600", "ratio": "100:45", "by": "weight", "bucket": "1.5", "capacity": "2000", "empty": "60", "working": "45"}
    screen = desk.run("mix", inputs, "metric", [{"type": "base", "at": START}], START + 5)
    assert figure(screen) == "957 g" and screen["title"] == "Pour 1 of 2"


def test_a_batch_this_scale_cannot_hold_does_not_start() -> None:
    screen = desk.run("mix", {"total": "50", "ratio": "100:30", "by": "weight", "step": "5"}, "metric", [], START)
    assert screen["tone"] == "stop" and "finer scale" in screen["step"].lower() and not screen["buttons"]


def test_inputs_that_are_wrong_come_back_as_errors() -> None:
    assert desk.run("mix", {"ratio": "100:45"}, "metric", [], START)["errors"]


def test_a_batch_that_was_mixed_before_gets_what_is_missing_or_no_steps() -> None:
    typed = {"total": "1400", "ratio": "100:45", "by": "weight", "in_a": "1000", "in_b": "435", "empty": "60"}

    def first(mixed: str) -> dict[str, Any]:
        inputs = {name: {"typed": text, "units": "metric"} for name, text in {**typed, "mixed": mixed}.items()}
        reply = json.loads(desk.handle(json.dumps({"call": "run", "args": {"id": "mix", "inputs": inputs, "units": "metric", "events": [], "now": START}})))
        assert reply["ok"], reply
        screen: dict[str, Any] = reply["result"]
        return screen

    assert first("warm")["title"] == "Not yet" and "metal tray" in first("warm")["say"]
    bench = Bench(replace(JOB, total=1.4, in_a=1.0, in_b=0.435, mixed=True))
    screen = bench.press("base")
    assert screen["step"] == "Weigh B" and figure(screen) == "1510 g"  # 60 + 1000 + 450
    assert first("cool")["title"] != "Not yet"
