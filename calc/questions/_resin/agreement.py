"""What is said where the sheet's pot life and its deepest layer are not of one resin."""

from __future__ import annotations

from calc.casting.cure.known import Agreement, Known

_TAKEN: dict[Agreement, str] = {
    "deep": "So short a pot life runs away at the sheet's depth. The pot life was taken: it gives the lower depth.",
    "shallow": "So long a pot life would bear more than the sheet's depth. The depth was taken: it is the lower.",
}


def disagreement(agreement: Agreement) -> str:
    """Which of the two was taken, why, and what settles it; empty where they fit."""
    taken = _TAKEN.get(agreement)
    if taken is None:
        return ""
    return f"Pot life and deepest layer do not fit one resin. {taken} Read what mass and warmth the pot life is for; a test cup settles it."


def judged_by(known: Known) -> str:
    """By what the resin is judged; where the two do not fit, that the sheet's other figure was set aside or is a ceiling only."""
    if known.agreement == "deep":
        return f"{known.level.name}, as the sheet's depth does not fit it"
    if known.agreement == "shallow":
        return "the sheet's depth, as its pot life does not fit it"
    return known.level.name
