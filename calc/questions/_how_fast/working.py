"""The arithmetic of How fast?, step by step: each formula in symbols, then with the numbers in (kg, mm, mm/s), then the rpm."""

from __future__ import annotations

import math

from calc.answers import Working
from calc.constants import STANDARD_GRAVITY
from calc.questions import Given
from calc.turning import balance, caps, discs, speed
from calc.turning.case import Case


def working(given: Given, case: Case, top: speed.TopSpeed) -> tuple[Working, ...]:
    """Each limit: its formula in symbols, then with the numbers in (kg, mm, mm/s), then the rpm."""
    job = case.job
    by_id = {limit.id: limit.speed_rpm for limit in top.limits}
    cap = min(caps.operation_rim_speed(case.operation, case.diameter_m), caps.condition_rim_speed(case.condition))
    d, t, m, standing = (
        f"{1000 * case.diameter_m:.4g}",
        f"{1000 * case.thickness_m:.4g}",
        f"{case.mass_kg:.4g}",
        f"{job.standing_mass_kg:.4g}",
    )
    v_lim, u = f"{1000 * job.held_to_m_per_s:.3g}", f"{1000 * job.felt_unbalance_kg_m:.4g}"
    steps = [Working("Rim", "n = 60 000 v / (π D)", f"60 000 × {cap:.3g} / (π × {d})", _result(by_id["rim"]))]
    if case.weighed_kg is None:
        numbers = f"{discs.RESIN_DENSITY:.0f} × π × {d}² × {t} / 4 / 10⁹"
        steps.append(Working("Weight, as a full disc of resin", "m = ρ π D² t / 4", numbers, f"{m} kg"))
    felt = job.overruling
    if felt is None:
        steps.append(_unbalance_working(given, case))
        numbers = f"9.549 × √2 × {v_lim} × ({standing} + {m}) / {u}"
        steps.append(Working("Vibration", "n = (60 / 2π) √2 v_lim (M + m) / U", numbers, _result(by_id["vibration"])))
    else:
        n_m, v_m = f"{felt.speed_rpm:.4g}", f"{1000 * felt.vibration_m_per_s:.3g}"
        numbers = f"{n_m} × {v_lim} / {v_m}"
        steps.append(Working("Vibration, as it ran", "n = n_m v_lim / v_m", numbers, _result(by_id["vibration"])))
        numbers = f"√2 × {v_m} × ({standing} + {m}) / {balance.angular_speed(felt.speed_rpm):.4g}"
        steps.append(Working("Out of balance, as it ran", "U = √2 v_m (M + m) / ω_m", numbers, f"{u} kg·mm"))
    numbers = f"9.549 × √({balance.PUSH_SHARE:g} × {standing} × {STANDARD_GRAVITY:.4g} × 1000 / {u})"
    formula = "n = (60 / 2π) √(k M g / U)" + (", not under what ran still" if case.measured is not None and case.measured.at_most else "")
    steps.append(Working("Push", formula, numbers, _result(by_id["push"])))
    if "mount" in by_id:
        numbers = f"{job.mount_share:g} × {top.bearing.speed_rpm:.1f}"
        steps.append(Working("Mount", "n = share × the lowest above", numbers, _result(by_id["mount"])))
    if "whip" in by_id:
        formula = "n = ½ × 60 (π D / 8 L²) √(E / ρ)" + ("" if job.far_end_held else f" × {discs.FREE_END_FACTOR:.3f}")
        stiff = f"√({discs.RESIN_MODULUS:.2g} / {discs.RESIN_DENSITY:.0f})"
        numbers = f"30 × 1000 × (π × {d} / (8 × {1000 * job.length_m:.4g}²)) × {stiff}"
        steps.append(Working("Whip", formula, numbers, _result(by_id["whip"])))
    steps.append(setting_working(case.speeds, top))
    if top.setting_rpm is not None:
        steps.append(_running_working(case, top.setting_rpm))
    return tuple(steps)


def _running_working(case: Case, setting_rpm: float) -> Working:
    rim = caps.rim_speed(case.diameter_m, setting_rpm)
    unbalance = case.job.felt_unbalance_kg_m
    return Working(
        "At that speed",
        "v = π D n / 60 000; F = U ω²; G = U ω / m; a lump of 2 E / v²",
        f"n = {setting_rpm:g}; E = {discs.SHIELD_TEST_J:.3g} J, the face shield's test",
        f"rim {rim:.3g} m/s; push {balance.push(unbalance, setting_rpm):.3g} N; "
        f"balance grade G {1000 * balance.balance_grade(unbalance, case.mass_kg, setting_rpm):.3g}; "
        f"lump {1000 * discs.shield_fragment_mass(rim):.3g} g",
    )


def _unbalance_working(given: Given, case: Case) -> Working:
    m, e = f"{case.mass_kg:.4g}", f"{1000 * case.eccentricity_m:.4g}"
    result = f"{1000 * case.job.unbalance_kg_m:.4g} kg·mm"
    off = f" + {m} × {1000 * case.set_back_m:.4g}" if case.set_back_m else ""
    plus = " + m o" if case.set_back_m else ""
    if case.make_up == "weight":
        numbers = f"{given.si('weight'):.4g} × {1000 * given.si('weight_radius'):.4g}"
        return Working("Out of balance, weighed", f"U = w r{plus}", numbers + off, f"{result}, so e = {e} mm" if not off else result)
    if case.make_up == "known":
        return Working("Out of balance", f"U = m e{plus}", f"{m} × {e}{off}", result)
    share = 100 * case.eccentricity_m / case.diameter_m
    return Working("Out of balance, guessed", f"U = m × share × D{plus}", f"{m} × {share:.2g} % × {1000 * case.diameter_m:.4g}{off}", result)


def setting_working(speeds: speed.Speeds, top: speed.TopSpeed) -> Working:
    """From the lowest limit to what the lathe can be set to."""
    can = ", ".join(f"{step:g}" for step in speeds.steps_rpm) if speeds.steps_rpm else f"{speeds.lowest_rpm:g} to {speeds.highest_rpm:g}"
    rule = "highest step not above the lowest limit" if speeds.steps_rpm else "lowest limit, down to a full ten"
    result = "none: the lowest is above it" if top.setting_rpm is None else f"{top.setting_rpm:g} rpm"
    if top.too_quick:
        result += f", the lowest there is; not above {top.hard_rpm:.1f}"
    return Working("Setting", rule, f"{top.speed_rpm:.1f} rpm on {can}", result)


def _result(rpm: float) -> str:
    return "no limit" if math.isinf(rpm) else f"{rpm:.1f} rpm"
