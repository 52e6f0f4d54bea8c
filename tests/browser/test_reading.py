"""Small screens, large text, keyboards, screen readers; nothing moves, and nothing is asked of anybody else."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.browser import calc_says
from tests.browser.engines import DESK, PHONE, Chromium
from tests.browser.hosting import Site
from tests.browser.maker import Maker

AXE = Path(__file__).resolve().parents[2] / ".cache" / "browser-tests" / "node_modules" / "axe-core" / "axe.min.js"

# Text that sticks out of the window, unless it lies in something that is made to scroll sideways by itself.
STICKS_OUT = """(() => {
  const width = document.documentElement.clientWidth;
  const scrolls = (element) => { for (let at = element; at; at = at.parentElement) {
    if (/auto|scroll/.test(getComputedStyle(at).overflowX) && at !== document.documentElement && at !== document.body) return true;
  } return false; };
  const out = [...document.querySelectorAll('body *')].filter((element) => {
    const box = element.getBoundingClientRect();
    return box.width > 1 && box.height > 1 && (box.right > width + 1 || box.left < -1) && element.textContent.trim()
      && getComputedStyle(element).visibility === 'visible' && !scrolls(element);
  }).map((element) => element.outerHTML.slice(0, 120));
  if (document.scrollingElement.scrollWidth > width) out.unshift(`the page is ${document.scrollingElement.scrollWidth} wide`);
  return out.slice(0, 4);
})()"""


INPUTS: dict[str, dict[str, str]] = {
    "how-fast/": {"diameter": "350"},
    "how-much-to-weigh/": {"total": "1300", "ratio": "100:45"},
    "before-a-pour/": {"depth": "60", "sheet_depth": "50"},
    "is-it-enough/": {"across": "350", "depth": "50", "wood": "2400", "have": "3 kg"},
}


def answered(maker: Maker, *paths: str) -> None:
    """Bring questions to an answer, so that pages show what they show in use."""
    for path in paths or INPUTS:
        maker.go(path)
        maker.enter(**INPUTS[path])  # fields that are not folded away
        if path == "how-much-to-weigh/":
            maker.choose(by="weight")
        maker.figure()


def nothing(found: dict[Any, list[Any]]) -> None:
    """Nothing was found anywhere; else say what and where, in full."""
    lines = [f"{where}: {line}" for where, lines in found.items() for line in lines]
    assert not lines, "\n".join(lines)


# --- Sizes ---------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("text", ["100 %", "200 %"])
def test_nothing_sticks_out_at_320_px(bent: Callable[..., Chromium], site: Site, pages: list[str], text: str) -> None:
    """Large text the way a reader gets it: the browser's own font size, twice the usual."""
    engine = bent(size=(320, 700))
    if text == "200 %":
        engine.stop()
        preferences = engine.profile / "Default" / "Preferences"
        kept = json.loads(preferences.read_text(encoding="utf-8"))
        kept.setdefault("webkit", {}).setdefault("webprefs", {}).update({"default_font_size": 32, "default_fixed_font_size": 26})
        preferences.write_text(json.dumps(kept), encoding="utf-8")
        engine.start()
    maker = Maker(engine, site)
    answered(maker)
    size = maker.eval("parseFloat(getComputedStyle(document.documentElement).fontSize)")
    assert size >= (30 if text == "200 %" else 15), "the browser did take the text size"
    found = {}
    for path in pages:
        maker.arrive(path)
        if path in INPUTS:
            maker.figure()
        maker.eval("(document.querySelectorAll('details').forEach((fold) => { fold.open = true; }), 1)")
        found[path] = maker.eval(STICKS_OUT)
    nothing(found)


# --- axe -----------------------------------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def axe() -> str:
    """The source of the accessibility checker."""
    assert AXE.is_file(), "axe-core is missing: build.py test installs it"
    return AXE.read_text(encoding="utf-8")


