"""Times of day: read as makers write them, told as they read them, and the field that asks for one."""

from __future__ import annotations

import re
from dataclasses import dataclass

from calc.errors import InputError
from calc.fields import Query, Text, Typed, Value
from calc.quantity.kinds import System

HOUR, DAY = 3600.0, 86400.0
_TIME = re.compile(r"(?P<hour>\d{1,2})(?:[:.h ]?(?P<minute>\d{2}))?\s*(?P<half>[ap])?\.?m?\.?", re.IGNORECASE)


def time_of_day(name: str, text: str, system: System) -> float:
    """A time of day as a maker writes it, in seconds after midnight.

    Where clocks are told with am and pm, an hour that may be either is asked about.

    Raises
    ------
    InputError
        ``clock``, ``which-half``.

    Examples
    --------
    >>> [time_of_day("poured", text, "metric") / 3600 for text in ("14:30", "2:30 pm", "1430", "7", "12 am")]
    [14.5, 14.5, 14.5, 7.0, 0.0]
    """
    match = _TIME.fullmatch(text.strip())
    if match is None:
        raise InputError(name, "clock")
    hour, minute, half = int(match["hour"]), int(match["minute"] or 0), (match["half"] or "").lower()
    if minute > 59 or hour > (12 if half else 24) or (half and hour == 0):
        raise InputError(name, "clock")
    if half:
        hour = hour % 12 + (12 if half == "p" else 0)
    elif system == "imperial" and 0 < hour <= 12 and not match["hour"].startswith("0"):
        morning, evening = (f"{hour}:{minute:02d} {ending}" for ending in ("am", "pm"))
        raise InputError(name, "which-half", ((morning, morning), (evening, evening)), morning=morning, evening=evening)
    return (hour * HOUR + minute * 60) % DAY


def told(seconds: float, system: System) -> str:
    """A time of day, to the minute.

    Parameters
    ----------
    seconds : after midnight; a whole day more or less makes no difference.
    system : 24 hours with metric units, am and pm with imperial.

    Examples
    --------
    >>> told(14.5 * 3600, "metric"), told(14.5 * 3600, "imperial"), told(0, "imperial"), told(12 * 3600, "imperial")
    ('14:30', '2:30 pm', '12:00 am', '12:00 pm')
    """
    hour, minute = divmod(round(seconds / 60) % 1440, 60)
    if system == "metric":
        return f"{hour}:{minute:02d}"
    return f"{hour % 12 or 12}:{minute:02d} {'am' if hour < 12 else 'pm'}"


@dataclass(frozen=True, kw_only=True)
class Clock(Text):
    """A time of day. The value is its text with 24 hours, so that it reads the same under either system."""

    most: int = 12

    @property
    def type(self) -> str:
        return "text"

    def would_do(self, system: System) -> str:
        return told(14.5 * HOUR, system)

    def parse(self, typed: Typed) -> tuple[Value, Query | None]:
        return told(time_of_day(self.name, typed.text, typed.units), "metric"), None

    def convert(self, typed: Typed, system: System) -> str:
        if system == typed.units:
            return typed.text
        try:
            return told(time_of_day(self.name, typed.text, typed.units), system)
        except InputError:
            return typed.text
