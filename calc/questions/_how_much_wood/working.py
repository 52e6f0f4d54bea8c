"""The working of How much wood is in it?, and what it stands on."""

from __future__ import annotations

import math

from calc.answers import Working
from calc.casting.wood import standard
from calc.quantity.units import from_si
from calc.quantity.writing import Shown, Style
from calc.questions._how_much_wood.case import Density, Wood

_FINE_DENSITY = ("density", Style("g/mL", step=0.001))


def working(piece: Wood) -> tuple[Working, ...]:
    """The volume by the way chosen, then what floats."""
    out = [*_volume_working(piece)]
    if piece.voids:
        out.append(Working("Without the voids", "V − voids", f"{piece.litres(piece.gross)} − {piece.litres(piece.voids)}", str(piece.litres(piece.volume))))
    fill = piece.given.maybe("fill")
    if fill is not None and piece.shape is not None:
        numbers = f"{piece.given.write(piece.share, 'share')} of {piece.litres(piece.volume)}, up to {piece.length(fill)}"
        out.append(Working("Below the fill line", "V × share of it up to that depth", numbers, str(piece.litres(piece.below))))
    k = standard("both sides")
    out.append(Working("Band", "V ± 2 u", f"u = {_within(piece, piece.spread)}", f"± {piece.rough(k * piece.spread * piece.below)}"))
    if piece.density is not None and piece.mass is not None and piece.lift is not None and piece.hold is not None:
        if piece.way != "weigh" and piece.weighed is not None:
            out.append(Working("Density", "ρ = m / V", f"{_fine(piece, piece.weighed)} / {piece.litres(piece.volume)}", str(_rho(piece, piece.density))))
        numbers = f"{_rho(piece, piece.resin)} × {piece.litres(piece.below)} − {_fine(piece, piece.mass)}"
        out.append(Working("Lift", "F = ρ_resin V − m", numbers, str(piece.given.write(piece.lift, ("mass", Style(piece.given.pick("g", "oz"), figures=3))))))
        formula = "the larger of 2 F and the F passed one time in twenty; nothing where both are below 0"
        out.append(Working("Hold-down", formula, f"F up to {_fine(piece, piece.most_lift or 0.0)}", str(piece.weight(piece.hold))))
        middle = piece.lifts_at(sure=False)
        if middle is not None and piece.shape is not None:
            formula = "ρ_resin V(d) = m; t ρ / ρ_resin where it is straight-sided"
            numbers = f"{piece.length(piece.shape.height)} × {_rho(piece, piece.density)} / {_rho(piece, piece.resin)}" if piece.way != "live" else "by halving"
            out.append(Working("It lifts from", formula, numbers, str(piece.length(middle, "down"))))
    if piece.soak > 0:
        room = "" if piece.room is None else f", and never more than its air, {piece.litres(piece.room)}"
        share = piece.given.write(piece.soak / piece.below, "share")
        out.append(Working("Soaks in", "share × V", f"{share} of {piece.litres(piece.below)}{room}", str(piece.rough(piece.soak))))
    return tuple(out)


def _volume_working(piece: Wood) -> list[Working]:
    """The steps of the way chosen."""
    given, result = piece.given, str(piece.litres(piece.volume if piece.way == "weigh" else piece.gross))
    if piece.way == "dip":
        numbers = f"{_fine(piece, given.si('rise'))} / {standard('water') / 1000:.4f} g/mL"
        return [Working("Volume by dipping", "V = rise of the scale / density of water", numbers, result)]
    if piece.way == "level":
        area = f"{from_si(math.sqrt(piece.tub), 'length', given.pick('mm', 'in')) ** 2:.4g} {given.pick('mm²', 'in²')}"
        return [Working("Volume by level rise", "V = A × rise", f"{area} × {given.write(given.si('level'), ('length', _small(piece)))}", result)]
    if piece.way == "weigh":
        density = piece.needed_density
        numbers = f"{_fine(piece, given.si('mass'))} / {_rho(piece, density.value)}"
        return [_density_working(piece, density), Working("Volume by weight", "V = m / ρ", numbers, result)]
    bottom, middle, top = (f"{from_si(math.sqrt(face), 'length', given.pick('cm', 'in')) ** 2:.4g}" for face in piece.faces)
    unit, thick = given.pick("cm²", "in²"), given.write(given.si("thickness"), ("length", _small(piece)))
    rule = "widths at equal steps by Simpson's rule (an odd count) or trapeziums"
    if piece.way == "outline":
        return [Working("Area", rule, given.text("widths"), f"{bottom} {unit}"), Working("Volume", "V = A t", f"{bottom} {unit} × {thick}", result)]
    return [
        Working("Areas of top, middle, bottom", rule, "the middle is the mean" if not given.typed("middle") else "each face by its widths",
                f"{top}, {middle}, {bottom} {unit}"),
        Working("Volume", "V = t (A_top + 4 A_middle + A_bottom) / 6", f"{thick} × ({top} + 4 × {middle} + {bottom}) / 6", result),
    ]  # fmt: skip


def _density_working(piece: Wood, density: Density) -> Working:
    """Where the density comes from."""
    wood_of, share = piece.species, piece.given.si("moisture")
    if piece.given.maybe("density") is not None or wood_of is None:
        return Working("Density", "as measured", density.basis, str(_rho(piece, density.value)))
    x = piece.given.write(share, "share")
    if wood_of.at_12 is not None and wood_of.shrinkage is not None and wood_of.shrinkage.volumetric is not None:
        formula = "ρ = 1000 G12 (100 − S12) / (100 − Sx) (1 + x), Sx = S0 (1 − x/30 %)"
        numbers = f"G12 = {wood_of.at_12:g}, S0 = {100 * wood_of.shrinkage.volumetric:.3g} %, x = {x}"
    else:
        formula = "ρ = 1000 Gb / [1 − 0.265 Gb (1 − x/30 %)] (1 + x)"
        numbers = f"Gb = {wood_of.basic:g}, x = {x}"
    return Working("Density", formula, numbers, str(_rho(piece, density.value)))


def _small(piece: Wood) -> Style:
    """A length as read off a rule."""
    return Style("mm", figures=3) if piece.given.system == "metric" else Style("in", figures=3)


def _fine(piece: Wood, kg: float) -> Shown:
    """A mass for the working."""
    return piece.given.write(kg, ("mass", Style(piece.given.pick("g", "oz"), figures=4)))


def _rho(piece: Wood, density: float) -> Shown:
    """A density for the working."""
    return piece.given.write(density, _FINE_DENSITY)


def _within(piece: Wood, share: float) -> Shown:
    """A spread in percent."""
    return piece.given.write(share, "share", "up")


def sources(piece: Wood) -> tuple[str, ...]:
    """What the answer stands on."""
    keys = ["arithmetic", "practice", "gum"]
    if piece.way == "dip":
        keys.insert(0, "astm-d2395")
    if piece.tabled is not None and (piece.way == "weigh" or piece.weighed is None):
        keys += piece.tabled.sources
    elif piece.density is not None:
        keys.append("maker")
    return tuple(dict.fromkeys(keys))
