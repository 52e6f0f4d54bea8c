"""The tests of `calc` once more, inside the Python that the browser runs."""

from __future__ import annotations

import re
import subprocess
import tempfile
from functools import cache
from pathlib import Path

from site_src.builder import engine, setup

AGAIN = ("tests/unit", "tests/published", "tests/property", "tests/api")


@cache
def begun() -> tuple[subprocess.Popen[bytes], Path]:
    """The run, started once, and the file that it writes to; tests/conftest.py starts it beside the tests of the build."""
    command = engine.run_in_pyodide(
        setup.ROOT / "tests" / "pyodide" / "run_pytest.py", *AGAIN, wheels=setup.pyodide_wheels(),
        mounts={"/repository": setup.ROOT, "/engine": engine.engine().folder})
    out = Path(tempfile.mkstemp(prefix="pyodide-", dir=setup.CACHE / "tmp")[1])
    with out.open("wb") as file:
        return subprocess.Popen(command, stdout=file, stderr=subprocess.STDOUT, env=setup.surroundings()), out


def test_calc_gives_the_same_in_pyodide() -> None:
    run, out = begun()
    code = run.wait(timeout=1500)
    text = out.read_text(encoding="utf-8", errors="replace")
    out.unlink()
    lines = text.splitlines()
    assert code == 0, "\n".join(line[:400] for line in lines[-80:])
    summary = next(line for line in reversed(lines) if " passed" in line)
    assert int(re.findall(r"(\d+) passed", summary)[0]) > 100
    assert "skipped" not in summary and "failed" not in summary
