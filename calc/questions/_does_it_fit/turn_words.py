"""What is told of a blank on its mount: the headline, the reach from either side, the cautions, the working."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.answers import Answer, Band, Carry, Caution, Change, Figure, Headline, Limit, Line, Tone, Working, figure
from calc.quantity.writing import Shown
from calc.questions import Given
from calc.questions._does_it_fit.reaches import grid
from calc.questions._does_it_fit.turn import Turn, guess, length
from calc.questions._does_it_fit.view import side_view
from calc.questions._how_fast.handed import along
from calc.turning import fit
from calc.turning.fit import standard
from calc.words import both

_HOLDS = {"centres": "centres", "block": "glue", "faceplate": "faceplate", "chuck": "chuck", "mandrel": "centres"}


def turning(given: Given) -> Answer:
    """Whether the blank fits, and what each set-up reaches."""
    told = Told(Turn(given))
    return Answer(
        headline=told.headline(),
        lines=tuple(told.lines()),
        limits=tuple(told.ladder()),
        changes=tuple(told.changes()),
        band=told.band(),
        cautions=tuple(told.cautions()),
        working=tuple(told.working()),
        sources=("arithmetic", "lathe-size-text", *(("lathes-sold",) if told.turn.shaky and given.choice("lathe") == "bench" else ()), "practice", "judgement"),
        grids=(grid(told.turn),),
        drawings=(side_view(told.turn),),
        carries=tuple(told.carries()),
        values=told.values(),
    )


@dataclass(frozen=True)
class Told:
    """The parts of the answer."""

    turn: Turn

    @property
    def given(self) -> Given:
        """The fields as typed."""
        return self.turn.given

    @property
    def under(self) -> str:
        """What lies under the blank."""
        return "the floor and the stand" if self.turn.outboard else "the gap" if self.turn.in_gap else "the bed"

    def spare(self, gap: float) -> str:
        """A gap in words, never wider than it is."""
        if gap < 0:
            return f"{length(self.given, -gap, 'up')} too little"
        return f"{length(self.given, gap, 'down')} to spare"

    def headline(self) -> Headline:
        """The remedy, or what is to spare."""
        turn, given = self.turn, self.given
        if not turn.clears:
            return self.which_lathe() if turn.lathe_unknown else self.refused()
        if turn.overloaded:
            most = given.write(given.si("load"), "mass", "down")
            say = f"Saw it to that weight, or cast it lighter. It weighs about {given.write(turn.mass, 'mass')}, more than is marked."
            return Headline("Before you mount it", f"{most} at most", "", say, "stop")
        if turn.short:
            return self.which_lathe() if turn.lathe_unknown else self.too_long()
        gap = length(given, turn.bed_gap, "down")
        say = f"Over {self.under}, all round."
        if turn.spare is not None:
            say += f" Along the bed {self.spare(turn.spare - standard('quill gap'))}, the tailstock's travel taken off."
        if not turn.passes:
            say += f" Not over the banjo: {self.keep_out()}."
        tone: Tone = "caution" if turn.shaky or not turn.passes or turn.slender else "go"
        return Headline("It fits, to spare", gap.text, gap.unit, say, tone)

    def beside(self) -> str:
        """What to do about the banjo, said of its gap."""
        turn = self.turn
        if turn.passes or turn.banjo_gap is None:
            return ""
        return f"too near: {self.keep_out()}" if turn.banjo_gap >= 0 else self.keep_out()

    def keep_out(self) -> str:
        """What to do where the banjo does not pass under it."""
        turn = self.turn
        if turn.reached:
            return f"set the banjo beyond its face, with a rest that reaches {length(self.given, turn.along, 'up')} back"
        if turn.saw_for_banjo is not None:
            return f"saw it {turn.saw_for_banjo.name}, then it passes; no rest reaches {length(self.given, turn.along)} back"
        return f"it wants a rest with a stand of its own; none reaches {length(self.given, turn.along)} back from beyond its face"

    def which_lathe(self) -> Headline:
        """Nothing is sawn off for a lathe that nobody named."""
        turn, given = self.turn, self.given
        if not turn.clears:
            what = "Type its swing over the bed, or choose your lathe."
            why = f"It sweeps {length(given, turn.sweep, 'up')}; a small bench lathe clears {guess(given, turn.swing, 'down')}."
        else:
            what = "Type its longest between centres, under More, or choose your lathe."
            why = f"It is {length(given, turn.along)} long; a small bench lathe takes {guess(given, turn.centres, 'down')} between centres."
        return Headline("Before you saw or mount it", "Measure your lathe", "", f"{what} {why}", "stop")

    def measure_first(self, measured: str, size: float) -> str:
        """What to measure before anything is sawn off on the strength of a guess; nothing where it was typed."""
        if self.given.maybe(measured) is not None or self.turn.outboard or (measured == "swing" and self.turn.in_gap):
            return ""
        what = {"swing": "the swing over the bed", "centres": "the length between centres"}[measured]
        return f"Measure {what} first: {guess(self.given, size)} is only usual for such a lathe."

    def swing(self, metres: float) -> Shown:
        """What clears, down; a guess as it is told elsewhere."""
        if self.turn.outboard or self.turn.in_gap or self.given.maybe("swing") is not None:
            return length(self.given, metres, "down")
        return guess(self.given, metres)

    def refused(self) -> Headline:
        """It strikes or comes too near: what to saw off."""
        turn, given = self.turn, self.given
        now = f"As it is it sweeps {length(given, turn.sweep, 'up')} and {'strikes' if turn.bed_gap <= 0 else 'comes too near to'} {self.under}"
        now += f", which clears {self.swing(turn.swing)}."
        label = "Before you mount it"
        if turn.saw is not None:
            cut = turn.saw
            text = f"Saw it {cut.name}"
            gained = f"Then it sweeps {length(given, cut.sweeps, 'up')}: {self.spare(fit.gap(turn.swing, cut.sweeps))}."
            return Headline(label, text, "", f"{gained} {now}", "stop", tuple(self.steps(cut.sides)))
        most = length(given, turn.widest, "down")
        now = f"{now} {self.measure_first('swing', turn.swing_over_bed)}".strip()
        say = f"Sawn round to that it clears {self.under}. "
        if turn.widest < 0.01:
            most, say = length(given, turn.swing, "down"), ""
        other = "A lathe with more swing would do too." if turn.outboard else "Or turn it outboard, where there is more room."
        return Headline(label, f"Saw it to {most} at most", "", f"{say}{other} {now}", "stop")

    def steps(self, sides: int) -> Iterator[str]:
        """What is cut, in its order, before and after it is mounted."""
        turn, given = self.turn, self.given
        assert turn.keep is not None  # there would be no cut
        shown = length(given, turn.keep)
        first = self.measure_first("swing", turn.swing_over_bed)
        if first:
            yield first
        yield f"Draw the round, {shown}, about the middle that you mount it by."
        if sides and turn.needs_square:
            yield f"Saw it down to a square of {shown}."
        if sides in (8, 16) and turn.corner is not None:
            yield f"Mark {length(given, turn.corner, 'down')} from each corner along both edges, and saw the corners off."
        if sides == 16 and turn.form != "other":
            yield f"Saw {'its' if turn.form == 'eight' else 'the'} eight corners off{'' if turn.form == 'eight' else ' too'}, down to the round."
        if sides == 0 or turn.form == "other":
            yield "Saw down to it all round." if sides == 0 else f"Saw down to it in {sides} straight cuts."
        yield "Flatten the face that takes the mount. On the lathe true the rim first, then the free face."

    def too_long(self) -> Headline:
        """It does not go between mount and tailstock."""
        turn, given = self.turn, self.given
        off = length(given, turn.short, "up")
        assert turn.room is not None  # else it is never too long
        room = turn.room - standard("quill gap")
        fits = f"room for {length(given, room, 'down')}" if room > 0.001 else "no room"
        say = f"It is {length(given, turn.along)} long, and there is {fits}. {self.measure_first('centres', turn.centres)}".strip()
        if room <= 0.02:
            return Headline("Before you mount it", "A shorter mount", "", f"The mount alone fills the lathe. {say}", "stop")
        between = turn.centres - turn.along
        if turn.hold != "centres" and between >= standard("quill gap"):
            other = f"Or hold it between centres: then {self.spare(between - standard('quill gap'))}."
        elif turn.hold != "centres":
            other = f"Or a mount that is {off} shorter."
        else:
            other = "Or make it of two parts."
        return Headline("Before you mount it", f"Saw {off} off its length", "", f"{other} {say}", "stop")

    def lines(self) -> Iterator[Line]:
        """Further figures."""
        turn, given = self.turn, self.given
        how = {"other": "as typed", "round": "as wide as it is"}.get(turn.form, "corner to corner")
        yield Line.of("It sweeps", length(given, turn.sweep, "up"), how)
        yield Line(f"Over {self.under}", self.spare(turn.bed_gap), note=f"{length(given, standard('bed gap'), 'up')} has to be left all round")
        if turn.banjo_gap is not None:
            yield Line("Over the banjo", self.spare(turn.banjo_gap), note=self.beside())
        if turn.room is not None:
            yield Line.of("Room along the bed", self.room(turn.room), f"{length(given, standard('quill gap'), 'up')} for the tailstock's travel taken off")
        if turn.corner is not None and turn.clears and not turn.needs_square:
            yield Line.of("To eight sides, mark", length(given, turn.corner, "down"), "from each corner along both edges, and saw the corners off")

    def ladder(self) -> Iterator[Limit]:
        """The swings, the room along the bed, and what it sweeps; what it fails rules, else what leaves least to spare."""
        turn, given = self.turn, self.given
        rungs = [("bed", f"Clears {self.under}", turn.swing)]
        if turn.banjo is not None:
            rungs.append(("banjo", "Clears the banjo", turn.banjo))
        rules = self.rules()
        for id, name, swing in rungs:
            shown = self.swing(swing) if id == "bed" else length(given, swing, "down")
            why = self.spare(fit.gap(swing, turn.sweep))
            yield Limit(id, name, shown.text, shown.unit, why, id == rules)
        if turn.room is not None and turn.spare is not None:
            shown = self.room(turn.room)
            why = f"{self.spare(turn.spare - standard('quill gap'))}; the work is {length(given, turn.along)} long"
            yield Limit("length", "Room along the bed", shown.text, shown.unit, why, rules == "length")
        shown = length(given, turn.sweep, "up")
        yield Limit("sweep", "The blank sweeps", shown.text, shown.unit, "twice the farthest corner from the spindle's axis")

    def room(self, whole: float) -> Shown:
        """Along the bed, the tailstock's travel taken off."""
        return length(self.given, max(0.0, whole - standard("quill gap")), "down")

    def rules(self) -> str:
        """The limit that decides: bed, length, banjo as it fails them; where it fails none, the one with least to spare."""
        turn = self.turn
        if not turn.clears or turn.short or not turn.passes:
            return "bed" if not turn.clears else "length" if turn.short else "banjo"
        spare = {"bed": turn.bed_gap - standard("bed gap")}
        if turn.banjo_gap is not None:
            spare["banjo"] = turn.banjo_gap - standard("bed gap")
        if turn.spare is not None:
            spare["length"] = turn.spare - standard("quill gap")
        return min(spare, key=lambda name: spare[name])

    def changes(self) -> Iterator[Change]:
        """The sawing that helps, once it is known what it is sawn for: what clears the bed, and what passes over the banjo too."""
        turn, given = self.turn, self.given
        if turn.lathe_unknown and not turn.clears:
            return
        for cut in turn.cuts:
            clears, passes = turn.clear_of(turn.swing, cut.sweeps), turn.banjo is None or turn.clear_of(turn.banjo, cut.sweeps)
            if clears and (passes or not turn.clears) and not (turn.clears and turn.passes):
                over = f"clears {self.under}" if turn.banjo is None else "clears bed and banjo" if passes else f"clears {self.under}, not the banjo"
                yield Change(f"Saw it {cut.name}", f"{length(given, cut.sweeps, 'up')}: {over}")
                if passes:
                    return

    def band(self) -> Band:
        """How sure."""
        if self.turn.guessed:
            return Band(f"Guessed for such a lathe: {both(self.turn.guessed)}. Measure yours; what you type overrules.")
        return Band("As sure as your tape. A blank off the middle by 2 mm sweeps 4 mm more." if self.given.system == "metric" else
                    "As sure as your tape. A blank off the middle by 1/16 in sweeps 1/8 in more.")  # fmt: skip

    def cautions(self) -> Iterator[Caution]:
        """Where it would strike, and what has to be thought of before the glue."""
        turn, given = self.turn, self.given
        by_hand = "Turn it a full round by hand each time rest or blank has moved."
        if not turn.clears:
            strikes = "On so small a lathe it strikes." if turn.lathe_unknown else "It will strike."
            yield Caution("X9", "stop", f"{strikes if turn.bed_gap <= 0 else 'Nearer than a corner can be trusted.'} {by_hand}")
        elif not turn.passes:
            yield Caution("X9", "caution", f"It strikes the banjo if that stands under it. {by_hand}")
        if turn.short and not turn.clears:
            yield Caution("length", "stop", f"It is also too long by {length(given, turn.short, 'up')}.")
        if turn.slender:
            yield Caution("X14", "caution", "Long and thin: it whips. A steady rest in the middle, and a slower speed.")
        if turn.outboard:
            text = "No tailstock there, and the rest needs a stand of its own, on the side where the work comes down. The thread may run the other way."
            yield Caution("outboard", "caution", text)
        if turn.given.maybe("gap_swing") is not None and not turn.in_gap and not turn.outboard:
            yield Caution("gap", "caution", f"With its mount it is too long for the gap of {length(given, given.si('gap_long'))}: it has to clear the bed.")
        if turn.ends_held:
            yield Caution("ends", "caution", "Both ends keep the marks that held them: leave waste there, and part or sand it off at the end.")
        else:
            bare = f"leave {turn.bare} or more bare for the glue" if turn.hold == "block" else "leave stock there to hold it by"
            text = f"Turned round, the mount hides the middle of the finished face, {turn.hides} across: {bare}, "
            text += "with a register to find the middle. "
            if turn.hold == "block" and given.maybe("covers") is None:
                text += "That is a guessed block: type yours as 'Mount hides, across'. "
            text += "That spot is polished last, by hand or on a wheel: ask here whether the wheel reaches."
            yield Caution("plan", "caution", text)

    def working(self) -> Iterator[Working]:
        """The sums, in mm."""
        turn, given = self.turn, self.given
        sweep = f"{1000 * turn.sweep:.1f} mm"
        if turn.form == "rect":
            yield Working("Sweep", "D = √(L² + W²)", f"√({1000 * given.si('length'):.1f}² + {1000 * given.si('width'):.1f}²)", sweep)
        elif turn.form == "other":
            yield Working("Sweep", "D = 2 × the farthest corner", "as typed", sweep)
        else:
            formula = {"round": "D = s", "square": "D = s / cos(π/4)", "eight": "D = s / cos(π/8)"}[turn.form]
            yield Working("Sweep", formula, f"s = {1000 * given.si('across'):.1f} mm", sweep)
        yield Working("Over what lies under it", "(S − D) / 2", f"({1000 * turn.swing:.1f} − {1000 * turn.sweep:.1f}) / 2", f"{1000 * turn.bed_gap:.1f} mm")
        if turn.banjo is not None and turn.banjo_gap is not None:
            numbers = f"({1000 * turn.banjo:.1f} − {1000 * turn.sweep:.1f}) / 2"
            yield Working("Over the banjo", "(S_banjo − D) / 2", numbers, f"{1000 * turn.banjo_gap:.1f} mm")
        if turn.room is not None and turn.spare is not None:
            numbers = f"{1000 * turn.centres:.1f} + {1000 * turn.spur:.1f} − {1000 * turn.mount:.1f} − {1000 * turn.along:.1f}"
            yield Working("Along the bed", "centres + spur − mount − work", numbers, f"{1000 * turn.spare:.1f} mm")
        if given.maybe("load") is not None:
            yield Working("Weight", "typed, or outline × length × 1150 kg/m³", "", f"{turn.mass:.2f} kg")

    def carries(self) -> Iterator[Carry]:
        """Once it fits on to its top speed, its mount and its balance; the smaller swing, where the lathe was measured, in any case to the last look."""
        yield from self.onward()
        if self.given.typed("swing") or self.given.typed("outboard_swing"):
            yield Carry("before-the-lathe", self.clearance())

    def onward(self) -> Iterator[Carry]:
        """What comes next for work that fits."""
        turn, given = self.turn, self.given
        if not turn.clears or turn.short or turn.overloaded or not 0.025 <= turn.sweep <= 1.0 or not 0.005 <= turn.along <= 1.0:
            return
        held = {"diameter": str(length(given, turn.sweep, "up")), "hold": _HOLDS[turn.hold]}
        long = str(length(given, turn.along, "up"))
        thick, lathe = {"thickness": long}, {"lathe": given.choice("lathe")} if given.typed("lathe") else {}
        weighed = {"mass": given.as_typed("mass")} if given.typed("mass") and 0.02 <= given.si("mass") <= 100 else {}
        if held["hold"] != "centres" and given.typed("tail"):
            held["far_end"] = "live" if turn.tailed else "none"
        yield Carry("how-fast", {"operation": "rough"} | held | lathe | along(held["hold"], long) | weighed)
        if held["hold"] != "centres":
            block = {"block": given.as_typed("covers")} if turn.hold == "block" and given.typed("covers") and turn.covers <= turn.sweep else {}
            yield Carry("will-the-mount-hold", held | thick | weighed | block)
        size = {"square": {"side": "across"}, "rect": {"side": "length", "other_side": "width"}, "round": {"across": "across"}}.get(turn.form, {})
        if size and all(0.025 <= given.si(name) <= 1.0 for name in size.values()):
            outline = {there: given.as_typed(here) for there, here in size.items()}
            yield Carry("where-is-the-weight", {"blank": "round" if turn.form == "round" else "square"} | outline | thick | lathe)

    def clearance(self) -> dict[str, str]:
        """What it sweeps, and the largest that clears what stands under it: the banjo too, unless it is told to stand beyond the face."""
        turn, given = self.turn, self.given
        beyond = turn.clears and not turn.passes and turn.reached
        counts = turn.swing if turn.banjo is None or beyond else min(turn.swing, turn.banjo)
        told = {"sweeps": str(length(given, turn.sweep, "up")), "swing": str(length(given, counts, "down"))}
        return told if turn.banjo is None else told | {"banjo": "beyond" if beyond else "under"}

    def values(self) -> dict[str, Figure]:
        """Figures in SI."""
        turn, given = self.turn, self.given
        found = {
            "sweep": figure(length(given, turn.sweep, "up"), "length", turn.sweep),
            "bed_gap": Figure(turn.bed_gap, "length", self.spare(turn.bed_gap)),
        }
        if turn.banjo_gap is not None:
            found["banjo_gap"] = Figure(turn.banjo_gap, "length", self.spare(turn.banjo_gap))
        if turn.spare is not None:
            found["length_spare"] = Figure(turn.spare, "length", self.spare(turn.spare))
        if turn.corner is not None:
            found["corner"] = figure(length(given, turn.corner, "down"), "length", turn.corner)
        return found
