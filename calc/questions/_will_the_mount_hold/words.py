"""Figures and names as Will the mount hold? says them."""

from __future__ import annotations

import math

from calc.quantity.writing import Rounding, Shown, Style
from calc.questions import Given

CATCH = {"light": "a light catch", "ordinary": "an ordinary catch", "hard": "a hard catch"}
ACROSS = {"glue": "block", "faceplate": "circle", "chuck": "tenon"}
LEAST_MM = {"glue": 20, "faceplate": 30, "chuck": 20}  # below, a size is asked about as a slip: no answer names one
MOST_TIMES = 20.0  # more is only said to be over


def times(factor: float) -> str:
    """How many times, never more than it is.

    >>> times(3.19), times(12.7), times(37.7), times(0.02)
    ('3.1 times', '12 times', 'over 20 times', 'under 0.1 times')
    """
    if factor > MOST_TIMES:
        return f"over {MOST_TIMES:.0f} times"
    if factor < 0.1:
        return "under 0.1 times"
    return f"{math.floor(factor + 1e-9)} times" if factor >= 10 else f"{math.floor(10 * factor + 1e-9) / 10:.1f} times"


def bears(factor: float, catch: str) -> str:
    """What a factor means: how many times a catch it bears."""
    return "bears nothing" if factor < 0.1 else f"bears {times(factor)} {CATCH[catch]}"


def length(given: Given, metres: float, rounding: Rounding = "nearest") -> Shown:
    """Whole millimetres, or sixteenths."""
    return given.write(metres, "length", rounding)


def handy(given: Given, metres: float) -> Shown:
    """A size to make something to, up to the next 5 mm or quarter of an inch."""
    style = Style("mm", step=5) if given.system == "metric" else Style("in", step=1 / 4, fraction=True)
    return given.write(metres, ("length", style), "up")


def least_size(given: Given, metres: float, across_m: float) -> Shown:
    """The least size as it is told and handed on: up, and no smaller than is usual unless the mount there is smaller itself."""
    return handy(given, max(metres, min(LEAST_MM[given.choice("hold")] / 1e3, across_m)))


def tenths(given: Given, metres: float, rounding: Rounding = "nearest") -> Shown:
    """Tenths of a millimetre, or sixty-fourths."""
    style = Style("mm", step=0.1) if given.system == "metric" else Style("in", step=1 / 64, fraction=True)
    shown = given.write(metres, ("length", style), rounding)
    return Shown(shown.text.removesuffix(".0"), shown.unit, shown.si)


def exact(given: Given, metres: float) -> Shown:
    """A distance off centre to hand on, up to the next tenth of a millimetre or hundredth of an inch: a coarser one would lower the next page's speed."""
    return given.write(metres, ("length", Style(given.pick("mm", "in"), step=0.1 if given.system == "metric" else 0.01)), "up")


def hair(given: Given, metres: float, rounding: Rounding = "up") -> Shown:
    """Hundredths of a millimetre, or thousandths of an inch."""
    style = Style("mm", step=0.01) if given.system == "metric" else Style("in", step=0.001)
    return given.write(metres, ("length", style), rounding)
