"""From the fields to the gates of a pour."""

from __future__ import annotations

import math
from collections.abc import Mapping

from calc.casting.cure import narrow, plan
from calc.casting.cure.cells import Footprint
from calc.casting.cure.kinetics import heat_of_reaction
from calc.casting.cure.working import pour_within
from calc.questions import Given
from calc.questions._gated import yes
from calc.questions._worn import Mask
from calc.safety import gates
from calc.safety.findings import Finding


def tray_depth(given: Given) -> float | None:
    """How deep the leftovers (or the whole batch) stand in the tray, m; None while a size is missing.

    Parameters
    ----------
    given : this question's inputs.

    Returns
    -------
    float or None
    """
    load = given.maybe("leftovers") or given.maybe("mass")
    length, width = given.maybe("tray_length"), given.maybe("tray_width")
    if load is None or length is None or width is None:
        return None
    return gates.pour.spread_depth(load, length, width, given.si("density"))


def layer_takes(given: Given) -> float | None:
    """What this layer takes in all of its moulds, kg, as if they held no wood; None while a size is missing.

    Parameters
    ----------
    given : this question's inputs.

    Returns
    -------
    float or None
    """
    depth, length, width = (given.maybe(name) for name in ("depth", "mould_length", "mould_width"))
    if depth is None or length is None or width is None:
        return None
    return given.si("moulds") * depth * length * width * given.si("density")


def time_to_use(given: Given) -> float | None:
    """By when this batch is to be mixed and poured, s from when A meets B; the share of the sheet's time alone while its mass is missing.

    Parameters
    ----------
    given : this question's inputs.

    Returns
    -------
    float or None
    """
    working, mass, share = given.maybe("working"), given.maybe("mass"), given.si("share")
    if working is None or mass is None:
        return None if working is None else share * working
    heat = heat_of_reaction(*given.ratio("ratio")) if given.maybe("ratio") else None
    warmest = max((k for k in (given.maybe("room"), given.maybe("resin")) if k is not None), default=None)
    return pour_within(working, mass, given.si("density"), heat, warmest, share)


def findings(given: Given) -> Mapping[str, Finding]:
    """Every gate that these inputs can feed, by a name of its own: G3, G5 and G15 stand for two moments each.

    Parameters
    ----------
    given : this question's inputs; any may be missing.

    Returns
    -------
    mapping of str to Finding
        In the order of the grid. "G5-weighed" and "G3-cure" are the later moments of their gates, "G15-solvent" and
        "G15-away" are the earlier ones of theirs.
    """
    ratio = (given.ratio("ratio"), given.maybe("ratio"))[0] if given.maybe("ratio") else None
    return {
        "G1": gates.pour.depth(given.maybe("depth"), given.maybe("sheet_depth"), _wide_equal(given), given.maybe("own_depth")),
        "G2": gates.pour.batch(given.maybe("mass"), given.maybe("sheet_mass"), given.maybe("moulds_take"), given.maybe("spare"), layer_takes(given)),
        "G3": gates.pour.temperature_range(given.maybe("room"), given.maybe("resin"), given.maybe("lowest"), given.maybe("highest")),
        "G4": gates.pour.working_time(given.maybe("handling"), given.maybe("working"), given.si("share"), time_to_use(given)),
        "G5": gates.ratio.ratio_unit(given.words("ratio_by") or None),
        "G5-weighed": gates.ratio.ratio_measured(
            given.maybe("weighed_a"),
            given.maybe("weighed_b"),
            None if ratio is None else ratio[1] / ratio[0],
            given.maybe("tolerance"),
            given.words("ratio_by") or None,
        ),
        "G6": gates.pour.next_layer(
            given.words("beneath") or None,
            given.maybe("waited"),
            given.maybe("earliest"),
            given.maybe("latest"),
            given.maybe("surface"),
            given.maybe("room"),
        ),
        "G16": gates.worn.mask(**vars(Mask.of(given)), used_s=given.maybe("filter_hours"), schedule_s=given.maybe("filter_schedule")),
        "G17": gates.worn.gloves(given.maybe("gloves_on"), given.si("glove_time")),
        "G19": gates.pour.tray(tray_depth(given), given.maybe("sheet_depth")),
        "G3-cure": gates.pour.hotter_than_planned(given.maybe("hottest"), given.maybe("planned_peak")),
        "G15-solvent": gates.shop.solvent(given.maybe("solvent"), room_volume(given)),
        "G15-away": gates.shop.put_away(yes(given, "put_away")),
        "G15": gates.shop.dried(yes(given, "wiped_dry"), given.maybe("solvent"), room_volume(given)),
    }


def room_volume(given: Given) -> float | None:
    """Air in the room, m3; None while one of its sizes is missing.

    Parameters
    ----------
    given : this question's inputs.

    Returns
    -------
    float or None
    """
    sides = [given.maybe(name) for name in ("room_length", "room_width", "room_height")]
    known = [side for side in sides if side is not None]
    return math.prod(known) if len(known) == len(sides) else None


def _wide_equal(given: Given) -> float | None:
    """The wide pour that gets as hot, m: asked only of a narrow mould that is filled deeper than the sheet allows."""
    planned, sheet, width = given.maybe("depth"), given.maybe("sheet_depth"), given.maybe("narrowest")
    if planned is None or sheet is None or width is None or planned <= sheet or not plan.narrow(Footprint(width / 2, 0.0), planned):
        return None
    return narrow.wide_equal(planned, sheet, width)


def over_sheet(given: Given) -> bool:
    """Deeper than the sheet allows, and nobody said how narrow the mould is."""
    planned, sheet = given.maybe("depth"), given.maybe("sheet_depth")
    return planned is not None and sheet is not None and planned > sheet and given.maybe("narrowest") is None


def shown(given: Given, found: Mapping[str, Finding]) -> dict[str, Finding]:
    """The findings worth a row before the pour: a later moment's gate only once something feeds it."""
    later: dict[str, tuple[str, ...]] = {
        "G5-weighed": ("weighed_a",), "G17": ("gloves_on",), "G3-cure": ("hottest",), "G15-solvent": ("solvent",),
        "G15-away": ("put_away",), "G15": ("wiped_dry",),
    }  # fmt: skip
    if not given.words("ratio_by"):  # one row says that the unit is missing
        later["G5-weighed"] = ()
    return {key: finding for key, finding in found.items() if key not in later or any(given.typed(name) for name in later[key])}
