"""What Is it enough? asks: the mould, the depth, the wood and the shelf; all else is folded away."""

from __future__ import annotations

from functools import partial

from calc.casting.sufficiency import standard
from calc.casting.wood import standard as of_wood
from calc.fields import NO, YES, Choice, Field, Option, Quantity, measure, under
from calc.questions._how_much_wood.words import give_or_take
from calc.several import Series

Asked = tuple[str, tuple[str, ...]]
_MEASURED = "measured"
_SHAPES = (
    Option("round", "Round"),
    Option("box", "Box"),
    Option("ring", "Ring", "Round, with a round core."),
    Option("cup", "Tapered round", "A cup or a bucket."),
    Option("tray", "Tapered box", "A tray with sloping walls."),
    Option("oval", "Oval"),
    Option("slot", "Slot", "Straight sides, round ends."),
    Option("sides", "Hexagon and the like", "Equal sides."),
    Option("bowl", "Bowl", "Part of a ball, by its rim."),
    Option("ball", "Ball", "Filled through a hole."),
    Option("trough", "Trough", "A round one lying down, or a gutter."),
    Option("widths", "Free outline, by widths", "At equal steps along it."),
    Option("corners", "Free outline, by corners"),
    Option(_MEASURED, "Its volume, measured", "Filled to the line with water, and weighed."),
)
_ALL = tuple(option.value for option in _SHAPES)


def _only(*shapes: str) -> tuple[Asked, ...]:
    return (("shape", shapes),)


_LAID = _only(*(shape for shape in _ALL if shape != _MEASURED))  # a shape with sizes, a depth and a level
_size = partial(measure, unit="mm", low=3, high=5000, usual=(15, 3000))
_wide = partial(_size, high=3000)  # as 'How thick, how tall?' and 'How deep and how hot?' take it
_folded_share = partial(measure, unit="%", low=0, high=50, fold=True)
_number = partial(Quantity, kind="count", units=("", ""), whole=True, required=False, fold=True)

MOULD: tuple[Field, ...] = (
    Choice(name="shape", label="Mould", options=_SHAPES, default="round"),
    _wide("across", "Across, inside", when=_only("round", "ring", "ball", "trough")),
    _wide("core", "Core, across", when=_only("ring")),
    _size("length", "Length, inside", hint="Over all.", when=_only("box", "oval", "slot", "trough", "widths")),
    _wide("width", "Width, inside", when=_only("box", "oval", "slot")),
    _wide("floor_across", "Across at the floor", when=_only("cup")),
    _wide("top_across", "Across at the fill line", hint="Or at the rim: then enter the wall's height too.", when=_only("cup")),
    _size("floor_length", "Length at the floor", when=_only("tray")),
    _wide("floor_width", "Width at the floor", when=_only("tray")),
    _size("top_length", "Length at the fill line", hint="Or at the rim: then enter the wall's height too.", when=_only("tray")),
    _wide("top_width", "Width at the fill line", when=_only("tray")),
    Quantity(name="sides", label="How many sides", kind="count", units=("", ""), low=3, high=24, whole=True, when=_only("sides")),
    Choice(
        name="side_by",
        label="Measured",
        options=(Option("flats", "Across the flats"), Option("side", "One side"), Option("corner", "Centre to corner")),
        default="flats",
        when=_only("sides"),
    ),
    _size("size", "That is", when=_only("sides")),
    _size("rim", "Across at the fill line", hint="Or at the rim: then enter the wall's height too.", when=_only("bowl")),
    Series(
        name="widths", label="Widths at equal steps", hint="In order, both ends too, an odd count. A tip is 0.", kind="length", units=("mm", "in"),
        low=0, high=3000, usual=(0, 2000), accepts=("mm", "cm", "in"), fewest=3, most=41, when=_only("widths"),
    ),
    Series(
        name="corners", label="Corners: along, across",
        hint=("Two for each corner, going round: 0 0 180 10 240 90", "Two for each corner, going round: 0 0 7 1 9 4"), kind="length", units=("mm", "in"),
        low=-5000, high=5000, usual=(-3000, 3000), accepts=("mm", "cm", "in"), fewest=6, most=80, when=_only("corners"),
    ),
    measure("volume", "It holds, to the line", "mL", 1, 500_000, usual=(5, 200_000), when=_only(_MEASURED)),
    measure("depth", "Fill depth", "mm", 0.5, 2000, usual=(2, 600), hint="Of resin, not the height of the wall.", when=_LAID),
)  # fmt: skip

