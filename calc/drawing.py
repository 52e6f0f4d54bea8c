"""Drawings that go with an answer: a shape to scale, or a curve with its axes.

A drawing is a list of marks in a box of its own; whoever shows it needs no arithmetic. Every drawing
has words that say the same, for those who cannot see it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Literal

Point = tuple[float, float]
#: What a mark stands for. The page gives each its look; ``limit`` and ``trace`` differ by dash as well as by colour.
Look = Literal["mould", "resin", "wood", "void", "metal", "level", "edge", "measure", "limit", "trace", "band", "axis", "grid", "spot"]
Anchor = Literal["start", "middle", "end"]

#: Width of the box that a drawing is fitted into, and the most height, in its own units; a text is about 12 of them high.
WIDTH = 320.0
MOST_HEIGHT = 300.0
_MARGIN = 26.0
_LETTER = 7.0  # about as wide as a letter of a measure
_CHART = (40.0, 24.0, 30.0, 12.0)  # left, top, bottom and right of a chart's field
_CHART_HEIGHT = 222.0


@dataclass(frozen=True)
class Mark:
    """One mark: ``kind`` is polygon, line, circle or text; ``points`` are in the box, y downwards."""

    kind: str
    points: tuple[Point, ...]
    look: Look
    text: str = ""
    anchor: Anchor = "middle"
    radius: float = 0.0


@dataclass(frozen=True)
class Drawing:
    """Marks in a box of ``width`` by ``height``. ``says`` tells in words what is to be seen."""

    title: str
    says: str
    width: float
    height: float
    marks: tuple[Mark, ...]


@dataclass
class Sketch:
    """Collects marks in the world's own lengths, x to the right and y upwards, and fits them into a box.

    Examples
    --------
    >>> tray = Sketch().polygon([(0, 0), (0.4, 0), (0.4, 0.1), (0, 0.1)], "mould").measure((0, 0), (0.4, 0), "400 mm")
    >>> tray.drawing("Tray", "A tray 400 mm long.").height
    119.0
    """

    _marks: list[Mark] = field(default_factory=list)

    def polygon(self, points: Iterable[Point], look: Look) -> Sketch:
        """A closed outline, filled."""
        return self._add(Mark("polygon", tuple(points), look))

    def line(self, points: Iterable[Point], look: Look) -> Sketch:
        """An open line through the points."""
        return self._add(Mark("line", tuple(points), look))

    def circle(self, centre: Point, radius: float, look: Look) -> Sketch:
        """A circle, filled; ``radius`` in the world's lengths."""
        return self._add(Mark("circle", (centre,), look, radius=radius))

    def text(self, at: Point, words: str, look: Look = "edge", anchor: Anchor = "middle") -> Sketch:
        """Words at a place; they do not count when the drawing is fitted."""
        return self._add(Mark("text", (at,), look, words, anchor))

    def measure(self, start: Point, end: Point, words: str) -> Sketch:
        """A measured length from one place to another, its words beside its middle."""
        return self._add(Mark("measure", (start, end), "measure", words))

    def drawing(self, title: str, says: str, most_height: float = MOST_HEIGHT) -> Drawing:
        """Fit everything into a box ``WIDTH`` wide, to scale, with a margin for words."""
        xs, ys = self._extent()
        left, right, low, high = min(xs), max(xs), min(ys), max(ys)
        across, up = max(right - left, 1e-9), max(high - low, 1e-9)
        beside = max([_MARGIN, *(_LETTER * len(mark.text) + 10 for mark in self._marks if mark.kind == "measure" and _upright(*mark.points))])
        scale = min((WIDTH - _MARGIN - beside) / across, (most_height - 2 * _MARGIN) / up)
        height = round(up * scale + 2 * _MARGIN)
        shift = (WIDTH + _MARGIN - beside - across * scale) / 2

        def place(point: Point) -> Point:
            return round(shift + (point[0] - left) * scale, 1), round(height - _MARGIN - (point[1] - low) * scale, 1)

        marks: list[Mark] = []
        for mark in self._marks:
            points = tuple(place(point) for point in mark.points)
            if mark.kind == "measure":
                marks += _measured(points[0], points[1], mark.text)
            else:
                marks.append(Mark(mark.kind, points, mark.look, mark.text, mark.anchor, round(mark.radius * scale, 1)))
        return Drawing(title, says, WIDTH, float(height), tuple(marks))

    def _add(self, mark: Mark) -> Sketch:
        self._marks.append(mark)
        return self

    def _extent(self) -> tuple[list[float], list[float]]:
        marks = [mark for mark in self._marks if mark.kind != "text"]
        xs = [x + d for mark in marks for x, _ in mark.points for d in (-mark.radius, mark.radius)]
        ys = [y + d for mark in marks for _, y in mark.points for d in (-mark.radius, mark.radius)]
        return xs, ys


