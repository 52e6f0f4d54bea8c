"""From a unit that a maker writes to a float in SI and back: the only file that imports Pint."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pint

from calc.quantity.kinds import KINDS


@cache
def _registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry(str(Path(__file__).with_name("units.txt")), cache_folder=None)


@cache
def _pint_unit(spelling: str) -> pint.Unit:
    return _registry().Unit(spelling)


@cache
def _scale(kind: str, symbol: str) -> tuple[float, float]:
    """One of the unit in SI, and the SI value of its zero: asked of Pint once, since an answer converts hundreds of times."""
    declared = KINDS[kind]
    unit, si = _pint_unit(declared.units[symbol]), _pint_unit(declared.si)
    zero = float(_registry().Quantity(0.0, unit).m_as(si))
    return float(_registry().Quantity(1.0, unit).m_as(si)) - zero, zero


def to_si(value: float, kind: str, symbol: str) -> float:
    """Convert ``value`` in the unit shown as ``symbol`` to the kind's SI float.

    >>> to_si(13.75, "length", "in")
    0.34925
    >>> round(to_si(68, "temperature", "°F"), 6)
    293.15
    """
    size, zero = _scale(kind, symbol)
    return value * size + zero


def from_si(value: float, kind: str, symbol: str) -> float:
    """Convert the kind's SI float to the unit shown as ``symbol``.

    >>> round(from_si(0.34925, "length", "in"), 9)
    13.75
    """
    size, zero = _scale(kind, symbol)
    return (value - zero) / size
