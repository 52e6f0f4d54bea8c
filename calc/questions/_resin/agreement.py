"""What is said where the sheet's pot life and its deepest layer are not of one resin, or only one of them is known."""

from __future__ import annotations

from calc.casting.cure.known import Known
from calc.questions import Given
from calc.questions._how_deep.words import depth
from calc.questions._when.hours import after


def disagreement(given: Given, known: Known) -> str:
    """Which of the two was taken, why, and what settles it; empty where they fit."""
    if known.agreement == "deep" and known.fitting_m is not None:
        taken = f"So short a pot life goes with {depth(given, known.fitting_m)} on a sheet, no deeper: that was taken."
        settles = "Ask the supplier what mass and warmth each is for, or make a test cup."
    elif known.agreement == "shallow":
        taken = "So long a pot life would bear more than the sheet's depth. The depth was taken: it is the lower."
        settles = "Read what mass and warmth the pot life is for; a test cup settles it."
    else:
        return ""
    return f"Pot life and deepest layer do not fit one resin. {taken} {settles}"


def no_pot_life(known: Known) -> str:
    """From which pot life on the depth's own answer would be too much; empty where a pot life is known or none would lower it."""
    if known.lowered_by_s is None:
        return ""
    return f"Pot life not given: one of less than {after(known.lowered_by_s, 'up')} would lower this. Enter it if the sheet has it."


def judged_by(known: Known) -> str:
    """By what the resin is judged; where the two do not fit, what of the sheet was taken."""
    if known.agreement == "deep":
        return "its pot life and the deepest layer that goes with it"
    if known.agreement == "shallow":
        return "the sheet's depth, as its pot life does not fit it"
    return known.level.name
