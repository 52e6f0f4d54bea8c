"""What truing takes off, and what is left: runout, twist by three feelers, shift of a centre. Lengths in m."""

from __future__ import annotations

from typing import Literal

from calc.turning import remounting

Sign = Literal["rim-once", "face-once", "rim-twice", "face-twice", "dish"]
RIM: tuple[Sign, ...] = ("rim-once", "rim-twice")


def twist(gaps_m: tuple[float, float, float]) -> float:
    """How far a face that rocks is out of flat: (g1 + g3 - g2) / 2, whichever way it is tipped.

    Pressed down at one place of the rim; g1, g2, g3 are the gaps to a flat plate a quarter, half and three quarters round from there.

    Parameters
    ----------
    gaps_m : g1, g2, g3, m, 0 or more.

    Returns
    -------
    float
        m, from the high pair of places to the low pair.

    Notes
    -----
    Of the four heights (0, g1, g2, g3) a tilt takes as much from one as it gives to the one opposite, and a lift is the same
    for all; what is left is the saddle. Press where it rests: elsewhere it shows less than it is.

    Examples
    --------
    Rocking on two places, 0.8 mm between the plate and either side when held level:

    >>> round(1000 * twist((0.0008, 0.0, 0.0008)), 3), round(1000 * twist((0.0, 0.0, 0.0016)), 3)
    (0.8, 0.8)

    References
    ----------
    Plain geometry.
    """
    first, across, last = gaps_m
    return abs(first + last - across) / 2


def thickness_left(thickness_m: float, runout_m: float) -> float:
    """What two flat faces leave of a piece whose face is out by a runout: t - T.

    Parameters
    ----------
    thickness_m : t, m.
    runout_m : T, lowest to highest at the rim, m.

    Returns
    -------
    float
        m; below 0 when there is nothing left.

    Examples
    --------
    >>> round(1000 * thickness_left(0.040, 0.0008), 2)
    39.2

    References
    ----------
    Plain geometry: where one face is highest the other is lowest.
    """
    return thickness_m - runout_m


def diameter_left(diameter_m: float, runout_m: float, sign: Sign) -> float:
    """What a true rim leaves of the widest diameter: D - T once a turn, D - 2 T for an oval.

    Parameters
    ----------
    diameter_m : D, widest, m.
    runout_m : T, lowest to highest over a turn, m.
    sign : ``rim-once`` or ``rim-twice``.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> [round(1000 * diameter_left(0.300, 0.001, sign), 3) for sign in ("rim-once", "rim-twice")]
    [299.0, 298.0]

    References
    ----------
    Plain geometry: an offset of T/2 takes T/2 off the radius; an oval's radius differs by T.
    """
    return remounting.trued_diameter(diameter_m, runout_m if sign == "rim-twice" else offset(runout_m))


def offset(runout_m: float) -> float:
    """How far the centre is off the axis: half of a once-a-turn runout of the rim.

    Parameters
    ----------
    runout_m : m.

    Returns
    -------
    float
        m; times the mass it is the out of balance, kg m.

    Examples
    --------
    >>> offset(0.001)
    0.0005

    References
    ----------
    Plain geometry.
    """
    return runout_m / 2
