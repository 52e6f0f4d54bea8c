"""Out of balance: what a weight, a vibration, a footing and a guess stand for."""

from __future__ import annotations

import math

import pytest

from calc.turning import balance, vibrating
from calc.turning.case import Case, ballast_to_next_limit, on_footing
from calc.turning.job import Measured
from calc.turning.speed import Speeds


@pytest.mark.parametrize(
    "grams, radius_mm, mass_kg, u_g_mm, e_mm",
    [
        (80, 140, 3.888, 11200, 2.88),  # W1
        (150, 200, 9.145, 30000, 3.28),  # W2
    ],
)
def test_out_of_balance_from_the_weight_that_cures_it(grams: float, radius_mm: float, mass_kg: float, u_g_mm: float, e_mm: float) -> None:
    u = balance.unbalance_of_weight(grams / 1000, radius_mm / 1000)
    assert 1e6 * u == pytest.approx(u_g_mm)
    assert 1000 * u / mass_kg == pytest.approx(e_mm, abs=0.005)
    assert balance.balance_weight(u, radius_mm / 1000) == pytest.approx(grams / 1000)


def test_the_remedy_of_the_lopsided_half_disc() -> None:
    # 56.25 kg mm against 130 mm: 432.7 g, told as 430 g.
    assert 1000 * balance.balance_weight(0.05625, 0.130) == pytest.approx(432.7, abs=0.05)


def test_nothing_out_of_balance_sets_no_limit() -> None:
    assert math.isinf(vibrating.speed_at_vibration(0.0, 4, 60, 0.0045))
    assert math.isinf(balance.speed_at_push(0.0, 60))


def test_bolting_counts_three_times() -> None:
    assert vibrating.standing_mass(60, bolted=True) == 3 * vibrating.standing_mass(60, bolted=False)


def test_a_measured_vibration_gives_back_the_out_of_balance_behind_it() -> None:
    v = vibrating.vibration(0.010603, 3.8877, 60, 240)
    assert vibrating.unbalance_from_vibration(240, v, 3.8877, 60) == pytest.approx(0.010603)
    assert vibrating.speed_from_measured_vibration(240, v, 0.0045) == pytest.approx(366.2, abs=0.05)  # V1


def test_words_stand_for_the_worse_end_of_their_zone() -> None:
    assert vibrating.vibration_limit("felt-still") == vibrating.vibration_limit("zone-b")
    assert vibrating.vibration_limit("felt-trembles") == vibrating.vibration_limit("zone-c")
    assert vibrating.vibration_limit("felt-walks") > vibrating.vibration_limit("zone-c")


# Worked discs of the reference: E1 a round of wood off centre, E3 a wooden edge, E2 half wood; eccentricity over diameter.
@pytest.mark.parametrize("guess, e_mm, diameter_mm", [("some", 2.7273, 300), ("side", 14.016, 450), ("half", 17.684, 300)])
def test_a_guess_is_not_below_the_worked_disc_it_is_set_beside(guess: str, e_mm: float, diameter_mm: float) -> None:
    guessed = balance.guessed_eccentricity(guess, diameter_mm / 1000, out_of_round=False)
    assert e_mm / 1000 <= guessed < 1.15 * e_mm / 1000


def _case(lathe_kg: float = 60, measured: Measured | None = None) -> Case:
    return Case(
        "rough", 0.3, 0.05, "solid", "weight", "centres", "live", lathe_kg, False, Speeds(50, 3000), 3.888, 0.010603, measured=measured
    )


def test_ballast_reaches_the_next_limit_and_no_further() -> None:
    case = _case()
    added = ballast_to_next_limit(case)
    after = on_footing(case, 60 + added, False)
    assert case.top.rules.id == "vibration"
    assert after.top.rules.id == "rim"
    assert on_footing(case, 60 + added - 10, False).top.rules.id == "vibration"


def test_ballast_is_no_more_than_the_lathe_itself() -> None:
    assert ballast_to_next_limit(_case(lathe_kg=20)) == 20


def test_a_firmer_footing_shrinks_what_was_measured() -> None:
    case = _case(measured=Measured(300, 0.006))
    bolted = on_footing(case, 60, True)
    assert bolted.measured is not None
    # 6 mm/s x (60 + 3.888) / (180 + 3.888)
    assert 1000 * bolted.measured.vibration_m_per_s == pytest.approx(2.0846, abs=0.0005)
