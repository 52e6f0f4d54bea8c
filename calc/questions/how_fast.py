"""How fast may this blank turn, on this mount, for this cut, on this lathe?"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any, cast

from calc.answers import Answer, Band, Caution, Change, Figure, Headline, Limit, Line, Tone, Working, figure
from calc.errors import InputError
from calc.fields import NO, YES, Choice, Field, Numbers, Option, measure
from calc.quantity import Style, from_si, round_to, rpm_text
from calc.questions import Given, Question, Rule, Table
from calc.turning import balance, mounts, speed
from calc.turning.case import EIGHT_SIDES, GUESSES, Case, balanced, ballast_to_next_limit, on_footing, recentred
from calc.words import inside

TURNING = ("rough", "finish", "sand", "power", "paste")
SANDING = ("sand", "power", "paste")
WEIGHT_REACH = 0.87  # how far out a balance weight still sits inside the rim, as a share of the radius: our judgement
MOST_CHANGES = 4  # more are not read: our judgement

_CUT = {
    "rough": "roughing out of round",
    "finish": "a finishing cut",
    "sand": "sanding by hand",
    "power": "power sanding",
    "paste": "rubbing in paste by hand",
}
_CONDITION = {"solid": "solid work", "filled": "filled work", "loose": "loose or doubtful work", "cracked": "cracked work"}
_SHARE = {0.75: "Three quarters", 0.875: "Seven eighths"}
MOST_TOGETHER = 3  # a longer list of things to do first is another lathe: our judgement
MOST_SHIFT = 1 / 8  # of the diameter; a blank moved further no longer cleans up round: our judgement
REFLEX = (
    Line("By hand", "Turn it one full round", note="Nothing touches, nothing moves on the mount."),
    Line("Lowest first", "Set the lowest speed, then start", note="The dial or belt stands where the last job left it. Raise in steps."),
    Line("Stand", "Out of the line of the rim", note="You, and anyone else in the shop."),
)


@dataclass(frozen=True)
class Remedy:
    """Something a maker can do: its sort, the case it makes of a case, and its words for a case."""

    sort: str
    change: Callable[[Case], Case]
    words: Callable[[Given, Case], str]


@dataclass(frozen=True)
class Raise:
    """One or more remedies that help: their sorts, their words, and the setting they lead to (rpm)."""

    sorts: tuple[str, ...]
    words: str
    setting_rpm: float


# ---------------------------------------------------------------- reading the inputs


def _speeds(given: Given) -> speed.Speeds:
    if given.choice("speeds") == "steps":
        return speed.Speeds.of_steps(given.many("steps"))
    kind = speed.lathe_kinds()[given.choice("lathe")]
    lowest, highest = given.maybe("lowest"), given.maybe("highest")
    lowest = min(kind.lowest_rpm, highest or math.inf) if lowest is None else lowest
    highest = max(kind.highest_rpm, lowest) if highest is None else highest
    if highest < lowest:
        raise InputError("highest", "range", lowest=f"{lowest:g} rpm")
    return speed.Speeds(lowest, highest)


def _measured(given: Given) -> speed.Measured | None:
    felt = given.choice("felt")
    if felt == "nothing":
        return None
    vibration = given.si("vibration") if felt == "measured" else balance.vibration_limit(f"felt-{felt}")
    return speed.Measured(given.si("felt_speed"), vibration)


def _case(given: Given) -> Case:
    make_up = given.choice("balance")
    diameter = given.si("diameter")
    known_unbalance = known_eccentricity = None
    if make_up == "weight":
        if given.si("weight_radius") > diameter / 2 * (1 + 1e-9):
            raise InputError("weight_radius", "outside")
        known_unbalance = balance.unbalance_of_weight(given.si("weight"), given.si("weight_radius"))
    if make_up == "known":
        known_eccentricity = given.si("eccentricity")
        if known_eccentricity > diameter / 2 * (1 + 1e-9):
            raise InputError("eccentricity", "outside")
    return Case(
        operation=cast(speed.Operation, given.choice("operation")),
        diameter_m=diameter,
        thickness_m=given.si("thickness"),
        condition=cast(speed.Condition, given.choice("condition")),
        make_up=make_up,
        hold=cast(mounts.Hold, given.choice("hold")),
        far_end=cast(mounts.FarEnd, given.words("far_end") or "live"),
        lathe_kg=_lathe_mass(given),
        bolted=given.choice("bolted") == "yes",
        speeds=_speeds(given),
        weighed_kg=given.maybe("mass"),
        known_unbalance_kg_m=known_unbalance,
        known_eccentricity_m=known_eccentricity,
        marked_rpm=given.maybe("marked"),
        own_rpm=given.maybe("own"),
        measured=_measured(given),
    )


def _lathe_mass(given: Given) -> float:
    own = given.maybe("lathe_mass")
    return speed.lathe_kinds()[given.choice("lathe")].mass_kg if own is None else own


# ---------------------------------------------------------------- what would raise it


def _balance_radius(given: Given, case: Case) -> float:
    """Where a weight fits inside the rim, on a mark a tape shows."""
    if case.make_up == "weight":
        return given.si("weight_radius")
    step = 0.005 if given.system == "metric" else 0.25 * 0.0254
    return max(round_to(WEIGHT_REACH * case.diameter_m / 2, step, "down"), min(step, case.diameter_m / 4))


def _weight_words(given: Given, case: Case) -> str:
    """'430 g at 130 mm'."""
    radius = _balance_radius(given, case)
    weight = balance.balance_weight(case.job.felt_unbalance_kg_m, radius)
    return f"{given.write(weight, 'small mass')} at {given.write(radius, 'length')}"


def _ballast_words(given: Given, case: Case) -> str:
    style = Style("kg", step=10) if given.system == "metric" else Style("lb", step=10)
    return f"Put {given.write(ballast_to_next_limit(case), ('mass', style), 'up')} of ballast on the stand"


def _remedies(case: Case) -> Iterator[Remedy]:
    """Everything a maker could do about this case. Not all of it helps."""
    if case.make_up in ("weight", "known") and case.measured is None:
        yield Remedy("balance", balanced, lambda given, it: f"Hang {_weight_words(given, it)} on the light side and fix it there")
        if case.operation == "rough" and case.eccentricity_m < MOST_SHIFT * case.diameter_m:
            yield Remedy(
                "centre",
                recentred,
                lambda given, it: f"Move the mounting centre {given.write(it.eccentricity_m, 'length')} towards the heavy side",
            )
    else:
        yield Remedy(
            "balance",
            balanced,
            lambda given, it: (
                f"Hang weights on the light side, spindle free, about {_weight_words(given, it)}, until it stays anywhere; fix them there"
            ),
        )
    if case.hold != "centres" and case.far_end != "live":
        yield Remedy("tailstock", lambda it: replace(it, far_end="live"), lambda given, it: "Bring the tailstock up with a live centre")
    if not case.bolted:
        yield Remedy("bolts", lambda it: on_footing(it, it.lathe_kg, True), lambda given, it: "Bolt the lathe down")
    yield Remedy("ballast", lambda it: on_footing(it, it.lathe_kg + ballast_to_next_limit(it), it.bolted), _ballast_words)
    if case.condition in ("cracked", "loose"):
        what = "Fill the crack" if case.condition == "cracked" else "Seal and fill what is open"
        yield Remedy("condition", lambda it: replace(it, condition="filled"), lambda given, it: f"{what} and let it cure, then ask as 'filled'")
    if case.operation == "rough":
        yield Remedy(
            "shape",
            lambda it: replace(it, diameter_m=it.diameter_m * EIGHT_SIDES),
            lambda given, it: (
                "If it is square, saw it to eight sides first: it then sweeps " + str(given.write(it.diameter_m * EIGHT_SIDES, "length", "up"))
            ),
        )
    if case.thickness_m > speed.WHIP_FROM * case.diameter_m and not case.steady:
        yield Remedy("steady", lambda it: replace(it, steady=True), lambda given, it: "Set a steady rest in the middle")


def _changes(given: Given, case: Case, top: speed.TopSpeed) -> list[Raise]:
    """What raises the setting, best first; for a refusal, two or three things together where fewer are not enough."""
    remedies = list(_remedies(case))
    for together in range(1, (MOST_TOGETHER if top.refused else 1) + 1):
        worth: list[tuple[float, tuple[Remedy, ...]]] = []
        for several in itertools.combinations(remedies, together):
            if {"balance", "centre"} <= {remedy.sort for remedy in several}:
                continue
            after = case
            for remedy in several:
                after = remedy.change(after)
            setting = after.top.setting_rpm
            if setting is not None and setting > (top.setting_rpm or 0.0):
                worth.append((setting, several))
        if worth:
            worth.sort(key=lambda found: (_leaves_crack(case, found[1]), -found[0]))
            return [_raise(given, case, several, setting) for setting, several in worth[:MOST_CHANGES]]
    return []


def _leaves_crack(case: Case, several: tuple[Remedy, ...]) -> bool:
    """Whether the work would still run cracked: such a remedy never leads."""
    return case.condition == "cracked" and "condition" not in {remedy.sort for remedy in several}


def _raise(given: Given, case: Case, several: tuple[Remedy, ...], setting_rpm: float) -> Raise:
    """The words, each remedy told for the case as the ones before it leave it."""
    told: list[str] = []
    for remedy in several:
        words = remedy.words(given, case)
        told.append(inside(words) if told else words)
        case = remedy.change(case)
    return Raise(tuple(remedy.sort for remedy in several), "; and ".join(told), setting_rpm)


# ---------------------------------------------------------------- words


def _rung(given: Given, limit: speed.Limit, why: str, rules: bool) -> Limit:
    return Limit(limit.id, _NAMES[limit.id], rpm_text(limit.speed_rpm), "rpm", why, rules)


def _ladder(given: Given, case: Case, top: speed.TopSpeed) -> tuple[Limit, ...]:
    """Every limit with its reason, and the one that rules."""
    share = case.job.mount_share
    by_cut = speed.operation_rim_speed(case.operation, case.diameter_m) <= speed.condition_rim_speed(case.condition)
    if case.measured is not None:
        how = "measured" if given.choice("felt") == "measured" else "felt"
        basis = f" From what you {how} at {rpm_text(case.measured.speed_rpm)} rpm."
    else:
        basis = " From a guess at the balance." if case.guessed else ""
    why = {
        "rim": f"How fast the rim may run: {_CUT[case.operation] if by_cut else _CONDITION[case.condition]}.",
        "own": "Yours, not ours.",
        "vibration": f"Beyond this the lathe starts to walk.{basis}",
        "push": f"Beyond this the heavy side shoves with a twentieth of the lathe's weight.{basis}",
        "mount": f"{_SHARE.get(share, f'{share:.3g}')} of {_said(top.bearing)}: glue block, "
        + ("flat pad at the far end." if case.far_end == "pad" else "nothing at the far end."),
        "whip": "Long and thin: beyond this it can start to whip.",
        "marked": "Marked on the chuck.",
        "heat": "Beyond this resin heats faster than it cools. Common practice, no source.",
        "surface": f"Beyond this the vibration shows in the surface.{basis}",
        "lathe": "The lathe's own highest.",
    }
    if not top.rim.counts:
        why["rim"] += " Yours stands in its place."
    if _own_held(case, top):
        why["own"] += " Held at our highest for any cut."
    if case.operation == "power":
        why["heat"] = "The work turns slowly under a spinning pad. Common practice, no source."
    return tuple(_rung(given, limit, why[limit.id], limit is top.rules) for limit in top.limits)


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


def _said(limit: speed.Limit) -> str:
    """A limit's name inside a sentence."""
    name = _NAMES[limit.id].lower()
    return f"the {name}" if limit.id in ("rim", "marked", "lathe", "heat") else name


