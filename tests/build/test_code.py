"""The code itself: linted, typed, parsed, and nothing in it that must not be there."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

from site_src.builder import setup
from site_src.builder.squeeze import squeeze_js

ROOT = setup.ROOT
TOP = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "build.py", "site_src", "calc", "tests"}
FOLDERS = ("site_src", "calc", "tests")


def run(*command: str | Path) -> None:
    """Run a checker; what it says is the failure."""
    done = subprocess.run([str(part) for part in command], cwd=ROOT, capture_output=True, text=True, env=setup.surroundings(), check=False)
    assert done.returncode == 0, f"\n{done.stdout[-6000:]}{done.stderr[-3000:]}"


def listed(*which: str) -> list[str] | None:
    """What git lists; None in a copy that is no checkout."""
    done = subprocess.run(["git", "ls-files", *which], cwd=ROOT, capture_output=True, text=True, check=False)
    return done.stdout.splitlines() if done.returncode == 0 else None


def committed() -> list[str]:
    """Files under version control, and those about to be: what else lies in the folder is not ours."""
    names = listed("--cached")
    if names is not None:
        names += listed("--others", "--exclude-standard", "--", *FOLDERS) or []
    else:
        names = [path.relative_to(ROOT).as_posix() for folder in FOLDERS for path in (ROOT / folder).rglob("*") if "__pycache__" not in path.parts]
    return [name for name in names if (ROOT / name).is_file()]


def test_ruff(python: str) -> None:
    run(python, "-m", "ruff", "check", "--cache-dir", setup.CACHE / "ruff", ".")


def test_mypy_strict_on_calc(python: str) -> None:
    run(python, "-m", "mypy", "--no-incremental")


def test_scripts_parse() -> None:
    program, _ = setup.node()
    scripts = [name for name in committed() if name.endswith((".js", ".mjs"))]
    assert len(scripts) > 10
    run(program, "--experimental-vm-modules", "--no-warnings", Path(__file__).with_name("parse_scripts.mjs"), *scripts)


@pytest.mark.parametrize(("lib", "folders"), [("dom,dom.iterable,dom.asynciterable", ["js"]), ("webworker", ["worker", "sw"])])
def test_types_of_the_scripts(lib: str, folders: list[str]) -> None:
    """What each script takes and gives is written beside it, and holds: a page's scripts among themselves, and the two workers."""
    program, _ = setup.node()
    checker = setup.CACHE / "browser-tests" / "node_modules" / "typescript" / "bin" / "tsc"
    assert checker.is_file(), "typescript is missing: build.py test installs it"
    scripts = [name for name in committed() if name.endswith(".js") and name.startswith(tuple(f"site_src/{folder}/" for folder in folders))]
    assert scripts
    run(program, checker, "--noEmit", "--allowJs", "--checkJs", "--noImplicitAny", "--target", "es2023", "--module", "esnext", "--moduleResolution", "bundler",
        "--lib", f"es2023,{lib}", Path(__file__).with_name("types.d.ts"), *scripts)


def test_what_the_build_takes_out_of_a_script_is_no_part_of_a_text() -> None:
    behind = re.compile(r"(?<=[;{]) // ")
    assert squeeze_js("  take(); // see http://x, 'it's'\n") == "take();\n" and squeeze_js("const ns = 'http://x';\n") == "const ns = 'http://x';\n"
    for name in committed():
        if name.startswith("site_src/") and name.endswith(".js"):
            for line in filter(behind.search, (ROOT / name).read_text(encoding="utf-8").splitlines()):
                code = behind.split(line)[0]
                assert all(code.count(mark) % 2 == 0 for mark in "'\"`"), f"{name}: {line}"


def test_top_level_is_the_plan_of_the_house() -> None:
    assert {name.split("/")[0] for name in committed() if not name.startswith(".")} <= TOP


def test_no_package_host_and_no_path_of_a_machine() -> None:
    hosts = "|".join((r"pypi\.or" + "g", r"pythonhosted\.or" + "g", r"npmjs\.(or" + "g|com)", r"deb\.debia" + r"n\.org"))
    places = "|".join(("/wor" + "k/main", "/roo" + "t/", "/tm" + "p/"))
    for name in committed():
        text = (ROOT / name).read_bytes().decode("utf-8", errors="replace")
        found = re.search(f"({hosts})|({places})", text)
        assert not found, f"{name}: {found[0] if found else ''}"


def test_a_table_that_stacks_on_a_phone_keeps_its_column_heads() -> None:
    style = (ROOT / "site_src/css/components/answer.css").read_text(encoding="utf-8")
    heads = re.findall(r"\[data-prose\][^{]*thead[^{]*\{([^}]*)\}", style)
    assert heads and not any(re.search(r"clip|display: none|visibility|left: -|opacity", rule) for rule in heads)


def test_nothing_is_left_undone() -> None:
    marks = re.compile("TO" + "DO|FIX" + "ME|pytest.mark.sk" + "ip|XX" + "X")
    for name in committed():
        if name.endswith((".py", ".js", ".mjs", ".html", ".css", ".md", ".toml")):
            found = marks.search((ROOT / name).read_text(encoding="utf-8"))
            assert not found, f"{name}: {found[0] if found else ''}"
