"""Mould shapes whose area changes with the depth: tapered, round-bottomed, lying. Units and rules as in :mod:`calc.casting.shapes`."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.casting.outlines import oblong, oval
from calc.casting.shapes import Loops, Shape


@dataclass(frozen=True)
class TaperedRound(Shape):
    """A cone's trunk: pi h (R1^2 + R1 R2 + R2^2) / 3, R2 at the depth.

    Parameters
    ----------
    floor : across the floor.
    top : across, ``height`` over the floor.

    Examples
    --------
    >>> round(1e6 * TaperedRound(0.100, 0.120, 0.150).volume(0.150), 1)
    1429.4
    """

    floor: float
    top: float
    height: float

    def across(self, depth_m: float) -> float:
        """Width at a depth, m."""
        return self.floor + (self.top - self.floor) * depth_m / self.height

    def area(self, depth_m: float) -> float:
        """Circle at that depth, m2."""
        return math.pi * self.across(depth_m) ** 2 / 4

    def volume(self, depth_m: float) -> float:
        """Of the trunk up to that depth, m3."""
        low, high = self.floor, self.across(depth_m)
        return math.pi * depth_m * (low**2 + low * high + high**2) / 12

    def plan(self, depth_m: float) -> Loops:
        """A circle."""
        return (oval(self.across(depth_m), self.across(depth_m)),)


@dataclass(frozen=True)
class TaperedBox(Shape):
    """Oblong with sloping walls: h (A1 + 4 Am + A2) / 6, Am at half the depth.

    Parameters
    ----------
    floor_length, floor_width : of the floor.
    top_length, top_width : ``height`` over the floor.

    Examples
    --------
    >>> round(1e6 * TaperedBox(0.380, 0.280, 0.400, 0.300, 0.050).volume(0.050), 1)
    5656.7
    """

    floor_length: float
    floor_width: float
    top_length: float
    top_width: float
    height: float

    def sizes(self, depth_m: float) -> tuple[float, float]:
        """Length and width at a depth, m."""
        share = depth_m / self.height
        return (
            self.floor_length + (self.top_length - self.floor_length) * share,
            self.floor_width + (self.top_width - self.floor_width) * share,
        )

    def area(self, depth_m: float) -> float:
        """Rectangle at that depth, m2."""
        length, width = self.sizes(depth_m)
        return length * width

    def volume(self, depth_m: float) -> float:
        """By the areas of floor, middle and surface, m3."""
        return depth_m * (self.area(0) + 4 * self.area(depth_m / 2) + self.area(depth_m)) / 6

    def plan(self, depth_m: float) -> Loops:
        """A rectangle."""
        return (oblong(*self.sizes(depth_m)),)

    def reach(self, depth_m: float) -> float:
        """L/2 + W/2 of the surface, m."""
        return sum(self.sizes(depth_m)) / 2


@dataclass(frozen=True)
class Ball(Shape):
    """A hollow ball, filled from below: pi h^2 (3R - h) / 3.

    Parameters
    ----------
    across : of the whole ball.

    Examples
    --------
    >>> round(1e6 * Ball(0.300).volume(0.040), 1)
    687.0
    """

    across: float

    def area(self, depth_m: float) -> float:
        """pi (2 R h - h^2), m2; nothing where the ball is full."""
        return max(0.0, math.pi * depth_m * (self.across - depth_m))

    def volume(self, depth_m: float) -> float:
        """Of the cap up to that depth, m3."""
        return math.pi * depth_m**2 * (1.5 * self.across - depth_m) / 3

    def plan(self, depth_m: float) -> Loops:
        """A circle: the widest of what is filled."""
        wide = self.across if depth_m > self.across / 2 else 2 * math.sqrt(self.area(depth_m) / math.pi)
        return (oval(wide, wide),)

    def reach(self, depth_m: float) -> float:
        """Half across the surface, m."""
        return math.sqrt(self.area(depth_m) / math.pi)

    @property
    def curved(self) -> bool:
        """A ball's wall is a curve."""
        return True

    def _spans(self, depth_m: float) -> list[tuple[float, float]]:
        half = math.sqrt(self.area(depth_m) / math.pi)
        return [(-half, half)]


@dataclass(frozen=True)
class Bowl(Shape):
    """Part of a hollow ball, by its rim: the ball has R = (a^2 + H^2) / (2 H), a half across the rim.

    Parameters
    ----------
    rim : across, ``height`` over the lowest place; ``height`` is at most half of it.

    Examples
    --------
    >>> round(1e6 * Bowl(0.2039608, 0.040).volume(0.040), 1)
    687.0
    """

    rim: float
    height: float

    def __post_init__(self) -> None:
        if self.height > self.rim / 2 * (1 + 1e-6):
            raise ValueError("deeper than half a ball")

    @property
    def ball(self) -> Ball:
        """The ball that it is part of."""
        return Ball(((self.rim / 2) ** 2 + self.height**2) / self.height)

    def area(self, depth_m: float) -> float:
        """As the ball's, m2."""
        return self.ball.area(depth_m)

    def volume(self, depth_m: float) -> float:
        """As the ball's, m3."""
        return self.ball.volume(depth_m)

    def plan(self, depth_m: float) -> Loops:
        """A circle."""
        wide = 2 * self.reach(depth_m)
        return (oval(wide, wide),)

    def reach(self, depth_m: float) -> float:
        """Half across the surface, m."""
        return self.ball.reach(depth_m)

    @property
    def curved(self) -> bool:
        """A bowl's wall is a curve."""
        return True

    def _spans(self, depth_m: float) -> list[tuple[float, float]]:
        return self.ball._spans(depth_m)


@dataclass(frozen=True)
class Trough(Shape):
    """A cylinder lying down, or a gutter: L [R^2 acos((R - h) / R) - (R - h) sqrt(2 R h - h^2)].

    Parameters
    ----------
    across : of the whole cylinder.
    length : along it.

    Examples
    --------
    Half full:

    >>> round(1e6 * Trough(0.100, 0.500).volume(0.050), 1)
    1963.5
    """

    across: float
    length: float

    def wide(self, depth_m: float) -> float:
        """Width of the surface, m."""
        return 2 * math.sqrt(max(0.0, depth_m * (self.across - depth_m)))

    def area(self, depth_m: float) -> float:
        """Length times width of the surface, m2."""
        return self.length * self.wide(depth_m)

    def volume(self, depth_m: float) -> float:
        """Of the part below that depth, m3."""
        radius = self.across / 2
        low = min(1.0, max(-1.0, (radius - depth_m) / radius))
        return self.length * (radius**2 * math.acos(low) - (radius - depth_m) * self.wide(depth_m) / 2)

    def plan(self, depth_m: float) -> Loops:
        """A rectangle: the widest of what is filled, across it and along it."""
        wide = self.across if depth_m > self.across / 2 else self.wide(depth_m)
        return (oblong(wide, self.length),)

    def reach(self, depth_m: float) -> float:
        """L/2 + W/2 of the surface, m."""
        return (self.length + self.wide(depth_m)) / 2

    @property
    def curved(self) -> bool:
        """Its floor is a curve."""
        return True

    def _spans(self, depth_m: float) -> list[tuple[float, float]]:
        half = self.wide(depth_m) / 2
        return [(-half, half)]
