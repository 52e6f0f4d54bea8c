"""Set the machine up: everything pinned, checked by hash, and kept inside the checkout.

Standard library only: this runs on a bare Python before anything is installed, and it is the only part that uses
the network. What it makes lies in `.venv/` (Python packages) and `.cache/` (everything else); both can be deleted at
any time. Each step leaves a stamp with the hash of its lock file, so a second run has nothing to do.
"""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import ssl
import subprocess
import sys
import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
VENV = ROOT / ".venv"
CACHE = ROOT / ".cache"
VENDOR = ROOT / "site_src" / "vendor"
ENGINES = ("chromium", "firefox", "webkit")
LEAST_NODE = 20
PYODIDE_PYTHON = {"version": "3.14", "abi": "cp314", "platform": "pyemscripten_2026_0_wasm32"}

# What Debian calls the programs that drive each browser engine.
DEBIAN = {
    "chromium": ("chromium",),
    "firefox": ("firefox-esr",),
    "webkit": ("webkit2gtk-driver", "xvfb"),
}
NO_NETWORK = ("name resolution", "getaddrinfo", "newconnectionerror", "connecttimeout", "network is unreachable", "enotfound",
              "eai_again", "econnrefused", "enetunreach", "etimedout", "could not resolve", "temporary failure", "connection refused")
UNTRUSTED = ("self_signed_cert", "self-signed certificate", "certificate_verify_failed", "unable_to_get_issuer_cert")
DAMAGED = ("do not match the hashes", "hash mismatch", "eintegrity", "incompleteread", "badzipfile", "hash sum mismatch")


class Trouble(Exception):
    """Something the person at the keyboard has to know, in one line."""


@dataclass(frozen=True)
class Browser:
    """One browser engine that tests can drive.

    `path` is the program on this machine, or empty when Playwright's own copy is used.
    `driver` is the WebDriver program where the engine needs one, else empty.
    """

    engine: str
    path: str
    driver: str = ""


def say(text: str) -> None:
    """Print one line of progress at once."""
    print(text, flush=True)


def surroundings() -> dict[str, str]:
    """Environment for everything we start: caches, logs and temporary files stay inside the checkout."""
    for name in ("tmp", "logs", "stamps"):
        (CACHE / name).mkdir(parents=True, exist_ok=True)
    programs = VENV / ("Scripts" if os.name == "nt" else "bin")
    return {
        **{key: value for key, value in os.environ.items() if key not in ("PYTHONHOME", "PYTHONPATH")},
        "PATH": str(programs) + os.pathsep + os.environ.get("PATH", os.defpath),
        "PIP_CACHE_DIR": str(CACHE / "pip"),
        "PIP_DISABLE_PIP_VERSION_CHECK": "1",
        "npm_config_cache": str(CACHE / "npm"),
        "npm_config_update_notifier": "false",
        "PLAYWRIGHT_BROWSERS_PATH": str(CACHE / "playwright"),
        "XDG_CACHE_HOME": str(CACHE / "home" / "cache"),
        "TMPDIR": str(CACHE / "tmp"),
        **_trusted(),
    }


def _trusted() -> dict[str, str]:
    """Have Node trust the certificates that the system trusts, as Python does."""
    known = (ssl.get_default_verify_paths().cafile, "/etc/ssl/certs/ca-certificates.crt", "/etc/pki/tls/certs/ca-bundle.crt")
    bundle = next((path for path in known if path and Path(path).is_file()), "")
    return {"NODE_EXTRA_CA_CERTS": bundle} if bundle and "NODE_EXTRA_CA_CERTS" not in os.environ else {}


def run(what: str, command: Sequence[str | Path], *, cwd: Path = ROOT, log: str, env: Mapping[str, str] | None = None) -> None:
    """Run one long step with a sign of life; its full output goes to a log, a failure becomes one line.

    Raises
    ------
    Trouble
        With the cause in words: no network, a damaged download, or the last line the program said.
    """
    surrounding = surroundings() | dict(env or {})
    path = CACHE / "logs" / f"{log}.log"
    started = time.monotonic()
    say(f"  {what} ...")
    with path.open("w", encoding="utf-8") as out:
        try:
            process = subprocess.Popen([str(part) for part in command], cwd=cwd, env=surrounding, stdout=out,
                                       stderr=subprocess.STDOUT, stdin=subprocess.DEVNULL)
        except OSError as error:
            raise Trouble(f"{what}: cannot start {command[0]} ({error.strerror})") from error
        try:
            while True:
                try:
                    code = process.wait(timeout=10)
                    break
                except subprocess.TimeoutExpired:
                    say(f"    still at it, {time.monotonic() - started:.0f} s")
        except BaseException:
            process.kill()
            process.wait()
            raise
    if code:
        raise Trouble(f"{what}: {_cause(path.read_text(encoding='utf-8', errors='replace'))} (full output: {path.relative_to(ROOT)})")
    say(f"    done in {time.monotonic() - started:.0f} s")


