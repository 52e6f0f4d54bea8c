"""A piece on its mount: how many times an ordinary catch it bears, to what speed, and the least block that would do."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property

from calc.sources import value
from calc.turning import caps, discs, fit, glue, hold, mounts, speed
from calc.turning.hold import Loads
from calc.turning.mounts import FarEnd

WANTED = value("turning", "wanted")  # times a catch that glue and tenons are to bear
WANTED_SCREWS = value("turning", "wanted of screws")  # times a catch, of what pulls the screws out
REFUSED = value("turning", "refused")  # times a catch; below, the tailstock is more than a help
LOWEST_RPM = value("turning", "lowest speed")  # a mount that only holds below is no mount
MOST_RPM = 10000.0  # beyond any hand lathe
SLENDER = fit.standard("whip")  # lengths to a diameter from which a steady is asked for
MOST_OVERHANG = value("turning", "most overhang")  # of the block, with nothing at the far end
MOST_DIAMETER = value("turning", "most diameter")  # times the block, with nothing at the far end


@dataclass(frozen=True)
class Glue:
    """A glued block: size, bead (m; none for a full face), strength when cool (Pa), and how warm it gets (K).

    ``sound`` is false on a waxed, oiled, polished or finished face: nothing is counted on.
    """

    across_m: float
    bead_m: float | None
    pull_pa: float
    shear_pa: float
    warm_k: float
    sound: bool = True

    wanted = WANTED

    @property
    def face(self) -> glue.GluedFace:
        """What is glued."""
        return glue.full_face(self.across_m) if self.bead_m is None else glue.ring_bead(self.across_m, self.bead_m)

    def factor(self, on: Loads) -> float:
        """How many times its loads it bears."""
        kept = glue.warmth(self.warm_k) if self.sound else 0.0
        return glue.factor(on, self.face, kept * self.pull_pa, kept * self.shear_pa)


@dataclass(frozen=True)
class Screws:
    """Screws on a circle: how many, circle and thread (m), the wood's specific gravity.

    ``sound`` is false in resin, and for screws made for drywall or decks: nothing is counted on.
    """

    across_m: float
    count: int
    screw_m: float
    bite_m: float
    gravity: float
    end_grain: bool = False
    sound: bool = True

    wanted = WANTED_SCREWS

    @property
    def each_n(self) -> float:
        """Pull at which one comes out, N."""
        return hold.screw_withdrawal(self.gravity, self.screw_m, self.bite_m, self.end_grain) if self.sound else 0.0

    def factor(self, on: Loads) -> float:
        """How many times its loads they bear."""
        return self.each_n / max(hold.screw_pull(on, self.count, self.across_m), 1e-9)


@dataclass(frozen=True)
class Tenon:
    """A tenon in a chuck: its size (m) and the pull across it that breaks it (Pa)."""

    across_m: float
    strength_pa: float

    wanted = WANTED

    def factor(self, on: Loads) -> float:
        """How many times its loads it bears."""
        return self.strength_pa / max(hold.tenon_stress(on, self.across_m), 1e-9)


Mount = Glue | Screws | Tenon


@dataclass(frozen=True)
class Held:
    """A piece on a mount at one end, and what is at the other.

    Parameters
    ----------
    mount : glue, screws or a tenon.
    far_end : ``none``, a flat ``pad``, a ``live`` centre.
    diameter_m, mass_kg, eccentricity_m : of the work; m, kg, m.
    overhang_m : from the mount to the centre of mass, m.
    catch_n : the catch to allow for, N.
    operation : ``rough`` while it is out of round, otherwise ``finish``.
    """

    mount: Mount
    far_end: FarEnd
    diameter_m: float
    mass_kg: float
    eccentricity_m: float
    overhang_m: float
    catch_n: float
    operation: caps.Operation

    def loads(self, speed_rpm: float) -> Loads:
        """What the mount takes at a speed (rpm)."""
        return hold.loads(self.mass_kg, self.eccentricity_m, speed_rpm, self.overhang_m, self.diameter_m, self.catch_n, self.far_end)

    def factor(self, speed_rpm: float) -> float:
        """How many times a catch, weight and out of balance together it bears at a speed (rpm)."""
        return self.mount.factor(self.loads(speed_rpm))

    @property
    def rim_rpm(self) -> float:
        """The cap on the rim for this cut, less the share that this mount is run at; rpm."""
        name: mounts.Hold = "glue" if isinstance(self.mount, Glue) else "faceplate" if isinstance(self.mount, Screws) else "chuck"
        rim = caps.speed_at_rim_speed(self.diameter_m, caps.operation_rim_speed(self.operation, self.diameter_m))
        return mounts.allowed_share(name, self.far_end) * rim

    @cached_property
    def mount_rpm(self) -> float:
        """Speed up to which the mount bears the times wanted, rpm; 0 when it does not at rest, infinite beyond any lathe."""
        return _highest(lambda rpm: self.factor(rpm) >= self.mount.wanted)

    @property
    def wants_far_end(self) -> bool:
        """Whether its size asks for the tailstock, whatever the mount bears."""
        if self.far_end != "none":
            return False
        if isinstance(self.mount, Screws):
            return self.mount.end_grain  # not as the only hold
        across = self.mount.across_m * (1 + 1e-9)
        return self.overhang_m > MOST_OVERHANG * across or self.diameter_m > MOST_DIAMETER * across

    @property
    def ceiling_rpm(self) -> float | None:
        """Top speed on this mount, rpm; none when it does not hold, or its size asks for the tailstock."""
        if self.wants_far_end or self.mount_rpm < LOWEST_RPM:
            return None
        return min(self.mount_rpm, self.rim_rpm)


def _highest(holds: Callable[[float], bool]) -> float:
    if holds(MOST_RPM):
        return math.inf
    if not holds(0.0):
        return 0.0
    low, high = 0.0, MOST_RPM
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if holds(middle) else (low, middle)
    return low


def least_across(held: Held, speed_rpm: float | None = None) -> float | None:
    """Least block, screw circle or tenon that holds, all else as it is.

    Parameters
    ----------
    held : as it is.
    speed_rpm : to this speed, rpm; to the cap on the rim when none.

    Returns
    -------
    float or None
        m; none when none up to the size of the work does.

    Examples
    --------
    >>> glue = Glue(0.100, None, 1.0e6, 1.5e6, 293.15)
    >>> work = Held(glue, "none", 0.300, 4.0, 0.001, 0.030, 300, "rough")
    >>> round(1000 * least_across(work, 500))
    141

    References
    ----------
    :class:`Held`.
    """

    def enough(across: float) -> bool:
        tried = replace(held, mount=replace(held.mount, across_m=across))
        to = tried.rim_rpm if speed_rpm is None else min(speed_rpm, tried.rim_rpm)
        return not tried.wants_far_end and tried.factor(to) >= tried.mount.wanted

    low, high = 0.01 * held.diameter_m, held.diameter_m
    if not enough(high):
        return None
    for _ in range(30):
        middle = (low + high) / 2
        low, high = (low, middle) if enough(middle) else (middle, high)
    return high


@dataclass(frozen=True)
class Between:
    """Work between centres: nothing to let go but the points, so its length rules.

    Parameters
    ----------
    diameter_m, length_m : m, more than 0.
    operation : ``rough`` while it is out of round, otherwise ``finish``.
    steady : a steady rest stands in the middle.
    """

    diameter_m: float
    length_m: float
    operation: caps.Operation
    steady: bool = False

    @property
    def rim_rpm(self) -> float:
        """The cap on the rim for this cut, rpm."""
        return caps.speed_at_rim_speed(self.diameter_m, caps.operation_rim_speed(self.operation, self.diameter_m))

    @property
    def whip_rpm(self) -> float:
        """Half the speed at which it whirls, rpm."""
        return speed.WHIP_SHARE * discs.whip_speed(self.diameter_m, self.length_m / (2 if self.steady else 1))

    @property
    def slender(self) -> bool:
        """Whether it asks for a steady rest."""
        return not self.steady and self.length_m > SLENDER * self.diameter_m * (1 + 1e-9)

    @property
    def ceiling_rpm(self) -> float:
        """Top speed, rpm."""
        return min(self.rim_rpm, self.whip_rpm)
