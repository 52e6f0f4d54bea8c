"""A mould that is not level, or whose base sags. Slopes are metres of rise per metre along; lengths m, volumes m3.

The liquid stays level and the floor slopes, so that as long as the floor is covered the volume is the area times the depth at the area's
middle: one wall alone reads too deep or too shallow by the slope times the way from the middle to that wall.
"""

from __future__ import annotations

import math

_DISH = 0.5  # volume of a dish over its area and its depth, as for a disc: level's own arithmetic


def misread(slope: float, reach_m: float) -> float:
    """How far one wall reads off the depth at the middle: e = slope x distance.

    Parameters
    ----------
    slope : rise per length.
    reach_m : from the middle to that wall, along the slope.

    Returns
    -------
    float
        m.

    Examples
    --------
    A round mould of 300 mm, 1 mm in a metre:

    >>> round(1000 * misread(0.001, 0.150), 2)
    0.15

    References
    ----------
    Geometry.
    """
    return slope * reach_m


def covers_the_floor(depth_at_middle_m: float, misread_m: float) -> bool:
    """Whether the liquid reaches the high end of a sloping floor.

    Parameters
    ----------
    depth_at_middle_m : of the liquid.
    misread_m : how much shallower it is at the high end.

    Returns
    -------
    bool

    Examples
    --------
    >>> covers_the_floor(0.010, 0.002), covers_the_floor(0.001, 0.002)
    (True, False)

    References
    ----------
    Geometry.
    """
    return depth_at_middle_m >= misread_m


def wedge_in_a_round(radius_m: float, dry_from_m: float, slope: float) -> float:
    """What lies on a sloping round floor that is partly dry.

    V = tan t {(2/3)(R^2 - c^2)^1.5 + c [R^2 (pi/2 + asin(c/R)) + c sqrt(R^2 - c^2)]}.

    Parameters
    ----------
    radius_m : R.
    dry_from_m : c, from the middle uphill to the edge of the dry part; R where it is just covered, below 0 when less than half is wet.
    slope : tan t.

    Returns
    -------
    float
        m3.

    Raises
    ------
    ValueError
        the dry edge lies outside the floor.

    Examples
    --------
    >>> [round(1e6 * wedge_in_a_round(0.150, c, 0.02), 1) for c in (0.050, 0.150, 0.0)]
    [87.8, 212.1, 45.0]

    References
    ----------
    Geometry: the depth, slope x (c - x), summed over the wet part.
    """
    r, c = radius_m, dry_from_m
    if not -r <= c <= r:
        raise ValueError("the dry edge lies on the floor")
    chord = math.sqrt(max(0.0, r**2 - c**2))
    return slope * (2 / 3 * chord**3 + c * (r**2 * (math.pi / 2 + math.asin(c / r)) + c * chord))


def wedge_in_a_box(wet_length_m: float, width_m: float, slope: float) -> float:
    """What lies on a sloping oblong floor that is partly dry: V = W Lw^2 tan t / 2.

    Parameters
    ----------
    wet_length_m : Lw, along the slope.
    width_m : W.
    slope : tan t.

    Returns
    -------
    float
        m3.

    Examples
    --------
    >>> round(1e6 * wedge_in_a_box(0.400, 0.200, 0.002), 1)
    32.0

    References
    ----------
    Geometry.
    """
    return width_m * wet_length_m**2 * slope / 2


def sagged(floor_m2: float, sag_m: float) -> float:
    """Room under the level floor where the base hangs down like a dish: A s / 2.

    Parameters
    ----------
    floor_m2 : A.
    sag_m : s, in the middle; below 0 where it bulges up.

    Returns
    -------
    float
        m3.

    Notes
    -----
    Exact for a disc that sags as a paraboloid, pi R^2 s / 2. An oblong base held on all sides holds up to a fifth less, one held at two ends
    up to a third more.

    Examples
    --------
    >>> round(1e6 * sagged(math.pi * 0.150**2, 0.002), 1)
    70.7

    References
    ----------
    Geometry.
    """
    return _DISH * floor_m2 * sag_m
