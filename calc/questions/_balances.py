"""How far out of balance a piece is, where nobody measured it: the same guesses wherever it is asked."""

from __future__ import annotations

from calc.fields import Option

NOT_CHECKED = (
    Option("even", "Not checked: even", "no wood, or wood spread all round"),
    Option("some", "Not checked: a little more wood to one side"),
    Option("side", "Not checked: wood mostly to one side"),
    Option("half", "Not checked: half wood, half resin"),
)
