"""The moulds of a batch and its resin, from the fields; and the hours that each of them keeps."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

from calc.casting import bubbles, resin
from calc.casting.cure.bucket import InBucket, in_bucket, usual_wait
from calc.casting.cure.bucket import after as after_bucket
from calc.casting.cure.cells import Footprint, oblong_footprint, round_footprint
from calc.casting.cure.clock import DAY, Shop
from calc.casting.cure.kinetics import Kinetics
from calc.casting.cure.known import Known, Level, levels
from calc.casting.cure.plan import FILM_BAND
from calc.casting.cure.pour import COARSE, ROUGH, Mould, Resin, Start
from calc.casting.cure.stages import Stages, next_layer, stages, step_of
from calc.casting.cure.standards import standard
from calc.casting.cure.thermal import Films, Wall, materials, reach
from calc.casting.resin import stand_in
from calc.errors import InputError
from calc.questions import Given
from calc.questions._when.hours import after
from calc.times import HOUR, time_of_day, told

#: Walls by choice: thickness, m. What a mould stands on: a bench of plywood.
WALLS = {wall: step_of(f"wall {wall}") / 1e3 for wall in ("board", "hdpe", "silicone")}
_MOST_TRIES, _CLOSE = 12, 0.02
_FAR = step_of("gel far")  # a gel further off than this is another resin, or a slip
BENCH = Wall(materials()["plywood"], standard("bench"))
_PIECE_M = step_of("thickest piece") / 1e3
_stages = lru_cache(maxsize=16)(stages)


@dataclass(frozen=True)
class Vessel:
    """One mould: what it is called, the depth of the resin in it (m), its footprint, and its area from above (m²)."""

    name: str
    depth_m: float
    footprint: Footprint
    area_m2: float


def shop_of(given: Given) -> Shop:
    """The air around the moulds.

    Raises
    ------
    InputError
        ``clock``; ``poured-needed`` where a night is told and the hour of the pour is not.
    """
    day = given.si("room")
    poured = time_of_day("poured", given.words("poured"), "metric") if given.typed("poured") else None
    if given.choice("night_cools") == "no":
        return Shop(day, day, poured or 0.0)
    if poured is None:
        raise InputError("poured", "poured-needed", like=told(14.5 * HOUR, given.system))
    night = given.si("night")
    if night > day:
        raise InputError("night", "warmer-night", day=str(given.write(day, "temperature")))
    start, end = (time_of_day(name, given.words(name), "metric") for name in ("night_from", "night_to"))
    if start == end:
        raise InputError("night_to", "no-night")
    return Shop(day, night, poured, start, end)


def vessels_of(given: Given) -> tuple[Vessel, ...]:
    """The first mould, and the others of the batch as round ones.

    Raises
    ------
    InputError
        ``one-each`` where depths and widths are not as many.
    """
    if given.choice("shape") == "round":
        first = _round("This mould", given.si("depth"), given.si("across"))
    else:
        length, width = given.si("length"), given.si("width")
        first = Vessel("This mould", given.si("depth"), oblong_footprint(length, width), length * width)
    depths = given.many("other_depths") if given.typed("other_depths") else ()
    widths = given.many("other_widths") if given.typed("other_widths") else ()
    if len(depths) != len(widths):
        short, long = ("other_depths", widths) if len(depths) < len(widths) else ("other_widths", depths)
        raise InputError(short, "one-each", count=str(len(long)))
    others = (_round(f"Mould {n}", depth, width) for n, (depth, width) in enumerate(zip(depths, widths, strict=True), 2))
    return (first, *others)


def _round(name: str, depth_m: float, across_m: float) -> Vessel:
    return Vessel(name, depth_m, round_footprint(across_m), math.pi / 4 * across_m**2)


def batch_of(given: Given, vessels: Sequence[Vessel], known: Known) -> float:
    """Mixed for all these moulds, kg."""
    return sum(vessel.area_m2 * vessel.depth_m for vessel in vessels) * (1 - given.si("wood")) * known.resin.density


def poured_within(given: Given, batch_kg: float, known: Known) -> InBucket:
    """How long the batch of all these moulds can be poured out of its bucket."""
    room = given.si("room")
    warmth = given.maybe("warmth") or room
    return in_bucket(known.in_bucket, known.level.rate_up, batch_kg, room, warmth, known.printed)


@dataclass(frozen=True)
class Casting:
    """The hours of one mould.

    Parameters
    ----------
    given : the fields; vessel : the mould; mix : the resin; level : how well it is known; shop : the air.
    bucket : how long the batch can be poured; batch_kg : what it weighs.
    """

    given: Given
    vessel: Vessel
    mix: Resin
    level: Level
    shop: Shop
    bucket: InBucket
    batch_kg: float

    @property
    def spread(self) -> float:
        """How far hours may be off, as a factor."""
        return self.level.hours

    @property
    def kinetics(self) -> Kinetics:
        """Of the mix."""
        return self.mix.kinetics

    @cached_property
    def mould(self) -> Mould:
        """The mould where it stands."""
        given, wall = self.given, given_wall(self.given)
        films = Films(fan=given.choice("fan") == "yes")
        cool = self.kinetics.cool_s / self.kinetics.speed_up(self.shop.day_k)
        share = given.si("wood") * min(1.0, reach(cool / 2) / _PIECE_M)
        return Mould(self.vessel.footprint, self.vessel.depth_m, wall, (BENCH, wall), films, share)

    @property
    def waited(self) -> float:
        """From mixing to pouring, s."""
        typed = self.given.maybe("waited")
        return usual_wait(self.kinetics.cool_s / self.kinetics.speed_up(self.shop.day_k), self.bucket) if typed is None else typed

    @cached_property
    def start(self) -> Start:
        """As it goes into the mould, after the time that it stood mixed."""
        warmth = self.given.maybe("warmth")
        resin_k = self.shop.day_k if warmth is None else warmth
        stood = self.waited
        air = self.shop.at(0.0)
        return after_bucket(self.mix, self.batch_kg, air, resin_k, stood, ROUGH) if stood else Start(air, resin_k)

    @cached_property
    def found(self) -> Stages:
        """What the model says."""
        return _stages(self.mix, self.mould, self.start, self.shop, COARSE)

    @cached_property
    def slowest(self) -> Stages:
        """The same at the cool end of the band."""
        mould = replace(self.mould, films=replace(self.mould.films, factor=self.mould.films.factor * (1 + FILM_BAND)))
        return _stages(self.mix.faster(1 / self.level.rate_down), mould, self.start, self.shop, COARSE)

    # --- hours to keep: waits are longer than the model's, what must not be passed is shorter -----------

    @property
    def pour_by(self) -> float | None:
        """Not to be poured or topped up after this: by the fastest that this resin may well be, in the mould and in its bucket."""
        here = _over(self.found.working_s, self.level.rate_up)
        left = None if self.bucket.within_s is None else max(0.0, self.bucket.within_s - self.waited)
        return min((one for one in (here, left) if one is not None), default=None)

    @property
    def watch_until(self) -> float:
        """Its hottest hour is over by then."""
        return self.found.peak_s * self.spread

    @property
    def swirl(self) -> tuple[float, float] | None:
        """Common practice's two hours, as this pour's gel to that of the pour they are taken for; a stick tells when it is near."""
        runs = _over(self.found.working_s, self.spread)
        if self.found.gel_s is None or runs is None:
            return None
        scale = self.found.gel_s / (step_of("swirl gel") * 60)
        return step_of("swirl from") * 3600 * scale, min(step_of("swirl to") * 3600 * scale, runs)

    @property
    def layer_from(self) -> float | None:
        """Heat gone and skin firm; the sheet's time where it is longer."""
        first = next_layer(self.found, self.spread, self.slowest).first_s
        return None if first is None else self._at_least("earliest", first)

    @property
    def layer_to(self) -> float | None:
        """The last hour at which a layer bonds by itself; the sheet's where it is shorter."""
        own, sheet = next_layer(self.found, self.spread).last_s, self.given.maybe("latest")
        if sheet is None or own is None:
            return own if sheet is None else sheet
        return min(own, sheet)

    @property
    def dry(self) -> float | None:
        """Dry to the touch."""
        return self._hard(self.found.dry_s)

    @property
    def leave(self) -> float | None:
        """Stiff enough to leave the mould, and cool enough; the sheet's time where it is longer."""
        stiff, loose = self._hard(self.found.leave_s), self.found.loose_s
        return None if stiff is None or loose is None else self._at_least("demould", max(stiff, loose * self.spread))

    @property
    def rough(self) -> float | None:
        """May be cut or turned; never before it has left the mould."""
        hard, leave = self._hard(self.found.rough_s), self.leave
        return None if hard is None or leave is None else max(hard, leave)

    @property
    def cured(self) -> float | None:
        """The sheet's full cure, longer in a colder shop; never before it may be cut."""
        rough = self.rough
        if rough is None:
            return None
        if self.given.typed("cure"):
            return self._at_least("cure", rough)
        return max(step_of("full cure") * DAY * self.colder, rough)

    @property
    def colder(self) -> float:
        """How much longer than at the sheet's temperature everything takes in this shop; never less than 1."""
        return max(1.0, self.kinetics.speed_up(self.given.si("sheet_temperature")) / self.shop.mean_speed_up(self.kinetics))

    @property
    def hardening(self) -> float:
        """How many times longer than the model says it takes to harden: as seen in this pour, else as in one that was timed."""
        seen, model = self.given.maybe("seen_hard"), self.found.leave_s
        return step_of("hardening factor") if seen is None or model is None else seen / model

    def _hard(self, model_s: float | None) -> float | None:
        return None if model_s is None else model_s * self.hardening

    def _at_least(self, sheet: str, own: float) -> float:
        printed = self.given.maybe(sheet)
        return own if printed is None else max(own, printed * self.colder)

    # --- bubbles ------------------------------------------------------------------------------------------

    @cached_property
    def so_far(self) -> list[tuple[float, float]]:
        """How much a bubble has been let rise, by hour."""
        typed = self.given.maybe("viscosity")
        return bubbles.fluidity(self.found.history, resin.usual_viscosity(resin.kind_of(self.kinetics.k25)) if typed is None else typed)

    @property
    def finest_out(self) -> float:
        """Width of the finest bubble that gets out before the gel, m."""
        return bubbles.smallest_out(self.vessel.depth_m, self.so_far[-1][1], self.mix.density)

    def out_after(self, width_m: float) -> float | None:
        """When bubbles of a width are out, s."""
        return bubbles.time_out(self.vessel.depth_m, width_m, self.mix.density, self.so_far)

    @property
    def bubbles_seen_stay(self) -> bool:
        """Whether bubbles that are wide enough to be seen do not get out."""
        return self.finest_out * 1e3 > stand_in("seen bubble")


