"""Vacuum of the mixed resin before it is poured: how much at a time, and is the vacuum deep enough to break bubbles?"""

from __future__ import annotations

import math
from collections.abc import Iterator

from calc.answers import Answer, Band, Caution, Change, Figure, Headline, Line, Tone, Working, figure
from calc.casting import pressure
from calc.casting.vacuum import degas_mass, reading_needed, vacuum_left
from calc.errors import InputError
from calc.quantity.writing import Rounding, Shown, Style
from calc.questions import Given
from calc.questions._pot_or_vacuum.gates import handling
from calc.questions._pot_or_vacuum.words import kilopascals, outside, per_cent, reading, time_line, time_to_use, weight_of

WEATHER = pressure.figure_of("weather")  # of the air's pressure


class Case:
    """What was typed, as one bucket, one batch and one vacuum (SI)."""

    def __init__(self, given: Given) -> None:
        self.given = given
        self.outside_pa = outside(given)
        self.reading_pa = given.si("deepest")
        if self.reading_pa > self.outside_pa * (1 + WEATHER):
            raise InputError("deepest", "deeper-than-air", most=str(reading(given, self.outside_pa, "down")))
        self.left_pa = vacuum_left(self.outside_pa, self.reading_pa)
        self.most_kg = degas_mass(given.si("bucket"), given.si("fill"), given.si("density"))
        self.batch_kg = given.si("batch")
        self.goes = max(1, math.ceil(self.batch_kg / self.most_kg - 1e-9))

    def needed(self, row: str) -> float:
        """The gauge reading here, Pa, that a row of the data asks for at sea level."""
        return reading_needed(self.outside_pa, pressure.figure_of(row))

    @property
    def breaks(self) -> bool:
        return self.reading_pa >= self.needed("vacuum breaks") * (1 - 1e-9)

    @property
    def only_swells(self) -> bool:
        return self.reading_pa < self.needed("vacuum swells") * (1 - 1e-9)

    def growth(self, reading_pa: float) -> float:
        """Size of a bubble over what it was, at a gauge reading."""
        return pressure.bubble_volume(self.outside_pa, vacuum_left(self.outside_pa, reading_pa))

    def growth_text(self, reading_pa: float, rounding: Rounding = "nearest") -> str:
        """'32 times', or that it is over what a dial can tell."""
        text = f"{self.given.write(self.growth(reading_pa), ('count', Style('', figures=2)), rounding)} times"
        deepest = self.outside_pa - reading_pa < pressure.figure_of("least absolute")
        return f"over {text}" if deepest else text

    @property
    def needed_bucket_m3(self) -> float:
        """Bucket that takes the whole batch at once."""
        return self.batch_kg / (self.given.si("fill") * self.given.si("density"))


def _grams(case: Case, mass_kg: float, rounding: Rounding) -> Shown:
    return case.given.write(mass_kg, ("mass", Style("g", figures=3) if case.given.system == "metric" else Style("oz", figures=3)), rounding)


def _headline(case: Case) -> Headline:
    given, chamber = case.given, case.given.choice("chamber")
    if chamber == "no":
        say = "Use a chamber sold for full vacuum, or a pressure pot after the pour. Flat walls and thin lids fail first, inwards and all at once."
        return Headline("Vacuum", "Not in this one", "", say, "stop")
    if case.only_swells:
        needed = reading(given, case.needed("vacuum breaks"), "up")
        say = f"At {reading(given, case.reading_pa, 'down')} bubbles only swell. Mend leaks, change the pump's oil; or use a pressure pot after the pour."
        return Headline("Vacuum gauge at least", needed.text, needed.unit, say, "stop")
    most = _grams(case, case.most_kg, "down")
    if chamber == "unknown":
        say = f"Find out whether the chamber was sold for full vacuum. If so: {most} in this bucket at a time, at most."
        return Headline("Vacuum", "Not checked", "", say, "caution")
    tone: Tone = "go" if case.goes == 1 and case.breaks else "caution"
    split = "The batch goes in at once; the rest of the bucket is for foam. Checklist C9 first."
    if case.goes > 1:
        split = f"In {case.goes} goes, each within the working time, or take a larger bucket."
    weak = "" if case.breaks else f" From {reading(given, case.needed('vacuum breaks'), 'up')} bubbles break; this is just short of it."
    return Headline("In this bucket at a time, at most", most.text, most.unit, split + weak, tone)


def _lines(case: Case) -> Iterator[Line]:
    given = case.given
    yield Line.of("At a time, at most", _grams(case, case.most_kg, "down"), f"{per_cent(given, given.si('fill'))} of the bucket")
    if case.goes > 1:
        yield Line("Goes it takes", f"{case.goes} of {_grams(case, case.batch_kg / case.goes, 'up')}")
    if case.only_swells:
        then = "their size, and do not break"
    elif case.reading_pa < case.needed("vacuum breaks") * (1 - 1e-9):
        then = "their size; not all of them break"
    else:
        then = "their size; then they break and the foam falls"
    yield Line("Bubbles swell to", case.growth_text(case.reading_pa), "", then)
    yield Line.of("Bubbles break from", reading(given, case.needed("vacuum breaks"), "up"), "on your gauge, at your height")
    yield Line.of("The deepest there is here", reading(given, case.outside_pa, "down"), "give or take the weather")
    spent = given.maybe("pump") or 0.0
    yield time_line(given, "Left to mix and pour" if spent and given.maybe("working") is not None else "Time to mix, degas and pour", spent)
    across = given.maybe("chamber_across")
    if across is not None:
        yield Line.of("The lid is pressed in with", weight_of(given, pressure.lid_push(case.outside_pa, across)), "at full vacuum")


