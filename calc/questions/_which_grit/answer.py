"""Which grit next? The answer for one piece."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Answer, Carry, Caution, Change, Figure, Grid, Headline, Limit, Line, Tone, Working, figure
from calc.quantity.writing import Shown, Style, round_to, rpm_text, trimmed
from calc.questions import Given
from calc.questions._how_fast.rounded import told_rpm
from calc.questions._which_grit.case import Operation, Sanding
from calc.questions._which_grit.words import AFTER, READY
from calc.questions._which_grit.working import working
from calc.sources import value
from calc.turning import caps, fit, grits, rubbing, speed
from calc.turning.grits import Grit
from calc.words import both


def answer(given: Given) -> Answer:
    """The next grit and the ones after, the ceiling of speed, the seconds in one place."""
    it = Sanding(given)
    if given.choice("condition") == "broken":
        return _broken(given)
    headline = _headline(it)
    stopped = headline.tone == "stop"
    return Answer(
        headline,
        lines=() if it.too_warm else tuple(_lines(it)),
        limits=() if stopped else tuple(_limits(it)),
        changes=tuple(_changes(it)),
        cautions=tuple(_cautions(it)),
        working=tuple(working(it)),
        sources=tuple(_sources(it)),
        grids=(_grid(it),) if it.steps else (),
        carries=() if stopped or it.done else tuple(_carries(it)),
        values=_values(it),
    )


def _broken(given: Given) -> Answer:
    none = figure(None, "rotational speed")
    return Answer(
        Headline("Next", "Do not spin", "", "Take it off. Bond or cast it whole again, let it cure, then sand it.", "stop"),
        cautions=(Caution("X16", "stop", "A crack right through, an opened bond or loose wood lets go without warning at any speed."),),
        working=(Working("Condition", "no cap exists", given.label_of("condition"), "not spun"),),
        sources=("judgement",),
        values={"speed": none},
    )


def dial(rpm: float) -> float:
    """A ceiling as a dial is set: down to a full ten."""
    return round_to(rpm, speed.VARIABLE_STEP_RPM, "down")


def _rpm(rpm: float) -> str:
    return f"{rpm_text(dial(rpm))} rpm"


def _names(papers: tuple[Grit, ...]) -> str:
    return both([paper.name for paper in papers])


def _headline(it: Sanding) -> Headline:
    given = it.given
    surface = given.choice("surface")
    if surface == "hot" or it.too_warm:
        return _cool(it)
    own = given.maybe("rpm")
    if it.over_speed and own is not None:
        ceiling = _rpm(it.ceiling(it.operation))
        return Headline("First", "Slow down", "", f"To {ceiling} or less for this, from {rpm_text(own)}.", "stop")
    if given.choice("reverse") == "unlocked":
        return Headline("First", "Lock it", "", "Set the lock screw of chuck or faceplate, or stay in forward. Then sand.", "stop")
    if surface == "scratches" and it.now is not None:
        return _again(it, it.now)
    if it.stuck:
        return _gap(it)
    if not it.steps:
        if it.falls_short:
            return Headline("Next", f"Get {_wanted(it).name}", "", f"The finest you have is too coarse for {given.label_of('goal').lower()}.", "stop")
        text, say = READY[it.goal]
        return Headline("Next", text, "", f"{say} {_speed_says(it)}".rstrip(), _tone(it))
    return Headline("Next", it.steps[0].name, "", f"{_then(it)} {_speed_says(it)}", _tone(it))


def _tone(it: Sanding) -> Tone:
    long = any(it.jump(place) != "ok" for place in range(len(it.steps)))
    return "caution" if it.condition == "cracked" or it.falls_short or long else "go"


def _then(it: Sanding) -> str:
    rest = it.steps[1:]
    after = AFTER[it.goal][0]
    if it.falls_short:
        after = f"but that is as fine as yours go: get {_wanted(it).name}"
    if not rest:
        return f"{after[0].upper()}{after[1:]}."
    return f"Then {_names(rest)}, {after}."


def _speed_says(it: Sanding) -> str:
    if not it.steps and it.goal == "wheel":
        return f"Wheel at {_rpm(it.wheel_ceiling)} at most."
    if it.done:
        return ""
    return f"At most {_rpm(it.ceiling(it.operation))}{_or_less(it)}."


def _or_less(it: Sanding) -> str:
    """What is said with a ceiling that nobody has asked How fast? for: it knows the balance, this does not."""
    return "" if it.asked else ", or less: 'How fast?' knows balance and mount"


def _cool(it: Sanding) -> Headline:
    given = it.given
    if it.too_warm and it.given.choice("surface") != "hot":
        warmest = given.write(it.warmest, "temperature", "down")
        say = f"The face is at {given.write(given.si('face'), 'temperature')}; this resin is rubbed below {warmest} only. Leave it to cool, or cure on."
        return Headline("First", "Wait", "", say, "stop")
    slower = "wet, " if given.choice("wet") == "dry" else ""
    say = f"Smeared, clogged or smelling sweet is too hot. Clean the paper, let it cool, then {slower}lighter and at half the speed. Same grit again."
    return Headline("First", "Stop and cool", "", say, "stop")


def _again(it: Sanding, now: Grit) -> Headline:
    coarser = [paper for paper in it.papers if paper.size_m > now.size_m * (1 + 1e-9)]
    back = f" If they stay, back to {coarser[-1].name}." if coarser else ""
    say = f"It has not yet taken out the scratches before it. Wipe, cross the old ones, go on until they are gone.{back} {_speed_says(it)}"
    return Headline("Next", f"{now.name} again", "", say, "caution")


def _wanted(it: Sanding) -> Grit:
    """The coarsest that shops have which is as fine as the goal asks, or the finest they have."""
    return next((paper for paper in it.shop if paper.size_m <= it.last_m * (1 + 1e-9)), it.shop[-1])


def _gap(it: Sanding) -> Headline:
    between, first, before = it.between, it.steps[0], it.grains[0]
    if before is None:
        say = f"{first.name} straight off the tool is too fine: the marks of the tool stay."
    else:
        say = f"{first.name} straight after is too far: the old grain is {before / first.size_m:.1f} times as coarse, and its scratches stay."
    return Headline("Next", f"Get {between.name}" if between else f"Stay before {first.name}", "", say, "stop")


def _lines(it: Sanding) -> Iterator[Line]:
    given = it.given
    if it.now is not None and it.now.number > grits.AGREE_TO:
        other: grits.Scale = "P" if it.scale == "CAMI" else "CAMI"
        near = grits.alike(it.now, other)
        if near.number != it.now.number:
            yield Line(f"Your {it.now.name} is about", near.name, "", "the same number in the other scale is another grit")
    if it.steps or it.goal in ("paste", "clear"):
        label = "Work turns" if it.operation == "power" else "Speed, at most"
        text = rpm_text(dial(it.ceiling(it.operation)))
        if it.operation == "power":
            low = rpm_text(dial(value("sanding", "power from")))
            yield Line(label, f"{low} to {text}" if int(low) < int(text) else text, "rpm", "the pad by its own marking, light and never still")
        else:
            known = it.asked
            yield Line(label, text, "rpm", "for heat, rim, balance and mount" if known else "for heat and rim; what balance and mount allow: How fast?")
            yield from _in_one_place(it)
    name, note = AFTER[it.goal][1:]
    if it.steps and it.goal in ("paste", "clear"):
        yield Line(name, rpm_text(dial(it.ceiling("paste"))), "rpm at most", note)
    elif it.steps:
        yield Line(name, "after", "", note)
    if it.goal == "wheel":
        yield from _wheel_lines(it)
    if it.goal in ("paste", "clear", "wheel", "coat"):
        yield Line("Before polish or finish", "leave a ring bare", "", "where the next block is to be glued: nothing sticks to wax or paste")
    if it.steps:
        note = "lathe off, look across the light; cross the old scratches or go along the grain (common practice)"
        yield Line("Between grits", "wipe it clean", "", note)
    wet_from = grits.grit("P", int(value("sanding", "wet from")))
    if given.choice("wet") == "dry" and it.steps and it.reached_m <= wet_from.size_m * (1 + 1e-9):
        if given.choice("bare") == "yes":
            yield Line("Wet or dry", "dry", "", f"while bare wood shows: it swells. Sealed, or all resin: wet from {wet_from.name}")
        else:
            yield Line("Wet or dry", f"wet from {wet_from.name}", "", "it carries the heat off. Keep water off motor and bed (common practice)")


def _in_one_place(it: Sanding) -> Iterator[Line]:
    given = it.given
    shown = given.write(it.seconds, ("time", Style("s", step=1 if it.seconds < 10 else 5)), "down")
    warmest = given.write(it.warmest, "temperature", "down")
    text = f"{shown.text}" if shown.si >= 1 else "under 1"
    yield Line("In one place, at most", text, "s", f"then lift; an edge warms sooner. Hand-warm at most, here {warmest}")


def _wheel_lines(it: Sanding) -> Iterator[Line]:
    given = it.given
    yield Line("Wheel, at most", rpm_text(dial(it.wheel_ceiling)), "rpm", "marked on it" if given.maybe("wheel_marked") is not None else "no marking told")
    yield Line("Wheel turns", "top towards you", "", "forward only: in reverse a threaded mandrel unscrews")
    yield Line("Hold the work", "low, on the near side", "", "below the middle of the wheel, edges pointing the way it turns, never against it")
    reach = given.write(fit.least_stand_out(it.diameter, fit.standard("wheel gap")), "length", "up")
    yield Line.of("Wheel out from the headstock", reach, "so that the middle of the disc comes onto it; a taper mandrel wants a draw bar or the tailstock")


def _limits(it: Sanding) -> Iterator[Limit]:
    if it.done:
        return
    if not it.steps and it.goal == "wheel":
        for limit in speed.wheel_limits(it.given.si("wheel"), it.given.maybe("wheel_marked")):
            why = {"marked": "Marked on the wheel.", "heat": "Beyond this a wheel burns resin."}.get(limit.id, "Unmarked wheel. Common practice, no source.")
            name = {"marked": "Marked", "heat": "Heat"}.get(limit.id, "Wheel's rim")
            yield Limit(limit.id, name, rpm_text(limit.speed_rpm), "rpm", why, limit.speed_rpm == it.wheel_ceiling)
        return
    found = it.limits_of(it.operation)
    rules = min(found, key=lambda name: found[name])
    by_cut = caps.operation_rim_speed(it.operation, it.diameter) <= caps.condition_rim_speed(it.condition)
    rim = "highest for any cut" if by_cut else f"{it.given.label_of('condition').lower()} work"
    power = "The work turns slowly under a spinning pad." if it.operation == "power" else "Beyond this resin heats faster than it cools."
    yield Limit("rim", "Rim", told_rpm(found["rim"]), "rpm", f"How fast the rim may run: {rim}.", rules == "rim")
    if "mount" in found:
        part = {0.75: "Three quarters"}.get(it.mount_share, f"{it.mount_share:.2g}")
        share = f"{part} of it: glue block, nothing taken to be at the far end."
        yield Limit("mount", "Mount", told_rpm(found["mount"]), "rpm", share, rules == "mount")
    if "piece" in found:
        yield Limit("piece", "How fast?", told_rpm(found["piece"]), "rpm", "What balance and mount allow.", rules == "piece")
    yield Limit("heat", "Heat", told_rpm(found["heat"]), "rpm", f"{power} Common practice, no source.", rules == "heat")


def _changes(it: Sanding) -> Iterator[Change]:
    """What buys more time in one place: half the speed, a lighter hand."""
    if not it.steps or it.too_warm or it.operation == "power":
        return
    most, lighter = value("sanding", "longest"), value("sanding", "press light") / value("sanding", "press firm")
    for do, share in (("Half the speed", 0.5), ("Fingertips only", lighter if it.given.choice("press") == "firm" else 1.0)):
        seconds = min(rubbing.seconds_for(it.room_for_heat, it.power * share, it.area), most)
        if seconds > it.seconds * 1.01:
            yield Change(do, f"{seconds:.0f} s in one place")


def _cautions(it: Sanding) -> Iterator[Caution]:
    given = it.given
    if it.condition == "cracked":
        yield Caution("X1", "stop", "Fix the crack or scrap the piece first. If you run it: tailstock up, light touch.")
    if it.too_warm:
        yield Caution("X15", "stop", "Resin this near its softening smears and loads the paper. Not cured, or too warm: wait.")
    if it.steps and it.between is not None and not it.stuck:
        yield Caution("gap", "caution", f"A step further on is too far: get {it.between.name} as well.")
    for place, paper in enumerate(it.steps):
        if it.jump(place) == "long" and not (place == 0 and it.stuck):
            before = it.first_m if it.grains[place] is None else it.grains[place]
            assert before is not None
            (easier, *_) = grits.bridged(before, (paper,), grits.grits(it.scale))
            get = f" {easier.name} between is easier." if easier != paper else ""
            text = f"{paper.name} is a long step: the scratches before it are nearly twice as coarse.{get} Take your time, look across the light."
            yield Caution("long-step", "caution", text)
            break
    mixed = given.typed("have_p") and given.typed("have_cami")
    if mixed or (it.scale == "CAMI" and not given.typed("have_p")):
        yield Caution("scales", "caution", "Above 220 the same number is another grit: 320 with no P is about P400, 400 about P800, 600 about P1200.")
    if not it.done:
        yield Caution("X13", "caution", "Tool rest off. No gloves, no cloth round a finger. Paper held so that it can pull away.")
    in_hand = not it.steps and it.goal == "wheel"
    if not in_hand and (given.choice("reverse") != "no" or given.choice("hold") in ("chuck", "faceplate")):
        yield Caution("X8", "caution", "Reverse, or a hard stop, can unscrew it: lock screw in first, and stop it gently.")
    if not in_hand and not it.done and given.choice("hold") == "glue":
        yield Caution("X6", "caution", "Glue block: sanding heat creeps into it, and hot glue softens. Feel the block as well as the face.")
    if given.choice("wet") == "dry" and it.steps:
        yield Caution("dust", "caution", "Dry sanding: mask on, dust drawn off at the piece. Visor on over it.")
    if given.choice("wet") == "wet" and given.choice("bare") == "yes":
        yield Caution("bare-wood", "caution", "Bare wood swells and takes up the slurry: seal it first, or sand dry.")
    if it.goal == "wheel":
        if given.maybe("wheel_marked") is None:
            yield Caution("X11", "caution", "No marking on the wheel: look it over, and stand aside as it runs up.")
        warm = caps.speed_at_rim_speed(given.si("wheel"), caps.caps()["wheel-caution"]["rim"])
        if it.wheel_ceiling > warm:
            yield Caution("wheel-heat", "caution", f"From {rpm_text(warm)} rpm this wheel heats resin fast.")


def _grid(it: Sanding) -> Grid:
    rows = []
    for place, paper in enumerate(it.steps):
        before = it.grains[place]
        how = {"ok": "", "long": ", long", "too-far": ", too far"}[it.jump(place)]
        finer = "off the tool" if before is None else f"{before / paper.size_m:.2f}"
        rows.append((str(place + 1), paper.name, _microns(paper.size_m), f"{finer}{how}"))
    return Grid("Through the grits", ("Step", "Grit", "Grain", "Finer by"), tuple(rows))


def _microns(metres: float) -> str:
    return f"{1e6 * metres:.4g} µm"


def _carries(it: Sanding) -> Iterator[Carry]:
    """To the speed with balance and mount looked at, to the lists before the first paper, and for a wheel to its reach past bed and headstock."""
    yield _to_speed(it)
    if it.steps or it.goal != "wheel":  # the wheel's speed is not the work's
        told = {"then": "sand", "sweeps": _typed(it.given, "diameter")}
        if it.asked:  # else balance is not in it, and 'How fast?' has to be asked
            told |= {"sand_ceiling": _rpm(it.ceiling(it.operation)), "sand_for": told["sweeps"]}
        yield Carry("before-the-lathe", told | ({"hold": it.given.choice("hold")} if it.given.typed("hold") else {}))
    if it.goal == "wheel":
        yield Carry("does-it-fit-the-lathe", {"ask": "wheel", "disc": _typed(it.given, "diameter"), "wheel": _typed(it.given, "wheel")})


def _to_speed(it: Sanding) -> Carry:
    given = it.given
    if not it.steps and it.goal == "wheel":
        inputs = {"operation": "buff", "wheel": _typed(given, "wheel")}
        if given.typed("wheel_marked"):
            inputs["wheel_marked"] = given.text("wheel_marked")
        return Carry("how-fast", inputs)
    said = {name: given.choice(name) for name in ("condition", "hold") if given.typed(name)}  # nothing that nobody said is laid over what was said there
    return Carry("how-fast", {"operation": it.operation, "diameter": _typed(given, "diameter")} | said)


def _typed(given: Given, name: str) -> str:
    unit = given.pick("mm", "in")
    shown: Shown = given.write(given.si(name), ("length", Style(unit, figures=4)))
    return f"{trimmed(shown.text)} {unit}"


def _sources(it: Sanding) -> Iterator[str]:
    yield from ("grit-tables", "sanding-pages", "practice", "carslaw-jaeger", "epoxy-properties")
    if it.goal == "wheel":
        yield "buffing-guidebook"
    yield from ("hse-wis28", "club-rules", "judgement")


def _values(it: Sanding) -> dict[str, Figure]:
    operation: Operation = it.operation
    ceiling = it.ceiling(operation)
    values = {
        "next": Figure(it.steps[0].size_m, "length", it.steps[0].name) if it.steps else figure(None, "length"),
        "path": Figure(float(len(it.steps)), "count", ", ".join(paper.name for paper in it.steps) or "none"),
        "speed": Figure(dial(ceiling), "rotational speed", _rpm(ceiling)),
        "ceiling": Figure(ceiling, "rotational speed", f"{rpm_text(ceiling)} rpm"),
        "seconds": Figure(it.seconds, "time", f"{it.seconds:.0f} s"),
    }
    if it.goal == "wheel":
        values["wheel"] = Figure(it.wheel_ceiling, "rotational speed", _rpm(it.wheel_ceiling))
    return values
