"""Figures of curing epoxy that hold where no sheet and no test cup says otherwise, each with its basis."""

from __future__ import annotations

from calc.sources import in_si

#: A figure of ``data/cure.csv`` by the name of its row, in SI.
standard = in_si("cure")
