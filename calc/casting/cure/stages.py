"""What a casting can take at which hour: poured, set, cool, next layer, out of the mould, under a tool.

Times are those of the model, in seconds after the mould was filled. What is made of them (how much later to wait) is in
``data/clock.csv`` and the business of whoever asks.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain

from calc.casting.cure.clock import DAY, Shop, march
from calc.casting.cure.course import LAYER_BONDS, RUNAWAY_K, Moment
from calc.casting.cure.kinetics import GEL, WORKING_END
from calc.casting.cure.pour import COARSE, Fineness, Mould, Resin, Start, field_of
from calc.casting.cure.running import moments
from calc.sources import figures

_SETTLED_K = 2.0  # this near to the shop the casting has its temperature, and marches on without the cells


@dataclass(frozen=True)
class Stages:
    """When a pour reaches what; None for what it does not reach within 60 days.

    Parameters
    ----------
    working_s : the first of it can no longer be poured. gel_s, gelled_s, skin_gel_s : the first of it, all of it, its skin has gelled.
    peak_s, peak_k : its hottest moment.
    ran_away : it passed 150 °C, and nothing after that is told.
    bonds_s : the skin, as a whole, is firm enough for a new layer. glass_s : the first of it is a glass even at the shop's coldest: no bond by itself.
    near_s : past its peak and within the limit for a new layer of the shop. loose_s : within the limit for leaving the mould. back_s : cold.
    dry_s, leave_s, rough_s : Tg of what is least far has passed the shop's warmest temperature less or plus the steps of ``data/clock.csv``.
    history : (s; K; conversion) of the resin up to its gel, the coldest of it and the furthest: the thickest that it can be.
    """

    working_s: float | None
    gel_s: float | None
    gelled_s: float | None
    skin_gel_s: float | None
    peak_s: float
    peak_k: float
    ran_away: bool
    bonds_s: float | None
    glass_s: float | None
    near_s: float | None
    loose_s: float | None
    back_s: float | None
    dry_s: float | None
    leave_s: float | None
    rough_s: float | None
    history: tuple[tuple[float, float, float], ...]


#: A figure of ``data/clock.csv`` by the name of its row, in its printed unit.
step_of = figures("clock")
LONGEST_S = step_of("longest") * DAY


def softens_unwarmed(shop_k: float) -> float:
    """From where resin may soften that cured in the shop and was never kept warmer: its glass transition stalls a little above the shop.

    Parameters
    ----------
    shop_k : the shop while it cured, K.

    Returns
    -------
    float
        K, the low end of where it stalls.

    Examples
    --------
    >>> round(softens_unwarmed(293.15) - 273.15)
    30

    References
    ----------
    Common practice: it stalls 10 to 20 K above the shop; see the row 'rough' of ``data/clock.csv``.
    """
    return shop_k + step_of("rough")


@dataclass(frozen=True)
class Skin:
    """Conversion of the topmost resin: where it is furthest, and its mean."""

    most: float
    mean: float


def course(resin: Resin, mould: Mould, start: Start, shop: Shop, cut: Fineness = COARSE) -> Iterator[tuple[Moment, Skin]]:
    """A pour step by step in a shop that may be cooler by night, until it has set and has the temperature of the shop.

    Parameters
    ----------
    resin, mould : the pour.
    start : its temperature and conversion; the air is the shop's.
    shop : the air.
    cut : how finely.

    Returns
    -------
    iterator of (Moment, Skin)
        ends at 150 °C too, and after 60 days.

    Examples
    --------
    >>> from calc.casting.cure.cells import Footprint
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> shop = Shop(296.15, 296.15)
    >>> *_, (last, skin) = course(Resin(Kinetics(1.6e-5)), Mould(Footprint(0.1, 1.0), 0.03), Start(296.15, 296.15), shop)
    >>> last.hottest_k < 298.15, last.least > 0.58
    (True, True)

    References
    ----------
    cure-solver.
    """
    field = field_of(resin, mould, start, cut)
    for now in moments(field, cut.pace):
        yield now, Skin(max(field.a[-1]), now.top)
        field.air_k = shop.at(now.time_s)
        settled = now.least >= GEL and now.hottest_k <= field.air_k + _SETTLED_K
        if settled or now.hottest_k >= RUNAWAY_K or now.time_s > LONGEST_S:
            return


def stages(resin: Resin, mould: Mould, start: Start, shop: Shop, cut: Fineness = COARSE) -> Stages:
    """When a pour can take what.

    Parameters
    ----------
    resin, mould : the pour.
    start : its temperature and conversion.
    shop : the air.
    cut : how finely.

    Returns
    -------
    Stages

    Notes
    -----
    The cells follow the heat; from when the casting has the temperature of the shop, its coldest part and its skin march on alone.

    Examples
    --------
    >>> from calc.casting.cure.cells import Footprint
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> found = stages(Resin(Kinetics(1.6e-5)), Mould(Footprint(0.1, 1.0), 0.03), Start(296.15, 296.15), Shop(296.15, 296.15))
    >>> found.working_s < found.gel_s < found.bonds_s < found.leave_s < found.rough_s
    True

    References
    ----------
    cure-solver; cure-fit; the steps of ``data/clock.csv``.
    """
    steps = list(course(resin, mould, start, shop, cut))
    seen = [one for one, _ in steps]
    last, peak = seen[-1], max(seen, key=lambda one: one.hottest_k)
    kinetics = resin.kinetics
    runs_away = last.hottest_k >= RUNAWAY_K

    def on(conversions: Sequence[float]) -> Iterator[tuple[float, float]]:
        """What the cells tell, and then alone at the temperature of the shop."""
        yield from zip((one.time_s for one in seen), conversions, strict=True)
        if not runs_away:
            yield from march(kinetics, shop.at, last.time_s, conversions[-1], LONGEST_S)

    dry, leave, rough = (kinetics.conversion_at_tg(shop.warmest_k + step_of(step)) for step in ("dry", "leave", "rough"))
    gelled, dry_s, leave_s, rough_s = _reached(on([one.least for one in seen]), (GEL, dry, leave, rough))
    skin_gel, bonds = _reached(on([skin.mean for _, skin in steps]), (GEL, LAYER_BONDS))
    (glass,) = _reached(on([skin.most for _, skin in steps]), (kinetics.conversion_at_tg(shop.coldest_k),))
    working, gel = _reached(on([one.most for one in seen]), (WORKING_END, GEL))
    near, loose, back = (_cool(seen, peak, shop, step_of(step)) for step in ("near", "loose", "back"))
    liquid = tuple((one.time_s, one.coldest_k, one.most) for one in seen if gel is None or one.time_s <= gel)
    return Stages(
        working, gel, gelled, skin_gel, peak.time_s, peak.hottest_k, runs_away, bonds, glass, near, loose, back, dry_s, leave_s, rough_s, liquid
    )


def _reached(series: Iterator[tuple[float, float]], levels: Sequence[float]) -> list[float | None]:
    """When a rising series reaches each level, in the order of the levels; None where it does not."""
    found: dict[float, float] = {}
    waiting = sorted(set(levels))
    before = next(series)
    for now in chain((before,), series):
        while waiting and now[1] >= waiting[0]:
            share = 1.0 if now[1] == before[1] else max(0.0, (waiting[0] - before[1]) / (now[1] - before[1]))
            found[waiting.pop(0)] = before[0] + share * (now[0] - before[0])
        if not waiting:
            break
        before = now
    return [found.get(level) for level in levels]


def _cool(seen: Sequence[Moment], peak: Moment, shop: Shop, above_k: float) -> float | None:
    """When, past its peak and no longer liquid, the hottest of it comes within ``above_k`` of the shop for good; None where it has not yet."""
    found: float | None = None
    for one in seen:
        if one.time_s < peak.time_s or one.most <= WORKING_END or one.hottest_k > shop.at(one.time_s) + above_k:
            found = None
        elif found is None:
            found = one.time_s
    return found


@dataclass(frozen=True)
class Window:
    """When another layer may go on, s after the pour; None where it does not come.

    Parameters
    ----------
    first_s : heat gone and skin firm, at the late end of what is known; never before the slowest has a skin.
    last_s : until then it bonds by itself, at the early end.
    """

    first_s: float | None
    last_s: float | None

    @property
    def open(self) -> bool:
        """Whether there are hours at which a layer both may go on and bonds by itself."""
        return self.first_s is not None and self.last_s is not None and self.first_s < self.last_s


def next_layer(found: Stages, hours: float, slowest: Stages | None = None) -> Window:
    """When another layer may go on a pour: one rule, whoever asks.

    Parameters
    ----------
    found : the pour, s.
    hours : how far its hours may be off, a factor of 1 or more.
    slowest : the same pour at the cool end of the band, whose skin must have gelled; None counts the middle alone.

    Returns
    -------
    Window

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> shop = Shop(296.15, 296.15)
    >>> window = next_layer(stages(Resin(Kinetics(1.7e-5)), wide(0.03), Start(296.15, 296.15), shop), 1.0)
    >>> 24 < window.first_s / 3600 < 34, window.open
    (True, True)

    References
    ----------
    cure-solver; practice for the bond.
    """
    near, bonds = found.near_s, found.bonds_s
    first = None if near is None or bonds is None else max(near, bonds) * hours
    if first is not None and slowest is not None:
        first = None if slowest.skin_gel_s is None else max(first, slowest.skin_gel_s)
    return Window(first, None if found.glass_s is None else found.glass_s / hours)
