"""How fast may this blank turn, on this mount, for this cut, on this lathe?"""

from __future__ import annotations

import math
from typing import cast

from calc.answers import Answer, Caution, Change, Figure, Headline, Working, figure
from calc.errors import InputError
from calc.quantity.writing import rpm_text
from calc.questions import Given, Question, Rule, Table
from calc.questions._how_fast import remedies, stages, words
from calc.questions._how_fast.card import card
from calc.questions._how_fast.fields import FIELDS
from calc.questions._how_fast.handed import LONG, handed
from calc.questions._how_fast.mount import own_limit, weak_mount
from calc.questions._how_fast.wheel import wheel
from calc.questions._how_fast.working import working
from calc.questions._weighed import in_keeping
from calc.turning import balance, caps, mounts, speed, vibrating
from calc.turning.case import GUESSES, Case
from calc.turning.job import Measured

_SIZES = (
    ("100", "150", "200", "250", "300", "400", "450", "500", "600"),
    ("4", "6", "8", "10", "12", "16", "18", "20", "24"),
)
_CONDITIONS = ("solid", "filled", "loose", "cracked", "broken")
_ROUGH = {"operation": "rough"}
_THIN = {"thickness": "50 mm", "length": "50 mm"}


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
        return wheel(given, _speeds(given), _measured(given))
    if given.choice("condition") == "broken":
        return _broken(given)
    weak = weak_mount(given)
    if weak is not None:
        return weak
    case = _case(given)
    top = case.top
    changes = remedies.changes(given, case, top)
    setting = None if top.setting_rpm is None else given.write(top.setting_rpm, "speed", "down")
    values = {
        "speed": figure(setting, "rotational speed", top.setting_rpm),
        "ceiling": Figure(top.speed_rpm, "rotational speed", f"{rpm_text(top.speed_rpm)} rpm"),
        "hard": Figure(top.hard_rpm, "rotational speed", f"{rpm_text(top.hard_rpm)} rpm"),
    }
    for limit in top.limits:
        if math.isfinite(limit.speed_rpm):
            values[limit.id] = Figure(limit.speed_rpm, "rotational speed", f"{rpm_text(limit.speed_rpm)} rpm")
    headline = words.headline(given, case, top, changes)
    return Answer(
        headline,
        lines=words.lines(given, case, top),
        limits=words.ladder(given, case, top),
        changes=tuple(Change(remedy.words, f"{rpm_text(remedy.setting_rpm)} rpm") for remedy in changes),
        band=words.band(given, case),
        cautions=words.cautions(given, case, top, {kind for remedy in changes for kind in remedy.sorts}),
        working=working(given, case, top),
        grids=stages.grid(given, case),
        sources=_sources(case, top),
        carries=handed(given, case, top),
        values=values,
        extra=words.extra(top) | {"card": card(given, headline, case, told=top.too_quick)},
    )


def _broken(given: Given) -> Answer:
    """A crack right through, an opened bond, loose wood: nothing to work out."""
    headline = Headline("Top speed", "Do not spin", "", "Take it off. Bond or cast it whole again, let it cure, then ask as 'filled'.", "stop")
    return Answer(
        headline,
        changes=(Change("Whole again and cured", "ask as 'filled'"),),
        cautions=(Caution("X16", "stop", "Why not: a crack right through, an opened bond or loose wood lets go without warning at any speed."),),
        working=(Working("Condition", "no cap exists", given.label_of("condition"), "not spun"),),
        sources=("judgement",),
        values={"speed": figure(None, "rotational speed"), "ceiling": figure(None, "rotational speed")},
        extra={"refused": True, "reflex": [], "card": card(given, headline)},
    )


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


def _measured(given: Given) -> Measured | None:
    felt = given.choice("felt")
    if felt == "nothing":
        return None
    vibration = given.si("vibration") if felt == "measured" else vibrating.vibration_limit(f"felt-{felt}")
    return Measured.of(given.si("felt_speed"), vibration, at_most=felt == "still")


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
    thickness = "length" if given.choice("hold") in LONG else "thickness"
    in_keeping(given, "mass", "diameter", thickness)
    return Case(
        operation=cast(caps.Operation, given.choice("operation")),
        diameter_m=diameter,
        thickness_m=given.si(thickness),
        condition=cast(caps.Condition, given.choice("condition")),
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
        own_rpm=own_limit(given),
        measured=_measured(given),
        set_back_m=given.maybe("set_back") or 0.0,
    )


