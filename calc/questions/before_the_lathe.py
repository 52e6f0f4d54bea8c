"""Before the lathe runs: cure, mount, balance, swing, speed and dust, gate by gate, before a mounting is switched on."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial

from calc.answers import Answer, Caution, Figure, Line, figure
from calc.fields import Choice, Field, Option, Quantity, measure, under
from calc.questions import Given, Question, Rule, Table
from calc.questions._found_for import counts, found_for, of
from calc.questions._gated import gated, tell, yes
from calc.questions._mount_found import found_of_mount, heard, other_mount
from calc.questions._worn import Mask, asked_yes_no, mask_fields
from calc.safety import gates
from calc.safety.findings import Finding, State
from calc.sources import value

#: What each switch-on after the first asks for, in place of a list.
REFLEX = "Each later switch-on: turned by hand, lowest speed first, out of the rim's line."
_ON_A_MOUNT = ("hold", ("glue", "faceplate", "chuck"))
_CHUCK = ("hold", ("chuck",))

_folded = partial(measure, required=False, fold=True)
_hours = partial(_folded, unit="h", low=0, high=20_000, accepts=("min", "h", "days"))
_length = partial(_folded, unit="mm", low=1, high=3000)
_speed = partial(measure, unit="rpm", low=5, high=6000, required=False)

FIELDS: tuple[Field, ...] = (
    Choice(
        name="then",
        label="What comes next",
        options=(
            Option("mould", "Out of the mould"),
            Option("rough", "A rough cut"),
            Option("sand", "Sanding, polish"),
            Option("use", "Use it, or hand it over"),
        ),
        required=False,
    ),
    Choice(
        name="hold",
        label="Held by",
        options=(
            Option("centres", "Between centres"),
            Option("glue", "Glue block"),
            Option("faceplate", "Faceplate"),
            Option("chuck", "Chuck"),
        ),
        required=False,
    ),
    asked_yes_no("tailstock", "Tailstock up", _ON_A_MOUNT, fold=False),
    _speed("ceiling", "Ceiling of speed", hint="'How fast?' tells it, for this size and balance."),
    _speed("speed", "Speed on the dial", hint="Or the belt step you plan for."),
    *under(
        "Cure",
        _hours("age", "Since the pour", usual=(1, 2000)),
        _hours("leave", "Leave the mould after", usual=(1, 400), hint="From the sheet, or 'When can I?'"),
        _hours("full", "Full cure after", usual=(4, 1000), hint="From the sheet, or 'When can I?'"),
        _folded("sheet_temperature", "Those times are for", "°C", 5, 80, usual=(15, 35)),
        _folded("coolest", "Coolest it stood since", "°C", -20, 80, usual=(5, 35)),
        asked_yes_no("hard", "Hard all over, no smell"),
    ),
    *under(
        "The mount",
        *found_of_mount(_ON_A_MOUNT),
        _length("mount", "Mount across", usual=(20, 500), hint="Tenon, block or screw circle.", when=(_ON_A_MOUNT,)),
        _length("least", "Least it may be across", usual=(20, 500), hint="From the chuck's manual, or 'Will the mount hold?'", when=(_ON_A_MOUNT,)),
        _length("overhang", "Mount to the middle of the work", usual=(1, 500), when=(_ON_A_MOUNT,)),
        asked_yes_no("sound", "It grips sound material"),
    ),
    *under(
        "The lathe",
        _length("sweeps", "Widest it sweeps", usual=(25, 1000), hint="Corner to corner."),
        _length("swing", "Swing that counts", usual=(100, 1200), hint="The largest that clears bed and banjo. 'Does it fit the lathe?' tells it."),
        Choice(
            name="banjo",
            label="The banjo stands",
            options=(Option("under", "Under the work"), Option("beyond", "Beyond its face", "the swing is that over the bed alone")),
            required=False,
            fold=True,
        ),
        measure(
            "gap", "Least gap, all round", "mm", 0, 100, usual=(2, 25),
            default=(f"{value('fit', 'bed gap'):g}", "1/4"), basis="judgement", hint="From bed and banjo.", fold=True,
        ),
        _speed("balanced", "Speed its heavy side allows", fold=True, hint="From the manual, or 'How fast?'"),
        _speed("lowest", "The machine's lowest speed", fold=True, hint="List C5 holds the dial against it."),
        _speed("highest", "The machine's highest speed", fold=True),
        _speed("marked", "Speed marked on the chuck", fold=True, when=(_CHUCK,)),
        _speed("sand_ceiling", "Ceiling for sanding", fold=True, hint="'How fast?' tells it, asked for sanding."),
        _folded("loose", "Heaviest part that could come off", "kg", 0.001, 300, usual=(0.005, 50)),
    ),
    *under(
        "What those speeds were found for",
        found_for("ceiling_for", "Ceiling: for work that sweeps"),
        found_for("balanced_for", "Heavy side: for work that sweeps"),
        found_for("sand_for", "Sanding: for work that sweeps"),
    ),
    *under(
        "Mask for dust",
        *mask_fields(
            Option("none", "None"),
            (
                Option("particles", "P100, P3 or FFP3"),
                Option("lesser", "FFP1, FFP2 or N95"),
                Option("other", "Cloth, nuisance mask, or gas filter alone"),
            ),
            "Filters in date, and breathe freely",
        ),
    ),
    *under(
        "Noise",
        Quantity(
            name="noise", label="Noise at your ear, dB(A)", kind="count", units=("", ""), low=40, high=130, usual=(60, 115), required=False, fold=True,
        ),
        _hours("heard", "Hours at it today", usual=(0.1, 12)),
        asked_yes_no("ears", "Ear protection on"),
    ),
)


def findings(given: Given) -> Mapping[str, Finding]:
    """Every gate that these inputs can feed, by a name of its own: G7, G9 and G10 stand for two moments each.

    Parameters
    ----------
    given : this question's inputs; any may be missing.

    Returns
    -------
    mapping of str to Finding
        In the order of the grid. "G9-grip" is the mount itself, "G9" the far end; "G10-start" is the first power;
        "G7-sand" and "G10-sand" are the later moments of their gates.
    """
    hold, speed, mount, sweeps = given.words("hold") or None, given.maybe("speed"), given.maybe("mount"), given.maybe("sweeps")
    tailstock = yes(given, "tailstock")
    found = heard(given, sweeps, tailstock=tailstock, across_m=mount)
    least = None if other_mount(given) else given.maybe("least")  # another kind of mount has another least size
    dial = partial(
        gates.lathe.dial,
        speed,
        given.maybe("ceiling"),
        given.maybe("highest"),
        given.maybe("marked"),
        marked=hold == "chuck",
        of=of(given, "ceiling_for", sweeps),
    )
    return {
        "G7": _cured(given, given.words("then") or None),
        "G8": gates.lathe.out_of_balance(speed, given.maybe("balanced"), of(given, "balanced_for", sweeps)),
        "G9-grip": gates.lathe.grip(mount, least, yes(given, "sound"), sized=hold != "centres", found=found),
        "G9": gates.lathe.second_hold(hold, tailstock, given.maybe("overhang"), mount, found=found, sweeps_m=sweeps),
        "G10": dial(),
        "G10-start": dial(lowest_rpm=given.maybe("lowest")),
        "G11": gates.lathe.swing(sweeps, given.maybe("swing"), given.si("gap"), beyond=given.words("banjo") == "beyond"),
        "G16": gates.worn.dust_mask(**vars(Mask.of(given))),
        "G7-sand": _cured(given, gates.shop.SAND),
        "G10-sand": gates.lathe.sanding_speed(speed, given.maybe("sand_ceiling"), of(given, "sand_for", sweeps)),
        "G14": gates.lathe.noise(given.maybe("noise"), given.maybe("heard"), yes(given, "ears")),
        "G18": gates.lathe.throw(given.maybe("loose"), sweeps, _fastest(given)),
    }


def _cured(given: Given, then: str | None) -> Finding:
    figures = (given.maybe("age"), given.maybe("leave"), given.maybe("full"))
    return gates.shop.cured(then, *figures, yes(given, "hard"), given.maybe("coolest"), given.maybe("sheet_temperature"))


def _fastest(given: Given) -> float | None:
    """What it may come to turn at, rpm: the dial stands at the lathe's lowest when list C5 is gone through, and is turned up after it."""
    ceiling = given.maybe("ceiling") if counts(given, "ceiling") else None
    return max((rpm for rpm in (given.maybe("speed"), ceiling) if rpm is not None), default=None)


