"""What a maker typed, as a quantity: mixed numbers, decimal commas, two units in a row; what can be read two ways is refused."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from calc.errors import InputError
from calc.quantity.kinds import KINDS, Kind
from calc.quantity.units import from_si, to_si
from calc.words import either

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
