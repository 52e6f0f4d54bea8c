"""The ways Python starts give the same answers; a crash or a cancel costs nothing typed; another page costs no start."""

from __future__ import annotations

import json
from typing import Any

from tests.browser import calc_says
from tests.browser.engines import Chromium
from tests.browser.maker import Maker

INPUTS = {"diameter": "13 3/4 in", "condition": "filled", "lathe": "floor"}

# A client of the desk of our own, next to the page's: it says which way Python started.
OWN_DESK = """(async (inputs) => {
  const app = document.querySelector('script[type=module]').src;
  const { DeskClient } = await import(app.replace('app.js', 'desk-client.js'));
  const desk = new DeskClient();
  const kept = new Promise((resolve) => desk.addEventListener('kept', () => resolve(true)));
  const result = await desk.call('answer', { id: 'how-fast', inputs, units: 'metric', confirmed: {} });
  if (desk.started.way === 'plain') await kept;
  desk.stop();
  return { way: desk.started.way, result };
})"""
SNAPSHOTS = """(async () => {
  const names = (await caches.keys()).filter((name) => name.includes('snapshot'));
  let bytes = 0;
  for (const name of names) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) bytes += (await (await cache.match(request)).arrayBuffer()).byteLength;
  }
  return [names.length, bytes];
})()"""
DROP_SNAPSHOT = """caches.keys().then((names) =>
  Promise.all(names.filter((name) => name.includes('snapshot')).map((name) => caches.delete(name))))"""
SPOIL_SNAPSHOT = """(async () => {
  for (const name of (await caches.keys()).filter((name) => name.includes('snapshot'))) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      const bytes = new Uint8Array(await (await cache.match(request)).arrayBuffer());
      await cache.put(request, new Response(HOW));
    }
  }
  return true;
})()"""


def start(maker: Maker) -> Any:
    """One more start of Python on this page, with the answer it gave."""
    return maker.eval(f"{OWN_DESK}({json.dumps(INPUTS)})")


def spoil_snapshot(maker: Maker, how: str) -> None:
    """Spoil the kept snapshot."""
    maker.eval(SPOIL_SNAPSHOT.replace("HOW", how))


def test_a_snapshot_and_the_plain_start_after_a_failed_restore_answer_the_same(visitor: Maker) -> None:
    wanted = calc_says.answer("how-fast", **INPUTS)
    visitor.go("about/", ready=False)
    visitor.settled()
    restored = start(visitor)
    assert restored["way"] == "snapshot"
    assert restored["result"] == wanted
    spoil_snapshot(visitor, "bytes.slice(0, bytes.length / 2)")
    after = start(visitor)
    assert after["way"] == "plain", "half a snapshot is no way to start"
    assert after["result"] == wanted
    count, size = visitor.eval(SNAPSHOTS)
    assert count == 1 and size > 20e6, "a sound snapshot took the place of the spoilt one"
    assert start(visitor)["way"] == "snapshot"


def test_a_first_start_and_one_from_a_spoilt_snapshot_are_plain_and_answer_the_same(chromium: Maker) -> None:
    wanted = calc_says.answer("how-fast", **INPUTS)
    chromium.go("about/")
    chromium.settled()
    for how in ("bytes.fill(7)", "'not a snapshot'"):
        spoil_snapshot(chromium, how)
        after = start(chromium)
        assert after["way"] == "plain" and after["result"] == wanted, how
    chromium.eval(DROP_SNAPSHOT)
    first = start(chromium)
    assert first["way"] == "plain" and first["result"] == wanted


def test_going_from_page_to_page_starts_python_no_second_time(maker: Maker) -> None:
    maker.go("")
    maker.count_starts()
    maker.follow("How fast?", "how-fast/", within="main")
    maker.enter(diameter="14 in")
    maker.ask()
    maker.wait_figure(calc_says.figure("how-fast", diameter="14 in"))
    maker.follow("All questions", "")
    maker.follow("How much to weigh?", "how-much-to-weigh/", within="main")
    maker.enter(total="500", ratio="2:1")
    maker.choose(by="weight")
    maker.ask()
    maker.wait_figure(calc_says.figure("how-much-to-weigh", total="500", ratio="2:1", by="weight"))
    maker.follow("Emergency", "emergency/")
    maker.follow("E6", "emergency/")
    maker.follow("Back to where you were", "how-much-to-weigh/")
    maker.wait_figure(calc_says.figure("how-much-to-weigh", total="500", ratio="2:1", by="weight"))
    assert maker.starts() == 0


def _worker(maker: Maker) -> Any:
    engine = maker.browser
    assert isinstance(engine, Chromium)
    return engine.page.workers[-1]


def test_a_crash_restarts_python_and_loses_nothing_typed(chromium: Maker) -> None:
    chromium.go("how-fast/")
    chromium.enter(diameter="14 in")
    chromium.ask()
    chromium.count_starts()
    _worker(chromium).evaluate("() => { setTimeout(() => { throw new Error('made by the test'); }); }")
    chromium.wait_for("window.startsOfPython === 1", what="a new worker after the crash")
    chromium.enter(diameter="15 in")
    chromium.wait_figure(calc_says.figure("how-fast", diameter="15 in"))
    chromium.ready()
    _worker(chromium).evaluate("() => { setTimeout(() => { throw new Error('made by the test'); }); }")
    chromium.wait_text("It stopped twice", css="#status")
    assert chromium.value("diameter") == "15 in"
    chromium.go("how-fast/")
    assert chromium.value("diameter") == "15 in"
    chromium.wait_figure(calc_says.figure("how-fast", diameter="15 in"))
    chromium.browser.problems.clear()  # the crashes we made


def test_a_cancelled_request_ends_at_once_and_the_next_is_answered(chromium: Maker) -> None:
    chromium.go("how-fast/")
    chromium.eval("""(async () => {
      const app = document.querySelector('script[type=module]').src;
      const { DeskClient } = await import(app.replace('app.js', 'desk-client.js'));
      window.desk = new DeskClient();
      window.launched = 0;
      desk.addEventListener('launched', () => { launched += 1; });
      await desk.call('catalogue');
      return true;
    })()""")
    # The worker is kept busy as a long simulation would.
    _worker(chromium).evaluate("() => { setTimeout(() => { const end = Date.now() + 60000; while (Date.now() < end); }); }")
    said = chromium.eval(f"""(async () => {{
      const give_up = new AbortController();
      const long = desk.call('catalogue', {{}}, {{ signal: give_up.signal }}).catch((error) => error.name);
      await new Promise((resolve) => setTimeout(resolve, 50));
      give_up.abort();
      const name = await long;
      const result = await desk.call('answer', {{ id: 'how-fast', inputs: {json.dumps(INPUTS)}, units: 'metric', confirmed: {{}} }});
      desk.stop();
      return [name, launched, result];
    }})()""")
    assert said == ["AbortError", 2, calc_says.answer("how-fast", **INPUTS)]
