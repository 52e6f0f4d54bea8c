"""Why is it out of true? The answer for one piece."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Answer, Band, Caution, Change, Figure, Grid, Headline, Line, figure
from calc.constants import ZERO_C
from calc.drawing import Axis, Drawing, chart
from calc.quantity.writing import Rounding, Shown, Style, trimmed
from calc.questions import Given
from calc.questions._warm_glue import strength_left
from calc.questions._why_out_of_true.case import GAVE, HEAT, Piece
from calc.questions._why_out_of_true.words import ANEW, CAUSES, GIVES, MOVED, ODDS, SIGNS, Cause, cause_of
from calc.questions._why_out_of_true.working import working
from calc.turning import truing
from calc.turning.cooling import Slab, figure_of

_HOUR = 3600.0
_DAY = 24 * _HOUR


def fine(given: Given, metres: float, rounding: Rounding = "nearest") -> Shown:
    """A runout, as a dial or a feeler shows it."""
    return given.write(metres, ("length", Style("mm", step=0.01) if given.system == "metric" else Style("in", step=0.001)), rounding)


def size(given: Given, metres: float, rounding: Rounding = "nearest") -> Shown:
    """A size that is left, as a caliper shows it: in the fractions of an inch that the runout was typed in, else as fine as a dial."""
    if given.system == "imperial" and "/" in given.text("runout"):
        return given.write(metres, ("length", Style("in", step=1 / 128, fraction=True)), rounding)
    shown = fine(given, metres, rounding)
    return Shown(trimmed(shown.text), shown.unit, shown.si)


def out_by(piece: Piece) -> str:
    """The runout as it was typed; by the three feelers, as they show it."""
    given = piece.given
    return given.as_typed("runout") if given.typed("runout") else str(fine(given, piece.runout or 0.0))


def _named(piece: Piece, name: str) -> Cause:
    """A cause in the words of what holds this piece."""
    return cause_of(name, piece.hold)


def _say(piece: Piece, cause: Cause) -> str:
    """What the headline goes on to say."""
    return cause.say.format(gives=GIVES[piece.hold], cold=" cold" if piece.is_warm else "", moved=MOVED.get(piece.hold, ""))


def lasting(given: Given, seconds: float) -> Shown:
    """A wait, up: minutes, half hours, or days."""
    if seconds <= 1.5 * _HOUR:
        return given.write(seconds, ("time", Style("min", step=5)), "up")
    if seconds <= 2 * _DAY:
        return given.write(seconds, ("time", Style("h", step=0.5)), "up")
    return given.write(seconds, ("time", Style("days", step=0.5 if seconds < 10 * _DAY else 1)), "up")


def answer(given: Given) -> Answer:
    """The ranked causes, the test that tells them apart, the wait, and what truing leaves."""
    piece = Piece(given)
    waits = piece.wait > 0
    return Answer(
        _headline(piece),
        lines=tuple(_lines(piece)),
        changes=tuple(_changes(piece)) if waits else (),
        band=_band(piece) if waits else None,
        cautions=tuple(_cautions(piece)),
        working=tuple(working(piece)),
        sources=tuple(_sources(piece)),
        grids=(_grid(piece),) if waits else (),
        drawings=(_chart(piece),) if waits else (),
        values=_values(piece),
    )


def _headline(piece: Piece) -> Headline:
    given, cause = piece.given, _named(piece, piece.cause)
    label = f"Likeliest: {cause.name[0].lower()}{cause.name[1:]}"
    if given.choice("opened") == "piece":
        return Headline("It is coming apart", "Do not spin", "", "Take it off. Bond or cast it whole again, let it cure, then true it.", "stop")
    if given.choice("opened") == "mount":
        return Headline("The mount lets go", "Do not spin", "", ANEW[piece.hold], "stop")
    if piece.on_the_move:
        moved = fine(given, figure_of("moves") / 1000)
        say = _say(piece, _named(piece, "creep")) if piece.fixed else "Lathe off. Look at mount and tenon, let it cool, measure again."
        return Headline("It moves as you watch", "Stop turning", "", f"{say} Over {moved} within 5 minutes is no time to cut.", "stop")
    if piece.small and piece.wait == 0 and not (piece.ran_true and piece.cause in GAVE):
        say = f"Out by {out_by(piece)}: a finishing cut takes that off. Measure again before the last one."
        return Headline("Hardly out of true", "Leave it", "", say, "go")
    if piece.cause in GAVE:
        do = "Do not start it" if given.choice("since") == "stood" else cause.do
        return Headline(label, do, "", _say(piece, cause), "stop")
    if piece.left is not None and piece.left <= 0:
        first = "Shift it to its centre" if piece.cause == "recentred" else cause.do
        return Headline(label, "Do not true it", "", f"{first} first: truing now takes more than there is.", "stop")
    if piece.wait > 0 and piece.cause not in ("seat", "recentred"):
        shown = lasting(given, piece.wait)
        return Headline(f"{label}. Leave it", shown.text, shown.unit, CAUSES[piece.cause if piece.cause in HEAT else "gradient"].say, "caution")
    return Headline(label, cause.do, "", cause.say, "caution" if piece.cause not in ("seat", "recentred") else "go")


def _lines(piece: Piece) -> Iterator[Line]:
    given = piece.given
    for place, found in enumerate(piece.told):
        cause = _named(piece, found.cause)
        most = "" if found.most_m is None else f" Can move this piece by {_up_to(given, found.most_m)}."
        yield Line(f"{place + 1}. {cause.name}", ODDS[min(place, len(ODDS) - 1)], "", f"{cause.test}{most}")
    if piece.wait > 0:
        long = piece.faces == 1 or piece.thickness >= figure_of("long wait from") / 1000
        rule = "24 h" if long else "overnight"
        note = f"as it lies now; simple rule: {rule}. It may be back by morning (common practice, no source)"
        yield Line.of("Cold through in", lasting(given, piece.wait), note)
    if piece.runout is not None and piece.left is not None:
        yield from _truing(piece, piece.left)
    if piece.is_warm and given.typed("wood_across"):
        note = f"across {given.write(piece.wood_across, 'length')}, warm against cold: cut flush warm, it is a step when cold"
        yield Line.of("Resin outgrows the wood by", fine(given, piece.outgrows, "up"), note)
    if piece.twist is not None:
        note = "where it is high; nothing where it is low. By the three gaps, however it is tipped"
        yield Line.of("It rocks: take off", fine(given, piece.twist, "up"), note)
    if piece.sign == "rim-once" and piece.runout is not None and piece.cause in ("seat", "recentred"):
        yield Line.of("Centre is off by", size(given, truing.offset(piece.runout)), "half the runout: shift it so far, towards the low side")
    if piece.cause in ("moisture", "stress"):
        yield Line.of("Wood this thick follows the air in about", lasting(given, piece.rest), "the order of it; sealed or cast in it is slower still")


def _up_to(given: Given, metres: float) -> str:
    shown = fine(given, metres, "up")
    return "hardly anything" if shown.si == 0 else f"up to {shown}"


def _truing(piece: Piece, left: float) -> Iterator[Line]:
    given = piece.given
    what = "across" if piece.on_rim else "thick"
    note = f"{what}; out by {out_by(piece)}"
    if piece.wait > 0 and piece.left_twice is not None:
        note += f". If it goes back as it cools, truing again leaves {size(given, max(piece.left_twice, 0.0), 'down')}"
    yield Line.of("Trued now, it leaves", size(given, max(left, 0.0), "down"), note)


def _other_air(piece: Piece) -> Iterator[tuple[str, Slab]]:
    air = piece.given.choice("air")
    if piece.faces == 1:
        yield "Off its mount, both faces open on battens", piece.slab_in(2, air)
    if air != "fan":
        yield "A fan on it, or turning slowly", piece.slab_in(piece.faces, "fan")
    if air != "boxed":
        yield "In a box or wrapped", piece.slab_in(piece.faces, "boxed")


def _changes(piece: Piece) -> Iterator[Change]:
    for do, slab in _other_air(piece):
        yield Change(do, f"cold through in {lasting(piece.given, piece.wait_of(slab))}")


def _band(piece: Piece) -> Band:
    given = piece.given
    if given.choice("warm") == "all":
        low, high = lasting(given, piece.wait), lasting(given, max(piece.longest_wait, piece.wait))
        return Band(f"If you read only the face, and it has been cooling for a while, the middle is warmer: up to {high}.", str(low), str(high))
    return Band("Warm in one place only, it holds less heat than this reckons with: sooner, if anything.", "", str(lasting(given, piece.wait)))


def _cautions(piece: Piece) -> Iterator[Caution]:
    given = piece.given
    warmest = given.si("temperature") if piece.is_warm else 0.0
    if piece.is_warm and warmest > given.si("soft") - figure_of("soft margin") + 1e-6:
        soft = given.write(given.si("soft") - figure_of("soft margin"), "temperature", "down")
        yield Caution("X15", "stop", f"Over {soft} this resin is near its softening: no cutting, sanding or clamping until it is cooler.")
    if given.choice("hold") == "glue" and warmest >= figure_of("hand-warm") + ZERO_C - 1e-6:
        yield Caution("X6", "stop", f"Hot glue this warm keeps {strength_left(warmest)}. Do not spin it; let it cool.")
    if given.choice("opened") != "no":
        yield Caution("X16", "stop", "A crack right through, an opened bond or a loose mount lets go without warning at any speed.")
    elif any(found.cause in GAVE for found in piece.findings[:2]):
        yield Caution("give" if piece.hold == "glue" else "moved", "stop", "Do not run it to find out: a mount that lets go throws the piece.")
    if piece.wait > 0 and piece.cause in HEAT:
        yield Caution("warm-cut", "caution", "Trued warm, it goes out the other way as it cools.")
    if given.maybe("runout") is not None and piece.cause == "side-heat" and (piece.runout or 0) > figure_of("side heat most") / 1000:
        most = fine(given, figure_of("side heat most") / 1000)
        yield Caution("too-much", "caution", f"Heat on one side seldom moves a rim by more than {most}. Look at the next cause too.")
    if piece.twist is not None and piece.sign == "dish" and piece.twist > figure_of("true within") / 1000:
        yield Caution("rocks", "caution", "It rocks: that is a saddle, not a dish. Ask again as 'face, twice a turn'.")
    if piece.cause == "moisture" and not piece.wood_known:
        yield Caution("wood", "caution", f"No shrinkage known for this wood: the largest in our table stands in ({piece.shrinkage[2]}).")
    if piece.runout is None:
        yield Caution("measure", "caution", "Not measured. A fixed pointer and feelers do: turn by hand, gap at the widest less gap at the closest.")


def _span(piece: Piece) -> tuple[float, float]:
    """Degrees shown for one kelvin, and the hours the picture spans."""
    return (1.0 if piece.given.system == "metric" else 1.8), piece.wait / _HOUR


def _grid(piece: Piece) -> Grid:
    degrees, hours = _span(piece)
    unit = piece.given.pick("°C", "°F")
    rows = []
    for quarter in range(5):
        time = piece.wait * quarter / 4
        middle, face = (degrees * piece.excess * share for share in (piece.slab.middle(time), piece.slab.face(time)))
        rows.append((f"{hours * quarter / 4:.1f} h", f"{middle:.1f} {unit}", f"{face:.1f} {unit}"))
    return Grid(f"Over the shop, in {unit}", ("After", _warmest(piece), "Open face"), tuple(rows))


def _warmest(piece: Piece) -> str:
    return "Covered face" if piece.faces == 1 else "Middle"


def _chart(piece: Piece) -> Drawing:
    degrees, hours = _span(piece)
    unit = piece.given.pick("°C", "°F")
    times = [hours * step / 30 for step in range(31)]
    middle = [(hour, degrees * piece.excess * piece.slab.middle(hour * _HOUR)) for hour in times]
    face = [(hour, degrees * piece.excess * piece.slab.face(hour * _HOUR)) for hour in times]
    half = middle[15][1]
    says = (
        f"From {degrees * piece.excess:.0f} {unit} over the shop, the {_warmest(piece).lower()} is at {half:.1f} {unit} over it half-way, "
        f"and at {degrees * piece.near:.1f} {unit} after {lasting(piece.given, piece.wait)}; the open face runs ahead."
    )
    near = f"{degrees * piece.near:.1f} {unit} over"
    return chart(
        "As it cools", says, Axis.of("hours", 0, hours), Axis.of(f"{unit} over the shop", 0, degrees * piece.excess),
        (("", "trace", middle[:11]), (_warmest(piece).lower(), "trace", middle[10:]), ("", "measure", face[:9]), ("open face", "measure", face[8:])),
        levels=((near, degrees * piece.near),),
    )


def _sources(piece: Piece) -> Iterator[str]:
    if piece.is_warm:
        yield from ("plane-wall", "film-formula", "wood-handbook-4-15" if piece.given.choice("stuff") == "wood" else "epoxy-properties", "practice")
    if piece.layer is not None:
        yield from ("timoshenko-1925", "expansion-tables")
    if piece.sign == "dish":
        yield "thermal-bow"
    if piece.cause in ("moisture", "stress"):
        yield from ("wood-handbook-13-5", "recalled-diffusion", piece.shrinkage[3])
    yield "judgement"


def _values(piece: Piece) -> dict[str, Figure]:
    given = piece.given
    values = {"wait": figure(lasting(given, piece.wait), "time", piece.wait) if piece.wait > 0 else Figure(0.0, "time", "cold")}
    for cause, most in piece.most.items():
        values[cause] = figure(fine(given, most, "up"), "length", most)
    if piece.runout is not None and piece.left is not None:
        values["runout"] = figure(fine(given, piece.runout), "length", piece.runout)
        values["left"] = figure(size(given, max(piece.left, 0.0), "down"), "length", max(piece.left, 0.0))
    if piece.twist is not None:
        values["twist"] = figure(fine(given, piece.twist, "up"), "length", piece.twist)
    for place, found in enumerate(piece.told, 1):
        values[f"cause_{place}"] = Figure(float(found.points), "points", _named(piece, found.cause).name)
    return values


__all__ = ["SIGNS", "answer", "fine", "lasting"]
