"""One piece of wood, how big and how heavy it is and how it lies in the resin, for How much wood is in it?"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from calc.casting import moisture, wood, wood_density
from calc.casting.species import Species, all_species
from calc.casting.wood import Shape, standard
from calc.errors import InputError
from calc.quantity.units import to_si
from calc.quantity.writing import Rounding, Shown, Style
from calc.questions import Given

_DRAWN = ("outline", "live")


@dataclass(frozen=True)
class Density:
    """Density of the wood, kg/m3; its standard uncertainty as a fraction; where it comes from, in words and as source keys."""

    value: float
    spread: float
    basis: str
    sources: tuple[str, ...]


@dataclass(frozen=True)
class Wood:
    """One piece of wood: its size, its weight, its lift in the resin; and its figures as they are written."""

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
        return Density(wood_density.density_of_species(self.species, share), spread, basis, (*self.species.sources, "wood-handbook-4"))

    def check_moisture(self, species: Species) -> None:
        """More water than the wood has room for is a slip."""
        fullest = wood_density.fullest(species.basic)
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
        return wood_density.air_share(self.density, self.given.si("moisture")) * self.below

    @cached_property
    def coat(self) -> float | None:
        """One seal coat, kg."""
        if self.shape is None or self.given.choice("sealed") == "yes":
            return None
        return wood.surface(self.volume, self.shape.height) * standard("seal coat") / 1000

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
