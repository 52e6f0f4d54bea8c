"""What is this resin? What the maker reads, case by case."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest

from calc import desk
from calc.casting.cure.calibrate import wide
from calc.casting.cure.cup_test import shaped
from calc.casting.cure.cups import foam_cup
from calc.casting.cure.depth import critical_depth_steps
from calc.casting.cure.kinetics import GEL, Kinetics
from calc.casting.cure.pour import FINE, Resin, Start, field_of
from calc.casting.resin import CupSize, cup_for, next_cup
from calc.constants import ZERO_C
from calc.steps import at_once

DEEP = {"ratio": "100:43", "pot_life": "11 h", "deepest": "50"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    asked = {name: text for name, text in inputs.items() if text}
    return desk.answer("what-is-this-resin", asked, units, asked)


def figure(reply: dict[str, Any], name: str) -> float:
    return float(reply["values"][name]["si"])


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


def row(reply: dict[str, Any], name: str) -> tuple[str, str]:
    return next((value, origin) for label, value, origin in reply["grids"][0]["rows"] if label == name)


# ---------------------------------------------------------------- from the sheet


def test_three_figures_of_a_sheet_are_enough() -> None:
    reply = ask(**DEEP)
    assert reply["headline"]["label"] == "Slow deep-pour resin: one layer, at most" and reply["headline"]["unit"] == "mm"
    assert figure(reply, "no_stop") < figure(reply, "ceiling") < figure(reply, "middle")
    assert int(reply["headline"]["text"]) / 1000 <= figure(reply, "no_stop") <= 0.050
    assert "23 °C" in reply["headline"]["say"] and reply["headline"]["tone"] == "go"


def test_a_kind_alone_is_enough_and_is_never_more_than_a_caution() -> None:
    ceilings = []
    for kind in ("slow", "standard", "fast"):
        reply = ask(known="kind", kind=kind)
        assert reply["headline"]["tone"] == "caution" and "class" in cautions(reply)
        ceilings.append(figure(reply, "ceiling"))
    assert ceilings == sorted(ceilings, reverse=True)


def test_the_sheets_depth_is_never_raised() -> None:
    for deepest in (4, 12, 30, 60, 100):
        reply = ask(**DEEP | {"deepest": str(deepest)})
        assert figure(reply, "ceiling") <= deepest / 1000 and float(reply["headline"]["text"]) <= deepest
    shallow = ask(**DEEP | {"deepest": "4"})
    assert figure(shallow, "ceiling") == pytest.approx(0.004)
    assert [limit["id"] for limit in shallow["limits"] if limit["rules"]] == ["sheet"]
    assert [limit["id"] for limit in ask(**DEEP)["limits"] if limit["rules"]] == ["no-stop"]


def test_where_no_depth_is_without_a_stop_it_says_what_to_find_out() -> None:
    reply = ask(pot_life="2", room="35")
    assert figure(reply, "no_stop") < 0.001
    assert reply["headline"]["tone"] == "stop" and reply["headline"]["say"].startswith("Make a test cup")


def test_the_better_it_is_known_the_more_is_no_stop_of_the_middle() -> None:
    shares = []
    for inputs in ({"known": "kind", "kind": "slow"}, {"pot_life": "11 h", "pot_means": "doubled"}, DEEP):
        reply = ask(**inputs)
        shares.append(figure(reply, "no_stop") / figure(reply, "middle"))
    assert shares == sorted(shares)


def test_a_pot_life_and_a_depth_that_do_not_fit_one_resin() -> None:
    """A stated contradiction: a caution, and what the deepest that fits allows; a deeper sheet never less, nor more."""
    deep = ask(pot_life="25", deepest="60")
    assert "disagree" in cautions(deep) and figure(deep, "ceiling") == figure(ask(pot_life="25", deepest="30"), "ceiling")
    assert figure(deep, "no_stop") >= figure(ask(pot_life="25", deepest="8"), "no_stop")
    shallow = ask(pot_life="11 h", deepest="5")
    assert "disagree" in cautions(shallow) and figure(shallow, "ceiling") <= 0.005
    assert deep["headline"]["tone"] == shallow["headline"]["tone"] == "caution"


def test_a_warmer_shop_allows_less() -> None:
    depths = [figure(ask(known="kind", kind="slow", room=room), "ceiling") for room in ("16", "20", "23", "26")]
    assert depths == sorted(depths, reverse=True)
    per_degree = (depths[0] / depths[-1]) ** 0.1 - 1
    assert per_degree == pytest.approx(0.06, abs=0.01)  # each degree warmer costs about 6 % of the depth: a published sensitivity of the model


def test_a_ratio_by_volume_is_turned_with_the_densities() -> None:
    reply = ask(ratio_volume="2:1", density_a="1.15", density_b="0.98", pot_life="90")
    assert row(reply, "Ratio by weight") == ("100 : 42.6", "worked out")  # 2:1 at 1.15 and 0.98: 100:42.6, mix 1.0933, by hand
    assert figure(reply, "density") == pytest.approx(1093.3, abs=0.05)
    assumed = ask(ratio_volume="2:1", pot_life="90")
    assert row(assumed, "Ratio by weight")[1] == "assumed"


def test_heat_comes_from_the_ratio() -> None:
    assert figure(ask(ratio="100:85", pot_life="25"), "heat") / 1e3 == pytest.approx(295, abs=0.6)  # 106.6 × 0.5405 / 0.195, by hand


def test_a_thin_mix_is_thicker_in_a_cold_shop() -> None:
    at_25, cold = ask(pot_life="90", viscosity="800", room="25"), ask(pot_life="90", viscosity="800", room="15")
    assert figure(at_25, "viscosity") == pytest.approx(0.8)
    assert figure(cold, "viscosity") / 0.8 == pytest.approx(2.48, abs=0.02)  # exp(65e3 / 8.314 × (1/288.15 − 1/298.15)), by hand
    assert row(ask(pot_life="90"), "Viscosity at 25 °C")[1] == "assumed"


def test_old_bottles_two_lots_and_a_cold_shop_are_told() -> None:
    reply = ask(**DEEP, lots="two", opened="old", looks="cloudy", lowest="18", room="15")
    assert {"lots", "old", "cloudy", "range"} <= cautions(reply)
    assert not cautions(ask(**DEEP))


def test_another_chemistry_is_refused() -> None:
    reply = ask(chemistry="other", pot_life="20")
    assert reply["headline"]["tone"] == "stop" and reply["values"]["ceiling"]["si"] is None


def test_what_is_carried_is_taken_as_it_stands() -> None:
    reply = ask(**DEEP, viscosity="450", demould="72", cure="7 days", earliest="24", latest="48", lowest="15", highest="28", largest="10 kg")
    carried = {carry["to"]: carry["inputs"] for carry in reply["carries"]}
    assert set(carried) == {"how-deep-how-hot", "when-can-i", "how-much-to-weigh", "before-a-pour"}
    assert carried["when-can-i"]["pot_life"] == "11 h" and carried["before-a-pour"]["sheet_mass"] == "10 kg"
    pour = {"depth": "30", "across": "200", "shape": "round"}
    missing = {"how-deep-how-hot": pour, "when-can-i": pour, "how-much-to-weigh": {"total": "500"}, "before-a-pour": {}}
    for to, rest in missing.items():
        there = desk.answer(to, carried[to] | rest)
        assert not there["errors"] and not there["queries"] and not there["unasked"], (to, there["text"])


# ---------------------------------------------------------------- a test cup


def poured_cup(k25: float, heat: float, shape: float, grams: float) -> tuple[Resin, dict[str, str]]:
    """A resin made up, and what its cup shows at 22 °C."""
    resin = Resin(shaped(Kinetics(k25, heat), shape), 1100.0)
    room = 22 + ZERO_C
    field = field_of(resin, foam_cup(grams / 1e3, resin), Start(room, room), FINE)
    middle, dt, gel = field.cut.first_row + FINE.rows // 2, 1.0, 0.0
    seen = []
    while field.time_s < 60 * 3600:
        _, dt = field.advance(dt, FINE.pace)
        seen.append((field.time_s, field.t[middle][0]))
        gel = field.time_s if not gel and field.mean_a() >= GEL else gel
    peak = max(seen, key=lambda one: one[1])[0]
    read = [min(seen, key=lambda one: abs(one[0] - peak * (0.1 + 0.21 * n))) for n in range(10)]
    return resin, {
        "known": "cup",
        "ratio": "100:43",
        "vessel": "foam",
        "cup_mass": f"{grams:g}",
        "cup_room": "22",
        "cup_minutes": " ".join(f"{time / 60:.0f}" for time, _ in read),
        "cup_temperatures": " ".join(f"{kelvin - ZERO_C:.1f}" for _, kelvin in read),
        "cup_gel": f"{gel / 60:.0f} min",
    }


def test_a_test_cup_finds_the_resin_it_was_poured_from() -> None:
    resin, cup = poured_cup(2.2e-5, 380e3, 0.0, 100)
    reply = ask(**cup, cup_colour="yes", cup_hard="70")
    room = 23 + ZERO_C
    true = at_once(critical_depth_steps(resin, wide(0.03), Start(room, room), 0.03))
    assert reply["values"]["level"]["shown"] == "a test cup"
    assert figure(reply, "middle") == pytest.approx(true, rel=0.10)  # readings to 0.1 °C, gel to the minute
    assert figure(reply, "ceiling") <= true
    labels = [line["label"] for line in reply["lines"]]
    assert "Keep the cup" in labels and "No mark from a fingernail after" in labels
    carried = {carry["to"]: carry["inputs"] for carry in reply["carries"]}
    assert carried["when-can-i"]["resin"] == "cup" and carried["how-deep-how-hot"]["known"] == "cup"
    for to in ("when-can-i", "how-deep-how-hot"):
        there = desk.answer(to, carried[to] | {"depth": "15", "across": "200", "shape": "round"})
        assert not there["errors"] and not there["unasked"] and "a test cup" in there["band"]["text"]


def test_a_cup_that_stayed_cool_asks_for_a_larger_one_and_the_sheet_counts() -> None:
    cool = {"vessel": "foam", "cup_mass": "100", "cup_room": "22", "cup_gel": "44 h", "cup_minutes": "100 600 1100 2200", "cup_temperatures": "23 25 26 25"}
    reply, sheet = ask(known="cup", **DEEP, **cool), ask(**DEEP)
    assert figure(reply, "ceiling") == figure(sheet, "ceiling")
    (text,) = (caution["text"] for caution in reply["cautions"] if caution["id"] == "cup")
    assert "too little" in text and "200 g" in text
    hot = ask(known="cup", **DEEP, **cool | {"cup_temperatures": "30 80 140 90"})
    (text,) = (caution["text"] for caution in hot["cautions"] if caution["id"] == "cup")
    assert "ran away" in text and "50 g" in text


def test_a_cup_that_tells_nothing_needs_the_sheet() -> None:
    cool = {"vessel": "foam", "cup_mass": "100", "cup_room": "22", "cup_gel": "44 h", "cup_minutes": "100 600 1100 2200", "cup_temperatures": "23 25 26 25"}
    (error,) = ask(known="cup", ratio="100:43", **cool)["errors"]
    assert (error["field"], error["code"]) == ("pot_life", "cup-alone") and "{" not in error["message"]


def test_readings_of_no_reaction_are_doubted() -> None:
    _, cup = poured_cup(2.2e-5, 380e3, 0.0, 100)
    assert "fit" not in cautions(ask(**cup))
    mixed_up = cup["cup_temperatures"].split()
    mixed_up[1], mixed_up[4] = mixed_up[4], mixed_up[1]
    assert "fit" in cautions(ask(**cup | {"cup_temperatures": " ".join(mixed_up)}))


def test_the_cup_grows_with_the_pot_life() -> None:
    sizes = [cup_for(minutes * 60.0) for minutes in (10, 30, 90, 150, 300, 700, 1000, 3000)]
    assert len(set(sizes)) == len(sizes)
    for small, large in pairwise(sizes):
        assert next_cup(small, True) == large and next_cup(large, False) == small
    assert next_cup(CupSize("dish", 0.004), False) is None and next_cup(CupSize("foam", 0.4), True) is None


# ---------------------------------------------------------------- input


@pytest.mark.parametrize(
    ("inputs", "field", "code"),
    [
        ({"ratio": "100:50", "ratio_volume": "2:1", "density_a": "1.15", "density_b": "0.98", "pot_life": "90"}, "ratio", "ratios-disagree"),
        ({"ratio": "100:50", "ratio_volume": "3:1", "pot_life": "90"}, "ratio", "ratios-apart"),
        ({"density_a": "1.15", "density_b": "0.98", "density": "1.3", "pot_life": "90"}, "density", "density-outside"),
        ({"pot_life": "90", "lowest": "25", "highest": "20"}, "highest", "range-crossed"),
        ({"pot_life": "90", "earliest": "24", "latest": "12"}, "latest", "window-crossed"),
        ({"pot_life": "90", "demould": "48", "cure": "24"}, "cure", "cured-first"),
        ({"pot_life": "11 h", "demould": "8"}, "demould", "hard-first"),
        ({"pot_life": "15 h", "pot_means": "hot50"}, "pot_means", "never-so-hot"),
        ({"ratio": "100:43"}, "pot_life", "missing"),
        ({"pot_life": "-4"}, "pot_life", "not-positive"),
        ({"pot_life": "90", "deepest": "0"}, "deepest", "not-positive"),
        ({"pot_life": "90", "deepest": "9000"}, "deepest", "too-large"),
        ({"pot_life": "90", "viscosity": "3"}, "viscosity", "too-small"),
    ],
)
def test_what_cannot_be_used_is_said(inputs: dict[str, str], field: str, code: str) -> None:
    (error,) = ask(**inputs)["errors"]
    assert (error["field"], error["code"]) == (field, code)
    assert error["message"] and "{" not in error["message"]


def test_several_contradictions_are_told_at_once() -> None:
    errors = ask(pot_life="90", lowest="25", highest="20", demould="48", cure="24")["errors"]
    assert {error["code"] for error in errors} == {"range-crossed", "cured-first"}


@pytest.mark.parametrize(("minutes", "field", "code"), [("10 60 50 90", "cup_minutes", "cup-order"), ("10 60 120 130 140", "cup_temperatures", "cup-lengths")])
def test_readings_that_cannot_be_a_cup(minutes: str, field: str, code: str) -> None:
    reply = ask(known="cup", vessel="foam", cup_mass="100", cup_room="22", cup_gel="200", cup_minutes=minutes, cup_temperatures="22 30 40 35", pot_life="90")
    (error,) = reply["errors"]
    assert (error["field"], error["code"]) == (field, code) and "{" not in error["message"]


@pytest.mark.parametrize("known", [{"known": "kind", "kind": "slow"}, {"pot_life": "90 min"}, {"pot_life": "11 h", "deepest": "40 mm"}])
def test_a_narrower_mould_never_allows_less_than_the_wide_one_told_here(known: dict[str, str]) -> None:
    """The same rule as How deep and how hot?: in the very mould that 'wide' stands for it is the same figure."""
    given = known | {"room": "18 °C"}
    here = desk.answer("what-is-this-resin", given, confirmed=given)["values"]["no_stop"]["si"]
    mould = {"shape": "round", "depth": "3 mm", "detail": "depths", "batch": "1 kg"}
    asked = [given | mould | {"across": width} for width in ("300 mm", "100 mm")]
    same, narrower = (desk.answer("how-deep-how-hot", one, confirmed=one)["values"]["no_stop"]["si"] for one in asked)
    assert same == pytest.approx(here, rel=0.01) and narrower >= here * 0.99