def _own_held(case: Case, top: speed.TopSpeed) -> bool:
    return case.own_rpm is not None and any(limit.id == "own" and limit.speed_rpm < case.own_rpm for limit in top.limits)


def _heat_say(case: Case, top: speed.TopSpeed, shown: str) -> str:
    if top.rules.id == "surface":
        return f"Take it at the lowest, {shown}. The cut may ripple: balance it for a clean one."
    if case.operation == "power":
        return f"The lowest, {shown}, is quicker than power sanding likes: light pad, never still in one place."
    return f"Use the lowest, {shown}, and keep it cool: wet, light, with pauses. Heat asks for {top.speed_rpm:.0f}."


def _headline(given: Given, case: Case, top: speed.TopSpeed, changes: list[Raise]) -> Headline:
    if top.setting_rpm is None:
        lower = round_to(top.hard_rpm, speed.VARIABLE_STEP_RPM, "down")
        if changes:
            say = f"{changes[0].words}. Then up to {rpm_text(changes[0].setting_rpm)} rpm."
        elif lower > 0:
            first = "Fill the crack first, then a lathe" if case.condition == "cracked" else "Put it on a lathe"
            say = f"{first} that goes down to {lower:.0f} rpm, or make it smaller."
        else:
            say = "Do not power it: balance it, or make it smaller, then ask again."
        return Headline("Top speed", "Not yet", "", say, "stop")
    shown = f"{rpm_text(top.setting_rpm)} rpm"
    if top.too_quick:
        return Headline("Top speed", rpm_text(top.setting_rpm), "rpm", _heat_say(case, top, shown), "caution")
    lowest = top.setting_rpm == case.speeds.lowest_rpm
    say = "This is the lathe's lowest. Stop at the first tremble." if lowest else "Start at the lowest, raise it in steps, stop at the first tremble."
    return Headline("Top speed", rpm_text(top.setting_rpm), "rpm", say, _tone(case, top))


