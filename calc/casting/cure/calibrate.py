"""From what a maker has - a pot life, a deepest layer, a test cup - to the rate of a resin's reaction."""

from __future__ import annotations

import math
from collections.abc import Generator
from dataclasses import dataclass
from functools import cache

from calc.casting.cure.bucket import CUP_DEPTH, vessel
from calc.casting.cure.cells import Footprint
from calc.casting.cure.course import RUNAWAY_K
from calc.casting.cure.kinetics import DOUBLED, GEL, REFERENCE_K, WORKING_END
from calc.casting.cure.pour import ROUGH, Fineness, Mould, Resin, Start, field_of
from calc.casting.cure.running import peak_of
from calc.casting.cure.search import meeting
from calc.casting.cure.solver import Pace
from calc.casting.cure.standards import standard
from calc.casting.cure.thermal import Wall, materials
from calc.constants import ZERO_C
from calc.sources import table
from calc.steps import at_once

POT_MASS_KG = standard("pot mass")
#: Rates that any casting epoxy lies between, 1/s.
SLOWEST, FASTEST = standard("slowest rate"), standard("fastest rate")
_CUP_CUT = Fineness(5, 4, Pace(1.5, 0.015, 1800.0))
_CLOSE = 0.004  # of a time, as a fraction
_MOST_RUNS = 14
#: What a pot life leaves open: of its rate for doubled viscosity, and of that for gel.
OPEN_SLOW, OPEN_FAST = standard("open slow"), standard("open fast")
_CAP_K = 45.0  # beyond the target a peak is not told


class NoFit(ValueError):
    """No rate does what the sheet or the cup says; ``code`` says why."""

    def __init__(self, code: str) -> None:
        super().__init__(code)
        self.code = code


@dataclass(frozen=True)
class Meaning:
    """What ends a pot life.

    Parameters
    ----------
    id, name : as in ``data/cure_meanings.csv``. conversion : mean of the cup, or None. hottest_k : its hottest place, K, or None.
    """

    id: str
    name: str
    conversion: float | None
    hottest_k: float | None
    source: str


@cache
def meanings() -> dict[str, Meaning]:
    """What a pot life may mean, by id.

    Returns
    -------
    dict of str to Meaning

    Examples
    --------
    >>> list(meanings())
    ['gel', 'pour', 'doubled', 'hot50', 'hot40']

    References
    ----------
    Each row of the table names its own.
    """
    return {
        row["id"]: Meaning(
            row["id"], row["name"], float(row["conversion"]) if row["conversion"] else None,
            float(row["hottest"]) + ZERO_C if row["hottest"] else None, row["source"],
        )
        for row in table("cure_meanings")
    }


def taken_as(meaning: str, pot_life_s: float) -> Meaning:
    """What a pot life is taken to mean: as told, or by its length where the sheet does not say.

    Parameters
    ----------
    meaning : a key of :func:`meanings`, or ``unknown``.
    pot_life_s : s.

    Returns
    -------
    Meaning

    Examples
    --------
    >>> taken_as("unknown", 40 * 60).conversion, taken_as("unknown", 8 * 3600).conversion, taken_as("gel", 60.0).conversion
    (0.33, 0.19, 0.58)

    References
    ----------
    judgement.
    """
    if meaning != "unknown":
        return meanings()[meaning]
    if pot_life_s < standard("short pot life"):
        conversion = WORKING_END
    elif pot_life_s > standard("long pot life"):
        conversion = DOUBLED
    else:
        conversion = standard("between conversion")
    return Meaning("unknown", "does not say", conversion, None, "judgement")


def pot_life(resin: Resin, meaning: Meaning, mass_kg: float = POT_MASS_KG, at_k: float = REFERENCE_K) -> float | None:
    """The pot life that a resin would have in the sheet's cup.

    Parameters
    ----------
    resin : with its rate.
    meaning : what ends it.
    mass_kg : in the cup, kg.
    at_k : of resin and room, K.

    Returns
    -------
    float or None
        s; None where it never gets as hot as that.

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> round(pot_life(Resin(Kinetics(8.76e-5)), meanings()["pour"]) / 3600, 1)
    1.5

    References
    ----------
    cure-solver.
    """
    field = field_of(resin, vessel(mass_kg, resin, CUP_DEPTH), Start(at_k, at_k), _CUP_CUT)
    dt, before, peak_k = 1.0, (0.0, 0.0), 0.0
    while True:
        _, dt = field.advance(dt, _CUP_CUT.pace)
        hottest = max(field.k)
        if meaning.hottest_k is not None:
            wanted, now = meaning.hottest_k, hottest
            peak_k = max(peak_k, hottest)
            if field.mean_a() > 0.4 and hottest < peak_k - 0.5:
                return None
        else:
            wanted, now = meaning.conversion or GEL, field.mean_a()
        if hottest >= RUNAWAY_K and now < wanted:
            return field.time_s  # the rest of it is a matter of seconds
        if now >= wanted:
            return before[0] + (field.time_s - before[0]) * (wanted - before[1]) / (now - before[1])
        before = (field.time_s, now)


