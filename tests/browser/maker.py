"""A maker at the site: a browser, the site it looks at, and the moves every journey is made of."""

from __future__ import annotations

import json
from typing import Any

from tests.browser.engines import Engine
from tests.browser.hosting import Site

FIGURE = "blankwrightTest.read(document.querySelector('#answer [data-part=figure]').parentElement)"
SNAPSHOT_KEPT = """(async () => {
  const name = (await caches.keys()).find((name) => name.includes('snapshot'));
  return Boolean(name) && (await (await caches.open(name)).keys()).length > 0;
})()"""
FORGET = """(async () => {
  localStorage.clear();
  sessionStorage.clear();
  await new Promise((resolve, reject) => {
    const request = indexedDB.deleteDatabase('blankwright');
    request.onsuccess = resolve;
    request.onerror = () => reject(request.error);
  });
  return true;
})()"""


class Maker:
    """What a person does here. Everything the browser can do, the maker can do too."""

    def __init__(self, browser: Engine, site: Site) -> None:
        self.browser = browser
        self.site = site

    def __getattr__(self, name: str) -> Any:
        return getattr(self.browser, name)

    # --- Moving about ---------------------------------------------------------------------------------------------------

    def go(self, path: str = "", *, ready: bool = True) -> None:
        """Type an address; by default wait until answers can be had."""
        self.browser.open(self.site.url + path)
        if ready:
            self.ready()

    def arrive(self, path: str) -> None:
        """Type an address and wait until the page moves, whether Python is awake or not."""
        self.go(path, ready=False)
        self.browser.wait_for("document.documentElement.dataset.mounted === location.pathname", what="the page, with all that moves on it")

    def ready(self, *, timeout: float = 60) -> None:
        """Wait until the page has started and Python is awake."""
        self.browser.wait_for("'started' in document.documentElement.dataset && document.getElementById('status').dataset.state === 'ready'",
                              timeout=timeout, what="Python awake")

    def settled(self, *, timeout: float = 90) -> None:
        """Wait until the site is whole on the device and the snapshot for later starts is kept."""
        self.ready(timeout=timeout)
        self.browser.wait_text("Works with no signal", css="#status", timeout=timeout)
        self.browser.wait_for(SNAPSHOT_KEPT, timeout=timeout,
                              what="a snapshot on the device")

    def follow(self, name: str, path: str, *, within: str | None = None) -> None:
        """Press a link and be on its page."""
        self.browser.tap("link", name, within=within)
        self.browser.wait_for(f"location.href.split('#')[0] === {json.dumps(self.site.url + path)} && document.readyState === 'complete'"
                              " && document.documentElement.dataset.mounted === location.pathname",
                              what=f"the page {path}, with all that moves on it")

    # --- Asking a question ----------------------------------------------------------------------------------------------

    def enter(self, **texts: str) -> None:
        """Type into fields of the question by their names in its declaration; a folded field is unfolded first."""
        for name, text in texts.items():
            field = f'[data-field="{name}"] input'
            self.unfold(name)
            self.browser.fill("", text, css=field)

    def choose(self, **values: str) -> None:
        """Choose options by their values: radio buttons by pressing them, long lists by their keys."""
        for name, value in values.items():
            self.unfold(name)
            if self.browser.eval(f"""document.querySelector('[data-field="{name}"] select') !== null"""):
                self.pick(name, value)
            else:
                self.browser.tap(css=f'[data-field="{name}"] input[value="{value}"]')

    def pick(self, name: str, value: str) -> None:
        """Choose from a long list. Browsers draw the open list themselves, so a test cannot press in it."""
        self.browser.eval(f"""(() => {{
          const select = document.querySelector('[data-field="{name}"] select');
          select.focus();
          select.value = '{value}';
          select.dispatchEvent(new Event('input', {{ bubbles: true }}));
          select.dispatchEvent(new Event('change', {{ bubbles: true }}));
          return select.value;
        }})()""")

    def unfold(self, name: str) -> None:
        """Open the part of the form where a field is folded away."""
        folded = f"""document.querySelector('details:not([open]) [data-field="{name}"]') !== null"""
        if self.browser.eval(folded):
            self.browser.tap(css="[data-part=more] > summary")
            self.browser.wait_for(f"!({folded})")

    def units(self, system: str) -> None:
        """Press the other side of the units switch and wait until the form shows it."""
        self.browser.tap(css=f'[name=units][value="{system}"]')
        self.browser.wait_for(f"document.querySelector('[data-question]').dataset.units === '{system}'")

    def press_line(self, line: str) -> None:
        """Press the main button of a checklist's line, and say that it is meant where that is asked."""
        progress = "document.querySelector('[data-part=progress]').innerText"
        self.browser.wait_for(f"{progress} !== ''", what="how the list stands")
        changed = f"{progress} !== {self.text('[data-part=progress]')!r}"
        self.browser.tap(css="[data-part=press] button", within=line)
        self.browser.wait_for(f"document.querySelector('dialog[open]') !== null || {changed}")
        if self.sees("dialog"):
            self.browser.tap(css="dialog [data-part=dialog-yes]")
            self.browser.wait_for(changed)

    def ask(self) -> str:
        """Press Answer and read the figure."""
        self.browser.tap(css="form [type=submit]")
        self.browser.wait_for("document.activeElement?.id === 'answer'", what="the answer in view")
        return self.figure()

    def figure(self) -> str:
        """The one big figure with its unit, once there is one."""
        self.browser.wait_for("!document.getElementById('answer').hidden", what="an answer")
        return str(self.browser.eval(FIGURE))

    def wait_figure(self, text: str) -> None:
        """Wait until the big figure is this."""
        self.browser.wait_for(f"!document.getElementById('answer').hidden && {FIGURE} === {json.dumps(text)}", what=f"the figure {text}")

    def value(self, name: str) -> str:
        """What a field shows."""
        return str(self.browser.eval(f"""document.querySelector('[data-field="{name}"] input, [data-field="{name}"] select').value"""))

    def wait_value(self, name: str, text: str) -> None:
        """Wait until a field shows this."""
        self.browser.wait_for(f"""document.querySelector('[data-field="{name}"] input, [data-field="{name}"] select').value === {json.dumps(text)}""",
                              what=f"{name} showing {text}")

    # --- Counting starts of Python --------------------------------------------------------------------------------------

    def count_starts(self) -> None:
        """From now on count how often this page starts a worker; a full load of another page forgets the count."""
        self.browser.eval("""(() => {
          window.startsOfPython = 0;
          const Real = window.Worker;
          window.Worker = new Proxy(Real, { construct(target, given) { window.startsOfPython += 1; return new target(...given); } });
          return true;
        })()""")

    def starts(self) -> int | None:
        """Starts since `count_starts`; None when the page was loaded anew."""
        found = self.browser.eval("window.startsOfPython ?? null")
        return None if found is None else int(found)

    # --- Requests ---------------------------------------------------------------------------------------------------------

    def strangers(self) -> list[str]:
        """Addresses asked for anything that are not the site's, as far as this browser tells."""
        ours = (self.site.origin + "/", "data:", "blob:", "about:")
        loaded = self.browser.eval("performance.getEntriesByType('resource').map((entry) => entry.name)")
        return [url for url in [*self.browser.asked, *loaded] if not url.startswith(ours)]

    # --- Records -----------------------------------------------------------------------------------------------------------

    def forget(self) -> None:
        """Clear the records of the site, not what the service worker keeps."""
        self.browser.open(self.site.url + "icons/mark.svg")
        self.browser.eval(FORGET)

    def stored(self, shelf: str, key: str) -> Any:
        """One record as the device keeps it."""
        return self.browser.eval(f"""new Promise((resolve, reject) => {{
          const request = indexedDB.open('blankwright');
          request.onerror = () => reject(request.error);
          request.onsuccess = () => {{
            const database = request.result;
            const asked = database.transaction('{shelf}').objectStore('{shelf}').get('{key}');
            asked.onsuccess = () => {{ database.close(); resolve(asked.result ?? null); }};
          }};
        }})""")
