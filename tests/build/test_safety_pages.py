"""The safety pages as built: whole with no script, one press from everywhere, sourced, and never a promise."""

from __future__ import annotations

import ast
import html
import itertools
import re
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from calc.questions import all_questions
from calc.safety import reading
from tests.build.conftest import ROOT

EVERYTHING = reading.everything()
LISTS = {id: f"{one['question']}/{id.lower()}/index.html" for id, one in EVERYTHING["checklists"].items()}
PAGES = ("before-a-pour", "before-the-lathe", "pot-or-vacuum", "emergency", "respirator", "hazards", "review", "review/figures")
SAFETY = [*LISTS.values(), *(f"{page}/index.html" for page in PAGES)]
SCRIPT_ONLY = re.compile(r"<(template|dialog)\b.*?</\1>", re.DOTALL)


def text_of(dist: Path, page: str) -> str:
    """The words of a page's main part, as a reader without script gets them."""
    source = (dist / page).read_text(encoding="utf-8")
    main = source.split("<main", 1)[1].split("</main>", 1)[0]
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", SCRIPT_ONLY.sub("", main))).split())


@pytest.mark.parametrize("id", LISTS)
def test_a_list_is_there_line_by_line_with_no_script(dist: Path, id: str) -> None:
    text = text_of(dist, LISTS[id])
    place = 0
    for item in EVERYTHING["checklists"][id]["items"]:
        found = text.find(item["text"], place)
        assert found >= 0, item["text"]
        place = found
        assert item["why"] in text
        assert any(fact["source"] in text for fact in item["facts"])


def test_every_card_is_there_with_no_script_and_none_has_a_number(dist: Path) -> None:
    text = text_of(dist, "emergency/index.html")
    for card in EVERYTHING["cards"]:
        for step in card["steps"]:
            words = " ".join(step.replace("{number}", EVERYTHING["no_number"]).split())
            assert words in re.sub(r" ([,.;])", r"\1", text), words
    assert not re.search(r"\b(911|112|999)\b", text)


def test_each_card_can_be_linked_to(dist: Path) -> None:
    source = (dist / "emergency/index.html").read_text(encoding="utf-8")
    for card in EVERYTHING["cards"]:
        assert f'id="{card["id"]}"' in source and f'href="#{card["id"]}"' in source


def test_the_respirator_page_names_both_regions_and_what_is_not_enough(dist: Path) -> None:
    text = text_of(dist, "respirator/index.html")
    for region in EVERYTHING["respirators"]["region"]:
        assert region["name"] in text
    for task in EVERYTHING["respirators"]["task"]:
        assert task["us"] in text and task["eu"] in text and task["not_enough"] in text


@pytest.mark.parametrize("page", SAFETY)
def test_the_standing_words_are_at_the_foot(dist: Path, page: str) -> None:
    text = text_of(dist, page)
    for line in EVERYTHING["standing"]:
        assert line in text


PROMISE = re.compile(r"\b(safe|safely|ok|okay|approved|guaranteed?)\b", re.IGNORECASE)
#: The one sentence that may say the word: it says that nothing is called so.
REFUSES = "It does not call anything safe."


def test_no_page_promises(dist: Path) -> None:
    """Every page, with what its script may show: templates, and texts that stand in attributes."""
    for page in dist.rglob("*.html"):
        source = page.read_text(encoding="utf-8")
        words = " ".join(html.unescape(re.sub(r"<[^>]+>", " ", source)).split()).replace(REFUSES, "")
        told = [text for text in re.findall(r"""="([^"]* [^"]*)\"""", source) if PROMISE.search(html.unescape(text))]
        assert not PROMISE.findall(words) and not told, page


