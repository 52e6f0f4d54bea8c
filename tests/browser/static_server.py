"""A small static web server in a process of its own, so that stopping it really closes the port.

    python static_server.py FOLDER_OF_STATE PORT

It reads `state.json` in that folder at every request (what to serve, under which prefix, which files to spoil) and
appends every request to `log.jsonl`. Standard library only, and it knows nothing of the site.
"""

from __future__ import annotations

import json
import sys
import threading
import time
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

TYPES = {
    ".html": "text/html; charset=utf-8", ".css": "text/css", ".js": "text/javascript", ".mjs": "text/javascript",
    ".json": "application/json", ".webmanifest": "application/manifest+json", ".svg": "image/svg+xml", ".png": "image/png",
    ".wasm": "application/wasm", ".gz": "application/gzip", ".zip": "application/zip", ".txt": "text/plain; charset=utf-8",
    ".py": "text/x-python",
}


class Handler(BaseHTTPRequestHandler):
    """Answers GET and HEAD as a plain static host does, plus the faults it was told to show."""

    protocol_version = "HTTP/1.1"
    folder: Path
    lock = threading.Lock()

    def do_GET(self) -> None:
        self._answer(body=True)

    def do_HEAD(self) -> None:
        self._answer(body=False)

    def _answer(self, *, body: bool) -> None:
        state = json.loads((self.folder / "state.json").read_text(encoding="utf-8"))
        path = unquote(urlsplit(self.path).path)
        file = self._file(state, path)
        fault: dict[str, Any] = next((rule for rule in state["faults"] if rule["path"] in path), {})
        time.sleep(fault.get("delay", 0.0))
        status = 200 if file else 404
        data = file.read_bytes() if file else b"not here"
        kind = TYPES.get(file.suffix, "application/octet-stream") if file else "text/plain"
        what = fault.get("what")
        if not file and self._file(state, path + "/"):  # hosts send on to the address with a slash
            status, data = 301, b""
        elif path == "/favicon.ico":  # browsers ask for it when they show a file that is no page
            status, data = 204, b""
        if what == "status":
            status, data, kind = fault["status"], b"trouble", "text/plain"
        elif what == "page":
            kind, data = "text/html; charset=utf-8", b"<!doctype html><title>Sign in</title>"
        elif what == "corrupt":
            middle = len(data) // 2
            data = data[:middle] + bytes([data[middle] ^ 0xFF]) + data[middle + 1:]
        self._log({"at": time.time(), "method": self.command, "path": path, "status": status, "bytes": len(data), "fault": what,
                   "host": self.headers.get("Host"), "from": self.headers.get("Referer")})
        self.send_response(status)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(data)))
        if status == 301:
            self.send_header("Location", path + "/")
        self.send_header("Cache-Control", state["cache"])
        if what == "encoded":  # some hosts say so of every .gz, and browsers then unpack it on the way
            self.send_header("Content-Encoding", "gzip")
        self.end_headers()
        if what == "cut":
            self.wfile.write(data[: len(data) // 2])
            self.wfile.flush()
            self.close_connection = True
        elif body:
            self.wfile.write(data)

    def _file(self, state: dict[str, Any], path: str) -> Path | None:
        prefix = state["prefix"]
        if not path.startswith(prefix):
            return None
        root = Path(state["serve"]).resolve()
        file = (root / path[len(prefix):]).resolve()
        if file.is_dir() and path.endswith("/"):
            file = file / "index.html"
        return file if file.is_relative_to(root) and file.is_file() else None

    def _log(self, entry: dict[str, Any]) -> None:
        with self.lock, (self.folder / "log.jsonl").open("a", encoding="utf-8") as out:
            out.write(json.dumps(entry) + "\n")

    def log_message(self, format: str, *args: Any) -> None:
        """Say nothing: the log file has it all."""


class Server(ThreadingHTTPServer):
    """One thread for each connection; a browser that goes away in the middle is no error."""

    daemon_threads = True

    def handle_error(self, request: Any, client_address: Any) -> None:
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)


if __name__ == "__main__":
    Handler.folder = Path(sys.argv[1])
    server = Server(("127.0.0.1", int(sys.argv[2])), Handler)
    print(server.server_port, flush=True)
    server.serve_forever()
