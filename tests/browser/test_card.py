"""The turning card: what How fast? worked out last, read at the lathe with no tap."""

from __future__ import annotations

from typing import Any

from tests.browser import calc_says
from tests.browser.maker import Maker

CARD = "how-fast/card/"
PIECE = {"diameter": "300", "condition": "filled", "balance": "done", "hold": "faceplate", "lathe": "floor"}


def ask(maker: Maker, **choices: str) -> None:
    """Answer How fast? on its page."""
    maker.go("how-fast/")
    maker.enter(diameter=PIECE["diameter"])
    maker.choose(**{name: value for name, value in (PIECE | choices).items() if name != "diameter"})
    maker.wait_figure(calc_says.figure("how-fast", **(PIECE | choices)))


def card(**choices: str) -> Any:
    """What calc puts on the card."""
    return calc_says.answer("how-fast", **(PIECE | choices))["extra"]["card"]


def place(name: str) -> str:
    """Where a text of the card stands."""
    return f".turning-card [data-part={name}]"


def shows(maker: Maker, wanted: Any) -> None:
    """Every text and every line of the card is calc's."""
    maker.wait_text(wanted["stage"], css=place("stage"))
    for name, value in wanted.items():
        if name == "tone":
            assert maker.eval("document.querySelector('.turning-card').dataset.tone") == value
        elif isinstance(value, list):
            lines = maker.eval(f"[...document.querySelectorAll('{place(name)} > li')].map((line) => line.textContent.replaceAll('\\u00a0', ' '))")
            assert lines == value, name
        else:
            assert maker.eval(f"document.querySelector('{place(name)}').textContent.replaceAll('\\u00a0', ' ')") == value, name


def test_the_answer_leads_to_the_card_and_the_card_needs_no_tap(maker: Maker) -> None:
    ask(maker)
    maker.follow("Turning card", CARD)
    wanted = card()
    assert wanted["reflex"] and wanted["next"] and wanted["sizes"]
    shows(maker, wanted)
    maker.go(CARD)  # and after a reload
    shows(maker, wanted)
    assert maker.eval("document.querySelectorAll('.turning-card :is(a, button, input, summary)').length") == 0
    assert maker.text(place("awake"))


def test_a_piece_that_may_not_run_starts_nothing(maker: Maker) -> None:
    ask(maker, condition="broken")
    maker.go(CARD)
    wanted = card(condition="broken")
    shows(maker, wanted)
    assert not wanted["reflex"] and "Do not spin" in maker.text(".turning-card")


def test_without_a_piece_the_card_says_so(maker: Maker) -> None:
    maker.go(CARD)
    maker.wait_text("No piece yet", css=place("stage"))
    assert not maker.text(place("text"))
    assert "Lowest speed first" in maker.text(place("reflex"))


def test_the_number_is_read_from_two_metres_and_all_that_counts_is_on_the_first_screen(chromium: Maker) -> None:
    """Read from afar when it is about 1/200 of the distance high: 10 mm, or 63 px of 160 to the inch, at 2 m."""
    ask(chromium)
    for width, height in ((360, 740), (320, 640), (1280, 800)):
        chromium.resize(width, height)
        chromium.go(CARD)
        chromium.wait_text(card()["stage"], css=place("stage"))
        size = chromium.eval(f"parseFloat(getComputedStyle(document.querySelector('{place('text')}')).fontSize)")
        assert size * 0.7 >= 63, "digits are about 0.7 of the type size"
        assert chromium.eval("document.scrollingElement.scrollWidth <= innerWidth")
        wide = chromium.eval(f"(({{ scrollWidth, clientWidth }}) => scrollWidth <= clientWidth)(document.querySelector('{place('text')}'))")
        assert wide, "the number does not run out of the card"
        for name in ("stage", "text", "reflex", "next"):
            box = chromium.eval(f"(({{ top, bottom }}) => [top, bottom])(document.querySelector('{place(name)}').getBoundingClientRect())")
            assert box[0] >= 0 and (box[1] <= height or (name == "next" and height < 700)), (name, width, box)
