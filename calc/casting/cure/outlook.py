"""A pour looked at before it is made: the middle estimate, the hot end of its band, and the depths between which it lies."""

from __future__ import annotations

import math
from collections.abc import Generator
from dataclasses import dataclass, replace

from calc.casting.cure.bucket import InBucket, in_bucket
from calc.casting.cure.course import Course
from calc.casting.cure.depth import DEEPEST_M, critical_depth_steps, critical_k, critical_width_steps, equivalent_depth_steps
from calc.casting.cure.plan import GO_K, STOP_K, Plan
from calc.casting.cure.pour import COARSE, ROUGH
from calc.casting.cure.running import hottest_mould, peak_of
from calc.casting.cure.search import meeting
from calc.casting.cure.standards import standard
from calc.steps import unmeasured

#: A slab's critical depth goes with this power of the rate.
DEPTH_BY_RATE = standard("depth by rate")
Steps = Generator[float, None, None]
_STRIDE = 0.3  # of what is left, for each run of a search


@dataclass
class Outlook:
    """What a plan comes to; parts that were not asked for are None.

    Parameters
    ----------
    plan : looked at. hot, middle, cool : courses of the two ends of the band, and of the middle.
    go : deepest layer (m) with no stop found; of a tall mould the factor on its widths. stop : the same from which it is a stop.
    edge : the same at which the middle estimate runs away. headroom : how many times faster the resin would be if this pour just
        ran away.
    equal_m : the wide pour that gets as hot, m. bucket : how long the batch can be poured.
    mould_k : hottest the mould gets at the cool end, in the middle and at the hot end, K.
    held : what :attr:`go` is of the line by the heat of the hot end alone: less than 1 where the trials' range begins below that.
    """

    plan: Plan
    hot: Course | None = None
    middle: Course | None = None
    cool: Course | None = None
    go: float = 0.0
    stop: float = 0.0
    edge: float = 0.0
    headroom: float = 1.0
    equal_m: float | None = None
    bucket: InBucket | None = None
    mould_k: tuple[float, float, float] = (0.0, 0.0, 0.0)
    held: float = 1.0

    @property
    def planned(self) -> float:
        """In the unit of :attr:`go`: the depth, m, or 1 for a tall mould."""
        return 1.0 if self.plan.tall else self.plan.mould.depth_m

    @property
    def odds(self) -> float:
        """The share of resins so known that run away in this pour: by their rate, which counts the same in any mould."""
        return self.plan.level.odds(self.headroom**DEPTH_BY_RATE)


def line_steps(plan: Plan, target_k: float, guess: float, by_width: bool = False) -> Generator[None, None, float]:
    """Where a plan's peak would be ``target_k``: its depth (m), or the factor on its widths; a run at a time.

    Parameters
    ----------
    plan : one end of the band, or the middle.
    target_k : K.
    guess : to begin with.
    by_width : the depth stays and the widths change.

    Returns
    -------
    generator
        its value is the depth or the factor.

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.known import levels
    >>> from calc.casting.cure.pour import Resin
    >>> from calc.steps import at_once
    >>> plan = Plan(Resin(Kinetics(1.6e-5)), levels()["cup"], wide(0.03), 296.15, 296.15)
    >>> round(at_once(line_steps(plan, 338.15, 0.04)), 3)
    0.042

    References
    ----------
    cure-trials.
    """
    start = plan.start()
    if by_width:
        return (yield from critical_width_steps(plan.resin, plan.mould, start, guess, ROUGH, target_k))
    return (yield from critical_depth_steps(plan.resin, plan.mould, start, guess, ROUGH, target_k, plan.old(ROUGH)))


