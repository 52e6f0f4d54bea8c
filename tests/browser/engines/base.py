"""What every browser engine can do for a test. Each driver supplies a few primitives; all the rest is here, once."""

from __future__ import annotations

import json
import time
from abc import ABC, abstractmethod
from collections.abc import Callable
from pathlib import Path
from typing import Any

FIND = Path(__file__).with_name("find.js").read_text(encoding="utf-8")
PHONE = (360, 740)
DESK = (1280, 800)
KEYS = ("Tab", "Enter", "Escape", "Space", "Backspace", "Delete", "ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Home", "End")


class EngineError(Exception):
    """The browser could not do it: a script threw, the page went away, or something was not there in time."""


class Engine(ABC):
    """One browser with one page and one profile folder on disk.

    Parameters
    ----------
    profile
        Folder that keeps what the browser keeps; `restart` uses it again.
    program, driver
        Paths of the browser and, where it needs one, of its driver.
    """

    name = ""
    patience = 30.0

    def __init__(self, profile: Path, program: str, driver: str = "") -> None:
        self.profile = profile
        self.program = program
        self.driver = driver
        self.size = PHONE
        self.problems: list[str] = []
        self.asked: list[str] = []
        profile.mkdir(parents=True, exist_ok=True)

    # --- what a driver supplies ---------------------------------------------------------------------------------------

    @abstractmethod
    def start(self) -> None:
        """Start the browser with `profile` and one blank page of `size`."""

    @abstractmethod
    def stop(self) -> None:
        """End the browser as a person would, so that it writes what it keeps."""

    @abstractmethod
    def open(self, url: str) -> None:
        """Go to an address and wait until it is loaded. Raises EngineError when there is nothing."""

    @abstractmethod
    def _run(self, body: str) -> Any:
        """Run the body of an async function in the page and return its text result."""

    @abstractmethod
    def _press_at(self, x: float, y: float) -> None:
        """Press and let go at a point of the window."""

    @abstractmethod
    def _keys(self, strokes: list[list[str]]) -> None:
        """Strokes on the keyboard; each is a list of keys held together, a character or a name of `KEYS`."""

    @abstractmethod
    def screenshot(self) -> bytes:
        """What the window shows, as PNG."""

    @abstractmethod
    def resize(self, width: int, height: int) -> None:
        """Give the page another size."""

    # --- what a test uses ---------------------------------------------------------------------------------------------

    def restart(self) -> None:
        """End the browser and start it again with what it kept."""
        self.stop()
        self.start()

    def eval(self, expression: str) -> Any:
        """Value of a JavaScript expression; a promise is awaited; the value must be JSON."""
        text = self._run(f"{FIND}\nreturn JSON.stringify({{value: await ({expression})}});")
        return json.loads(text).get("value")

    def wait_for(self, expression: str, *, timeout: float | None = None, what: str = "") -> Any:
        """Wait until an expression is true and return it. A page that goes away meanwhile is no reason to stop."""
        def look() -> tuple[Any, str]:
            return self.eval(expression), ""
        return self._until(look, timeout, what or expression)

    def _until(self, look: Callable[[], tuple[Any, str]], timeout: float | None, what: str) -> Any:
        """Call `look` until its first part is true; its second part says why it is not yet."""
        end = time.monotonic() + (timeout or self.patience)
        why = ""
        while True:
            try:
                found, why = look()
                if found:
                    return found
            except EngineError as error:
                why = str(error)
            if time.monotonic() > end:
                raise EngineError(f"{self.name}: waited in vain for {what} ({why or 'never true'}); page says: {self._glimpse()}")
            time.sleep(0.04)

    def _glimpse(self) -> str:
        try:
            where, text = self.eval("[location.href, (document.querySelector('main') ?? document.body)?.innerText.slice(0, 1500) ?? '']")
        except EngineError as error:
            return f"nothing ({error})"
        return f"{where}: {' | '.join(text.split(chr(10)))}; problems: {self.problems[-5:]}"

    @staticmethod
    def _what(role: str, name: str | None, css: str | None, within: str | None, exact: bool) -> str:
        return json.dumps({"role": role, "name": name, "css": css, "within": within, "exact": exact})

    def sees(self, role: str = "", name: str | None = None, *, css: str | None = None, within: str | None = None, exact: bool = False) -> bool:
        """Is it on the page now?"""
        return bool(self.eval(f"blankwrightTest.one({self._what(role, name, css, within, exact)}) !== null"))

    def wait(self, role: str = "", name: str | None = None, *, css: str | None = None, within: str | None = None, exact: bool = False,
             timeout: float | None = None) -> None:
        """Wait until it is on the page."""
        what = self._what(role, name, css, within, exact)
        self.wait_for(f"blankwrightTest.one({what}) !== null", timeout=timeout, what=what)

    def read(self, role: str = "", name: str | None = None, *, css: str | None = None, within: str | None = None) -> str:
        """Its text as it is read out, once it is there."""
        what = self._what(role, name, css, within, False)
        self.wait_for(f"blankwrightTest.one({what}) !== null", what=what)
        return str(self.eval(f"blankwrightTest.read(blankwrightTest.one({what}))"))

    def tap(self, role: str = "", name: str | None = None, *, css: str | None = None, within: str | None = None, exact: bool = False,
            timeout: float | None = None) -> None:
        """Press it with a real press, once it is there, at rest, enabled and not covered."""
        what = self._what(role, name, css, within, exact)

        def look() -> tuple[Any, str]:
            told = self.eval(f"blankwrightTest.aim({what})")
            return ("x" in told and told), told.get("why", "")
        spot = self._until(look, timeout, f"a press on {what}")
        self._press_at(spot["x"], spot["y"])

    def fill(self, label: str, text: str, *, css: str | None = None, within: str | None = None) -> None:
        """Replace what a text field holds by typing, as a person does. The field is left focused."""
        self.tap("textbox", label, css=css, within=within)
        self.eval("document.activeElement.select()")
        if text:
            self.type(text)
        else:
            self.press("Backspace")

    def type(self, text: str) -> None:
        """Type characters into what has the focus."""
        self._keys([[character] for character in text])

    def press(self, *keys: str) -> None:
        """Press keys one after the other; "Shift+Tab" holds the first."""
        self._keys([key.split("+") if len(key) > 1 else [key] for key in keys])

    def text(self, css: str = "body") -> str:
        """All text of a part of the page as it is laid out, with plain spaces."""
        return str(self.eval(f"document.querySelector({json.dumps(css)})?.innerText ?? ''")).replace("\xa0", " ")

    def wait_text(self, text: str, *, css: str = "body", timeout: float | None = None) -> None:
        """Wait until a part of the page says this."""
        said = f"(document.querySelector({json.dumps(css)})?.innerText ?? '').replaceAll('\\u00a0', ' ').toLowerCase()"
        self.wait_for(f"{said}.includes({json.dumps(text.lower())})", timeout=timeout,
                      what=f"the text {text!r} in {css}")
