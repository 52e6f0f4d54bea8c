"""What a pour did, moment by moment, and the hours that can be read from it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.casting.cure.kinetics import GEL, WORKING_END
from calc.casting.cure.solver import Field
from calc.casting.cure.standards import standard

#: A new layer bonds from this conversion of the skin on.
LAYER_BONDS = standard("layer bonds")
#: Hotter than this the figure is no forecast: the run ends there.
RUNAWAY_K = standard("runaway")
_RISES_K = 0.05  # less than this is a wobble of the steps


@dataclass(frozen=True)
class Moment:
    """One step of a course.

    Parameters
    ----------
    time_s : since the pour. hottest_k, coldest_k : resin cells, K. mould_k : hottest place of the mould where the resin touches it, K.
    most, least : conversion of the cell that is furthest, and of the one that is least far. top : mean conversion of the topmost row.
    at : height of the hottest cell over the resin's floor, share of the depth.
    """

    time_s: float
    hottest_k: float
    coldest_k: float
    mould_k: float
    most: float
    least: float
    top: float
    at: float


@dataclass(frozen=True)
class Course:
    """What a pour did, from its start to its end, to its runaway or to its peak.

    Parameters
    ----------
    moments : its steps. air_k : the shop, K. field : the pour as it was at the end.
    """

    moments: tuple[Moment, ...]
    air_k: float
    field: Field

    @property
    def peak(self) -> Moment:
        """The hottest moment."""
        return max(self.moments, key=lambda one: one.hottest_k)

    @property
    def warmest_again(self) -> Moment | None:
        """The top of its own heat: its peak, or where it is hottest as it is poured the hottest moment of what rises after; None where it only cools."""
        peak = self.peak
        if peak.hottest_k > self.moments[0].hottest_k + _RISES_K:
            return peak
        lowest = math.inf
        for number, one in enumerate(self.moments):
            lowest = min(lowest, one.hottest_k)
            if one.hottest_k > lowest + _RISES_K:
                return max(self.moments[number:], key=lambda later: later.hottest_k)
        return None

    @property
    def ran_away(self) -> bool:
        """Whether it passed 150 °C, where the run ends."""
        return self.peak.hottest_k >= RUNAWAY_K

    @property
    def mould_k(self) -> float:
        """Hottest the mould gets where the resin touches it, K."""
        return max(one.mould_k for one in self.moments)

    @property
    def difference_k(self) -> float:
        """Between the hottest and the coldest resin at the peak, K."""
        return self.peak.hottest_k - self.peak.coldest_k

    @property
    def working_s(self) -> float | None:
        """When the first of it can no longer be poured, s."""
        return self.reaches("most", WORKING_END)

    @property
    def gel_s(self) -> float | None:
        """When the first of it gels, s."""
        return self.reaches("most", GEL)

    @property
    def gelled_s(self) -> float | None:
        """When all of it has gelled, s."""
        return self.reaches("least", GEL)

    def reaches(self, what: str, level: float) -> float | None:
        """When a conversion (``most``, ``least`` or ``top``) reaches ``level``, s; None if it does not in this run."""
        before = self.moments[0]
        for one in self.moments:
            now, then = getattr(one, what), getattr(before, what)
            if now >= level:
                return float(one.time_s if now == then else before.time_s + (one.time_s - before.time_s) * (level - then) / (now - then))
            before = one
        return None

    def cools_to(self, above_k: float) -> float | None:
        """When, past its peak, the hottest of it is within ``above_k`` (K) of the shop, s; None if it does not in this run."""
        peak = self.peak
        for one in self.moments:
            if one.time_s >= peak.time_s and one.most > WORKING_END and one.hottest_k <= self.air_k + above_k:
                return one.time_s
        return None
