"""What would change the answer: other ways than to buy more, and what measuring better would save."""

from __future__ import annotations

from calc.answers import Change
from calc.casting import wood as of_wood
from calc.casting.sufficiency import Demand, Wood, resin_in_mould, standard
from calc.questions._is_it_enough.case import Case
from calc.questions._is_it_enough.words import amount, times, volume

_SAVES = standard("worth saving")
_MOST_CHANGES = 3
_SHEET = standard("density told")


def changes(case: Case) -> tuple[Change, ...]:
    """With a shortage what else would do; then what measuring better would save, the largest first."""
    out = shortage(case, case.in_kg(case.more)) if case.have is not None and not case.pouring else []
    if case.pouring:
        return tuple(shortage(case, max(0.0, case.still.for_odds(case.sure) - case.left))) if case.left is not None else ()
    now = case.wanted.for_odds(case.sure)
    found = []
    for do, then in _better(case):
        saves = now - then.for_odds(case.sure)
        if saves >= _SAVES * now:
            found.append((saves, Change(do, f"{amount(case, then.for_odds(case.sure), 'up')} would do, {amount(case, saves, 'down', 2)} less")))
    return (*out, *[change for _, change in sorted(found, key=lambda pair: -pair[0])][:_MOST_CHANGES])


def shortage(case: Case, missing_kg: float) -> list[Change]:
    """Other ways than to buy more; none where nothing is missing."""
    missing = missing_kg / case.density / (case.count - case.full if case.pouring else case.count)
    out: list[Change] = []
    if missing <= 0:
        return out
    shape = case.mould.shape
    if shape is not None:
        depth = case.mould.depth
        bare = shape.area(depth) - case.wood.kept_out / depth
        lower = missing / bare if bare > 0 else depth
        most = depth - case.given.si("reached") if case.pouring else depth / 2
        if lower < most:
            out.append(Change(f"Fill {case.given.write(lower, 'length', 'up')} less deep", f"then what is there is enough {times(case)}"))
    room = case.mould.volume - case.wood.volume
    filler = missing / (1 - case.wood.soak)
    if filler < room / 2 and not case.pouring:
        each = "" if case.count == 1 else " each"
        out.append(Change(f"Set in {volume(case, filler, 'up')} more wood{each}", "it keeps that much resin out"))
    return out


def _better(case: Case) -> list[tuple[str, Demand]]:
    """What could be measured better, and what would be wanted then."""
    wanted, given = case.wanted, case.given
    unit = case.count * (1.0 if case.by_volume else case.density)
    out = []
    dipped = of_wood.standard("spread dip") * case.wood.volume
    if case.wood.u > dipped:
        out.append(("Dip the wood on a scale", wanted.but("wood", unit * (1 - case.wood.soak) * dipped)))
    shape, mould = case.mould.shape, case.mould
    if shape is not None and mould.all_round is None:
        four = shape.area(mould.depth) * mould.u_depth / 2
        out.append(("Read the depth at four places, all round", wanted.but("depth", unit * four).but("level", 0.0)))
        if given.choice("level") == "eye":
            level = mould.level_spread(mould.depth).u * standard("level set") / standard("level eye")
            out.append(("Set the mould with a level", wanted.but("level", unit * level)))
    if case.wood.soak > 0:
        sealed = resin_in_mould(mould.room(), Wood(case.wood.volume, case.wood.u)).times(case.count).plus(case.loss)
        out.append(("Seal the wood all over, its coat mixed apart", case._with_others(case.weighed(sealed))))
    if not case.by_volume:
        out.append(("Weigh a litre of the mixed resin, or read its sheet", wanted.but("density", _SHEET * wanted.likely)))
    return out
