"""Everything the site serves, as data: paths and bytes, the names that pages use, and the service worker's list.

Scripts, styles, the worker and `calc` lie together in one folder named by the hash of all of them, so a page never runs with
parts of another build; the engine lies in a folder named by its own hash; what is in `static/` lies at the root as it is.
"""

from __future__ import annotations

import gzip
import hashlib
import json
import mimetypes
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from .engine import RUNTIME, STANDARD, Engine
from .setup import Trouble
from .squeeze import squeeze_js

SITE_LINE = "/* SITE */ null"
#: Hex digits of a file's SHA-256 that the service worker compares: 96 bits tell any damage.
KEPT_OF_HASH = 24
TYPES = {
    ".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8",
    ".mjs": "text/javascript; charset=utf-8", ".wasm": "application/wasm", ".zip": "application/zip", ".gz": "application/gzip",
    ".svg": "image/svg+xml", ".png": "image/png", ".txt": "text/plain; charset=utf-8", ".json": "application/json",
    ".webmanifest": "application/manifest+json", ".woff2": "font/woff2",
}


@dataclass(frozen=True)
class Assets:
    """Files of the finished site but for its pages: content by path, and finished name by the plain name pages use."""

    files: Mapping[str, bytes]
    names: Mapping[str, str]


def type_of(path: str) -> str:
    """The media type a file is served with."""
    suffix = Path(path).suffix
    return TYPES.get(suffix) or mimetypes.types_map.get(suffix, "application/octet-stream")


def collect(source: Path, stylesheet: str, engine: Engine, calc_zip: Path) -> Assets:
    """Gather scripts, style, worker, `calc`, engine and static files."""
    calc = calc_zip.read_bytes()
    parts = {"css/site.css": stylesheet.encode(), "calc.zip": calc, "calc.zip.gz": gzip.compress(calc, 9, mtime=0)}
    parts |= {f"js/{path.relative_to(source / 'js').as_posix()}": _script(path) for path in sorted((source / "js").rglob("*.js"))}
    parts |= {f"worker/{path.name}": _script(path) for path in sorted((source / "worker").glob("*.js"))}
    parts["worker/engine.js"] = _engine_module(engine, _digest({"calc.zip": calc}))
    folder = f"assets/{_digest(parts)}"
    names = {name: f"{folder}/{name}" for name in parts}
    files = {names[name]: content for name, content in parts.items()}
    for path in sorted(path for path in (source / "static").rglob("*") if path.is_file()):
        name = path.relative_to(source / "static").as_posix()
        names[name] = name
        files[name] = path.read_bytes()
    for name in (*RUNTIME, STANDARD):
        for suffix in ("", ".gz"):
            files[f"engine/{engine.hash}/{name}{suffix}"] = (engine.folder / (name + suffix)).read_bytes()
    files["engine/licences.txt"] = (source / "vendor" / "licences.txt").read_bytes()
    files[".nojekyll"] = b""
    return Assets(files, names)


def service_worker(template: str, files: Mapping[str, bytes], engine: Engine) -> str:
    """The service worker with the list of everything that it keeps.

    A page is listed under the address it is asked for, ``x/`` for ``x/index.html``, because hosts redirect the other one.
    """
    template = squeeze_js(template)
    if template.count(SITE_LINE) != 1:
        raise Trouble(f"sw.js must have '{SITE_LINE}' exactly once")
    entries = []
    for path, content in sorted(files.items()):
        if path.endswith(".gz") or Path(path).name.startswith("."):
            continue
        group = "engine" if path.startswith(f"engine/{engine.hash}/") else "shell"
        address = path.removesuffix("index.html") if Path(path).name == "index.html" else path
        entries.append([address or "./", hashlib.sha256(content).hexdigest()[:KEPT_OF_HASH], len(content), group, type_of(path)])
    version = hashlib.sha256(json.dumps(entries).encode() + template.encode()).hexdigest()[:16]
    site = {"version": version, "engine": engine.hash, "files": entries}
    return template.replace(SITE_LINE, json.dumps(site, separators=(",", ":")))


def _engine_module(engine: Engine, calc: str) -> bytes:
    """What the worker has to know of this build: a script of one constant."""
    known = {"root": "../../../", "folder": f"../../../engine/{engine.hash}/", "calc": "../calc.zip", "key": f"{engine.hash}-{calc}",
             "lock": {"abi_version": "2026_0", "arch": "wasm32", "platform": "emscripten_5_0_3", "python": "3.14.2"}}
    return f"// Written by the build.\nexport const ENGINE = {json.dumps(known)};\n".encode()


def _script(path: Path) -> bytes:
    return squeeze_js(path.read_text(encoding="utf-8")).encode()


def _digest(parts: Mapping[str, bytes]) -> str:
    digest = hashlib.sha256()
    for name, content in sorted(parts.items()):
        digest.update(name.encode() + b"\0" + hashlib.sha256(content).digest())
    return digest.hexdigest()[:16]
