"""How much to weigh? A plan on the bench, then the steps in gloves: one tap for each, and nothing a reload can lose."""

from __future__ import annotations

import json
import time
from typing import Any

from calc.casting.cure.working import pour_within
from tests.browser import calc_says
from tests.browser.maker import Maker

PLAN = {"total": "1300", "ratio": "100:45", "by": "weight", "working": "40"}
MIX = "how-much-to-weigh/mix/"


def plan(maker: Maker) -> None:
    """Type the plan and go to its steps."""
    maker.go("how-much-to-weigh/")
    maker.enter(total=PLAN["total"], ratio=PLAN["ratio"], working=PLAN["working"])
    maker.choose(by=PLAN["by"])
    maker.ask()
    maker.wait_figure(calc_says.figure("how-much-to-weigh", **PLAN))
    maker.follow("Step by step", MIX)
    maker.wait("button", "It shows 0")


def screen(maker: Maker) -> Any:
    """What calc makes of the presses that the device keeps, here in this Python."""
    run = maker.stored("runs", "mix")
    inputs = {name: typed["typed"] for name, typed in run["inputs"].items()}
    return calc_says.ask("run", id="mix", inputs=inputs, units="metric", events=run["events"], now=time.time())


def step(maker: Maker, button: str) -> None:
    """Press a button of the stage and wait for the next step; a real finger also leaves half a second between presses."""
    before = maker.eval("document.querySelector('[data-part=stage]').innerText")
    presses = len((maker.stored("runs", "mix") or {"events": []})["events"])
    time.sleep(0.55)
    maker.tap("button", button, within="[data-part=stage]")
    maker.wait_for(f"document.querySelector('[data-part=stage]').innerText !== {json.dumps(before)}", what=f"the step after {button}")
    for _ in range(100):
        run = maker.stored("runs", "mix")
        if run and len(run["events"]) != presses and run["screen"]:
            break
        time.sleep(0.05)
    shows(maker)


def shows(maker: Maker) -> None:
    """The page shows exactly the screen that calc makes."""
    wanted = screen(maker)
    maker.wait_for(f"document.querySelector('[data-part=step]').textContent === {json.dumps(wanted['step'])}", what=f"the step {wanted['step']}")
    if wanted["big"]:
        assert maker.text("[data-part=big]").split() == f"{wanted['big']['label']} {wanted['big']['text']} {wanted['big']['unit']}".split()
    assert wanted["say"] in maker.text("[data-part=stage]")


def test_one_tap_for_each_step_from_the_bucket_to_the_mould(maker: Maker) -> None:
    plan(maker)
    for button in ("It shows 0", "Done as shown", "B goes in now", "Done as shown", "Mixed", "In the second bucket", "Clear: no colour",
                   "Poured", "Spread: all poured"):
        step(maker, button)
    assert maker.text("[data-part=title]") == "All poured"
    assert maker.sees("button", "Begin the next mix")


def test_too_much_a_works_b_out_again_and_undo_takes_it_back(maker: Maker) -> None:
    plan(maker)
    step(maker, "It shows 0")
    planned = maker.text("[data-part=big-text]")
    time.sleep(0.55)
    maker.tap("button", "It shows something else")
    maker.wait("group", "The scale shows")
    maker.eval("document.querySelector('[data-part=pad]').scrollIntoView()")
    for _ in planned:
        maker.tap("button", "Delete the last digit")
    for digit in "931":
        maker.tap("button", digit, exact=True, within="[data-part=pad]")
    maker.tap("button", "Put it in")
    maker.wait_text("931", css="[data-part=totals]")
    assert screen(maker)["big"]["text"] in maker.text("[data-part=stage]"), "B goes by the A that is really there"
    shows(maker)
    time.sleep(0.55)
    maker.tap("button", "Undo")
    maker.wait_for(f"document.querySelector('[data-part=big-text]').textContent === {json.dumps(planned)}")
    shows(maker)


def test_a_reload_in_the_middle_goes_on_where_it_was_and_the_clock_went_on(maker: Maker) -> None:
    plan(maker)
    for button in ("It shows 0", "Done as shown", "B goes in now"):
        step(maker, button)
    # An hour with the screen locked: what the device keeps is as old as it would be then.
    maker.eval("""new Promise((resolve, reject) => {
      const request = indexedDB.open('blankwright');
      request.onsuccess = () => {
        const shelf = request.result.transaction('runs', 'readwrite').objectStore('runs');
        const asked = shelf.get('mix');
        asked.onsuccess = () => {
          const run = asked.result;
          for (const event of run.events) event.at -= 3600;
          for (const clock of run.screen.clocks) { clock.starts -= 3600; clock.ends -= 3600; clock.warns &&= clock.warns - 3600; }
          shelf.put(run).onsuccess = () => { request.result.close(); resolve(true); };
        };
        asked.onerror = reject;
      };
    })""")
    maker.go(MIX)
    shows(maker)
    wanted = screen(maker)
    (clock,) = [clock for clock in wanted["clocks"] if clock["ends"] is not None]
    assert clock["ends"] < time.time()
    maker.wait_text(clock["overdue_label"], css="[data-part=clocks]")
    assert clock["overdue_label"].lower().startswith("overdue")
    late = maker.text("[data-part=clocks] b")
    over = 60 - pour_within(40 * 60, 1.3, 1100.0) / 60
    assert late.startswith((f"{over:.0f}:", f"{over + 1:.0f}:")), "60 minutes gone, less what this bucket has of the sheet's 40"


def test_the_figure_can_be_read_from_two_metres_and_buttons_fit_a_glove(chromium: Maker) -> None:
    """A figure is read from afar when its height is about 1/200 of the distance: 10 mm, or 63 px of 160 to the inch, at 2 m."""
    plan(chromium)
    step(chromium, "It shows 0")
    figure = chromium.eval("parseFloat(getComputedStyle(document.querySelector('[data-part=big-text]')).fontSize)")
    assert figure * 0.7 >= 63, "digits are about 0.7 of the type size"
    buttons = chromium.eval("""[...document.querySelectorAll('[data-part=buttons] button, [data-part=go] button')].map((button) => {
      const { width, height, top, bottom } = button.getBoundingClientRect();
      return { text: button.textContent, width, height, top, bottom };
    })""")
    assert all(button["height"] >= 72 and button["width"] >= 72 for button in buttons)
    (main,) = [button for button in buttons if button["text"] == "Done as shown"]
    assert main["height"] >= 96
    assert main["bottom"] <= 740, "the main button is on the screen without scrolling"


def test_without_a_plan_the_steps_lead_to_the_plan(chromium: Maker) -> None:
    chromium.go(MIX)
    chromium.wait_text("There is no plan to go by yet")
    chromium.follow("Make the plan", "how-much-to-weigh/")
    chromium.wait("textbox", "Mixed resin wanted")
