"""What a speed was found for, and what that says of the piece as it is now: a ceiling, the speed its heavy side allows, the ceiling for sanding.

A speed found for one piece is no speed of a wider one: past it the wider one is too fast as well, up to it nobody knows. Of a much
smaller piece, another one, it says nothing.
"""

from __future__ import annotations

from calc.fields import Field, measure
from calc.questions import Given
from calc.safety.findings import Of
from calc.sources import value

#: Wider than it was found for, by more than a rounding.
WIDER = 1.005
#: As small a share as the sizes are worked out to on the way down: what is smaller still is another piece.
_SAME_PIECE = value("turning", "smallest share")
#: Each speed that is found for a size, and the field that tells which.
SPEEDS = {"ceiling": "ceiling_for", "balanced": "balanced_for", "sand_ceiling": "sand_for"}


def found_for(name: str, label: str) -> Field:
    """The field that tells for what a speed was found; an answer hands it on with the speed."""
    return measure(name, label, "mm", 5, 1500, hint="Comes with 'Take it on'.", required=False, fold=True)


def of(given: Given, name: str, sweeps_m: float | None) -> Of:
    """Whether a speed found for the size in the field ``name`` counts for a piece that sweeps so much; it does where either is not known."""
    found_m = given.maybe(name)
    if found_m is None or sweeps_m is None:
        return Of.THIS
    if sweeps_m > found_m * WIDER:
        return Of.SMALLER
    return Of.THIS if sweeps_m >= found_m * _SAME_PIECE / WIDER else Of.ANOTHER


def counts(given: Given, name: str) -> bool:
    """Whether a figure of 'Before the lathe runs' counts for the piece as it is now: a speed found for another size does not."""
    return name not in SPEEDS or of(given, SPEEDS[name], given.maybe("sweeps")) is Of.THIS
