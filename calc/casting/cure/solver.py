"""Heat and cure in a pour, step by step: finite volumes, Douglas's alternating directions in delta form.

Each step takes the cure at its middle (never the last step's temperature: that delays a runaway), turns it into heat exactly,
and spreads the heat first upwards, then outwards. Written for plain Python: rows are lists, worked a whole row at a time.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from calc.casting.cure.cells import Grid, Layout, conductances
from calc.casting.cure.kinetics import FIRST, GAS_CONSTANT, MOST, REFERENCE_K, ZERO_C, Kinetics
from calc.casting.cure.thermal import GLASS_CAPACITY, LIQUID_CAPACITY, Films
from calc.sources import value

THETA = 0.55  # how far towards the end of a step the heat flow is taken; 0.5 is second order, above it damps
_BRAKE_FROM = value("cure", "brake from")
_WIDTH = value("cure", "brake width")


@dataclass(frozen=True)
class Pace:
    """How large a step may be.

    Parameters
    ----------
    warm_k : aim for the largest change of temperature in a step, K; cure : the same for the conversion.
    longest_s : s. A step that overshoots twice the aim is done again.
    """

    warm_k: float = 1.0
    cure: float = 0.01
    longest_s: float = 900.0
    first_s: float = 1.0


class Reaction(Protocol):
    """What makes the heat in a row of resin cells."""

    def row(
        self, t: Sequence[float], warming: Sequence[float], a: Sequence[float], dt: float
    ) -> tuple[list[float], list[float], list[float]]:
        """Over a step of ``dt`` (s): change of conversion, heat made (J per m³ of the cell), heat capacity at its middle (J/(m³ K)).

        ``t`` is the temperature (K), ``warming`` half the change expected over the step (K), ``a`` the conversion.
        """


@dataclass(frozen=True)
class Curing:
    """The reaction of a resin, with solid pieces in it.

    Parameters
    ----------
    kinetics : of the mixed resin. density : kg/m³.
    solids_share : volume share of pieces that take part in the heat but make none; solids_capacity : theirs, J/(m³ K).
    capacity : a fixed heat capacity of the resin, J/(kg K); None follows temperature and cure.
    """

    kinetics: Kinetics
    density: float
    solids_share: float = 0.0
    solids_capacity: float = 0.0
    capacity: float | None = None

    def row(
        self, t: Sequence[float], warming: Sequence[float], a: Sequence[float], dt: float
    ) -> tuple[list[float], list[float], list[float]]:
        """As :class:`Reaction` says."""
        kin = self.kinetics
        exp = math.exp
        m, b, n, lam1 = kin.m, kin.b, kin.n, 1.0 - kin.lam
        tg0, span = kin.tg0, (kin.tginf - kin.tg0) * kin.lam
        er = kin.e / GAS_CONSTANT
        k0 = kin.k25 * exp(er / REFERENCE_K)
        brake = _BRAKE_FROM if kin.brake else 2.0
        half = dt / 2
        solid = self.solids_share * self.solids_capacity
        mass = (1 - self.solids_share) * self.density
        made = mass * kin.heat
        liquid0, liquid1 = LIQUID_CAPACITY
        glass0, glass1 = GLASS_CAPACITY
        fixed = self.capacity
        da: list[float] = []
        heat: list[float] = []
        capacity: list[float] = []
        for kelvin, change, done in zip(t, warming, a, strict=True):
            rate = k0 * exp(-er / kelvin) * (b + done**m) * (1.0 - done) ** n
            if done > brake:
                rate /= 1.0 + exp((tg0 + span * done / (1.0 - lam1 * done) - kelvin) / _WIDTH)
            mid = done + half * rate
            if mid > MOST:
                mid = MOST
            middle = kelvin + change
            rubber = 1.0 / (1.0 + exp((tg0 + span * mid / (1.0 - lam1 * mid) - middle) / _WIDTH))
            grown = dt * k0 * exp(-er / middle) * (b + mid**m) * (1.0 - mid) ** n
            if mid > brake:
                grown *= rubber
            if done + grown > MOST:
                grown = MOST - done
            da.append(grown)
            heat.append(made * grown)
            if fixed is None:
                celsius = middle - ZERO_C
                glass = glass0 + glass1 * celsius
                capacity.append(solid + mass * (glass + rubber * (liquid0 + liquid1 * celsius - glass)))
            else:
                capacity.append(solid + mass * fixed)
        return da, heat, capacity


class Field:
    """Temperatures and conversions of all cells, and how to take them a step on.

    Parameters
    ----------
    cut : the cells. reaction : what makes heat in the resin. conductivity : of the resin with what is in it, W/(m K).
    films : the air on the faces. air_k : the air, K.
    start_k : all cells at first, K. first : the resin's conversion at first.
    """

    def __init__(
        self, cut: Layout, reaction: Reaction, conductivity: float, films: Films, air_k: float, start_k: float, first: float = FIRST
    ) -> None:
        self.cut, self.reaction, self.conductivity, self.films, self.air_k = cut, reaction, conductivity, films, air_k
        self.time_s = 0.0
        rows, columns = len(cut.heights), len(cut.widths)
        self.t: Grid = [[start_k] * columns for _ in range(rows)]
        self.a: Grid = [[first] * cut.columns for _ in range(rows - cut.first_row)]
        self._last: Grid = [[0.0] * columns for _ in range(rows)]
        self._last_dt = 1.0
        self._volumes = cut.volumes()
        self._stored = [
            [0.0 if material is None else volume * material.density * material.capacity for volume, material in zip(vs, ms, strict=True)]
            for vs, ms in zip(self._volumes, cut.solids, strict=True)
        ]
        joined = conductances(cut, conductivity)
        self._up, self._out = joined.up, joined.out
        self._up_theta = [[THETA * g for g in row] for row in self._up]
        self._out_theta = [[THETA * g for g in row] for row in self._out]
        zero = [0.0] * columns
        under, over = [zero, *self._up_theta], [*self._up_theta, zero]
        self._up_sum = [[lower + upper for lower, upper in zip(*pair, strict=True)] for pair in zip(under, over, strict=True)]
        self._out_sum = [[inner + outer for inner, outer in zip([0.0, *row], [*row, 0.0], strict=True)] for row in self._out_theta]
        self._out_back = [[0.0, *row] for row in self._out_theta]
        self._out_on = [[*row, 0.0] for row in self._out_theta]
        rings = [cut.ring(column) for column in range(columns)]
        self._rings = rings
        self._seen = sum(rings)
        self._shell = [height * cut.edges()[-1] ** cut.j for height in cut.heights]
        k = [[conductivity if material is None else material.conductivity for material in row] for row in cut.solids]
        self._top_half = [cut.heights[-1] / 2 / each for each in k[-1]]
        self._bottom_half = [cut.heights[0] / 2 / each for each in k[0]]
        self._side_half = [cut.widths[-1] / 2 / row[-1] for row in k]
        self._high, self._wide = cut.depth(), cut.edges()[-1]

    def step(self, dt: float) -> tuple[float, float]:
        """Try a step of ``dt`` (s); :meth:`keep` makes it count.

        Returns
        -------
        tuple of float
            largest change of temperature (K) and of conversion in any cell.
        """
        t, air, first, columns = self.t, self.air_k, self.cut.first_row, self.cut.columns
        inverse = 1.0 / dt
        ahead = dt / 2 / self._last_dt
        # cure and heat capacity
        sources: Grid = []
        stores: Grid = []
        grown: Grid = []
        for i, (row, stored, volume) in enumerate(zip(t, self._stored, self._volumes, strict=True)):
            if i < first:
                sources.append([0.0] * len(row))
                stores.append([c * inverse for c in stored])
                continue
            warming = [ahead * change for change in self._last[i][:columns]]
            da, heat, capacity = self.reaction.row(row[:columns], warming, self.a[i - first], dt)
            grown.append(da)
            sources.append([v * q * inverse for v, q in zip(volume, heat, strict=False)] + [0.0] * (len(row) - columns))
            stores.append([v * c * inverse for v, c in zip(volume, capacity, strict=False)] + [c * inverse for c in stored[columns:]])
        # air on the faces
        tops, sides, bottoms = self._faces(t)
        # what flows at the start of the step
        rest: Grid = []
        below = [g * (air - kelvin) for g, kelvin in zip(bottoms, t[0], strict=True)]
        below = [-q for q in below]
        for i, row in enumerate(t):
            above = (
                [g * (upper - lower) for g, upper, lower in zip(self._up[i], t[i + 1], row, strict=True)]
                if i + 1 < len(t)
                else [g * (air - kelvin) for g, kelvin in zip(tops, row, strict=True)]
            )
            outward = [g * (outer - inner) for g, inner, outer in zip(self._out[i], row, row[1:], strict=False)]
            outward.append(sides[i] * (air - row[-1]))
            rest.append(
                [s + up - down + out - into for s, up, down, out, into in zip(sources[i], above, below, outward, [0.0, *outward[:-1]], strict=True)]
            )
            below = above
        return self._spread(dt, rest, stores, tops, sides, bottoms, grown)

    def _spread(
        self, dt: float, rest: Grid, stores: Grid, tops: list[float], sides: list[float], bottoms: list[float], grown: Grid
    ) -> tuple[float, float]:
        """The two sets of tridiagonal solves."""
        last = len(rest) - 1
        # upwards, all columns at once
        joined: Grid = []
        shares: Grid = []
        for i in range(last + 1):
            diagonal = self._up_sum[i]
            if i == 0:
                diagonal = [s + THETA * g for s, g in zip(diagonal, bottoms, strict=True)]
            if i == last:
                diagonal = [s + THETA * g for s, g in zip(diagonal, tops, strict=True)]
            if i == 0:
                pivots = [1.0 / (c + s) for c, s in zip(stores[i], diagonal, strict=True)]
                known = [r * v for r, v in zip(rest[i], pivots, strict=True)]
            else:
                under = self._up_theta[i - 1]
                pivots = [1.0 / (c + s - g * p) for c, s, g, p in zip(stores[i], diagonal, under, shares[-1], strict=True)]
                known = [(r + g * d) * v for r, g, d, v in zip(rest[i], under, joined[-1], pivots, strict=True)]
            joined.append(known)
            if i < last:
                shares.append([g * v for g, v in zip(self._up_theta[i], pivots, strict=True)])
        for i in range(last - 1, -1, -1):
            joined[i] = [d + p * upper for d, p, upper in zip(joined[i], shares[i], joined[i + 1], strict=True)]
        # outwards, row by row
        change: Grid = []
        hottest = 0.0
        for i in range(last + 1):
            share = known_d = 0.0
            eliminated: list[tuple[float, float]] = []
            diagonal = self._out_sum[i]
            diagonal = [*diagonal[:-1], diagonal[-1] + THETA * sides[i]]
            for c, s, back, on, d in zip(stores[i], diagonal, self._out_back[i], self._out_on[i], joined[i], strict=True):
                pivot = 1.0 / (c + s - back * share)
                known_d = (c * d + back * known_d) * pivot
                share = on * pivot
                eliminated.append((known_d, share))
            solved: list[float] = []
            outer = 0.0
            for known_d, share in reversed(eliminated):
                outer = known_d + share * outer
                solved.append(outer)
            solved.reverse()
            hottest = max(hottest, max(solved), -min(solved))
            change.append(solved)
        self._try = (dt, change, grown)
        return hottest, max(map(max, grown))

    def keep(self) -> None:
        """Make the last :meth:`step` count."""
        dt, change, grown = self._try
        self.t = [[kelvin + d for kelvin, d in zip(row, ds, strict=True)] for row, ds in zip(self.t, change, strict=True)]
        self.a = [[done + d for done, d in zip(row, ds, strict=True)] for row, ds in zip(self.a, grown, strict=True)]
        self._last, self._last_dt = change, dt
        self.time_s += dt

    def advance(self, dt: float, pace: Pace) -> tuple[float, float]:
        """One step of about ``dt`` (s), made smaller until it keeps to ``pace``.

        Returns
        -------
        tuple of float
            the step taken and the one to try next, s.
        """
        while True:
            warm, cured = self.step(dt)
            over = max(warm / pace.warm_k, cured / pace.cure, 1e-9)
            if over <= 2.0 or dt < 1e-3:
                break
            dt = max(dt / over, dt / 10)
        self.keep()
        return dt, min(dt * min(2.0, 1.0 / over), pace.longest_s)

    def mean_k(self) -> float:
        """Mean temperature of the resin, K."""
        return self._mean([row[: self.cut.columns] for row in self.t[self.cut.first_row :]])

    def mean_a(self) -> float:
        """Mean conversion of the resin."""
        return self._mean(self.a)

    def _mean(self, grid: Grid) -> float:
        volumes = [row[: self.cut.columns] for row in self._volumes[self.cut.first_row :]]
        whole = sum(map(sum, volumes))
        return sum(v * x for vs, xs in zip(volumes, grid, strict=True) for v, x in zip(vs, xs, strict=True)) / whole

    def _faces(self, t: Grid) -> tuple[list[float], list[float], list[float]]:
        """Conductance from the outermost cells to the air: top, sides, bottom."""
        air, films = self.air_k, self.films
        top = sum(r * kelvin for r, kelvin in zip(self._rings, t[-1], strict=True)) / self._seen
        bottom = sum(r * kelvin for r, kelvin in zip(self._rings, t[0], strict=True)) / self._seen
        side = sum(s * row[-1] for s, row in zip(self._shell, t, strict=True)) / sum(self._shell)
        on_top = films.on_top(top - air, self._wide)
        on_side = films.on_side(side - air, self._high)
        under = films.below(bottom - air, self._wide)
        return (
            [r / (1 / on_top + half) if on_top else 0.0 for r, half in zip(self._rings, self._top_half, strict=True)],
            [s / (1 / on_side + half) if on_side else 0.0 for s, half in zip(self._shell, self._side_half, strict=True)],
            [r / (1 / under + half) if under else 0.0 for r, half in zip(self._rings, self._bottom_half, strict=True)],
        )
