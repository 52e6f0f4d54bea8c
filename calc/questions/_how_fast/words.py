"""What a maker reads of a speed: the headline, the ladder of limits, the band and the cautions."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from calc.answers import Band, Caution, Headline, Limit, Line, Tone
from calc.constants import STANDARD_GRAVITY
from calc.quantity.writing import round_to, rpm_text
from calc.questions import Given
from calc.questions._how_fast.handed import LONG
from calc.questions._how_fast.mount import of_mount
from calc.questions._how_fast.remedies import Raise
from calc.questions._how_fast.rounded import told_rpm
from calc.questions._how_fast.stages import next_line, steps_text
from calc.sources import value
from calc.turning import balance, caps, discs, footing, speed, vibrating
from calc.turning.case import Case
from calc.turning.job import Measured

_CUT = {
    "rough": "roughing out of round",
    "finish": "a finishing cut",
    "sand": "sanding by hand",
    "power": "power sanding",
    "paste": "rubbing in paste by hand",
}
_CONDITION = {"solid": "solid work", "filled": "filled work", "loose": "loose or doubtful work", "cracked": "cracked work"}
_SHARE = {0.75: "Three quarters", 0.875: "Seven eighths"}
_NAMES = {
    "rim": "Rim",
    "own": "Your own limit",
    "vibration": "Vibration",
    "push": "Push",
    "mount": "Mount",
    "whip": "Whip",
    "marked": "Marking",
    "heat": "Heat",
    "surface": "Clean cut",
    "lathe": "Lathe",
}
LONGEST_M = value("turning", "longest between centres") / 1e3
_HEAVY_LUMP_KG = 1.0  # from here on it is told in kilograms or pounds
REFLEX = (
    Line("By hand", "Turn it one full round", note="Nothing touches, nothing moves on the mount."),
    Line("Lowest first", "Set the lowest speed, then start", note="The dial or belt stands where the last job left it. Raise in steps."),
    Line("Stand", "Out of the line of the rim", note="You, and anyone else in the shop."),
)


def headline(given: Given, case: Case, top: speed.TopSpeed, changes: list[Raise]) -> Headline:
    """The setting and how to come to it; for a refusal, the remedy first."""
    if top.setting_rpm is None:
        steps: tuple[str, ...] = ()
        lower = round_to(top.hard_rpm, speed.VARIABLE_STEP_RPM, "down")
        if changes:
            then = f"Then up to {rpm_text(changes[0].setting_rpm)} rpm."
            steps = changes[0].steps if len(changes[0].steps) > 1 else ()
            say = then if steps else f"{changes[0].words}. {then}"
        elif lower > 0:
            first = "Fill the crack first, then a lathe" if case.condition == "cracked" else "Put it on a lathe"
            say = f"{first} that goes down to {lower:.0f} rpm, or {'set a steady rest' if case.slender else 'make it smaller'}."
        else:
            say = "Do not power it: balance it, or make it smaller, then ask again."
        return Headline("Top speed", "Not yet", "", say, "stop", steps)
    shown = f"{rpm_text(top.setting_rpm)} rpm"
    if top.too_quick:
        return Headline("Top speed", rpm_text(top.setting_rpm), "rpm", _heat_say(case, top, shown), "caution")
    if top.setting_rpm == case.speeds.lowest_rpm:
        say = "This is the lathe's lowest. Stop at the first tremble."
    elif case.speeds.steps_rpm:
        say = f"In steps, {steps_text(case)}. Stop at the first tremble."
    else:
        say = "Start at the lowest, raise it in steps, stop at the first tremble."
    return Headline("Top speed", rpm_text(top.setting_rpm), "rpm", say, _tone(case, top))


def ladder(given: Given, case: Case, top: speed.TopSpeed) -> tuple[Limit, ...]:
    """Every limit with its reason, and the one that rules."""
    share = case.job.mount_share
    by_cut = caps.operation_rim_speed(case.operation, case.diameter_m) <= caps.condition_rim_speed(case.condition)
    trembled = _trembled(case)
    if case.job.overruling is not None:
        how = "measured" if given.choice("felt") == "measured" else "felt"
        basis = f" From what you {how} at {rpm_text(case.job.overruling.speed_rpm)} rpm."
    else:
        basis = " From a guess at the balance." if case.guessed else ""
    why = {
        "rim": f"How fast the rim may run: {_CUT[case.operation] if by_cut else _CONDITION[case.condition]}.",
        "own": "Yours, not ours.",
        "vibration": f"Up to here it should run still again.{basis}" if trembled else f"Beyond this the lathe starts to walk.{basis}",
        "push": f"Beyond this the heavy side shoves with a twentieth of the lathe's weight.{basis}",
        "mount": f"{_SHARE.get(share, f'{share:.3g}')} of {said(top.bearing)}: glue block, "
        + ("flat pad at the far end." if case.far_end == "pad" else "nothing at the far end."),
        "whip": "Long and thin: beyond this it can start to whip.",
        "marked": "Marked on the chuck.",
        "heat": "Beyond this resin heats faster than it cools. Common practice, no source.",
        "surface": f"Beyond this the vibration shows in the surface.{basis}" + ("" if case.operation == "finish" else " No faster than the finishing cut."),
        "lathe": "The lathe's own highest.",
    }
    if not top.rim.counts:
        why["rim"] += " Yours stands in its place."
    if _own_held(case, top):
        why["own"] += " Held at our highest for any cut."
    if not given.typed("own"):
        why["own"] = "The mount: up to here 'Will the mount hold?' found that it holds."
    if case.operation == "power":
        why["heat"] = "The work turns slowly under a spinning pad. Common practice, no source."
    rungs = tuple(rung(limit, why[limit.id], limit is top.rules) for limit in top.limits)
    return rungs if given.typed("own") else tuple(replace(one, name="Mount, as found") if one.id == "own" else one for one in rungs)


def lines(given: Given, case: Case, top: speed.TopSpeed) -> tuple[Line, ...]:
    """What is done at the lathe before and while it runs; nothing for a refusal."""
    if top.setting_rpm is None:
        return ()
    still = _still(case)
    out = list(REFLEX)
    following = next_line(case)
    if following is not None:
        out.insert(0, following)
    if still < top.setting_rpm:
        still_note = "If it trembles sooner, stop and say at what speed under 'What it did'."
        out.insert(0, Line("Should feel still up to", told_rpm(still), "rpm", still_note))
    if case.operation == "power":
        out.insert(0, Line("Work", "50 to 150", "rpm", "The pad by its own marking. Common practice, no source."))
    return tuple(out)


def band(given: Given, case: Case) -> Band | None:
    """From best to worst make-up, when nobody has looked at the balance."""
    if not case.guessed:
        return None
    best, worst = (replace(case, make_up=make_up).top.setting_rpm for make_up in ("even", "half"))
    high = "no speed of this lathe" if best is None else f"{rpm_text(best)} rpm"
    low = "no speed of this lathe" if worst is None else f"{rpm_text(worst)} rpm"
    if best is None:
        return Band("Even with the wood spread evenly, no speed of this lathe as things stand.", low, high)
    if high == low:
        return Band(f"The balance is a guess, but it does not decide here: {high} either way.", low, high)
    return Band(f"The balance is a guess: {high} if the wood sits evenly, {low} if it is half and half.", low, high)


def cautions(given: Given, case: Case, top: speed.TopSpeed, kinds: set[str]) -> tuple[Caution, ...]:
    """Few and short, each with its trigger; the worst first."""
    out: list[Caution] = []

    def say(id: str, text: str, tone: Tone = "caution") -> None:
        out.append(Caution(id, tone, text))

    setting, measured = top.setting_rpm, case.measured
    if setting is None:
        say("X2", _why_not(given, case, top), "stop")
        shoved = _shoved(case)
        if shoved:
            say("X4", shoved, "stop")
    if case.condition == "cracked":
        say("X1", "Fix the crack or scrap the piece first. If you run it: tailstock up, light cuts.", "stop")
    if measured is not None:
        shown = rpm_text(measured.speed_rpm)
        first = "steadied" if case.slender else "balanced"
        if _over(measured, "zone-c"):
            say("X3", f"It was out of hand at {shown} rpm: do not go back there before it is {first}.", "stop")
        elif _over(measured, "zone-b") and case.slender:
            say("X3", f"It trembled at {shown} rpm. Long and thin: whip is the first suspect. A steady rest, or stay slower.")
        elif _over(measured, "zone-b"):
            say("X3", f"It trembled at {shown} rpm: stay below, and balance it before you go faster.")
        counts = "until size, weight or mount change"
        if setting is not None and measured.speed_rpm > setting:
            where = "belt" if case.speeds.steps_rpm else "dial"
            less = "" if _trembled(case) else f"It ran still at {shown} rpm, but {said(top.rules)} allows less. "
            last = "" if less else f" What you felt counts {counts}."
            say("X10", f"{less}The {where} may still stand at {shown} rpm: lowest first, lathe off.{last}")
        else:
            say("measured", f"What you felt or measured stands in for our estimate, {counts}.")
    if case.guessed and not case.slender and not (setting is None and "balance" in kinds):  # a refusal that leads with the weights has told how
        say(
            "balance",
            "Balance is a guess. To know: belt slack, spindle free, hang weights on the light side until it stays anywhere; "
            "then ask again with that weight and how far out it hung.",
        )
    if "balance" in kinds:
        say("weight", "Any weight you hang goes inside the rim, screwed and glued into waste wood. One that comes off is thrown.")
    if setting is None:
        return tuple(out)
    if _own_held(case, top):
        say("X11", "Your own limit is over our highest for any cut; the lower one is used.")
    elif not top.rim.counts:
        say("X11", f"Your own limit is over our ceiling of {rpm_text(top.rim.speed_rpm)} rpm. That is your call.")
    if top.bearing.id == "push" and top.rules.id in ("push", "mount"):
        slower = "slow down" if case.slender else "ballast it or slow down"
        say("X4", f"At this speed the heavy side shoves hard: if the lathe creeps, {slower}.")
    whip = _whip_words(given, case, top, setting)
    if whip:
        say("X14", whip)
    if case.hold != "centres" and not of_mount(given):
        say("X5", "This does not test the mount: ask Will the mount hold? first.")
    if case.operation in speed.RUBBING:
        glue = " Glue softens as it warms." if case.hold == "glue" else ""
        say("X6" if glue else "heat", f"Hand-warm at most: seconds in one place, not minutes.{glue}")
    elif case.operation == "power" and case.hold == "glue":
        say("X6", "Glue softens as it warms: a light pad, and feel the block as well as the face.")
    if case.operation in speed.SANDING:
        say("X13", "Tool rest off. No gloves, no cloth round a finger.")
        if case.hold != "centres":
            say("X8", "Reverse or a hard stop can unscrew it: lock screw in first.")
    lump = discs.shield_fragment_mass(caps.rim_speed(case.diameter_m, setting))
    if case.mass_kg > lump:
        style = "small mass" if lump < _HEAVY_LUMP_KG else "mass"
        say("X12", f"A lump over {given.write(lump, style, 'down')} off the rim hits harder than a face shield is tested for.")
    return tuple(out)


def extra(top: speed.TopSpeed) -> dict[str, Any]:
    """For other pages: whether it may start, what rules, and the three reflexes."""
    return {"refused": top.refused, "rules": top.rules.id, "reflex": [] if top.refused else [line.text for line in REFLEX]}


def rung(limit: speed.Limit, why: str, rules: bool) -> Limit:
    """One limit as it is read; ``rules`` for the one that decides."""
    text = rpm_text(limit.speed_rpm) if limit.id in ("own", "marked", "lathe") else told_rpm(limit.speed_rpm)
    return Limit(limit.id, _NAMES[limit.id], text, "rpm", why, rules)


def said(limit: speed.Limit) -> str:
    """A limit's name inside a sentence."""
    name = _NAMES[limit.id].lower()
    return f"the {name}" if limit.id in ("rim", "marked", "lathe", "heat") else name


