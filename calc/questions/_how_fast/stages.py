"""What comes after this stage, and the top speed at each smaller size on the way down."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from calc.answers import Grid, Line
from calc.quantity.units import to_si
from calc.quantity.writing import Shown, round_to, rpm_text
from calc.questions import Given
from calc.sources import value
from calc.turning.caps import Operation
from calc.turning.case import Case, turned_down
from calc.words import inside

NAMES: dict[Operation, str] = {
    "rough": "Roughing",
    "finish": "Finishing cut",
    "sand": "Sanding by hand",
    "power": "Power sanding",
    "paste": "Abrasive paste",
}
_SHORT: dict[Operation, str] = {"rough": "Rough", "finish": "Finish", "sand": "Sand"}  # over a column on a phone
#: A stage and what follows it; what is not turned down has no sizes to come.
AFTER: dict[Operation, tuple[Operation, ...]] = {
    "rough": ("finish", "sand"),
    "finish": ("sand",),
    "sand": ("paste",),
    "power": ("sand",),
    "paste": (),
}
SHRINKING: tuple[Operation, ...] = ("rough", "finish")
MOST_SIZES = 5  # rows, with the size it has now: more are not read
SMALLEST_SHARE = value("turning", "smallest share")  # of the size it has now
_STEPS = {"mm": ((200, 50), (100, 25), (30, 10), (0, 5)), "in": ((8, 2), (4, 1), (1, 1 / 2), (0, 1 / 4))}  # from a size on, the step down
_LEAST_STEP = 0.4  # of a step: closer to the size it has now is no new size
NONE = "Not yet"


def sizes(given: Given, diameter_m: float) -> Iterator[float]:
    """Sizes on the way down, on marks a rule shows, largest first.

    Parameters
    ----------
    given : for the unit system.
    diameter_m : the size it has now, m; it is not among them.

    Yields
    ------
    float
        m.
    """
    unit = given.pick("mm", "in")
    one = to_si(1, "length", unit)
    size, last = diameter_m, diameter_m
    for _ in range(MOST_SIZES - 1):
        step = one * next(step for start, step in _STEPS[unit] if last >= start * one)
        size = round_to(last - _LEAST_STEP * step, step, "down")
        if size < SMALLEST_SHARE * diameter_m:
            return
        yield size
        last = size


def following(case: Case) -> Case | None:
    """The case at its next stage, at the size it has now; none for the last one."""
    after = AFTER[case.operation]
    return replace(case, operation=after[0]) if after else None


def setting_text(case: Case) -> str:
    """The setting in digits, or that there is none yet."""
    setting = case.top.setting_rpm
    return NONE if setting is None else rpm_text(setting)


def later(case: Case) -> list[str]:
    """The stages after the next one, each with its top speed at the size it has now; paste is no stage of turning."""
    lines = []
    after = following(case)
    while after is not None and (after := following(after)) is not None and after.operation != "paste":
        text = setting_text(after)
        lines.append(f"Then: {NAMES[after.operation].lower()}, {inside(text) if text == NONE else f'{text} rpm'}")
    return lines


def steps_text(case: Case) -> str:
    """The steps of the belt up to the top speed, '500, 900, 1400, 2200'; empty on a dial."""
    setting = case.top.setting_rpm
    return "" if setting is None else ", ".join(f"{step:g}" for step in case.speeds.up_to(setting))


def next_line(case: Case) -> Line | None:
    """The next stage, its top speed and what to mind on the way to it."""
    after = following(case)
    if after is None:
        return None
    text = setting_text(after)
    return Line(f"Next: {NAMES[after.operation].lower()}", text, "" if text == NONE else "rpm", _mind(case, after))


def size_rows(given: Given, case: Case) -> list[tuple[Shown, tuple[str, ...]]]:
    """Each size from now on, and the settings of this stage and those after it; empty when nothing is turned down."""
    if case.operation not in SHRINKING:
        return []
    stages = (case.operation, *AFTER[case.operation])
    rows = []
    for size in (case.diameter_m, *sizes(given, case.diameter_m)):
        settings = tuple(setting_text(turned_down(replace(case, operation=stage), size)) for stage in stages)
        rows.append((given.write(size, "length"), settings))
    return rows if any(text != NONE for _, row in rows for text in row) else []


def grid(given: Given, case: Case) -> tuple[Grid, ...]:
    """The sizes as a table, where there are any."""
    rows = size_rows(given, case)
    if not rows:
        return ()
    head = ("Across", *(_SHORT[stage] for stage in (case.operation, *AFTER[case.operation])))
    title = "As it gets smaller: top speed in rpm, if it runs still"
    return (Grid(title, head, tuple((str(size), *texts) for size, texts in rows)),)


def _mind(case: Case, after: Case) -> str:
    setting = after.top.setting_rpm
    if setting is None:
        return "Ask again before it."
    if case.top.setting_rpm is not None and setting < case.top.setting_rpm:
        if after.top.rules.id == "surface":
            return "Slow down to it first: a clean surface wants it still. Better balanced, it may go faster."
        return "Slow down to it first."
    return "Once it is round and runs still." if case.operation == "rough" else "If it runs still."
