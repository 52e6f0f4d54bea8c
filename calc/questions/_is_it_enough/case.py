"""The figures of one case: what is wanted, what is there, who gets what, and what a pour half done says."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from calc.casting import budget, kits
from calc.casting import sufficiency as enough
from calc.casting import wood as of_wood
from calc.casting.budget import Spread
from calc.casting.sufficiency import Demand, Portion, standard
from calc.errors import InputError
from calc.questions import Given
from calc.questions._is_it_enough.mould import Mould, same_count


@dataclass(frozen=True)
class Case:
    """One case. Amounts are kg, or m3 where the shelf is counted by volume; ``by_volume`` says which."""

    given: Given

    @cached_property
    def mould(self) -> Mould:
        """The mould as typed."""
        return Mould(self.given)

    @cached_property
    def count(self) -> int:
        """How many such moulds."""
        return round(self.given.maybe("count") or 1)

    @cached_property
    def pours(self) -> int:
        """In how many batches it is mixed."""
        return round(self.given.maybe("pours") or 1)

    @property
    def by_volume(self) -> bool:
        """Whether the shelf is counted by volume."""
        return self.given.choice("shelf_by") == "volume"

    @property
    def density(self) -> float:
        """Of the mixed resin, kg/m3."""
        return self.given.si("density")

    @property
    def u_density(self) -> float:
        """Its standard uncertainty, kg/m3."""
        return self.density * self.given.si("density_off") / 2

    @property
    def sure(self) -> float:
        """Odds that are asked for."""
        return float(self.given.choice("sure"))

    # --- wood ----------------------------------------------------------------------------------------

    @cached_property
    def wood(self) -> enough.Wood:
        """Wood below the fill line of one mould."""
        by, given = self.given.choice("wood_by"), self.given
        if by == "none":
            return enough.Wood()
        volume = given.si("wood") if by == "volume" else given.si("wood_mass") / given.si("wood_density")
        own = given.maybe("wood_off")
        u = self.wood_spread * volume if own is None else own / 2
        soak = 0.0 if given.choice("sealed") == "yes" else self._soak()
        return enough.Wood(volume, u, soak, soak)

    @property
    def wood_spread(self) -> float:
        """Standard uncertainty of the wood by the way it was measured, a fraction."""
        if self.given.choice("wood_by") == "weight":
            return of_wood.standard("spread weigh" if self.given.choice("kind") == "plain" else "spread figured")
        way = self.given.choice("wood_way")
        return standard("wood unknown") if way == "unknown" else of_wood.standard(f"spread {way}")

    def _soak(self) -> float:
        own = self.given.maybe("soak")
        return of_wood.standard(f"soak {self.given.choice('kind')}") if own is None else own

    # --- what is wanted ------------------------------------------------------------------------------

    @cached_property
    def one(self) -> Demand:
        """Resin in one mould, m3."""
        if self.wood.volume > self.mould.volume:
            name = "wood" if self.given.choice("wood_by") == "volume" else "wood_mass"
            raise InputError(name, "bigger-than-mould", found=str(self.given.write(self.mould.volume, "volume")),
                             wood=str(self.given.write(self.wood.volume, "volume")))  # fmt: skip
        return enough.resin_in_mould(self.mould.room(), self.wood)

    @cached_property
    def these(self) -> Demand:
        """Resin in all such moulds, m3."""
        return self.one.times(self.count)

    @cached_property
    def loss(self) -> Demand:
        """What stays in bucket and cup, m3."""
        own = self.given.maybe("loss")
        if own is None:
            return enough.lost(self.these.likely + sum(other.demand.likely for other in self.others) / self.density, self.pours)
        return enough.stays_behind(own, standard("loss off") * own)

    @cached_property
    def others(self) -> tuple[Portion, ...]:
        """Other moulds of the batch, kg."""
        if not self.given.typed("others"):
            return ()
        spare = same_count(self.given, "others_spare", "others") or ()
        own = self.given.maybe("others_off")
        u = (standard("others off") if own is None else own) / 2
        return tuple(
            Portion(f"Mould {n + 2}" if self.count == 1 else f"Other {n + 1}", Demand(mass, (Spread("others", u * mass),)), spare[n] if spare else 0.0)
            for n, mass in enumerate(self.given.many("others"))
        )

    def weighed(self, volume: Demand) -> Demand:
        """A volume in the unit of the shelf."""
        return volume if self.by_volume else volume.weighed(self.density, self.u_density)

    def in_shelf_unit(self, kg: float) -> float:
        """A mass in the unit of the shelf."""
        return kg / self.density if self.by_volume else kg

    def in_kg(self, amount: float) -> float:
        """An amount of the shelf as a mass."""
        return amount * self.density if self.by_volume else amount

    @cached_property
    def wanted(self) -> Demand:
        """All of it, in the unit of the shelf."""
        return self._with_others(self.weighed(self.these.plus(self.loss)))

    @cached_property
    def wanted_kg(self) -> Demand:
        """All of it, kg."""
        own = self.these.plus(self.loss).weighed(self.density, self.u_density)
        return own.plus(*(other.demand for other in self.others))

    def _with_others(self, own: Demand) -> Demand:
        share = self.in_shelf_unit(1.0)
        return own.plus(*(other.demand.times(share) for other in self.others))

    # --- what is there -------------------------------------------------------------------------------

    @cached_property
    def sizes(self) -> tuple[float, ...]:
        """What kits hold, in the unit of the shelf."""
        name = "kit_volumes" if self.by_volume else "kits"
        return self.given.many(name) if self.given.typed(name) else ()

    @cached_property
    def there(self) -> tuple[int, ...] | None:
        """How many kits of each size there are; None where they are still to buy."""
        counts = same_count(self.given, "kits_there", "kit_volumes" if self.by_volume else "kits")
        return None if counts is None else tuple(round(count) for count in counts)

    @cached_property
    def prices(self) -> tuple[float, ...] | None:
        """Price of a kit of each size."""
        prices = same_count(self.given, "prices", "kit_volumes" if self.by_volume else "kits")
        return None if prices is None else tuple(prices)

    @cached_property
    def loose(self) -> float | None:
        """Resin counted without kits."""
        return self.given.maybe("have_volume" if self.by_volume else "have")

    @property
    def counted_twice(self) -> bool:
        """Whether what is loose is as much as the unopened kits hold: then it is likely to be them."""
        if self.there is None or not self.loose:
            return False
        return math.isclose(self.loose, sum(n * size for n, size in zip(self.there, self.sizes, strict=True)), rel_tol=0.005)

    @cached_property
    def have(self) -> float | None:
        """All that is there; None where nothing was said."""
        if self.there is None:
            return self.loose
        return (self.loose or 0.0) + sum(n * size for n, size in zip(self.there, self.sizes, strict=True))

    @cached_property
    def odds(self) -> float | None:
        """Odds that it is enough."""
        return None if self.have is None else self.wanted.odds(self.have)

    @property
    def more(self) -> float:
        """What is missing for the odds asked for; 0 where nothing is."""
        return max(0.0, self.wanted.for_odds(self.sure) - (self.have or 0.0))

    @cached_property
    def opened(self) -> tuple[kits.Choice | None, kits.Choice | None] | None:
        """Kits to open or to buy for the odds asked for: the least left over, and the cheapest; None where none are asked of."""
        if not self.sizes:
            return None
        missing = self.wanted.for_odds(self.sure) - (self.loose or 0.0)
        if missing <= 0:
            return None
        if not kits.can_be_tried(missing, self.sizes):
            raise InputError("kit_volumes" if self.by_volume else "kits", "too-many-kits", most=str(kits.MOST_KITS))
        least = kits.fewest_left(missing, self.sizes, self.there, self.prices)
        return least, None if self.prices is None else kits.cheapest(missing, self.sizes, self.prices, self.there)

    # --- several moulds ------------------------------------------------------------------------------

    @property
    def these_name(self) -> str:
        """What the moulds of this form are called among others."""
        return "This mould" if self.count == 1 else f"These {self.count}"

    @cached_property
    def portions(self) -> list[Portion]:
        """All moulds of the batch in the order in which to fill them, kg."""
        mine = Portion(self.these_name, self.these.weighed(self.density, self.u_density), self.given.maybe("spare") or 0.0)
        return enough.filling_order([mine, *self.others])

    @cached_property
    def filled(self) -> int | None:
        """How many of several such moulds the shelf fills with the odds asked for, in the order of filling; None without a shelf."""
        if self.have is None:
            return None
        before = [self.loss.weighed(self.density, 0.0)]
        for portion in self.portions:
            if portion.name == self.these_name:
                break
            before.append(portion.demand)
        ways = (self.one.times(n).weighed(self.density, self.u_density).plus(*before).odds(self.in_kg(self.have)) for n in range(self.count, 0, -1))
        return next((self.count - short for short, odds in enumerate(ways) if odds >= self.sure), 0)

    # --- during the pour -----------------------------------------------------------------------------

    @cached_property
    def pouring(self) -> bool:
        """Whether a pour is under way and its level was read."""
        used, reached = self.given.maybe("used"), self.given.maybe("reached")
        if (used is None) != (reached is None):
            raise InputError("reached" if reached is None else "used", "both-or-none")
        if reached is None:
            return False
        if reached >= self.mould.depth * (1 - 1e-9):
            raise InputError("reached", "past-the-line", given=self.mould.said("reached"), depth=self.mould.written(self.mould.depth))
        if self.full >= self.count:
            raise InputError("full", "all-full", count=str(self.count))
        return True

    @property
    def full(self) -> int:
        """Such moulds full already."""
        return round(self.given.maybe("full") or 0)

    @cached_property
    def reckoned(self) -> Demand:
        """What the level reached should have taken, m3; its parts as those of :attr:`these`."""
        reached, mould, wood = self.given.si("reached"), self.mould, self.wood
        share = self.wood_below(reached)
        here = Demand(mould.room_to(reached), (*mould.size_spreads(reached), Spread("depth", 0.0), mould.level_spread(reached)))
        parts = [Spread(spread.name, 0.0) for spread in mould.part_spreads()]
        now = Demand(here.likely - share * wood.kept_out, (*here.spreads, *parts, *(Spread(s.name, share * s.u) for s in wood.spreads())))
        before = self.one.times(self.full)
        both = zip(now.spreads, before.spreads, strict=True)
        return Demand(now.likely + before.likely, tuple(Spread(a.name, a.u + b.u) for a, b in both))

    def wood_below(self, depth: float) -> float:
        """Share of the wood below a level, as it is spread evenly from the floor to its top."""
        own = self.given.maybe("wood_height")
        top = self.mould.depth if own is None else min(own, self.mould.depth)
        return min(1.0, max(0.0, self.mould.room_to(depth) / self.mould.room_to(top)))

    @cached_property
    def u_seen(self) -> float:
        """Standard uncertainty of what was seen: the level read, the wood's spread over the height, the scale, kg."""
        reached = self.given.si("reached")
        assert self.mould.shape is not None  # a level is asked only of a mould with sizes
        share = self.wood_below(reached)
        read = self.density * self.mould.shape.area(reached) * self.mould.tape
        uneven = self.density * standard("spread wood") * share * (1 - share) * self.wood.volume
        return budget.combined([Spread("level", read), Spread("wood", uneven), Spread("scale", standard("scale off") * self.given.si("used"))])

    @cached_property
    def forecast(self) -> Demand:
        """What goes into these moulds in all, once the level has been read, kg; never more than they hold without any wood."""
        before, so_far = (one.weighed(self.density, self.u_density) for one in (self.these, self.reckoned))
        used = self.given.si("used")
        after = enough.corrected(before, so_far, used, self.u_seen)
        most = max(used, self.density * self.count * self.mould.volume)
        return Demand(min(after.likely, most), after.spreads)

    @property
    def too_much(self) -> float:
        """How much more was poured than reckoned for that level, kg."""
        return self.given.si("used") - self.reckoned.weighed(self.density, self.u_density).likely

    @property
    def surprise(self) -> float:
        """The same in standard uncertainties."""
        so_far = self.reckoned.weighed(self.density, self.u_density)
        u = budget.combined([Spread("so far", so_far.u), Spread("seen", self.u_seen)])
        return self.too_much / u

    @cached_property
    def owed(self) -> list[tuple[str, float, float]]:
        """Each mould, what was poured into it, and what it is still owed, kg; in the order of filling."""
        used = same_count(self.given, "others_used", "others") or (0.0,) * len(self.others)
        poured = dict(zip((other.name for other in self.others), used, strict=True))
        out = []
        for portion in self.portions:
            if portion.name in poured:
                out.append((portion.name, poured[portion.name], max(0.0, portion.demand.likely - poured[portion.name])))
            else:
                out.append((portion.name, self.given.si("used"), self.forecast.likely - self.given.si("used")))
        return out

    @cached_property
    def still(self) -> Demand:
        """What all of them still ask of the bucket, loss and all, kg."""
        spreads = [*self.forecast.spreads, *(s for other in self.others for s in other.demand.spreads)]
        loss = self.loss.weighed(self.density, 0.0)
        return Demand(sum(owed for _, _, owed in self.owed) + loss.likely, (*spreads, *loss.spreads))

    @property
    def left(self) -> float | None:
        """What is left of the shelf, kg."""
        return None if self.have is None else max(0.0, self.in_kg(self.have) - sum(poured for _, poured, _ in self.owed))

    # --- brim-full -----------------------------------------------------------------------------------

    @cached_property
    def top_up(self) -> enough.TopUp | None:
        """What the moulds ask for after the pour, m3; None where they need not be full when hard."""
        if self.given.choice("brim") == "no":
            return None
        soaks = self.count * self.wood.soak * self.wood.volume
        si = self.given.si
        return enough.top_up(self.these.likely, soaks, si("shrinkage"), min(si("shrinkage"), standard("shrinkage off")), self.given.maybe("air") or 0.0)
