"""Gates of the pour: depth and batch, temperature, working time, the next layer, what is left over."""

from __future__ import annotations

import math

from calc.casting.cure.plan import tiers
from calc.safety.findings import SAME, Finding, Part, State, judge, must
from calc.sources import value

#: How far the layer below may differ from the room when the next goes on, K.
LAYER_TO_ROOM_K = value("gate_figures", "layer to room")
#: From these on the sheet's depth alone clears no layer: a share of it, and m.
ALONE_SHARE, ALONE_M = 1 / value("gate_figures", "sheet alone part"), value("gate_figures", "sheet alone") / 1e3
#: A batch this share over what the moulds take may be the spare of Is it enough?.
SPARE_SHARE = value("gate_figures", "spare")
#: Greatest depth of leftovers in the waste tray, m.
TRAY_DEPTH_M = value("gate_figures", "tray") / 1e3


def depth(
    planned_m: float | None, sheet_limit_m: float | None, equal_m: float | None = None, own_limit_m: float | None = None
) -> Finding:
    """G1: the depth of one layer against the depth the data sheet allows, and against what was worked out for this pour.

    Parameters
    ----------
    planned_m, sheet_limit_m : m, more than 0, or None.
    equal_m : the wide pour that gets as hot as this one in its narrow mould, m; None where the mould is wide or not known.
    own_limit_m : the depth worked out for this resin, room and mould, m; None where nobody asked.

    Returns
    -------
    Finding
        The sheet's depth is meant for a wide pour. Over it as it stands but not as a wide pour is the maker's call: not checked,
        with both depths. Over it in both is a stop, and so is a depth over what was worked out; the lower of the two decides.
        Within the sheet's depth alone it is not checked, unless it is at most a third of it and 12 mm.

    Examples
    --------
    >>> depth(0.06, 0.05).state.value, depth(0.05, None).state.value
    ('stop', 'not checked')
    >>> depth(0.042, 0.05).state.value, depth(0.012, 0.05).state.value
    ('not checked', 'no stop found')
    >>> depth(0.06, 0.05, 0.03).state.value, depth(0.06, 0.05, 0.055).state.value
    ('not checked', 'stop')
    >>> depth(0.05, 0.05, None, 0.009).state.value
    'stop'

    References
    ----------
    Facts 3.1 to 3.4 in ``data/safety_facts.toml``; the share and the 12 mm are our judgement.
    """
    plain = Part("depth", "length", planned_m, sheet_limit_m)
    own = Part("own", "length", planned_m, own_limit_m)
    if own_limit_m is not None and (sheet_limit_m is None or own_limit_m < sheet_limit_m):
        if own.state is State.STOP:
            return judge("G1", [own, plain])
        return judge("G1", [plain, own])
    if equal_m is None or plain.state is not State.STOP:
        return judge("G1", [plain, own] if own_limit_m is None and _deep(planned_m, sheet_limit_m) else [plain])
    wide = Part("equal", "length", equal_m, sheet_limit_m)
    if wide.state is State.STOP:
        return judge("G1", [plain, wide])
    if own.state is State.STOP:
        return judge("G1", [own])
    return Finding("G1", State.UNCHECKED, (plain, wide), "narrow")


def _deep(planned_m: float | None, sheet_limit_m: float | None) -> bool:
    """Too deep for the sheet's depth alone to clear it, to within a hair."""
    most = ALONE_M if sheet_limit_m is None else min(ALONE_M, ALONE_SHARE * sheet_limit_m)
    return planned_m is not None and planned_m > most * (1 + SAME)


