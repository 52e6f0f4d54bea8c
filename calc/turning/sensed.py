"""Vibration from the motion sensor of a phone on the headstock: how fast the spindle turns, and how fast the headstock moves to and fro.

Symbols inside the functions: a acceleration, f frequency, w = 2 pi f, v vibration speed (root mean square).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from calc.sources import value

Sample = tuple[float, float, float, float]
Fault = Literal["short", "coarse", "quiet", "unclear"]

SPAN_S = value("turning", "sensed span")
LEAST_SPAN_S = value("turning", "sensed least span")
LEAST_RATE_HZ = value("turning", "sensed least rate")
SLOWEST_HZ = value("turning", "sensed slowest") / 60
SHARE_OF_HALF_RATE = value("turning", "sensed share of half rate")
QUIET_M_PER_S2 = value("turning", "sensed quiet")
CLEAR_SHARE = value("turning", "sensed clear")
LEAST_OF_STRONGEST = value("turning", "sensed least of strongest")
_STEPS_PER_BIN = 2


@dataclass(frozen=True)
class Sensed:
    """What was sensed: spindle speed (rpm) and vibration (m/s, root mean square); or why neither can be told."""

    speed_rpm: float = 0.0
    vibration_m_per_s: float = 0.0
    fault: Fault | None = None


def sense(samples: Sequence[Sample]) -> Sensed:
    """Spindle speed from the strongest to and fro, and the vibration of all of it: v = a / w.

    Parameters
    ----------
    samples : time (s, growing) and acceleration along three axes at right angles (m/s2, with gravity or without).

    Returns
    -------
    Sensed
        ``short`` when less than four seconds came, ``coarse`` when too few in each, ``quiet`` when a phone's own noise
        hides it, ``unclear`` when no one speed stands out.

    Notes
    -----
    All of the motion is taken as if it came at that speed: it reads too large where faster hum is in it. A spindle faster than
    half the phone's rate shows as a slower one; it then reads too large. Where a hum all but hides the turn, the speed told is
    the hum's and the vibration may read too small: the speed has to be the lathe's, or nothing counts.

    Examples
    --------
    0.30 m/s2 root mean square at 600 rpm:

    >>> turn = [(i / 100, 0.30 * math.sqrt(2) * math.cos(2 * math.pi * 10 * i / 100), 0.0, 9.81) for i in range(600)]
    >>> found = sense(turn)
    >>> round(found.speed_rpm), round(1000 * found.vibration_m_per_s, 1)
    (600, 4.8)

    References
    ----------
    Steady to and fro at one frequency: arithmetic. The bounds are our judgement.
    """
    if not samples:
        return Sensed(fault="short")
    end = samples[-1][0]
    used = [sample for sample in samples if sample[0] > end - SPAN_S]
    span = end - used[0][0]
    if span < LEAST_SPAN_S:
        return Sensed(fault="short")
    rate = (len(used) - 1) / span
    if rate < LEAST_RATE_HZ:
        return Sensed(fault="coarse")
    times = [sample[0] - used[0][0] for sample in used]
    axes = [_centred([sample[axis] for sample in used]) for axis in (1, 2, 3)]
    square = sum(a * a for axis in axes for a in axis) / len(used)
    if math.sqrt(square) < QUIET_M_PER_S2:
        return Sensed(fault="quiet")
    found = _strongest(times, axes, span, SHARE_OF_HALF_RATE * rate / 2)
    if _square_at(times, axes, found) < CLEAR_SHARE * square:
        return Sensed(fault="unclear")
    return Sensed(60.0 * found, math.sqrt(square) / (2 * math.pi * found))


def _centred(values: list[float]) -> list[float]:
    mean = math.fsum(values) / len(values)
    return [value - mean for value in values]


def _strongest(times: list[float], axes: list[list[float]], span: float, highest: float) -> float:
    """The frequency of the largest motion, as speed and not as acceleration: the turn, not its overtones; Hz."""
    step = 1.0 / (_STEPS_PER_BIN * span)
    tapered = [[a * (0.5 - 0.5 * math.cos(2 * math.pi * t / span)) for a, t in zip(axis, times, strict=True)] for axis in axes]
    places = [SLOWEST_HZ + step * i for i in range(int((highest - SLOWEST_HZ) / step) + 1)]
    powers = [_power(times, tapered, f) for f in places]
    least = LEAST_OF_STRONGEST * max(powers)
    best = max((power / f**2, f) for power, f in zip(powers, places, strict=True) if power >= least)[1]
    for _ in range(4):  # closer and closer: each time to half the step
        step /= 2
        best = max((best - step, best, best + step), key=lambda f: _power(times, tapered, f) / f**2)
    return best


def _power(times: list[float], axes: list[list[float]], frequency: float) -> float:
    turns = [complex(math.cos(2 * math.pi * frequency * t), -math.sin(2 * math.pi * frequency * t)) for t in times]
    return sum(abs(sum(a * turn for a, turn in zip(axis, turns, strict=True))) ** 2 for axis in axes)


def _square_at(times: list[float], axes: list[list[float]], frequency: float) -> float:
    """Mean square of the part at a frequency, all axes together."""
    return 2 * _power(times, axes, frequency) / len(times) ** 2
