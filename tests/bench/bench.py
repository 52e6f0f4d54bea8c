"""Measure the budgets of the engine in Chromium, as ratios to a stock start taken in the same run, and print them as a table.

Each start is taken in a page of its own, from the making of the worker to the first answer, stock and ours in turn so that a
busy machine burdens both. Files are local for all: the browser has fetched them once before. Exit code 1 when a budget is missed.
"""

from __future__ import annotations

import gzip
import json
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import zipfile
from collections.abc import Callable, Sequence
from pathlib import Path

from playwright.sync_api import BrowserContext, sync_playwright

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from site_src.builder import setup  # noqa: E402
from site_src.builder.serve import serving  # noqa: E402
from tests.bench.balance import seconds_of_balance  # noqa: E402
from tests.bench.cure import seconds_of_cure  # noqa: E402

ROUNDS = 5
STOCK_WHEELS = ("pint", "flexcache", "flexparser", "platformdirs", "typing-extensions")
DEEP = {"call": "begin", "args": {"id": "how-deep-how-hot", "units": "metric", "confirmed": {}, "inputs": {
    "pot_life": "11 h", "deepest": "50", "depth": "40", "length": "600", "width": "300", "room": "22"}}}
REQUEST = {"call": "begin", "args": {"id": "how-fast", "inputs": {"diameter": "350 mm"}, "units": "metric", "confirmed": {}}}

STOCK_START = """([wheels, request]) => new Promise((resolve, reject) => {
  const began = performance.now();
  const worker = new Worker('/stock-worker.js', { type: 'module' });
  worker.onerror = (event) => reject(new Error(event.message));
  worker.onmessage = ({ data }) => resolve({ ms: performance.now() - began, reply: JSON.parse(data) });
  worker.postMessage({ wheels, request });
})"""
OUR_START = """async ([client, request, keep]) => {
  const { DeskClient } = await import(client);
  const desk = (globalThis.desk = new DeskClient());
  const kept = new Promise((resolve) => desk.addEventListener('kept', () => resolve(true)));
  const made = new Promise((resolve) => desk.addEventListener('launched', () => resolve(performance.now()), { once: true }));
  const result = await desk.call(request.call, request.args);
  const ms = performance.now() - (await made);
  if (keep) await kept;
  return { ms, reply: { result }, way: desk.started.way };
}"""
KEYSTROKES = """async ([client, request, count]) => {
  const { DeskClient } = await import(client);
  const desk = new DeskClient();
  await desk.call(request.call, request.args);
  const times = [];
  for (let round = 0; round < count; round++) {
    const args = { ...request.args, inputs: { diameter: `${200 + (round % 300)} mm` } };
    const began = performance.now();
    await desk.call(request.call, args);
    times.push(performance.now() - began);
  }
  return times;
}"""
LONG_WORK = """async ([client, request, count]) => {
  const { DeskClient } = await import(client);
  const desk = new DeskClient();
  await desk.call(request.call, request.args);
  const times = [];
  for (let round = 0; round < count; round++) {
    request.args.inputs.depth = String(30 + 2 * round); // another pour each time: nothing is remembered
    const began = performance.now();
    const { headline } = await desk.call(request.call, request.args);
    times.push(performance.now() - began);
    if (!headline) throw new Error('no answer');
  }
  return times;
}"""
FORGET_SNAPSHOT = "async () => { for (const name of await caches.keys()) if (name.includes('snapshot')) await caches.delete(name); }"


def main() -> int:
    """Measure, print, judge."""
    chromium = json.loads(os.environ["BLANKWRIGHT_ENGINES"])["chromium"]["path"] or None
    with tempfile.TemporaryDirectory() as scratch:
        wheels = lay_out_stock(Path(scratch, "stock"))
        with (
            sync_playwright() as playwright,
            serving(Path(scratch, "stock")) as stock,
            serving(ROOT / "dist") as ours,
            playwright.chromium.launch_persistent_context(
                str(Path(scratch, "profile")), executable_path=chromium, args=["--no-sandbox"]
            ) as browser,
        ):
            times = measure(browser, stock, ours, wheels)
    return report(times)


def measure(browser: BrowserContext, stock: str, ours: str, wheels: Sequence[str]) -> dict[str, list[float]]:
    """Times in ms: each way to start, answers after a keystroke, the simulation of a deep pour."""
    client = ours + next((ROOT / "dist").glob("assets/*/js/desk-client.js")).relative_to(ROOT / "dist").as_posix()
    page_url = ours + "engine/licences.txt"  # a page on which nothing of ours starts by itself

    def fresh(url: str, script: str, argument: object) -> dict[str, object]:
        page = browser.new_page()
        page.goto(url)
        found: dict[str, object] = page.evaluate(script, argument)
        page.close()
        return found

    def stock_start() -> float:
        return timed(fresh(stock, STOCK_START, [list(wheels), json.dumps(REQUEST)]))

    def plain_start(keep: bool = False) -> float:
        page = browser.new_page()
        page.goto(page_url)
        page.evaluate(FORGET_SNAPSHOT)
        page.close()
        return timed(fresh(page_url, OUR_START, [client, REQUEST, keep]), "plain")

    def later_start() -> float:
        return timed(fresh(page_url, OUR_START, [client, REQUEST, False]), "snapshot")

    stock_start()  # these two fetch everything: not counted
    fresh(page_url, OUR_START, [client, REQUEST, False])
    times: dict[str, list[float]] = {"stock": [], "plain": [], "later": []}
    for number in range(ROUNDS):
        setup.say(f"round {number + 1} of {ROUNDS}")
        times["stock"].append(stock_start())
        times["plain"].append(plain_start(keep=True))
        times["later"].append(later_start())
    times["keystroke"] = fresh(page_url, KEYSTROKES, [client, REQUEST, 300])  # type: ignore[assignment]
    times["deep"] = fresh(page_url, LONG_WORK, [client, DEEP, ROUNDS])  # type: ignore[assignment]
    return times