def batch(
    mass_kg: float | None, sheet_max_kg: float | None, moulds_take_kg: float | None, spare_kg: float | None = None, layer_kg: float | None = None
) -> Finding:
    """G2: the mass of a batch against the sheet's largest batch, and against what the moulds take.

    Parameters
    ----------
    mass_kg : A and B together, kg.
    sheet_max_kg : the largest batch the sheet allows, kg.
    moulds_take_kg : what the moulds that are ready take, none deeper than G1 allows, kg.
    spare_kg : what was added to that on purpose, so that it is enough, kg; None where nobody said.
    layer_kg : what the layer planned takes, by the mould's plain sizes, kg; None where they are not known.

    Returns
    -------
    Finding
        Resin that no mould takes stays in the bucket and heats there, so both limits count. The spare of Is it enough? may come on top;
        up to a tenth over with no spare named is not checked. A batch that finds no stop but is more than a tenth over what this layer
        takes is not checked, and says both: they do not fit, and which of them is wrong nobody here knows.

    Examples
    --------
    >>> batch(2.0, 5.0, 1.8).deciding.id
    'moulds'
    >>> batch(2.81, 5.0, 2.69, 0.12).state.value, batch(2.81, 5.0, 2.69).state.value, batch(3.0, 5.0, 2.69).state.value
    ('no stop found', 'not checked', 'stop')
    >>> batch(3.7, 5.0, 7.4, None, 2.0).state.value
    'not checked'

    References
    ----------
    Facts 3.1 and 3.4; the tenth is our judgement.
    """
    moulds = Part("moulds", "mass", mass_kg, moulds_take_kg)
    if moulds_take_kg is not None and spare_kg is not None:
        moulds = Part("moulds-spare", "mass", mass_kg, moulds_take_kg + spare_kg)
    elif moulds.state is State.STOP and Part("moulds", "mass", mass_kg, (1 + SPARE_SHARE) * (moulds_take_kg or 0.0)).state is State.CLEAR:
        moulds = Part("spare", "mass", mass_kg, None)
    found = judge("G2", [Part("sheet-mass", "mass", mass_kg, sheet_max_kg), moulds])
    layer = Part("layer", "mass", mass_kg, layer_kg)
    over = layer_kg is not None and Part("layer", "mass", mass_kg, (1 + SPARE_SHARE) * layer_kg).state is State.STOP
    return Finding("G2", State.UNCHECKED, (layer,), "layer") if over and found.state is not State.STOP else found


def temperature_range(
    room_k: float | None, resin_k: float | None, lowest_k: float | None, highest_k: float | None
) -> Finding:
    """G3 before the mix: room and bottles inside the sheet's temperature range.

    Parameters
    ----------
    room_k, resin_k : measured now, K.
    lowest_k, highest_k : the range the sheet prints, K.

    Returns
    -------
    Finding
        Both ends count: warm resin runs away, cold resin does not cure. Room before bottles: they go by the room they stand in.

    Examples
    --------
    >>> temperature_range(294.15, 294.15, 291.15, 298.15).state.value
    'no stop found'

    References
    ----------
    Fact 3.1.
    """
    parts = [
        Part("room-warm", "temperature", room_k, highest_k),
        Part("resin-warm", "temperature", resin_k, highest_k),
        Part("room-cold", "temperature", room_k, lowest_k, at_most=False),
        Part("resin-cold", "temperature", resin_k, lowest_k, at_most=False),
    ]
    return judge("G3", parts)


def hotter_than_planned(measured_k: float | None, planned_k: float | None) -> Finding:
    """G3 during the cure: the hottest spot of mould and tray against the planned temperature, and against where any pour stops.

    Parameters
    ----------
    measured_k, planned_k : K.

    Returns
    -------
    Finding
        Hotter than planned is the early sign of a runaway. Hotter than :func:`hottest_k` is a stop whatever was planned, and decides.

    Examples
    --------
    >>> hotter_than_planned(318.15, 313.15).state.value, hotter_than_planned(413.15, None).deciding.id
    ('stop', 'hot')

    References
    ----------
    Fact 3.1; ``data/cure_tiers.csv``.
    """
    hot, rise = Part("hot", "temperature", measured_k, hottest_k()), Part("rise", "temperature", measured_k, planned_k)
    told = planned_k is not None and planned_k <= hottest_k() and hot.state is not State.STOP
    return judge("G3", [rise] if told else [hot, rise])


def hottest_k() -> float:
    """The hottest at which How deep and how hot? finds no stop: the end of its last tier that is none, K.

    Returns
    -------
    float

    Examples
    --------
    >>> round(hottest_k() - 273.15)
    80

    References
    ----------
    ``data/cure_tiers.csv``.
    """
    return max(tier.up_to_k for tier in tiers() if tier.tone != "stop")


