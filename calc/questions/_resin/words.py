"""What What is this resin? says of a profile."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from calc.answers import Band, Caution, Change, Grid, Headline, Limit, Line, Tone
from calc.casting import air, warm_resin
from calc.casting.cure.kinetics import FIRST, GEL
from calc.casting.cure.known import levels
from calc.casting.cure.stages import step_of
from calc.casting.cure.standards import standard
from calc.casting.resin import CupSize, cup_for, next_cup, stand_in
from calc.quantity.writing import Rounding, Shown, Style
from calc.questions._how_deep.words import depth
from calc.questions._resin.agreement import disagreement, judged_by, no_pot_life
from calc.questions._resin.profile import BUCKET_KG, Profile
from calc.questions._when.hours import after
from calc.words import inside, risk

_FROM = {"sheet": "the sheet", "worked out": "worked out", "assumed": "assumed", "cup": "the test cup", "kind": "its kind", "fitted": "fitted"}
_APART = stand_in("readings apart")  # times what a reading may be off
_FAR_K = stand_in("cup far")


@dataclass(frozen=True)
class Said:
    """The parts of the answer."""

    profile: Profile

    # --- written -------------------------------------------------------------------------------------

    def depth(self, metres: float, rounding: Rounding = "down") -> Shown:
        """A depth; rounded down as what must not be passed."""
        return depth(self.profile.given, metres, rounding)

    def degrees(self, kelvin: float) -> str:
        """A temperature."""
        return str(self.profile.given.write(kelvin, "temperature"))

    def cup_words(self, size: CupSize) -> str:
        """'100 g in a foam cup with a foam lid'."""
        given = self.profile.given
        if size.vessel == "dish":
            across = given.pick("80 mm", "3 1/8 in")
            return f"a layer of {given.write(size.amount, 'length')} in a plastic dish {across} across"
        amount = given.write(size.amount, ("mass", Style(given.pick("g", "oz"), figures=2)))
        return f"{amount} in a foam cup with a foam lid"

    @property
    def tone(self) -> Tone:
        """Where the band is wide, or the figures do not go together, it is a caution."""
        poor = self.profile.known.level.id in ("class", "unknown") or self.profile.known.agreement in ("deep", "shallow")
        return "caution" if poor or self._out_of_range or self.profile.cup_failed else "go"

    # --- the parts -----------------------------------------------------------------------------------

    @property
    def headline(self) -> Headline:
        """Its kind, and the one limit that matters."""
        profile = self.profile
        shown = self.depth(profile.no_stop_m)
        if shown.si <= 0:
            say = "Make a test cup, or find its deepest layer on the sheet. By what is known, no depth of a wide mould is without a stop."
            return Headline(f"{profile.kind.name} resin", "A coating at most", "", say, "stop")
        where = f"A ceiling, in a wide mould on a bench, shop at {self.degrees(profile.room_k)}."
        ask = "Your own mould and shop: ask How deep and how hot?"
        narrow = "" if profile.known.level.id == "cup" else " A test cup narrows it."
        return Headline(f"{profile.kind.name} resin: one layer, at most", shown.text, shown.unit, f"{where} {ask}{narrow}", self.tone)

    def lines(self) -> Iterator[Line]:
        """What is acted on next."""
        profile, given = self.profile, self.profile.given
        yield Line.of("Middle estimate runs away at", self.depth(profile.middle_m), "the edge itself: never plan by it")
        half = profile.bucket_s
        mass = given.pick(f"{BUCKET_KG:g} kg", f"{given.write(BUCKET_KG, ('mass', Style('lb', figures=2)))}")
        if half is not None:
            within = after(half, "down") if half >= 60 else "no time: mix less"
            yield Line(f"{mass} in a bucket: pour within", within, "", "after mixing; it may well be so fast. Spread what is left thin, outdoors")
        gel = profile.known.kinetics.time_to(GEL, profile.room_k, FIRST)
        yield Line("A thin layer gels after about", after(gel, "nearest"), "", f"at {self.degrees(profile.room_k)}; thick ones sooner")
        thick, origin = profile.sheet.viscosity(profile.kind)
        here = thick * warm_resin.viscosity_ratio(profile.room_k, 298.15, air.limit("viscosity energy"))
        yield Line.of("Viscosity, just mixed", given.write(here, "viscosity"), f"at {self.degrees(profile.room_k)}; {_FROM[origin]}")
        if given.choice("known") == "cup":
            yield from self._cup_lines()
        else:
            yield Line("Test cup for it", self.cup_words(self.size), "", "in the real colour; it is colour chip and hardness test too")

    def _cup_lines(self) -> Iterator[Line]:
        given = self.profile.given
        fit = self.profile.known.fit
        if fit is not None:
            off = given.write(fit.off_k, ("temperature difference", Style(given.pick("°C", "°F"), figures=2)))
            yield Line.of("The cup against the fit", off, "apart on average")
        if given.typed("cup_hard"):
            yield Line("No mark from a fingernail after", after(given.si("cup_hard"), "up"), "", f"in the cup, at {self.degrees(given.si('cup_room'))}")
        if given.choice("cup_colour") == "yes":
            yield Line("Keep the cup", "as your colour chip", "", "look through it at the finished thickness, on white")

    @property
    def size(self) -> CupSize:
        """The test cup for this resin."""
        profile = self.profile
        return cup_for(profile.given.maybe("pot_life") or profile.kind.pot_life_s)

    def limits(self) -> Iterator[Limit]:
        """What limits the depth; the least rules."""
        profile = self.profile
        by_heat = profile.sheet_m is None or profile.no_stop_m < profile.sheet_m
        sure, middle = self.depth(profile.no_stop_m), self.depth(profile.middle_m)
        if by_heat:
            yield Limit("no-stop", "No stop found up to", sure.text, sure.unit, "The fastest that this resin may well be.", True)
        yield Limit("heat", "Middle estimate runs away at", middle.text, middle.unit, "The edge itself: never plan by it.")
        if profile.sheet_m is not None:
            shown = self.depth(profile.sheet_m)
            yield Limit("sheet", "The sheet", shown.text, shown.unit, "Its own limit, never raised here.", not by_heat)

    def changes(self) -> Iterator[Change]:
        """What would narrow it most."""
        profile, level = self.profile, self.profile.known.level
        if level.id != "cup":
            better = self.depth(profile.no_stop_with(levels()["cup"].rate_up))
            yield Change(f"A test cup: {self.cup_words(self.size)}", f"no stop found up to about {better}, if it bears this out")
        if level.id == "unknown":
            better = self.depth(profile.no_stop_with(levels()["defined"].rate_up))
            yield Change("Find out what ends the sheet's pot life", f"no stop found up to about {better}, if it bears this out")
        if level.id in ("class", "unknown", "defined") and profile.sheet_m is None:
            yield Change("The sheet's deepest layer", "decides where it is less, and narrows the rest")
        if profile.given.choice("known") == "cup" and profile.given.choice("cup_colour") == "no":
            yield Change("The next test cup in the real colour", "one cup is colour chip and hardness test too")

    @property
    def band(self) -> Band:
        """How sure the depths are, in odds."""
        profile, level = self.profile, self.profile.known.level
        low, high = self.depth(profile.no_stop_m), self.depth(profile.ceiling_m)
        told = [(shown, risk(level.odds(shown.si / profile.middle_m))) for shown in (high, low)]
        text = f"Judged by {judged_by(profile.known)}: {told[0][1]} of such resins would run away at {high}"
        return Band(f"{text}, {told[1][1]} at {low}." if low.text not in ("0", high.text) else f"{text}.", str(low), str(high))

    @cached_property
    def _out_of_range(self) -> str:
        given, room = self.profile.given, self.profile.room_k
        lowest, highest = given.maybe("lowest"), given.maybe("highest")
        if lowest is not None and room < lowest:
            return f"The shop is colder than the sheet's lowest, {self.degrees(lowest)}: warm it first, or the resin may never harden."
        if highest is not None and room > highest:
            return f"The shop is hotter than the sheet's highest, {self.degrees(highest)}: cool it first, or wait for the evening."
        return ""

    def cautions(self) -> Iterator[Caution]:
        """Each where it decides."""
        profile, given = self.profile, self.profile.given
        if self._out_of_range:
            yield Caution("range", "stop", self._out_of_range)
        if profile.known.lowered_by_s is not None:
            yield Caution("no-pot-life", "caution", no_pot_life(profile.known))
        if profile.known.agreement in ("deep", "shallow"):
            yield Caution("disagree", "caution", disagreement(given, profile.known))
        if profile.cup_failed:
            yield Caution("cup", "caution", self._cup_again())
        if self._apart:
            yield Caution("fit", "caution", "The cup's readings do not go with one reaction. Look for a slip in them: unit, order, the gel.")
        if given.choice("known") == "cup" and abs(given.si("cup_room") - profile.room_k) >= _FAR_K:
            yield Caution("cup-room", "caution", "The cup was tested well away from this shop's temperature: test again at that of the pour.")
        if profile.known.level.id == "class":
            yield Caution("class", "caution", "A kind is not your resin. Read its sheet, or make a test cup, before a pour that costs.")
        pot_life = given.maybe("pot_life")
        if pot_life is not None and pot_life < step_of("fast pot life") * 60:
            yield Caution("fast", "caution", "So fast a system is beyond what the model was tried on. Mix little, and pour thin.")
        yield from self._bottles()

    @property
    def _apart(self) -> bool:
        """Whether readings and fit are further apart than readings may be."""
        fit, given = self.profile.known.fit, self.profile.given
        if fit is None:
            return False
        rise = max(given.many("cup_temperatures")) - given.si("cup_room")
        return fit.off_k > _APART * max(standard("fit temperature"), standard("fit temperature share") * rise)

    def _cup_again(self) -> str:
        """The next cup to try, a size larger or smaller."""
        given, larger = self.profile.given, self.profile.cup_failed == "rise-low"
        dish = given.choice("vessel") == "dish"
        size = next_cup(CupSize("dish" if dish else "foam", given.si("cup_layer" if dish else "cup_mass")), larger)
        found = "too little to tell the rest by" if larger else "so much that it ran away"
        again = "" if size is None else f" Once more, with {self.cup_words(size)}."
        return f"The cup warmed {found}, so the sheet counts here.{again}"

    def _bottles(self) -> Iterator[Caution]:
        given = self.profile.given
        if given.choice("lots") == "two":
            yield Caution("lots", "caution", "Two lots: stir all A together and all B together first, or test each pair. Never change lots within a layer.")
        if given.choice("opened") == "old":
            yield Caution("old", "caution", "Opened long ago: hardener takes up water from the air. See a test cup harden before the piece.")
        if given.choice("looks") == "cloudy":
            yield Caution("cloudy", "caution", "Cloudy or grainy: it has begun to crystallise. Warm the closed bottle, as its sheet says, until it is clear.")
        if given.choice("looks") == "dark":
            yield Caution("dark", "caution", "Dark hardener tints clear work. Pour a test cup and look through it on white.")

    # --- the profile as a table ----------------------------------------------------------------------

    def grid(self) -> Grid:
        """Every figure of the profile and where it comes from."""
        return Grid("Profile", ("Figure", "Value", "From"), tuple(self._rows()))

    def _rows(self) -> Iterator[tuple[str, str, str]]:
        profile, given, sheet = self.profile, self.profile.given, self.profile.sheet
        kinetics, level = profile.known.kinetics, profile.known.level
        if sheet.ratio is not None:
            yield "Ratio by weight", f"100 : {sheet.ratio[0].b:.3g}", _FROM[sheet.ratio[1]]
        yield "Density of the mix", str(given.write(sheet.density[0], "density")), _FROM[sheet.density[1]]
        thick, origin = sheet.viscosity(profile.kind)
        yield f"Viscosity at {self.degrees(298.15)}", str(given.write(thick, "viscosity")), _FROM[origin]
        for name, label in (
            ("pot_life", "Pot life"), ("deepest", "Deepest layer"), ("lowest", "Lowest temperature"), ("highest", "Highest temperature"),
            ("largest", "Largest batch"), ("earliest", "Next layer not before"), ("latest", "Next layer not after"),
            ("demould", "Leave the mould after"), ("cure", "Full cure after"),
        ):
            if given.typed(name):
                yield label, given.as_typed(name), "the sheet"
        rate_from = "fitted to the cup" if level.id == "cup" else "its kind" if level.id == "class" else f"fitted to {inside(level.name)}"
        yield "Gels, thin, at 25 °C (77 °F)", f"{kinetics.integral(GEL) / kinetics.k25 / 3600:.3g} h", rate_from
        cup = profile.known.fit
        heat_from = "fitted to the cup" if cup else "worked out from the ratio" if sheet.ratio else "its kind"
        yield "Heat of the mix", str(given.write(kinetics.heat, "heat")), heat_from
        yield "Shape number", f"{cup.shape:.2f}" if cup else "0.33", "fitted to the cup" if cup else "assumed"
        yield "Activation energy", f"{kinetics.e / 1e3:.0f} kJ/mol", "assumed"
        yield "Tg, fully cured", self.degrees(kinetics.tginf), "the sheet" if given.typed("glass") else "assumed"
        at = self.degrees(profile.room_k + step_of("rough"))
        stall = f"{at} to {self.degrees(profile.room_k + 2 * step_of('rough'))}"
        yield "Tg it stalls at in this shop", stall, "common practice; gentle warmth later finishes it"

