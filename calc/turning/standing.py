"""Does a piece stand? Its middle of mass, and the tilt, the push and the load that tip it.

Lengths in m, masses in kg, pushes as the weight of so many kg, angles in rad.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from calc.guards import require_positive
from calc.sources import in_si

Foot = Literal["round", "ring", "square", "three", "four"]
Section = Literal["round", "square"]

#: Radius of the largest round between the lines that a foot tips over, as a share of its width: geometry. Feet are measured across the circle they stand on.
_INNER: Mapping[str, float] = {"round": 0.5, "ring": 0.5, "square": 0.5, "three": 0.25, "four": 0.5 / math.sqrt(2)}


#: A figure of ``data/stand.csv`` by the name of its row, in SI.
standard = in_si("stand")


@dataclass(frozen=True)
class Part:
    """One part of a stack: ``bottom`` and ``height`` in m, its ``mass`` in kg with its standard uncertainty as a fraction."""

    bottom: float
    height: float
    mass: float
    spread: float

    @property
    def middle(self) -> float:
        """Height of its middle of mass, m, as if it were the same right through."""
        return self.bottom + self.height / 2


@dataclass(frozen=True)
class Mass:
    """A mass, kg, the height of its middle, m, and the standard uncertainty of that height, m."""

    mass: float
    height: float
    u: float = 0.0


def section_area(width_m: float, section: Section = "round") -> float:
    """Area of a part's cross-section.

    Parameters
    ----------
    width_m : across, m.
    section : ``round`` or ``square``.

    Returns
    -------
    float
        m2.

    Examples
    --------
    >>> section_area(0.1, "square"), round(section_area(0.1), 5)
    (0.01, 0.00785)

    References
    ----------
    Plain geometry.
    """
    return width_m**2 * (math.pi / 4 if section == "round" else 1.0)


def centre_of_mass(parts: Sequence[Part]) -> Mass:
    """Mass of a stack and the height of its middle: h = sum(m z) / sum(m).

    Parameters
    ----------
    parts : one or more, in any order.

    Returns
    -------
    Mass
        ``u`` from the spread of each mass and of each part's own middle, taken as independent (gum).

    Examples
    --------
    >>> found = centre_of_mass([Part(0.0, 0.040, 1.0, 0.0), Part(0.040, 0.200, 1.0, 0.0)])
    >>> found.mass, round(found.height, 4)
    (2.0, 0.08)

    References
    ----------
    Definition; gum for ``u``.
    """
    mass = sum(part.mass for part in parts)
    require_positive(mass=mass)
    height = sum(part.mass * part.middle for part in parts) / mass
    by_mass = ((part.middle - height) * part.spread * part.mass / mass for part in parts)
    by_height = (standard("spread height") * part.height * part.mass / mass for part in parts)
    return Mass(mass, height, math.hypot(*by_mass, *by_height))


def with_load(piece: Mass, load_kg: float, load_height_m: float) -> Mass:
    """Piece and load together.

    Parameters
    ----------
    piece : the piece alone.
    load_kg : 0 or more.
    load_height_m : of the load's middle, m.

    Returns
    -------
    Mass

    Examples
    --------
    >>> round(with_load(Mass(3.0, 0.1), 1.0, 0.3).height, 3)
    0.15

    References
    ----------
    Definition.
    """
    mass = piece.mass + load_kg
    return Mass(mass, (piece.mass * piece.height + load_kg * load_height_m) / mass, piece.u * piece.mass / mass)


def tipping_radius(foot: Foot, across_m: float) -> float:
    """From the middle of a foot to the nearest line that it tips over.

    Parameters
    ----------
    foot : ``round``, ``ring``, ``square``, or ``three`` or ``four`` feet.
    across_m : across the foot, the flats of a square, or the circle that the feet stand on, m.

    Returns
    -------
    float
        m.

    Examples
    --------
    >>> tipping_radius("round", 0.2), tipping_radius("three", 0.2), round(tipping_radius("four", 0.2), 4)
    (0.1, 0.05, 0.0707)

    References
    ----------
    Plain geometry.
    """
    return _INNER[foot] * across_m


def tipping_tilt(radius_m: float, height_m: float) -> float:
    """The tilt at which a piece tips: atan(r / h).

    Parameters
    ----------
    radius_m : from below its middle of mass to the line it tips over, m; zero or less where it falls by itself.
    height_m : of its middle of mass, m, more than 0.

    Returns
    -------
    float
        rad, 0 or more.

    Examples
    --------
    >>> round(math.degrees(tipping_tilt(0.050, 0.150)), 2)
    18.43

    References
    ----------
    Statics: it tips once its middle of mass stands over the edge.
    """
    require_positive(height=height_m)
    return math.atan(max(0.0, radius_m) / height_m)


def foot_for_tilt(foot: Foot, height_m: float, tilt: float, off_m: float = 0.0) -> float:
    """The foot that stands a tilt: (h tan(tilt) + off) over the foot's inner share.

    Parameters
    ----------
    foot : as in :func:`tipping_radius`.
    height_m : of the middle of mass, m.
    tilt : rad, under a right angle.
    off_m : how far the middle of mass lies off the foot's middle, m.

    Returns
    -------
    float
        across, m.

    Examples
    --------
    >>> round(foot_for_tilt("round", 0.300, math.radians(10)), 4)
    0.1058

    References
    ----------
    :func:`tipping_tilt`, turned round.
    """
    return (height_m * math.tan(tilt) + off_m) / _INNER[foot]


def tipping_push(mass_kg: float, radius_m: float, at_m: float) -> float:
    """The level push that tips a piece, as a weight: m r / H.

    Parameters
    ----------
    mass_kg : of all that stands there.
    radius_m : as in :func:`tipping_tilt`, m.
    at_m : height of the push, m, more than 0.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> round(tipping_push(4.0, 0.060, 0.300), 3)
    0.8

    References
    ----------
    Statics.
    """
    require_positive(height_of_the_push=at_m)
    return mass_kg * max(0.0, radius_m) / at_m


def rim_load(mass_kg: float, radius_m: float, out_m: float) -> float | None:
    """The load at a rim that tips a piece: m r / (a - r).

    Parameters
    ----------
    mass_kg : of the piece.
    radius_m : as in :func:`tipping_tilt`, m.
    out_m : a, of the load from the middle, m.

    Returns
    -------
    float or None
        kg; None where the rim does not reach beyond the foot, so that no load there tips it.

    Examples
    --------
    >>> round(rim_load(4.0, 0.060, 0.150), 3), rim_load(4.0, 0.060, 0.050)
    (2.667, None)

    References
    ----------
    Statics.
    """
    return None if out_m <= radius_m else mass_kg * max(0.0, radius_m) / (out_m - radius_m)


def ballast_for_tilt(piece: Mass, radius_m: float, tilt: float, at_m: float) -> float | None:
    """Ballast in the foot that brings the middle of mass down far enough: M (h - h') / (h' - z), with h' = r / tan(tilt).

    Parameters
    ----------
    piece : as it is; its height is taken as typed.
    radius_m : as in :func:`tipping_tilt`, m.
    tilt : rad.
    at_m : z, height of the ballast, m.

    Returns
    -------
    float or None
        kg; None where no weight there does it.

    Examples
    --------
    >>> round(ballast_for_tilt(Mass(2.0, 0.300), 0.040, math.radians(10), 0.010), 3)
    0.675

    References
    ----------
    Definition of the centre of mass.
    """
    wanted = radius_m / math.tan(tilt)
    if wanted >= piece.height:
        return 0.0
    return None if wanted <= at_m else piece.mass * (piece.height - wanted) / (wanted - at_m)
