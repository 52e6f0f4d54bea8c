"""Degrees, margins and shares as this question writes them."""

from __future__ import annotations

from calc.casting import air
from calc.quantity.kinds import System
from calc.quantity.writing import Rounding, Shown, Style, trimmed, write
from calc.questions import Given


def degrees(given: Given, temperature_k: float, rounding: Rounding = "nearest") -> Shown:
    """A temperature, to a whole degree."""
    return given.write(temperature_k, "temperature", rounding)


def apart(system: System, difference_k: float, rounding: Rounding = "nearest") -> str:
    """A difference of temperature, to a whole degree; a margin that is wanted keeps its tenths."""
    return str(write(difference_k, "temperature difference", system, rounding))


def margin_wanted(system: System) -> str:
    """How far over the dew point a surface should be."""
    unit = "°C" if system == "metric" else "°F"
    shown = write(air.limit("dew margin"), ("temperature difference", Style(unit, figures=2)), system)
    return f"{trimmed(shown.text)} {shown.unit}"


def over(given: Given, margin_k: float, what: str = "the dew point") -> str:
    """'4 °C above the dew point', or below it."""
    if margin_k < 0:
        return f"{apart(given.system, -margin_k, 'up')} below {what}"
    return f"{apart(given.system, margin_k, 'down')} above {what}"


def per_cent(given: Given, share: float, rounding: Rounding = "nearest") -> str:
    """A share, to a whole percent."""
    return str(given.write(share, ("share", Style("%", step=1)), rounding))
