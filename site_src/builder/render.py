"""Turn content, templates and the declarations of `calc` into the pages of the site.

Data in, data out: `render_pages` returns the text of every page by its path in the finished site, `stylesheet` the one
style sheet. Writing them to disk is `build.py`'s task. Every link in a page is relative, so the site works under any path of
a host; only the page shown for a wrong address needs to know that path.

A content file is markdown with a short front matter::

    ---
    title: What it will not do
    path: about/
    template: page.html
    ---
    Text. A link to [a page](/how-fast/) is written from the root and made relative here.

Unknown front-matter keys, a missing title, a question without prose and a link that leads nowhere stop the build with
the file and the line.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path
from typing import Any
from urllib.parse import urldefrag

import markdown
from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from calc import desk, sources

from . import review
from .squeeze import squeeze_css

FRONT_KEYS = frozenset(
    {"title", "path", "template", "summary", "lead", "moment", "order", "back", "question", "run", "hazard", "lists"}
)
MOMENTS = ("before the pour", "at the bench", "at the lathe")
QUESTION_PROSE = "questions"
DECLARED = {"title": "name", "order": "order", "moment": "moment", "summary": "summary"}
STYLE_ORDER = ("tokens.css", "base.css", "layout.css", "components", "print.css")
CONTENT_SECURITY_POLICY = (
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; connect-src 'self'; style-src 'self'; "
    "img-src 'self' data:; manifest-src 'self'; base-uri 'none'; form-action 'none'"
)


class RenderError(Exception):
    """A page that cannot be made; the text names the file, the line where there is one, and what to do."""


@dataclass(frozen=True)
class Page:
    """One page before rendering: front matter, prose as HTML and, for a question, its declaration."""

    path: str
    title: str
    template: str
    front: Mapping[str, str]
    body: Markup
    source: str
    declaration: Mapping[str, Any] | None = None

    @property
    def depth(self) -> int:
        """How many folders the page lies below the root."""
        return self.path.count("/")

    @property
    def root(self) -> str:
        """The relative way from the page to the root of the site."""
        return "../" * self.depth or "./"

    @property
    def output(self) -> str:
        """The file this page is written to."""
        return self.path if self.path.endswith(".html") else f"{self.path}index.html"


def render_pages(
    source: Path, *, assets: Mapping[str, str] | None = None, base_path: str = "/", version: str = ""
) -> dict[str, str]:
    """Render every page.

    `assets` maps the plain name of an asset (``css/site.css``) to the name it has in the finished site; without it the
    plain names stay. `base_path` is used by the page for wrong addresses only.
    """
    catalogue = ask_desk("catalogue")
    pages = [*load_pages(source / "content"), *question_pages(source / "content", catalogue)]
    check_paths(pages)
    environment = make_environment(source / "templates")
    by_path = {page.path: page for page in pages}
    shared = {
        "catalogue": catalogue,
        "pages": sorted(pages, key=lambda page: (int(page.front.get("order", "99")), page.title)),
        "moments": MOMENTS,
        "policy": CONTENT_SECURITY_POLICY,
        "sources": list(sources.bibliography().values()),
        "version": version,
        "desk": ask_desk,
        "review": review.review,
    }
    rendered = {}
    for page in pages:
        root = base_path if page.path == "404.html" else page.root
        template = environment.get_template(page.template)
        rendered[page.output] = template.render(
            shared,
            page=page,
            front=page.front,
            root=root,
            url=relative_url(root, by_path, page),
            asset=asset_url(root, assets, page),
            body=Markup(make_relative(str(page.body), root)),
            question=page.declaration,
        )
    check_links(rendered, base_path)
    return rendered


def stylesheet(source: Path) -> str:
    """The one style sheet of the site: all sheets in their order, comments and spare white space taken out."""
    folder = source / "css"
    sheets: list[Path] = []
    for name in STYLE_ORDER:
        place = folder / name
        sheets += sorted(place.glob("*.css")) if place.is_dir() else [place] if place.exists() else []
    known = set(sheets)
    stray = sorted(path for path in folder.rglob("*.css") if path not in known)
    if stray:
        raise RenderError(f"{stray[0].name}: a style sheet belongs in css/components/ or in the list in render.py")
    return squeeze_css("\n".join(path.read_text(encoding="utf-8") for path in sheets))


# Content


def load_pages(folder: Path) -> list[Page]:
    """The pages written as content, question prose left out."""
    files = [path for path in sorted(folder.rglob("*.md")) if path.parent.name != QUESTION_PROSE]
    pages = []
    for path in files:
        front, body = read_content(path)
        for key in ("title", "path", "template"):
            if key not in front:
                raise RenderError(f"{path.name}: the front matter has no '{key}'")
        declaration = ask_desk("describe", id=front["question"]) if "question" in front else None
        if front.get("moment", MOMENTS[0]) not in MOMENTS:
            raise RenderError(f"{path.name}: 'moment' must be one of {', '.join(MOMENTS)}")
        pages.append(Page(tidy_path(front["path"]), front["title"], front["template"], front, body, path.name, declaration))
    return pages


def question_pages(folder: Path, catalogue: Iterable[Mapping[str, Any]]) -> list[Page]:
    """One page for each declared question, with the prose that belongs to it."""
    pages = []
    for entry in catalogue:
        identity = str(entry["id"])
        path = folder / QUESTION_PROSE / f"{identity}.md"
        if not path.exists():
            raise RenderError(f"content/{QUESTION_PROSE}/{identity}.md is missing: every question has prose of its own")
        front, body = read_content(path)
        front = {key: str(entry[name]) for key, name in DECLARED.items()} | front
        declaration = ask_desk("describe", id=identity)
        template = front.get("template", "question.html")
        pages.append(Page(f"{identity}/", front["title"], template, front, body, path.name, declaration))
    return pages


def read_content(path: Path) -> tuple[dict[str, str], Markup]:
    """Front matter and prose of one content file."""
    lines = path.read_text(encoding="utf-8").split("\n")
    if lines[0].strip() != "---" or "---" not in [line.strip() for line in lines[1:]]:
        raise RenderError(f"{path.name}:1: a content file starts with front matter between two lines of '---'")
    end = next(number for number, line in enumerate(lines) if number and line.strip() == "---")
    front: dict[str, str] = {}
    for number, line in enumerate(lines[1:end], start=2):
        key, colon, value = line.partition(":")
        if not line.strip():
            continue
        if not colon or key.strip() not in FRONT_KEYS:
            raise RenderError(f"{path.name}:{number}: unknown front matter '{line.strip()}'")
        front[key.strip()] = value.strip()
    prose = markdown.markdown("\n".join(lines[end + 1 :]), extensions=["tables", "attr_list", "sane_lists", "def_list"])
    return front, Markup(prose)


def tidy_path(path: str) -> str:
    """A page's address without a leading slash and, for a folder, with one at its end; the home page is the empty path."""
    plain = path.strip("/")
    return plain if plain == "" or plain.endswith(".html") else f"{plain}/"


