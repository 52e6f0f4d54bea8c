"""One piece of wood, its moisture and its air, for Dry enough?"""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from functools import cached_property

from calc.casting import moisture
from calc.casting.moisture import Grade, Limits, percent
from calc.casting.species import Shrinkage, all_species, largest_shrinkage
from calc.errors import InputError
from calc.quantity.writing import Rounding, Shown, Style, round_to, trimmed
from calc.questions import Given

#: A hand meter tells no finer, and neither does its correction.
METER_STEP = 0.001
#: How a share is written: moisture to a tenth.
_TENTH = ("share", Style("%", step=0.1))
WHOLE = ("share", Style("%", step=1))


@dataclass(frozen=True)
class Wood:
    """One piece of wood: what it holds, where it stands and where it will live; and its figures as they are written."""

    given: Given

    # --- figures -----------------------------------------------------------------------------------

    @property
    def judged(self) -> str:
        """How the moisture was measured."""
        return self.given.choice("judged")

    @cached_property
    def here(self) -> float:
        """What the shop air brings wood to."""
        return moisture.equilibrium(self.given.si("shop"), self.given.si("humidity"))

    @cached_property
    def limits(self) -> Limits:
        """Where each grade begins, for where the piece will live."""
        if self.given.choice("home") == "own":
            return Limits(moisture.equilibrium(self.given.si("home_temperature"), self.given.si("home_humidity")))
        return Limits(percent(f"home {self.given.choice('home')}"))

    @property
    def home(self) -> float:
        """Moisture the wood will come to where it lives."""
        return self.limits.home

    @cached_property
    def rates(self) -> tuple[float, ...]:
        """Share of the weight lost in a week, the latest first; none without a log."""
        if self.judged != "log":
            return ()
        weights = [self.given.si("now"), self.given.si("last")]
        earlier = self.given.maybe("earlier")
        weights += [] if earlier is None else [earlier]
        time = self.given.si("apart")
        return tuple(moisture.lost_per_week(before, after, time) for after, before in itertools.pairwise(weights))

    @property
    def steady(self) -> bool:
        """The weight stays, every time that was weighed."""
        return bool(self.rates) and all(abs(rate) < percent("steady") for rate in self.rates)

    @cached_property
    def wood_k(self) -> float:
        """Temperature of the wood: the maker's, or that of the air, K."""
        wood = self.given.maybe("wood")
        return self.given.si("shop") if wood is None else wood

    @cached_property
    def read(self) -> tuple[float, ...]:
        """The readings as moisture, driest first; empty without any."""
        if self.judged == "analyser":
            return tuple(moisture.of_wet_basis(share) for share in self.given.many("readings"))
        if self.judged != "meter":
            return ()
        low = percent("meter low")
        readings = tuple(max(reading, low) for reading in self.given.many("readings"))
        if self.given.choice("corrects") == "yes":
            return readings
        return tuple(self._set_right(reading) for reading in readings)

    def _set_right(self, reading: float) -> float:
        """The reading, for the warmth of the wood; what is less than half a step of the handbook's rule is left as it was read."""
        right = moisture.corrected_reading(reading, self.wood_k)
        return reading if abs(right - reading) < percent("meter shift") / 2 else round_to(right, METER_STEP)

    @property
    def corrected(self) -> bool:
        """Whether the wettest reading told is not the one typed, for the warmth of the wood."""
        return self.judged == "meter" and not self.off_scale and abs(self.read[-1] - self.given.many("readings")[-1]) > METER_STEP / 2

    @cached_property
    def found(self) -> float | None:
        """Moisture that counts; None where it is not known."""
        if self.read:
            return self.read[-1]
        if self.judged == "oven":
            return self.oven_test()
        if self.judged == "log":
            if not self.given.typed("humidity"):
                raise InputError("humidity", "humidity-for-log")
            return self.here if self.steady else None
        return None

    def oven_test(self) -> float:
        """Moisture of the sample; a contradiction is refused."""
        before, dry = self.given.si("before"), self.given.si("oven_dry")
        if dry > before * (1 + 1e-9):
            raise InputError("oven_dry", "dry-heavier")
        found = moisture.of_oven_test(before, dry)
        if found > percent("wettest known"):
            raise InputError("oven_dry", "wettest", found=str(self.given.write(found, WHOLE)))
        return max(found, 0.0)

    @cached_property
    def grade(self) -> Grade:
        """From the moisture, and never better than a caution where what measured it may mislead."""
        if self.found is None:
            return "stop"
        grade = self.limits.grade(self.found)
        return "caution" if grade == "go" and (self.misled or self.once) else grade

    @property
    def misled(self) -> bool:
        """A meter on wood that it was never made for."""
        return self.judged == "meter" and self.given.choice("figure") != "plain"

    @property
    def too_dry(self) -> bool:
        """Dry enough, but so much drier than where it will live that it would swell there."""
        return self.found is not None and self.grade in ("go", "caution") and self.found < self.home - percent("match")

    @property
    def once(self) -> bool:
        """Steady, but only once."""
        return self.steady and len(self.rates) == 1

    @property
    def off_scale(self) -> bool:
        """Wetter than a hand meter can tell."""
        return self.judged == "meter" and self.given.many("readings")[-1] > percent("meter high") * (1 + 1e-9)

    @cached_property
    def shrinkage(self) -> Shrinkage:
        """Of this wood, or the largest of the table."""
        wood = all_species().get(self.given.choice("species"))
        shrinkage = (wood and wood.shrinkage) or largest_shrinkage().shrinkage
        assert shrinkage is not None  # the largest of those that have one
        return shrinkage

    @property
    def known(self) -> bool:
        """Whether the table has this wood's own shrinkage."""
        wood = all_species().get(self.given.choice("species"))
        return wood is not None and wood.shrinkage is not None

    def moves(self, start: float, along: float) -> float:
        """Change of size from a moisture to that of its home, m; below 0 where it shrinks."""
        return moisture.movement(self.given.si("size"), start, self.home, along)

    @cached_property
    def moved(self) -> float | None:
        """Change of size by the time it is as dry as where it will live, along the rings; m."""
        return None if self.found is None else self.moves(self.found, self.shrinkage.tangential)

    @property
    def mass(self) -> float | None:
        """The whole piece, kg; None where it was not weighed."""
        return self.given.maybe("now") if self.judged == "log" else self.given.maybe("mass")

    def mass_at(self, after: float) -> float | None:
        """What the whole piece will weigh at another moisture."""
        if self.mass is None or self.found is None:
            return None
        return moisture.mass_after(self.mass, self.found, after)

    @property
    def damp(self) -> bool:
        """The shop air alone never gets it dry enough."""
        return self.here > self.limits.go

    @property
    def dry(self) -> bool:
        """As dry as it has to be."""
        return self.found is not None and self.found <= self.limits.go

    # --- written -------------------------------------------------------------------------------------

    def pc(self, share: float, rounding: Rounding = "nearest") -> Shown:
        """A moisture, to a tenth of a percent."""
        return self.given.write(share, _TENTH, rounding)

    def level(self, share: float) -> str:
        """A limit, which is mostly a whole percent."""
        shown = self.pc(share, "down")
        return f"{trimmed(shown.text)} {shown.unit}"

    def weight(self, kg: float) -> Shown:
        """A weight that is to be reached: rounded down, to the drier side."""
        grams = kg < 10
        unit = self.given.pick("g" if grams else "kg", "oz" if kg < 1.5 else "lb")
        step = {"g": 1, "kg": 0.01, "oz": 0.1, "lb": 0.1}[unit]
        return self.given.write(kg, ("mass", Style(unit, step=step)), "down")

    def length(self, metres: float, rounding: Rounding = "up") -> Shown:
        """A movement, without its sign, upwards."""
        style = Style("mm", step=0.1) if self.given.system == "metric" else Style("in", step=1 / 64, fraction=True)
        return self.given.write(abs(metres), ("length", style), rounding)

    def size(self) -> Shown:
        """The size across the grain."""
        return self.given.write(self.given.si("size"), "length")

    def warmth(self, kelvin: float) -> Shown:
        """A temperature."""
        return self.given.write(kelvin, "temperature")

    def driest_air(self, kelvin: float) -> Shown:
        """Humidity that brings the wood down to where nothing stands against it."""
        return self.given.write(moisture.humidity_for(self.limits.go, kelvin), WHOLE, "down")

    def steady_limit(self) -> str:
        """What counts as steady in a week."""
        return self.level(percent("steady"))

    def humid(self, name: str) -> Shown:
        """A humidity."""
        return self.given.write(self.given.si(name), WHOLE)
