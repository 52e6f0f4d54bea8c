"""The arithmetic of a weighing, step by step: each formula in symbols, then with the numbers in, then the figure."""

from __future__ import annotations

from calc.answers import Working
from calc.casting import mixing, weighing
from calc.casting.batch import ScaleFace
from calc.quantity.units import from_si
from calc.quantity.writing import Style
from calc.questions._how_much.plan import Plan, nice_mass


def working(plan: Plan) -> tuple[Working, ...]:
    """From the ratio and the total to A and B, then what the scale makes of them."""
    job, given, face = plan.job, plan.given, plan.job.face
    ratio, first = job.ratio, plan.first
    density = given.write(job.density, ("density", Style("g/mL", step=0.0001)))
    out = []
    if given.choice("by") == "volume":
        a, b = given.ratio("ratio")
        ra, rb = (given.write(given.si(name), ("density", Style("g/mL", step=0.001))).text for name in ("density_a", "density_b"))
        out.append(Working("Ratio by weight", "w = v × ρB / ρA", f"100 × {b:g}/{a:g} × {rb} / {ra}", f"100:{ratio.b:.2f}"))
        numbers = f"{100 + ratio.b:.2f} / (100/{ra} + {ratio.b:.2f}/{rb})"
        out.append(Working("Density of the mix", "ρ = (mA + mB) / (mA/ρA + mB/ρB)", numbers, str(density)))
    if given.choice("known") == "volume":
        volume = given.write(given.si("volume"), "volume")
        out.append(Working("Weight wanted", "M = ρ V", f"{density} × {volume}", str(plan.mass(job.total))))
    if job.way != "kit":
        share = mixing.split(job.total / len(plan.pours), ratio)
        fine = ScaleFace(face.unit, face.step / 10)
        if job.limit.rules and plan.later is None and not (job.in_a or job.in_b):
            numbers = f"ceil({plan.mass(job.total).text} / {plan.mass(job.net).text})"
            out.append(Working("Pours", "n = ceil(M / limit), and one more where rounding needs it", numbers, str(len(plan.pours))))
        if not (job.in_a or job.in_b):
            formula = "mA = (M/n) a/(a+b), up to the scale's next step"
            numbers = f"{plan.mass(job.total).text}/{len(plan.pours)} × {ratio.a:.4g}/{ratio.a + ratio.b:.4g}"
            numbers += f" = {fine.show(share.a).text}"
            out.append(Working("A in each pour", formula, numbers, str(plan.mass(first.a))))
        exact = first.a * ratio.b_per_a
        numbers = f"{plan.mass(first.a).text} × {ratio.b:.4g}/{ratio.a:.4g} = {fine.show(exact).text}"
        out.append(Working("B from that A", "mB = mA b/a, to the nearest step", numbers, str(plan.mass(first.b))))
    u = weighing.net_uncertainty(job.step)
    out.append(Working("One weighing", "u = d / √6", f"{plan.mass(job.step).text} / √6", _fine(u, face.unit)))
    fine_u = _fine(u, face.unit)
    numbers = f"2 × √(({fine_u} / {plan.mass(plan.smallest.a)})² + ({fine_u} / {plan.mass(plan.smallest.b)})²)"
    out.append(Working("Ratio held within", "k u(R)/R = k √((u/mA)² + (u/mB)²), k = 2", numbers, plan.percent(plan.hold)))
    numbers = f"2 × {fine_u} × {ratio.a + ratio.b:.4g} × √(1/{ratio.a:.4g}² + 1/{ratio.b:.4g}²) / {plan.percent(job.good)}"
    formula = "M = k u (a+b) √(1/a² + 1/b²) / τ"
    out.append(Working("Smallest batch", formula, numbers, str(nice_mass(plan.least, face.unit))))
    return tuple(out)


def _fine(mass: float, unit: str) -> str:
    """A small mass with three figures."""
    return f"{from_si(mass, 'mass', unit):.3g} {unit}"
