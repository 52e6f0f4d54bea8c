"""A test cup: temperatures while it cures, and when it gelled, turned into the reaction of this resin."""

from __future__ import annotations

import math
from collections.abc import Generator, Sequence
from dataclasses import dataclass, replace

from calc.casting.cure.calibrate import NoFit
from calc.casting.cure.course import RUNAWAY_K
from calc.casting.cure.kinetics import GEL, Kinetics
from calc.casting.cure.pour import Fineness, Mould, Resin, Start, field_of
from calc.casting.cure.solver import Pace
from calc.casting.cure.standards import standard
from calc.steps import at_once

_CUT = Fineness(5, 4, Pace(1.5, 0.02, 1800.0))
_SHAPES, _HEATS = (-0.2, 0.2, 0.6, 1.0), (0.9, 1.1)
_SHAPE_LOW, _SHAPE_HIGH = -0.3, 1.3
_STEPS = 6
_SHARE = 0.07  # of the whole work that each guess and each step is told for
_TRIAL = (0.02, 0.02, 0.04)  # how far each unknown is moved to see what it does


def shaped(kinetics: Kinetics, s: float) -> Kinetics:
    """The reaction with one number for its shape: m = 0.4 + 0.6 s, B = 0.10 - 0.06 s, n = 1.55 + 0.15 s.

    Parameters
    ----------
    kinetics : the rest of it.
    s : from -0.3 to 1.3; a third is the default shape.

    Returns
    -------
    Kinetics

    Examples
    --------
    >>> round(shaped(Kinetics(1e-5), 1 / 3).m, 2), round(shaped(Kinetics(1e-5), 1 / 3).b, 2)
    (0.6, 0.08)

    References
    ----------
    cure-trials.
    """
    return replace(kinetics, m=0.4 + 0.6 * s, b=0.10 - 0.06 * s, n=1.55 + 0.15 * s)


@dataclass(frozen=True)
class CupTest:
    """What was seen.

    Parameters
    ----------
    vessel : the cup or dish with its resin. start : how it began.
    times_s, temperatures_k : of the middle at half depth. gel_s : when strings broke, s after mixing.
    """

    vessel: Mould
    start: Start
    times_s: tuple[float, ...]
    temperatures_k: tuple[float, ...]
    gel_s: float

    @property
    def rise_k(self) -> float:
        """Of the hottest reading above the room."""
        return max(self.temperatures_k) - self.start.air_k


@dataclass(frozen=True)
class CupFit:
    """The reaction that does what the cup did.

    Parameters
    ----------
    kinetics : fitted. shape : its number s. off_k : how far the fitted temperatures are from the readings, root mean square, K.
    gel_s : when the fitted cup gels, s.
    """

    kinetics: Kinetics
    shape: float
    off_k: float
    gel_s: float


def fit_steps(test: CupTest, resin: Resin) -> Generator[float, None, CupFit]:
    """Least squares for rate, heat and shape: the best of eight starts, then damped Gauss-Newton steps.

    Parameters
    ----------
    test : what was seen.
    resin : density, heat by its mix ratio, everything that is not fitted.

    Returns
    -------
    generator
        yields the share done; its value is the fit.

    Raises
    ------
    NoFit
        ``rise-low`` or ``rise-high``: it warmed too little or too much to tell the rest by.

    Examples
    --------
    >>> from calc.casting.cure.cups import plastic_cup
    >>> cup = plastic_cup(0.1, Resin(Kinetics(1e-5)))
    >>> test = CupTest(cup, Start(296.15, 296.15), (600, 3600), (297.0, 300.0), 7200.0)
    >>> next(fit_steps(test, Resin(Kinetics(1e-5))))
    Traceback (most recent call last):
    ...
    calc.casting.cure.calibrate.NoFit: rise-low

    References
    ----------
    cure-trials.
    """
    if test.rise_k < standard("fit rise low"):
        raise NoFit("rise-low")
    if test.rise_k > standard("fit rise high"):
        raise NoFit("rise-high")
    left, guess, done = yield from _best_start(test, resin)
    damping = 0.01
    for _ in range(_STEPS):
        tried = _damped_step(test, resin, guess, damping)
        now = _squares(_residuals(test, resin, tried, resin.kinetics.heat))
        if now < left:
            gained, left, guess, damping = left - now, now, tried, damping / 4
            if gained < 0.01 * left:
                break
        else:
            damping *= 16
        done += _SHARE
        yield done
    kinetics = _kinetics(resin, guess)
    temperatures, gel = _seen(test, replace(resin, kinetics=kinetics))
    off = math.sqrt(_squares([a - b for a, b in zip(temperatures, test.temperatures_k, strict=True)]) / len(temperatures))
    return CupFit(kinetics, guess[2], off, gel)


def fit(test: CupTest, resin: Resin) -> CupFit:
    """As :func:`fit_steps`, at once.

    Parameters
    ----------
    test, resin : as there.

    Returns
    -------
    CupFit

    Examples
    --------
    >>> from calc.casting.cure.cups import plastic_cup
    >>> cup = plastic_cup(0.1, Resin(Kinetics(1e-5)))
    >>> fit(CupTest(cup, Start(296.15, 296.15), (600, 3600), (297.0, 400.0), 7200.0), Resin(Kinetics(1e-5)))
    Traceback (most recent call last):
    ...
    calc.casting.cure.calibrate.NoFit: rise-high

    References
    ----------
    cure-trials.
    """
    return at_once(fit_steps(test, resin))