def violations(maker: Maker, axe: str) -> list[str]:
    """What axe finds, each as one line; every rule is on, also contrast of 7 to 1."""
    page = maker.browser.page
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(axe)
    found = page.evaluate("""async () => (await axe.run(document, {
      resultTypes: ['violations'], rules: { 'color-contrast-enhanced': { enabled: true } },
    })).violations
      .map(({ id, help, nodes }) => `${id}: ${help}: ` + nodes.slice(0, 3).map((node) => node.html.slice(0, 160)
        + (node.any[0]?.data?.contrastRatio ? ` (${node.any[0].data.contrastRatio})` : '')).join(' , ') + ` (${nodes.length})`)""")
    return list(found)


def looked_at(maker: Maker, axe: str, size: tuple[int, int], theme: str) -> list[str]:
    """What axe finds at one size, in one theme."""
    maker.resize(*size)
    maker.eval(f"(document.documentElement.dataset.theme = '{theme}', 1)")
    maker.eval("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))).then(() => 1)")  # nothing here fades
    return violations(maker, axe)


ALL_LOOKS = [(PHONE, "light"), (PHONE, "dark"), (DESK, "light"), (DESK, "dark")]


def test_axe_finds_nothing(chromium: Maker, axe: str, pages: list[str]) -> None:
    found = {}
    for path in pages:
        if path in INPUTS:
            answered(chromium, path)
        else:
            chromium.arrive(path)
        chromium.eval("(document.querySelectorAll('details').forEach((fold) => { fold.open = true; }), 1)")
        for size, theme in ALL_LOOKS:
            found[path, size, theme] = looked_at(chromium, axe, size, theme)
        chromium.resize(*PHONE)
    nothing(found)


def _errors(maker: Maker) -> None:
    maker.go("how-fast/")
    maker.tap(css="form [type=submit]")
    maker.wait("alert", "Not answered yet")


def _slip(maker: Maker) -> None:
    maker.go("how-fast/")
    maker.enter(diameter="14")
    maker.press("Tab")
    maker.wait("group", "Please check")


def _gloves(maker: Maker) -> None:
    answered(maker, "how-much-to-weigh/")
    maker.go("how-much-to-weigh/mix/")
    maker.tap("button", "It shows something else")
    maker.wait("group", "The scale shows")


def _sure(maker: Maker) -> None:
    answered(maker, "before-a-pour/")
    maker.go("before-a-pour/c1/")
    maker.wait_for("document.querySelector('#c1-2 [data-part=gate]').dataset.state === 'stop'")
    maker.tap(css="[data-part=press] button", within="#c1-2")
    maker.wait("dialog")


@pytest.mark.parametrize("state", [_errors, _slip, _gloves, _sure])
def test_axe_finds_nothing_in_the_middle_of_things(chromium: Maker, axe: str, state: Callable[[Maker], None]) -> None:
    state(chromium)
    found = {look: looked_at(chromium, axe, *look) for look in ALL_LOOKS}
    nothing(found)


# --- Nothing moves, nobody else is asked ------------------------------------------------------------------------------------


SHIFTS = """(() => { window.shifts = []; new PerformanceObserver((list) => {
  for (const entry of list.getEntries()) {
    const moved = entry.sources.map((source) => source.node).filter((node) => !node?.parentElement?.closest('#answer'));
    if (moved.length) shifts.push([entry.value, moved.map((node) => node?.outerHTML?.slice(0, 100))]);
  }
}).observe({ type: 'layout-shift', buffered: true }); })()"""


def test_nothing_moves_when_an_answer_arrives(bent: Callable[..., Chromium], site: Site) -> None:
    """Counted from the first paint on, through waking, typing and the answer; also what browsers excuse just after a key.

    Only inside the answer the rows may take new places when another answer follows; nothing there is pressed while typing.
    """
    maker = Maker(bent(preload=SHIFTS), site)
    found = {}
    for size in (PHONE, DESK):
        maker.forget()
        maker.resize(*size)
        for path in INPUTS:
            answered(maker, path)
            maker.eval("new Promise((done) => setTimeout(done, 400)).then(() => 1)")
            found[path, size] = maker.eval("shifts")
            maker.go(path)  # and once more, with what was typed put back
            maker.figure()
            maker.eval("new Promise((done) => setTimeout(done, 400)).then(() => 1)")
            found[path, size, "again"] = maker.eval("shifts")
    nothing(found)


