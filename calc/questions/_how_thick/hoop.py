"""The strip of a round mould: how long, how wide, how true it stands, and what its lap has to hold."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from calc.answers import Answer, Carry, Caution, Change, Figure, Headline, Line, Working, figure
from calc.casting import walls
from calc.casting.thickness import standard
from calc.constants import STANDARD_GRAVITY
from calc.drawing import Drawing, Sketch
from calc.errors import InputError
from calc.questions import Given
from calc.questions._how_thick.words import exact, fine, length, weight

_NEAR = 1e-6  # m


@dataclass(frozen=True)
class Hoop:
    """One strip, or several, bent into a ring."""

    given: Given

    @property
    def across(self) -> float:
        """Inside, m."""
        return self.given.si("inside")

    @property
    def thick(self) -> float:
        """The strip, m."""
        return self.given.si("strip")

    @cached_property
    def lap(self) -> float:
        """How far its ends go over each other, m."""
        lap = self.given.si("lap")
        if lap >= math.pi * self.across / 2:
            raise InputError("lap", "all-lap", round=str(length(self.given, math.pi * self.across)))
        return lap

    @cached_property
    def pieces(self) -> int:
        """Strips in the ring."""
        stock = self.given.maybe("stock")
        if stock is None:
            return 1
        if stock <= 2 * self.lap:
            raise InputError("stock", "short-stock", lap=str(length(self.given, self.lap)))
        return walls.strips_needed(self.across, self.lap, self.thick, stock)

    @property
    def each(self) -> float:
        """Length of each strip, m."""
        return walls.strip_length(self.across, self.lap, self.thick, self.pieces) / self.pieces

    @cached_property
    def measured(self) -> tuple[float, float] | None:
        """Narrowest and widest inside, as measured on the standing ring, m."""
        given = self.given
        narrow, wide = given.maybe("narrow"), given.maybe("wide")
        if narrow is None and wide is None:
            return None
        narrow, wide = narrow or self.across, wide or self.across
        if narrow > wide + _NEAR:
            raise InputError("narrow", "narrow-wide", wide=str(length(given, wide)))
        return narrow, wide

    @property
    def widths(self) -> tuple[float, float]:
        """Narrowest and widest inside, m: measured, or as a springy ring stands free."""
        if self.measured is not None:
            return self.measured
        return walls.narrowest(self.across, self.lap, self.pieces), walls.widest(self.across, self.lap)

    @property
    def fill(self) -> float | None:
        """How high the resin will stand, m."""
        return self.given.maybe("hoop_fill")

    @property
    def stiff(self) -> bool:
        """Too thick to bend evenly."""
        return walls.bend_strain(self.thick, self.across) > standard("bend")

    def headline(self) -> Headline:
        """What to cut."""
        given, shown = self.given, length(self.given, self.each, "up")
        lap = length(given, self.lap)
        if self.pieces > 1:
            say = f"Cut {self.pieces} strips of {shown} and lap each joint by {lap}. One strip of {length(given, given.si('stock'))} does not go round."
            return Headline(f"Cut {self.pieces} strips to", shown.text, shown.unit, say, "caution")
        say = f"Bend it round a disc of {length(given, self.across)}, lap the ends by {lap}, seal the lap from top to bottom."
        return Headline("Cut the strip to", shown.text, shown.unit, say, "caution" if self.stiff else "go")

    def lines(self) -> Iterator[Line]:
        """Width of the strip, what to draw on the base, how round it stands, what the lap holds."""
        given = self.given
        yield Line.of("Circle to draw on the base", fine(given, self.across + 2 * self.thick), "across, round the outside of the strip")
        if self.fill is not None:
            yield Line.of("Strip is wide, at least", length(given, self.fill + standard("freeboard"), "up"), "the resin, and some wall over it")
        narrow, wide = self.widths
        if self.measured is not None:
            yield Line.of("Largest true round in it", length(given, narrow, "down"), "by what you measured")
        else:
            oval = f"; it goes oval, about {length(given, narrow, 'down').text} by {length(given, wide, 'up')}" if self.pieces == 1 else ""
            yield Line.of("Largest true round in it", length(given, narrow, "down"), f"standing free{oval}")
        yield Line.of("Ridge on the blank at the lap", fine(given, self.thick, "up"), "turned away first, with light cuts")
        if self.fill is not None:
            pull = walls.hoop_pull(self.fill, given.si("density"), self.across)
            yield Line.of("Pull on the lap", weight(given, pull), "as that weight pulls, over its whole height")

    def changes(self) -> Iterator[Change]:
        """What would make it rounder."""
        if self.measured is None:
            given = self.given
            half = length(given, walls.narrowest(self.across, self.lap / 2, self.pieces), "down")
            if half.si > length(given, self.widths[0], "down").si:
                yield Change(f"A lap of {length(given, self.lap / 2)}, if it still seals", f"a true round of {half}")
            yield Change("Pegs or blocks all round, or the ends thinned to half where they lap", "nearly round")

    def cautions(self) -> Iterator[Caution]:
        """Where a hoop fails."""
        if self.stiff:
            thin = fine(self.given, standard("bend") * self.across / (1 - standard("bend")), "down")
            text = f"That strip is thick for so small a ring and may bend in flats, or break. {thin} or thinner bends evenly; some sheet bends warm."
            yield Caution("stiff", "caution", text)
        text = "Hot glue and tape let go as the resin warms: a strap or a clamp has to hold the lap, the tape only seals it. Test it with water first."
        yield Caution("seam", "caution", text)

    def working(self) -> Iterator[Working]:
        """The sums."""
        numbers = f"π × ({exact(self.across)} + {exact(self.thick)}) + {self.pieces} × {exact(self.lap)}"
        yield Working("Strip in all", "π (D + t) + n × lap", numbers, exact(self.each * self.pieces))
        if self.measured is None and self.pieces == 1:
            narrow, wide = self.widths
            yield Working("Narrowest, standing free", "D − lap / 2π", f"{exact(self.across)} − {exact(self.lap)} / 2π", exact(narrow))
            yield Working("Widest, standing free", "D + lap (1/4 − 1/2π)", f"{exact(self.across)} + 0.0908 × {exact(self.lap)}", exact(wide))
        if self.fill is not None:
            density = self.given.si("density")
            newtons = walls.hoop_pull(self.fill, density, self.across)
            numbers = f"{density:.0f} kg/m³ × 9.807 m/s² × ({self.fill:.3f} m)² × {self.across:.3f} m / 4"
            yield Working("Pull along the band", "ρ g h² D / 4", numbers, f"{newtons:.2f} N")
            if self.thick <= standard("thin ring") * self.across / 2:
                stress = walls.hoop_stress(self.fill, density, self.across, self.thick)
                yield Working("Stress in the strip at the floor", "ρ g h D / 2t", "", f"{stress / 1000:.1f} kPa")

    def drawing(self) -> Drawing:
        """The ring from above."""
        given, radius = self.given, self.across / 2
        shown = max(self.thick, 0.02 * self.across)  # a thin strip is drawn thicker, to be seen
        sketch = Sketch().circle((0, 0), radius + shown, "mould").circle((0, 0), radius, "resin")
        turn = self.lap / (radius + shown) / 2
        for place in range(self.pieces):
            middle = 2 * math.pi * place / self.pieces + math.pi / 2
            angles = [middle + turn * (step / 6 - 1) for step in range(13)]
            outer, inner = radius + 2.2 * shown, radius + shown
            arc = [(outer * math.cos(angle), outer * math.sin(angle)) for angle in angles]
            back = [(inner * math.cos(angle), inner * math.sin(angle)) for angle in reversed(angles)]
            sketch.polygon(arc + back, "wood")
        sketch.measure((-radius, 0), (radius, 0), str(length(given, self.across)))
        laps = f"{self.pieces} strips, each lapped" if self.pieces > 1 else "One strip, its ends lapped"
        says = f"The round mould from above, {length(given, self.across)} across inside. {laps} by {length(given, self.lap)}."
        says += " The strip is drawn thicker than it is."
        return sketch.drawing("The hoop from above", says, 240.0)

    def carry(self, fill: float) -> Carry:
        """The mould, for the resin it wants."""
        return Carry("is-it-enough", {"shape": "round", "across": str(length(self.given, self.across)), "depth": str(length(self.given, fill, "up"))})

    def values(self) -> dict[str, Figure]:
        """Figures in SI."""
        given, narrow = self.given, self.widths[0]
        found = {
            "strip": figure(length(given, self.each, "up"), "length", self.each),
            "strips": figure(given.write(self.pieces, "count"), "count", self.pieces),
            "true_round": figure(length(given, narrow, "down"), "length", narrow),
        }
        if self.fill is not None:
            newtons = walls.hoop_pull(self.fill, given.si("density"), self.across)
            shown = weight(given, newtons)
            found["lap_pull"] = figure(shown, "mass", newtons / STANDARD_GRAVITY)
        return found


def hoop(given: Given) -> Answer:
    """The strip to cut for a round mould."""
    case = Hoop(given)
    return Answer(
        headline=case.headline(),
        lines=tuple(case.lines()),
        changes=tuple(case.changes()),
        cautions=tuple(case.cautions()),
        working=tuple(case.working()),
        sources=("arithmetic", "practice", "judgement", *(("thin-hoop",) if case.fill is not None else ())),
        drawings=(case.drawing(),),
        values=case.values(),
        carries=() if case.fill is None else (case.carry(case.fill),),
    )
