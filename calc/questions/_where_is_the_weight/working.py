"""The arithmetic behind where the weight is, step by step, and where its figures come from."""

from __future__ import annotations

import math

from calc.answers import Working
from calc.questions._where_is_the_weight.case import Case
from calc.turning import balance, make_up


def _kg_mm(unbalance: float) -> str:
    return f"{1000 * unbalance:.4g} kg·mm"


def working(case: Case) -> tuple[Working, ...]:
    """Every step, in SI beside the maker's own units."""
    body, given = case.body, case.given
    if case.made:
        out = _made(case)
    elif case.way == "scale":
        out = _scale(case)
    else:
        hung = f"{given.si('hung'):.4g} kg × {1000 * given.si('hung_at'):.1f} mm"
        out = [Working("Out of balance", "U = w r", hung, _kg_mm(body.unbalance))]
    w = balance.angular_speed(case.speed)
    out.append(Working("Weight", "w = U / r", f"{_kg_mm(body.unbalance)} / {1000 * case.place:.0f} mm", f"{1000 * case.weight:.4g} g"))
    if len(case.weights) > 1:
        shares = ", ".join(f"{1000 * weight:.4g} g at {_degrees(towards)}" for weight, towards in case.weights)
        out.append(Working("In two places", "w_a = w sin(b − θ) / sin(b − a), w_b = w sin(θ − a) / sin(b − a)", f"θ = {_degrees(case.light)}", shares))
    out.append(
        Working(
            "Vibration",
            "v = U ω / (√2 (M + m))",
            f"{_kg_mm(body.unbalance)} × {w:.3g} /s / (1.414 × ({case.standing:.0f} + {body.mass_kg:.3g}) kg)",
            f"{1000 * case.vibration:.3g} mm/s at {case.speed:.0f} rpm (1.8 hardly felt, 4.5 out of hand)",
        )
    )
    out.append(Working("Push", "F = U ω²", f"{_kg_mm(body.unbalance)} × ({w:.3g} /s)²", f"{balance.push(body.unbalance, case.speed):.3g} N"))
    thrown = balance.push(case.weights[0][0] * case.place, case.speed)
    out.append(Working("Throw of a weight", "F = w r ω²", f"at {case.speed:.0f} rpm", f"{thrown:.3g} N"))
    grade = 1000 * balance.balance_grade(body.unbalance, body.mass_kg, case.speed)
    out.append(Working("Balance grade", "G = e ω", "ranks only, decides nothing", f"G {grade:.0f} mm/s"))
    return tuple(out)


def _made(case: Case) -> list[Working]:
    body, blank = case.body, case.blank
    out = []
    for piece in case.pieces:
        kept = make_up.inside(blank, piece.wood.corners)
        lacks = (piece.wood.density - blank.density) * kept.area * piece.wood.depth_m
        numbers = f"({piece.wood.density:.0f} − {blank.density:.0f}) kg/m³ × {1e4 * kept.area:.4g} cm² × {1000 * piece.wood.depth_m:.0f} mm"
        place = f"{lacks:+.4g} kg at ({1000 * kept.x / kept.area:.1f}, {1000 * kept.y / kept.area:.1f}) mm"
        out.append(Working(f"Resin swapped for {piece.title}", "Δm = (ρ − ρ₀) A t", numbers, place))
    out.append(Working("Mass", "m = ρ₀ A₀ t + Σ Δm", f"resin {blank.density:.0f} kg/m³", f"{body.mass_kg:.4g} kg"))
    e = f"({1000 * body.x / body.mass_kg:.2f}, {1000 * body.y / body.mass_kg:.2f}) mm, {1000 * body.eccentricity_m:.3f} mm"
    off = f"mounted at ({1000 * case.axis[0]:.1f}, {1000 * case.axis[1]:.1f}) mm" if any(case.axis) else "mounted in the middle"
    out.append(Working("Centre of mass from the axis", "e = Σ Δm c / m − o", off, e))
    out.append(Working("Out of balance", "U = m e", f"{body.mass_kg:.4g} kg × {1000 * body.eccentricity_m:.3f} mm", _kg_mm(body.unbalance)))
    return out


def _scale(case: Case) -> list[Working]:
    given, body = case.given, case.body
    mass, apart = body.mass_kg, given.si("apart")
    out = []
    for name, opposite, part, which in (("at_3", "at_9", body.x, "towards 3 o'clock"), ("at_12", "at_6", body.y, "towards 12 o'clock")):
        other = given.maybe(opposite)
        formula = "x = L (w / m − 1/2)" if other is None else "x = L (w − w′) / (2 m)"
        readings = f"{given.si(name):.4g} kg" + ("" if other is None else f", {other:.4g} kg")
        out.append(Working(f"Centre of mass {which}", formula, f"L {1000 * apart:.0f} mm, w {readings}, m {mass:.4g} kg", f"{1000 * part / mass:+.2f} mm"))
    out.append(Working("Out of balance", "U = m √(x² + y²)", f"{1000 * body.eccentricity_m:.3f} mm", _kg_mm(body.unbalance)))
    return out


def _degrees(angle: float) -> str:
    """An angle from the right, anticlockwise."""
    return f"{math.degrees(angle) % 360:.1f}°"


def sources(case: Case) -> tuple[str, ...]:
    """Keys of the bibliography that the answer rests on."""
    keys = ["arithmetic", "iso-10816-1", "iso-21940-11"]
    if case.made:
        keys = [*dict.fromkeys(key for piece in case.pieces for key in piece.sources), *keys]
    if case.way in ("scale", "hung"):
        keys.insert(0, "maker")
    if len(case.weights) > 1:
        keys.append("weight-splitting")
    return (*keys, "judgement")
