"""Will it bend under the tool: how far the rim gives, and the disc to back it with."""

from __future__ import annotations

from calc.answers import Answer, Band, Caution, Change, Grid, Headline, Line, figure
from calc.errors import InputError
from calc.quantity.writing import Shown
from calc.questions import Given
from calc.questions._will_the_mount_hold import case as cases
from calc.questions._will_the_mount_hold import working
from calc.questions._will_the_mount_hold.picture import backed
from calc.questions._will_the_mount_hold.words import hair, handy, length, tenths
from calc.turning import bending

_STEPS = (0.5, 0.75, 1.0, 1.5, 2.0)  # thicknesses in the table, as shares of the one asked


def bends(given: Given) -> Answer:
    """The backing disc that keeps the rim from giving way.

    Raises
    ------
    InputError
        ``no-block`` between centres.
    """
    if given.choice("hold") == "centres":
        raise InputError("hold", "no-block")
    diameter, thick, held = given.si("diameter"), given.si("thin"), cases.across(given)
    bend = bending.rim_bend(diameter, held, thick)
    least, enough = bending.backing_diameter(diameter, thick), bending.thickness_for(diameter, held)
    needs = bend > bending.MOST_BEND_M
    size = backing_size(given, least, diameter)
    gives = f"{hair(given, bend)} under a firm cut"
    limit = str(hair(given, bending.MOST_BEND_M))
    if needs:
        first = f"Or cut the rim first, while it is still {tenths(given, enough, 'up')} thick, then the middle."
        headline = Headline("Back it with a disc of", size.text, size.unit, f"Flat, glued full. As it is held now the rim gives {gives}. {first}", "caution")
    else:
        headline = Headline(
            "Backing disc", "None needed", "", f"The rim gives {gives}, and {limit} is the most. Still: cut the rim before you thin the middle.", "go"
        )
    return Answer(
        headline,
        lines=(
            Line(
                "The rim gives", hair(given, bend).text, hair(given, bend).unit, f"Pushed along the lathe as in a firm cut. More than {limit} leaves it uneven."
            ),
            Line("Order of cuts", "Rim first, middle last", note="While the middle is thick it holds the rim. Do not go back to the rim once it is thin."),
            Line("No help", "The tailstock", note="It holds the middle, not the rim. A light, sharp tool halves the push, and what it gives."),
        ),
        changes=(
            Change("A backing disc of that size", f"gives {limit}"),
            Change(f"Rim cut while it is {tenths(given, enough, 'up')} thick", f"gives {limit}"),
            Change("Half the push: sharp tool, light cut", f"gives {hair(given, bend / 2)}"),
        )
        if needs
        else (),
        band=Band(
            "Block, glue and lathe give too, and wood in it is softer across the grain: what you feel may be twice that.",
            str(hair(given, bend)),
            str(hair(given, 2 * bend)),
        ),
        cautions=(Caution("X15", "caution", "Warm resin is soft: it bends further and stays bent. Over hand-warm, stop and let it cool."),),
        working=tuple(working.bends(diameter, held, thick)),
        sources=("plate-theory", "judgement", "practice"),
        grids=(_grid(given, diameter, held, thick),),
        drawings=(backed(given, diameter, thick, held, size.si if needs else None),),
        values={
            "bend": figure(hair(given, bend), "length", bend),
            "backing": figure(length(given, least if needs else 0.0, "up"), "length", least),
            "thick_enough": figure(tenths(given, enough, "up"), "length", enough),
        },
    )


def backing_size(given: Given, least: float, diameter: float) -> Shown:
    """The backing disc in handy sizes, but never wider than the work."""
    shown = handy(given, least)
    return shown if shown.si <= diameter else length(given, diameter)


def _grid(given: Given, diameter: float, held: float, thick: float) -> Grid:
    rows = []
    for share in _STEPS:
        bend = bending.rim_bend(diameter, held, share * thick)
        least = bending.backing_diameter(diameter, share * thick) if bend > bending.MOST_BEND_M else None
        backing = "none" if least is None else str(backing_size(given, least, diameter))
        rows.append((str(tenths(given, share * thick)), str(hair(given, bend)), backing))
    return Grid("As it gets thinner", ("Thickness", "Rim gives", "Backing disc"), tuple(rows))
