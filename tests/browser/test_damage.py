"""What the device keeps is damaged: it is noticed, told, and mended when there is a network."""

from __future__ import annotations

import json

import pytest

from tests.browser import calc_says
from tests.browser.hosting import Site
from tests.browser.maker import Maker

DAMAGE = """(async ([part, what]) => {
  let hit = 0; // with nothing to do to them, files are only counted
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      if (!request.url.includes(part)) continue;
      hit += 1;
      if (!what) continue;
      if (what === 'gone') { await cache.delete(request); continue; }
      const response = await cache.match(request);
      const bytes = new Uint8Array(await response.arrayBuffer());
      bytes.fill(255, bytes.length / 2, bytes.length / 2 + 1000);
      const body = what === 'half' ? bytes.slice(0, bytes.length / 2) : bytes;
      await cache.put(request, new Response(body, { headers: response.headers }));
    }
  }
  return hit;
})"""


def damage(maker: Maker, part: str, what: str) -> None:
    """Spoil the kept files whose address contains `part`."""
    assert maker.eval(f"{DAMAGE}({json.dumps([part, what])})") > 0, f"nothing kept is called {part}"


def answers(maker: Maker) -> None:
    """How fast? still says what calc says."""
    maker.enter(diameter="14 in")
    maker.ask()
    maker.wait_figure(calc_says.figure("how-fast", diameter="14 in"))


@pytest.fixture
def lived_in(chromium: Maker, damaged_site: Site) -> Maker:
    """A maker whose device keeps the whole site."""
    maker = Maker(chromium.browser, damaged_site)
    damaged_site.stop()
    damaged_site.start()
    maker.forget()
    maker.go("how-fast/")
    maker.settled()
    return maker


def test_damaged_files_of_the_site_are_fetched_again(lived_in: Maker) -> None:
    for part, what in (("/js/form.js", "wrong"), ("/how-fast/", "half"), ("/css/site.css", "gone"), ("/calc.zip", "wrong"), ("snapshot", "gone")):
        damage(lived_in, part, what)
    lived_in.go("how-fast/")
    answers(lived_in)
    lived_in.site.stop()
    lived_in.go("how-fast/")
    lived_in.enter(diameter="15 in")
    lived_in.ask()
    lived_in.wait_figure(calc_says.figure("how-fast", diameter="15 in"))


@pytest.mark.parametrize(("part", "what"), [("/python.zip", "wrong"), ("/pyodide.asm.wasm", "half"), ("/pyodide.mjs", "gone")])
def test_a_damaged_engine_is_mended(lived_in: Maker, part: str, what: str) -> None:
    damage(lived_in, part, what)
    damage(lived_in, "snapshot", "gone")
    lived_in.go("how-fast/")
    answers(lived_in)
    lived_in.site.stop()
    damage(lived_in, part, "")  # it is there again
    lived_in.browser.problems.clear()  # what Chromium says of a damaged file


def test_a_damaged_engine_with_no_signal_is_told_and_comes_back_with_it(lived_in: Maker) -> None:
    damage(lived_in, "/python.zip", "wrong")
    damage(lived_in, "snapshot", "gone")
    lived_in.site.stop()
    lived_in.go("how-fast/", ready=False)
    lived_in.wait_text("Its files did not arrive whole", css="#status", timeout=60)
    assert lived_in.sees("table"), "the common cases stay readable"
    lived_in.enter(diameter="14 in")
    lived_in.site.start()
    lived_in.go("how-fast/")
    assert lived_in.value("diameter") == "14 in"
    lived_in.wait_figure(calc_says.figure("how-fast", diameter="14 in"))
    lived_in.browser.problems.clear()
