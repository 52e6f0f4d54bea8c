"""The answer of 'Before a deep pour': the gates in words, the time that may be used, the tray."""

from __future__ import annotations

from calc.answers import Answer, Caution, Line, Working, figure
from calc.quantity.writing import Shown
from calc.questions import Given
from calc.questions._before_a_pour.findings import findings, over_sheet, shown, time_to_use, tray_depth
from calc.questions._gated import gated, tell
from calc.safety import gates, wording
from calc.safety.findings import State


def work(given: Given) -> Answer:
    """Hold the plan against its gates.

    Parameters
    ----------
    given : this question's inputs; a missing one leaves its gate not checked.

    Returns
    -------
    Answer
        'STOP' with one next action, or 'No stop found - your call'; never more than that.
    """
    words = wording.gate_words("G1")
    cautions = [Caution("narrow-mould", "caution", words["note"])] if over_sheet(given) else []
    found = findings(given)
    if found["G1"].state is State.CLEAR and given.maybe("own_depth") is None:  # a deeper layer is not checked, and says so itself
        cautions.append(Caution("fresh-resin", "caution", words["fresh"]))
    return gated(
        tell(shown(given, found), given.system),
        "Before A meets B",
        "Put in what you know of the plan and of the data sheet.",
        "Take the checklist to the bench: C1, then C2, then C3.",
        lines=_lines(given),
        cautions=tuple(cautions),
        working=_working(given),
        values={"may_use": figure(_may_use(given), "time"), "tray_depth": figure(_tray_shown(given), "length", tray_depth(given))},
    )


def _may_use(given: Given) -> Shown | None:
    usable = time_to_use(given)
    return None if usable is None else given.write(usable, "minutes", "down")


def _tray_shown(given: Given) -> Shown | None:
    """As the gate tells it: one depth is not 7/16 in here and 0.386 in there."""
    depth = tray_depth(given)
    if depth is None:
        return None
    number, unit = wording.measured(gates.pour.tray(depth, given.maybe("sheet_depth")), given.system).rsplit(" ", 1)
    return Shown(number, unit, depth)


def _lines(given: Given) -> tuple[Line, ...]:
    lines = []
    may_use, in_tray = _may_use(given), _tray_shown(given)
    if may_use:
        lines.append(Line.of("Time to mix, degas and pour", may_use, "a ceiling; the rest is for what goes wrong"))
    if in_tray:
        lines.append(Line.of("Depth in the waste tray", in_tray, "what may go into it, spread out"))
    load = given.maybe("leftovers") or given.maybe("mass")
    if load is not None:
        depth = min(gates.pour.TRAY_DEPTH_M, given.maybe("sheet_depth") or gates.pour.TRAY_DEPTH_M)
        side = given.write((load / (given.si("density") * depth)) ** 0.5, "length", "up")
        lines.append(Line.of("Tray that takes it, square", side, "each way inside; or several, apart"))
    return tuple(lines)


def _working(given: Given) -> tuple[Working, ...]:
    steps = []
    may_use, in_tray = _may_use(given), _tray_shown(given)
    if may_use:
        share, sheet = given.write(given.si("share"), "share"), given.write(given.si("working"), "minutes", "down")
        bucket = "" if given.maybe("mass") is None else f"; a bucket of {given.write(given.si('mass'), 'mass')}"
        steps.append(Working("Time that may be used", "share × working time, or the bucket's if less", f"{share} × {sheet}{bucket}", str(may_use)))
    if in_tray:
        load = given.write(given.maybe("leftovers") or given.si("mass"), "mass")
        length, width = (given.write(given.si(name), "length") for name in ("tray_length", "tray_width"))
        density = given.write(given.si("density"), "density")
        steps.append(
            Working("Depth in the tray", "mass / (density × length × width)", f"{load} / ({density} × {length} × {width})", str(in_tray))
        )
    return tuple(steps)
