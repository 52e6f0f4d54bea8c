"""By when one bucket is to be poured, from no more than the sheet's pot life or working time."""

from __future__ import annotations

import math

from calc.casting.cure.bucket import in_bucket
from calc.casting.cure.known import SHEET_ROOM_K, Facts, known
from calc.casting.standards import standard

#: A sheet's time longer than this tells no more about a bucket, s.
_LONGEST_S = 100 * 3600.0
_MINUTE_S = 60.0


def pour_within(
    working_s: float, mass_kg: float, density: float, heat: float | None = None, room_k: float | None = None, share: float | None = None
) -> float:
    """By when a bucket is to be mixed and poured: what :func:`calc.casting.cure.bucket.in_bucket` says of it, and never over the usual share.

    Parameters
    ----------
    working_s : pot life or working time as the sheet prints it, s, zero or more; it is taken to be of a small cup.
    mass_kg : in this bucket, kg, more than zero.
    density : of the mix, kg/m3.
    heat : of the whole reaction, J/kg; None takes the usual.
    room_k : the shop, and the resin as mixed, K; None takes that of a sheet that prints none.
    share : of the sheet's time that may be used, a fraction; None takes common practice.

    Returns
    -------
    float
        s from when A meets B, down to the minute from one minute on. More in the bucket is never given longer.

    Examples
    --------
    45 min on the sheet, in a cup of 50 g and in a bucket of 3.7 kg:

    >>> pour_within(2700, 0.05, 1100.0) / 60, pour_within(2700, 3.7, 1100.0) / 60
    (15.0, 14.0)

    References
    ----------
    cure-solver; practice for the share and for the half.
    """
    most = working_s * (standard("working share") if share is None else share)
    if most > 0:
        room = SHEET_ROOM_K if room_k is None else room_k
        resin = known(Facts(heat=heat, density=density, pot_life_s=min(working_s, _LONGEST_S)))
        within = in_bucket(resin.in_bucket, resin.level.rate_up, mass_kg, room, room, resin.printed).within_s
        most = most if within is None else min(most, within)
    return most if most < _MINUTE_S else math.floor(most / _MINUTE_S + 1e-9) * _MINUTE_S
