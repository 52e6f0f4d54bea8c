"""How pressures, shares and weights are written here."""

from __future__ import annotations

from calc.answers import Line
from calc.casting import pressure
from calc.casting.cure.working import pour_within
from calc.casting.standards import standard
from calc.constants import STANDARD_GRAVITY
from calc.quantity.units import from_si
from calc.quantity.writing import Rounding, Shown, Style
from calc.questions import Given


def bars(given: Given, pressure_pa: float, rounding: Rounding = "nearest") -> Shown:
    """A pot's pressure as its gauge shows it."""
    return given.write(pressure_pa, "pressure", rounding)


def reading(given: Given, pressure_pa: float, rounding: Rounding = "nearest") -> Shown:
    """A vacuum gauge's reading."""
    return given.write(pressure_pa, "vacuum", rounding)


def per_cent(given: Given, share: float, rounding: Rounding = "nearest") -> Shown:
    """A share in whole percent."""
    return given.write(share, ("share", Style("%", step=1)), rounding)


def weight_of(given: Given, force_n: float) -> Shown:
    """A force as the weight that pushes as hard, rounded up."""
    style = Style(given.pick("kg", "lb"), figures=2)
    return given.write(force_n / STANDARD_GRAVITY, ("mass", style), "up")


def dropped(given: Given, energy_j: float) -> str:
    """An energy as a weight that falls: '10 kg dropped from 49 m'."""
    kilograms = pressure.figure_of("dropped")
    mass = given.write(kilograms, ("mass", Style(given.pick("kg", "lb"), figures=2)))
    height = given.write(pressure.drop_height(energy_j, kilograms), ("length", Style(given.pick("m", "ft"), figures=2)), "up")
    return f"{mass} dropped from {height}"


def kilopascals(pressure_pa: float) -> str:
    """For the working."""
    return f"{from_si(pressure_pa, 'pressure', 'kPa'):.4g} kPa"


def outside(given: Given) -> float:
    """Pressure of the air at the maker's height, Pa."""
    return pressure.air_pressure(given.si("altitude"))


def time_to_use(given: Given) -> float | None:
    """The share of the sheet's working time that may be used, s, or less where the batch's bucket leaves less; None when it was not given."""
    working, batch = given.maybe("working"), given.maybe("batch")
    if working is None or batch is None:
        return None if working is None else working * standard("working share")
    return pour_within(working, batch, given.si("density"))


def time_line(given: Given, label: str, spent_s: float = 0.0) -> Line:
    """What may be used of the working time, less what is spent elsewhere; the share alone when the sheet's time was not given."""
    usable, share = time_to_use(given), per_cent(given, standard("working share"))
    if usable is None:
        return Line(label, share.text, share.unit, "of the sheet's working time; it cures all the while")
    told = f"{share} of the sheet's working time" if given.maybe("batch") is None else "by the sheet's working time and the size of the batch"
    return Line.of(label, given.write(max(0.0, usable - spent_s), "minutes", "down"), f"{told}; it cures all the while")
