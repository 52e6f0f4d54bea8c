"""What Dry enough? says first: the moisture, what to do, what decides it and what would change it."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Answer, Band, Carry, Change, Headline, Limit, Line, Tone, figure
from calc.casting import moisture
from calc.casting.moisture import GRADES, Grade, percent
from calc.quantity.writing import Style, trimmed
from calc.questions._dry_enough.case import WHOLE, Wood
from calc.questions._dry_enough.cautions import cautions
from calc.questions._dry_enough.working import sources, working

_JUDGED = {
    "meter": "wettest reading", "analyser": "wettest reading", "oven": "oven-dry sample", "log": "steady in this air", "none": "not measured",
}
_TONES: dict[Grade, Tone] = {"go": "go", "caution": "caution", "strong": "caution", "stop": "stop"}


def answer(wood: Wood) -> Answer:
    """All parts; raises the question's own errors."""
    found, moved, dry = wood.found, wood.moved, wood.mass_at(wood.limits.go)
    return Answer(
        headline=_headline(wood),
        lines=_lines(wood),
        limits=_ladder(wood),
        changes=_changes(wood),
        band=_band(wood),
        cautions=cautions(wood),
        working=working(wood),
        sources=sources(wood),
        carries=tuple(_carries(wood)),
        values={
            "moisture": figure(None if found is None else wood.pc(found, "up"), "share", found),
            "home": figure(wood.pc(wood.home), "share", wood.home),
            "emc_here": figure(wood.pc(wood.here), "share", wood.here),
            "go_limit": figure(wood.pc(wood.limits.go, "down"), "share", wood.limits.go),
            "moves": figure(None if moved is None else wood.length(moved), "length", moved),
            "weight_dry": figure(None if dry is None else wood.weight(dry), "mass", dry),
            "grade": figure(wood.given.write(GRADES.index(wood.grade), "count"), "count"),
        },
    )


def _headline(wood: Wood) -> Headline:
    """The moisture and what to do, or how to get it measured or dry."""
    if wood.judged == "none":
        say = "Read a meter on a fresh end cut, or weigh the piece each week until it changes by less than 0.5 %."
        return Headline("Moisture not known", "Measure it", "", say.replace("0.5 %", wood.steady_limit()), "stop")
    if wood.found is None:
        return Headline("Not steady yet", "Wait", "", f"{_weigh_weekly(wood)} {_unsteady(wood)}", "stop")
    shown = wood.pc(wood.found, "up")
    if wood.grade == "stop":
        over = f"over {wood.level(percent('meter high'))}" if wood.off_scale else str(shown)
        return Headline(f"Too wet: {over}", "Wait", "", f"{_drier_air(wood)}{_weigh_weekly(wood)}{_dry_weight(wood)}", "stop")
    tone = "caution" if wood.too_dry else _TONES[wood.grade]
    at = f", in wood of {wood.warmth(wood.wood_k)}" if wood.corrected else ""
    return Headline(f"Moisture, {_JUDGED[wood.judged]}{at}", shown.text, shown.unit, _say(wood), tone)


def _weigh_weekly(wood: Wood) -> str:
    """The remedy that always holds."""
    return f"Weigh it each week until it changes by less than {wood.steady_limit()}."


def _unsteady(wood: Wood) -> str:
    """What the weight did instead."""
    rate = next(rate for rate in wood.rates if abs(rate) >= percent("steady"))
    return f"It {'lost' if rate > 0 else 'gained'} {wood.pc(abs(rate))} a week."


def _dry_weight(wood: Wood) -> str:
    """' At 10 % it will weigh 1190 g.' where that can be told."""
    dry = wood.mass_at(wood.limits.go)
    if dry is None or wood.off_scale:
        return ""
    return f" At {wood.level(wood.limits.go)} it will weigh {wood.weight(dry)}."


