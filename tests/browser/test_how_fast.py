"""How fast? A maker types a diameter and reads one figure, what rules it and what would raise it."""

from __future__ import annotations

from tests.browser import calc_says
from tests.browser.maker import Maker

SHOWN = ("figure", "unit", "say", "band")


def test_a_diameter_gives_the_figure_and_the_ladder(maker: Maker) -> None:
    maker.go("how-fast/")
    maker.enter(diameter="13 3/4 in")
    maker.choose(condition="solid", balance="even")
    maker.ask()
    said = calc_says.answer("how-fast", diameter="13 3/4 in", condition="solid", balance="even")
    head = said["headline"]
    maker.wait_figure(f"{head['text']} {head['unit']}".strip())
    assert head["say"] in maker.text("#answer")
    names = [rung["name"] for rung in said["limits"]]
    rungs = maker.eval("[...document.querySelectorAll('[data-list=limits] > li')].map((li) => blankwrightTest.read(li))")
    assert [rung.split(" ")[0] for rung in rungs] == [name.split(" ")[0] for name in names]
    for rung, limit in zip(rungs, said["limits"], strict=True):
        assert limit["text"] in rung
        assert ("This decides." in rung) == limit["rules"]
    assert all(change["then"] in maker.text("[data-list=changes]") for change in said["changes"])


def test_units_go_to_and_fro_without_drift(maker: Maker) -> None:
    maker.go("how-fast/")
    maker.enter(diameter="349.3")
    maker.choose(balance="known")
    maker.enter(eccentricity="2.54")
    first = maker.ask()
    for _ in range(2):
        maker.units("imperial")
        converted = calc_says.ask("convert", id="how-fast", units="imperial",
                                  inputs={"diameter": {"typed": "349.3", "units": "metric"}, "eccentricity": {"typed": "2.54", "units": "metric"}})
        maker.wait_value("diameter", converted["diameter"])  # until calc has converted it, a text stands with its own unit
        assert maker.value("eccentricity") == converted["eccentricity"]
        maker.units("metric")
        maker.wait_value("diameter", "349.3")
        assert maker.value("eccentricity") == "2.54"
    assert maker.ask() == first


def test_a_slip_is_asked_and_either_answer_goes_on(chromium: Maker) -> None:
    chromium.go("how-fast/")
    chromium.enter(diameter="14")
    chromium.press("Tab")
    chromium.wait("group", "Please check")
    query = calc_says.answer("how-fast", diameter="14")["queries"][0]
    assert query["message"] in chromium.text("[data-part=ask]")
    assert not chromium.sees(css="#answer"), "no figure before the slip is settled"
    chromium.tap("button", "Yes, 14 mm")
    kept = calc_says.answer("how-fast", confirmed={"diameter": "14"}, diameter="14")["headline"]
    chromium.wait_figure(f"{kept['text']} {kept['unit']}".strip())
    chromium.tap("button", "Clear")
    chromium.enter(diameter="14")
    chromium.press("Tab")
    chromium.tap("button", "14 in")
    chromium.wait_figure(calc_says.figure("how-fast", diameter="14 in"))
    assert chromium.value("diameter") == "14 in"


def test_an_empty_form_leads_to_what_is_missing(chromium: Maker) -> None:
    chromium.go("how-fast/")
    chromium.tap(css="form [type=submit]")
    chromium.wait_for("document.activeElement?.dataset.part === 'summary'", what="focus on the error summary")
    assert chromium.sees("alert", "Not answered yet")
    assert chromium.eval("document.title").startswith("Error: ")
    chromium.tap(css="[data-part=summary] a")
    chromium.wait_for("document.activeElement?.name === 'diameter'", what="focus on the field")
    told = calc_says.answer("how-fast")["errors"][0]["message"]
    assert told in chromium.text('[data-field="diameter"]')
    assert chromium.eval("document.getElementById('f-diameter').getAttribute('aria-invalid')") == "true"
    chromium.enter(diameter="13 3/4 in")
    chromium.ask()
    assert not chromium.eval("document.title").startswith("Error: ")
    assert not chromium.sees(css="[data-part=summary]")


def test_what_was_typed_is_there_after_a_reload_and_from_the_home_page(chromium: Maker) -> None:
    chromium.go("how-fast/")
    chromium.enter(diameter="352")
    first = chromium.ask()
    chromium.go("how-fast/")
    assert chromium.value("diameter") == "352"
    chromium.wait_figure(first)
    chromium.go("")
    chromium.wait("link", "Carry on")
    chromium.follow("Carry on", "how-fast/")
    chromium.wait_figure(first)


def test_an_answer_is_shared_as_an_address_and_copied_as_text(chromium: Maker) -> None:
    page = chromium.browser.page
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.evaluate("() => { delete Navigator.prototype.share; delete Navigator.prototype.canShare; }")
    chromium.go("how-fast/")
    page.evaluate("() => { delete Navigator.prototype.share; delete Navigator.prototype.canShare; }")
    chromium.enter(diameter="14 in")
    chromium.choose(condition="filled")
    first = chromium.ask()
    chromium.tap("button", "Copy as text")
    chromium.wait("button", "Copied")
    copied = page.evaluate("() => navigator.clipboard.readText()")
    assert calc_says.answer("how-fast", diameter="14 in", condition="filled")["text"].strip() in copied
    chromium.tap("button", "Share")
    chromium.wait("button", "Address copied")
    address = page.evaluate("() => navigator.clipboard.readText()")
    assert address.startswith(chromium.site.url + "how-fast/#")
    chromium.forget()
    chromium.open(address)
    chromium.wait_figure(first)
    assert chromium.value("diameter") == "14 in"