def test_no_text_of_the_arithmetic_promises() -> None:
    """Every text in the code of calc, docstrings apart, and every line of its data: whatever an answer is put together from."""
    for path in (ROOT / "calc").rglob("*.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        notes = {id(node.body[0].value) for node in ast.walk(tree) if isinstance(node, (ast.Module, ast.ClassDef, ast.FunctionDef))
                 and node.body and isinstance(node.body[0], ast.Expr)}  # fmt: skip
        texts = [node.value for node in ast.walk(tree) if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in notes]
        assert not [text for text in texts if " " in text and PROMISE.search(text)], path
    for path in (ROOT / "calc" / "data").iterdir():
        assert not PROMISE.findall(path.read_text(encoding="utf-8")), path


@pytest.mark.parametrize("path", sorted((ROOT / "site_src/js").rglob("*.js")), ids=lambda path: path.stem)
def test_no_script_words_a_promise(path: Path) -> None:
    assert not [text for text in re.findall(r"""['"`]([^'"`\n]* [^'"`\n]*)['"`]""", path.read_text(encoding="utf-8")) if PROMISE.search(text)]


@pytest.mark.parametrize("page", [*LISTS.values(), "emergency/index.html", "respirator/index.html"])
def test_lists_and_cards_are_kept_on_the_device(listed: dict[str, Any], page: str) -> None:
    """Their addresses stand in the service worker's list, which is kept whole: they open with no signal."""
    assert page.removesuffix("index.html") in listed["files"]


