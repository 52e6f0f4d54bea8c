"""Gates of the lathe: the blank, its mount and its speed, before a mounting is switched on.

Noise and thrown pieces remind and stop nobody.
"""

from __future__ import annotations

import math

from calc.safety.findings import Finding, Of, Part, State, found_for, judge, must
from calc.sources import value
from calc.turning.held import MOST_DIAMETER, MOST_OVERHANG

#: Level that may be heard for :data:`NOISE_HOURS_S`, dB(A), and the step that halves the time, dB.
NOISE_LEVEL_DB = value("gate_figures", "noise level")
NOISE_STEP_DB = value("gate_figures", "noise step")
NOISE_HOURS_S = value("gate_figures", "noise time") * 3600
DAY_S = 24 * 3600.0
#: Energy of the ball that the lesser of the two impact grades is tested with, J.
SHIELD_J = value("gate_figures", "shield")


def out_of_balance(speed_rpm: float | None, limit_rpm: float | None, of: Of = Of.THIS) -> Finding:
    """G8: the speed planned against the speed up to which the heavy side is within the machine's limit.

    Parameters
    ----------
    speed_rpm : planned, rpm.
    limit_rpm : what the heavy side allows on this lathe, from its manual or from 'How fast?', rpm. The push of a heavy side grows with the
        square of the speed, so a limit of the push is a limit of the speed.
    of : what that was found for.

    Returns
    -------
    Finding

    Examples
    --------
    >>> out_of_balance(400, 350).state.value, out_of_balance(400, None).state.value
    ('stop', 'not checked')

    References
    ----------
    Fact 5.11.
    """
    return judge("G8", [found_for(Part("balance", "rotational speed", speed_rpm, limit_rpm), of)])


def grip(across_m: float | None, least_m: float | None, sound: bool | None, *, sized: bool = True, found: str | None = None) -> Finding:
    """G9 at the mount: it is large enough, grips sound material, and was not found too weak.

    Parameters
    ----------
    across_m : tenon, recess, block or screw circle as it is, m.
    least_m : the least that the chuck's maker, or 'Will the mount hold?', asks for, m.
    sound : what it grips is sound; None where nobody looked.
    sized : the mount has a least size; between centres there is none.
    found : what 'Will the mount hold?' said: "alone", "tailstock" or "no"; None where it was not asked.

    Returns
    -------
    Finding

    Examples
    --------
    >>> grip(0.05, 0.05, True).state.value, grip(0.05, 0.06, True).state.value, grip(0.05, 0.05, None).state.value
    ('no stop found', 'stop', 'not checked')
    >>> grip(0.05, 0.05, True, found="no").state.value
    'stop'

    References
    ----------
    Facts 5.10 and 5.11.
    """
    size = [Part("grip", "length", across_m, least_m, at_most=False)] if sized else []
    weak = [must("holds", False)] if sized and found == "no" else []
    return judge("G9", [*size, *weak, must("sound", sound)])


