"""The three browser engines behind one interface. No test knows which one it talks to unless it has to."""

from __future__ import annotations

from tests.browser.engines.base import DESK, PHONE, Engine, EngineError
from tests.browser.engines.chromium import Chromium
from tests.browser.engines.firefox import Firefox
from tests.browser.engines.webkit import Screen, WebKit

ENGINES: dict[str, type[Engine]] = {"chromium": Chromium, "firefox": Firefox, "webkit": WebKit}


def finish() -> None:
    """End what all browsers of a run share."""
    Chromium.finish()
    Screen.finish()


__all__ = ["DESK", "ENGINES", "PHONE", "Chromium", "Engine", "EngineError", "Firefox", "WebKit", "finish"]
