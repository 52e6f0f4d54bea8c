"""One piece on one lathe, and what a maker can change about it.

Every change gives a new case, so that the figure it leads to comes from the same
functions as the figure it improves on.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property

from calc.quantity.writing import round_to
from calc.sources import value
from calc.turning import balance, caps, discs, mounts, speed, vibrating
from calc.turning.fit import standard
from calc.turning.job import Job, Measured

GUESSES = ("even", "some", "side", "half")  # make-ups that nobody has balanced, best first
EIGHT_SIDES = math.cos(math.pi / 4) / math.cos(math.pi / 8)  # corner to corner, octagon over the square it is sawn from: geometry
BALLAST_STEP_KG = value("turning", "ballast step")
BALLAST_MOST = value("turning", "ballast most")  # times the lathe's own mass


@dataclass(frozen=True)
class Case:
    """A piece, its mount, its lathe and what is to be done.

    Parameters
    ----------
    operation, condition, hold, far_end : see :mod:`calc.turning.speed` and :mod:`calc.turning.mounts`.
    diameter_m, thickness_m : largest circle swept, and size along the lathe, m, more than 0.
    make_up : ``even``, ``some``, ``side``, ``half`` (guesses), ``done``, ``weight`` or ``known``.
    lathe_kg : lathe with stand and ballast, kg, more than 0.
    bolted : to floor or wall.
    speeds : what the lathe can be set to.
    weighed_kg : what the work weighs, kg; a full disc of resin when none.
    known_unbalance_kg_m, known_eccentricity_m : out of balance, where it was measured.
    marked_rpm, own_rpm : marked on the chuck; the maker's own limit.
    measured : a vibration that was measured or felt.
    steady : a steady rest stands in the middle.
    set_back_m : how far off its centre it was set back on the lathe, m, 0 or more; it adds to what is out of balance.
    """

    operation: caps.Operation
    diameter_m: float
    thickness_m: float
    condition: caps.Condition
    make_up: str
    hold: mounts.Hold
    far_end: mounts.FarEnd
    lathe_kg: float
    bolted: bool
    speeds: speed.Speeds
    weighed_kg: float | None = None
    known_unbalance_kg_m: float | None = None
    known_eccentricity_m: float | None = None
    marked_rpm: float | None = None
    own_rpm: float | None = None
    measured: Measured | None = None
    steady: bool = False
    set_back_m: float = 0.0

    @property
    def guessed(self) -> bool:
        """Whether the balance is a guess: nobody weighed it, and nobody ran it."""
        return self.make_up in GUESSES and self.measured is None

    @cached_property
    def mass_kg(self) -> float:
        """Mass of the work, kg."""
        return self.weighed_kg if self.weighed_kg is not None else discs.disc_mass(self.diameter_m, self.thickness_m)

    @property
    def eccentricity_m(self) -> float:
        """Centre of mass to axis, m: known, from a weight, or guessed."""
        if self.known_unbalance_kg_m is not None:
            return self.known_unbalance_kg_m / self.mass_kg
        if self.known_eccentricity_m is not None:
            return self.known_eccentricity_m
        return balance.guessed_eccentricity(self.make_up, self.diameter_m, self.operation == "rough")

    @property
    def slender(self) -> bool:
        """Whether it is long and thin enough to whip: longer than twelve times its width, or as limp where its far end stands free."""
        whips = discs.whip_speed(self.diameter_m, self.job.length_m, self.job.far_end_held)
        return whips < discs.whip_speed(self.diameter_m, standard("whip") * self.diameter_m) * (1 - 1e-9)

    @cached_property
    def job(self) -> Job:
        """What the speed limits need to know."""
        return Job(
            diameter_m=self.diameter_m,
            operation=self.operation,
            condition=self.condition,
            mass_kg=self.mass_kg,
            unbalance_kg_m=self.mass_kg * (self.eccentricity_m + self.set_back_m),
            standing_mass_kg=vibrating.standing_mass(self.lathe_kg, self.bolted),
            vibration_limit_m_per_s=vibrating.vibration_limit("zone-c"),
            clean_limit_m_per_s=vibrating.vibration_limit("zone-b"),
            mount_share=mounts.allowed_share(self.hold, self.far_end),
            length_m=self.thickness_m / (2 if self.steady else 1),
            far_end_held=self.hold == "centres" or self.far_end != "none" or self.steady,
            marked_rpm=self.marked_rpm,
            own_rpm=self.own_rpm,
            measured=self.measured,
        )

    @cached_property
    def top(self) -> speed.TopSpeed:
        """The top speed of the case."""
        return speed.settle(speed.job_limits(self.job), self.speeds)


def balanced(case: Case) -> Case:
    """The case once weights on a free spindle have balanced it; a vibration measured before no longer counts.

    Parameters
    ----------
    case : as it is.

    Returns
    -------
    Case

    Examples
    --------
    >>> speeds = speed.Speeds(250, 3000)
    >>> lopsided = Case("rough", 0.3, 0.05, "solid", "half", "centres", "live", 60, False, speeds)
    >>> lopsided.top.setting_rpm, balanced(lopsided).top.setting_rpm
    (None, 500.0)

    References
    ----------
    What is left is our judgement, ``done`` in ``data/balance_guesses.csv``.
    """
    return replace(case, make_up="done", known_unbalance_kg_m=None, known_eccentricity_m=None, measured=None, set_back_m=0.0)


def recentred(case: Case) -> Case:
    """The case mounted anew on its centre of mass: in balance, and sweeping twice the shift more.

    Parameters
    ----------
    case : as it is; its eccentricity known.

    Returns
    -------
    Case

    Examples
    --------
    >>> speeds = speed.Speeds(250, 3000)
    >>> off = Case("rough", 0.3, 0.05, "solid", "known", "centres", "live", 60, False, speeds, known_eccentricity_m=0.009)
    >>> round(recentred(off).diameter_m, 3)
    0.318

    References
    ----------
    Plain geometry.
    """
    return replace(balanced(case), diameter_m=case.diameter_m + 2 * case.eccentricity_m)


def steadied(case: Case) -> Case:
    """The case with a steady rest in the middle; where it trembled without, up to that speed again and no further.

    Parameters
    ----------
    case : as it is.

    Returns
    -------
    Case

    Examples
    --------
    >>> speeds = speed.Speeds(250, 3000)
    >>> rod = Case("finish", 0.025, 0.400, "solid", "done", "centres", "live", 150, False, speeds, measured=Measured.of(900, 0.0045))
    >>> rod.top.setting_rpm, steadied(rod).top.setting_rpm
    (360.0, 900.0)

    References
    ----------
    Our judgement.
    """
    if case.measured is None or case.measured.held_to_m_per_s is None:
        return replace(case, steady=True)
    own = min(case.measured.speed_rpm, math.inf if case.own_rpm is None else case.own_rpm)
    return replace(case, steady=True, measured=None, own_rpm=own)


def turned_down(case: Case, diameter_m: float) -> Case:
    """The case at a smaller size, everything else as it is.

    Parameters
    ----------
    case : as it is.
    diameter_m : what it is turned down to, m, more than 0, not above the case's own.

    Returns
    -------
    Case

    Notes
    -----
    A weight that was known falls with the area. What is out of balance, known or guessed, stays as much as it is now: a
    round of wood beside the centre throws as hard when the resin around it is gone. A vibration that was measured stands.

    Examples
    --------
    >>> speeds = speed.Speeds(50, 3000)
    >>> off = Case("rough", 0.3, 0.05, "solid", "known", "centres", "live", 60, False, speeds, 4.0, known_eccentricity_m=0.009)
    >>> smaller = turned_down(off, 0.15)
    >>> smaller.mass_kg, round(smaller.job.unbalance_kg_m, 6), round(off.job.unbalance_kg_m, 6)
    (1.0, 0.036, 0.036)

    References
    ----------
    Plain geometry; what stays is our judgement, on the safe side.
    """
    weighed = None if case.weighed_kg is None else case.weighed_kg * (diameter_m / case.diameter_m) ** 2
    unbalance = case.job.unbalance_kg_m
    return replace(case, diameter_m=diameter_m, weighed_kg=weighed, known_unbalance_kg_m=unbalance, known_eccentricity_m=None, set_back_m=0.0)


def on_footing(case: Case, lathe_kg: float, bolted: bool) -> Case:
    """The case on another footing; a vibration that was measured falls as the mass that stands grows.

    Parameters
    ----------
    case : as it is.
    lathe_kg : lathe with stand and ballast, kg, more than 0.
    bolted : to floor or wall.

    Returns
    -------
    Case

    Examples
    --------
    >>> speeds = speed.Speeds(50, 3000)
    >>> felt = Case("rough", 0.3, 0.05, "solid", "side", "centres", "live", 60, False, speeds,
    ...     weighed_kg=4, measured=Measured(100, 0.0064))
    >>> on_footing(felt, 124, False).measured.vibration_m_per_s
    0.0032

    References
    ----------
    :func:`calc.turning.vibrating.vibration`.
    """
    after = replace(case, lathe_kg=lathe_kg, bolted=bolted)
    if case.measured is None:
        return after
    shrunk = (case.job.standing_mass_kg + case.mass_kg) / (after.job.standing_mass_kg + case.mass_kg)
    return replace(after, measured=replace(case.measured, vibration_m_per_s=case.measured.vibration_m_per_s * shrunk))


def ballast_to_next_limit(case: Case) -> float:
    """Ballast that lifts vibration and push to the next limit, or as much as the stand should bear.

    Parameters
    ----------
    case : as it is.

    Returns
    -------
    float
        kg, in tens; 0 when vibration and push do not rule.

    Examples
    --------
    >>> speeds = speed.Speeds(250, 3000)
    >>> case = Case("rough", 0.3, 0.05, "solid", "weight", "centres", "live", 60, False, speeds, known_unbalance_kg_m=0.010603)
    >>> ballast_to_next_limit(case)
    30.0

    References
    ----------
    :func:`calc.turning.vibrating.standing_mass_for_speed`; the most is our judgement.
    """
    job = case.job
    others = [limit.speed_rpm for limit in case.top.limits if limit.counts and limit.id not in ("vibration", "push", "mount", "surface")]
    limit = job.clean_limit_m_per_s if case.operation == "finish" else job.vibration_limit_m_per_s
    standing = vibrating.standing_mass_for_speed(job.felt_unbalance_kg_m, job.mass_kg, limit, min(others))
    needed = standing / (vibrating.BOLTED_FACTOR if case.bolted else 1.0) - case.lathe_kg
    most = max(BALLAST_STEP_KG, round_to(BALLAST_MOST * case.lathe_kg, BALLAST_STEP_KG, "down"))
    return min(round_to(max(needed, 0.0), BALLAST_STEP_KG, "up"), most)
