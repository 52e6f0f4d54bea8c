"""How the work is held, as far as the top speed needs it. Whether it holds: :mod:`calc.turning.held`."""

from __future__ import annotations

from functools import cache
from typing import Literal

from calc.sources import table

Hold = Literal["centres", "glue", "faceplate", "chuck"]
FarEnd = Literal["none", "pad", "live"]


@cache
def allowed_share(hold: Hold, far_end: FarEnd) -> float:
    """Share of the rim, vibration and push limits that a mount is run at.

    Parameters
    ----------
    hold : between ``centres``, or on a ``glue`` block, a ``faceplate`` or in a ``chuck``.
    far_end : what the tailstock brings: ``none``, a flat ``pad`` (counts half-way), a ``live`` centre.
        Between centres it does not matter.

    Returns
    -------
    float
        more than 0, up to 1.

    Examples
    --------
    >>> allowed_share("glue", "none"), allowed_share("glue", "pad"), allowed_share("chuck", "none"), allowed_share("centres", "live")
    (0.75, 0.875, 1.0, 1.0)

    References
    ----------
    Our judgement.
    """
    name = hold if hold == "centres" else f"{hold}-{far_end}"
    return next(float(row["share"]) for row in table("holds") if row["name"] == name)
