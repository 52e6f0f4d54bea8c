"""One piece of work on one lathe, as far as the limits on its speed need it, and the vibration that was measured or felt on it."""

from __future__ import annotations

from dataclasses import dataclass

from calc.turning import balance, vibrating
from calc.turning.caps import Condition, Operation


@dataclass(frozen=True)
class Measured:
    """A vibration that was measured or felt: root mean square speed (m/s, more than 0) at a spindle speed.

    ``at_most`` for 'it ran still', which says no more than that the vibration was not over that: it never lowers what was estimated.
    ``held_to_m_per_s`` is the vibration to come down to, where it trembled; the job's own limit when none.
    """

    speed_rpm: float
    vibration_m_per_s: float
    at_most: bool = False
    held_to_m_per_s: float | None = None

    @classmethod
    def of(cls, speed_rpm: float, vibration_m_per_s: float, *, at_most: bool = False) -> Measured:
        """As a maker tells it: what trembled is held to where it runs still again.

        >>> Measured.of(900, 0.0045).held_to_m_per_s, Measured.of(900, 0.0018).held_to_m_per_s
        (0.0018, None)
        """
        still = vibrating.vibration_limit("zone-b")
        return cls(speed_rpm, vibration_m_per_s, at_most, still if vibration_m_per_s > still * (1 + 1e-9) else None)


@dataclass(frozen=True)
class Job:
    """One piece of work on one lathe.

    Parameters
    ----------
    diameter_m : largest circle swept, m, more than 0.
    operation, condition : what is done, and how the work looks.
    mass_kg : mass of the work, kg, more than 0.
    unbalance_kg_m : out of balance U = m e, kg m, 0 or more.
    standing_mass_kg : mass the lathe stands like, kg (:func:`calc.turning.vibrating.standing_mass`).
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
    def overruling(self) -> Measured | None:
        """What was measured, where it overrules the estimate; that it ran still does not where the estimate is as low."""
        felt = self.measured
        if felt is None or (felt.at_most and self.unbalance_kg_m <= self._worked_back(felt)):
            return None
        return felt

    @property
    def felt_unbalance_kg_m(self) -> float:
        """U, kg m: worked back from the vibration where one was measured."""
        felt = self.overruling
        return self.unbalance_kg_m if felt is None else self._worked_back(felt)

    @property
    def held_to_m_per_s(self) -> float:
        """The vibration not to be passed, m/s; where it trembled, the one at which it runs still again."""
        held = None if self.measured is None else self.measured.held_to_m_per_s
        return self.vibration_limit_m_per_s if held is None else held

    def speed_at_vibration(self, limit_m_per_s: float) -> float:
        """rpm at which the lathe's vibration reaches a limit, from the measurement where there is one."""
        felt = self.overruling
        if felt is None:
            return vibrating.speed_at_vibration(self.unbalance_kg_m, self.mass_kg, self.standing_mass_kg, limit_m_per_s)
        return vibrating.speed_from_measured_vibration(felt.speed_rpm, felt.vibration_m_per_s, limit_m_per_s)

    @property
    def speed_at_push(self) -> float:
        """rpm at which the heavy side shoves as hard as it may; never under a speed at which it ran still."""
        limit = balance.speed_at_push(self.felt_unbalance_kg_m, self.standing_mass_kg)
        return max(limit, self.measured.speed_rpm) if self.measured is not None and self.measured.at_most else limit

    def _worked_back(self, felt: Measured) -> float:
        return vibrating.unbalance_from_vibration(felt.speed_rpm, felt.vibration_m_per_s, self.mass_kg, self.standing_mass_kg)