def _measured(start: Point, end: Point, words: str) -> list[Mark]:
    """A dimension line with a tick at either end; the words stand above it, or to the right of an upright one."""
    (x1, y1), (x2, y2) = start, end
    length = max(math.hypot(x2 - x1, y2 - y1), 1e-9)
    nx, ny = 4 * (y2 - y1) / length, -4 * (x2 - x1) / length
    ticks = [Mark("line", ((x - nx, y - ny), (x + nx, y + ny)), "measure") for x, y in (start, end)]
    upright = _upright(start, end)
    at = ((x1 + x2) / 2 + 6, (y1 + y2) / 2 + 4) if upright else ((x1 + x2) / 2, (y1 + y2) / 2 - 5)
    return [Mark("line", (start, end), "measure"), *ticks, Mark("text", (at,), "measure", words, "start" if upright else "middle")]


def _upright(start: Point, end: Point) -> bool:
    return abs(end[1] - start[1]) > abs(end[0] - start[0])


@dataclass(frozen=True)
class Axis:
    """One axis of a chart: what it counts, from where to where, and the ticks with their texts."""

    label: str
    low: float
    high: float
    ticks: tuple[tuple[float, str], ...]

    @classmethod
    def of(cls, label: str, low: float, high: float, about: int = 5) -> Axis:
        """An axis with round ticks from ``low`` to ``high`` or a little beyond.

        Examples
        --------
        >>> [text for _, text in Axis.of("hours", 0, 46).ticks]
        ['0', '10', '20', '30', '40', '50']
        """
        raw = max(high - low, 1e-9) / about
        power = 10.0 ** math.floor(math.log10(raw))
        step = next(factor * power for factor in (1, 2, 5, 10) if factor * power >= raw * (1 - 1e-9))
        first = math.floor(low / step + 1e-9)
        last = max(math.ceil(high / step - 1e-9), first + 1)
        ticks = tuple((n * step, f"{n * step:.10g}") for n in range(first, last + 1))
        return cls(label, ticks[0][0], ticks[-1][0], ticks)


def chart(
    title: str,
    says: str,
    x: Axis,
    y: Axis,
    traces: Sequence[tuple[str, Look, Sequence[Point]]],
    levels: Sequence[tuple[str, float]] = (),
    bands: Sequence[Sequence[Point]] = (),
) -> Drawing:
    """A chart: each trace a name, a look and its points; each level a name and a height, drawn right across.

    Parameters
    ----------
    title, says : what it shows, and the same in words.
    x, y : the axes; points beyond them are held at the edge.
    traces, levels, bands : in the axes' own units; a band is a closed outline behind the traces.

    Returns
    -------
    Drawing
    """
    left, top, below, right = _CHART
    wide, tall = WIDTH - left - right, _CHART_HEIGHT - top - below

    def place(point: Point) -> Point:
        u = (min(max(point[0], x.low), x.high) - x.low) / (x.high - x.low)
        v = (min(max(point[1], y.low), y.high) - y.low) / (y.high - y.low)
        return round(left + u * wide, 1), round(top + (1 - v) * tall, 1)

    marks = [Mark("line", (place((x.low, at)), place((x.high, at))), "grid") for at, _ in y.ticks]
    marks += [Mark("polygon", tuple(place(point) for point in band), "band") for band in bands]
    marks.append(Mark("line", (place((x.low, y.high)), place((x.low, y.low)), place((x.high, y.low))), "axis"))
    for at, text in y.ticks:
        px, py = place((x.low, at))
        marks.append(Mark("text", ((px - 5, py + 4),), "axis", text, "end"))
    for at, text in x.ticks:
        px, py = place((at, y.low))
        marks.append(Mark("text", ((px, py + 14),), "axis", text))
    marks.append(Mark("text", ((WIDTH - right, _CHART_HEIGHT - 3),), "axis", x.label, "end"))
    marks.append(Mark("text", ((4, 12),), "axis", y.label, "start"))
    names: list[Mark] = []
    for name, height in levels:
        marks.append(Mark("line", (place((x.low, height)), place((x.high, height))), "limit"))
        px, py = place((x.high, height))
        names.append(Mark("text", ((px, py - 4),), "limit", name, "end"))
    for name, look, points in traces:
        placed = tuple(place(point) for point in points)
        marks.append(Mark("line", placed, look))
        if name and placed:
            top_most = min(placed, key=lambda point: point[1])
            names.append(_free(Mark("text", ((min(max(top_most[0], left + 24), WIDTH - right - 24), max(top_most[1] - 5, top)),), look, name), names))
    return Drawing(title, says, WIDTH, _CHART_HEIGHT, (*marks, *names))


def _free(name: Mark, others: Sequence[Mark]) -> Mark:
    """The name, moved down until it lies over no other."""
    (x, y), apart = name.points[0], 13.0
    for other in sorted(others, key=lambda mark: mark.points[0][1]):
        (there, down), reach = other.points[0], 3.6 * (len(name.text) + len(other.text))
        if abs(y - down) < apart and abs(x - there) < reach:
            y = down + apart
    return Mark("text", ((x, y),), name.look, name.text, name.anchor)