def _drier_air(wood: Wood) -> str:
    """'Dry it in air below ...' where this air never gets it dry enough."""
    if not wood.damp:
        return ""
    return f"Dry it in air below {wood.driest_air(wood.given.si('shop'))} humidity: in this air it stops at {wood.pc(wood.here)}. "


def _say(wood: Wood) -> str:
    """The one thing to do when a moisture is known."""
    assert wood.found is not None and wood.moved is not None
    if wood.misled:
        first = "Weigh it each week until it is steady, then cast. A meter misleads in this wood."
        return first if wood.limits.grade(wood.found) == "go" and not wood.too_dry else f"{first} {_movement_says(wood)}"
    if wood.once:
        return "Weigh it again in a week: it was steady once, and twice running counts."
    if wood.too_dry:
        air = wood.given.write(moisture.humidity_for(wood.home, wood.given.si("shop")), WHOLE)
        return f"Leave it a few weeks in air of about {air} humidity first: it is drier than where it will live. {_movement_says(wood)}"
    if wood.grade == "go":
        return "No stop found. Seal and cast it while it is this dry."
    aim = wood.level(wood.limits.go)
    if wood.grade == "caution":
        return f"Better dry it to {aim} first. {_movement_says(wood)}"
    return f"Dry it to {aim} first. {_movement_says(wood)} The bond opens, or the wood cracks."


def _movement_says(wood: Wood) -> str:
    """How much it would move, cast now."""
    assert wood.moved is not None
    verb = "shrink" if wood.moved < 0 else "swell"
    return f"Cast now, it would {verb} by up to {wood.length(wood.moved)} across {wood.size()}."


def _lines(wood: Wood) -> tuple[Line, ...]:
    """Figures that are acted on, beside the first."""
    out = []
    if wood.moved is not None and not round(abs(wood.moved), 9):
        out.append(Line("It would hardly move", wood.length(wood.moved).text, wood.length(wood.moved).unit, f"across {wood.size()}"))
    elif wood.moved is not None:
        note = f"by the time it holds {wood.level(wood.home)}, across {wood.size()}, if nothing held it"
        out.append(Line.of("It would shrink up to" if wood.moved < 0 else "It would swell up to", wood.length(wood.moved), note))
    out.append(Line.of("This air brings it to", wood.pc(wood.here), f"{wood.warmth(wood.given.si('shop'))}, {wood.humid('humidity')} humidity"))
    out.append(Line.of("Where it will live", wood.pc(wood.home), _home_note(wood)))
    dry, home = wood.mass_at(wood.limits.go), wood.mass_at(wood.home)
    if dry is not None and home is not None and wood.found is not None and wood.found > wood.limits.go and not wood.off_scale:
        out.append(Line.of(f"Weight at {wood.level(wood.limits.go)}", wood.weight(dry), f"at {wood.level(wood.home)}: {wood.weight(home)}"))
    if wood.judged == "log":
        change = wood.given.write(wood.given.si("now") * percent("steady"), ("mass", Style(wood.given.pick("g", "oz"), figures=2)), "down")
        out.append(Line.of("Steady is less than", change, "a week, for this piece; the scale has to show it"))
    return tuple(out)


def _home_note(wood: Wood) -> str:
    """Which home that is."""
    if wood.given.choice("home") == "own":
        return f"{wood.warmth(wood.given.si('home_temperature'))}, {wood.humid('home_humidity')} humidity"
    return wood.given.label_of("home").lower()


def _ladder(wood: Wood) -> tuple[Limit, ...]:
    """The three limits, and the one that decides."""
    limits, home = wood.limits, wood.level(wood.home)
    near = f"{wood.level(percent('match'))} over the {home} it will hold where it lives"
    far = f"{wood.level(percent('far'))} over the {home} it will hold where it lives; common practice, no source"
    decides = None if wood.found is None else limits.grade(wood.found)
    rungs: tuple[tuple[Grade, str, float, str], ...] = (
        ("go", "No reason to wait up to", limits.go, near if limits.match < percent("go") else "common practice, no source"),
        ("strong", "It moves enough to show above", limits.caution, far if limits.caution < percent("caution") else "common practice, no source"),
        ("stop", "Too wet to cast above", limits.stop, "common practice, no source"),
    )
    return tuple(
        Limit(id, name, trimmed(wood.pc(share, "down").text), "%", why, decides == id or (decides == "caution" and id == "go"))
        for id, name, share, why in rungs
    )


