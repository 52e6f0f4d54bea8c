"""What is asked about a pour: the resin, the mould, the shop."""

from __future__ import annotations

from functools import partial

from calc.casting.cure.kinetics import resin_classes
from calc.casting.cure.thermal import materials
from calc.casting.standards import standard
from calc.fields import NO, YES, Choice, Field, Option, Quantity, measure
from calc.several import Ratio

#: Materials that a mould may be of.
MOULDS = ("board", "plywood", "hardwood", "hdpe", "pp", "pvc", "acrylic", "silicone", "aluminium", "pla")

_SHEET = (("known", ("sheet",)),)
_KIND = (("known", ("kind",)),)
_CUP = (("known", ("cup",)),)
_ROUND = (("shape", ("round",)),)
_OBLONG = (("shape", ("oblong",)),)

_sheet = partial(measure, fold=True, group="More from the sheet", when=_SHEET)
_mould = partial(measure, fold=True, group="The mould")
_pour = partial(measure, fold=True, group="The pour")
_below = partial(measure, required=False, fold=True, group="A layer below")

FIELDS: tuple[Field, ...] = (
    Choice(
        name="known",
        label="What you know of the resin",
        options=(
            Option("sheet", "Pot life or deepest layer", "From its data sheet. Both are best where they fit each other."),
            Option("cup", "A test cup", "Worked out under What is this resin?"),
            Option("kind", "Only what kind it is"),
        ),
        default="sheet",
        basis="judgement",
    ),
    Choice(name="kind", label="Kind of resin", options=tuple(Option(kind.id, kind.name) for kind in resin_classes()), when=_KIND),
    measure("deepest", "Deepest layer on the sheet", "mm", 1, 500, usual=(2, 150), required=False, when=(("known", ("sheet", "cup")),)),
    measure("pot_life", "Pot life on the sheet", "min", 2, 6000, usual=(8, 3000), hint="Or working time.", required=False, when=_SHEET),
    measure("cup_gel", "Gels, thin, at 25 °C (77 °F) in", "h", 0.02, 1000, usual=(0.3, 100), hint="'What is this resin?' gives these three.", when=_CUP),
    measure("cup_heat", "Heat of the mix", "J/g", 100, 700, usual=(220, 520), when=_CUP),
    Quantity(name="cup_shape", label="Shape number", kind="count", units=("", ""), low=-0.3, high=1.3, when=_CUP),
    measure("depth", "Depth planned", "mm", 1, 1000, usual=(3, 400), hint="Resin, where it stands deepest."),
    Choice(name="shape", label="Seen from above", options=(Option("oblong", "Oblong"), Option("round", "Round")), default="oblong", basis="judgement"),
    measure("length", "Mould, length inside", "mm", 5, 5000, usual=(20, 3000), when=_OBLONG),
    measure("width", "Mould, width inside", "mm", 5, 3000, usual=(10, 1500), when=_OBLONG),
    measure("across", "Mould, across inside", "mm", 5, 3000, usual=(15, 1200), when=_ROUND),
    measure("room", "Shop at its warmest", "°C", 5, 40, usual=(10, 33), hint="Over the first day of the cure."),
    # the resin
    Choice(
        name="pot_means",
        label="The sheet's pot life ends when it",
        options=(
            Option("unknown", "does not say"),
            Option("doubled", "is twice as thick", "Usual for slow resins."),
            Option("pour", "can no longer be poured"),
            Option("gel", "gels or pulls strings"),
            Option("hot50", "reaches 50 °C (122 °F)"),
            Option("hot40", "reaches 40 °C (104 °F)"),
        ),
        default="unknown",
        basis="judgement",
        fold=True,
        group="More from the sheet",
        when=_SHEET,
    ),
    _sheet("pot_mass", "Pot life was for", "g", 5, 20_000, usual=(20, 2000), default=("100", "3 1/2"), basis="practice"),
    _sheet("pot_temperature", "Pot life was at", "°C", 5, 40, usual=(15, 35), default=("25", "77"), basis="practice"),
    _sheet("deepest_temperature", "Deepest layer was at", "°C", 5, 40, usual=(15, 35), default=("23", "73"), basis="judgement"),
    Ratio(
        name="ratio", label="Ratio by weight, A first", hint="It tells how much heat there is.", required=False, fold=True,
        group="More from the sheet", when=_SHEET,
    ),
    measure(
        "density", "Density of the mix", "g/mL", 0.8, 2.5, usual=(1.0, 1.3), default=f"{standard('density usual'):g}", basis="practice",
        fold=True, group="The pour",
    ),
    # the pour
    _pour("resin", "Resin as mixed", "°C", 5, 60, usual=(10, 40), hint="Empty: as warm as the shop.", required=False),
    _pour("bucket", "Time in the bucket first", "min", 0, 6000, usual=(0, 600), hint="Empty: a quarter of an hour, less for fast resin.", required=False),
    _pour("batch", "Mixed in one bucket", "g", 5, 200_000, usual=(20, 50_000), hint="Empty: what this pour takes.", required=False),
    Choice(name="fan", label="Fan on it", options=(NO, YES), default="no", basis="judgement", fold=True, group="The pour"),
    # the mould
    Choice(
        name="mould", label="Mould of", options=tuple(Option(id, materials()[id].name) for id in MOULDS), default="board", basis="judgement",
        fold=True, group="The mould",
    ),
    _mould("wall", "Its walls and floor, thick", "mm", 0.3, 80, usual=(0.5, 40), hint="Empty: as such moulds are.", required=False),
    Choice(
        name="stands",
        label="It stands",
        options=(Option("bench", "On a bench or board"), Option("raised", "On strips, with air below")),
        default="bench",
        basis="judgement",
        fold=True,
        group="The mould",
    ),
    _mould("wood", "Wood in the pour, of its volume", "%", 0, 85, default="0", basis="judgement"),
    Choice(
        name="lies",
        label="The wood lies",
        options=(
            Option("parts", "In places", "A slab, one side, the floor: the clear part decides."),
            Option("through", "All through it", "Pieces with no clear part between."),
        ),
        default="parts",
        basis="judgement",
        fold=True,
        group="The mould",
    ),
    _mould(
        "piece", "Its thickest piece", "mm", 1, 500, usual=(3, 120), default=("50", "2"), basis="judgement", hint="Thick wood takes up heat slowly.",
        when=(("lies", ("through",)),),
    ),
    # a layer below
    _below("below", "Its depth", "mm", 1, 500, usual=(2, 150), hint="The newest layer alone; same resin, this mould."),
    _below("below_since", "Poured", "h", 0.5, 2000, usual=(2, 400), hint="Hours before this one."),
    Choice(
        name="detail",
        label="Work out",
        options=(Option("all", "All of it"), Option("depths", "Only how deep: quicker")),
        default="all",
        basis="judgement",
        fold=True,
        group="On a slow phone",
    ),
)
