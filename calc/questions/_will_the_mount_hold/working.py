"""The arithmetic of Will the mount hold?, step by step, in N, mm and MPa."""

from __future__ import annotations

import math
from collections.abc import Iterator

from calc.answers import Working
from calc.constants import STANDARD_GRAVITY, ZERO_C
from calc.questions import Given
from calc.turning import balance, bending, caps, discs, glue, hold, remounting
from calc.turning.held import SLENDER, Between, Glue, Held, Screws


def holds(given: Given, held: Held, speed_rpm: float) -> Iterator[Working]:
    """Loads, stress, times, and the ceiling."""
    on, mount = held.loads(speed_rpm), held.mount
    m, e, span = f"{held.mass_kg:.4g}", f"{1000 * held.eccentricity_m:.4g}", f"{1000 * held.overhang_m:.4g}"
    diameter, caught = f"{1000 * held.diameter_m:.4g}", f"{held.catch_n:.0f}"
    across = on.across_n - held.catch_n
    if given.maybe("mass") is None:
        numbers = f"{discs.RESIN_DENSITY:.0f} × π × {diameter}² × {1000 * given.si('thickness'):.4g} / 4 / 10⁹"
        yield Working("Weight, as a full disc of resin", "m = ρ π D² t / 4", numbers, f"{m} kg")
    spin = f"{m} × {STANDARD_GRAVITY:.4g} + {m} × {e} / 1000 × {balance.angular_speed(speed_rpm):.4g}²"
    yield Working("Across the mount", "V = m g + m e ω²", spin, f"{across:.4g} N")
    left = hold.BENDING_LEFT[held.far_end]
    yield Working("Bending", "M = k (V L + F D / 2)", f"{left:g} × ({across:.4g} × {span} + {caught} × {diameter} / 2) / 1000", f"{on.bending_n_m:.4g} N·m")
    yield Working("Pull and turning", "P = F, 0 with a far end; T = F D / 2", f"F = {caught}, D = {diameter}", f"{on.pull_n:.4g} N; {on.turning_n_m:.4g} N·m")
    factor = f"{mount.factor(on):.4g}"
    d = f"{1000 * mount.across_m:.4g}"
    if isinstance(mount, Glue):
        yield from _glue(mount, held, speed_rpm, factor)
    elif isinstance(mount, Screws):
        pull, bite, screw = hold.screw_pull(on, mount.count, mount.across_m), f"{1000 * mount.bite_m:.4g}", f"{1000 * mount.screw_m:.4g}"
        grain = f" × {hold.END_GRAIN_SHARE:g}, end grain" if mount.end_grain else ""
        yield Working("Screw comes out at", "p = 108.25 G² D L", f"108.25 × {mount.gravity:g}² × {screw} × {bite}{grain}", f"{mount.each_n:.4g} N")
        yield Working(
            "Pull on the worst screw",
            "4 M / (n d) + P / n",
            f"4000 × {on.bending_n_m:.4g} / ({mount.count} × {d}) + {on.pull_n:.4g} / {mount.count}",
            f"{pull:.4g} N",
        )
        if mount.sound:
            allowed = hold.screw_allowable(mount.gravity, mount.screw_m, mount.bite_m)
            yield Working("Of what building rules allow", "pull / (2850 G² D), in lb and in", f"{pull:.4g} / {allowed:.4g}", f"{pull / allowed:.3g}")
        yield Working("Times", "p / pull", f"{mount.each_n:.4g} / {pull:.4g}", factor)
    else:
        stress = hold.tenon_stress(on, mount.across_m) / 1e6
        numbers = f"32 × {1000 * on.bending_n_m:.4g} / (π × {d}³) + 4 × {on.pull_n:.4g} / (π × {d}²)"
        yield Working("Stress at the root", "32 M / (π d³) + 4 P / (π d²)", numbers, f"{stress:.4g} MPa")
        yield Working("Times", "strength / stress", f"{mount.strength_pa / 1e6:g} / {stress:.4g}", factor)
    found = "no speed" if held.mount_rpm <= 0 else "beyond any lathe" if math.isinf(held.mount_rpm) else f"{held.mount_rpm:.1f} rpm"
    yield Working("Mount's ceiling", f"the speed where times = {mount.wanted:.0f}", "by halving", found)
    yield Working(
        "Rim's ceiling",
        "n = share × 60 000 v / (π D)",
        f"v = {caps.operation_rim_speed(held.operation, held.diameter_m):.3g} m/s, D = {diameter}",
        f"{held.rim_rpm:.1f} rpm",
    )
    if given.choice("runs") == "brake":
        stop = remounting.unscrewing_by_stop(held.mass_kg, held.diameter_m, speed_rpm, given.si("stop"))
        yield Working(
            "A hard stop against sanding", "J ω / t with J = m D² / 8; F D / 2", f"t = {given.si('stop'):g} s; F = {remounting.SANDING_N:g} N",
            f"{stop:.3g} N·m; {remounting.unscrewing_by_sanding(held.diameter_m):.3g} N·m",
        )  # fmt: skip


