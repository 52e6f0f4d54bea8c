"""Colour in resin: kinds and where to start, shares by mass, the same colour in another batch or at another depth.

A share is the colour's mass over the mass of mixed resin that it goes into, p = m_c / M, as a fraction. Masses in kg,
lengths in m. Figures with their sources stand in ``data/colour.csv``, ``colour_kinds.csv`` and ``colour_starts.csv``.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from calc.guards import require_positive
from calc.sources import figures, table

_PERCENT = 0.01


#: A figure of ``data/colour.csv`` by the name of its row, in its printed unit.
standard = figures("colour")


@dataclass(frozen=True)
class Kind:
    """A kind of colour.

    Parameters
    ----------
    id, name, short : its key, what a maker reads in a list, and inside a sentence.
    caution, stop : shares of the mixed resin; common practice, and the label rules.
    liquid : it brings a liquid that belongs to neither A nor B.
    clear : one looks through it, so that thickness counts.
    """

    id: str
    name: str
    short: str
    caution: float
    stop: float
    liquid: bool
    clear: bool


@cache
def kinds() -> Mapping[str, Kind]:
    """Every kind by its id, from ``data/colour_kinds.csv``.

    Returns
    -------
    mapping of str to Kind

    Examples
    --------
    >>> kinds()["dye"].stop
    0.01

    References
    ----------
    Each row of the table names its own.
    """
    return {
        row["kind"]: Kind(
            row["kind"], row["name"], row["short"], float(row["caution"]) * _PERCENT, float(row["stop"]) * _PERCENT,
            row["form"] == "liquid", row["look"] == "clear",
        )
        for row in table("colour_kinds")
    }  # fmt: skip


def kinds_for(effect: str) -> tuple[str, ...]:
    """The kinds that give an effect.

    Parameters
    ----------
    effect : tint, translucent, opaque, pearl, metal or glow.

    Returns
    -------
    tuple of str
        Ids of kinds, in the order of the table.

    Examples
    --------
    >>> kinds_for("pearl")
    ('mica',)

    References
    ----------
    Our judgement, ``data/colour_starts.csv``.
    """
    return tuple(row["kind"] for row in table("colour_starts") if row["effect"] == effect)


def start(effect: str, kind: str, seen_through: float | None = None) -> float | None:
    """The share to start with for an effect: low, to be raised by looking.

    Parameters
    ----------
    effect, kind : as in ``data/colour_starts.csv``.
    seen_through : thickness of the casting that one looks through, m; counts for a clear kind only. None: as in the table.

    Returns
    -------
    float or None
        A fraction, never above half of the kind's caution line; None where that kind does not give that effect.

    Examples
    --------
    >>> round(start("translucent", "dye"), 5), round(start("translucent", "dye", 0.1), 5), start("opaque", "dye")
    (0.001, 0.0005, None)

    References
    ----------
    Our judgement; the depth by :func:`same_depth`.
    """
    found = [float(row["share"]) * _PERCENT for row in table("colour_starts") if (row["effect"], row["kind"]) == (effect, kind)]
    if not found:
        return None
    share = found[0]
    if kinds()[kind].clear and seen_through is not None:
        share = same_depth(share, standard("seen through") / 1000, seen_through)
    return min(share, standard("start most") * kinds()[kind].caution)


def same_depth(share: float, seen_before: float, seen_now: float) -> float:
    """The share of a clear colour that looks as deep through another thickness: p2 = p1 L1 / L2.

    Parameters
    ----------
    share : p1, that was right.
    seen_before, seen_now : L1 and L2, thickness seen through, m, more than zero.

    Returns
    -------
    float
        p2. A covering colour keeps its share: this is not for it.

    Examples
    --------
    >>> round(same_depth(0.0010, 0.060, 0.025), 4)
    0.0024

    References
    ----------
    beer-lambert.
    """
    require_positive(seen_before=seen_before, seen_now=seen_now)
    return share * seen_before / seen_now


def share_of(colour: float, resin: float) -> float:
    """The share of a colour: p = m_c / M. Every other batch of that colour takes p times its own resin.

    Parameters
    ----------
    colour : kg, zero or more.
    resin : mixed resin that it went into, colour not counted, kg, more than zero.

    Returns
    -------
    float

    Examples
    --------
    >>> round(1000 * share_of(0.012, 0.900) * 0.260, 3)  # 12 g in 900 g, again in 260 g
    3.467

    References
    ----------
    Definition.
    """
    require_positive(resin=resin)
    return colour / resin


def load(shares: Iterable[float], lines: Iterable[float]) -> float:
    """How much of what is allowed several colours use up together: the sum of p / line.

    Parameters
    ----------
    shares : of each colour in the same resin.
    lines : the caution or stop line of each, fractions, more than zero.

    Returns
    -------
    float
        1 is all of it.

    Examples
    --------
    >>> round(load([0.02, 0.03], [0.05, 0.10]), 2)
    0.7

    References
    ----------
    Our judgement: no source says how two kinds add up, so their parts of the limit are added.
    """
    return sum(share / line for share, line in zip(shares, lines, strict=True))


def clear_to_add(resin: float, used: float) -> float:
    """Clear mixed resin that brings an overdone colour back to its line: M (load - 1).

    Parameters
    ----------
    resin : mixed resin in the bucket now, kg.
    used : :func:`load` of what is in it.

    Returns
    -------
    float
        kg; zero where nothing is over.

    Examples
    --------
    >>> round(clear_to_add(0.9, 1.5), 3)
    0.45

    References
    ----------
    Exact arithmetic: p falls as 1/M.
    """
    return resin * max(0.0, used - 1.0)
