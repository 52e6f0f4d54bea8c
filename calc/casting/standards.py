"""Figures of weighing and mixing that hold where the sheet and the maker say nothing, each with its basis."""

from __future__ import annotations

from calc.sources import value


def standard(name: str) -> float:
    """A figure of ``data/mixing.csv``, in its printed unit.

    Parameters
    ----------
    name : of the row.

    Returns
    -------
    float
        shares as fractions; the rest in the unit of the row.

    Examples
    --------
    >>> standard("ratio good")
    0.02

    References
    ----------
    Each row of the table names its own.
    """
    return value("mixing", name)
