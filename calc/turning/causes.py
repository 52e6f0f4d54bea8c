"""Why a piece runs out of true: each sign speaks for a cause or against it, by points. The points are in ``data/out_of_true_signs.csv``."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from calc.sources import table, value

EXPLAINS = int(value("out_of_true", "points explains"))
TOO_SMALL = int(value("out_of_true", "points too small"))


@dataclass(frozen=True)
class Finding:
    """One cause: its name in the table, its points, and the most it can move the piece (m), where that was worked out."""

    cause: str
    points: int
    most_m: float | None


def weighed(cause: str, answers: Mapping[str, str]) -> int | None:
    """Points of one cause; None where its sign is not there.

    Parameters
    ----------
    cause : a name of the table.
    answers : field of the interview -> answer.

    Returns
    -------
    int or None

    Examples
    --------
    >>> weighed("seat", {"sign": "rim-once", "mount": "same"}), weighed("seat", {"sign": "dish"})
    (7, None)

    References
    ----------
    Our judgement.
    """
    rows = [row for row in table("out_of_true_signs") if row["cause"] == cause and answers.get(row["field"]) == row["answer"]]
    if not any(row["field"] == "sign" for row in rows):
        return None
    return sum(int(row["points"]) for row in rows)


def rank(
    answers: Mapping[str, str], most_m: Mapping[str, float], runout_m: float | None, left_out: Collection[str] = (), kept: Collection[str] = ()
) -> tuple[Finding, ...]:
    """The causes that fit, likeliest first; at least one.

    Parameters
    ----------
    answers : field of the interview -> answer; ``sign`` is there.
    most_m : cause -> the most it can move this piece, m.
    runout_m : how far it is out, m; None when nobody measured.
    left_out : causes that cannot be, whatever the signs.
    kept : causes that are told however little speaks for them, where their sign is there.

    Returns
    -------
    tuple of Finding

    Notes
    -----
    A cause that can move it as far as it is out gets one point more, one that cannot move it half as far four less.

    Examples
    --------
    >>> [found.cause for found in rank({"sign": "rim-once", "mount": "same", "since": "turned"}, {}, None)]
    ['seat', 'recentred']

    References
    ----------
    Our judgement.
    """
    found = []
    for cause in dict.fromkeys(row["cause"] for row in table("out_of_true_signs")):
        points = None if cause in left_out else weighed(cause, answers)
        if points is None:
            continue
        most = most_m.get(cause)
        if most is not None and runout_m is not None:
            points += EXPLAINS if runout_m <= most else TOO_SMALL if runout_m > 2 * most else 0
        found.append(Finding(cause, points, most))
    found.sort(key=lambda finding: -finding.points)  # a stable sort: equals stay in the table's order
    return tuple(finding for finding in found if finding.points > 0 or finding.cause in kept) or (found[0],)
