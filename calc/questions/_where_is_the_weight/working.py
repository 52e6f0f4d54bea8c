"""The arithmetic behind where the weight is, step by step, and where its figures come from."""

from __future__ import annotations

import math

from calc.answers import Working
from calc.questions._where_is_the_weight.case import Case
from calc.turning import balance, make_up
from calc.turning.swing import lengthening


def _kg_mm(unbalance: float) -> str:
    return f"{1000 * unbalance:.4g} kg·mm"


def working(case: Case) -> tuple[Working, ...]:
    """Every step, in SI beside the maker's own units."""
    body, given = case.body, case.given
    if case.made:
        out = _made(case)
    elif case.way == "scale":
        out = _scale(case)
    elif case.way == "swing":
        out = _swing(case)
    else:
        hung = f"{given.si('hung'):.4g} kg × {1000 * given.si('hung_at'):.1f} mm"
        out = [Working("Out of balance", "U = w r", hung, _kg_mm(body.unbalance))]
    if case.way == "mounted" and case.matters:
        out.append(Working("One swing, to check it", "T = 2 π √(J / (U g))", f"J of {body.mass_kg:.4g} kg as if it lay evenly", f"{case.would_swing:.3g} s"))
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
    thrown = ", ".join(f"{balance.push(weight * case.place, case.speed):.3g} N" for weight, _ in case.weights)
    out.append(Working("Throw of a weight", "F = w r ω²", f"at {case.speed:.0f} rpm", thrown))
    grade = 1000 * balance.balance_grade(body.unbalance, body.mass_kg, case.speed)
    out.append(Working("Balance grade", "G = e ω", "ranks only, decides nothing", f"G {grade:.0f} mm/s"))
    return tuple(out)


def _made(case: Case) -> list[Working]:
    body, blank = case.body, case.blank
    out = []
    for piece, swap in zip(case.pieces, make_up.swaps(blank, case.woods), strict=True):
        kept = make_up.kept_of(blank, piece.wood.outline)
        sizes = f"{1e4 * kept.area:.4g} cm² × {1000 * piece.wood.depth_m:.3g} mm"
        if piece.wood.let_in:
            title, formula = f"What lay there swapped for {piece.title}", "Δm = ρ A t − what lay there"
            numbers = f"{piece.wood.density:.0f} kg/m³ × {sizes}, resin {blank.density:.0f} kg/m³"
        else:
            title, formula = f"Resin swapped for {piece.title}", "Δm = (ρ − ρ₀) A t"
            numbers = f"({piece.wood.density:.0f} − {blank.density:.0f}) kg/m³ × {sizes}"
        place = f"moments ({1e6 * swap.x:+.0f}, {1e6 * swap.y:+.0f}) g·mm"
        out.append(Working(title, formula, numbers, f"{swap.mass_kg:+.4g} kg, {place}"))
    out.append(Working("Mass", "m = ρ₀ A₀ t + Σ Δm", f"resin {blank.density:.0f} kg/m³", f"{body.mass_kg:.4g} kg"))
    e = f"({1000 * body.x / body.mass_kg:.2f}, {1000 * body.y / body.mass_kg:.2f}) mm, {1000 * body.eccentricity_m:.3f} mm"
    off = f"mounted at ({1000 * case.axis[0]:.1f}, {1000 * case.axis[1]:.1f}) mm" if any(case.axis) else "mounted in the middle"
    out.append(Working("Centre of mass from the axis", "e = Σ Δm c / m − o", off, e))
    out.append(Working("Out of balance", "U = m e", f"{body.mass_kg:.4g} kg × {1000 * body.eccentricity_m:.3f} mm", _kg_mm(body.unbalance)))
    return out


def _swing(case: Case) -> list[Working]:
    swing, given = case.swing, case.given
    if swing.stays:
        least = given.maybe("least")
        if least is None:
            found = f"{swing.mass:.4g} kg × {1000 * swing.unbalance / swing.mass:.2f} mm"
            return [Working("Most that friction hides", "U = m e, e a share of the width", found, _kg_mm(swing.unbalance))]
        return [Working("Most that friction hides", "U = w r", f"{least:.4g} kg × {1000 * given.si('least_at'):.1f} mm", _kg_mm(swing.unbalance))]
    across = case.blank.across_m
    if case.blank.width_m is None:
        formula, numbers = "J = m D² / 8", f"{swing.mass:.4g} kg × ({across:.4g} m)² / 8"
    else:
        formula, numbers = "J = m (a² + b²) / 12", f"{swing.mass:.4g} kg × (({across:.4g} m)² + ({case.blank.width_m:.4g} m)²) / 12"
    out = [Working("Inertia of the blank", formula, numbers, f"{swing.own_inertia:.4g} kg·m²")]
    if swing.chuck_inertia is not None:
        numbers = f"{given.si('chuck_mass'):.3g} kg × ({given.si('chuck_across'):.3g} m)² / 8"
        out.append(Working("Inertia of the chuck", "J = m D² / 8", numbers, f"{swing.chuck_inertia:.4g} kg·m²"))
    times = ", ".join(f"{seconds:.4g}" for seconds in given.many("timings"))
    out.append(Working("One swing", "T = t / n, the mean", f"{times} s / {given.si('counted'):.0f}", f"{swing.period:.4g} s"))
    if swing.reach:
        longer = lengthening(swing.reach)
        out.append(Working("A small swing", "T₀ = T M(1, cos a/2)", f"{swing.period:.4g} s, a {_degrees(swing.reach)}", f"{swing.period / longer:.4g} s"))
    numbers = f"39.48 × {swing.inertia:.4g} kg·m² / (9.807 m/s² × ({swing.period / lengthening(swing.reach):.4g} s)²)"
    out.append(Working("Out of balance", "U = 4 π² J / (g T²)", numbers, _kg_mm(swing.unbalance)))
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
    if case.way in ("scale", "hung", "swing"):
        keys.insert(0, "maker")
    if len(case.weights) > 1:
        keys.append("weight-splitting")
    return (*keys, "judgement")
