"""The air over a pour: dew point, humidity, blush; and what warm resin gains and loses.

Symbols inside the functions: T temperature (K), t the same in degrees Celsius, U relative humidity as a
fraction, e vapour pressure of water. Limits and errors, each with its source, are in ``data/air.csv``.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.sources import value

ZERO_CELSIUS = 273.15  # K, exact
GAS_CONSTANT = 8.314  # J/(mol K), as the fits of the viscosity series used it
MAGNUS_PRESSURE = 611.2  # Pa, over water (wmo-8)
MAGNUS_SLOPE = 17.62  # (wmo-8)
MAGNUS_OFFSET = 243.12  # degrees Celsius (wmo-8)


def limit(name: str) -> float:
    """A figure of ``data/air.csv`` in SI: temperatures in K, shares as fractions.

    Parameters
    ----------
    name : of the row.

    Returns
    -------
    float

    Examples
    --------
    >>> limit("blush temperature"), limit("humidity limit")
    (293.15, 0.85)

    References
    ----------
    Each row of the table names its own.
    """
    found = value("air", name)
    return found + ZERO_CELSIUS if name in ("blush temperature", "viscosity at", "sheet temperature") else found


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
    t = temperature_k - ZERO_CELSIUS
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
    return MAGNUS_OFFSET * g / (MAGNUS_SLOPE - g) + ZERO_CELSIUS


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


# ---------------------------------------------------------------- cold wood brought in


def time_to_warm(thickness_m: float, start_k: float, room_k: float, target_k: float) -> float:
    """How long the middle of a board takes to reach ``target_k``, air on both faces.

    z tan z = h L / k; t = (L^2 / (a z^2)) ln(C / theta), with L half the thickness, C = 4 sin z / (2 z + sin 2 z)
    and theta = (room - target) / (room - start).

    Parameters
    ----------
    thickness_m : m, more than 0.
    start_k, room_k : wood and air, K.
    target_k : K, below ``room_k`` when ``start_k`` is below it.

    Returns
    -------
    float
        s; 0 when it is that warm already.

    Raises
    ------
    ValueError
        the room is not warmer than the target: it never gets there.

    Notes
    -----
    Hardwood of 670 kg/m3 in still air, slow side: a fan makes it quicker, a board flat on a bench slower.

    Examples
    --------
    50 mm of wood from 5 °C to 17 °C in a room of 20 °C, in hours:

    >>> round(time_to_warm(0.050, 278.15, 293.15, 290.15) / 3600, 1)
    2.8

    References
    ----------
    plane-wall; iso-6946; wood-handbook-4-15.
    """
    if start_k >= target_k:
        return 0.0
    if room_k <= target_k:
        raise ValueError("the room is not warmer than the target")
    half = thickness_m / 2
    z = plane_wall_root(limit("room film") * half / limit("wood conductivity"))
    c = 4 * math.sin(z) / (2 * z + math.sin(2 * z))
    theta = (room_k - target_k) / (room_k - start_k)
    return half**2 / (limit("wood diffusivity") * z**2) * math.log(c / theta)


def plane_wall_root(biot: float) -> float:
    """First root of z tan z = Bi, by halving the interval.

    Parameters
    ----------
    biot : h L / k, more than 0.

    Returns
    -------
    float
        z, radians, 0 to pi/2.

    Examples
    --------
    >>> round(plane_wall_root(1.25), 4)
    0.9308

    References
    ----------
    plane-wall.
    """
    low, high = 0.0, math.pi / 2
    for _ in range(60):
        z = (low + high) / 2
        low, high = (z, high) if z * math.tan(z) < biot else (low, z)
    return (low + high) / 2


# ---------------------------------------------------------------- warm resin


def viscosity_ratio(temperature_k: float, reference_k: float, energy: float) -> float:
    """Viscosity over that at the reference: exp((E / R) (1 / T - 1 / T_ref)).

    Parameters
    ----------
    temperature_k, reference_k : resin, K.
    energy : activation energy E, J/mol; see ``data/air.csv``.

    Returns
    -------
    float

    Notes
    -----
    Fitted from 25 to 70 °C on two thinned resins; the unmixed resin, before it thickens by curing.

    Examples
    --------
    Ten degrees warmer than 25 °C:

    >>> round(viscosity_ratio(308.15, 298.15, 65000), 2)
    0.43

    References
    ----------
    viscosity-series.
    """
    return math.exp(energy / GAS_CONSTANT * (1 / temperature_k - 1 / reference_k))


def working_time_ratio(temperature_k: float, reference_k: float, halving_step_k: float) -> float:
    """Working time over that at the reference: half for every step warmer, 2^-((T - T_ref) / step).

    Parameters
    ----------
    temperature_k, reference_k : resin, K.
    halving_step_k : K; 10 by the rule, 15 by one maker.

    Returns
    -------
    float

    Notes
    -----
    Says nothing of the heat that a batch makes by itself, which shortens it further in a full bucket.

    Examples
    --------
    >>> working_time_ratio(308.15, 298.15, 10)
    0.5

    References
    ----------
    pot-life-rule.
    """
    return math.exp2(-(temperature_k - reference_k) / halving_step_k)
