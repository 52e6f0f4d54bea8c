"""How fast may this blank turn, on this mount, for this cut, on this lathe?"""

from __future__ import annotations

import math
from typing import Any, cast

from calc.answers import Answer, Caution, Change, Figure, Headline, Working, figure
from calc.errors import InputError
from calc.fields import NO, YES, Choice, Field, Option, measure
from calc.quantity import rpm_text
from calc.questions import Given, Question, Rule, Table
from calc.questions._how_fast import remedies, stages, words
from calc.questions._how_fast.card import card
from calc.questions._how_fast.handed import LONG, handed
from calc.questions._how_fast.mount import weak_mount
from calc.questions._how_fast.wheel import wheel
from calc.questions._how_fast.working import working
from calc.questions._lathes import lathe_options
from calc.questions._mount_found import found_of_mount
from calc.several import Numbers
from calc.turning import balance, caps, mounts, speed, vibrating
from calc.turning.case import GUESSES, Case

TURNING = ("rough", "finish", "sand", "power", "paste")


def _choice(name: str, label: str, default: str, options: tuple[Option, ...], **more: Any) -> Choice:
    return Choice(name=name, label=label, default=default, basis="judgement", options=options, **more)


_TURNED = ("operation", TURNING)
_BUFFED = ("operation", ("buff",))
_WHOLE = ("condition", ("solid", "filled", "loose", "cracked"))
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
    measure("diameter", "Widest it sweeps", "mm", 5, 1500, usual=(25, 1000), hint="Corner to corner while it is out of round.", when=(_TURNED,)),
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
    measure("length", "How long it is", "mm", 3, 2000, usual=(30, 1000), hint="Along the lathe. Long thin work whips.", when=(_TURNED, _WHOLE, ("hold", LONG))),
    _choice("lathe", "Lathe", "bench", lathe_options()),
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
        "thickness", "Thickness, along the lathe", "mm", 3, 2000,
        usual=(5, 1000), default=("50", "2"), basis="judgement", fold=True, when=(_TURNED, ("hold", ("glue", "faceplate"))),
    ),
    measure(
        "mass", "What the work weighs", "kg", 0.005, 300,
        usual=(0.02, 100), hint="Empty: as a full disc of resin.", required=False, fold=True, when=(_TURNED,),
    ),
    found_of_mount(_TURNED, ("hold", ("glue", "faceplate", "chuck"))),
    measure(
        "set_back", "Set back off centre by", "mm", 0, 100,
        usual=(0, 20), hint="Turned round since. It adds to the balance.", required=False, fold=True, when=(_TURNED,),
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


def _measured(given: Given) -> speed.Measured | None:
    felt = given.choice("felt")
    if felt == "nothing":
        return None
    vibration = given.si("vibration") if felt == "measured" else vibrating.vibration_limit(f"felt-{felt}")
    return speed.Measured.of(given.si("felt_speed"), vibration, at_most=felt == "still")


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
        operation=cast(caps.Operation, given.choice("operation")),
        diameter_m=diameter,
        thickness_m=given.si("length" if given.choice("hold") in LONG else "thickness"),
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
        own_rpm=given.maybe("own"),
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
        Rule("felt", "ceiling", "rises", ("still", "nothing"), {"felt_speed": "400"}, why="that it ran still never lowers what it may"),
        Rule("vibration", "ceiling", "rises", given={"felt": "measured", "felt_speed": "400"}, why="more vibration"),
        Rule("weight", "ceiling", "rises", given={"balance": "weight", "weight_radius": "100 mm", "diameter": "300 mm"}, why="more out of balance"),
        Rule("thickness", "ceiling", "rises", given={"balance": "side", "hold": "glue"}, why="a thicker piece"),
        Rule("length", "ceiling", "rises", given={"balance": "side", "hold": "centres"}, why="a longer piece"),
        Rule("own", "ceiling", "falls", why="a higher limit of one's own"),
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