# ---------------------------------------------------------------- helpers

_Guess = tuple[float, float, float]


def _best_start(test: CupTest, resin: Resin) -> Generator[float, None, tuple[float, _Guess, float]]:
    """The best of eight guesses, each with the rate that gels when it did: its squares, the guess, the share done."""
    heat = resin.kinetics.heat
    found: list[tuple[float, _Guess]] = []
    for s in _SHAPES:
        rate = None
        for factor in _HEATS:
            rate = _rate_by_gel(test, resin, factor * heat, s, rate)
            guess = (math.log(rate), math.log(factor * heat), s)
            found.append((_squares(_residuals(test, resin, guess, heat)), guess))
            yield _SHARE * len(found)
    return (*min(found, key=lambda one: one[0]), _SHARE * len(found))


def _damped_step(test: CupTest, resin: Resin, guess: _Guess, damping: float) -> _Guess:
    """Where one damped Gauss-Newton step leads, its slopes taken by small moves."""
    heat = resin.kinetics.heat
    here = _residuals(test, resin, guess, heat)
    slopes = []
    for i in range(3):
        moved = [*guess]
        moved[i] += _TRIAL[i]
        there = _residuals(test, resin, (moved[0], moved[1], moved[2]), heat)
        slopes.append([(b - a) / _TRIAL[i] for a, b in zip(here, there, strict=True)])
    step = _solve(slopes, here, damping)
    return guess[0] + _held(step[0]), guess[1] + _held(step[1]), min(max(guess[2] + step[2], _SHAPE_LOW), _SHAPE_HIGH)


def _held(step: float) -> float:
    return min(max(step, -0.4), 0.4)


def _kinetics(resin: Resin, guess: _Guess) -> Kinetics:
    return shaped(replace(resin.kinetics, k25=math.exp(guess[0]), heat=math.exp(guess[1])), guess[2])


def _seen(test: CupTest, resin: Resin) -> tuple[list[float], float]:
    """What such a resin would show: temperature of the middle at each reading, and when it gels."""
    field = field_of(resin, test.vessel, test.start, _CUT)
    middle = field.resin[_CUT.rows // 2 * _CUT.columns]
    until = max([*test.times_s, test.gel_s])
    dt, was, was_a = 1.0, field.k[middle], field.mean_a()
    gel: float | None = None
    found: list[float] = []
    times = iter(test.times_s)
    wanted = next(times, None)
    while wanted is not None or gel is None:
        began = field.time_s
        took, dt = field.advance(dt, _CUT.pace)
        now, now_a = field.k[middle], field.mean_a()
        while wanted is not None and wanted <= field.time_s:
            found.append(was + (now - was) * (wanted - began) / took)
            wanted = next(times, None)
        if gel is None and now_a >= GEL:
            gel = began + took * (GEL - was_a) / (now_a - was_a)
        was, was_a = now, now_a
        if now >= RUNAWAY_K or field.time_s > 6 * until:
            break
    found += [was] * (len(test.times_s) - len(found))
    return found, gel or field.time_s


def _residuals(test: CupTest, resin: Resin, guess: _Guess, heat: float) -> list[float]:
    temperatures, gel = _seen(test, replace(resin, kinetics=_kinetics(resin, guess)))
    allowed = max(standard("fit temperature"), standard("fit temperature share") * test.rise_k)
    return [
        *((there - here) / allowed for there, here in zip(temperatures, test.temperatures_k, strict=True)),
        math.log(gel / test.gel_s) / standard("fit gel"),
        (guess[1] - math.log(heat)) / standard("fit heat"),
        (guess[2] - standard("fit shape middle")) / standard("fit shape"),
    ]


def _squares(values: Sequence[float]) -> float:
    return sum(each * each for each in values)


def _rate_by_gel(test: CupTest, resin: Resin, heat: float, s: float, guess: float | None) -> float:
    """The rate at which such a resin gels when it did: secant in logarithms."""
    kinetics = shaped(replace(resin.kinetics, heat=heat), s)
    x = math.log(guess or kinetics.integral(GEL) / kinetics.speed_up(test.start.air_k) / test.gel_s * 0.7)
    before: tuple[float, float] | None = None
    for _ in range(6):
        _, gel = _seen(replace(test, times_s=(), temperatures_k=()), replace(resin, kinetics=replace(kinetics, k25=math.exp(x))))
        y = math.log(gel / test.gel_s)
        if abs(y) < 0.02:
            break
        slope = -1.0 if before is None or before[0] == x else min((y - before[1]) / (x - before[0]), -0.3)
        before = (x, y)
        x -= y / slope
    return math.exp(x)


def _solve(slopes: Sequence[Sequence[float]], here: Sequence[float], damping: float) -> list[float]:
    """The damped normal equations of three unknowns, by elimination."""
    size = len(slopes)
    rows = []
    for i in range(size):
        row = [sum(a * b for a, b in zip(slopes[i], slopes[j], strict=True)) for j in range(size)]
        row[i] *= 1 + damping
        rows.append([*row, -sum(a * b for a, b in zip(slopes[i], here, strict=True))])
    for i in range(size):
        for k in range(i + 1, size):
            share = rows[k][i] / rows[i][i]
            rows[k] = [b - share * a for a, b in zip(rows[i], rows[k], strict=True)]
    found = [0.0] * size
    for i in reversed(range(size)):
        found[i] = (rows[i][size] - sum(rows[i][j] * found[j] for j in range(i + 1, size))) / rows[i][i]
    return found