def _tone(case: Case, top: speed.TopSpeed) -> Tone:
    """Caution where the balance is a guess, it may tremble or did, the maker's own limit is over ours, or it is cracked."""
    trembled = case.measured is not None and case.measured.vibration_m_per_s > balance.vibration_limit("zone-b")
    may_tremble = top.setting_rpm is not None and _still(case) < top.setting_rpm
    return "caution" if case.guessed or trembled or may_tremble or not top.rim.counts or case.condition == "cracked" else "go"


def _still(case: Case) -> float:
    """rpm up to which it should feel still."""
    return case.job.speed_at_vibration(case.job.clean_limit_m_per_s)


def _band(given: Given, case: Case) -> Band | None:
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


def _why_not(given: Given, case: Case, top: speed.TopSpeed) -> str:
    on_mount = f"{_said(top.bearing)}, on this mount,"
    name = on_mount if top.hard.id == "mount" else _said(top.hard)
    why = f"Why not: {name} allows {rpm_text(top.hard_rpm)} rpm, and the lowest here is {rpm_text(case.speeds.lowest_rpm)} rpm."
    if not case.speeds.steps_rpm and not given.typed("lowest"):
        why += " If yours goes slower, say so under 'Lowest speed'."
    return why


def _cautions(given: Given, case: Case, top: speed.TopSpeed, kinds: set[str]) -> tuple[Caution, ...]:
    """Few and short, each with its trigger; the worst first."""
    out: list[Caution] = []

    def say(id: str, text: str, tone: Tone = "caution") -> None:
        out.append(Caution(id, tone, text))

    setting, measured = top.setting_rpm, case.measured
    if setting is None:
        say("X2", _why_not(given, case, top), "stop")
    if case.condition == "cracked":
        say("X1", "Fix the crack or scrap the piece first. If you run it: tailstock up, light cuts.", "stop")
    if measured is not None:
        shown = rpm_text(measured.speed_rpm)
        if measured.vibration_m_per_s > balance.vibration_limit("zone-c"):
            say("X3", f"It was out of hand at {shown} rpm: do not go back there before it is balanced.", "stop")
        elif measured.vibration_m_per_s > balance.vibration_limit("zone-b"):
            say("X3", f"It trembled at {shown} rpm: balance it before you go faster.")
        say("measured", "What you felt or measured stands in for our estimate, until size, weight or mount change.")
    if case.guessed:
        say(
            "balance",
            "Balance is a guess. To know: belt slack, spindle free, hang weights on the light side until it stays anywhere; "
            "then ask again with that weight and how far out it hung.",
        )
    if "balance" in kinds:
        say("weight", "A weight that comes off is a thrown weight: screw and glue it into waste wood, inside the rim.")
    if setting is None:
        return tuple(out)
    if _own_held(case, top):
        say("X11", "Your own limit is over our highest for any cut; the lower one is used.")
    elif not top.rim.counts:
        say("X11", f"Your own limit is over our ceiling of {rpm_text(top.rim.speed_rpm)} rpm. That is your call.")
    if top.bearing.id == "push" and top.rules.id in ("push", "mount"):
        say("X4", "At this speed the heavy side shoves hard: if the lathe creeps, ballast it or slow down.")
    if case.hold != "centres":
        say("X5", "This does not test the mount: look at glue, screws or tenon first.")
    if case.operation in speed.RUBBING:
        glue = " Glue softens as it warms." if case.hold == "glue" else ""
        say("heat", f"Hand-warm at most: seconds in one place, not minutes.{glue}")
    if case.operation in SANDING:
        say("X13", "Tool rest off. No gloves, no cloth round a finger.")
        if case.hold != "centres":
            say("X8", "Reverse or a hard stop can unscrew it: lock screw in first.")
    lump = speed.shield_fragment_mass(speed.rim_speed(case.diameter_m, setting))
    if case.mass_kg > lump:
        say("X12", f"A lump over {given.write(lump, 'small mass', 'down')} off the rim hits harder than a face shield is tested for.")
    return tuple(out)


