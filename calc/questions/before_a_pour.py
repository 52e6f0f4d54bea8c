"""Before a deep pour: what the plan says, gate by gate, before A meets B."""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import partial

from calc.answers import Answer, Caution, Line, Working, figure
from calc.casting.cure import narrow, plan
from calc.casting.cure.cells import Footprint
from calc.casting.standards import standard
from calc.fields import NO, YES, Choice, Field, Option, measure, under
from calc.quantity.writing import Shown
from calc.questions import Given, Question, Rule, Table
from calc.questions._gated import gated, tell, yes
from calc.safety import gates, wording
from calc.safety.findings import Finding, State
from calc.several import Ratio

_WORN = ("mask", ("tight", "hood"))
_TIGHT = ("mask", ("tight",))
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


def _yes_no(name: str, label: str, when: tuple[tuple[str, tuple[str, ...]], ...]) -> Choice:
    return Choice(name=name, label=label, options=(YES, NO), required=False, fold=True, when=when)


FIELDS: tuple[Field, ...] = (
    _length("depth", "Depth of this layer", hint="Resin only, where it stands deepest."),
    _length("sheet_depth", "Depth the sheet allows in one layer", hint="From the data sheet, at your temperature."),
    _mass("mass", "Weight of this batch", hint="A and B together."),
    _minutes("working", "Working time on the sheet", usual=(1, 2880), hint="For this much resin, this warm. Often called pot life."),
    _minutes("handling", "Mixing, degassing and pouring, together", usual=(1, 600), hint="Degassing counts: it goes on curing."),
    *under(
        "Mould and batch",
        _length("own_depth", "How deep and how hot? allows", hint="Its headline. The lower of the two counts.", fold=True),
        _folded("narrowest", "Mould, narrowest inside", "mm", 5, 3000, usual=(10, 1500), hint="A narrow one stays cooler. Empty: taken as wide."),
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
        Choice(
            name="mask",
            label="Mask",
            hint="Section 8 of the safety data sheet decides.",
            options=(
                Option("tight", "Half or full mask, sealed on the face"),
                Option("hood", "Powered hood, loose on the face"),
                Option("none", "None: section 8 asks for none"),
            ),
            required=False,
            fold=True,
        ),
        Choice(
            name="filters",
            label="Filter on it",
            options=(
                Option("sheet", "As section 8 names it"),
                Option("vapour", "Organic vapour and particles; section 8 not read yet"),
                Option("particles", "Particles only"),
            ),
            required=False,
            fold=True,
            when=(_WORN,),
        ),
        _hours("filter_hours", "Hours on these filters", usual=(0, 200), hint="Since the bag was opened.", when=(_WORN,)),
        _hours("filter_schedule", "Hours the filter maker's schedule gives", usual=(0.5, 200), when=(_WORN,)),
        _yes_no("filter_date", "Filters within their date", (_WORN,)),
        _yes_no("shaved", "Skin smooth where the mask seals", (_TIGHT,)),
        _yes_no("fit_tested", "This mask fit-tested on you", (_TIGHT,)),
        _yes_no("sealed", "Seal check passed today", (_TIGHT,)),
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
        _yes_no("put_away", "Solvent and its rags out of the room", ()),
        _yes_no("wiped_dry", "Wiped surfaces dry, no smell", ()),
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
        "G2": gates.pour.batch(given.maybe("mass"), given.maybe("sheet_mass"), given.maybe("moulds_take"), given.maybe("spare")),
        "G3": gates.pour.temperature_range(given.maybe("room"), given.maybe("resin"), given.maybe("lowest"), given.maybe("highest")),
        "G4": gates.pour.working_time(given.maybe("handling"), given.maybe("working"), given.si("share")),
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
        "G16": gates.worn.mask(
            given.words("mask") or None,
            given.words("filters") or None,
            given.maybe("filter_hours"),
            given.maybe("filter_schedule"),
            yes(given, "filter_date"),
            yes(given, "shaved"),
            yes(given, "fit_tested"),
            yes(given, "sealed"),
        ),
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


def _over(given: Given) -> bool:
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


def work(given: Given) -> Answer:
    """Hold the plan against its gates.

    Parameters
    ----------
    given : this question's inputs; a missing one leaves its gate not checked.

    Returns
    -------
    Answer
        'STOP' with one next action, or 'No stop found - your call'; never more than that.
    """
    words = wording.gate_words("G1")
    cautions = [Caution("narrow-mould", "caution", words["note"])] if _over(given) else []
    found = findings(given)
    if found["G1"].state is State.CLEAR and given.maybe("own_depth") is None:  # a deeper layer is not checked, and says so itself
        cautions.append(Caution("fresh-resin", "caution", words["fresh"]))
    return gated(
        tell(shown(given, found), given.system),
        "Before A meets B",
        "Put in what you know of the plan and of the data sheet.",
        "Take the checklist to the bench: C1, then C2, then C3.",
        lines=_lines(given),
        cautions=tuple(cautions),
        working=_working(given),
        values={"may_use": figure(_may_use(given), "time"), "tray_depth": figure(_tray_shown(given), "length", tray_depth(given))},
    )


def _may_use(given: Given) -> Shown | None:
    working = given.maybe("working")
    return None if working is None else given.write(given.si("share") * working, "minutes", "down")


def _tray_shown(given: Given) -> Shown | None:
    depth = tray_depth(given)
    return None if depth is None else given.write(depth, "length", "up")


def _lines(given: Given) -> tuple[Line, ...]:
    lines = []
    may_use, in_tray = _may_use(given), _tray_shown(given)
    if may_use:
        lines.append(Line.of("Time to mix, degas and pour", may_use, "a ceiling; the rest is for what goes wrong"))
    if in_tray:
        lines.append(Line.of("Depth in the waste tray", in_tray, "what may go into it, spread out"))
    load = given.maybe("leftovers") or given.maybe("mass")
    if load is not None:
        depth = min(gates.pour.TRAY_DEPTH_M, given.maybe("sheet_depth") or gates.pour.TRAY_DEPTH_M)
        side = given.write((load / (given.si("density") * depth)) ** 0.5, "length", "up")
        lines.append(Line.of("Tray that takes it, square", side, "each way inside; or several, apart"))
    return tuple(lines)


def _working(given: Given) -> tuple[Working, ...]:
    steps = []
    may_use, in_tray = _may_use(given), _tray_shown(given)
    if may_use:
        share, sheet = given.write(given.si("share"), "share"), given.write(given.si("working"), "minutes", "down")
        steps.append(Working("Time that may be used", "share × working time", f"{share} × {sheet}", str(may_use)))
    if in_tray:
        load = given.write(given.maybe("leftovers") or given.si("mass"), "mass")
        length, width = (given.write(given.si(name), "length") for name in ("tray_length", "tray_width"))
        density = given.write(given.si("density"), "density")
        steps.append(
            Working("Depth in the tray", "mass / (density × length × width)", f"{load} / ({density} × {length} × {width})", str(in_tray))
        )
    return tuple(steps)


QUESTION = Question(
    id="before-a-pour",
    name="Before a deep pour",
    moment="before the pour",
    order=30,
    summary="Your plan against the sheet's limits, the mask, and three checklists for the bench.",
    lead="Put in what the plan and the data sheet say. What is missing stays not checked; you may still go on.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="Time for mixing, degassing and pouring together, by the sheet's working time",
        rows=("working", ("15 min", "30 min", "40 min", "60 min", "90 min", "4 h", "8 h")),
        columns=("share", ("50 %", "60 %", "70 %")),
        cell=lambda answer: answer.values["may_use"].shown,
        note="60 % is common practice, no source. The rest is for what goes wrong.",
    ),
    rules=(
        Rule("depth", "stops", "falls", given={"sheet_depth": "50 mm"}, why="a deeper layer never ends a stop"),
        Rule("own_depth", "stops", "rises", given={"depth": "50 mm", "sheet_depth": "60 mm"}, why="more worked out for this pour never adds a stop"),
        Rule("mass", "stops", "falls", given={"sheet_mass": "5 kg", "moulds_take": "4 kg"}, why="a heavier batch never ends a stop"),
        Rule("handling", "stops", "falls", given={"working": "60 min"}, why="more time at the bucket never ends a stop"),
        Rule("sheet_depth", "stops", "rises", given={"depth": "50 mm"}, why="a sheet that allows more never adds a stop"),
        Rule("working", "may_use", "falls", why="a longer working time never leaves less"),
    ),
)
