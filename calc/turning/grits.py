"""Abrasive grits by their grain, in both scales, and the steps from one to the next. Grain sizes in m.

FEPA P has a P before the number; CAMI, on papers for the United States, has the number alone. Up to 220 they nearly agree, above it they do not.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from typing import Literal

from calc.sources import table, value

Scale = Literal["P", "CAMI"]
Step = Literal["ok", "long", "too-far"]
AGREE_TO = int(value("sanding", "scales agree to"))
_ON = 1 + 1e-9


@dataclass(frozen=True, order=True)
class Grit:
    """One grit: its median grain (m), scale and number, and whether most shops have it."""

    size_m: float
    scale: Scale
    number: int
    in_shops: bool

    @property
    def name(self) -> str:
        """As it is printed: P320, or 320 (CAMI)."""
        return f"P{self.number}" if self.scale == "P" else f"{self.number} (CAMI)"


@cache
def grits(scale: Scale) -> tuple[Grit, ...]:
    """All grits of a scale, coarsest first.

    Parameters
    ----------
    scale : ``P`` or ``CAMI``.

    Returns
    -------
    tuple of Grit

    Examples
    --------
    >>> grits("P")[0].name, grits("CAMI")[-1].name
    ('P12', '1000 (CAMI)')

    References
    ----------
    grit-tables.
    """
    rows = [row for row in table("grits") if row["scale"] == scale]
    found = [Grit(float(row["um"]) * 1e-6, scale, int(row["number"]), row["shops"] == "yes") for row in rows]
    return tuple(sorted(found, reverse=True))


def grit(scale: Scale, number: int) -> Grit:
    """The grit of that number.

    Parameters
    ----------
    scale : ``P`` or ``CAMI``.
    number : as printed.

    Returns
    -------
    Grit

    Raises
    ------
    LookupError
        the scale has no such number.

    Examples
    --------
    >>> round(1e6 * grit("P", 320).size_m, 1), round(1e6 * grit("CAMI", 320).size_m, 1)
    (46.2, 36.0)

    References
    ----------
    grit-tables.
    """
    for found in grits(scale):
        if found.number == number:
            return found
    raise LookupError(f"{scale} has no grit {number}")


def alike(of: Grit, scale: Scale) -> Grit:
    """The grit of the other scale with the nearest grain.

    Parameters
    ----------
    of : any grit.
    scale : the scale to look in.

    Returns
    -------
    Grit

    Examples
    --------
    >>> alike(grit("CAMI", 400), "P").name
    'P800'

    References
    ----------
    grit-tables; nearest by ratio.
    """
    return min(grits(scale), key=lambda other: max(other.size_m / of.size_m, of.size_m / other.size_m))


def step(from_m: float, to_m: float) -> Step:
    """How a step from one grain to a finer one goes: ``ok`` up to 1.70 times, ``long`` up to 2.0, else ``too-far``.

    Parameters
    ----------
    from_m, to_m : grains, m, more than 0.

    Returns
    -------
    Step

    Examples
    --------
    >>> [step(grit("P", a).size_m, grit("P", b).size_m) for a, b in ((120, 180), (220, 400), (60, 120))]
    ['ok', 'long', 'too-far']

    References
    ----------
    Our judgement.
    """
    ratio = from_m / to_m
    if ratio <= value("sanding", "ratio near") * _ON:
        return "ok"
    return "long" if ratio <= value("sanding", "ratio most") * _ON else "too-far"


def path(from_m: float, last_m: float, papers: Iterable[Grit]) -> tuple[Grit, ...]:
    """The fewest steps from a grain down to another: each time the finest paper that still takes out the scratches before it.

    Parameters
    ----------
    from_m : grain of the scratches there are, m.
    last_m : grain to end at, m; the last step is the coarsest paper that is no coarser than this, or the finest there is.
    papers : what there is.

    Returns
    -------
    tuple of Grit
        coarsest first; empty when nothing finer is needed or there is nothing finer. Where no paper is within reach the coarsest of the finer ones is
        taken, and :func:`step` tells that it is too far.

    Examples
    --------
    >>> shop = [g for g in grits("P") if g.in_shops]
    >>> [g.name for g in path(grit("P", 220).size_m, grit("P", 600).size_m, shop)]
    ['P320', 'P400', 'P600']

    References
    ----------
    Our judgement.
    """
    finer = sorted((paper for paper in papers if paper.size_m * _ON < from_m), reverse=True)
    enough = [paper for paper in finer if paper.size_m <= last_m * _ON]
    end = enough[0] if enough else (finer[-1] if finer else None)
    found: list[Grit] = []
    now = from_m
    while end is not None and now > last_m * _ON and now > end.size_m * _ON:
        ahead = [paper for paper in finer if end.size_m <= paper.size_m and paper.size_m * _ON < now]
        within = [paper for paper in ahead if step(now, paper.size_m) == "ok"] or [paper for paper in ahead if step(now, paper.size_m) == "long"]
        taken = within[-1] if within else ahead[0]
        found.append(taken)
        now = taken.size_m
    return tuple(found)


def bridged(from_m: float, steps: Iterable[Grit], papers: Iterable[Grit]) -> tuple[Grit, ...]:
    """The same steps, with the fewest further papers put in wherever a step would not go well.

    Parameters
    ----------
    from_m : grain of the scratches there are, m.
    steps : coarsest first.
    papers : what may be put in.

    Returns
    -------
    tuple of Grit
        coarsest first; a step that nothing bridges stays as it is.

    Examples
    --------
    >>> cami = grits("CAMI")
    >>> [g.number for g in bridged(grit("CAMI", 220).size_m, [grit("CAMI", 320), grit("CAMI", 400)], cami)]
    [240, 320, 400]

    References
    ----------
    Our judgement.
    """
    found: list[Grit] = []
    choice = tuple(papers)
    now = from_m
    for paper in steps:
        between = [other for other in choice if paper.size_m <= other.size_m]
        found.extend((paper,) if step(now, paper.size_m) == "ok" else path(now, paper.size_m, {*between, paper}))
        now = paper.size_m
    return tuple(found)
