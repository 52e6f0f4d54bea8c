"""Run by Pyodide on Node: compile Python files to bytecode and store them in a zip whose bytes are always the same.

Argument: a plan as a JSON file, ``{"out": zip, "optimize": 0|2, "entries": [[name in the zip, file], ...]}``. Entries that end
in ``.py`` are compiled by the very Python that will run them, as bytecode that is never checked against a source; all
others are copied. The zip is stored, not deflated, so that the whole of it compresses well on the way to the browser.
"""

from __future__ import annotations

import importlib.util
import json
import sys
import zipfile
from importlib._bootstrap_external import _code_to_hash_pyc  # type: ignore[import-not-found]
from pathlib import Path


def compiled(name: str, source: bytes, optimize: int) -> bytes:
    """Unchecked-hash bytecode of one module."""
    code = compile(source, name, "exec", dont_inherit=True, optimize=optimize)
    return bytes(_code_to_hash_pyc(code, importlib.util.source_hash(source), False))


def pack(out: Path, entries: list[tuple[str, str]], optimize: int) -> None:
    """Write the zip, entries in sorted order, all dated 1980."""
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as target:
        for name, file in sorted(entries):
            data = Path(file).read_bytes()
            if name.endswith(".py"):
                name, data = name + "c", compiled(name, data, optimize)
            target.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), data)


if __name__ == "__main__":
    plan = json.loads(Path(sys.argv[1]).read_text(encoding="utf-8"))
    pack(Path(plan["out"]), plan["entries"], plan["optimize"])
