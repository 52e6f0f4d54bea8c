"""What When can I? hands on: the same pour, to be asked how deep and how hot; its hours, to be held against before the lathe runs."""

from __future__ import annotations

from collections.abc import Mapping

from calc.answers import Carry, Figure
from calc.questions import Given
from calc.questions._when.hours import rounded

_POT = ("pot_life", "pot_mass", "pot_temperature", "deepest")
_MOULD = {"round": ("across",), "oblong": ("length", "width")}


def handed(given: Given) -> tuple[Carry, ...]:
    """The resin, the mould and the shop, as they were typed."""
    way = given.choice("resin")

    def these(*names: str) -> dict[str, str]:
        return {name: given.as_typed(name) for name in names if given.typed(name)}

    resin = {"known": "kind", "kind": way}
    if way == "cup":
        resin = {"known": "cup", **these("cup_gel", "cup_heat", "cup_shape")}
    elif way == "pot" or given.typed("deepest"):
        resin = {"known": "sheet", **these(*_POT, "ratio"), **({"pot_means": given.choice("pot_means")} if way == "pot" else {})}
    shape = given.choice("shape")
    mould = {"shape": shape, **these(*_MOULD[shape], "depth"), "mould": given.choice("wall"), "fan": given.choice("fan")}
    return (Carry("how-deep-how-hot", {**resin, **mould, "room": given.as_typed("room"), **these("wood")}),)


def aged(given: Given, values: Mapping[str, Figure]) -> Carry:
    """The hours to leave the mould and to full cure, worked out for the shop as it is: those that are told, not the finer ones behind them."""
    hours = {name: values[key].si for name, key in (("leave", "leave"), ("full", "cured"))}
    told = {name: str(given.write(rounded(seconds, "up"), "hours", "up")) for name, seconds in hours.items() if seconds is not None}
    shop = given.as_typed("night" if given.choice("night_cools") == "yes" else "room")
    return Carry("before-the-lathe", {**told, "sheet_temperature": shop})
