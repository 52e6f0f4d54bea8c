"""Thickness of a casting, from its finished size back to the mould: what is cut away, what warps, what the wood needs.

Lengths in m, from the floor of the mould upwards. Figures that are not geometry, each with its source, are in ``data/sizes.csv``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.guards import require_positive
from calc.sources import in_si

Lies = Literal["through", "under", "inside", "none"]


#: A figure of ``data/sizes.csv`` by the name of its row, in SI; slopes as fractions.
standard = in_si("sizes")


@dataclass(frozen=True)
class Budget:
    """What stands between a finished thickness and the depth of resin to pour, all in m.

    Parameters
    ----------
    finished : thickness wanted, more than zero.
    top, under : off the face that lay open, and off the one on the floor.
    warp : how far the cured casting is out of flat, the gap under a straight edge.
    tilt : how much deeper the middle of the mould is than its high side.
    drop : share of the depth by which the level falls as it cures, below one.
    lies : the wood shows on both faces, lies on the floor under resin, is held up inside it, or there is none.
    bow : of the wood, the gap under a straight edge.
    cover, cover_under : resin to be left over the wood, and below it where it is inside.

    Raises
    ------
    ValueError
        a thickness of nothing, an allowance below nothing, or a level that falls to the floor.

    Examples
    --------
    A piece 40 mm thick, 2 and 3 mm off, out of flat by 1 mm:

    >>> budget = Budget(0.040, top=0.003, under=0.002, warp=0.001)
    >>> round(budget.cured, 4), round(budget.left(0.044), 4)
    (0.046, 0.038)
    """

    finished: float
    top: float = 0.0
    under: float = 0.0
    warp: float = 0.0
    tilt: float = 0.0
    drop: float = 0.0
    lies: Lies = "none"
    bow: float = 0.0
    cover: float = 0.0
    cover_under: float = 0.0

    def __post_init__(self) -> None:
        require_positive(finished=self.finished)
        if min(self.top, self.under, self.warp, self.tilt, self.drop, self.bow, self.cover, self.cover_under) < 0 or self.drop >= 1:
            raise ValueError("an allowance cannot be less than nothing, nor the level fall to the floor")

    @property
    def uneven(self) -> float:
        """What a bowed slab that is to show on both faces costs beside the facing: its bow."""
        return self.bow if self.lies == "through" else 0.0

    @property
    def cured(self) -> float:
        """Thickness of the cured casting where it is thinnest: a plate that is out of flat loses that much to two flat faces."""
        return self.finished + self.top + self.under + self.warp + self.uneven

    @property
    def depth(self) -> float:
        """Depth of liquid resin, at the middle of the mould: ``cured / (1 - drop) + tilt``."""
        return self.cured / (1 - self.drop) + self.tilt

    def after(self, depth: float) -> float:
        """Thickness of the cured casting at the high side, when poured to ``depth``; not below zero."""
        return max(0.0, (depth - self.tilt) * (1 - self.drop))

    def left(self, depth: float) -> float:
        """Finished thickness that a pour of this depth leaves; below zero when there is nothing left."""
        return self.after(depth) - (self.cured - self.finished)

    def left_of_slab(self, slab: float) -> float:
        """Finished thickness that a slab leaves that shows on both faces; below zero when there is nothing left."""
        return slab - (self.cured - self.finished)

    @property
    def raised(self) -> float:
        """How far over the floor wood is held that is to be inside the resin."""
        return self.cover_under + self.under + self.warp if self.lies == "inside" else 0.0

    @property
    def slab(self) -> float | None:
        """The thinnest wood that still shows on both faces; None where it need not."""
        return self.cured if self.lies == "through" else None

    @property
    def most_wood(self) -> float | None:
        """The thickest wood, at its thickest, that keeps its cover; None where it has none. Zero or less: there is no room."""
        if self.lies not in ("under", "inside"):
            return None
        return self.finished + self.under - self.raised - self.bow - self.cover

    def over(self, wood: float) -> float:
        """Resin left over wood of this thickness, where it is least; below zero when the wood is cut into."""
        return self.finished + self.under - self.raised - self.bow - wood

    def for_wood(self, wood: float) -> float:
        """Finished thickness that keeps the cover over wood of this thickness."""
        return self.finished + self.cover - self.over(wood)


def mould_across(finished: float, edge: float) -> float:
    """Inside of the mould for a finished size: d + 2 e.

    Parameters
    ----------
    finished : across, or along one side, m, more than zero.
    edge : to cut away on each side, m.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(mould_across(0.300, 0.006), 3)
    0.312

    References
    ----------
    Exact arithmetic.
    """
    require_positive(finished=finished)
    return finished + 2 * edge


def tilt(slope: float, across: float) -> float:
    """How much deeper the middle of a mould is than its high side: slope times half the way across.

    Parameters
    ----------
    slope : fall of the floor per length, m/m.
    across : longest way, m.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(tilt(0.005, 0.300), 6)
    0.00075

    References
    ----------
    Exact: the liquid is level, the floor is not.
    """
    return slope * across / 2
