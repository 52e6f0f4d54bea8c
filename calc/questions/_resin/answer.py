"""The answer to What is this resin?, in steps."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Answer, Carry, Caution, Change, Figure, Headline, Working, figure
from calc.casting import air, warm_resin
from calc.casting.cure.kinetics import GEL
from calc.questions import Given, Steps, taking
from calc.questions._resin.profile import Profile, profile_steps
from calc.questions._resin.words import Said
from calc.questions._resin.working import working

#: Figures of the sheet that other questions take as they were typed.
_HANDED: tuple[str, ...] = (
    "pot_life", "pot_mass", "pot_temperature", "deepest", "deepest_temperature", "largest", "lowest", "highest", "earliest", "latest", "demould",
    "cure", "density_a", "density_b",
)
_LEVELS = ("class", "unknown", "defined", "depth", "both", "cup")


def answer(given: Given) -> Steps:
    """The profile of the resin.

    Raises
    ------
    InputErrors, InputError
        see ``words`` of the question.
    """
    if given.choice("chemistry") == "other":
        return _other()
    profile = yield from profile_steps(given)
    said = Said(profile)
    kinetics = profile.known.kinetics
    thick = profile.sheet.viscosity(profile.kind)[0] * warm_resin.viscosity_ratio(profile.room_k, 298.15, air.limit("viscosity energy"))
    gel = kinetics.integral(GEL) / kinetics.k25
    return Answer(
        said.headline,
        lines=tuple(said.lines()),
        limits=tuple(said.limits()),
        changes=tuple(said.changes()),
        band=said.band,
        cautions=tuple(said.cautions()),
        working=tuple(working(profile)),
        sources=("cure-trials", "cure-fit", "cure-solver", "polyamine-heat", "viscosity-series", "practice", "judgement"),
        grids=(said.grid(),),
        carries=tuple(carries(profile)),
        values={
            "ceiling": figure(said.depth(profile.ceiling_m), "length", profile.ceiling_m),
            "no_stop": figure(said.depth(profile.no_stop_m), "length", profile.no_stop_m),
            "middle": figure(said.depth(profile.middle_m), "length", profile.middle_m),
            "rate": Figure(kinetics.k25, "rate", f"{kinetics.k25:.3g} 1/s"),
            "heat": figure(given.write(kinetics.heat, "heat"), "heat", kinetics.heat),
            "gel_25": Figure(gel, "time", f"{gel / 3600:.3g} h"),
            "viscosity": figure(given.write(thick, "viscosity"), "viscosity", thick),
            "density": figure(given.write(profile.sheet.density[0], "density"), "density", profile.sheet.density[0]),
            "level": Figure(float(_LEVELS.index(profile.known.level.id)), "count", profile.known.level.name),
        },
    )


def carries(profile: Profile) -> Iterator[Carry]:
    """What the next questions take over: the sheet's own figures, and the reaction of a test cup."""
    given, sheet = profile.given, profile.sheet
    typed: dict[str, str] = {name: given.as_typed(name) for name in _HANDED if given.typed(name)}
    clock: dict[str, str] = {name: typed[name] for name in ("earliest", "latest", "demould", "cure") if name in typed}
    ratio = by_weight(profile)
    room = {"room": given.as_typed("room")}
    fit = profile.known.fit
    yield Carry("how-deep-how-hot", {**_deep(profile, typed), **room})
    if given.choice("known") == "kind":
        yield Carry("when-can-i", {"resin": given.choice("kind"), **room})
        return
    thick = {"viscosity": str(given.write(sheet.viscosity(profile.kind)[0], "viscosity"))} if given.typed("viscosity") else {}
    if fit is not None:
        yield Carry("when-can-i", {"resin": "cup", **cup_figures(profile), **room, **thick, **clock})
    elif "pot_life" in typed:
        pot: dict[str, str] = {name: typed[name] for name in ("pot_life", "pot_mass", "pot_temperature", "deepest") if name in typed}
        yield Carry("when-can-i", {"resin": "pot", **pot, "pot_means": given.choice("pot_means"), **ratio, **room, **thick, **clock})
    else:
        yield Carry("when-can-i", {"resin": profile.kind.id, "deepest": typed["deepest"], **ratio, **room, **thick, **clock})
    pot_life = given.maybe("pot_life")
    longest = taking("how-much-to-weigh", "working").usual_si[1]
    working_time = {"working": typed["pot_life"]} if pot_life is not None and pot_life <= longest else {}
    if given.typed("ratio"):
        density = {"density": str(given.write(sheet.density[0], "density"))} if sheet.density[1] != "assumed" else {}
        yield Carry("how-much-to-weigh", {"ratio": given.text("ratio"), "by": "weight", **density, **working_time, **room})
    elif given.typed("ratio_volume"):
        densities: dict[str, str] = {name: typed[name] for name in ("density_a", "density_b") if name in typed}
        yield Carry("how-much-to-weigh", {"ratio": given.text("ratio_volume"), "by": "volume", **densities, **working_time, **room})
    renamed = {"deepest": "sheet_depth", "largest": "sheet_mass", "lowest": "lowest", "highest": "highest", "earliest": "earliest", "latest": "latest"}
    before = {there: typed[here] for here, there in renamed.items() if here in typed} | ratio | working_time
    if before:
        yield Carry("before-a-pour", before)


def _deep(profile: Profile, typed: dict[str, str]) -> dict[str, str]:
    """What the question of depth takes over: the cup's figures or the sheet's."""
    given, deepest = profile.given, {name: typed[name] for name in ("deepest",) if name in typed}
    if given.choice("known") == "kind":
        return {"known": "kind", "kind": given.choice("kind")}
    if profile.known.fit is not None:
        return {"known": "cup", **cup_figures(profile), **deepest}
    sheet = {name: typed[name] for name in ("pot_life", "pot_mass", "pot_temperature", "deepest_temperature") if name in typed}
    return {"known": "sheet", **sheet, **deepest, "pot_means": given.choice("pot_means"), **by_weight(profile)}


def by_weight(profile: Profile) -> dict[str, str]:
    """The ratio by weight, where the sheet gives it or its volumes and densities do."""
    found = profile.sheet.ratio
    return {} if found is None or found[1] == "assumed" else {"ratio": f"100:{found[0].b:.4g}"}


def cup_figures(profile: Profile) -> dict[str, str]:
    """The three figures that tell a fitted reaction, as they are typed."""
    kinetics, fit = profile.known.kinetics, profile.known.fit
    assert fit is not None  # asked only where there is one
    hours = kinetics.integral(GEL) / kinetics.k25 / 3600
    return {"cup_gel": f"{hours:.4g} h", "cup_heat": f"{kinetics.heat / 1e3:.1f} J/g", "cup_shape": f"{fit.shape:.3f}"}


def _other() -> Answer:
    """Polyester, urethane and the like cure another way."""
    say = "Polyester, polyurethane and the like cure another way, and no figure of ours holds. Its sheet's depth, times and warnings are the whole answer."
    return Answer(
        Headline("Not an epoxy", "Go by its sheet", "", say, "stop"),
        changes=(Change("A two-part epoxy with an amine hardener", "a profile of its own"),),
        cautions=(Caution("other", "stop", "Other resins give off other vapours: read section 8 of the safety data sheet before you open it."),),
        working=(Working("Where it holds", "epoxy and amine hardener", "another resin", "not told"),),
        sources=("cure-fit", "judgement"),
        values={name: Figure(None, "length", "none") for name in ("ceiling", "no_stop", "middle")},
    )