def _lines(given: Given, case: Case, top: speed.TopSpeed) -> tuple[Line, ...]:
    if top.setting_rpm is None:
        return ()
    still = _still(case)
    lines = list(REFLEX)
    if still < top.setting_rpm:
        still_note = "If it trembles sooner, stop and say at what speed under 'What it did'."
        lines.insert(0, Line("Should feel still up to", rpm_text(still), "rpm", still_note))
    if case.operation == "power":
        lines.insert(0, Line("Work", "50 to 150", "rpm", "The pad by its own marking. Common practice, no source."))
    return tuple(lines)


def _working(given: Given, case: Case, top: speed.TopSpeed) -> tuple[Working, ...]:
    """Each limit: its formula in symbols, then with the numbers in (kg, mm, mm/s), then the rpm."""
    job = case.job
    by_id = {limit.id: limit.speed_rpm for limit in top.limits}
    cap = min(speed.operation_rim_speed(case.operation, case.diameter_m), speed.condition_rim_speed(case.condition))
    d, t, m, standing = (
        f"{1000 * case.diameter_m:.4g}",
        f"{1000 * case.thickness_m:.4g}",
        f"{case.mass_kg:.4g}",
        f"{job.standing_mass_kg:.4g}",
    )
    v_lim, u = f"{1000 * job.vibration_limit_m_per_s:.3g}", f"{1000 * job.felt_unbalance_kg_m:.4g}"
    steps = [Working("Rim", "n = 60 000 v / (π D)", f"60 000 × {cap:.3g} / (π × {d})", _result(by_id["rim"]))]
    if case.weighed_kg is None:
        numbers = f"{speed.RESIN_DENSITY:.0f} × π × {d}² × {t} / 4 / 10⁹"
        steps.append(Working("Weight, as a full disc of resin", "m = ρ π D² t / 4", numbers, f"{m} kg"))
    if case.measured is None:
        steps.append(_unbalance_working(given, case))
        numbers = f"9.549 × √2 × {v_lim} × ({standing} + {m}) / {u}"
        steps.append(Working("Vibration", "n = (60 / 2π) √2 v_lim (M + m) / U", numbers, _result(by_id["vibration"])))
    else:
        n_m, v_m = f"{case.measured.speed_rpm:.4g}", f"{1000 * case.measured.vibration_m_per_s:.3g}"
        numbers = f"{n_m} × {v_lim} / {v_m}"
        steps.append(Working("Vibration, as it ran", "n = n_m v_lim / v_m", numbers, _result(by_id["vibration"])))
        numbers = f"√2 × {v_m} × ({standing} + {m}) / {balance.angular_speed(case.measured.speed_rpm):.4g}"
        steps.append(Working("Out of balance, as it ran", "U = √2 v_m (M + m) / ω_m", numbers, f"{u} kg·mm"))
    numbers = f"9.549 × √({balance.PUSH_SHARE:g} × {standing} × {balance.STANDARD_GRAVITY:.4g} × 1000 / {u})"
    steps.append(Working("Push", "n = (60 / 2π) √(k M g / U)", numbers, _result(by_id["push"])))
    if "mount" in by_id:
        numbers = f"{job.mount_share:g} × {top.bearing.speed_rpm:.1f}"
        steps.append(Working("Mount", "n = share × the lowest above", numbers, _result(by_id["mount"])))
    if "whip" in by_id:
        formula = "n = ½ × 60 (π D / 8 L²) √(E / ρ)" + ("" if job.far_end_held else f" × {speed.FREE_END_FACTOR:.3f}")
        stiff = f"√({speed.RESIN_MODULUS:.2g} / {speed.RESIN_DENSITY:.0f})"
        numbers = f"30 × 1000 × (π × {d} / (8 × {1000 * job.length_m:.4g}²)) × {stiff}"
        steps.append(Working("Whip", formula, numbers, _result(by_id["whip"])))
    steps.append(_setting_working(case.speeds, top))
    if top.setting_rpm is not None:
        steps.append(_running_working(case, top.setting_rpm))
    return tuple(steps)


