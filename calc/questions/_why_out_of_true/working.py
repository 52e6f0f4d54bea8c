"""Why is it out of true? The arithmetic, step by step, in mm, K and W/(m² K), as the formulas are published."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Working
from calc.questions._why_out_of_true.case import Piece
from calc.questions._why_out_of_true.words import SIGNS, cause_of
from calc.turning import cooling
from calc.turning.cooling import figure_of


def working(piece: Piece) -> Iterator[Working]:
    """Signs and points, then cooling, then how far each cause moves it."""
    points = ", ".join(f"{cause_of(found.cause, piece.hold).name.lower()} {found.points}" for found in piece.findings)
    given = piece.given
    signs = "; ".join([SIGNS[piece.sign], *(given.label_of(name).lower() for name in ("warm", "since", "mount"))])
    yield Working("Causes", "points for and against, by each sign (our judgement)", signs, points)
    if piece.is_warm:
        yield from _cooling(piece)
        yield from _heat(piece)
    if piece.sign in ("rim-twice", "face-twice"):
        numbers = f"{piece.moves:.5f} × {1000 * piece.wood_across:.4g} × {100 * given.si('moisture_change'):.3g}"
        what = "C_T − C_R" if given.choice("grain") == "end" else "C_T"
        yield Working(f"Wood, way against way ({piece.shrinkage[2]})", f"({what}) × W × ΔM; a dial sees half", numbers, f"{1000 * piece.swelling:.2f} mm")
    if piece.twist is not None:
        first, across, last = (1000 * gap for gap in given.many("feelers"))
        yield Working("Three gaps", "(g1 + g3 − g2) / 2", f"({first:.3g} + {last:.3g} − {across:.3g}) / 2", f"{1000 * piece.twist:.3f} mm")
    if piece.left is not None and piece.runout is not None:
        whole = piece.given.si("diameter") if piece.on_rim else piece.thickness
        formula = {"rim-once": "D − T", "rim-twice": "D − 2 T"}.get(piece.sign, "t − T")
        twice = "2 × " if piece.sign == "rim-twice" else ""
        yield Working("Left when trued", formula, f"{1000 * whole:.4g} − {twice}{1000 * piece.runout:.3g}", f"{1000 * piece.left:.2f} mm")


def _cooling(piece: Piece) -> Iterator[Working]:
    slab = piece.slab
    z = cooling.roots(slab.biot, 1)[0]
    stuff = f"k = {slab.stuff.conductivity:.3g}, a = {slab.stuff.diffusivity:.3e} m²/s"
    numbers = f"h = {slab.film:g}, L = {1000 * slab.depth_m:.4g} mm ({slab.faces} open), {stuff}"
    yield Working("Root of the series", "z tan z = Bi = h L / k", numbers, f"Bi = {slab.biot:.4g}, z = {z:.4f}, C = {cooling.coefficient(z):.4f}")
    if piece.wait > 0:
        numbers = f"{cooling.TERMS} terms; θ = {piece.near:g} / {piece.excess:.4g}"
        yield Working("Cold through", "Σ C cos(z x) exp(−z² a t / L²) = θ at its warmest", numbers, f"{piece.wait / 3600:.2f} h")
    else:
        yield Working("Cold through", "excess ≤ what counts as cold", f"{piece.excess:.3g} ≤ {piece.near:g}", "now")


def _heat(piece: Piece) -> Iterator[Working]:
    expansion, radius, thickness = figure_of("resin expansion"), 1000 * piece.radius, 1000 * piece.thickness
    warm = piece.given.choice("warm")
    if piece.sign == "rim-once" and warm == "side":
        numbers = f"{expansion:.0e} × {piece.difference:.3g} × {radius:.4g} / 2"
        yield Working("Warmer on one side", "T = α ΔT R / 2", numbers, f"{1000 * piece.most['side-heat']:.3f} mm")
    if piece.sign == "dish":
        numbers = f"{expansion:.0e} × {piece.difference:.3g} × {radius:.4g}² / (2 × {thickness:.4g})"
        yield Working("Warmer on one face", "dish = α ΔT R² / (2 t)", numbers, f"{1000 * piece.most['gradient']:.3f} mm")
    if piece.given.typed("wood_across"):
        numbers = f"({expansion:.0e} − {figure_of('wood expansion across'):.0e}) × {piece.excess:.3g} × {1000 * piece.wood_across:.4g}"
        yield Working("Resin beside wood", "(α1 − α2) ΔT W", numbers, f"{1000 * piece.outgrows:.3f} mm")
    if piece.layer is not None and piece.layers_dish is not None:
        numbers = f"t1 = {thickness - 1000 * piece.layer:.4g}, t2 = {1000 * piece.layer:.4g}, ΔT = {piece.excess:.3g}, R = {radius:.4g}"
        formula = "κ = 6 (α1−α2) ΔT (1+m)² / (h (3 (1+m)² + (1+mn)(m² + 1/(mn)))); dish = κ R² / 2"
        yield Working("Wood layer on resin", formula, numbers, f"{1000 * piece.layers_dish:.3f} mm")