def _whip_words(given: Given, case: Case, top: speed.TopSpeed, setting_rpm: float) -> str:
    """Where long thin work may whip: it is slender, or its length was not said and it may be longer than assumed."""
    if _trembled(case) and case.slender:
        return ""  # told with the tremble
    if top.rules.id == "whip" or case.slender:
        return "Long and thin for its width: it can whip. A steady rest in the middle, or slower."
    from_m = discs.whip_length(case.diameter_m, setting_rpm / speed.WHIP_SHARE, case.job.far_end_held)
    if case.hold in LONG or given.typed("thickness") or from_m > LONGEST_M:
        return ""
    return f"How long it is was not given. From {given.write(from_m, 'length', 'down')} on it can whip at this speed: say so under 'More'."


def _trembled(case: Case) -> bool:
    """Whether it was felt or measured to tremble, or worse."""
    return case.measured is not None and _over(case.measured, "zone-b")


def _heat_say(case: Case, top: speed.TopSpeed, shown: str) -> str:
    if top.rules.id == "surface" and case.operation in speed.SANDING:
        return f"Take it at the lowest, {shown}, and lightly. It may tremble there: balance it first for an even surface."
    if top.rules.id == "surface":
        return f"Take it at the lowest, {shown}. The cut may ripple: balance it for a clean one."
    if case.operation == "power":
        return f"The lowest, {shown}, is quicker than power sanding likes: light pad, never still in one place."
    return f"Use the lowest, {shown}, and keep it cool: wet, light, with pauses. Heat asks for {told_rpm(top.speed_rpm)}."


