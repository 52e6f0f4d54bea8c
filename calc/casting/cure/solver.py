"""Heat and cure in a pour, step by step: finite volumes, Douglas's alternating directions in delta form.

Each step takes the cure at its middle (never the last step's temperature: that delays a runaway), turns it into heat exactly,
and spreads the heat first upwards, then outwards. Written for plain Python: flat lists, few calls.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from calc.casting.cure.cells import Conductances, Grid, Layout, conductances
from calc.casting.cure.kinetics import FIRST, MOST, REFERENCE_K, Kinetics
from calc.casting.cure.standards import standard
from calc.casting.cure.thermal import GLASS_CAPACITY, LIQUID_CAPACITY, Films
from calc.constants import GAS_CONSTANT, ZERO_C

THETA = 0.55  # how far towards the end of a step the heat flow is taken; 0.5 is second order, above it damps
_BRAKE_FROM = standard("brake from")
_WIDTH = standard("brake width")


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
        self, t: Sequence[float], warming: Sequence[float], a: Sequence[float], growing: Sequence[float], dt: float
    ) -> tuple[list[float], list[float], list[float]]:
        """Over a step of ``dt`` (s): change of conversion, heat made (J per m³ of the cell), heat capacity at its middle (J/(m³ K)).

        ``t`` is the temperature (K), ``a`` the conversion; ``warming`` and ``growing`` half of what each is expected to change.
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
        self, t: Sequence[float], warming: Sequence[float], a: Sequence[float], growing: Sequence[float], dt: float
    ) -> tuple[list[float], list[float], list[float]]:
        """As :class:`Reaction` says."""
        kin = self.kinetics
        exp = math.exp
        m, b, n, lam1 = kin.m, kin.b, kin.n, 1.0 - kin.lam
        tg0, span = kin.tg0, (kin.tginf - kin.tg0) * kin.lam
        er = kin.e / GAS_CONSTANT
        k0 = kin.k25 * exp(er / REFERENCE_K)
        brake = _BRAKE_FROM if kin.brake else 2.0
        step = dt * k0
        solid = self.solids_share * self.solids_capacity
        mass = (1 - self.solids_share) * self.density
        made = mass * kin.heat
        liquid0, liquid1 = LIQUID_CAPACITY
        glass0, glass1 = GLASS_CAPACITY
        fixed = self.capacity
        da: list[float] = []
        heat: list[float] = []
        capacity: list[float] = []
        for kelvin, change, done, more in zip(t, warming, a, growing, strict=True):
            mid = done + more
            if mid > MOST:
                mid = MOST
            middle = kelvin + change
            rubber = 1.0 / (1.0 + exp((tg0 + span * mid / (1.0 - lam1 * mid) - middle) / _WIDTH))
            grown = step * exp(-er / middle) * (b + mid**m) * (1.0 - mid) ** n
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

    Cells lie one after the other, row by row from below, in each row from the middle out. A conductance of nought at the end
    of a row parts it from the next, so that one pass solves all of them.

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
        cells = range(rows * columns)
        self.resin = [i * columns + c for i in range(cut.first_row, rows) for c in range(cut.columns)]
        self.k: list[float] = [start_k for _ in cells]
        self.conversions: list[float] = [first for _ in self.resin]
        self._change, self._grown, self._last_dt = [0.0 for _ in cells], [0.0 for _ in self.resin], 1.0
        volumes = [volume for row in cut.volumes() for volume in row]
        solids = [material for row in cut.solids for material in row]
        self._volumes = [volumes[cell] for cell in self.resin]
        stored = [0.0 if m is None else v * m.density * m.capacity for v, m in zip(volumes, solids, strict=True)]
        self._solid = [(cell, stored[cell]) for cell in cells if stored[cell]]
        self._joined(conductances(cut, conductivity))
        self._edges([conductivity if material is None else material.conductivity for material in solids])

    def _joined(self, between: Conductances) -> None:
        """Conductances, and what the solves make of them: upwards column by column, outwards row by row."""
        rows, columns = len(self.cut.heights), len(self.cut.widths)
        self._up = [g for row in between.up for g in row]
        self._out = [g for row in between.out for g in (*row, 0.0)]
        across = [THETA * g for g in self._out]
        self._out_on, self._out_back = across, [0.0, *across[:-1]]
        self._out_sum = [back + on for back, on in zip(self._out_back, self._out_on, strict=True)]
        upright = [THETA * (between.up[i][c] if i + 1 < rows else 0.0) for c in range(columns) for i in range(rows)]
        self._up_on, self._up_back = upright, [0.0, *upright[:-1]]
        self._up_sum = [back + on for back, on in zip(self._up_back, self._up_on, strict=True)]
        self._up_plain, self._out_plain = list(self._up_sum), list(self._out_sum)

    def _edges(self, k: list[float]) -> None:
        """Areas of the faces, and the half-cells behind them."""
        cut = self.cut
        rows, columns = len(cut.heights), len(cut.widths)
        self._rings = [cut.ring(column) for column in range(columns)]
        self._shell = [height * cut.edges()[-1] ** cut.j for height in cut.heights]
        self._plan, self._round = sum(self._rings), sum(self._shell)
        self._top_half = [cut.heights[-1] / 2 / each for each in k[-columns:]]
        self._bottom_half = [cut.heights[0] / 2 / each for each in k[:columns]]
        self._side_half = [cut.widths[-1] / 2 / each for each in k[columns - 1 :: columns]]
        self._high, self._wide = cut.depth(), cut.edges()[-1]
        self._ends = range(columns - 1, rows * columns, columns)

    @property
    def t(self) -> Grid:
        """Temperatures by row and column, K."""
        wide = len(self.cut.widths)
        return [self.k[start : start + wide] for start in range(0, len(self.k), wide)]

    @t.setter
    def t(self, rows: Grid) -> None:
        self.k = [kelvin for row in rows for kelvin in row]

    @property
    def a(self) -> Grid:
        """Conversions by row and column of the resin."""
        wide = self.cut.columns
        return [self.conversions[start : start + wide] for start in range(0, len(self.conversions), wide)]

    @a.setter
    def a(self, rows: Grid) -> None:
        self.conversions = [done for row in rows for done in row]

    def resin_k(self) -> list[float]:
        """Temperatures of the resin cells, row by row, K."""
        k = self.k
        return [k[cell] for cell in self.resin]

    def step(self, dt: float) -> tuple[float, float]:
        """Try a step of ``dt`` (s); :meth:`keep` makes it count.

        Returns
        -------
        tuple of float
            largest change of temperature (K) and of conversion in any cell.
        """
        k, air, columns = self.k, self.air_k, len(self.cut.widths)
        inverse, ahead = 1.0 / dt, dt / 2 / self._last_dt
        # cure and heat capacity
        change = self._change
        warming = [ahead * change[cell] for cell in self.resin]
        growing = [ahead * more for more in self._grown]
        grown, heat, capacity = self.reaction.row(self.resin_k(), warming, self.conversions, growing, dt)
        rest = [0.0] * len(k)
        stores = [0.0] * len(k)
        for cell, volume, made, held in zip(self.resin, self._volumes, heat, capacity, strict=True):
            volume *= inverse
            rest[cell] = volume * made
            stores[cell] = volume * held
        for cell, stored in self._solid:
            stores[cell] = stored * inverse
        # what flows at the start of the step
        tops, sides, bottoms = self._faces()
        above = [g * (upper - lower) for g, upper, lower in zip(self._up, k[columns:], k, strict=False)]
        below = [g * (kelvin - air) for g, kelvin in zip(bottoms, k, strict=False)]
        below += above
        above += [g * (air - kelvin) for g, kelvin in zip(tops, k[-columns:], strict=True)]
        outward = [g * (outer - inner) for g, outer, inner in zip(self._out, k[1:], k, strict=False)]
        outward.append(0.0)
        inward = [0.0, *outward]
        for end, g in zip(self._ends, sides, strict=True):
            outward[end] = g * (air - k[end])
        rest = [s + up - down + out - into for s, up, down, out, into in zip(rest, above, below, outward, inward, strict=False)]
        # spread: upwards, then outwards
        rows = len(self._shell)
        up_sum, out_sum = list(self._up_plain), list(self._out_plain)
        for column in range(columns):
            up_sum[column * rows] += THETA * bottoms[column]
            up_sum[(column + 1) * rows - 1] += THETA * tops[column]
        for end, g in zip(self._ends, sides, strict=True):
            out_sum[end] += THETA * g
        standing = [each for column in range(columns) for each in stores[column::columns]]
        told = [each for column in range(columns) for each in rest[column::columns]]
        upward = _solved(standing, up_sum, self._up_back, self._up_on, told)
        told = [c * d for row in range(rows) for c, d in zip(stores[row * columns : (row + 1) * columns], upward[row::rows], strict=True)]
        changes = _solved(stores, out_sum, self._out_back, self._out_on, told)
        self._try = (dt, changes, grown)
        return max(max(changes), -min(changes)), max(grown)

    def keep(self) -> None:
        """Make the last :meth:`step` count."""
        self._last_dt, self._change, self._grown = self._try
        self.k = [kelvin + d for kelvin, d in zip(self.k, self._change, strict=True)]
        self.conversions = [done + d for done, d in zip(self.conversions, self._grown, strict=True)]
        self.time_s += self._last_dt

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
        return self._mean(self.resin_k())

    def mean_a(self) -> float:
        """Mean conversion of the resin."""
        return self._mean(self.conversions)

    def _mean(self, values: Sequence[float]) -> float:
        return sum(v * x for v, x in zip(self._volumes, values, strict=True)) / sum(self._volumes)

    def _faces(self) -> tuple[list[float], list[float], list[float]]:
        """Conductance from the outermost cells to the air: top, sides, bottom. A face is as warm as the mean of its cells."""
        k, air, films, columns = self.k, self.air_k, self.films, len(self._rings)
        top = sum([r * kelvin for r, kelvin in zip(self._rings, k[-columns:], strict=True)]) / self._plan
        bottom = sum([r * kelvin for r, kelvin in zip(self._rings, k, strict=False)]) / self._plan
        side = sum([s * kelvin for s, kelvin in zip(self._shell, k[columns - 1 :: columns], strict=True)]) / self._round
        return (
            _through(films.on_top(top - air, self._wide), self._rings, self._top_half),
            _through(films.on_side(side - air, self._high), self._shell, self._side_half),
            _through(films.below(bottom - air, self._wide), self._rings, self._bottom_half),
        )


def _through(film: float, areas: Sequence[float], halves: Sequence[float]) -> list[float]:
    """A film in series with the half-cells behind it."""
    if not film:
        return [0.0] * len(areas)
    resistance = 1 / film
    return [area / (resistance + half) for area, half in zip(areas, halves, strict=True)]


def _solved(stores: Sequence[float], joined: Sequence[float], back: Sequence[float], on: Sequence[float], told: Sequence[float]) -> list[float]:
    """x of (stores + joined) x - back x[before] - on x[after] = told, by elimination forth and back."""
    known = share = 0.0
    knowns: list[float] = []
    shares: list[float] = []
    keep, pass_on = knowns.append, shares.append
    for c, s, before, after, d in zip(stores, joined, back, on, told, strict=True):
        pivot = 1.0 / (c + s - before * share)
        known = (d + before * known) * pivot
        share = after * pivot
        keep(known)
        pass_on(share)
    found: list[float] = []
    keep = found.append
    x = 0.0
    for known, share in zip(reversed(knowns), reversed(shares), strict=True):
        x = known + share * x
        keep(x)
    found.reverse()
    return found
