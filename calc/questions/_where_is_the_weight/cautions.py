"""What to mind about a blank's balance: few and short, each with its trigger."""

from __future__ import annotations

from calc.answers import Caution
from calc.questions._where_is_the_weight import moves
from calc.questions._where_is_the_weight.case import Case
from calc.questions._where_is_the_weight.moves import Centre, Shift, Stage
from calc.questions._where_is_the_weight.parts import NOTHING_KG, standard
from calc.questions._where_is_the_weight.words import length, near_rpm, weight_leads
from calc.turning import balance, caps, vibrating


def cautions(case: Case, told: list[Stage], shift: Shift | None, cut: Centre | None) -> tuple[Caution, ...]:
    """Few and short, each with its trigger; the worst first."""
    out: list[Caution] = []
    shown = near_rpm(case.speed)
    if case.vibration > vibrating.vibration_limit("zone-c"):
        out.append(Caution("X3", "stop", f"Unbalanced at {shown} rpm it would make this lathe walk."))
    elif case.vibration > vibrating.vibration_limit("zone-b"):
        out.append(Caution("X3", "caution", f"Unbalanced at {shown} rpm the lathe would tremble."))
    if case.push_share > balance.PUSH_SHARE:
        out.append(Caution("X4", "stop", "The heavy side would shove with over a twentieth of the lathe's weight: balance it, ballast it, or go slower."))
    if case.given.maybe("speed") is not None and caps.rim_speed(case.swept, case.speed) > caps.operation_rim_speed("finish", case.swept):
        out.append(Caution("X11", "caution", f"{shown} rpm is over our rim limit for any cut on this size. 'How fast?' tells the ceiling."))
    if case.weight >= NOTHING_KG and not case.hidden and not case.unhung:
        text = "A weight that comes off is a thrown weight: screw and glue it into waste wood, inside the rim, on the back. Spin it by hand first."
        out.append(Caution("throw", "caution", text))
    if case.made:
        out += _of_make_up(case, told, weight_leads(case, shift, cut) and not case.unhung)
    if case.way == "cast" and case.matters and cut is None:
        out.append(Caution("centre", "caution", "Moving the centre cures only the roughing: cut true, wood on one side is still on one side."))
    if case.way == "scale":
        out.append(Caution("true", "caution", "If wood on one side is the cause, it comes back once cut true: then hang weights."))
    if case.way == "swing":
        out += _of_swing(case)
    sticks = case.given.maybe("sticks")
    if case.way == "hung" and sticks is not None and sticks >= case.given.si("hung"):
        out.append(Caution("friction", "caution", "Friction hides as much as you hung. Free the spindle, or use two supports and a scale."))
    return tuple(out)


def _of_swing(case: Case) -> list[Caution]:
    swing = case.swing
    if swing.stays:
        text = "What friction hides was not tried: our guess for a free spindle stands in."
        return [] if case.given.typed("least") else [Caution("friction", "caution", text)]
    out = []
    if swing.miscounted:
        out.append(Caution("miscount", "caution", "Two timings lie about one swing apart: one may be miscounted. Time it once more."))
    if swing.wide:
        out.append(Caution("wide", "caution", "That is a wide swing. It is reckoned in, but a smaller one tells more surely."))
    if swing.left_out > standard("worse"):
        most = case.grams((1 + swing.left_out) * case.weight)
        out.append(Caution("chuck", "caution", f"On a piece this light a chuck weighs in: it may want up to {most}. Enter the chuck under 'More'."))
    return out


def _of_make_up(case: Case, told: list[Stage], hung: bool) -> list[Caution]:
    out = []
    worse, blocked = moves.worst(case, told), moves.in_the_way(case, told) if hung else None
    if worse is not None:
        text = f"It gets worse as it is turned down: {_wants(case, worse)}. Balance it again there."
        out.append(Caution("worse", "caution", text))
    elif blocked is not None:
        inside = "" if case.finish is not None else " Or enter what it is turned down to, and it goes inside that from the start."
        out.append(Caution("in-the-way", "caution", f"Turned down, a weight that far out is in the way: {_wants(case, blocked)}.{inside}"))
    if any(piece.sources == ("judgement",) for piece in case.pieces):
        text = f"A wood is not named and stands at {case.given.write(standard('wood unknown'), 'density')}: name it, or weigh it, before it is cast in."
        out.append(Caution("unnamed", "caution", text))
    odd = [piece for piece in case.pieces if not piece.metal and not standard("odd light") <= piece.wood.density <= standard("odd heavy")]
    if odd:
        rho = case.given.write(odd[0].wood.density, "density")
        out.append(Caution("odd", "caution", f"That makes {odd[0].title} {rho}. Hardly any wood: look at its sizes, its depth and its weight again."))
    deep = case.blank.thickness_m * (1 - 1e-9)
    if case.blank.thickness_m > standard("long") * case.round and any(piece.wood.depth_m < deep for piece in case.pieces):
        text = "Long, with wood in part of its length: it also rocks end to end, and one weight does not cure that. Place the weight at the wood's own end."
        out.append(Caution("rocks", "caution", text))
    return out


def _wants(case: Case, stage: Stage) -> str:
    weight, place = moves.at_rim(case, stage)
    return f"at {length(case, stage.across)} it wants {case.grams(weight)} at {length(case, place)}"