def lines_steps(outlook: Outlook) -> Steps:
    """The three depths (or widths): no stop found up to, a stop from, and where the middle runs away.

    Parameters
    ----------
    outlook : its plan; its lines are set.

    Returns
    -------
    generator
        yields the share done.

    Notes
    -----
    The rate's band and the trials' own spread of depths differ by a little in shallow pours: no stop is found only below both.
    An earlier layer, however warm, never allows more than the same pour has without it.

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.known import levels
    >>> from calc.casting.cure.pour import Resin
    >>> found = Outlook(Plan(Resin(Kinetics(1.6e-5)), levels()["cup"], wide(0.03), 296.15, 296.15))
    >>> for share in lines_steps(found): pass
    >>> found.go < found.stop < found.edge
    True

    References
    ----------
    cure-trials; practice for the peaks.
    """
    if outlook.plan.beneath is None:
        yield from _lines(outlook)
        return
    alone = Outlook(replace(outlook.plan, beneath=None))
    for share in _lines(alone):
        yield share / 2
    for share in _lines(outlook):
        yield 0.5 + share / 2
    outlook.go, outlook.stop = min(outlook.go, alone.go), min(outlook.stop, alone.stop)


def _lines(outlook: Outlook) -> Steps:
    plan = outlook.plan
    guess = usual_depth(plan)
    target = critical_k(plan.air_k)
    outlook.edge = yield from unmeasured(line_steps(plan, target, guess, plan.tall), 0.0, 0.4, _STRIDE)
    lower = outlook.edge * plan.level.rate_up**DEPTH_BY_RATE * 0.93
    worst, outlook.go = plan.hot, math.inf
    for number, end in enumerate(plan.worst):
        share = 0.4 / len(plan.worst)
        go = yield from unmeasured(line_steps(end, max(GO_K, plan.air_k + 10), lower, plan.tall), 0.4 + share * number, 0.4 + share * (number + 1), _STRIDE)
        if go < outlook.go:
            worst, outlook.go = end, go
    stop = yield from unmeasured(line_steps(worst, max(STOP_K, plan.air_k + 20), outlook.go * 1.07, plan.tall), 0.8, 1.0, _STRIDE)
    outlook.stop = min(stop, outlook.edge / plan.level.stop_over)
    held = min(outlook.go, outlook.stop, outlook.edge * plan.level.true_over_predicted[0])
    outlook.go, outlook.held = held, held / outlook.go


def headroom_steps(outlook: Outlook) -> Steps:
    """How many times faster than the middle estimate the resin would be if this very pour just ran away.

    Parameters
    ----------
    outlook : with its edge; ``headroom`` is set.

    Returns
    -------
    generator
        yields the share done.

    Notes
    -----
    In a wide mould the depth tells the same. In a narrow one a pour may be far from any critical depth, and near the edge all
    the same if its resin is faster than thought.

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.known import levels
    >>> from calc.casting.cure.pour import Resin
    >>> found = Outlook(Plan(Resin(Kinetics(1.6e-5)), levels()["cup"], wide(0.042), 296.15, 296.15))
    >>> for steps in (lines_steps, headroom_steps):
    ...     for share in steps(found): pass
    >>> round(found.headroom, 1)
    1.0

    References
    ----------
    cure-solver.
    """
    plan, target = outlook.plan, critical_k(outlook.plan.air_k)
    start, old = plan.start(), plan.old(ROUGH)
    guess = min(max((outlook.planned / outlook.edge) ** (1 / DEPTH_BY_RATE), 0.1), 5.0)

    def peak(factor: float) -> float:
        return peak_of(plan.resin.faster(factor), plan.mould, start, ROUGH, target + 40.0, old)

    outlook.headroom = yield from unmeasured(meeting(peak, plan.air_k, target, guess, 0.01, 100.0, target + 40.0), 0.0, 1.0, _STRIDE)


def usual_depth(plan: Plan) -> float:
    """A first guess of a critical depth (m), or factor on the widths: a slab's, scaled by rate, heat and shop.

    Parameters
    ----------
    plan : any.

    Returns
    -------
    float

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.known import levels
    >>> from calc.casting.cure.pour import Resin
    >>> round(usual_depth(Plan(Resin(Kinetics(1.6e-5)), levels()["cup"], wide(0.03), 296.15, 296.15)), 3)
    0.044

    References
    ----------
    cure-trials: depth goes with rate to the power -0.87 and heat to the power -1.2, and loses 6 percent a degree.
    """
    kinetics, mould = plan.resin.kinetics, plan.mould
    slab = 0.042 * (kinetics.k25 / 1.6e-5) ** DEPTH_BY_RATE * (kinetics.heat / 380e3) ** -1.2 * math.exp(-0.06 * (plan.air_k - 296.15))
    narrow = slab / (2 * mould.footprint.half_width_m)
    if plan.tall:
        return float(min(max(1.3 * narrow, 0.1), 10.0))
    wood = (1 - mould.wood_share) ** -1.2
    return float(min(max(slab * wood * (1 + 2.5 * narrow**2), 0.001), 1.0))


