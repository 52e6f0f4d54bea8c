"""Where is the weight? What was typed, as a body that turns about an axis, and what follows from it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from calc.casting import wood as of_wood
from calc.casting.outlines import Point, crosses
from calc.casting.species import all_species
from calc.errors import InputError
from calc.quantity import Shown, Style, restate, to_si
from calc.questions import Given
from calc.questions._how_fast.remedies import WEIGHT_REACH
from calc.questions._where_is_the_weight.fields import MADE, NONE, WOODS
from calc.questions._where_is_the_weight.parts import Piece, clock, direction, standard
from calc.turning import balance, caps, clipping, discs, make_up, rebalance, speed
from calc.turning.make_up import Blank, Body, Wood


@dataclass(frozen=True)
class Case:
    """One blank, known by its make-up, by a scale or by a weight on the spindle."""

    given: Given

    @property
    def way(self) -> str:
        """What the maker has."""
        return self.given.choice("way")

    @property
    def made(self) -> bool:
        """Whether the make-up is known."""
        return self.way in MADE

    # --- the blank and what is in it -----------------------------------------------------------------

    @cached_property
    def blank(self) -> Blank:
        """Size and resin."""
        si = self.given.si
        if self.given.choice("blank") == "round":
            return Blank(si("across"), si("thickness"), si("resin"))
        other = self.given.maybe("other_side")
        return Blank(si("side"), si("thickness"), si("resin"), si("side") if other is None else other)

    @cached_property
    def pieces(self) -> tuple[Piece, ...]:
        """The woods, looked over: none outside, none deeper than the blank, none in another."""
        found = [self._piece(name) for name in WOODS if self.given.choice(f"{name}_shape") != NONE]
        for number, piece in enumerate(found):
            for earlier in found[:number]:
                if self.overlap(earlier.wood, piece.wood):
                    raise InputError(f"{piece.name}_shape", "overlap", other=earlier.title)
        return tuple(found)

    @property
    def woods(self) -> tuple[Wood, ...]:
        """The same without their names."""
        return tuple(piece.wood for piece in self.pieces)

    def overlap(self, one: Wood, other: Wood) -> bool:
        """Whether two woods share more of the blank than a slip of the tape."""
        rim = self.blank.corners or make_up.round_wood(self.blank.across_m, (0.0, 0.0))
        shared = clipping.shared_area((one.corners, other.corners, rim))
        least = min(make_up.inside(self.blank, wood.corners).area for wood in (one, other))
        return shared > standard("overlap") * least

    def _piece(self, name: str) -> Piece:
        given, shape = self.given, self.given.choice(f"{name}_shape")
        corners = self._corners(name, shape)
        depth = given.maybe(f"{name}_depth")
        if depth is not None and depth > self.blank.thickness_m * (1 + 1e-9):
            raise InputError(f"{name}_depth", "too-deep", thickness=self.tape(self.blank.thickness_m))
        depth = self.blank.thickness_m if depth is None else min(depth, self.blank.thickness_m)
        kept = make_up.inside(self.blank, corners).area
        if kept <= 1e-9:
            named = {"round": "out", "block": "out", "side": "edge", "strip": "edge", "outline": "points"}[shape]
            raise InputError(f"{name}_{named}", "outside-blank", reach=self.tape(make_up.swept(self.blank) / 2))
        own = clipping.inside_outline(corners).area if shape in ("round", "block", "outline") else kept
        density, spread, sources = self._density(name, own * depth)
        return Piece(name, shape, Wood(corners, density, depth), spread, sources)

    def _corners(self, name: str, shape: str) -> tuple[Point, ...]:
        given = self.given
        if shape == "outline":
            numbers = given.many(f"{name}_points")
            if len(numbers) % 2:
                raise InputError(f"{name}_points", "odd-corners", count=str(len(numbers)))
            points = tuple(zip(numbers[::2], numbers[1::2], strict=True))
            if crosses(points) or clipping.inside_outline(points).area <= 0:
                raise InputError(f"{name}_points", "crossing")
            return points
        towards, reach = direction(given.si(f"{name}_clock")), make_up.swept(self.blank)
        if shape == "half":
            return make_up.band(towards, 0.0, reach, reach)
        if shape == "side":
            return make_up.band(towards, given.si(f"{name}_edge"), 2 * reach, reach)
        if shape == "strip":
            return make_up.band(towards, given.si(f"{name}_edge"), given.si(f"{name}_width"), reach)
        if shape == "slice":
            return make_up.slice_of(towards, math.radians(given.si(f"{name}_angle")), reach)
        out = given.si(f"{name}_out")
        if shape == "round":
            return make_up.round_wood(given.si(f"{name}_across"), (out * math.cos(towards), out * math.sin(towards)))
        length = given.si(f"{name}_length")
        return make_up.band(towards, out - length / 2, length, given.si(f"{name}_width") / 2)

    def _density(self, name: str, volume: float) -> tuple[float, float, tuple[str, ...]]:
        """Density, kg/m3, its standard uncertainty as a fraction, and where it is from."""
        given, by = self.given, self.given.choice(f"{name}_by")
        if by == "density":
            return given.si(f"{name}_density"), standard("spread wood measured"), ("maker",)
        if by == "weight":
            found = given.si(f"{name}_weight") / volume
            shown = str(given.write(found, "density"))
            if found < standard("lightest"):
                raise InputError(f"{name}_weight", "too-light", found=shown)
            if found > standard("heaviest"):
                raise InputError(f"{name}_weight", "too-heavy", found=shown)
            return found, standard("spread wood measured"), ("maker",)
        species, moisture = all_species().get(given.choice(f"{name}_species")), given.si(f"{name}_moisture")
        if species is None:
            return standard("wood unknown"), standard("spread wood unknown"), ("judgement",)
        fullest = of_wood.fullest(species.basic)
        if moisture > fullest:
            raise InputError(f"{name}_moisture", "too-wet", found=str(given.write(fullest, ("share", Style("%", step=1)), "down")))
        return of_wood.density_of_species(species, moisture), species.spread or of_wood.standard("spread weigh"), (*species.sources, "wood-handbook-4")

    # --- how it turns -------------------------------------------------------------------------------

    @cached_property
    def axis(self) -> Point:
        """Where it is mounted, from its middle, m."""
        off = self.given.maybe("off") or 0.0
        if not off:
            return 0.0, 0.0
        hours = self.given.maybe("off_clock")
        if hours is None:
            raise InputError("off_clock", "which-way")
        towards = direction(hours)
        axis = off * math.cos(towards), off * math.sin(towards)
        if make_up.true_round(self.blank, axis) <= 0:
            raise InputError("off", "off-blank", reach=self.tape(self.blank.across_m / 2))
        return axis

    @cached_property
    def body(self) -> Body:
        """What turns: from the make-up, from the scale, or from the weight that balances it."""
        if self.made:
            return make_up.weigh(self.blank, self.woods, self.axis)
        if self.way == "hung":
            about = self.given.maybe("about")
            mass = discs.disc_mass(self.swept, standard("hung thickness")) if about is None else about
            return Body(mass, 0.0, -balance.unbalance_of_weight(self.given.si("hung"), self.given.si("hung_at")))
        mass = self.given.si("mass")
        x, y = self._by_scale("at_3", "at_9"), self._by_scale("at_12", "at_6")
        if math.hypot(x, y) > self.swept / 2:
            raise InputError("at_3", "centre-outside", found=self.tape(math.hypot(x, y)))
        return Body(mass, mass * x, mass * y)

    def _by_scale(self, name: str, opposite: str) -> float:
        mass, reading, other = self.given.si("mass"), self.given.si(name), self.given.maybe(opposite)
        apart = self.given.si("apart")
        if apart > self.swept * (1 + 1e-9):
            raise InputError("apart", "apart", sweep=self.tape(self.swept))
        if reading > mass:
            raise InputError(name, "more-than-all", mass=self.grams(mass))
        if other is not None and abs(reading + other - mass) > standard("readings agree") * mass:
            raise InputError(opposite, "sum-off", sum=self.grams(reading + other), mass=self.grams(mass))
        return rebalance.centre_by_scale(mass, apart, reading, other)

    @property
    def swept(self) -> float:
        """Circle that it sweeps, m across."""
        return make_up.swept(self.blank, self.axis) if self.made else self.given.si("sweep")

    @property
    def round(self) -> float:
        """Largest round that it can be turned to, m across."""
        return make_up.true_round(self.blank, self.axis) if self.made else self.swept

    @cached_property
    def finish(self) -> float | None:
        """What it is turned down to, m across."""
        typed = self.given.maybe("finish")
        if typed is not None and typed > self.round * (1 + 1e-9):
            raise InputError("finish", "too-wide", round=self.tape(self.round))
        return typed

    # --- the weight ---------------------------------------------------------------------------------

    @cached_property
    def place(self) -> float:
        """How far out the weight goes, m."""
        if self.way == "hung":
            if self.given.si("hung_at") > self.swept / 2 * (1 + 1e-9):
                raise InputError("hung_at", "beyond", rim=self.tape(self.swept / 2))
            return self.given.si("hung_at")
        typed = self.given.maybe("at")
        if typed is not None and typed > self.swept / 2 * (1 + 1e-9):
            raise InputError("at", "beyond", rim=self.tape(self.swept / 2))
        return self.inside_rim(self.finish if self.made and self.finish is not None else self.round) if typed is None else typed

    def inside_rim(self, across: float) -> float:
        """A little inside a rim, m: on a mark of a metric tape, so that the units asked for change no answer."""
        step = to_si(5, "length", "mm")
        reach = WEIGHT_REACH * across / 2
        return reach if reach < step else math.floor(reach / step + 1e-9) * step

    @property
    def weight(self) -> float:
        """What balances it there, kg."""
        return balance.balance_weight(self.body.unbalance, self.place)

    @property
    def light(self) -> float:
        """Direction of the light side, rad."""
        return math.atan2(-self.body.y, -self.body.x)

    @cached_property
    def weights(self) -> tuple[tuple[float, float], ...]:
        """Each weight, kg, and its direction, rad: one, or two where the maker named two places."""
        if not self.given.typed("places"):
            return ((self.weight, self.light),)
        first, second = map(direction, self.given.many("places"))
        try:
            shares = rebalance.split_weight(self.weight, self.light, first, second)
        except ValueError as error:
            raise InputError("places", "places", light=clock(self.light)) from error
        return tuple(zip(shares, (first, second), strict=True))

    # --- whether it matters -------------------------------------------------------------------------

    @property
    def standing(self) -> float:
        """What the lathe weighs, kg."""
        own = self.given.maybe("lathe_mass")
        return speed.lathe_kinds()[self.given.choice("lathe")].mass_kg if own is None else own

    @property
    def speed(self) -> float:
        """Speed it is looked at, rpm: the maker's, or the roughing ceiling for its size."""
        return self.speed_of(self.swept)

    def speed_of(self, across: float) -> float:
        """The same for another size, m across."""
        typed = self.given.maybe("speed")
        return caps.speed_at_rim_speed(across, caps.operation_rim_speed("rough", across)) if typed is None else typed

    @property
    def vibration(self) -> float:
        """What the lathe does at that speed, m/s."""
        return balance.vibration(self.body.unbalance, self.body.mass_kg, self.standing, self.speed)

    @property
    def push_share(self) -> float:
        """The push at that speed, of the lathe's weight."""
        return balance.push(self.body.unbalance, self.speed) / (self.standing * balance.STANDARD_GRAVITY)

    @property
    def matters(self) -> int:
        """0 hardly, 1 it trembles, 2 the lathe would walk."""
        return self.level(self.body, self.swept)

    def level(self, body: Body, across: float) -> int:
        """The same of anything that turns, of that size, m across."""
        speed_rpm = self.speed_of(across)
        vibration = balance.vibration(body.unbalance, body.mass_kg, self.standing, speed_rpm)
        pushed = balance.push(body.unbalance, speed_rpm)
        if vibration > balance.vibration_limit("zone-c") or pushed > balance.PUSH_SHARE * self.standing * balance.STANDARD_GRAVITY:
            return 2
        return int(vibration > balance.vibration_limit("zone-b"))

    @property
    def under(self) -> float:
        """Speed to stay under while it is out of balance, rpm; no more than the one looked at."""
        unbalance = self.body.unbalance
        by_vibration = balance.speed_at_vibration(unbalance, self.body.mass_kg, self.standing, balance.vibration_limit("zone-c"))
        return min(by_vibration, balance.speed_at_push(unbalance, self.standing), self.speed)

    # --- how sure ------------------------------------------------------------------------------------

    @cached_property
    def spread(self) -> float | None:
        """Standard uncertainty of the out of balance, kg m; None where only friction decides it."""
        if self.way == "hung":
            return None
        if self.way == "scale":
            return self.body.mass_kg * self._scale_spread()
        if not self.body.unbalance:
            return 0.0
        ex, ey = self.body.x / self.body.unbalance, self.body.y / self.body.unbalance
        total = resin = 0.0
        for piece in self.pieces:
            kept = make_up.inside(self.blank, piece.wood.corners, self.axis)
            along = (ex * kept.x + ey * kept.y) * piece.wood.depth_m
            total += (along * piece.spread * piece.wood.density) ** 2
            resin += along
        return math.sqrt(total + (resin * standard("spread resin")) ** 2)

    def _scale_spread(self) -> float:
        apart, mass = self.given.si("apart"), self.given.si("mass")
        reading = apart * standard("scale read") / mass
        both = self.given.maybe("at_9") is not None and self.given.maybe("at_6") is not None
        return reading / math.sqrt(2) if both else math.hypot(reading, standard("supports set"))

    # --- written --------------------------------------------------------------------------------------

    def tape(self, length: float) -> str:
        """A length finely, for an error."""
        unit = self.given.pick("mm", "in")
        return f"{restate(length, 'length', unit)} {unit}"

    def small(self, mass: float) -> Shown:
        """A small mass, to two figures: a light weight is no nought."""
        return self.given.write(mass, ("mass", Style(self.given.pick("g", "oz"), figures=2)))

    def grams(self, mass: float) -> str:
        """The same as a text."""
        return str(self.small(mass))


