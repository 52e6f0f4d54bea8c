"""Cautions of Dry enough?: few and short, each with its trigger."""

from __future__ import annotations

from collections.abc import Callable

from calc.answers import Caution, Tone
from calc.casting.moisture import percent
from calc.casting.species import largest_shrinkage
from calc.questions._dry_enough.case import METER_STEP, Wood

_Say = Callable[[str, str], None]


def cautions(wood: Wood) -> tuple[Caution, ...]:
    """Few and short, each with its trigger."""
    out: list[Caution] = []

    def say(id: str, text: str, tone: Tone = "caution") -> None:
        out.append(Caution(id, tone, text))

    if wood.found is not None and wood.limits.grade(wood.found) == "caution":
        say("opens", "Held by the resin it cannot shrink: the bond opens, or the wood cracks along its grain.")
    if wood.off_scale:
        say("off-scale", f"A hand meter cannot tell above {wood.level(percent('meter high'))}: it is wet, and nobody knows how wet.", "stop")
    if wood.judged == "meter":
        _meter_cautions(wood, say)
    if wood.judged == "oven":
        say("sample", "The sample speaks for its own place: cut it from the middle, well away from an end.")
    if wood.judged == "log":
        say("slow", "Thick, waxed or sealed wood dries so slowly that it looks steady while wet inside. Read a fresh end cut as well.")
    if wood.judged != "log" and wood.damp and not wood.dry and (wood.found is None or wood.grade != "stop"):
        text = f"Left in this air, it gets no drier than {wood.pc(wood.here)}."
        say("damp-shop", text)
    if not wood.given.typed("humidity"):
        say("air-guessed", "The shop's humidity is our guess. A hygrometer tells.")
    if wood.moved is not None and not wood.known:
        worst = largest_shrinkage()
        text = f"No shrinkage known for this wood: the largest in our table stands in, {wood.pc(wood.shrinkage.tangential)} ({worst.name})."
        say("species", text)
    if wood.moved is not None and wood.given.choice("figure") != "plain":
        say("figured", "Figured and spalted wood moves every way at once: the movement above is a rough guide.")
    if wood.grade in ("go", "caution") and not wood.too_dry:
        first = "Cast it soon" if wood.grade == "go" else "Once it is ready, cast it soon"
        say("wrap", f"{first}, or wrap it: dry wood takes up water from damp air within days.", "go")
    return tuple(out)


def _meter_cautions(wood: Wood, say: _Say) -> None:
    """What a hand meter hides."""
    if wood.misled and wood.grade == "stop":
        say("meter-misled", "Meters are made for plain wood. Burl and decay fool them: go by weight.")
    if wood.given.many("readings")[0] < percent("meter low") * (1 - 1e-9):
        say("below-scale", f"A hand meter cannot tell below {wood.level(percent('meter low'))}: a lower reading counts as that.")
    if len(wood.read) < 3:
        say("few", "Take more readings: both ends, the middle, the thickest place. The core dries last.")
    elif wood.read[-1] - wood.read[0] > percent("match") + METER_STEP / 2:
        say("uneven", f"The readings lie {wood.pc(wood.read[-1] - wood.read[0])} apart: it is still drying inside.")
    if wood.given.choice("corrects") == "no" and wood.given.maybe("wood") is None and not wood.given.typed("shop"):
        say("warmth", "The wood is taken to be as warm as the shop. In colder wood a meter reads too low.")
