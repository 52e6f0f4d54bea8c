"""Lathes to choose from, each with what it stands for."""

from __future__ import annotations

from calc.fields import Option
from calc.quantity.units import from_si
from calc.quantity.writing import round_to
from calc.turning import speed

_LABELS = {"bench": "Bench lathe", "midi": "Midi lathe", "floor": "Floor lathe", "heavy": "Heavy floor lathe"}


def lathe_options() -> tuple[Option, ...]:
    """From the table of lathes, so that a choice says what it assumes."""
    options = []
    for name, kind in speed.lathe_kinds().items():
        pounds = round_to(from_si(kind.mass_kg, "mass", "lb"), 10)
        hint = f"about {kind.mass_kg:.0f} kg ({pounds:.0f} lb), {kind.lowest_rpm:.0f} to {kind.highest_rpm:.0f} rpm"
        options.append(Option(name, _LABELS[name], hint))
    return tuple(options)
