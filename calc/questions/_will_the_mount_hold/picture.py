"""The piece on its mount from the side, to scale: the spindle lies across, the headstock to the left."""

from __future__ import annotations

from calc.drawing import Drawing, Point, Sketch
from calc.questions import Given
from calc.questions._will_the_mount_hold.words import length
from calc.turning.held import Between, Held

_FAR_END = {"none": "nothing at the far end", "pad": "a flat pad pressed on at the far end", "live": "a live centre at the far end"}
_HELD = {"glue": "glue block", "faceplate": "screw circle", "chuck": "tenon"}


def _box(left: float, right: float, half: float, low: float | None = None) -> list[Point]:
    """A rectangle about the spindle's axis; from ``low`` up when given."""
    bottom = -half if low is None else low
    return [(left, bottom), (right, bottom), (right, half), (left, half)]


def _headstock(sketch: Sketch, kind: str, across: float, gap: float) -> float:
    """The mount, its face at 0; ``gap`` from there to the work. Gives how far it reaches to the left."""
    depth = 0.25 * across
    if kind == "chuck":
        sketch.polygon(_box(-depth, gap, across / 2), "wood")
        sketch.polygon(_box(-1.3 * depth, 0.0, 0.95 * across, across / 2), "metal")
        sketch.polygon([(x, -y) for x, y in _box(-1.3 * depth, 0.0, 0.95 * across, across / 2)], "metal")
        return -1.3 * depth
    if kind == "faceplate":
        sketch.polygon(_box(0.0, gap, 0.6 * across), "wood") if gap > 0 else None
        sketch.polygon(_box(-0.12 * across, 0.0, 0.6 * across), "metal")
        for side in (1, -1):
            sketch.line([(-0.12 * across, side * across / 2), (max(gap, 0.1 * across), side * across / 2)], "axis")
        return -0.12 * across
    sketch.polygon(_box(-depth, gap, across / 2), "wood")
    sketch.polygon(_box(-1.5 * depth, -depth, 0.4 * across), "metal")
    return -1.5 * depth


def _tailstock(sketch: Sketch, far_end: str, at: float, size: float) -> float:
    if far_end == "none":
        return at
    if far_end == "live":
        sketch.polygon([(at, 0.0), (at + size, size / 2), (at + 1.6 * size, size / 2), (at + 1.6 * size, -size / 2), (at + size, -size / 2)], "metal")
    else:
        sketch.polygon(_box(at, at + 0.4 * size, 0.8 * size), "metal").polygon(_box(at + 0.4 * size, at + 1.6 * size, 0.3 * size), "metal")
    return at + 1.6 * size


def on_mount(given: Given, held: Held) -> Drawing:
    """Block, work, overhang and tailstock."""
    kind, across, thick, diameter = given.choice("hold"), held.mount.across_m, given.si("thickness"), held.diameter_m
    gap = max(held.overhang_m - thick / 2, 0.0)
    sketch = Sketch()
    left = _headstock(sketch, kind, across, gap)
    sketch.polygon(_box(gap, gap + thick, diameter / 2), "resin")
    right = _tailstock(sketch, held.far_end, gap + thick, 0.12 * diameter)
    sketch.line([(left, 0.0), (right, 0.0)], "axis")
    sketch.circle((held.overhang_m, 0.0), 0.015 * diameter, "spot")
    below = -diameter / 2 - 0.08 * diameter
    sketch.measure((0.0, below), (held.overhang_m, below), "")
    sketch.text((held.overhang_m / 2, below - 0.09 * diameter), f"{length(given, held.overhang_m)} out")
    sketch.measure((right + 0.08 * diameter, -diameter / 2), (right + 0.08 * diameter, diameter / 2), str(length(given, diameter)))
    above = 0.95 * across if kind == "chuck" else 0.6 * across
    sketch.text((min(left, -0.1 * diameter), above + 0.03 * diameter), str(length(given, across)))
    says = (
        f"From the side: work {length(given, diameter)} across and {length(given, thick)} thick, on a {_HELD[kind]} of {length(given, across)}, its middle "
        f"{length(given, held.overhang_m)} out from the mount, {_FAR_END[held.far_end]}."
    )
    return sketch.drawing("On the lathe, from the side", says)