_IN_ML = (("wood_by", ("volume",)),)
_IN_G = (("wood_by", ("weight",)),)
_WOODEN = (("wood_by", ("volume", "weight")),)


WOOD: tuple[Field, ...] = (
    Choice(
        name="wood_by",
        label="Wood in it, known by",
        options=(Option("volume", "Volume"), Option("weight", "Weight"), Option("none", "No wood")),
        default="volume",
    ),
    measure("wood", "Wood below the fill line", "mL", 0, 500_000, usual=(1, 200_000), hint="'How much wood is in it?' finds it.", when=_IN_ML),
    Choice(
        name="wood_way",
        label="How that was measured",
        options=(
            Option("unknown", "Not sure", f"± {200 * standard('wood unknown'):.0f} % is assumed."),
            Option("dip", "Dipped", give_or_take("dip")),
            Option("live", "Live edge: widths of its faces", give_or_take("live")),
            Option("outline", "Outline and thickness", give_or_take("outline")),
            Option("level", "Level rise in a tub", give_or_take("level")),
            Option("weigh", "Weight, by the kind of wood", give_or_take("weigh")),
            Option("figured", "Weight: burl, crotch, spalted", give_or_take("figured")),
        ),
        default="unknown",
        when=_IN_ML,
    ),
    measure("wood_mass", "The wood weighs", "g", 1, 500_000, usual=(5, 100_000), hint="All of it below the fill line.", when=_IN_G),
    measure(
        "wood_density", "Density of the wood", "g/mL", 0.1, 1.6, usual=(0.3, 1.3),
        hint="Pine about 0.5, walnut 0.6, oak 0.7, olive 1.", when=_IN_G,
    ),
    measure(
        "wood_off", "Wood may be off by ±", "mL", 0, 200_000, usual=(0, 50_000),
        hint="19 times in 20. It overrules how it was measured.", required=False, when=_WOODEN,
    ),
    measure("wood_height", "Top of the wood over the floor", "mm", 1, 2000, usual=(2, 600), hint="Empty: up to the fill line.", required=False,
            when=(*_LAID, *_WOODEN)),
)  # fmt: skip

_SHELF = "On the shelf"
_BY_WEIGHT = (("shelf_by", ("weight",)),)
_BY_VOLUME = (("shelf_by", ("volume",)),)
_kits = partial(Series, fewest=1, most=4, required=False, fold=True, group=_SHELF)

SHELF: tuple[Field, ...] = (
    Choice(
        name="shelf_by", label="Resin is counted by", options=(Option("weight", "weight"), Option("volume", "volume")),
        default="weight", fold=True, group=_SHELF,
    ),
    measure(
        "have", "Resin on the shelf", "g", 0, 1_000_000, usual=(10, 200_000),
        hint="Opened, A and B together. Kits below are counted apart.", required=False, when=_BY_WEIGHT,
    ),
    measure(
        "have_volume", "Resin on the shelf", "mL", 0, 1_000_000, usual=(10, 200_000),
        hint="Opened, A and B together. Kits below are counted apart.", required=False, when=_BY_VOLUME,
    ),
    _kits(
        name="kits", label="A whole kit holds",
        hint=("A and B together. Several sizes: 1.5 kg 3 kg 6 kg", "A and B together. Several sizes: 3 lb 6 lb 12 lb"), kind="mass", units=("g", "oz"),
        low=20, high=200_000, usual=(50, 50_000), when=_BY_WEIGHT,
    ),
    _kits(
        name="kit_volumes", label="A whole kit holds",
        hint=("A and B together. Several sizes: 1.5 L 3 L 6 L", "A and B together. Several sizes: 32 64 128"), kind="volume", units=("mL", "US fl oz"),
        low=20, high=200_000, usual=(50, 50_000), when=_BY_VOLUME,
    ),
    _kits(
        name="kits_there", label="Unopened kits you have", hint="Of each size, in that order. Empty: they are still to buy.", kind="count", units=("", ""),
        low=0, high=60, whole=True,
    ),
    _kits(
        name="prices", label="Price of a kit", hint="Of each size, in that order, in any money.", kind="count", units=("", ""),
        low=0, high=100_000, usual=(1, 5000),
    ),
)  # fmt: skip

