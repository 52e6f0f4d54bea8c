"""What carries heat: the materials of a mould, and the air on its faces.

Figures are in ``data/thermal.csv``. Symbols: h film, W/(m² K), heat that a face gives to the air for each kelvin between them.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from calc.casting.cure.standards import standard
from calc.constants import ZERO_C
from calc.sources import table

#: Heat capacity of epoxy, J/(kg K), at t °C: liquid or rubber, and glass, each a start and a slope (resin-capacity).
LIQUID_CAPACITY = (standard("liquid capacity"), standard("liquid capacity slope"))
GLASS_CAPACITY = (standard("glass capacity"), standard("glass capacity slope"))

_RADIATION = standard("film radiation")
_RADIATION_BARE = standard("film radiation bare")
_RISING = {face: standard(f"film {face}") for face in ("top", "side", "bottom")}
_FAN = standard("film fan")
_SHORTEST_M = standard("film shortest")
_LEAST_K = 0.5


@dataclass(frozen=True)
class Material:
    """One material.

    Parameters
    ----------
    id, name : as in ``data/thermal.csv``.
    density : kg/m³; capacity : J/(kg K); conductivity : W/(m K).
    gives_way_k : temperature from which it distorts under load, K; None where there is no limit here.
    usual_m : thickness of a mould of it, m. cells : how many cells that is cut into. source, limit_source : keys of the bibliography.
    """

    id: str
    name: str
    density: float
    capacity: float
    conductivity: float
    gives_way_k: float | None
    usual_m: float
    cells: int
    source: str
    limit_source: str


@cache
def materials() -> dict[str, Material]:
    """All materials by id.

    Returns
    -------
    dict of str to Material

    Examples
    --------
    >>> materials()["hdpe"].conductivity
    0.45

    References
    ----------
    Each row of the table names its own.
    """
    return {
        row["id"]: Material(
            row["id"], row["name"], float(row["density"]), float(row["capacity"]), float(row["conductivity"]),
            float(row["gives_way"]) + ZERO_C if row["gives_way"] else None, float(row["usual"] or 0) / 1e3, int(row["cells"] or 1),
            row["source"], row["limit_source"],
        )
        for row in table("thermal")
    }


@dataclass(frozen=True)
class Wall:
    """A sheet of one material, ``thickness_m`` thick."""

    material: Material
    thickness_m: float


@dataclass(frozen=True)
class Films:
    """The air on the faces of a mould.

    Parameters
    ----------
    top, side, bottom : fixed films, W/(m² K); None follows still air, h = 5.5 + C (dT / L)^0.25.
    fan : air moved over top and sides, about 1 m/s. bare : sides and bottom of bare metal, which hardly radiates.
    factor : on all of them, for a band; 1 as they are.
    """

    top: float | None = None
    side: float | None = None
    bottom: float | None = None
    fan: bool = False
    bare: bool = False
    factor: float = 1.0

    def on_top(self, difference_k: float, length_m: float) -> float:
        """Film of the top, ``difference_k`` between it and the air, half-width ``length_m``."""
        return self._film("top", self.top, difference_k, length_m, self.fan, False)

    def on_side(self, difference_k: float, length_m: float) -> float:
        """Film of the sides; ``length_m`` is the depth."""
        return self._film("side", self.side, difference_k, length_m, self.fan, self.bare)

    def below(self, difference_k: float, length_m: float) -> float:
        """Film of the underside; ``length_m`` is the half-width."""
        return self._film("bottom", self.bottom, difference_k, length_m, False, self.bare)

    def _film(self, face: str, fixed: float | None, difference_k: float, length_m: float, fan: bool, bare: bool) -> float:
        if fixed is not None:
            return fixed * self.factor
        if fan:
            return _FAN * self.factor
        rise = _RISING[face] * (max(abs(difference_k), _LEAST_K) / max(length_m, _SHORTEST_M)) ** 0.25
        return ((_RADIATION_BARE if bare else _RADIATION) + float(rise)) * self.factor


#: Still air on every face.
STILL = Films()


def reach(seconds: float) -> float:
    """How deep warmth gets into wood in a time: 2 sqrt(alpha t), with alpha of hardwood.

    Parameters
    ----------
    seconds : t, s.

    Returns
    -------
    float
        m; pieces thinner than this take their full share of the heat.

    Examples
    --------
    >>> round(reach(600), 3), round(reach(12 * 3600), 2)
    (0.019, 0.16)

    References
    ----------
    building-thermal for the three figures of alpha = k / (rho c).
    """
    wood = materials()["hardwood"]
    return float(2 * (wood.conductivity / (wood.density * wood.capacity) * seconds) ** 0.5)
