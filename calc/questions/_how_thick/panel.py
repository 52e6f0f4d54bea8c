"""A panel or a disc: from its finished thickness to the depth of resin, the wood it takes, and what is left at the thinnest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from calc.answers import Answer, Band, Carry, Caution, Change, Figure, Grid, Headline, Line, Working, figure
from calc.casting.thickness import Budget, Lies, mould_across, standard, tilt
from calc.errors import InputError
from calc.questions import Given
from calc.questions._how_thick.core import core
from calc.questions._how_thick.words import exact, fine, length, per_cent
from calc.words import both

_NEAR = 1e-6  # m
_ROUNDING = {"metric": 0.0005, "imperial": 0.0012}  # m; half a step of a tape, and how far the defaults in inches lie from those in mm
_TURNED = (0.02, 1.0)  # m; what is asked of a lathe without a second look


@dataclass(frozen=True)
class Stop:
    """What does not go, the remedy that leads, and the other ways out."""

    headline: Headline
    changes: tuple[Change, ...]


@dataclass(frozen=True)
class Panel:
    """One flat casting, as typed."""

    given: Given

    @property
    def lies(self) -> Lies:
        """Where the wood is."""
        chosen = self.given.choice("wood")
        return "through" if chosen == "through" else "under" if chosen == "under" else "inside" if chosen == "inside" else "none"

    @property
    def sides(self) -> tuple[float, ...]:
        """Finished sizes, m: across, or length and width."""
        given = self.given
        return (given.si("across"),) if given.choice("form") == "disc" else (given.si("length"), given.si("width"))

    @property
    def mould(self) -> tuple[float, ...]:
        """Inside of the mould, m."""
        return tuple(mould_across(side, self.given.si("edge")) for side in self.sides)

    @cached_property
    def warp(self) -> float:
        """How far it may come out of flat, m: the maker's own figure, or by its longest way."""
        own = self.given.maybe("warp")
        return max(self.mould) * standard("warp one side" if self.lies == "under" else "warp") if own is None else own

    @cached_property
    def budget(self) -> Budget:
        """All the allowances."""
        given = self.given
        finished, cover = given.si("thickness"), given.maybe("cover") or 0.0
        cover_under = given.maybe("cover_under") or 0.0
        if cover + cover_under >= finished - _NEAR:
            raise InputError("cover", "all-cover", thickness=str(length(given, finished)), cover=str(length(given, cover + cover_under)))
        budget = Budget(
            finished,
            top=given.si("top"),
            under=given.si("under"),
            warp=self.warp,
            tilt=tilt(standard(f"tilt {given.choice('levelled')}"), max(self.mould)),
            drop=given.si("drop"),
            lies=self.lies,
            bow=given.maybe("bow") or 0.0,
            cover=cover,
            cover_under=cover_under,
        )
        if self.slab is not None and budget.bow >= self.slab:
            raise InputError("bow", "all-bow", slab=str(length(given, self.slab)))
        return budget

    @property
    def slab(self) -> float | None:
        """Thickness of the wood at hand, m."""
        return self.given.maybe("slab")

    @property
    def nil(self) -> float:
        """A margin under this, m, is none: it is lost in rounding sizes and allowances to a tape."""
        return _ROUNDING[self.given.system]

    @property
    def slab_spare(self) -> float | None:
        """How much thinner, or where it shows on both faces thicker, the wood is than it has to be, m; None without wood at hand."""
        budget, slab = self.budget, self.slab
        if slab is None or (budget.most_wood is None and budget.slab is None):
            return None
        return budget.most_wood - slab if budget.most_wood is not None else slab - (budget.slab or 0.0)

    @property
    def no_wood_spare(self) -> bool:
        """Whether the wood at hand only just does."""
        return self.slab_spare is not None and abs(self.slab_spare) <= self.nil + _NEAR

    @property
    def planned(self) -> float | None:
        """Depth planned, m."""
        return self.given.maybe("depth")

    @cached_property
    def depth(self) -> float:
        """Depth to pour, m, up to the next mark of a tape."""
        return length(self.given, self.budget.depth, "up").si

    @property
    def no_room(self) -> bool:
        """No wood has room in this piece: its depth tells nothing."""
        return self.budget.most_wood is not None and self.budget.most_wood <= 0

    # --- what does not go --------------------------------------------------------------------------

    def stops(self) -> Iterator[Stop]:
        """Wood too thin or too thick, or a depth that leaves too little."""
        given, budget, slab = self.given, self.budget, self.slab
        wanted = length(given, budget.finished)
        if self.no_room:
            assert budget.most_wood is not None  # it is what has no room
            thicker = length(given, budget.finished - budget.most_wood, "up")
            say = f"Only from {thicker} on is there any room for wood between the resin over it and what is cut away."
            yield Stop(Headline("Finish it thicker than", thicker.text, thicker.unit, say, "stop"), (Change("Less resin over the wood", "room for wood"),))
        elif slab is not None and budget.most_wood is not None and slab > budget.most_wood + self.nil + _NEAR:
            most = length(given, budget.most_wood, "down")
            left = budget.over(slab)
            cut = "would be cut into" if left < 0 else f"leave only {fine(given, left, 'down')} of resin over it"
            finish = length(given, budget.for_wood(slab), "up")
            deeper = length(given, replace(budget, finished=finish.si).depth, "up")
            say = f"Plane the wood to {most} or thinner, or finish at {finish}, poured {deeper} deep. Its {length(given, slab)} {cut}."
            yield Stop(
                Headline("Wood, at most", most.text, most.unit, say, "stop"),
                (Change(f"Plane the wood to {most}", f"finished at {wanted}"), Change(f"Pour {deeper} deep", f"finished at {finish}")),
            )
        elif slab is not None and budget.slab is not None and slab < budget.slab - self.nil - _NEAR:
            least = length(given, budget.slab, "up")
            finish = length(given, max(0.0, budget.left_of_slab(slab)), "down")
            other = f", or finish at {finish}" if finish.si else ""
            say = f"Take a slab of {least} or thicker{other}. This one is {length(given, slab)}: it would not clean up on both faces."
            changes = [Change(f"A slab of {least}", f"finished at {wanted}")]
            if other:
                changes.append(Change("This slab", f"finished at {finish}"))
            changes.append(Change("Resin over it, on one face or both", f"wood of {length(given, slab)} may do"))
            yield Stop(Headline("Slab, at least", least.text, least.unit, say, "stop"), tuple(changes))
        if self.planned is not None and budget.left(self.planned) < budget.finished - self.nil - _NEAR:
            more = length(given, self.depth - self.planned, "up")
            finish = length(given, max(0.0, budget.left(self.planned)), "down")
            leaves = f"only {finish} at the thinnest" if finish.si else "nothing at the thinnest"
            say = f"Pour {more} deeper, {length(given, self.depth)} in all. {length(given, self.planned)} would leave {leaves}, {wanted} are wanted."
            changes = [Change(f"Pour {length(given, self.depth)}", f"finished at {wanted}")]
            if finish.si and self.lies != "through":
                changes.append(Change(f"Pour {length(given, self.planned)} as planned", f"finished at {finish}"))
            yield Stop(Headline("Pour deeper by", more.text, more.unit, say, "stop"), tuple(changes))

    # --- what to do ----------------------------------------------------------------------------------

    def headline(self) -> Headline:
        """How deep, and what to take for it."""
        given, budget = self.given, self.budget
        shown = length(given, self.depth)
        parts = []
        if budget.slab is not None and self.slab is None:
            parts.append(f"Take a slab of {length(given, budget.slab, 'up')} or thicker")
        if budget.most_wood is not None and self.slab is None:
            parts.append(f"Take wood of {length(given, budget.most_wood, 'down')} or thinner")
        if budget.raised:
            parts.append(f"{'hold' if parts else 'Hold'} it {length(given, budget.raised, 'up')} off the floor")
        parts.append(f"{'make' if parts else 'Make'} the mould {self.size_text()} inside")
        short = [f"the wood at {length(given, self.slab)}"] if self.slab is not None and self.no_wood_spare else []
        short += [f"the depth planned, {length(given, self.planned)}"] if self.planned is not None and self.planned < budget.depth - _NEAR else []
        tight = f" Nothing to spare: {both(short)} only just {'do' if len(short) > 1 else 'does'}. Measure again." if short else ""
        return Headline("Pour to", shown.text, shown.unit, f"{both(parts)}.{tight}", "caution" if self.no_wood_spare else "go")

    def size_text(self) -> str:
        """Inside of the mould."""
        sizes = [length(self.given, side, "up") for side in self.mould]
        return f"{sizes[0]} across" if len(sizes) == 1 else f"{sizes[0].text} × {sizes[1]}"

    def lines(self) -> Iterator[Line]:
        """Mould, wall, wood, and what is left at the thinnest."""
        given, budget = self.given, self.budget
        sizes = [length(given, side, "up") for side in self.mould]
        yield Line("Mould inside", " × ".join(size.text for size in sizes), sizes[0].unit, f"{fine(given, given.si('edge'))} to cut away all round")
        yield Line.of("Mould wall, at least", length(given, self.depth + standard("freeboard"), "up"))
        poured = self.depth if self.planned is None else self.planned
        if budget.slab is not None:
            yield Line.of("Slab, at least", length(given, budget.slab, "up"), "at its thinnest")
            if self.slab is not None and self.slab > poured + _NEAR:
                yield Line.of("Wood stands out of the resin by", fine(given, self.slab - poured), "it is faced off")
        if budget.most_wood is not None and budget.most_wood > 0:
            yield Line.of("Wood, at most", length(given, budget.most_wood, "down"), "at its thickest")
        if budget.raised:
            yield Line.of("Hold the wood off the floor by", length(given, budget.raised, "up"), "on pieces of the same cured resin")
        if self.slab is not None and budget.most_wood is not None and budget.over(self.slab) >= 0:
            yield Line.of("Resin over the wood, where it is least", fine(given, budget.over(self.slab), "down"), "when finished")
        if self.planned is not None and budget.left(self.planned) > 0:
            yield Line.of("Left at the thinnest", length(given, budget.left(self.planned), "down"), f"poured to {length(given, self.planned)}")

    def layers(self) -> tuple[tuple[str, float, str], ...]:
        """Every layer that can be seen, from the floor up: its name, thickness in m, and why."""
        budget = self.budget
        falls = budget.depth - budget.cured - budget.tilt
        sides = "resin on one side pulls it" if self.lies == "under" else "both faces have to come flat"
        found = (
            ("Faced off below", budget.under, "the face on the floor"),
            ("Wood's bow", budget.uneven, "it shows on both faces only where it is cut away"),
            ("Finished", budget.finished, "what you want"),
            ("Warp", budget.warp, sides),
            ("Faced off on top", budget.top, "the open face"),
            ("Falls as it cures", falls, f"{per_cent(self.given, budget.drop)} of the depth"),
            ("Out of level", budget.tilt, "the high side gets less"),
        )
        return tuple(layer for layer in found if fine(self.given, layer[1]).si > 0)

    def grid(self) -> Grid:
        """The layers as they lie, the top one first."""
        given = self.given
        rows = [(name, str(fine(given, thick)), why) for name, thick, why in reversed(self.layers())]
        rows.append(("In all", str(fine(given, self.budget.depth)), f"poured: {length(given, self.depth)}"))
        return Grid("The layers, top first", ("Layer", "Thick", "Why"), tuple(rows))

    def band(self) -> Band:
        """What is left if it shrinks and warps more, or less, than was allowed for."""
        given, poured = self.given, self.depth if self.planned is None else self.planned
        bad = replace(self.budget, drop=max(self.budget.drop, standard("drop most")), warp=2 * self.warp).left(poured)
        good = replace(self.budget, drop=min(self.budget.drop, standard("drop least")), warp=0.0).left(poured)
        low, high = (length(given, max(0.0, value), "down") for value in (bad, good))
        most = per_cent(given, standard("drop most"))
        text = f"If it warps twice as much and its level falls by {most}, {low} can still be had at the thinnest; if it stays flat, {high}."
        return Band(text, str(low), str(high))

    def cautions(self) -> Iterator[Caution]:
        """What may go wrong, each where it decides."""
        given, budget = self.given, self.budget
        if self.lies == "under" and budget.bow > budget.under + _NEAR:
            text = f"The wood's bow, {fine(given, budget.bow)}, is more than is cut off below: resin will show on that face in places. Flatten it first."
            yield Caution("bow-shows", "caution", text)
        if self.lies in ("under", "inside"):
            yield Caution("floats", "caution", "Wood that floats up takes its own cover away: hold it down, or fix it, before the resin comes.")
        text = f"{length(given, self.depth)} is all of it. Ask 'How deep and how hot?' how much of that may be poured at a time."
        yield Caution("layers", "caution", text)

    def working(self) -> Iterator[Working]:
        """The sums."""
        budget = self.budget
        names = {"f": budget.finished, "u": budget.under, "o": budget.top, "w": budget.warp, "b": budget.uneven}
        used = {name: value for name, value in names.items() if value or name == "f"}
        if self.given.maybe("warp") is None:
            slope = standard("warp one side" if self.lies == "under" else "warp")
            yield Working("Warp", "w = allowance × longest way", f"{1000 * slope:g} mm/m × {max(self.mould):.3f} m", exact(self.warp))
        formula = " + ".join({"f": "finished", "u": "under", "o": "top", "w": "warp", "b": "bow"}[name] for name in used)
        yield Working("Cured thickness", formula, " + ".join(f"{1000 * value:.2f}" for value in used.values()), exact(budget.cured))
        numbers = f"{exact(budget.cured)} / (1 − {budget.drop:g}) + {exact(budget.tilt)}"
        yield Working("Depth to pour", "cured / (1 − fall) + out of level", numbers, exact(budget.depth))
        if budget.most_wood is not None:
            formula = "finished + under − raised − bow − cover"
            terms = (budget.finished, budget.under, budget.raised, budget.bow, budget.cover)
            numbers = " − ".join(f"{1000 * value:.2f}" for value in terms).replace(" − ", " + ", 1)
            yield Working("Wood, at most", formula, numbers, exact(budget.most_wood))
        yield Working("Mould inside", "finished + 2 × edge", f"{exact(self.sides[0])} + 2 × {exact(self.given.si('edge'))}", exact(self.mould[0]))

    def carries(self, stopped: bool) -> Iterator[Carry]:
        """The mould and its depth: for the layers it takes, the resin it wants, what floats in it; list and lathe wait after a stop."""
        given, budget = self.given, self.budget
        depth = str(length(given, max(self.depth, self.planned or 0.0)))
        names = ("across",) if len(self.mould) == 1 else ("length", "width")
        sides = {name: str(length(self.given, side, "up")) for name, side in zip(names, self.mould, strict=True)}
        wood = {"wood_by": "none"} if self.lies == "none" else {}
        covered = self.lies in ("under", "inside")
        top = {} if not covered or self.slab is None else {"wood_height": str(length(given, budget.raised + self.slab))}
        yield Carry("is-it-enough", {"shape": "round" if len(self.mould) == 1 else "box", "depth": depth} | sides | wood | top)
        bare = {"wood": "0 %"} if self.lies == "none" else {"lies": "parts"} if covered else {}
        yield Carry("how-deep-how-hot", {"shape": "round" if len(self.mould) == 1 else "oblong", "depth": depth} | sides | bare)
        if self.lies != "none":
            raised = {"raised": str(length(given, budget.raised, "up"))} if budget.raised else {}
            height = {"height": given.as_typed("slab")} if self.slab is not None and not stopped else {}
            yield Carry("how-much-wood", {"fill": depth} | raised | height)
        if stopped:
            return
        if len(self.mould) == 1 and _TURNED[0] <= self.mould[0] <= _TURNED[1]:
            yield Carry("does-it-fit-the-lathe", {"form": "round", "along": depth} | sides)

    def values(self) -> dict[str, Figure]:
        """Figures for other questions and tests; wood that would have no room counts as none."""
        given, budget = self.given, self.budget
        found = {
            "depth": figure(length(given, self.depth), "length", budget.depth),
            "mould": figure(length(given, self.mould[0], "up"), "length", self.mould[0]),
        }
        if budget.slab is not None:
            found["slab"] = figure(length(given, budget.slab, "up"), "length", budget.slab)
        if budget.most_wood is not None:
            most = max(0.0, budget.most_wood)
            found["most_wood"] = figure(length(given, most, "down"), "length", most)
        if self.planned is not None:
            left = max(0.0, budget.left(self.planned))
            found["left"] = figure(length(given, left, "down"), "length", left)
        return found