def _cause(output: str) -> str:
    lowered = output.lower()
    if any(sign in lowered for sign in DAMAGED):
        return "a download is damaged or not the one we pinned (its hash differs); nothing was installed, run the command again"
    if any(sign in lowered for sign in UNTRUSTED):
        return "this network puts a certificate of its own in between, and it is not trusted: name its file in NODE_EXTRA_CA_CERTS and PIP_CERT"
    if any(sign in lowered for sign in NO_NETWORK):
        return "no network: the first run has to download packages"
    lines = [line.strip() for line in output.splitlines() if line.strip()]
    told = [line for line in lines if "error" in line.lower() and "log" not in line.lower()]
    return max(told, key=len)[:200] if told else (lines or ["it failed without a word"])[-1][:200]


def stamped(name: str, *parts: str | bytes | Path) -> tuple[bool, Path, str]:
    """Is step `name` done for exactly these inputs? Returns that, the stamp file, and what to write there when done."""
    digest = hashlib.sha256(f"{sys.version_info[:2]}".encode())
    for part in parts:
        data = part.read_bytes() if isinstance(part, Path) else part.encode() if isinstance(part, str) else part
        digest.update(hashlib.sha256(data).digest())
    stamp = CACHE / "stamps" / name
    return stamp.is_file() and stamp.read_text() == digest.hexdigest(), stamp, digest.hexdigest()


def mark(stamp: Path, digest: str) -> None:
    """Write the stamp of a finished step."""
    stamp.parent.mkdir(parents=True, exist_ok=True)
    stamp.write_text(digest)


# --- Python packages -----------------------------------------------------------------------------------------------

def venv_python() -> Path:
    """Path of the Python inside our own virtual environment."""
    return VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def packages(lock: str) -> None:
    """Install one lock (`build`, `tests` or `node`) into our virtual environment, every file checked by hash."""
    _environment()
    path = VENDOR / f"{lock}.lock"
    done, stamp, digest = stamped(f"packages-{lock}", path, str(VENV.resolve()))
    if done:
        return
    run(f"Python packages for {lock}", [venv_python(), "-m", "pip", "install", "--require-hashes", "--only-binary", ":all:",
        "--no-deps", "--retries", "2", "-r", path], log=f"packages-{lock}")
    mark(stamp, digest)


def _environment() -> None:
    done, stamp, digest = stamped("venv", sys.version, str(VENV.resolve()))
    if done and venv_python().exists():
        return
    shutil.rmtree(VENV, ignore_errors=True)
    shutil.rmtree(CACHE / "stamps", ignore_errors=True)
    surroundings()
    command = [sys.executable, "-m", "venv", VENV]
    try:
        run("Python environment", command, log="venv")
    except Trouble as trouble:
        shutil.rmtree(VENV, ignore_errors=True)
        if not _can_apt():
            raise Trouble("this Python cannot make virtual environments: install your system's 'python3-venv' package") from trouble
        _apt(["python3-venv"])
        run("Python environment", command, log="venv")
    mark(stamp, digest)


# --- Node, and what comes through npm --------------------------------------------------------------------------------

def node() -> tuple[str, str]:
    """Paths of a Node of version 20 or newer and its npm; installs both from a locked wheel where there are none."""
    for _ in range(2):
        found = _node()
        if found:
            return found
        packages("node")
    raise Trouble("Node could not be installed for this kind of machine: install Node 20 or newer")


def _node() -> tuple[str, str] | None:
    path = surroundings()["PATH"]
    program, npm = shutil.which("node", path=path), shutil.which("npm", path=path)
    if not program or not npm:
        return None
    told = subprocess.run([program, "--version"], capture_output=True, text=True, check=False).stdout.strip()
    number = told.lstrip("v").split(".")[0]
    return (program, npm) if number.isdigit() and int(number) >= LEAST_NODE else None


