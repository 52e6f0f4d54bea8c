"""What a maker reads: the one thing to do, the figures beside it, what would change them, and the cautions."""

from __future__ import annotations

from dataclasses import replace

from calc.answers import Band, Caution, Grid, Headline, Line, Tone
from calc.casting import budget, kits, weighing
from calc.casting.standards import standard as of_scale
from calc.casting.sufficiency import Demand, odds_along, standard
from calc.quantity.units import to_si
from calc.quantity.writing import Rounding, Shown, Style, restate
from calc.questions._is_it_enough.case import Case
from calc.words import both, odds

LEVELS = (0.90, 0.95, 0.99)
TIMES = {0.90: "9 times in 10", 0.95: "19 times in 20", 0.99: "99 times in 100"}
#: What adds to the spread, as a sentence says it.
FROM = {
    "wood": "the wood",
    "depth": "the fill depth",
    "size": "the sizes of the mould",
    "level": "the level",
    "soak": "what soaks in",
    "loss": "what stays in the bucket",
    "density": "the density of the resin",
    "volume": "the measured volume",
    "others": "the other moulds",
}
PARTS = {
    "wood": "Wood",
    "depth": "Fill depth",
    "size": "Sizes of the mould",
    "level": "Level",
    "soak": "What soaks in",
    "loss": "What stays in the bucket",
    "density": "Density of the resin",
    "volume": "Measured volume",
    "others": "The other moulds",
}
_BOTH_SIDES = 2  # standard uncertainties that take in 19 of 20


def amount(case: Case, value: float, rounding: Rounding = "nearest", figures: int = 3) -> Shown:
    """An amount of the shelf, in its unit."""
    if case.by_volume:
        return case.given.write(value, ("volume", Style(case.given.pick("mL", "US fl oz"), figures=figures)), rounding)
    return grams(case, value, rounding, figures)


def grams(case: Case, kg: float, rounding: Rounding = "nearest", figures: int = 3) -> Shown:
    """A mass."""
    return case.given.write(kg, ("mass", Style(case.given.pick("g", "oz"), figures=figures)), rounding)


def volume(case: Case, m3: float, rounding: Rounding = "nearest") -> Shown:
    """A volume."""
    return case.given.write(m3, "volume", rounding)


def percent(share: float) -> str:
    """A share in whole percent."""
    return f"{100 * share:.0f} %"


def times(case: Case) -> str:
    """The odds asked for."""
    return TIMES[case.sure]


# ---------------------------------------------------------------- the one thing to do


def tone_of(case: Case, chance: float | None, rough: bool) -> Tone:
    """How odds are met: under the odds asked for with care, under four in five not at all."""
    if chance is None:
        return "caution" if rough else "go"
    if chance < min(standard("turn back"), case.sure):
        return "stop"
    return "go" if chance >= case.sure - 1e-9 else "caution"


def headline(case: Case) -> Headline:
    """The amount to have; with a shelf the odds; with a shortage how much more."""
    if case.pouring:
        return _during(case)
    likely = case.wanted.likely
    if case.have is None or case.odds is None:
        shown = amount(case, case.wanted.for_odds(case.sure), "up")
        say = f"Enough {times(case)}. Most likely {amount(case, likely)} is used, with what stays in the bucket."
        return Headline("Have this much resin ready", shown.text, shown.unit, say, tone_of(case, None, rough(case)))
    tone = tone_of(case, case.odds, rough(case))
    spare = case.have - likely
    if tone == "stop":
        more = amount(case, case.more, "up", 2)
        short = f", most likely {amount(case, -spare, 'up', 2)} short" if spare < 0 else ""
        say = f"Then it is enough {times(case)}. As it is, the odds are {_chance(case.odds)}{short}."
        return Headline("Get this much more first", more.text, more.unit, say, tone)
    over = "none to spare" if spare <= 0 else f"about {amount(case, spare, 'down', 2)} spare"
    say = f"Most likely {over}."
    if tone == "caution":
        say += f" {amount(case, case.more, 'up', 2)} more makes it {times(case)}."
    return Headline("Odds that it is enough, about", odds(case.odds), "", say, tone)


def _chance(share: float) -> str:
    words = odds(share)
    return words if words.startswith("under") else f"about {words}"


