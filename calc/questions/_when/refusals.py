"""Where the clock does not hold: thin films of very fast systems, and pours that get too hot."""

from __future__ import annotations

from calc.answers import Answer, Caution, Change, Figure, Headline, Line, Working
from calc.casting.cure.stages import step_of
from calc.constants import ZERO_C
from calc.questions import Given
from calc.questions._when.casting import Casting
from calc.questions._when.handed import handed
from calc.questions._when.hours import after, figure_and_unit

VALUES = ("working", "swirl_from", "swirl_to", "layer_from", "layer_to", "dry", "leave", "rough", "cured")


def no_hours() -> dict[str, Figure]:
    """What is not told."""
    return {name: Figure(None, "time", "none") for name in VALUES}


def too_thin_and_fast(given: Given) -> bool:
    """A film so thin of a system so fast that it stays cool and the model is out."""
    pot_life = given.maybe("pot_life")
    return pot_life is not None and pot_life < step_of("fast pot life") * 60 and given.si("depth") <= step_of("thin film") / 1e3


def thin_and_fast(given: Given) -> Answer:
    """The sheet's own times, where it prints them; else what to do instead."""
    demould = given.maybe("demould")
    film, fast = given.write(step_of("thin film") / 1e3, "length"), f"{step_of('fast pot life'):g} min"
    why = f"Up to {film} thick, with a pot life under {fast}, our hours do not hold."
    if demould is None:
        head = Headline("Thin and very fast", "Go by the sheet", "", f"Its time to leave the mould, longer in a cold shop; try a corner first. {why}", "stop")
    else:
        head = Headline("Leave the mould after", *figure_and_unit(demould, "up"), f"By the sheet alone, and longer in a cold shop. {why}", "stop")
    printed = (("earliest", "Next layer not before"), ("latest", "Next layer not after"), ("cure", "Full cure after"))
    lines = tuple(Line(label, after(given.si(name), "up" if name != "latest" else "down"), "", "the sheet") for name, label in printed if given.typed(name))
    return Answer(
        head,
        lines=lines,
        changes=(Change("Pour a test film of the same thickness beside it", "cut into that one first"),),
        cautions=(Caution("thin-fast", "caution", "One such film left its mould after 6 to 12 h where the model said 0.4 h."),),
        working=(Working("Where it holds", "pot life ≥ limit, or depth > limit", f"limits {fast} and {film}", "neither"),),
        sources=("laminating-sheet", "judgement"),
        values=no_hours(),
    )


def too_hot(given: Given, casting: Casting) -> Answer:
    """Hours mean nothing for a pour that runs away or spoils."""
    found = casting.found
    limit = given.write(step_of("hot") + ZERO_C, "temperature")
    depth = given.write(casting.vessel.depth_m, "length", "up")
    reached = "run away" if found.ran_away else f"pass {limit}"
    say = f"Ask How deep and how hot? how thin. {depth} at once would {reached}, and then no hours hold."
    return Answer(
        Headline(casting.vessel.name, "Pour it in layers", "", say, "stop"),
        changes=(
            Change("Thinner layers, each on one that is cool", "hours that hold"),
            Change("A slower resin, or a cooler shop on the first day", "less heat at once"),
        ),
        cautions=(Caution("runaway", "stop", "Already poured and warm? Open the emergency cards now: keep out of the fumes."),),
        working=(
            Working(
                "Hottest of it",
                "heat and cure step by step; stop from the limit on",
                f"{1e3 * casting.vessel.depth_m:.4g} mm, K25 = {casting.kinetics.k25:.3g} 1/s, shop {casting.shop.day_k - ZERO_C:.3g} °C",
                "over 150 °C" if found.ran_away else f"{found.peak_k - ZERO_C:.0f} °C, limit {step_of('hot'):g} °C",
            ),
        ),
        sources=("cure-solver", "cure-fit", "practice"),
        carries=handed(given),
        values=no_hours(),
    )
