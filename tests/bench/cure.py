"""The cure of one deep pour in this Python: our solver's time beside scipy's on the same case, with as many cells."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable

from calc.casting.cure.cells import Footprint
from calc.casting.cure.kinetics import Kinetics
from calc.casting.cure.pour import FINE, Mould, Resin, Start
from calc.casting.cure.running import run
from calc.casting.cure.thermal import Films
from tests.independent.lines import CAPACITY, EDGE, bdf

_ROUNDS = 7
_CLOSE = 1e-4  # scipy's tolerance: about as close to the finest grid as we are
_SECONDS = 20 * 3600.0


def seconds_of_cure() -> tuple[float, float]:
    """Median time of ours, and of scipy's, s: the pour near the edge of a runaway, until it is past its peak."""
    k25, heat, depth, half, j, celsius, films = EDGE
    start, mould = Start(273.15 + celsius, 273.15 + celsius), Mould(Footprint(half, j), depth, films=Films(*films))
    resin = Resin(Kinetics(k25, heat), capacity=CAPACITY)
    ours = _median(lambda: run(resin, mould, start, FINE, "peak").peak.hottest_k)
    return ours, _median(lambda: bdf(EDGE, _SECONDS, FINE.rows, FINE.columns, _CLOSE)[0] + 273.15)


def _median(work: Callable[[], float]) -> float:
    times = []
    for _ in range(_ROUNDS):
        began = time.perf_counter()
        peak = work()
        times.append(time.perf_counter() - began)
        if not 345 < peak < 352:
            raise SystemExit(f"bench: a peak of {peak:.1f} K is not that of the case")
    return statistics.median(times)
