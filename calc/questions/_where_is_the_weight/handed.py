"""What where the weight is hands on: how far out of balance it is, to its top speed and to its mount; figures as its own page shows them."""

from __future__ import annotations

from calc.answers import Carry
from calc.quantity.writing import Rounding, Style, trimmed
from calc.questions import Given
from calc.questions._where_is_the_weight.case import Case
from calc.questions._where_is_the_weight.parts import standard
from calc.questions._where_is_the_weight.words import fine_length
from calc.turning import balance
from calc.turning.case import GUESSES


def handed(case: Case) -> tuple[Carry, ...]:
    """As it is without any weight: to the speed it may turn at, and to what holds it."""
    given = case.given
    both = {"diameter": _widest(case)}
    if case.made:
        both["thickness"] = _typed_length(given, "thickness", "nearest")
    if case.way != "hung" or given.typed("about"):
        weighed = {"scale": "mass", "swing": "mass", "hung": "about"}.get(case.way, "")
        both["mass"] = given.as_typed(weighed) if given.typed_here(weighed) else str(given.write(case.body.mass_kg, "mass", "up"))
    known = _out(case)
    lathe = {name: given.as_typed(name) for name in ("lathe", "lathe_mass") if given.typed(name)}
    if case.way == "hung":
        grams = Style(given.pick("g", "oz"), figures=3)
        hung = given.as_typed("hung") if given.typed_here("hung") else str(given.write(given.si("hung"), ("mass", grams), "up"))
        weight = {"balance": "weight", "weight": hung, "weight_radius": _typed_length(given, "hung_at", "up")}
        mount = both | known if given.typed("about") else both
        return (Carry("how-fast", both | weight | lathe), Carry("will-the-mount-hold", mount))
    return (Carry("how-fast", both | known | lathe), Carry("will-the-mount-hold", both | known))


def _out(case: Case) -> dict[str, str]:
    """How far it is out of balance; where not even its side is known, or it is less than can be known, the least guess that holds as much."""
    guesses = {guess: balance.guessed_eccentricity(guess, case.swept, out_of_round=True) * case.body.mass_kg for guess in GUESSES}
    if case.way != "swing" and (not case.sure or case.most < guesses["even"]):
        for guess, most in guesses.items():
            if standard("guess near") * case.most <= most:
                return {"balance": guess}
    off = case.given.write(case.most / case.body.mass_kg, ("length", fine_length(case.given)), "up")
    return {"balance": "known", "eccentricity": str(off)}


def _widest(case: Case) -> str:
    """The circle it sweeps: as it was typed where nothing makes it wider."""
    name = "across" if case.shaped and not case.blank.corners else "sweep"
    if case.given.maybe(name) == case.swept:
        return _typed_length(case.given, name, "up")
    return str(case.given.write(case.swept, "length", "up"))


def _typed_length(given: Given, name: str, rounding: Rounding) -> str:
    """A length as it was typed; under the other units as finely as a tape shows it."""
    if given.typed_here(name):
        return given.as_typed(name)
    tape = Style("mm", step=0.1) if given.system == "metric" else Style("in", step=1 / 32, fraction=True)
    shown = given.write(given.si(name), ("length", tape), rounding)
    return f"{trimmed(shown.text)} {shown.unit}"
