"""A pressure pot: does the mould go in, may the pot hold this much, and what is left of the bubbles?"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from calc.answers import Answer, Band, Caution, Change, Figure, Headline, Limit, Line, Working, figure
from calc.casting import pressure
from calc.casting.pressure import Pot
from calc.errors import InputError
from calc.quantity.writing import Shown
from calc.questions import Given
from calc.questions._pot_or_vacuum.words import bars, dropped, kilopascals, outside, per_cent, time_line, time_to_use, weight_of
from calc.words import both

#: The parts with a marked pressure: the field, its name on the ladder, in a sentence, and why it counts.
PARTS = (
    ("rated", "Pot", "the pot's plate", "Working pressure on the pot's plate."),
    ("relief", "Relief valve", "the relief valve", "It opens here; no tap before it."),
    ("hose", "Hose and fittings", "the hose", "Marked on the weakest of them."),
    ("gauge_scale", "Gauge", "the gauge", "The end of its scale."),
)
NEEDED = ("rated", "relief")  # without these the pressure is not checked at all


@dataclass(frozen=True)
class Stop:
    """Why not, and what would make it a go: as the sentence that leads, and as one thing to do."""

    id: str
    remedy: Headline
    do: str
    why: str


class Case:
    """What was typed, as one pot, one mould and one pressure (SI)."""

    def __init__(self, given: Given) -> None:
        self.given = given
        self.pot = Pot(given.si("pot_across"), given.si("pot_height"), given.si("gap_side"), given.si("gap_top"))
        self.round = given.choice("shape") == "round"
        mould = given.si("mould_across") if self.round else pressure.across_corners(given.si("mould_length"), given.si("mould_width"))
        tray = given.maybe("tray")
        if tray is not None and tray < mould * (1 - 1e-9):
            raise InputError("tray", "tray-small", mould=str(given.write(mould, "length", "up")))
        self.mould_m = mould
        self.tray = tray is not None
        self.circle_m = mould if tray is None else tray
        self.stack_m = given.si("mould_height") + given.si("base")
        depth = given.maybe("depth")
        if depth is not None and depth > given.si("mould_height"):
            raise InputError("depth", "deeper-than-mould", mould=str(given.write(given.si("mould_height"), "length")))
        self.planned_pa = given.si("pressure")
        self.outside_pa = outside(given)
        self.ratings = {part: given.maybe(part) for part, *_ in PARTS}

    @property
    def absolute_pa(self) -> float:
        return self.outside_pa + self.planned_pa

    @property
    def weakest(self) -> str | None:
        return pressure.weakest(self.ratings)

    @property
    def weakest_pa(self) -> float | None:
        """The lowest marking that was read, Pa."""
        return None if self.weakest is None else self.ratings[self.weakest]

    @property
    def unread(self) -> tuple[str, ...]:
        """Parts whose marking nobody gave, by field."""
        return tuple(part for part, limit in self.ratings.items() if limit is None)

    @property
    def gauge_error_pa(self) -> float:
        """How far the gauge may be off, Pa: a share of its scale, or of what is planned when its scale is not known."""
        return self.given.si("gauge_error") * (self.ratings["gauge_scale"] or self.planned_pa)

    @property
    def setting_pa(self) -> float | None:
        """Where the regulator may stand, Pa: the lowest marking less what the gauge may hide, always under it; not above 0 when the gauge is too coarse."""
        if self.weakest_pa is None:
            return None
        return self.weakest_pa - max(self.gauge_error_pa, pressure.figure_of("under a marking") * self.weakest_pa)

    def width_left(self, pressure_pa: float) -> float:
        """Width of a bubble over what it was, at a gauge pressure."""
        return pressure.bubble_width(self.outside_pa, self.outside_pa + pressure_pa)

    @property
    def energy_j(self) -> float:
        """Of the air in the pot, taken as empty: the safe side."""
        return pressure.stored_energy(self.pot.volume_m3, self.outside_pa, self.absolute_pa)

    @property
    def fill_m(self) -> float | None:
        """How high to fill for the depth wanted, m."""
        wanted = self.given.maybe("depth")
        if wanted is None:
            return None
        return pressure.level_before(wanted, self.given.si("air_share"), pressure.bubble_volume(self.outside_pa, self.absolute_pa))


def _named(part: str) -> str:
    return next(words for name, _, words, _ in PARTS if name == part)


def _stops(case: Case) -> Iterator[Stop]:
    """The dangerous ones first."""
    given, pot = case.given, case.pot
    rated, relief = case.ratings["rated"], case.ratings["relief"]
    if rated is not None and relief is not None and relief > rated * (1 + 1e-9):
        why = f"The relief valve opens at {bars(given, relief, 'up')}, the pot's plate says {bars(given, rated, 'down')}."
        need = f"relief valve that opens at {bars(given, rated, 'down')} or less, fitted by the pot's maker"
        yield Stop("relief", Headline("Pressure pot", "Not as it is", "", f"It needs a {need}. {why}", "stop"), f"A {need}", why)
    lowest = case.weakest_pa
    if case.weakest is not None and lowest is not None and case.planned_pa > lowest * (1 + 1e-9):
        why = f"{bars(given, case.planned_pa, 'up')} is planned, and {_named(case.weakest)} says {bars(given, lowest, 'down')}."
        yield _too_much(case, why)
    if case.circle_m > pot.widest_m * (1 + 1e-9):
        what = "tray" if case.tray else "mould" if case.round else "mould, corner to corner,"
        needed = given.write(case.circle_m + 2 * pot.free_beside_m, "length", "up")
        yield _too_wide(case, f"The {what} needs {needed} with its room beside it; the pot has {given.write(pot.across_m, 'length', 'down')}.")
    if case.stack_m > pot.highest_m * (1 + 1e-9):
        needed = given.write(case.stack_m + pot.free_above_m, "length", "up")
        yield _too_high(case, f"It needs {needed} with its room above; the pot has {given.write(pot.height_m, 'length', 'down')}.")


def _too_much(case: Case, why: str) -> Stop:
    """The pressure to set: never the marking itself."""
    shown = bars(case.given, max(0.0, case.setting_pa or 0.0), "down")
    if shown.si <= 0:
        why = f"This one may be off by {bars(case.given, case.gauge_error_pa, 'up')}, as much as may be in the pot. {why}"
        return Stop("rating", Headline("Pressure pot", "A finer gauge", "", why, "stop"), "A gauge with a shorter scale, and less pressure", why)
    say = f"Set the regulator to that: a little under the lowest marking, as the gauge may be off. {why}"
    return Stop("rating", Headline("Pressure, at most", shown.text, shown.unit, say, "stop"), f"The regulator at {shown} or less", why)


def _too_wide(case: Case, why: str) -> Stop:
    """The width that would go in."""
    widest = case.pot.widest_m
    if case.tray and case.mould_m <= widest:
        return _without(case, "wide", "tray", case.given.write(widest, "length", "down"), why)
    fits = case.given.write(widest if case.round else widest / math.sqrt(2), "length", "down")
    return _smaller("wide", "Mould across, at most" if case.round else "Square mould, each way at most", fits, why)


def _too_high(case: Case, why: str) -> Stop:
    """The height that would go in."""
    height, highest = case.given.si("mould_height"), case.pot.highest_m
    if height <= highest:
        return _without(case, "high", "board", case.given.write(highest - height, "length", "down"), why)
    return _smaller("high", "Mould height, at most", case.given.write(max(0.0, highest - case.given.si("base")), "length", "down"), why)


def _without(case: Case, id: str, what: str, most: Shown, why: str) -> Stop:
    do = f"The mould by itself, or on a {what} of {most} at most"
    return Stop(id, Headline("Pressure pot", f"Without the {what}", "", f"{do}. {why}", "stop"), do, why)


def _smaller(id: str, label: str, fits: Shown, why: str) -> Stop:
    if fits.si <= 0:
        return Stop(id, Headline("Pressure pot", "A larger pot", "", why, "stop"), "A larger pot", why)
    return Stop(id, Headline(label, fits.text, fits.unit, f"Or take a larger pot. {why}", "stop"), f"{label} {fits}, or a larger pot", why)


def _headline(case: Case, stops: list[Stop]) -> Headline:
    """What is not checked leads: a gap must not read as a pass."""
    if stops:
        return stops[0].remedy
    shrunk = per_cent(case.given, case.width_left(case.planned_pa), "up")
    fits = f"The mould fits, and bubbles are left at {shrunk} of their width."
    missing = [part for part in NEEDED if part in case.unread]
    if missing:
        return Headline("Pressure pot", "Not checked", "", f"Read {both([_named(part) for part in missing])} before any air goes in. {fits}", "caution")
    if case.unread:
        say = f"Still to read: {both([_named(part) for part in case.unread])}. {fits}"
        return Headline("Pressure pot", f"{len(case.unread)} of {len(PARTS)} not checked", "", say, "caution")
    return Headline("Pressure pot", "No stop found - your call", "", f"Take checklist C8 to the pot. Hold the pressure until the resin is hard. {fits}", "go")


def _limits(case: Case) -> tuple[Limit, ...]:
    """The marked pressures; the lowest decides."""
    rungs = []
    for part, name, _, why in PARTS:
        limit = case.ratings[part]
        shown = None if limit is None else bars(case.given, limit, "down")
        rungs.append(Limit(part, name, "not checked" if shown is None else shown.text, "" if shown is None else shown.unit, why, part == case.weakest))
    return tuple(rungs)


def _lines(case: Case, stops: list[Stop]) -> Iterator[Line]:
    given, ids = case.given, {stop.id for stop in stops}
    if ids & {"relief", "rating"}:
        return
    width = per_cent(given, case.width_left(case.planned_pa), "up")
    volume = per_cent(given, pressure.bubble_volume(case.outside_pa, case.absolute_pa), "up")
    yield Line.of("Bubbles are left at", width, f"of their width, {volume} of their size; smaller, not gone")
    if not ids:
        beside = given.write((case.pot.across_m - case.circle_m) / 2, "length", "down")
        above = given.write(case.pot.height_m - case.stack_m, "length", "down")
        yield Line.of("Free beside it", beside, "all round")
        yield Line.of("Free above it", above, "to the underside of the lid")
    fill, wanted = case.fill_m, given.maybe("depth")
    if fill is not None and wanted is not None:
        drop = given.write(fill - wanted, "length", "up")
        yield Line.of("Fill to", given.write(fill, "length", "up"), f"it falls by about {drop}; mark the level before the lid goes on")
    demould = given.maybe("demould")
    if demould is None:
        yield Line("Keep the pressure on", "until it is hard", "", "a thumbnail leaves no mark on the rest in the cup; let go sooner, bubbles grow back")
    else:
        note = "the sheet's time to leave the mould, longer in a cold shop; let go sooner, bubbles grow back"
        yield Line.of("Keep the pressure on for", given.write(demould, "hours", "up"), note)
    yield time_line(given, "Lid on and pressure up within")
    lid = weight_of(given, pressure.lid_push(case.planned_pa, case.pot.across_m))
    yield Line.of("The lid is pushed up with", lid, "all clamps home, tightened evenly")


def _changes(case: Case, stops: list[Stop]) -> Iterator[Change]:
    given, setting = case.given, case.setting_pa
    if stops:
        yield from (Change(stop.do, "ends that stop") for stop in stops)
        return
    if setting is not None and not case.unread and setting > case.planned_pa * 1.02:
        do = f"At {bars(given, setting, 'down')}, a little under the lowest marking"
        yield Change(do, f"bubbles at {per_cent(given, case.width_left(setting), 'up')}")
    asked = pressure.figure_of("pressure asked")
    if case.planned_pa < asked and (setting is None or setting >= asked):
        shown = bars(given, asked, "up")
        yield Change(f"At {shown}, which a supplier asks for, if every marking allows it", f"bubbles at {per_cent(given, case.width_left(asked), 'up')}")
    half = case.width_left(case.planned_pa / 2)
    yield Change(f"At half the pressure, {bars(given, case.planned_pa / 2)}", f"bubbles at {per_cent(given, half, 'up')}")


def _band(case: Case) -> Band:
    error = case.gauge_error_pa
    low = str(per_cent(case.given, case.width_left(case.planned_pa + error), "down"))
    high = str(per_cent(case.given, case.width_left(max(0.0, case.planned_pa - error)), "up"))
    return Band(f"Gauge off by {bars(case.given, error, 'up')}: {low} to {high}.", low, high)


def _cautions(case: Case, stops: list[Stop]) -> Iterator[Caution]:
    given = case.given
    for stop in stops[1:]:
        yield Caution(stop.id, "stop", stop.why)
    missing = [part for part in NEEDED if part in case.unread]
    if stops and missing:
        yield Caution("unread", "stop", f"Not checked: {both([_named(part) for part in missing])}.")
    lowest = case.weakest_pa
    if lowest is not None and lowest >= case.planned_pa > lowest - case.gauge_error_pa:
        keep = bars(given, max(0.0, case.setting_pa or 0.0), "down")
        yield Caution("gauge", "caution", f"The gauge may show less than there is: {keep} keeps that off the lowest marking.")
    hits = dropped(given, case.energy_j)
    yield Caution("energy", "caution", f"What it holds can hit like {hits}: a lid or hose that lets go is thrown. Stand to one side.")
    depth = given.maybe("depth")
    if depth is None or depth > pressure.figure_of("thin layer"):
        yield Caution("heat", "caution", "Ask How deep and how hot? first: a pot does not cool it, it keeps the heat in.")
    if stops:
        return
    zero = "Let it down to zero, wait, let it down again; only then the clamps, a little each, face away."
    yield Caution("opening", "caution", f"{zero} 5 psi (0.3 bar) has killed.")
    yield Caution("as-sold", "caution", "Use the pot as its maker sold it: nothing drilled, no other clamps, no tap before the relief valve.")
    if given.maybe("depth") is not None and (case.fill_m or 0.0) > given.si("mould_height"):
        yield Caution("wall", "caution", "The mould has no room for that level: raise its wall, or top up when the lid comes off.")


def _working(case: Case) -> Iterator[Working]:
    given, pot = case.given, case.pot
    volume = pressure.bubble_volume(case.outside_pa, case.absolute_pa)
    numbers = f"101.325 × (1 − 0.0065 × {given.si('altitude'):.4g} / 288.15)^5.256"
    yield Working("Air outside", "p0 = 101.325 kPa (1 − 0.0065 h / 288.15)^5.256", numbers, kilopascals(case.outside_pa))
    yield Working("In the pot", "p = p0 + gauge", f"{kilopascals(case.outside_pa)} + {kilopascals(case.planned_pa)}", kilopascals(case.absolute_pa))
    yield Working("Size of a bubble", "p0 / p", f"{case.outside_pa / 1000:.4g} / {case.absolute_pa / 1000:.4g}", f"{volume:.3f}")
    yield Working("Width of a bubble", "cube root of its size", f"{volume:.3f}^(1/3)", f"{math.cbrt(volume):.3f}")
    across, circle = 1000 * pot.across_m, 1000 * case.circle_m
    numbers = f"{circle:.4g} + 2 × {1000 * pot.free_beside_m:g} and {across:.4g} mm"
    yield Working("Across", "circle of mould or tray + 2 × room beside, against the pot", numbers, f"{across - circle - 2000 * pot.free_beside_m:.4g} mm over")
    stack, height = 1000 * case.stack_m, 1000 * pot.height_m
    numbers = f"{stack:.4g} + {1000 * pot.free_above_m:g} and {height:.4g} mm"
    yield Working("Height", "mould + board + room above, against the pot", numbers, f"{height - stack - 1000 * pot.free_above_m:.4g} mm over")
    lid = pressure.lid_push(case.planned_pa, pot.across_m)
    yield Working("Push on the lid", "F = gauge × π D² / 4", f"{case.planned_pa / 1000:.4g} kPa × π × {across:.4g}² mm² / 4", f"{lid / 1000:.3g} kN")
    numbers = f"p = {case.absolute_pa / 1000:.4g} kPa, V = {1000 * pot.volume_m3:.3g} L, γ = {pressure.HEAT_RATIO:g}"
    yield Working("Energy, pot taken as empty", "p V / (γ − 1) × (1 − (p0 / p)^((γ − 1) / γ))", numbers, f"{case.energy_j:.0f} J")
    fill = case.fill_m
    if fill is not None:
        numbers = f"{1000 * given.si('depth'):.4g} / (1 − {given.si('air_share'):.3g} × (1 − {volume:.3f}))"
        yield Working("Level before", "h / (1 − a (1 − p0 / p))", numbers, f"{1000 * fill:.2f} mm")


def pot(given: Given) -> Answer:
    """Whether the mould goes in, whether the markings allow the pressure, and what is left of a bubble.

    Parameters
    ----------
    given : the question's inputs, of a pressure pot.

    Returns
    -------
    Answer
        ``values``: ``stops`` and ``not_checked`` (counts), ``bubble`` (width left, ratio), ``energy`` (J), ``lid`` (N),
        ``weakest`` (Pa, where a marking was read), ``fill`` (m, where a depth was given) and ``may_use`` (s).

    Raises
    ------
    InputError
        ``tray-small`` when the mould is larger than the tray it stands in, ``deeper-than-mould`` for the depth of resin.
    """
    case = Case(given)
    stops = list(_stops(case))
    width = case.width_left(case.planned_pa)
    lid = pressure.lid_push(case.planned_pa, case.pot.across_m)
    values = {
        "stops": Figure(float(len(stops)), "count", str(len(stops))),
        "not_checked": Figure(float(len(case.unread)), "count", str(len(case.unread))),
        "bubble": Figure(width, "ratio", str(per_cent(given, width, "up"))),
        "energy": Figure(case.energy_j, "energy", f"{case.energy_j:.0f} J"),
        "lid": Figure(lid, "force", f"{lid / 1000:.3g} kN"),
    }
    if case.weakest_pa is not None:
        values["weakest"] = figure(bars(given, case.weakest_pa, "down"), "pressure", case.weakest_pa)
    if case.fill_m is not None:
        values["fill"] = figure(given.write(case.fill_m, "length", "up"), "length", case.fill_m)
    usable = time_to_use(given)
    if usable is not None:
        values["may_use"] = figure(given.write(usable, "minutes", "down"), "time", usable)
    return Answer(
        _headline(case, stops),
        lines=tuple(_lines(case, stops)),
        limits=_limits(case),
        changes=tuple(_changes(case, stops)),
        band=None if stops else _band(case),
        cautions=tuple(_cautions(case, stops)),
        working=tuple(_working(case)),
        sources=("gas-laws", "standard-atmosphere", "pressure-rules", "door-bulletin", "pot-reports", "degas-suppliers", "maker", "judgement", "practice"),
        values=values,
    )
