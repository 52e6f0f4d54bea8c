"""What the air meets: the coldest thing in the room, and the resin that is poured."""

from __future__ import annotations

from dataclasses import dataclass

from calc.casting import air, warm_resin
from calc.casting.air import Air
from calc.questions import Given


@dataclass(frozen=True)
class Coldest:
    """The coldest thing the resin meets: its name in a sentence, its temperature (K), and whether it was measured."""

    name: str
    temperature_k: float
    measured: bool


def coldest_of(given: Given) -> Coldest:
    """Of the surface (measured, or as cold as the store, or as warm as the room) and the resin."""
    surface, store, resin, room = given.maybe("surface"), given.maybe("store"), given.maybe("resin"), given.si("room")
    if surface is not None:
        found = Coldest("the coldest surface", surface, True)
    elif store is not None and store < room:
        found = Coldest("what comes from the store", store, True)
    else:
        found = Coldest("every surface", room, False)
    if resin is not None and resin < found.temperature_k:
        return Coldest("the resin", resin, True)
    return found


def air_of(given: Given, coldest: Coldest) -> Air:
    """The air of the room, held against the coldest thing in it."""
    return Air(
        given.si("room"),
        given.si("humidity"),
        coldest.temperature_k,
        coldest.measured,
        given.si("humidity_error"),
        given.si("temperature_error"),
    )


def resin_of(given: Given) -> float | None:
    """Temperature of the resin, K, when anything was asked about it."""
    resin = given.maybe("resin")
    return given.si("room") if resin is None and given.maybe("working") is not None else resin


def thickness_band(resin_k: float, reference_k: float) -> tuple[float, float, float]:
    """Viscosity over that at the reference: usual, lowest, highest."""
    usual, *ends = (warm_resin.viscosity_ratio(resin_k, reference_k, air.limit(f"viscosity energy{end}")) for end in ("", " low", " high"))
    return usual, min(ends), max(ends)


def working_time(given: Given, resin_k: float) -> float | None:
    """Working time at the resin's temperature, s: the shorter of the two rules, and never more than the sheet's own."""
    sheet = given.maybe("working")
    return None if sheet is None else sheet * min(1.0, shorter(resin_k, given.si("sheet_temperature")))


def shorter(resin_k: float, reference_k: float) -> float:
    """Share of a working time that is left at the resin's temperature: the shorter of the two rules."""
    return min(warm_resin.working_time_ratio(resin_k, reference_k, air.limit(step)) for step in ("halving step", "halving step slow"))


def compared_with(given: Given) -> float:
    """What the resin's thickness is told against, K: the room's for warmed resin, else where data sheets print it."""
    return air.limit("viscosity at") if given.maybe("resin") is None else given.si("room")