def _running_working(case: Case, setting_rpm: float) -> Working:
    rim = speed.rim_speed(case.diameter_m, setting_rpm)
    unbalance = case.job.felt_unbalance_kg_m
    return Working(
        "At that speed",
        "v = π D n / 60 000; F = U ω²; G = U ω / m; a lump of 2 E / v²",
        f"n = {setting_rpm:g}; E = {speed.SHIELD_TEST_J:.3g} J, the face shield's test",
        f"rim {rim:.3g} m/s; push {balance.push(unbalance, setting_rpm):.3g} N; "
        f"balance grade G {1000 * balance.balance_grade(unbalance, case.mass_kg, setting_rpm):.3g}; "
        f"lump {1000 * speed.shield_fragment_mass(rim):.3g} g",
    )


def _unbalance_working(given: Given, case: Case) -> Working:
    m, e = f"{case.mass_kg:.4g}", f"{1000 * case.eccentricity_m:.4g}"
    result = f"{1000 * case.job.unbalance_kg_m:.4g} kg·mm"
    if case.make_up == "weight":
        numbers = f"{given.si('weight'):.4g} × {1000 * given.si('weight_radius'):.4g}"
        return Working("Out of balance, weighed", "U = w r", numbers, f"{result}, so e = {e} mm")
    if case.make_up == "known":
        return Working("Out of balance", "U = m e", f"{m} × {e}", result)
    share = 100 * case.eccentricity_m / case.diameter_m
    return Working("Out of balance, guessed", "U = m × share × D", f"{m} × {share:.2g} % × {1000 * case.diameter_m:.4g}", result)


def _setting_working(speeds: speed.Speeds, top: speed.TopSpeed) -> Working:
    can = ", ".join(f"{step:g}" for step in speeds.steps_rpm) if speeds.steps_rpm else f"{speeds.lowest_rpm:g} to {speeds.highest_rpm:g}"
    rule = "highest step not above the lowest limit" if speeds.steps_rpm else "lowest limit, down to a full ten"
    result = "none: the lowest is above it" if top.setting_rpm is None else f"{top.setting_rpm:g} rpm"
    if top.too_quick:
        result += f", the lowest there is; not above {top.hard_rpm:.1f}"
    return Working("Setting", rule, f"{top.speed_rpm:.1f} rpm on {can}", result)


def _result(rpm: float) -> str:
    return "no limit" if math.isinf(rpm) else f"{rpm:.1f} rpm"


# ---------------------------------------------------------------- the three answers


def _broken(given: Given) -> Answer:
    """A crack right through, an opened bond, loose wood: nothing to work out."""
    return Answer(
        Headline("Top speed", "Do not spin", "", "Take it off. Bond or cast it whole again, let it cure, then ask as 'filled'.", "stop"),
        changes=(Change("Whole again and cured", "ask as 'filled'"),),
        cautions=(Caution("X16", "stop", "Why not: a crack right through, an opened bond or loose wood lets go without warning at any speed."),),
        working=(Working("Condition", "no cap exists", given.label_of("condition"), "not spun"),),
        sources=("judgement",),
        values={"speed": figure(None, "rotational speed"), "ceiling": figure(None, "rotational speed")},
        extra={"refused": True, "reflex": []},
    )


