"""Cautions by kind of colour and by dose: few, the worst first."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Caution
from calc.casting import colour
from calc.questions._what_colour_dose.case import Case


def cautions(case: Case) -> Iterator[Caution]:
    """What may go wrong with these colours.

    Parameters
    ----------
    case : what was typed.

    Yields
    ------
    Caution
    """
    ids = {one.kind.id for one in case.colours}
    if case.over_caution and not case.over_stop:
        yield Caution("strong", "caution", f"{_over(case)} More can upset the cure (common practice): let a cup of it cure first.")
    if case.liquid > colour.standard("carrier caution") + 1e-12:
        most = case.round_percent(colour.standard("carrier caution"))
        yield Caution("carrier", "caution", f"Liquid colour is {case.round_percent(case.liquid)} of it. Over {most} ask its maker whether it counts as part A.")
    if "metal" in ids:
        yield Caution("metal", "caution", "Metal powder burns, and a cloud of it can explode: no flame, no spark, no hot air near it. Particle mask on.")
    elif not all(one.kind.liquid for one in case.colours):
        yield Caution("powder", "caution", "Fine powder: particle mask on, no draught, lid straight back on the jar.")
    if ids & {"metal", "glow"}:
        yield Caution("sinks", "caution", "It is heavy and sinks in thin resin: stir it in late, and once more just before you pour.")
    if "dye" in ids:
        yield Caution("solvent", "caution", "The solvent of a dye or ink upsets cure and clarity: no more than the look needs. Nothing with water in it.")
    if _unknown_depth(case):
        yield Caution("depth", "caution", "A clear dye looks the same only through the same thickness. Where the two differ, enter both.")
    if case.tinting and case.given.choice("ledger") == "drops":
        yield Caution("drops", "caution", "A drop from another bottle or tip is another dose. Write down the share, never the drops.")
    premixed = any(one.strength is not None or (case.too_small(one) and case.premix(one) is not None) for one in case.colours)
    if premixed:
        yield Caution("premix", "caution", "Stir the pre-mix before each dose. With colour in A no streaks show: scrape, and stir again in a second bucket.")
    elif not case.tinting:
        yield Caution("clear-first", "go", "Mix A and B clear first: colour hides streaks.")
    if "paste" in ids and not case.liquid > colour.standard("carrier caution") + 1e-12:
        yield Caution("ratio", "go", "Its liquid is neither A nor B: leave the ratio as it is, unless the label says it is part A.")
    if case.depth is None or case.given.maybe("bucket_depth") is None:
        yield Caution("bucket", "go", "A deep bucket looks several times stronger than a thin casting. Go by the smear, not by the bucket.")


def _over(case: Case) -> str:
    if len(case.colours) > 1:
        return f"Together they are {case.load('caution'):.2g} times what goes in without care."
    one = case.colours[0]
    return f"{case.round_percent(one.share)} of {one.name} is over {case.round_percent(one.caution)}."


def _unknown_depth(case: Case) -> bool:
    """A clear colour repeated, and not both thicknesses known."""
    clear = any(one.kind.clear for one in case.colours)
    return clear and case.way == "repeat" and (case.depth is None or case.given.maybe("was_depth") is None)
