"""A mount that was found not to hold has no speed: what 'Will the mount hold?' handed on, heeded and passed along."""

from __future__ import annotations

from typing import cast

from calc.answers import Answer, Carry, Caution, Change, Headline, Working, figure
from calc.questions import Given
from calc.questions._how_fast.card import card
from calc.questions._mount_found import NO, TAILSTOCK, handed_on, heard, other_mount
from calc.turning import caps


def weak_mount(given: Given) -> Answer | None:
    """The answer for a mount that does not hold, or not without the tailstock; None for every other."""
    found = heard(given, given.maybe("diameter"), tailstock=_far_end_held(given))
    if found == NO:
        text, say = "Mend the mount first", "Make it as 'Will the mount hold?' says, then ask that again. For another mount, change it under 'More'."
        why, then = "Why not: 'Will the mount hold?' found that this mount does not hold. A slower speed does not mend it.", "ask the mount again"
    elif found == TAILSTOCK and not _far_end_held(given):
        text, say = "Bring up the tailstock", "Then choose it here. Or make the mount as 'Will the mount hold?' says, and ask that again."
        why, then = "Why not: 'Will the mount hold?' found that this mount holds with the tailstock up, not without.", "then there is a speed"
    else:
        return None
    headline = Headline("Top speed", text, "", say, "stop")
    sweeps = str(given.write(given.si("diameter"), "length", "up"))
    return Answer(
        headline,
        changes=(Change(text, then),),
        cautions=(Caution("X5", "stop", why),),
        working=(Working("Mount", "no speed on one that does not hold", given.label_of("found"), "not spun"),),
        sources=("judgement",),
        carries=(Carry("before-the-lathe", {"sweeps": sweeps} | of_mount(given)),),
        values={"speed": figure(None, "rotational speed"), "ceiling": figure(None, "rotational speed")},
        extra={"refused": True, "reflex": [], "card": card(given, headline)},
    )


def own_limit(given: Given) -> float | None:
    """The maker's own limit, rpm, and what the mount was found to hold up to: that only ever lowers, and lifts no limit of the rim."""
    own, found = given.maybe("own"), None if other_mount(given) else given.maybe("found_rpm")
    if found is None or own is not None:
        return own if found is None or own is None else min(own, found)
    rim = min(
        caps.operation_rim_speed(cast(caps.Operation, given.choice("operation")), given.si("diameter")),
        caps.condition_rim_speed(cast(caps.Condition, given.choice("condition"))),
    )
    return found if found <= caps.speed_at_rim_speed(given.si("diameter"), rim) else None


def of_mount(given: Given) -> dict[str, str]:
    """What was found of the mount, with the mount it was found of; nothing where it was not asked."""
    found = handed_on(given, given.maybe("diameter"), tailstock=_far_end_held(given))
    if not found:
        return {}
    size = {"mount": found["found_across"]} if "found_across" in found else {}
    return {"hold": given.choice("hold"), "tailstock": "yes" if _far_end_held(given) else "no"} | size | found


def _far_end_held(given: Given) -> bool:
    return given.words("far_end") != "none"  # between centres it is not asked, and is held
