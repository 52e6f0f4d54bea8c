"""From one release to the next: it waits for the maker, loses nothing typed, and a broken one changes nothing; every tab changes."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import expect

from tests.browser import calc_says
from tests.browser.hosting import Site
from tests.browser.maker import Maker

NEWS = "This is the next release."
BUTTON = "Use the new version"
LOOK = "navigator.serviceWorker.getRegistration().then((r) => r.update()).then(() => true, () => true)"


def test_an_update_waits_for_the_maker_and_keeps_what_is_typed(visitor: Maker, next_dist: Path) -> None:
    visitor.go("how-fast/")
    visitor.settled()
    visitor.site.serve(next_dist)
    visitor.site.caching("max-age=600")
    visitor.site.forget()
    visitor.go("how-fast/")
    visitor.enter(diameter="352")
    visitor.wait("button", BUTTON, timeout=60)
    assert visitor.value("diameter") == "352"
    visitor.follow("All questions", "")
    assert NEWS not in visitor.text("main"), "the old release goes on until the maker says so"
    visitor.go("how-fast/")
    visitor.wait("button", BUTTON)
    visitor.enter(diameter="353")
    visitor.tap("button", BUTTON)
    visitor.wait_for("document.querySelector('[data-part=update]').hidden && 'started' in document.documentElement.dataset",
                     what="the page of the new release")
    visitor.ready()
    assert visitor.value("diameter") == "353", "typed in the moment before the press"
    visitor.wait_figure(calc_says.figure("how-fast", diameter="353"))
    visitor.follow("All questions", "")
    assert NEWS in visitor.text("main")
    assert visitor.site.fetched("/engine/") in ([], ["engine/licences.txt"]), "the engine did not change and is not fetched again"
    visitor.site.stop()
    visitor.go("")
    assert NEWS in visitor.text("main"), "the new release is whole on the device"
    assert visitor.browser.problems == []


# In the order in which they are fetched, because an update goes on from where the last one stopped.
BROKEN = (
    ("/calc.zip", "status", {"status": 404}),
    ("/css/site.css", "corrupt", {}),
    ("/js/", "page", {}),  # a network that wants a sign-in first answers everything with a page
    ("/before-a-pour/c2/", "cut", {}),
)


def test_a_broken_update_leaves_the_old_release_whole_and_a_good_one_takes_every_tab(chromium: Maker, own_site: Site, next_dist: Path) -> None:
    maker = Maker(chromium.browser, own_site)
    maker.go("how-fast/")
    maker.settled()
    own_site.serve(next_dist)
    for path, what, details in BROKEN:
        own_site.forget()
        own_site.spoil(path, what, **details)
        maker.eval(LOOK)
        maker.wait_for("navigator.serviceWorker.getRegistration().then((r) => !r.installing && !r.waiting)", what=f"no update with {path} {what}")
        assert [entry for entry in own_site.requests() if entry["fault"]], "the update did meet the broken file"
        assert not maker.sees("button", BUTTON)
        own_site.heal()
        own_site.stop()
        maker.go("")
        assert NEWS not in maker.text("main")
        maker.follow("How fast?", "how-fast/", within="main")
        maker.enter(diameter="14 in")
        maker.ask()
        maker.wait_figure(calc_says.figure("how-fast", diameter="14 in"))
        own_site.start()
    tab = chromium.browser.page.context.new_page()  # another tab, where something is being typed
    tab.goto(f"{own_site.url}how-much-to-weigh/")
    tab.wait_for_selector("form[data-ready]")
    tab.evaluate("document.documentElement.dataset.old = ''")
    tab.fill("[name=total]", "1350")
    maker.eval(LOOK)
    maker.tap("button", BUTTON, timeout=60)
    tab.wait_for_selector("html[data-started]:not([data-old])")
    expect(tab.locator("[name=total]")).to_have_value("1350", timeout=30_000)
    tab.close()
    maker.wait_for("document.querySelector('[data-part=update]').hidden && 'started' in document.documentElement.dataset")
    maker.follow("All questions", "")
    assert NEWS in maker.text("main")
    chromium.problems.clear()  # the broken downloads
