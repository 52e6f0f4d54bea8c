"""Speeds as they are told: to two or three figures, to the safe side, the same wherever they stand."""

from __future__ import annotations

from calc.quantity.writing import HIGHEST_SHOWN_RPM, round_to, rpm_text
from calc.turning.speed import VARIABLE_STEP_RPM


def told_rpm(speed_rpm: float) -> str:
    """A limit in digits: down to a full ten from 100 rpm on, as a dial is set; what is under one is only said to be.

    >>> told_rpm(366.9), told_rpm(68.3), told_rpm(0.4), told_rpm(21850.0)
    ('360', '68', 'under 1', 'over 9999')
    """
    if speed_rpm < 1:
        return "under 1"
    if not 100 <= speed_rpm <= HIGHEST_SHOWN_RPM:
        return rpm_text(speed_rpm)
    return rpm_text(round_to(speed_rpm, VARIABLE_STEP_RPM, "down"))