def _why_not(given: Given, case: Case, top: speed.TopSpeed) -> str:
    on_mount = f"{said(top.bearing)}, on this mount,"
    name = on_mount if top.hard.id == "mount" else said(top.hard)
    why = f"Why not: {name} allows {told_rpm(top.hard_rpm)} rpm, and the lowest here is {rpm_text(case.speeds.lowest_rpm)} rpm."
    if not case.speeds.steps_rpm and not given.typed("lowest"):
        why += " If yours goes slower, say so under 'Lowest speed'."
    return why


def _over(measured: Measured, zone: str) -> bool:
    """Whether the vibration is beyond a zone; what reads as its limit is not."""
    return measured.vibration_m_per_s > vibrating.vibration_limit(zone) * (1 + 1e-9)


def _shoved(case: Case) -> str:
    """Where the push sets no speed at all: what the heavy side does at the lathe's lowest."""
    push, standing = balance.push(case.job.felt_unbalance_kg_m, case.speeds.lowest_rpm), case.job.standing_mass_kg
    if push <= balance.PUSH_SHARE * standing * STANDARD_GRAVITY:
        return ""
    if push > footing.tipping_push(standing):
        return "Even at its lowest the heavy side could tip the lathe over."
    return "Even at its lowest the heavy side shoves with more than a twentieth of the lathe's weight: it creeps."


def _tone(case: Case, top: speed.TopSpeed) -> Tone:
    """Caution where the balance is a guess, it may tremble or did, the maker's own limit is over ours, or it is cracked."""
    trembled = _trembled(case)
    may_tremble = top.setting_rpm is not None and _still(case) < top.setting_rpm
    return "caution" if case.guessed or trembled or may_tremble or not top.rim.counts or case.condition == "cracked" else "go"


def _still(case: Case) -> float:
    """rpm up to which it should feel still."""
    return case.job.speed_at_vibration(case.job.clean_limit_m_per_s)


def _own_held(case: Case, top: speed.TopSpeed) -> bool:
    return case.own_rpm is not None and any(limit.id == "own" and limit.speed_rpm < case.own_rpm for limit in top.limits)