def test_nobody_else_is_asked_for_anything(chromium: Maker, pages: list[str]) -> None:
    answered(chromium)
    for path in pages:
        chromium.go(path, ready=False)
    assert chromium.browser.asked, "requests were seen"
    assert chromium.strangers() == []


# --- Keyboard only ------------------------------------------------------------------------------------------------------------


def focus(maker: Maker) -> dict[str, Any]:
    """What has the focus, and whether that can be seen."""
    return dict(maker.eval("""(async () => {
      const at = document.activeElement;
      const place = () => (at.labels?.[0] && at.getBoundingClientRect().width < 4 ? at.labels[0] : at).getBoundingClientRect();
      const seen = () => place().bottom > 0 && place().top < innerHeight;
      for (let tries = 0; tries < 40 && !seen(); tries += 1) await new Promise((done) => setTimeout(done, 25)); // it scrolls smoothly
      const looks = [at, at.nextElementSibling, at.labels?.[0], at.parentElement].filter(Boolean).map((each) => getComputedStyle(each));
      return { name: blankwrightTest.name(at), tag: at.tagName, type: at.type ?? '', field: at.name ?? '', id: at.id,
        seen: seen(),
        ring: looks.some((style) => style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0) || looks.some((style) => style.boxShadow !== 'none') };
    })()"""))


def tab_to(maker: Maker, wanted: Callable[[dict[str, Any]], bool], *, key: str = "Tab") -> None:
    """Go on by the Tab key until the wanted thing has the focus; everything on the way shows its focus."""
    for _ in range(120):
        maker.press(key)
        at = focus(maker)
        assert at["seen"], f"the focus is where nobody sees it: {at}"
        assert at["ring"] or at["tag"] == "BODY", f"the focus cannot be seen on {at}"
        if wanted(at):
            return
    raise AssertionError("the Tab key never gets there")


def test_how_fast_by_keyboard_alone(maker: Maker) -> None:
    maker.go("")
    tab_to(maker, lambda at: at["tag"] == "A" and at["name"].startswith("How fast?"))
    maker.press("Enter")
    maker.wait_for("location.pathname.endsWith('/how-fast/') && document.querySelector('form[data-ready]') !== null")
    tab_to(maker, lambda at: at["field"] == "diameter")
    maker.type("350")
    maker.press("Enter")
    maker.wait_for("document.activeElement?.id === 'answer'")
    assert maker.figure() == calc_says.figure("how-fast", diameter="350")
    tab_to(maker, lambda at: at["name"] == "Working")
    maker.press("Enter")
    maker.wait_for("document.querySelector('[data-section=working]').open")


def test_weighing_by_keyboard_alone(chromium: Maker) -> None:
    chromium.go("how-much-to-weigh/")
    tab_to(chromium, lambda at: at["field"] == "total")
    chromium.type("1300")
    tab_to(chromium, lambda at: at["field"] == "ratio")
    chromium.type("100:45")
    tab_to(chromium, lambda at: at["field"] == "by")
    chromium.press("Space")
    chromium.wait_figure(calc_says.figure("how-much-to-weigh", total="1300", ratio="100:45", by="weight"))
    tab_to(chromium, lambda at: at["tag"] == "A" and "Step by step" in at["name"], key="Shift+Tab")
    chromium.press("Enter")
    chromium.wait("button", "It shows 0")
    tab_to(chromium, lambda at: at["name"] == "It shows 0")
    chromium.press("Enter")
    chromium.wait("button", "Done as shown")
    tab_to(chromium, lambda at: at["name"] == "Done as shown")


def test_the_nine_lines_by_keyboard_alone(chromium: Maker) -> None:
    chromium.go("before-a-pour/")
    tab_to(chromium, lambda at: at["tag"] == "A" and at["name"].startswith("C1"))
    chromium.press("Enter")
    chromium.wait("button", "Tick", within="#c1-6")
    tab_to(chromium, lambda at: at["name"] == "Tick")
    chromium.press("Space")
    chromium.wait_text("1 of 9", css="[data-part=progress]")
    assert chromium.eval("document.querySelector('#c1-6').contains(document.activeElement)"), "the focus stays on the line that was ticked"