def second_hold(
    hold: str | None,
    tailstock: bool | None,
    overhang_m: float | None,
    across_m: float | None,
    most: float = MOST_OVERHANG,
    *,
    found: str | None = None,
    sweeps_m: float | None = None,
) -> Finding:
    """G9 at the far end: a glued mount that was not found to hold alone, or one that reaches far out, has the tailstock up.

    Parameters
    ----------
    hold : "centres", "glue", "faceplate" or "chuck", or None.
    tailstock : it is up, or planned.
    overhang_m : from the mount to the middle of the work, m.
    across_m : tenon, block or screw circle, m.
    most : how far out it may reach without the tailstock, in widths of the mount. Basis: judgement.
    found : what 'Will the mount hold?' said: "alone" (with nothing at the far end), "tailstock" or "no"; None where it was not asked. A glued
        mount with no tailstock stops unless it was found to hold alone; reach and sweep are compared as well as far as they are told.
    sweeps_m : widest the work sweeps, m.

    Returns
    -------
    Finding

    Examples
    --------
    >>> second_hold("glue", False, 0.02, 0.1, found="alone").state.value, second_hold("glue", False, 0.12, 0.1, found="alone").state.value
    ('no stop found', 'stop')
    >>> second_hold("glue", False, 0.02, 0.1).state.value, second_hold("chuck", False, 0.05, 0.06).state.value
    ('stop', 'no stop found')
    >>> second_hold("chuck", False, 0.07, 0.06).state.value, second_hold(None, True, 0.07, 0.06).state.value
    ('stop', 'not checked')

    References
    ----------
    Facts 5.11 and 5.13.
    """
    if hold is None:
        return judge("G9", [must("hold", None)])
    if hold == "centres":
        return Finding("G9", State.CLEAR, (), "between-centres")
    if tailstock:
        return judge("G9", [must("tailstock", True)])
    if tailstock is not None and found == "tailstock":
        return judge("G9", [must("found-tailstock", False)])
    reach = Part("overhang", "length", overhang_m, None if across_m is None else most * across_m)
    if hold == "glue" and (tailstock is None or found != "alone"):
        return judge("G9", [must("glue-tailstock", tailstock)])
    if hold == "glue":
        wide = Part("wide", "length", sweeps_m, None if across_m is None else MOST_DIAMETER * across_m)
        told = [part for part in (reach, wide) if part.state is not State.UNCHECKED]
        return judge("G9", [must("alone", True), *told], "alone")
    if tailstock is None and reach.state is not State.CLEAR:
        return judge("G9", [must("tailstock", None)])
    return judge("G9", [reach])


def dial(
    speed_rpm: float | None,
    ceiling_rpm: float | None,
    highest_rpm: float | None,
    marked_rpm: float | None,
    *,
    marked: bool,
    of: Of = Of.THIS,
    lowest_rpm: float | None = None,
) -> Finding:
    """G10: the speed read on the dial against the ceiling for this piece, the machine's highest and the mount's marking.

    Parameters
    ----------
    speed_rpm : read on the dial, or the belt step, rpm.
    ceiling_rpm : for this diameter, condition and balance, rpm.
    highest_rpm : the machine's highest, rpm.
    marked_rpm : the marking on the chuck, rpm.
    marked : the mount carries a marking that must be read: a chuck does, a glue block does not.
    of : what the ceiling was found for.
    lowest_rpm : at the first power, the machine's lowest, rpm; None at every other moment, and where nobody said.

    Returns
    -------
    Finding

    Examples
    --------
    >>> dial(900, 800, 3000, None, marked=False).state.value, dial(800, 800, 3000, None, marked=True).state.value
    ('stop', 'not checked')

    References
    ----------
    Facts 5.9 and 5.10.
    """
    ceiling = found_for(Part("ceiling", "rotational speed", speed_rpm, ceiling_rpm), of)
    parts = [ceiling, Part("highest", "rotational speed", speed_rpm, highest_rpm)]
    if marked or marked_rpm is not None:
        parts.append(Part("marked", "rotational speed", speed_rpm, marked_rpm))
    if lowest_rpm is not None:
        parts.append(Part("lowest", "rotational speed", speed_rpm, lowest_rpm))
    return judge("G10", parts)


def sanding_speed(speed_rpm: float | None, ceiling_rpm: float | None, of: Of = Of.THIS) -> Finding:
    """G10 before sanding: the speed read on the dial against the ceiling for sanding.

    Parameters
    ----------
    speed_rpm, ceiling_rpm : rpm, or None.
    of : what the ceiling was found for.

    Returns
    -------
    Finding

    Examples
    --------
    >>> sanding_speed(500, 400).state.value
    'stop'

    References
    ----------
    Fact 5.13.
    """
    return judge("G10", [found_for(Part("sanding", "rotational speed", speed_rpm, ceiling_rpm), of)])


