"""What could be done about a blank whose make-up is known: wood shifted, the centre moved; and how it changes as it is turned down."""

from __future__ import annotations

import math
from collections.abc import Generator
from dataclasses import dataclass

from calc.casting.outlines import Point
from calc.questions._how_fast.remedies import MOST_SHIFT
from calc.questions._where_is_the_weight.case import Case
from calc.questions._where_is_the_weight.parts import Piece, standard
from calc.questions._where_is_the_weight.woods import overlap, shared
from calc.turning import balance, make_up, rebalance
from calc.turning.make_up import Body, Wood

_STEPS = 3  # sizes shown between the first true round and the last


@dataclass(frozen=True)
class Shift:
    """Woods moved together in the mould so that the blank is in balance."""

    pieces: tuple[Piece, ...]
    by: Point

    @property
    def what(self) -> str:
        """What is moved, as it is told; what is let into a wood goes with it untold."""
        return self._led[0].title if len(self._led) == 1 else "all the woods together"

    @property
    def rides(self) -> bool:
        """Whether something let into a wood goes with it."""
        return len(self._led) < len(self.pieces)

    @property
    def _led(self) -> tuple[Piece, ...]:
        return tuple(piece for piece in self.pieces if not piece.wood.let_in) or self.pieces

    @property
    def far(self) -> float:
        """How far, m."""
        return math.hypot(*self.by)

    @property
    def towards(self) -> float:
        """Which way, rad."""
        return math.atan2(self.by[1], self.by[0])


@dataclass(frozen=True)
class Centre:
    """Another centre to mount it on: where, the round it leaves, m across, and what turns about it then."""

    at: Point
    across: float
    body: Body

    @property
    def far(self) -> float:
        """How far from the middle, m."""
        return math.hypot(*self.at)

    @property
    def towards(self) -> float:
        """Which way, rad."""
        return math.atan2(self.at[1], self.at[0])


@dataclass(frozen=True)
class Stage:
    """One size as it is turned down, m across, and what turns then; ``first`` before any turning."""

    across: float
    body: Body
    first: bool = False


def shifts(case: Case) -> Generator[float, None, list[Shift]]:
    """Shifts that balance it, shortest first: each loose wood alone, then all of them together; yields the share of them tried."""
    loose = [number for number, piece in enumerate(case.pieces) if piece.loose]
    alone = [[number, *_inside(case, number)] for number in loose]
    groups = alone + ([loose] if len(loose) > 1 and loose not in alone else [])
    found = []
    for tried, group in enumerate(groups):
        yield tried / len(groups)
        by = rebalance.shift_to_balance(case.blank, case.woods, group)
        if by is not None and _fits(case, group, by):
            found.append(Shift(tuple(case.pieces[number] for number in group), by))
    return sorted(found, key=lambda shift: shift.far)


def _inside(case: Case, host: int) -> list[int]:
    """What is let into a wood, and goes with it."""
    found: list[int] = []
    for number, piece in enumerate(case.pieces):
        if piece.wood.let_in and any(overlap(case.blank, case.woods[place], piece.wood) for place in (host, *found) if place < number):
            found.append(number)
    return found


def _fits(case: Case, group: list[int], by: Point) -> bool:
    """Whether the woods so moved stand in the blank as much as before, in no other wood, and what is let into one in that as before."""
    moved = [wood.moved(*by) if number in group else wood for number, wood in enumerate(case.woods)]
    for number in group:
        before, after = (make_up.kept_of(case.blank, wood.outline).area for wood in (case.woods[number], moved[number]))
        if case.pieces[number].shape != "strip" and after < before * (1 - standard("overlap")):
            return False
        for place, other in enumerate(case.woods):
            if place not in group and not _stands_as_before(case, (case.woods[number], moved[number]), other):
                return False
    return True


def _stands_as_before(case: Case, moves: tuple[Wood, Wood], other: Wood) -> bool:
    """Whether a wood that moved shares with another, which did not, what it shared before: nothing, or what it is let into."""
    before, after = (shared(case.blank, wood, other) for wood in moves)
    least = min(make_up.kept_of(case.blank, wood.outline).area for wood in (*moves, other))
    return abs(after - before) <= standard("overlap") * least


def centre_of_mass(case: Case) -> Centre:
    """Mounted at its centre of mass: in balance until it is cut true; ``body`` is what it is then."""
    body = case.body
    at = body.x / body.mass_kg, body.y / body.mass_kg
    if not case.made:
        return Centre(at, case.swept - 2 * math.hypot(*at), body)
    at = at[0] + case.axis[0], at[1] + case.axis[1]
    across = make_up.true_round(case.blank, at)
    return Centre(at, across, make_up.weigh(case.blank, case.woods, at, across))


def cut_in_balance(case: Case) -> Centre | None:
    """A centre about which it is in balance once cut round, if that leaves enough: the size wanted, or three quarters of it."""
    at = rebalance.balanced_centre(case.blank, case.woods)
    if at is None:
        return None
    across = make_up.true_round(case.blank, at)
    least = (1 - 2 * MOST_SHIFT) * case.round if case.finish is None else case.finish
    return Centre(at, across, make_up.weigh(case.blank, case.woods, at, across)) if across >= least else None


def stages(case: Case) -> list[Stage]:
    """As it is, the first true round, then down to the size wanted."""
    first, last = case.round, case.finish or standard("down to") * case.round
    sizes = [first + (last - first) * n / _STEPS for n in range(_STEPS + 1)] if last < first * (1 - 1e-9) else [first]
    out = [Stage(case.swept, case.body, first=True)]
    if math.isclose(case.swept, first):
        sizes = sizes[1:]
    return out + [Stage(across, make_up.weigh(case.blank, case.woods, case.axis, across)) for across in sizes]


def at_rim(case: Case, stage: Stage) -> tuple[float, float]:
    """Weight that balances a stage, kg, and how far out it goes, m."""
    place = case.place if stage.first else case.inside_rim(stage.across)
    return balance.balance_weight(stage.body.unbalance, place), place


def worst(case: Case, told: list[Stage]) -> Stage | None:
    """The later stage that is most out of balance, where that is clearly more than at first and the lathe feels it."""
    least = (1 + standard("worse")) * told[0].body.unbalance
    later = [stage for stage in told[1:] if stage.body.unbalance > least and case.level(stage.body, stage.across) > 0]
    return max(later, key=lambda stage: stage.body.unbalance, default=None)


def trued(case: Case, told: list[Stage]) -> Stage | None:
    """The first true round, where most of what is out goes by turning it true and the lathe feels it now."""
    first, *later = told
    if not later or not case.matters or math.isclose(first.across, case.round):
        return None
    return later[0] if later[0].body.unbalance < standard("left true") * first.body.unbalance else None


def in_the_way(case: Case, told: list[Stage]) -> Stage | None:
    """The stage that wants most weight, of those that the lathe feels and whose rim leaves no room for the weight where it is."""
    later = [stage for stage in told[1:] if case.place > stage.across / 2 * (1 - 1e-9) and case.level(stage.body, stage.across) > 0]
    return max(later, key=lambda stage: at_rim(case, stage)[0], default=None)


def cheaper(case: Case, shift: Shift, step: float) -> float:
    """How much less weight balances it when the woods go only a step of the way, m; kg."""
    by = shift.by[0] * step / shift.far, shift.by[1] * step / shift.far
    woods = [piece.wood.moved(*by) if piece in shift.pieces else piece.wood for piece in case.pieces]
    after = make_up.weigh(case.blank, woods)
    return case.weight - balance.balance_weight(after.unbalance, case.place)
