"""What How much wood is in it? says first: the volume, what holds the wood down, and what would make both surer."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Answer, Band, Carry, Change, Headline, Limit, Line, Tone, figure
from calc.casting.wood import standard
from calc.quantity.writing import Style
from calc.questions._how_much_wood.case import Wood
from calc.questions._how_much_wood.cautions import cautions
from calc.questions._how_much_wood.working import sources, working

_WAY = {
    "dip": "by dipping",
    "level": "by level rise",
    "outline": "by outline",
    "live": "by its faces",
    "weigh": "by weight",
}


def answer(piece: Wood) -> Answer:
    """All parts; raises the question's own errors."""
    low = piece.below * (1 - standard("one side") * piece.spread)
    lifts, density = piece.lifts_at(sure=True), piece.density
    return Answer(
        headline=_headline(piece),
        lines=_lines(piece, max(0.0, low)),
        limits=_ladder(piece),
        changes=_changes(piece),
        band=_band(piece),
        cautions=cautions(piece),
        working=working(piece),
        sources=sources(piece),
        carries=tuple(_carries(piece)),
        values={
            "volume": figure(piece.litres(piece.below, "down"), "volume", piece.below),
            "volume_u": figure(piece.litres(piece.below * piece.spread, "up"), "volume", piece.below * piece.spread),
            "whole": figure(piece.litres(piece.volume, "down"), "volume", piece.volume),
            "density": figure(None if density is None else piece.given.write(density, "density"), "density", density),
            "lift": figure(None if piece.lift is None else piece.weight(piece.lift), "mass", piece.lift),
            "hold": figure(None if piece.hold is None else piece.weight(piece.hold), "mass", piece.hold),
            "lifts_at": figure(None if lifts is None else piece.length(lifts, "down"), "length", lifts),
            "soak": figure(piece.litres(piece.soak), "volume", piece.soak),
            "seal_coat": figure(None if piece.coat is None else piece.weight(piece.coat), "mass", piece.coat),
        },
    )


def _carries(piece: Wood) -> Iterator[Carry]:
    """The wood below the fill line, how it was measured and how far it may be off, for its mould; its thickness; wet wood for its dryness."""
    given = piece.given
    off = piece.litres(standard("both sides") * piece.spread * piece.below, "up")
    way = "figured" if piece.way == "weigh" and piece.form in ("burl", "spalted") else piece.way
    told = {"wood_by": "volume", "wood": str(piece.litres(piece.below)), "wood_way": way, "wood_off": str(off)}
    drinks = {"kind": piece.form} if piece.form != "plain" else {}
    sealed = {"sealed": "yes"} if given.choice("sealed") == "yes" else {}
    fill, shape = given.maybe("fill"), piece.shape
    covered = fill is not None and shape is not None and piece.raised + shape.height < fill
    top = {"wood_height": str(piece.length(piece.raised + shape.height))} if covered and shape is not None else {}
    yield Carry("is-it-enough", told | drinks | sealed | top)
    thick = next((name for name in ("thickness", "height") if given.typed(name)), None)
    if thick is not None:
        yield Carry("how-thick-how-tall", {"slab": given.as_typed(thick)})
    if piece.wet and given.typed("moisture") and piece.form != "stabilised":
        kind = {name: given.choice(name) for name in ("species",) if given.typed(name)}
        weighed = next((name for name in ("mass", "weight") if given.typed(name)), None)
        mass = {} if weighed is None else {"mass": given.as_typed(weighed)}
        yield Carry("dry-enough", {"readings": given.as_typed("moisture"), "figure": piece.form} | kind | mass)


def _headline(piece: Wood) -> Headline:
    """The volume to take off the mould, then what holds the wood down."""
    shown = piece.litres(piece.below, "down")
    label = "Wood below the fill line" if piece.share < 1 else "The wood takes up"
    return Headline(label, shown.text, shown.unit, f"Take it off the mould's volume. {_hold_says(piece)}", _tone(piece))


def _hold_says(piece: Wood) -> str:
    """What to do against lift, in a sentence."""
    if piece.hold is None or piece.lift is None:
        return "Weigh the wood too: whether it floats is not known."
    if piece.hold <= 0:
        return "It lies on the floor by itself."
    if piece.lift <= 0:
        return f"It may just float: hold it down with {piece.weight(piece.hold)}."
    return f"It floats: hold it down with {piece.weight(piece.hold)}."


