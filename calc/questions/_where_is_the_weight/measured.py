"""Where is the weight? What was measured: on two supports and a scale, by a weight on the free spindle, by the time of its swing."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from calc.errors import InputError
from calc.questions import Given
from calc.questions._where_is_the_weight.parts import grams, standard, tape
from calc.turning import balance, discs, rebalance, swing
from calc.turning.make_up import Blank, Body

# --- two supports and a scale -----------------------------------------------------------------------------


def on_scale(given: Given, swept: float) -> Body:
    """The blank by its readings.

    Raises
    ------
    InputError
        ``apart``, ``more-than-all``, ``sum-off`` or ``centre-outside`` for readings that cannot be.
    """
    mass = given.si("mass")
    x, y = _along(given, swept, "at_3", "at_9"), _along(given, swept, "at_12", "at_6")
    if math.hypot(x, y) > swept / 2:
        raise InputError("at_3", "centre-outside", found=tape(given, math.hypot(x, y)))
    return Body(mass, mass * x, mass * y)


def _along(given: Given, swept: float, name: str, opposite: str) -> float:
    mass, reading, other = given.si("mass"), given.si(name), given.maybe(opposite)
    apart = given.si("apart")
    if apart > swept * (1 + 1e-9):
        raise InputError("apart", "apart", sweep=tape(given, swept))
    if reading > mass:
        raise InputError(name, "more-than-all", mass=grams(given, mass))
    if other is not None and abs(reading + other - mass) > standard("readings agree") * mass:
        raise InputError(opposite, "sum-off", sum=grams(given, reading + other), mass=grams(given, mass))
    return rebalance.centre_by_scale(mass, apart, reading, other)


def scale_spread(given: Given) -> float:
    """Standard uncertainty of the centre of mass by the scale, m."""
    apart, mass = given.si("apart"), given.si("mass")
    reading = apart * standard("scale read") / mass
    both = given.maybe("at_9") is not None and given.maybe("at_6") is not None
    return reading / math.sqrt(2) if both else math.hypot(reading, standard("supports set"))


# --- on the free spindle ------------------------------------------------------------------------------------


def hung(given: Given, swept: float) -> Body:
    """The blank by the weight that balances it; as it hangs still, its heavy side down."""
    about = given.maybe("about")
    mass = discs.disc_mass(swept, standard("hung thickness")) if about is None else about
    return Body(mass, 0.0, -balance.unbalance_of_weight(given.si("hung"), given.si("hung_at")))


def inertia(blank: Blank, mass: float) -> float:
    """Moment of inertia of a blank of that mass about its middle, kg m2, as if its mass lay evenly."""
    if blank.width_m is None:
        return swing.disc_inertia(mass, blank.across_m)
    return swing.oblong_inertia(mass, blank.across_m, blank.width_m)


@dataclass(frozen=True)
class Swing:
    """A blank let go on the free spindle: how long it swings, or that it stays where it is put."""

    given: Given
    blank: Blank
    swept: float

    @property
    def stays(self) -> bool:
        """Whether it stopped without swinging: what is out is under the spindle's friction."""
        return self.given.choice("swings") == "no"

    @property
    def mass(self) -> float:
        """The blank alone, kg."""
        return self.given.si("mass")

    @property
    def own_inertia(self) -> float:
        """Of the blank alone, kg m2."""
        return inertia(self.blank, self.mass)

    @property
    def chuck_inertia(self) -> float | None:
        """Of chuck or faceplate, kg m2; None where it was not given."""
        mass = self.given.maybe("chuck_mass")
        if mass is None:
            return None
        return swing.disc_inertia(mass, self.given.si("chuck_across"))

    @property
    def inertia(self) -> float:
        """Of all that was told, kg m2."""
        return self.own_inertia + (self.chuck_inertia or 0.0)

    @property
    def left_out(self) -> float:
        """What a chuck that was not told may add, as a share of the out of balance."""
        return standard("usual chuck") / self.inertia if self.chuck_inertia is None else 0.0

    @cached_property
    def periods(self) -> tuple[float, ...]:
        """Time of one swing there and back by each timing, s.

        Raises
        ------
        InputError
            ``times-apart`` where they cannot be of one blank.
        """
        times = self.given.many("timings")
        if max(times) > standard("times apart") * min(times):
            low, high = (f"{seconds:.3g} s" for seconds in (min(times), max(times)))
            raise InputError("timings", "times-apart", low=low, high=high)
        return tuple(seconds / self.given.si("counted") for seconds in times)

    @property
    def period(self) -> float:
        """Of one swing, s: the mean of the timings."""
        return sum(self.periods) / len(self.periods)

    @property
    def miscounted(self) -> bool:
        """Whether two timings lie about one swing apart."""
        most, least = max(self.periods), min(self.periods)
        return (most - least) * self.given.si("counted") > standard("swing apart") * self.period

    @property
    def reach(self) -> float:
        """How far it swung to each side, rad; 0 where it was not told, for a small swing."""
        degrees = self.given.maybe("reach")
        return 0.0 if degrees is None else math.radians(degrees)

    @property
    def wide(self) -> bool:
        """Whether it swung further than a small swing may."""
        return self.reach > standard("small swing") * (1 + 1e-9)

    @cached_property
    def unbalance(self) -> float:
        """U, kg m: by the time of a swing, or the most that friction hides.

        Raises
        ------
        InputError
            ``too-quick`` where the centre of mass would lie outside the blank.
        """
        if self.stays:
            return self._hidden()
        found = swing.unbalance_of_swing(self.inertia, self.period, self.reach)
        if found / self.mass > self.swept / 2:
            raise InputError("timings", "too-quick", period=f"{self.period:.2g} s", found=tape(self.given, found / self.mass))
        return found

    def _hidden(self) -> float:
        least = self.given.maybe("least")
        if least is None:
            return self.mass * balance.guessed_eccentricity("done", self.swept, out_of_round=False)
        at = self.given.si("least_at")
        if at > self.swept / 2 * (1 + 1e-9):
            raise InputError("least_at", "beyond", rim=tape(self.given, self.swept / 2))
        return balance.unbalance_of_weight(least, at)

    @property
    def body(self) -> Body:
        """As it hangs still, its heavy side down."""
        return Body(self.mass, 0.0, -self.unbalance)

    @property
    def spread(self) -> float:
        """Standard uncertainty of the out of balance, kg m: the watch, counted twice, and how the mass lies in the blank."""
        count = len(self.periods)
        found = math.sqrt(sum((period - self.period) ** 2 for period in self.periods) / (count - 1)) if count > 1 else 0.0
        watch = max(found, standard("stop watch") / self.given.si("counted")) / math.sqrt(count)
        return self.unbalance * math.hypot(2 * watch / self.period, standard("spread inertia"))
