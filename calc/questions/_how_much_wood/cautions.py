"""Cautions of How much wood is in it?: few and short, the worst first."""

from __future__ import annotations

from calc.answers import Caution, Tone
from calc.casting import moisture
from calc.questions._how_much_wood.case import Wood


def cautions(piece: Wood) -> tuple[Caution, ...]:
    """Few and short, the worst first."""
    out: list[Caution] = []

    def say(id: str, text: str, tone: Tone = "caution") -> None:
        out.append(Caution(id, tone, text))

    if piece.given.si("moisture") > moisture.percent("stop"):
        say("wet", "Too wet to cast. Ask 'Dry enough?' first.", "stop")
    elif piece.wet:
        say("wet", "This wet it will shrink in the casting. Ask 'Dry enough?' first.")
    if piece.uncounted:
        say("voids", "Open holes and voids are counted as wood here: the resin runs short by as much. Measure them.")
    if piece.odd:
        say("odd", "That is an unusual weight for its size. Look at the scale, the unit and the kind of wood.")
    if piece.way == "weigh":
        if not piece.given.typed("moisture") and piece.given.maybe("density") is None:
            say("moisture", "The moisture is a guess, and its water counts in the weight. Measure it.")
        say("solid", "A weight counts solid wood only: open holes fill with resin, as they should. Add nothing back for them.", "go")
    if piece.way in ("dip", "level") and piece.given.choice("wrapped") == "no":
        say("dip", "Quickly in and out: open holes fill with water and count as resin, as they should. Dry the wood again.", "go")
    if piece.share < 1 and piece.way != "live":
        say("straight", "The part above the line is taken as straight-sided. Surer: dip it only as deep as the resin will stand.")
    if piece.hold:
        say("glue", "Do not count on glue or a sealed edge: once resin gets under it, it lifts in full. Screw, wedge or weigh it down from above.")
    if piece.given.choice("sealed") == "no" and piece.form != "stabilised":
        say("air", "Unsealed wood lets its air out into warm resin, as bubbles. Brush on a thin coat first and let it set.")
    say("down", "The volume is rounded down: counting less wood orders more resin, not less.", "go")
    return tuple(out)