def npm_packages(name: str, source: Path) -> Path:
    """Install the lock in `source` into `.cache/NAME`, integrity checked, no install scripts; returns its node_modules."""
    folder = CACHE / name
    done, stamp, digest = stamped(f"npm-{name}", source / "package-lock.json", source / "package.json")
    if done and (folder / "node_modules").is_dir():
        return folder / "node_modules"
    _, npm = node()
    folder.mkdir(parents=True, exist_ok=True)
    for file in ("package.json", "package-lock.json"):
        shutil.copyfile(source / file, folder / file)
    run(f"Browser packages for {name}", [npm, "ci", "--ignore-scripts", "--no-audit", "--no-fund", "--fetch-retries", "2"],
        cwd=folder, log=f"npm-{name}")
    mark(stamp, digest)
    return folder / "node_modules"


def pyodide() -> Path:
    """Folder of the pinned Pyodide package."""
    return npm_packages("runtime", VENDOR) / "pyodide"


def pyodide_wheels() -> list[Path]:
    """Wheels that the tests need inside Pyodide: pytest, hypothesis and what they use, by lock and hash."""
    lock, folder = VENDOR / "pyodide.lock", CACHE / "pyodide-wheels"
    done, stamp, digest = stamped("pyodide-wheels", lock)
    if not done or not folder.is_dir():
        shutil.rmtree(folder, ignore_errors=True)
        run("Test packages for Pyodide", [venv_python(), "-m", "pip", "download", "--require-hashes", "--no-deps", "--retries", "2",
            "--only-binary", ":all:", "--implementation", "cp", "--python-version", PYODIDE_PYTHON["version"],
            "--abi", PYODIDE_PYTHON["abi"], "--abi", "none", "--platform", PYODIDE_PYTHON["platform"], "--platform", "any",
            "-d", folder, "-r", lock], log="pyodide-wheels")
        mark(stamp, digest)
    return sorted(folder.glob("*.whl"))


# --- Browsers for the tests --------------------------------------------------------------------------------------------

def browsers(wanted: Sequence[str]) -> dict[str, Browser]:
    """Find or install the browser engines named in `wanted`.

    Takes those on the machine; as root on Debian installs them; otherwise fetches Playwright's own.

    Raises
    ------
    Trouble
        Naming the engines that cannot be had here.
    """
    missing = [engine for engine in wanted if not _present(engine)]
    if missing and _can_apt():
        _apt([package for engine in missing for package in DEBIAN[engine]])
        missing = [engine for engine in wanted if not _present(engine)]
    for engine in missing:
        done, stamp, digest = stamped(f"playwright-{engine}", VENDOR / "tests.lock")
        if not done:
            try:
                run(f"Browser engine {engine}", [venv_python(), "-m", "playwright", "install", engine], log=f"playwright-{engine}")
            except Trouble as trouble:
                without = ",".join(name for name in ENGINES if name not in missing) or "none"
                raise Trouble(f"cannot get the browser engine {engine} here; install it, or go without: --engines {without} "
                              f"({trouble})") from trouble
            mark(stamp, digest)
    return {engine: _present(engine) or Browser(engine, "") for engine in wanted}


def _present(engine: str) -> Browser | None:
    if engine == "chromium":
        program = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
        return Browser(engine, program) if program else None
    if engine == "firefox":
        program = shutil.which("firefox-esr") or shutil.which("firefox")
        return Browser(engine, program) if program else None
    driver, screen = shutil.which("WebKitWebDriver"), shutil.which("Xvfb")
    window = next((path for folder in ("lib", "libexec") for path in sorted(Path("/usr", folder).glob("**/webkit2gtk-4*/MiniBrowser"))), None)
    return Browser(engine, str(window), driver) if driver and screen and window else None


def browser_settings(found: Mapping[str, Browser]) -> str:
    """The engines as JSON text, for the environment variable the browser tests read."""
    return json.dumps({name: {"path": browser.path, "driver": browser.driver} for name, browser in sorted(found.items())})


def _can_apt() -> bool:
    return hasattr(os, "geteuid") and os.geteuid() == 0 and Path("/etc/debian_version").exists() and bool(shutil.which("apt-get"))


def _apt(names: Sequence[str]) -> None:
    quiet = {"DEBIAN_FRONTEND": "noninteractive", "TMPDIR": "/tmp"}
    run("System package lists", ["apt-get", "update", "-q"], log="apt-update", env=quiet)
    run("System packages " + " ".join(names), ["apt-get", "install", "-y", "-q", "--no-install-recommends", *names],
        log="apt-install", env=quiet)
