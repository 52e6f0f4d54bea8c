"""What How fast? hands on: the ceiling and the mount, to be held against before the lathe runs."""

from __future__ import annotations

from calc.answers import Carry
from calc.quantity import HIGHEST_SHOWN_RPM, rpm_text
from calc.questions import Given
from calc.questions._how_fast.mount import of_mount
from calc.turning import speed
from calc.turning.case import Case

#: The limits that a heavy side sets.
_HEAVY_SIDE = ("vibration", "push")


def handed(given: Given, case: Case, top: speed.TopSpeed) -> tuple[Carry, ...]:
    """The ceiling for what is done, what the heavy side allows, and of mount and machine what was said.

    Parameters
    ----------
    given, case, top : of an answer that is no refusal.
    """
    if top.refused:
        return ()
    told = {"sand_ceiling" if case.operation in speed.SANDING else "ceiling": f"{rpm_text(top.speed_rpm)} rpm"}
    told["sweeps"] = str(given.write(case.diameter_m, "length", "up"))
    heavy = [limit.speed_rpm for limit in top.limits if limit.id in _HEAVY_SIDE]
    if heavy and min(heavy) <= HIGHEST_SHOWN_RPM:
        told["balanced"] = f"{rpm_text(min(heavy))} rpm"
    if given.typed("hold"):
        told["hold"] = case.hold
        if case.hold != "centres" and given.typed("far_end"):
            told["tailstock"] = "no" if case.far_end == "none" else "yes"
        if case.hold == "chuck" and given.typed("marked"):
            told["marked"] = given.as_typed("marked")
    told |= of_mount(given)
    if given.typed("highest"):
        told["highest"] = given.as_typed("highest")
    return (Carry("before-the-lathe", told),)
