"""Without scripts, without WebAssembly, without modules: everything that is text stays readable, and the page says why."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.browser import calc_says
from tests.browser.engines import Chromium
from tests.browser.hosting import Site
from tests.browser.maker import Maker


def test_every_page_reads_without_script(bent: Callable[..., Chromium], site: Site, pages: list[str]) -> None:
    page = bent(script=False).page
    for path in pages:
        page.goto(site.url + path)
        assert page.get_by_role("heading", level=1).count() == 1, path
        emergency = page.get_by_role("banner").get_by_role("link", name="Emergency")
        assert emergency.is_visible(), path
        for control in page.locator("main input, main select, main textarea, main button").all():
            assert not control.is_visible(), f"{path}: a control that does nothing is shown: {control.evaluate('e => e.outerHTML')[:200]}"
        assert "Waking" not in page.locator("body").inner_text(), path


def test_tables_checklists_and_cards_read_without_script(bent: Callable[..., Chromium], site: Site) -> None:
    page = bent(script=False).page
    for question in [entry["id"] for entry in calc_says.ask("catalogue")]:
        page.goto(f"{site.url}{question}/")
        for units in ("metric", "imperial"):
            table = calc_says.ask("table", id=question, units=units)
            shown = page.get_by_role("table", name=table["caption"]).filter(has_text=str(table["rows"][0][1])).first
            assert shown.is_visible()
            assert shown.get_by_role("row").count() >= len(table["rows"])
    page.goto(site.url + "before-a-pour/c1/")
    assert page.locator("#main").get_by_role("listitem").filter(has_text="Mould level").first.is_visible()
    page.goto(site.url + "how-fast/")
    page.get_by_role("banner").get_by_role("link", name="Emergency").click()
    text = page.locator("main").inner_text()
    for word in ("smok", "eye", "skin", "fire", "emergency number"):
        assert word in text.lower()
    for anchor in page.locator("main a[href^='#']").all():
        target = anchor.get_attribute("href")
        assert page.locator(f"[id='{target[1:]}']").count() == 1, target


# A browser without a compiler, as hardened modes are, has no WebAssembly; others take away the name.
NO_WASM = {"jitless": {"flags": ["--js-flags=--jitless"]}, "deleted": {"preload": "delete globalThis.WebAssembly;"}}


@pytest.mark.parametrize("how", NO_WASM)
def test_without_webassembly_the_page_says_why_and_stays_readable(bent: Callable[..., Chromium], site: Site, how: str) -> None:
    maker = Maker(bent(**NO_WASM[how]), site)
    maker.go("how-fast/", ready=False)
    maker.wait_text("WebAssembly is off in this browser", css="#status")
    assert "Cannot calculate here" in maker.text("#status")
    assert maker.sees("table")
    maker.enter(diameter="14 in")
    maker.tap(css="form [type=submit]")
    maker.go("before-a-pour/c1/", ready=False)
    assert "Mould level" in maker.text("main")
    maker.tap("link", "Emergency", exact=True)
    maker.wait("heading", "Emergency")
    maker.go("how-fast/", ready=False)
    maker.wait_value("diameter", "14 in")


def test_a_browser_without_module_workers_is_told_so(bent: Callable[..., Chromium], site: Site) -> None:
    old = "const Real = Worker; globalThis.Worker = class { constructor(address) { return new Real(address); } };"
    maker = Maker(bent(preload=old), site)
    maker.go("how-fast/", ready=False)
    maker.wait_text("too old", css="#status")
    assert maker.sees("table")


def test_a_browser_that_keeps_nothing_still_answers(bent: Callable[..., Chromium], site: Site) -> None:
    """A private window of some browsers: no service worker, no database."""
    private = """
      Object.defineProperty(Navigator.prototype, 'serviceWorker', { get: () => undefined });
      IDBFactory.prototype.open = () => { throw new DOMException('refused', 'SecurityError'); };
    """
    maker = Maker(bent(preload=private), site)
    maker.go("how-fast/")
    maker.enter(diameter="14 in")
    maker.ask()
    maker.wait_figure(calc_says.figure("how-fast", diameter="14 in"))
    maker.wait_text("not saved", css="#status")
