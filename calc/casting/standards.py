"""Figures of weighing and mixing that hold where the sheet and the maker say nothing, each with its basis."""

from __future__ import annotations

from calc.sources import figures

#: A figure of ``data/mixing.csv`` by the name of its row, in its printed unit.
standard = figures("mixing")
