"""The air over a pour: dew point, humidity, blush.

Symbols inside the functions: T temperature (K), t the same in degrees Celsius, U relative humidity as a
fraction, e vapour pressure of water. Limits and errors, each with its source, are in ``data/air.csv``.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from calc.constants import ZERO_C
from calc.sources import in_si

MAGNUS_PRESSURE = 611.2  # Pa, over water (wmo-8)
MAGNUS_SLOPE = 17.62  # (wmo-8)
MAGNUS_OFFSET = 243.12  # degrees Celsius (wmo-8)


#: A figure of ``data/air.csv`` by the name of its row, in SI.
limit = in_si("air")


# ---------------------------------------------------------------- water in the air


def saturation_pressure(temperature_k: float) -> float:
    """Vapour pressure of water over water: e = 6.112 hPa exp(17.62 t / (243.12 + t)).

    Parameters
    ----------
    temperature_k : K, 233 to 333 (-40 to 60 °C).

    Returns
    -------
    float
        Pa.

    Examples
    --------
    >>> round(saturation_pressure(293.15))
    2333

    References
    ----------
    wmo-8.
    """
    t = temperature_k - ZERO_C
    return MAGNUS_PRESSURE * math.exp(MAGNUS_SLOPE * t / (MAGNUS_OFFSET + t))


def temperature_at_saturation(pressure_pa: float) -> float:
    """Temperature at which air with this vapour pressure is full of water: the inverse of :func:`saturation_pressure`.

    Parameters
    ----------
    pressure_pa : vapour pressure, Pa, more than 0.

    Returns
    -------
    float
        K.

    Examples
    --------
    >>> round(temperature_at_saturation(2333) - 273.15, 1)
    20.0

    References
    ----------
    wmo-8.
    """
    g = math.log(pressure_pa / MAGNUS_PRESSURE)
    return MAGNUS_OFFSET * g / (MAGNUS_SLOPE - g) + ZERO_C


def dew_point(temperature_k: float, humidity: float) -> float:
    """Temperature at which this air begins to drop its water.

    Parameters
    ----------
    temperature_k : air, K.
    humidity : relative, fraction, above 0 to 1.

    Returns
    -------
    float
        K; good to 0.4 K from -40 to 50 °C.

    Examples
    --------
    20 °C at 65 %:

    >>> round(dew_point(293.15, 0.65) - 273.15, 2)
    13.22

    References
    ----------
    wmo-8.
    """
    return temperature_at_saturation(humidity * saturation_pressure(temperature_k))


def humidity_at(dew_point_k: float, temperature_k: float) -> float:
    """Relative humidity of air with this dew point at another temperature, no water added or taken.

    Parameters
    ----------
    dew_point_k : K.
    temperature_k : what the air is warmed or cooled to, K.

    Returns
    -------
    float
        fraction; over 1 means that water drops out.

    Examples
    --------
    Air of 10 °C at 90 %, warmed to 20 °C:

    >>> round(humidity_at(dew_point(283.15, 0.9), 293.15), 2)
    0.47

    References
    ----------
    wmo-8.
    """
    return saturation_pressure(dew_point_k) / saturation_pressure(temperature_k)


def temperature_for_humidity(dew_point_k: float, humidity: float) -> float:
    """Temperature at which air with this dew point has this relative humidity.

    Parameters
    ----------
    dew_point_k : K.
    humidity : fraction, above 0 to 1.

    Returns
    -------
    float
        K.

    Examples
    --------
    >>> round(temperature_for_humidity(dew_point(293.15, 0.65), 0.65) - 273.15, 6)
    20.0

    References
    ----------
    wmo-8.
    """
    return temperature_at_saturation(saturation_pressure(dew_point_k) / humidity)


@dataclass(frozen=True)
class Air:
    """The air of the room and the coldest surface in it, with how far the instruments may be off.

    Parameters
    ----------
    room_k, humidity : of the air; K, fraction.
    surface_k : the coldest of wood, mould and layer beneath, K.
    measured : whether the surface was measured; if not, it has the room thermometer's error.
    humidity_error, temperature_error_k : of the hygrometer and of each thermometer, either way.
    """

    room_k: float
    humidity: float
    surface_k: float
    measured: bool
    humidity_error: float
    temperature_error_k: float

    @property
    def dew_k(self) -> float:
        """Dew point, K."""
        return dew_point(self.room_k, self.humidity)

    @property
    def margin_k(self) -> float:
        """How far the coldest surface is over the dew point, K; below 0 water settles on it."""
        return self.surface_k - self.dew_k

    @property
    def needed_k(self) -> float:
        """The least a surface should have, K: the dew point and the margin."""
        return self.dew_k + limit("dew margin")

    @property
    def damp_below_k(self) -> float:
        """Cooled below this, K, the air is over the humidity limit."""
        return temperature_for_humidity(self.dew_k, limit("humidity limit"))

    @property
    def blush_below_k(self) -> float:
        """Below this, K, it is cold and damp together, and amine blush likely."""
        return min(limit("blush temperature"), temperature_for_humidity(self.dew_k, limit("blush humidity")))

    @property
    def coldest_k(self) -> float:
        """Room or surface, whichever is colder, K."""
        return min(self.room_k, self.surface_k)

    @property
    def wet(self) -> bool:
        """Whether the surface lacks its margin over the dew point, or the air is over the humidity limit."""
        return self.surface_k < self.needed_k or self.room_k < self.damp_below_k

    @property
    def blush_likely(self) -> bool:
        """Cold and damp together."""
        return self.coldest_k < self.blush_below_k

    @property
    def margin_error_k(self) -> float:
        """How far the margin may be off, K: each instrument's part by itself, added in squares (gum).

        Of the hygrometer the damp side counts. A surface that was not measured has the room's reading, and its
        error moves with it.
        """
        step = self.temperature_error_k
        from_humidity = dew_point(self.room_k, min(1.0, self.humidity + self.humidity_error)) - self.dew_k
        from_room = dew_point(self.room_k + step, self.humidity) - self.dew_k
        parts = (from_humidity, from_room, step) if self.measured else (from_humidity, step - from_room)
        return math.hypot(*parts)

    @property
    def doubtful(self) -> bool:
        """Whether the margin would be lost with the instruments off by their errors."""
        return self.margin_k - self.margin_error_k < limit("dew margin")

    @property
    def dampest(self) -> Air:
        """The same air, as damp as it may be where the hygrometer reads too low by its error."""
        return replace(self, humidity=min(1.0, self.humidity + self.humidity_error))

    @property
    def doubtful_damp(self) -> bool:
        """Whether it would be over the humidity limit, or likely to blush, with the hygrometer off by its error."""
        return self.room_k < self.dampest.damp_below_k or self.dampest.blush_likely

    @property
    def dry_to(self) -> float:
        """What the hygrometer should read, fraction, so that the air is dry enough even where it reads too low by its error."""
        return max(0.0, self.dry_enough - self.humidity_error)

    @property
    def least_k(self) -> float:
        """How cold room and surfaces may get with the water that is in the air, K: the warmest of the three."""
        return max(self.needed_k, self.damp_below_k, self.blush_below_k)

    @property
    def dry_enough(self) -> float:
        """Humidity, fraction, at which this room and this surface would do as warm as they are."""
        bounds = [limit("humidity limit"), humidity_at(self.surface_k - limit("dew margin"), self.room_k)]
        if self.coldest_k < limit("blush temperature"):
            bounds.append(limit("blush humidity") * humidity_at(self.coldest_k, self.room_k))
        return min(bounds)