def _changes(wood: Wood) -> tuple[Change, ...]:
    """What would make it drier, or move less."""
    out = []
    here, shop = wood.here, wood.given.si("shop")
    if wood.damp and not wood.dry:
        out.append(Change(f"Air below {wood.driest_air(shop)} humidity at {wood.warmth(shop)}", _brings(wood, wood.limits.go)))
    if wood.found is not None and wood.found > wood.limits.go and here < wood.found and not wood.off_scale:
        left = wood.length(wood.moves(here, wood.shrinkage.tangential))
        out.append(Change("Leave it in this air until it is steady", f"{_brings(wood, here)}, {left} left to move"))
    if wood.moved and wood.found is not None and wood.known:
        on_edge = wood.length(wood.moves(wood.found, wood.shrinkage.radial))
        out.append(Change("Growth rings on edge across that size (quarter-sawn)", f"moves {on_edge}"))
    return tuple(out)


def _brings(wood: Wood, share: float) -> str:
    """A moisture, and what the piece then weighs."""
    weighs = wood.mass_at(share)
    return str(wood.pc(share)) if weighs is None or wood.off_scale else f"{wood.pc(share)}, {wood.weight(weighs)}"


def _band(wood: Wood) -> Band | None:
    """How far apart the readings lie, or how far off the hygrometer may be."""
    out = percent("hygrometer")
    humidity = wood.given.si("humidity")
    low, high = (wood.pc(moisture.equilibrium(wood.given.si("shop"), min(0.98, max(0.01, humidity + sign * out)))) for sign in (-1, 1))
    air = f"With a hygrometer {wood.given.write(out, WHOLE)} out, this air may mean {low.text} to {high}."
    if wood.read and wood.found is not None:
        driest, wettest = wood.pc(wood.read[0]), wood.pc(wood.found, "up")
        if len(wood.read) > 1:
            return Band(f"Readings from {driest.text} to {wettest}; the wettest counts.{_why_other(wood)}", str(driest), str(wettest))
        return Band(f"One reading only: the wettest spot may be elsewhere.{_why_other(wood)}", "", "")
    if wood.judged in ("log", "none"):
        return Band(air, str(low), str(high))
    return None


def _why_other(wood: Wood) -> str:
    """Why the readings told are not those that were typed."""
    typed = wood.given.many("readings")
    as_typed = " to ".join(dict.fromkeys((wood.pc(typed[0]).text, wood.pc(typed[-1]).text)))
    if wood.judged == "analyser":
        return f" You typed {as_typed} % of the wet weight; these are of the dry weight, as wood is told."
    if not wood.corrected:
        return ""
    off = "low in cold" if wood.read[-1] > typed[-1] else "high in warm"
    return f" You typed {as_typed} %: a meter reads too {off} wood, and yours is at {wood.warmth(wood.wood_k)}."


def _carries(wood: Wood) -> Iterator[Carry]:
    """The piece to its volume, its moisture too unless it has to change first; the air of the shop to the air for the pour."""
    given = wood.given
    piece = {"species": given.choice("species")} if given.typed("species") else {}
    if wood.found is not None and wood.grade != "stop":
        piece["moisture"] = str(wood.pc(wood.found, "up"))
        piece |= {"weight": given.as_typed("mass")} if given.typed("mass") else {}
    if piece:
        yield Carry("how-much-wood", piece | {"form": given.choice("figure")})
    air = {name: given.as_typed(field) for name, field in (("room", "shop"), ("humidity", "humidity"), ("surface", "wood")) if given.typed(field)}
    if air:
        yield Carry("is-the-air-right", air)
