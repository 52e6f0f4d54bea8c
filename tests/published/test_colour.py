"""Colour doses against published figures and worked cases.

USP: USP 32, chapter 1101. Eschbaum: Bulletin of Pharmacy 9, 1895. Beer-Lambert: textbook. GUM: JCGM 100:2008, clause 4.3.7. Cases with
no document beside them are exact arithmetic worked apart from our code; the lines of each kind are common practice, no source.
"""

from __future__ import annotations

import math

import pytest

from calc import desk
from calc.casting import colour, small_doses

GRAM = 0.001
USP_MOST, USP_LEAST = 0.055, 0.045  # g of water in one drop


def test_the_same_share_in_another_batch() -> None:  # 12 g in 900 g, again for 260 g: 3.467 g, 1.333 %
    share = colour.share_of(12 * GRAM, 900 * GRAM)
    assert 100 * share == pytest.approx(1.333, abs=0.0005)
    assert share * 260 == pytest.approx(3.467, abs=0.001)
    asked = {"way": "repeat", "was_resin": "900", "was_1": "12", "kind_1": "paste", "batches": "260", "step": "0.1"}
    assert desk.answer("what-colour-dose", asked)["values"]["dose"]["si"] == pytest.approx(3.467 * GRAM, abs=0.001 * GRAM)


def test_a_clear_dye_through_less() -> None:  # Beer-Lambert: 0.10 % right at 60 mm is 0.24 % at 25 mm
    assert colour.same_depth(0.10, 60, 25) == pytest.approx(0.24, abs=0.001)
    asked = {"way": "repeat", "was": "share", "share_1": "0.10", "was_depth": "60", "depth": "25", "kind_1": "dye", "batches": "900"}
    assert desk.answer("what-colour-dose", asked)["values"]["share"]["si"] == pytest.approx(0.0024, abs=0.00001)


def test_a_pre_mix_and_the_part_a_in_it() -> None:  # 0.35 g of dye, 5 % in A: 7.00 g, of which 6.65 g is A
    dose = small_doses.premix(0.35 * GRAM, 0.05)
    assert dose.stock == pytest.approx(7.00 * GRAM, abs=0.01 * GRAM)
    assert dose.part_a == pytest.approx(6.65 * GRAM, abs=0.01 * GRAM)


def test_six_drops_of_water() -> None:  # 0.30 mL; USP: 18 to 22 drops to the mL, 0.27 to 0.33 g
    drop = colour.standard("drop")
    assert 1 / 22 < drop < 1 / 18
    assert 6 * drop == pytest.approx(0.30, abs=0.005)
    assert (6 * USP_LEAST, 6 * USP_MOST) == (pytest.approx(0.27, abs=0.005), pytest.approx(0.33, abs=0.005))
    asked = {"way": "tinting", "ledger": "drops", "drops_1": "4 2", "tinted": "900", "kind_1": "dye"}
    found = desk.answer("what-colour-dose", asked)["values"]["share"]["si"] * 900
    assert 6 * USP_LEAST <= found <= 6 * USP_MOST and found == pytest.approx(0.30, abs=0.005)


def test_drops_spread_by_the_dropper_and_by_the_count() -> None:  # USP: 15 % either way, rectangular; half a drop in the count
    assert small_doses.drops_spread(10**9, 0.15 / math.sqrt(3)) == pytest.approx(0.0866, abs=0.0001)
    assert small_doses.drops_spread(1, 0.0) == pytest.approx(0.2887, abs=0.0001)  # 0.5 / sqrt 3


@pytest.mark.parametrize(("liquid", "fifty", "one"), [("water", "5.00", 0.100), ("glycerin", "3.90", 0.078)])  # Eschbaum: one tip, two liquids
def test_fifty_drops_weighed_are_the_makers_own_drop(liquid: str, fifty: str, one: float) -> None:
    asked = {"way": "tinting", "ledger": "drops", "drops_1": "10", "drops_50": fifty, "tinted": "1000", "kind_1": "dye"}
    assert desk.answer("what-colour-dose", asked)["values"]["share"]["si"] == pytest.approx(10 * one / 1000, rel=1e-9), liquid


def test_a_dose_of_sixteen_steps() -> None:  # GUM: two readings, u = d / sqrt 6; twice that in 5 % is 16 d
    assert small_doses.least_dose(0.1 * GRAM, 0.05, 2) / (0.1 * GRAM) == pytest.approx(16.3, abs=0.05)


@pytest.mark.parametrize(
    ("kind", "caution", "stop"),  # common practice, no source
    [("dye", 0.5, 1), ("paste", 2, 5), ("mica", 5, 10), ("metal", 10, 20), ("glow", 10, 20)],
)
def test_the_lines_of_each_kind(kind: str, caution: float, stop: float) -> None:
    found = colour.kinds()[kind]
    assert (100 * found.caution, 100 * found.stop) == (pytest.approx(caution), pytest.approx(stop))
