"""Fit on the lathe: cases worked apart from our code, by hand with the tape's arithmetic.

Swing is twice the height of the centres over the bed (shop text on the size of a lathe). Corner to corner of a regular outline of N sides is the
width across its flats over cos(180/N). Tolerances are half the last digit given.
"""

from __future__ import annotations

import pytest

from calc import desk
from calc.turning import fit

MM = 1e-3


def ask(**inputs: str) -> dict[str, float]:
    reply = desk.answer("does-it-fit-the-lathe", inputs, "metric", inputs)
    assert not reply["errors"], reply["errors"]
    return {name: value["si"] / MM for name, value in reply["values"].items()}


def test_square_on_a_floor_lathe() -> None:  # 300 mm square, swing 460 over the bed and 350 over the banjo
    found = ask(form="square", across="300", along="50", swing="460", banjo="350")
    assert found["sweep"] == pytest.approx(424.3, abs=0.05)
    assert found["bed_gap"] == pytest.approx(17.9, abs=0.05)
    assert found["banjo_gap"] == pytest.approx(-37.1, abs=0.05)


def test_eight_sides_too_near_and_sixteen_clear() -> None:  # 300 mm across the flats, swing 330
    found = ask(form="eight", across="300", along="50", swing="330")
    assert found["sweep"] == pytest.approx(324.7, abs=0.05)
    assert found["bed_gap"] == pytest.approx(2.6, abs=0.05)
    sixteen = fit.sweep(0.300, 16)
    assert sixteen / MM == pytest.approx(305.9, abs=0.05)
    assert fit.gap(0.330, sixteen) / MM == pytest.approx(12.1, abs=0.06)


def test_round_that_does_not_pass_the_banjo() -> None:  # 250 mm round, swing 305 over the bed and 230 over the banjo
    found = ask(form="round", across="250", along="50", swing="305", banjo="230")
    assert found["bed_gap"] == pytest.approx(27.5) and found["banjo_gap"] == pytest.approx(-10)


def test_length_with_a_chuck() -> None:  # 380 mm between centres, the spur standing out 25, a chuck of 95, work of 240
    assert fit.usable_length(0.380, 0.025, 0.095) / MM == pytest.approx(310)
    found = ask(form="round", across="60", along="240", swing="300", hold="chuck", tail="up", centres="380", mount="95")
    assert found["length_spare"] == pytest.approx(70)


@pytest.mark.parametrize("kind, inches", [("bench", 10)])  # a magazine's table of lathes on sale: bench lathes swing 10 to 14 in, 14 to 18 in between centres
def test_the_guess_for_a_bench_lathe_is_the_least_on_sale(kind: str, inches: float) -> None:
    size = fit.lathe_sizes()[kind]
    assert size.swing / 0.0254 == pytest.approx(inches) and size.centres / 0.0254 == pytest.approx(14, abs=0.02)
