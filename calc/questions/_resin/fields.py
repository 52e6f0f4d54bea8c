"""What is asked about a resin: its sheet, a test cup, its bottles."""

from __future__ import annotations

from functools import partial

from calc.casting.cure.calibrate import meanings
from calc.casting.cure.kinetics import resin_classes
from calc.fields import NO, YES, Choice, Field, Option, measure
from calc.several import Ratio, Series

_SHEET = (("known", ("sheet", "cup")),)
_CUP = (("known", ("cup",)),)
_KIND = (("known", ("kind",)),)
_IN_A_CUP = (*_CUP, ("vessel", ("cup", "foam")))
_IN_A_DISH = (*_CUP, ("vessel", ("dish",)))

_sheet = partial(measure, required=False, fold=True, group="More from the sheet", when=_SHEET)
_hours = partial(_sheet, unit="h", low=0.1, high=2000)
_series = partial(Series, fewest=4, most=40, when=_CUP)

#: What sheets mean by pot life.
POT_MEANS = (Option("unknown", "It does not say"), *(Option(meaning.id, f"It {meaning.name}") for meaning in meanings().values()))

FIELDS: tuple[Field, ...] = (
    Choice(
        name="known",
        label="What there is",
        options=(
            Option("sheet", "Its data sheet or label"),
            Option("cup", "That, and a test cup"),
            Option("kind", "Only what kind it is"),
        ),
        default="sheet",
    ),
    Choice(
        name="kind",
        label="Kind of resin",
        options=tuple(Option(kind.id, kind.name) for kind in resin_classes()),
        when=_KIND,
    ),
    Ratio(name="ratio", label="Ratio by weight, A first", hint="Either ratio will do.", required=False, when=_SHEET),
    Ratio(name="ratio_volume", label="Ratio by volume, A first", required=False, when=_SHEET),
    measure(
        "pot_life", "Pot life", "min", 2, 6000,
        usual=(8, 3000), hint="Or working time. Not printed? The deepest layer alone will do.", required=False, when=_SHEET,
    ),
    Choice(
        name="pot_means",
        label="What ends the sheet's pot life",
        options=POT_MEANS,
        default="unknown",
        basis="judgement",
        when=_SHEET,
    ),
    measure("deepest", "Deepest layer on the sheet", "mm", 1, 500, usual=(2, 150), required=False, when=_SHEET),
    # the test cup
    Choice(
        name="vessel",
        label="Test cup",
        options=(
            Option("dish", "A dish, about 80 mm (3 in) across"),
            Option("cup", "Plastic cup"),
            Option("foam", "Foam cup with a foam lid"),
        ),
        default="foam",
        when=_CUP,
    ),
    measure("cup_mass", "Resin in the cup", "g", 20, 2000, usual=(40, 500), when=_IN_A_CUP),
    measure("cup_layer", "Layer in the dish", "mm", 2, 40, usual=(3, 20), when=_IN_A_DISH),
    measure("cup_room", "Shop during the test", "°C", 5, 40, usual=(12, 32), when=_CUP),
    _series(
        name="cup_minutes", label="Minutes since mixing", kind="time", units=("min", "min"), low=0, high=20000,
        hint="One for each temperature, in order.",
    ),
    _series(
        name="cup_temperatures", label="Temperature in its middle", kind="temperature", units=("°C", "°F"), low=0, high=250, usual=(5, 150),
        hint="About 10, up to twice the time of the peak.",
    ),
    measure("cup_gel", "It pulled strings that break at", "min", 1, 20000, usual=(5, 6000), hint="A stick lifted out of it.", when=_CUP),
    measure(
        "cup_start", "Resin when mixed", "°C", 5, 60,
        usual=(10, 40), hint="Empty: as warm as the shop.", required=False, fold=True, group="More from the cup", when=_CUP,
    ),
    Choice(
        name="cup_colour", label="Mixed in the real colour", options=(YES, NO), default="no", fold=True, group="More from the cup", when=_CUP,
    ),
    measure(
        "cup_hard", "A fingernail left no mark after", "h", 0.5, 2000,
        usual=(2, 400), required=False, fold=True, group="More from the cup", when=_CUP,
    ),
    # more from the sheet
    _sheet("pot_mass", "Pot life was for", "g", 5, 20_000, usual=(20, 2000), required=True, default=("100", "3 1/2"), basis="practice"),
    _sheet("pot_temperature", "Pot life was at", "°C", 5, 40, usual=(15, 35), required=True, default=("25", "77"), basis="practice"),
    _sheet("deepest_temperature", "Deepest layer was at", "°C", 5, 40, usual=(15, 35), required=True, default=("23", "73"), basis="judgement"),
    _sheet("density_a", "Density of A", "g/mL", 0.7, 2.5, usual=(0.85, 1.6)),
    _sheet("density_b", "Density of B", "g/mL", 0.7, 2.5, usual=(0.85, 1.6)),
    _sheet("density", "Density of the mix", "g/mL", 0.7, 2.5, usual=(0.95, 1.6)),
    _sheet("viscosity", "Viscosity of the mix", "mPa·s", 20, 100_000, usual=(80, 15_000)),
    _sheet("viscosity_temperature", "Viscosity was at", "°C", 5, 60, usual=(15, 40), required=True, default=("25", "77"), basis="practice"),
    _sheet("lowest", "Lowest temperature", "°C", -20, 50, usual=(0, 40)),
    _sheet("highest", "Highest temperature", "°C", 0, 80, usual=(10, 60)),
    _sheet("largest", "Largest batch", "g", 20, 500_000, usual=(50, 50_000)),
    _hours("earliest", "Next layer not before", usual=(0.5, 200)),
    _hours("latest", "Next layer not after", usual=(1, 400), hint="To bond without scuffing."),
    _hours("demould", "Leave the mould after", usual=(1, 400)),
    _hours("cure", "Full cure after", usual=(4, 1000), accepts=("h", "days")),
    _sheet("glass", "Glass transition (Tg)", "°C", 20, 200, usual=(35, 130), hint="Fully cured. Some sheets say heat resistance."),
    # the shop and the bottles
    Choice(
        name="chemistry",
        label="What it is",
        options=(Option("epoxy", "Epoxy, two parts"), Option("other", "Polyester, polyurethane or other")),
        default="epoxy",
        fold=True,
        group="Your shop and bottles",
    ),
    measure(
        "room", "Shop temperature", "°C", 0, 45,
        usual=(8, 35), default=("23", "73"), basis="judgement", fold=True, group="Your shop and bottles",
    ),
    Choice(
        name="lots", label="Bottles", options=(Option("one", "All of one lot"), Option("two", "Of two lots")),
        default="one", fold=True, group="Your shop and bottles",
    ),
    Choice(
        name="opened",
        label="First opened",
        options=(Option("new", "Just now"), Option("year", "Within a year"), Option("old", "Longer ago, or not known")),
        default="new",
        fold=True,
        group="Your shop and bottles",
    ),
    Choice(
        name="looks",
        label="How A and B look",
        options=(Option("clear", "Clear"), Option("cloudy", "Cloudy, or with grains"), Option("dark", "B has darkened")),
        default="clear",
        fold=True,
        group="Your shop and bottles",
    ),
)
