"""Where is the weight? The woods as they were typed: looked over, with their outlines and how heavy they are."""

from __future__ import annotations

import math

from calc.casting import wood as of_wood
from calc.casting import wood_density
from calc.casting.outlines import Point, crosses
from calc.casting.species import all_species
from calc.errors import InputError
from calc.quantity.writing import Style
from calc.questions import Given
from calc.questions._where_is_the_weight.fields import NONE, WOODS
from calc.questions._where_is_the_weight.parts import Piece, direction, standard, tape
from calc.turning import clipping, make_up, wood_shapes
from calc.turning.make_up import Blank, Wood


def pieces(given: Given, blank: Blank) -> tuple[Piece, ...]:
    """None outside the blank, none deeper than it, none in another but what is let into it.

    Raises
    ------
    InputError
        for what cannot be, naming the field.
    """
    found = [_piece(given, blank, name) for name in WOODS if given.words(f"{name}_shape") not in ("", NONE)]
    for number, piece in enumerate(found):
        lies_in = [earlier for earlier in found[:number] if overlap(blank, earlier.wood, piece.wood)]
        if piece.wood.let_in and not lies_in:
            raise InputError(f"{piece.name}_in", "in-none")
        if lies_in and not piece.wood.let_in:
            raise InputError(f"{piece.name}_shape", "overlap", other=lies_in[0].title)
    return tuple(found)


def overlap(blank: Blank, one: Wood, other: Wood) -> bool:
    """Whether two woods share more of the blank than a slip of the tape."""
    least = min(make_up.kept_of(blank, wood.outline).area for wood in (one, other))
    return shared(blank, one, other) > standard("overlap") * least


def shared(blank: Blank, one: Wood, other: Wood) -> float:
    """Area of the face that two woods share, m2."""
    return sum(sign * make_up.kept_of(blank, kept).area for sign, kept in clipping.common(one.outline, other.outline))


def _piece(given: Given, blank: Blank, name: str) -> Piece:
    shape = given.choice(f"{name}_shape")
    corners = _corners(given, blank, name, shape)
    depth = given.maybe(f"{name}_depth")
    if depth is not None and depth > blank.thickness_m * (1 + 1e-9):
        raise InputError(f"{name}_depth", "too-deep", thickness=tape(given, blank.thickness_m))
    depth = blank.thickness_m if depth is None else min(depth, blank.thickness_m)
    kept = make_up.inside(blank, corners).area
    if kept <= 1e-9:
        named = {"round": "out", "block": "out", "side": "edge", "strip": "edge", "outline": "points"}[shape]
        raise InputError(f"{name}_{named}", "outside-blank", reach=tape(given, make_up.swept(blank) / 2))
    own = clipping.inside_outline(corners).area if shape in ("round", "block", "outline") else kept
    density, spread, sources = _density(given, name, own * depth)
    let_in = given.words(f"{name}_in") == "wood"
    return Piece(name, shape, Wood(corners, density, depth, let_in), spread, sources)


def _corners(given: Given, blank: Blank, name: str, shape: str) -> tuple[Point, ...]:
    if shape == "outline":
        numbers = given.many(f"{name}_points")
        if len(numbers) % 2:
            raise InputError(f"{name}_points", "odd-corners", count=str(len(numbers)))
        points = tuple(zip(numbers[::2], numbers[1::2], strict=True))
        if crosses(points) or clipping.inside_outline(points).area <= 0:
            raise InputError(f"{name}_points", "crossing")
        return points
    towards, reach = direction(given.si(f"{name}_clock")), make_up.swept(blank)
    if shape == "half":
        return wood_shapes.band(towards, 0.0, reach, reach)
    if shape == "side":
        return wood_shapes.band(towards, given.si(f"{name}_edge"), 2 * reach, reach)
    if shape == "strip":
        return wood_shapes.band(towards, given.si(f"{name}_edge"), given.si(f"{name}_width"), reach)
    if shape == "slice":
        return wood_shapes.slice_of(towards, math.radians(given.si(f"{name}_angle")), reach)
    out = given.si(f"{name}_out")
    if shape == "round":
        return wood_shapes.round_wood(given.si(f"{name}_across"), (out * math.cos(towards), out * math.sin(towards)))
    length = given.si(f"{name}_length")
    return wood_shapes.band(towards, out - length / 2, length, given.si(f"{name}_width") / 2)


def _density(given: Given, name: str, volume: float) -> tuple[float, float, tuple[str, ...]]:
    """Density, kg/m3, its standard uncertainty as a fraction, and where it is from."""
    by = given.choice(f"{name}_by")
    if by == "density":
        return given.si(f"{name}_density"), standard("spread wood measured"), ("maker",)
    if by == "weight":
        found = given.si(f"{name}_weight") / volume
        shown = str(given.write(found, "density"))
        if found < standard("lightest"):
            raise InputError(f"{name}_weight", "too-light", found=shown)
        if found > standard("heaviest"):
            raise InputError(f"{name}_weight", "too-heavy", found=shown)
        return found, standard("spread wood measured"), ("maker",)
    species, moisture = all_species().get(given.choice(f"{name}_species")), given.si(f"{name}_moisture")
    if species is None:
        return standard("wood unknown"), standard("spread wood unknown"), ("judgement",)
    fullest = wood_density.fullest(species.basic)
    if moisture > fullest:
        raise InputError(f"{name}_moisture", "too-wet", found=str(given.write(fullest, ("share", Style("%", step=1)), "down")))
    return wood_density.density_of_species(species, moisture), species.spread or of_wood.standard("spread weigh"), (*species.sources, "wood-handbook-4")
