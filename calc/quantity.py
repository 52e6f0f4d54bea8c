"""Makers' text to SI floats and back: the only file that imports Pint.

A maker types ``13 3/4``, ``13-3/4 in``, ``5/8"``, ``2,5``, ``1' 1 3/4"``,
``1.2 kg``, ``1 lb 3 oz`` or ``70 F``. :func:`read` turns that into a float in SI
(spindle speed stays in rpm); :func:`write` turns a float into what a maker
reads, rounded the way its use asks for.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Literal

import pint

from calc.errors import InputError
from calc.words import either

System = Literal["metric", "imperial"]
Rounding = Literal["nearest", "down", "up"]
SYSTEMS: tuple[System, System] = ("metric", "imperial")
HIGHEST_SHOWN_RPM = 9999.0  # no hand lathe turns faster, and four digits are read at a glance


@dataclass(frozen=True)
class Kind:
    """A kind of quantity: its SI unit and the units a maker may write after a number.

    Parameters
    ----------
    name : what the kind is called in an answer's JSON.
    si : the unit of the floats inside, as Pint spells it.
    units : symbol shown -> Pint's spelling.
    aliases : what else a maker writes -> symbol shown.
    pairs : units that may stand together, large then small (``1 lb 3 oz``).
    signed : whether values below zero make sense (temperatures).
    """

    name: str
    si: str
    units: Mapping[str, str]
    aliases: Mapping[str, str]
    pairs: tuple[tuple[str, str], ...] = ()
    signed: bool = False


_VOLUME_UNITS = {
    "mL": "milliliter",
    "L": "liter",
    "cm³": "centimeter ** 3",
    "in³": "inch ** 3",
    "US fl oz": "us_fluid_ounce",
    "US pt": "us_pint",
    "US qt": "us_quart",
    "US gal": "us_gallon",
    "imp fl oz": "imperial_fluid_ounce",
    "imp pt": "imperial_pint",
    "imp qt": "imperial_quart",
    "imp gal": "imperial_gallon",
}

KINDS: Mapping[str, Kind] = {
    "length": Kind(
        "length",
        "meter",
        {"mm": "millimeter", "cm": "centimeter", "m": "meter", "in": "inch", "ft": "foot"},
        {
            '"': "in", "”": "in", "″": "in", "''": "in", "inch": "in", "inches": "in", "ins": "in",
            "'": "ft", "’": "ft", "′": "ft", "foot": "ft", "feet": "ft",
            "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
            "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
            "metre": "m", "metres": "m", "meter": "m", "meters": "m",
        },
        pairs=(("ft", "in"), ("m", "cm"), ("m", "mm")),
    ),
    "mass": Kind(
        "mass",
        "kilogram",
        {"g": "gram", "kg": "kilogram", "oz": "ounce", "lb": "pound"},
        {
            "gram": "g", "grams": "g", "gr": "g", "gm": "g",
            "kilo": "kg", "kilos": "kg", "kilogram": "kg", "kilograms": "kg", "kgs": "kg",
            "ounce": "oz", "ounces": "oz", "pound": "lb", "pounds": "lb", "lbs": "lb",
        },
        pairs=(("lb", "oz"), ("kg", "g")),
    ),
    "volume": Kind(
        "volume",
        "meter ** 3",
        _VOLUME_UNITS,
        {
            "ml": "mL", "millilitre": "mL", "millilitres": "mL", "milliliters": "mL", "cc": "cm³",
            "l": "L", "litre": "L", "litres": "L", "liter": "L", "liters": "L",
            "cm3": "cm³", "cm^3": "cm³", "in3": "in³", "in^3": "in³", "cu in": "in³",
            **{symbol.lower(): symbol for symbol in _VOLUME_UNITS if " " in symbol},
            **{f"us {word}": f"US {short}" for word, short in
               (("pint", "pt"), ("pints", "pt"), ("quart", "qt"), ("quarts", "qt"), ("gallon", "gal"), ("gallons", "gal"))},
            **{f"imp {word}": f"imp {short}" for word, short in
               (("pint", "pt"), ("pints", "pt"), ("quart", "qt"), ("quarts", "qt"), ("gallon", "gal"), ("gallons", "gal"))},
        },
    ),
    "temperature": Kind(
        "temperature",
        "kelvin",
        {"°C": "degree_Celsius", "°F": "degree_Fahrenheit"},
        {"c": "°C", "degc": "°C", "deg c": "°C", "° c": "°C", "f": "°F", "degf": "°F", "deg f": "°F", "° f": "°F"},
        signed=True,
    ),
    "temperature difference": Kind(
        "temperature difference",
        "kelvin",
        {"°C": "delta_degree_Celsius", "°F": "delta_degree_Fahrenheit"},
        {"c": "°C", "degc": "°C", "deg c": "°C", "° c": "°C", "k": "°C", "f": "°F", "degf": "°F", "deg f": "°F", "° f": "°F"},
    ),
    "pressure": Kind(
        "pressure",
        "pascal",
        {"bar": "bar", "psi": "psi", "kPa": "kilopascal", "MPa": "megapascal", "mbar": "millibar", "inHg": "inch_Hg", "cmHg": "cm_Hg"},
        {
            "bars": "bar", "barg": "bar", "bar g": "bar", "psig": "psi", "lb/in²": "psi", "kpa": "kPa", "mpa": "MPa", "hpa": "mbar", "hPa": "mbar",
            "inhg": "inHg", "in hg": "inHg", '" hg': "inHg", "cmhg": "cmHg", "cm hg": "cmHg",
        },
    ),
    "density": Kind(
        "density",
        "kilogram / meter ** 3",
        {"g/mL": "gram / milliliter", "kg/m³": "kilogram / meter ** 3", "lb/ft³": "pound / foot ** 3", "kg/L": "kilogram / liter"},
        {
            "g/ml": "g/mL", "g/cm3": "g/mL", "g/cm³": "g/mL", "g/cc": "g/mL",
            "kg/m3": "kg/m³", "kg/m^3": "kg/m³", "kg/l": "kg/L", "lb/ft3": "lb/ft³", "lb/ft^3": "lb/ft³",
        },
    ),
    "viscosity": Kind(
        "viscosity",
        "pascal * second",
        {"mPa·s": "millipascal * second", "cP": "millipascal * second", "Pa·s": "pascal * second"},
        {
            "mpas": "mPa·s", "mpa s": "mPa·s", "mpa.s": "mPa·s", "mpa*s": "mPa·s", "mpa·s": "mPa·s", "cp": "cP", "cps": "cP", "centipoise": "cP",
            "pas": "Pa·s", "pa s": "Pa·s", "pa.s": "Pa·s", "pa·s": "Pa·s",
        },
    ),
    "heat": Kind(
        "heat", "joule / kilogram", {"J/g": "joule / gram", "kJ/kg": "kilojoule / kilogram"}, {"j/g": "J/g", "kj/kg": "kJ/kg"},
    ),
    "time": Kind(
        "time",
        "second",
        {"min": "minute", "h": "hour", "days": "day", "s": "second"},
        {
            "minute": "min", "minutes": "min", "mins": "min", "m": "min", "hour": "h", "hours": "h", "hr": "h", "hrs": "h",
            "day": "days", "d": "days", "second": "s", "seconds": "s", "sec": "s",
        },
        pairs=(("h", "min"), ("min", "s")),
    ),
    "rotational speed": Kind("rotational speed", "rpm", {"rpm": "rpm"}, {"r/min": "rpm", "1/min": "rpm", "rev/min": "rpm"}),
    "vibration": Kind("vibration", "meter / second", {"mm/s": "millimeter / second", "in/s": "inch / second"}, {"ips": "in/s"}),
    "share": Kind("share", "", {"%": "percent"}, {"percent": "%", "pct": "%"}),
    "count": Kind("count", "", {"": ""}, {}),
}


@cache
def _registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry(str(Path(__file__).with_name("units.txt")), cache_folder=None)


@cache
def _pint_unit(spelling: str) -> pint.Unit:
    return _registry().Unit(spelling)


@cache
def _scale(kind: str, symbol: str) -> tuple[float, float]:
    """One of the unit in SI, and the SI value of its zero: asked of Pint once, since an answer converts hundreds of times."""
    declared = KINDS[kind]
    unit, si = _pint_unit(declared.units[symbol]), _pint_unit(declared.si)
    zero = float(_registry().Quantity(0.0, unit).m_as(si))
    return float(_registry().Quantity(1.0, unit).m_as(si)) - zero, zero


def to_si(value: float, kind: str, symbol: str) -> float:
    """Convert ``value`` in the unit shown as ``symbol`` to the kind's SI float.

    >>> to_si(13.75, "length", "in")
    0.34925
    >>> round(to_si(68, "temperature", "°F"), 6)
    293.15
    """
    size, zero = _scale(kind, symbol)
    return value * size + zero


def from_si(value: float, kind: str, symbol: str) -> float:
    """Convert the kind's SI float to the unit shown as ``symbol``.

    >>> round(from_si(0.34925, "length", "in"), 9)
    13.75
    """
    size, zero = _scale(kind, symbol)
    return (value - zero) / size


# ---------------------------------------------------------------- reading

_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}
_NUMBER = re.compile(
    r"""\s*(?P<sign>[-+−]?)\s*(?:
        (?P<whole>\d+)(?:\s+|\s*-\s*)(?P<top>\d+)\s*/\s*(?P<bottom>\d+)
      | (?P<only_top>\d+)\s*/\s*(?P<only_bottom>\d+)
      | (?P<decimal>\d[\d.,]*|[.,]\d[\d.,]*)
    )""",
    re.VERBOSE,
)


def _number(name: str, text: str, match: re.Match[str]) -> float:
    """The number that ``match`` found; refuses what can be read two ways."""
    sign = -1.0 if match["sign"] in ("-", "−") else 1.0
    if match["decimal"] is None:
        top, bottom = int(match["top"] or match["only_top"]), int(match["bottom"] or match["only_bottom"])
        whole = int(match["whole"] or 0)
        if bottom == 0 or top == 0 or (match["whole"] is not None and top >= bottom):
            raise InputError(name, "fraction")
        return sign * float(whole + Fraction(top, bottom))
    written = match["decimal"]
    if written.count(",") + written.count(".") > 1:
        if "," in written and "." in written:
            plain = written.replace(",", "") if written.rindex(".") > written.rindex(",") else written.replace(".", "").replace(",", ".")
            raise InputError(name, "comma", plain=plain, decimal=plain.replace(".", ","))
        raise InputError(name, "not-a-number")
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", written):
        raise InputError(name, "comma", plain=written.replace(",", ""), decimal=written.replace(",", "."))
    return sign * float(written.replace(",", "."))


def _symbol(name: str, kind: Kind, word: str, accepted: tuple[str, ...]) -> str:
    """The unit symbol that ``word`` stands for; refuses fluid ounces for ounces and a bare gallon."""
    key = " ".join(word.split()).rstrip(".")
    lowered = key.lower()
    if kind.name == "mass" and re.search(r"fl|fluid", lowered):
        raise InputError(name, "fluid-ounce")
    if kind.name == "volume":
        if lowered in ("oz", "ounce", "ounces"):
            raise InputError(name, "weight-ounce")
        if lowered in ("fl oz", "floz", "pt", "pint", "pints", "qt", "quart", "quarts", "gal", "gallon", "gallons"):
            raise InputError(name, "which-gallon", given_unit=lowered)
    symbol = key if key in kind.units else kind.aliases.get(key, kind.aliases.get(lowered, lowered))
    if symbol not in kind.units or (accepted and symbol not in accepted):
        raise InputError(name, "unit", given_unit=key, units=either(accepted or tuple(kind.units)))
    return symbol


@dataclass(frozen=True)
class Reading:
    """What a maker's text says: the SI float, and the number and unit as written."""

    si: float
    number: float
    unit: str
    unit_written: bool


