"""What a sheet's depth means in a narrow mould."""

from __future__ import annotations

import pytest

from calc.casting.cure.narrow import wide_equal


def test_the_narrower_the_mould_the_less_it_counts() -> None:
    found = [wide_equal(0.06, 0.05, width) for width in (0.03, 0.05, 0.1, 0.15)]
    assert found == sorted(found) and found[0] < 0.03


@pytest.mark.parametrize(("depth", "sheet", "width"), [(0.06, 0.05, 0.5), (0.3, 0.05, 0.3), (0.02, 0.01, 1.0)])
def test_it_never_counts_more_than_it_is(depth: float, sheet: float, width: float) -> None:
    assert wide_equal(depth, sheet, width) == depth


def test_the_deeper_the_more_it_counts() -> None:
    found = [wide_equal(depth, 0.05, 0.06) for depth in (0.055, 0.07, 0.1)]
    assert found == sorted(found)
