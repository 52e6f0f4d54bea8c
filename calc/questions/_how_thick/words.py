"""How lengths and pushes are written for the question How thick, how tall?"""

from __future__ import annotations

from collections.abc import Iterable

from calc.constants import STANDARD_GRAVITY
from calc.drawing import Sketch
from calc.quantity.units import from_si
from calc.quantity.writing import Rounding, Shown, Style
from calc.questions import Given


def length(given: Given, metres: float, rounding: Rounding = "nearest") -> Shown:
    """Whole millimetres, or sixteenths."""
    return given.write(metres, "length", rounding)


def fine(given: Given, metres: float, rounding: Rounding = "nearest") -> Shown:
    """One layer of several: tenths of a millimetre, or thirty-seconds."""
    style = Style("mm", step=0.1) if given.system == "metric" else Style("in", step=1 / 32, fraction=True)
    shown = given.write(metres, ("length", style), rounding)
    return Shown(shown.text.removesuffix(".0"), shown.unit, shown.si)


def weight(given: Given, newtons: float) -> Shown:
    """A push as the weight that pushes as hard, rounded up."""
    return given.write(newtons / STANDARD_GRAVITY, ("mass", Style(given.pick("kg", "lb"), figures=2)), "up")


def per_cent(given: Given, share: float) -> str:
    """A share with two figures, no zero after the point."""
    return str(given.write(share, "share")).replace(".0 ", " ")


def exact(metres: float) -> str:
    """For the working."""
    return f"{from_si(metres, 'length', 'mm'):.2f} mm"


def labels(sketch: Sketch, at: float, out: float, spacing: float, entries: Iterable[tuple[float, str]]) -> None:
    """Words to the right of a drawing, each with a line from the height it speaks of; pushed apart until none stands on another.

    Parameters
    ----------
    sketch : is added to.
    at : where the lines start, across; out : where the words do.
    spacing : least distance between two of them.
    entries : heights and words, from the bottom up.
    """
    lowest = -0.5 * spacing
    for height, words in entries:
        lowest = max(height, lowest + spacing)
        sketch.line([(at, height), (out, lowest)], "measure")
        sketch.text((out + spacing * 0.3, lowest - spacing * 0.3), words, "edge", "start")