# The door to calc


def ask_desk(call: str, **arguments: Any) -> Any:
    """Ask `calc` through the same door, in the same JSON, as a page does."""
    reply = json.loads(desk.handle(json.dumps({"call": call, "args": arguments})))
    if not reply["ok"]:
        raise RenderError(f"calc refused '{call}' for the pages: {reply['error']['message']}")
    return reply["result"]


# Templates and addresses


def make_environment(templates: Path) -> Environment:
    """Jinja with every guard on: escaping, and no name that is not there."""
    environment = Environment(
        loader=FileSystemLoader(templates), autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
    environment.filters["lower_first"] = lambda text: text[:1].lower() + text[1:]
    environment.filters["json"] = lambda value: json.dumps(value, ensure_ascii=False, sort_keys=True)
    return environment


def relative_url(root: str, pages: Mapping[str, Page], page: Page) -> Callable[[str], str]:
    """A function for templates: the address of another page, refused where there is no such page."""

    def url(path: str) -> str:
        plain, fragment = urldefrag(path)
        if plain not in pages:
            raise RenderError(f"{page.source}: {page.template} links to '{path}', and there is no such page")
        return (root + plain) + (f"#{fragment}" if fragment else "")

    return url


def asset_url(root: str, assets: Mapping[str, str] | None, page: Page) -> Callable[[str], str]:
    """A function for templates: the address of a style sheet, script or picture."""

    def asset(name: str) -> str:
        if assets is not None and name not in assets:
            raise RenderError(f"{page.source}: {page.template} asks for '{name}', and there is no such file")
        return root + (assets[name] if assets is not None else name)

    return asset


def make_relative(html: str, root: str) -> str:
    """Prose writes addresses from the root; pages need them relative."""
    return re.sub(r'(href|src)="/(?!/)', lambda match: f'{match[1]}="{root}', html)


# Checks


def check_paths(pages: Iterable[Page]) -> None:
    """Two pages may not want the same address."""
    taken: dict[str, str] = {}
    for page in pages:
        if page.path in taken:
            raise RenderError(f"{page.source}: the address '{page.path}' is already taken by {taken[page.path]}")
        taken[page.path] = page.source


class LinkReader(HTMLParser):
    """Collects what a page links to and which fragments it offers."""

    def __init__(self) -> None:
        super().__init__()
        self.links: list[tuple[int, str]] = []
        self.names: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        values = dict(attrs)
        if values.get("id"):
            self.names.add(str(values["id"]))
        if tag == "a" and values.get("href"):
            self.links.append((self.getpos()[0], str(values["href"])))


def check_links(rendered: Mapping[str, str], base_path: str) -> None:
    """Every link inside the site must lead to a page, and every fragment to a place on it."""
    readers: dict[str, LinkReader] = {}
    for output, text in rendered.items():
        readers[output] = LinkReader()
        readers[output].feed(text)
    for output, reader in readers.items():
        for line, link in reader.links:
            if re.match(r"[a-z]+:", link):
                continue
            target, fragment = urldefrag(link)
            if output == "404.html" and target.startswith(base_path):
                found = target[len(base_path) :]
            else:
                found = resolve(output, target)
            found = output if target == "" else found + "index.html" if found == "" or found.endswith("/") else found
            if found not in readers:
                raise RenderError(f"{output}:{line}: the link '{link}' leads nowhere")
            if fragment and fragment not in readers[found].names:
                raise RenderError(f"{output}:{line}: the link '{link}' names a place that is not on that page")


def resolve(output: str, target: str) -> str:
    """The path that a relative link on the page `output` leads to."""
    parts = output.split("/")[:-1]
    for part in target.split("/"):
        if part == "..":
            parts = parts[:-1]
        elif part != ".":
            parts.append(part)
    return "/".join(parts)