def _wheel(given: Given) -> Answer:
    """A buffing wheel: its own size and marking decide, not the work's."""
    diameter, marked, own, speeds, felt = (
        given.si("wheel"),
        given.maybe("wheel_marked"),
        given.maybe("own"),
        _speeds(given),
        _measured(given),
    )
    limit = balance.vibration_limit("zone-c")
    felt_rpm = None if felt is None else balance.speed_from_measured_vibration(felt.speed_rpm, felt.vibration_m_per_s, limit)
    top = speed.settle(speed.wheel_limits(diameter, marked, own, felt_rpm), speeds)
    cap, warm = speed.caps()["wheel-cap"]["rim"], speed.caps()["wheel-caution"]["rim"]
    at_cap, at_warm = speed.speed_at_rim_speed(diameter, cap), speed.speed_at_rim_speed(diameter, warm)
    why = {
        "rim": "Unmarked wheel on resin. Common practice, no source.",
        "marked": "Marked on the wheel.",
        "heat": "Beyond this a wheel burns resin. Common practice, no source.",
        "own": "Yours, not ours.",
        "vibration": "From what you felt or measured.",
        "lathe": "The lathe's own highest.",
    }
    setting = top.setting_rpm
    cautions: list[Caution] = []
    if setting is None:
        lowest = rpm_text(speeds.lowest_rpm)
        headline = Headline("Top speed", "Not yet", "", _wheel_remedy(given, top, speeds), "stop")
        text = f"Why not: {_said(top.hard)} allows {rpm_text(top.hard_rpm)} rpm, and the lowest here is {lowest} rpm."
        cautions.append(Caution("X2", "stop", text))
    else:
        hot = setting > at_warm
        say = "Light touch, keep moving; it heats resin fast." if hot else "Light touch, keep the work moving."
        headline = Headline("Top speed", rpm_text(setting), "rpm", say, "caution" if hot or felt is not None else "go")
        if hot:
            cautions.append(Caution("wheel-heat", "caution", f"From {rpm_text(at_warm)} rpm this wheel heats resin fast."))
        if marked is None:
            cautions.append(Caution("X11", "caution", "No marking on it: look the wheel over, and stand aside as it runs up."))
    cautions.append(Caution("X13", "caution", "No gloves, no loose sleeves. Work low on the wheel, edges pointing away from its turning."))
    shown = None if setting is None else given.write(setting, "speed", "down")
    by_rim = "n = 60 000 v / (π D)"
    return Answer(
        headline,
        lines=() if setting is None else REFLEX,
        limits=tuple(_rung(given, rung, why[rung.id], rung is top.rules) for rung in top.limits),
        cautions=tuple(cautions),
        working=(
            Working("Wheel's rim", by_rim, f"60 000 × {cap:g} / (π × {1000 * diameter:.4g})", f"{at_cap:.1f} rpm"),
            Working("Heat felt from", by_rim, f"60 000 × {warm:g} / (π × {1000 * diameter:.4g})", f"{at_warm:.1f} rpm"),
            _setting_working(speeds, top),
        ),
        sources=("practice", "judgement", "club-rules"),
        values={
            "speed": figure(shown, "rotational speed", setting),
            "ceiling": Figure(top.speed_rpm, "rotational speed", f"{rpm_text(top.speed_rpm)} rpm"),
        },
        extra=_extra(top),
    )


def _wheel_remedy(given: Given, top: speed.TopSpeed, speeds: speed.Speeds) -> str:
    if top.hard.id == "rim":
        fits = 60 * speed.caps()["wheel-cap"]["rim"] / (math.pi * speeds.lowest_rpm)
        return f"Fit a wheel of {given.write(fits, 'length', 'down')} or less."
    if top.hard.id == "marked":
        return f"Fit a wheel marked for {rpm_text(speeds.lowest_rpm)} rpm or more."
    if top.hard.id == "vibration":
        return "Change the wheel or true it up: it is out of balance."
    return "Use a lathe that goes slower, or raise your own limit."


def _extra(top: speed.TopSpeed) -> dict[str, Any]:
    """For the turning card: whether it may start, what rules, and the three reflexes."""
    return {"refused": top.refused, "rules": top.rules.id, "reflex": [] if top.refused else [line.text for line in REFLEX]}


def work(given: Given) -> Answer:
    """The top speed, what rules it, and what would raise it.

    Parameters
    ----------
    given : the parsed fields of :data:`QUESTION`.

    Returns
    -------
    Answer
        ``values``: ``speed`` (the setting, rpm; none for a refusal), ``ceiling`` (rpm, before rounding to the lathe), and
        each limit by its name.

    Raises
    ------
    InputError
        ``range`` when the highest speed is under the lowest; ``outside`` for a radius beyond the rim.
    """
    if given.choice("operation") == "buff":
        return _wheel(given)
    if given.choice("condition") == "broken":
        return _broken(given)
    case = _case(given)
    top = case.top
    changes = _changes(given, case, top)
    setting = None if top.setting_rpm is None else given.write(top.setting_rpm, "speed", "down")
    values = {
        "speed": figure(setting, "rotational speed", top.setting_rpm),
        "ceiling": Figure(top.speed_rpm, "rotational speed", f"{rpm_text(top.speed_rpm)} rpm"),
        "hard": Figure(top.hard_rpm, "rotational speed", f"{rpm_text(top.hard_rpm)} rpm"),
    }
    for limit in top.limits:
        if math.isfinite(limit.speed_rpm):
            values[limit.id] = Figure(limit.speed_rpm, "rotational speed", f"{rpm_text(limit.speed_rpm)} rpm")
    return Answer(
        _headline(given, case, top, changes),
        lines=_lines(given, case, top),
        limits=_ladder(given, case, top),
        changes=tuple(Change(remedy.words, f"{rpm_text(remedy.setting_rpm)} rpm") for remedy in changes),
        band=_band(given, case),
        cautions=_cautions(given, case, top, {kind for remedy in changes for kind in remedy.sorts}),
        working=_working(given, case, top),
        sources=_sources(case, top),
        values=values,
        extra=_extra(top),
    )