def shown(given: Given, found: Mapping[str, Finding]) -> dict[str, Finding]:
    """The findings worth a row: a gate of sanding, of noise or of thrown parts only once something feeds it."""
    sanding = given.words("then") == gates.shop.SAND
    fed = {
        "G16": sanding or given.typed("mask"),
        "G7-sand": False,  # G7 itself says it when sanding comes next
        "G10-start": False,  # of list C5: here the speed planned is asked for
        "G10-sand": given.typed("sand_ceiling"),
        "G14": given.typed("noise"),
        "G18": given.typed("loose"),
    }
    return {key: finding for key, finding in found.items() if fed.get(key, True)}


def energy(given: Given) -> float | None:
    """What the heaviest part that could come off carries, J; None while mass, rim or speed is missing.

    Parameters
    ----------
    given : this question's inputs.

    Returns
    -------
    float or None
    """
    loose, sweeps, speed = given.maybe("loose"), given.maybe("sweeps"), _fastest(given)
    return None if loose is None or sweeps is None or speed is None else gates.lathe.throw_energy(loose, sweeps, speed)


def work(given: Given) -> Answer:
    """Hold casting, mount and speed against their gates.

    Parameters
    ----------
    given : this question's inputs; a missing one leaves its gate not checked.

    Returns
    -------
    Answer
        'STOP' with one next action, or 'No stop found - your call'; never more than that.
    """
    level, thrown = given.maybe("noise"), energy(given)
    bare = None if level is None else given.write(gates.lathe.noise_time(level), "minutes" if level > 94 else "hours", "down")
    found = findings(given)
    told = found["G14"].state is State.REMINDER  # which tells the hours too
    return gated(
        tell(shown(given, found), given.system),
        "Before the lathe runs",
        "Put in what you know of casting, mount and lathe.",
        "Take checklist C5 to the lathe; C7 before you sand.",
        cautions=(Caution("reflex", "caution", REFLEX),),
        lines=() if bare is None or told else (Line.of("A day at this noise, with bare ears", bare, "at most"),),
        values={
            "bare_ears": figure(bare, "time"),
            "energy": figure(None, "energy") if thrown is None else Figure(thrown, "energy", f"{float(f'{thrown:.2g}'):.10g} J"),
        },
    )


