"""How fast a casting may turn: caps by rim speed and heat, and the top speed they leave.

Symbols inside the functions: D diameter swept, n spindle speed in rpm, v rim speed.
The caps are ceilings that we chose beside printed tables; their rows, each with its
basis, are in ``data/speed_caps.csv``.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from calc.quantity import round_to
from calc.sources import table
from calc.turning import balance

Operation = Literal["rough", "finish", "sand", "power", "paste"]
Condition = Literal["solid", "filled", "loose", "cracked"]
LimitId = Literal["rim", "own", "vibration", "push", "mount", "whip", "marked", "heat", "surface", "lathe"]

VARIABLE_STEP_RPM = 10.0  # a dial is read to about this: our judgement
SHIELD_TEST_J = 0.500 * balance.STANDARD_GRAVITY * 1.27  # 6.23 J, high-mass impact test (z87-1)
WHIP_SHARE = 0.5  # share of the whirling speed that long slender work may turn at: our judgement
WHIP_FROM = 4.0  # length over diameter from which whip is looked at; below, it can never rule: arithmetic
FREE_END_FACTOR = (1.8751 / math.pi) ** 2  # first root of a clamped bar over that of a pinned one (timoshenko)
RESIN_MODULUS = 2.4e9  # Pa, room-cured casting epoxy, the softer of resin and wood: our judgement
RESIN_DENSITY = 1150.0  # kg/m3, cast epoxy; wood is nearly always lighter: our judgement
RUBBING: tuple[Operation, ...] = ("sand", "paste")


@cache
def caps() -> Mapping[str, Mapping[str, float]]:
    """The rows of ``data/speed_caps.csv`` as floats in SI (rpm for spindle speed), by name.

    Returns
    -------
    Mapping
        name -> ``rim`` (m/s), ``rpm``, ``diameter`` (m), each only where the row has it.

    Examples
    --------
    >>> caps()["rough-large"]
    {'rim': 8.0, 'diameter': 0.25}

    References
    ----------
    Each row of the table names its own.
    """
    return {
        row["name"]: {
            key: float(row[column]) * scale
            for key, column, scale in (("rim", "rim_m_per_s", 1.0), ("rpm", "rpm", 1.0), ("diameter", "diameter_mm", 1e-3))
            if row[column]
        }
        for row in table("speed_caps")
    }


def rim_speed(diameter_m: float, speed_rpm: float) -> float:
    """Rim speed v = pi D n / 60.

    Parameters
    ----------
    diameter_m : D, m, 0 or more.
    speed_rpm : n, rpm, 0 or more.

    Returns
    -------
    float
        m/s.

    Examples
    --------
    >>> round(rim_speed(0.300, 1000), 3)
    15.708

    References
    ----------
    Definition.
    """
    return math.pi * diameter_m * speed_rpm / 60.0


def speed_at_rim_speed(diameter_m: float, rim_m_per_s: float) -> float:
    """Spindle speed at a rim speed: n = 60 v / (pi D).

    Parameters
    ----------
    diameter_m : D, m, more than 0.
    rim_m_per_s : v, m/s, 0 or more.

    Returns
    -------
    float
        rpm.

    Examples
    --------
    >>> round(speed_at_rim_speed(0.300, 12), 1)
    763.9

    References
    ----------
    Definition.
    """
    return 60.0 * rim_m_per_s / (math.pi * diameter_m)


def roughing_rim_speed(diameter_m: float) -> float:
    """Cap on rim speed while the work is out of round: 4 m/s up to 75 mm, in a straight line to 8 m/s at 250 mm.

    Parameters
    ----------
    diameter_m : largest circle swept, corner to corner, m, more than 0.

    Returns
    -------
    float
        m/s.

    Notes
    -----
    A line drawn beside the printed roughing speeds in ``data/roughing_cells.csv``: 2.5 to 4 m/s
    on the smallest work, 6 to 6.7 m/s on the largest; none printed is above 8 m/s.
    The spindle speed it gives falls with every larger diameter.

    Examples
    --------
    >>> [round(roughing_rim_speed(mm / 1000), 2) for mm in (50, 75, 150, 250, 400)]
    [4.0, 4.0, 5.71, 8.0, 8.0]

    References
    ----------
    lathe-manuals; the line is our judgement.
    """
    small, large = caps()["rough-small"], caps()["rough-large"]
    along = (diameter_m - small["diameter"]) / (large["diameter"] - small["diameter"])
    return small["rim"] + min(max(along, 0.0), 1.0) * (large["rim"] - small["rim"])


def operation_rim_speed(operation: Operation, diameter_m: float) -> float:
    """Cap on rim speed by what is done.

    Parameters
    ----------
    operation : ``rough`` out of round, ``finish`` cut, ``sand`` by hand, ``power`` sanding, ``paste`` rubbed by hand.
    diameter_m : largest circle swept, m, more than 0.

    Returns
    -------
    float
        m/s.

    Examples
    --------
    >>> operation_rim_speed("paste", 0.45)
    12.0

    References
    ----------
    trade-6000-9000, milton-wohlers-1919; our judgement.
    """
    return roughing_rim_speed(diameter_m) if operation == "rough" else caps()["finish"]["rim"]


def condition_rim_speed(condition: Condition) -> float:
    """Cap on rim speed by how the work looks.

    Parameters
    ----------
    condition : ``solid``, ``filled``, ``loose`` or ``cracked``.

    Returns
    -------
    float
        m/s.

    Notes
    -----
    A crack right through, an opened bond or loose wood has no cap: it is not spun.

    Examples
    --------
    >>> [condition_rim_speed(c) for c in ("solid", "filled", "loose", "cracked")]
    [12.0, 9.0, 6.0, 3.0]

    References
    ----------
    Our judgement.
    """
    return caps()[condition]["rim"]


def rubbing_speed(diameter_m: float) -> float:
    """Spindle speed at which resin that is sanded or rubbed with paste by hand stays cool enough.

    From 250 mm the lower of 400 rpm and 9.5 m/s; below, the lower of 800 rpm and 5 m/s.

    Parameters
    ----------
    diameter_m : D, m, more than 0.

    Returns
    -------
    float
        rpm.

    Notes
    -----
    The two rules part by 5 % where they meet at 250 mm (382 and 400 rpm). They are joined at 239 mm, where
    5 m/s is 400 rpm, so that a larger disc is never given a higher speed. Heat is what matters:
    hand-warm at most, and seconds, not minutes, in one place.

    Examples
    --------
    >>> [round(rubbing_speed(mm / 1000)) for mm in (80, 150, 250, 450, 600)]
    [800, 637, 400, 400, 302]

    References
    ----------
    Common practice, no source.
    """
    small, large = caps()["rub-small"], caps()["rub-large"]
    for_small = min(small["rpm"], speed_at_rim_speed(diameter_m, small["rim"]))
    for_large = min(large["rpm"], speed_at_rim_speed(diameter_m, large["rim"]))
    return max(for_small, for_large)


def whip_speed(diameter_m: float, length_m: float, far_end_held: bool = True) -> float:
    """Speed at which a round bar of resin whirls: n = 60 (pi D / (8 L^2)) sqrt(E / rho) between centres.

    Parameters
    ----------
    diameter_m : D, m, more than 0.
    length_m : length L, m, more than 0.
    far_end_held : false when it stands free at one end; it then whirls at 0.356 of that speed.

    Returns
    -------
    float
        rpm.

    Notes
    -----
    Pinned at both ends, or clamped at one. Means nothing for a disc, where it is far above any lathe.

    Examples
    --------
    >>> round(whip_speed(0.025, 0.600))
    2364

    References
    ----------
    timoshenko, from memory.
    """
    pinned = 60.0 * (math.pi * diameter_m / (8.0 * length_m**2)) * math.sqrt(RESIN_MODULUS / RESIN_DENSITY)
    return pinned if far_end_held else FREE_END_FACTOR * pinned


def disc_mass(diameter_m: float, thickness_m: float, density_kg_per_m3: float = RESIN_DENSITY) -> float:
    """Mass of a full disc of resin: m = rho pi D^2 t / 4.

    Parameters
    ----------
    diameter_m : D, m, 0 or more.
    thickness_m : t along the lathe, m, 0 or more.
    density_kg_per_m3 : rho, kg/m3.

    Returns
    -------
    float
        kg.

    Notes
    -----
    Too heavy for a blank with corners or with wood in it, which lowers the speed: the safe side.

    Examples
    --------
    >>> round(disc_mass(0.450, 0.050), 3)
    9.145

    References
    ----------
    Plain geometry.
    """
    return density_kg_per_m3 * math.pi / 4.0 * diameter_m**2 * thickness_m


def shield_fragment_mass(rim_m_per_s: float) -> float:
    """Mass of a fragment that, at rim speed, hits as hard as a face shield is tested for: m = 2 E / v^2.

    Parameters
    ----------
    rim_m_per_s : v, m/s, more than 0.

    Returns
    -------
    float
        kg.

    Examples
    --------
    >>> [round(1000 * shield_fragment_mass(v)) for v in (6, 8, 12)]
    [346, 195, 86]

    References
    ----------
    z87-1: 500 g from 1.27 m.
    """
    return 2.0 * SHIELD_TEST_J / rim_m_per_s**2


# ---------------------------------------------------------------- the top speed


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


@dataclass(frozen=True)
class Measured:
    """A vibration that was measured or felt: root mean square speed (m/s, more than 0) at a spindle speed."""

    speed_rpm: float
    vibration_m_per_s: float


@dataclass(frozen=True)
class Job:
    """One piece of work on one lathe.

    Parameters
    ----------
    diameter_m : largest circle swept, m, more than 0.
    operation, condition : what is done, and how the work looks.
    mass_kg : mass of the work, kg, more than 0.
    unbalance_kg_m : out of balance U = m e, kg m, 0 or more.
    standing_mass_kg : mass the lathe stands like, kg (:func:`calc.turning.balance.standing_mass`).
    vibration_limit_m_per_s, clean_limit_m_per_s : vibration not to be passed, and that leaves a clean cut.
    mount_share : share of the rim, vibration and push limits that the mount allows, 0 to 1.
    length_m : thickness, or length along the lathe, m, more than 0.
    far_end_held : by centre or pad.
    marked_rpm : highest speed marked on the chuck; none when there is none.
    own_rpm : the maker's own limit; none when there is none.
    measured : overrules the guess of the vibration.
    """

    diameter_m: float
    operation: Operation
    condition: Condition
    mass_kg: float
    unbalance_kg_m: float
    standing_mass_kg: float
    vibration_limit_m_per_s: float
    clean_limit_m_per_s: float
    mount_share: float = 1.0
    length_m: float = 0.05
    far_end_held: bool = True
    marked_rpm: float | None = None
    own_rpm: float | None = None
    measured: Measured | None = None

    @property
    def felt_unbalance_kg_m(self) -> float:
        """U, kg m: worked back from the vibration where one was measured."""
        if self.measured is None:
            return self.unbalance_kg_m
        return balance.unbalance_from_vibration(self.measured.speed_rpm, self.measured.vibration_m_per_s, self.mass_kg, self.standing_mass_kg)

    def speed_at_vibration(self, limit_m_per_s: float) -> float:
        """rpm at which the lathe's vibration reaches a limit, from the measurement where there is one."""
        if self.measured is None:
            return balance.speed_at_vibration(self.unbalance_kg_m, self.mass_kg, self.standing_mass_kg, limit_m_per_s)
        return balance.speed_from_measured_vibration(self.measured.speed_rpm, self.measured.vibration_m_per_s, limit_m_per_s)


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
    limits.append(Limit("vibration", job.speed_at_vibration(job.vibration_limit_m_per_s)))
    limits.append(Limit("push", balance.speed_at_push(job.felt_unbalance_kg_m, job.standing_mass_kg)))
    if job.mount_share < 1.0:
        limits.append(Limit("mount", job.mount_share * bearing_limit(limits).speed_rpm))
    if job.length_m > WHIP_FROM * job.diameter_m:
        limits.append(Limit("whip", WHIP_SHARE * whip_speed(job.diameter_m, job.length_m, job.far_end_held)))
    if job.marked_rpm is not None:
        limits.append(Limit("marked", job.marked_rpm))
    if job.operation in RUBBING:
        limits.append(Limit("heat", rubbing_speed(job.diameter_m), soft=True))
    if job.operation == "power":
        limits.append(Limit("heat", caps()["power-pad"]["rpm"], soft=True))
    if job.operation == "finish":
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
