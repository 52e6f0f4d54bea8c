"""What would raise the speed of a case: everything a maker could do about it, tried and put in order."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from calc.quantity.units import to_si
from calc.quantity.writing import Style, round_to
from calc.questions import Given
from calc.sources import value
from calc.turning import balance, speed
from calc.turning.case import EIGHT_SIDES, Case, balanced, ballast_to_next_limit, on_footing, recentred, steadied
from calc.words import inside

WEIGHT_REACH = value("turning", "weight reach")  # of the radius
MOST_WEIGHT = value("turning", "most weight")  # of the piece; beyond it its centre is moved instead
MOST_CHANGES = 4  # more are not read
MOST_TOGETHER = 3  # a longer list of things to do first is another lathe
MOST_SHIFT = value("turning", "most shift")  # of the diameter


@dataclass(frozen=True)
class Remedy:
    """Something a maker can do: its sort, the case it makes of a case, and its words for a case."""

    sort: str
    change: Callable[[Case], Case]
    words: Callable[[Given, Case], str]


@dataclass(frozen=True)
class Raise:
    """One or more remedies that help: their sorts, what to do in its order, and the setting they lead to (rpm)."""

    sorts: tuple[str, ...]
    steps: tuple[str, ...]
    setting_rpm: float

    @property
    def words(self) -> str:
        """All of it in one sentence."""
        first, *rest = self.steps
        return "; and ".join([first, *map(inside, rest)])


Worth = tuple[float, tuple[Remedy, ...]]  # a setting, rpm, and what leads to it


def changes(given: Given, case: Case, top: speed.TopSpeed) -> list[Raise]:
    """What raises the setting, best first; for a refusal, two or three things together where fewer are not enough.

    Parameters
    ----------
    given : the question's inputs, for the words.
    case : as it is; ``top`` : its top speed.

    Returns
    -------
    list of Raise
        at most :data:`MOST_CHANGES`; none when nothing helps. What leaves a crack never leads.
    """
    known = list(remedies(case))
    for together in range(1, (MOST_TOGETHER if top.refused else 1) + 1):
        worth: list[Worth] = []
        for several in itertools.combinations(known, together):
            if {"balance", "centre"} <= {remedy.sort for remedy in several}:
                continue
            after = case
            for remedy in several:
                after = remedy.change(after)
            setting = after.top.setting_rpm
            if setting is not None and setting > (top.setting_rpm or 0.0):
                worth.append((setting, several))
        if worth:
            if top.refused and all(_leaves_crack(case, several) for _, several in worth):
                worth = list(_mended_first(case, known, worth))
            worth.sort(key=lambda found: (_leaves_crack(case, found[1]), -found[0]))
            return [_raise(given, case, several, setting) for setting, several in worth[:MOST_CHANGES]]
    return []


def remedies(case: Case) -> Iterator[Remedy]:
    """Everything a maker could do about this case. Not all of it helps.

    Parameters
    ----------
    case : as it is.

    Yields
    ------
    Remedy
        in no order of worth.
    """
    if case.make_up in ("weight", "known") and case.measured is None:
        if not (case.slender or _too_heavy(case)):
            yield Remedy("balance", balanced, lambda given, it: f"Hang {_weight_words(given, it)} on the light side and fix it there")
        movable = not case.set_back_m and case.eccentricity_m < MOST_SHIFT * case.diameter_m
        if movable and case.operation == "rough":
            yield Remedy("centre", recentred, lambda given, it: f"Move the mounting centre {_off(given, it)} towards the heavy side")
        elif movable and _too_heavy(case):
            yield Remedy(
                "centre",
                lambda it: recentred(replace(it, operation="rough")),
                lambda given, it: f"Move the mounting centre {_off(given, it)} towards the heavy side and rough it round again",
            )
    elif not case.slender:
        yield Remedy("balance", balanced, _hang_words)
    if case.hold != "centres" and case.far_end != "live":
        yield Remedy("tailstock", lambda it: replace(it, far_end="live"), lambda given, it: "Bring the tailstock up with a live centre")
    if not case.bolted and not case.slender:
        yield Remedy("bolts", lambda it: on_footing(it, it.lathe_kg, True), lambda given, it: "Bolt the lathe down")
    if not case.slender:
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
        yield Remedy("steady", steadied, lambda given, it: "Set a steady rest in the middle")


def _mended_first(case: Case, known: list[Remedy], worth: list[Worth]) -> Iterator[Worth]:
    """The same, with the crack filled before: it is never left for the speed's sake."""
    mend = next(remedy for remedy in known if remedy.sort == "condition")
    for _, several in worth:
        after = case
        for remedy in (mend, *several):
            after = remedy.change(after)
        if after.top.setting_rpm is not None:
            yield after.top.setting_rpm, (mend, *several)


def _leaves_crack(case: Case, several: tuple[Remedy, ...]) -> bool:
    """Whether the work would still run cracked: such a remedy never leads."""
    return case.condition == "cracked" and "condition" not in {remedy.sort for remedy in several}


def _raise(given: Given, case: Case, several: tuple[Remedy, ...], setting_rpm: float) -> Raise:
    """The words, each remedy told for the case as the ones before it leave it."""
    told: list[str] = []
    for remedy in several:
        told.append(remedy.words(given, case))
        case = remedy.change(case)
    return Raise(tuple(remedy.sort for remedy in several), tuple(told), setting_rpm)


def _off(given: Given, case: Case) -> str:
    """How far off centre, in the figure that was given where one was."""
    return given.as_typed("eccentricity") if case.make_up == "known" else str(given.write(case.eccentricity_m, "length"))


def _too_heavy(case: Case) -> bool:
    """Whether a weight at the rim that balances it would be more than a sixth of the piece."""
    return balance.balance_weight(case.job.felt_unbalance_kg_m, WEIGHT_REACH * case.diameter_m / 2) > MOST_WEIGHT * case.mass_kg


def _hang_words(given: Given, case: Case) -> str:
    """What to hang where nobody has weighed it: about how much, or from how much on to leave it."""
    if _too_heavy(case):
        most = given.write(MOST_WEIGHT * case.mass_kg, "small mass", "down")
        until = f"until it stays anywhere; over {most}, move its centre instead"
        return f"Hang weights on the light side, spindle free, {until}"
    return f"Hang weights on the light side, spindle free, about {_weight_words(given, case)}, until it stays anywhere; fix them there"


def _balance_radius(given: Given, case: Case) -> float:
    """Where a weight fits inside the rim, on a mark a tape shows."""
    if case.make_up == "weight":
        return given.si("weight_radius")
    step = to_si(5, "length", "mm") if given.system == "metric" else to_si(1 / 4, "length", "in")
    return max(round_to(WEIGHT_REACH * case.diameter_m / 2, step, "down"), min(step, case.diameter_m / 4))


def _weight_words(given: Given, case: Case) -> str:
    """'430 g at 130 mm'."""
    radius = _balance_radius(given, case)
    weight = balance.balance_weight(case.job.felt_unbalance_kg_m, radius)
    return f"{given.write(weight, 'small mass')} at {given.write(radius, 'length')}"


def _ballast_words(given: Given, case: Case) -> str:
    style = Style("kg", step=10) if given.system == "metric" else Style("lb", step=10)
    return f"Put {given.write(ballast_to_next_limit(case), ('mass', style), 'up')} of ballast on the stand"
