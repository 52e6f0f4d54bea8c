"""The service worker's list is complete and true, names are by content, and sizes keep to their budgets."""

from __future__ import annotations

import gzip
import hashlib
import json
from pathlib import Path
from typing import Any

NOT_KEPT = {"sw.js"}


def test_every_file_is_listed_under_the_address_it_is_asked_for(dist: Path, listed: dict[str, Any]) -> None:
    files = {path.relative_to(dist).as_posix() for path in dist.rglob("*") if path.is_file()}
    kept = {path for path in files if not path.endswith(".gz") and not Path(path).name.startswith(".")} - NOT_KEPT
    addresses = {path.removesuffix("index.html") or "./" for path in kept}
    assert addresses == set(listed["files"])


def test_hash_and_size_are_those_of_the_file(dist: Path, listed: dict[str, Any]) -> None:
    for address, entry in listed["files"].items():
        path = dist / address
        content = (path / "index.html" if path.is_dir() else path).read_bytes()
        assert (hashlib.sha256(content).hexdigest()[:24], len(content)) == (entry["hash"], entry["size"]), address


def test_what_comes_compressed_inflates_to_the_listed_file(dist: Path, listed: dict[str, Any]) -> None:
    packed = [address for address, entry in listed["files"].items() if entry["group"] == "engine" or address.endswith(".zip")]
    assert len(packed) == 5
    for address in packed:
        assert hashlib.sha256(gzip.decompress((dist / f"{address}.gz").read_bytes())).hexdigest()[:24] == listed["files"][address]["hash"]


def test_types_are_those_a_browser_insists_on(listed: dict[str, Any]) -> None:
    for address, entry in listed["files"].items():
        if address.endswith((".js", ".mjs")):
            assert entry["type"].startswith("text/javascript"), address
        if address.endswith(".wasm"):
            assert entry["type"] == "application/wasm", address
        if address.endswith("/"):
            assert entry["type"].startswith("text/html"), address


def test_scripts_find_each_other(dist: Path) -> None:
    """Every import that is written out in a script leads to a file."""
    import re

    for path in dist.glob("assets/*/**/*.js"):
        for address in re.findall(r"""(?:from|import)\s*\(?\s*['"](\.[^'"]+)['"]""", path.read_text(encoding="utf-8")):
            assert (path.parent / address).is_file(), f"{path.name} imports {address}"


def test_only_one_build_lies_in_dist(dist: Path, listed: dict[str, Any]) -> None:
    assert len(list(dist.glob("assets/*"))) == 1
    assert [path.name for path in dist.glob("engine/*") if path.is_dir()] == [listed["engine"]]


def test_manifest_and_icons(dist: Path) -> None:
    manifest = json.loads((dist / "manifest.webmanifest").read_text(encoding="utf-8"))
    assert manifest["display"] == "standalone"
    assert not manifest["start_url"].startswith(("/", "http")), "must work under any path of a host"
    assert any("maskable" in icon.get("purpose", "") for icon in manifest["icons"])
    for icon in manifest["icons"]:
        assert (dist / icon["src"]).is_file(), icon["src"]


def packed_size(paths: list[Path]) -> int:
    """Sum of the files compressed."""
    assert paths
    return sum(len(gzip.compress(path.read_bytes(), 9)) for path in paths)


def test_engine_within_budget(dist: Path) -> None:
    assert sum(path.stat().st_size for path in dist.glob("engine/*/*.gz")) <= 6_500_000


def test_style_within_budget(dist: Path) -> None:
    assert packed_size(list(dist.glob("assets/*/css/*"))) <= 14_000


def test_scripts_within_budget(dist: Path) -> None:
    assert packed_size([*dist.glob("assets/*/js/**/*.js"), *dist.glob("assets/*/worker/*.js"), dist / "sw.js"]) <= 40_000


def test_short_files_stay_short() -> None:
    root = Path(__file__).resolve().parents[2]
    for name, most in (("site_src/sw/sw.js", 150), ("site_src/worker/desk-worker.js", 150), ("build.py", 350)):
        assert len((root / name).read_text(encoding="utf-8").splitlines()) <= most, name