def _sources(case: Case, top: speed.TopSpeed) -> tuple[str, ...]:
    keys = {"rough": ["lathe-manuals"], "finish": ["trade-6000-9000", "milton-wohlers-1919"]}.get(case.operation, ["practice"])
    keys = [*keys, "iso-10816-1", "iso-21940-11"]
    if any(limit.id == "whip" for limit in top.limits):
        keys.append("timoshenko")
    if not top.refused:
        keys.append("z87-1")
    if case.operation in SANDING:
        keys += ["hse-wis28", "club-rules"]
    return (*keys, "judgement")


# ---------------------------------------------------------------- the declaration


def _lathe_options() -> tuple[Option, ...]:
    """From the table of lathes, so that a choice says what it assumes."""
    labels = {"bench": "Bench lathe", "midi": "Midi lathe", "floor": "Floor lathe", "heavy": "Heavy floor lathe"}
    options = []
    for name, kind in speed.lathe_kinds().items():
        pounds = round_to(from_si(kind.mass_kg, "mass", "lb"), 10)
        hint = f"about {kind.mass_kg:.0f} kg ({pounds:.0f} lb), {kind.lowest_rpm:.0f} to {kind.highest_rpm:.0f} rpm"
        options.append(Option(name, labels[name], hint))
    return tuple(options)


def _choice(name: str, label: str, default: str, options: tuple[Option, ...], **more: Any) -> Choice:
    return Choice(name=name, label=label, default=default, basis="judgement", options=options, **more)


_TURNED = ("operation", TURNING)
_BUFFED = ("operation", ("buff",))
_UNTYPED = "Empty: as usual for that kind of lathe."

FIELDS: tuple[Field, ...] = (
    _choice(
        "operation",
        "What you are doing",
        "rough",
        (
            Option("rough", "Roughing, out of round"),
            Option("finish", "Finishing cut"),
            Option("sand", "Sanding by hand"),
            Option("power", "Power sanding", "a spinning pad on slowly turning work"),
            Option("paste", "Abrasive paste by hand"),
            Option("buff", "Buffing wheel", "the wheel on the lathe, the work in your hands"),
        ),
    ),
    measure("diameter", "Widest it sweeps", "mm", 10, 1500, usual=(25, 1000), hint="Corner to corner while it is out of round.", when=(_TURNED,)),
    measure("wheel", "Wheel across", "mm", 20, 400, usual=(50, 300), when=(_BUFFED,)),
    measure("wheel_marked", "Speed marked on the wheel", "rpm", 100, 20000, hint="Leave empty if it has none.", required=False, when=(_BUFFED,)),
    _choice(
        "condition",
        "How it looks",
        "loose",
        (
            Option("solid", "Solid", "nothing seen; cured; wood sound or none"),
            Option("filled", "Filled", "wood all encased, voids filled, glue lines"),
            Option("loose", "Loose or doubtful", "bark, open voids, bare or soft wood, or cure not known"),
            Option("cracked", "Cracked", "a crack that does not go through"),
            Option("broken", "Coming apart", "crack right through, bond opened, or wood loose in it"),
        ),
        when=(_TURNED,),
    ),
    _choice(
        "balance",
        "Balance",
        "side",
        (
            Option("even", "Not checked: even", "no wood, or wood spread all round"),
            Option("some", "Not checked: a little more wood to one side"),
            Option("side", "Not checked: wood mostly to one side"),
            Option("half", "Not checked: half wood, half resin"),
            Option("done", "Balanced", "weights fixed on; spindle free, it stays anywhere"),
            Option("weight", "I know the weight that balances it", "hung to find out, not on it now"),
            Option("known", "I know how far off centre it is", "centre of mass to spindle axis"),
        ),
        when=(_TURNED,),
    ),
    measure("weight", "Weight that balances it", "g", 1, 20000, usual=(5, 5000), when=(_TURNED, ("balance", ("weight",)))),
    measure("weight_radius", "How far out it hung", "mm", 5, 750, hint="From the centre of the spindle.", when=(_TURNED, ("balance", ("weight",)))),
    measure("eccentricity", "How far off centre", "mm", 0, 300, usual=(0, 100), when=(_TURNED, ("balance", ("known",)))),
    _choice(
        "hold",
        "Held by",
        "glue",
        (
            Option("centres", "Between centres"),
            Option("glue", "Glue block"),
            Option("faceplate", "Faceplate"),
            Option("chuck", "Chuck"),
        ),
        when=(_TURNED,),
    ),
    _choice(
        "far_end",
        "Tailstock",
        "none",
        (
            Option("none", "Not used"),
            Option("pad", "Flat pad pressed on", "no point, no dimple"),
            Option("live", "Live centre", "in wood or waste"),
        ),
        when=(_TURNED, ("hold", ("glue", "faceplate", "chuck"))),
    ),
    _choice("lathe", "Lathe", "bench", _lathe_options()),
    _choice("speeds", "Its speeds", "dial", (Option("dial", "A dial"), Option("steps", "Belt steps")), fold=True),
    Numbers(
        name="steps",
        label="Belt steps",
        hint="All of them: 200 400 650 1000",
        kind="rotational speed",
        units=("rpm", "rpm"),
        low=10,
        high=6000,
        fold=True,
        when=(("speeds", ("steps",)),),
    ),
    measure("lowest", "Lowest speed", "rpm", 5, 3000, hint=_UNTYPED, required=False, fold=True, when=(("speeds", ("dial",)),)),
    measure("highest", "Highest speed", "rpm", 50, 6000, hint=_UNTYPED, required=False, fold=True, when=(("speeds", ("dial",)),)),
    measure(
        "lathe_mass", "What the lathe weighs", "kg", 5, 5000,
        usual=(15, 1500), hint="With stand and ballast. " + _UNTYPED, required=False, fold=True, when=(_TURNED,),
    ),
    _choice("bolted", "Bolted to floor or wall", "no", (NO, YES), fold=True, when=(_TURNED,)),
    measure(
        "thickness", "Thickness, or length along the lathe", "mm", 3, 2000,
        usual=(5, 1000), default=("50", "2"), basis="judgement", fold=True, when=(_TURNED,),
    ),
    measure(
        "mass", "What the work weighs", "kg", 0.005, 300,
        usual=(0.02, 100), hint="Empty: as a full disc of resin.", required=False, fold=True, when=(_TURNED,),
    ),
    measure("marked", "Speed marked on the chuck", "rpm", 100, 20000, required=False, fold=True, when=(_TURNED,)),
    measure("own", "My own limit", "rpm", 10, 6000, hint="Stands in for our rim limit.", required=False, fold=True),
    _choice(
        "felt",
        "What it did",
        "nothing",
        (
            Option("nothing", "Not run yet"),
            Option("still", "Ran still"),
            Option("trembles", "Trembled"),
            Option("walks", "Walked, or jumped about"),
            Option("measured", "Vibration measured", "with a phone or a meter on the headstock"),
        ),
        fold=True,
    ),
    measure("felt_speed", "At what speed", "rpm", 10, 6000, fold=True, when=(("felt", ("still", "trembles", "walks", "measured")),)),
    measure("vibration", "Vibration", "mm/s", 0.05, 200, usual=(0.1, 50), hint="Root mean square.", fold=True, when=(("felt", ("measured",)),)),
)

