"""What was typed, as colours and batches in SI."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from calc.casting import colour, small_doses
from calc.casting.batch import ScaleFace, face_of
from calc.casting.colour import Kind
from calc.casting.small_doses import Premix
from calc.casting.standards import standard
from calc.casting.weighing import net_uncertainty
from calc.errors import InputError
from calc.quantity.reading import read
from calc.quantity.units import from_si, to_si
from calc.quantity.writing import Rounding, Shown, Style, trimmed
from calc.questions import Given

#: A kind that is none: no line of ours holds for it.
WATER = "water"
#: No pre-mix weaker than this is offered.
_WEAKEST = colour.standard("premix weakest")
#: Share of a batch that a pre-mix has to fit into.
_ROOM = colour.standard("premix room")


@dataclass(frozen=True)
class Colour:
    """One colour of the piece.

    Parameters
    ----------
    number : 1 to 3, as its fields are.
    kind, name : what it is, and what the maker calls it.
    share : of the mixed resin, wanted or found.
    caution, stop : its lines; both the label's where there is one.
    from_label : whether they are.
    inside : in the bucket now, kg, while tinting.
    spread : standard uncertainty of ``inside``, a fraction.
    jar : kg in the jar; None where nobody said.
    strength : of a pre-mix the maker has or wants; None where it is weighed as it is.
    """

    number: int
    kind: Kind
    name: str
    share: float
    caution: float
    stop: float
    from_label: bool
    inside: float = 0.0
    spread: float = 0.0
    jar: float | None = None
    strength: float | None = None


class Case:
    """The whole of it. Masses in kg."""

    def __init__(self, given: Given) -> None:
        self.given = given
        self.way = given.choice("way")
        self.part = given.maybe("part")
        whole = (given.many("rest") if given.typed("rest") else ()) if self.tinting else given.many("batches")
        self.batches = tuple(resin * (self.part or 1.0) for resin in whole)
        self.depth = given.maybe("depth")
        self.tolerance = given.si("tolerance")
        self.step = given.si("step")
        self.face: ScaleFace = face_of(self.step, read("step", given.text("step"), "mass", given.pick("g", "oz")).unit)
        self.least = small_doses.least_dose(self.step, self.tolerance, standard("coverage"))
        count = int(given.choice("colours"))
        names = _names(given, count)
        self.colours = tuple(self._colour(n, names[n - 1]) for n in range(1, count + 1))
        if self.tinting and not sum(one.inside for one in self.colours):
            raise InputError({"weighed": "added_1", "bottle": "after_1", "drops": "drops_1"}[given.choice("ledger")], "nothing-in")

    @property
    def tinting(self) -> bool:
        return self.way == "tinting"

    @property
    def in_bucket(self) -> float:
        """The resin that the lines are told for: in this bucket, or in the first batch."""
        return self.given.si("tinted") if self.tinting else self.batches[0]

    @property
    def resin(self) -> float:
        """All mixed resin still to be coloured."""
        return sum(self.batches)

    @property
    def equal(self) -> bool:
        """Whether one figure goes for every batch."""
        return max(self.batches, default=0.0) <= min(self.batches, default=0.0) * (1 + 1e-9)

    def load(self, line: str) -> float:
        """How much of the caution or stop lines all colours use up together."""
        return colour.load([one.share for one in self.colours], [getattr(one, line) for one in self.colours])

    @property
    def over_stop(self) -> bool:
        return self.load("stop") > 1 + 1e-9

    @property
    def over_caution(self) -> bool:
        return self.load("caution") > 1 + 1e-9

    @property
    def liquid(self) -> float:
        """Share of liquid colour in the mix."""
        return sum(one.share for one in self.colours if one.kind.liquid)

    def need(self, one: Colour) -> float:
        """For all batches still to be coloured."""
        return one.share * self.resin

    @cached_property
    def short(self) -> tuple[Colour, ...]:
        """Colours whose jar does not hold what the batches take."""
        return tuple(one for one in self.colours if one.jar is not None and self.need(one) > one.jar * (1 + 1e-9))

    def smallest(self, one: Colour) -> float:
        """The dose of the smallest batch."""
        return one.share * min(self.batches)

    def smallest_weighed(self, one: Colour) -> float:
        """The smallest weight that goes on the scale for it: the dose, or the pre-mix that holds it."""
        dose = self.smallest(one)
        return dose if one.strength is None else small_doses.premix(dose, one.strength).stock

    def too_small(self, one: Colour) -> bool:
        """Whether that is less than this scale weighs well."""
        return bool(self.batches) and self.smallest_weighed(one) < self.least * (1 - 1e-9)

    @cached_property
    def small(self) -> tuple[Colour, ...]:
        """Colours of which this scale weighs some dose badly, the smallest dose first."""
        return tuple(sorted(filter(self.too_small, self.colours), key=self.smallest_weighed))

    def premix(self, one: Colour) -> tuple[float, Premix] | None:
        """A pre-mix worth making: its strength, and the whole of it; None where it would be mostly waste, or there is one."""
        strength = small_doses.premix_strength(self.smallest(one), self.least)
        made = max(self.need(one), self.least)
        wasteful = made > colour.standard("premix waste") * self.need(one) or strength < _WEAKEST
        if one.strength is not None or wasteful or (one.jar is not None and made > one.jar):
            return None
        return strength, small_doses.premix(made, strength)

    def finer(self, one: Colour) -> Shown:
        """The next scale step, a power of ten as pocket scales have it, that weighs its smallest dose."""
        coarsest = from_si(small_doses.coarsest_step_for(self.smallest_weighed(one), self.tolerance, standard("coverage")), "mass", self.face.unit)
        step = 10.0 ** math.floor(math.log10(coarsest) + 1e-9)
        return Shown(trimmed(f"{step:.6f}"), self.face.unit, to_si(step, "mass", self.face.unit))

    @property
    def drop(self) -> float:
        """One drop, kg: the maker's own, or a standard dropper's of water."""
        fifty = self.given.maybe("drops_50")
        return fifty / 50 if fifty is not None else colour.standard("drop") * colour.standard("drop density") / 1000

    def drops_spread(self, count: int) -> float:
        """Standard uncertainty of so many drops, a fraction."""
        own = self.given.maybe("drops_50") is not None
        return small_doses.drops_spread(count, 0.0 if own else colour.standard("drop spread") / math.sqrt(3))

    # ------------------------------------------------------------ writing

    def grams(self, mass: float, one: Colour | None = None) -> Shown:
        """A mass on the scale's step where the scale is good enough for it, else with the figures it has; a start is rounded down."""
        low = self.way == "effect" and one is not None
        if mass >= self.least * (1 - 1e-9):
            return self.face.show(self.face.down(mass) if low else mass)
        return self.fine(mass, 2 if low else 3, "down" if low else "nearest")

    def fine(self, mass: float, figures: int = 3, rounding: Rounding = "nearest") -> Shown:
        """A mass with up to so many figures, in the scale's unit."""
        shown = self.given.write(mass, ("mass", Style(self.face.unit, figures=figures)), rounding)
        return Shown(trimmed(shown.text), shown.unit, shown.si)

    @property
    def resin_style(self) -> Style:
        """How an amount of mixed resin is written."""
        return Style(self.given.pick("g", "oz"), figures=3)

    @property
    def share_style(self) -> Style:
        """How a share that is written down is written."""
        return Style("%", figures=3)

    def resin_text(self, mass: float) -> Shown:
        """An amount of mixed resin, as typed."""
        shown = self.given.write(mass, ("mass", Style(self.given.pick("g", "oz"), figures=4)))
        return Shown(trimmed(shown.text), shown.unit, shown.si)

    def percent(self, share: float) -> Shown:
        """A share of the mixed resin."""
        shown = self.given.write(share, ("share", self.share_style))
        return Shown(trimmed(shown.text), shown.unit, shown.si)

    def round_percent(self, share: float) -> str:
        """A share with no zeros at its end."""
        return f"{100 * share:.3g} %"

    def on_scale(self, one: Colour, resin: float) -> Shown:
        """What goes on the scale for a batch of so much resin: the colour, or the pre-mix that holds it."""
        dose = one.share * resin
        return self.grams(dose, one) if one.strength is None else self.grams(small_doses.premix(dose, one.strength).stock)

    def in_all(self, one: Colour) -> Shown:
        """What all batches take of it: the colour, or the pre-mix that holds it."""
        need = self.need(one)
        if one.strength is not None:
            return self.on_scale(one, self.resin)
        return self.face.show(need) if need >= self.least * (1 - 1e-9) else self.fine(need, 3, "up")

    # ------------------------------------------------------------ reading

    def _colour(self, n: int, name: str) -> Colour:
        given = self.given
        kind = colour.kinds()[given.choice(f"kind_{n}")]
        most = given.maybe(f"most_{n}")
        inside, spread = self._inside(n) if self.tinting else (0.0, 0.0)
        one = Colour(
            n, kind, name, self._share(n, kind, inside), most or kind.caution, most or kind.stop, most is not None,
            inside, spread, given.maybe(f"jar_{n}"), given.maybe(f"strength_{n}"),
        )  # fmt: skip
        if one.strength is not None and one.share > _ROOM * one.strength and self.batches:
            resin = max(self.batches)
            stock = self.resin_text(small_doses.premix(one.share * resin, one.strength).stock)
            least = self.given.write(one.share / _ROOM, "share", "up")
            raise InputError(f"strength_{n}", "weak-premix", stock=str(stock), resin=str(self.resin_text(resin)), least=str(least))
        return one

    def _share(self, n: int, kind: Kind, inside: float) -> float:
        given = self.given
        if self.tinting:
            return self._checked(f"{_LEDGER[given.choice('ledger')]}_{n}", inside, given.si("tinted"))
        if self.way == "effect":
            share = colour.start(given.choice(f"effect_{n}"), kind.id, self.depth)
            assert share is not None  # what a kind cannot do was refused before
            return share
        by_weight = given.choice("was") == "weights"
        share = self._checked(f"was_{n}", given.si(f"was_{n}"), given.si("was_resin")) if by_weight else given.si(f"share_{n}")
        before = given.maybe("was_depth")
        if kind.clear and self.depth is not None and before is not None:
            share = colour.same_depth(share, before, self.depth)
        return share

    def _checked(self, field: str, mass: float, resin: float) -> float:
        if mass > resin:
            raise InputError(field, "more-colour", given=str(self.fine(mass)), resin=str(self.resin_text(resin)))
        return colour.share_of(mass, resin)

    def _inside(self, n: int) -> tuple[float, float]:
        """What went into the bucket, kg, and its standard uncertainty as a fraction."""
        given, ledger = self.given, self.given.choice("ledger")
        one = net_uncertainty(self.step)
        if ledger == "bottle":
            before, now = given.si(f"before_{n}"), given.si(f"after_{n}")
            if now > before:
                raise InputError(f"after_{n}", "heavier-now", before=str(self.fine(before, 4)))
            return before - now, one / (before - now) if before > now else 0.0
        if ledger == "drops":
            count = round(sum(given.many(f"drops_{n}")))
            return count * self.drop, self.drops_spread(count) if count else 0.0
        added = [mass for mass in given.many(f"added_{n}") if mass > 0]
        total = sum(added)
        return total, one * math.sqrt(len(added)) / total if total else 0.0


#: Where the ledger's figure of a colour stands.
_LEDGER = {"weighed": "added", "bottle": "after", "drops": "drops"}


def _names(given: Given, count: int) -> list[str]:
    """What each colour is called: by the maker, else by its kind, and numbered where two are the same."""
    short = [colour.kinds()[given.choice(f"kind_{n}")].short for n in range(1, count + 1)]
    return [
        given.words(f"name_{n}") or (f"{kind} {n}" if short.count(kind) > 1 else kind) for n, kind in enumerate(short, start=1)
    ]
