"""Wood set in resin: the volume it takes up, whether it floats, and what its faces take of a coat.

Densities kg/m3, masses kg, lengths m, areas m2, volumes m3. A push is told as the mass that weighs as much.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.sources import figures

#: A figure of ``data/displacement.csv`` by the name of its row, in its printed unit.
standard = figures("displacement")


def volume_by_dip(scale_rise_kg: float) -> float:
    """Volume held under water on a scale: what the scale rises by, over the density of water.

    Parameters
    ----------
    scale_rise_kg : kg.

    Returns
    -------
    float
        m3.

    Examples
    --------
    >>> round(1e6 * volume_by_dip(1.378), 1)
    1380.5

    References
    ----------
    Archimedes; astm-d2395, method B.
    """
    return scale_rise_kg / standard("water")


def area_by_widths(length_m: float, widths_m: Sequence[float]) -> float:
    """Area of an outline from its widths at equal steps: Simpson's rule, or trapeziums where the count of steps is odd.

    Parameters
    ----------
    length_m : from the first width to the last.
    widths_m : two or more, in order.

    Returns
    -------
    float
        m2.

    Examples
    --------
    >>> round(area_by_widths(0.600, [0.120, 0.135, 0.128, 0.140, 0.110]), 4)
    0.0793

    References
    ----------
    Simpson's rule.
    """
    steps = len(widths_m) - 1
    ends = widths_m[0] + widths_m[-1]
    if steps % 2:
        return length_m / steps * (ends / 2 + sum(widths_m[1:-1]))
    return length_m / (3 * steps) * (ends + 4 * sum(widths_m[1:-1:2]) + 2 * sum(widths_m[2:-1:2]))


@dataclass(frozen=True)
class Shape:
    """A slab by three level cuts, from the floor of the mould up; straight up where all are alike.

    Parameters
    ----------
    bottom, middle, top : areas, m2.
    height : m, above 0.
    """

    bottom: float
    middle: float
    top: float
    height: float

    @property
    def volume(self) -> float:
        """t (A_top + 4 A_middle + A_bottom) / 6, m3."""
        return self.height * (self.top + 4 * self.middle + self.bottom) / 6

    def share_below(self, depth_m: float) -> float:
        """Share of its volume below a level.

        Parameters
        ----------
        depth_m : above its underside.

        Returns
        -------
        float
            0 to 1.

        Examples
        --------
        >>> Shape(0.09, 0.096, 0.102, 0.045).share_below(0.0225) < 0.5
        True

        References
        ----------
        The cut's area taken as a parabola through the three: the same that gives the prismatoid's volume.
        """
        if depth_m >= self.height:
            return 1.0
        s = max(0.0, depth_m / self.height)
        linear = -3 * self.bottom + 4 * self.middle - self.top
        square = 2 * self.bottom - 4 * self.middle + 2 * self.top
        below = self.height * (self.bottom * s + linear * s**2 / 2 + square * s**3 / 3)
        return min(1.0, max(0.0, below / self.volume))


def net_lift(volume_below_m3: float, mass_kg: float, resin_kg_m3: float) -> float:
    """Lift of wood in resin, as the mass that weighs as much: rho_resin V - m.

    Parameters
    ----------
    volume_below_m3 : V, wood below the resin's level.
    mass_kg : m, the whole piece.
    resin_kg_m3 : density of the liquid resin.

    Returns
    -------
    float
        kg; below 0 where it lies on the floor by itself.

    Examples
    --------
    >>> round(net_lift(3568.5e-6, 2.180, 1100), 3)
    1.745

    References
    ----------
    Archimedes.
    """
    return resin_kg_m3 * volume_below_m3 - mass_kg


def lift_depth(shape: Shape, volume_m3: float, mass_kg: float, resin_kg_m3: float) -> float | None:
    """Depth of resin, above the underside, from which the wood lifts: rho_resin V_below(d) = m.

    Parameters
    ----------
    shape : how the volume is spread over the height.
    volume_m3 : of the wood, open voids left out.
    mass_kg : m.
    resin_kg_m3 : density of the liquid resin.

    Returns
    -------
    float | None
        m; None where it does not float even when covered.

    Examples
    --------
    >>> round(1000 * lift_depth(Shape(0.0793, 0.0793, 0.0793, 0.045), 3568.5e-6, 2.180, 1100), 1)
    25.0

    References
    ----------
    Archimedes, by bisection; a straight-sided piece lifts at t rho_wood / rho_resin.
    """
    wanted = mass_kg / (resin_kg_m3 * volume_m3)
    if wanted >= 1:
        return None
    low, high = 0.0, shape.height
    for _ in range(60):
        middle = (low + high) / 2
        if shape.share_below(middle) < wanted:
            low = middle
        else:
            high = middle
    return low


def surface(volume_m3: float, height_m: float) -> float:
    """Rough surface of a slab: two faces, and edges a quarter longer than a square's.

    Parameters
    ----------
    volume_m3, height_m : of the slab, above 0.

    Returns
    -------
    float
        m2.

    Examples
    --------
    >>> round(surface(3568.5e-6, 0.045), 3)
    0.222

    References
    ----------
    Geometry; the quarter is our judgement.
    """
    face = volume_m3 / height_m
    return 2 * face + 4 * standard("edges") * math.sqrt(face) * height_m
