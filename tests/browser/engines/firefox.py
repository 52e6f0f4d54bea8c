"""Firefox through WebDriver BiDi: the few commands we need, over one web socket, with no driver program."""

from __future__ import annotations

import base64
import json
import re
import subprocess
import threading
import time
from pathlib import Path
from typing import Any

import websocket

from tests.browser.engines.base import Engine, EngineError

# No calls to other hosts, no first-run pages, nothing written that a test does not need.
SETTINGS = {
    "app.update.disabledForTesting": True, "browser.shell.checkDefaultBrowser": False, "browser.startup.page": 0,
    "browser.startup.homepage": "about:blank", "browser.aboutwelcome.enabled": False, "datareporting.policy.dataSubmissionEnabled": False,
    "toolkit.telemetry.enabled": False, "extensions.update.enabled": False, "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False, "services.settings.server": "data:,#remote-settings-dummy/v1",
    "browser.safebrowsing.malware.enabled": False, "browser.safebrowsing.phishing.enabled": False,
    "toolkit.startup.max_resumed_crashes": -1, "dom.disable_open_during_load": False, "datareporting.usage.uploadEnabled": False,
    "browser.sessionstore.resume_from_crash": False, "browser.tabs.remote.separatePrivilegedContentProcess": False,
}
LEFT_EARLY = ("TypeError: error loading dynamically imported module", "Failed to load")
CODES = {"Tab": "\ue004", "Enter": "\ue007", "Escape": "\ue00c", "Space": " ", "Backspace": "\ue003", "Delete": "\ue017", "Shift": "\ue008",
         "Control": "\ue009", "ArrowLeft": "\ue012", "ArrowUp": "\ue013", "ArrowRight": "\ue014", "ArrowDown": "\ue015", "End": "\ue010",
         "Home": "\ue011"}


class Bidi:
    """One web socket: commands out, answers and events in."""

    def __init__(self, address: str, heard: Any) -> None:
        self._socket = websocket.create_connection(address, timeout=90, suppress_origin=True)
        self._heard = heard
        self._answers: dict[int, dict[str, Any]] = {}
        self._count = 0
        self._news = threading.Condition()
        self._gone = False
        self._listener = threading.Thread(target=self._listen, daemon=True)
        self._listener.start()

    def _listen(self) -> None:
        try:
            while True:
                message = json.loads(self._socket.recv())
                if message.get("type") == "event":
                    self._heard(message["method"], message["params"])
                    continue
                with self._news:
                    self._answers[message["id"]] = message
                    self._news.notify_all()
        except (OSError, ValueError, websocket.WebSocketException):
            with self._news:
                self._gone = True
                self._news.notify_all()

    def ask(self, method: str, timeout: float = 60, **params: Any) -> Any:
        """Send a command and return its result."""
        with self._news:
            self._count += 1
            mine = self._count
            self._socket.send(json.dumps({"id": mine, "method": method, "params": params}))
            came = self._news.wait_for(lambda: mine in self._answers or self._gone, timeout)
            answer = self._answers.pop(mine, None)
        if answer is None:
            raise EngineError(f"{method}: {'no answer in time' if not came else 'the browser is gone'}")
        if answer["type"] == "error":
            raise EngineError(f"{method}: {answer['error']}: {answer['message']}")
        return answer["result"]

    def close(self) -> None:
        """Hang up."""
        self._socket.close()
        self._listener.join(10)


