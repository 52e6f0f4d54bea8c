"""From what is known of a resin to its reaction and its band."""

from __future__ import annotations

import pytest

from calc.casting.cure import known as known_module
from calc.casting.cure.calibrate import NoFit, pot_life, taken_as, wide
from calc.casting.cure.cup_test import CupTest, shaped
from calc.casting.cure.cups import plastic_cup
from calc.casting.cure.kinetics import GEL, Kinetics, resin_class
from calc.casting.cure.known import Facts, fitted_before, known, known_steps, levels
from calc.casting.cure.pour import COARSE, Start
from calc.casting.cure.running import peak_of
from calc.constants import ZERO_C

HOUR = 3600.0


def test_the_better_the_knowledge_the_narrower_the_band() -> None:
    ranks = list(levels().values())
    assert [level.id for level in ranks] == ["class", "unknown", "defined", "depth", "both", "cup"]
    for what in ("rate_up", "rate_down", "stop_over", "spread"):
        told = [getattr(level, what) for level in ranks]
        assert told == sorted(told, reverse=True), what
    assert all(level.hours >= levels()["cup"].hours > 1 for level in ranks)


def test_a_kind_alone_is_its_middle() -> None:
    found = known(Facts("fast"))
    assert found.level.id == "class" and found.kinetics == resin_class("fast").kinetics


def test_a_pot_life_comes_back() -> None:
    found = known(Facts(pot_life_s=8 * HOUR, heat=390e3))
    back = pot_life(found.resin, taken_as("unknown", 8 * HOUR))
    assert found.level.id == "unknown" and back == pytest.approx(8 * HOUR, rel=0.01)
    assert known(Facts(pot_life_s=8 * HOUR, meaning="doubled")).level.id == "defined"


def test_a_depth_that_goes_with_the_pot_life_decides_the_rate() -> None:
    found = known(Facts(pot_life_s=11 * HOUR, deepest_m=0.040))
    assert (found.level.id, found.agreement) == ("both", "agree")
    assert peak_of(found.resin, wide(0.040), Start(296.15, 296.15), COARSE) - ZERO_C == pytest.approx(60, abs=2)
    alone = known(Facts(deepest_m=0.040))
    assert alone.level.id == "depth" and alone.kinetics.k25 == pytest.approx(found.kinetics.k25, rel=0.01)


def test_a_depth_for_another_resin_is_told_and_never_makes_it_slower_than_the_deepest_that_fits() -> None:
    deep = known(Facts(pot_life_s=0.5 * HOUR, deepest_m=0.100))
    assert (deep.level.id, deep.agreement) == ("both", "deep") and deep.fitting_m is not None and deep.fitting_m < 0.100
    fits = known(Facts(pot_life_s=0.5 * HOUR, deepest_m=0.97 * deep.fitting_m))
    assert fits.agreement == "agree" and fits.kinetics.k25 == pytest.approx(deep.kinetics.k25, rel=0.05) and fits.kinetics.k25 >= deep.kinetics.k25
    assert deep.kinetics.k25 == known(Facts(pot_life_s=0.5 * HOUR, deepest_m=0.050)).kinetics.k25


def test_a_depth_alone_tells_which_pot_life_would_lower_it() -> None:
    """A pot life just shorter than that makes the hot end faster than the depth alone does, one just longer does not."""
    alone = known(Facts(deepest_m=0.025))
    assert alone.lowered_by_s is not None
    below, above = (known(Facts(deepest_m=0.025, pot_life_s=alone.lowered_by_s * by)) for by in (0.9, 1.1))
    hot = alone.kinetics.k25 * alone.level.rate_up
    assert above.kinetics.k25 * above.level.rate_up < hot < below.kinetics.k25 * below.level.rate_up


def test_a_longer_pot_life_than_the_depth_is_told_and_the_depth_taken() -> None:
    shallow = known(Facts(pot_life_s=11 * HOUR, deepest_m=0.004))
    assert shallow.agreement == "shallow" and shallow.kinetics.k25 > known(Facts(pot_life_s=11 * HOUR)).kinetics.k25


def test_what_does_not_fit_is_refused() -> None:
    with pytest.raises(NoFit, match="never-so-hot"):
        known(Facts(pot_life_s=15 * HOUR, meaning="hot50"))
    cold = CupTest(plastic_cup(0.1, Facts().raw), Start(296.15, 296.15), (600.0, 3600.0), (297.0, 299.0), 2 * HOUR)
    with pytest.raises(NoFit, match="rise-low"):
        known(Facts(cup=cold))


def test_it_tells_how_far_it_is() -> None:
    shares = list(known_steps(Facts(pot_life_s=11.1 * HOUR, deepest_m=0.040)))
    assert shares == sorted(shares) and 0 < shares[0] and shares[-1] < 1


def test_the_three_figures_of_a_cup_tell_its_reaction() -> None:
    told = shaped(Kinetics(3e-5, 350e3), 0.8)
    again = fitted_before(told.integral(GEL) / 3e-5, 350e3, 0.8)
    assert again.k25 == pytest.approx(3e-5) and (again.m, again.b, again.n, again.heat) == (told.m, told.b, told.n, told.heat)
    found = known(Facts(fitted=again))
    assert found.level.id == "cup" and found.kinetics == again


def test_what_was_found_is_kept_for_a_while_only() -> None:
    for hours in range(40):
        known(Facts(pot_life_s=None, density=1000.0 + hours))
    assert len(known_module._recent) <= known_module._KEPT