_SURE = "How sure"
HOW_SURE: tuple[Field, ...] = under(
    _SURE,
    Choice(
        name="sure",
        label="Enough",
        options=(Option("0.9", "9 times in 10"), Option("0.95", "19 times in 20"), Option("0.99", "99 times in 100")),
        default="0.95",
        basis="judgement",
        fold=True,
    ),
    measure("off", "Each inside size ±", "mm", 0, 50, usual=(0, 10), default=(f"{standard('tape'):g}", "1/32"), basis="practice", fold=True, when=_LAID),
    measure("depth_off", "Fill depth ±", "mm", 0, 50, usual=(0, 10), default=(f"{standard('depth'):g}", "1/32"), basis="judgement", fold=True, when=_LAID),
    Series(
        name="depths", label="Depth, read all round", hint="Four places, evenly: the mean counts, the level no longer.", kind="length", units=("mm", "in"),
        low=0.5, high=2000, usual=(2, 600), accepts=("mm", "cm", "in"), fewest=2, most=16, required=False, fold=True, when=_LAID,
    ),
    _folded_share(
        "volume_off", "Measured volume ±", default=f"{200 * standard('volume measured'):g}", basis="judgement", hint="19 times in 20.", when=_only(_MEASURED),
    ),
    _folded_share("density_off", "Resin's density ±", default=f"{100 * standard('density off') / of_wood('resin'):.1f}", basis="practice"),
)  # fmt: skip

_OUT = (("level", ("known",)),)
IN_PLACE: tuple[Field, ...] = under(
    "Mould in its place",
    measure("wall", "Height of the wall", "mm", 1, 3000, usual=(3, 1000), hint="Inside, floor to rim.", required=False, fold=True, when=_LAID),
    Choice(
        name="level",
        label="Set level",
        options=(Option("set", "With a level"), Option("eye", "By eye"), Option("known", "It slopes")),
        default="set",
        basis="practice",
        fold=True,
        when=_LAID,
    ),
    measure("tilt", "One end higher by", "mm", 0, 200, usual=(0, 30), hint="End to end.", fold=True, when=(*_LAID, *_OUT)),
    Choice(
        name="read_at",
        label="Fill depth is read",
        options=(Option("middle", "In the middle"), Option("deep", "Low end"), Option("shallow", "High end")),
        default="middle",
        fold=True,
        when=(*_LAID, *_OUT),
    ),
    measure("sag", "Floor sags in the middle by", "mm", -20, 50, usual=(-5, 10), hint="Below 0 where it bulges up.", required=False, fold=True, when=_LAID),
    _number(name="count", label="How many such moulds", low=1, high=60, hint="Each with as much wood. Empty: one."),
)  # fmt: skip


def _another(n: int) -> tuple[Field, ...]:
    name = f"part{n}"
    size, wide = partial(_size, fold=True), partial(_wide, fold=True)
    return (
        Choice(
            name=name, label="One more part" if n == 2 else "And one more",
            options=(Option("none", "None"), Option("round", "Round"), Option("box", "Box"), Option("volume", "Volume")), default="none", fold=True,
        ),
        wide(f"{name}_across", "Across, inside", when=((name, ("round",)),)),
        size(f"{name}_length", "Length, inside", when=((name, ("box",)),)),
        wide(f"{name}_width", "Width, inside", when=((name, ("box",)),)),
        measure(f"{name}_depth", "Its fill depth", "mm", 0.5, 2000, usual=(2, 600), hint="Empty: as the first.", required=False, fold=True,
                when=((name, ("round", "box")),)),
        measure(f"{name}_volume", "It holds", "mL", 0.1, 500_000, usual=(1, 100_000), fold=True, when=((name, ("volume",)),)),
    )  # fmt: skip


PARTS = under("More parts of this mould", *_another(2), *_another(3))

