"""The site on a web server that can be stopped, started again, switched to another build and made to misbehave."""

from __future__ import annotations

import json
import socket
import subprocess
import sys
from pathlib import Path
from typing import Any

PREFIX = "/shop/"
SERVER = Path(__file__).with_name("static_server.py")


class Site:
    """One origin that serves one built folder at a time.

    Parameters
    ----------
    folder
        Where the server keeps its state and its log.
    dist
        The built site to serve first.
    prefix
        Path under which the site lies. Not the root, so that every test also proves a sub-folder works.
    cache
        The Cache-Control header. The default lets nothing be answered from the browser's own cache, so that whatever
        works with the server stopped works from what the site itself kept.
    """

    def __init__(self, folder: Path, dist: Path, *, prefix: str = PREFIX, cache: str = "no-store") -> None:
        self.folder = folder
        self.prefix = prefix
        self.port = 0
        self._state: dict[str, Any] = {"serve": str(dist), "prefix": prefix, "cache": cache, "faults": []}
        self._process: subprocess.Popen[str] | None = None
        folder.mkdir(parents=True, exist_ok=True)
        self._log = folder / "log.jsonl"
        self._log.touch()
        self._write()
        self.start()

    @property
    def url(self) -> str:
        """Address of the home page."""
        return f"http://localhost:{self.port}{self.prefix}"

    @property
    def origin(self) -> str:
        """The one origin that may be asked for anything."""
        return f"http://localhost:{self.port}"

    def start(self) -> None:
        """Open the port, the same one as before."""
        assert self._process is None, "the server already runs"
        self._process = subprocess.Popen([sys.executable, str(SERVER), str(self.folder), str(self.port)], stdout=subprocess.PIPE, text=True)
        assert self._process.stdout
        line = self._process.stdout.readline()
        assert line, "the test server did not start"
        self.port = int(line)

    def stop(self) -> None:
        """Close the port; after this a connection is refused, which is checked here."""
        if self._process is None:
            return
        self._process.kill()
        self._process.communicate()
        self._process = None
        with socket.socket() as probe:
            probe.settimeout(2)
            assert probe.connect_ex(("127.0.0.1", self.port)) != 0, "something still answers on the port"

    def serve(self, dist: Path) -> None:
        """Serve another build from the next request on."""
        self._state["serve"] = str(dist)
        self._write()

    def spoil(self, path: str, what: str = "", **details: Any) -> None:
        """Spoil files whose path contains `path`.

        "corrupt" changes a byte, "cut" hangs up halfway, "page" sends HTML instead, "status" refuses (status=503), "encoded" says
        that a compressed file is an encoding; delay=seconds waits before the answer.
        """
        self._state["faults"].append({"path": path, "what": what, **details})
        self._write()

    def heal(self) -> None:
        """Take all faults away."""
        self._state["faults"] = []
        self._write()

    def caching(self, header: str) -> None:
        """Change the Cache-Control header."""
        self._state["cache"] = header
        self._write()

    def requests(self) -> list[dict[str, Any]]:
        """Every request since the last `forget`."""
        return [json.loads(line) for line in self._log.read_text(encoding="utf-8").splitlines()]

    def fetched(self, part: str = "") -> list[str]:
        """Paths below the prefix, in order, that contain `part` and were answered with 200."""
        return [entry["path"].removeprefix(self.prefix) for entry in self.requests() if part in entry["path"] and entry["status"] == 200]

    def forget(self) -> None:
        """Start the log anew."""
        self._log.write_text("")

    def _write(self) -> None:
        fresh = self.folder / "state.new"
        fresh.write_text(json.dumps(self._state), encoding="utf-8")
        fresh.replace(self.folder / "state.json")
