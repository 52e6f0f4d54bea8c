"""What the mount hands on: to its top speed, and to what is held against its limits before the lathe runs. A mount that does not hold says so there."""

from __future__ import annotations

from dataclasses import replace

from calc.answers import Carry
from calc.questions import Given
from calc.questions._how_fast.handed import LONG, along
from calc.questions._how_fast.rounded import told_rpm
from calc.questions._mount_found import NO, TAILSTOCK
from calc.questions._will_the_mount_hold.words import ACROSS, exact, least_size, length
from calc.turning.held import Held, least_across


def handed(given: Given, held: Held, found: str, ceiling_rpm: float | None, own_rpm: float | None, *, by_mount: bool) -> tuple[Carry, ...]:
    """Both carries.

    Parameters
    ----------
    given : the question's inputs.
    held : the piece on its mount.
    found : one word of :mod:`calc.questions._mount_found`.
    ceiling_rpm : none for a mount that does not hold.
    own_rpm : the speed that was asked for, if one was.
    by_mount : the mount sets the ceiling, not the rim.
    """
    kind = given.choice("hold")
    taken = {"operation": held.operation, "diameter": str(length(given, held.diameter_m, "up")), "hold": kind, "far_end": held.far_end, "found": found}
    of = {"found_hold": kind, "found_across": given.as_typed(ACROSS[kind])} | ({"found_for": taken["diameter"]} if found != NO else {})
    taken |= of | {"balance": given.choice("balance")}
    if kind not in LONG or given.typed("thickness"):  # a length that was never said is asked for there
        taken |= along(kind, str(length(given, given.si("thickness"), "up")))
    if given.choice("balance") == "known":
        taken["eccentricity"] = str(exact(given, held.eccentricity_m))
    if given.typed("mass"):
        taken["mass"] = given.as_typed("mass")
    to_start = {"hold": kind, "tailstock": "no" if held.far_end == "none" else "yes", "found": found} | of
    to_start |= {"sweeps": str(length(given, held.diameter_m, "up")), "mount": given.as_typed(ACROSS[kind])}
    to_start |= {"overhang": str(length(given, held.overhang_m, "up"))}
    up = replace(held, far_end="live") if found == TAILSTOCK and held.far_end == "none" else held  # its least size is the one it needs once the tailstock is up
    to_start |= _least(given, up, ceiling_rpm if up is held else up.ceiling_rpm, own_rpm)
    if ceiling_rpm is not None and by_mount:
        taken["found_rpm"] = to_start["ceiling"] = f"{told_rpm(ceiling_rpm)} rpm"
        to_start["ceiling_for"] = taken["diameter"]
    return (Carry("how-fast", taken), Carry("before-the-lathe", to_start))


def _least(given: Given, held: Held, ceiling_rpm: float | None, own_rpm: float | None) -> dict[str, str]:
    """The least size as the answer shows it; a mount that holds up to its own ceiling is its own least."""
    least = least_across(held, own_rpm)
    shown = None if least is None else least_size(given, least, held.mount.across_m)
    if ceiling_rpm is not None and (shown is None or shown.si > held.mount.across_m):
        return {"least": given.as_typed(ACROSS[given.choice("hold")])}
    return {} if shown is None else {"least": str(shown)}