SOAK: tuple[Field, ...] = under(
    "Wood that drinks",
    Choice(
        name="kind",
        label="Kind of wood",
        options=(Option("plain", "Plain"), Option("burl", "Burl, crotch or root"), Option("spalted", "Spalted or punky"), Option("stabilised", "Stabilised")),
        default="plain",
        fold=True,
        when=_WOODEN,
    ),
    Choice(name="sealed", label="Sealed all over", options=(YES, NO), default="no", basis="judgement", fold=True, when=_WOODEN),
    _folded_share("soak", "It soaks in, share of the wood", required=False, hint="Empty: 2 % plain, 5 % burl, 10 % punky (common practice).",
                  usual=(0, 20), when=(*_WOODEN, ("sealed", ("no",)))),
)  # fmt: skip

RESIN: tuple[Field, ...] = under(
    "Resin",
    measure("density", "Density of the mixed resin", "g/mL", 0.7, 2.5, usual=(0.95, 1.6), hint="The label's figure is better.",
            default=f"{of_wood('resin'):.2f}", basis="practice", fold=True),
    _number(name="pours", label="Batches it is mixed in", low=1, high=60, hint="Empty: one."),
    measure("loss", "Stays in bucket and cup", "mL", 0, 20_000, usual=(0, 2000), required=False, fold=True,
            hint=("All batches. Empty: 30 mL or 1.5 % of each (common practice).", "All batches. Empty: 1 US fl oz or 1.5 % of each (common practice).")),
)  # fmt: skip

OTHERS: tuple[Field, ...] = under(
    "Other moulds from this batch",
    Series(
        name="others", label="They want, each",
        hint=("In order, as this question tells: 900 1240 300", "In order, as this question tells: 32 44 11"), kind="mass", units=("g", "oz"),
        low=1, high=200_000, usual=(5, 50_000), fewest=1, most=8, required=False, fold=True,
    ),
    _folded_share("others_off", "Each may be off by ±", required=False, hint="19 times in 20. Empty: 10 % (our judgement)."),
    Series(name="others_spare", label="Each could do without", hint="What is turned away or topped up anyway. In that order.", kind="mass", units=("g", "oz"),
           low=0, high=50_000, usual=(0, 10_000), fewest=1, most=8, required=False, fold=True),
    measure("spare", "This mould could do without", "g", 0, 50_000, usual=(0, 10_000), required=False, fold=True),
)  # fmt: skip

_ONE_PART = (*_LAID, ("part2", ("none",)), ("part3", ("none",)))
POUR: tuple[Field, ...] = under(
    "During the pour",
    measure("used", "Poured into this mould so far", "g", 0, 1_000_000, usual=(1, 200_000), hint="What the bucket has lost. All such moulds.",
            required=False, fold=True, when=_ONE_PART),
    measure("reached", "Level reached", "mm", 0.1, 2000, usual=(1, 600), hint="Over the floor, in the mould being filled.",
            required=False, fold=True, when=_ONE_PART),
    _number(name="full", label="Such moulds full before it", low=0, high=60, when=_ONE_PART),
    Series(name="others_used", label="Poured into the others so far", hint="In their order, 0 for none.", kind="mass", units=("g", "oz"),
           low=0, high=200_000, usual=(0, 50_000), fewest=1, most=8, required=False, fold=True),
)  # fmt: skip

_BRIM = (("brim", ("yes",)),)
TOP_UP: tuple[Field, ...] = under(
    "Filled to the brim",
    Choice(name="brim", label="It has to be full when hard", options=(YES, NO), default="no", fold=True),
    _folded_share("shrinkage", "Shrinks while it cures, by volume", default=f"{100 * standard('shrinkage'):g}", basis="epoxy-shrinkage",
                  usual=(0, 12), when=_BRIM),
    _folded_share("air", "Bubbles squeezed in a pot", required=False, hint="Share of the resin; 'Pot or vacuum?' tells.", usual=(0, 20), when=_BRIM),
    _folded_share("colour", "Colour in it, by weight", required=False, hint="Parts of it in 100 of mixed resin.", usual=(0, 10), when=_BRIM),
    measure(
        "step", "The scale shows steps of", "g", 0.001, 10, usual=(0.005, 5),
        hint=("Empty: 1 g, a kitchen scale.", "Empty: 0.035 oz (1 g), a kitchen scale."), required=False, fold=True, when=_BRIM,
    ),
)  # fmt: skip

FIELDS: tuple[Field, ...] = (*MOULD, *WOOD, *SHELF, *HOW_SURE, *IN_PLACE, *PARTS, *SOAK, *RESIN, *OTHERS, *POUR, *TOP_UP)