def swing(sweeps_m: float | None, swing_m: float | None, gap_m: float, *, beyond: bool = False) -> Finding:
    """G11: what the blank sweeps, with room around it, against the swing of the lathe.

    Parameters
    ----------
    sweeps_m : widest it sweeps, corner to corner, m.
    swing_m : the largest that clears what stands under it: bed and banjo, or the bed alone, m.
    gap_m : least distance all round, m. Basis: judgement, ``data/fit.csv``.
    beyond : the banjo stands beyond the work's face, and ``swing_m`` is over the bed alone.

    Returns
    -------
    Finding
        The full turn by hand is the line's own press: no figure stands in for it.

    Examples
    --------
    >>> swing(0.29, 0.30, 0.005).state.value, swing(0.295, 0.30, 0.005).state.value
    ('no stop found', 'stop')

    References
    ----------
    Fact 5.10.
    """
    return judge("G11", [Part("swing-beyond" if beyond else "swing", "length", None if sweeps_m is None else sweeps_m + 2 * gap_m, swing_m)])


def noise_time(level_db: float) -> float:
    """How long a level may be heard in a day without ear protection: 8 h / 2 ** ((L - 85) / 3), and no longer than the day.

    Parameters
    ----------
    level_db : at the ear, dB(A).

    Returns
    -------
    float
        s.

    Examples
    --------
    >>> noise_time(94) / 3600, noise_time(100) / 60
    (1.0, 15.0)

    References
    ----------
    NIOSH 98-126; fact 5.14b.
    """
    return min(DAY_S, float(NOISE_HOURS_S / 2 ** ((level_db - NOISE_LEVEL_DB) / NOISE_STEP_DB)))


def noise(level_db: float | None, heard_s: float | None, protected: bool | None) -> Finding:
    """G14: hours at this noise against the hours it may be heard; a reminder, never a stop.

    Parameters
    ----------
    level_db : at the ear, dB(A).
    heard_s : time at it today, s.
    protected : ear protection is worn.

    Returns
    -------
    Finding

    Examples
    --------
    >>> noise(94, 2 * 3600, False).state.value, noise(94, 2 * 3600, True).state.value, noise(94, None, None).state.value
    ('reminder', 'no stop found', 'not checked')

    References
    ----------
    Fact 5.14b.
    """
    if protected:
        return Finding("G14", State.CLEAR, (), "protected")
    finding = judge("G14", [Part("noise", "duration", heard_s, None if level_db is None else noise_time(level_db))])
    return Finding("G14", State.REMINDER, finding.parts, "loud") if finding.state is State.STOP else finding


def throw_energy(mass_kg: float, across_m: float, speed_rpm: float) -> float:
    """Energy of a piece that leaves the rim: m v ** 2 / 2, with v = pi D n / 60.

    Parameters
    ----------
    mass_kg : of the piece, kg.
    across_m : diameter of the rim, m.
    speed_rpm : rpm.

    Returns
    -------
    float
        J.

    Examples
    --------
    >>> round(throw_energy(1.0, 0.250, 1000))
    86

    References
    ----------
    Plain mechanics; fact 5.9.
    """
    return mass_kg * (math.pi * across_m * speed_rpm / 60) ** 2 / 2


def throw(mass_kg: float | None, across_m: float | None, speed_rpm: float | None, shield_j: float = SHIELD_J) -> Finding:
    """G18: the energy of the largest part that could come off, beside what a face shield is tested with; a reminder, never a stop.

    Parameters
    ----------
    mass_kg, across_m, speed_rpm : of that part, of the rim, and the speed; kg, m, rpm.
    shield_j : J.

    Returns
    -------
    Finding

    Examples
    --------
    >>> throw(1.0, 0.25, 1000).state.value, throw(0.01, 0.25, 1000).state.value, throw(None, 0.25, 1000).state.value
    ('reminder', 'no stop found', 'not checked')

    References
    ----------
    Facts 5.8 and 5.9.
    """
    energy = None if mass_kg is None or across_m is None or speed_rpm is None else throw_energy(mass_kg, across_m, speed_rpm)
    finding = judge("G18", [Part("throw", "energy", energy, shield_j)])
    return Finding("G18", State.REMINDER, finding.parts, "past-a-shield") if finding.state is State.STOP else finding