def panel(given: Given) -> Answer:
    """The depth to pour for a finished thickness, or what stands against it."""
    case = Panel(given)
    stops = list(case.stops())
    changes = tuple(change for stop in stops for change in stop.changes)
    return Answer(
        headline=stops[0].headline if stops else case.headline(),
        lines=tuple(case.lines()),
        changes=changes or tuple(_savings(case)),
        band=case.band(),
        cautions=tuple(case.cautions()),
        working=tuple(case.working()),
        sources=("arithmetic", "judgement", "practice", "epoxy-shrinkage"),
        grids=(case.grid(),),
        drawings=(core(case.given, case.budget, case.layers(), case.slab, case.depth),),
        values=case.values(),
        carries=() if case.no_room else tuple(case.carries(bool(stops))),
    )


def _savings(case: Panel) -> Iterator[Change]:
    """What would make the pour shallower."""
    given, budget = case.given, case.budget
    if budget.uneven:
        flat = length(given, replace(budget, bow=0.0).depth, "up")
        if flat.si < case.depth:
            yield Change("A slab that lies flat", f"{flat} deep")
    if case.lies == "under" and given.maybe("warp") is None:
        even = replace(budget, warp=max(case.mould) * standard("warp"))
        shown = length(given, even.depth, "up")
        if shown.si < case.depth:
            yield Change("As much resin below the wood as above", f"about {shown} deep: it warps less")
    if given.choice("levelled") == "eye":
        level = replace(budget, tilt=tilt(standard("tilt level"), max(case.mould)))
        shown = length(given, level.depth, "up")
        if shown.si < case.depth:
            yield Change("A spirit level under the mould", f"{shown} deep")
