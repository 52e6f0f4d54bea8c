"""The vibration of a headstock from a phone's motion sensor: what was sensed in, the figures for How fast? out.

Events, oldest first: ``at`` (s, any clock) and ``x``, ``y``, ``z`` (m/s2, with gravity or without).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from calc.questions import Given
from calc.runs import Event, Run, Screen
from calc.turning.sensed import Fault, sense

_FAULTS: Mapping[Fault, str] = {
    "short": "Too little came from the sensor. Keep this page open, and try again; some phones give none.",
    "coarse": "This phone's sensor is too slow to tell. Say what the lathe did in words instead.",
    "quiet": "Nothing beyond the sensor's own noise. Did the lathe turn, and is the phone firm on the headstock?",
    "unclear": "No one speed stands out. Fix the phone firmly on the headstock, hold one speed, and try again.",
}


def screen(given: Given, events: Sequence[Event], now: float) -> Screen:
    """What the phone felt, and what of it How fast? can take.

    Parameters
    ----------
    given : for the unit system; no input is needed.
    events : see the module's head.
    now : not used.

    Returns
    -------
    dict
        ``say`` in words; ``take``: inputs of How fast? as a maker would type them, empty where nothing can be told.
    """
    found = sense([(float(event["at"]), float(event["x"]), float(event["y"]), float(event["z"])) for event in events])
    reply: Screen = {"id": "vibration", "ended": True, "errors": []}
    if found.fault is not None:
        return reply | {"say": _FAULTS[found.fault], "take": {}}
    speed = given.write(found.speed_rpm, "speed", "down")
    vibration = given.write(found.vibration_m_per_s, "vibration", "up")
    say = f"{vibration} at {speed}. Take it only if the lathe turned at about {speed}."
    return reply | {"say": say, "take": {"felt": "measured", "felt_speed": str(speed), "vibration": str(vibration)}}


RUNS = (Run("vibration", "how-fast", screen, gaps=True),)
