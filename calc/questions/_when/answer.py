"""The answer to When can I?, a mould at a time."""

from __future__ import annotations

from dataclasses import replace

from calc.casting.cure.calibrate import NoFit
from calc.casting.cure.kinetics import WORKING_END, heat_of_reaction
from calc.casting.cure.known import Facts, Known, fitted_before, known_steps
from calc.casting.cure.stages import step_of
from calc.constants import ZERO_C
from calc.errors import InputError
from calc.questions import Given, Steps
from calc.questions._when import refusals, words
from calc.questions._when.casting import Casting, batch_of, poured_within, set_right, shop_of, vessels_of
from calc.steps import part


def facts_of(given: Given) -> Facts:
    """What is known of the resin."""
    way = given.choice("resin")
    return Facts(
        kind=way if way not in ("pot", "cup") else "standard",
        heat=heat_of_reaction(*given.ratio("ratio")) if given.typed("ratio") else None,
        pot_life_s=given.maybe("pot_life"),
        meaning=given.words("pot_means") or "unknown",
        pot_mass_kg=given.maybe("pot_mass") or Facts.pot_mass_kg,
        pot_k=given.maybe("pot_temperature") or Facts.pot_k,
        deepest_m=given.maybe("deepest") if way != "cup" else None,
        fitted=fitted_before(given.si("cup_gel"), given.si("cup_heat"), given.si("cup_shape")) if way == "cup" else None,
    )


def answer(given: Given) -> Steps:
    """The clock of every mould of the batch.

    Raises
    ------
    InputError
        ``clock``, ``poured-needed``, ``warmer-night``, ``no-night``, ``one-each``, ``never-so-hot``, ``stood-too-long``, ``far-off``.
    """
    shop, vessels = shop_of(given), vessels_of(given)
    if refusals.too_thin_and_fast(given):
        return refusals.thin_and_fast(given)
    try:
        resin: Known = yield from part(known_steps(facts_of(given)), 0.0, 0.5)
    except NoFit:
        raise InputError("pot_means", "never-so-hot") from None
    batch = batch_of(given, vessels, resin)
    first = Casting(given, vessels[0], resin.resin, resin.level, shop, poured_within(given, batch, resin), batch)
    seen = given.maybe("seen_gel")
    if seen is not None:
        first = set_right(first, seen)
        resin = replace(resin, resin=first.mix, level=first.level)
    first = replace(first, bucket=poured_within(given, batch, resin))
    castings = [first, *(replace(first, vessel=vessel) for vessel in vessels[1:])]
    for number, casting in enumerate(castings, 1):
        runs = casting.bucket.runs_s
        if casting.start.conversion >= WORKING_END or (runs is not None and casting.waited >= runs):
            raise InputError("waited", "stood-too-long")
        if casting.found.peak_k >= step_of("hot") + ZERO_C:
            return refusals.too_hot(given, casting)
        yield 0.5 + 0.5 * number / len(castings)
    return words.answer(given, castings, resin)