_SIZES = (
    ("100", "150", "200", "250", "300", "400", "450", "500", "600"),
    ("4", "6", "8", "10", "12", "16", "18", "20", "24"),
)
_CONDITIONS = ("solid", "filled", "loose", "cracked", "broken")
_ROUGH = {"operation": "rough"}

QUESTION = Question(
    id="how-fast",
    name="How fast?",
    moment="at the lathe",
    order=10,
    summary="The top speed of a blank, what limits it, and what would raise it.",
    lead="A ceiling, never a promise. Ask again whenever size, balance, mount or condition changes.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="Top speed in rpm: filled work, turned between centres, wood spread evenly, floor lathe of 150 kg (330 lb)",
        rows=("diameter", _SIZES),
        columns=("operation", TURNING),
        fixed={"condition": "filled", "balance": "even", "hold": "centres", "lathe": "floor"},
        cell=lambda answer: answer.headline.text,
        note=(
            "Loose or doubtful work: two thirds of it. Cracked: fix it first. Wood to one side: balance it first, or start under 100 rpm. "
            "Glue block with no tailstock: three quarters. A lighter lathe: slower. Stop at the first tremble. "
            "Crack right through, bond opened or wood loose: do not spin it."
        ),
    ),
    rules=(
        Rule("diameter", "ceiling", "rises", given={"balance": "side", "thickness": "50 mm"}, why="a larger piece"),
        Rule("diameter", "speed", "rises", given={**_ROUGH, "balance": "side", "thickness": "50 mm"}, why="a larger piece"),
        Rule("mass", "ceiling", "rises", given={"balance": "side"}, why="a heavier piece"),
        Rule("condition", "ceiling", "rises", _CONDITIONS, why="a worse condition"),
        Rule("balance", "ceiling", "rises", GUESSES, why="more out of balance"),
        Rule("eccentricity", "ceiling", "rises", given={"balance": "known"}, why="more out of balance"),
        Rule("far_end", "ceiling", "rises", ("live", "pad", "none"), why="a weaker mount"),
        Rule("hold", "ceiling", "rises", ("centres", "chuck", "glue"), why="a weaker mount"),
        Rule("lathe", "ceiling", "falls", ("bench", "midi", "floor", "heavy"), why="a heavier lathe"),
        Rule("lathe_mass", "ceiling", "falls", why="a heavier lathe"),
        Rule("bolted", "ceiling", "falls", ("no", "yes"), why="a firmer footing"),
        Rule("felt", "ceiling", "rises", ("still", "trembles", "walks"), {"felt_speed": "400"}, why="felt worse"),
        Rule("wheel", "ceiling", "rises", given={"operation": "buff"}, why="a larger wheel"),
    ),
    words={
        "outside": "{label}: {given} is outside the piece. It lies between the centre and the rim.",
        "range": "{label}: {given} is under the lowest, {lowest}.",
    },
)
