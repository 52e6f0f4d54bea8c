"""The arithmetic of What is this resin?, step by step."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Working
from calc.casting import air, resin, warm_resin
from calc.casting.cure.calibrate import taken_as
from calc.casting.mixing import Ratio
from calc.constants import ZERO_C
from calc.questions._resin.profile import Profile
from calc.sources import value


def working(profile: Profile) -> Iterator[Working]:
    """From the sheet to the ceiling."""
    yield from _ratio(profile)
    yield from _reaction(profile)
    yield from _depths(profile)
    thick, _ = profile.sheet.viscosity(profile.kind)
    here = warm_resin.viscosity_ratio(profile.room_k, 298.15, air.limit("viscosity energy"))
    numbers = f"{1e3 * thick:.4g} mPa·s × {here:.3f}"
    yield Working("Viscosity in this shop", "η25 exp[E/R (1/T − 1/298.15)], E = 65 kJ/mol", numbers, f"{1e3 * thick * here:.4g} mPa·s")


def _ratio(profile: Profile) -> Iterator[Working]:
    """The ratio by weight, and the heat that it asks for."""
    given, sheet = profile.given, profile.sheet
    if sheet.ratio is None:
        return
    ratio, origin = sheet.ratio
    if origin != "sheet":
        a, b = given.maybe("density_a"), given.maybe("density_b")
        over = resin.stand_in("hardener over resin") if a is None or b is None else b / a
        yield Working("Ratio by weight", "w = v ρB / ρA", f"{given.text('ratio_volume')} by volume, ρB / ρA = {over:.3f}", f"100 : {ratio.b:.4g}")
    elif given.typed("ratio_volume"):
        needs = resin.hardener_over_resin(Ratio(*given.ratio("ratio")), *given.ratio("ratio_volume"))
        both = f"{given.text('ratio')}, {given.text('ratio_volume')}"
        yield Working("The two ratios", "ρB / ρA = (b / a by weight) / (b / a by volume)", both, f"{needs:.3f}")
    share = ratio.a / (ratio.a + ratio.b)
    numbers = f"{value('cure', 'heat of epoxide'):g} kJ × {share:.3f} / {value('cure', 'epoxide equivalent'):g} g"
    by_ratio = 1e3 * value("cure", "heat of epoxide") * share / value("cure", "epoxide equivalent")
    yield Working("Heat of the mix by its ratio", "H = q w_A / EEW", numbers, f"{by_ratio:.0f} J/g, ± 10 %")


def _reaction(profile: Profile) -> Iterator[Working]:
    """The rate, by what is known of it: pot life, deepest layer, test cup or its kind."""
    given, kinetics, level = profile.given, profile.known.kinetics, profile.known.level
    pot_life = given.maybe("pot_life")
    if level.id not in ("class", "cup") and pot_life is not None:
        ends = taken_as(given.choice("pot_means"), pot_life)
        until = f"a = {ends.conversion:g}" if ends.conversion is not None else f"hottest {(ends.hottest_k or 0) - ZERO_C:g} °C"
        numbers = f"{pot_life / 60:.4g} min to {until}, {given.si('pot_mass') * 1e3:.3g} g at {given.si('pot_temperature') - ZERO_C:.3g} °C"
        told = "the depth decides" if level.id == "both" else _rate(profile)
        yield Working("What the pot life asks", "the sheet's cup, step by step; K25 by secant", numbers, told)
    if level.id in ("both", "depth") and profile.sheet_m is not None:
        at = given.si("deepest_temperature") - ZERO_C
        numbers = f"{1e3 * profile.sheet_m:.4g} mm in a wide mould at {at:.3g} °C peaks at {value('cure', 'sheet peak'):g} °C"
        yield Working("What the deepest layer asks", "the wide pour, step by step; K25 by secant", numbers, _rate(profile))
    fit = profile.known.fit
    if fit is not None:
        numbers = f"{len(given.many('cup_minutes'))} readings, gel at {given.si('cup_gel') / 60:.4g} min"
        told = f"{_rate(profile)}, H = {kinetics.heat / 1e3:.0f} J/g, s = {fit.shape:.2f}"
        yield Working("The test cup", "least squares for K25, H and one shape number s", numbers, told)
    if level.id == "class":
        span = f"{1e5 * profile.kind.k25_low:.3g} to {1e5 * profile.kind.k25_high:.3g} × 10⁻⁵ 1/s"
        yield Working("Its kind", "the middle of the kind", span, _rate(profile))


def _depths(profile: Profile) -> Iterator[Working]:
    """The depth that just runs away, and the lines that are drawn below and above it."""
    level = profile.known.level
    room = f"shop {profile.room_k - ZERO_C:.3g} °C"
    yield Working("Depth that just runs away", "wide pour on a bench that peaks at 65 °C, by secant", room, f"{1e3 * profile.middle_m:.1f} mm")
    fast = f"hot end at 60 °C: K25 × {level.rate_up:g}, films × 0.9, and below the whole range; judged by {level.name}"
    yield Working("No stop found up to", fast, room, f"{1e3 * profile.surest_m:.1f} mm")
    least = f"{1e3 * profile.middle_m:.1f} mm / {level.stop_over:g}"
    yield Working("Stop beyond", "hot end at 80 °C; never over middle / factor of what is known", least, f"{1e3 * profile.stop_m:.1f} mm")


def _rate(profile: Profile) -> str:
    return f"K25 = {profile.known.kinetics.k25:.3g} 1/s"