def set_right(casting: Casting, seen_s: float) -> Casting:
    """The same casting with the rate at which its skin gels when it was seen to.

    Raises
    ------
    InputError
        ``far-off`` where that is not within five times of what the model says.
    """
    wanted = math.log(seen_s)

    def off(change: float) -> tuple[float, Casting]:
        tried = replace(casting, mix=casting.mix.faster(math.exp(change)))
        model = tried.found.skin_gel_s
        never = -math.inf if tried.found.ran_away else math.inf
        return (never if model is None else math.log(model) - wanted), tried

    here, right = off(0.0)
    model = casting.found.skin_gel_s
    if model is None or abs(here) > math.log(_FAR):
        raise InputError("seen_gel", "far-off", model=after(model or casting.found.peak_s, "nearest"))
    slow: tuple[float, float] | None = None  # (change, off) of the nearest that gels too late, and of the nearest that gels too soon
    fast: tuple[float, float] | None = None
    change = 0.0
    for _ in range(_MOST_TRIES):
        if abs(here) < _CLOSE:
            break
        slow, fast = ((change, here), fast) if here > 0 else (slow, (change, here))
        if slow is None or fast is None:
            change += here
        else:
            between = slow[1] / (slow[1] - fast[1]) if math.isfinite(slow[1] - fast[1]) else 0.5
            change = slow[0] + (fast[0] - slow[0]) * min(max(between, 0.2), 0.8)
        here, right = off(change)
    casting = right
    return replace(casting, level=replace(levels()["cup"], name="the hour at which this pour gelled"))


def given_wall(given: Given) -> Wall:
    """The mould's wall, and its floor."""
    kind = given.choice("wall")
    return Wall(materials()[kind], WALLS[kind])


def _over(seconds: float | None, spread: float) -> float | None:
    return None if seconds is None else seconds / spread