def _during(case: Case) -> Headline:
    """What the moulds are still owed, and whether what is left covers it."""
    used, owed, still = case.given.si("used"), case.forecast.likely - case.given.si("used"), case.still
    off = used / case.reckoned.weighed(case.density, case.u_density).likely - 1
    than = f"{percent(abs(off))} {'more' if off > 0 else 'less'} than reckoned so far. " if abs(off) >= 0.005 else "As reckoned so far. "
    if case.surprise > standard("leak"):
        say = f"Feel under the mould and along its seams, then read the level again. If it holds, still to pour: about {grams(case, owed, 'up')}."
        over = grams(case, case.too_much, "down", 2)
        return Headline("Look for a leak: too much went in, by", over.text, over.unit, say, "stop")
    chance = None if case.left is None else still.odds(case.left)
    tone = "caution" if chance is None and case.surprise < -standard("leak") else tone_of(case, chance, False)
    if case.left is not None and chance is not None and tone == "stop":
        more = grams(case, still.for_odds(case.sure) - case.left, "up", 2)
        say = f"{than}Still to pour: about {grams(case, still.likely, 'up')}; left: {grams(case, case.left, 'down')}. Mix the rest before this batch sets."
        return Headline("Mix this much more now", more.text, more.unit, say, tone)
    shown = grams(case, owed, "up")
    say = than
    if case.left is not None and chance is not None:
        say += f"Odds that what is left is enough: {_chance(chance)}."
    else:
        say += f"Have {grams(case, still.for_odds(case.sure), 'up')} left and it is enough {times(case)}."
    return Headline("Still to pour into it" if case.count == 1 else "Still to pour into them", shown.text, shown.unit, say, tone)


def rough(case: Case) -> bool:
    """Whether the spread is wide for the amount."""
    return case.wanted.u > standard("rough") * case.wanted.likely


def band(case: Case) -> Band:
    """How far it may be off."""
    wanted = case.wanted
    low, high = max(0.0, wanted.likely - _BOTH_SIDES * wanted.u), wanted.likely + _BOTH_SIDES * wanted.u
    lowest, highest = amount(case, low, "down"), amount(case, high, "up")
    return Band(f"19 times in 20 it takes between {lowest} and {highest}; most of that spread is from {largest(case)}.", str(lowest), str(highest))


def largest(case: Case) -> str:
    """The part that makes it most unsure, by the same parts as the table."""
    return FROM[case.wanted.by_name()[0].name]


# ---------------------------------------------------------------- figures beside it


def lines(case: Case) -> tuple[Line, ...]:
    """Figures that are acted on, beside the first."""
    out = []
    if case.pouring:
        label = "These moulds take in all" if case.count > 1 else "The mould takes in all"
        out.append(Line.of(label, grams(case, case.forecast.likely), "most likely, by the level read"))
    elif case.have is not None:
        out.append(Line.of("Most likely it takes", amount(case, case.wanted.likely), "with what stays in the bucket"))
    if not case.pouring:
        out += [Line.of(f"Enough {TIMES[level]}", amount(case, case.wanted.for_odds(level), "up")) for level in LEVELS]
        if case.by_volume:
            out.append(Line.of(f"By weight, {times(case)}", grams(case, case.wanted_kg.for_odds(case.sure), "up"), "for the scale"))
        out += kit_lines(case)
        if case.count > 1 and case.filled is not None:
            out.append(Line("It fills", f"{case.filled} of the {case.count}", "", f"{times(case)}, one after another"))
    out += order_lines(case)
    out += top_up_lines(case)
    return tuple(out)


def kit_lines(case: Case) -> list[Line]:
    """Which kits to open, or to buy."""
    if case.opened is None:
        return [Line("Kits", "none needed", "", "what is loose is enough for the odds asked for")] if case.sizes and case.loose else []
    least, cheap = case.opened
    verb = "Buy" if case.there is None else "Open"
    if least is None:
        return [Line(verb, "all of them", "", "and they are still not enough for the odds asked for")]
    total = case.wanted.for_odds(case.sure) + least.left
    out = [Line(verb, _kits(case, least), "", f"{_left(case, total)}{_priced(least)}; the least left over")]
    if cheap is not None and cheap.counts != least.counts:
        total = case.wanted.for_odds(case.sure) + cheap.left
        out.append(Line(f"Or {verb.lower()}", _kits(case, cheap), "", f"{_left(case, total)}{_priced(cheap)}; the cheapest"))
    return out


def _left(case: Case, total: float) -> str:
    return f"about {amount(case, total - case.wanted.likely, 'nearest', 2)} left"


def _priced(choice: kits.Choice) -> str:
    return "" if choice.price is None else f", for {choice.price:g}"


def _kits(case: Case, choice: kits.Choice) -> str:
    parts = [f"{n} × {_kit(case, size)}" for n, size in zip(choice.counts, case.sizes, strict=True) if n]
    return both(parts)


def _kit(case: Case, size: float) -> str:
    """What a kit holds, as its label would say it."""
    kind, small, large = ("volume", ("mL", "US fl oz"), ("L", "US gal")) if case.by_volume else ("mass", ("g", "oz"), ("kg", "lb"))
    unit = case.given.pick(*large)
    if size < to_si(1, kind, unit) * (1 - 1e-9):
        unit = case.given.pick(*small)
    return f"{restate(size, kind, unit)} {unit}"


def order_lines(case: Case) -> list[Line]:
    """In which order to fill the moulds."""
    if not case.others:
        return []
    names = [portion.name for portion in case.portions]
    last = case.portions[-1]
    why = f"it can do without {grams(case, last.spare, 'down')}" if last.spare > 0 else "it is the largest, so the same amount shows least"
    return [Line("Fill in this order", ", then ".join(names), "", f"a shortage then lands in the last: {why}")]


