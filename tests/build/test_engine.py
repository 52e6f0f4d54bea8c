"""The engine has all that `calc` needs and no more, runs on its own files alone, and comes out the same every time."""

from __future__ import annotations

import json
import subprocess
import zipfile
from pathlib import Path
from typing import Any

import pytest

from site_src.builder import engine, setup


@pytest.fixture(scope="module")
def exercised(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """What the finished engine says after all of `calc` was used in it: no standard library but our own, no installed packages."""
    folder = tmp_path_factory.mktemp("calc")
    with zipfile.ZipFile(engine.calc_zip()) as packed:
        packed.extractall(folder)
    built = engine.engine()
    command = engine.run_in_pyodide(engine.HERE / "exercise.py", mounts={"/site": folder}, paths=["/site"], runtime=built.folder,
                                    library=engine.STANDARD)
    done = subprocess.run(command, capture_output=True, text=True, timeout=300, env=setup.surroundings(), check=False)
    assert done.returncode == 0, f"a module missing here belongs in {engine.MODULES.name}:\n{done.stdout[-2000:]}{done.stderr[-4000:]}"
    found: dict[str, Any] = json.loads(done.stdout.splitlines()[-1])
    return found


def test_nothing_is_missing_for_any_question(exercised: dict[str, Any]) -> None:
    assert exercised["answers"] >= 3 * 8  # three questions at least, in two unit systems, four ways each


def test_nothing_is_carried_without_use_or_reason(exercised: dict[str, Any]) -> None:
    lines = engine.MODULES.read_text(encoding="utf-8").splitlines()
    without_reason = {line.strip() for line in lines if line.strip() and "#" not in line}
    assert without_reason - set(exercised["modules"]) == set()


def test_list_is_sorted_and_without_repeats() -> None:
    modules = engine.listed_modules()
    assert modules == sorted(set(modules))


def test_bytecode_comes_out_the_same_twice(tmp_path: Path) -> None:
    entries = {f"calc/{path.name}": path for path in sorted((setup.ROOT / "calc").glob("*.py"))}
    for name in ("one.zip", "two.zip"):
        engine.pack_files(setup.pyodide(), tmp_path / name, entries, optimize=0, what="Test")
    assert (tmp_path / "one.zip").read_bytes() == (tmp_path / "two.zip").read_bytes()


def test_library_is_bytecode_only(dist: Path) -> None:
    path = next(dist.glob("engine/*/python.zip"))
    with zipfile.ZipFile(path) as library:
        names = library.namelist()
        assert all(name.endswith((".pyc", "/METADATA")) for name in names)
        assert {entry.compress_type for entry in library.infolist()} == {zipfile.ZIP_STORED}
        # bytes 4 to 8 of a .pyc are its flags: 1 means found by hash, and without 2 never checked against a source
        assert {library.read(name)[4] for name in names if name.endswith(".pyc")} == {1}


def test_locks_name_no_place_to_download_from() -> None:
    for path in [*setup.VENDOR.glob("*.lock"), *setup.ROOT.glob("**/package-lock.json")]:
        if any(part in (".cache", ".venv", "node_modules") for part in path.relative_to(setup.ROOT).parts):
            continue
        assert "://" not in path.read_text(encoding="utf-8"), path.name


def test_the_same_versions_here_and_in_pyodide() -> None:
    def versions(name: str) -> dict[str, str]:
        lines = (setup.VENDOR / name).read_text(encoding="utf-8").splitlines()
        return dict(line.split(" ")[0].split("==") for line in lines if "==" in line and not line.startswith((" ", "#")))

    everywhere = versions("tests.lock")
    for name in ("pyodide.lock", "build.lock"):
        assert versions(name).items() <= everywhere.items(), name
    assert everywhere["pint"] == "0.25.3"