def read(name: str, text: str, kind: str, unit: str, accepted: tuple[str, ...] = ()) -> Reading:
    """Read a maker's text as a quantity.

    Parameters
    ----------
    name : the field's name, for errors.
    text : what was typed.
    kind : a key of :data:`KINDS`.
    unit : the unit that a bare number is in.
    accepted : the units that may be written after the number; all of the kind's when empty.

    Returns
    -------
    Reading
        with the value in the kind's SI unit.

    Raises
    ------
    InputError
        ``not-a-number``, ``fraction``, ``comma``, ``unit``, ``fluid-ounce``, ``weight-ounce`` or ``which-gallon``.

    Examples
    --------
    >>> read("depth", "13-3/4 in", "length", "mm").si
    0.34925
    >>> read("depth", "2,5", "length", "mm").si
    0.0025
    """
    declared = KINDS[kind]
    rest = text.strip()
    for glyph, plain in _VULGAR.items():
        rest = re.sub(rf"(\d)\s*{glyph}", rf"\1 {plain}", rest).replace(glyph, plain)
    parts: list[tuple[float, str, bool]] = []
    while rest:
        match = _NUMBER.match(rest)
        if match is None:
            raise InputError(name, "not-a-number")
        number = _number(name, text, match)
        rest = rest[match.end() :]
        # The unit runs to the next number, or to the end. "in3" and "1/min" hold digits of their own, "mPa.s" a full stop.
        word = re.match(r"\s*(?:(?:cm|in|m|ft|kg/m|lb/ft|g/cm)\^?[3³]|1/min|m?[Pp][Aa]\.s|[^\d\s.,+−-][^\d.,+−]*|)", rest)
        assert word is not None  # the pattern may match nothing, so it always matches
        written = word[0].strip()
        if written.startswith("/"):
            raise InputError(name, "fraction")
        rest = rest[word.end() :].lstrip(" ,") if parts or written else rest[word.end() :].lstrip()
        parts.append((number, _symbol(name, declared, written, accepted) if written else "", bool(written)))
        if not written and rest:
            raise InputError(name, "fraction" if "/" in rest else "not-a-number")
    if not parts:
        raise InputError(name, "not-a-number")
    if len(parts) == 1:
        number, symbol, written_unit = parts[0]
        symbol = symbol or unit
        return Reading(to_si(number, kind, symbol), number, symbol, written_unit)
    if len(parts) != 2 or not parts[0][2]:
        raise InputError(name, "not-a-number")
    (large, large_unit, _), (small, small_unit, _) = parts
    small_unit = small_unit or next((low for high, low in declared.pairs if high == large_unit), "")
    if (large_unit, small_unit) not in declared.pairs or small < 0:
        raise InputError(name, "not-a-number")
    si = to_si(large, kind, large_unit) + to_si(small, kind, small_unit)
    return Reading(si, from_si(si, kind, large_unit), large_unit, True)


# ---------------------------------------------------------------- writing


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
