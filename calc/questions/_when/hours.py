"""Hours after the pour, and the time of day they fall on."""

from __future__ import annotations

import math

from calc.quantity.kinds import System
from calc.quantity.writing import Rounding, round_to, trimmed
from calc.times import DAY, HOUR, told

_MORNING = 9 * HOUR
#: Longest time that is told with this step, and the step, s.
_STEPS = ((HOUR / 3, 60.0), (1.5 * HOUR, 300.0), (4 * HOUR, 900.0), (12 * HOUR, 1800.0), (3 * DAY, HOUR))


def rounded(seconds: float, rounding: Rounding) -> float:
    """A time to the step that it is told with: a minute, then 5 min at first, whole hours from the second day, half days after the third."""
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
    written = rounded(seconds, rounding)
    if written < 1.5 * HOUR:
        return f"{written / 60:.0f}", "min"
    if written > 3 * DAY:
        return trimmed(f"{written / DAY:.1f}"), "days"
    if written % HOUR in (0, HOUR / 2):
        return trimmed(f"{written / HOUR:.1f}"), "h"
    return f"{written // HOUR:.0f} h {written % HOUR / 60:.0f}", "min"


def after(seconds: float, rounding: Rounding) -> str:
    """``figure_and_unit`` as one text."""
    return " ".join(figure_and_unit(seconds, rounding))


def clock_time(poured: float, seconds: float, rounding: Rounding, system: System) -> str:
    """The time of day ``seconds`` after a pour at ``poured`` (s after midnight), with the day in words.

    A wait of more than three days ends in a morning: nobody looks at half past two.

    Examples
    --------
    >>> [clock_time(14.5 * 3600, hours * 3600, "up", "metric") for hours in (8, 28, 60, 156)]
    ['22:30 the same day', '18:30 the next day', '2:30 on the 3rd day after', 'the morning of the 7th day after']
    """
    moment = poured + rounded(seconds, rounding)
    days = math.floor(moment / DAY + 1e-9)
    if rounding == "up" and seconds > 3 * DAY:
        return f"the morning of the {ordinal(math.ceil((moment - _MORNING) / DAY))} day after"
    return f"{told(moment, system)} {day_words(days)}"


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
