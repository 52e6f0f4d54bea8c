"""How a float in SI is written for a maker: unit, step or figures, and the side that it is rounded to."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from calc.quantity.kinds import System
from calc.quantity.units import from_si, to_si

Rounding = Literal["nearest", "down", "up"]
HIGHEST_SHOWN_RPM = 9999.0  # no hand lathe turns faster, and four digits are read at a glance


@dataclass(frozen=True)
class Style:
    """How a quantity is written: its unit, and its step or its significant figures.

    ``step`` is in the unit shown; with ``fraction`` it is one over a power of two and
    the number is written as a mixed number. ``figures`` counts significant figures.
    """

    unit: str
    step: float = 0.0
    figures: int = 0
    fraction: bool = False


#: style name -> kind, and how each system writes it.
STYLES: Mapping[str, tuple[str, Style, Style]] = {
    "length": ("length", Style("mm", step=1), Style("in", step=1 / 16, fraction=True)),
    "small mass": ("mass", Style("g", figures=2), Style("oz", step=0.5)),
    "mass": ("mass", Style("kg", figures=3), Style("lb", figures=3)),
    "volume": ("volume", Style("mL", figures=3), Style("US fl oz", figures=3)),
    "large volume": ("volume", Style("L", figures=3), Style("US qt", figures=3)),
    "temperature": ("temperature", Style("°C", step=1), Style("°F", step=1)),
    "temperature difference": ("temperature difference", Style("°C", step=1), Style("°F", step=1)),
    "pressure": ("pressure", Style("bar", step=0.1), Style("psi", step=1)),
    "vacuum": ("pressure", Style("kPa", step=1), Style("inHg", step=0.1)),
    "density": ("density", Style("g/mL", step=0.01), Style("g/mL", step=0.01)),
    "viscosity": ("viscosity", Style("mPa·s", figures=2), Style("cP", figures=2)),
    "heat": ("heat", Style("J/g", step=1), Style("J/g", step=1)),
    "minutes": ("time", Style("min", step=1), Style("min", step=1)),
    "hours": ("time", Style("h", figures=2), Style("h", figures=2)),
    "speed": ("rotational speed", Style("rpm", step=1), Style("rpm", step=1)),
    "vibration": ("vibration", Style("mm/s", figures=2), Style("in/s", figures=2)),
    "share": ("share", Style("%", figures=2), Style("%", figures=2)),
    "count": ("count", Style("", step=1), Style("", step=1)),
}


@dataclass(frozen=True)
class Shown:
    """A quantity as a maker reads it, and the SI float behind it (after rounding)."""

    text: str
    unit: str
    si: float

    def __str__(self) -> str:
        return f"{self.text} {self.unit}".strip()


_ROUND: Mapping[Rounding, Callable[[float], int]] = {
    "nearest": lambda steps: math.floor(steps + 0.5),
    "down": math.floor,
    "up": math.ceil,
}
#: A value this close to a step counts as on it: 360.0000000001 rounds up to 360, not 361.
_ON_STEP = 1e-9


def round_to(value: float, step: float, rounding: Rounding = "nearest") -> float:
    """Round ``value`` to a multiple of ``step``; a value already on a step stays there.

    >>> round_to(366.2, 10, "down"), round_to(366.2, 10, "up"), round_to(360.0, 10, "up")
    (360.0, 370.0, 360.0)
    """
    steps = value / step
    whole = math.floor(steps + 0.5)
    if abs(steps - whole) <= _ON_STEP * max(1.0, abs(steps)):
        return float(whole * step)
    return float(_ROUND[rounding](steps) * step)


def write_number(value: float, style: Style, rounding: Rounding = "nearest") -> tuple[str, float]:
    """The number as text, and the number that the text says.

    >>> write_number(13.7, Style("in", step=1 / 16, fraction=True), "up")
    ('13 3/4', 13.75)
    >>> write_number(1289.66, Style("g", figures=3), "down")
    ('1280', 1280.0)
    """
    step = style.step
    if not step:
        step = 10.0 ** (math.floor(math.log10(abs(value))) - style.figures + 1) if value else 1.0
    rounded = round_to(value, step, rounding)
    if style.fraction:
        size = round(1 / step)
        whole, part = divmod(round(abs(rounded) * size), size)
        pieces = ([str(whole)] if whole or not part else []) + ([str(Fraction(part, size))] if part else [])
        return ("-" if rounded < 0 else "") + " ".join(pieces), rounded
    decimals = max(0, -int(Decimal(repr(step)).normalize().as_tuple().exponent))
    text = f"{rounded:.{decimals}f}"
    if Decimal(repr(step)).normalize().as_tuple().digits != (1,):  # steps of 0.5 and 0.125: 580.5, then 581
        text = trimmed(text)
    return ("0" if float(text) == 0 else text), rounded


def write(si: float, style: str | tuple[str, Style], system: System = "metric", rounding: Rounding = "nearest") -> Shown:
    """Write an SI float in the unit, step and rounding that its use asks for.

    Parameters
    ----------
    si : value in the kind's SI unit (rpm for spindle speed).
    style : a key of :data:`STYLES`, or a kind with a :class:`Style` of its own.
    system : which unit system to write in.
    rounding : ``down`` for what must not be exceeded, ``up`` for what must be reached.

    Examples
    --------
    >>> str(write(0.34925, "length", "imperial"))
    '13 3/4 in'
    >>> str(write(366.2, ("rotational speed", Style("rpm", step=10)), rounding="down"))
    '360 rpm'
    """
    if isinstance(style, str):
        kind, metric, imperial = STYLES[style]
        chosen = metric if system == "metric" else imperial
    else:
        kind, chosen = style
    text, number = write_number(from_si(si, kind, chosen.unit), chosen, rounding)
    return Shown(text, chosen.unit, to_si(number, kind, chosen.unit))


def restate(si: float, kind: str, unit: str) -> str:
    """A typed value in another unit, near enough for a tape or a scale to show no difference.

    Inches become mixed numbers in thirty-seconds where that is within 0.4 %; all else keeps four figures.

    >>> restate(0.3, "length", "in"), restate(0.34925, "length", "mm"), restate(293.15, "temperature", "°F")
    ('11 13/16', '349.3', '68')
    """
    value = from_si(si, kind, unit)
    if unit == "in" and abs(value) >= 1 / 32:
        text, rounded = write_number(value, Style("in", step=1 / 32, fraction=True))
        if abs(rounded - value) <= 0.004 * abs(value):
            return text
    if kind == "temperature":
        return f"{value:.1f}".removesuffix(".0")
    text, _ = write_number(value, Style(unit, figures=4))
    return trimmed(text)


def rpm_text(speed_rpm: float) -> str:
    """A spindle speed as its digits, rounded down; a limit above any lathe is only said to be over.

    >>> rpm_text(366.9), rpm_text(21850.0)
    ('366', 'over 9999')
    """
    return f"over {HIGHEST_SHOWN_RPM:.0f}" if speed_rpm > HIGHEST_SHOWN_RPM else write(speed_rpm, "speed", rounding="down").text


def trimmed(text: str) -> str:
    """A decimal without the zeros at its end.

    >>> trimmed("12.50"), trimmed("12.0"), trimmed("120")
    ('12.5', '12', '120')
    """
    return text.rstrip("0").rstrip(".") if "." in text else text
