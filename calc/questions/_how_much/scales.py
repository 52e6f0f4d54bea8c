"""Two scales with the same thing on both: what they differ by, and which of them the ratio hangs on."""

from __future__ import annotations

from dataclasses import dataclass

from calc.answers import Caution, Line, Tone, Working
from calc.casting import off_ratio, scales
from calc.casting import wood as timber
from calc.casting.batch import Job
from calc.casting.standards import standard
from calc.errors import InputError
from calc.quantity.units import from_si
from calc.quantity.writing import Shown, Style
from calc.questions import Given


@dataclass(frozen=True)
class Pair:
    """The scale of the job and another one, net readings of the same thing in kg."""

    given: Given
    job: Job
    this: float
    other: float
    other_step: float

    @classmethod
    def of(cls, given: Given, job: Job) -> Pair | None:
        """Both readings, or None where neither was given.

        Raises
        ------
        InputError
            ``one-scale``, for the one that is missing.
        """
        this, other = given.maybe("this_scale"), given.maybe("other_scale")
        if this is None and other is None:
            return None
        if this is None or other is None:
            raise InputError("this_scale" if this is None else "other_scale", "one-scale")
        return cls(given, job, this, other, given.maybe("other_step") or job.step)

    @property
    def apart(self) -> float:
        """How far the other is over this one, a fraction."""
        return scales.apart(self.this, self.other)

    @property
    def explained(self) -> bool:
        """Their steps alone may make the difference."""
        return abs(self.other - self.this) <= scales.steps_explain(self.job.step, self.other_step, standard("coverage"))

    @property
    def percent(self) -> str:
        """The difference in percent."""
        return str(self.given.write(abs(self.apart), ("share", Style("%", figures=2)))).replace(".0 ", " ")

    def mass(self, kg: float) -> Shown:
        """A mass in the scale's unit, as fine as the finer of the two."""
        unit = self.job.face.unit
        step = min(self.job.face.step, from_si(self.other_step, "mass", unit))
        return self.given.write(kg, ("mass", Style(unit, step=step)))

    def lines(self, b: float) -> tuple[Line, ...]:
        """What they differ by, and what the other would have to show for ``b`` kg of B."""
        why = "no more than their steps explain" if self.explained else f"{self.percent} of {self.mass(self.this)}"
        found = [Line.of("The scales differ by", self.mass(abs(self.other - self.this)), why)]
        if not self.explained:
            found.append(Line.of("B, if it must be on the other scale", self.mass(b * (1 + self.apart)), f"the same as {self.mass(b)} on this one"))
        return tuple(found)

    def cautions(self) -> tuple[Caution, ...]:
        """One scale for both parts, and how to tell which one is right."""
        finer = ""
        if self.other_step < self.job.step:
            finer = " The other one, with its finer steps, is the better for both."
        if self.explained:
            return (Caution("two-scales", "go", f"The two scales agree as far as they can show. Weigh A and B on one of them all the same.{finer}"),)
        grade = off_ratio.grade(1 / (1 + self.apart) - 1, self.job.good, self.job.worst)
        tones: dict[off_ratio.Grade, Tone] = {"green": "go", "amber": "caution", "red": "stop"}
        litre = self.mass(timber.standard("water") / 1000)
        text = "Weigh A and B both on the same scale: the ratio is then right whichever of them is wrong."
        text += f" A on this one and B on the other would make B {self.percent} {'short' if self.apart > 0 else 'over'}."
        text += f" For the weight in all, trust the one that shows {litre} for a litre of water at room temperature.{finer}"
        return (Caution("two-scales", tones[grade], text),)

    def working(self) -> tuple[Working, ...]:
        """The difference, and what the steps explain of it."""
        limit = scales.steps_explain(self.job.step, self.other_step, standard("coverage"))
        numbers = f"{self.mass(self.other)} / {self.mass(self.this)} − 1"
        steps = f"2 × √(({self.mass(self.job.step)})² + ({self.mass(self.other_step)})²) / √6"
        return (
            Working("The scales differ by", "other / this − 1", numbers, f"{100 * self.apart:+.2f} %"),
            Working("Their steps explain", "k √(d1² + d2²) / √6, k = 2", steps, f"{from_si(limit, 'mass', self.job.face.unit):.2g} {self.job.face.unit}"),
        )
