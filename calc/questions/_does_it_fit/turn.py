"""A blank on its mount: what it sweeps, what it has to clear, and how much room there is along the bed."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from calc.errors import InputError
from calc.quantity.writing import Rounding, Shown, Style
from calc.questions import Given
from calc.turning import discs, fit, remounting
from calc.turning.fit import Size, standard

_SIDES = {"round": 0, "square": 4, "eight": 8}
_NEAR = 1e-9  # m


def length(given: Given, metres: float, rounding: Rounding = "nearest") -> Shown:
    """A length as a tape reads it."""
    return given.write(metres, "length", rounding)


def guess(given: Given, metres: float, rounding: Rounding = "nearest") -> Shown:
    """A length that stands in for what was not measured: no finer than it is known."""
    return given.write(metres, "length" if given.system == "metric" else ("length", Style("in", step=1 / 4, fraction=True)), rounding)


@dataclass(frozen=True)
class Cut:
    """A way to saw the blank before it is mounted: ``sides`` (0 for round), and what it ``sweeps`` then, m."""

    sides: int
    sweeps: float

    @property
    def name(self) -> str:
        """What it becomes."""
        return {4: "to a square", 8: "to eight sides", 16: "to sixteen sides", 0: "round"}[self.sides]


@dataclass(frozen=True)
class Turn:
    """The blank, its mount and the lathe, as typed."""

    given: Given

    # --- the blank -------------------------------------------------------------------------------

    @property
    def form(self) -> str:
        """Its outline."""
        return self.given.choice("form")

    @property
    def along(self) -> float:
        """Its length or thickness along the lathe, m."""
        return self.given.si("along")

    @cached_property
    def sweep(self) -> float:
        """Corner to corner, m."""
        given = self.given
        if self.form == "other":
            return given.si("widest")
        if self.form == "rect":
            return fit.sweep_of_box(given.si("length"), given.si("width"))
        return fit.sweep(given.si("across"), _SIDES[self.form])

    @property
    def inner(self) -> float:
        """The largest round in it, m; of an outline that is not known, its sweep."""
        given = self.given
        if self.form == "other":
            return self.sweep
        return min(given.si("length"), given.si("width")) if self.form == "rect" else given.si("across")

    @cached_property
    def keep(self) -> float | None:
        """The round that is wanted from it, m: typed, or the largest in it; None where that is not known."""
        wanted = self.given.maybe("wanted")
        if wanted is None:
            return None if self.form == "other" else self.inner
        if wanted > self.inner + _NEAR:
            raise InputError("wanted", "round-too-big", inner=str(length(self.given, self.inner, "down")))
        return wanted

    @cached_property
    def cuts(self) -> tuple[Cut, ...]:
        """Ways to saw it that make it sweep less, fewest cuts first."""
        if self.keep is None:
            return ()
        found = [Cut(sides, fit.sweep(self.keep, sides)) for sides in fit.SAWN]
        return tuple(cut for cut in found if cut.sweeps < self.sweep - 0.001)

    @property
    def needs_square(self) -> bool:
        """It has to be sawn down to a square before its corners come off."""
        if self.form == "rect":
            return True
        return self.form == "square" and self.keep is not None and self.keep < self.inner - _NEAR

    @property
    def corner(self) -> float | None:
        """How far from each corner of the square the cut to eight sides is marked, m; None where it has no such corners."""
        return fit.corner_cut(self.keep) if self.form in ("square", "rect") and self.keep is not None else None

    @property
    def slender(self) -> bool:
        """Long and thin between two ends."""
        return self.tailed and self.along > standard("whip") * self.inner

    # --- the lathe ---------------------------------------------------------------------------------

    @property
    def size(self) -> Size:
        """What stands in for what was not measured."""
        return fit.lathe_sizes()[self.given.choice("lathe")]

    @property
    def outboard(self) -> bool:
        """On the far side of the headstock."""
        return self.given.choice("side") == "outboard"

    @cached_property
    def in_gap(self) -> bool:
        """It turns within the gap of a gap bed."""
        given = self.given
        if self.outboard or given.maybe("gap_swing") is None:
            return False
        if self.swing_over_bed >= given.si("gap_swing") - _NEAR:
            raise InputError("gap_swing", "gap-under-bed", swing=str(length(given, self.swing_over_bed)))
        return self.mount + self.along <= given.si("gap_long") - standard("bed gap") + _NEAR

    @property
    def swing_over_bed(self) -> float:
        """Typed, or as usual for such a lathe, m."""
        return self.given.maybe("swing") or self.size.swing

    @cached_property
    def swing(self) -> float:
        """The largest circle that clears what lies under the blank, m."""
        if self.outboard:
            return self.given.si("outboard_swing")
        return self.given.si("gap_swing") if self.in_gap else self.swing_over_bed

    @cached_property
    def banjo(self) -> float | None:
        """The largest circle that passes over the banjo, m; None outboard, where the rest stands on the floor."""
        if self.outboard:
            return None
        own = self.given.maybe("banjo")
        if own is not None and own >= self.swing_over_bed - _NEAR:
            raise InputError("banjo", "banjo-over-bed", swing=str(length(self.given, self.swing_over_bed)))
        return standard("banjo share") * self.swing_over_bed if own is None else own

    @property
    def centres(self) -> float:
        """Longest between centres, m."""
        return self.given.maybe("centres") or self.size.centres

    @property
    def guessed(self) -> tuple[str, ...]:
        """What it rests on that nobody measured, as it is told."""
        given = self.given
        out = []
        if not self.outboard:
            if given.maybe("swing") is None:
                out.append(f"swing {guess(given, self.swing_over_bed)}")
            if self.banjo is not None and given.maybe("banjo") is None:
                out.append(f"over the banjo {guess(given, self.banjo, 'down')}")
        if self.tailed and given.maybe("centres") is None:
            out.append(f"between centres {guess(given, self.centres)}")
        if self.hold != "centres" and given.maybe("mount") is None:
            out.append(f"mount {self.stands_out} long")
        return tuple(out)

    @property
    def lathe_unknown(self) -> bool:
        """The lathe was not chosen, nor was what decides measured: swing where it does not clear, length where it is too long."""
        given = self.given
        if given.typed("lathe") or self.outboard or self.in_gap:
            return False
        return given.maybe("swing" if not self.clears else "centres") is None

    @property
    def shaky(self) -> bool:
        """The answer hangs on what was only guessed."""
        given = self.given
        if not self.outboard and given.maybe("swing") is None:
            return True
        near = self.spare is not None and self.spare - standard("quill gap") < standard("near")
        return near and (given.maybe("centres") is None or (self.hold != "centres" and given.maybe("mount") is None))

    # --- the mount -----------------------------------------------------------------------------------

    @property
    def hold(self) -> str:
        """What holds it."""
        return self.given.choice("hold")

    @property
    def ends_held(self) -> bool:
        """It has a mark or a hole in either end."""
        return self.hold in ("centres", "mandrel")

    @property
    def tailed(self) -> bool:
        """The tailstock is up."""
        return not self.outboard and (self.hold == "centres" or self.given.words("tail") == "up")

    @property
    def mount(self) -> float:
        """How far the mount stands out from the spindle's end, m."""
        own = self.given.maybe("mount")
        if self.hold == "centres":
            return self.spur
        return standard(f"long {self.hold}") if own is None else own

    @property
    def stands_out(self) -> str:
        """That, as it is told."""
        guessed = self.hold != "centres" and self.given.maybe("mount") is None
        return str((guess if guessed else length)(self.given, self.mount))

    @property
    def spur(self) -> float:
        """How far the spur stands out, m."""
        return standard("spur")

    @property
    def covers(self) -> float:
        """Across what the mount hides, m."""
        own = self.given.maybe("covers")
        return standard(f"covers {self.hold}") if own is None else own

    @property
    def _covering(self) -> Shown:
        return (guess if self.given.maybe("covers") is None else length)(self.given, self.covers)

    @property
    def hides(self) -> str:
        """That, as it is told."""
        return str(self._covering)

    @property
    def bare(self) -> str:
        """Across what stays bare for the next block: the figure that the question of the mount gives for a block as wide as told here."""
        return str(length(self.given, remounting.bare_across(self._covering.si), "up"))

    # --- what comes of it ----------------------------------------------------------------------------

    @property
    def bed_gap(self) -> float:
        """Under it all round, m."""
        return fit.gap(self.swing, self.sweep)

    @property
    def banjo_gap(self) -> float | None:
        """Over the banjo, m."""
        return None if self.banjo is None else fit.gap(self.banjo, self.sweep)

    @property
    def clears(self) -> bool:
        """Over the bed, with what has to be left."""
        return self.clear_of(self.swing, self.sweep)

    @property
    def passes(self) -> bool:
        """Over the banjo too."""
        return self.banjo is None or self.clear_of(self.banjo, self.sweep)

    @staticmethod
    def clear_of(swing: float, sweep: float) -> bool:
        """Whether enough is left under what sweeps."""
        return fit.gap(swing, sweep) >= standard("bed gap") - _NEAR

    @cached_property
    def saw(self) -> Cut | None:
        """The fewest cuts after which it clears; None where none does."""
        return next((cut for cut in self.cuts if self.clear_of(self.swing, cut.sweeps)), None)

    @property
    def reached(self) -> bool:
        """A rest reaches the far end of its rim from a banjo that stands beyond its face."""
        return self.passes or self.along <= standard("rest back") + _NEAR

    @cached_property
    def saw_for_banjo(self) -> Cut | None:
        """The fewest cuts after which it passes over the banjo."""
        return next((cut for cut in self.cuts if self.banjo is not None and self.clear_of(self.banjo, cut.sweeps)), None)

    @property
    def widest(self) -> float:
        """The largest circle that clears, m."""
        return self.swing - 2 * standard("bed gap")

    @property
    def room(self) -> float | None:
        """For the work along the bed, m; None with no tailstock."""
        return fit.usable_length(self.centres, self.spur, self.mount) if self.tailed else None

    @property
    def spare(self) -> float | None:
        """Left along the bed, m."""
        return None if self.room is None else self.room - self.along

    @property
    def short(self) -> float:
        """By how much it is too long for the bed, m; zero where it fits."""
        return 0.0 if self.spare is None else max(0.0, standard("quill gap") - self.spare)

    @property
    def mass(self) -> float:
        """What it weighs, kg: typed, or as if it were all resin."""
        own, given = self.given.maybe("mass"), self.given
        if own is not None:
            return own
        if self.form in ("round", "other"):
            return discs.disc_mass(self.sweep, self.along)
        area = given.si("length") * given.si("width") if self.form == "rect" else given.si("across") ** 2
        return area * self.along * discs.RESIN_DENSITY

    @property
    def overloaded(self) -> bool:
        """Heavier than the lathe or the chuck is marked for."""
        load = self.given.maybe("load")
        return load is not None and self.mass > load
