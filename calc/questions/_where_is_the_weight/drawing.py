"""The face of the blank to scale, 12 o'clock at the top: woods, centre, heavy spot, and where the weight goes."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from calc.casting.outlines import Point, oval
from calc.drawing import Drawing, Sketch
from calc.questions._where_is_the_weight.case import Case
from calc.questions._where_is_the_weight.moves import Shift
from calc.questions._where_is_the_weight.parts import NOTHING_KG, clock
from calc.turning.clipping import inside_convex, moved

_SPOT = 0.045  # of the width: how large a spot or a weight is drawn


def drawing(case: Case, shift: Shift | None) -> Drawing:
    """What is there, seen from the face; ``shift`` is where woods should go."""
    sketch = Sketch()
    rim: Sequence[Point] = _rim(case)
    sketch.polygon(rim, "resin")
    if case.made:
        for piece in case.pieces:
            outline = _kept(piece.wood.corners, rim)
            if outline:
                sketch.polygon(outline, "metal" if piece.metal else "wood")
    if case.made and case.finish is not None:
        sketch.line(_closed(moved(oval(case.finish, case.finish), *case.axis)), "limit")
    if shift is not None:
        for piece in shift.pieces:
            goal = _kept(moved(piece.wood.corners, *shift.by), rim)
            if goal:
                sketch.line(_closed(goal), "limit")
    _cross(sketch, case)
    size = _SPOT * case.swept
    out = min(case.place, case.swept / 2 - size)
    if _shows(case):
        inwards = max(out - 3 * size, 0.4 * out)
        sketch.circle(_at(case, case.body.heavy, out), size, "spot").text(_at(case, case.body.heavy, inwards), "heavy")
        for weight, towards in () if case.unhung else case.weights:
            sketch.circle(_at(case, towards, out), size, "metal").text(_at(case, towards, inwards), case.grams(weight))
    top = max(y for _, y in rim)
    left, right, low = min(x for x, _ in rim), max(x for x, _ in rim), min(y for _, y in rim)
    sketch.text((0.0, top + 0.02 * case.swept), "12", "measure")
    below = low - 0.06 * case.swept
    across = right - left
    sketch.measure((left, below), (right, below), str(case.given.write(across, "length")))
    return sketch.drawing("The face to scale, 12 o'clock at the top", says(case, shift, across))


def says(case: Case, shift: Shift | None, across: float) -> str:
    """What is to be seen, in words."""
    given = case.given
    out = [f"{'Square cornered' if case.shaped and case.blank.corners else 'Round'}, {given.write(across, 'length')} across"]
    if case.made:
        metal = sum(piece.metal for piece in case.pieces)
        woods = len(case.pieces) - metal
        there = [f"{woods} {'woods' if woods > 1 else 'wood'}"] if woods else []
        out.append(" and ".join([*there, *([f"{metal} of metal or stone"] if metal else [])]) + " drawn in it")
        if case.axis != (0.0, 0.0):
            out.append("the cross is where the spindle sits")
    if case.hidden:
        out.append("no heavy spot shows")
    elif _shows(case):
        out.append(f"heavy spot (red) at {clock(case.body.heavy)}")
        for weight, towards in () if case.unhung else case.weights:
            out.append(f"{case.grams(weight)} (dark) at {clock(towards)}, {given.write(case.place, 'length')} from the spindle")
    if case.made and case.finish is not None:
        out.append("the dashed ring is what it is turned down to")
    if shift is not None:
        out.append("the dashed line is where the wood goes")
    return "; ".join(out) + "."


def _shows(case: Case) -> bool:
    """Whether there is a heavy spot to draw: none for what is in balance but for rounding."""
    return case.weight >= NOTHING_KG and not case.hidden


def _rim(case: Case) -> Sequence[Point]:
    across = case.blank.across_m if case.shaped else case.swept
    return case.blank.corners if case.shaped and case.blank.corners else oval(across, across)


def _kept(corners: Sequence[Point], rim: Sequence[Point]) -> Sequence[Point]:
    """The part of an outline inside the rim; the whole of it, untouched, where it stays well inside."""
    well_inside = 0.99 * min(math.hypot(x1 + x2, y1 + y2) / 2 for (x1, y1), (x2, y2) in itertools.pairwise([*rim, rim[0]]))
    return corners if all(math.hypot(*corner) <= well_inside for corner in corners) else inside_convex(corners, rim)


def _at(case: Case, towards: float, out: float) -> Point:
    x, y = case.axis if case.made else (0.0, 0.0)
    return x + out * math.cos(towards), y + out * math.sin(towards)


def _cross(sketch: Sketch, case: Case) -> None:
    x, y = case.axis if case.made else (0.0, 0.0)
    arm = 0.03 * case.swept
    sketch.line([(x - arm, y), (x + arm, y)], "edge").line([(x, y - arm), (x, y + arm)], "edge")


def _closed(points: Sequence[Point]) -> list[Point]:
    return [*points, points[0]]
