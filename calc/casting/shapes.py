"""Mould shapes: what one holds up to a depth, its plan, a cut through it, and how far an error in each size moves the volume.

Lengths m, areas m2, volumes m3; depths are of the liquid over the lowest place of the floor, not the height of the wall.
Every shape is a set of inside sizes, each above 0; a size that contradicts another is a ValueError when the shape is made.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass, fields

from calc.casting.outlines import Point, crosses, enclosed_area, middle_of, oblong, oval, regular
from calc.casting.wood import area_by_widths

Loops = tuple[tuple[Point, ...], ...]
_NUDGE = 1e-6  # of a size: how far it is moved to see what it does
_CUTS = 20  # steps in which a curved wall is drawn, closer at its ends


@dataclass(frozen=True)
class Shape:
    """A mould of some shape; the kinds below say which."""

    def area(self, depth_m: float) -> float:
        """Surface of the liquid at a depth, m2."""
        raise NotImplementedError

    def volume(self, depth_m: float) -> float:
        """What it holds up to a depth, m3."""
        raise NotImplementedError

    def plan(self, depth_m: float) -> Loops:
        """Outline of the surface at a depth, seen from above; a hole is a second one."""
        raise NotImplementedError

    @property
    def curved(self) -> bool:
        """Whether its walls are drawn as a curve."""
        return False

    def reach(self, depth_m: float) -> float:
        """Farthest from the middle of the surface to a wall where a depth may be read, m.

        Squared shapes count both ways, along and across: a floor may slope both ways.
        """
        outline = self.plan(depth_m)[0]
        mx, my = middle_of(outline)
        return max(math.hypot(x - mx, y - my) for x, y in outline)

    def cut(self, depth_m: float) -> Loops:
        """Upright cut lengthways through the middle, from the floor up to a depth, each part closed."""
        heights = [depth_m * (1 - math.cos(math.pi * n / _CUTS)) / 2 for n in range(_CUTS + 1)] if self.curved else [0.0, depth_m]
        spans = [self._spans(height) for height in heights]
        return tuple(
            (*[(span[n][0], z) for span, z in zip(spans, heights, strict=True)], *[(span[n][1], z) for span, z in list(zip(spans, heights, strict=True))[::-1]])
            for n in range(len(spans[0]))
        )

    def _spans(self, depth_m: float) -> list[tuple[float, float]]:
        """Where the cut is hollow at a height, from left to right."""
        xs = [x for x, _ in self.plan(depth_m)[0]]
        return [(min(xs), max(xs))]

    def moved(self, depth_m: float, off_m: float) -> list[tuple[str, float]]:
        """How far the volume moves when each size in turn is off by so much: size, m3 with its sign.

        Parameters
        ----------
        depth_m : of the liquid.
        off_m : error of one reading.
        """
        out = []
        for size in fields(self):
            value = getattr(self, size.name)
            if size.type == "float":
                out.append((size.name, off_m * self._slope(depth_m, size.name, value)))
            elif size.type == "tuple[float, ...]":
                out += [(size.name, off_m * slope) for slope in self._slopes(depth_m, size.name, value)]
        return out

    def _slope(self, depth_m: float, name: str, value: float) -> float:
        """Central difference of the volume over one size."""
        step = _NUDGE * value
        high, low = (self._but(name, value + sign * step).volume(depth_m) for sign in (1, -1))
        return (high - low) / (2 * step)

    def _slopes(self, depth_m: float, name: str, values: Sequence[float]) -> list[float]:
        """The same for each of several numbers that are one size."""
        step = _NUDGE * (max(abs(value) for value in values) or 1.0)
        out = []
        for n in range(len(values)):
            high, low = (self._but(name, tuple(v + sign * step * (m == n) for m, v in enumerate(values))).volume(depth_m) for sign in (1, -1))
            out.append((high - low) / (2 * step))
        return out

    def _but(self, name: str, value: object) -> Shape:
        """The same with one size moved by a hair; a slot as wide as it is long may then be wider."""
        other = copy(self)
        object.__setattr__(other, name, value)
        return other


@dataclass(frozen=True)
class Straight(Shape):
    """A mould with upright walls: the same area at every depth."""

    @property
    def floor(self) -> float:
        """Area of the floor, m2."""
        raise NotImplementedError

    def area(self, depth_m: float) -> float:
        """Surface of the liquid: the floor's, m2."""
        return self.floor

    def volume(self, depth_m: float) -> float:
        """A h, m3."""
        return self.floor * depth_m


@dataclass(frozen=True)
class Cylinder(Straight):
    """Round, upright: pi D^2 h / 4.

    >>> round(1e6 * Cylinder(0.300).volume(0.060), 1)
    4241.2
    """

    across: float

    @property
    def floor(self) -> float:
        """pi D^2 / 4, m2."""
        return math.pi * self.across**2 / 4

    def plan(self, depth_m: float) -> Loops:
        """A circle."""
        return (oval(self.across, self.across),)


@dataclass(frozen=True)
class Ring(Straight):
    """Round with a round core: pi (D^2 - d^2) h / 4.

    >>> round(1e6 * Ring(0.250, 0.150).volume(0.040), 1)
    1256.6
    """

    across: float
    core: float

    def __post_init__(self) -> None:
        if self.core >= self.across:
            raise ValueError("the core of a ring is narrower than the ring")

    @property
    def floor(self) -> float:
        """pi (D^2 - d^2) / 4, m2."""
        return math.pi * (self.across**2 - self.core**2) / 4

    def plan(self, depth_m: float) -> Loops:
        """A circle and its hole."""
        return oval(self.across, self.across), oval(self.core, self.core)

    def _spans(self, depth_m: float) -> list[tuple[float, float]]:
        return [(-self.across / 2, -self.core / 2), (self.core / 2, self.across / 2)]