def between_centres(given: Given, piece: Between) -> Drawing:
    """The piece between its points."""
    size, half = 0.25 * piece.diameter_m, piece.diameter_m / 2
    sketch = Sketch().polygon(_box(0.0, piece.length_m, half), "resin")
    sketch.polygon([(0.0, 0.0), (-size, size / 2), (-2 * size, size / 2), (-2 * size, -size / 2), (-size, -size / 2)], "metal")
    right = _tailstock(sketch, "live", piece.length_m, size)
    sketch.line([(-2 * size, 0.0), (right, 0.0)], "axis")
    if piece.steady:
        for side in (1, -1):
            sketch.line([(piece.length_m / 2, side * half), (piece.length_m / 2, side * (half + size))], "limit")
    below = -half - max(size, 0.08 * piece.length_m)
    sketch.measure((0.0, below), (piece.length_m, below), str(length(given, piece.length_m)))
    says = f"From the side: work {length(given, piece.diameter_m)} across and {length(given, piece.length_m)} long between a spur and a live centre"
    return sketch.drawing("Between centres, from the side", says + (", a steady rest in its middle." if piece.steady else "."))


def backed(given: Given, diameter: float, thick: float, held: float, backing: float | None) -> Drawing:
    """The thin disc, what holds it, and the backing disc if it needs one."""
    plate = 0.0 if backing is None else 0.04 * diameter
    sketch = Sketch()
    left = _headstock(sketch, "glue", held, 0.0)
    if backing is not None:
        sketch.polygon(_box(0.0, plate, backing / 2), "wood")
    sketch.polygon(_box(plate, plate + thick, diameter / 2), "resin")
    at = plate + thick
    sketch.line([(left, 0.0), (at, 0.0)], "axis")
    sketch.line([(at + 0.12 * diameter, 0.46 * diameter), (at, 0.46 * diameter)], "limit").text((at + 0.07 * diameter, 0.5 * diameter), "tool", "limit")
    sketch.measure((at + 0.16 * diameter, -diameter / 2), (at + 0.16 * diameter, diameter / 2), str(length(given, diameter)))
    says = (
        f"From the side: a disc {length(given, diameter)} across and {length(given, thick)} thick, held on {length(given, held)}, the tool pushing at its rim"
    )
    tail = "." if backing is None else f", a backing disc of {length(given, backing)} behind it."
    return sketch.drawing("Under the tool, from the side", says + tail)


def bare_ring(given: Given, diameter: float, thick: float, held: float, bare: float, off: float) -> Drawing:
    """The piece turned round: the new block, and how far out the face is left bare."""
    sketch = Sketch()
    left = _headstock(sketch, given.choice("hold"), held, 0.0)
    sketch.polygon(_box(0.0, thick, diameter / 2), "resin").line([(left, 0.0), (1.3 * thick, 0.0)], "axis")
    for side in (1, -1):
        sketch.line([(-0.01 * diameter, side * bare / 2), (-0.01 * diameter, side * held / 2)], "limit")
        sketch.line([(0.0, side * (diameter / 2 - off)), (thick, side * (diameter / 2 - off))], "trace")
    beside = 1.3 * thick + 0.05 * diameter
    sketch.measure((beside, -diameter / 2), (beside, diameter / 2), str(length(given, diameter)))
    left_bare = f", its face left bare to {length(given, bare, 'up')}" if given.choice("hold") == "glue" else ""
    says = f"From the side: the piece, {length(given, diameter)} across, turned round on a {_HELD[given.choice('hold')]} of {length(given, held)}{left_bare}."
    says += " What comes off the rim is marked."
    return sketch.drawing("Turned round, from the side", says)
