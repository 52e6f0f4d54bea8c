"""`build.py` from outside: what goes wrong is one clear line, and never leaves half a site."""

from __future__ import annotations

import os
import shutil
import socket
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from site_src.builder import setup

ROOT = setup.ROOT


def build(*arguments: str, cwd: Path = ROOT, env: dict[str, str] | None = None) -> subprocess.CompletedProcess[str]:
    """Run build.py as a person would."""
    surroundings = {**os.environ, **(env or {})}
    return subprocess.run([sys.executable, "build.py", *arguments], cwd=cwd, env=surroundings, capture_output=True, text=True, timeout=300,
                          check=False)


@pytest.fixture
def copy(tmp_path: Path) -> Iterator[Path]:
    """The sources in another folder that shares this one's environment and caches."""
    place = tmp_path / "checkout"
    place.mkdir()
    for name in ("build.py", "pyproject.toml"):
        shutil.copyfile(ROOT / name, place / name)
    for name in ("site_src", "calc"):
        shutil.copytree(ROOT / name, place / name, ignore=shutil.ignore_patterns("__pycache__"))
    yield place
    for link in (place / ".venv", place / ".cache"):
        if link.is_symlink():
            link.unlink()


def share(place: Path) -> None:
    """Let a copy use this checkout's environment and caches."""
    (place / ".venv").symlink_to(setup.VENV, target_is_directory=True)
    (place / ".cache").symlink_to(setup.CACHE, target_is_directory=True)


@pytest.mark.parametrize("arguments", [(), ("bake",), ("serve", "--port", "none"), ("serve", "--port", "70000"), ("test", "--engines", "opera"),
                                       ("build", "--no-such-option")], ids=" ".join)
def test_wrong_use_is_told(arguments: tuple[str, ...]) -> None:
    done = build(*arguments)
    assert done.returncode == 2
    assert "Traceback" not in done.stderr
    assert "error:" in done.stderr.splitlines()[-1]


def test_old_python_is_told() -> None:
    """Run the first lines of build.py under a version that says it is old."""
    text = (ROOT / "build.py").read_text(encoding="utf-8").split("import argparse")[0]
    script = "import sys; sys.version_info = (3, 9, 1)\n" + text.replace("from __future__ import annotations", "")
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert done.stderr.strip() == "build.py needs Python 3.11 or newer; this is Python 3.9"


def test_base_path_without_slashes_is_told() -> None:
    done = build("build", "--base-path", "shop")
    assert done.returncode == 1
    assert done.stdout.splitlines()[-1].startswith("build.py: --base-path must start and end with a slash")


def test_busy_port_is_told_at_once() -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        done = build("serve", "--port", str(taken.getsockname()[1]))
    assert done.returncode == 1
    assert "is already in use" in done.stdout.splitlines()[-1]


def test_a_folder_that_is_not_ours_is_never_replaced(tmp_path: Path) -> None:
    (tmp_path / "photos").mkdir()
    (tmp_path / "photos" / "one.jpg").write_bytes(b"mine")
    done = build("build", "--out", str(tmp_path / "photos"))
    assert done.returncode == 1
    assert "was not made by build.py" in done.stdout.splitlines()[-1]
    assert [path.name for path in (tmp_path / "photos").iterdir()] == ["one.jpg"]


def test_under_a_base_path(tmp_path: Path) -> None:
    """The page for wrong addresses cannot know how deep it is asked for: it alone names the base path."""
    done = build("build", "--out", str(tmp_path / "site"), "--base-path", "/shop/")
    assert done.returncode == 0, done.stdout
    assert 'href="/shop/' in (tmp_path / "site" / "404.html").read_text(encoding="utf-8")
    assert 'href="/shop/' not in (tmp_path / "site" / "index.html").read_text(encoding="utf-8")


def test_two_builds_are_the_same_bytes(copy: Path) -> None:
    share(copy)
    for name in ("one", "two"):
        done = build("build", "--out", name, cwd=copy)
        assert done.returncode == 0, done.stdout
    files = {name: {path.relative_to(copy / name): path.read_bytes() for path in (copy / name).rglob("*") if path.is_file()} for name in ("one", "two")}
    assert files["one"] == files["two"]


def test_a_mistake_in_a_page_names_the_line_and_leaves_the_old_site(copy: Path) -> None:
    share(copy)
    assert build("build", cwd=copy).returncode == 0
    before = {path: path.stat().st_mtime_ns for path in (copy / "dist").rglob("*")}
    page = next(path for path in sorted((copy / "site_src" / "content").glob("*.md")))
    page.write_text(page.read_text(encoding="utf-8").replace("---\n", "---\ncolour: green\n", 1), encoding="utf-8")
    done = build("build", cwd=copy)
    assert done.returncode == 1
    assert done.stdout.splitlines()[-1].startswith(f"build.py: {page.name}:2:")
    assert {path: path.stat().st_mtime_ns for path in (copy / "dist").rglob("*")} == before
    assert not (copy / "dist.new").exists()


@pytest.mark.parametrize(("trouble", "told"), [("damaged", "a download is damaged"), ("offline", "no network")])
def test_a_download_that_fails_is_told_and_leaves_nothing(copy: Path, trouble: str, told: str) -> None:
    """From nothing, with a lock of one small wheel: once the wheel is not the one locked, once there is nobody to ask."""
    (copy / "site_src" / "vendor" / "build.lock").write_text(f"iniconfig==2.3.1 --hash=sha256:{'0' * 64}\n", encoding="utf-8")
    if trouble == "damaged":
        env = {"PIP_NO_INDEX": "1", "PIP_FIND_LINKS": str(setup.CACHE / "pyodide-wheels"), "PIP_CONFIG_FILE": os.devnull}
    else:
        env = {"PIP_INDEX_URL": "http://localhost:9/simple", "PIP_FIND_LINKS": "", "PIP_CONFIG_FILE": os.devnull}
    done = build("build", cwd=copy, env=env)
    assert done.returncode == 1
    last = done.stdout.splitlines()[-1]
    assert last.startswith("build.py: ") and told in last
    assert not (copy / "dist").exists()
    assert not list((copy / ".cache" / "stamps").glob("packages-*"))


@pytest.mark.parametrize("arguments", [("list",), ("describe", "how-fast"), ("how-fast", "diameter=300", "--json")], ids=" ".join)
def test_a_reader_that_has_read_enough_is_no_error(arguments: tuple[str, ...]) -> None:
    """As with 'head', or a pager that was left."""
    reader, writer = os.pipe()
    os.close(reader)
    try:
        done = subprocess.run([sys.executable, "-m", "calc", *arguments], cwd=ROOT, stdout=writer, stderr=subprocess.PIPE, text=True, timeout=60, check=False)
    finally:
        os.close(writer)
    assert (done.returncode, done.stderr) == (0, "")
