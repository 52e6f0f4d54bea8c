"""The answer where a sloping floor stays dry at one end: level the mould first."""

from __future__ import annotations

from calc.answers import Answer, Headline, Working, figure
from calc.questions._is_it_enough.case import Case
from calc.questions._is_it_enough.words import grams

_KEYS = (
    "likely", "u", "wanted", "wanted_90", "wanted_95", "wanted_99", "more", "spare", "takes", "owed", "still", "top_up_soon", "top_up_later", "in_these",
)  # fmt: skip


def answer(case: Case) -> Answer:
    """A stop that leads with how far to raise the low end."""
    given, mould = case.given, case.mould
    assert mould.shape is not None  # only a mould with sizes can be dry at one end
    tilt = given.write(mould.tilt, "length", "up")
    covers = mould.shape.area(max(mould.depth, 0.0)) * mould.tilt / 2
    least = grams(case, case.density * covers, "up")
    wedge = mould.wedge()
    says = f"Resin this deep leaves the high end dry; to cover the floor takes {least} at least."
    if wedge is not None:
        says += f" As the mould lies, {grams(case, case.density * wedge, figures=2)} fills only the low end."
    steps = [Working("Just covers the floor", "A × tilt / 2", f"tilt {given.text('tilt')}", str(least))]
    values = {key: figure(None, "mass") for key in _KEYS} | {"odds": figure(None, "share"), "mould": figure(None, "volume"), "in_one": figure(None, "volume")}
    return Answer(
        Headline("Raise the low end by", tilt.text, tilt.unit, says, "stop"), working=tuple(steps), sources=("arithmetic",), values=values
    )