def _lathe_mass(given: Given) -> float:
    own = given.maybe("lathe_mass")
    return speed.lathe_kinds()[given.choice("lathe")].mass_kg if own is None else own


def _sources(case: Case, top: speed.TopSpeed) -> tuple[str, ...]:
    keys = {"rough": ["lathe-manuals"], "finish": ["trade-6000-9000", "milton-wohlers-1919"]}.get(case.operation, ["practice"])
    keys = [*keys, "iso-10816-1", "iso-21940-11"]
    if any(limit.id == "whip" for limit in top.limits) or case.slender:
        keys.append("timoshenko")
    if not top.refused:
        keys.append("z87-1")
    if case.operation in speed.SANDING:
        keys += ["hse-wis28", "club-rules"]
    return (*keys, "judgement")


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
        caption="Top speed in rpm: filled work, 50 mm (2 in) thick, turned between centres, wood spread evenly, floor lathe of 150 kg (330 lb)",
        rows=("diameter", _SIZES),
        columns=("operation", ("rough", "finish", "sand")),
        fixed={"condition": "filled", "balance": "even", "hold": "centres", "length": ("50", "2"), "lathe": "floor"},
        cell=lambda answer: answer.headline.text,
        note=(
            "Loose or doubtful work: two thirds of it. Cracked: fix it first. Wood to one side: balance it first, or start under 100 rpm. "
            "Power sanding: 150 at most. Glue block with no tailstock: three quarters. A lighter lathe: slower. Stop at the first tremble. "
            "Crack right through, bond opened or wood loose: do not spin it."
        ),
    ),
    rules=(
        Rule("diameter", "ceiling", "rises", given={"balance": "side", **_THIN}, why="a larger piece"),
        Rule("diameter", "speed", "rises", given={**_ROUGH, "balance": "side", **_THIN}, why="a larger piece"),
        Rule("mass", "ceiling", "rises", given={"balance": "side"}, why="a heavier piece"),
        Rule("condition", "ceiling", "rises", _CONDITIONS, why="a worse condition"),
        Rule("balance", "ceiling", "rises", GUESSES, why="more out of balance"),
        Rule("eccentricity", "ceiling", "rises", given={"balance": "known"}, why="more out of balance"),
        Rule("set_back", "ceiling", "rises", given={"balance": "known"}, why="further off centre"),
        Rule("far_end", "ceiling", "rises", ("live", "pad", "none"), why="a weaker mount"),
        Rule("hold", "ceiling", "rises", ("centres", "chuck", "glue"), _THIN, why="a weaker mount"),
        Rule("lathe", "ceiling", "falls", ("bench", "midi", "floor", "heavy"), why="a heavier lathe"),
        Rule("lathe_mass", "ceiling", "falls", why="a heavier lathe"),
        Rule("bolted", "ceiling", "falls", ("no", "yes"), why="a firmer footing"),
        Rule("felt", "ceiling", "rises", ("still", "trembles", "walks"), {"felt_speed": "400"}, why="felt worse"),
        Rule("felt", "speed", "rises", ("still", "nothing"), {"felt_speed": "400"}, why="that it ran still never lowers what it may"),
        Rule("vibration", "ceiling", "rises", given={"felt": "measured", "felt_speed": "400"}, why="more vibration"),
        Rule("weight", "ceiling", "rises", given={"balance": "weight", "weight_radius": "100 mm", "diameter": "300 mm"}, why="more out of balance"),
        Rule("thickness", "ceiling", "rises", given={"balance": "side", "hold": "glue"}, why="a thicker piece"),
        Rule("length", "ceiling", "rises", given={"balance": "side", "hold": "centres"}, why="a longer piece"),
        Rule("own", "ceiling", "falls", why="a higher limit of one's own"),
        Rule("found_rpm", "ceiling", "falls", given={"hold": "chuck", "found": "tailstock", "far_end": "live"}, why="a mount that holds more"),
        Rule("marked", "ceiling", "falls", why="a higher marking on the chuck"),
        Rule("wheel", "ceiling", "rises", given={"operation": "buff"}, why="a larger wheel"),
        Rule("wheel_marked", "ceiling", "falls", given={"operation": "buff"}, why="a higher marking on the wheel"),
    ),
    words={
        "outside": "{label}: {given} is outside the piece. It lies between the centre and the rim.",
        "diameter:too-small": "{label}: {given} is less than 5 mm (3/16 in), and nothing thinner is worked out here.",
        "range": "{label}: {given} is under the lowest, {lowest}.",
    },
)
