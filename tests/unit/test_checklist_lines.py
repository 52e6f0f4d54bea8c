"""The checklists' lines for someone in a hurry, in gloves: few, short, in the right order, with one meaning."""

from __future__ import annotations

import pytest

from calc.safety.checklists import all_checklists
from tests.unit.lists import FINE, LISTS, press_all, screen

#: Words a minute of someone in a hurry, and seconds to find and press a button in gloves, half a second of it the bounce. Our judgement.
READ, PRESS_S = 200, 3.0


def test_the_nine_lines_take_under_ninety_seconds_by_one_thumb() -> None:
    """Nine presses and the end, every figure read; no press asks a second one, and nothing has to be typed."""
    events = press_all("C1", FINE)
    assert len(events) == 10
    shown = screen("C1", [], FINE)
    assert not [button for item in shown["items"] for button in item["buttons"][:1] if button["ask"] or button.get("confirm")]
    words = sum(len(item["text"].split()) for item in shown["items"])
    figures = sum(len(item["gate"]["text"].split()) for item in shown["items"] if item["gate"])
    assert (words + figures) / READ * 60 + PRESS_S * len(events) < 90


@pytest.mark.parametrize("id", LISTS)
def test_a_list_is_short_and_so_are_its_lines(id: str) -> None:
    one = all_checklists()[id]
    assert 5 <= len(one.items) <= 9
    assert all(len(item.text.split()) <= 13 and len(item.why.split()) <= 24 for item in one.items)
    assert sum(len(item.text.split()) for item in one.items) / len(one.items) <= 11


def test_the_list_at_the_lathe_takes_two_lines_of_a_narrow_phone_for_each_of_its_own() -> None:
    """24 px bold in 290 px: about 24 letters to a line."""
    assert all(len(item.text) <= 47 and not item.with_figures for item in all_checklists()["C5"].items)


def test_what_is_worn_comes_last_among_what_does_the_same() -> None:
    """Extraction before the mask and moving air before it; hands are washed when nothing dirty is left to touch."""
    text = {id: " ".join(item.text for item in all_checklists()[id].items) for id in LISTS}
    for id, first, then in (("C1", "Air moves", "Mask as"), ("C5", "Extraction", "dust mask"), ("C7", "Extraction", "Dust mask"), ("C9", "Shield", "Glasses"),
                            ("C11", "wipe phone", "Gloves off"), ("C11", "Wipe the mask", "Gloves off"), ("C6", "Switch off", "Move the rest")):  # fmt: skip
        assert 0 <= text[id].find(first) < text[id].find(then)


def test_an_answer_to_a_line_that_says_no_cannot_be_meant_both_ways() -> None:
    """'No froth': a yes and a no to that can each be meant either way. True and not true cannot."""
    labels = [button["label"] for button in screen("C3", [], FINE)["items"][1]["buttons"]]
    assert labels == ["True", "Not true"]