class Firefox(Engine):
    """Firefox with no window and a profile folder that lasts."""

    name = "firefox"

    def __init__(self, profile: Path, program: str, driver: str = "") -> None:
        super().__init__(profile, program, driver)
        self._process: subprocess.Popen[str] | None = None
        self._bidi: Bidi | None = None
        self._tab = ""
        self._reader: threading.Thread | None = None
        self.workers: list[str] = []

    def start(self) -> None:
        lines = [f"user_pref({json.dumps(key)}, {json.dumps(value)});" for key, value in SETTINGS.items()]
        (self.profile / "user.js").write_text("\n".join(lines) + "\n", encoding="utf-8")
        self._process = subprocess.Popen(
            [self.program, "--headless", "--no-remote", "--profile", str(self.profile), "--remote-debugging-port", "0"],
            stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
        address = self._address()
        self._bidi = Bidi(f"{address}/session", self._heard)
        self._bidi.ask("session.new", capabilities={"alwaysMatch": {"unhandledPromptBehavior": {"default": "accept"}}})
        self._bidi.ask("session.subscribe", events=["log.entryAdded", "script.realmCreated", "network.beforeRequestSent"])
        # A new tab, because the first one of a window that is never shown does not get the focus.
        first = self._bidi.ask("browsingContext.getTree")["contexts"][0]["context"]
        self._tab = self._bidi.ask("browsingContext.create", type="tab")["context"]
        self._bidi.ask("browsingContext.close", context=first)
        self.resize(*self.size)

    def _address(self) -> str:
        assert self._process and self._process.stderr
        heard: list[str] = []
        for line in self._process.stderr:
            heard.append(line)
            found = re.search(r"WebDriver BiDi listening on (ws://\S+)", line)
            if found:
                # Keep the pipe empty from now on, or the browser would stand still when it is full.
                self._reader = threading.Thread(target=self._process.stderr.read, daemon=True)
                self._reader.start()
                return found[1]
        raise EngineError(f"Firefox did not start: {''.join(heard)[-500:]}")

    def _heard(self, method: str, params: dict[str, Any]) -> None:
        if method == "log.entryAdded" and params["level"] == "error":
            self.problems.append(params.get("text") or "")
        elif method == "script.realmCreated" and params["type"] == "dedicated-worker":
            self.workers.append(params["origin"])
        elif method == "network.beforeRequestSent":
            self.asked.append(params["request"]["url"])

    def stop(self) -> None:
        if self._bidi is not None:
            try:
                self._bidi.ask("browser.close", timeout=20)
            except EngineError:
                pass  # It may be gone before it can answer; the wait below is what counts.
            self._bidi.close()
        if self._process is not None:
            try:
                self._process.wait(20)
            except subprocess.TimeoutExpired:
                self._process.kill()
                self._process.wait()
            if self._reader is not None:
                self._reader.join(10)
            assert self._process.stderr
            self._process.stderr.close()
        self._bidi = self._process = self._reader = None

    @property
    def bidi(self) -> Bidi:
        """The open socket."""
        assert self._bidi is not None, "the browser does not run"
        return self._bidi

    def open(self, url: str) -> None:
        before = len(self.problems)
        self.bidi.ask("browsingContext.navigate", context=self._tab, url=url, wait="complete")
        # What a page had not finished loading when it was left, Firefox reports as failed.
        self.problems[before:] = [problem for problem in self.problems[before:] if not problem.startswith(LEFT_EARLY)]

    def _run(self, body: str) -> Any:
        told = self.bidi.ask("script.callFunction", functionDeclaration=f"async () => {{ {body} }}", awaitPromise=True,
                             target={"context": self._tab})
        if told["type"] == "exception":
            raise EngineError(told["exceptionDetails"]["text"])
        return told["result"].get("value")

    def _act(self, source: dict[str, Any]) -> None:
        self.bidi.ask("input.performActions", context=self._tab, actions=[source])

    def _press_at(self, x: float, y: float) -> None:
        self._act({"type": "pointer", "id": "finger", "parameters": {"pointerType": "mouse"}, "actions": [
            {"type": "pointerMove", "x": round(x), "y": round(y)}, {"type": "pointerDown", "button": 0}, {"type": "pointerUp", "button": 0}]})

    def _keys(self, strokes: list[list[str]]) -> None:
        actions: list[dict[str, str]] = []
        for stroke in strokes:
            keys = [CODES.get(key, key) for key in stroke]
            actions += [{"type": "keyDown", "value": key} for key in keys] + [{"type": "keyUp", "value": key} for key in reversed(keys)]
        self._act({"type": "key", "id": "keys", "actions": actions})

    def screenshot(self) -> bytes:
        return base64.b64decode(self.bidi.ask("browsingContext.captureScreenshot", context=self._tab)["data"])

    def resize(self, width: int, height: int) -> None:
        self.size = (width, height)
        self.bidi.ask("browsingContext.setViewport", context=self._tab, viewport={"width": width, "height": height})
        time.sleep(0.05)
