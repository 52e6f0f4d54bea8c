"""Where is the weight? What was typed, as a body that turns about an axis, and what follows from it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from calc.casting.outlines import Point
from calc.casting.wood import standard as of_wood
from calc.constants import STANDARD_GRAVITY
from calc.errors import InputError
from calc.quantity.units import to_si
from calc.quantity.writing import Shown
from calc.questions import Given
from calc.questions._how_fast.remedies import MOST_WEIGHT, WEIGHT_REACH
from calc.questions._where_is_the_weight.fields import MADE
from calc.questions._where_is_the_weight.measured import Swing, hung, inertia, on_scale, scale_spread
from calc.questions._where_is_the_weight.parts import Piece, clock, direction, grams, small, standard, tape
from calc.questions._where_is_the_weight.woods import pieces
from calc.turning import balance, caps, discs, make_up, rebalance, speed, swing, vibrating
from calc.turning.make_up import Blank, Body, Wood

BOTH_SIDES = of_wood("both sides")  # spreads to either side: 19 times in 20
_MANY = 2  # let into others: up to here an answer comes within a keystroke


@dataclass(frozen=True)
class Case:
    """One blank, known by its make-up, by a scale, or by a weight or a swing on the spindle."""

    given: Given

    @property
    def way(self) -> str:
        """What the maker has."""
        return self.given.choice("way")

    @property
    def made(self) -> bool:
        """Whether the make-up is known."""
        return self.way in MADE

    @property
    def shaped(self) -> bool:
        """Whether its outline was asked: for the make-up and for the swing, whose time hangs on it."""
        return self.made or self.way == "swing"

    # --- the blank and what is in it -----------------------------------------------------------------

    @cached_property
    def blank(self) -> Blank:
        """Size and resin."""
        si, made = self.given.si, self.made
        thick, density = (si("thickness"), si("resin")) if made else (standard("hung thickness"), discs.RESIN_DENSITY)
        if self.given.choice("blank") == "round":
            return Blank(si("across"), thick, density)
        other = self.given.maybe("other_side")
        return Blank(si("side"), thick, density, si("side") if other is None else other)

    @cached_property
    def pieces(self) -> tuple[Piece, ...]:
        """The woods, looked over."""
        return pieces(self.given, self.blank)

    @cached_property
    def woods(self) -> tuple[Wood, ...]:
        """The same without their names."""
        return tuple(piece.wood for piece in self.pieces)

    @property
    def nested(self) -> bool:
        """Whether so many are let into others, and may still be shifted, that it takes longer than a keystroke may."""
        return self.way == "plan" and sum(wood.let_in for wood in self.woods) > _MANY

    @cached_property
    def swing(self) -> Swing:
        """What its swing tells."""
        return Swing(self.given, self.blank, self.swept)

    @property
    def hidden(self) -> bool:
        """Whether it stays wherever it is put, so that only friction sets how far it may be out."""
        return self.way == "swing" and self.swing.stays

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
            raise InputError("off", "off-blank", reach=tape(self.given, self.blank.across_m / 2))
        return axis

    @cached_property
    def body(self) -> Body:
        """What turns: from the make-up, or from what was measured."""
        if self.made:
            return make_up.weigh(self.blank, self.woods, self.axis)
        if self.way == "swing":
            return self.swing.body
        return hung(self.given, self.swept) if self.way == "hung" else on_scale(self.given, self.swept)

    @property
    def swept(self) -> float:
        """Circle that it sweeps, m across."""
        return make_up.swept(self.blank, self.axis) if self.shaped else self.given.si("sweep")

    @property
    def round(self) -> float:
        """Largest round that it can be turned to, m across."""
        return make_up.true_round(self.blank, self.axis) if self.shaped else self.swept

    @cached_property
    def finish(self) -> float | None:
        """What it is turned down to, m across."""
        typed = self.given.maybe("finish")
        if typed is not None and typed > self.round * (1 + 1e-9):
            raise InputError("finish", "too-wide", round=tape(self.given, self.round))
        return typed

    # --- the weight ---------------------------------------------------------------------------------

    @cached_property
    def place(self) -> float:
        """How far out the weight goes, m."""
        if self.way == "hung":
            if self.given.si("hung_at") > self.swept / 2 * (1 + 1e-9):
                raise InputError("hung_at", "beyond", rim=tape(self.given, self.swept / 2))
            return self.given.si("hung_at")
        typed = self.given.maybe("at")
        if typed is not None and typed > self.swept / 2 * (1 + 1e-9):
            raise InputError("at", "beyond", rim=tape(self.given, self.swept / 2))
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
    def too_heavy(self) -> bool:
        """Whether a weight just inside the rim would be more than may be hung on it."""
        return balance.balance_weight(self.body.unbalance, self.inside_rim(self.round)) > MOST_WEIGHT * self.body.mass_kg

    @property
    def unhung(self) -> bool:
        """Whether no weight is advised: it would be more than may be hung, and the blank can be mounted elsewhere."""
        return self.way in ("cast", "mounted", "scale", "swing") and self.matters > 0 and self.too_heavy

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
        return vibrating.vibration(self.body.unbalance, self.body.mass_kg, self.standing, self.speed)

    @property
    def push_share(self) -> float:
        """The push at that speed, of the lathe's weight."""
        return balance.push(self.body.unbalance, self.speed) / (self.standing * STANDARD_GRAVITY)

    @property
    def matters(self) -> int:
        """0 hardly, 1 it trembles, 2 the lathe would walk."""
        return self.level(self.body, self.swept)

    def level(self, body: Body, across: float) -> int:
        """The same of anything that turns, of that size, m across."""
        speed_rpm = self.speed_of(across)
        vibration = vibrating.vibration(body.unbalance, body.mass_kg, self.standing, speed_rpm)
        pushed = balance.push(body.unbalance, speed_rpm)
        if vibration > vibrating.vibration_limit("zone-c") or pushed > balance.PUSH_SHARE * self.standing * STANDARD_GRAVITY:
            return 2
        return int(vibration > vibrating.vibration_limit("zone-b"))

    @property
    def may_matter(self) -> int:
        """The same at the far end of what it may be out of balance."""
        return self.level(Body(self.body.mass_kg, max(self.most, self.body.unbalance), 0.0), self.swept)

    @property
    def under(self) -> float:
        """Speed to stay under while it is out of balance, rpm; no more than the one looked at."""
        unbalance = max(self.most, self.body.unbalance)
        by_vibration = vibrating.speed_at_vibration(unbalance, self.body.mass_kg, self.standing, vibrating.vibration_limit("zone-c"))
        return min(by_vibration, balance.speed_at_push(unbalance, self.standing), self.speed)

    @property
    def would_swing(self) -> float:
        """Time of one small swing there and back on a free spindle, s, of a blank whose make-up is known and that is out of balance."""
        about_spindle = inertia(self.blank, self.body.mass_kg) + self.body.mass_kg * math.hypot(*self.axis) ** 2
        return swing.period_of_swing(about_spindle, self.body.unbalance)

    @property
    def too_slow(self) -> bool:
        """Whether that is slower than a lathe of this kind usually runs."""
        return self.under < speed.lathe_kinds()[self.given.choice("lathe")].lowest_rpm

    # --- how sure ------------------------------------------------------------------------------------

    @cached_property
    def spread(self) -> float | None:
        """Standard uncertainty of the out of balance, kg m; None where only friction decides it."""
        if self.way == "hung" or self.hidden:
            return None
        if self.way == "swing":
            return self.swing.spread
        if self.way == "scale":
            return self.body.mass_kg * scale_spread(self.given)
        any_way = _any_way(self._parts)
        return math.hypot(*(self._along(part) for part in self._parts)) if self.body.unbalance > BOTH_SIDES * any_way else any_way

    @cached_property
    def _parts(self) -> list[Point]:
        """What each material's own spread of density may add to right and up, kg m."""
        filled = make_up.volumes(self.blank, self.woods, self.axis)
        by = [standard("spread resin"), *(piece.spread * piece.wood.density for piece in self.pieces)]
        return [(kg * own.x, kg * own.y) for kg, own in zip(by, filled, strict=True)]

    def _along(self, part: Point) -> float:
        """The share of it along the heavy side, kg m."""
        return (part[0] * self.body.x + part[1] * self.body.y) / self.body.unbalance

    @property
    def sure(self) -> bool:
        """Whether it is out by more than it may be off: only then is it known on which side."""
        return self.spread is None or self.body.unbalance > BOTH_SIDES * self.spread

    @property
    def most(self) -> float:
        """Out of balance, kg m: as found; where not even its side is known, as much as it may be, 19 times in 20."""
        return self.body.unbalance if self.sure else self.body.unbalance + BOTH_SIDES * (self.spread or 0.0)

    # --- written --------------------------------------------------------------------------------------

    def small(self, mass: float) -> Shown:
        """A small mass, to two figures: a light weight is no nought."""
        return small(self.given, mass)

    def grams(self, mass: float) -> str:
        """The same as a text."""
        return grams(self.given, mass)

    def most_grams(self, mass: float) -> str:
        """The most that it may be, up."""
        return str(small(self.given, mass, "up"))


def _any_way(parts: list[Point]) -> float:
    """Standard uncertainty along the line on which it is largest, of parts that vary each on its own: the root of the greater eigenvalue."""
    xx, yy, xy = (sum(one[i] * one[j] for one in parts) for i, j in ((0, 0), (1, 1), (0, 1)))
    return math.sqrt((xx + yy) / 2 + math.hypot((xx - yy) / 2, xy))