def timed(found: dict[str, object], way: str = "") -> float:
    """The time of one start, after a look at what it answered."""
    reply = found["reply"]
    if not isinstance(reply, dict) or not reply["result"]["headline"] or (way and found["way"] != way):
        raise SystemExit(f"bench: not the start or the answer that was asked for: {json.dumps(found)[:300]}")
    return float(found["ms"])  # type: ignore[arg-type]


def lay_out_stock(folder: Path) -> list[str]:
    """A folder to serve with stock Pyodide, stock wheels and the source of `calc`; returns the names of the wheels."""
    folder.mkdir()
    shutil.copytree(setup.pyodide(), folder / "pyodide")
    shutil.copyfile(Path(__file__).with_name("stock-worker.js"), folder / "stock-worker.js")
    (folder / "index.html").write_text("<!doctype html><title>Stock</title>", encoding="utf-8")
    lock = (setup.VENDOR / "build.lock").read_text(encoding="utf-8").split("\n")
    starts = [number for number, line in enumerate(lock) if line and not line.startswith(" ")]
    blocks = ["\n".join(lock[start:end]) for start, end in zip(starts, [*starts[1:], len(lock)], strict=True)]
    chosen = [block for block in blocks if block.split("==")[0] in STOCK_WHEELS]
    (folder / "stock.lock").write_text("\n".join(chosen), encoding="utf-8")
    subprocess.run([str(setup.venv_python()), "-m", "pip", "download", "-q", "--require-hashes", "--no-deps", "--only-binary", ":all:",
                    "-d", str(folder / "wheels"), "-r", str(folder / "stock.lock")], check=True, env=setup.surroundings(), stderr=subprocess.DEVNULL)
    with zipfile.ZipFile(folder / "calc-source.zip", "w", zipfile.ZIP_DEFLATED) as target:
        for path in sorted((ROOT / "calc").rglob("*")):
            if path.is_file() and "__pycache__" not in path.parts:
                target.write(path, path.relative_to(ROOT))
    return sorted(path.name for path in (folder / "wheels").glob("*.whl"))


def report(times: dict[str, list[float]]) -> int:
    """Print the table; 0 when every budget is kept."""
    middle = {name: statistics.median(measured) for name, measured in times.items()}
    dist = ROOT / "dist"

    def packed(pattern: str) -> float:
        return sum(len(gzip.compress(path.read_bytes(), 9)) for path in dist.glob(pattern) if path.is_file() and path.suffix != ".gz")

    engine = sum(path.stat().st_size for path in dist.glob("engine/*/*.gz"))
    ordered = sorted(times["keystroke"])
    ours, scipys = seconds_of_cure()
    woods, plain = seconds_of_balance()
    rows: list[tuple[str, float, float, Callable[[float], str]]] = [
        ("later start / stock start", middle["later"] / middle["stock"], 0.15, "{:.3f}".format),
        ("first start, files local / stock start", middle["plain"] / middle["stock"], 0.45, "{:.3f}".format),
        ("answer after a keystroke, median, ms", middle["keystroke"], 20, "{:.1f}".format),
        ("answer after a keystroke, p95, ms", ordered[int(len(ordered) * 0.95)], 60, "{:.1f}".format),
        ("How deep and how hot?, whole, ms", middle["deep"], 1500, "{:.0f}".format),
        ("cure of a deep pour, our time / scipy's", ours / scipys, 1, "{:.2f}".format),
        ("balance of three woods / plain answer", woods / plain, 6, "{:.1f}".format),
        ("engine compressed, MB", engine / 1e6, 6.5, "{:.2f}".format),
        ("style compressed, kB", packed("assets/*/css/*") / 1e3, 14, "{:.1f}".format),
        ("scripts compressed, kB", (packed("assets/*/js/**/*") + packed("assets/*/worker/*") + packed("sw.js")) / 1e3, 40, "{:.1f}".format),
    ]
    print("\nin ms, median of", ROUNDS, "starts each:", ", ".join(f"{name} {time:.0f}" for name, time in middle.items()))
    print(f"cure of a deep pour in ms, in this Python: ours {ours * 1e3:.0f}, scipy's {scipys * 1e3:.0f}")
    print(f"\n{'what':42} {'measured':>9} {'budget':>7}")
    for what, measured, budget, write in rows:
        print(f"{what:42} {write(measured):>9} {budget:>7} {'' if measured <= budget else '  MISSED'}")
    return int(any(measured > budget for _, measured, budget, _ in rows))


if __name__ == "__main__":
    sys.exit(main())
