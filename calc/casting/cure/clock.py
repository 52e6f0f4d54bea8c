"""How far resin is at a given hour, in a shop that is cooler by night.

Times are seconds from the moment the mould was filled. Once a casting has given off its heat, all of it has the
temperature of the shop: what follows is cure at that temperature, slowed as the resin turns to glass.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from calc.casting.cure.kinetics import MOST, Kinetics

DAY = 86400.0  # s
_STEP_A = 0.01  # most that the conversion may grow in one step
_STEP_S = 3600.0  # longest step
_SHORTEST = 1.0  # so that no step gets lost in rounding


@dataclass(frozen=True)
class Shop:
    """Temperature of the air around the mould, by day and by night.

    Parameters
    ----------
    day_k, night_k : K; alike for a shop that keeps its temperature.
    poured : time of day at which the mould was filled, s after midnight.
    night_from, night_to : time of day, s after midnight; alike means no night.
    """

    day_k: float
    night_k: float
    poured: float = 0.0
    night_from: float = 0.0
    night_to: float = 0.0

    @property
    def steady(self) -> bool:
        """Whether it keeps its temperature."""
        return self.day_k == self.night_k or self.night_from == self.night_to

    @property
    def warmest_k(self) -> float:
        """K."""
        return self.day_k if self.steady else max(self.day_k, self.night_k)

    @property
    def coldest_k(self) -> float:
        """K."""
        return self.day_k if self.steady else min(self.day_k, self.night_k)

    def at(self, seconds: float) -> float:
        """Temperature ``seconds`` after the pour, K."""
        if self.steady:
            return self.day_k
        since = (self.poured + seconds - self.night_from) % DAY
        return self.night_k if since < (self.night_to - self.night_from) % DAY else self.day_k

    def next_change(self, seconds: float) -> float:
        """The next moment after ``seconds`` at which day turns to night or night to day, s after the pour; infinite when steady."""
        if self.steady:
            return float("inf")
        waits = ((edge - self.poured - seconds) % DAY or DAY for edge in (self.night_from, self.night_to))
        return seconds + max(min(waits), _SHORTEST)

    def without_night(self) -> Shop:
        """The same shop kept as warm by night as by day."""
        return Shop(self.day_k, self.day_k, self.poured)

    def mean_speed_up(self, kinetics: Kinetics) -> float:
        """How many times faster than at 25 °C the reaction goes, over a whole day."""
        if self.steady:
            return kinetics.speed_up(self.day_k)
        share = ((self.night_to - self.night_from) % DAY) / DAY
        return share * kinetics.speed_up(self.night_k) + (1 - share) * kinetics.speed_up(self.day_k)


def march(kinetics: Kinetics, temperature: Callable[[float], float], start_s: float, conversion: float, most_s: float) -> Iterator[tuple[float, float]]:
    """Conversion hour by hour at a temperature that is given, with the brake of the glass.

    Parameters
    ----------
    kinetics : the reaction.
    temperature : K, of the time in s.
    start_s, conversion : where it starts.
    most_s : it ends at or a little after this time, s.

    Returns
    -------
    iterator of (float, float)
        (time, s; conversion), the start first.

    Notes
    -----
    The midpoint rule, with steps that let the conversion grow by a hundredth at most. No heat of its own: for thin
    resin, and for what comes after the heat.

    Examples
    --------
    >>> *_, (seconds, conversion) = march(Kinetics(1e-4), lambda t: 298.15, 0.0, 0.001, 3600.0)
    >>> round(conversion, 3), round(Kinetics(1e-4).conversion_after(seconds, 298.15, 0.001), 3)
    (0.067, 0.067)

    References
    ----------
    cure-fit.
    """
    time = start_s
    yield time, conversion
    while time < most_s and conversion < MOST:
        rate = kinetics.rate(conversion, temperature(time))
        step = max(_SHORTEST, min(_STEP_S, _STEP_A / max(rate, 1e-12)))
        middle = min(conversion + rate * step / 2, MOST)
        time, conversion = time + step, min(conversion + step * kinetics.rate(middle, temperature(time + step / 2)), MOST)
        yield time, conversion
