"""Our safety figures against what the documents print."""

from __future__ import annotations

import pytest

from calc import sources
from calc.casting.standards import standard
from calc.quantity.units import to_si
from calc.safety import gates
from calc.safety.facts import all_facts


def test_glove_time_is_the_resin_makers_thirty_minutes() -> None:
    # a resin maker's article: gloves of 0.10 to 0.15 mm, change after 30 min at most
    assert gates.worn.GLOVE_TIME_S == 30 * 60
    assert all_facts()["2.14"].source == "resin-glove-article"


def test_the_ratio_is_held_to_what_two_makers_print() -> None:
    # resin makers' manuals: 5 % at worst
    assert standard("ratio worst") == 0.05


def test_the_seal_is_held_ten_seconds() -> None:
    # 29 CFR 1910.134 Appendix B-1: hold the breath for ten seconds
    steps = sources.document("respirators")["step"]
    assert [step["seconds"] for step in steps if "seconds" in step] == [10]


@pytest.mark.parametrize(("celsius", "fahrenheit"), [(204, 400), (43, 110)])  # as the documents print both
def test_temperatures_printed_in_both_units_agree(celsius: float, fahrenheit: float) -> None:
    assert to_si(celsius, "temperature", "°C") == pytest.approx(to_si(fahrenheit, "temperature", "°F"), abs=0.6)


@pytest.mark.parametrize(
    ("fact", "figures"),
    [
        ("1.3", ("99.97 %",)),  # 42 CFR 84: P100
        ("1.7", ("half mask 10", "full face 50", "hood 25", "1000")),  # 29 CFR 1910.134 Table 1
        ("1.8", ("4, 10, 20", "P3 20", "gas filter 10", "10, 20, 40")),  # after EN 529 and HSG53
        ("1.15", ("95 %",)),  # Delaney and others 2003
        ("1.20", ("70 °C", "200 ppm", "8 hours", "85 %", "five times")),  # OSHA eTool, change schedules
        ("1.25", ("19.5 %",)),  # 29 CFR 1910.134(d)
        ("2.8", ("113", "15")),  # Suojalehto and others 2018
        ("2.13", ("1.4 micrograms",)),  # Henriks-Eckerman and others 2015
        ("7.1", ("12 °C", "82 °C", "400 ppm")),  # NIOSH Pocket Guide
    ],
)
def test_a_fact_prints_its_documents_figures(fact: str, figures: tuple[str, ...]) -> None:
    text = all_facts()[fact].text
    assert all(figure in text for figure in figures), text
