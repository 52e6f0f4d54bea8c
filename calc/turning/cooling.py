"""How long a slab takes to cool in air: the whole series for a plane wall, not its length squared over its diffusivity.

Symbols inside the functions: L depth from the warmest plane to the open face, a diffusivity, k conductivity,
h film, Bi = h L / k, Fo = a t / L². Figures, each with its source, are in ``data/out_of_true.csv``.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from calc.sources import figures

TERMS = 40  # of the series; with them it holds from Fo = 0.002 on
_LEAST_FO = 1e-3
_GONE = 40.0  # exp(-40) no longer counts


#: A figure of ``data/out_of_true.csv`` by the name of its row, in its printed unit.
figure_of = figures("out_of_true")


@cache
def roots(biot: float, count: int = TERMS) -> tuple[float, ...]:
    """The first roots of z tan z = Bi, one in each (n pi, n pi + pi/2), by halving.

    Parameters
    ----------
    biot : h L / k, more than 0.
    count : how many, 1 or more.

    Returns
    -------
    tuple of float
        radians, rising.

    Examples
    --------
    >>> [round(z, 4) for z in roots(1.0, 3)]
    [0.8603, 3.4256, 6.4373]

    References
    ----------
    plane-wall.
    """
    found = []
    for n in range(count):
        low, high = n * math.pi, n * math.pi + math.pi / 2
        for _ in range(54):
            z = (low + high) / 2
            low, high = (z, high) if z * math.tan(z) < biot else (low, z)
        found.append((low + high) / 2)
    return tuple(found)


def coefficient(z: float) -> float:
    """A root's share in the series of a slab that starts evenly warm: C = 4 sin z / (2 z + sin 2z).

    Parameters
    ----------
    z : root, radians, more than 0.

    Returns
    -------
    float

    Examples
    --------
    >>> round(coefficient(roots(1.25, 1)[0]), 4)
    1.1379

    References
    ----------
    plane-wall.
    """
    return 4 * math.sin(z) / (2 * z + math.sin(2 * z))


def excess(biot: float, fourier: float, place: float = 0.0, terms: int = TERMS) -> float:
    """What is left of the starting excess over the air: the sum of C cos(z x) exp(-z² Fo).

    Parameters
    ----------
    biot : h L / k, more than 0.
    fourier : a t / L², 0 or more.
    place : x, from 0 (the warmest plane) to 1 (the open face).
    terms : of the series; 1 gives the one-term solution.

    Returns
    -------
    float
        fraction, 0 to 1.

    Examples
    --------
    >>> round(excess(1.25, 1.0), 4), round(excess(1.25, 1.0, place=1.0), 4)
    (0.4785, 0.2858)

    References
    ----------
    plane-wall.
    """
    if terms > 1 and fourier < _LEAST_FO:
        return 1.0
    total = 0.0
    for z in roots(biot, terms):
        if z * z * fourier > _GONE:
            break
        total += coefficient(z) * math.cos(z * place) * math.exp(-z * z * fourier)
    return min(max(total, 0.0), 1.0) if terms > 1 else total


def wood_conductivity(gravity: float, moisture: float) -> float:
    """Conductivity of wood across the grain: k = G (0.1941 + 0.004064 M) + 0.01864, M in percent.

    Parameters
    ----------
    gravity : specific gravity G, 0.3 to 1.
    moisture : fraction, 0 to 0.25.

    Returns
    -------
    float
        W/(m K).

    Examples
    --------
    >>> round(wood_conductivity(0.6, 0.12), 4)
    0.1644

    References
    ----------
    wood-handbook-4-15.
    """
    return gravity * (0.1941 + 0.004064 * 100 * moisture) + 0.01864


@dataclass(frozen=True)
class Stuff:
    """What a piece is made of, as far as cooling goes: conductivity W/(m K), diffusivity m²/s."""

    conductivity: float
    diffusivity: float


def resin() -> Stuff:
    """Cast epoxy.

    Returns
    -------
    Stuff

    Examples
    --------
    >>> round(resin().diffusivity * 1e7, 3)
    1.159

    References
    ----------
    epoxy-properties; the density is our judgement.
    """
    k = figure_of("resin conductivity")
    return Stuff(k, k / (figure_of("resin density") * figure_of("resin capacity")))


def wood() -> Stuff:
    """A hardwood at 12 % moisture, across the grain.

    Returns
    -------
    Stuff

    Examples
    --------
    >>> round(wood().diffusivity * 1e7, 2)
    1.53

    References
    ----------
    wood-handbook-4-15.
    """
    k = wood_conductivity(figure_of("wood gravity"), figure_of("wood moisture") / 100)
    return Stuff(k, k / (figure_of("wood density") * figure_of("wood capacity")))


@dataclass(frozen=True)
class Slab:
    """A flat piece that starts evenly warm in air that stays as it is. Its rim is left out, which is the slow side.

    Parameters
    ----------
    stuff : what it is made of.
    thickness_m : m, more than 0.
    film : on the open faces, W/(m² K), more than 0; infinite for a face held at the air's temperature.
    faces : how many are open, 2 or 1; a face on a faceplate or block counts as covered.

    Raises
    ------
    ValueError
        no thickness, no film, or faces other than 1 and 2.

    Examples
    --------
    50 mm of resin in still air, hours to a twentieth:

    >>> round(Slab(resin(), 0.050, 10).time_to(0.05) / 3600, 2)
    5.4
    """

    stuff: Stuff
    thickness_m: float
    film: float
    faces: int = 2

    def __post_init__(self) -> None:
        if self.thickness_m <= 0 or self.film <= 0 or self.faces not in (1, 2):
            raise ValueError("a slab has a thickness, a film, and one or two open faces")

    @property
    def depth_m(self) -> float:
        """L, m: half the thickness with both faces open, all of it with one."""
        return self.thickness_m / self.faces

    @property
    def biot(self) -> float:
        """Bi = h L / k."""
        return min(self.film * self.depth_m / self.stuff.conductivity, 1e9)

    def fourier(self, seconds: float) -> float:
        """Fo = a t / L² after a time."""
        return self.stuff.diffusivity * seconds / self.depth_m**2

    def middle(self, seconds: float) -> float:
        """Share of the starting excess left at the warmest plane: the middle, or the covered face."""
        return excess(self.biot, self.fourier(seconds))

    def face(self, seconds: float) -> float:
        """Share of the starting excess left at the open face."""
        return excess(self.biot, self.fourier(seconds), 1.0)

    def time_to(self, share: float) -> float:
        """Seconds until no place has more than this share of the starting excess; 0 for a share of 1 or more."""
        if share >= 1:
            return 0.0
        z = roots(self.biot, 1)[0]
        low, high = 0.0, self.depth_m**2 / self.stuff.diffusivity * (math.log(2 / share) / z**2 + 1)
        for _ in range(50):
            time = (low + high) / 2
            low, high = (time, high) if self.middle(time) > share else (low, time)
        return high

    @property
    def widest_gap(self) -> float:
        """Largest share of the starting excess by which the warmest plane is ever warmer than the open face."""
        steps = [0.02 * 1.15**n for n in range(40)]
        return max(excess(self.biot, fo) - excess(self.biot, fo, 1.0) for fo in steps)
