"""The clock as bars: hours on a scale that shows minutes and weeks alike."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from calc.drawing import Drawing, Sketch
from calc.questions._when.rows import Row

_WIDE, _ROW, _BAR = 268.0, 30.0, 10.0
_MARKS = (
    (5, "5 min"), (30, "30 min"), (120, "2 h"), (480, "8 h"), (1440, "1 day"), (4320, "3 days"), (14400, "10 days"), (43200, "30 days"), (129600, "90 days"),
)
_TICKS = tuple((60.0 * minutes, text) for minutes, text in _MARKS)


def bars(rows: Sequence[Row], span: Callable[[Row], str]) -> Drawing:
    """One bar a step, from the pour on the left to the last of them; ``span`` tells a step's hours in words."""
    told = [moment for row in rows for moment in (row.start, row.end) if moment]
    first = next((i for i, (seconds, _) in reversed(list(enumerate(_TICKS))) if seconds <= min(told, default=1.0)), 0)
    last = next((i for i, (seconds, _) in enumerate(_TICKS) if seconds >= max(told, default=1.0)), len(_TICKS) - 1)
    ticks = _TICKS[first : max(last, first + 1) + 1]
    low, high = math.log(ticks[0][0]), math.log(ticks[-1][0])

    def place(seconds: float) -> float:
        return _WIDE * (min(max(math.log(max(seconds, 1.0)), low), high) - low) / (high - low)

    sketch = Sketch()
    floor = -_ROW * len(rows)
    for seconds, text in ticks:
        sketch.line([(place(seconds), 0.0), (place(seconds), floor)], "grid").text((place(seconds), floor - 13), text, "axis")
    for number, row in enumerate(rows):
        top = -_ROW * number - 16
        sketch.text((0.0, top + 4), f"{row.name}: {span(row)}", "edge", "start")
        if row.start is None:
            continue
        end = _WIDE if row.end is None else place(row.end)
        box = [(place(row.start), top), (max(end, place(row.start) + 3), top), (max(end, place(row.start) + 3), top - _BAR), (place(row.start), top - _BAR)]
        sketch.polygon(box, "band" if row.open_end else "resin")
    says = "From the pour: " + "; ".join(f"{row.name.lower()} {span(row)}" for row in rows) + "."
    return sketch.drawing("The clock, first mould", says)
