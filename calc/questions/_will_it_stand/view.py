"""A standing piece from the side, to scale: its parts, its load, the middle of its weight, and the line over which it tips."""

from __future__ import annotations

from calc.drawing import Drawing, Sketch
from calc.questions._will_it_stand.piece import Piece, degrees, length, weight


def side_view(piece: Piece) -> Drawing:
    """Draw it; lengths in m from the middle of the foot, the heavy side to the right."""
    given = piece.given
    sketch = Sketch()
    for part, width in zip(piece.parts, piece.widths, strict=True):
        low, high = part.bottom, part.bottom + part.height
        sketch.polygon([(-width / 2, low), (width / 2, low), (width / 2, high), (-width / 2, high)], "resin")
    size = 0.06 * max(piece.tall, max(piece.widths))
    edge = piece.radius + piece.off
    reach = max(piece.foot_across / 2, max(piece.widths) / 2)
    sketch.line([(-1.15 * reach, 0.0), (1.15 * reach, 0.0)], "mould")
    foot = 0.35 * size
    sketch.polygon([(-piece.foot_across / 2, 0.0), (piece.foot_across / 2, 0.0), (piece.foot_across / 2, foot), (-piece.foot_across / 2, foot)], "wood")
    if piece.load:
        middle, high = given.si("load_off"), given.si("load_high")
        half = max(high, size)
        box = [(middle - half / 2, piece.tall), (middle + half / 2, piece.tall)]
        sketch.polygon([*box, (middle + half / 2, piece.tall + 2 * half), (middle - half / 2, piece.tall + 2 * half)], "metal")
    centre = (piece.off, piece.all.height)
    sketch.line([centre, (edge, 0.0)], "limit").line([centre, (piece.off, 0.0)], "level").circle(centre, size / 4, "spot")
    sketch.measure((1.2 * reach, 0.0), (1.2 * reach, piece.all.height), str(length(given, piece.all.height)))
    says = f"The piece is {length(given, piece.tall)} tall on a foot of {length(given, piece.foot_across)}. The spot is the middle of its weight, "
    says += f"{length(given, piece.all.height)} over the floor"
    says += f" and {length(given, piece.off)} off the middle." if piece.off > 0.0005 else "."
    if piece.load:
        says += f" {weight(given, piece.load)} stand on its top."
    says += f" The dashed line runs from there to the edge it tips over: {degrees(piece.tilt)} degrees from upright."
    return sketch.drawing("From the side, to scale", says, 280.0)
