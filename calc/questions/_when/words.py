"""What When can I? says of the moulds of a batch."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from calc.answers import Answer, Band, Caution, Change, Figure, Grid, Headline, Limit, Line, Tone
from calc.casting.cure.known import Known, levels
from calc.casting.cure.stages import softens_unwarmed, step_of
from calc.casting.resin import stand_in
from calc.constants import ZERO_C
from calc.quantity.writing import Rounding, Style
from calc.questions import Given
from calc.questions._resin.agreement import disagreement, judged_by
from calc.questions._when.casting import Casting
from calc.questions._when.handed import aged, handed
from calc.questions._when.hours import after, clock_time, figure_and_unit, rounded
from calc.questions._when.picture import bars
from calc.questions._when.refusals import VALUES
from calc.questions._when.rows import Row, has_window, rows
from calc.questions._when.working import working
from calc.times import time_of_day

NEVER = "not in 60 days"
NO_MORE = "no more: it stood too long"


@dataclass(frozen=True)
class Said:
    """The first mould's answer, in words."""

    given: Given
    casting: Casting
    known: Known

    @cached_property
    def poured(self) -> float | None:
        """Time of day of the pour, s after midnight."""
        return time_of_day("poured", self.given.words("poured"), "metric") if self.given.typed("poured") else None

    def at(self, seconds: float | None, rounding: Rounding) -> str:
        """After how long."""
        return NEVER if seconds is None else after(seconds, rounding)

    def clock(self, seconds: float | None, rounding: Rounding) -> str:
        """The time of day, where the hour of the pour is known; else nothing."""
        return "" if seconds is None or self.poured is None else clock_time(self.poured, seconds, rounding, self.given.system)

    def span(self, row: Row) -> str:
        """A step's hours: 'within 8 h', '3 to 5 h', 'from 40 h'."""
        if row.id == "pour":
            return NO_MORE if self.no_more(row) else f"within {self.at(row.end, 'down')}"
        start = self.at(row.start, "up")
        if row.start is None:
            return start
        return f"from {start}" if row.open_end else f"{start} to {self.at(row.end, 'down')}"

    def no_more(self, row: Row) -> bool:
        """Whether the batch stood so long that nothing of it should be poured or topped up any more."""
        return row.id == "pour" and row.end is not None and rounded(row.end, "down") <= 0

    def span_clock(self, row: Row) -> str:
        """The same by the clock on the wall."""
        if self.poured is None or (row.start is None and row.end is None):
            return ""
        if row.id == "pour":
            return "-" if self.no_more(row) else f"until {self.clock(row.end, 'down')}"
        start = self.clock(row.start, "up")
        return f"from {start}" if row.open_end else f"{start}, until {self.clock(row.end, 'down')}"

    # --- the parts -----------------------------------------------------------------------------------

    @property
    def tone(self) -> Tone:
        """A warm pour, or one that never hardens, is a caution."""
        return "caution" if self.warm or self.casting.leave is None else "go"

    @property
    def warm(self) -> bool:
        """Whether it gets so warm that moulds distort."""
        return self.casting.found.peak_k >= step_of("warm") + ZERO_C

    @property
    def headline(self) -> Headline:
        """When it leaves the mould; the first thing to do before that in the sentence below."""
        leave = self.casting.leave
        first = f"Until then: pour, level and top up {self.span(self.rows['pour'])}; next layer {self.layer_words}."
        only = "It holds only where How deep and how hot? finds no stop."
        if leave is None:
            say = f"At this temperature it stays soft: keep it warmer, by the sheet. {first}"
            return Headline("Leave the mould", "Not in 60 days", "", say, "caution")
        clock = self.clock(leave, "up")
        return Headline("Leave the mould after", *figure_and_unit(leave, "up"), f"{f'That is {clock}. ' if clock else ''}{first} {only}", self.tone)

    @cached_property
    def rows(self) -> dict[str, Row]:
        """The steps by id."""
        return {row.id: row for row in rows(self.casting)}

    @property
    def layer_words(self) -> str:
        """For the headline."""
        return self.span(self.rows["layer"]) + ("" if has_window(self.casting) else ", scuffed and wiped first")

    def lines(self) -> Iterator[Line]:
        """One a step, in order, each with how to try it by hand."""
        notes = {
            "pour": self._pour_note,
            "swirl": f"common practice; try with a stick from {self.at((self.casting.swirl or (0.0,))[0] / 2, 'down')} on: a line should hold half a minute",
            "layer": self._layer_note,
            "dry": "soft all the same: no prints, no dust",
            "leave": "a fingernail leaves no mark, and it is no warmer than the shop",
            "rough": "no soft, tacky or smelly spot; cool, light cuts",
            "cured": self._cured_note,
            "use": f"cured cold, it may soften from {self._softens}; later warmth, by the sheet, raises that",
        }
        for row in self.rows.values():
            yield Line(row.name, self.span(row), "", notes[row.id])
            if row.id == "swirl":
                yield self._bubble_line
                yield Line("Stay near until", self.at(self.casting.watch_until, "up"), "", "past its hottest hour; look often")

    @property
    def _pour_note(self) -> str:
        within = self.casting.bucket.within_s
        bucket = "" if within is None else f"out of the bucket within {self.at(within, 'down')} of mixing; "
        return f"{bucket}wood drinks, so look again before then; what sinks later is a thin next layer"

    @property
    def _layer_note(self) -> str:
        if has_window(self.casting):
            return "skin takes a print and does not stick, mould as cool as the shop; after that scuff and wipe first"
        return "sooner only by what you see: sheet's earliest past, mould as cool as the shop, skin takes a print and does not stick"

    @property
    def _cured_note(self) -> str:
        source = "the sheet's full cure" if self.given.typed("cure") else "the sheet does not say here; often seven days"
        return f"{source}; its dust is harmful sooner"

    @property
    def _softens(self) -> str:
        return str(self.given.write(softens_unwarmed(self.casting.shop.warmest_k), "temperature", "down"))

    @property
    def _bubble_line(self) -> Line:
        """Which bubbles get out, and when one that is easily seen is out."""
        wide = stand_in("easy bubble") / 1e3
        out = self.casting.out_after(wide)
        easy = "" if out is None else f"{self.width(wide, 'nearest')} wide: out after {self.at(out, 'up')}; "
        rest = f"{easy}what wood gives off later stays"
        if self.casting.bubbles_seen_stay:
            return Line("Bubbles that stay", f"finer than {self.width(self.casting.finest_out, 'up')}", "", rest)
        return Line("Bubbles", "out before it gels", "", rest)

    def width(self, metres: float, rounding: Rounding) -> str:
        """A bubble's width."""
        style = Style("mm", figures=1) if self.given.system == "metric" else Style("in", step=1 / 64, fraction=True)
        return str(self.given.write(metres, ("length", style), rounding))

    def limits(self) -> Iterator[Limit]:
        """What keeps it in the mould; the latest rules."""
        casting, found = self.casting, self.casting.found
        rungs: list[tuple[str, str, float, str]] = []
        if found.leave_s is not None:
            seen = self.given.typed("seen_hard")
            why = "As you saw." if seen else "The coldest part is stiff; twice what the model says."
            rungs.append(("stiff", "Stiffness", found.leave_s * casting.hardening, why))
        if found.loose_s is not None:
            rungs.append(("cool", "Heat", found.loose_s * casting.spread, "The middle has cooled to the shop."))
        if self.given.typed("demould"):
            rungs.append(("sheet", "The sheet", self.given.si("demould") * casting.colder, "Longer in a shop colder than the sheet's."))
        latest = max(rungs, key=lambda rung: rung[2])[0] if casting.leave is not None else ""
        for id, name, seconds, why in rungs:
            yield Limit(id, name, *figure_and_unit(seconds, "up"), why, id == latest)

    def changes(self) -> Iterator[Change]:
        """What would move it most."""
        if not self.casting.shop.steady and self.casting.leave is not None:
            even = replace(self.casting, shop=self.casting.shop.without_night())
            if even.leave is not None:
                yield Change("No colder by night", f"leaves the mould after {self.at(even.leave, 'up')}")
        if self.known.level.id != "cup":
            best = replace(self.casting, level=levels()["cup"])
            layer = {row.id: row for row in rows(best)}["layer"]
            yield Change("A test cup (What is this resin?)", f"if it bears these hours out: next layer {self.span(layer)}")
        if not self.given.typed("demould"):
            yield Change("The sheet's time to leave the mould", "counts where it is longer")

    @property
    def band(self) -> Band:
        """How far the hours may be off."""
        spread = self.casting.spread
        gel = self.casting.found.gel_s
        low, high = self.at(gel and gel / spread, "down"), self.at(gel and gel * spread, "up")
        if self.given.typed("seen_gel"):
            return Band(f"Set right by the gel that you saw: in 2 of 3 cases within {100 * (spread - 1):.0f} %, either way.", low, high)
        between = "" if gel is None else f", in 2 of 3 cases between {low} and {high}"
        text = f"Judged by {judged_by(self.known)}, it gels after about {self.at(gel, 'nearest')}{between}."
        return Band(f"{text} The waits above go by the late end, the pouring by the early one.", low, high)

    def cautions(self) -> Iterator[Caution]:
        """Each where it decides."""
        casting, given = self.casting, self.given
        deepest = given.maybe("deepest")
        if deepest is not None and casting.vessel.depth_m > deepest * (1 + 1e-9):
            shown = given.write(deepest, "length", "down")
            yield Caution("over-sheet", "stop", f"Deeper than the {shown} that the sheet allows. Ask How deep and how hot? before you pour.")
        if self.warm:
            limit = given.write(step_of("warm") + ZERO_C, "temperature")
            yield Caution("warm", "caution", f"It may pass {limit}: plastic moulds and hot-glue seams give way. Ask How deep and how hot? first.")
        if self.known.agreement in ("deep", "shallow"):
            yield Caution("disagree", "caution", disagreement(given, self.known))
        if casting.bubbles_seen_stay:
            yield Caution("bubbles", "caution", "Some of the bubbles that stay can be seen. Degas or rest the mix, warm A a little, or pour thinner.")
        yield Caution("next-layer", "caution", "A layer beneath keeps the warmth in: ask How deep and how hot? again for the next one.")