def _changes(case: Case) -> Iterator[Change]:
    given = case.given
    if case.goes > 1:
        yield Change(f"A bucket of {given.write(case.needed_bucket_m3, 'large volume', 'up')}", "all in one go")
    if not case.breaks:
        needed = case.needed("vacuum breaks")
        yield Change(f"A gauge at {reading(given, needed, 'up')}", f"bubbles swell to {case.growth_text(needed)} and break")
    yield Change("A pressure pot after the pour", "no foam, no bucket; bubbles shrink instead")


def _band(case: Case) -> Band:
    given, error = case.given, case.given.si("gauge_error") * pressure.SEA_LEVEL
    low = case.growth_text(max(0.0, case.reading_pa - error), "down")
    high = case.growth_text(min(case.outside_pa, case.reading_pa + error), "up")
    return Band(f"Gauge off by {reading(given, error, 'up')}: bubbles swell to {low}, or {high}. Watch the foam: it rises, breaks and falls.", low, high)


def _cautions(case: Case) -> Iterator[Caution]:
    spent, usable = case.given.maybe("pump"), time_to_use(case.given)
    if spent is not None and usable is not None and spent >= usable:
        yield Caution("time", "stop", "The pump alone takes what may be used of the working time: a slower resin, or less of it and no vacuum.")
    elif usable is not None and (handling(case.given) or 0.0) > usable * (1 + 1e-9):
        may = case.given.write(usable, "minutes", "down")
        yield Caution("time", "stop", f"Vacuum, mixing and pouring take more than the {may} that may be used: mix less at a time, or a slower resin.")
    yield Caution("foam", "caution", "It foams up fast: hand on the vent, let a little air in when it nears the brim, then pull again.")
    yield Caution("implode", "caution", "No chip, scratch or crazing in chamber or lid; cover it, glasses on. Solvents craze clear lids.")
    yield Caution("vent", "caution", "Let room air in slowly. Never compressed air or bottled gas: it can burst outwards.")
    yield Caution("boil", "caution", "When the foam has fallen, stop: longer only boils thinner off the resin.")


def _working(case: Case) -> Iterator[Working]:
    given = case.given
    numbers = f"101.325 × (1 − 0.0065 × {given.si('altitude'):.4g} / 288.15)^5.256"
    yield Working("Air outside", "p0 = 101.325 kPa (1 − 0.0065 h / 288.15)^5.256", numbers, kilopascals(case.outside_pa))
    yield Working("Left in the chamber", "p = p0 − gauge", f"{kilopascals(case.outside_pa)} − {kilopascals(case.reading_pa)}", kilopascals(case.left_pa))
    numbers = f"{case.outside_pa / 1000:.4g} / {case.left_pa / 1000:.4g}"
    yield Working("Size of a bubble", "p0 / p", numbers, f"{case.growth(case.reading_pa):.1f}")
    for row, title in (("vacuum breaks", "Reading that breaks bubbles"), ("vacuum swells", "Reading that only swells them, below")):
        gap = f"({pressure.SEA_LEVEL / 1000:.4g} − {pressure.figure_of(row) / 1000:.4g})"
        yield Working(title, "p0 here − (p0 at sea − reading at sea)", f"{case.outside_pa / 1000:.4g} − {gap} kPa", kilopascals(case.needed(row)))
    bucket, fill, density = 1000 * given.si("bucket"), given.si("fill"), given.si("density") / 1000
    yield Working("At a time", "bucket × share × density", f"{bucket:.4g} L × {fill:.3g} × {density:.3g} kg/L", f"{case.most_kg:.4g} kg")
    yield Working("Goes", "batch / at a time, up", f"{case.batch_kg:.4g} / {case.most_kg:.4g}", str(case.goes))


def vacuum(given: Given) -> Answer:
    """How much resin at a time, in how many goes, and whether this vacuum breaks bubbles.

    Parameters
    ----------
    given : the question's inputs, of vacuum.

    Returns
    -------
    Answer
        ``values``: ``at_a_time`` (kg), ``goes`` (count), ``growth`` (ratio), ``left`` (Pa in the chamber), ``stops`` (count)
        and ``may_use`` (s).

    Raises
    ------
    InputError
        ``deeper-than-air`` when the reading is more than the air at that height.
    """
    case = Case(given)
    stops = (given.choice("chamber") == "no") + case.only_swells
    values = {
        "stops": Figure(float(stops), "count", str(stops)),
        "at_a_time": figure(_grams(case, case.most_kg, "down"), "mass", case.most_kg),
        "goes": Figure(float(case.goes), "count", str(case.goes)),
        "growth": Figure(case.growth(case.reading_pa), "ratio", case.growth_text(case.reading_pa)),
        "left": Figure(case.left_pa, "pressure", kilopascals(case.left_pa)),
    }
    usable = time_to_use(given)
    if usable is not None:
        values["may_use"] = figure(given.write(usable, "minutes", "down"), "time", usable)
    return Answer(
        _headline(case),
        lines=tuple(_lines(case)),
        changes=tuple(_changes(case)),
        band=_band(case),
        cautions=tuple(_cautions(case)),
        working=tuple(_working(case)),
        sources=("gas-laws", "standard-atmosphere", "degas-suppliers", "prudent-practices", "judgement", "practice"),
        values=values,
    )
