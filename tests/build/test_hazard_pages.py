"""Hazard pages, their signs and the reviewer's tables as built: short, whole with no script, linked where they matter, sourced line by line."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest

from calc import sources
from calc.questions import all_questions
from calc.safety import reading
from calc.safety.facts import all_facts
from site_src.builder import review
from site_src.builder.worded import worded
from tests.build.conftest import ROOT
from tests.build.test_safety_pages import text_of

EVERYTHING = reading.everything()
HAZARDS = EVERYTHING["hazards"]
#: Words a minute, for a reader in no hurry.
READ = 230
#: Where each hazard decides something.
MATTERS = {
    "epoxy": ["how-much-to-weigh", "before-a-pour", "before-a-pour/c0", "before-a-pour/c1", "before-a-pour/c2", "before-the-lathe/c4", "what-is-this-resin",
              "respirator"],
    "runaway": ["how-deep-how-hot", "before-a-pour", "before-a-pour/c1", "before-a-pour/c2", "before-a-pour/c3", "before-a-pour/c10", "before-a-pour/c11",
                "how-much-to-weigh", "how-much-to-weigh/mix"],
    "dust": ["which-grit-next", "when-can-i", "what-colour-dose", "before-the-lathe/c4", "before-the-lathe/c5", "before-the-lathe/c7", "before-a-pour/c11",
             "respirator"],
    "lathe": ["how-fast", "does-it-fit-the-lathe", "before-the-lathe/c5", "before-the-lathe/c6", "before-the-lathe/c7"],
    "pressure": ["pot-or-vacuum", "pot-or-vacuum/c8", "pot-or-vacuum/c9"],
    "flame": ["is-the-air-right", "will-the-mount-hold", "before-a-pour/c10", "before-the-lathe/c7"],
    "noise": ["how-fast", "before-the-lathe/c5"],
    "rags": ["which-grit-next", "before-a-pour/c0", "before-a-pour/c11"],
    "children": ["before-a-pour", "before-a-pour/c0", "before-a-pour/c11"],
    "food": ["when-can-i", "what-colour-dose"],
}  # fmt: skip
TABLES = {"review/index.html": review.review().limits, "review/figures/index.html": review.review().figures}


def source_of(dist: Path, page: str) -> str:
    return (dist / page / "index.html").read_text(encoding="utf-8")


def prose_of(dist: Path, id: str) -> str:
    found = re.search(r'<div class="prose">(.*?)</div>', source_of(dist, f"hazards/{id}"), re.DOTALL)
    assert found
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", found[1])).split())


@pytest.mark.parametrize("id", HAZARDS)
class TestHazard:
    """Each hazard page."""

    def test_is_read_in_a_minute(self, dist: Path, id: str) -> None:
        assert 80 <= len(prose_of(dist, id).split()) <= READ

    def test_shows_its_facts_with_sources_and_the_standing_words(self, dist: Path, id: str) -> None:
        text = text_of(dist, f"hazards/{id}/index.html")
        for fact in HAZARDS[id]["facts"]:
            assert fact["text"] in text and fact["source"] in text
        assert all(line in text for line in EVERYTHING["standing"])

    def test_has_words_beside_every_sign(self, dist: Path, id: str) -> None:
        page = source_of(dist, f"hazards/{id}")
        shown = re.findall(r'<svg class="sign"[^>]*aria-hidden="true"[^>]*data-sign="(\w+)">.*?</svg>\s*<p><b>([^<]+)</b>\s*(\S[^<]*)<span', page, re.DOTALL)
        assert [(code, html.unescape(name)) for code, name, _ in shown] == [(sign["code"], sign["meaning"]) for sign in HAZARDS[id]["signs"]]
        assert page.count("data-sign=") == len(shown)

    def test_has_its_cards_one_press_away(self, dist: Path, id: str) -> None:
        assert all(f'emergency/#{card["id"]}"' in source_of(dist, f"hazards/{id}") for card in HAZARDS[id]["cards"])

    def test_is_linked_where_it_matters_and_from_the_index(self, dist: Path, id: str) -> None:
        for page in (*MATTERS[id], "hazards"):
            assert re.search(rf'href="[./]*hazards/{id}/"', source_of(dist, page)), page

    def test_figures_of_regulators_are_called_benchmarks(self, dist: Path, id: str) -> None:
        prose = prose_of(dist, id)
        if re.search(r"mg/m³|\b\d+ dBA|m/s²|CFR|Regulation \d|400 ppm", prose):
            assert re.search("benchmark|employer", prose)


def test_every_list_leads_to_what_it_keeps_off() -> None:
    reached = {page.rsplit("/", 1)[-1].upper() for pages in MATTERS.values() for page in pages}
    assert set(EVERYTHING["checklists"]) <= reached


def test_the_index_is_in_the_foot_of_every_page(dist: Path) -> None:
    for page in dist.rglob("*.html"):
        assert re.search(r'<footer class="foot">.*?hazards/"', page.read_text(encoding="utf-8"), re.DOTALL), page


# Signs: colours


def colours(theme: str) -> dict[str, str]:
    """The tokens of a theme; the dark one stands on the light one."""
    text = (ROOT / "site_src/css/tokens.css").read_text(encoding="utf-8")
    light, dark = text.split(':root[data-theme="dark"]')
    found = dict(re.findall(r"--([\w-]+): (#[0-9a-f]{3,6});", light))
    if theme == "dark":
        found |= dict(re.findall(r"--([\w-]+): (#[0-9a-f]{3,6});", dark.split("}")[0]))
    return found


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2 defines it."""
    digits = colour[1:] if len(colour) == 7 else "".join(2 * digit for digit in colour[1:])
    parts = [int(digits[place : place + 2], 16) / 255 for place in (0, 2, 4)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_signs_stand_out_in_both_themes(theme: str) -> None:
    of = colours(theme)
    for field in ("must", "not", "help"):
        assert contrast(of[f"sign-{field}"], of["sign-white"]) >= 4.5
        assert contrast(of[f"sign-{field}"], of["paper"]) >= 3
    assert contrast(of["sign-warn"], of["sign-black"]) >= 7
    assert max(contrast(of["sign-warn"], of["paper"]), contrast(of["sign-black"], of["paper"])) >= 7


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_signs_have_the_colours_of_the_standard(theme: str) -> None:
    """Blue, yellow, red and green by hue; white and black as they are."""
    import colorsys

    def hue(name: str) -> float:
        digits = of[f"sign-{name}"]
        return 360 * colorsys.rgb_to_hsv(*(int(digits[place : place + 2], 16) / 255 for place in (1, 3, 5)))[0]

    of = colours(theme)
    assert 195 <= hue("must") <= 225 and 40 <= hue("warn") <= 55 and 140 <= hue("help") <= 170
    assert hue("not") >= 345 or hue("not") <= 10
    assert (of["sign-white"], of["sign-black"]) == ("#fff", "#000")


# The reviewer's tables


@pytest.mark.parametrize("page", TABLES)
def test_every_row_has_its_source_and_its_mark_on_the_page(dist: Path, page: str) -> None:
    text = (dist / page).read_text(encoding="utf-8")
    lines = re.findall(r'<tr><th scope="row">(.*?)</th><td>(.*?)</td><td>(.*?)</td><td>(.*?)</td></tr>', text)
    rows = [row for group in TABLES[page].groups for row in group.rows]
    assert len(lines) == len(rows) == TABLES[page].count
    for row, cells in zip(rows, (tuple(map(html.unescape, line)) for line in lines), strict=True):
        assert row.id and row.text and row.cited, row
        assert cells == (row.id, row.text, "; ".join(one.title for one in row.cited), row.mark)
        assert row.mark in review.MARKS.values()


def test_every_list_gate_card_and_fact_is_in_the_table() -> None:
    rows = {(row.id, row.text) for group in TABLES["review/index.html"].groups for row in group.rows}
    ids = {id for id, _ in rows}
    assert {f"{one['id']}.{item['number']}" for one in EVERYTHING["checklists"].values() for item in one["items"]} <= ids
    assert {card["code"] for card in EVERYTHING["cards"]} <= ids
    assert {(fact.id, fact.text) for fact in all_facts().values()} <= rows
    assert set(sources.document("gates")) - {"words"} <= ids
    stops = [re.sub(r"\{(\w+)\}", r"[\1]", part["stop"].replace("{value}", "[figure]")) for id, entry in sources.document("gates").items() if id != "words"
             for part in entry["parts"].values()]
    assert all(any(stop in text for _, text in rows) for stop in stops)


def test_every_table_of_data_is_placed_once_and_whole() -> None:
    printed = [group.name.removeprefix("Table: ") for table in TABLES.values() for group in table.groups if group.name.startswith("Table: ")]
    named = [name.replace("_", " ") for name, *_ in review.review().material]
    assert sorted([*printed, *named, *review.OWN]) == [name.replace("_", " ") for name in sources.tables()]
    for table in TABLES.values():
        for group in table.groups:
            if group.name.startswith("Table: "):
                assert len(group.rows) == len(sources.table(group.name.removeprefix("Table: ").replace(" ", "_")))


def test_every_default_with_a_basis_is_in_the_second_table() -> None:
    rows = [row for group in TABLES["review/figures/index.html"].groups if not group.name.startswith("Table: ") for row in group.rows]
    assert len(rows) == sum(bool(field.basis) for question in all_questions().values() for field in question.fields)


def test_the_figures_that_gates_bring_along_stand_beside_the_gates() -> None:
    names = [group.name for group in TABLES["review/index.html"].groups]
    assert names.index("Table: gate figures") == names.index("Gates") + 1
    told = {row.id: row.text for row in TABLES["review/index.html"].groups[names.index("Table: gate figures")].rows}
    assert "gate G6, 5 °C" in told["layer to room"] and "gate G17, 30 minutes" in told["gloves"] and "gate G19, 10 mm" in told["tray"]
    assert "gate G14, 85 dBA" in told["noise level"] and "gate G15, 1.2 mL" in told["solvent"] and "gate G18, 6.2 J" in told["shield"]


def test_a_row_has_the_mark_of_its_weakest_source() -> None:
    row = review.Row("1", "text", (review.Cited("a", "yes"), review.Cited("b", "no"), review.Cited("c", "quoted")))
    assert row.mark == "memory"


def test_every_caution_of_every_question_has_its_source_and_its_words_in_the_table(dist: Path) -> None:
    """The code's cautions and the table's are the same; what a case only shows when it is asked is told in the table's own words."""
    table = {(row["question"], row["caution"]): row for row in sources.table("cautions")}
    assert len(table) == len(sources.table("cautions"))
    told = worded()
    assert not set(told) - set(table)
    assert not [key for key, row in table.items() if not (row["words"] or told.get(key))]
    assert not {question for question, _ in table} - set(all_questions())
    rows = {row.id: row for group in TABLES["review/index.html"].groups if group.name == "Cautions: How fast?" for row in group.rows}
    assert rows["X12"].text == "A lump over ... off the rim hits harder than a face shield is tested for." and "Z87.1" in rows["X12"].cited[0].title
    assert sum(len(group.rows) for group in TABLES["review/index.html"].groups if group.name.startswith("Cautions: ")) == len(table)


def test_the_cautions_of_the_mixing_steps_are_told_as_the_steps_tell_them() -> None:
    steps = " ".join(path.read_text(encoding="utf-8") for path in sorted((ROOT / "calc/runs").glob("_mix*.py")))
    told = [row for row in sources.table("cautions") if row["caution"].startswith("step-")]
    assert len(told) >= 14
    for row in told:
        for sentence in re.split(r"(?<=[.?]) (?=[A-Z])", row["words"]):
            assert all(part.strip() in steps for part in sentence.split("...")), sentence


def test_a_reminder_has_the_source_of_its_gate() -> None:
    reminders = [row for row in sources.table("cautions") if row["caution"].startswith("reminder-")]
    assert len(reminders) == 4
    for row in reminders:
        assert row["source"] == sources.document("gates")[row["caution"].removeprefix("reminder-")]["basis"]


def test_cautions_are_read_out_of_code(tmp_path: Path) -> None:
    (tmp_path / "_one").mkdir()
    (tmp_path / "how_one.py").write_text("from calc.questions._one.words import f\nfrom calc.questions._two.fields import G\n", encoding="utf-8")
    (tmp_path / "_two.py").write_text('def f():\n    yield Caution("x", "stop", "Not of this question.")\n', encoding="utf-8")
    (tmp_path / "_one" / "words.py").write_text(
        'def f(case, text):\n    yield Caution("a", "stop", "Leave the room.")\n    yield Caution("a", "go", f"Wait {case.hours} hours.")\n'
        '    yield Caution("b", "go", text)\n    other("c", "go", "Not a caution.")\n    told = "Sit" + " down."\n    say("d", told)\n'
        '    yield Caution("e" if case.hot else "f", "go", "Go out." if case.hot else "Stay in.")\n',
        encoding="utf-8",
    )
    assert worded(tmp_path) == {
        ("how-one", "a"): ("Leave the room.", "Wait ... hours."), ("how-one", "b"): (), ("how-one", "d"): ("Sit down.",),
        ("how-one", "e"): ("Go out. / Stay in.",), ("how-one", "f"): ("Go out. / Stay in.",),
    }  # fmt: skip


def test_what_the_table_does_not_hold_is_said(dist: Path) -> None:
    second = text_of(dist, "review/figures/index.html")
    assert all(f"{count} lines." in second for _, count, _, _ in review.review().material)
    assert f"{review.review().figures.count} figures that feed the arithmetic" in text_of(dist, "review/index.html")
