"""A pour and its mould as cells: rows from the bench up, columns from the middle out.

Symbols: j lateral exponent, 0 for a long bar, 1 for a round, 2 for a ball; r distance from the middle plane or axis; half-width
a_h. Any footprint becomes half a section with its own j, so that two directions stand for three.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from calc.casting.cure.thermal import Material, Wall

Grid = list[list[float]]


@dataclass(frozen=True)
class Footprint:
    """What a mould looks like from above, as half a section.

    Parameters
    ----------
    half_width_m : a_h, m. j : lateral exponent.
    """

    half_width_m: float
    j: float


def round_footprint(diameter_m: float) -> Footprint:
    """The footprint of a round mould.

    Parameters
    ----------
    diameter_m : m.

    Returns
    -------
    Footprint

    Examples
    --------
    >>> round_footprint(0.2)
    Footprint(half_width_m=0.1, j=1.0)

    References
    ----------
    arithmetic.
    """
    return Footprint(diameter_m / 2, 1.0)


def oblong_footprint(length_m: float, width_m: float) -> Footprint:
    """The footprint of an oblong mould: j = (W/L)², a_h = (W/2) (1 + 0.065 j).

    Parameters
    ----------
    length_m, width_m : m; the longer and the shorter in either order.

    Returns
    -------
    Footprint

    Notes
    -----
    Within 1 K of a three-dimensional solver for cubes, tiles, slabs and pillars near 40 °C.

    Examples
    --------
    >>> oblong_footprint(0.6, 0.15).j
    0.0625

    References
    ----------
    cure-solver: chosen on 13 cases, tried on 9 more.
    """
    width, length = sorted((length_m, width_m))
    j = (width / length) ** 2
    return Footprint(width / 2 * (1 + 0.065 * j), j)


@dataclass(frozen=True)
class Layout:
    """Which cells there are.

    Parameters
    ----------
    heights : of the rows, m, from below; widths : of the columns, m, from the middle. j : lateral exponent.
    first_row : the first row of resin; all rows above it are resin within the first ``columns`` columns. fresh_row : the first
        row of the newest layer.
    solids : material of each cell that is not resin, by row and column; None in the resin.
    """

    heights: tuple[float, ...]
    widths: tuple[float, ...]
    j: float
    first_row: int
    fresh_row: int
    columns: int
    solids: tuple[tuple[Material | None, ...], ...]

    def edges(self) -> list[float]:
        """Radii of the columns' edges, m, from 0."""
        found = [0.0]
        for width in self.widths:
            found.append(found[-1] + width)
        return found

    def ring(self, column: int) -> float:
        """Area of a column seen from above, in the units that ``j`` makes."""
        edges, power = self.edges(), self.j + 1
        return float((edges[column + 1] ** power - edges[column] ** power) / power)

    def volumes(self) -> Grid:
        """Volume of each cell."""
        rings = [self.ring(column) for column in range(len(self.widths))]
        return [[height * ring for ring in rings] for height in self.heights]

    def depth(self) -> float:
        """Of the resin, m."""
        return sum(self.heights[self.first_row :])


def layout(footprint: Footprint, resin: Sequence[tuple[float, int]], columns: int, side: Wall | None, below: Sequence[tuple[Wall, int]]) -> Layout:
    """Cut a pour and its mould into cells.

    Parameters
    ----------
    footprint : inside the mould.
    resin : its layers from below, each a depth (m) and how many rows it is cut into.
    columns : how many columns the half-width is cut into.
    side : the mould's side wall, or None.
    below : what lies under the resin, from the bench up, each a sheet and how many rows; it reaches under the side walls.

    Returns
    -------
    Layout

    Examples
    --------
    >>> layout(Footprint(0.1, 1.0), [(0.04, 10)], 6, None, []).first_row
    0

    References
    ----------
    arithmetic.
    """
    walls = 0 if side is None else side.material.cells
    widths = [footprint.half_width_m / columns] * columns + ([] if side is None else [side.thickness_m / walls] * walls)
    heights: list[float] = []
    solids: list[tuple[Material | None, ...]] = []
    for sheet, rows in below:
        heights += [sheet.thickness_m / rows] * rows
        solids += [(sheet.material,) * len(widths)] * rows
    first = len(heights)
    for depth, rows in resin:
        heights += [depth / rows] * rows
        beside = () if side is None else (side.material,) * walls
        solids += [(None,) * columns + beside] * rows
    return Layout(tuple(heights), tuple(widths), footprint.j, first, len(heights) - resin[-1][1], columns, tuple(solids))


@dataclass(frozen=True)
class Conductances:
    """Between neighbours: ``up[i]`` from row i to the row above, ``out[i]`` from each column of row i to the next; W/K."""

    up: Grid
    out: Grid


def conductances(cut: Layout, resin_conductivity: float) -> Conductances:
    """Conductance between neighbours, half-cells in series: area / (d1 / 2 k1 + d2 / 2 k2).

    Parameters
    ----------
    cut : the cells.
    resin_conductivity : k of the resin (and what is in it), W/(m K).

    Returns
    -------
    Conductances

    Examples
    --------
    >>> round(conductances(layout(Footprint(0.1, 0.0), [(0.04, 2)], 1, None, []), 0.2).up[0][0], 6)
    1.0

    References
    ----------
    arithmetic (finite volumes).
    """
    k = [[resin_conductivity if material is None else material.conductivity for material in row] for row in cut.solids]
    edges = cut.edges()
    rings = [cut.ring(column) for column in range(len(cut.widths))]
    rows, columns = range(len(cut.heights)), range(len(cut.widths))
    high, wide = cut.heights, cut.widths
    up = [[rings[c] / (high[i] / 2 / k[i][c] + high[i + 1] / 2 / k[i + 1][c]) for c in columns] for i in rows[:-1]]
    out = [
        [high[i] * edges[c + 1] ** cut.j / (wide[c] / 2 / k[i][c] + wide[c + 1] / 2 / k[i][c + 1]) for c in columns[:-1]] for i in rows
    ]
    return Conductances(up, out)
