"""How hard the resin pushes on walls and seams, and how high the water stands that tests them before the wood goes in."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from calc.answers import Answer, Caution, Change, Figure, Headline, Line, Working, figure
from calc.casting import walls
from calc.casting import wood as timber
from calc.casting.thickness import standard
from calc.constants import STANDARD_GRAVITY
from calc.drawing import Drawing, Sketch
from calc.errors import InputError
from calc.questions import Given
from calc.questions._how_thick.words import exact, length, weight


@dataclass(frozen=True)
class Push:
    """A mould with straight walls, or a round one, and how high the resin stands in it."""

    given: Given

    @property
    def is_round(self) -> bool:
        """A hoop or a tube, not straight walls."""
        return self.given.choice("mould") == "round"

    @property
    def density(self) -> float:
        """Of the resin, kg/m3."""
        return self.given.si("density")

    @property
    def long(self) -> float:
        """Longest wall, or across inside, m."""
        return self.given.si("round_across" if self.is_round else "wall")

    @cached_property
    def depth(self) -> float:
        """How high the resin stands, m."""
        given, wall = self.given, self.given.maybe("height")
        depth = given.si("fill")
        if wall is not None and depth > wall + 1e-9:
            raise InputError("fill", "over-wall", wall=str(length(given, wall)))
        return depth

    @cached_property
    def water(self) -> float:
        """How high water stands for the same pressure at the floor, m; never under the resin's own level."""
        return max(self.depth, walls.same_push(self.depth, self.density, timber.standard("water")))

    @property
    def to_brim(self) -> bool:
        """The wall ends below that."""
        wall = self.given.maybe("height")
        return wall is not None and self.water > wall

    @property
    def test(self) -> float:
        """How high to fill with water, m."""
        wall = self.given.maybe("height")
        return self.water if wall is None else min(self.water, wall)

    @property
    def force(self) -> float:
        """On the longest wall, or along the band of a round one, N."""
        return self.at(self.depth)

    def at(self, depth: float) -> float:
        """The same for another depth, N."""
        if self.is_round:
            return walls.hoop_pull(depth, self.density, self.long)
        return walls.wall_push(depth, self.density, self.long)

    @property
    def floor(self) -> float | None:
        """Area of the floor, m2, where it is known."""
        if self.is_round:
            return math.pi * self.long**2 / 4
        other = self.given.maybe("wall_other")
        return None if other is None else self.long * other

    def headline(self) -> Headline:
        """The test, or why not."""
        given = self.given
        if given.choice("wood_in") == "yes":
            say = "Take the wood out before any water goes in. Wet wood swells, cannot dry in the mould, and its water clouds the resin and makes it foam."
            return Headline("Leak test", "Wood out first", "", say, "stop")
        hours = standard("leak test") / 3600
        if self.to_brim:
            shown = length(given, self.test, "down")
            share = given.write(self.test / self.water, "share", "down")
            say = f"Fill it to the brim before the wood goes in, paper under every seam, {hours:g} h or more. That tests {share} of the resin's push."
            return Headline("Leak test: water to the brim", shown.text, shown.unit, say, "caution")
        shown = length(given, self.test, "up")
        say = f"Before the wood goes in, with dry paper under every seam, {hours:g} h or more: as long as the resin stays liquid. Then dry the mould."
        return Headline("Leak test: fill with water to", shown.text, shown.unit, say, "go")

    def lines(self) -> Iterator[Line]:
        """What each part of the mould has to hold."""
        given = self.given
        if self.is_round:
            yield Line.of("Pull on the seam", weight(given, self.force), "as that weight pulls, over its whole height")
        else:
            up = length(given, self.depth / 3)
            yield Line.of("Push on the longest wall", weight(given, self.force), f"as that weight presses, outwards, {up} above the floor")
            corner = weight(given, self.force / 2)
            yield Line.of("Each end of that wall holds", corner, "screws, clamps or straps, not the sealant")
            other = given.maybe("wall_other")
            if other is not None:
                yield Line.of("Push on the other wall", weight(given, walls.wall_push(self.depth, self.density, other)))
        if self.floor is not None:
            load = self.density * self.floor * self.depth * STANDARD_GRAVITY
            yield Line.of("Floor and bench carry", weight(given, load), "a mould full of resin, before any wood")

    def changes(self) -> Iterator[Change]:
        """What would make it less."""
        if self.given.choice("wood_in") == "no":
            half = weight(self.given, self.at(self.depth / 2))
            yield Change("Two layers, the first hard before the second", f"{half} instead of {weight(self.given, self.force)}: half as deep pushes a quarter")

    def cautions(self) -> Iterator[Caution]:
        """Why before the wood, and what holds."""
        if self.given.choice("wood_in") == "no":
            text = "Never with the wood in: wet wood swells, cannot dry there, and its water clouds the resin and makes it foam."
            yield Caution("wood-in", "caution", text)
        text = "Resin warms up, thins and stays liquid for hours: it finds what water did not, and hot glue and tape let go. Pour over a tray all the same."
        yield Caution("finds", "caution", text)

    def working(self) -> Iterator[Working]:
        """The sums."""
        p = walls.pressure_at(self.depth, self.density)
        start = f"{self.density:.0f} kg/m³ × 9.807 m/s² × "
        yield Working("Pressure at the floor", "p = ρ g h", f"{start}{self.depth:.3f} m", f"{p:.1f} Pa")
        if self.is_round:
            yield Working("Pull along the band", "ρ g h² D / 4", f"{start}({self.depth:.3f} m)² × {self.long:.3f} m / 4", f"{self.force:.2f} N")
        else:
            yield Working("Push on the wall", "ρ g h² L / 2", f"{start}({self.depth:.3f} m)² × {self.long:.3f} m / 2", f"{self.force:.2f} N")
            moment = walls.wall_moment(self.depth, self.density, self.long)
            yield Working("It turns the wall over with", "ρ g h³ L / 6", f"{self.force:.2f} N × {self.depth:.3f} m / 3", f"{moment:.3f} N m")
        formula = "h ρ / ρ(water), no less than h"
        yield Working("Water for the same pressure", formula, f"{exact(self.depth)} × {self.density:.0f} / {timber.standard('water'):.1f}", exact(self.water))

    def drawing(self) -> Drawing:
        """A wall from the side, and the push that grows to the floor."""
        given, depth = self.given, self.depth
        wall = max(self.given.maybe("height") or 0.0, self.test * 1.05)
        thick, long = 0.06 * depth, 1.6 * depth
        sketch = Sketch().polygon([(0, 0), (long, 0), (long, depth), (0, depth)], "resin")
        sketch.polygon([(-thick, 0), (0, 0), (0, wall), (-thick, wall)], "mould")
        sketch.line([(-depth, 0), (long, 0)], "mould")
        sketch.polygon([(-thick, 0), (-thick - 0.6 * depth, 0), (-thick, depth)], "band")
        for step in range(1, 6):
            y = depth * (1 - step / 5.5)
            sketch.line([(-thick, y), (-thick - 0.6 * (depth - y), y)], "limit")
        sketch.line([(0, self.test), (long, self.test)], "level")
        sketch.text((long * 0.55, self.test + 0.03 * depth), f"water, {length(given, self.test, 'down' if self.to_brim else 'up')}")
        sketch.measure((long * 0.4, 0), (long * 0.4, depth), f"resin, {length(given, depth)}")
        says = f"A wall from the side. The resin stands {length(given, depth)} high; its push outwards grows from nothing at the top to its most at the floor."
        return sketch.drawing("The push on a wall", says, 220.0)

    def values(self) -> dict[str, Figure]:
        """Figures in SI."""
        shown = weight(self.given, self.force)
        water = length(self.given, self.test, "down" if self.to_brim else "up")
        return {"push": figure(shown, "mass", self.force / STANDARD_GRAVITY), "water": figure(water, "length", self.test)}


def push(given: Given) -> Answer:
    """The push on walls and seams, and the leak test."""
    case = Push(given)
    return Answer(
        headline=case.headline(),
        lines=tuple(case.lines()),
        changes=tuple(case.changes()),
        cautions=tuple(case.cautions()),
        working=tuple(case.working()),
        sources=("arithmetic", "practice", "judgement", *(("thin-hoop",) if case.is_round else ())),
        drawings=(case.drawing(),),
        values=case.values(),
    )
