"""Which grit next? What is to be done: the steps, the speed they may run at, the heat they make."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, cast

from calc.errors import InputError, InputErrors
from calc.questions import Given
from calc.questions._found_for import of
from calc.safety.findings import Of
from calc.sources import value
from calc.turning import caps, grits, mounts, rubbing, speed
from calc.turning.grits import Grit, Scale
from calc.turning.job import Job

Operation = Literal["sand", "power", "paste"]


@dataclass(frozen=True)
class Sanding:
    """One piece, one polish wanted."""

    given: Given

    @property
    def scale(self) -> Scale:
        """Of the papers."""
        return "CAMI" if self.given.words("scale") == "cami" else "P"

    @property
    def start(self) -> str:
        """Off the tool, torn or clean, or sanded."""
        return self.given.choice("start")

    @property
    def goal(self) -> str:
        """The polish wanted."""
        return self.given.choice("goal")

    # --- the steps

    @cached_property
    def now(self) -> Grit | None:
        """The last grit used; None off the tool."""
        if self.start != "sanded":
            return None
        return grits.grit(self.scale, int(self.given.choice("grit_p" if self.scale == "P" else "grit_cami").removeprefix("p")))

    @cached_property
    def last_m(self) -> float:
        """Grain that the goal asks for last, m."""
        return grits.grit("P", int(value("sanding", self.goal))).size_m

    @cached_property
    def papers(self) -> tuple[Grit, ...]:
        """What there is: the maker's own, or what most shops have of his scale; each once, coarsest first."""
        own: list[Grit] = []
        wrong: list[InputError] = []
        scales: tuple[tuple[str, Scale], ...] = (("have_p", "P"), ("have_cami", "CAMI"))
        for name, scale in scales:
            if not self.given.typed(name):
                continue
            for number in self.given.many(name):
                try:
                    own.append(grits.grit(scale, round(number)))
                except LookupError:
                    known = ", ".join(str(g.number) for g in grits.grits(scale) if g.in_shops)
                    wrong.append(InputError(name, "no-such-grit", number=f"{number:g}", known=known))
        if wrong:
            raise InputErrors(wrong[:1])
        return tuple(sorted(own or self.shop, reverse=True))

    @property
    def own(self) -> bool:
        """Whether the maker told what there is."""
        return self.given.typed("have_p") or self.given.typed("have_cami")

    @property
    def shop(self) -> tuple[Grit, ...]:
        """What most shops have of the scale."""
        return tuple(paper for paper in grits.grits(self.scale) if paper.in_shops)

    @cached_property
    def steps(self) -> tuple[Grit, ...]:
        """The papers to take, in order; where nobody told what there is, no step is longer than it need be."""
        if self.now is not None:
            found = grits.path(self.now.size_m, self.last_m, self.papers)
            return found if self.own else grits.bridged(self.now.size_m, found, grits.grits(self.scale))
        fine = [paper for paper in self.papers if paper.size_m <= self.first_m * (1 + 1e-9)]
        if not fine:
            return self.papers[-1:]
        first = fine[0]
        if first.size_m <= self.last_m:
            return (first,)
        then = grits.path(first.size_m, self.last_m, self.papers)
        return (first, *(then if self.own else grits.bridged(first.size_m, then, grits.grits(self.scale))))

    @property
    def first_m(self) -> float:
        """Grain of the paper to take first off the tool, m."""
        return grits.grit("P", int(value("sanding", self.start))).size_m

    @property
    def grains(self) -> tuple[float | None, ...]:
        """Grain before each step, m; None before the first one off the tool."""
        before = None if self.now is None else self.now.size_m
        return (before, *(paper.size_m for paper in self.steps))

    @property
    def reached_m(self) -> float:
        """Grain after the last step, m."""
        return self.steps[-1].size_m if self.steps else (self.now.size_m if self.now else math.inf)

    @property
    def falls_short(self) -> bool:
        """Whether the papers end before the goal."""
        return self.reached_m > self.last_m * (1 + 1e-9)

    def jump(self, place: int) -> grits.Step:
        """How the step goes."""
        before = self.grains[place]
        return grits.step(self.first_m if before is None else before, self.steps[place].size_m)

    @property
    def between(self) -> Grit | None:
        """What would be wanted before the first step that is too far: of what shops have, the finest within reach."""
        for place, paper in enumerate(self.steps):
            before = self.grains[place]
            if self.jump(place) == "too-far":
                if before is None:
                    return next(grit for grit in self.shop if grit.size_m <= self.first_m * (1 + 1e-9))
                fits = grits.path(before, paper.size_m, [g for g in grits.grits(self.scale) if g.in_shops or g.size_m > self.shop[0].size_m])
                return fits[0] if fits else None
        return None

    @property
    def done(self) -> bool:
        """Whether neither sanding nor polishing is left."""
        return not self.steps and self.goal in ("coat", "satin")

    @property
    def stuck(self) -> bool:
        """Whether the very next step is too far."""
        return bool(self.steps) and self.jump(0) == "too-far"

    # --- speed

    @property
    def operation(self) -> Operation:
        """What is done next, as How fast? calls it."""
        if not self.steps:
            return "paste"
        return "power" if self.given.choice("way") == "power" else "sand"

    @property
    def diameter(self) -> float:
        """m."""
        return self.given.si("diameter")

    @property
    def condition(self) -> caps.Condition:
        """How the piece looks; a broken one is not asked about."""
        return cast(caps.Condition, self.given.choice("condition"))

    @property
    def piece_of(self) -> Of:
        """What the speed from 'How fast?' was found for."""
        return of(self.given, "piece_for", self.diameter)

    @property
    def asked(self) -> bool:
        """'How fast?' was asked of this piece: balance and mount are in its speed."""
        return self.given.typed("piece") and self.piece_of is Of.THIS

    def limits_of(self, operation: Operation) -> dict[str, float]:
        """rpm by limit, as How fast? has them for a piece in balance: rim, the mount's share of it where it is not all, heat; and what How fast? gave."""
        still = Job(self.diameter, operation, self.condition, 1.0, 0.0, 1.0, 1.0, 1.0, self.mount_share)
        found: dict[str, float] = {limit.id: limit.speed_rpm for limit in speed.job_limits(still) if math.isfinite(limit.speed_rpm)}
        piece = self.given.maybe("piece")
        return found if piece is None or self.piece_of is Of.ANOTHER else found | {"piece": piece}

    @property
    def mount_share(self) -> float:
        """Share of the rim's cap that the mount is given, with nothing at the far end: the tool is off, and so mostly is the tailstock."""
        return mounts.allowed_share(cast(mounts.Hold, self.given.choice("hold")), "none")

    def ceiling(self, operation: Operation) -> float:
        """rpm: the lowest of them."""
        return min(self.limits_of(operation).values())

    @property
    def wheel_ceiling(self) -> float:
        """rpm of the buffing wheel."""
        return min(limit.speed_rpm for limit in speed.wheel_limits(self.given.si("wheel"), self.given.maybe("wheel_marked")))

    # --- heat

    @property
    def friction(self) -> float:
        """Of paper on resin."""
        return value("sanding", f"friction {self.given.choice('wet')}")

    @property
    def press(self) -> float:
        """N."""
        return value("sanding", f"press {self.given.choice('press')}")

    @property
    def warmest(self) -> float:
        """How warm the face may get, K."""
        return rubbing.warmest_face(self.given.si("soft"))

    @property
    def room_for_heat(self) -> float:
        """K between the face as it is and as warm as it may get."""
        return self.warmest - self.given.si("face")

    @property
    def area(self) -> float:
        """m², under the hand in a turn at the rim."""
        return rubbing.swept_area(self.diameter, value("sanding", "width") / 1000)

    @property
    def power(self) -> float:
        """W at the speed that is run: the maker's own, or the ceiling."""
        own = self.given.maybe("rpm")
        rpm = self.ceiling(self.operation) if own is None else own
        return rubbing.power(self.press, self.friction, caps.rim_speed(self.diameter, rpm))

    @cached_property
    def seconds(self) -> float:
        """In one place before the face is as warm as it may get; never more than 'seconds, not minutes' means."""
        return min(rubbing.seconds_for(self.room_for_heat, self.power, self.area), value("sanding", "longest"))

    @property
    def too_warm(self) -> bool:
        """Whether the face is too warm, or the resin too soft, to be rubbed at all."""
        return self.room_for_heat <= 0

    @property
    def over_speed(self) -> bool:
        """Whether the maker runs faster than the ceiling."""
        own = self.given.maybe("rpm")
        return own is not None and own > self.ceiling(self.operation) * (1 + 1e-9)
