"""What keeps a maker whole stays true from one page to the next: ticks, past lists, the number to call, the filters of the region."""

from __future__ import annotations

import time

import pytest

from tests.browser.maker import Maker

C5, C6 = "before-the-lathe/c5/", "before-the-lathe/c6/"


def test_what_begins_anew_on_one_list_clears_the_ticks_of_another(chromium: Maker) -> None:
    chromium.go(C5)
    chromium.press_line("#c5-1")
    chromium.press_line("#c5-2")
    chromium.wait_text("2 of 9", css="[data-part=progress]")
    chromium.go(C6)
    chromium.press_line("#c6-1")
    for _ in range(2):  # on arriving, and after a reload
        chromium.go(C5)
        chromium.wait_text("0 of 9", css="[data-part=progress]")
        assert not chromium.sees(css="[data-closed]", within="#c5-1")
    chromium.press_line("#c5-1")
    chromium.wait_text("1 of 9", css="[data-part=progress]")
    chromium.tap("button", "Undo the last press")
    chromium.wait_for("document.querySelector('[data-part=undo]').disabled", what="no way back to the ticks of the earlier mounting")
    assert chromium.text("[data-part=progress]") == "0 of 9"
    time.sleep(0.6)  # a press right after another on the same button counts as a tremble
    chromium.press_line("#c5-1")
    chromium.go("before-the-lathe/")
    chromium.wait_text("C6", css="[data-component=past-runs]")
    assert "Not ended" in chromium.text("[data-component=past-runs]")


def test_undo_goes_on_past_what_another_list_told_without_clearing_a_tick(chromium: Maker) -> None:
    c2, c3 = "before-a-pour/c2/", "before-a-pour/c3/"
    chromium.go(c2)
    chromium.press_line("#c2-1")
    chromium.go(c3)
    chromium.press_line("#c3-2")
    chromium.press_line("#c3-3")
    chromium.go(c2)
    chromium.tap("button", "Fresh gloves on: start their clock")
    chromium.wait_text("New gloves in", css="[data-part=clocks]")
    chromium.go(c3)
    chromium.wait_text("New gloves in", css="[data-part=clocks]")
    for left in ("2 of 5", "1 of 5", "0 of 5"):
        chromium.wait_text(left, css="[data-part=progress]")
        if left != "0 of 5":
            chromium.tap("button", "Undo the last press")
    chromium.wait_for("document.querySelector('[data-part=undo]').disabled")
    assert "New gloves in" in chromium.text("[data-part=clocks]"), "what came from there is no press of this list"


@pytest.mark.parametrize("ended", [False, True], ids=["begun anew", "ended and begun anew"])
def test_the_watch_goes_on_with_the_older_batch_when_another_is_mixed(chromium: Maker, ended: bool) -> None:
    """Whether it was looked at before or is opened only now."""
    c2, c3 = "before-a-pour/c2/", "before-a-pour/c3/"
    chromium.go(c2)
    chromium.press_line("#c2-1")
    if ended:
        chromium.tap("button", "Leave it unfinished")
        chromium.wait(css="[data-part=outcome]")
    else:
        chromium.go(c3)
        chromium.press_line("#c3-2")
        assert "Older batch" not in chromium.text("[data-part=clocks]")
        chromium.go(c2)
    chromium.tap("button", "New batch: clear all ticks")
    chromium.wait_text("0 of 6", css="[data-part=progress]")
    time.sleep(0.6)  # a press right after another on the same button counts as a tremble
    chromium.press_line("#c2-1")
    chromium.go(c3)
    chromium.wait_text("0 of 5", css="[data-part=progress]")
    chromium.wait_text("Older batch", css="[data-part=clocks]")
    assert chromium.text("[data-part=clocks]").count("Since A met B") == 1


def test_the_number_to_call_is_kept_and_stands_in_every_card(chromium: Maker) -> None:
    chromium.go("emergency/", ready=False)
    chromium.wait_for("document.documentElement.dataset.mounted === location.pathname")
    cards = chromium.eval("document.querySelectorAll('[data-number]').length")
    assert cards >= 5 and not chromium.eval("document.querySelectorAll('a[href^=\"tel:\"]').length"), "no number is there before one is typed"
    chromium.fill("", "01 234 56", css="#number")
    chromium.tap("button", "Keep it")
    chromium.wait_text("Kept on this device", css="[data-part=said]")
    chromium.arrive("emergency/")
    chromium.wait_for("document.querySelectorAll('a[href=\"tel:0123456\"]').length > 0")
    assert chromium.eval("document.querySelectorAll('a[href=\"tel:0123456\"]').length") == cards


