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


def test_what_a_room_takes_of_alcohol_stays_under_the_limit() -> None:
    # NIOSH Pocket Guide: 400 ppm, 60.1 g/mol, 1 ppm = 2.46 mg/m3 at 25 C; specific gravity 0.79. 36 mL in 30 m3 by the 1.2 mL for each m3.
    used_m3 = gates.shop.SOLVENT_SHARE * 30.0
    assert used_m3 == pytest.approx(36e-6)
    assert 380 < used_m3 * 790e6 / 30.0 / 2.46 <= 400
    assert "36 mL in a shop of 30 m³" in all_facts()["7.3"].text


def test_noise_rests_on_the_rule_of_three_decibels() -> None:
    # NIOSH 98-126, table 1-1: 85 dBA 8 h, 88 4 h, 91 2 h, 94 1 h, 97 30 min, 100 15 min
    for level, hours in ((85, 8), (88, 4), (91, 2), (94, 1), (97, 0.5), (100, 0.25)):
        assert gates.lathe.noise_time(level) == pytest.approx(hours * 3600)
    assert gates.lathe.noise_time(75) == 24 * 3600  # 80 h, but a day has 24
    assert all(all_facts()[id].source == "niosh-98-126" for id in sources.document("gates")["G14"]["facts"])


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
