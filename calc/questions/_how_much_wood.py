"""How much wood is in it? The parts of the answer for one piece of wood."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from calc.answers import Answer, Band, Carry, Caution, Change, Headline, Limit, Line, Tone, Working, figure
from calc.casting import moisture, wood
from calc.casting.species import Species, all_species
from calc.casting.wood import Shape, standard
from calc.errors import InputError
from calc.quantity import Rounding, Shown, Style, from_si, to_si
from calc.questions import Given

_DRAWN = ("outline", "live")
_WAY = {
    "dip": "by dipping",
    "level": "by level rise",
    "outline": "by outline",
    "live": "by its faces",
    "weigh": "by weight",
}
_FINE_DENSITY = ("density", Style("g/mL", step=0.001))


@dataclass(frozen=True)
class Density:
    """Density of the wood, kg/m3; its standard uncertainty as a fraction; where it comes from, in words and as source keys."""

    value: float
    spread: float
    basis: str
    sources: tuple[str, ...]


@dataclass(frozen=True)
class Wood:
    """The answer's parts for one piece of wood."""

    given: Given

    # --- how big ---------------------------------------------------------------------------------

    @property
    def way(self) -> str:
        """How it was measured."""
        return self.given.choice("way")

    @property
    def form(self) -> str:
        """Plain, burl, spalted or stabilised."""
        return self.given.choice("form")

    @cached_property
    def species(self) -> Species | None:
        """The row of the table, where the maker chose one."""
        return all_species().get(self.given.choice("species"))

    @cached_property
    def faces(self) -> tuple[float, float, float]:
        """Areas from the bottom up, m2: the outline three times, or the faces of a live edge."""
        if self.way == "outline":
            return (self.area("widths"),) * 3
        bottom, top = self.area("bottom"), self.area("top")
        middle = self.area("middle") if self.given.typed("middle") else (bottom + top) / 2
        return bottom, middle, top

    def area(self, name: str) -> float:
        """Area of one face by its widths, m2."""
        found = wood.area_by_widths(self.given.si("length"), self.given.many(name))
        if found <= 0:
            raise InputError(name, "no-width")
        return found

    @cached_property
    def drawn(self) -> Shape:
        """The outline as a body, open voids and all."""
        return Shape(*self.faces, self.given.si("thickness"))

    @property
    def voids(self) -> float:
        """Open voids that the way of measuring counted as wood, m3."""
        return self.given.maybe("voids" if self.way in _DRAWN else "wrapped_voids") or 0.0

    @property
    def gross(self) -> float:
        """Volume as measured, m3; counted voids are still in it."""
        if self.way == "dip":
            return wood.volume_by_dip(self.given.si("rise"))
        if self.way == "level":
            return self.tub * self.given.si("level")
        return self.drawn.volume

    @property
    def tub(self) -> float:
        """Area of the water in the tub, m2."""
        if self.given.choice("tub") == "round":
            return math.pi * self.given.si("tub_across") ** 2 / 4
        return self.given.si("tub_length") * self.given.si("tub_width")

    @cached_property
    def volume(self) -> float:
        """The whole wood, open voids left out, m3."""
        if self.way == "weigh":
            return self.given.si("mass") / self.needed_density.value
        if self.voids >= self.gross:
            name = "voids" if self.way in _DRAWN else "wrapped_voids"
            raise InputError(name, "voids-bigger", found=str(self.litres(self.gross)))
        return self.gross - self.voids

    @property
    def spread(self) -> float:
        """Standard uncertainty of the volume, as a fraction."""
        if self.way == "weigh":
            return self.needed_density.spread
        if self.way == "level":
            reading = math.sqrt(2 / 3) * standard("tape") / 1000 / self.given.si("level")
            return max(standard("spread level"), reading)
        if self.way == "live" and not self.given.typed("middle"):
            return standard("spread live-two")
        return standard(f"spread {self.way}")

    # --- how heavy ---------------------------------------------------------------------------------

    @cached_property
    def weighed(self) -> float | None:
        """What the maker's scale said, kg."""
        return self.given.maybe("mass" if self.way == "weigh" else "weight")

    @cached_property
    def mass(self) -> float | None:
        """The whole wood, kg: weighed, or from its kind."""
        if self.weighed is not None:
            return self.weighed
        return None if self.tabled is None else self.tabled.value * self.volume

    @cached_property
    def tabled(self) -> Density | None:
        """Density without weighing this piece: the maker's own, or its kind's at that moisture."""
        own = self.given.maybe("density")
        if own is not None:
            return Density(own, standard("spread measured"), "as you measured it", ("maker",))
        if self.species is None or self.form == "stabilised":
            return None
        self.check_moisture(self.species)
        spread = self.species.spread or standard("spread weigh")
        if self.form != "plain":
            spread = max(spread, standard("spread figured"))
        share = self.given.si("moisture")
        basis = f"{self.species.name}, at {self.given.write(share, 'share')} moisture"
        return Density(wood.density_of_species(self.species, share), spread, basis, (*self.species.sources, "wood-handbook-4"))

    def check_moisture(self, species: Species) -> None:
        """More water than the wood has room for is a slip."""
        fullest = wood.fullest(species.basic)
        if self.given.si("moisture") > fullest:
            raise InputError("moisture", "too-wet", found=str(self.given.write(fullest, ("share", Style("%", step=1)), "down")))

    @property
    def needed_density(self) -> Density:
        """The same, where the volume hangs on it."""
        if self.tabled is None:
            name, code = ("density", "stabilised") if self.form == "stabilised" else ("species", "no-density")
            raise InputError(name, code)
        return self.tabled

    @cached_property
    def density(self) -> float | None:
        """Of this piece, kg/m3; a weighed and measured one overrules the table."""
        if self.way == "weigh" or self.weighed is None:
            return None if self.tabled is None else self.tabled.value
        found = self.weighed / self.volume
        shown = str(self.given.write(found, "density"))
        if found < self.bound("lightest"):
            raise InputError("weight", "too-light", found=shown)
        if found > self.bound("heaviest"):
            raise InputError("weight", "too-heavy", found=shown)
        return found

    @staticmethod
    def bound(name: str) -> float:
        """A density of the table of figures, kg/m3."""
        return to_si(standard(name), "density", "g/mL")

    @property
    def odd(self) -> bool:
        """Weighed and measured, and far from what such wood weighs."""
        if self.way == "weigh" or self.weighed is None or self.density is None:
            return False
        if self.tabled is None:
            return self.form != "stabilised" and not self.bound("light") <= self.density <= self.bound("heavy")
        return abs(self.density / self.tabled.value - 1) > standard("odd")

    # --- in the resin ------------------------------------------------------------------------------

    @cached_property
    def shape(self) -> Shape | None:
        """How the wood is spread over its height; None where the height is not known."""
        if self.way in _DRAWN:
            return self.drawn
        height = self.given.maybe("height")
        if height is None:
            return None
        return Shape(*(self.volume / height,) * 3, height)

    @property
    def raised(self) -> float:
        """Height of its underside over the floor, m."""
        return self.given.maybe("raised") or 0.0

    @cached_property
    def share(self) -> float:
        """Share of the wood below the fill line."""
        fill = self.given.maybe("fill")
        if fill is None:
            return 1.0
        if fill <= self.raised:
            raise InputError("fill", "under-the-wood", found=str(self.length(self.raised)))
        if self.shape is None:
            raise InputError("height", "no-height")
        return self.shape.share_below(fill - self.raised)

    @property
    def below(self) -> float:
        """Wood below the fill line, m3: what comes off the mould."""
        return self.share * self.volume

    @property
    def resin(self) -> float:
        """Density of the liquid resin, kg/m3."""
        return self.given.si("resin")

    @cached_property
    def lift(self) -> float | None:
        """Net lift, kg; below 0 where it sinks, None where it is not known."""
        return None if self.mass is None else wood.net_lift(self.below, self.mass, self.resin)

    @cached_property
    def most_lift(self) -> float | None:
        """The lift that is passed one time in twenty, kg."""
        if self.lift is None or self.mass is None:
            return None
        if self.weighed is not None:
            u = self.resin * self.below * self.spread
        else:
            assert self.tabled is not None  # the mass came from it
            u = math.hypot(self.lift * self.spread, self.mass * self.tabled.spread)
        return self.lift + standard("one side") * u

    @cached_property
    def hold(self) -> float | None:
        """Weight that holds it down, kg: twice the net lift, and never less than the most it may be; 0 where it sinks."""
        if self.lift is None or self.most_lift is None:
            return None
        return max(0.0, standard("hold") * self.lift, self.most_lift)

    def lifts_at(self, sure: bool) -> float | None:
        """Depth over the floor from which it lifts, m; ``sure`` reckons the wood as light as it may be."""
        if self.shape is None or self.mass is None:
            return None
        spread = self.spread if self.weighed is not None or self.tabled is None else self.tabled.spread
        light = 1 - standard("one side") * spread if sure else 1.0
        depth = wood.lift_depth(self.shape, self.volume, max(0.0, light) * self.mass, self.resin)
        return None if depth is None else depth + self.raised

    @cached_property
    def soak(self) -> float:
        """Resin that soaks in, m3: a share of the wood, and never more than it has air."""
        if self.given.choice("sealed") == "yes":
            return 0.0
        own = self.given.maybe("soak")
        wanted = self.below * (standard(f"soak {self.form}") if own is None else own)
        return wanted if self.room is None else min(wanted, self.room)

    @property
    def room(self) -> float | None:
        """Air in the wood below the line, m3; None where it cannot be told."""
        if self.density is None or self.form == "stabilised":
            return None
        return wood.air_share(self.density, self.given.si("moisture")) * self.below

    @cached_property
    def coat(self) -> float | None:
        """One seal coat, kg."""
        if self.shape is None or self.given.choice("sealed") == "yes":
            return None
        return wood.surface(self.volume, self.shape.height) * standard("seal coat") / 1000

    # --- written -------------------------------------------------------------------------------------

    def litres(self, volume: float, rounding: Rounding = "nearest") -> Shown:
        """A volume in mL or US fl oz."""
        return self.given.write(volume, "volume", rounding)

    def rough(self, volume: float) -> Shown:
        """A volume that is only roughly known."""
        return self.given.write(volume, ("volume", Style(self.given.pick("mL", "US fl oz"), figures=2)), "up")

    def length(self, metres: float, rounding: Rounding = "nearest") -> Shown:
        """A depth."""
        return self.given.write(metres, "length", rounding)

    def weight(self, kg: float, rounding: Rounding = "up") -> Shown:
        """A weight as a maker finds one in the shop."""
        if self.given.system == "metric":
            style = Style("g", step=10) if kg < 1 else Style("kg", step=0.1)
        else:
            style = Style("oz", step=1) if kg < to_si(1, "mass", "lb") else Style("lb", step=0.1)
        return self.given.write(kg, ("mass", style), rounding)

    def fine(self, kg: float) -> Shown:
        """A mass for the working."""
        return self.given.write(kg, ("mass", Style(self.given.pick("g", "oz"), figures=4)))

    def rho(self, density: float) -> Shown:
        """A density for the working."""
        return self.given.write(density, _FINE_DENSITY)

    def within(self, share: float) -> Shown:
        """A spread in percent."""
        return self.given.write(share, "share", "up")

    # --- the answer ------------------------------------------------------------------------------------

    def answer(self) -> Answer:
        """All parts; raises the question's own errors."""
        low = self.below * (1 - standard("one side") * self.spread)
        lifts, density = self.lifts_at(sure=True), self.density
        return Answer(
            headline=self.headline(),
            lines=self.lines(max(0.0, low)),
            limits=self.ladder(),
            changes=self.changes(),
            band=self.band(),
            cautions=self.cautions(),
            working=self.working(),
            sources=self.sources(),
            carries=(self.carry(),),
            values={
                "volume": figure(self.litres(self.below, "down"), "volume", self.below),
                "volume_u": figure(self.litres(self.below * self.spread, "up"), "volume", self.below * self.spread),
                "whole": figure(self.litres(self.volume, "down"), "volume", self.volume),
                "density": figure(None if density is None else self.given.write(density, "density"), "density", density),
                "lift": figure(None if self.lift is None else self.weight(self.lift), "mass", self.lift),
                "hold": figure(None if self.hold is None else self.weight(self.hold), "mass", self.hold),
                "lifts_at": figure(None if lifts is None else self.length(lifts, "down"), "length", lifts),
                "soak": figure(self.litres(self.soak), "volume", self.soak),
                "seal_coat": figure(None if self.coat is None else self.weight(self.coat), "mass", self.coat),
            },
        )

    def carry(self) -> Carry:
        """The wood below the fill line and how far it may be off, for the mould that it stands in."""
        off = self.litres(standard("both sides") * self.spread * self.below, "up")
        told = {"wood_by": "volume", "wood": str(self.litres(self.below)), "wood_off": str(off), "kind": self.form}
        return Carry("is-it-enough", told | {"sealed": self.given.choice("sealed")})

    def headline(self) -> Headline:
        """The volume to take off the mould, then what holds the wood down."""
        shown = self.litres(self.below, "down")
        label = "Wood below the fill line" if self.share < 1 else "The wood takes up"
        return Headline(label, shown.text, shown.unit, f"Take it off the mould's volume. {self.hold_says()}", self.tone())

    def hold_says(self) -> str:
        """What to do against lift, in a sentence."""
        if self.hold is None or self.lift is None:
            return "Weigh the wood too: whether it floats is not known."
        if self.hold <= 0:
            return "It lies on the floor by itself."
        if self.lift <= 0:
            return f"It may just float: hold it down with {self.weight(self.hold)}."
        return f"It floats: hold it down with {self.weight(self.hold)}."

    def tone(self) -> Tone:
        """A caution where the figure rests on a guess, or the wood is wet."""
        guessed = self.way == "weigh" and self.spread > standard("spread measured")
        return "caution" if guessed or self.hold is None or self.uncounted or self.wet or self.odd else "go"

    @property
    def uncounted(self) -> bool:
        """Voids that count as wood, and nobody said how big they are."""
        if self.way in _DRAWN:
            return self.given.maybe("voids") is None
        return self.way in ("dip", "level") and self.given.choice("wrapped") == "yes" and self.given.maybe("wrapped_voids") is None

    @property
    def wet(self) -> bool:
        """Wetter than is cast without a second thought."""
        return self.given.si("moisture") > moisture.percent("caution")

    def lines(self, low: float) -> tuple[Line, ...]:
        """Figures that are acted on, beside the first."""
        out = []
        if self.hold and self.lift is not None:
            twice = standard("hold") * self.lift >= self.hold * (1 - 1e-9)
            note = f"twice its lift of {self.weight(self.lift)}; common practice" if twice else "the most it may lift, one time in twenty"
            out.append(Line.of("Hold it down with", self.weight(self.hold), note))
        lifts, middle = self.lifts_at(sure=True), self.lifts_at(sure=False)
        if lifts is not None and self.hold:
            note = "of resin over the floor, if the wood is as light as it may be"
            if middle is not None and self.length(middle, "down") != self.length(lifts, "down"):
                note += f"; {self.length(middle, 'down')} as reckoned"
            out.append(Line.of("It may lift from", self.length(lifts, "down"), note))
        out.append(Line.of("To be surer, take off only", self.litres(low, "down"), "19 times in 20 the wood is more than that"))
        if self.soak > 0:
            shown, twice_that = self.rough(self.soak), self.rough(2 * self.soak)
            out.append(Line.of("Resin that soaks in", shown, f"add it back; it may be nothing, or {twice_that}"))
        if self.coat is not None:
            coat = self.given.write(self.coat, ("mass", Style("g", figures=2) if self.given.system == "metric" else Style("oz", step=0.1)), "up")
            spread = self.given.pick("100 to 250 g on a square metre", "0.33 to 0.82 oz on a square foot")
            out.append(Line.of("One seal coat", coat, f"mixed, and apart from the pour; {spread}, common practice"))
        if self.given.system == "imperial":
            out.append(Line.of("The same in cubic inches", self.given.write(self.below, ("volume", Style("in³", figures=3)), "down")))
        if self.density is not None:
            measured = self.way != "weigh" and self.weighed is not None
            basis = "weighed and measured" if measured or self.tabled is None else self.tabled.basis
            out.append(Line.of("Density of the wood", self.given.write(self.density, "density"), basis))
        return tuple(out)

    def ladder(self) -> tuple[Limit, ...]:
        """Depths over the floor, where the height is known: from where it lifts, and where the resin will stand."""
        lifts = self.lifts_at(sure=True)
        if self.shape is None or lifts is None:
            return ()
        fill = self.given.maybe("fill")
        depth = self.raised + self.shape.height if fill is None else fill
        reached = lifts < depth
        line, stands = self.length(lifts, "down"), self.length(depth)
        why = "below it its weight keeps it down" if reached else "the resin never stands that deep"
        name = "Resin covers it from" if fill is None else "The resin will stand"
        return (
            Limit("lift", "It may lift from", line.text, line.unit, why, reached),
            Limit("fill", name, stands.text, stands.unit, "over the floor of the mould"),
        )

    def changes(self) -> tuple[Change, ...]:
        """A surer way to measure, and a first layer that grips it."""
        out = []
        if self.way != "dip":
            now, then = (self.rough(standard("both sides") * spread * self.below) for spread in (self.spread, standard("spread dip")))
            out.append(Change("Dip it, on a scale", f"± {then} instead of ± {now}"))
        lifts = self.lifts_at(sure=True)
        if self.hold and lifts is not None and lifts > self.raised:
            text = f"Pour a first layer of less than {self.length(lifts, 'down')} and let it set"
            out.append(Change(text, "it grips the wood before it can lift"))
        return tuple(out)

    def band(self) -> Band:
        """About 19 times in 20."""
        k = standard("both sides")
        low = self.litres(max(0.0, self.below * (1 - k * self.spread)), "down")
        high = self.litres(self.below * (1 + k * self.spread), "up")
        text = f"Measured {_WAY[self.way]}: about 19 times in 20 between {low.text} and {high}."
        return Band(text, str(low), str(high))

    def cautions(self) -> tuple[Caution, ...]:
        """Few and short, the worst first."""
        out: list[Caution] = []

        def say(id: str, text: str, tone: Tone = "caution") -> None:
            out.append(Caution(id, tone, text))

        if self.given.si("moisture") > moisture.percent("stop"):
            say("wet", "Too wet to cast. Ask 'Dry enough?' first.", "stop")
        elif self.wet:
            say("wet", "This wet it will shrink in the casting. Ask 'Dry enough?' first.")
        if self.uncounted:
            say("voids", "Open holes and voids are counted as wood here: the resin runs short by as much. Measure them.")
        if self.odd:
            say("odd", "That is an unusual weight for its size. Look at the scale, the unit and the kind of wood.")
        if self.way == "weigh":
            if not self.given.typed("moisture") and self.given.maybe("density") is None:
                say("moisture", "The moisture is a guess, and its water counts in the weight. Measure it.")
            say("solid", "A weight counts solid wood only: open holes fill with resin, as they should. Add nothing back for them.", "go")
        if self.way in ("dip", "level") and self.given.choice("wrapped") == "no":
            say("dip", "Quickly in and out: open holes fill with water and count as resin, as they should. Dry the wood again.", "go")
        if self.share < 1 and self.way != "live":
            say("straight", "The part above the line is taken as straight-sided. Surer: dip it only as deep as the resin will stand.")
        if self.hold:
            say("glue", "Do not count on glue or a sealed edge: once resin gets under it, it lifts in full. Screw, wedge or weigh it down from above.")
        if self.given.choice("sealed") == "no" and self.form != "stabilised":
            say("air", "Unsealed wood lets its air out into warm resin, as bubbles. Brush on a thin coat first and let it set.")
        say("down", "The volume is rounded down: counting less wood orders more resin, not less.", "go")
        return tuple(out)

    def working(self) -> tuple[Working, ...]:
        """The volume by the way chosen, then what floats."""
        out = [*self.volume_working()]
        if self.voids:
            out.append(Working("Without the voids", "V − voids", f"{self.litres(self.gross)} − {self.litres(self.voids)}", str(self.litres(self.volume))))
        fill = self.given.maybe("fill")
        if fill is not None and self.shape is not None:
            numbers = f"{self.given.write(self.share, 'share')} of {self.litres(self.volume)}, up to {self.length(fill)}"
            out.append(Working("Below the fill line", "V × share of it up to that depth", numbers, str(self.litres(self.below))))
        k = standard("both sides")
        out.append(Working("Band", "V ± 2 u", f"u = {self.within(self.spread)}", f"± {self.rough(k * self.spread * self.below)}"))
        if self.density is not None and self.mass is not None and self.lift is not None and self.hold is not None:
            if self.way != "weigh" and self.weighed is not None:
                out.append(Working("Density", "ρ = m / V", f"{self.fine(self.weighed)} / {self.litres(self.volume)}", str(self.rho(self.density))))
            numbers = f"{self.rho(self.resin)} × {self.litres(self.below)} − {self.fine(self.mass)}"
            out.append(Working("Lift", "F = ρ_resin V − m", numbers, str(self.given.write(self.lift, ("mass", Style(self.given.pick("g", "oz"), figures=3))))))
            formula = "the larger of 2 F and the F passed one time in twenty; nothing where both are below 0"
            out.append(Working("Hold-down", formula, f"F up to {self.fine(self.most_lift or 0.0)}", str(self.weight(self.hold))))
            middle = self.lifts_at(sure=False)
            if middle is not None and self.shape is not None:
                formula = "ρ_resin V(d) = m; t ρ / ρ_resin where it is straight-sided"
                numbers = f"{self.length(self.shape.height)} × {self.rho(self.density)} / {self.rho(self.resin)}" if self.way != "live" else "by halving"
                out.append(Working("It lifts from", formula, numbers, str(self.length(middle, "down"))))
        if self.soak > 0:
            room = "" if self.room is None else f", and never more than its air, {self.litres(self.room)}"
            share = self.given.write(self.soak / self.below, "share")
            out.append(Working("Soaks in", "share × V", f"{share} of {self.litres(self.below)}{room}", str(self.rough(self.soak))))
        return tuple(out)

    def volume_working(self) -> list[Working]:
        """The steps of the way chosen."""
        given, result = self.given, str(self.litres(self.volume if self.way == "weigh" else self.gross))
        if self.way == "dip":
            numbers = f"{self.fine(given.si('rise'))} / {standard('water') / 1000:.4f} g/mL"
            return [Working("Volume by dipping", "V = rise of the scale / density of water", numbers, result)]
        if self.way == "level":
            area = f"{from_si(math.sqrt(self.tub), 'length', given.pick('mm', 'in')) ** 2:.4g} {given.pick('mm²', 'in²')}"
            return [Working("Volume by level rise", "V = A × rise", f"{area} × {given.write(given.si('level'), ('length', self.small))}", result)]
        if self.way == "weigh":
            density = self.needed_density
            numbers = f"{self.fine(given.si('mass'))} / {self.rho(density.value)}"
            return [self.density_working(density), Working("Volume by weight", "V = m / ρ", numbers, result)]
        bottom, middle, top = (f"{from_si(math.sqrt(face), 'length', given.pick('cm', 'in')) ** 2:.4g}" for face in self.faces)
        unit, thick = given.pick("cm²", "in²"), given.write(given.si("thickness"), ("length", self.small))
        rule = "widths at equal steps by Simpson's rule (an odd count) or trapeziums"
        if self.way == "outline":
            return [Working("Area", rule, given.text("widths"), f"{bottom} {unit}"), Working("Volume", "V = A t", f"{bottom} {unit} × {thick}", result)]
        return [
            Working("Areas of top, middle, bottom", rule, "the middle is the mean" if not given.typed("middle") else "each face by its widths",
                    f"{top}, {middle}, {bottom} {unit}"),
            Working("Volume", "V = t (A_top + 4 A_middle + A_bottom) / 6", f"{thick} × ({top} + 4 × {middle} + {bottom}) / 6", result),
        ]  # fmt: skip

    @property
    def small(self) -> Style:
        """A length as read off a rule."""
        return Style("mm", figures=3) if self.given.system == "metric" else Style("in", figures=3)

    def density_working(self, density: Density) -> Working:
        """Where the density comes from."""
        wood_of, share = self.species, self.given.si("moisture")
        if self.given.maybe("density") is not None or wood_of is None:
            return Working("Density", "as measured", density.basis, str(self.rho(density.value)))
        x = self.given.write(share, "share")
        if wood_of.at_12 is not None and wood_of.shrinkage is not None and wood_of.shrinkage.volumetric is not None:
            formula = "ρ = 1000 G12 (100 − S12) / (100 − Sx) (1 + x), Sx = S0 (1 − x/30 %)"
            numbers = f"G12 = {wood_of.at_12:g}, S0 = {100 * wood_of.shrinkage.volumetric:.3g} %, x = {x}"
        else:
            formula = "ρ = 1000 Gb / [1 − 0.265 Gb (1 − x/30 %)] (1 + x)"
            numbers = f"Gb = {wood_of.basic:g}, x = {x}"
        return Working("Density", formula, numbers, str(self.rho(density.value)))

    def sources(self) -> tuple[str, ...]:
        """What the answer stands on."""
        keys = ["arithmetic", "practice", "gum"]
        if self.way == "dip":
            keys.insert(0, "astm-d2395")
        if self.tabled is not None and (self.way == "weigh" or self.weighed is None):
            keys += self.tabled.sources
        elif self.density is not None:
            keys.append("maker")
        return tuple(dict.fromkeys(keys))
