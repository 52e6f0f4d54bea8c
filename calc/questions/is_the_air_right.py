"""Is the air right for a pour: does water settle on anything, will it blush, and what does warm resin cost?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.answers import Answer, Band, Caution, Change, Figure, Headline, Limit, Line, Tone, Working, figure
from calc.casting import air, warm_resin, warming
from calc.casting.air import Air
from calc.fields import Field, Quantity, measure
from calc.quantity import Rounding, Shown, Style, System, trimmed, write
from calc.questions import Given, Question, Rule, Table
from calc.sources import value

DRY_ABOVE_K = 298.15  # warmer than this, drying the air comes before warming it: resin hardens fast in a hot room; our judgement
NIGHT_K = 5.0  # how far a shop may cool overnight, for the example: our judgement
DRIER = 0.10  # how much drier, for the example: our judgement
LEAST_HUMIDITY = 0.35  # drier than this no dryer makes a shop: our judgement


@dataclass(frozen=True)
class Coldest:
    """The coldest thing the resin meets: its name in a sentence, its temperature (K), and whether it was measured."""

    name: str
    temperature_k: float
    measured: bool


def _coldest(given: Given) -> Coldest:
    """Of the surface (measured, or as cold as the store, or as warm as the room) and the resin."""
    surface, store, resin, room = given.maybe("surface"), given.maybe("store"), given.maybe("resin"), given.si("room")
    if surface is not None:
        found = Coldest("the coldest surface", surface, True)
    elif store is not None and store < room:
        found = Coldest("what comes from the store", store, True)
    else:
        found = Coldest("every surface", room, False)
    if resin is not None and resin < found.temperature_k:
        return Coldest("the resin", resin, True)
    return found


def _air(given: Given, coldest: Coldest) -> Air:
    return Air(
        given.si("room"),
        given.si("humidity"),
        coldest.temperature_k,
        coldest.measured,
        given.si("humidity_error"),
        given.si("temperature_error"),
    )


# ---------------------------------------------------------------- words


def _degrees(given: Given, temperature_k: float, rounding: Rounding = "nearest") -> Shown:
    return given.write(temperature_k, "temperature", rounding)


def _apart(system: System, difference_k: float, rounding: Rounding = "nearest") -> str:
    """A difference of temperature, to a whole degree; a margin that is wanted keeps its tenths."""
    return str(write(difference_k, "temperature difference", system, rounding))


def _margin_wanted(system: System) -> str:
    unit = "°C" if system == "metric" else "°F"
    shown = write(air.limit("dew margin"), ("temperature difference", Style(unit, figures=2)), system)
    return f"{trimmed(shown.text)} {shown.unit}"


def _over(given: Given, margin_k: float, what: str = "the dew point") -> str:
    """'4 °C above the dew point', or below it."""
    if margin_k < 0:
        return f"{_apart(given.system, -margin_k, 'up')} below {what}"
    return f"{_apart(given.system, margin_k, 'down')} above {what}"


def _per_cent(given: Given, share: float, rounding: Rounding = "nearest") -> str:
    return str(given.write(share, ("share", Style("%", step=1)), rounding))


# ---------------------------------------------------------------- the parts of the answer


def _tone(it: Air) -> Tone:
    if it.wet:
        return "stop"
    return "caution" if it.blush_likely or it.doubtful else "go"


def _headline(given: Given, it: Air, coldest: Coldest) -> Headline:
    """A stop and a blush lead with what to warm, to dry or to wait for."""
    tone, target = _tone(it), it.least_k
    dew = f"Dew point {_degrees(given, it.dew_k, 'up')}; {coldest.name} is"
    if it.margin_k > 0:
        state = f"{dew} {_over(given, it.margin_k, 'it')} ({_margin_wanted(given.system)} wanted)."
    else:
        warm = f"; warm it to {_degrees(given, target, 'up')}" if it.room_k >= target else ""
        state = f"{dew} {_apart(given.system, target - it.surface_k, 'up')} too cold: water settles on it{warm}."
    if tone == "go":
        return Headline("The air", "No stop found", "", f"Pouring is your call. {state}", tone)
    if not (it.wet or it.blush_likely):
        lacking = _apart(given.system, air.limit("dew margin") - it.margin_k + it.margin_error_k, "up")
        say = f"Warm {coldest.name} by {lacking} more: that covers what your instruments may be off; to pour without is your call. {state}"
        return Headline("The air", "No stop found", "", say, tone)
    why = state if it.wet else "Cold and damp together: likely to blush."
    shown = _degrees(given, target, "up")
    if it.room_k >= target:
        return Headline(f"Wait until {coldest.name} is at", shown.text, shown.unit, f"Leave it in this room, closed or wrapped, until then. {why}", tone)
    dried = given.write(it.dry_enough, ("share", Style("%", step=1)), "down")
    if target > DRY_ABOVE_K:
        return Headline("Dry the air to", dried.text, dried.unit, f"Or warm the room to {shown}, but resin hardens fast in a hot room. {why}", tone)
    return Headline("Warm the room to", shown.text, shown.unit, f"And all that is in it, with no open flame. Or dry the air to {dried}. {why}", tone)


def _limits(given: Given, it: Air) -> tuple[Limit, ...]:
    """How cold room and surfaces may get with the water that is in the air; the warmest rung decides."""
    rungs = {
        "dew": (it.needed_k, "Dew", f"{_margin_wanted(given.system)} above the dew point, for every surface."),
        "humidity": (it.damp_below_k, "Humidity", f"Cooled below this, the air is over {_per_cent(given, air.limit('humidity limit'))}."),
        "blush": (
            it.blush_below_k,
            "Blush",
            f"Below this it is under {_degrees(given, air.limit('blush temperature'))} and over {_per_cent(given, air.limit('blush humidity'))} together.",
        ),
    }
    rules = max(rungs, key=lambda id: rungs[id][0])
    return tuple(
        Limit(id, name, _degrees(given, temperature_k, "up").text, _degrees(given, temperature_k).unit, why, id == rules)
        for id, (temperature_k, name, why) in rungs.items()
    )


def _lines(given: Given, it: Air, coldest: Coldest) -> tuple[Line, ...]:
    dew = _degrees(given, it.dew_k, "up")
    lines = [
        Line.of("Dew point", dew, "of the air in the room"),
        Line.of("Keep room and surfaces at", _degrees(given, it.least_k, "up"), "or warmer until it has cured, overnight too"),
    ]
    thickness = given.maybe("thickness")
    if thickness is not None and coldest.temperature_k < it.least_k < it.room_k:
        time = warming.time_to_warm(thickness, coldest.temperature_k, it.room_k, it.least_k)
        lines.append(Line.of("Wood warm through in about", given.write(time, "hours", "up"), "lying on battens in still air; measure it"))
    return (*lines, *_resin_lines(given))


def _resin(given: Given) -> float | None:
    """Temperature of the resin, K, when anything was asked about it."""
    resin = given.maybe("resin")
    return given.si("room") if resin is None and given.maybe("working") is not None else resin


def _thickness_band(resin_k: float, reference_k: float) -> tuple[float, float, float]:
    """Viscosity over that at the reference: usual, lowest, highest."""
    usual, *ends = (warm_resin.viscosity_ratio(resin_k, reference_k, air.limit(f"viscosity energy{end}")) for end in ("", " low", " high"))
    return usual, min(ends), max(ends)


def _working_time(given: Given, resin_k: float) -> float | None:
    """Working time at the resin's temperature, s: the shorter of the two rules, and never more than the sheet's own."""
    sheet = given.maybe("working")
    return None if sheet is None else sheet * min(1.0, _shorter(resin_k, given.si("sheet_temperature")))


def _shorter(resin_k: float, reference_k: float) -> float:
    return min(warm_resin.working_time_ratio(resin_k, reference_k, air.limit(step)) for step in ("halving step", "halving step slow"))


def _compared_with(given: Given) -> float:
    """What the resin's thickness is told against, K: the room's for warmed resin, else where data sheets print it."""
    return air.limit("viscosity at") if given.maybe("resin") is None else given.si("room")


def _resin_lines(given: Given) -> Iterator[Line]:
    resin = _resin(given)
    if resin is None:
        return
    at, reference = _degrees(given, resin), _degrees(given, _compared_with(given))
    if at.text != reference.text:
        usual, low, high = _thickness_band(resin, _compared_with(given))
        yield Line(f"Resin at {at} is", f"{usual:.2g} times", "", f"as thick as at {reference}; {low:.2g} to {high:.2g} by kind")
    time = _working_time(given, resin)
    if time is not None:
        sheet = f"{given.write(given.si('working'), 'minutes')} at {_degrees(given, given.si('sheet_temperature'))}"
        yield Line.of("Working time, at most", given.write(time, "minutes", "down"), f"the sheet: {sheet}; a full bucket has less")
    elif resin > given.si("room"):
        left = _per_cent(given, _shorter(resin, given.si("room")), "down")
        yield Line("Working time left", left, "", f"of that at {_degrees(given, given.si('room'))}, at most")


def _changes(given: Given, it: Air, coldest: Coldest) -> Iterator[Change]:
    shown = _degrees(given, it.least_k, "up")
    if it.surface_k < it.least_k <= it.room_k:
        yield Change(f"Warm {coldest.name} to {shown}", _over(given, shown.si - it.dew_k))
    if it.room_k < it.least_k:
        yield Change(f"Warm the room and all in it to {shown}, no water added", f"{_per_cent(given, air.humidity_at(it.dew_k, shown.si))}, dew point as it is")
    drier = it.dry_enough if it.wet or it.blush_likely else it.humidity - DRIER
    if LEAST_HUMIDITY < drier < it.humidity:
        yield Change(f"Dry the air to {_per_cent(given, drier, 'down')}", f"dew point {_degrees(given, air.dew_point(it.room_k, drier), 'up')}")
    if not it.wet:
        night = _degrees(given, it.room_k - NIGHT_K)
        damp = air.humidity_at(it.dew_k, night.si)
        then = "dew on everything" if damp >= 1 else f"{_per_cent(given, damp)}, {_over(given, night.si - it.dew_k)}"
        yield Change(f"If the room cools to {night}", then)


def _band(given: Given, it: Air) -> Band:
    low, high = it.margin_k - it.margin_error_k, it.margin_k + it.margin_error_k
    unit = given.write(0, "temperature difference").unit
    texts = (given.write(low, "temperature difference", "down").text, given.write(high, "temperature difference", "up").text)
    thermometers = "thermometers" if it.measured else "thermometer"
    text = (
        f"Hygrometer off by {_per_cent(given, it.humidity_error)}, {thermometers} by {_apart(given.system, it.temperature_error_k)}: "
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
            "surface", "caution", f"No surface measured: taken as {_degrees(given, it.surface_k)}, like the room. A stone bench or wood from a store is colder."
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


def _working(given: Given, it: Air, coldest: Coldest) -> Iterator[Working]:
    """In degrees Celsius and hPa, as the formulas are published."""
    room, dew, surface = (kelvin - air.ZERO_CELSIUS for kelvin in (it.room_k, it.dew_k, it.surface_k))
    humidity = 100 * it.humidity
    formula = f"g = ln(U / 100) + {air.MAGNUS_SLOPE:g} t / ({air.MAGNUS_OFFSET:g} + t);  t_d = {air.MAGNUS_OFFSET:g} g / ({air.MAGNUS_SLOPE:g} − g)"
    yield Working("Dew point", formula, f"t = {room:.4g} °C, U = {humidity:.4g} %", f"{dew:.2f} °C")
    yield Working("Above the dew point", "t_surface − t_d", f"{surface:.4g} − {dew:.2f}", f"{it.margin_k:.2f} °C")
    wanted = air.limit("dew margin")
    yield Working("Least a surface should have", "t_d + margin", f"{dew:.2f} + {wanted:g}", f"{dew + wanted:.2f} °C")
    pressure = f"{air.saturation_pressure(it.dew_k) / 100:.2f} hPa"
    for name, share in (("Cooled to the humidity limit", "humidity limit"), ("Cooled to where blush is likelier", "blush humidity")):
        reached = air.temperature_for_humidity(it.dew_k, air.limit(share)) - air.ZERO_CELSIUS
        numbers = f"e(t_d) = {pressure}, U_limit = {100 * air.limit(share):g} %"
        yield Working(name, "t at which e(t_d) / e(t) = U_limit", numbers, f"{reached:.2f} °C")
    numbers = f"± {100 * it.humidity_error:g} % and ± {it.temperature_error_k:.2g} °C"
    yield Working("Instruments", "each error by itself, added in squares", numbers, f"± {it.margin_error_k:.1f} °C")
    thickness = given.maybe("thickness")
    if thickness is not None and coldest.temperature_k < it.least_k < it.room_k:
        time = warming.time_to_warm(thickness, coldest.temperature_k, it.room_k, it.least_k)
        numbers = f"L = {500 * thickness:.4g} mm, h = {air.limit('room film'):g} W/(m² K), a = {air.limit('wood diffusivity'):.3g} m²/s"
        yield Working("Wood warms through", "t = L² / (a z²) ln(C / θ), z tan z = h L / k", numbers, f"{time / 3600:.2f} h")
    resin = _resin(given)
    if resin is not None:
        usual, low, high = _thickness_band(resin, _compared_with(given))
        numbers = f"E = {air.limit('viscosity energy') / 1000:g} kJ/mol, T = {resin:.2f} K, T_ref = {_compared_with(given):.2f} K"
        yield Working("Viscosity", "exp(E / R (1 / T − 1 / T_ref))", numbers, f"{usual:.3f} ({low:.3f} to {high:.3f})")
        reference = given.si("sheet_temperature") if given.maybe("working") is not None else it.room_k
        steps = f"{air.limit('halving step'):g} or {air.limit('halving step slow'):g} °C, the shorter"
        steps += ", and never over the sheet's own" if given.maybe("working") is not None else ""
        factor = _shorter(resin, reference) if given.maybe("working") is None else min(1.0, _shorter(resin, reference))
        yield Working("Working time", "2^(−(T − T_ref) / step)", f"{resin - reference:.4g} °C warmer, step {steps}", f"{factor:.3f}")


def work(given: Given) -> Answer:
    """Hold the air against dew, humidity and blush.

    Parameters
    ----------
    given : the parsed fields of :data:`QUESTION`.

    Returns
    -------
    Answer
        ``values``: ``dew_point``, ``margin`` (surface over it), ``least`` (how cold room and surfaces may get), ``verdict``
        (0 no stop found, 1 take care, 2 stop), and where the resin was asked about ``viscosity`` and ``working`` (s).
    """
    coldest = _coldest(given)
    it = _air(given, coldest)
    tone = _tone(it)
    verdict = ("go", "caution", "stop").index(tone)
    values = {
        "dew_point": figure(_degrees(given, it.dew_k, "up"), "temperature", it.dew_k),
        "margin": Figure(it.margin_k, "temperature difference", _over(given, it.margin_k)),
        "least": figure(_degrees(given, it.least_k, "up"), "temperature", it.least_k),
        "verdict": Figure(float(verdict), "count", ("no stop found", "take care", "stop")[verdict]),
    }
    sources = ["wmo-8", "iso-8502-4", "coating-guides", "blush-makers", "gum"]
    resin = _resin(given)
    if resin is not None:
        usual = _thickness_band(resin, _compared_with(given))[0]
        values["viscosity"] = Figure(usual, "ratio", f"{usual:.2g} times")
        time = _working_time(given, resin)
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
        working=tuple(_working(given, it, coldest)),
        sources=(*sources, "judgement"),
        values=values,
    )


# ---------------------------------------------------------------- the declaration

FIELDS: tuple[Field, ...] = (
    measure("room", "Room temperature", "°C", -10, 50, usual=(5, 38)),
    measure("humidity", "Humidity in the room", "%", 5, 100, usual=(20, 95), hint="Hygrometer beside the work, a quarter of an hour."),
    measure(
        "surface", "Coldest surface", "°C", -20, 80, usual=(0, 45),
        hint="Wood, mould or layer beneath. Empty: as warm as the room.", required=False,
    ),
    measure(
        "store", "Where wood and bottles came from", "°C", -30, 60, usual=(-20, 45),
        hint="If they have just come in; stands in for the surface.", required=False, fold=True,
    ),
    measure("thickness", "Thickness of the wood", "mm", 2, 500, usual=(5, 200), hint="For how long it takes to warm.", required=False, fold=True),
    measure("resin", "Resin warmed to", "°C", 0, 80, usual=(10, 45), required=False, fold=True),
    measure("working", "Working time on the sheet", "min", 1, 6000, usual=(5, 1500), required=False, fold=True),
    measure(
        "sheet_temperature", "The sheet's temperature for it", "°C", 10, 40,
        default=(f"{value('air', 'sheet temperature'):g}", "77"), basis="practice", fold=True,
    ),
    measure(
        "humidity_error", "Hygrometer may be off by", "%", 0, 20,
        default=f"{100 * value('air', 'hygrometer error'):g}", basis="hygrometer-trade", fold=True,
    ),
    Quantity(
        name="temperature_error", label="Thermometer may be off by", kind="temperature difference", units=("°C", "°F"),
        low=0, high=5, default=(f"{value('air', 'thermometer error'):g}", "2"), basis="judgement", fold=True,
    ),
)

QUESTION = Question(
    id="is-the-air-right",
    name="Is the air right?",
    moment="before the pour",
    order=24,
    summary="Dew point, blush, cold wood brought in, and what warm resin costs.",
    lead="Water that settles on wood, mould or the layer beneath spoils the bond. It cannot always be seen.",
    fields=FIELDS,
    work=work,
    table=Table(
        caption="Dew point. Every surface should be 3 °C (5.4 °F) warmer than this",
        rows=("room", (("10", "15", "20", "25", "30"), ("50", "60", "70", "80", "90"))),
        columns=("humidity", ("40 %", "50 %", "60 %", "70 %", "80 %", "90 %")),
        cell=lambda answer: answer.values["dew_point"].shown,
        note="Over 85 % humidity: no coating. Under 20 °C (68 °F) and over 70 % together: blush is likely.",
    ),
    rules=(
        Rule("humidity", "dew_point", "falls", why="more water in the air never drops later"),
        Rule("room", "dew_point", "falls", why="warmer air at the same humidity holds more water"),
        Rule("humidity", "verdict", "falls", why="damper air is never a better hour to pour"),
        Rule("surface", "margin", "falls", why="a warmer surface is never nearer to the dew point"),
        Rule("surface", "verdict", "rises", why="a warmer surface never turns a go into a stop"),
        Rule("resin", "viscosity", "rises", why="warmer resin is never thicker"),
        Rule("resin", "working", "rises", given={"working": "40 min"}, why="warmer resin never leaves more time"),
        Rule("working", "working", "falls", given={"resin": "30 °C"}, why="a longer time on the sheet never leaves less"),
    ),
)
