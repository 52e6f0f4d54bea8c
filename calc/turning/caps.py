"""How fast a rim may run and how warm resin may get: caps that we chose beside printed tables.

Symbols inside the functions: D diameter swept, n spindle speed in rpm, v rim speed.
The rows, each with its basis, are in ``data/speed_caps.csv``.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import cache
from typing import Literal

from calc.sources import table

Operation = Literal["rough", "finish", "sand", "power", "paste"]
Condition = Literal["solid", "filled", "loose", "cracked"]


@cache
def caps() -> Mapping[str, Mapping[str, float]]:
    """The rows of ``data/speed_caps.csv`` as floats in SI (rpm for spindle speed), by name.

    Returns
    -------
    Mapping
        name -> ``rim`` (m/s), ``rpm``, ``diameter`` (m), each only where the row has it.

    Examples
    --------
    >>> caps()["rough-large"]
    {'rim': 8.0, 'diameter': 0.25}

    References
    ----------
    Each row of the table names its own.
    """
    return {
        row["name"]: {
            key: float(row[column]) * scale
            for key, column, scale in (("rim", "rim_m_per_s", 1.0), ("rpm", "rpm", 1.0), ("diameter", "diameter_mm", 1e-3))
            if row[column]
        }
        for row in table("speed_caps")
    }


def rim_speed(diameter_m: float, speed_rpm: float) -> float:
    """Rim speed v = pi D n / 60.

    Parameters
    ----------
    diameter_m : D, m, 0 or more.
    speed_rpm : n, rpm, 0 or more.

    Returns
    -------
    float
        m/s.

    Examples
    --------
    >>> round(rim_speed(0.300, 1000), 3)
    15.708

    References
    ----------
    Definition.
    """
    return math.pi * diameter_m * speed_rpm / 60.0


def speed_at_rim_speed(diameter_m: float, rim_m_per_s: float) -> float:
    """Spindle speed at a rim speed: n = 60 v / (pi D).

    Parameters
    ----------
    diameter_m : D, m, more than 0.
    rim_m_per_s : v, m/s, 0 or more.

    Returns
    -------
    float
        rpm.

    Examples
    --------
    >>> round(speed_at_rim_speed(0.300, 12), 1)
    763.9

    References
    ----------
    Definition.
    """
    return 60.0 * rim_m_per_s / (math.pi * diameter_m)


def diameter_at_rim_speed(rim_m_per_s: float, speed_rpm: float) -> float:
    """Largest diameter that stays at a rim speed: D = 60 v / (pi n).

    Parameters
    ----------
    rim_m_per_s : v, m/s, 0 or more.
    speed_rpm : n, rpm, more than 0.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> round(diameter_at_rim_speed(18.5, 2000), 4)
    0.1767

    References
    ----------
    Definition.
    """
    return 60.0 * rim_m_per_s / (math.pi * speed_rpm)


def roughing_rim_speed(diameter_m: float) -> float:
    """Cap on rim speed while the work is out of round: 4 m/s up to 75 mm, in a straight line to 8 m/s at 250 mm.

    Parameters
    ----------
    diameter_m : largest circle swept, corner to corner, m, more than 0.

    Returns
    -------
    float
        m/s.

    Notes
    -----
    A line drawn beside the printed roughing speeds in ``data/roughing_cells.csv``: 2.5 to 4 m/s
    on the smallest work, 6 to 6.7 m/s on the largest; none printed is above 8 m/s.
    The spindle speed it gives falls with every larger diameter.

    Examples
    --------
    >>> [round(roughing_rim_speed(mm / 1000), 2) for mm in (50, 75, 150, 250, 400)]
    [4.0, 4.0, 5.71, 8.0, 8.0]

    References
    ----------
    lathe-manuals; the line is our judgement.
    """
    small, large = caps()["rough-small"], caps()["rough-large"]
    along = (diameter_m - small["diameter"]) / (large["diameter"] - small["diameter"])
    return small["rim"] + min(max(along, 0.0), 1.0) * (large["rim"] - small["rim"])


def operation_rim_speed(operation: Operation, diameter_m: float) -> float:
    """Cap on rim speed by what is done.

    Parameters
    ----------
    operation : ``rough`` out of round, ``finish`` cut, ``sand`` by hand, ``power`` sanding, ``paste`` rubbed by hand.
    diameter_m : largest circle swept, m, more than 0.

    Returns
    -------
    float
        m/s.

    Examples
    --------
    >>> operation_rim_speed("paste", 0.45)
    12.0

    References
    ----------
    trade-6000-9000, milton-wohlers-1919; our judgement.
    """
    return roughing_rim_speed(diameter_m) if operation == "rough" else caps()["finish"]["rim"]


def condition_rim_speed(condition: Condition) -> float:
    """Cap on rim speed by how the work looks.

    Parameters
    ----------
    condition : ``solid``, ``filled``, ``loose`` or ``cracked``.

    Returns
    -------
    float
        m/s.

    Notes
    -----
    A crack right through, an opened bond or loose wood has no cap: it is not spun.

    Examples
    --------
    >>> [condition_rim_speed(c) for c in ("solid", "filled", "loose", "cracked")]
    [12.0, 9.0, 6.0, 3.0]

    References
    ----------
    Our judgement.
    """
    return caps()[condition]["rim"]


def rubbing_speed(diameter_m: float) -> float:
    """Spindle speed at which resin that is sanded or rubbed with paste by hand stays cool enough.

    From 250 mm the lower of 400 rpm and 9.5 m/s; below, the lower of 800 rpm and 5 m/s.

    Parameters
    ----------
    diameter_m : D, m, more than 0.

    Returns
    -------
    float
        rpm.

    Notes
    -----
    The two rules part by 5 % where they meet at 250 mm (382 and 400 rpm). They are joined at 239 mm, where
    5 m/s is 400 rpm, so that a larger disc is never given a higher speed. Heat is what matters:
    hand-warm at most, and seconds, not minutes, in one place.

    Examples
    --------
    >>> [round(rubbing_speed(mm / 1000)) for mm in (80, 150, 250, 450, 600)]
    [800, 637, 400, 400, 302]

    References
    ----------
    Common practice, no source.
    """
    small, large = caps()["rub-small"], caps()["rub-large"]
    for_small = min(small["rpm"], speed_at_rim_speed(diameter_m, small["rim"]))
    for_large = min(large["rpm"], speed_at_rim_speed(diameter_m, large["rim"]))
    return max(for_small, for_large)
