"""What the tests of the build share: the built site, and the words of its files."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]
DIST = ROOT / "dist"


@pytest.fixture(scope="session")
def dist() -> Path:
    """The site as `python3 build.py test` has just built it."""
    assert (DIST / "sw.js").is_file(), "there is no built site: run python3 build.py test, or build first"
    return DIST


@pytest.fixture(scope="session")
def listed(dist: Path) -> dict[str, Any]:
    """The service worker's list: version, engine, and for each address its hash, size, group and type."""
    text = (dist / "sw.js").read_text(encoding="utf-8")
    line = next(line for line in text.splitlines() if line.startswith("const SITE = "))
    site: dict[str, Any] = json.loads(line.removeprefix("const SITE = ").removesuffix(";"))
    site["files"] = {path: {"hash": digest, "size": size, "group": group, "type": kind} for path, digest, size, group, kind in site["files"]}
    return site


@pytest.fixture(scope="session")
def python() -> str:
    """The interpreter of our own environment."""
    return sys.executable
