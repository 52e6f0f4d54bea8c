"""The lathe to scale: from the side with the blank on it, and from the front with a disc held to a wheel."""

from __future__ import annotations

from calc.drawing import Drawing, Point, Sketch
from calc.questions._does_it_fit.turn import Turn, length

_LEAST = 0.06  # m, of a box that is only there to be seen


def box(left: float, right: float, low: float, high: float) -> list[Point]:
    """The corners of a box."""
    return [(left, low), (right, low), (right, high), (left, high)]


def side_view(turn: Turn) -> Drawing:
    """Headstock, mount, blank, banjo, bed and tailstock from the maker's side; lengths in m from the spindle's end."""
    given, half, under = turn.given, turn.sweep / 2, turn.swing / 2
    tall = max(half, under)
    size, left = 0.35 * tall, -0.55 * tall - 0.03
    face = turn.mount + turn.along
    right = face + 0.75 * tall
    sketch = Sketch().polygon(box(left, -0.02, -under, size), "metal").polygon(box(-0.02, 0.0, -0.02, 0.02), "metal")
    thick = 0.01 if turn.hold == "centres" else min(turn.covers / 2, half)
    sketch.polygon(box(0.0, turn.mount, -thick, thick), "metal")
    sketch.polygon(box(turn.mount, face, -half, half), "resin")
    if turn.keep is not None and turn.keep < turn.sweep - 0.001:
        for y in (-turn.keep / 2, turn.keep / 2):
            sketch.line([(turn.mount, y), (face, y)], "trace")
    if turn.outboard:
        sketch.line([(left, -under), (right, -under)], "limit").text((right, -under - 0.1 * tall), "floor or stand", "edge", "end")
    else:
        _bed(turn, sketch, left, right, under, tall)
    if not turn.clears:
        sketch.line([(turn.mount - 0.02, -under), (face + 0.02, -under)], "limit")
    sketch.text(((turn.mount + face) / 2, half + 0.05 * tall), f"sweeps {length(given, turn.sweep, 'up')}")
    sketch.text((left, size + 0.05 * tall), "headstock", "edge", "start")
    return sketch.drawing("From the side, to scale", _says(turn), 260.0)


def _bed(turn: Turn, sketch: Sketch, left: float, right: float, under: float, tall: float) -> None:
    """What lies under the blank, the banjo, and the tailstock where it is used."""
    face = turn.mount + turn.along
    low = -turn.swing_over_bed / 2 if turn.in_gap else -under
    thick = 0.16 * tall
    if turn.in_gap:
        end = turn.given.si("gap_long")
        sketch.polygon(box(end, right, low - thick, low), "metal").polygon(box(left, end, -under - thick, -under), "metal")
    else:
        sketch.polygon(box(left, right, low - thick, low), "metal")
    sketch.text((left + 0.05 * tall, -under - thick * 0.75), "bed", "edge", "start")
    assert turn.banjo is not None  # there is a bed
    wide = max(_LEAST, 0.22 * tall)
    start = turn.mount + turn.along / 2 - wide / 2 if turn.passes and turn.along > wide else face + 0.06 * tall
    sketch.polygon(box(start, start + wide, low, -turn.banjo / 2), "mould")
    sketch.line([(start + wide / 2, -turn.banjo / 2), (start + wide / 2, -0.02)], "edge")
    sketch.line([(min(turn.mount, start), -0.015), (start + wide, -0.015)], "level")
    sketch.text((start + wide / 2, low - thick * 0.75), "banjo")
    if turn.tailed:
        reached = turn.centres + turn.spur
        point = min(face, reached)
        body = max(point + 0.12 * tall, start + wide + 0.05 * tall)
        sketch.line([(point, 0.0), (body, 0.0)], "metal").polygon(box(body, max(right, body + 0.3 * tall), low, 0.2 * tall), "metal")
        sketch.text((max(right, body + 0.3 * tall), 0.2 * tall + 0.05 * tall), "tailstock", "edge", "end")


def _says(turn: Turn) -> str:
    given = turn.given

    def told(gap: float) -> str:
        return f"strikes {{}} by {length(given, -gap, 'up')}" if gap < 0 else f"clears {{}} by {length(given, gap, 'down')}"

    what = "the floor or stand" if turn.outboard else "the gap in the bed" if turn.in_gap else "the bed"
    says = f"To the right of the headstock the blank, {length(given, turn.along)} along the lathe, stands out {turn.stands_out} on its mount"
    says += f" and sweeps {length(given, turn.sweep, 'up')}. It {told(turn.bed_gap).format(what)}"
    if turn.banjo_gap is not None:
        says += f" and {told(turn.banjo_gap).format('the banjo')}, which is drawn {'under it' if turn.passes else 'beyond its face'}"
    says += ". The tailstock is up." if turn.tailed else "."
    if turn.keep is not None and turn.keep < turn.sweep - 0.001:
        says += f" The lines in it are the round of {length(given, turn.keep)}."
    return says