class Order(HTMLParser):
    """What stands on a page in the order of its source: headings, banner, lines and their parts."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        assert int(given.get("tabindex", "0")) <= 0, "a tabindex above 0 is out of the reading order"
        told = given.get("data-item") or given.get("data-part") or given.get("class", "").split(" ")[0]
        self.found.append(tag if tag in ("h1", "ol") else told)


@pytest.mark.parametrize("id", LISTS)
def test_a_list_is_read_out_in_its_order(dist: Path, id: str) -> None:
    """Title, banner, then line after line: its words, what its gate says, its press, why. Then how it ended, the buttons, the standing words."""
    order = Order()
    order.feed((dist / LISTS[id]).read_text(encoding="utf-8"))
    lines = [place for place, told in enumerate(order.found) if re.fullmatch(r"C\d+-\d+", told)]
    assert [order.found[place] for place in lines] == [f"{id}-{item['number']}" for item in EVERYTHING["checklists"][id]["items"]]
    for start, end in itertools.pairwise([*lines, order.found.index("outcome")]):
        parts = [told for told in order.found[start:end] if told in ("text", "gate", "gate-word", "gate-text", "gate-action", "stale", "press", "why")]
        assert parts == ["text", "gate", "gate-word", "gate-text", "gate-action", "stale", "press", "why"]
    places = [order.found.index(told) for told in ("h1", "glove-banner", "ol", f"{id}-1", "outcome", "buttons", "bar", "standing")]
    assert places == sorted(places)


def test_no_style_moves_anything_out_of_the_reading_order() -> None:
    for path in (ROOT / "site_src/css").rglob("*.css"):
        assert not re.search(r"[;{\s]order:|row-reverse|column-reverse|grid-auto-flow:[^;]*dense|float:\s*right", path.read_text(encoding="utf-8")), path


@pytest.mark.parametrize("question", sorted({path.stem for path in (ROOT / "site_src/content/questions").glob("*.md")}))
def test_the_standing_words_are_at_the_foot_of_every_question_once(dist: Path, question: str) -> None:
    text = text_of(dist, f"{question}/index.html")
    assert all(text.count(line) == 1 for line in EVERYTHING["standing"])


@pytest.mark.parametrize("page", ["how-fast/card", "how-much-to-weigh/mix"])
def test_the_standing_words_are_below_the_card_and_the_steps(dist: Path, page: str) -> None:
    assert all(line in text_of(dist, f"{page}/index.html") for line in EVERYTHING["standing"])


def test_the_lists_are_linked_in_their_order(dist: Path) -> None:
    for question in ("before-a-pour", "before-the-lathe", "pot-or-vacuum"):
        source = (dist / question / "index.html").read_text(encoding="utf-8")
        places = [source.index(f"{question}/{id.lower()}/") for id, page in LISTS.items() if page.startswith(question)]
        assert len(places) >= 2 and places == sorted(places)
    assert "before-a-pour/c2/" in (dist / LISTS["C1"]).read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("question", "ids"),
    [
        ("when-can-i", ["C4"]),
        ("does-it-fit-the-lathe", ["C4"]),
        ("where-is-the-weight", ["C5"]),
        ("how-much-to-weigh", ["C1"]),
        ("how-much-to-weigh/mix", ["C1", "C3", "C10"]),
        ("before-a-pour/c2", ["C3", "C10"]),
        ("before-a-pour/c3", ["C11"]),
        ("before-the-lathe/c7", ["C11"]),
        ("how-fast", ["C5", "C6"]),
        ("will-the-mount-hold", ["C5", "C6", "C10"]),
        ("which-grit-next", ["C7"]),
        ("why-out-of-true", ["C6"]),
        ("pot-or-vacuum", ["C8", "C9", "C10"]),
        ("before-a-pour", ["C0", "C1", "C2", "C3", "C10", "C11"]),
    ],
)
def test_each_list_is_led_to_from_before_its_point_of_no_return(dist: Path, question: str, ids: list[str]) -> None:
    source = (dist / question / "index.html").read_text(encoding="utf-8")
    for id in ids:
        assert re.search(rf'href="[./]*{EVERYTHING["checklists"][id]["question"]}/{id.lower()}/', source), id


LED_TO = [("how-fast", "C5"), ("how-fast", "C6"), ("will-the-mount-hold", "C5"), ("which-grit-next", "C7"), ("when-can-i", "C4")]


@pytest.mark.parametrize(("question", "id"), LED_TO)
def test_a_list_led_to_from_an_answer_can_take_every_figure_that_is_handed_to_its_question(dist: Path, question: str, id: str) -> None:
    source, page = (dist / question / "index.html").read_text(encoding="utf-8"), (dist / LISTS[id]).read_text(encoding="utf-8")
    assert re.search(rf'data-carry="before-the-lathe" href="[^"]*/{id.lower()}/"', source)
    names = re.search(r'data-names="([^"]*)"', page)
    assert names and names[1].split() == [field.name for field in all_questions()["before-the-lathe"].fields]


def test_the_list_for_hot_glue_goes_where_no_glue_holds_it(dist: Path) -> None:
    page = (dist / "will-the-mount-hold" / "index.html").read_text(encoding="utf-8")
    assert re.search(r'<select[^>]* name="hold"', page) and '<option value="glue"' in page and re.search(r'href="[^"]*/c10/"', page)
    style = "".join(path.read_text(encoding="utf-8") for path in dist.glob("assets/*/css/*"))
    assert re.search(r"""\[name="?hold"?\] option:checked:not\(\[value="?glue"?\]\)\)\s*a\[href\$="?/c10/"?\]\s*\{\s*display:\s*none""", style)


@pytest.mark.parametrize("id", LISTS)
def test_no_gloves_has_its_sign_at_the_lathe_and_nowhere_else(dist: Path, id: str) -> None:
    banner = (dist / LISTS[id]).read_text(encoding="utf-8").split('class="glove-banner', 1)[1].split("</p>", 1)[0]
    assert ('data-sign="P028"' in banner) == (id in ("C5", "C6", "C7")) and "data-sign" not in banner.replace('data-sign="P028"', "")


@pytest.mark.parametrize("id", LISTS)
def test_a_list_opens_with_its_glove_banner(dist: Path, id: str) -> None:
    one = EVERYTHING["checklists"][id]
    assert f"{EVERYTHING['gloves'][one['gloves']]} {one['gloves_more']}" in text_of(dist, LISTS[id])
