"""Odds and risks in words lean to the cautious side."""

from __future__ import annotations

import re

import pytest

from calc.words import odds, risk


def _told(words: str) -> float:
    """The figure that a reader takes from the words: the most of 'fewer than', the least of 'more than'."""
    if words == "about half":
        return 0.5
    found = re.search(r"(\d+) in (\d+)", words)
    assert found, words
    return int(found[1]) / int(found[2])


@pytest.mark.parametrize("share", [number / 400 for number in range(401)])
def test_a_risk_is_never_told_smaller_nor_a_hope_greater_than_it_is(share: float) -> None:
    said = risk(share)
    assert _told(said) >= share - 1e-9 or said.startswith("more than")
    hope = odds(share)
    assert _told(hope) <= share + 1e-9 or hope.startswith("under")
