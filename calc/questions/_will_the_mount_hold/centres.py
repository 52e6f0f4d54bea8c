"""Between centres: nothing is glued or screwed, so length and the points decide."""

from __future__ import annotations

from calc.answers import Answer, Carry, Caution, Change, Headline, Limit, Line, Tone, figure
from calc.quantity.writing import rpm_text
from calc.questions import Given
from calc.questions._how_fast.handed import along
from calc.questions._will_the_mount_hold import case as cases
from calc.questions._will_the_mount_hold import working
from calc.questions._will_the_mount_hold.picture import between_centres
from calc.questions._will_the_mount_hold.words import length
from calc.turning.held import Between


def centres(given: Given) -> Answer:
    """The ceiling between centres."""
    piece, own = cases.between(given), given.maybe("speed")
    ceiling = piece.ceiling_rpm
    steadied = Between(piece.diameter_m, piece.length_m, piece.operation, steady=True)
    over = own is not None and own > ceiling
    cautions = [
        Caution("points", "caution", "No figure exists for how spur and point hold. Both stand in wood or waste: a point pressed into resin splits it.")
    ]
    if piece.slender or piece.whip_rpm < piece.rim_rpm:
        cautions.insert(0, Caution("X14", "caution", "Long and thin for its width: it can whip. A steady rest in the middle, or slower."))
    say = "Spur and live centre in wood or waste, tight; tighten again after the first minute. Start at the lowest."
    if piece.slender:
        say = f"Put a steady rest in the middle first; without one it may whip. {say}"
    if over:
        say = f"Your {rpm_text(own or 0.0)} rpm is over it: go no higher. {say}"
    tone: Tone = "caution" if over or piece.slender else "go"
    carried = {"operation": piece.operation, "diameter": str(length(given, piece.diameter_m, "up")), "hold": "centres"}
    carried |= along("centres", str(length(given, piece.length_m, "up")))
    return Answer(
        Headline("Ceiling between centres", rpm_text(ceiling), "rpm", say, tone),
        lines=(Line("Before each start", "Turn it one full round", note="By hand. Nothing touches; tailstock, quill and rest are locked."),),
        limits=(
            Limit("rim", "Rim", rpm_text(piece.rim_rpm), "rpm", "How fast a rim may run at most.", piece.rim_rpm <= piece.whip_rpm),
            Limit(
                "whip", "Whip", rpm_text(piece.whip_rpm), "rpm", "Half the speed at which it would whirl, if it were all resin.", piece.whip_rpm < piece.rim_rpm
            ),
        ),
        changes=(Change("A steady rest in the middle", f"to {rpm_text(steadied.ceiling_rpm)} rpm"),) if steadied.ceiling_rpm > ceiling * 1.05 else (),
        cautions=tuple(cautions),
        working=tuple(working.centres(piece)),
        sources=("lathe-manuals", "timoshenko", "practice", "judgement"),
        drawings=(between_centres(given, piece),),
        carries=(Carry("how-fast", carried),),
        values={"ceiling": figure(given.write(ceiling, "speed", "down"), "rotational speed", ceiling)},
    )
