"""The pages as they were built: whole HTML, names for everything, links that lead somewhere, nothing from anywhere else."""

from __future__ import annotations

import itertools
import re
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import urldefrag

import pytest

from tests.build.conftest import DIST

VOID = frozenset("area base br col embed hr img input link meta source track wbr".split())
OPTIONAL_END = frozenset("li p dt dd tr td th thead tbody tfoot option optgroup colgroup".split())
SVG_NAMESPACE = "http://www.w3.org/2000/svg"
PAGES = sorted(path.relative_to(DIST).as_posix() for path in DIST.rglob("*.html"))


class Reader(HTMLParser):
    """Reads a page as a strict person would; notes what is wrong and what is there."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.wrong: list[str] = []
        self.open: list[str] = []
        self.ids: list[str] = []
        self.references: list[tuple[str, str]] = []
        self.loads: list[str] = []
        self.links: list[str] = []
        self.headings: list[int] = []
        self.metas: dict[str, str] = {}
        self.controls: list[dict[str, str]] = []
        self.labelled: set[str] = set()
        self.lang = ""
        self.in_template = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        values = {name: value or "" for name, value in attrs}
        where = f"line {self.getpos()[0]}: <{tag}>"
        if len(values) != len(attrs):
            self.wrong.append(f"{where} has an attribute twice")
        for name in values:
            if name == "style" or name.startswith("on"):
                self.wrong.append(f"{where} has an inline {name}")
        if tag == "style" or (tag == "script" and "src" not in values):
            self.wrong.append(f"{where} is inline")
        if tag == "template":
            self.in_template += 1
        if tag == "html":
            self.lang = values.get("lang", "")
        if tag == "meta":
            self.metas[values.get("name") or values.get("http-equiv") or "charset"] = values.get("content", "")
        if re.fullmatch("h[1-6]", tag) and not self.in_template:
            self.headings.append(int(tag[1]))
        if "id" in values and not self.in_template:
            self.ids.append(values["id"])
        for name in ("for", "aria-describedby", "aria-labelledby", "aria-controls"):
            self.references += [(name, target) for target in values.get(name, "").split() if not self.in_template]
        if tag == "label":
            self.labelled.add(values.get("for", ""))
        if tag in ("input", "select", "textarea") and values.get("type") != "hidden" and not self.in_template:
            self.controls.append({**values, "inside": "label" if "label" in self.open else ""})
        if tag == "img" and "alt" not in values:
            self.wrong.append(f"{where} has no alt text")
        for name in ("src", "srcset", "poster"):
            if name in values:
                self.loads.append(values[name])
        if "href" in values:
            (self.links if tag == "a" else self.loads).append(values["href"])
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        if tag == "template":
            self.in_template -= 1
        while self.open and self.open[-1] != tag and self.open[-1] in OPTIONAL_END:
            self.open.pop()
        if self.open and self.open[-1] == tag:
            self.open.pop()
        else:
            self.wrong.append(f"line {self.getpos()[0]}: </{tag}> closes nothing; open: {' '.join(self.open[-3:])}")


def read(page: str) -> Reader:
    """One page, read."""
    reader = Reader()
    text = (DIST / page).read_text(encoding="utf-8")
    assert text.lower().startswith("<!doctype html>")
    reader.feed(text)
    reader.close()
    return reader


def target_of(page: str, link: str) -> Path:
    """The file that a link on a page leads to."""
    plain = urldefrag(link)[0].split("?")[0]
    if page == "404.html":
        plain = plain.removeprefix("/")
    target = (DIST / page).parent / plain if plain else DIST / page
    return target / "index.html" if target.is_dir() else target


def test_there_are_pages() -> None:
    assert {"index.html", "404.html", "how-fast/index.html", "how-much-to-weigh/index.html", "before-a-pour/index.html",
            "emergency/index.html", "respirator/index.html"} <= set(PAGES)


@pytest.mark.parametrize("page", PAGES)
class TestPage:
    """Every page, one thing at a time."""

    def test_is_whole_html(self, page: str) -> None:
        reader = read(page)
        assert reader.wrong == []
        assert [tag for tag in reader.open if tag not in OPTIONAL_END] == []

    def test_says_its_language_and_name(self, page: str) -> None:
        reader = read(page)
        assert reader.lang == "en"
        assert re.search(r"<title>[^<]{3,}</title>", (DIST / page).read_text(encoding="utf-8"))
        assert reader.metas["viewport"] and reader.metas["description"]

    def test_has_one_first_heading_and_skips_none(self, page: str) -> None:
        headings = read(page).headings
        assert headings.count(1) == 1
        assert all(after <= before + 1 for before, after in itertools.pairwise(headings))

    def test_ids_are_unique_and_referred_to_rightly(self, page: str) -> None:
        reader = read(page)
        assert len(reader.ids) == len(set(reader.ids))
        assert [reference for reference in reader.references if reference[1] not in reader.ids] == []

    def test_every_control_has_a_name(self, page: str) -> None:
        reader = read(page)
        unnamed = [control for control in reader.controls
                   if not (control.get("aria-label") or control.get("aria-labelledby") or control["inside"] or control.get("id") in reader.labelled)]
        assert unnamed == []

    def test_loads_and_links_lead_somewhere_here(self, page: str) -> None:
        reader = read(page)
        ours = [link for link in reader.links if not re.match("(https?|mailto|tel):", link)]
        for address in [*reader.loads, *ours]:
            assert not re.match("([a-z]+:)?//", address), f"{address} is not ours"
            target = target_of(page, address)
            assert target.is_file(), f"{address} leads to nothing"
            fragment = urldefrag(address)[1]
            if fragment and address in ours:
                assert fragment in read(target.resolve().relative_to(DIST).as_posix()).ids, f"{address}: no such place"

    def test_has_the_policy(self, page: str) -> None:
        policy = read(page).metas["Content-Security-Policy"]
        rules = dict(rule.strip().split(" ", 1) for rule in policy.split(";") if rule.strip())
        assert rules == {"default-src": "'none'", "script-src": "'self' 'wasm-unsafe-eval'", "worker-src": "'self'", "connect-src": "'self'",
                         "style-src": "'self'", "img-src": "'self' data:", "manifest-src": "'self'", "base-uri": "'none'",
                         "form-action": "'none'"}

    def test_emergency_is_one_press_away(self, page: str) -> None:
        assert any(target_of(page, link).resolve() == DIST / "emergency" / "index.html" for link in read(page).links)


def test_no_file_of_ours_names_another_origin() -> None:
    """The engine's own text may; it is never asked to go there, which the browser tests watch."""
    for path in sorted(DIST.rglob("*")):
        if path.suffix not in (".html", ".js", ".css", ".svg", ".webmanifest", ".json") or "engine" in path.relative_to(DIST).parts:
            continue
        text = path.read_text(encoding="utf-8").replace(SVG_NAMESPACE, "")
        if path.suffix == ".html":
            text = re.sub(r'<a [^>]*href="https?://[^"]*"', "", text)  # a link a person may follow loads nothing by itself
        assert not re.search(r"(https?:)?//[\w-]+\.[a-z]{2,}", text), path.name


def test_a_page_is_readable_within_60_kB() -> None:
    """The page, the style sheet and the plain scripts before first paint, each compressed."""
    import gzip

    for page in PAGES:
        needed = [DIST / page, *(target_of(page, address) for address in read(page).loads if address.endswith(".css"))]
        needed += [target_of(page, address) for address in re.findall(r'<script src="([^"]+)"', (DIST / page).read_text(encoding="utf-8"))]
        size = sum(len(gzip.compress(path.read_bytes(), 9)) for path in needed)
        assert size <= 60_000, f"{page}: {size} bytes"
