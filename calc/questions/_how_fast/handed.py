"""What How fast? hands on: ceiling and mount, to be held against before the lathe runs; the ceiling for sanding, to the grits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from calc.answers import Carry
from calc.quantity.writing import HIGHEST_SHOWN_RPM, rpm_text
from calc.questions import Given
from calc.questions._how_fast.mount import of_mount
from calc.questions._how_fast.rounded import told_rpm
from calc.turning import speed
from calc.turning.case import Case

#: Held so, length against width decides: it is asked for. On a block or a plate it is a disc, and its thickness has a default.
LONG = ("centres", "chuck")
#: The limits that a heavy side sets.
_HEAVY_SIDE = ("vibration", "push")


def along(hold: str, size: str) -> dict[str, str]:
    """How long or thick a piece is along the lathe, for How fast? to take with the mount that is handed on.

    >>> along("centres", "400 mm"), along("glue", "50 mm")
    ({'length': '400 mm'}, {'thickness': '50 mm'})
    """
    return {"length" if hold in LONG else "thickness": size}


def handed(given: Given, case: Case, top: speed.TopSpeed) -> tuple[Carry, ...]:
    """The top speed as it is shown, what the heavy side allows, and of mount and machine what was said; to the grits what sanding may run at.

    Parameters
    ----------
    given, case, top : of an answer that is no refusal.
    """
    if top.setting_rpm is None:
        return ()
    ceiling, of_ceiling = ("sand_ceiling", "sand_for") if case.operation in speed.SANDING else ("ceiling", "ceiling_for")
    sweeps = str(given.write(case.diameter_m, "length", "up"))
    told = {ceiling: f"{rpm_text(top.setting_rpm)} rpm", of_ceiling: sweeps, "sweeps": sweeps}
    heavy = [limit.speed_rpm for limit in top.limits if limit.id in _HEAVY_SIDE]
    if heavy and 1 <= min(heavy) <= HIGHEST_SHOWN_RPM:
        told |= {"balanced": f"{told_rpm(min(heavy))} rpm", "balanced_for": sweeps}
    if given.typed("hold"):
        told["hold"] = case.hold
        if case.hold != "centres" and given.typed("far_end"):
            told["tailstock"] = "no" if case.far_end == "none" else "yes"
        if case.hold == "chuck" and given.typed("marked"):
            told["marked"] = given.as_typed("marked")
    told |= of_mount(given)
    told |= {name: given.as_typed(name) for name in ("lowest", "highest") if given.typed(name)}
    if case.speeds.steps_rpm:
        told["lowest"] = f"{min(case.speeds.steps_rpm):g} rpm"
    return (Carry("before-the-lathe", told), *_to_grits(given, case))


def _to_grits(given: Given, case: Case) -> Iterator[Carry]:
    """The same piece when it is sanded: never faster there than here."""
    if case.operation not in ("finish", "sand"):
        return
    setting = replace(case, operation="sand").top.setting_rpm
    if setting is not None:
        piece = {"diameter": str(given.write(case.diameter_m, "length", "up")), "condition": case.condition, "hold": case.hold}
        yield Carry("which-grit-next", piece | {"piece": f"{rpm_text(setting)} rpm", "piece_for": piece["diameter"]})
