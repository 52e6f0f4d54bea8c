"""Gates of what follows the pour: cured enough for the work that comes next, solvent and flame."""

from __future__ import annotations

from calc.safety.findings import Finding, Part, State, judge, must
from calc.sources import value

#: Isopropyl alcohol that may evaporate into a room, m3 of liquid for each m3 of air.
SOLVENT_SHARE = value("gate_figures", "solvent") / 1e6
#: What comes next, as the gate of the cure knows it.
MOULD, ROUGH, SAND, USE = "mould", "rough", "sand", "use"


def cured(
    then: str | None,
    age_s: float | None,
    leave_s: float | None,
    full_s: float | None,
    hard: bool | None,
    coolest_k: float | None,
    sheet_k: float | None,
) -> Finding:
    """G7: the age of the casting against the time that the work to come asks for.

    Parameters
    ----------
    then : "mould" (leave the mould), "rough" (a rough cut), "sand" (sand and polish), "use" (use it or hand it over), or None.
    age_s : since the pour, s.
    leave_s, full_s : the sheet's times to leave the mould and to full cure, s.
    hard : no soft, tacky or smelly spot, in the corners either; asked before any tool.
    coolest_k, sheet_k : the coolest it stood, and the temperature the sheet's times are for, K.

    Returns
    -------
    Finding
        A rough cut waits for the mould's time and for no soft spot; only sanding and use wait for full cure.

    Examples
    --------
    >>> cured("rough", 48 * 3600, 24 * 3600, 168 * 3600, True, 295, 295).state.value
    'no stop found'
    >>> cured("sand", 48 * 3600, 24 * 3600, 168 * 3600, True, 295, 295).state.value
    'stop'

    References
    ----------
    Facts 2.18 and 9.5.
    """
    if then is None:
        return judge("G7", [must("then", None)])
    id, wait_s = {SAND: ("full-cure", full_s), USE: ("in-use", full_s)}.get(then, ("leave", leave_s))
    parts = [Part(id, "duration", age_s, wait_s, at_most=False)]
    if then != MOULD:
        parts.append(must("hard", hard))
    parts.append(Part("cool", "temperature", coolest_k, sheet_k, at_most=False))
    return judge("G7", parts)


def solvent(used_m3: float | None, room_m3: float | None, share: float = SOLVENT_SHARE) -> Finding:
    """G15 while wiping: the solvent used indoors against what the room's still air takes; a caution, never a stop.

    Parameters
    ----------
    used_m3 : isopropyl alcohol used indoors, m3 of liquid.
    room_m3 : the room, m3.
    share : liquid for each m3 of air.

    Returns
    -------
    Finding
        Past the limit it says: door open, no flame.

    Examples
    --------
    >>> solvent(36e-6, 30.0).state.value, solvent(40e-6, 30.0).state.value, solvent(40e-6, None).state.value
    ('no stop found', 'reminder', 'not checked')

    References
    ----------
    Facts 7.1 and 7.3.
    """
    finding = judge("G15", [Part("solvent", "volume", used_m3, None if room_m3 is None else share * room_m3)])
    return Finding("G15", State.REMINDER, finding.parts, "vapour") if finding.state is State.STOP else finding


def put_away(away: bool | None) -> Finding:
    """G15 before a flame, hot air or hot glue: every bottle and wet rag shut and out of the room.

    Parameters
    ----------
    away : as it is now; None where nobody said.

    Returns
    -------
    Finding

    Examples
    --------
    >>> put_away(True).state.value, put_away(False).state.value, put_away(None).state.value
    ('no stop found', 'stop', 'not checked')

    References
    ----------
    Fact 7.1.
    """
    return judge("G15", [must("put-away", away)])


def dried(dry: bool | None, used_m3: float | None = None, room_m3: float | None = None) -> Finding:
    """G15 before a flame, hot air or hot glue: wiped surfaces dry, and what evaporated from them.

    Parameters
    ----------
    dry : wiped surfaces are dry and no smell is left; None where nobody said.
    used_m3, room_m3 : as for :func:`solvent`; a gap in them is no gap of this gate.

    Returns
    -------
    Finding
        Dry, but with more solvent in the air than the room takes still, it reminds: door open, no flame.

    Examples
    --------
    >>> dried(True).state.value, dried(False).state.value, dried(None).state.value, dried(True, 40e-6, 30.0).state.value
    ('no stop found', 'stop', 'not checked', 'reminder')

    References
    ----------
    Facts 7.2 and 7.3.
    """
    finding, vapour = judge("G15", [must("dry", dry)]), solvent(used_m3, room_m3)
    return vapour if finding.state is State.CLEAR and vapour.state is State.REMINDER else finding
