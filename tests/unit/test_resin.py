"""Whether a sheet's figures agree, and the kinds of resin."""

from __future__ import annotations

import pytest

from calc.casting import resin
from calc.casting.cure.kinetics import resin_classes
from calc.casting.mixing import Ratio, ratio_by_weight


def test_ratios_that_agree_have_no_gap() -> None:
    by_weight = ratio_by_weight(2, 1, 1150, 980)
    assert resin.ratio_gap(by_weight, 2, 1, 1150, 980) == pytest.approx(0)
    assert resin.hardener_over_resin(by_weight, 2, 1) == pytest.approx(980 / 1150)


def test_the_gap_is_more_b_in_the_print() -> None:
    assert resin.ratio_gap(Ratio(100, 50), 2, 1, 1150, 980) > 0 > resin.ratio_gap(Ratio(100, 40), 2, 1, 1150, 980)


def test_every_kind_is_its_own() -> None:
    for kind in resin_classes():
        assert {resin.kind_of(rate).id for rate in (kind.kinetics.k25, kind.k25_low, kind.k25_high)} == {kind.id}


def test_faster_kinds_are_taken_as_thicker() -> None:
    found = [resin.usual_viscosity(kind) for kind in resin_classes()]
    assert found == sorted(found)
