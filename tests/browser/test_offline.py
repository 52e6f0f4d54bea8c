"""With no signal: the server is really stopped and the browser really started again, and every job still answers."""

from __future__ import annotations

from tests.browser import calc_says
from tests.browser.hosting import Site
from tests.browser.maker import Maker

PLAN = {"total": "1300", "ratio": "100:45", "by": "weight"}


def test_all_three_jobs_answer_with_the_server_stopped_and_the_browser_started_again(visitor: Maker, pages: list[str]) -> None:
    """In WebKitGTK the window is our own, because its ready-made one forgets everything when a test drives it."""
    visitor.go("")
    visitor.settled()
    engine = [path for path in visitor.site.fetched("/engine/") if "licences" not in path]
    assert len(engine) == len(set(engine)) and all(path.endswith(".gz") for path in engine), "the engine came once, and compressed"
    assert visitor.strangers() == [], "no one else was asked for anything"
    visitor.site.stop()
    visitor.browser.restart()

    visitor.go("how-fast/")
    visitor.enter(diameter="13 3/4 in")
    visitor.ask()
    visitor.wait_figure(calc_says.figure("how-fast", diameter="13 3/4 in"))

    visitor.go("")
    visitor.follow("How much to weigh?", "how-much-to-weigh/", within="main")
    visitor.enter(total=PLAN["total"], ratio=PLAN["ratio"])
    visitor.choose(by=PLAN["by"])
    visitor.ask()
    visitor.wait_figure(calc_says.figure("how-much-to-weigh", **PLAN))
    visitor.follow("Step by step", "how-much-to-weigh/mix/")
    visitor.tap("button", "It shows 0")
    visitor.wait("button", "Done as shown")

    visitor.go("before-a-pour/c1/")
    visitor.wait("button", "Tick", within="#c1-6")
    visitor.tap("button", "Tick", within="#c1-6", exact=True)
    visitor.wait_text("1 of 9", css="[data-part=progress]")

    visitor.open(visitor.site.url + "emergency/")
    assert visitor.sees("heading", "Emergency")
    missing = visitor.eval(f"""Promise.all({pages}.map((page) => fetch(new URL(page, '{visitor.site.url}'))
      .then((reply) => reply.ok ? [] : [page], () => [page]))).then((found) => found.flat())""")
    assert missing == [], "every list, card and page is there"
    visitor.wait_for("'mounted' in document.documentElement.dataset", what="all of the page, before it is left")
    visitor.open(visitor.site.url + "how-fast")
    visitor.wait_for("location.pathname.endsWith('/how-fast/')", what="the address with its slash")
    assert [problem for problem in visitor.browser.problems if "REFUSED" not in problem] == []
    visitor.open(visitor.site.url + "no-such-page/")
    visitor.wait("heading", "No such page")


def test_a_first_visit_that_could_not_get_the_engine_says_so_and_gets_it_later(chromium: Maker, own_site: Site) -> None:
    maker = Maker(chromium.browser, own_site)
    maker.site.spoil("/engine/", "status", status=503)
    maker.open(maker.site.url)
    maker.wait_text("Cannot calculate", css="#status", timeout=60)
    maker.open(maker.site.url + "how-fast/")
    assert maker.sees("table"), "the common cases are readable meanwhile"
    maker.site.heal()
    maker.go("how-fast/")
    maker.enter(diameter="14 in")
    maker.ask()
    maker.wait_figure(calc_says.figure("how-fast", diameter="14 in"))
    maker.go("")
    maker.wait_text("Works with no signal", css="#status", timeout=60)
    chromium.problems.clear()  # the refused downloads, which are what this test is about


def test_a_host_that_unpacks_compressed_files_on_the_way_is_as_good(chromium: Maker, own_site: Site) -> None:
    maker = Maker(chromium.browser, own_site)
    own_site.spoil(".gz", "encoded")
    maker.go("how-fast/")
    maker.settled()
    own_site.stop()
    maker.go("how-fast/")
    maker.enter(diameter="14 in")
    maker.ask()
    maker.wait_figure(calc_says.figure("how-fast", diameter="14 in"))
    chromium.problems.clear()  # the server is gone
