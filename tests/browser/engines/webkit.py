"""WebKitGTK through its own WebDriver, on a screen that exists only in memory.

The small browser that comes with WebKitGTK forgets everything when it is driven by a test: its automation mode is
private by design. So the window here is our own (`webkit_window.py`): the same library, the same engine, with a data
folder that lasts. That is what makes it possible to end the browser and start it again with what it kept.
"""

from __future__ import annotations

import os
import signal
import stat
import subprocess
import sys
import warnings
from pathlib import Path
from typing import Any

from selenium.common.exceptions import WebDriverException
from selenium.webdriver import WebKitGTK as Driver
from selenium.webdriver import WebKitGTKOptions
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.actions.action_builder import ActionBuilder
from selenium.webdriver.common.actions.mouse_button import MouseButton
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.webkitgtk.service import Service

from tests.browser.engines.base import Engine, EngineError

WINDOW = Path(__file__).with_name("webkit_window.py")
CODES = {"Tab": Keys.TAB, "Enter": Keys.ENTER, "Escape": Keys.ESCAPE, "Space": " ", "Backspace": Keys.BACKSPACE, "Delete": Keys.DELETE,
         "Shift": Keys.SHIFT, "Control": Keys.CONTROL, "ArrowLeft": Keys.ARROW_LEFT, "ArrowRight": Keys.ARROW_RIGHT,
         "ArrowUp": Keys.ARROW_UP, "ArrowDown": Keys.ARROW_DOWN, "Home": Keys.HOME, "End": Keys.END}


class Screen:
    """One X display in memory, shared by all WebKit windows of the run."""

    _process: subprocess.Popen[bytes] | None = None
    name = ""

    @classmethod
    def needed(cls) -> str:
        """Name of the display; starts it when there is none yet."""
        if cls._process is None:
            there, here = os.pipe()
            cls._process = subprocess.Popen(["Xvfb", "-displayfd", str(here), "-screen", "0", "1400x1400x24", "-nolisten", "tcp"],
                                            pass_fds=[here], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            os.close(here)
            with os.fdopen(there) as told:
                cls.name = ":" + told.readline().strip()
        return cls.name

    @classmethod
    def finish(cls) -> None:
        """Take the display away."""
        if cls._process is not None:
            cls._process.send_signal(signal.SIGTERM)
            cls._process.wait(10)
            cls._process = None


class WebKit(Engine):
    """WebKitGTK with a data folder that lasts. It has no list of its console and no scripts before the page's own."""

    name = "webkit"

    def __init__(self, profile: Path, program: str, driver: str = "") -> None:
        super().__init__(profile, program, driver)
        self._driver: Any = None

    def start(self) -> None:
        # The driver starts a program by path alone, so what our window needs to know is written into a small script.
        launcher = self.profile / "window"
        launcher.write_text(f'#!/bin/sh\nexec "{sys.executable}" "{WINDOW}" "{self.program}" "{self.profile / "data"}" '
                            f"{self.size[0]} {self.size[1]}\n", encoding="utf-8")
        launcher.chmod(launcher.stat().st_mode | stat.S_IXUSR)
        options = WebKitGTKOptions()
        options.binary_location = str(launcher)
        surroundings = {**os.environ, "DISPLAY": Screen.needed(), "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1", "GDK_BACKEND": "x11",
                        "LIBGL_ALWAYS_SOFTWARE": "1", "NO_AT_BRIDGE": "1",
                        "GTK_A11Y": "none"}
        try:
            with warnings.catch_warnings():
                warnings.simplefilter("ignore", DeprecationWarning)  # Selenium warns of its own call
                self._driver = Driver(options=options, service=Service(self.driver, env=surroundings))
        except WebDriverException as error:
            raise EngineError(f"WebKit did not start: {error.msg}") from error
        self._driver.set_script_timeout(60)
        self._driver.set_page_load_timeout(60)

    def stop(self) -> None:
        if self._driver is not None:
            self._driver.quit()
        self._driver = None

    def open(self, url: str) -> None:
        try:
            self._driver.get(url)
        except WebDriverException as error:
            raise EngineError(str(error.msg)) from error

    def _run(self, body: str) -> Any:
        script = (f"const done = arguments[arguments.length - 1]; (async () => {{ {body} }})()"
                  ".then((value) => done(['ok', value ?? null]), (error) => done(['error', String(error)]));")
        try:
            kind, value = self._driver.execute_async_script(script)
        except WebDriverException as error:
            raise EngineError(str(error.msg)) from error
        if kind == "error":
            raise EngineError(value)
        return value

    def _press_at(self, x: float, y: float) -> None:
        actions = ActionBuilder(self._driver, duration=0)
        actions.pointer_action.move_to_location(round(x), round(y)).pointer_down(MouseButton.LEFT).pointer_up(MouseButton.LEFT)
        actions.perform()

    def _keys(self, strokes: list[list[str]]) -> None:
        chain = ActionChains(self._driver, duration=0)
        for stroke in strokes:
            keys = [CODES.get(key, key) for key in stroke]
            for key in keys[:-1]:
                chain.key_down(key)
            chain.send_keys(keys[-1])
            for key in reversed(keys[:-1]):
                chain.key_up(key)
        chain.perform()

    def screenshot(self) -> bytes:
        return bytes(self._driver.get_screenshot_as_png())

    def resize(self, width: int, height: int) -> None:
        self.size = (width, height)
        self._driver.set_window_rect(0, 0, width, height)
