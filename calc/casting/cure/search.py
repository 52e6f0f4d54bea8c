"""Finding the input at which a peak is met: near the edge of a runaway a peak rises without measure, its reciprocal does not."""

from __future__ import annotations

import math
from collections.abc import Callable, Generator

#: How far ln(input) moves for a step of 1 / (rise in K): from a slab at 45, 65 and 100 °C (arithmetic on a worked table).
_SLOPE = 6.4
_NEAR_K = 1.5  # as close as this, the slope takes it the rest of the way
_FARTHEST = math.log(2.0)
_NARROW = 0.004
_MOST_RUNS = 14


def meeting(
    peak: Callable[[float], float], air_k: float, target_k: float, guess: float, low: float, high: float, cap_k: float = math.inf
) -> Generator[None, None, float]:
    """The input whose peak is ``target_k``, by a bracketed secant in ln(input) against 1 / (peak - air); a pause after each try.

    Parameters
    ----------
    peak : peak (K) of an input; it must never fall as the input grows.
    air_k, target_k : K, the second the higher.
    guess, low, high : inputs, each more than 0; ``low`` or ``high`` comes back where even that end does not meet the target.
    cap_k : peaks are not told beyond this, K: such a one only says 'above'.

    Returns
    -------
    generator
        its value is the input.

    Examples
    --------
    >>> from calc.steps import at_once
    >>> round(at_once(meeting(lambda depth: 300 + 100 * depth**2, 300.0, 325.0, 0.1, 0.01, 10.0)), 2)
    0.5

    References
    ----------
    arithmetic.
    """
    wanted = 1 / (target_k - air_k)
    first, last = math.log(low), math.log(high)
    under: list[_Try] = []
    over: list[_Try] = []  # told exactly
    capped = math.inf  # the smallest that is only known to be above
    x = min(max(math.log(guess), first), last)
    stride = _FARTHEST / 4
    for _ in range(_MOST_RUNS):
        found = peak(math.exp(x))
        here = (x, 1 / max(found - air_k, 1e-3))
        if found >= cap_k:
            capped = min(capped, x)
        else:
            (under if found < target_k else over).append(here)
        if abs(found - target_k) <= _NEAR_K:
            x += _slope(under, over) * (here[1] - wanted)
            break
        left = max(under)[0] if under else -math.inf
        right = min(capped, min(over)[0] if over else math.inf)
        if left >= last or right <= first:
            break
        if right - left < _NARROW:
            x = left
            break
        if under or over:
            near = min(under + over, key=lambda tried: abs(tried[1] - wanted))
            x = near[0] + min(max(_slope(under, over) * (near[1] - wanted), -_FARTHEST), _FARTHEST)
        else:
            x, stride = right - stride, min(2 * stride, _FARTHEST)
        if left > -math.inf and right < math.inf:  # well within the bracket, and half-way where its upper end is not told
            width = right - left
            x = min(max(x, left + 0.05 * width), right - (0.4 if capped == right else 0.05) * width)
        x = min(max(x, first), last)
        yield
    return math.exp(min(max(x, first), last))


_Try = tuple[float, float]


def _slope(under: list[_Try], over: list[_Try]) -> float:
    """How far ln(input) goes for a step of the reciprocal rise: between the two tries nearest the target, or the usual one."""
    pair = sorted(under)[-1:] + sorted(over)[:1]
    if len(pair) < 2:
        pair = sorted(under)[-2:] or sorted(over)[:2]
    if len(pair) == 2 and pair[0][1] > pair[1][1]:
        return (pair[1][0] - pair[0][0]) / (pair[0][1] - pair[1][1])
    return _SLOPE
