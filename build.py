#!/usr/bin/env python3
"""Build, serve and test the site. One command on a bare machine: Python 3.11 or newer and git.

    python3 build.py serve              set up, build, serve on this machine, print the address
    python3 build.py build              build into dist/
    python3 build.py test               set up and run every kind of test
    python3 build.py bench              measure the engine's starts against a stock one
    python3 build.py clean              take away everything that was made here

The first run downloads pinned packages, checked by hash; nothing is written outside this folder (only `test`, as root on
Debian, installs browsers). Read `main` for the order of things; `site_src/builder/` holds the steps.
"""

from __future__ import annotations

import sys

if sys.version_info < (3, 11):  # noqa: UP036
    sys.exit("build.py needs Python 3.11 or newer; this is Python %d.%d" % sys.version_info[:2])  # noqa: UP031 (older Pythons read this)

import argparse
import os
import shutil
import subprocess
from pathlib import Path
from typing import TextIO

from site_src.builder import setup
from site_src.builder.setup import CACHE, ENGINES, ROOT, Trouble, say

SOURCE = ROOT / "site_src"
OURS = ".blankwright-build"  # marks a folder that we made, and so may replace


def main(arguments: list[str]) -> int:
    """Do what the command line asks; a trouble is one line and exit code 1."""
    options = read_command_line(arguments)
    try:
        return options.command(options)
    except Trouble as trouble:
        say(f"build.py: {trouble}")
        return 1
    except KeyboardInterrupt:
        say("build.py: stopped")
        return 130


# --- Commands -----------------------------------------------------------------------------------------------------------


def serve(options: argparse.Namespace) -> int:
    """Set up, build, and serve on this machine."""
    if inside(options):
        from site_src.builder import serve as local

        server = local.open_server(ROOT / "dist", options.port)  # before the work, so that a busy port is told at once
        make_site(ROOT / "dist", "/")
        local.serve(server, ROOT / "dist")
        return 0
    return again_inside(options)


def build(options: argparse.Namespace) -> int:
    """Set up and build the site into a folder, swapped in whole."""
    if not (options.base_path.startswith("/") and options.base_path.endswith("/")):
        raise Trouble("--base-path must start and end with a slash, as in /blankwright/")
    if inside(options):
        make_site(options.out.resolve(), options.base_path)
        return 0
    return again_inside(options)


def test(options: argparse.Namespace) -> int:
    """Set up what the tests need and run every kind; pytest's summary comes last."""
    if not inside(options):
        return again_inside(options, "tests")
    setup.pyodide_wheels()
    found = setup.browsers(options.engines)
    setup.npm_packages("browser-tests", ROOT / "tests" / "browser")
    make_site(ROOT / "dist", "/")
    say("Testing, browsers: " + (", ".join(f"{name} ({at.path or 'own copy'})" for name, at in found.items()) or "none"))
    if options.pytest or "chromium" not in found or len(found) == 1:
        return run_python(pytest("pytest", *options.pytest), {"BLANKWRIGHT_ENGINES": setup.browser_settings(found)})
    return test_in_two(found)


def test_in_two(found: dict[str, setup.Browser]) -> int:
    """All tests with Chromium here, and beside them on the second core those of the other engines, whose report comes after."""
    log = CACHE / "logs" / "other-engines.log"
    log.parent.mkdir(parents=True, exist_ok=True)
    others = {name: browser for name, browser in found.items() if name != "chromium"}
    with log.open("w", encoding="utf-8") as out:
        beside = start_python(pytest("pytest-other-engines", "-o", f"cache_dir={CACHE / 'pytest-other-engines'}", "tests/browser"),
                              {"BLANKWRIGHT_ENGINES": setup.browser_settings(others)}, out)
    try:
        code = run_python(pytest("pytest"), {"BLANKWRIGHT_ENGINES": setup.browser_settings({"chromium": found["chromium"]})})
        other = beside.wait()
    finally:
        beside.terminate()
    say(f"And in {', '.join(others)}:")
    say(log.read_text(encoding="utf-8"))
    return code or other


def pytest(place: str, *arguments: str) -> list[str]:
    """A run of pytest with temporary files of its own."""
    return ["-m", "pytest", f"--basetemp={CACHE / 'tmp' / place}", *arguments]


def bench(options: argparse.Namespace) -> int:
    """Measure the engine in a browser against a stock one."""
    if not inside(options):
        return again_inside(options, "tests")
    found = setup.browsers(["chromium"])
    make_site(ROOT / "dist", "/")
    return run_python([str(ROOT / "tests" / "bench" / "bench.py")], {"BLANKWRIGHT_ENGINES": setup.browser_settings(found)})


def clean(options: argparse.Namespace) -> int:
    """Take away the built site, the caches and the Python environment."""
    made = [ROOT / "dist", ROOT / "dist.new", ROOT / "dist.old", CACHE, setup.VENV, ROOT / ".hypothesis"]
    made += [path for folder in ("calc", "site_src", "tests") for path in (ROOT / folder).rglob("__pycache__")]
    for path in made:
        shutil.rmtree(path, ignore_errors=True)
    say("Clean.")
    return 0


# --- The site ------------------------------------------------------------------------------------------------------------


