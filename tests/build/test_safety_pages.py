"""The safety pages as built: whole with no script, one press from everywhere, sourced, and never a promise."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest

from calc.safety import reading

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


@pytest.mark.parametrize("page", SAFETY)
def test_no_safety_page_promises(dist: Path, page: str) -> None:
    assert not re.search(r"\b(safe|safely|ok|okay|approved)\b", text_of(dist, page), re.IGNORECASE)


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
        ("how-fast", ["C5", "C6"]),
        ("will-the-mount-hold", ["C5", "C6", "C10"]),
        ("which-grit-next", ["C7"]),
        ("pot-or-vacuum", ["C8", "C9", "C10"]),
        ("before-a-pour", ["C0", "C1", "C2", "C3", "C10", "C11"]),
    ],
)
def test_each_list_is_led_to_from_before_its_point_of_no_return(dist: Path, question: str, ids: list[str]) -> None:
    source = (dist / question / "index.html").read_text(encoding="utf-8")
    for id in ids:
        assert f"{EVERYTHING['checklists'][id]['question']}/{id.lower()}/" in source


@pytest.mark.parametrize("id", LISTS)
def test_a_list_opens_with_its_glove_banner(dist: Path, id: str) -> None:
    one = EVERYTHING["checklists"][id]
    assert f"{EVERYTHING['gloves'][one['gloves']]} {one['gloves_more']}" in text_of(dist, LISTS[id])
