"""The mould to scale: from above, and cut through the middle, with the fill line, the wood's share and the lengths as typed."""

from __future__ import annotations

from calc.casting.hollow_shapes import Ball, Trough
from calc.casting.outlines import Point, oval, scaled
from calc.casting.shapes import Loops, Ring, Shape
from calc.drawing import MOST_HEIGHT, WIDTH, Drawing, Look, Sketch
from calc.questions._is_it_enough.case import Case
from calc.questions._is_it_enough.words import percent, volume

_MARGIN = 26.0  # of the box that a sketch is fitted into
_BETWEEN = 44.0  # between the two views, in the box's units: a line of measure and its words stand there
_ABOVE = 0.15  # how far a wall of unknown height is drawn above the fill line, of the depth


def drawing(case: Case) -> Drawing | None:
    """The mould as it is; None where only its volume is known."""
    shape = case.mould.shape
    if shape is None:
        return None
    depth = case.mould.depth
    share = min(1.0, case.wood.volume / case.mould.volume)
    plan = shape.plan(depth)
    xs, ys = [x for x, _ in plan[0]], [y for _, y in plan[0]]
    wide, high = max(xs) - min(xs), max(ys) - min(ys)
    rim = _rim(case, shape)
    unit = max(wide / (WIDTH - 2 * _MARGIN), (high + rim) / (MOST_HEIGHT - 2 * _MARGIN - _BETWEEN))
    sketch = Sketch()
    _from_above(sketch, shape, plan, _share_in_plan(case, share))
    _cut(sketch, case, shape, min(ys) - _BETWEEN * unit - rim, share)
    length = str(case.given.write(wide, "length"))
    sketch.measure((min(xs), min(ys) - 18 * unit), (max(xs), min(ys) - 18 * unit), length)
    round_ = abs(high - wide) < 1e-6 * wide
    if not round_:
        sketch.measure((max(xs) + 6 * unit, min(ys)), (max(xs) + 6 * unit, max(ys)), str(case.given.write(high, "length")))
    return sketch.drawing("The mould to scale, from above and cut through", _says(case, length, share))


def _rim(case: Case, shape: Shape) -> float:
    """How high the wall is drawn."""
    wall = case.given.maybe("wall")
    rim = (1 + _ABOVE) * case.mould.depth if wall is None else wall
    return min(rim, shape.across) if isinstance(shape, (Ball, Trough)) else rim


def _share_in_plan(case: Case, share: float) -> float:
    """Share of the area that the wood takes, as it stands from the floor to its top."""
    height = case.given.maybe("wood_height")
    depth = case.mould.depth
    return min(1.0, share * depth / min(height, depth)) if height else share


def _from_above(sketch: Sketch, shape: Shape, plan: Loops, share: float) -> None:
    sketch.polygon(plan[0], "resin")
    if isinstance(shape, Ring):
        middle, thick = (shape.across + shape.core) / 4, (shape.across - shape.core) / 2
        if share > 0:
            outer, inner = 2 * middle + share * thick, 2 * middle - share * thick
            sketch.polygon(oval(outer, outer), "wood").polygon(oval(inner, inner), "resin")
        sketch.polygon(plan[1], "void")
    elif share > 0:
        sketch.polygon(scaled(plan[0], share**0.5), "wood")


def _cut(sketch: Sketch, case: Case, shape: Shape, floor: float, share: float) -> None:
    """The cut through the middle, its floor at that height."""
    given, depth = case.given, case.mould.depth
    level = given.si("reached") if case.pouring else depth

    def placed(points: tuple[Point, ...]) -> list[Point]:
        return [(x, z + floor) for x, z in points]

    def surface(height: float, look: Look) -> None:
        for loop in shape.cut(height):
            half = len(loop) // 2
            sketch.line(placed(loop[half - 1 : half + 1]), look)

    for loop in shape.cut(level):
        sketch.polygon(placed(loop), "resin")
    if share > 0:
        top = min(given.maybe("wood_height") or depth, depth)
        across = _share_in_plan(case, share) ** (1.0 if isinstance(shape, Ring) else 0.5)
        for loop in shape.cut(top):
            middle = sum(x for x, _ in loop) / len(loop)
            sketch.polygon(placed(tuple((middle + across * (x - middle), z) for x, z in loop)), "wood")
    ends: list[float] = []
    for loop in shape.cut(_rim(case, shape)):
        half = len(loop) // 2
        wall = placed((*loop[:half][::-1], *loop[half:][::-1]))
        sketch.line(wall, "mould")
        ends += [x for x, _ in wall]
    surface(level, "level")
    if case.pouring:
        surface(depth, "limit")
    right = max(ends) + 0.03 * (max(ends) - min(ends))
    sketch.measure((right, floor), (right, floor + depth), str(given.write(depth, "length")))


def _says(case: Case, length: str, share: float) -> str:
    """What is to be seen, in words."""
    given = case.given
    said = f"{given.label_of('shape')}, {length} across, filled {given.write(case.mould.depth, 'length')} deep"
    if case.pouring:
        said += f", now {given.write(given.si('reached'), 'length')}"
    wood = f"; wood takes {percent(share)} of {volume(case, case.mould.volume)}, drawn as a share, not in its own shape" if share > 0 else "; no wood in it"
    more = " Further parts are not drawn." if case.mould.parts or case.mould.volumes else ""
    return f"{said}{wood}.{more}"
