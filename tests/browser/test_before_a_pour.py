"""Before a deep pour: nine lines before A meets B, that end in 'your call' and never in anything better."""

from __future__ import annotations

import time
from typing import Any

from tests.browser import calc_says
from tests.browser.hosting import Site
from tests.browser.maker import Maker

C1 = "before-a-pour/c1/"
# A pour at which no gate of the nine lines finds a stop.
FIGURES = {"depth": "20", "sheet_depth": "50", "own_depth": "30", "mass": "1300", "working": "40", "handling": "10", "sheet_mass": "3000",
           "moulds_take": "1400", "room": "22", "resin": "22", "lowest": "18", "highest": "28", "tray_length": "600", "tray_width": "300", "leftovers": "1300"}
CHOICES = {"ratio_by": "same", "mask": "none"}


def fill_in(maker: Maker) -> None:
    """Type the figures of the pour into the question."""
    maker.go("before-a-pour/")
    maker.choose(**CHOICES)
    maker.enter(**FIGURES)
    maker.wait_for("!document.getElementById('answer').hidden", what="the answer to the gates")


def run_of(maker: Maker) -> dict[str, Any]:
    """The kept list: checklists are kept under an id of their own for each time they are gone through."""
    runs = maker.eval("""new Promise((resolve) => {
      const request = indexedDB.open('blankwright');
      request.onsuccess = () => {
        const asked = request.result.transaction('runs').objectStore('runs').getAll();
        asked.onsuccess = () => { request.result.close(); resolve(asked.result); };
      };
    })""")
    return max((run for run in runs if run["kind"] == "checklist"), key=lambda run: run["at"])


def test_nine_ticks_end_in_your_call(maker: Maker) -> None:
    fill_in(maker)
    maker.follow("C1", C1)
    maker.wait("button", "Tick", within="#c1-1")
    for number in range(1, 10):
        assert "No stop found" not in maker.text("[data-part=outcome]")
        maker.press_line(f"#c1-{number}")
    maker.wait_text("9 of 9", css="[data-part=progress]")
    ending = maker.eval("[...document.querySelectorAll('[data-part=buttons] button')].map((button) => button.textContent)")
    if not maker.sees(css="[data-part=outcome]"):
        assert ending, "nine lines closed, and no way to end the list"
        maker.tap("button", ending[0], within="[data-part=buttons]")
    maker.wait(css="[data-part=outcome]")
    said = maker.text("[data-part=outcome]")
    assert "No stop found - your call" in said
    assert not any(word in maker.text("main").lower().split() for word in ("approved", "ok", "ok."))
    kept = run_of(maker)
    inputs = {**FIGURES, **CHOICES}
    screen = calc_says.ask("run", id="C1", inputs=inputs, units="metric", events=kept["events"], now=time.time())
    assert screen["ended"] and screen["big"]["text"] in said
    maker.go("before-a-pour/")
    maker.wait_text("No stop found - your call", css="[data-component=past-runs]")
    assert "1.3 kg" in maker.text("[data-component=past-runs]"), "with the figures it went by"


def test_a_stop_stops_and_a_changed_figure_makes_a_tick_stale(chromium: Maker) -> None:
    fill_in(chromium)
    chromium.follow("C1", C1)
    chromium.press_line("#c1-2")
    assert chromium.sees(css="[data-part=press] [data-closed]", within="#c1-2")
    chromium.follow("Change the figures", "before-a-pour/")
    chromium.enter(depth="60")
    chromium.wait_for("document.querySelector('[data-part=hero]')?.closest('[hidden]') === null")
    chromium.follow("C1", C1)
    chromium.wait_text("Pressed before the figures changed", css="#c1-2")
    chromium.wait_for("document.querySelector('#c1-2 [data-part=gate]').dataset.state === 'stop'")
    assert not chromium.sees("button", "Tick", within="#c1-2"), "a line that says stop cannot simply be ticked"
    chromium.tap("button", "Go on past this stop", within="#c1-2")
    chromium.tap("button", "Back to the list", within="dialog")
    chromium.wait_for("document.querySelector('dialog[open]') === null")
    assert not chromium.sees(css="[data-closed]", within="#c1-2"), "one press does not go past a stop"
    time.sleep(0.6)  # a press right after another on the same button counts as a tremble
    chromium.press_line("#c1-2")
    chromium.wait_text("past", css="#c1-2 [data-closed]")


def test_undo_opens_a_line_again_and_a_restart_goes_on(chromium: Maker) -> None:
    chromium.go(C1)
    chromium.wait("button", "Tick", within="#c1-6")
    chromium.press_line("#c1-6")
    chromium.wait_text("1 of 9", css="[data-part=progress]")
    chromium.press_line("#c1-8")
    chromium.wait_text("2 of 9", css="[data-part=progress]")
    chromium.tap("button", "Undo the last press")
    chromium.wait_text("1 of 9", css="[data-part=progress]")
    chromium.browser.restart()
    chromium.go(C1)
    chromium.wait_text("1 of 9", css="[data-part=progress]")
    assert chromium.sees(css="[data-closed]", within="#c1-6")
    assert not chromium.sees(css="[data-closed]", within="#c1-8")


def test_the_weighing_plan_is_offered_and_taken(chromium: Maker) -> None:
    chromium.go("how-much-to-weigh/")
    chromium.enter(total="1300", ratio="100:45", working="40")
    chromium.choose(by="weight")
    chromium.ask()
    chromium.go("before-a-pour/")
    chromium.tap("button", "Take the figures from How much to weigh?")
    chromium.wait_for("""document.querySelector('[data-field="mass"] input').value.startsWith('1301')""")
    assert chromium.value("working").startswith("40") and chromium.value("ratio") == "100:45"
    chromium.go("how-much-to-weigh/")
    chromium.enter(bucket="1")
    chromium.wait_text("Each of 2 pours", css=".answer")
    chromium.go("before-a-pour/")
    chromium.tap("button", "Take the figures from How much to weigh?")
    chromium.wait_for("""document.querySelector('[data-field="mass"] input').value.startsWith('65')""")  # one bucket, not both
    chromium.go("how-much-to-weigh/")
    chromium.enter(total="1000")
    chromium.wait_text("Each of 2 pours", css=".answer")
    chromium.ask()
    chromium.go(C1)
    chromium.wait_text("Batch: 0.5 kg", css="main")  # of the newest plan, though an older one was taken over by a press


def test_a_line_says_why_and_who_says_so(chromium: Maker, site: Site) -> None:
    chromium.go(C1)
    chromium.tap(css="#c1-6 summary")
    chromium.wait_for("document.querySelector('#c1-6 details').open")
    assert chromium.eval("document.querySelectorAll('#c1-6 details cite').length") >= 1
