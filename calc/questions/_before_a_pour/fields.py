"""What 'Before a deep pour' asks: the plan, the data sheet, and what is read at the bench."""

from __future__ import annotations

from functools import partial

from calc.casting.standards import standard
from calc.fields import Choice, Field, Option, Quantity, measure, under
from calc.questions._worn import WORN, asked_yes_no, mask_fields
from calc.safety import gates
from calc.several import Ratio

_ON_LAYER = ("beneath", ("layer",))

#: Figures that may be missing: a gap leaves a gate not checked.
_known = partial(measure, required=False)
_folded = partial(measure, required=False, fold=True)
_length = partial(_known, unit="mm", low=0.5, high=1000, usual=(2, 150))
_tray = partial(_folded, unit="mm", low=0.5, high=3000, usual=(50, 1000))
_mass = partial(_known, unit="g", low=1, high=500_000, usual=(20, 50_000))
_warmth = partial(_folded, unit="°C", low=-20, high=250)
_room = partial(_folded, unit="m", low=0.5, high=200, usual=(1.8, 30))
_minutes = partial(_known, unit="min", low=0, high=100_000)
_hours = partial(_folded, unit="h", low=0, high=100_000)

FIELDS: tuple[Field, ...] = (
    _length("depth", "Depth of this layer", hint="Resin only, where it stands deepest."),
    _length("sheet_depth", "Depth the sheet allows in one layer", hint="From the data sheet, at your temperature."),
    _mass("mass", "Weight of this batch", hint="A and B together."),
    _minutes("working", "Working time on the sheet", usual=(1, 2880), hint="Or pot life, as printed. A full bucket has less."),
    _minutes("handling", "Mixing, degassing and pouring, together", usual=(1, 600), hint="Degassing counts: it goes on curing."),
    *under(
        "Mould and batch",
        _length("own_depth", "How deep and how hot? allows", hint="Its headline. The lower of the two counts.", fold=True),
        _folded("narrowest", "Mould, narrowest inside", "mm", 5, 3000, usual=(10, 1500), hint="A narrow one stays cooler. Empty: taken as wide."),
        _folded("mould_length", "Mould, length inside", "mm", 5, 5000, usual=(20, 3000), hint="With its width: whether batch and layer fit each other."),
        _folded("mould_width", "Mould, width inside", "mm", 5, 3000, usual=(10, 1500)),
        Quantity(name="moulds", label="Such moulds, filled from it", kind="count", units=("", ""), low=1, high=100, default="1", basis="judgement", fold=True),
        _mass("sheet_mass", "Largest batch the sheet allows", hint="Leave it empty where the sheet does not say.", fold=True),
        _mass("moulds_take", "What the moulds take", hint="This layer only, in all that are ready. The likely figure of Is it enough?", fold=True),
        _folded("spare", "Spare on top of that", "g", 0, 500_000, usual=(0, 20_000), hint="What it says to mix, less the likely figure."),
    ),
    *under(
        "Temperatures",
        _warmth("room", "Room now", usual=(0, 60)),
        _warmth("resin", "Bottles now", usual=(0, 45), hint="Measured in the resin, not in the room."),
        _warmth("lowest", "Lowest temperature on the sheet", usual=(0, 40)),
        _warmth("highest", "Highest temperature on the sheet", usual=(0, 60)),
    ),
    *under(
        "Ratio",
        Choice(
            name="ratio_by",
            label="How A and B are measured",
            options=(
                Option("same", "In the sheet's own unit", "Sheet by weight: weighed. Sheet by volume: by volume."),
                Option("densities", "In the other unit, turned with both densities"),
                Option("other", "In the other unit, densities not known"),
            ),
            required=False,
            fold=True,
        ),
        Ratio(name="ratio", label="Ratio on the sheet, A first", hint="By weight, if A and B below are weights.", required=False, fold=True),
        _mass("weighed_a", "A as weighed", hint="Once it is in the cup.", fold=True),
        _mass("weighed_b", "B as weighed", hint="Once it is in the cup.", fold=True),
        _folded("tolerance", "Error of the ratio the sheet allows", "%", 0.1, 20, hint="Leave it empty where the sheet does not say."),
    ),
    *under(
        "Layer beneath",
        Choice(
            name="beneath",
            label="What lies beneath",
            options=(Option("none", "Nothing: first layer"), Option("layer", "An earlier layer")),
            required=False,
            fold=True,
        ),
        _hours("waited", "Time since the layer beneath", usual=(0.25, 500), when=(_ON_LAYER,)),
        _warmth("surface", "Surface of the layer beneath", usual=(0, 60), when=(_ON_LAYER,)),
        _hours("earliest", "Next layer not before", usual=(0.25, 500), hint="The sheet's earliest time."),
        _hours("latest", "Next layer not after", usual=(0.25, 500), hint="The sheet's latest time to bond without scuffing."),
    ),
    *under(
        "Mask and filters",
        *mask_fields(
            Option("none", "None: section 8 asks for none"),
            (
                Option("sheet", "As section 8 names it"),
                Option("vapour", "Organic vapour and particles; section 8 not read yet"),
                Option("particles", "Particles only"),
            ),
            "Filters within their date",
            _hours("filter_hours", "Hours on these filters", usual=(0, 200), hint="Since the bag was opened.", when=(WORN,)),
            _hours("filter_schedule", "Hours the filter maker's schedule gives", usual=(0.5, 200), when=(WORN,)),
            hint="Section 8 of the safety data sheet decides.",
        ),
    ),
    *under(
        "Glove clock",
        _minutes("gloves_on", "Minutes in this pair of gloves", usual=(0, 240), fold=True),
        measure(
            "glove_time",
            "Time in one pair",
            "min",
            1,
            480,
            hint="Less if their maker says so.",
            default=f"{gates.worn.GLOVE_TIME_S / 60:g}",
            basis="resin-glove-article",
            fold=True,
        ),
    ),
    *under(
        "Waste tray",
        _tray("tray_length", "Waste tray, length", hint="Inside."),
        _tray("tray_width", "Waste tray, width", hint="Inside."),
        _mass("leftovers", "What may go into the tray", hint="Empty: the whole batch, should it go wrong.", fold=True),
        measure(
            "density",
            "Density of the mixed resin",
            "g/mL",
            0.8,
            2.5,
            usual=(1.0, 1.3),
            default=f"{standard('density usual'):g}",
            basis="practice",
            fold=True,
        ),
    ),
    *under(
        "Solvent and flame",
        _folded("solvent", "Solvent used indoors", "mL", 0, 20_000, usual=(1, 1000), hint="Isopropyl alcohol, wiping."),
        _room("room_length", "Room, length"),
        _room("room_width", "Room, width"),
        _room("room_height", "Room, height"),
        asked_yes_no("put_away", "Solvent and its rags out of the room"),
        asked_yes_no("wiped_dry", "Wiped surfaces dry, no smell"),
    ),
    *under(
        "Working time",
        measure(
            "share",
            "Share of the working time that may be used",
            "%",
            10,
            100,
            default=f"{standard('working share') * 100:g}",
            basis="practice",
            fold=True,
        ),
    ),
    *under(
        "Watch over the cure",
        _warmth("planned_peak", "Hottest you plan for", usual=(0, 100), hint="For the watch over the cure."),
        _warmth("hottest", "Hottest spot now", high=600, usual=(0, 150), hint="Of mould and tray, during the cure."),
        _hours("peak_after", "Time to the peak, at the soonest", usual=(0.1, 100), hint="After A met B."),
        _hours("peak_latest", "Time to the peak, at the latest", usual=(0.1, 300), hint="After A met B. Stay near until well past it."),
        measure("look_every", "Time between two looks at the cure", "min", 1, 480, default="15", basis="judgement", fold=True),
    ),
)
