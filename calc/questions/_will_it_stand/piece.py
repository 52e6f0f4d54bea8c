"""A stacked or footed piece as typed: where its weight is, what tips it, what its joints bear, what heat it takes."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from calc.casting.cure.stages import softens_unwarmed
from calc.errors import InputError
from calc.quantity.units import from_si, to_si
from calc.quantity.writing import Rounding, Shown, Style
from calc.questions import Given
from calc.turning import bearing, standing
from calc.turning.hold import tenon_strength
from calc.turning.standing import Foot, Mass, Part, Section, standard
from calc.words import both

_NEAR = 1e-9


def length(given: Given, metres: float, rounding: Rounding = "nearest") -> Shown:
    """A length as a tape reads it."""
    return given.write(metres, "length", rounding)


def weight(given: Given, kg: float, rounding: Rounding = "down") -> Shown:
    """A weight as a kitchen or a parcel scale reads it."""
    if given.system == "metric":
        style = Style("g", step=10) if kg < 1 else Style("kg", step=0.1)
    else:
        style = Style("oz", step=1) if kg < to_si(1, "mass", "lb") else Style("lb", step=0.1)
    return given.write(kg, ("mass", style), rounding)


def degrees(tilt: float, rounding: Rounding = "down") -> str:
    """A tilt in degrees, to a half."""
    steps = math.degrees(tilt) * 2
    whole = math.ceil(steps - _NEAR) if rounding == "up" else math.floor(steps + _NEAR)
    return f"{whole / 2:g}"


@dataclass(frozen=True)
class Piece:
    """The piece and where it will stand."""

    given: Given

    # --- the stack -------------------------------------------------------------------------------

    @property
    def heights(self) -> tuple[float, ...]:
        """Of the parts, bottom first, m."""
        return self.given.many("heights")

    @cached_property
    def widths(self) -> tuple[float, ...]:
        """Of the parts, m."""
        return self._as_many("widths")

    @cached_property
    def masses(self) -> tuple[float, ...] | None:
        """Of the parts, kg, where they were weighed."""
        return self._as_many("masses") if self.given.typed("masses") else None

    def _as_many(self, name: str) -> tuple[float, ...]:
        found = self.given.many(name)
        if len(found) != len(self.heights):
            kind, unit = ("mass", self.given.pick("kg", "lb")) if name == "masses" else ("length", self.given.pick("mm", "in"))
            read = both([f"{from_si(value, kind, unit):.4g}" for value in found])
            raise InputError(name, "counts", count=str(len(found)), parts=str(len(self.heights)), read=f"{read} {unit}")
        return found

    @property
    def section(self) -> Section:
        """Round or square parts."""
        return "square" if self.given.choice("section") == "square" else "round"

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """The parts from the bottom up."""
        out, bottom = [], 0.0
        for place, (height, width) in enumerate(zip(self.heights, self.widths, strict=True)):
            plain = standing.section_area(width, self.section) * height * self.given.si("density")
            mass = plain if self.masses is None else self.masses[place]
            out.append(Part(bottom, height, mass, standard("spread mass" if self.masses is None else "spread weighed")))
            bottom += height
        return tuple(out)

    @property
    def tall(self) -> float:
        """In all, m."""
        return sum(self.heights)

    @cached_property
    def bare(self) -> Mass:
        """The piece with nothing on it."""
        return standing.centre_of_mass(self.parts)

    @property
    def load(self) -> float:
        """What it carries on top, kg."""
        return self.given.si("load") if self.given.choice("carries") == "yes" else 0.0

    @cached_property
    def all(self) -> Mass:
        """The piece with what it carries."""
        if not self.load:
            return self.bare
        return standing.with_load(self.bare, self.load, self.tall + self.given.si("load_high"))

    @cached_property
    def off(self) -> float:
        """How far the middle of mass lies off the middle of the foot, m; heavy side and load taken to one side."""
        given = self.given
        own = given.si("off")
        if own >= max(self.widths) / 2 - _NEAR:
            raise InputError("off", "outside", half=str(length(given, max(self.widths) / 2)))
        if not self.load:
            return own
        beside = given.si("load_off")
        if beside > self.widths[-1] / 2 + _NEAR:
            raise InputError("load_off", "outside", half=str(length(given, self.widths[-1] / 2)))
        return (self.bare.mass * own + self.load * beside) / self.all.mass

    # --- the foot ----------------------------------------------------------------------------------

    @property
    def foot(self) -> Foot:
        """What it stands on."""
        chosen = self.given.choice("foot")
        found: dict[str, Foot] = {"round": "round", "ring": "ring", "square": "square", "three": "three", "four": "four"}
        return found[chosen]

    @property
    def foot_across(self) -> float:
        """Typed, or as wide as the lowest part, m."""
        return self.given.maybe("foot_across") or self.widths[0]

    @property
    def radius(self) -> float:
        """From under the middle of mass to the line it tips over, m."""
        return standing.tipping_radius(self.foot, self.foot_across) - self.off

    # --- what tips it --------------------------------------------------------------------------------

    @property
    def wanted(self) -> float:
        """The tilt it should stand, rad."""
        return math.radians(self.given.si("tilt"))

    @property
    def highest(self) -> float:
        """The middle of mass as high as it is likely to be, m."""
        return self.all.height + 1.645 * self.all.u

    @property
    def tilt(self) -> float:
        """As reckoned, rad."""
        return standing.tipping_tilt(self.radius, self.all.height)

    @property
    def least_tilt(self) -> float:
        """With the middle of mass that high, rad."""
        return standing.tipping_tilt(self.radius, self.highest)

    @property
    def most_tilt(self) -> float:
        """With it that low, rad."""
        return standing.tipping_tilt(self.radius, max(0.1 * self.all.height, self.all.height - 1.645 * self.all.u))

    @property
    def stands(self) -> bool:
        """The tilt wanted, also with the middle of mass as high as it is likely to be."""
        return self.least_tilt >= self.wanted - _NEAR

    @property
    def foot_wanted(self) -> float:
        """The foot for that, m."""
        return standing.foot_for_tilt(self.foot, self.highest, self.wanted, self.off)

    @property
    def push(self) -> float:
        """At the top, kg."""
        return standing.tipping_push(self.all.mass, self.radius, self.tall)

    @property
    def rim_load(self) -> float | None:
        """At the edge of its top, kg; with nothing else on it."""
        radius = standing.tipping_radius(self.foot, self.foot_across) - self.given.si("off")
        return standing.rim_load(self.bare.mass, radius, self.widths[-1] / 2)

    @property
    def ballast(self) -> float | None:
        """In the lowest part, kg."""
        heavy = Mass(self.all.mass, self.highest)
        return standing.ballast_for_tilt(heavy, self.radius, self.wanted, self.heights[0] / 2)

    # --- what it bears ---------------------------------------------------------------------------------

    @property
    def jointed(self) -> bool:
        """There is a joint, and it is asked about."""
        return len(self.heights) > 1 and self.given.choice("joint") != "none"

    @property
    def peg_strength(self) -> float:
        """Of a dowel or a tenon, Pa."""
        return standard("dowel") if self.given.choice("joint") == "dowel" else tenon_strength(self.given.choice("peg_of"))

    @property
    def lever(self) -> float:
        """From the lowest joint to the top, m."""
        return self.tall - self.heights[0]

    @cached_property
    def peg(self) -> float:
        """Across the dowel or the tenon, m."""
        peg = self.given.si("peg")
        if peg >= min(self.widths) - _NEAR:
            raise InputError("peg", "thick-peg", width=str(length(self.given, min(self.widths))))
        return peg

    @cached_property
    def peg_times(self) -> float | None:
        """How many times over the peg of the lowest joint bears the push that tips the piece; None where there is nothing to bear."""
        if not self.jointed or self.push <= 0:
            return None
        return self.peg_strength / bearing.peg_stress(self.push, self.lever, self.peg)

    @cached_property
    def socket_times(self) -> float | None:
        """The same of the socket's wall, where its depth is known."""
        deep = self.given.maybe("socket")
        if not self.jointed or self.push <= 0 or deep is None:
            return None
        if deep >= max(self.heights) - _NEAR:
            raise InputError("socket", "deep-socket", height=str(length(self.given, max(self.heights))))
        return standard("socket") / bearing.socket_pressure(self.push, self.lever, self.peg, deep)

    @property
    def joint(self) -> float | None:
        """The lesser of the two."""
        return min((found for found in (self.peg_times, self.socket_times) if found is not None), default=None)

    @property
    def socket_wanted(self) -> float:
        """The depth of socket that bears it often enough, m."""
        return bearing.socket_for(self.push, self.lever, self.peg, standard("socket"), standard("joint"))

    @property
    def peg_wanted(self) -> float:
        """The peg that bears it often enough, m."""
        return bearing.peg_for(self.push, self.lever, self.peg_strength, standard("joint"))

    @cached_property
    def column(self) -> tuple[int, float] | None:
        """The part that is nearest to bowing out under what stands on it, and how many times over it bears that."""
        found = []
        for place, part in enumerate(self.parts):
            on_it = self.load + sum(above.mass for above in self.parts[place + 1 :])
            if on_it > 0:
                found.append((place, bearing.column_load(self.widths[place], self.tall - part.bottom, self.section) / on_it))
        return min(found, key=lambda each: each[1], default=None)

    # --- heat --------------------------------------------------------------------------------------------

    @property
    def place(self) -> str:
        """Where it will stand."""
        return self.given.choice("place")

    @property
    def warm(self) -> float:
        """How warm it gets there, K."""
        return self.given.si("place_temp") if self.place == "own" else bearing.places()[self.place].temperature

    @property
    def unwarmed(self) -> float | None:
        """Where it may soften because it was not cured warm, K."""
        return None if self.given.choice("warmed") == "yes" else softens_unwarmed(self.given.si("shop"))

    @property
    def soft(self) -> float:
        """From where its resin may soften, K."""
        return bearing.softens_at(self.given.maybe("soft"), self.unwarmed)

    @property
    def limit(self) -> float:
        """How warm it may get, K."""
        return bearing.warmest(self.given.maybe("soft"), self.unwarmed)

    @property
    def heat(self) -> Literal["go", "caution", "stop"]:
        """Within the limit, over it, or over it by the margin."""
        over = self.warm - self.limit
        return "go" if over <= _NEAR else "caution" if over < standard("soft margin") - _NEAR else "stop"
