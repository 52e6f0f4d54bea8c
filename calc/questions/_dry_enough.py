"""Dry enough? The parts of the answer for one piece of wood."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from calc.answers import Answer, Band, Caution, Change, Headline, Limit, Line, Tone, Working, figure
from calc.casting import moisture
from calc.casting.moisture import GRADES, Grade, Limits, percent
from calc.casting.species import Shrinkage, all_species, largest_shrinkage
from calc.errors import InputError
from calc.quantity import Rounding, Shown, Style, from_si, round_to, trimmed
from calc.questions import Given

#: A hand meter tells no finer, and neither does its correction.
_METER_STEP = 0.001
#: How a share is written: moisture to a tenth.
_TENTH = ("share", Style("%", step=0.1))
_WHOLE = ("share", Style("%", step=1))
_JUDGED = {
    "meter": "wettest reading", "analyser": "wettest reading", "oven": "oven-dry sample", "log": "steady in this air", "none": "not measured",
}
_Say = Callable[[str, str], None]
_TONES: dict[Grade, Tone] = {"go": "go", "caution": "caution", "strong": "caution", "stop": "stop"}


@dataclass(frozen=True)
class Wood:
    """The answer's parts for one piece of wood."""

    given: Given

    # --- figures -----------------------------------------------------------------------------------

    @property
    def judged(self) -> str:
        """How the moisture was measured."""
        return self.given.choice("judged")

    @cached_property
    def here(self) -> float:
        """What the shop air brings wood to."""
        return moisture.equilibrium(self.given.si("shop"), self.given.si("humidity"))

    @cached_property
    def limits(self) -> Limits:
        """Where each grade begins, for where the piece will live."""
        if self.given.choice("home") == "own":
            return Limits(moisture.equilibrium(self.given.si("home_temperature"), self.given.si("home_humidity")))
        return Limits(percent(f"home {self.given.choice('home')}"))

    @property
    def home(self) -> float:
        """Moisture the wood will come to where it lives."""
        return self.limits.home

    @cached_property
    def rates(self) -> tuple[float, ...]:
        """Share of the weight lost in a week, the latest first; none without a log."""
        if self.judged != "log":
            return ()
        weights = [self.given.si("now"), self.given.si("last")]
        earlier = self.given.maybe("earlier")
        weights += [] if earlier is None else [earlier]
        time = self.given.si("apart")
        return tuple(moisture.lost_per_week(before, after, time) for after, before in itertools.pairwise(weights))

    @property
    def steady(self) -> bool:
        """The weight stays, every time that was weighed."""
        return bool(self.rates) and all(abs(rate) < percent("steady") for rate in self.rates)

    @cached_property
    def wood_k(self) -> float:
        """Temperature of the wood: the maker's, or that of the air, K."""
        wood = self.given.maybe("wood")
        return self.given.si("shop") if wood is None else wood

    @cached_property
    def read(self) -> tuple[float, ...]:
        """The readings as moisture, driest first; empty without any."""
        if self.judged == "analyser":
            return tuple(moisture.of_wet_basis(share) for share in self.given.many("readings"))
        if self.judged != "meter":
            return ()
        low = percent("meter low")
        readings = tuple(max(reading, low) for reading in self.given.many("readings"))
        if self.given.choice("corrects") == "yes":
            return readings
        return tuple(round_to(moisture.corrected_reading(reading, self.wood_k), _METER_STEP) for reading in readings)

    @cached_property
    def found(self) -> float | None:
        """Moisture that counts; None where it is not known."""
        if self.read:
            return self.read[-1]
        if self.judged == "oven":
            return self.oven_test()
        if self.judged == "log":
            if not self.given.typed("humidity"):
                raise InputError("humidity", "humidity-for-log")
            return self.here if self.steady else None
        return None

    def oven_test(self) -> float:
        """Moisture of the sample; a contradiction is refused."""
        before, dry = self.given.si("before"), self.given.si("oven_dry")
        if dry > before * (1 + 1e-9):
            raise InputError("oven_dry", "dry-heavier")
        found = moisture.of_oven_test(before, dry)
        if found > percent("wettest known"):
            raise InputError("oven_dry", "wettest", found=str(self.given.write(found, _WHOLE)))
        return max(found, 0.0)

    @cached_property
    def grade(self) -> Grade:
        """From the moisture, and never better than a caution where what measured it may mislead."""
        if self.found is None:
            return "stop"
        grade = self.limits.grade(self.found)
        return "caution" if grade == "go" and (self.misled or self.once) else grade

    @property
    def misled(self) -> bool:
        """A meter on wood that it was never made for."""
        return self.judged == "meter" and self.given.choice("figure") != "plain"

    @property
    def too_dry(self) -> bool:
        """Dry enough, but so much drier than where it will live that it would swell there."""
        return self.found is not None and self.grade in ("go", "caution") and self.found < self.home - percent("match")

    @property
    def once(self) -> bool:
        """Steady, but only once."""
        return self.steady and len(self.rates) == 1

    @property
    def off_scale(self) -> bool:
        """Wetter than a hand meter can tell."""
        return self.judged == "meter" and self.given.many("readings")[-1] > percent("meter high") * (1 + 1e-9)

    @cached_property
    def shrinkage(self) -> Shrinkage:
        """Of this wood, or the largest of the table."""
        wood = all_species().get(self.given.choice("species"))
        shrinkage = (wood and wood.shrinkage) or largest_shrinkage().shrinkage
        assert shrinkage is not None  # the largest of those that have one
        return shrinkage

    @property
    def known(self) -> bool:
        """Whether the table has this wood's own shrinkage."""
        wood = all_species().get(self.given.choice("species"))
        return wood is not None and wood.shrinkage is not None

    def moves(self, start: float, along: float) -> float:
        """Change of size from a moisture to that of its home, m; below 0 where it shrinks."""
        return moisture.movement(self.given.si("size"), start, self.home, along)

    @cached_property
    def moved(self) -> float | None:
        """Change of size by the time it is as dry as where it will live, along the rings; m."""
        return None if self.found is None else self.moves(self.found, self.shrinkage.tangential)

    @property
    def mass(self) -> float | None:
        """The whole piece, kg; None where it was not weighed."""
        return self.given.maybe("now") if self.judged == "log" else self.given.maybe("mass")

    def mass_at(self, after: float) -> float | None:
        """What the whole piece will weigh at another moisture."""
        if self.mass is None or self.found is None:
            return None
        return moisture.mass_after(self.mass, self.found, after)

    # --- written -------------------------------------------------------------------------------------

    def pc(self, share: float, rounding: Rounding = "nearest") -> Shown:
        """A moisture, to a tenth of a percent."""
        return self.given.write(share, _TENTH, rounding)

    def level(self, share: float) -> str:
        """A limit, which is mostly a whole percent."""
        shown = self.pc(share, "down")
        return f"{trimmed(shown.text)} {shown.unit}"

    def weight(self, kg: float) -> Shown:
        """A weight that is to be reached: rounded down, to the drier side."""
        grams = kg < 10
        unit = self.given.pick("g" if grams else "kg", "oz" if kg < 1.5 else "lb")
        step = {"g": 1, "kg": 0.01, "oz": 0.1, "lb": 0.1}[unit]
        return self.given.write(kg, ("mass", Style(unit, step=step)), "down")

    def length(self, metres: float, rounding: Rounding = "up") -> Shown:
        """A movement, without its sign, upwards."""
        style = Style("mm", step=0.1) if self.given.system == "metric" else Style("in", step=1 / 64, fraction=True)
        return self.given.write(abs(metres), ("length", style), rounding)

    def size(self) -> Shown:
        """The size across the grain."""
        return self.given.write(self.given.si("size"), "length")

    def warmth(self, kelvin: float) -> Shown:
        """A temperature."""
        return self.given.write(kelvin, "temperature")

    def driest_air(self, kelvin: float) -> Shown:
        """Humidity that brings the wood down to where nothing stands against it."""
        return self.given.write(moisture.humidity_for(self.limits.go, kelvin), _WHOLE, "down")

    @property
    def damp(self) -> bool:
        """The shop air alone never gets it dry enough."""
        return self.here > self.limits.go

    @property
    def dry(self) -> bool:
        """As dry as it has to be."""
        return self.found is not None and self.found <= self.limits.go

    # --- the answer ------------------------------------------------------------------------------------

    def answer(self) -> Answer:
        """All parts; raises the question's own errors."""
        found, moved, dry = self.found, self.moved, self.mass_at(self.limits.go)
        return Answer(
            headline=self.headline(),
            lines=self.lines(),
            limits=self.ladder(),
            changes=self.changes(),
            band=self.band(),
            cautions=self.cautions(),
            working=self.working(),
            sources=self.sources(),
            values={
                "moisture": figure(None if found is None else self.pc(found, "up"), "share", found),
                "home": figure(self.pc(self.home), "share", self.home),
                "emc_here": figure(self.pc(self.here), "share", self.here),
                "go_limit": figure(self.pc(self.limits.go, "down"), "share", self.limits.go),
                "moves": figure(None if moved is None else self.length(moved), "length", moved),
                "weight_dry": figure(None if dry is None else self.weight(dry), "mass", dry),
                "grade": figure(self.given.write(GRADES.index(self.grade), "count"), "count"),
            },
        )

    def headline(self) -> Headline:
        """The moisture and what to do, or how to get it measured or dry."""
        if self.judged == "none":
            say = "Read a meter on a fresh end cut, or weigh the piece each week until it changes by less than 0.5 %."
            return Headline("Moisture not known", "Measure it", "", say.replace("0.5 %", self.steady_limit()), "stop")
        if self.found is None:
            return Headline("Not steady yet", "Wait", "", f"{self.weigh_weekly()} {self.unsteady()}", "stop")
        shown = self.pc(self.found, "up")
        if self.grade == "stop":
            over = f"over {self.level(percent('meter high'))}" if self.off_scale else str(shown)
            return Headline(f"Too wet: {over}", "Wait", "", f"{self.drier_air()}{self.weigh_weekly()}{self.dry_weight()}", "stop")
        tone = "caution" if self.too_dry else _TONES[self.grade]
        return Headline(f"Moisture, {_JUDGED[self.judged]}", shown.text, shown.unit, self.say(), tone)

    def steady_limit(self) -> str:
        """What counts as steady in a week."""
        return self.level(percent("steady"))

    def weigh_weekly(self) -> str:
        """The remedy that always holds."""
        return f"Weigh it each week until it changes by less than {self.steady_limit()}."

    def unsteady(self) -> str:
        """What the weight did instead."""
        rate = next(rate for rate in self.rates if abs(rate) >= percent("steady"))
        return f"It {'lost' if rate > 0 else 'gained'} {self.pc(abs(rate))} a week."

    def dry_weight(self) -> str:
        """' At 10 % it will weigh 1190 g.' where that can be told."""
        dry = self.mass_at(self.limits.go)
        if dry is None or self.off_scale:
            return ""
        return f" At {self.level(self.limits.go)} it will weigh {self.weight(dry)}."

    def drier_air(self) -> str:
        """'Dry it in air below ...' where this air never gets it dry enough."""
        if not self.damp:
            return ""
        return f"Dry it in air below {self.driest_air(self.given.si('shop'))} humidity: in this air it stops at {self.pc(self.here)}. "

    def say(self) -> str:
        """The one thing to do when a moisture is known."""
        assert self.found is not None and self.moved is not None
        if self.misled:
            first = "Weigh it each week until it is steady, then cast. A meter misleads in this wood."
            return first if self.limits.grade(self.found) == "go" and not self.too_dry else f"{first} {self.movement_says()}"
        if self.once:
            return "Weigh it again in a week: it was steady once, and twice running counts."
        if self.too_dry:
            air = self.given.write(moisture.humidity_for(self.home, self.given.si("shop")), _WHOLE)
            return f"Leave it a few weeks in air of about {air} humidity first: it is drier than where it will live. {self.movement_says()}"
        if self.grade == "go":
            return "No stop found. Seal and cast it while it is this dry."
        aim = self.level(self.limits.go)
        if self.grade == "caution":
            return f"Better dry it to {aim} first. {self.movement_says()}"
        return f"Dry it to {aim} first. {self.movement_says()} The bond opens, or the wood cracks."

    def movement_says(self) -> str:
        """How much it would move, cast now."""
        assert self.moved is not None
        verb = "shrink" if self.moved < 0 else "swell"
        return f"Cast now, it would {verb} by up to {self.length(self.moved)} across {self.size()}."

    def lines(self) -> tuple[Line, ...]:
        """Figures that are acted on, beside the first."""
        out = []
        if self.moved is not None and not round(abs(self.moved), 9):
            out.append(Line("It would hardly move", self.length(self.moved).text, self.length(self.moved).unit, f"across {self.size()}"))
        elif self.moved is not None:
            note = f"by the time it holds {self.level(self.home)}, across {self.size()}, if nothing held it"
            out.append(Line.of("It would shrink up to" if self.moved < 0 else "It would swell up to", self.length(self.moved), note))
        out.append(Line.of("This air brings it to", self.pc(self.here), f"{self.warmth(self.given.si('shop'))}, {self.humid('humidity')} humidity"))
        out.append(Line.of("Where it will live", self.pc(self.home), self.home_note()))
        dry, home = self.mass_at(self.limits.go), self.mass_at(self.home)
        if dry is not None and home is not None and self.found is not None and self.found > self.limits.go and not self.off_scale:
            out.append(Line.of(f"Weight at {self.level(self.limits.go)}", self.weight(dry), f"at {self.level(self.home)}: {self.weight(home)}"))
        if self.judged == "log":
            change = self.given.write(self.given.si("now") * percent("steady"), ("mass", Style(self.given.pick("g", "oz"), figures=2)), "down")
            out.append(Line.of("Steady is less than", change, "a week, for this piece; the scale has to show it"))
        return tuple(out)

    def humid(self, name: str) -> Shown:
        """A humidity."""
        return self.given.write(self.given.si(name), _WHOLE)

    def home_note(self) -> str:
        """Which home that is."""
        if self.given.choice("home") == "own":
            return f"{self.warmth(self.given.si('home_temperature'))}, {self.humid('home_humidity')} humidity"
        return self.given.label_of("home").lower()

    def ladder(self) -> tuple[Limit, ...]:
        """The three limits, and the one that decides."""
        limits, home = self.limits, self.level(self.home)
        near = f"{self.level(percent('match'))} over the {home} it will hold where it lives"
        far = f"{self.level(percent('far'))} over the {home} it will hold where it lives; common practice, no source"
        decides = None if self.found is None else limits.grade(self.found)
        rungs: tuple[tuple[Grade, str, float, str], ...] = (
            ("go", "No reason to wait up to", limits.go, near if limits.match < percent("go") else "common practice, no source"),
            ("strong", "It moves enough to show above", limits.caution, far if limits.caution < percent("caution") else "common practice, no source"),
            ("stop", "Too wet to cast above", limits.stop, "common practice, no source"),
        )
        return tuple(
            Limit(id, name, trimmed(self.pc(share, "down").text), "%", why, decides == id or (decides == "caution" and id == "go"))
            for id, name, share, why in rungs
        )

    def changes(self) -> tuple[Change, ...]:
        """What would make it drier, or move less."""
        out = []
        here, shop = self.here, self.given.si("shop")
        if self.damp and not self.dry:
            out.append(Change(f"Air below {self.driest_air(shop)} humidity at {self.warmth(shop)}", self.brings(self.limits.go)))
        if self.found is not None and self.found > self.limits.go and here < self.found and not self.off_scale:
            left = self.length(self.moves(here, self.shrinkage.tangential))
            out.append(Change("Leave it in this air until it is steady", f"{self.brings(here)}, {left} left to move"))
        if self.moved and self.found is not None and self.known:
            on_edge = self.length(self.moves(self.found, self.shrinkage.radial))
            out.append(Change("Growth rings on edge across that size (quarter-sawn)", f"moves {on_edge}"))
        return tuple(out)

    def brings(self, share: float) -> str:
        """A moisture, and what the piece then weighs."""
        weighs = self.mass_at(share)
        return str(self.pc(share)) if weighs is None or self.off_scale else f"{self.pc(share)}, {self.weight(weighs)}"

    def band(self) -> Band | None:
        """How far apart the readings lie, or how far off the hygrometer may be."""
        out = percent("hygrometer")
        humidity = self.given.si("humidity")
        low, high = (self.pc(moisture.equilibrium(self.given.si("shop"), min(0.98, max(0.01, humidity + sign * out)))) for sign in (-1, 1))
        air = f"With a hygrometer {self.given.write(out, _WHOLE)} out, this air may mean {low.text} to {high}."
        if self.read and self.found is not None:
            driest, wettest = self.pc(self.read[0]), self.pc(self.found, "up")
            if len(self.read) > 1:
                return Band(f"Readings from {driest.text} to {wettest}; the wettest counts.", str(driest), str(wettest))
            return Band("One reading only: the wettest spot may be elsewhere.", "", "")
        if self.judged in ("log", "none"):
            return Band(air, str(low), str(high))
        return None

    def cautions(self) -> tuple[Caution, ...]:
        """Few and short, each with its trigger."""
        out: list[Caution] = []

        def say(id: str, text: str, tone: Tone = "caution") -> None:
            out.append(Caution(id, tone, text))

        if self.found is not None and self.limits.grade(self.found) == "caution":
            say("opens", "Held by the resin it cannot shrink: the bond opens, or the wood cracks along its grain.")
        if self.off_scale:
            say("off-scale", f"A hand meter cannot tell above {self.level(percent('meter high'))}: it is wet, and nobody knows how wet.", "stop")
        if self.judged == "meter":
            self.meter_cautions(say)
        if self.judged == "oven":
            say("sample", "The sample speaks for its own place: cut it from the middle, well away from an end.")
        if self.judged == "log":
            say("slow", "Thick, waxed or sealed wood dries so slowly that it looks steady while wet inside. Read a fresh end cut as well.")
        if self.judged != "log" and self.damp and not self.dry and (self.found is None or self.grade != "stop"):
            text = f"Left in this air, it gets no drier than {self.pc(self.here)}."
            say("damp-shop", text)
        if not self.given.typed("humidity"):
            say("air-guessed", "The shop's humidity is our guess. A hygrometer tells.")
        if self.moved is not None and not self.known:
            worst = largest_shrinkage()
            text = f"No shrinkage known for this wood: the largest in our table stands in, {self.pc(self.shrinkage.tangential)} ({worst.name})."
            say("species", text)
        if self.moved is not None and self.given.choice("figure") != "plain":
            say("figured", "Figured and spalted wood moves every way at once: the movement above is a rough guide.")
        if self.grade in ("go", "caution") and not self.too_dry:
            first = "Cast it soon" if self.grade == "go" else "Once it is ready, cast it soon"
            say("wrap", f"{first}, or wrap it: dry wood takes up water from damp air within days.", "go")
        return tuple(out)

    def meter_cautions(self, say: _Say) -> None:
        """What a hand meter hides."""
        if self.misled and self.grade == "stop":
            say("meter-misled", "Meters are made for plain wood. Burl and decay fool them: go by weight.")
        if self.given.many("readings")[0] < percent("meter low") * (1 - 1e-9):
            say("below-scale", f"A hand meter cannot tell below {self.level(percent('meter low'))}: a lower reading counts as that.")
        if len(self.read) < 3:
            say("few", "Take more readings: both ends, the middle, the thickest place. The core dries last.")
        elif self.read[-1] - self.read[0] > percent("match") + _METER_STEP / 2:
            say("uneven", f"The readings lie {self.pc(self.read[-1] - self.read[0])} apart: it is still drying inside.")
        if self.given.choice("corrects") == "no" and self.given.maybe("wood") is None and not self.given.typed("shop"):
            say("warmth", "The wood is taken to be as warm as the shop. In colder wood a meter reads too low.")

    def working(self) -> tuple[Working, ...]:
        """Each step with its numbers."""
        given, out = self.given, []
        if self.judged == "meter" and given.choice("corrects") == "no":
            wettest = given.many("readings")[-1]
            calibrated = given.pick("21 °C", "70 °F")
            formula = "M + 0.5 % × (meter's − wood's temperature) / 10 °F (5.6 °C)"
            numbers = f"{self.pc(max(wettest, percent('meter low')))} + 0.5 % × ({calibrated} − {self.warmth(self.wood_k)}) / {given.pick('5.6 °C', '10 °F')}"
            out.append(Working("Reading, for the wood's temperature", formula, numbers, str(self.pc(self.read[-1], "up"))))
        if self.judged == "analyser":
            share = self.pc(given.many("readings")[-1])
            out.append(Working("Of the dry weight", "M = s / (1 − s)", f"{share} / (100 % − {share})", str(self.pc(self.read[-1], "up"))))
        if self.judged == "oven" and self.found is not None:
            dry = self.fine(given.si("oven_dry"))
            numbers = f"({self.fine(given.si('before'))} − {dry}) / {dry}"
            out.append(Working("Oven test", "M = (m − m_dry) / m_dry", numbers, str(self.pc(self.found, "up"))))
        for rate in self.rates[:1]:
            days = f"{from_si(given.si('apart'), 'time', 'days'):g} days"
            now = self.fine(given.si("now"))
            numbers = f"({self.fine(given.si('last'))} − {now}) / {now} × 7 / {days}"
            out.append(Working("Lost in a week", "(m1 − m2) / m2 × 7 / days", numbers, str(self.pc(rate))))
        out.append(self.air("What this air brings it to", given.si("shop"), given.si("humidity"), self.here))
        if given.choice("home") == "own":
            out.append(self.air("Where it will live", given.si("home_temperature"), given.si("home_humidity"), self.home))
        lower = f"{self.level(percent('go'))}, or {self.level(self.home)} + {self.level(percent('match'))}"
        out.append(Working("No reason to wait up to", "the lower of the two", lower, self.level(self.limits.go)))
        if self.moved is not None and self.found is not None:
            s, m1 = self.pc(self.shrinkage.tangential), self.pc(min(self.found, percent("fibre saturation")))
            numbers = f"{self.size()} × ({self.pc(self.home).text} − {m1.text}) / (3000/{s.text} − 30 + {m1.text})"
            shown = self.length(self.moved)
            sign = "−" if self.moved < 0 else ""
            out.append(Working("Movement along the rings", "ΔD = D (M2 − M1) / (3000/S − 30 + M1), in %", numbers, f"{sign}{shown}"))
        will_weigh = self.mass_at(self.limits.go)
        if will_weigh is not None and self.found is not None and self.mass is not None:
            numbers = f"{self.fine(self.mass)} × (100 + {self.level(self.limits.go)[:-2]}) / (100 + {self.pc(self.found, 'up').text})"
            out.append(Working("Weight when dry enough", "m2 = m1 (100 + M2) / (100 + M1), M in %", numbers, str(self.weight(will_weigh))))
        return tuple(out)

    def fine(self, kg: float) -> Shown:
        """A mass for the working."""
        return self.given.write(kg, ("mass", Style(self.given.pick("g", "oz"), figures=4)))

    def air(self, title: str, kelvin: float, humidity: float, found: float) -> Working:
        """One equilibrium, for the working."""
        formula = "EMC = 1800/W × [Kh/(1 − Kh) + (K1 Kh + 2 K1 K2 (Kh)²) / (1 + K1 Kh + K1 K2 (Kh)²)], W, K, K1, K2 from T"
        return Working(title, formula, f"T = {self.warmth(kelvin)}, h = {self.given.write(humidity, _WHOLE)}", str(self.pc(found)))

    def sources(self) -> tuple[str, ...]:
        """What the answer stands on."""
        keys = ["wood-handbook-4", "drying-lumber", "practice"]
        keys += {"meter": ["wood-handbook-13"], "oven": ["astm-d4442"], "log": ["judgement"]}.get(self.judged, [])
        if self.moved is not None:
            keys.append(self.shrinkage.source)
        return tuple(dict.fromkeys(keys))
