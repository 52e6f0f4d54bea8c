"""The pour as typed, in SI: its resin, its mould, its shop."""

from __future__ import annotations

import math
from collections.abc import Generator
from dataclasses import dataclass, replace
from functools import cached_property

from calc.casting.cure.bucket import in_bucket, usual_wait
from calc.casting.cure.calibrate import NoFit
from calc.casting.cure.cells import Footprint, oblong_footprint, round_footprint
from calc.casting.cure.kinetics import heat_of_reaction
from calc.casting.cure.known import Facts, Known, fitted_before, known_steps
from calc.casting.cure.plan import Beneath, Plan
from calc.casting.cure.pour import Mould, Resin
from calc.casting.cure.standards import standard
from calc.casting.cure.thermal import Films, Material, Wall, materials, reach
from calc.errors import InputError
from calc.questions import Given

BENCH = Wall(materials()["plywood"], standard("bench"))


@dataclass(frozen=True)
class Case:
    """What was typed."""

    given: Given

    def check(self) -> None:
        """Contradictions and gaps that no single field shows.

        Raises
        ------
        InputError
            ``nothing-known``, or ``missing`` for the time since the layer below.
        """
        given = self.given
        if given.choice("known") == "sheet" and self.sheet_m is None and given.maybe("pot_life") is None:
            raise InputError("deepest", "nothing-known")
        if given.maybe("below") is not None and given.maybe("below_since") is None:
            raise InputError("below_since", "since")

    @property
    def quick(self) -> bool:
        """Only the depths are asked for."""
        return self.given.choice("detail") == "depths"

    @property
    def sheet_m(self) -> float | None:
        """The sheet's deepest layer, m."""
        return self.given.maybe("deepest")

    @property
    def sheet_k(self) -> float:
        """The temperature that it is meant for, K."""
        return self.given.maybe("deepest_temperature") or standard("sheet room")

    @cached_property
    def material(self) -> Material:
        """Of the mould."""
        return materials()[self.given.choice("mould")]

    @cached_property
    def footprint(self) -> Footprint:
        """Of the mould."""
        given = self.given
        if given.choice("shape") == "round":
            return round_footprint(given.si("across"))
        return oblong_footprint(given.si("length"), given.si("width"))

    @property
    def narrowest_m(self) -> float:
        """Width of the mould at its narrowest, m."""
        given = self.given
        return given.si(self.narrowest_field)

    @property
    def narrowest_field(self) -> str:
        """The field that tells it."""
        given = self.given
        return "across" if given.choice("shape") == "round" else min(("width", "length"), key=given.si)

    @property
    def area_m2(self) -> float:
        """Of the mould from above, m²."""
        given = self.given
        return math.pi / 4 * given.si("across") ** 2 if given.choice("shape") == "round" else given.si("length") * given.si("width")

    @property
    def air_k(self) -> float:
        """The shop, K."""
        return self.given.si("room")

    @property
    def batch_kg(self) -> float:
        """In the bucket, kg."""
        given = self.given
        return given.maybe("batch") or self.area_m2 * given.si("depth") * (1 - given.si("wood")) * given.si("density")

    def wall(self) -> Wall:
        """Side wall of the mould."""
        return Wall(self.material, self.given.maybe("wall") or self.material.usual_m)

    def mould(self, resin: Resin) -> Mould:
        """The mould where it stands, filled to the depth planned. Wood counts for as much of it as warmth reaches in time."""
        given, side = self.given, self.wall()
        board = materials()["board"]
        floor = Wall(board, board.usual_m) if self.material.id == "pvc" else side
        below = (BENCH, floor) if given.choice("stands") == "bench" else (floor,)
        films = Films(fan=given.choice("fan") == "yes", bare=self.material.id == "aluminium")
        share = self.wood_share and self.wood_share * min(1.0, self.reach_m(resin) / given.si("piece"))
        return Mould(self.footprint, given.si("depth"), side, below, films, share)

    @property
    def wood_share(self) -> float:
        """Wood in the clearest part of the pour, of its volume: that part gets hottest."""
        return self.given.si("wood") if self.given.choice("lies") == "through" else 0.0

    def reach_m(self, resin: Resin) -> float:
        """How thick wood may be to take its full share of the heat, m: reached in half the time the resin would be workable kept cool."""
        return reach(self.cool_s(resin) / 2)

    def cool_s(self, resin: Resin) -> float:
        """Working time if the resin kept the temperature of the shop, s."""
        return resin.kinetics.cool_s / resin.kinetics.speed_up(self.air_k)

    def plan(self, known: Known) -> Plan:
        """The pour."""
        given = self.given
        below = given.maybe("below")
        bucket = given.maybe("bucket")
        if bucket is None:
            poured = in_bucket(known.in_bucket, known.level.rate_up, self.batch_kg, self.air_k, given.maybe("resin") or self.air_k, known.printed)
            bucket = usual_wait(self.cool_s(known.resin), poured)
        beneath = None if below is None else Beneath(below, given.si("below_since"))
        return Plan(
            known.resin, known.level, self.mould(known.resin), self.air_k, given.maybe("resin") or self.air_k, self.batch_kg, bucket, beneath,
            known.by_pot_life, printed=known.printed,
        )

    def known_steps(self) -> Generator[float, None, Known]:
        """The resin, by the best that is known of it.

        Raises
        ------
        InputError
            ``never-so-hot``: no resin with such a pot life gets that hot.
        """
        given, density = self.given, self.given.si("density")
        if given.choice("known") == "cup":
            fitted = fitted_before(given.si("cup_gel"), given.si("cup_heat"), given.si("cup_shape"))
            return (yield from known_steps(Facts(density=density, fitted=fitted)))
        if given.choice("known") == "kind":
            return (yield from known_steps(Facts(given.choice("kind"), density=density)))
        heat = heat_of_reaction(*given.ratio("ratio")) if given.typed("ratio") else None
        facts = Facts(heat=heat, density=density, deepest_m=self.sheet_m, deepest_k=self.sheet_k)
        if given.maybe("pot_life") is not None:
            facts = replace(
                facts, pot_life_s=given.si("pot_life"), meaning=given.choice("pot_means"), pot_mass_kg=given.si("pot_mass"), pot_k=given.si("pot_temperature")
            )
        try:
            return (yield from known_steps(facts))
        except NoFit as no_fit:
            raise InputError("pot_life", no_fit.code) from no_fit
