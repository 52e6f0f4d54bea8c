"""What is told of a standing piece."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from calc.answers import Answer, Band, Caution, Change, Figure, Headline, Limit, Line, Tone, Working, figure
from calc.constants import STANDARD_GRAVITY, ZERO_C
from calc.questions import Given
from calc.questions._will_it_stand.handed import carries
from calc.questions._will_it_stand.piece import Piece, degrees, length, weight
from calc.questions._will_it_stand.view import side_view
from calc.turning import bearing, standing
from calc.turning.standing import standard
from calc.words import inside

_FEET = {"round": "foot", "ring": "foot ring", "square": "square foot", "three": "circle of feet", "four": "circle of feet"}
_REMEDY = {
    "sun": "Keep it out of the sun",
    "car": "Never leave it in a car",
    "cup": "Put a mat under the cup",
    "pan": "Put a trivet under the pan",
    "room": "Cure it warm, as its sheet says",
    "own": "Keep it cooler",
}


def answer(given: Given) -> Answer:
    """Whether it stands, what tips it, and what heat it takes."""
    told = Told(Piece(given))
    piece = told.piece
    return Answer(
        headline=told.headline(),
        lines=tuple(told.lines()),
        limits=tuple(told.ladder()),
        changes=tuple(told.changes()),
        band=told.band(),
        cautions=tuple(told.cautions()),
        working=tuple(told.working()),
        sources=told.sources(),
        drawings=(side_view(piece),),
        carries=tuple(carries(piece)),
        values=told.values(),
    )


@dataclass(frozen=True)
class Told:
    """The parts of the answer."""

    piece: Piece

    @property
    def given(self) -> Given:
        """The fields as typed."""
        return self.piece.given

    @property
    def name(self) -> str:
        """Of the foot."""
        return _FEET[self.piece.foot]

    def degree(self, kelvin: float, up: bool = False) -> str:
        """A temperature."""
        return str(self.given.write(kelvin, "temperature", "up" if up else "down"))

    @property
    def wider(self) -> str:
        """The foot that it needs."""
        shown = length(self.given, self.piece.foot_wanted, "up")
        if self.piece.foot in ("three", "four"):
            return f"{self.piece.foot.capitalize()} feet on a circle of {shown}"
        return f"A {self.name} of {shown}"

    @property
    def remedy(self) -> str:
        """What keeps the heat off."""
        if self.piece.place == "room" and self.given.choice("warmed") == "yes":
            return _REMEDY["own"]
        return _REMEDY[self.piece.place]

    @property
    def softens(self) -> str:
        """From where; less sure when it was not cured warm."""
        may = "softens" if self.piece.unwarmed is None else "may soften"
        return f"{may} from {self.degree(self.piece.soft)}"

    @property
    def falls(self) -> bool:
        """Its weight is not over its foot at all."""
        return self.piece.radius <= 0

    def headline(self) -> Headline:
        """Heat first, then the foot, then how far it stands."""
        piece, given = self.piece, self.given
        stood = f"It stands a tilt of {degrees(piece.tilt)} degrees."
        foot = self.wider
        if piece.heat == "stop":
            why = f"{self.where()}, and this resin {self.softens}: keep it under {self.degree(piece.limit)}."
            more = stood if piece.stands else f"{foot} too: as it is, {self.tips()}"
            return Headline("Before it goes there", self.remedy, "", f"{why} {more}", "stop")
        if not piece.stands:
            tone: Tone = "stop" if piece.least_tilt < standard("half") * piece.wanted else "caution"
            then = f"It then stands a tilt of {degrees(piece.wanted)} degrees, also if its weight lies higher than reckoned. As it is, {self.tips()}"
            return Headline("To make it stand", foot, "", then, tone)
        if piece.joint is not None and piece.joint < 1:
            first, *rest = self.joint_remedies()
            also = f"And {inside(rest[0])}. " if rest else ""
            return Headline("Before it is glued up", first, "", f"{also}As it is the lowest joint breaks before the piece tips. {stood}", "stop")
        calm = piece.heat == "go" and not self.weak_joint and not self.weak_column
        push = weight(given, piece.push)
        loaded = f", with its {weight(given, piece.load)} on top" if piece.load else ""
        say = f"A push of {push} at its top tips it{loaded}. "
        say += f"The {self.name} of {length(given, piece.foot_across)} is enough for {degrees(piece.wanted)} degrees."
        return Headline("It stands a tilt of", degrees(piece.tilt), "degrees", say, "go" if calm else "caution")

    def tips(self) -> str:
        """What it does as it is."""
        if self.falls:
            return "its weight is not over its foot, and it falls."
        return f"{degrees(self.piece.least_tilt)} to {degrees(self.piece.most_tilt, 'up')} degrees tip it."

    def where(self) -> str:
        """How warm it gets there."""
        piece = self.piece
        if piece.place == "own":
            return f"It gets {self.degree(piece.warm, True)} warm"
        return f"{bearing.places()[piece.place].label} it gets about {self.degree(piece.warm, True)} warm"

    @property
    def weak_joint(self) -> bool:
        """A joint would let go before the piece tips, or nearly."""
        return self.piece.joint is not None and self.piece.joint < standard("joint")

    @property
    def weak_column(self) -> bool:
        """A column could bow out."""
        return self.piece.column is not None and self.piece.column[1] < standard("column")

    def lines(self) -> Iterator[Line]:
        """Further figures."""
        piece, given = self.piece, self.given
        note = "as weighed" if piece.masses is not None else f"all of it at {given.write(given.si('density'), 'density')}"
        yield Line.of("It weighs", weight(given, piece.bare.mass), note)
        yield Line.of("Middle of its weight", length(given, piece.all.height), "over the floor" + (", load and all" if piece.load else ""))
        yield Line.of("A push at its top that tips it", weight(given, piece.push), "as of that weight, held level")
        if piece.rim_load is not None:
            yield Line.of("A load at the edge of its top that tips it", weight(given, piece.rim_load), "with nothing else on it")
        if piece.stands:
            foot = length(given, piece.foot_wanted, "up")
            yield Line.of(f"Least {self.name}", foot, f"for {degrees(piece.wanted)} degrees, across")
        if piece.joint is not None:
            yield Line("Lowest joint bears that push", times(piece.joint), note=f"{standard('joint'):g} times is wanted")
        if piece.load and piece.column is not None:
            place, over = piece.column
            yield Line(f"Part {place + 1} bears what stands on it", times(over), note="before it bows out")
        guess = "" if given.typed("soft") else ", a guess"
        yield Line("Keep it under", self.degree(piece.limit), note=f"{self.softens}{guess}")

    def ladder(self) -> Iterator[Limit]:
        """The foot as it is against feet for the tilt wanted and for half of it."""
        piece, given = self.piece, self.given
        now, need = length(given, piece.foot_across, "down"), length(given, piece.foot_wanted, "up")
        tips = f"tips between {degrees(piece.least_tilt)} and {degrees(piece.most_tilt, 'up')} degrees"
        yield Limit("foot", f"The {self.name} it has", now.text, now.unit, tips)
        yield Limit("wanted", f"The least for {degrees(piece.wanted)} degrees", need.text, need.unit, "its weight as high as is likely", not piece.stands)

    def changes(self) -> Iterator[Change]:
        """Ways to make it stand better."""
        piece, given = self.piece, self.given
        then = f"stands {degrees(piece.wanted)} degrees"
        if not piece.stands:
            yield Change(self.wider, then)
            ballast = piece.ballast
            if ballast and ballast <= 2 * piece.all.mass:
                yield Change(f"{weight(given, ballast, 'up')} of metal let into the lowest part", then)
        if piece.foot == "three":
            ring = standing.tipping_tilt(standing.tipping_radius("ring", piece.foot_across) - piece.off, piece.highest)
            yield Change("A ring as wide as the three feet", f"stands {degrees(ring)} degrees")
        if piece.load and given.si("load_off"):
            middle = piece.bare.mass * given.si("off") / piece.all.mass
            radius = standing.tipping_radius(piece.foot, piece.foot_across) - middle
            yield Change("The load in its middle", f"stands {degrees(standing.tipping_tilt(radius, piece.highest))} degrees")
        for remedy in self.joint_remedies():
            yield Change(remedy, f"bears the push {standard('joint'):g} times over")

    def joint_remedies(self) -> Iterator[str]:
        """What makes the lowest joint bear the push often enough."""
        piece, given = self.piece, self.given
        if piece.peg_times is not None and piece.peg_times < standard("joint"):
            yield f"A {given.choice('joint')} of {length(given, piece.peg_wanted, 'up')}"
        if piece.socket_times is not None and piece.socket_times < standard("joint"):
            yield f"Sockets {length(given, piece.socket_wanted, 'up')} deep"

    def band(self) -> Band:
        """How sure the tilt is."""
        piece = self.piece
        low, high = degrees(piece.least_tilt), degrees(piece.most_tilt, "up")
        how = "weighed" if piece.masses is not None else "by their sizes"
        text = f"Parts {how}, each taken as the same right through: about 9 times in 10 it tips between {low} and {high} degrees."
        return Band(f"{text} Try it on a tilted board.", low, high)

    def cautions(self) -> Iterator[Caution]:
        """Where it tips, breaks or softens."""
        piece, given = self.piece, self.given
        if piece.heat == "caution":
            guessed = "" if given.typed("soft") else " That is a guess: the sheet says it."
            yield Caution("heat", "caution", f"{self.where()}, and this resin {self.softens}.{guessed} {self.remedy}.")
        if piece.heat == "stop" and (piece.load or len(piece.heights) > 1):
            yield Caution("creep", "stop", "Warm resin gives way slowly under weight: a column leans and a joint opens long before it looks soft.")
        if not given.typed("soft") and piece.heat != "caution":
            text = f"Where it softens is a guess, {self.degree(piece.soft)}. The sheet says it: glass transition or heat resistance."
            yield Caution("unknown", "caution", text)
        elif given.typed("soft") and given.choice("warmed") == "no" and piece.soft < given.si("soft") - 1e-6:
            cure = "" if piece.heat == "caution" and "Cure it warm" in self.remedy else " Cure it warm, as the sheet says."
            yield Caution("warmed", "caution", f"Cured in the shop it may soften earlier than its sheet says: {self.degree(piece.soft)} is taken.{cure}")
        if self.weak_joint:
            broken = "break before it tips" if piece.joint is not None and piece.joint < 1 else "be near to breaking when it tips"
            tone: Tone = "stop" if piece.joint is not None and piece.joint < 1 else "caution"
            yield Caution("joint", tone, f"The lowest joint would {broken}. Lift it by the foot.")
        if self.weak_column and piece.column is not None:
            yield Caution("column", "caution", f"Part {piece.column[0] + 1} is thin for what stands on it and may bow out: thicker, or shorter.")
        if piece.tall >= standard("tall"):
            yield Caution("tall", "caution", "Where a child or an animal can pull at it, fix it to the wall or the floor, whatever its foot.")
        if piece.foot in ("round", "square"):
            hollow = length(given, standard("edge"))
            yield Caution("hollow", "go", f"Turn the foot hollow by {hollow}: it stands on its rim, and goes on standing when the wood moves.")

    def working(self) -> Iterator[Working]:
        """The sums, in SI."""
        piece, given = self.piece, self.given
        masses = " + ".join(f"{part.mass:.3f}" for part in piece.parts)
        yield Working("Weight", "Σ m" if piece.masses is not None else "Σ ρ A h", f"{masses} kg", f"{piece.bare.mass:.3f} kg")
        middles = " + ".join(f"{part.mass:.3f} × {1000 * part.middle:.1f}" for part in piece.parts)
        yield Working("Middle of its weight", "h = Σ m z / Σ m", f"({middles}) / {piece.bare.mass:.3f}", f"{1000 * piece.bare.height:.1f} mm")
        if piece.load:
            top = 1000 * (piece.tall + given.si("load_high"))
            numbers = f"({piece.bare.mass:.3f} × {1000 * piece.bare.height:.1f} + {piece.load:.3f} × {top:.1f}) / {piece.all.mass:.3f}"
            yield Working("With its load", "(m h + w z) / (m + w)", numbers, f"{1000 * piece.all.height:.1f} mm")
        across = f"{self.name}, {1000 * piece.foot_across:.1f} mm; off by {1000 * piece.off:.1f} mm"
        yield Working("To the tipping line", "inner radius of the foot − off the middle", across, f"{1000 * piece.radius:.1f} mm")
        yield Working("Tilt", "atan(r / h)", f"atan({1000 * piece.radius:.1f} / {1000 * piece.all.height:.1f})", f"{math.degrees(piece.tilt):.2f}°")
        numbers = f"h up to {1000 * piece.all.height:.1f} + 1.645 × {1000 * piece.all.u:.1f} mm"
        yield Working("Foot for the tilt wanted", "(h tan θ + off) / inner share", numbers, f"{1000 * piece.foot_wanted:.1f} mm")
        push = f"{piece.all.mass:.3f} kg × 9.807 m/s² × {piece.radius:.4f} m / {piece.tall:.3f} m"
        yield Working("Push at the top", "F = m g r / H", push, f"{piece.push * STANDARD_GRAVITY:.2f} N")
        if piece.peg_times is not None:
            numbers = f"F × {piece.lever:.3f} m, d = {1000 * piece.peg:.1f} mm; {piece.peg_strength / 1e6:.3g} MPa"
            yield Working("Lowest joint, its peg", "strength / (32 M / π d³)", numbers, f"{piece.peg_times:.2f}")
        if piece.socket_times is not None:
            numbers = f"L = {1000 * given.si('socket'):.1f} mm; {standard('socket') / 1e6:.3g} MPa"
            yield Working("Lowest joint, its socket", "strength / (6 M / d L²)", numbers, f"{piece.socket_times:.2f}")
        if piece.column is not None:
            place, over = piece.column
            yield Working("Column", "π² E I / (4 L²) over what stands on it", f"part {place + 1}, E = 2.4 GPa", f"{over:.3g}")
        spare = f"{piece.limit - piece.warm:.0f} K to spare"
        rule = "the lower of the sheet − margin and, not cured warm, shop + 10 K; less how warm it gets"
        yield Working("Heat", rule, f"{self.degree(piece.limit)}; {self.degree(piece.warm)}", spare)

    def sources(self) -> tuple[str, ...]:
        """What it stands on."""
        piece = self.piece
        keys = ["arithmetic", "iec-60335-1"]
        if piece.place != "own":
            keys.append(bearing.places()[piece.place].source)
        if piece.joint is not None and self.given.choice("joint") == "tenon":
            keys.append("record-1914")
        if piece.column is not None:
            keys.append("euler-column")
        return tuple(dict.fromkeys([*keys, "gum", "practice", "judgement"]))

    def values(self) -> dict[str, Figure]:
        """Figures in SI; angles in rad."""
        piece, given = self.piece, self.given
        heat = piece.limit - piece.warm
        found = {
            "tilt": Figure(piece.tilt, "angle", f"{degrees(piece.tilt)} degrees"),
            "least_tilt": Figure(piece.least_tilt, "angle", f"{degrees(piece.least_tilt)} degrees"),
            "foot": figure(length(given, piece.foot_wanted, "up"), "length", piece.foot_wanted),
            "height": figure(length(given, piece.all.height), "length", piece.all.height),
            "mass": figure(weight(given, piece.bare.mass), "mass", piece.bare.mass),
            "push": figure(weight(given, piece.push), "mass", piece.push),
            "heat_spare": figure(given.write(heat, "temperature difference", "down"), "temperature difference", heat),
        }
        if piece.rim_load is not None:
            found["rim_load"] = figure(weight(given, piece.rim_load), "mass", piece.rim_load)
        if piece.joint is not None:
            found["joint"] = Figure(piece.joint, "count", times(piece.joint))
        return found


def times(over: float) -> str:
    """How many times over, never more than it is.

    >>> times(2.68), times(0.456), times(250.0)
    ('2.6 times', '0.4 times', 'over 99 times')
    """
    if over > 99:
        return "over 99 times"
    return f"{math.floor(over):d} times" if over >= 10 else f"{math.floor(over * 10) / 10:g} times"


def place_hint(name: str) -> str:
    """What stands beside a place in the form."""
    place = bearing.places()[name]
    warm = f"about {place.temperature - ZERO_C:.0f} °C ({(place.temperature - ZERO_C) * 1.8 + 32:.0f} °F)"
    return f"{warm}; {inside(place.hint)}" if place.hint else warm
