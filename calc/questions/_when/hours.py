"""Hours after the pour, and the time of day they fall on."""

from __future__ import annotations

import math
import re

from calc.errors import InputError
from calc.quantity import Rounding, round_to, trimmed

HOUR, DAY = 3600.0, 86400.0
_MORNING = 9 * HOUR
_TIME = re.compile(r"(?P<hour>\d{1,2})(?:[:.h ]?(?P<minute>\d{2}))?\s*(?P<half>[ap])?\.?m?\.?", re.IGNORECASE)
#: Longest time that is told with this step, and the step, s.
_STEPS = ((1.5 * HOUR, 300.0), (4 * HOUR, 900.0), (12 * HOUR, 1800.0), (3 * DAY, HOUR))


def time_of_day(name: str, text: str) -> float:
    """A time of day as a maker writes it, in seconds after midnight.

    Raises
    ------
    InputError
        ``clock``.

    Examples
    --------
    >>> [time_of_day("poured", text) / 3600 for text in ("14:30", "2:30 pm", "1430", "7", "12 am")]
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
    return (hour * HOUR + minute * 60) % DAY


def rounded(seconds: float, rounding: Rounding) -> float:
    """A time to the step that it is told with: 5 min at first, whole hours from the second day, half days after the third."""
    step = next((step for most, step in _STEPS if seconds <= most), DAY / 2)
    return round_to(seconds, step, rounding)


def figure_and_unit(seconds: float, rounding: Rounding) -> tuple[str, str]:
    """A time as a figure and its unit: minutes, hours, or days.

    Examples
    --------
    >>> figure_and_unit(3100, "down"), figure_and_unit(4.2 * 3600, "up"), figure_and_unit(101 * 3600, "up")
    (('50', 'min'), ('4.5', 'h'), ('4.5', 'days'))
    >>> figure_and_unit(2.7 * 3600, "up")
    ('2 h 45', 'min')
    """
    told = rounded(seconds, rounding)
    if told < 1.5 * HOUR:
        return f"{told / 60:.0f}", "min"
    if told > 3 * DAY:
        return trimmed(f"{told / DAY:.1f}"), "days"
    if told % HOUR in (0, HOUR / 2):
        return trimmed(f"{told / HOUR:.1f}"), "h"
    return f"{told // HOUR:.0f} h {told % HOUR / 60:.0f}", "min"


def after(seconds: float, rounding: Rounding) -> str:
    """``figure_and_unit`` as one text."""
    return " ".join(figure_and_unit(seconds, rounding))


def clock_time(poured: float, seconds: float, rounding: Rounding) -> str:
    """The time of day ``seconds`` after a pour at ``poured`` (s after midnight), with the day in words.

    A wait of more than three days ends in a morning: nobody looks at half past two.

    Examples
    --------
    >>> [clock_time(14.5 * 3600, hours * 3600, "up") for hours in (8, 28, 60, 156)]
    ['22:30 the same day', '18:30 the next day', '2:30 on the 3rd day after', 'the morning of the 7th day after']
    """
    moment = poured + rounded(seconds, rounding)
    days = math.floor(moment / DAY + 1e-9)
    if rounding == "up" and seconds > 3 * DAY:
        return f"the morning of the {ordinal(math.ceil((moment - _MORNING) / DAY))} day after"
    minutes = round((moment - days * DAY) / 60)
    return f"{minutes // 60}:{minutes % 60:02d} {day_words(days)}"


def day_words(days: int) -> str:
    """How many days after the pour, in words.

    >>> day_words(0), day_words(1), day_words(2), day_words(12)
    ('the same day', 'the next day', 'on the 2nd day after', 'on the 12th day after')
    """
    return ("the same day", "the next day")[days] if days < 2 else f"on the {ordinal(days)} day after"


def ordinal(number: int) -> str:
    """A number as a place in a row.

    >>> [ordinal(number) for number in (2, 3, 7, 11, 21)]
    ['2nd', '3rd', '7th', '11th', '21st']
    """
    ending = "th" if 10 <= number % 100 <= 20 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"
