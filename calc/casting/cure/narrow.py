"""What a sheet's deepest layer means in a narrow mould: the wide pour of the same resin that gets as hot."""

from __future__ import annotations

from functools import lru_cache

from calc.casting.cure.calibrate import rate_from_depth, wide
from calc.casting.cure.cells import Footprint
from calc.casting.cure.depth import equivalent_depth_steps
from calc.casting.cure.kinetics import Kinetics
from calc.casting.cure.pour import ROUGH, Mould, Resin, Start
from calc.casting.cure.running import peak_of
from calc.casting.cure.standards import standard
from calc.steps import at_once

_SHEET_K = standard("sheet room")
_CAP_K = 45.0  # beyond the peak at the sheet's depth: there the answer is plain


@lru_cache(maxsize=64)
def wide_equal(depth_m: float, sheet_m: float, width_m: float) -> float:
    """The wide pour that gets as hot as a narrow one, for a resin whose sheet allows a depth.

    Parameters
    ----------
    depth_m : planned, m.
    sheet_m : the sheet's deepest layer, m; it tells how fast the resin is.
    width_m : of the mould at its narrowest, m; it is taken as a long bar.

    Returns
    -------
    float
        m; never more than ``depth_m``. Both moulds of 16 mm board, raised, in still air, at 23 °C.

    Examples
    --------
    60 mm where the sheet allows 50 mm, in a mould 40 mm and in one 400 mm wide:

    >>> wide_equal(0.06, 0.05, 0.04) < 0.05 < wide_equal(0.06, 0.05, 0.4)
    True

    References
    ----------
    judgement for what a sheet means by a wide pour; cure-solver.
    """
    resin = Resin(Kinetics(1e-5))
    resin = resin.at_rate(rate_from_depth(resin, sheet_m))
    here = wide(depth_m)
    cap_k = standard("sheet peak") + _CAP_K
    peak = peak_of(resin, Mould(Footprint(width_m / 2, 0.0), depth_m, here.side, here.below), Start(_SHEET_K, _SHEET_K), ROUGH, cap_k)
    if peak >= cap_k:
        return depth_m
    return min(depth_m, at_once(equivalent_depth_steps(resin, peak, _SHEET_K, min(depth_m, sheet_m))))