def make_site(out: Path, base_path: str) -> None:
    """Load, check, render, pack, list; then put the new site in the place of the old one."""
    from site_src.builder import assets, render
    from site_src.builder.engine import calc_zip, engine

    refuse_foreign(out)
    try:
        packed, calc = engine(), calc_zip()
        parts = assets.collect(SOURCE, render.stylesheet(SOURCE), packed, calc)
        pages = render.render_pages(SOURCE, assets=parts.names, base_path=base_path, version=packed.hash)
    except render.RenderError as error:
        raise Trouble(str(error)) from error
    files = {**parts.files, **{path: text.encode() for path, text in pages.items()}}
    worker = assets.service_worker((SOURCE / "sw" / "sw.js").read_text(encoding="utf-8"), files, packed)
    files["sw.js"] = worker.encode()
    write_whole(out, files)
    compressed = sum(len(content) for path, content in files.items() if path.startswith(f"engine/{packed.hash}/") and path.endswith(".gz"))
    say(f"Built {len(pages)} pages and {len(parts.files)} other files into {out.name}/; the engine is {compressed / 1e6:.1f} MB compressed.")


def refuse_foreign(out: Path) -> None:
    """Never replace a folder that we did not make."""
    if out.is_file() or (out.is_dir() and any(out.iterdir()) and not (out / OURS).is_file()):
        raise Trouble(f"{out} exists and was not made by build.py: choose another --out, or move it away")
    if not out.parent.is_dir():
        raise Trouble(f"{out.parent} does not exist")


def write_whole(out: Path, files: dict[str, bytes]) -> None:
    """Write everything beside the old site, then swap: what stands in `out` is always one whole build."""
    fresh, old = out.with_name(out.name + ".new"), out.with_name(out.name + ".old")
    for path in (fresh, old):
        shutil.rmtree(path, ignore_errors=True)
    for path, content in {**files, OURS: b""}.items():
        target = fresh / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(content)
    if out.exists():
        out.rename(old)
    fresh.rename(out)
    shutil.rmtree(old, ignore_errors=True)


# --- The command line, and our own environment ---------------------------------------------------------------------------


def read_command_line(arguments: list[str]) -> argparse.Namespace:
    """The command and its options."""
    parser = argparse.ArgumentParser(prog="build.py", description="Build, serve and test the site.")
    commands = parser.add_subparsers(title="commands", required=True, metavar="serve|build|test|bench|clean")

    def add(command, help):  # type: ignore[no-untyped-def]
        sub = commands.add_parser(command.__name__, help=help, description=command.__doc__)
        sub.set_defaults(command=command, arguments=arguments)
        return sub

    add(serve, "build, then serve on this machine").add_argument("--port", type=port_number, default=8000, help="default 8000")
    building = add(build, "build the site")
    building.add_argument("--out", type=Path, default=ROOT / "dist", help="folder to put the site in, default dist")
    building.add_argument("--base-path", default="/", help="path the site is hosted under, as in /blankwright/")
    testing = add(test, "run every kind of test")
    testing.add_argument("--engines", type=engine_names, default=list(ENGINES), metavar="NAMES",
                         help="browser engines to test in, of chromium,firefox,webkit; or none")
    testing.add_argument("pytest", nargs="*", help="after --: passed on to pytest")
    add(bench, "measure the engine's starts")
    add(clean, "take away everything that was made here")
    return parser.parse_args(arguments)


def port_number(text: str) -> int:
    """A port to listen on."""
    if not text.isdigit() or not 1 <= int(text) <= 65535:
        raise argparse.ArgumentTypeError(f"a port is a number from 1 to 65535, not '{text}'")
    return int(text)


def engine_names(text: str) -> list[str]:
    """Browser engines by name, separated by commas."""
    names = [] if text == "none" else text.split(",")
    for name in names:
        if name not in ENGINES:
            raise argparse.ArgumentTypeError(f"'{name}' is not one of {', '.join(ENGINES)}, none")
    return names


def inside(options: argparse.Namespace) -> bool:
    """Whether this is already our own environment's Python."""
    return Path(sys.prefix).resolve() == setup.VENV.resolve()


def again_inside(options: argparse.Namespace, *locks: str) -> int:
    """Set the environment up, then run the same command in it."""
    say("Setting up (the first time downloads packages; later runs reuse them)")
    for lock in ("build", *locks):
        setup.packages(lock)
    return run_python([str(ROOT / "build.py"), *options.arguments], {})


def run_python(command: list[str], settings: dict[str, str]) -> int:
    """Run our environment's Python on the terminal, to its end."""
    process = start_python(command, settings)
    while True:
        try:
            return process.wait()
        except KeyboardInterrupt:  # the child got it too, and ends by itself
            continue


def start_python(command: list[str], settings: dict[str, str], output: TextIO | None = None) -> subprocess.Popen[bytes]:
    """Start our environment's Python; the home folder it sees lies in the cache."""
    home = CACHE / "home"
    home.mkdir(parents=True, exist_ok=True)
    env = {**setup.surroundings(), **settings, "PYTHONUNBUFFERED": "1"}
    if settings:  # tests and benchmark start browsers, which write to the home folder; set-up still reads the real one
        env |= {"HOME": str(home), "TMPDIR": os.environ.get("TMPDIR", "")}
        env = {key: value for key, value in env.items() if value}
    return subprocess.Popen([str(setup.venv_python()), *command], cwd=ROOT, env=env, stdout=output, stderr=output)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
