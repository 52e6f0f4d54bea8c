"""What is asked alike of a piece on the lathe: the guesses of a balance that nobody measured, and what holds the far end."""

from __future__ import annotations

from calc.fields import Option

NOT_CHECKED = (
    Option("even", "Not checked: even", "no wood, or wood spread all round"),
    Option("some", "Not checked: a little more wood to one side"),
    Option("side", "Not checked: wood mostly to one side"),
    Option("half", "Not checked: half wood, half resin"),
)

FAR_ENDS = (
    Option("none", "Not used"),
    Option("pad", "Flat pad pressed on", "no point, no dimple"),
    Option("live", "Live centre", "in wood or waste"),
)
