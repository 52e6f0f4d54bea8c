"""Take the pictures of the README: the three screens on a phone, as the built site shows them now.

    python build.py build && .venv/bin/python tests/browser/pictures.py

Writes `tests/browser/pictures/*.png`. Look at them before they are committed.
"""

from __future__ import annotations

import os
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from site_src.builder import setup  # noqa: E402
from tests.browser.engines import Chromium, finish  # noqa: E402
from tests.browser.hosting import Site  # noqa: E402
from tests.browser.maker import Maker  # noqa: E402

OUT = Path(__file__).with_name("pictures")


def how_fast(maker: Maker) -> None:
    """The figure and the ladder under it."""
    maker.go("how-fast/")
    maker.enter(diameter="13 3/4 in")
    maker.choose(condition="filled", balance="even", lathe="floor", hold="faceplate")
    maker.ask()


def mixing(maker: Maker) -> None:
    """The step at which A is poured."""
    maker.go("how-much-to-weigh/")
    maker.enter(total="1300", ratio="100:45", working="40")
    maker.choose(by="weight")
    maker.ask()
    maker.follow("Step by step", "how-much-to-weigh/mix/")
    for button in ("It shows 0", "Done as shown", "B goes in now"):
        maker.tap("button", button)
        maker.wait_for("!document.querySelector('[data-pressed]')")
        maker.eval("new Promise((done) => setTimeout(done, 700)).then(() => 1)")
    maker.eval("(document.querySelector('[data-part=stage]').scrollIntoView({ block: 'start' }), 1)")


def checklist(maker: Maker) -> None:
    """The nine lines, one of them ticked."""
    maker.go("before-a-pour/")
    maker.enter(depth="20", sheet_depth="50", room="21", resin="22", lowest="18", highest="28")
    maker.wait_for("!document.getElementById('answer').hidden")
    maker.follow("C1", "before-a-pour/c1/")
    maker.tap(css="[data-part=press] button", within="#c1-1")
    maker.wait_text("1 of 9", css="[data-part=progress]")
    maker.eval("(document.querySelector('#c1-1').scrollIntoView({ block: 'start' }), 1)")


def main() -> int:
    """Take all pictures."""
    found = setup.browsers(["chromium"])["chromium"]
    OUT.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as scratch:
        site = Site(Path(scratch, "site"), Path(os.environ.get("BLANKWRIGHT_DIST", ROOT / "dist")))
        browser = Chromium(Path(scratch, "profile"), found.path)
        browser.scale = 1.5
        try:
            browser.start()
            for take in (how_fast, mixing, checklist):
                take(Maker(browser, site))
                browser.eval("new Promise((done) => setTimeout(done, 700)).then(() => 1)")
                file = OUT / f"{take.__name__.replace('_', '-')}.png"
                file.write_bytes(browser.screenshot())
                print(f"{file.relative_to(ROOT)}: {file.stat().st_size / 1000:.0f} kB")
        finally:
            browser.stop()
            site.stop()
            finish()
    return 0


if __name__ == "__main__":
    sys.exit(main())
