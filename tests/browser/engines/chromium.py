"""Chromium through Playwright, with a profile folder that lasts."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Error, Page, Playwright, sync_playwright

from tests.browser.engines.base import Engine, EngineError

QUIET = ("--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync")
NAMES = {"Shift": "Shift", "Control": "Control", "Space": "Space"}


class Chromium(Engine):
    """The engine in which the whole set runs; it can also be started bent (`without_wasm`, `preload`, `script`)."""

    name = "chromium"
    _playwright: Playwright | None = None

    def __init__(self, profile: Path, program: str, driver: str = "") -> None:
        super().__init__(profile, program, driver)
        self.flags: list[str] = []
        self.preload = ""
        self.script = True
        self.scale = 1.0
        self.workers: list[str] = []
        self._context: BrowserContext | None = None
        self._page: Page | None = None

    @classmethod
    def playwright(cls) -> Playwright:
        """Playwright itself, started once."""
        if Chromium._playwright is None:
            Chromium._playwright = sync_playwright().start()
        return Chromium._playwright

    @classmethod
    def finish(cls) -> None:
        """End Playwright itself."""
        if Chromium._playwright is not None:
            Chromium._playwright.stop()
            Chromium._playwright = None

    def start(self) -> None:
        width, height = self.size
        self._context = self.playwright().chromium.launch_persistent_context(
            str(self.profile), executable_path=self.program or None, headless=True, args=[*QUIET, *self.flags],
            viewport={"width": width, "height": height}, java_script_enabled=self.script, device_scale_factor=self.scale)
        if self.preload:
            self._context.add_init_script(self.preload)
        self._context.on("request", lambda request: self.asked.append(request.url))
        self._page = self._context.pages[0] if self._context.pages else self._context.new_page()
        self._page.set_default_timeout(self.patience * 1000)
        self._page.on("console", lambda said: said.type == "error" and self.problems.append(said.text))
        self._page.on("pageerror", lambda error: self.problems.append(str(error)))
        self._page.on("worker", lambda worker: self.workers.append(worker.url))

    def stop(self) -> None:
        if self._context is not None:
            self._context.close()
        self._context = self._page = None

    @property
    def page(self) -> Page:
        """Playwright's page, for what only this engine can show."""
        assert self._page is not None, "the browser does not run"
        return self._page

    def open(self, url: str) -> None:
        try:
            self.page.goto(url)
        except Error as error:
            raise EngineError(str(error).splitlines()[0]) from error

    def _run(self, body: str) -> Any:
        try:
            return self.page.evaluate(f"async () => {{ {body} }}")
        except Error as error:
            raise EngineError(str(error).splitlines()[0]) from error

    def _press_at(self, x: float, y: float) -> None:
        self.page.mouse.click(x, y)

    def _keys(self, strokes: list[list[str]]) -> None:
        for stroke in strokes:
            self.page.keyboard.press("+".join(stroke) if stroke != [" "] else "Space")

    def screenshot(self) -> bytes:
        return self.page.screenshot()

    def resize(self, width: int, height: int) -> None:
        self.size = (width, height)
        self.page.set_viewport_size({"width": width, "height": height})
