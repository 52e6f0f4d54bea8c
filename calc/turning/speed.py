"""How fast a casting may turn: the ladder of limits on its speed, and the setting they leave on a lathe."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from calc.quantity.writing import round_to
from calc.sources import table, value
from calc.turning import discs
from calc.turning.caps import Operation, caps, condition_rim_speed, operation_rim_speed, rubbing_speed, speed_at_rim_speed
from calc.turning.job import Job

LimitId = Literal["rim", "own", "vibration", "push", "mount", "whip", "marked", "heat", "surface", "lathe"]

VARIABLE_STEP_RPM = value("turning", "dial step")
WHIP_SHARE = value("turning", "whip share")
WHIP_FROM = 4.0  # length over diameter from which whip is looked at; below, it can never rule: arithmetic
RUBBING: tuple[Operation, ...] = ("sand", "paste")
SANDING: tuple[Operation, ...] = (*RUBBING, "power")
CLEAN: tuple[Operation, ...] = ("finish", "sand", "power")  # what leaves a surface: none of them is run faster than the finishing cut


@dataclass(frozen=True)
class LatheKind:
    """What a kind of lathe weighs with its stand (kg), and its speed range (rpm), when the maker has not said."""

    mass_kg: float
    lowest_rpm: float
    highest_rpm: float


@cache
def lathe_kinds() -> Mapping[str, LatheKind]:
    """The rows of ``data/lathes.csv`` by name.

    Returns
    -------
    Mapping

    Examples
    --------
    >>> lathe_kinds()["floor"]
    LatheKind(mass_kg=150.0, lowest_rpm=50.0, highest_rpm=4000.0)

    References
    ----------
    lathes-sold for the ranges; the masses are our judgement.
    """
    return {row["name"]: LatheKind(float(row["mass_kg"]), float(row["lowest_rpm"]), float(row["highest_rpm"])) for row in table("lathes")}


@dataclass(frozen=True)
class Speeds:
    """What the lathe can be set to: belt steps, or a range for a dial.

    Parameters
    ----------
    lowest_rpm, highest_rpm : ends of the range.
    steps_rpm : the steps of a belt lathe, any order; empty for a dial.
    """

    lowest_rpm: float
    highest_rpm: float
    steps_rpm: tuple[float, ...] = ()

    @classmethod
    def of_steps(cls, steps_rpm: tuple[float, ...]) -> Speeds:
        """A belt lathe.

        >>> Speeds.of_steps((400, 200)).lowest_rpm
        200
        """
        return cls(min(steps_rpm), max(steps_rpm), steps_rpm)

    def at_or_below(self, speed_rpm: float) -> float | None:
        """The setting to use: the highest step, or ten on the dial, that is not above a speed.

        >>> Speeds.of_steps((200, 400, 650)).at_or_below(399)
        200
        >>> Speeds(250, 3000).at_or_below(366.2), Speeds(255, 3000).at_or_below(257), Speeds(250, 3000).at_or_below(68)
        (360.0, 255, None)
        """
        if speed_rpm < self.lowest_rpm:
            return None
        if self.steps_rpm:
            return max(step for step in self.steps_rpm if step <= speed_rpm)
        return max(self.lowest_rpm, round_to(min(speed_rpm, self.highest_rpm), VARIABLE_STEP_RPM, "down"))

    def up_to(self, speed_rpm: float) -> tuple[float, ...]:
        """The steps of a belt up to a speed, lowest first; none on a dial.

        >>> Speeds.of_steps((650, 200, 400)).up_to(400)
        (200, 400)
        """
        return tuple(sorted(step for step in self.steps_rpm if step <= speed_rpm))


@dataclass(frozen=True)
class Limit:
    """One limit on the speed. ``soft`` limits are about heat or surface: passing them spoils work, not people.

    ``counts`` is false for a limit that is shown but that another one replaces.
    """

    id: LimitId
    speed_rpm: float
    soft: bool = False
    counts: bool = True


@dataclass(frozen=True)
class TopSpeed:
    """The top speed and the ladder of limits it comes from.

    ``rules`` is the lowest limit of all, ``hard`` the lowest that is not soft.
    ``setting_rpm`` is none when the lathe cannot go as slow as ``hard_rpm``. It is above
    ``speed_rpm`` in one case only: the lowest speed of the lathe is above a soft limit but not
    above ``hard_rpm``; ``too_quick`` is then true.
    """

    limits: tuple[Limit, ...]
    rules: Limit
    hard: Limit
    setting_rpm: float | None
    too_quick: bool

    @property
    def speed_rpm(self) -> float:
        """rpm: the lowest limit, before rounding to the lathe."""
        return self.rules.speed_rpm

    @property
    def hard_rpm(self) -> float:
        """rpm: the lowest of the limits that are not soft."""
        return self.hard.speed_rpm

    @property
    def refused(self) -> bool:
        """Whether no setting of the lathe is slow enough."""
        return self.setting_rpm is None

    @property
    def rim(self) -> Limit:
        """The cap on the rim's speed; it may not count, when the maker's own limit stands in its place."""
        return next(limit for limit in self.limits if limit.id == "rim")

    @property
    def bearing(self) -> Limit:
        """The limit that the mount takes its share of."""
        return bearing_limit(self.limits)


def settle(limits: tuple[Limit, ...], speeds: Speeds) -> TopSpeed:
    """The setting that a ladder of limits leaves on a lathe.

    The highest step, or ten on the dial, not above the lowest limit. When the lathe's lowest
    speed is above it: offered if only a soft limit is passed, otherwise refused.

    Parameters
    ----------
    limits : at least one hard limit that counts.
    speeds : what the lathe can be set to.

    Returns
    -------
    TopSpeed

    Examples
    --------
    >>> top = settle((Limit("rim", 916.7), Limit("heat", 400, soft=True)), Speeds.of_steps((500, 750, 1100)))
    >>> top.setting_rpm, top.too_quick, top.rules.id
    (500, True, 'heat')

    References
    ----------
    Our judgement.
    """
    ladder = (*limits, Limit("lathe", speeds.highest_rpm))
    counting = [limit for limit in ladder if limit.counts]
    hard = min((limit for limit in counting if not limit.soft), key=lambda limit: limit.speed_rpm)
    rules = min(counting, key=lambda limit: limit.speed_rpm)
    setting = speeds.at_or_below(rules.speed_rpm)
    too_quick = setting is None and speeds.lowest_rpm <= hard.speed_rpm
    if too_quick:
        setting = speeds.lowest_rpm
    return TopSpeed(ladder, rules, hard, setting, too_quick)


def bearing_limit(limits: Iterable[Limit]) -> Limit:
    """The limit that a mount takes its share of: the lowest of rim (or the own limit in its place), vibration and push.

    Parameters
    ----------
    limits : a ladder with at least ``rim``.

    Returns
    -------
    Limit

    Examples
    --------
    >>> bearing_limit([Limit("rim", 509), Limit("own", 300), Limit("push", 1354)]).id
    'rim'
    >>> bearing_limit([Limit("rim", 509, counts=False), Limit("own", 650), Limit("push", 1354)]).id
    'own'

    References
    ----------
    Our judgement: a mount is judged by what the piece may do, not by what its maker chooses to do.
    """
    found = tuple(limits)
    lifted = any(limit.id == "rim" and not limit.counts for limit in found)
    carried = [limit for limit in found if limit.counts and (limit.id in ("rim", "vibration", "push") or (limit.id == "own" and lifted))]
    return min(carried, key=lambda limit: limit.speed_rpm)


def job_limits(job: Job) -> tuple[Limit, ...]:
    """Every limit on the speed of a job, in the order a maker reads them.

    rim, own, vibration, push, mount = share x the lowest of these, whip, marked, and the soft ones heat and surface.

    Parameters
    ----------
    job : see :class:`Job`.

    Returns
    -------
    tuple of Limit

    Notes
    -----
    The maker's own limit lowers, or takes the place of, the rim cap; it lifts it only up to the
    highest rim speed we hold for any cut (12 m/s), never for cracked work, and it never lifts another limit.

    Examples
    --------
    >>> job = Job(0.300, "rough", "solid", 3.8877, 0.010603, 60, 0.0045, 0.0018)
    >>> [(limit.id, round(limit.speed_rpm, 1)) for limit in job_limits(job)]
    [('rim', 509.3), ('vibration', 366.2), ('push', 503.0)]

    References
    ----------
    Our judgement; each part names its own.
    """
    rim_cap = min(operation_rim_speed(job.operation, job.diameter_m), condition_rim_speed(job.condition))
    rim = speed_at_rim_speed(job.diameter_m, rim_cap)
    highest = rim if job.condition == "cracked" else speed_at_rim_speed(job.diameter_m, caps()["finish"]["rim"])
    lifted = job.own_rpm is not None and job.own_rpm > rim and highest > rim
    limits = [Limit("rim", rim, counts=not lifted)]
    if job.own_rpm is not None:
        limits.append(Limit("own", min(job.own_rpm, highest) if lifted else job.own_rpm))
    limits.append(Limit("vibration", job.speed_at_vibration(job.held_to_m_per_s)))
    limits.append(Limit("push", job.speed_at_push))
    if job.mount_share < 1.0:
        limits.append(Limit("mount", job.mount_share * bearing_limit(limits).speed_rpm))
    if job.length_m > WHIP_FROM * job.diameter_m:
        limits.append(Limit("whip", WHIP_SHARE * discs.whip_speed(job.diameter_m, job.length_m, job.far_end_held)))
    if job.marked_rpm is not None:
        limits.append(Limit("marked", job.marked_rpm))
    if job.operation in RUBBING:
        limits.append(Limit("heat", rubbing_speed(job.diameter_m), soft=True))
    if job.operation == "power":
        limits.append(Limit("heat", caps()["power-pad"]["rpm"], soft=True))
    if job.operation in CLEAN and job.held_to_m_per_s > job.clean_limit_m_per_s:
        limits.append(Limit("surface", job.speed_at_vibration(job.clean_limit_m_per_s), soft=True))
    return tuple(limits)


def wheel_limits(wheel_diameter_m: float, marked_rpm: float | None, own_rpm: float | None = None, felt_rpm: float | None = None) -> tuple[Limit, ...]:
    """Every limit on the speed of a buffing wheel on resin.

    Marked: the marking, and softly 18.5 m/s at its rim for heat. Unmarked: 18.5 m/s is the cap.

    Parameters
    ----------
    wheel_diameter_m : of the wheel, not of the work, m, more than 0.
    marked_rpm : highest speed marked on the wheel; none when unmarked.
    own_rpm : the maker's own limit; only ever lowers.
    felt_rpm : limit from a vibration that was measured or felt.

    Returns
    -------
    tuple of Limit

    Examples
    --------
    >>> [(limit.id, round(limit.speed_rpm)) for limit in wheel_limits(0.200, None)]
    [('rim', 1767)]
    >>> [(limit.id, round(limit.speed_rpm), limit.soft) for limit in wheel_limits(0.200, 1500)]
    [('marked', 1500, False), ('heat', 1767, True)]

    References
    ----------
    Common practice, no source.
    """
    at_cap = speed_at_rim_speed(wheel_diameter_m, caps()["wheel-cap"]["rim"])
    limits = [Limit("rim", at_cap)] if marked_rpm is None else [Limit("marked", marked_rpm), Limit("heat", at_cap, soft=True)]
    if own_rpm is not None:
        limits.append(Limit("own", own_rpm))
    if felt_rpm is not None:
        limits.append(Limit("vibration", felt_rpm))
    return tuple(limits)
