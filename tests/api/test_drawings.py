"""Every drawing and chart has words that tell the same, and a chart has its figures in a table besides."""

from __future__ import annotations

import re
from typing import Any

import pytest

from calc import desk
from tests.api.test_desk import PLAIN

TURNED = {"asked": "turned", "diameter": "300", "block": "100"}
#: Drawings that a plain case does not show.
MORE = {
    "a wheel": ("does-it-fit-the-lathe", {"ask": "wheel", "disc": "450", "wheel": "200", "stands": "150", "end": "tail", "to_tail": "200"}),
    "outboard": ("does-it-fit-the-lathe", {"across": "600", "along": "80", "side": "outboard", "outboard_swing": "900"}),
    "between centres": ("does-it-fit-the-lathe", {"form": "round", "across": "60", "along": "300", "hold": "centres"}),
    "a spindle on its points": ("will-the-mount-hold", {"hold": "centres", "diameter": "40", "length": "900", "steady": "yes"}),
    "screws": ("will-the-mount-hold", {"hold": "faceplate", "diameter": "300", "circle": "130", "screws": "6", "far_end": "live"}),
    "a disc that bends": ("will-the-mount-hold", {"asked": "bends", "diameter": "450", "block": "120", "thin": "15"}),
    "turned round": ("will-the-mount-hold", TURNED),
    "turned round in a chuck": ("will-the-mount-hold", TURNED | {"hold": "chuck", "block": "", "tenon": "80"}),
    "warm on both faces": ("why-out-of-true", {"sign": "dish", "diameter": "300", "thickness": "50", "warm": "all", "cover": "open", "hold": "glue"}),
    "a load on top": ("will-it-stand", {"heights": "30 220 40", "widths": "140 50 180", "off": "10", "carries": "yes", "load": "2"}),
}
CASES = {**{id: (id, inputs) for id, inputs in PLAIN.items()}, **MORE}
#: A figure with its unit; a bare number is a tick or an hour on a clock's face.
FIGURE = re.compile(r"\d[\d /.]*(?:°C|°F|mm|in|kg|g|oz|lb|mL|L|h|min|days?|%|degrees)\b")


def _drawings(case: str, units: str) -> list[Any]:
    id, inputs = CASES[case]
    reply = desk.answer(id, {name: {"typed": text, "units": "metric"} for name, text in inputs.items() if text}, units)
    assert reply["headline"], reply["errors"]
    for drawing in reply["drawings"]:
        assert drawing["says"] in reply["text"], "words for a drawing stand in the plain text too"
        if any(mark["look"] == "grid" and mark["kind"] == "line" for mark in drawing["marks"]):
            assert reply["grids"], "a chart has its figures in a table"
    return list(reply["drawings"])


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize("case", CASES)
def test_its_words_tell_what_is_written_in_it(case: str, units: str) -> None:
    for drawing in _drawings(case, units):
        says = drawing["says"]
        assert len(says) > 40 and says.endswith(".") and drawing["title"], says
        written = [mark["text"] for mark in drawing["marks"] if mark["kind"] == "text" and mark["look"] != "axis"]
        for text in written:
            assert [figure for figure in FIGURE.findall(text) if figure not in says] == [], (text, says)
            name = re.match(r"[A-Za-z]+", text)
            assert name is None or name[0].lower() in says.lower(), (text, says)


def test_what_is_added_here_is_drawn() -> None:
    assert all(_drawings(case, "metric") for case in MORE)
