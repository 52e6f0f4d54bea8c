"""One mixing job: what is wanted, what weighs it, and the pours it comes to.

The question and the step-by-step run both go by a :class:`Job`, so the figures on both are the same.
Masses in kg, times in s; :class:`ScaleFace` is the one place where a mass becomes what a scale shows.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from calc.casting import mixing, off_ratio, weighing
from calc.casting.cure.kinetics import heat_of_reaction
from calc.casting.cure.working import pour_within
from calc.casting.mixing import Parts, Ratio
from calc.casting.weighing import PourLimit
from calc.quantity.reading import Reading, read
from calc.quantity.units import from_si, to_si
from calc.quantity.writing import Shown, round_to

Way = Literal["pour", "decant", "kit"]

#: A step is kept as it is when it has at most this many decimals in the scale's unit.
_DECIMALS = 3


@dataclass(frozen=True)
class ScaleFace:
    """What the scale shows: its unit and its step, in that unit.

    Examples
    --------
    >>> str(ScaleFace("g", 1).show(0.8966))
    '897 g'
    """

    unit: str
    step: float

    @property
    def step_kg(self) -> float:
        """The step, kg."""
        return to_si(self.step, "mass", self.unit)

    @property
    def step_text(self) -> str:
        """The step as the scale would write it."""
        return self._text(self.step)

    def show(self, mass: float) -> Shown:
        """``mass`` (kg; may be negative on a tared scale) at the scale's nearest step."""
        number = round_to(from_si(mass, "mass", self.unit), self.step)
        return Shown(self._text(number), self.unit, to_si(number, "mass", self.unit))

    def down(self, mass: float) -> float:
        """``mass`` (kg) at the step below."""
        return to_si(round_to(from_si(mass, "mass", self.unit), self.step, "down"), "mass", self.unit)

    def near(self, mass: float) -> float:
        """``mass`` (kg) at the nearest step."""
        return self.show(mass).si

    def read(self, text: str) -> Reading:
        """What the maker keyed in, in the scale's unit unless another is written.

        Raises
        ------
        InputError
            not a number, or not a unit of weight.
        """
        return read("reading", text, "mass", self.unit)

    def _text(self, number: float) -> str:
        places = next((n for n in range(_DECIMALS) if _whole(self.step * 10**n)), _DECIMALS)
        text = f"{number:.{places}f}"
        return text.removeprefix("-") if float(text) == 0 else text


def face_of(step: float, unit: str) -> ScaleFace:
    """The face of a scale with this step (kg) that reads in ``unit``.

    A step that is no short decimal there (1 g is 0.03527 oz) goes up to the next 1, 2 or 5: 0.05 oz.

    Parameters
    ----------
    step : kg, more than zero.
    unit : a unit of mass, as shown.

    Returns
    -------
    ScaleFace

    Examples
    --------
    >>> face_of(0.001, "oz").step, face_of(0.001, "g").step
    (0.05, 1.0)

    References
    ----------
    Common practice, no source: scales step in 1, 2 and 5.
    """
    shown = from_si(step, "mass", unit)
    if _whole(shown * 10**_DECIMALS):
        return ScaleFace(unit, round(shown, _DECIMALS))
    decade = 10.0 ** math.floor(math.log10(shown))
    return ScaleFace(unit, next(nice * decade for nice in (1, 2, 5, 10) if nice * decade >= shown))


@dataclass(frozen=True)
class Job:
    """Everything a mixing job goes by.

    Parameters
    ----------
    total : mixed resin wanted, kg.
    ratio : by weight.
    face : what the scale shows; ``step`` is its true step, kg, ``capacity`` the most it weighs, kg.
    limit : the most mixed resin in one pour.
    density : of the mixed resin, kg/m3.
    good, worst : the ratio may be off by these fractions (green, amber); one figure when the sheet prints it.
    way : into the bucket on the scale, out of the jug on the scale, or whole kits.
    in_a, in_b : already in the first bucket, kg; ``mixed`` when they have been stirred together.
    empty : what the empty bucket weighs, kg, when the maker has weighed it.
    working : the sheet's working time, s; mixing : its mixing time, s; None when not given. room : the shop, K; None as sheets mean it.
    kit : A and B in one kit, kg.
    """

    total: float
    ratio: Ratio
    face: ScaleFace
    step: float
    capacity: float
    limit: PourLimit
    density: float
    good: float
    worst: float
    tolerance_from_sheet: bool = False
    way: Way = "pour"
    in_a: float = 0.0
    in_b: float = 0.0
    mixed: bool = False
    empty: float | None = None
    working: float | None = None
    mixing: float | None = None
    room: float | None = None
    kit: Parts | None = None

    @property
    def net(self) -> float:
        """The most mixed resin in one pour, kg."""
        return self.limit.net

    @property
    def weighable(self) -> bool:
        """Whether one pour can hold at least the smallest amount the scale shows."""
        return self.net >= weighing.weighable(self.face.step_kg, self.ratio, self.face.step_kg).total

    def pours(self) -> tuple[Parts, ...]:
        """What each pour weighs, in order; the first makes use of what is in the bucket already.

        Raises
        ------
        ValueError
            not :attr:`weighable`.
        """
        if self.kit is not None:
            return (self.kit,) * weighing.kits_needed(self.total, self.kit)
        if self.mixed:
            return (self.mended, *self.shared(self.total - self.mended.total))
        pours = weighing.equal_pours(self.total, self.ratio, self.net, self.face.step_kg)
        grown = mixing.parts_with(pours[0], self.in_a, self.in_b, self.ratio)
        if grown == pours[0]:
            return pours
        first = Parts(max(self.in_a, self.face.near(grown.a)), max(self.in_b, self.face.near(grown.b)))
        return (first, *self.shared(self.total - first.total))

    def within(self, mass: float) -> float | None:
        """By when a bucket of ``mass`` kg is to be mixed and poured, s from when A meets B; None where the sheet's time was not given."""
        if self.working is None:
            return None
        return pour_within(self.working, mass, self.density, heat_of_reaction(self.ratio.a, self.ratio.b), self.room)

    @property
    def mended(self) -> Parts:
        """The mixed batch brought back on ratio by adding what is short, to the scale's step; as it is while within the good tolerance."""
        inside = Parts(self.in_a, self.in_b)
        if off_ratio.grade(off_ratio.ratio_error(inside, self.ratio), self.good, self.worst) == "green":
            return inside
        fix = off_ratio.correction(inside, self.ratio)
        added = self.face.near(fix.mass)
        return Parts(inside.a + added, inside.b) if fix.part == "A" else Parts(inside.a, inside.b + added)

    def shared(self, remaining: float) -> tuple[Parts, ...]:
        """The pours that are left when ``remaining`` kg is still wanted; none for less than a step."""
        if remaining < self.face.step_kg:
            return ()
        if self.kit is not None:
            return (self.kit,) * weighing.kits_needed(remaining, self.kit)
        return weighing.equal_pours(remaining, self.ratio, self.net, self.face.step_kg)


def _whole(value: float) -> bool:
    return round(value) >= 1 and abs(value - round(value)) <= 1e-6 * value
