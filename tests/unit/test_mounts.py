"""The share of the limits that a mount is run at."""

from __future__ import annotations

import pytest

from calc.turning.mounts import FarEnd, Hold, allowed_share


@pytest.mark.parametrize("far_end, share", [("none", 0.75), ("pad", 0.875), ("live", 1.0)])  # decided; a pad counts half-way
def test_glue_block(far_end: FarEnd, share: float) -> None:
    assert allowed_share("glue", far_end) == share


@pytest.mark.parametrize("hold", ["centres", "faceplate", "chuck"])
@pytest.mark.parametrize("far_end", ["none", "pad", "live"])
def test_other_holds_are_run_at_the_whole(hold: Hold, far_end: FarEnd) -> None:
    assert allowed_share(hold, far_end) == 1.0
