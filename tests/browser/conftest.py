"""Browsers, the built site and makers for the browser tests.

`build.py test` says in BLANKWRIGHT_ENGINES which browser engines to use and where they are; without it all three must be
on the machine. An engine that is missing fails the run. A test takes `maker` and runs in every engine, or takes
`chromium` and runs there only. Browsers are shared by the whole run, because starting one costs more than most tests; each
test starts with empty records, and one that changes more has an origin of its own (`visit`).
"""

from __future__ import annotations

import json
import os
import shutil
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.browser.engines import ENGINES, Chromium, Engine, finish
from tests.browser.hosting import PREFIX, Site
from tests.browser.maker import Maker

ROOT = Path(__file__).resolve().parents[2]


def _settings() -> dict[str, dict[str, str]]:
    if "BLANKWRIGHT_ENGINES" in os.environ:
        return dict(json.loads(os.environ["BLANKWRIGHT_ENGINES"]))
    from site_src.builder import setup

    found = {name: setup._present(name) for name in ENGINES}
    return {name: {"path": browser.path, "driver": browser.driver} if browser else {} for name, browser in found.items()}


WANTED = _settings()


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Take out what the engines named by the caller cannot run; with all three nothing is taken out."""
    here = Path(__file__).parent

    def runs(item: pytest.Item) -> bool:
        if not item.path.is_relative_to(here):
            return True
        names = getattr(item, "fixturenames", ())
        if "chromium" in names or "bent" in names:
            return "chromium" in WANTED
        return bool(WANTED) or "browser" not in names
    out = [item for item in items if not runs(item)]
    if out:
        config.hook.pytest_deselected(items=out)
        items[:] = [item for item in items if runs(item)]


def make(name: str, profile: Path) -> Engine:
    """A browser that is not started yet."""
    settings = WANTED.get(name)
    if not settings:
        pytest.fail(f"the browser engine {name} is not on this machine")
    return ENGINES[name](profile, settings["path"], settings["driver"])


# --- The site ------------------------------------------------------------------------------------------------------------


def build_into(out: Path, source: Path | None = None) -> Path:
    """Build the site, from the sources or from a changed copy of them."""
    sys.path.insert(0, str(ROOT))
    try:
        import build
    finally:
        sys.path.remove(str(ROOT))
    kept = build.SOURCE
    build.SOURCE = source or kept
    try:
        build.make_site(out, PREFIX)
    finally:
        build.SOURCE = kept
    return out


@pytest.fixture(scope="session")
def dist(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site as it is now, built once; BLANKWRIGHT_DIST names a finished one instead."""
    given = os.environ.get("BLANKWRIGHT_DIST")
    return Path(given) if given else build_into(tmp_path_factory.mktemp("built") / "dist")


@pytest.fixture(scope="session")
def pages(dist: Path) -> list[str]:
    """Addresses of all pages of the site, the home page first."""
    return [path.parent.relative_to(dist).as_posix().removeprefix(".") + "/" * (path.parent != dist) for path in sorted(dist.rglob("index.html"))]


@pytest.fixture(scope="session")
def next_dist(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The next release: another sentence on the first page, another line in a script; or the one BLANKWRIGHT_NEXT_DIST names."""
    given = os.environ.get("BLANKWRIGHT_NEXT_DIST")
    if given:
        return Path(given)
    folder = tmp_path_factory.mktemp("next")
    source = folder / "site_src"
    shutil.copytree(ROOT / "site_src", source, ignore=shutil.ignore_patterns("__pycache__"))
    for file, more in {"content/home.md": "This is the next release.", "js/spell.js": "export const release = 'next';"}.items():
        with (source / file).open("a", encoding="utf-8") as out:
            out.write(f"\n{more}\n")
    return build_into(folder / "dist", source)


@pytest.fixture(scope="session")
def site(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    """The site that most tests visit; it is never spoilt."""
    served = Site(tmp_path_factory.mktemp("site"), dist)
    yield served
    served.stop()


@pytest.fixture(scope="module")
def damaged_site(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    """A site whose copy on the device a whole file of tests damages; each test leaves it mended."""
    served = Site(tmp_path_factory.mktemp("damaged"), dist)
    yield served
    served.stop()


@pytest.fixture
def own_site(dist: Path, tmp_path: Path) -> Iterator[Site]:
    """A site on a port, and so an origin, of its own: nothing is kept for it yet, and it may be spoilt."""
    served = Site(tmp_path / "site", dist)
    yield served
    served.stop()


# --- Browsers ------------------------------------------------------------------------------------------------------------


@pytest.fixture(scope="session", autouse=True)
def _end() -> Iterator[None]:
    yield
    finish()


@pytest.fixture(scope="session")
def _chromium(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    engine = make("chromium", tmp_path_factory.mktemp("chromium"))
    engine.start()
    yield engine
    engine.stop()


@pytest.fixture(scope="session", params=list(WANTED) or ["none"])
def browser(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    """Each engine in turn, started once for the whole run."""
    if request.param == "chromium":
        yield request.getfixturevalue("_chromium")
        return
    engine = make(request.param, tmp_path_factory.mktemp(request.param))
    engine.start()
    yield engine
    engine.stop()


def _fresh(engine: Engine, site: Site) -> Maker:
    engine.resize(360, 740)
    maker = Maker(engine, site)
    maker.forget()
    engine.problems.clear()
    engine.asked.clear()
    return maker


def _no_problems(engine: Engine) -> None:
    assert engine.problems == [], "the browser's console has errors"


@pytest.fixture
def maker(browser: Engine, site: Site) -> Iterator[Maker]:
    """A maker with a phone, in every engine; records empty, and no error on the console at the end."""
    yield _fresh(browser, site)
    _no_problems(browser)


@pytest.fixture
def chromium(_chromium: Chromium, site: Site) -> Iterator[Maker]:
    """A maker with a phone, in Chromium only; permissions that the test gave, and those it thereby took, are put back."""
    yield _fresh(_chromium, site)
    _chromium.page.context.clear_permissions()
    _no_problems(_chromium)


@pytest.fixture
def visitor(browser: Engine, own_site: Site) -> Maker:
    """A maker who never was here, in every engine; the site is the test's own."""
    browser.resize(360, 740)
    browser.problems.clear()
    browser.asked.clear()
    return Maker(browser, own_site)


@pytest.fixture
def bent(tmp_path: Path) -> Iterator[Callable[..., Chromium]]:
    """Makes a Chromium of its own that is bent: flags, a script before the page's own, no scripts at all, a scale."""
    made: list[Chromium] = []

    def start(**how: object) -> Chromium:
        engine = make("chromium", tmp_path / f"bent{len(made)}")
        assert isinstance(engine, Chromium)
        for name, value in how.items():
            setattr(engine, name, value)
        engine.start()
        made.append(engine)
        return engine
    yield start
    for engine in made:
        engine.stop()