def _tone(piece: Wood) -> Tone:
    """A caution where the figure rests on a guess, or the wood is wet."""
    guessed = piece.way == "weigh" and piece.spread > standard("spread measured")
    return "caution" if guessed or piece.hold is None or piece.uncounted or piece.wet or piece.odd else "go"


def _lines(piece: Wood, low: float) -> tuple[Line, ...]:
    """Figures that are acted on, beside the first."""
    out = []
    if piece.hold and piece.lift is not None:
        twice = standard("hold") * piece.lift >= piece.hold * (1 - 1e-9)
        note = f"twice its lift of {piece.weight(piece.lift)}; common practice" if twice else "the most it may lift, one time in twenty"
        out.append(Line.of("Hold it down with", piece.weight(piece.hold), note))
    lifts, middle = piece.lifts_at(sure=True), piece.lifts_at(sure=False)
    if lifts is not None and piece.hold:
        note = "of resin over the floor, if the wood is as light as it may be"
        if middle is not None and piece.length(middle, "down") != piece.length(lifts, "down"):
            note += f"; {piece.length(middle, 'down')} as reckoned"
        out.append(Line.of("It may lift from", piece.length(lifts, "down"), note))
    out.append(Line.of("To be surer, take off only", piece.litres(low, "down"), "19 times in 20 the wood is more than that"))
    if piece.soak > 0:
        shown, twice_that = piece.rough(piece.soak), piece.rough(2 * piece.soak)
        out.append(Line.of("Resin that soaks in", shown, f"add it back; it may be nothing, or {twice_that}"))
    if piece.coat is not None:
        coat = piece.given.write(piece.coat, ("mass", Style("g", figures=2) if piece.given.system == "metric" else Style("oz", step=0.1)), "up")
        spread = piece.given.pick("100 to 250 g on a square metre", "0.33 to 0.82 oz on a square foot")
        out.append(Line.of("One seal coat", coat, f"mixed, and apart from the pour; {spread}, common practice"))
    if piece.given.system == "imperial":
        out.append(Line.of("The same in cubic inches", piece.given.write(piece.below, ("volume", Style("in³", figures=3)), "down")))
    if piece.density is not None:
        measured = piece.way != "weigh" and piece.weighed is not None
        basis = "weighed and measured" if measured or piece.tabled is None else piece.tabled.basis
        out.append(Line.of("Density of the wood", piece.given.write(piece.density, "density"), basis))
    return tuple(out)


def _ladder(piece: Wood) -> tuple[Limit, ...]:
    """Depths over the floor, where the height is known: from where it lifts, and where the resin will stand."""
    lifts = piece.lifts_at(sure=True)
    if piece.shape is None or lifts is None:
        return ()
    fill = piece.given.maybe("fill")
    depth = piece.raised + piece.shape.height if fill is None else fill
    reached = lifts < depth
    line, stands = piece.length(lifts, "down"), piece.length(depth)
    why = "below it its weight keeps it down" if reached else "the resin never stands that deep"
    name = "Resin covers it from" if fill is None else "The resin will stand"
    return (
        Limit("lift", "It may lift from", line.text, line.unit, why, reached),
        Limit("fill", name, stands.text, stands.unit, "over the floor of the mould"),
    )


def _changes(piece: Wood) -> tuple[Change, ...]:
    """A surer way to measure, and a first layer that grips it."""
    out = []
    if piece.way != "dip":
        now, then = (piece.rough(standard("both sides") * spread * piece.below) for spread in (piece.spread, standard("spread dip")))
        out.append(Change("Dip it, on a scale", f"± {then} instead of ± {now}"))
    lifts = piece.lifts_at(sure=True)
    if piece.hold and lifts is not None and lifts > piece.raised:
        text = f"Pour a first layer of less than {piece.length(lifts, 'down')} and let it set"
        out.append(Change(text, "it grips the wood before it can lift"))
    return tuple(out)


def _band(piece: Wood) -> Band:
    """About 19 times in 20."""
    k = standard("both sides")
    low = piece.litres(max(0.0, piece.below * (1 - k * piece.spread)), "down")
    high = piece.litres(piece.below * (1 + k * piece.spread), "up")
    text = f"Measured {_WAY[piece.way]}: about 19 times in 20 between {low.text} and {high}."
    return Band(text, str(low), str(high))
