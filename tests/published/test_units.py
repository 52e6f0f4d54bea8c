"""Unit factors against the published ones.

HB44: NIST Handbook 44, Appendix C, exact values (quoted in a general scientific constants library).
SP811: NIST Special Publication 811, Appendix B, to the digits printed there (quoted in the same library).
"""

from __future__ import annotations

import pytest

from calc.quantity.reading import read
from calc.quantity.units import from_si


@pytest.mark.parametrize(
    "text, kind, unit, value, shown_in",
    [
        ("1 in", "length", "mm", 25.4, "mm"),  # HB44
        ("1 ft", "length", "mm", 304.8, "mm"),  # HB44
        ("1 lb", "mass", "g", 453.59237, "g"),  # HB44
        ("1 oz", "mass", "g", 28.349523125, "g"),  # HB44
        ("1.5 lb", "mass", "g", 680.388555, "g"),  # HB44 by multiplication
        ("1 US gal", "volume", "mL", 3785.411784, "mL"),  # HB44: 231 cubic inches
        ("1 US fl oz", "volume", "mL", 29.5735295625, "mL"),  # HB44
        ("64 US fl oz", "volume", "mL", 1892.705892, "mL"),  # HB44 by multiplication
        ("5.5 US qt", "volume", "mL", 5204.941203, "mL"),  # HB44 by multiplication
        ("1 imp gal", "volume", "mL", 4546.09, "mL"),  # HB44
        ("1 imp fl oz", "volume", "mL", 28.4130625, "mL"),  # HB44: 1/160 imperial gallon
        ("1 in3", "volume", "mL", 16.387064, "mL"),  # 2.54 cubed
        ("1 lb/ft3", "density", "kg/m³", 16.0184634, "kg/m³"),  # from the two above
        ("68 F", "temperature", "°C", 20.0, "°C"),  # HB44: (F - 32) / 1.8
        ("5.4 F", "temperature difference", "°C", 3.0, "°C"),  # SP811: a degree Fahrenheit is 5/9 of a kelvin
        ("1 psi", "pressure", "bar", 6.894757293, "kPa"),  # SP811: lbf/in2
        ("1 bar", "pressure", "psi", 100.0, "kPa"),  # SP811, exact
        ("1 inHg", "pressure", "kPa", 3.386389, "kPa"),  # SP811: conventional inch of mercury
        ("1 cmHg", "pressure", "kPa", 1.333224, "kPa"),  # SP811: conventional centimetre of mercury
    ],
)
def test_factor(text: str, kind: str, unit: str, value: float, shown_in: str) -> None:
    si = read("it", text, kind, unit).si
    assert from_si(si, kind, shown_in) == pytest.approx(value, rel=5e-9)  # the digits printed
