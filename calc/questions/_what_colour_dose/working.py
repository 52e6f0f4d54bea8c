"""The arithmetic of a colour dose, step by step, and what it stands on."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Working
from calc.casting import colour, small_doses
from calc.casting.weighing import net_uncertainty
from calc.questions._what_colour_dose.case import Case, Colour


def working(case: Case) -> Iterator[Working]:
    """Share, doses, sums, and what the scale makes of them.

    Parameters
    ----------
    case : what was typed.

    Yields
    ------
    Working
    """
    if case.part is not None:
        numbers = f"{case.round_percent(case.part)} of {case.resin_text(case.batches[0] / case.part)}"
        yield Working("Resin to colour, first batch", "part × mixed", numbers, str(case.resin_text(case.batches[0])))
    for one in case.colours:
        name = "" if len(case.colours) == 1 else f", {one.name}"
        yield _share(case, one, name)
        if case.batches:
            share = case.percent(one.share)
            dose = case.fine(one.share * case.batches[0], 4)
            yield Working(f"Dose of the first batch{name}", "m = p M", f"{share} × {case.resin_text(case.batches[0])}", str(dose))
            if len(case.batches) > 1:
                yield Working(f"All batches{name}", "p ΣM", f"{share} × {case.resin_text(case.resin)}", str(case.fine(case.need(one), 4)))
        if case.batches and one.strength is not None:
            take = small_doses.premix(one.share * case.batches[0], one.strength)
            numbers = f"{case.fine(take.colour, 4)} / {case.round_percent(one.strength)}; of it A {case.fine(take.part_a, 4)}"
            yield Working(f"Pre-mix{name}", "m / s, of which m (1 − s) / s is part A", numbers, str(case.fine(take.stock, 4)))
    if len(case.colours) > 1:
        parts = " + ".join(f"{case.round_percent(one.share)} / {case.round_percent(one.caution)}" for one in case.colours)
        yield Working("Together", "Σ p / caution line", parts, f"{case.load('caution'):.3g}")
    if case.over_stop and case.tinting:
        numbers = f"{case.resin_text(case.in_bucket)} × ({case.load('stop'):.4g} − 1)"
        added = case.resin_text(colour.clear_to_add(case.in_bucket, case.load("stop")))
        yield Working("Clear resin to add", "M (Σ p / stop line − 1)", numbers, str(added))
    step = case.face.show(case.step) if case.step >= case.face.step_kg else case.fine(case.step)
    numbers = f"2 × {case.fine(net_uncertainty(case.step))} / {case.round_percent(case.tolerance)}"
    yield Working("Smallest dose on this scale", "2 u / τ, u = d / √6", f"d = {step}: {numbers}", str(case.fine(case.least)))


def _share(case: Case, one: Colour, name: str) -> Working:
    """Where the share comes from."""
    given = case.given
    shown = str(case.percent(one.share))
    if case.tinting:
        numbers = f"{case.fine(one.inside, 4)} / {case.resin_text(case.in_bucket)}"
        return Working(f"Share{name}", "p = m / M", numbers, shown)
    if case.way == "effect":
        effect = given.label_of(f"effect_{one.number}")
        if one.kind.clear and case.depth is not None:
            base = f"{colour.standard('seen through'):g} mm / {1000 * case.depth:.4g} mm"
            formula = "table × L table / L, at most half of the caution line"
            return Working(f"Share{name}", formula, f"{effect}, {one.kind.short}: {base}", shown)
        return Working(f"Share{name}", "from the table of starts", f"{effect}, {one.kind.short}", shown)
    before = given.maybe("was_depth")
    known = case.percent(given.si(f"share_{one.number}")).text if given.choice("was") == "share" else ""
    numbers = f"{known} %" if known else f"{case.fine(given.si(f'was_{one.number}'), 4)} / {case.resin_text(given.si('was_resin'))}"
    if one.kind.clear and case.depth is not None and before is not None:
        numbers += f" × {1000 * before:.4g} mm / {1000 * case.depth:.4g} mm"
        return Working(f"Share{name}", "p2 = p1 L1 / L2", numbers, shown)
    return Working(f"Share{name}", "p = m / M", numbers, shown)


def sources(case: Case) -> tuple[str, ...]:
    """What the answer stands on."""
    keys = ["arithmetic", "gum", "practice"]
    if case.way == "effect" or len(case.colours) > 1:
        keys.append("judgement")
    if case.way == "effect":
        keys.append("pigment-thesis")
    ids = {one.kind.id for one in case.colours}
    if "paste" in ids:
        keys.append("colour-maker")
    if "dye" in ids:
        keys.append("beer-lambert")
    if "metal" in ids:
        keys.append("nfpa-484")
    counted = case.tinting and case.given.choice("ledger") == "drops"
    if counted or any(case.too_small(one) and one.kind.liquid for one in case.colours):
        keys += ["usp-1101", "eschbaum-1895"]
    return tuple(dict.fromkeys(keys))
