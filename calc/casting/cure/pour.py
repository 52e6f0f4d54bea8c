"""One pour as it begins: the resin, its mould, the start, and the cells that they are cut into."""

from __future__ import annotations

from dataclasses import dataclass, replace

from calc.casting.cure.cells import Footprint, layout
from calc.casting.cure.kinetics import FIRST, Kinetics
from calc.casting.cure.solver import Curing, Field, Pace
from calc.casting.cure.thermal import LIQUID_CAPACITY, STILL, Films, Wall, materials
from calc.constants import ZERO_C


@dataclass(frozen=True)
class Fineness:
    """How finely a pour is cut, and how large its steps are.

    Parameters
    ----------
    rows, columns : of resin. pace : of the steps.
    """

    rows: int
    columns: int
    pace: Pace


FINE = Fineness(10, 6, Pace(1.0, 0.01, 900.0))
COARSE = Fineness(8, 5, Pace(2.0, 0.02, 1800.0))
#: For searches: its critical depths are within one percent of the fine ones.
ROUGH = Fineness(6, 5, Pace(3.0, 0.03, 3600.0))


@dataclass(frozen=True)
class Resin:
    """A mixed resin.

    Parameters
    ----------
    kinetics : its reaction. density : kg/m³. conductivity : W/(m K).
    capacity : a fixed heat capacity, J/(kg K); None follows temperature and cure.
    """

    kinetics: Kinetics
    density: float = materials()["epoxy"].density
    conductivity: float = materials()["epoxy"].conductivity
    capacity: float | None = None

    def at_rate(self, k25: float) -> Resin:
        """The same resin with another rate at 25 °C, 1/s."""
        return replace(self, kinetics=replace(self.kinetics, k25=k25))

    def faster(self, factor: float) -> Resin:
        """The same resin with its rate times ``factor``."""
        return self.at_rate(self.kinetics.k25 * factor)


@dataclass(frozen=True)
class Mould:
    """A mould where it stands.

    Parameters
    ----------
    footprint : inside. depth_m : of the resin, m. side : its wall, or None. below : what lies under the resin, from the bench up.
    films : the air on its faces; nothing below it but air means raised.
    wood_share : volume share of wood pieces in it, 0 to below 1.
    """

    footprint: Footprint
    depth_m: float
    side: Wall | None = None
    below: tuple[Wall, ...] = ()
    films: Films = STILL
    wood_share: float = 0.0


@dataclass(frozen=True)
class Start:
    """What the pour begins with.

    Parameters
    ----------
    air_k : the shop, K; mould and wood are as warm. resin_k : the mixed resin as it goes in, K. conversion : what it has done by then.
    """

    air_k: float
    resin_k: float
    conversion: float = FIRST


def field_of(resin: Resin, mould: Mould, start: Start, cut: Fineness, beneath: Field | None = None) -> Field:
    """The cells of a pour as it begins.

    Parameters
    ----------
    resin, mould, start : the pour.
    cut : how finely.
    beneath : an earlier layer in the same mould as it is now, cut as finely.

    Returns
    -------
    Field

    Examples
    --------
    >>> len(field_of(Resin(Kinetics(1e-5)), Mould(Footprint(0.1, 1.0), 0.04), Start(296.15, 296.15), FINE).t)
    10

    References
    ----------
    cure-solver; wood by mixing rules.
    """
    wood = materials()["hardwood"]
    share = mould.wood_share
    old = [] if beneath is None else [(height, 1) for height in beneath.cut.heights[beneath.cut.first_row :]]
    below = [(sheet, sheet.material.cells) for sheet in mould.below]
    cells = layout(mould.footprint, [*old, (mould.depth_m, cut.rows)], cut.columns, mould.side, below)
    reaction = Curing(resin.kinetics, resin.density, share, wood.density * wood.capacity, resin.capacity)
    conductivity = (1 - share) * resin.conductivity + share * wood.conductivity
    held = share * wood.density * wood.capacity
    in_resin = (1 - share) * resin.density * (LIQUID_CAPACITY[0] + LIQUID_CAPACITY[1] * (start.air_k - ZERO_C))
    first_k = (held * start.air_k + in_resin * start.resin_k) / (held + in_resin)
    field = Field(cells, reaction, conductivity, mould.films, start.air_k, start.air_k, start.conversion)
    fresh = (cells.fresh_row - cells.first_row) * cells.columns
    for cell in field.resin[fresh:]:
        field.k[cell] = first_k
    if beneath is not None:
        field.k[: len(beneath.k)] = beneath.k
        field.conversions[: len(beneath.conversions)] = beneath.conversions
    return field