def courses_steps(outlook: Outlook, whole: bool = True) -> Steps:
    """The courses: hot end and middle finely, cool end coarsely, and what is left in the bucket.

    Parameters
    ----------
    outlook : its plan; its courses are set.
    whole : false for the peaks only: both ends and the middle roughly, no bucket.

    Returns
    -------
    generator
        yields the share done.

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.known import levels
    >>> from calc.casting.cure.pour import Resin
    >>> found = Outlook(Plan(Resin(Kinetics(1.6e-5)), levels()["cup"], wide(0.03), 296.15, 296.15))
    >>> for share in courses_steps(found): pass
    >>> found.cool.peak.hottest_k < found.middle.peak.hottest_k < found.hot.peak.hottest_k
    True

    References
    ----------
    cure-solver.
    """
    plan = outlook.plan
    cut = COARSE if whole else ROUGH
    outlook.hot = max((end.course(cut, "cold" if whole else "peak") for end in plan.worst), key=lambda course: course.peak.hottest_k)
    yield 0.3
    if not whole:
        outlook.middle, outlook.cool = (end.course(ROUGH, "peak") for end in (plan, plan.cool))
        outlook.mould_k = _moulds(outlook)
        return
    outlook.middle = plan.course(COARSE, "cold")
    yield 0.7
    outlook.cool = plan.cool.course(COARSE, "peak")
    outlook.mould_k = _moulds(outlook)
    yield 0.9
    faster = max((plan.resin, plan.in_bucket or plan.resin), key=lambda resin: resin.kinetics.k25)
    outlook.bucket = in_bucket(faster, plan.level.rate_up, plan.batch_kg, plan.air_k, plan.resin_k, plan.printed)


def _moulds(outlook: Outlook) -> tuple[float, float, float]:
    """The mould at the cool end, in the middle and at the hot end, K: a faster resin never leaves it cooler."""
    assert outlook.cool is not None and outlook.middle is not None and outlook.hot is not None
    cool, middle, hot = (hottest_mould(course) for course in (outlook.cool, outlook.middle, outlook.hot))
    return cool, max(cool, middle), max(cool, middle, hot)


def equal_steps(outlook: Outlook) -> Steps:
    """The wide pour that gets as hot as the middle estimate, in the same shop.

    Parameters
    ----------
    outlook : with its middle course and its edge; ``equal_m`` is set.

    Returns
    -------
    generator
        yields the share done.

    Notes
    -----
    Past the edge peaks tell nothing: there the two edges are compared instead.

    Examples
    --------
    >>> from calc.casting.cure.calibrate import wide
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> from calc.casting.cure.known import levels
    >>> from calc.casting.cure.pour import Resin
    >>> found = Outlook(Plan(Resin(Kinetics(1.6e-5)), levels()["cup"], wide(0.03), 296.15, 296.15))
    >>> for step in (lines_steps, courses_steps):
    ...     for share in step(found): pass
    >>> for share in equal_steps(found): pass
    >>> round(found.equal_m, 3)
    0.030

    References
    ----------
    judgement.
    """
    assert outlook.middle is not None
    plan = outlook.plan
    peak = outlook.middle.peak.hottest_k
    over = peak > critical_k(plan.air_k)
    steps = equivalent_depth_steps(plan.resin, min(peak, critical_k(plan.air_k)), plan.air_k, min(plan.mould.depth_m, usual_depth(plan)))
    found = yield from unmeasured(steps, 0.0, 1.0, _STRIDE)
    outlook.equal_m = min(found * max(1.0, outlook.planned / outlook.edge), DEEPEST_M) if over else found