def top_up_lines(case: Case) -> list[Line]:
    """What a brim-full mould asks for later."""
    top = case.top_up
    if top is None:
        return []
    out = []
    if top.soon > 0:
        shown = grams(case, case.density * top.soon, "up", 2)
        out.append(Line.of("Top up while it flows", shown, "as the wood drinks; keep it back from this batch"))
    low, high = (grams(case, case.density * max(0.0, top.later + sign * top.later_off), "up", 2) for sign in (-1, 1))
    note = f"a fresh batch, {low} to {high}: once the level has stopped and the skin is firm, within the sheet's time for the next layer"
    if case.given.maybe("air"):
        note += "; in a pot after it has been opened"
    out.append(Line.of("Top up once it has set", grams(case, case.density * top.later, "up", 2), note))
    share = case.given.maybe("colour")
    if share:
        dose, least = share * case.density * (top.later + top.later_off), least_dose(case)
        shown = case.given.write(dose, ("mass", Style(case.given.pick("g", "oz"), figures=2)))
        note = f"for {high} of it, the same share by weight"
        if dose < least:
            smallest = case.given.write(least, ("mass", Style(case.given.pick("g", "oz"), figures=2)), "up")
            note += f"; this scale weighs nothing under {smallest} well: colour A for both batches at once, and keep some of it back"
        out.append(Line.of("Colour for that batch", shown, note))
    return out


def least_dose(case: Case) -> float:
    """The smallest dose that the scale weighs well, kg; a kitchen scale where none is named."""
    step = case.given.maybe("step") or of_scale("scale step") / 1000
    return _BOTH_SIDES * weighing.net_uncertainty(step) / standard("dose off")


def grids(case: Case) -> tuple[Grid, ...]:
    """What makes it unsure; who gets what."""
    out = []
    if case.pouring and (case.others or case.count > 1):
        rows = tuple((name, str(grams(case, poured)), str(grams(case, owed, "up"))) for name, poured, owed in case.owed)
        out.append(Grid("Still owed, in the order of filling", ("Mould", "Poured", "Still owed"), rows))
    elif case.others:
        out.append(_shares(case))
    total = case.wanted.u**2
    rows = () if case.pouring else tuple(
        (PARTS[spread.name], f"± {amount(case, _BOTH_SIDES * spread.u, 'up', 2)}", f"{percent(spread.u**2 / total)}")
        for spread in case.wanted.by_name() if spread.u**2 >= 0.005 * total
    )  # fmt: skip
    if rows:
        out.append(Grid("What makes it unsure", ("Part", "Give or take", "Share"), rows))
    return tuple(out)


def _shares(case: Case) -> Grid:
    """What each mould wants, and with a shelf its odds."""
    head: tuple[str, ...] = ("Mould", "Most likely", "Can do without")
    chances: list[float] = []
    if case.have is not None:
        head = (*head, "Odds it is full")
        loss = Demand(case.density * case.loss.likely, ())
        first, *rest = case.portions
        chances = odds_along([replace(first, demand=first.demand.plus(loss)), *rest], case.in_kg(case.have))
    rows = []
    for n, portion in enumerate(case.portions):
        row = (portion.name, str(grams(case, portion.demand.likely)), str(grams(case, portion.spare, "down")) if portion.spare else "nothing")
        rows.append((*row, odds(chances[n])) if chances else row)
    return Grid("The moulds, in the order of filling", head, tuple(rows))


# ---------------------------------------------------------------- cautions


_MISTYPED = Caution("leak", "caution", "Where nothing leaks, something was typed wrong.")
_LEAK = Caution("leak", "caution", "Where nothing leaks it went into a void under the wood, or something was typed wrong.")
_FOAM = Caution("foam", "caution", "Far less went in than the level says. Look for air under the wood or foam on top, and read the level again.")


def cautions(case: Case) -> tuple[Caution, ...]:
    """Few, each where it decides."""
    out = []
    if case.counted_twice:
        text = "Resin on the shelf is just what your unopened kits hold, and both are counted. If they are the same resin, leave one of the two empty."
        out.append(Caution("twice", "caution", text))
    if case.pouring and case.surprise < -standard("leak"):
        out.append(_FOAM)
    if case.pouring and case.surprise > standard("leak"):
        out.append(_LEAK if case.wood.volume > 0 else _MISTYPED)
    if rough(case) and not case.pouring:
        out.append(Caution("rough", "caution", f"The spread is wide, most of it from {largest(case)}. Measure that better before you mix."))
    wall = case.given.maybe("wall")
    if wall is not None and case.given.choice("brim") == "no" and case.mould.depth > wall - budget.within(standard("depth") / 1000):
        out.append(Caution("brim", "caution", "Full to the rim: the level falls while it hardens. 'Filled to the brim' under More tells the top-up."))
    if case.given.words("kind") == "spalted" and case.wood.soak > 0:
        out.append(Caution("drinks", "caution", "Punky wood may go on drinking until the resin sets. Seal it first, or keep a top-up back."))
    return tuple(out)
