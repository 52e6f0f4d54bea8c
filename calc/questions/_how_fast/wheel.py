"""A buffing wheel: its own size and marking decide, not the work's."""

from __future__ import annotations

from calc.answers import Answer, Caution, Figure, Headline, Working, figure
from calc.quantity.writing import rpm_text
from calc.questions import Given
from calc.questions._how_fast.card import card
from calc.questions._how_fast.rounded import told_rpm
from calc.questions._how_fast.words import REFLEX, extra, rung, said
from calc.questions._how_fast.working import setting_working
from calc.turning import caps, speed, vibrating
from calc.turning.job import Measured

_WHY = {
    "rim": "Unmarked wheel on resin. Common practice, no source.",
    "marked": "Marked on the wheel.",
    "heat": "Beyond this a wheel burns resin. Common practice, no source.",
    "own": "Yours, not ours.",
    "vibration": "From what you felt or measured.",
    "lathe": "The lathe's own highest.",
}


def wheel(given: Given, speeds: speed.Speeds, felt: Measured | None) -> Answer:
    """The top speed of a buffing wheel.

    Parameters
    ----------
    given : the question's inputs; ``wheel`` is its size.
    speeds : what the lathe can be set to.
    felt : a vibration that was felt or measured.

    Returns
    -------
    Answer
        ``values``: ``speed`` (the setting, rpm; none for a refusal) and ``ceiling`` (rpm).
    """
    diameter = given.si("wheel")
    trembled = None if felt is None or felt.at_most else felt  # that it ran still lowers nothing
    felt_rpm = None
    if trembled is not None:
        limit = trembled.held_to_m_per_s or vibrating.vibration_limit("zone-c")
        felt_rpm = vibrating.speed_from_measured_vibration(trembled.speed_rpm, trembled.vibration_m_per_s, limit)
    top = speed.settle(speed.wheel_limits(diameter, given.maybe("wheel_marked"), given.maybe("own"), felt_rpm), speeds)
    warm_rpm = caps.speed_at_rim_speed(diameter, caps.caps()["wheel-caution"]["rim"])
    setting = top.setting_rpm
    shown = None if setting is None else given.write(setting, "speed", "down")
    headline = _headline(given, top, speeds, warm_rpm, trembled is not None)
    return Answer(
        headline,
        lines=() if setting is None else REFLEX,
        limits=tuple(rung(limit, _WHY[limit.id], limit is top.rules) for limit in top.limits),
        cautions=_cautions(given, top, speeds, warm_rpm, felt),
        working=(_rim_working("Wheel's rim", diameter, "wheel-cap"), _rim_working("Heat felt from", diameter, "wheel-caution"), setting_working(speeds, top)),
        sources=("practice", "judgement", "club-rules"),
        values={
            "speed": figure(shown, "rotational speed", setting),
            "ceiling": Figure(top.speed_rpm, "rotational speed", f"{rpm_text(top.speed_rpm)} rpm"),
        },
        extra=extra(top) | {"card": card(given, headline, told=True)},
    )


def _headline(given: Given, top: speed.TopSpeed, speeds: speed.Speeds, warm_rpm: float, felt: bool) -> Headline:
    if top.setting_rpm is None:
        return Headline("Top speed", "Not yet", "", _remedy(given, top, speeds), "stop")
    hot = top.setting_rpm > warm_rpm
    return Headline("Top speed", rpm_text(top.setting_rpm), "rpm", "Light touch, keep the work moving.", "caution" if hot or felt else "go")


def _remedy(given: Given, top: speed.TopSpeed, speeds: speed.Speeds) -> str:
    if top.hard.id == "rim":
        fits = caps.diameter_at_rim_speed(caps.caps()["wheel-cap"]["rim"], speeds.lowest_rpm)
        return f"Fit a wheel of {given.write(fits, 'length', 'down')} or less."
    if top.hard.id == "marked":
        return f"Fit a wheel marked for {rpm_text(speeds.lowest_rpm)} rpm or more."
    if top.hard.id == "vibration":
        return "Change the wheel or true it up: it is out of balance."
    return "Use a lathe that goes slower."


def _cautions(given: Given, top: speed.TopSpeed, speeds: speed.Speeds, warm_rpm: float, felt: Measured | None) -> tuple[Caution, ...]:
    out: list[Caution] = []
    if top.setting_rpm is None:
        text = f"Why not: {said(top.hard)} allows {told_rpm(top.hard_rpm)} rpm, and the lowest here is {rpm_text(speeds.lowest_rpm)} rpm."
        out.append(Caution("X2", "stop", text))
    else:
        if top.setting_rpm > warm_rpm:
            out.append(Caution("wheel-heat", "caution", f"From {told_rpm(warm_rpm)} rpm this wheel heats resin fast."))
        marked, own = given.maybe("wheel_marked"), given.maybe("own")
        if marked is not None and own is not None and own > marked:
            out.append(Caution("X11", "stop", f"Your own limit is over the wheel's marking: {rpm_text(marked)} rpm counts."))
        if felt is not None and felt.speed_rpm > top.setting_rpm:
            where = "belt" if speeds.steps_rpm else "dial"
            out.append(Caution("X10", "caution", f"The {where} may still stand at {rpm_text(felt.speed_rpm)} rpm: lowest first, lathe off."))
        if marked is None:
            out.append(Caution("X11", "caution", "No marking on it: look the wheel over, and stand aside as it runs up."))
    out.append(Caution("X13", "caution", "No gloves, no loose sleeves. Work low on the wheel, edges pointing away from its turning."))
    return tuple(out)


def _rim_working(title: str, diameter_m: float, cap: str) -> Working:
    rim = caps.caps()[cap]["rim"]
    numbers = f"60 000 × {rim:g} / (π × {1000 * diameter_m:.4g})"
    return Working(title, "n = 60 000 v / (π D)", numbers, f"{caps.speed_at_rim_speed(diameter_m, rim):.1f} rpm")
