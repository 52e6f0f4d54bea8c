"""A disc held to a polishing wheel on the lathe: whether the wheel comes to the middle of its face."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from calc.answers import Answer, Band, Carry, Caution, Change, Figure, Headline, Limit, Line, Tone, Working, figure
from calc.drawing import Drawing, Sketch
from calc.quantity.writing import Style
from calc.questions import Given
from calc.questions._does_it_fit.turn import guess, length
from calc.questions._does_it_fit.view import box
from calc.turning import fit
from calc.turning.fit import Reach, Size, Wheel, standard
from calc.words import both, inside

_ROUND = 1e-9  # m


@dataclass(frozen=True)
class Polish:
    """The disc, the wheel and what stands round it, as typed."""

    given: Given

    @property
    def size(self) -> Size:
        """What stands in for what was not measured."""
        return fit.lathe_sizes()[self.given.choice("lathe")]

    @property
    def across(self) -> float:
        """The disc, m."""
        return self.given.si("disc")

    @cached_property
    def wheel(self) -> Wheel:
        """The wheel and the lathe, m."""
        given, size = self.given, self.size
        tailed = given.choice("end") == "tail"
        return Wheel(
            radius=given.si("wheel") / 2,
            height=(given.maybe("swing") or size.swing) / 2,
            bed_half=(given.maybe("bed_wide") or size.bed) / 2,
            to_head=given.si("stands"),
            head_half=given.maybe("housing") or size.housing,
            to_tail=given.si("to_tail") if tailed else None,
            tail_half=standard("tail half") if tailed else 0.0,
        )

    @cached_property
    def reach(self) -> Reach:
        """What it reaches."""
        return fit.reach(self.wheel, self.across, standard("wheel gap"))

    @property
    def whole(self) -> bool:
        """It comes to the middle."""
        return self.reach.unreached <= _ROUND

    @property
    def between(self) -> bool:
        """The disc does not even go between headstock and tailstock."""
        return self.reach.head is not None and self.reach.tail is not None and self.reach.head + self.reach.tail < self.across

    @property
    def down_blocks(self) -> bool:
        """The bed is in the way."""
        return self.reach.down is not None and self.reach.down < self.across / 2 - _ROUND

    @property
    def head_blocks(self) -> bool:
        """The headstock is in the way."""
        return self.reach.head is not None and self.reach.head < self.across / 2 - _ROUND

    @property
    def tail_blocks(self) -> bool:
        """The tailstock is in the way."""
        return self.reach.tail is not None and self.reach.tail < self.across / 2 - _ROUND

    @property
    def spare(self) -> float | None:
        """How much further the disc could hang over, m; None where nothing stands in the way."""
        found = [limit for limit in (self.reach.down, self.reach.head, self.reach.tail) if limit is not None]
        return min(found) - self.across / 2 if found else None

    def past(self, half: float) -> float:
        """The wheel that passes in front of something that wide, m across."""
        return 2 * (half + standard("wheel gap"))

    @property
    def guessed(self) -> tuple[str, ...]:
        """What it rests on that nobody measured."""
        given, size = self.given, self.size
        told = (("swing", f"swing {guess(given, size.swing)}"), ("bed_wide", f"bed {guess(given, size.bed)} wide"),
                ("housing", f"headstock's front {guess(given, size.housing)} from the axis"))  # fmt: skip
        return tuple(words for name, words in told if given.maybe(name) is None)

    def remedies(self) -> Iterator[tuple[str, Wheel]]:
        """What takes a thing out of the way, and the wheel as it then stands; the nearest at hand first."""
        given, gap, wheel = self.given, standard("wheel gap"), self.wheel
        if self.head_blocks:
            out = length(given, fit.least_stand_out(self.across, gap), "up")
            yield f"Stand the wheel {out} out from the headstock", replace(wheel, to_head=out.si)
        if self.tail_blocks:
            yield "Take the tailstock away, if the mandrel may run free", replace(wheel, to_tail=None)
        sold = Style("mm", step=10) if given.system == "metric" else Style("in", step=1 / 2, fraction=True)
        larger = given.write(self.past(wheel.bed_half), ("length", sold), "up")
        if self.down_blocks and larger.si / 2 <= wheel.height - gap:
            yield f"Take a wheel of {larger}", replace(wheel, radius=larger.si / 2)

    def left(self, wheel: Wheel) -> str:
        """What that wheel leaves, in words."""
        unreached = fit.reach(wheel, self.across, standard("wheel gap")).unreached
        return f"leaves the middle, {length(self.given, 2 * unreached, 'up')} across" if unreached > _ROUND else "reaches the middle"

    @property
    def all_of_them(self) -> Wheel:
        """The wheel after every remedy."""
        after = self.wheel
        for _, wheel in self.remedies():
            changed = {name: value for name, value in vars(wheel).items() if value != getattr(self.wheel, name)}
            after = replace(after, **changed)
        return after

    def headline(self) -> Headline:
        """The remedy, or what is to spare."""
        given = self.given
        if self.whole:
            tone: Tone = "caution" if self.guessed else "go"
            if self.spare is None:
                return Headline("The wheel reaches", "The middle", "", "The disc passes in front of bed and headstock.", tone)
            shown = length(given, self.spare, "down")
            say = f"The wheel comes to the middle of the face, with {length(given, standard('wheel gap'))} left for your fingers."
            return Headline("It reaches the middle, to spare", shown.text, shown.unit, say, tone)
        names = (("bed", self.down_blocks or self.between), ("headstock", self.head_blocks), ("tailstock", self.tail_blocks))
        blocked = [name for name, blocks in names if blocks]
        way = f"the {both(blocked)} {'are' if len(blocked) > 1 else 'is'} in the way"
        as_it_is = f"As it is the wheel {self.left(self.wheel)}: {way}."
        if self.reach.unreached >= self.across / 2 - _ROUND:
            as_it_is = f"As it is the disc cannot be held to it: {way}."
        found = [words for words, _ in self.remedies()]
        if not found or fit.reach(self.all_of_them, self.across, standard("wheel gap")).unreached > _ROUND:
            say = f"By hand on the lathe, paste comes to the middle; no wheel on this lathe does. {as_it_is}"
            return Headline("Before you glue it up", "Polish it on its mount", "", say, "stop")
        both_do = f"And {inside(' and '.join(found[1:]))}. " if len(found) > 1 else ""
        return Headline("Before you glue it up", found[0], "", f"{both_do}Then it reaches the middle. {as_it_is}", "stop")

    def lines(self) -> Iterator[Line]:
        """What is left over, and what is asked for."""
        given = self.given
        if not self.whole:
            yield Line.of("Not reached in the middle", length(given, 2 * self.reach.unreached, "up"), "across")
        limits = [limit for limit in (self.reach.down, self.reach.head, self.reach.tail) if limit is not None]
        if limits:
            yield Line.of("Largest disc reached whole", length(given, 2 * min(limits), "down"), "with this wheel where it stands")

    def ladder(self) -> Iterator[Limit]:
        """How far the disc may hang over each way, and how far it does."""
        given = self.given
        names = (
            ("bed", "Down to the bed", self.reach.down),
            ("head", "Towards the headstock", self.reach.head),
            ("tail", "Towards the tailstock", self.reach.tail),
        )
        found = [(id, name, limit) for id, name, limit in names if limit is not None]
        for id, name, limit in found:
            shown = length(given, limit, "down")
            yield Limit(id, name, shown.text, shown.unit, "from the wheel's middle, your fingers taken off", limit == min(each for _, _, each in found))
        if found:
            shown = length(given, self.across / 2, "up")
            yield Limit("half", "Half the disc", shown.text, shown.unit, "hangs over when the wheel is at its middle")

    def changes(self) -> Iterator[Change]:
        """What else would do."""
        if self.whole:
            return
        for words, wheel in self.remedies():
            yield Change(words, self.left(wheel))
        yield Change("Polish it by hand with paste, on its mount", "all of the face that the mount does not hide")

    def cautions(self) -> Iterator[Caution]:
        """Where a wheel takes hold."""
        text = "Banjo and rest off the bed. Hold the disc to the lower half of the wheel's front, its edges pointing down, never up."
        yield Caution("banjo", "caution", text)
        yield Caution("X8", "caution", "A mandrel on a thread unscrews in reverse and under a hard brake: lock it, or hold its end with the tailstock.")
        if self.whole:
            yield Caution("low", "go", "Worked out with the wheel touching level with its axis. Lower on the wheel the disc comes nearer to the bed.")

    def working(self) -> Iterator[Working]:
        """The sums, in mm."""
        wheel, gap = self.wheel, 1000 * standard("wheel gap")
        radius = 1000 * wheel.radius
        parts = [
            ("Bed", 1000 * wheel.bed_half, 1000 * wheel.height, self.reach.down),
            ("Headstock", 1000 * wheel.head_half, 1000 * wheel.to_head, self.reach.head),
        ]
        if wheel.to_tail is not None:
            parts.append(("Tailstock", 1000 * wheel.tail_half, 1000 * wheel.to_tail, self.reach.tail))
        for name, wide, far, limit in parts:
            numbers = f"{radius:.1f} against {wide:.1f} + {gap:.0f}; {far:.1f} − {gap:.0f}"
            result = "passes in front" if limit is None else f"{1000 * limit:.1f} mm"
            yield Working(name, "passes if r ≥ half its width + gap, else distance − gap", numbers, result)
        result = f"{1000 * self.reach.unreached:.1f} mm radius"
        yield Working("Not reached", "√(below² + beside²), each half the disc less the limit", f"half the disc {500 * self.across:.1f} mm", result)

    def drawing(self) -> Drawing:
        """The disc in front of the wheel, seen by the maker; lengths in m from the wheel's middle."""
        given, wheel, half = self.given, self.wheel, self.across / 2
        head, low = -wheel.to_head, -wheel.height
        tall = max(half, wheel.height)
        left, right = min(head - 0.5 * tall, -half), max(half, (wheel.to_tail or 0.0) + 0.3 * tall)
        sketch = Sketch().circle((0, 0), half, "resin")
        if not self.whole:
            sketch.circle((0, 0), self.reach.unreached, "void")
        sketch.polygon(box(left, right, low - 0.16 * tall, low), "metal").polygon(box(left, head, low, 0.5 * wheel.height), "metal")
        sketch.polygon(box(head, wheel.to_tail or 0.02, -0.008, 0.008), "metal").polygon(box(-0.015, 0.015, -wheel.radius, wheel.radius), "wood")
        if wheel.to_tail is not None:
            sketch.polygon(box(wheel.to_tail, right, low, 0.35 * wheel.height), "metal")
        sketch.text((left, 0.5 * wheel.height + 0.05 * tall), "headstock", "edge", "start").text((left + 0.1 * tall, low - 0.12 * tall), "bed", "edge", "start")
        sketch.text((0, half + 0.05 * tall), f"disc {length(given, self.across)}")
        says = f"From where you stand: the disc, {length(given, self.across)} across, its middle at a wheel of {length(given, 2 * wheel.radius)} seen edge on, "
        says += f"which stands {length(given, wheel.to_head)} out from the headstock and {length(given, wheel.height)} over the bed."
        if not self.whole:
            says += f" The dashed round in the middle, {length(given, 2 * self.reach.unreached, 'up')} across, is not reached."
        return sketch.drawing("At the wheel, to scale", says, 260.0)

    def values(self) -> dict[str, Figure]:
        """Figures in SI."""
        shown = length(self.given, 2 * self.reach.unreached, "up")
        return {"unreached": figure(shown, "length", 2 * self.reach.unreached)}


def polishing(given: Given) -> Answer:
    """Whether a wheel reaches the middle of a disc's face."""
    case = Polish(given)
    sure = "As sure as your tape; a soft wheel spreads and wears."
    if case.guessed:
        sure = f"Guessed for such a lathe: {both(case.guessed)}. Measure yours; what you type overrules."
    carry = Carry("how-fast", {"operation": "buff", "wheel": str(length(given, given.si("wheel"))), "lathe": given.choice("lathe")})
    return Answer(
        headline=case.headline(),
        lines=tuple(case.lines()),
        limits=tuple(case.ladder()),
        changes=tuple(case.changes()),
        band=Band(sure),
        cautions=tuple(case.cautions()),
        working=tuple(case.working()),
        sources=("arithmetic", "practice", "judgement"),
        drawings=(case.drawing(),),
        carries=(carry,),
        values=case.values(),
    )
