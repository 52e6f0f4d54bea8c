"""Why is it out of true? The piece: how warm, how far out, how far each cause can move it, how long it cools."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import cast

from calc.casting.species import all_species, largest_shrinkage
from calc.errors import InputError
from calc.questions import Given
from calc.turning import causes, cooling, distortion, truing
from calc.turning.cooling import Slab, figure_of

HEAT = ("side-heat", "gradient", "layers")
SIDED = ("rim-once", "face-once")  # what a shift or a tilt shows
RAN_TRUE = ("stood", "caught", "working", "cut")  # 'since when' of a piece that ran true before
GAVE = ("caught", "creep", "slipped")  # the mount gave, or the piece has cracked: looked at before anything is cut
_INTERVIEW = ("sign", "warm", "since", "mount")


@dataclass(frozen=True)
class Piece:
    """One piece, from what was answered and measured."""

    given: Given

    @property
    def sign(self) -> truing.Sign:
        """What the dial or the pencil shows."""
        return cast(truing.Sign, self.given.choice("sign"))

    @property
    def on_rim(self) -> bool:
        """Whether the rim is out, and not the face."""
        return self.sign in truing.RIM

    @property
    def is_warm(self) -> bool:
        """Whether it is warmer than the shop anywhere."""
        return self.given.choice("warm") != "cold"

    @property
    def radius(self) -> float:
        """m."""
        return self.given.si("diameter") / 2

    @property
    def thickness(self) -> float:
        """m."""
        return self.given.si("thickness")

    # --- heat

    @cached_property
    def excess(self) -> float:
        """How much warmer than the shop its warmest place is, K; 0 when it is cold."""
        if not self.is_warm:
            return 0.0
        found = self.given.si("temperature") - self.given.si("room")
        if found <= 0:
            raise InputError("temperature", "not-warmer", room=str(self.given.write(self.given.si("room"), "temperature")))
        return found

    @cached_property
    def difference(self) -> float:
        """From side to side or face to face, K: measured, or the most there can be."""
        told = self.given.maybe("difference")
        if told is not None and told > self.excess * (1 + 1e-9) + 0.5:
            raise InputError("difference", "more-than-warm", excess=str(self.given.write(self.excess, "temperature difference")))
        if told is not None:
            return told
        if self.given.choice("warm") == "all":
            return self.excess * self.slab.widest_gap if self.slab.faces == 1 else 0.0
        return self.excess

    @property
    def stuff(self) -> cooling.Stuff:
        """Resin, or wood."""
        return cooling.wood() if self.given.words("stuff") == "wood" else cooling.resin()

    @property
    def faces(self) -> int:
        """How many faces are open to the air."""
        return 1 if self.given.words("cover") == "mounted" else 2

    def slab_in(self, faces: int, air: str) -> Slab:
        """The piece as a slab, with so many open faces in such air."""
        return Slab(self.stuff, self.thickness, figure_of(f"film {air}"), faces)

    @cached_property
    def slab(self) -> Slab:
        """The piece as it cools now."""
        return self.slab_in(self.faces, self.given.words("air") or "still")

    @property
    def near(self) -> float:
        """What counts as cold, K over the shop."""
        return figure_of("near")

    def wait_of(self, slab: Slab) -> float:
        """Seconds until no place is more than that over the shop."""
        return 0.0 if self.excess <= self.near else slab.time_to(self.near / self.excess)

    @cached_property
    def wait(self) -> float:
        """Seconds, as it lies now."""
        return self.wait_of(self.slab)

    @property
    def longest_wait(self) -> float:
        """Seconds, if the reading was of the open face of a piece that had cooled for long already."""
        z = cooling.roots(self.slab.biot, 1)[0]
        middle = self.excess / max(math.cos(z), 1e-6)
        return self.slab.depth_m**2 / (self.slab.stuff.diffusivity * z**2) * math.log(max(middle / self.near, 1.0))

    # --- how far

    @cached_property
    def twist(self) -> float | None:
        """By the three feelers, m."""
        if not self.given.typed("feelers"):
            return None
        first, across, last = self.given.many("feelers")
        return truing.twist((first, across, last))

    @cached_property
    def runout(self) -> float | None:
        """How far it is out, m: by the dial, else by the feelers for a face that is out by turns; gaps under a rim tell nothing of a dish."""
        told = self.given.maybe("runout")
        if told is not None and self.on_rim and told >= self.given.si("diameter"):
            raise InputError("runout", "off-the-rim", diameter=str(self.given.write(self.given.si("diameter"), "length")))
        return told if told is not None or self.on_rim or self.sign == "dish" else self.twist

    @cached_property
    def shrinkage(self) -> tuple[float, float, str, str]:
        """Radial and tangential, the wood's name, the source."""
        known = all_species().get(self.given.words("wood"))
        wood = known if known is not None and known.shrinkage is not None else largest_shrinkage()
        assert wood.shrinkage is not None
        return wood.shrinkage.radial, wood.shrinkage.tangential, wood.name, wood.shrinkage.source

    @property
    def wood_known(self) -> bool:
        """Whether the shrinkage is that of the wood told."""
        known = all_species().get(self.given.words("wood"))
        return known is not None and known.shrinkage is not None

    @property
    def wood_across(self) -> float:
        """Width of the wood, m."""
        told = self.given.maybe("wood_across")
        if told is not None and told > self.given.si("diameter") * (1 + 1e-9):
            raise InputError("wood_across", "wider", diameter=str(self.given.write(self.given.si("diameter"), "length")))
        return self.given.si("diameter") if told is None else told

    @property
    def moves(self) -> float:
        """Change for each percent of moisture that shows as an oval: along the rings, less what the other way moves as well."""
        radial, tangential, *_ = self.shrinkage
        across = distortion.change_coefficient(tangential)
        return across - distortion.change_coefficient(radial) if self.given.choice("grain") == "end" else across

    @property
    def swelling(self) -> float:
        """By how much wood may differ from way to way, m."""
        return distortion.wood_change(self.moves, self.wood_across, self.given.si("moisture_change"))

    @property
    def outgrows(self) -> float:
        """How much more resin grows by its warmth than the wood beside it, m."""
        return distortion.strip_growth(figure_of("resin expansion"), figure_of("wood expansion across"), self.excess, self.wood_across)

    @property
    def layer(self) -> float | None:
        """Thickness of a wood layer bonded to resin, m."""
        told = self.given.maybe("layer")
        if told is not None and told >= self.thickness * (1 - 1e-9):
            raise InputError("layer", "no-resin", thickness=str(self.given.write(self.thickness, "length")))
        return told

    @cached_property
    def layers_dish(self) -> float | None:
        """Dish of resin on a wood layer, m."""
        layer = self.layer
        if layer is None:
            return None
        curvature = distortion.layers_curvature(
            (figure_of("resin expansion"), figure_of("wood expansion across")),
            self.excess,
            (self.thickness - layer, layer),
            (figure_of("resin stiffness"), figure_of("wood stiffness")),
        )
        return distortion.sag(curvature, self.radius)

    @cached_property
    def most(self) -> dict[str, float]:
        """How far each cause can move this piece, m: lowest to highest."""
        expansion = figure_of("resin expansion")
        warm = self.given.choice("warm")
        found = {
            "side-heat": distortion.rim_runout(expansion, self.difference if warm == "side" else 0.0, self.radius),
            "gradient": distortion.dish(expansion, self.difference if warm in ("face", "all") else 0.0, self.radius, self.thickness),
        }
        if self.sign == "rim-twice":
            found["moisture"] = self.swelling / 2  # across one diameter; the dial sees one radius
        if self.layers_dish is not None:
            found["layers"] = self.layers_dish
        return found

    @cached_property
    def findings(self) -> tuple[causes.Finding, ...]:
        """Likeliest first."""
        left_out = set()
        if self.layer is None:
            left_out.add("layers")
        if self.given.choice("one_face") == "no":
            left_out.add("one-sided")
        if self.given.choice("since") != "caught":
            left_out.add("caught")
        left_out.add("slipped" if self.fixed else "creep")
        kept = {"creep"} if self.fixed else set()
        return causes.rank({name: self.given.choice(name) for name in _INTERVIEW}, self.most, self.runout, left_out, kept)

    @property
    def told(self) -> tuple[causes.Finding, ...]:
        """The first three, and glue or screws with them wherever they can be it."""
        first, rest = self.findings[:3], self.findings[3:]
        return first + tuple(found for found in rest if found.cause == "creep")

    @property
    def hold(self) -> str:
        """What holds it."""
        return self.given.choice("hold")

    @property
    def fixed(self) -> bool:
        """Whether glue or screws hold it."""
        return self.hold in ("glue", "faceplate")

    @property
    def ran_true(self) -> bool:
        """Whether it ran true on this mount before."""
        return self.given.choice("since") in RAN_TRUE

    @property
    def cause(self) -> str:
        """The likeliest."""
        return self.findings[0].cause

    @property
    def on_the_move(self) -> bool:
        """Whether it changed by more than a little between two measurements."""
        change = self.given.maybe("change")
        return change is not None and change > figure_of("moves") / 1000 * (1 + 1e-9)

    @property
    def small(self) -> bool:
        """Whether it is out by so little that it is left."""
        return self.runout is not None and self.runout <= figure_of("true within") / 1000 * (1 + 1e-9)

    # --- truing

    @property
    def left(self) -> float | None:
        """Thickness, or diameter for the rim, that is left if it is trued now; m."""
        if self.runout is None:
            return None
        if self.on_rim:
            return truing.diameter_left(self.given.si("diameter"), self.runout, self.sign)
        return truing.thickness_left(self.thickness, self.runout)

    @property
    def left_twice(self) -> float | None:
        """The same, if it is trued warm and goes out as far the other way when cold."""
        return None if self.left is None or self.runout is None else self.left - self.runout * (2 if self.sign == "rim-twice" else 1)

    @property
    def rest(self) -> float:
        """Order of the time that wood of this thickness takes to follow the air, s."""
        return distortion.drying_time(self.slab.depth_m, figure_of("moisture diffusivity"))
