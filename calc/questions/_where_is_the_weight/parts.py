"""Small parts of Where is the weight?: its figures, directions by the clock, one wood as it was typed."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.quantity.writing import Rounding, Shown, Style, restate
from calc.questions import Given
from calc.questions._where_is_the_weight.fields import WOODS
from calc.sources import in_si
from calc.turning.make_up import Wood

NOTHING_KG = 0.0005  # a weight under half a gram is none
_BY_THE_CLOCK = math.pi / 6  # one hour


#: A figure of ``data/make_up.csv`` by the name of its row, in SI.
standard = in_si("make_up")


def direction(hours: float) -> float:
    """An hour of the clock as an angle from the right, rad."""
    return math.pi / 2 - hours * _BY_THE_CLOCK


def clock(angle: float) -> str:
    """A direction by the clock, to the half hour."""
    halves = round((math.pi / 2 - angle) / _BY_THE_CLOCK * 2) % 24
    hour = halves // 2 or 12
    return f"half past {hour}" if halves % 2 else f"{hour} o'clock"


def tape(given: Given, length: float) -> str:
    """A length finely, for an error."""
    unit = given.pick("mm", "in")
    return f"{restate(length, 'length', unit)} {unit}"


def small(given: Given, mass: float, rounding: Rounding = "nearest") -> Shown:
    """A small mass, to two figures: a light weight is no nought."""
    return given.write(mass, ("mass", Style(given.pick("g", "oz"), figures=2)), rounding)


def grams(given: Given, mass: float) -> str:
    """The same as a text."""
    return str(small(given, mass))


@dataclass(frozen=True)
class Piece:
    """One wood as it was typed: its field name, the wood, and how surely its density is known (a fraction)."""

    name: str
    shape: str
    wood: Wood
    spread: float
    sources: tuple[str, ...]

    @property
    def title(self) -> str:
        """As it is told: the wood, the second wood."""
        return f"the {WOODS[self.name]}"

    @property
    def loose(self) -> bool:
        """Whether it could stand elsewhere in the mould."""
        return self.shape in ("round", "block", "outline", "strip")

    @property
    def metal(self) -> bool:
        """Heavier than any wood."""
        return self.wood.density >= standard("metal")
