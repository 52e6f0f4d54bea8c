"""The steps of one mould's clock."""

from __future__ import annotations

from dataclasses import dataclass

from calc.questions._when.casting import Casting
from calc.questions._when.hours import rounded


@dataclass(frozen=True)
class Row:
    """One step of the clock: from and until when, s after the pour; None for what is open or not reached."""

    id: str
    name: str
    start: float | None
    end: float | None
    open_end: bool = True


def rows(casting: Casting) -> tuple[Row, ...]:
    """The steps of one mould, in order."""
    swirl_from, swirl_to = casting.swirl or (None, None)
    window = has_window(casting)
    return (
        Row("pour", "Pour, level, top up", 0.0, casting.pour_by, False),
        Row("swirl", "Swirl", swirl_from, swirl_to, False),
        Row("layer", "Next layer" if window else "Next layer, scuffed", casting.layer_from, casting.layer_to if window else None, not window),
        Row("dry", "Dry to the touch", casting.dry, None),
        Row("leave", "Leave the mould", casting.leave, None),
        Row("rough", "Cut or turn", casting.rough, None),
        Row("cured", "Sand and polish", casting.cured, None),
        Row("use", "Use", casting.cured, None),
    )


def has_window(casting: Casting) -> bool:
    """Whether there are hours at which a layer both may go on and bonds by itself."""
    start, end = casting.layer_from, casting.layer_to
    return start is not None and end is not None and rounded(start, "up") < rounded(end, "down")
