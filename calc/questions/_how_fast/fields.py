"""What How fast? asks."""

from __future__ import annotations

from typing import Any

from calc.fields import NO, YES, Choice, Field, Option, measure, under
from calc.questions._how_fast.handed import LONG
from calc.questions._lathes import lathe_options
from calc.questions._mount_found import found_of_mount
from calc.questions._on_the_lathe import FAR_ENDS, NOT_CHECKED
from calc.several import Numbers

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
            *NOT_CHECKED,
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
        FAR_ENDS,
        when=(_TURNED, ("hold", ("glue", "faceplate", "chuck"))),
    ),
    measure("length", "How long it is", "mm", 3, 2000, usual=(30, 1000), hint="Along the lathe. Long thin work whips.", when=(_TURNED, _WHOLE, ("hold", LONG))),
    _choice("lathe", "Lathe", "bench", lathe_options()),
    *under(
        "The lathe",
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
        measure("own", "My own limit", "rpm", 10, 6000, hint="Stands in for our rim limit.", required=False, fold=True),
    ),
    *under(
        "The work and its mount",
        measure(
            "thickness", "Thickness, along the lathe", "mm", 3, 2000,
            usual=(5, 1000), default=("50", "2"), basis="judgement", fold=True, when=(_TURNED, ("hold", ("glue", "faceplate"))),
        ),
        measure(
            "mass", "What the work weighs", "kg", 0.005, 300,
            usual=(0.02, 100), hint="Empty: as a full disc of resin.", required=False, fold=True, when=(_TURNED,),
        ),
        *found_of_mount(_TURNED, ("hold", ("glue", "faceplate", "chuck"))),
        measure(
            "found_rpm", "It holds up to", "rpm", 5, 10000, required=False, fold=True,
            when=(_TURNED, ("hold", ("glue", "faceplate", "chuck")), ("found", ("alone", "tailstock"))),
        ),
        measure(
            "set_back", "Set back off centre by", "mm", 0, 100,
            usual=(0, 20), hint="Turned round since. It adds to the balance.", required=False, fold=True, when=(_TURNED,),
        ),
        measure("marked", "Speed marked on the chuck", "rpm", 100, 20000, required=False, fold=True, when=(_TURNED,)),
    ),
    *under(
        "When it ran",
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
    ),
)
