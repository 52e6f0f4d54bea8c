"""From the fields to a profile: the reaction, how deep it allows, how long it leaves in a bucket."""

from __future__ import annotations

from collections.abc import Generator
from dataclasses import dataclass, replace
from itertools import pairwise

from calc.casting import resin
from calc.casting.cure.bucket import in_bucket, usual_wait
from calc.casting.cure.calibrate import NoFit, wide
from calc.casting.cure.cup_test import CupTest
from calc.casting.cure.cups import dish, foam_cup, plastic_cup
from calc.casting.cure.kinetics import ResinClass, heat_of_reaction
from calc.casting.cure.known import Facts, Known, known_steps
from calc.casting.cure.outlook import DEPTH_BY_RATE, Outlook, lines_steps
from calc.casting.cure.plan import Plan
from calc.casting.cure.pour import Resin, Start
from calc.errors import InputError
from calc.questions import Given
from calc.questions._how_deep.case import BENCH
from calc.questions._resin.sheet import Sheet
from calc.steps import part

BUCKET_KG = resin.stand_in("bucket")
_ANY_M = 0.04  # the mould's depth is what is looked for


@dataclass(frozen=True)
class Profile:
    """One resin.

    Parameters
    ----------
    sheet : what was typed. facts, known : its reaction and how well it is known.
    middle_m : wide pour that just runs away, m. surest_m : no stop found up to here; stop_m : a stop from here, m.
    bucket_s : by when 1 kg is to be poured out of its bucket, s after mixing; None where it does not set.
    cup_failed : ``rise-low`` or ``rise-high`` where the test cup tells nothing, else empty.
    """

    sheet: Sheet
    facts: Facts
    known: Known
    middle_m: float
    surest_m: float
    stop_m: float
    bucket_s: float | None
    cup_failed: str = ""

    @property
    def given(self) -> Given:
        """The fields."""
        return self.sheet.given

    @property
    def room_k(self) -> float:
        """The shop, K."""
        return self.given.si("room")

    @property
    def kind(self) -> ResinClass:
        """The kind it belongs to, by its rate."""
        return resin.kind_of(self.known.kinetics.k25)

    @property
    def sheet_m(self) -> float | None:
        """The sheet's deepest layer, m."""
        return self.given.maybe("deepest")

    @property
    def ceiling_m(self) -> float:
        """The deepest layer, m: the sheet's or the model's, whichever is less."""
        return min(self.stop_m, self.sheet_m or self.stop_m)

    @property
    def no_stop_m(self) -> float:
        """No stop found up to here, m."""
        return min(self.surest_m, self.ceiling_m)

    def no_stop_with(self, rate_up: float) -> float:
        """The same with a band of its rate as narrow as this, m; by the power of the rate."""
        found = float(self.surest_m * (rate_up / self.known.level.rate_up) ** DEPTH_BY_RATE)
        return min(found, self.sheet_m or found)


def cup_of(given: Given, raw: Resin) -> CupTest:
    """The test cup as it was made.

    Raises
    ------
    InputError
        ``cup-lengths``, ``cup-order``.
    """
    kind = given.choice("vessel")
    cup = dish(given.si("cup_layer")) if kind == "dish" else (foam_cup if kind == "foam" else plastic_cup)(given.si("cup_mass"), raw)
    times, temperatures = given.many("cup_minutes"), given.many("cup_temperatures")
    if len(times) != len(temperatures):
        raise InputError("cup_temperatures", "cup-lengths", temperatures=str(len(temperatures)), minutes=str(len(times)))
    if any(after <= before for before, after in pairwise(times)):
        raise InputError("cup_minutes", "cup-order")
    started = given.maybe("cup_start")
    room = given.si("cup_room")
    return CupTest(cup, Start(room, room if started is None else started), times, temperatures, given.si("cup_gel"))


def facts_of(given: Given, sheet: Sheet) -> Facts:
    """What is known, without the cup."""
    if given.choice("known") == "kind":
        return Facts(given.choice("kind"))
    pot_life, deepest = given.maybe("pot_life"), given.maybe("deepest")
    if given.choice("known") == "sheet" and pot_life is None and deepest is None:
        raise InputError("pot_life", "missing")
    ratio = sheet.ratio
    return Facts(
        heat=None if ratio is None else heat_of_reaction(ratio[0].a, ratio[0].b),
        density=sheet.density[0],
        glass_k=given.maybe("glass"),
        pot_life_s=pot_life,
        meaning=given.choice("pot_means"),
        pot_mass_kg=given.si("pot_mass"),
        pot_k=given.si("pot_temperature"),
        deepest_m=deepest,
        deepest_k=given.si("deepest_temperature"),
    )


def profile_steps(given: Given) -> Generator[float, None, Profile]:
    """The profile, a run at a time; yields the share done.

    Raises
    ------
    InputError
        of the sheet (see :meth:`Sheet.check`), of the cup, ``cup-alone``, ``never-so-hot``.
    """
    sheet = Sheet(given)
    sheet.check()
    facts = facts_of(given, sheet)
    failed = ""
    known: Known | None = None
    if given.choice("known") == "cup":
        try:
            known = yield from part(known_steps(replace(facts, cup=cup_of(given, facts.raw))), 0.0, 0.8)
        except NoFit as none:
            failed = none.code
            if facts.pot_life_s is None and facts.deepest_m is None:
                raise InputError("pot_life", "cup-alone") from None
    if known is None:
        try:
            known = yield from part(known_steps(facts), 0.0, 0.5)
        except NoFit:
            raise InputError("pot_means", "never-so-hot") from None
    outlook, bucket = yield from part(_depths(known, given.si("room")), 0.8, 1.0)
    return Profile(sheet, facts, known, outlook.edge, outlook.go, outlook.stop, bucket, failed)


#: The latest lines, by resin and shop: most entries change neither.
_recent: dict[tuple[Known, float], tuple[Outlook, float | None]] = {}
_KEPT = 16


def _depths(known: Known, room_k: float) -> Generator[float, None, tuple[Outlook, float | None]]:
    """The depths of a wide pour on a bench, as How deep and how hot? finds them; and by when a bucket of it is to be poured, s."""
    key = (known, room_k)
    if key not in _recent:
        poured = in_bucket(known.in_bucket, known.level.rate_up, BUCKET_KG, room_k, room_k, known.printed)
        wait = usual_wait(known.kinetics.cool_s / known.kinetics.speed_up(room_k), poured)
        raised = wide(_ANY_M)
        mould = replace(raised, below=(BENCH, *raised.below))
        outlook = Outlook(Plan(known.resin, known.level, mould, room_k, room_k, BUCKET_KG, wait, in_bucket=known.by_pot_life, printed=known.printed))
        yield from lines_steps(outlook)
        while len(_recent) >= _KEPT:
            del _recent[next(iter(_recent))]
        _recent[key] = (outlook, poured.within_s)
    return _recent[key]
