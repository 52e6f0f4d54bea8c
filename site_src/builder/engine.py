"""The engine: the Python runtime and the few modules it needs, ready to be served; and `calc`, packed beside it.

The engine is the pinned Pyodide with a standard library of our own: only the modules listed in `vendor/modules.txt`,
pint among them, compiled to bytecode once, here, instead of at every start on a phone. `calc` goes in a zip of its own,
because it changes more often. Both are compiled by Pyodide itself on Node and kept in `.cache/` under the hash of what
went in.
"""

from __future__ import annotations

import gzip
import hashlib
import json
import shutil
import sysconfig
import tempfile
import zipfile
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from . import setup
from .setup import CACHE, ROOT, VENDOR, Trouble

HERE = Path(__file__).parent
RUNTIME = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
STANDARD = "python.zip"
MODULES = VENDOR / "modules.txt"
METADATA_OF = ("pint", "flexcache", "flexparser")  # these ask for their own version when imported
KEPT_BUILDS = 6  # of the engine, and of calc, in the cache
CALC_FILES = (".py", ".txt", ".toml", ".csv")


@dataclass(frozen=True)
class Engine:
    """The finished engine: a folder of files, and the hash of all of them, which names it for good."""

    folder: Path
    hash: str


def engine() -> Engine:
    """Build the engine, or take the one that was built from the same inputs."""
    runtime = setup.pyodide()
    digest = hash_of([MODULES, VENDOR / "package-lock.json", VENDOR / "build.lock", HERE / "pack.py", HERE / "engine.py",
                      HERE / "pyodide_node.mjs"])
    folder = CACHE / "engine" / digest
    if not folder.is_dir():
        fresh = _fresh(folder)
        for name in RUNTIME:
            shutil.copyfile(runtime / name, fresh / name)
        library = _unpacked(runtime / "python_stdlib.zip")
        pack_files(runtime, fresh / STANDARD, module_files(library), optimize=2, what="Engine")
        shutil.rmtree(library)
        for path in sorted(fresh.iterdir()):
            path.with_name(path.name + ".gz").write_bytes(gzip.compress(path.read_bytes(), 9, mtime=0))
        _settle(fresh, folder)
    return Engine(folder, hash_of(folder / name for name in (*RUNTIME, STANDARD)))


def calc_zip() -> Path:
    """`calc` and the bridge to it as bytecode with its data beside it, unpacked in the browser before Python starts."""
    entries = {path.relative_to(ROOT).as_posix(): path for path in sorted((ROOT / "calc").rglob("*"))
               if path.suffix in CALC_FILES and "__pycache__" not in path.parts and path.name != "__main__.py"}
    entries["bridge.py"] = ROOT / "site_src" / "worker" / "bridge.py"
    named = hashlib.sha256("\n".join(entries).encode()).hexdigest()
    folder = CACHE / "calc" / (named[:16] + hash_of([*entries.values(), HERE / "pack.py"]))
    if not folder.is_dir():
        fresh = _fresh(folder)
        pack_files(setup.pyodide(), fresh / "calc.zip", entries, optimize=0, what="calc")
        _settle(fresh, folder)
    return folder / "calc.zip"


def listed_modules() -> list[str]:
    """The reviewed list of modules that the engine carries, without its comments."""
    lines = [line.split("#")[0].strip() for line in MODULES.read_text(encoding="utf-8").splitlines()]
    return [line for line in lines if line]


def module_files(library: Path) -> dict[str, Path]:
    """Name in the zip and file on disk of every listed module.

    Raises
    ------
    Trouble
        When a listed module is in neither the standard library nor the installed packages.
    """
    places = (library, site_packages())
    found: dict[str, Path] = {}
    for module in listed_modules():
        plain = module.replace(".", "/")
        names = (f"{plain}/__init__.py", f"{plain}.py")
        match = next(((name, place / name) for place in places for name in names if (place / name).is_file()), None)
        if match is None and not any((place / plain).is_dir() for place in places):
            raise Trouble(f"{MODULES.relative_to(ROOT)}: there is no module {module}")
        if match is not None:
            found[match[0]] = match[1]
    for folder in sorted(site_packages().glob("*.dist-info")):
        if folder.name.split("-")[0].lower() in METADATA_OF:
            found[f"{folder.name}/METADATA"] = folder / "METADATA"
    return found


def site_packages() -> Path:
    """Where the packages of our own environment lie."""
    return Path(sysconfig.get_path("purelib", vars={"base": str(setup.VENV), "platbase": str(setup.VENV)}))


def hash_of(files: Iterable[Path]) -> str:
    """One short hash of many files, by name and content."""
    digest = hashlib.sha256()
    for path in files:
        digest.update(path.name.encode() + b"\0" + hashlib.sha256(path.read_bytes()).digest())
    return digest.hexdigest()[:16]


def run_in_pyodide(script: Path, *arguments: str, mounts: dict[str, Path], wheels: Iterable[Path] = (), paths: Iterable[str] = (),
                   runtime: Path | None = None, library: str = "python_stdlib.zip") -> list[str]:
    """The command that runs a Python file in Pyodide on Node."""
    program, _ = setup.node()
    options = [part for name, real in mounts.items() for part in ("--mount", f"{name}={real}")]
    options += [part for wheel in wheels for part in ("--wheel", str(wheel))]
    options += [part for path in paths for part in ("--path", path)]
    options += ["--stdlib", library]
    return [program, str(HERE / "pyodide_node.mjs"), str(runtime or setup.pyodide()), *options, str(script), *arguments]


def pack_files(runtime: Path, out: Path, entries: dict[str, Path], *, optimize: int, what: str) -> None:
    """Have Pyodide compile files to bytecode and zip them (see pack.py); it sees only copies of the files that go in."""
    setup.surroundings()
    work = Path(tempfile.mkdtemp(prefix="pack-", dir=CACHE / "tmp"))
    packed = []
    for number, (name, path) in enumerate(sorted(entries.items())):
        shutil.copyfile(path, work / str(number))
        packed.append([name, f"/packing/{number}"])
    plan = {"out": "/packing/out.zip", "optimize": optimize, "entries": packed}
    (work / "plan.json").write_text(json.dumps(plan), encoding="utf-8")
    command = run_in_pyodide(HERE / "pack.py", "/packing/plan.json", mounts={"/packing": work}, runtime=runtime)
    setup.run(f"{what}: compiling {len(entries)} files to bytecode", command, log=f"pack-{out.stem}")
    shutil.copyfile(work / "out.zip", out)
    shutil.rmtree(work)


def _fresh(folder: Path) -> Path:
    folder.parent.mkdir(parents=True, exist_ok=True)
    return Path(tempfile.mkdtemp(prefix="new-", dir=folder.parent))


def _settle(fresh: Path, folder: Path) -> None:
    """Give finished work its name, and drop old work; another build may be doing the same beside us."""
    fresh.chmod(0o755)
    try:
        fresh.rename(folder)
    except OSError:
        if not folder.is_dir():
            raise
        shutil.rmtree(fresh)
    newest_first = sorted(folder.parent.iterdir(), key=lambda path: path.stat().st_mtime, reverse=True)
    for old in newest_first[KEPT_BUILDS:]:
        shutil.rmtree(old, ignore_errors=True)


def _unpacked(archive: Path) -> Path:
    folder = Path(tempfile.mkdtemp(prefix="library-", dir=CACHE / "tmp"))
    with zipfile.ZipFile(archive) as source:
        source.extractall(folder)
    return folder