QUESTION = Question(
    id="before-the-lathe",
    name="Before the lathe runs",
    moment="at the lathe",
    order=13,
    summary="Casting, mount and speed against their limits, and four checklists: out of the mould, first power, after a catch, sanding.",
    lead="Put in what the other questions, the manual and the sheet say. A missing figure reads 'not checked'.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="What a part of 100 g (3 1/2 oz) carries when it leaves the rim; face shields are tested with 6.2 to 15.5 J",
        rows=("sweeps", (("100", "200", "300", "400", "500"), ("4", "8", "12", "16", "20"))),
        columns=("speed", ("250 rpm", "500 rpm", "1000 rpm", "1500 rpm")),
        fixed={"loose": ("0.1 kg", "0.22 lb")},
        cell=lambda answer: answer.values["energy"].shown,
        note="Stand out of the rim's line at any speed: no shield is made to stop a whole blank.",
    ),
    rules=(
        Rule("speed", "stops", "falls", given={"ceiling": "400 rpm", "highest": "3000 rpm"}, why="more speed never ends a stop"),
        Rule("ceiling", "stops", "rises", given={"speed": "400 rpm"}, why="a higher ceiling never adds a stop"),
        Rule("sweeps", "stops", "falls", given={"swing": "350 mm"}, why="a wider blank never ends a stop"),
        Rule("sweeps", "stops", "falls", given={"speed": "900 rpm", "ceiling": "400 rpm", "ceiling_for": "300 mm"}, why="a wider blank never ends a stop"),
        Rule("age", "stops", "rises", given={"then": "sand", "full": "72 h"}, why="an older casting never adds a stop"),
        Rule("full", "stops", "falls", given={"then": "sand", "age": "72 h"}, why="a longer cure on the sheet never ends a stop"),
        Rule("mount", "stops", "rises", given={"hold": "chuck", "least": "60 mm"}, why="a wider mount never adds a stop"),
        Rule(
            "mount", "stops", "rises", given={"hold": "chuck", "least": "60 mm", "found": "no", "found_across": "130 mm"}, why="a wider mount never adds a stop"
        ),
        Rule("overhang", "stops", "falls", given={"hold": "faceplate", "tailstock": "no", "mount": "80 mm"}, why="reaching further out never ends a stop"),
        Rule("loose", "energy", "falls", given={"sweeps": "300 mm", "speed": "500 rpm"}, why="a heavier part never carries less"),
        Rule("noise", "bare_ears", "rises", why="more noise never leaves more time"),
    ),
)
