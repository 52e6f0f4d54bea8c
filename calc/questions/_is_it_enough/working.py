"""The arithmetic of one case, step by step, and what it stands on."""

from __future__ import annotations

from calc.answers import Working
from calc.casting import budget
from calc.quantity.writing import Style
from calc.questions._is_it_enough.case import Case
from calc.questions._is_it_enough.words import PARTS, amount, percent, times

FORMULAS = {
    "round": "π D² h / 4",
    "ring": "π (D² − d²) h / 4",
    "box": "L W h",
    "cup": "π h (R1² + R1 R2 + R2²) / 3",
    "tray": "h (A1 + 4 Am + A2) / 6",
    "oval": "π a b h / 4",
    "slot": "[π W² / 4 + (L − W) W] h",
    "bowl": "π h² (3R − h) / 3, R = (a² + H²) / (2H)",
    "ball": "π h² (3R − h) / 3",
    "trough": "L [R² acos((R − h) / R) − (R − h) √(2Rh − h²)]",
    "widths": "Simpson's rule over the widths (an odd count) or trapeziums, times h",
    "corners": "|Σ (x_i y_(i+1) − x_(i+1) y_i)| / 2, times h",
    "measured": "as measured",
}
_SIDES = {"flats": "n F² tan(π/n) h / 4", "side": "n s² h / (4 tan(π/n))", "corner": "n R² sin(2π/n) h / 2"}
_SIZES = (
    "across", "core", "length", "width", "floor_across", "top_across", "floor_length", "floor_width", "top_length", "top_width",
    "sides", "size", "rim", "widths", "corners", "volume",
)  # fmt: skip


def exact(case: Case, m3: float) -> str:
    """A volume for the working."""
    return str(case.given.write(m3, ("volume", Style(case.given.pick("mL", "US fl oz"), figures=5))))


def fine(case: Case, value: float) -> str:
    """An amount of the shelf for the working."""
    return str(amount(case, value, figures=4))


def working(case: Case) -> tuple[Working, ...]:
    """All steps."""
    out = [*_mould(case), *_resin(case), *_spread(case)]
    if case.pouring:
        out += _pour(case)
    if case.top_up is not None:
        top = case.top_up
        numbers = f"{case.given.write(case.given.si('shrinkage') + (case.given.maybe('air') or 0.0), 'share')} of {exact(case, case.these.likely)}"
        out.append(Working("Top-up once it has set", "(shrinkage + bubbles) × resin in the moulds", numbers, exact(case, top.later)))
    return tuple(out)


def _mould(case: Case) -> list[Working]:
    given, mould = case.given, case.mould
    formula = _SIDES[given.choice("side_by")] if mould.kind == "sides" else FORMULAS[mould.kind]
    if mould.shape is not None:
        units = given.pick("mm", "in")
        sizes = ", ".join(f"{name.replace('_', ' ')} {given.text(name)}" for name in _SIZES if given.typed(name))
        deep = given.write(mould.depth, ("length", Style(units, figures=4)))
        out = [Working("Mould", formula, f"{sizes}; h {deep}", exact(case, mould.shape.volume(mould.depth)))]
        if mould.sag:
            out.append(Working("Sag", "A s / 2", f"s {given.text('sag') or '0'}", exact(case, mould.sag)))
    else:
        out = [Working("Mould", formula, given.text("volume"), exact(case, given.si("volume")))]
    rest = mould.volume - (mould.room_to(mould.depth) if mould.shape is not None else given.si("volume"))
    if rest > 0:
        out.append(Working("More parts", "each by its own formula", f"{exact(case, mould.volume)} in all", exact(case, rest)))
    return out


def _resin(case: Case) -> list[Working]:
    given, wood = case.given, case.wood
    out = []
    if given.choice("wood_by") == "weight":
        numbers = f"{given.text('wood_mass')} / {given.write(given.si('wood_density'), 'density')}"
        out.append(Working("Wood", "V = m / ρ", numbers, exact(case, wood.volume)))
    if wood.soak > 0:
        soaked = wood.soak * wood.volume
        out.append(Working("Soaks in", "share × wood", f"{given.write(wood.soak, 'share')} of {exact(case, wood.volume)}", exact(case, soaked)))
    numbers = f"{exact(case, case.mould.volume)} − {exact(case, wood.volume)} + {exact(case, wood.soak * wood.volume)}"
    out.append(Working("Resin in one mould", "mould − wood + what soaks in", numbers, exact(case, case.one.likely)))
    each = "own figure" if given.maybe("loss") is not None else "the larger of 30 mL and 1.5 % of each batch"
    out.append(Working("Stays in the bucket", each, f"{case.pours} {'batch' if case.pours == 1 else 'batches'}", exact(case, case.loss.likely)))
    moulds = f"{case.count} × {exact(case, case.one.likely)} + {exact(case, case.loss.likely)}"
    if case.by_volume:
        out.append(Working("Resin wanted, most likely", "n V + loss", moulds, fine(case, case.wanted.likely)))
    else:
        rest = " + other moulds" if case.others else ""
        numbers = f"{given.write(case.density, 'density')} × ({moulds}){rest}"
        out.append(Working("Resin wanted, most likely", f"M = ρ (n V + loss){rest}", numbers, fine(case, case.wanted.likely)))
    return out


def _spread(case: Case) -> list[Working]:
    wanted = case.wanted
    parts = [f"{PARTS[part.name].lower()} {fine(case, part.u)}" for part in wanted.by_name() if part.u > 0]
    out = [Working("Standard uncertainty", "u = √Σ u_i²", "; ".join(parts) or "nothing is unsure", fine(case, wanted.u))]
    z = budget.deviate(case.sure, wanted.freedom)
    free = "z" if wanted.freedom > 1e6 else f"t with {wanted.freedom:.0f} degrees of freedom (Welch-Satterthwaite)"
    numbers = f"{fine(case, wanted.likely)} + {z:.3f} × {fine(case, wanted.u)}; {free}"
    out.append(Working(f"Enough {times(case)}", "M + z u", numbers, fine(case, wanted.for_odds(case.sure))))
    if case.have is not None and case.odds is not None:
        numbers = f"({fine(case, case.have)} − {fine(case, wanted.likely)}) / {fine(case, wanted.u)}"
        out.append(Working("Odds that it is enough", "P = Φ((have − M) / u)", numbers, f"{100 * case.odds:.1f} %"))
    return out


def _pour(case: Case) -> list[Working]:
    def kg(value: float) -> str:
        return str(case.given.write(value, ("mass", Style(case.given.pick("g", "oz"), figures=4))))

    so_far, whole = (one.weighed(case.density, case.u_density) for one in (case.reckoned, case.these))
    seen = f"{kg(case.given.si('used'))} poured, {kg(so_far.likely)} reckoned; wood below the level {percent(case.wood_below(case.given.si('reached')))}"
    return [
        Working("Up to the level read", "the same sum, to that level", seen, kg(so_far.likely)),
        Working(
            "Corrected", "T + K (poured − reckoned), K = Σ a b / (Σ b² + u²)",
            f"T {kg(whole.likely)}, u of the reading {kg(case.u_seen)}", f"{kg(case.forecast.likely)}, u {kg(case.forecast.u)}",
        ),
    ]  # fmt: skip


def sources(case: Case) -> tuple[str, ...]:
    """What the answer stands on."""
    keys = ["arithmetic", "gum", "practice", "judgement"]
    if case.given.choice("wood_by") == "weight" or case.given.words("wood_way") == "weigh":
        keys.append("wood-handbook-4")
    return tuple(keys)