def _glue(mount: Glue, held: Held, speed_rpm: float, factor: str) -> Iterator[Working]:
    on, face, kept = held.loads(speed_rpm), mount.face, glue.warmth(mount.warm_k) if mount.sound else 0.0
    d = f"{1000 * mount.across_m:.4g}"
    if mount.bead_m is None:
        yield Working(
            "Glued face",
            "A = c π d² / 4; Z = c π d³ / 32",
            f"c = {glue.GLUED_SHARE:g}, d = {d}",
            f"{1e6 * face.area_m2:.4g} mm²; {1e9 * face.section_m3:.4g} mm³",
        )
    else:
        formula = "A = π b (d − b); Z = π (d⁴ − (d − 2 b)⁴) / (32 d); at most a full face"
        yield Working("Ring of glue", formula, f"b = {1000 * mount.bead_m:.4g}, d = {d}", f"{1e6 * face.area_m2:.4g} mm²; {1e9 * face.section_m3:.4g} mm³")
    pull, shear = (stress / 1e6 for stress in glue.stress(on, face))
    yield Working(
        "Pull in the glue",
        "s = P / A + M / Z",
        f"{on.pull_n:.4g} / {1e6 * face.area_m2:.4g} + {1000 * on.bending_n_m:.4g} / {1e9 * face.section_m3:.4g}",
        f"{pull:.4g} MPa",
    )
    numbers = f"{on.across_n:.4g} / {1e6 * face.area_m2:.4g} + {1000 * on.turning_n_m:.4g} / (2 × {1e9 * face.section_m3:.4g})"
    yield Working("Shear in the glue", "τ = (V + F) / A + T / 2 Z", numbers, f"{shear:.4g} MPa")
    yield Working("Warmth", "k = (60 °C − glue) / 30 °C, 0 to 1", f"glue at {mount.warm_k - ZERO_C:.3g} °C", f"{kept:.3g}")
    numbers = f"s_u = {kept:.3g} × {mount.pull_pa / 1e6:g}, τ_u = {kept:.3g} × {mount.shear_pa / 1e6:g} MPa"
    yield Working("Times", "1 / √((s / s_u)² + (τ / τ_u)²)", numbers, factor)


def centres(piece: Between) -> Iterator[Working]:
    """Rim and whip."""
    d, span = f"{1000 * piece.diameter_m:.4g}", f"{1000 * piece.length_m / (2 if piece.steady else 1):.4g}"
    yield Working(
        "Rim", "n = 60 000 v / (π D)", f"v = {caps.operation_rim_speed(piece.operation, piece.diameter_m):.3g} m/s, D = {d}", f"{piece.rim_rpm:.1f} rpm"
    )
    numbers = f"30 × 1000 × (π × {d} / (8 × {span}²)) × √({discs.RESIN_MODULUS:.2g} / {discs.RESIN_DENSITY:.0f})"
    yield Working("Whip", "n = ½ × 60 (π D / 8 L²) √(E / ρ)", numbers, f"{piece.whip_rpm:.1f} rpm")
    yield Working("Slender", "L / D", f"{1000 * piece.length_m:.4g} / {d}", f"{piece.length_m / piece.diameter_m:.3g}; a steady from {SLENDER:.0f}")


def bends(diameter_m: float, held_m: float, thick_m: float) -> Iterator[Working]:
    """The plate and what it asks for."""
    radius, thick = f"{500 * diameter_m:.4g}", f"{1000 * thick_m:.4g}"
    stiff = discs.RESIN_MODULUS * thick_m**3 / (12 * (1 - bending.POISSON**2))
    bend = bending.rim_bend(diameter_m, held_m, thick_m)
    share = bend * stiff / (bending.PUSH_N * diameter_m**2 / 4)
    yield Working("Stiffness", "B = E t³ / (12 (1 − ν²))", f"E = {discs.RESIN_MODULUS / 1e6:.0f} MPa, t = {thick}, ν = {bending.POISSON:g}", f"{stiff:.4g} N·m")
    yield Working("Held", "β = d / D, k(β) by waves round a clamped plate", f"{1000 * held_m:.4g} / {1000 * diameter_m:.4g}", f"k = {share:.4g}")
    yield Working("Rim gives", "k F R² / B", f"{share:.4g} × {bending.PUSH_N:g} × {radius}² / {1000 * stiff:.4g}", f"{1000 * bend:.3g} mm")
    backing, enough = bending.backing_diameter(diameter_m, thick_m), bending.thickness_for(diameter_m, held_m)
    yield Working("Backing disc", f"the d where it gives {1000 * bending.MOST_BEND_M:g} mm", "by halving", f"{1000 * backing:.4g} mm")
    yield Working(
        "Thick enough as it is held", "t ∛(give / limit)", f"{thick} × ∛({1000 * bend:.3g} / {1000 * bending.MOST_BEND_M:g})", f"{1000 * enough:.3g} mm"
    )


def turned(off_m: float, diameter_m: float, mass_kg: float) -> Iterator[Working]:
    """Off centre, and what comes of it."""
    o = f"{1000 * off_m:.3g}"
    yield Working("Rim runs out", "2 o", f"2 × {o}", f"{1000 * remounting.runout(off_m):.3g} mm on a dial")
    yield Working("True again at", "D − 2 o", f"{1000 * diameter_m:.4g} − 2 × {o}", f"{1000 * remounting.trued_diameter(diameter_m, off_m):.4g} mm")
    yield Working("Out of balance", "U = m o", f"{mass_kg:.4g} × {o}", f"{1000 * mass_kg * off_m:.4g} kg·mm")
