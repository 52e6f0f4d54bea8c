"""The answer to Is the air right?: what to warm, to dry or to wait for, and what decides it."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Answer, Band, Carry, Caution, Change, Figure, Headline, Limit, Line, Tone, figure
from calc.casting import air, warming
from calc.casting.air import Air
from calc.quantity.writing import Style
from calc.questions import Given, takes
from calc.questions._is_the_air.case import Coldest, air_of, coldest_of, compared_with, resin_of, shorter, thickness_band, working_time
from calc.questions._is_the_air.words import apart, degrees, margin_wanted, over, per_cent
from calc.questions._is_the_air.working import working

DRY_ABOVE_K = air.limit("dry above")  # warmer than this, drying the air comes before warming it
NIGHT_K = air.limit("night")
DRIER = air.limit("drier")
LEAST_HUMIDITY = air.limit("driest")


def answer(given: Given) -> Answer:
    """Hold the air against dew, humidity and blush.

    Parameters
    ----------
    given : the parsed fields of the question.

    Returns
    -------
    Answer
        ``values``: ``dew_point``, ``margin`` (surface over it), ``least`` (how cold room and surfaces may get), ``verdict``
        (0 no stop found, 1 take care, 2 stop), and where the resin was asked about ``viscosity`` and ``working`` (s).
    """
    coldest = coldest_of(given)
    it = air_of(given, coldest)
    tone = _tone(it)
    verdict = ("go", "caution", "stop").index(tone)
    values = {
        "dew_point": figure(degrees(given, it.dew_k, "up"), "temperature", it.dew_k),
        "margin": Figure(it.margin_k, "temperature difference", over(given, it.margin_k)),
        "least": figure(degrees(given, it.least_k, "up"), "temperature", it.least_k),
        "verdict": Figure(float(verdict), "count", ("no stop found", "take care", "stop")[verdict]),
    }
    sources = ["wmo-8", "iso-8502-4", "coating-guides", "blush-makers", "gum"]
    resin = resin_of(given)
    if resin is not None:
        usual = thickness_band(resin, compared_with(given))[0]
        values["viscosity"] = Figure(usual, "ratio", f"{usual:.2g} times")
        time = working_time(given, resin)
        if time is not None:
            values["working"] = figure(given.write(time, "minutes", "down"), "time", time)
        sources += ["viscosity-series", "pot-life-rule"]
    if given.maybe("thickness") is not None:
        sources += ["plane-wall", "iso-6946", "wood-handbook-4-15"]
    return Answer(
        _headline(given, it, coldest),
        lines=_lines(given, it, coldest),
        limits=_limits(given, it),
        changes=tuple(_changes(given, it, coldest)),
        band=_band(given, it),
        cautions=tuple(_cautions(given, it, coldest)),
        working=tuple(working(given, it, coldest)),
        sources=(*sources, "judgement"),
        carries=tuple(_carries(given, it)),
        values=values,
    )


def _tone(it: Air) -> Tone:
    if it.wet:
        return "stop"
    return "caution" if it.blush_likely or it.doubtful or it.doubtful_damp else "go"


def _headline(given: Given, it: Air, coldest: Coldest) -> Headline:
    """A stop and a blush lead with what to warm, to dry or to wait for."""
    tone, target = _tone(it), it.least_k
    dew = f"Dew point {degrees(given, it.dew_k, 'up')}; {coldest.name} is"
    if it.margin_k > 0:
        state = f"{dew} {over(given, it.margin_k, 'it')} ({margin_wanted(given.system)} wanted)."
    else:
        warm = f"; warm it to {degrees(given, target, 'up')}" if it.room_k >= target else ""
        state = f"{dew} {apart(given.system, target - it.surface_k, 'up')} too cold: water settles on it{warm}."
    if tone == "go":
        return Headline("The air", "No stop found", "", f"Pouring is your call. {state}", tone)
    dried = given.write(it.dry_to, ("share", Style("%", step=1)), "down")
    if not (it.wet or it.blush_likely) and it.doubtful_damp:
        over_what = air.limit("blush humidity" if it.dampest.blush_likely else "humidity limit")
        means = "this cold, it may blush" if it.dampest.blush_likely else "too damp for any coating"
        say = f"Dry the air until it reads {dried}, or warm it: {per_cent(given, it.humidity_error)} off, your hygrometer may mean over "
        say += f"{per_cent(given, over_what)}, and {means}. To pour without is your call. {state}"
        return Headline("The air", "No stop found", "", say, tone)
    if not (it.wet or it.blush_likely):
        lacking = apart(given.system, air.limit("dew margin") - it.margin_k + it.margin_error_k, "up")
        say = f"Warm {coldest.name} by {lacking} more: that covers what your instruments may be off; to pour without is your call. {state}"
        return Headline("The air", "No stop found", "", say, tone)
    why = state if it.wet else "Cold and damp together: likely to blush."
    shown = degrees(given, target, "up")
    if it.room_k >= target:
        return Headline(f"Wait until {coldest.name} is at", shown.text, shown.unit, f"Leave it in this room, closed or wrapped, until then. {why}", tone)
    if target > DRY_ABOVE_K:
        say = f"{_hygrometer(given, it)}Or warm the room to {shown}, but resin hardens fast in a hot room. {why}"
        return Headline("Dry the air to", dried.text, dried.unit, say, tone)
    say = f"And all that is in it, with no open flame. Or dry the air to {dried}. {_hygrometer(given, it)}{why}"
    return Headline("Warm the room to", shown.text, shown.unit, say, tone)


def _hygrometer(given: Given, it: Air) -> str:
    """Why the air is dried to less than the limit."""
    return f"That leaves {per_cent(given, it.humidity_error)} for your hygrometer. " if it.humidity_error else ""


def _limits(given: Given, it: Air) -> tuple[Limit, ...]:
    """How cold room and surfaces may get with the water that is in the air; the warmest rung decides."""
    rungs = {
        "dew": (it.needed_k, "Dew", f"{margin_wanted(given.system)} above the dew point, for every surface."),
        "humidity": (it.damp_below_k, "Humidity", f"Cooled below this, the air is over {per_cent(given, air.limit('humidity limit'))}."),
        "blush": (
            it.blush_below_k,
            "Blush",
            f"Below this it is under {degrees(given, air.limit('blush temperature'))} and over {per_cent(given, air.limit('blush humidity'))} together.",
        ),
    }
    rules = max(rungs, key=lambda id: rungs[id][0])
    return tuple(
        Limit(id, name, degrees(given, temperature_k, "up").text, degrees(given, temperature_k).unit, why, id == rules)
        for id, (temperature_k, name, why) in rungs.items()
    )


def _lines(given: Given, it: Air, coldest: Coldest) -> tuple[Line, ...]:
    dew = degrees(given, it.dew_k, "up")
    lines = [
        Line.of("Dew point", dew, "of the air in the room"),
        Line.of("Keep room and surfaces at", degrees(given, it.least_k, "up"), "or warmer until it has cured, overnight too"),
    ]
    thickness = given.maybe("thickness")
    if thickness is not None and coldest.temperature_k < it.least_k < it.room_k:
        time = warming.time_to_warm(thickness, coldest.temperature_k, it.room_k, it.least_k)
        lines.append(Line.of("Wood warm through in about", given.write(time, "hours", "up"), "lying on battens in still air; measure it"))
    return (*lines, *_resin_lines(given))


def _resin_lines(given: Given) -> Iterator[Line]:
    resin = resin_of(given)
    if resin is None:
        return
    at, reference = degrees(given, resin), degrees(given, compared_with(given))
    if at.text != reference.text:
        usual, low, high = thickness_band(resin, compared_with(given))
        yield Line(f"Resin at {at} is", f"{usual:.2g} times", "", f"as thick as at {reference}; {low:.2g} to {high:.2g} by kind")
    time = working_time(given, resin)
    if time is not None:
        sheet = f"{given.write(given.si('working'), 'minutes')} at {degrees(given, given.si('sheet_temperature'))}"
        yield Line.of("Working time, at most", given.write(time, "minutes", "down"), f"the sheet: {sheet}; a full bucket has less")
    elif resin > given.si("room"):
        left = per_cent(given, shorter(resin, given.si("room")), "down")
        yield Line("Working time left", left, "", f"of that at {degrees(given, given.si('room'))}, at most")


def _changes(given: Given, it: Air, coldest: Coldest) -> Iterator[Change]:
    shown = degrees(given, it.least_k, "up")
    if it.surface_k < it.least_k <= it.room_k:
        yield Change(f"Warm {coldest.name} to {shown}", over(given, shown.si - it.dew_k))
    if it.room_k < it.least_k:
        yield Change(f"Warm the room and all in it to {shown}, no water added", f"{per_cent(given, air.humidity_at(it.dew_k, shown.si))}, dew point as it is")
    drier = it.dry_to if it.wet or it.blush_likely or it.doubtful_damp else it.humidity - DRIER
    if LEAST_HUMIDITY < drier < it.humidity:
        yield Change(f"Dry the air to {per_cent(given, drier, 'down')}", f"dew point {degrees(given, air.dew_point(it.room_k, drier), 'up')}")
    if not it.wet:
        night = degrees(given, it.room_k - NIGHT_K)
        damp = air.humidity_at(it.dew_k, night.si)
        then = "dew on everything" if damp >= 1 else f"{per_cent(given, damp)}, {over(given, night.si - it.dew_k)}"
        yield Change(f"If the room cools to {night}", then)


def _band(given: Given, it: Air) -> Band:
    low, high = it.margin_k - it.margin_error_k, it.margin_k + it.margin_error_k
    unit = given.write(0, "temperature difference").unit
    texts = (given.write(low, "temperature difference", "down").text, given.write(high, "temperature difference", "up").text)
    thermometers = "thermometers" if it.measured else "thermometer"
    text = (
        f"Hygrometer off by {per_cent(given, it.humidity_error)}, {thermometers} by {apart(given.system, it.temperature_error_k)}: "
        f"{_between(texts[0], texts[1], unit)} the dew point."
    )
    return Band(text, f"{texts[0]} {unit}", f"{texts[1]} {unit}")


def _between(low: str, high: str, unit: str) -> str:
    """From how far to how far over the dew point, without a sign.

    >>> _between("2", "5", "°C"), _between("-2", "3", "°C"), _between("-13", "-4", "°F")
    ('2 to 5 °C above', 'from 2 °C below to 3 °C above', '4 to 13 °F below')
    """
    if not low.startswith("-"):
        return f"{low} to {high} {unit} above"
    below = low.removeprefix("-")
    return f"{high.removeprefix('-')} to {below} {unit} below" if high.startswith("-") or high == "0" else f"from {below} {unit} below to {high} {unit} above"


def _cautions(given: Given, it: Air, coldest: Coldest) -> Iterator[Caution]:
    if it.margin_k <= 0:
        yield Caution("dew", "stop", "It is wet by now: wipe it and let it dry when it is warm. Resin does not bond to wet wood.")
    if not coldest.measured:
        yield Caution(
            "surface", "caution", f"No surface measured: taken as {degrees(given, it.surface_k)}, like the room. A stone bench or wood from a store is colder."
        )
    elif given.maybe("surface") is None and coldest.name != "the resin":
        yield Caution("store", "caution", "Taken as cold as the store. Measure it when it has stood: what was measured overrules this.")
    if it.room_k < max(it.least_k, air.limit("blush temperature")):
        yield Caution("flame", "caution", "A gas or oil heater with no flue puts water and fumes into the room, and both feed blush.")
    if it.blush_likely:
        yield Caution("blush", "caution", "If the cured face feels greasy or waxy: wash it with warm water, dry it, scuff it, then the next layer.")
    resin = given.maybe("resin")
    if resin is not None and resin > it.room_k:
        yield Caution("warm-resin", "caution", "Warm resin hardens sooner and the pour peaks hotter: ask again how deep and how much at a time.")


def _carries(given: Given, it: Air) -> Iterator[Carry]:
    """The air to the wood that stands in it; where nothing stops the pour, the room to the list before it and to the clock."""
    air_now = {"humidity": given.as_typed("humidity")}
    if takes("dry-enough", "shop", it.room_k) and takes("dry-enough", "humidity", it.humidity):
        yield Carry("dry-enough", {"shop": given.as_typed("room")} | air_now)
    if it.wet:
        return
    room = {"room": given.as_typed("room")}
    yield Carry("before-a-pour", room | ({"resin": given.as_typed("resin")} if given.typed("resin") else {}))
    if takes("when-can-i", "room", it.room_k):
        yield Carry("when-can-i", room)