def answer(given: Given, castings: Sequence[Casting], known: Known) -> Answer:
    """All parts; the first mould leads, each mould has its own clock below."""
    said = Said(given, castings[0], known)
    first = castings[0]
    return Answer(
        said.headline,
        lines=tuple(said.lines()),
        limits=tuple(said.limits()),
        changes=tuple(said.changes()),
        band=said.band,
        cautions=tuple(said.cautions()),
        working=tuple(working(given, first, known)),
        sources=(
            "cure-solver", "cure-fit", "cure-trials", "coating-formulator", "resin-glossary", "bond-makers", "stokes", "castro-macosko", "viscosity-series",
            "practice", "judgement",
        ),
        grids=tuple(_grid(Said(given, casting, known)) for casting in castings),
        carries=(*handed(given), aged(given, _values(said))),
        drawings=(bars(tuple(said.rows.values()), said.span),),
        values=_values(said),
    )


def _grid(said: Said) -> Grid:
    depth = said.given.write(said.casting.vessel.depth_m, "length")
    title = f"{said.casting.vessel.name}, {depth} deep"
    if said.poured is None:
        return Grid(title, ("", "After the pour"), tuple((row.name, said.span(row)) for row in said.rows.values()))
    return Grid(title, ("", "After the pour", "By the clock"), tuple((row.name, said.span(row), said.span_clock(row) or "-") for row in said.rows.values()))


def _values(said: Said) -> dict[str, Figure]:
    casting = said.casting
    swirl = casting.swirl or (None, None)
    limits = ("working", "swirl_to", "layer_to")
    found = (casting.pour_by, *swirl, casting.layer_from, casting.layer_to, casting.dry, casting.leave, casting.rough, casting.cured)
    values = {
        name: Figure(seconds, "time", said.at(seconds, "down" if name in limits else "up")) for name, seconds in zip(VALUES, found, strict=True)
    }
    return values | {"finest_bubble": Figure(casting.finest_out, "length", said.width(casting.finest_out, "up"))}