def test_the_filters_are_those_of_the_region_and_the_breath_is_counted(chromium: Maker) -> None:
    chromium.arrive("respirator/")
    regions = chromium.eval("[...document.querySelectorAll('input[name=region]')].map((radio) => radio.value)")
    assert len(regions) == 2
    chromium.tap(css=f'input[name=region][value="{regions[1]}"]')
    for again in (False, True):
        if again:
            chromium.arrive("respirator/")
            chromium.wait_for(f"document.querySelector('input[name=region]:checked')?.value === '{regions[1]}'")
        assert chromium.eval(f"document.querySelector('[data-region={regions[1]}]').checkVisibility()")
        assert not chromium.eval(f"[...document.querySelectorAll('[data-region={regions[0]}]')].some((part) => part.checkVisibility())")
    page = chromium.browser.page
    page.clock.install()
    chromium.tap(css="[data-part=hold]")
    page.clock.run_for(4_000)
    assert chromium.text("[data-part=hold]") == "6"
    page.clock.run_for(7_000)
    assert chromium.text("[data-part=hold]") == "Time. Still drawn in?"
    page.clock.resume()


def test_a_tick_is_made_for_a_glove_and_undo_is_out_of_its_way(chromium: Maker) -> None:
    chromium.go("before-a-pour/c1/")
    chromium.wait("button", "Tick", within="#c1-6")
    boxes = chromium.eval("""[...document.querySelectorAll('[data-part=press]')].map((place) => [...place.querySelectorAll('button')]
      .map((button) => button.getBoundingClientRect()).filter((box) => box.height > 0).map(({ width, height }) => [width, height]))""")
    wide = chromium.eval("document.querySelector('main').clientWidth")
    assert len(boxes) == 9
    for [first, *others] in boxes:
        assert first[1] >= 96 and first[0] >= 0.8 * wide, "the press itself"
        assert all(height >= 72 for _, height in others), "a figure read at the bench"
    for number in range(1, 10):
        gap = chromium.eval(f"""(() => {{
          const line = document.querySelector('#c1-{number} [data-part=press] button');
          line.scrollIntoView({{ block: 'center', behavior: 'instant' }});
          const undo = [...document.querySelectorAll('button')].find((one) => one.textContent.includes('Undo')).getBoundingClientRect();
          const box = line.getBoundingClientRect();
          return Math.max(undo.top - box.bottom, box.top - undo.bottom);
        }})()""")
        assert gap >= 32, (number, gap)


EARLIER = """new Promise((resolve) => {
  const request = indexedDB.open('blankwright');
  request.onsuccess = () => {
    const store = request.result.transaction('runs', 'readwrite').objectStore('runs');
    const asked = store.getAll();
    asked.onsuccess = () => {
      for (const run of asked.result) for (const event of run.events) event.at -= 3.41 * 3600;
      for (const run of asked.result) store.put(run);
    };
    store.transaction.oncomplete = () => { request.result.close(); resolve(true); };
  };
})"""


def test_pressure_is_let_down_by_a_second_and_deliberate_press(chromium: Maker) -> None:
    """Too early the bubbles grow back, and no undo brings the pressure back: so the list tells how long it stood, and asks."""
    clock, line = "[data-part=clocks]", "#c8-7"
    chromium.go("pot-or-vacuum/")
    chromium.choose(method="pot")
    chromium.enter(demould="24 h")
    chromium.go("pot-or-vacuum/c8/")
    assert not chromium.sees("button", "Tick", within=line), "the lines above come first"
    for number in range(1, 7):
        chromium.press_line(f"#c8-{number}")
    chromium.wait_text("Hold pressure", css=clock)
    chromium.go("pot-or-vacuum/")
    chromium.eval(EARLIER)  # a maker who comes back after 3.4 hours and a bit
    chromium.go("pot-or-vacuum/c8/")
    chromium.wait_text("Hold pressure", css=clock)
    for meant in (False, True):
        time.sleep(0.6)  # a press right after another on the same button counts as a tremble
        chromium.tap("button", "Tick", within=line)
        chromium.wait_text("Under pressure for at least 3.4 h, 24 h planned.", css="dialog[open]")
        assert not chromium.sees(css="[data-closed]", within=line), "one press lets nothing down"
        chromium.tap("button", "Hard: let the pressure down" if meant else "Back to the list", within="dialog")
        chromium.wait_for("document.querySelector('dialog[open]') === null")
        assert ("Hold pressure" in chromium.text(clock)) or meant
    chromium.wait_text("Let down after 3.4 h", css=f"{line} [data-closed]")
    chromium.wait_for(f"!document.querySelector('{clock}').innerText.includes('Hold pressure')")
    chromium.press_line("#c8-8")
    chromium.tap("button", "End this list")
    chromium.wait_text("Pressure let down after 3.4 h, 24 h planned", css="[data-part=outcome]")
