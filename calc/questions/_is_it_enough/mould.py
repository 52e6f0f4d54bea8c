"""The mould as it was typed: its shapes, what they hold below the fill line, and how sure that is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from calc.casting import budget, level
from calc.casting.budget import Spread
from calc.casting.hollow_shapes import Ball, Bowl, TaperedBox, TaperedRound, Trough
from calc.casting.outlines import crosses
from calc.casting.shapes import Box, Cylinder, Ellipse, Outline, Polygon, Ring, Shape, Slot, Widths
from calc.casting.sufficiency import Demand, standard
from calc.errors import InputError
from calc.quantity.writing import restate
from calc.questions import Given


@dataclass(frozen=True)
class Mould:
    """One mould: its main shape, and parts that stand beside or on it."""

    given: Given

    # --- the main shape ----------------------------------------------------------------------------

    @property
    def kind(self) -> str:
        """The shape chosen."""
        return self.given.choice("shape")

    @property
    def measured(self) -> bool:
        """Whether its volume was measured, and no size is known."""
        return self.kind == "measured"

    @cached_property
    def shape(self) -> Shape | None:
        """The main shape; None where only its volume is known."""
        si, kind = self.given.si, self.kind
        if kind == "measured":
            return None
        if kind in ("round", "ball"):
            return Cylinder(si("across")) if kind == "round" else Ball(si("across"))
        if kind == "ring":
            if si("core") >= si("across"):
                raise InputError("core", "core-too-wide", given=self.said("core"), ring=self.said("across"))
            return Ring(si("across"), si("core"))
        if kind in ("box", "oval"):
            return (Box if kind == "box" else Ellipse)(si("length"), si("width"))
        if kind == "slot":
            if si("width") > si("length"):
                raise InputError("width", "slot-too-wide", given=self.said("width"), length=self.said("length"))
            return Slot(si("length"), si("width"))
        if kind == "trough":
            return Trough(si("across"), si("length"))
        if kind == "cup":
            return TaperedRound(si("floor_across"), si("top_across"), self.sized_at)
        if kind == "tray":
            return TaperedBox(si("floor_length"), si("floor_width"), si("top_length"), si("top_width"), self.sized_at)
        if kind == "bowl":
            if self.sized_at > si("rim") / 2 * (1 + 1e-9):
                name = "wall" if self.given.maybe("wall") else "depth"
                raise InputError(name, "bowl-too-deep", given=self.said(name), rim=self.said("rim"))
            return Bowl(si("rim"), self.sized_at)
        return self._polygon() if kind == "sides" else self._outlined()

    def said(self, name: str) -> str:
        """A length as it was typed, with its unit."""
        return self.written(self.given.si(name))

    def written(self, length: float) -> str:
        """A length, finely."""
        unit = self.given.pick("mm", "in")
        return f"{restate(length, 'length', unit)} {unit}"

    def _polygon(self) -> Shape:
        sides, by = self.given.si("sides"), self.given.choice("side_by")
        if by == "flats" and round(sides) % 2:
            raise InputError("side_by", "odd-flats", sides=f"{sides:.0f}")
        return Polygon(round(sides), self.given.si("size"), by)

    def _outlined(self) -> Shape:
        if self.kind == "widths":
            shape = Widths(self.given.si("length"), self.given.many("widths"))
            if shape.floor <= 0:
                raise InputError("widths", "no-width")
            return shape
        corners = self.given.many("corners")
        if len(corners) % 2:
            raise InputError("corners", "odd-corners", count=str(len(corners)))
        if crosses(tuple(zip(corners[::2], corners[1::2], strict=True))):
            raise InputError("corners", "crossing")
        outline = Outline(corners)
        if outline.floor <= 0:
            raise InputError("corners", "crossing")
        return outline

    # --- how deep ------------------------------------------------------------------------------------

    @property
    def sized_at(self) -> float:
        """Height at which the top sizes of a tapered mould were measured, m: the rim, or the fill line."""
        return self.given.maybe("wall") or self.read_depth

    @cached_property
    def all_round(self) -> tuple[float, float, float] | None:
        """Mean of the depths read all round, its spread and the freedom behind it; None where one was read."""
        return budget.repeated(self.given.many("depths")) if self.given.typed("depths") else None

    @property
    def read_depth(self) -> float:
        """Fill depth as read, m."""
        return self.given.si("depth") if self.all_round is None else self.all_round[0]

    @property
    def tilt(self) -> float:
        """How much higher one end of the floor is, m; 0 where it is not known to slope."""
        return self.given.si("tilt") if self.given.words("level") == "known" else 0.0

    @cached_property
    def depth(self) -> float:
        """Fill depth in the middle, m; below 0 where a sloping floor is dry there."""
        if not self.tilt or self.all_round is not None:
            return self.read_depth
        return self.read_depth + {"deep": -0.5, "shallow": 0.5, "middle": 0.0}[self.given.choice("read_at")] * self.tilt

    @property
    def dry(self) -> bool:
        """Whether part of a sloping floor stays dry."""
        return self.shape is not None and not (self.depth > 0 and level.covers_the_floor(self.depth, self.tilt / 2))

    def check(self) -> None:
        """Depths that the mould cannot have."""
        if self.shape is None:
            return
        wall, top = self.given.maybe("wall"), self.depth + self.tilt / 2
        if wall is not None and top > wall * (1 + 1e-9):
            raise InputError("depth", "over-the-wall", given=self.written(top), wall=self.said("wall"))
        if isinstance(self.shape, (Ball, Trough)) and top > self.shape.across * (1 + 1e-9):
            raise InputError("depth", "over-the-top", given=self.written(top), across=self.said("across"))
        if isinstance(self.shape, TaperedRound) and self.shape.across(top) <= 0:
            raise InputError("top_across", "closes", given=self.said("top_across"))
        if isinstance(self.shape, TaperedBox) and min(self.shape.sizes(top)) <= 0:
            raise InputError("top_length", "closes", given=self.said("top_length"))
        if not self.dry and self.room_to(self.depth) <= 0:
            raise InputError("sag", "bulge", given=self.said("sag").removeprefix("-"))

    # --- what it holds -------------------------------------------------------------------------------

    @cached_property
    def parts(self) -> tuple[tuple[Shape, float], ...]:
        """Further parts with sizes, and how deep each is filled."""
        out = []
        for name in ("part2", "part3"):
            kind = self.given.choice(name)
            if kind not in ("round", "box"):
                continue
            depth = self.given.maybe(f"{name}_depth")
            if depth is None:
                if self.shape is None:
                    raise InputError(f"{name}_depth", "missing")
                depth = self.depth
            si = self.given.si
            out.append((Cylinder(si(f"{name}_across")) if kind == "round" else Box(si(f"{name}_length"), si(f"{name}_width")), depth))
        return tuple(out)

    @property
    def volumes(self) -> float:
        """Further parts by their volume, m3."""
        return sum(self.given.si(f"{name}_volume") for name in ("part2", "part3") if self.given.choice(name) == "volume")

    @property
    def sag(self) -> float:
        """Room under the level floor, m3; a round bottom has none."""
        return level.sagged(self.shape.area(0.0), self.given.maybe("sag") or 0.0) if self.shape is not None else 0.0

    def room_to(self, depth: float) -> float:
        """What the main shape holds up to a depth in its middle, m3."""
        assert self.shape is not None  # asked only where it has sizes
        return self.shape.volume(depth) + self.sag

    @cached_property
    def volume(self) -> float:
        """All that it holds below the fill line, m3."""
        main = self.given.si("volume") if self.shape is None else self.room_to(self.depth)
        return main + sum(shape.volume(depth) for shape, depth in self.parts) + self.volumes

    @property
    def tape(self) -> float:
        """Standard uncertainty of one size, m."""
        return budget.within(self.given.maybe("off") or 0.0) if self.shape is not None else budget.within(standard("tape") / 1000)

    def size_spreads(self, depth: float) -> list[Spread]:
        """What the sizes of the main shape add, m3."""
        if self.shape is None:
            return [Spread("volume", self.given.si("volume") * self.given.si("volume_off") / 2)]
        return [Spread("size", u) for _, u in self.shape.moved(depth, self.tape)]

    @property
    def u_depth(self) -> float:
        """Standard uncertainty of one depth, m."""
        return budget.within(self.given.maybe("depth_off") or 0.0) if self.shape is not None else budget.within(standard("depth") / 1000)

    def depth_spread(self) -> Spread:
        """What the fill depth adds, m3: of all parts, since one line is looked at."""
        if self.shape is None:
            return Spread("depth", 0.0)
        if self.all_round is not None:
            _, u, freedom = self.all_round
            return Spread("depth", self.shape.area(self.depth) * max(u, 0.0), freedom)
        return Spread("depth", self.shape.area(self.depth) * self.u_depth)

    def level_spread(self, depth: float) -> Spread:
        """What the level adds when one wall is read, m3."""
        if self.shape is None or self.all_round is not None:
            return Spread("level", 0.0)
        chosen = self.given.choice("level")
        if chosen == "known":
            off = (self.given.maybe("off") or 0.0) / 2
        else:
            off = level.misread(standard(f"level {chosen}") / 1000, self.shape.reach(depth))
        return Spread("level", self.shape.area(depth) * budget.within(off))

    def part_spreads(self) -> list[Spread]:
        """What the further parts add, m3."""
        out = [Spread("size", standard("volume measured") * self.volumes)] if self.volumes else []
        for shape, depth in self.parts:
            out += [Spread("size", u) for _, u in shape.moved(depth, self.tape)]
            out.append(Spread("depth", shape.area(depth) * self.u_depth))
        return out

    def room(self) -> Demand:
        """All of it as an amount with its spread, m3."""
        spreads = (*self.size_spreads(self.depth if self.shape is not None else 0.0), self.depth_spread(), self.level_spread(self.depth if self.shape else 0.0))
        return Demand(self.volume, (*spreads, *self.part_spreads()))

    def wedge(self) -> float | None:
        """What lies on a floor that is partly dry, m3; None where its shape has no formula."""
        if isinstance(self.shape, Cylinder):
            slope = self.tilt / self.shape.across
            dry_from = self.depth / slope
            return level.wedge_in_a_round(self.shape.across / 2, dry_from, slope) if abs(dry_from) <= self.shape.across / 2 else None
        if isinstance(self.shape, Box):
            slope = self.tilt / self.shape.length
            wet = (self.depth + self.tilt / 2) / slope
            return level.wedge_in_a_box(wet, self.shape.width, slope) if wet > 0 else None
        return None


def same_count(given: Given, name: str, of: str) -> Sequence[float] | None:
    """A list that goes with another, of the same length; None where it was left empty."""
    if not given.typed(name):
        return None
    many, lead = given.many(name), given.many(of) if given.typed(of) else ()
    if len(many) != len(lead):
        raise InputError(name, "other-count", count=str(len(many)), wanted=str(len(lead)))
    return many
