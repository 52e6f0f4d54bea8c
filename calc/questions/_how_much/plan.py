"""One job that can be weighed: its pours, how well the scale holds them, and its figures as the scale shows them."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.casting import off_ratio, weighing
from calc.casting.batch import Job
from calc.casting.mixing import Parts
from calc.casting.standards import standard
from calc.quantity.units import from_si, to_si
from calc.quantity.writing import Shown, Style, trimmed, write
from calc.questions import Given


@dataclass(frozen=True)
class Plan:
    """A job and its pours.

    Parameters
    ----------
    given : the question's inputs.
    job : what is mixed, with what.
    pours : what each pour weighs, kg.
    take_out : clean A that has to leave the bucket first, kg.
    """

    given: Given
    job: Job
    pours: tuple[Parts, ...]
    take_out: float = 0.0

    @property
    def first(self) -> Parts:
        """The pour that is weighed first."""
        return self.pours[0]

    @property
    def later(self) -> Parts | None:
        """A pour after the first, where it differs from the first."""
        return self.pours[1] if len(self.pours) > 1 and self.pours[1] != self.first else None

    @property
    def smallest(self) -> Parts:
        """The smallest pour: the scale holds its ratio worst."""
        return min(self.pours, key=lambda pour: pour.total)

    @property
    def within(self) -> float | None:
        """By when the largest pour is to be out of its bucket, s from when A meets B; None where the sheet's time was not given."""
        return self.job.within(max(pour.total for pour in self.pours))

    @property
    def poured(self) -> float:
        """All the pours together, kg."""
        return sum(pour.total for pour in self.pours)

    @property
    def hold(self) -> float:
        """What the scale may make of the ratio of the smallest pour, as a fraction."""
        return standard("coverage") * weighing.ratio_uncertainty(self.smallest, weighing.net_uncertainty(self.job.step))

    @property
    def grade(self) -> off_ratio.Grade:
        """Whether the scale is good enough for the smallest pour."""
        return off_ratio.grade(self.hold, self.job.good, self.job.worst)

    @property
    def least(self) -> float:
        """The smallest batch that this scale holds to the good tolerance, kg."""
        return weighing.smallest_batch(self.job.ratio, self.job.step, self.job.good, standard("coverage"))

    @property
    def kit_error(self) -> float:
        """How far a whole kit is off ratio, as a fraction; 0 when it is weighed."""
        return off_ratio.ratio_error(self.first, self.job.ratio) if self.job.way == "kit" else 0.0

    @property
    def too_big(self) -> bool:
        """The first pour is past the limit, by what is in the bucket or by the kit's own size."""
        return bool(self.take_out) or self.first.total > self.job.net * (1 + 1e-9)

    def mass(self, kg: float) -> Shown:
        """A mass (kg) at the scale's nearest step."""
        return self.job.face.show(kg)

    def over(self) -> Shown:
        """What the pours, as shown, are over what was asked for: finer than a coarse scale, for nobody weighs it."""
        unit = self.job.face.unit
        finest = 1.0 if unit == "g" else 0.1
        step = min(from_si(self.job.face.step_kg, "mass", unit), finest)
        return write(self.mass(self.poured).si - self.job.total, ("mass", Style(unit, step=step)))

    def capacity(self) -> Shown:
        """The most the scale weighs."""
        return write(self.job.capacity, ("mass", Style(self.job.face.unit, figures=4)), rounding="down")

    def least_shown(self) -> Shown:
        """The smallest batch, up to the scale's next step."""
        return self.mass(weighing.weighable(self.least, self.job.ratio, self.job.face.step_kg).total)

    def percent(self, fraction: float) -> str:
        """A fraction's size in percent."""
        return str(self.given.write(abs(fraction), "share")).replace(".0 ", " ")

    def litres(self, volume: float) -> Shown:
        """A volume (m3), up."""
        return self.given.write(volume, "large volume", "up")

    def bucket_for(self, mass: float) -> Shown:
        """The bucket that takes ``mass`` kg below its fill line."""
        return self.litres(mass / self.job.density / self.given.si("fill"))

    def finer(self) -> Shown:
        """The next scale step (1, 2, 5) that holds the ratio of the smallest pour."""
        job = self.job
        wanted = weighing.coarsest_step(self.smallest.total, job.ratio, job.good, standard("coverage"))
        if wanted >= job.step:
            wanted = job.step / 10
        return nice_step(wanted, job.face.unit)

    @property
    def grown(self) -> bool:
        """What is in the bucket makes the batch bigger than was asked for."""
        return len(self.pours) == 1 and self.poured > self.job.total + 2 * self.job.face.step_kg and bool(self.job.in_a or self.job.in_b)

    def fits_scale(self, mass: float) -> bool:
        """Whether the scale takes this much resin (kg) in one pour."""
        return self.job.limit.scale is None or mass <= self.job.limit.scale

    def fits_bucket(self, mass: float) -> bool:
        """Whether the bucket does."""
        return self.job.limit.bucket is None or mass <= self.job.limit.bucket


def nice_mass(mass: float, unit: str) -> Shown:
    """A mass with three figures, upwards."""
    return write(mass, ("mass", Style(unit, figures=3)), rounding="up")


def nice_step(step: float, unit: str) -> Shown:
    """The next finer step that scales come with: 1, 2 or 5 times a power of ten."""
    value = from_si(step, "mass", unit) * (1 + 1e-9)
    decade = 10.0 ** math.floor(math.log10(value))
    nice = next(digit * decade for digit in (5, 2, 1) if digit * decade <= value)
    return Shown(trimmed(f"{nice:.6f}"), unit, to_si(nice, "mass", unit))


def step_text(step: Shown) -> str:
    """A scale's step; under a hundredth of an ounce in grams too, for scales that fine show them.

    >>> step_text(Shown("0.002", "oz", 0.0000567)), step_text(Shown("0.1", "g", 0.0001))
    ('0.002 oz (0.05 g)', '0.1 g')
    """
    return f"{step} ({nice_step(step.si, 'g')})" if step.unit == "oz" and step.si < to_si(0.01, "mass", "oz") else str(step)