def rate_from_pot_life(
    resin: Resin, pot_life_s: float, meaning: str = "unknown", mass_kg: float = POT_MASS_KG, at_k: float = REFERENCE_K
) -> float:
    """K25 of a resin whose cup has this pot life, by secant in logarithms.

    Parameters
    ----------
    resin : its rate does not count.
    pot_life_s : s, as the sheet prints it.
    meaning : a key of :func:`meanings`, or ``unknown``.
    mass_kg, at_k : the sheet's mass (kg) and temperature (K).

    Returns
    -------
    float
        1/s.

    Raises
    ------
    NoFit
        ``never-so-hot``: no resin with such a pot life gets as hot as that in its cup.

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> round(rate_from_pot_life(Resin(Kinetics(1e-5)), 90 * 60, "pour") * 1e5, 1)
    8.9

    References
    ----------
    cure-fit.
    """
    ends = taken_as(meaning, pot_life_s)
    wanted = math.log(min(pot_life_s + 600, pot_life_s / 0.8) if ends.id == "hot40" else pot_life_s)
    free = resin.kinetics.integral(ends.conversion or WORKING_END) / resin.kinetics.speed_up(at_k)
    x = math.log(free / math.exp(wanted))
    slow: tuple[float, float] | None = None
    fast: tuple[float, float] | None = None
    for _ in range(_MOST_RUNS):
        found = pot_life(resin.at_rate(math.exp(x)), ends, mass_kg, at_k)
        y = math.inf if found is None else math.log(found) - wanted
        if abs(y) < _CLOSE:
            return math.exp(x)
        if y > 0:
            slow = (x, y)
        else:
            fast = (x, y)
        if slow and fast and slow[1] < math.inf:
            x = slow[0] + (fast[0] - slow[0]) * slow[1] / (slow[1] - fast[1])
        elif slow and fast:
            x = (slow[0] + fast[0]) / 2
        else:
            x += min(max(y, -1.0), 1.0) if found is not None else 0.5
    raise NoFit("never-so-hot")


# ---------------------------------------------------------------- the sheet's deepest layer


def wide(depth_m: float) -> Mould:
    """The wide pour that a sheet's deepest layer is meant for: half-width 150 mm, 16 mm board, raised, in still air.

    Parameters
    ----------
    depth_m : m.

    Returns
    -------
    Mould

    Examples
    --------
    >>> wide(0.04).footprint
    Footprint(half_width_m=0.15, j=1.0)

    References
    ----------
    judgement.
    """
    board = Wall(materials()["board"], standard("wide board"))
    return Mould(Footprint(standard("wide half"), 1.0), depth_m, board, (board,))


def sheet_peak_k(at_k: float) -> float:
    """What a pour at the sheet's deepest layer is taken to reach: 60 °C, or 15 K more than the room.

    Parameters
    ----------
    at_k : the sheet's temperature, K.

    Returns
    -------
    float
        K.

    Examples
    --------
    >>> round(sheet_peak_k(296.15), 2), round(sheet_peak_k(323.15), 2)
    (333.15, 338.15)

    References
    ----------
    judgement.
    """
    return max(standard("sheet peak"), at_k + standard("least rise"))


def rate_from_depth(
    resin: Resin, depth_m: float, at_k: float = standard("sheet room"), slowest: float = SLOWEST, fastest: float = FASTEST
) -> float:
    """K25 of a resin whose sheet allows this depth: the wide pour of that depth peaks at 60 °C.

    Parameters
    ----------
    resin : its rate does not count; its heat does.
    depth_m : m.
    at_k : the sheet's temperature, K.
    slowest, fastest : between which it is looked for, 1/s; either comes back where it lies beyond.

    Returns
    -------
    float
        1/s.

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> round(rate_from_depth(Resin(Kinetics(1e-5)), 0.041) * 1e5, 1)
    1.6

    References
    ----------
    judgement: what makers' own limit is, no sheet says.
    """
    return at_once(rate_from_depth_steps(resin, depth_m, at_k, slowest, fastest))


def rate_from_depth_steps(resin: Resin, depth_m: float, at_k: float, slowest: float, fastest: float) -> Generator[None, None, float]:
    """As :func:`rate_from_depth`, a run at a time.

    Parameters
    ----------
    resin, depth_m, at_k, slowest, fastest : as there.

    Returns
    -------
    generator
        its value is the rate, 1/s.

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> round(at_once(rate_from_depth_steps(Resin(Kinetics(1e-5)), 0.01, 296.15, 1e-6, 5e-3)) * 1e5, 1)
    8.8

    References
    ----------
    judgement.
    """
    target = sheet_peak_k(at_k)
    guess = 1.62e-5 * (0.041 / depth_m) ** 1.15 * (380e3 / resin.kinetics.heat) ** 1.4 * math.exp(0.07 * (296.15 - at_k))

    def peak(rate: float) -> float:
        return peak_of(resin.at_rate(rate), wide(depth_m), Start(at_k, at_k), ROUGH, target + _CAP_K)

    return (yield from meeting(peak, at_k, target, guess, slowest, fastest, target + _CAP_K))


@dataclass(frozen=True)
class Bracket:
    """Rates that a pot life leaves open to the deepest layer, 1/s."""

    slowest: float
    fastest: float


def bracket(resin: Resin, pot_life_s: float, mass_kg: float = POT_MASS_KG, at_k: float = REFERENCE_K) -> Bracket:
    """What a pot life leaves open, whatever ends it: from 0.4 of the rate for doubled viscosity to 1.25 of that for gel.

    Parameters
    ----------
    resin : its rate does not count.
    pot_life_s, mass_kg, at_k : as the sheet prints them; s, kg, K.

    Returns
    -------
    Bracket

    Examples
    --------
    >>> from calc.casting.cure.kinetics import Kinetics
    >>> found = bracket(Resin(Kinetics(1e-5)), 8 * 3600)
    >>> found.slowest < 2.2e-5 < found.fastest
    True

    References
    ----------
    cure-trials.
    """
    doubled, gelled = (rate_from_pot_life(resin, pot_life_s, meaning, mass_kg, at_k) for meaning in ("doubled", "gel"))
    return Bracket(OPEN_SLOW * doubled, OPEN_FAST * gelled)
