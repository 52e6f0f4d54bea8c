"""What a batch off its ratio comes to: in words, each with its source, and never a figure for each percent."""

from __future__ import annotations

from collections.abc import Mapping

from calc.casting.stoichiometry import gel_limit
from calc.sources import table

#: A common epoxy has two groups, a common amine hardener four.
_LEAST = gel_limit(2, 4)


def consequences(error: float) -> tuple[Mapping[str, str], ...]:
    """Rows of ``data/off_ratio.csv`` that hold for an error of the ratio.

    Parameters
    ----------
    error : of B to A, a fraction, as :func:`calc.casting.mixing.ratio_error` gives it; B is taken for the hardener.

    Returns
    -------
    tuple of mapping
        ``text`` and ``source`` of each; empty when it is on ratio.

    Notes
    -----
    Which of them shows, and from how many percent, depends on the resin.

    Examples
    --------
    >>> [row["name"] for row in consequences(-0.08)]
    ['weak', 'brittle']
    >>> [row["name"] for row in consequences(-0.7)]
    ['weak', 'brittle', 'liquid']

    References
    ----------
    army-two-part, off-ratio-ageing, off-ratio-softening, gel-off-ratio.
    """
    if error == 0:
        return ()
    side = "short" if error < 0 else "over"
    lost = not _LEAST <= 1 + error <= 1 / _LEAST
    return tuple(row for row in table("off_ratio") if row["side"] == side or (lost and row["side"] == "lost"))