@dataclass(frozen=True)
class Box(Straight):
    """Oblong, upright: L W h.

    >>> round(1e6 * Box(0.6096, 0.2159).volume(0.041275), 1)
    5432.3
    """

    length: float
    width: float

    @property
    def floor(self) -> float:
        """L W, m2."""
        return self.length * self.width

    def plan(self, depth_m: float) -> Loops:
        """A rectangle."""
        return (oblong(self.length, self.width),)

    def reach(self, depth_m: float) -> float:
        """L/2 + W/2: the corner, m."""
        return (self.length + self.width) / 2


@dataclass(frozen=True)
class Ellipse(Straight):
    """Oval, upright: pi a b h / 4 with a and b the full axes.

    >>> round(1e6 * Ellipse(0.320, 0.220).volume(0.040), 1)
    2211.7
    """

    length: float
    width: float

    @property
    def floor(self) -> float:
        """pi a b / 4, m2."""
        return math.pi * self.length * self.width / 4

    def plan(self, depth_m: float) -> Loops:
        """An ellipse."""
        return (oval(self.length, self.width),)


@dataclass(frozen=True)
class Slot(Straight):
    """Straight sides and round ends, length over all: [pi W^2 / 4 + (L - W) W] h.

    >>> round(1e6 * Slot(0.500, 0.180).volume(0.030), 1)
    2491.4
    """

    length: float
    width: float

    def __post_init__(self) -> None:
        if self.width > self.length:
            raise ValueError("a slot is at least as long as wide")

    @property
    def floor(self) -> float:
        """pi W^2 / 4 + (L - W) W, m2."""
        return math.pi * self.width**2 / 4 + (self.length - self.width) * self.width

    def plan(self, depth_m: float) -> Loops:
        """Two half circles and the sides between."""
        shift = (self.length - self.width) / 2
        turns = [math.pi * (n / _CUTS - 0.5) for n in range(_CUTS + 1)]
        right = [(shift + self.width / 2 * math.cos(turn), self.width / 2 * math.sin(turn)) for turn in turns]
        return ((*right, *[(-x, -y) for x, y in right]),)


@dataclass(frozen=True)
class Polygon(Straight):
    """Three or more equal sides and angles, upright; ``by`` says what ``size`` is: 'flats', 'side' or 'corner' (centre to corner).

    >>> round(1e6 * Polygon(6, 0.200, "flats").volume(0.050), 1)
    1732.1
    """

    sides: int
    size: float
    by: str

    def __post_init__(self) -> None:
        if self.sides < 3:
            raise ValueError("three sides at least")
        if self.by == "flats" and self.sides % 2:
            raise ValueError("with an odd count of sides a corner lies opposite each flat")

    @property
    def corner_radius(self) -> float:
        """Centre to a corner, m."""
        if self.by == "corner":
            return self.size
        half = math.pi / self.sides
        return self.size / 2 / (math.cos(half) if self.by == "flats" else math.sin(half))

    @property
    def floor(self) -> float:
        """n F^2 tan(pi/n) / 4; n s^2 / (4 tan(pi/n)); n R^2 sin(2 pi/n) / 2, m2."""
        return self.sides * self.corner_radius**2 * math.sin(2 * math.pi / self.sides) / 2

    def plan(self, depth_m: float) -> Loops:
        """Its corners."""
        return (regular(self.sides, self.corner_radius),)


@dataclass(frozen=True)
class Outline(Straight):
    """Any outline by its corners, x and y in turn, upright: area by the shoelace formula, times h.

    >>> round(1e6 * Outline((0.0, 0.0, 0.3, 0.0, 0.0, 0.4)).volume(0.010))
    600
    """

    corners: tuple[float, ...]

    def __post_init__(self) -> None:
        if len(self.corners) % 2 or len(self.corners) < 6:
            raise ValueError("x and y of three corners at least")
        if crosses(self.points):
            raise ValueError("the outline crosses itself")

    @property
    def points(self) -> tuple[Point, ...]:
        """The corners as points."""
        return tuple(zip(self.corners[::2], self.corners[1::2], strict=True))

    @property
    def floor(self) -> float:
        """|sum(x_i y_(i+1) - x_(i+1) y_i)| / 2, m2."""
        return enclosed_area(self.points)

    def plan(self, depth_m: float) -> Loops:
        """Its corners."""
        return (self.points,)

    def _slopes(self, depth_m: float, name: str, values: Sequence[float]) -> list[float]:
        points = self.points
        turn = math.copysign(depth_m / 2, sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in zip(points, points[1:] + points[:1], strict=True)))
        out: list[float] = []
        for (x1, y1), (x2, y2) in zip(points[-1:] + points[:-1], points[1:] + points[:1], strict=True):
            out += [turn * (y2 - y1), turn * (x1 - x2)]
        return out


@dataclass(frozen=True)
class Widths(Straight):
    """An outline by its length and its widths at equal steps, upright: Simpson's rule, or trapeziums for an even count of widths.

    >>> round(1e6 * Widths(0.600, (0.120, 0.135, 0.128, 0.140, 0.110)).volume(0.045), 1)
    3568.5
    """

    length: float
    widths: tuple[float, ...]

    @property
    def floor(self) -> float:
        """(L / 3n) [w0 + wn + 4 sum odd + 2 sum even], m2."""
        return area_by_widths(self.length, self.widths)

    def plan(self, depth_m: float) -> Loops:
        """The widths, set on a straight line."""
        step = self.length / (len(self.widths) - 1)
        one = [(n * step, width / 2) for n, width in enumerate(self.widths)]
        return ((*one, *[(x, -y) for x, y in one[::-1] if y]),)
