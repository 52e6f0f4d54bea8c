"""Kinds of quantity: the units that a maker may write for each, and what the floats inside are in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

System = Literal["metric", "imperial"]
SYSTEMS: tuple[System, System] = ("metric", "imperial")


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
