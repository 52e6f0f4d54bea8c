"""Stacked parts: how high each is cast, how long the dowels are, and what is left between the sockets."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from calc.answers import Answer, Carry, Caution, Change, Figure, Grid, Headline, Line, Working, figure
from calc.casting import stack
from calc.casting.stack import Joint, Part
from calc.casting.thickness import standard
from calc.drawing import Drawing, Sketch
from calc.errors import InputError
from calc.questions import Given
from calc.questions._how_thick.words import exact, fine, length
from calc.words import inside

_NEAR = 1e-6  # m
_SEEN = 5e-4  # m; less is not seen on a tape
_WIDTH = 0.4  # of a drawn part, as a share of the height of the stack
_PIN = 0.3  # of a drawn dowel, as a share of the part's width


@dataclass(frozen=True)
class Pile:
    """The stack, as typed."""

    given: Given

    @cached_property
    def joint(self) -> Joint:
        """Between each two parts."""
        given = self.given
        chosen = given.choice("joint")
        if chosen == "flat":
            return Joint("flat")
        socket, gap = given.si("socket"), given.si("gap")
        if gap >= socket - _NEAR:
            raise InputError("gap", "all-gap", socket=str(fine(given, socket)))
        return Joint("tenon" if chosen == "tenon" else "dowel", socket, gap)

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """From the bottom up."""
        return stack.parts(self.given.many("heights"), self.joint, self.given.si("face"))

    @property
    def stands(self) -> float:
        """Height of the finished stack, m."""
        return sum(part.finished for part in self.parts)

    @property
    def web(self) -> float:
        """What is to be left between sockets, m."""
        return self.given.maybe("web") or 0.0

    @property
    def worst(self) -> int:
        """Place of the part that its sockets leave least of, among those that have any."""
        return min((place for place, part in enumerate(self.parts) if part.sockets), key=lambda place: self.parts[place].left, default=0)

    @property
    def short(self) -> bool:
        """A part is left with less than its web."""
        return any(part.sockets and part.left < self.web - _NEAR for part in self.parts)

    def fill(self, part: Part) -> float:
        """Depth to pour one part to, m, standing as in the stack."""
        return length(self.given, part.cast / (1 - self.given.si("drop")), "up").si

    # --- what to do ----------------------------------------------------------------------------------

    def headline(self) -> Headline:
        """The heights to cast, or what the sockets ask for."""
        given = self.given
        if self.short:
            return self._remedy()
        heights = [length(given, part.cast, "up") for part in self.parts]
        count = len(self.parts) - 1
        dowels = f"{count} dowel{'s' * (count > 1)} of {fine(given, self.joint.dowel)}"
        how = {"dowel": f"{dowels}.", "tenon": f"A tenon of {fine(given, self.joint.tenon)} is in each but the top one.", "flat": "Flat faces, glued."}
        stands = f"Faced, the stack stands {length(given, self.stands)}."
        if self.off:
            more = length(given, abs(self.off))
            change = f"{more} more" if self.off > 0 else f"{more} less"
            stands = f"For {length(given, given.si('total'))} in all, ask again with {change} in the finished heights: like this, {inside(stands)}"
        text = ", ".join(height.text for height in heights)
        return Headline("Cast them, bottom first", text, heights[0].unit, f"{stands} {how[self.joint.kind]}", "caution" if self.off else "go")

    @property
    def off(self) -> float:
        """How much the stack is short of the height wanted, m; 0 when none was given."""
        wanted = self.given.maybe("total")
        return 0.0 if wanted is None or abs(wanted - self.stands) < _SEEN else wanted - self.stands

    def _remedy(self) -> Headline:
        given, part = self.given, self.parts[self.worst]
        needed = length(given, part.finished + self.web - part.left, "up")
        meet = "its sockets would meet" if part.left <= 0 and part.sockets > 1 else f"{fine(given, max(0.0, part.left), 'down')} would be left of it"
        if part.left <= 0 and part.sockets == 1:
            meet = "its socket would go right through"
        why = f"Part {self.worst + 1} is {length(given, part.finished)} high: {meet}."
        deepest = fine(given, stack.deepest_socket(self.parts, self.web), "down")
        if deepest.si >= max(standard("least socket"), self.joint.gap + _NEAR):
            say = f"Drill the sockets {deepest} deep, or make part {self.worst + 1} at least {needed} high. {why}"
            return Headline("Sockets, at most", deepest.text, deepest.unit, say, "stop")
        say = f"Make part {self.worst + 1} at least {needed} high, or glue flat faces there. {why}"
        return Headline(f"Part {self.worst + 1}, at least", needed.text, needed.unit, say, "stop")

    def lines(self) -> Iterator[Line]:
        """Height, dowels, thinnest place, deepest pour."""
        given = self.given
        yield Line.of("The stack stands", length(given, self.stands), f"wanted: {length(given, given.si('total'))}" if self.off else "")
        if self.joint.dowel:
            yield Line.of("Each dowel", fine(given, self.joint.dowel, "down"), f"two sockets of {fine(given, self.joint.socket)}, less the room for glue")
        if self.joint.tenon:
            yield Line.of("Each tenon", fine(given, self.joint.tenon, "down"), f"for a socket of {fine(given, self.joint.socket)}")
        if self.joint.kind != "flat" and self.parts[self.worst].left > 0:
            yield Line.of("Left at the thinnest", fine(given, self.parts[self.worst].left, "down"), f"part {self.worst + 1}, {self._where()}")
        deepest = max(self.parts, key=lambda part: part.cast)
        place = self.parts.index(deepest) + 1
        yield Line.of("Deepest pour", length(given, self.fill(deepest)), f"part {place}, cast standing; more than one layer takes? Pour it in layers")

    def _where(self) -> str:
        return "between its sockets" if self.parts[self.worst].sockets > 1 else "beyond its socket"

    def grid(self) -> Grid:
        """Part by part, the top one first."""
        given = self.given
        rows = []
        for place, part in reversed(list(enumerate(self.parts, 1))):
            left = str(fine(given, part.left, "down")) if part.sockets and part.left > 0 else "nothing" if part.sockets else "all"
            rows.append((str(place), str(length(given, part.finished)), str(length(given, part.cast, "up")), str(length(given, self.fill(part))), left))
        return Grid("Part by part, top first", ("Part", "Finished", "Cast to", "Pour to", "Left at its sockets"), tuple(rows))

    def cautions(self) -> Iterator[Caution]:
        """What decides whether the shoulders close and the stack stands straight."""
        if self.joint.kind != "flat":
            yield Caution("dry-fit", "caution", "Put it together dry first: every shoulder has to close. Give glue and air a way out of the socket.")
        yield Caution("square", "caution", "Face both ends of a part in one chucking, or the stack leans: a small slope at one joint is large at the top.")

    def working(self) -> Iterator[Working]:
        """The sums."""
        given = self.given
        heights = " + ".join(f"{1000 * part.finished:.1f}" for part in self.parts)
        yield Working("Stack", "sum of the finished heights", heights, exact(self.stands))
        bottom = self.parts[0]
        terms = f"{exact(bottom.finished)} + {exact(bottom.tenon)} + 2 × {exact(given.si('face'))}"
        yield Working("Part 1, cast", "finished + tenon + 2 × facing", terms, exact(bottom.cast))
        yield Working("Pour to", "cast / (1 − fall)", f"{exact(bottom.cast)} / (1 − {given.si('drop'):g})", exact(bottom.cast / (1 - given.si("drop"))))
        if self.joint.dowel:
            yield Working("Dowel", "2 × (socket − gap)", f"2 × ({exact(self.joint.socket)} − {exact(self.joint.gap)})", exact(self.joint.dowel))
        if self.joint.kind != "flat":
            part = self.parts[self.worst]
            numbers = f"{exact(part.finished)} − {part.sockets} × {exact(self.joint.socket)}"
            yield Working(f"Left of part {self.worst + 1}", "finished − sockets × depth", numbers, exact(part.left))

    def changes(self) -> Iterator[Change]:
        """Ways out where a socket leaves too little."""
        if not self.short:
            return
        given, part = self.given, self.parts[self.worst]
        deepest = stack.deepest_socket(self.parts, self.web)
        if deepest >= max(standard("least socket"), self.joint.gap + _NEAR):
            yield Change(f"Sockets {fine(given, deepest, 'down')} deep", f"{fine(given, self.web)} or more left everywhere")
        taller = length(given, part.finished + self.web - part.left, "up")
        yield Change(f"Part {self.worst + 1} made {taller} high", f"{fine(given, self.web)} left of it")
        if self.joint.kind == "dowel":
            yield Change("A tenon on the lower part instead of a dowel", "one socket in each part, not two")

    def drawing(self) -> Drawing:
        """The stack from the side; heights to scale, widths not."""
        sketch, given = Sketch(), self.given
        wide, low = _WIDTH * self.stands, 0.0
        joints = []
        for place, part in enumerate(self.parts, 1):
            sketch.polygon([(0, low), (wide, low), (wide, low + part.finished), (0, low + part.finished)], "resin")
            sketch.text((wide * 0.14, low + part.finished / 2), str(place))
            sketch.measure((wide * 1.2, low), (wide * 1.2, low + part.finished), str(length(given, part.finished)))
            low += part.finished
            joints.append(low)
        left, right = wide * (0.5 - _PIN / 2), wide * (0.5 + _PIN / 2)
        for at in joints[:-1] if self.joint.kind != "flat" else []:
            down = self.joint.socket if self.joint.kind == "dowel" else 0.0
            sketch.polygon([(left, at - down), (right, at - down), (right, at + self.joint.socket), (left, at + self.joint.socket)], "void")
            length_down = down - self.joint.gap if down else 0.0
            top = at + self.joint.socket - self.joint.gap
            sketch.polygon([(left, at - length_down), (right, at - length_down), (right, top), (left, top)], "wood")
        sketch.line([(-wide * 0.2, 0), (wide * 2.1, 0)], "mould")
        parts = ", ".join(str(length(given, part.finished)) for part in self.parts)
        between = {"dowel": "A dowel goes into both parts", "tenon": "A tenon on the lower part goes into the next", "flat": "The faces are flat"}
        says = f"The parts from the bottom up: {parts}. {between[self.joint.kind]} at each joint. Heights to scale, widths not."
        return sketch.drawing("The stack from the side", says)

    def values(self) -> dict[str, Figure]:
        """Figures in SI."""
        given, deepest = self.given, max(part.cast for part in self.parts)
        poured = deepest / (1 - given.si("drop"))
        left = self.parts[self.worst].left
        found = {
            "stands": figure(length(given, self.stands), "length", self.stands),
            "tallest": figure(length(given, deepest, "up"), "length", deepest),
            "deepest_pour": figure(length(given, poured, "up"), "length", poured),
        }
        if self.joint.kind != "flat":
            found["left_at_sockets"] = figure(fine(given, max(0.0, left), "down"), "length", left)
        return found


def pile(given: Given) -> Answer:
    """What each part of a stack is cast to, or what its sockets ask for."""
    case = Pile(given)
    return Answer(
        headline=case.headline(),
        lines=tuple(case.lines()),
        changes=tuple(case.changes()),
        cautions=tuple(case.cautions()),
        working=tuple(case.working()),
        sources=("arithmetic", "judgement", "practice"),
        grids=(case.grid(),),
        drawings=(case.drawing(),),
        carries=(Carry("will-it-stand", {"heights": ", ".join(str(length(given, height)) for height in given.many("heights"))}),),
        values=case.values(),
    )
