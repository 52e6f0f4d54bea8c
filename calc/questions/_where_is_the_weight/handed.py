"""What where the weight is hands on: how far out of balance it is, to its top speed and to its mount."""

from __future__ import annotations

from calc.answers import Carry
from calc.quantity import Style
from calc.questions._where_is_the_weight.case import Case


def handed(case: Case) -> tuple[Carry, ...]:
    """As it is without any weight: to the speed it may turn at, and to what holds it."""
    given = case.given
    fine = Style(given.pick("mm", "in"), step=1 if given.system == "metric" else 0.05)
    closer = Style(given.pick("mm", "in"), step=0.1 if given.system == "metric" else 0.01)
    both = {"diameter": str(given.write(case.swept, ("length", fine), "up"))}
    if case.made:
        both["thickness"] = str(given.write(case.blank.thickness_m, ("length", closer)))
    if case.way != "hung" or given.typed("about"):
        both["mass"] = str(given.write(case.body.mass_kg, "mass", "up"))
    known = {"balance": "known", "eccentricity": str(given.write(case.body.eccentricity_m, ("length", closer), "up"))}
    lathe = {name: given.as_typed(name) for name in ("lathe", "lathe_mass") if given.typed(name)}
    if case.way == "hung":
        small = Style(given.pick("g", "oz"), figures=3)
        weight = {
            "balance": "weight",
            "weight": str(given.write(given.si("hung"), ("mass", small), "up")),
            "weight_radius": str(given.write(given.si("hung_at"), ("length", closer))),
        }
        mount = both | known if given.typed("about") else both
        return (Carry("how-fast", both | weight | lathe), Carry("will-the-mount-hold", mount))
    return (Carry("how-fast", both | known | lathe), Carry("will-the-mount-hold", both | known))
