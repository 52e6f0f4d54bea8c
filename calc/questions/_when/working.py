"""The arithmetic of When can I?, step by step."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Working
from calc.casting.cure.known import Known
from calc.casting.cure.stages import step_of
from calc.constants import ZERO_C
from calc.questions import Given
from calc.questions._when.casting import Casting

_HARD = "Tg(a) = Tg0 + (Tg∞ − Tg0) λ a / (1 − (1 − λ) a)"


def working(given: Given, casting: Casting, known: Known) -> Iterator[Working]:
    """Of the first mould, in hours."""
    kinetics = casting.kinetics
    yield Working(
        "Rate of the reaction",
        "da/dt = K25 exp[−E/R (1/T − 1/298.15)] (B + a^m) (1 − a)^n f",
        f"E = {kinetics.e / 1e3:g} kJ/mol, m = {kinetics.m:.2f}, B = {kinetics.b:.3f}, n = {kinetics.n:.2f}, from {known.level.name}",
        f"K25 = {kinetics.k25:.3g} 1/s, H = {kinetics.heat / 1e3:.0f} J/g",
    )
    yield Working(
        "Heat in the mould",
        "finite volumes, 8 × 5 cells of resin",
        f"{1e3 * casting.vessel.depth_m:.4g} mm deep, half-width {1e3 * casting.mould.footprint.half_width_m:.4g} mm, shop {_shop(casting)}",
        f"hottest at {_hours(casting.found.peak_s)}",
    )
    yield from _liquid(casting)
    yield from _solid(casting)
    if casting.colder > 1:
        numbers = f"{given.si('sheet_temperature') - ZERO_C:.3g} °C, {_shop(casting)}"
        yield Working("The sheet's times here", "K(sheet's temperature) / mean K(shop)", numbers, f"× {casting.colder:.2f}")


def _liquid(casting: Casting) -> Iterator[Working]:
    """While it flows: pouring, gel, the hours to swirl, and bubbles."""
    found = casting.found
    worked = f"{_hours(found.working_s)} / {casting.level.rate_up:g}; {_hours(casting.bucket.within_s)} - {_hours(casting.waited)}"
    formula = "a = 0.33, by the fastest that it may well be; the bucket's time less the time it stood"
    yield Working("First of it no longer pours", formula, worked, _hours(casting.pour_by))
    yield Working("First of it gels", "a = 0.58", f"from a = {casting.start.conversion:.3f} when poured", _hours(found.gel_s))
    if casting.swirl is not None and found.gel_s is not None:
        formula = "common practice's hours × gel here / gel of the pour they are taken for; not beyond the pouring"
        numbers = f"{step_of('swirl from'):g} to {step_of('swirl to'):g} h × {found.gel_s / 3600:.3g} / {step_of('swirl gel') / 60:.3g}"
        yield Working("Swirl", formula, numbers, f"{_hours(casting.swirl[0])} to {_hours(casting.swirl[1])}")
    yield Working(
        "Finest bubble that gets out",
        "d = 2 √(9 depth / (2 g ρ ∫ dt/η)), η = η25 exp[E/R (1/T − 1/298.15)] (0.58 / (0.58 − a))^(1.5 + a)",
        f"∫ dt/η = {casting.so_far[-1][1]:.3g} 1/Pa up to the gel, ρ = {casting.mix.density:g} kg/m³",
        f"{1e3 * casting.finest_out:.2g} mm",
    )


def _solid(casting: Casting) -> Iterator[Working]:
    """From the gel on: the next layer, and the steps to a hard casting."""
    found, shop = casting.found, casting.shop
    yield Working(
        "Next layer",
        "from the later of: hottest within 5 K of the shop, skin a ≥ 0.62; until the skin's Tg is the shop's temperature; each with the spread of hours",
        f"{_hours(found.near_s)}, {_hours(found.bonds_s)}; {_hours(found.glass_s)}; × and / {casting.spread:g}",
        f"{_hours(casting.layer_from)} to {_hours(casting.layer_to)}",
    )
    factor = casting.hardening
    for name, step, model, told in (
        ("Dry to the touch", "dry", found.dry_s, casting.dry),
        ("Leave the mould", "leave", found.leave_s, casting.leave),
        ("Cut or turn", "rough", found.rough_s, casting.rough),
    ):
        above = shop.warmest_k + step_of(step) - ZERO_C
        yield Working(name, f"coldest part: {_HARD}, × {factor:.3g}", f"Tg {above:.0f} °C at {_hours(model)}", _hours(told))


def _shop(casting: Casting) -> str:
    shop = casting.shop
    return f"{shop.day_k - ZERO_C:.3g} °C" + ("" if shop.steady else f", {shop.night_k - ZERO_C:.3g} °C by night")


def _hours(seconds: float | None) -> str:
    return "not reached" if seconds is None else f"{seconds / 3600:.3g} h"
