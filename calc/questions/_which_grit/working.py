"""Which grit next? The arithmetic, step by step."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Working
from calc.constants import ZERO_C
from calc.questions._which_grit.case import Sanding
from calc.sources import value
from calc.turning import caps, remounting, rubbing


def working(it: Sanding) -> Iterator[Working]:
    """Grain against grain, the ceiling, and the heat."""
    ok, most = value("sanding", "ratio near"), value("sanding", "ratio most")
    grains = [(before, paper.size_m) for before, paper in zip(it.grains, it.steps, strict=False) if before]
    pairs = ", ".join(f"{1e6 * before:.4g}/{1e6 * after:.4g} = {before / after:.2f}" for before, after in grains)
    yield Working("Steps", f"grain now / grain next: up to {ok:.2f}, at most {most:.1f}", pairs or "no step between grits", f"last {1e6 * it.last_m:.4g} µm")
    found = it.limits_of(it.operation)
    d = f"{1000 * it.diameter:.4g}"
    rim = min(caps.operation_rim_speed(it.operation, it.diameter), caps.condition_rim_speed(it.condition))
    yield Working("Rim", "n = 60 000 v / (π D)", f"60 000 × {rim:.3g} / (π × {d})", f"{found['rim']:.1f} rpm")
    if "mount" in found:
        yield Working("Mount", "share × rim", f"{it.mount_share:.2g} × {found['rim']:.1f}", f"{found['mount']:.1f} rpm")
    small, large = caps.caps()["rub-small"], caps.caps()["rub-large"]
    formula = (
        f"the higher of: {small['rpm']:.0f} rpm and {small['rim']:g} m/s, the lower; {large['rpm']:.0f} rpm and {large['rim']:g} m/s, the lower"
        if it.operation != "power"
        else "work under a spinning pad"
    )
    yield Working("Heat", formula, f"D = {d} mm", f"{found['heat']:.1f} rpm")
    own = it.given.maybe("rpm")
    rpm = it.ceiling(it.operation) if own is None else own
    numbers = f"{it.friction:g} × {it.press:g} × {caps.rim_speed(it.diameter, rpm):.3g}"
    yield Working("Heat of rubbing", "P = μ F v", numbers, f"{it.power:.3g} W over {1e4 * it.area:.3g} cm²")
    numbers = f"{it.warmest - ZERO_C:.3g} − {it.given.si('face') - ZERO_C:.3g} = {it.room_for_heat:.3g} K; q = {it.power / it.area:.4g} W/m²"
    plain = rubbing.seconds_for(it.room_for_heat, it.power, it.area)
    yield Working("In one place", "t = π k ρ c (ΔT / (2 q))²; never over 30 s", numbers, f"{plain:.3g} s")
    if it.given.choice("reverse") != "no":
        yield Working("Unscrewing it in reverse", "F D / 2", f"20 × {d} / 2000", f"{remounting.unscrewing_by_sanding(it.diameter):.2g} N m")
    if it.goal == "wheel":
        wheel = 1000 * it.given.si("wheel")
        cap = caps.caps()["wheel-cap"]["rim"]
        yield Working("Wheel", "n = 60 000 v / (π d), or its marking", f"60 000 × {cap:g} / (π × {wheel:.4g})", f"{it.wheel_ceiling:.1f} rpm")