def working_time(handling_s: float | None, working_s: float | None, share: float, within_s: float | None = None) -> Finding:
    """G4: mixing, degassing and pouring together against a share of the working time.

    Parameters
    ----------
    handling_s : the three together, s; degassing counts, for the resin goes on curing under vacuum.
    working_s : the sheet's working time, s.
    share : the part of it that may be used, above 0 and at most 1.
    within_s : by when a bucket of this mass is to be poured, s, by :func:`calc.casting.cure.working.pour_within`; None where the mass is not known.

    Returns
    -------
    Finding
        Over the share is a stop. Within it, but longer than this bucket may well have, is not checked, with both times. Within both, the
        bucket's is told: it is the shorter.

    Examples
    --------
    >>> working_time(1800, 3000, 0.6).state.value  # 0.6 of 3000 s is 1800 s
    'no stop found'
    >>> working_time(1800, 3000, 0.6, 960.0).state.value
    'not checked'
    >>> [part.limit for part in working_time(600, 3000, 0.6, 960.0).parts], [part.limit for part in working_time(600, 3000, 0.6).parts]
    ([960.0], [1800.0])

    References
    ----------
    Fact 3.4; the bucket's time is an estimate (cure-solver), so it stops nothing by itself.
    """
    share_of_it = Part("time", "duration", handling_s, None if working_s is None else share * working_s)
    bucket = Part("bucket", "duration", handling_s, within_s)
    if share_of_it.state is State.CLEAR and bucket.state is State.STOP:
        return Finding("G4", State.UNCHECKED, (bucket,), "bucket")
    return judge("G4", [share_of_it if share_of_it.state is not State.CLEAR or bucket.state is not State.CLEAR else bucket])


def next_layer(
    beneath: str | None,
    waited_s: float | None,
    earliest_s: float | None,
    latest_s: float | None,
    surface_k: float | None,
    room_k: float | None,
    within_k: float = LAYER_TO_ROOM_K,
) -> Finding:
    """G6: a further layer not before the heat has left the last one, and not after it stops bonding.

    Parameters
    ----------
    beneath : "none" for a first layer, "layer" when one lies beneath.
    waited_s : time since the layer beneath was poured, s.
    earliest_s, latest_s : the sheet's times for the next layer, s.
    surface_k, room_k : measured now, K.
    within_k : how far they may differ, K.

    Returns
    -------
    Finding
        With nothing beneath there is nothing to wait for.

    Examples
    --------
    >>> next_layer("layer", 12 * 3600, 8 * 3600, 24 * 3600, 296.15, 294.15).state.value
    'no stop found'

    References
    ----------
    Fact 3.1; the difference to the room is common practice, no source.
    """
    if beneath == "none":
        return Finding("G6", State.CLEAR, (), "first-layer")
    if beneath is None:
        return judge("G6", [must("layer", None)])
    apart = None if surface_k is None or room_k is None else abs(surface_k - room_k)
    if apart is not None and math.isclose(apart, within_k, abs_tol=1e-6):
        apart = within_k
    parts = [
        Part("too-soon", "duration", waited_s, earliest_s, at_most=False),
        Part("too-warm", "temperature difference", apart, within_k),
        Part("too-late", "duration", waited_s, latest_s),
    ]
    return judge("G6", parts)


def spread_depth(mass_kg: float, length_m: float, width_m: float, density_kg_per_m3: float) -> float:
    """Depth of resin spread over a level tray: mass / (density x length x width).

    Parameters
    ----------
    mass_kg, length_m, width_m, density_kg_per_m3 : SI, each more than 0.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(spread_depth(2.2, 0.5, 0.4, 1100.0), 4)
    0.01

    References
    ----------
    Plain geometry.
    """
    return mass_kg / (density_kg_per_m3 * length_m * width_m)


def tray(depth_m: float | None, sheet_limit_m: float | None, ceiling_m: float = TRAY_DEPTH_M) -> Finding:
    """G19: the depth of leftovers in the waste tray.

    Parameters
    ----------
    depth_m : how deep they would stand, m.
    sheet_limit_m : the sheet's depth for one layer, m.
    ceiling_m : m.

    Returns
    -------
    Finding
        Both limits count; without the sheet's the gate can stop but not clear.

    Examples
    --------
    >>> tray(0.012, 0.05).state.value, tray(0.008, 0.006).state.value, tray(0.008, None).state.value
    ('stop', 'stop', 'not checked')

    References
    ----------
    Facts 3.4 and 3.5; the 10 mm are common practice, no source.
    """
    parts = [Part("tray", "length", depth_m, ceiling_m), Part("tray-sheet", "length", depth_m, sheet_limit_m)]
    return judge("G19", parts)
