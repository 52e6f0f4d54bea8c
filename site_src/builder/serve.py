"""A small static server for this machine only: for trying the site, and for the tests, which stop it to be offline."""

from __future__ import annotations

import errno
import functools
import http.server
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from .assets import type_of
from .setup import Trouble, say

HOST = "localhost"


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves one folder under one base path, with the right types, as a plain static host would."""

    protocol_version = "HTTP/1.1"

    def __init__(self, *arguments: object, base: str = "/", log: list[str] | None = None, **named: object) -> None:
        self.base = base
        self.log = log
        super().__init__(*arguments, **named)  # type: ignore[arg-type]

    def translate_path(self, path: str) -> str:
        """Where the file for an address lies; an address outside the base path leads to none."""
        plain = path.split("?")[0].split("#")[0]
        if not plain.startswith(self.base):
            return str(Path(self.directory, "outside the base path"))
        return super().translate_path("/" + path[len(self.base):])

    def guess_type(self, path: str) -> str:  # type: ignore[override]
        """The media type."""
        return type_of(str(path))

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """A wrong address gets our own page for it."""
        page = Path(self.directory, "404.html")
        if code != 404 or not page.is_file():
            super().send_error(code, message, explain)
            return
        body = page.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", type_of("404.html"))
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def end_headers(self) -> None:
        """No file may be older than the build."""
        self.send_header("Cache-Control", "no-cache")
        super().end_headers()

    def log_message(self, format: str, *arguments: object) -> None:
        """Requests are noted for the tests, not printed."""
        if self.log is not None:
            self.log.append(self.path)


class Server(http.server.ThreadingHTTPServer):
    """Ends at once, and does not complain about browsers that hang up."""

    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """A browser that closes a connection early is no news."""


def open_server(folder: Path, port: int, *, base: str = "/", log: list[str] | None = None) -> Server:
    """A server bound to a port of this machine; port 0 takes a free one.

    Raises
    ------
    Trouble
        When the port is taken or not ours to take.
    """
    handler = functools.partial(Handler, directory=str(folder), base=base, log=log)
    try:
        return Server((HOST, port), handler)
    except OSError as error:
        if error.errno in (errno.EADDRINUSE, errno.EACCES) or getattr(error, "winerror", 0) in (10013, 10048):
            raise Trouble(f"port {port} is already in use or not allowed: choose another one with --port") from error
        raise


@contextmanager
def serving(folder: Path, port: int = 0, *, base: str = "/", log: list[str] | None = None) -> Iterator[str]:
    """Serve in the background for as long as the block lasts; gives the address."""
    server = open_server(folder, port, base=base, log=log)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True)
    thread.start()
    try:
        yield f"http://{HOST}:{server.server_address[1]}{base}"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def serve(server: Server, folder: Path) -> None:
    """Serve until the person presses Ctrl-C."""
    say(f"Serving {folder.name}/ at http://{HOST}:{server.server_address[1]}/ (Ctrl-C ends it)")
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        say("")
    finally:
        server.server_close()
