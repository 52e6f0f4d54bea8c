"""The tests of `calc` once more, inside the Python that the browser runs."""

from __future__ import annotations

import re
import subprocess

from site_src.builder import engine, setup

AGAIN = ("tests/unit", "tests/published", "tests/property", "tests/api")


def test_calc_gives_the_same_in_pyodide() -> None:
    command = engine.run_in_pyodide(
        setup.ROOT / "tests" / "pyodide" / "run_pytest.py", *AGAIN, wheels=setup.pyodide_wheels(),
        mounts={"/repository": setup.ROOT, "/engine": engine.engine().folder})
    done = subprocess.run(command, capture_output=True, text=True, timeout=1500, env=setup.surroundings(), check=False)
    out = "\n".join(line[:400] for line in (done.stdout + done.stderr).splitlines()[-80:])
    assert done.returncode == 0, out
    summary = next(line for line in reversed(done.stdout.splitlines()) if " passed" in line)
    assert int(re.findall(r"(\d+) passed", summary)[0]) > 100
    assert "skipped" not in summary and "failed" not in summary
