"""From what was typed to the piece on its mount."""

from __future__ import annotations

from typing import cast

from calc.errors import InputError
from calc.questions import Given
from calc.questions._weighed import in_keeping
from calc.questions._will_the_mount_hold.words import ACROSS
from calc.sources import value
from calc.turning import balance, caps, discs, glue, hold
from calc.turning.held import Between, Glue, Held, Mount, Screws, Tenon
from calc.turning.mounts import FarEnd

USUAL_WARMTH_K = 303.15


def across(given: Given) -> float:
    """The block, screw circle or tenon, m.

    Raises
    ------
    InputError
        ``outside`` when it is wider than the work.
    """
    name = ACROSS[given.choice("hold")]
    size = given.si(name)
    if size > given.si("diameter") * (1 + 1e-9):
        raise InputError(name, "outside", given=str(given.write(size, "length")), found=str(given.write(given.si("diameter"), "length")))
    return size


def operation(given: Given) -> caps.Operation:
    """``rough`` while it is out of round."""
    return "rough" if given.choice("stage") == "rough" else "finish"


def mass(given: Given) -> float:
    """What the work weighs, kg: a full disc of resin unless weighed.

    Raises
    ------
    InputError
        ``weight-size`` when no piece of this size weighs that.
    """
    in_keeping(given, "mass", "diameter", "thickness")
    own = given.maybe("mass")
    return discs.disc_mass(given.si("diameter"), given.si("thickness")) if own is None else own


def held(given: Given) -> Held:
    """The piece on its mount.

    Raises
    ------
    InputError
        ``outside``, ``wide-bead`` or ``outside-rim`` for sizes that cannot go together.
    """
    size, diameter = across(given), given.si("diameter")
    own = given.maybe("overhang")
    return Held(
        mount=_mount(given, size),
        far_end=cast(FarEnd, given.choice("far_end")),
        diameter_m=diameter,
        mass_kg=mass(given),
        eccentricity_m=_eccentricity(given, diameter),
        overhang_m=given.si("thickness") / 2 if own is None else own,
        catch_n=hold.catch(given.choice("catch")),
        operation=operation(given),
    )


def between(given: Given) -> Between:
    """The piece between centres."""
    return Between(given.si("diameter"), given.si("length"), operation(given), given.choice("steady") == "yes")


def _eccentricity(given: Given, diameter: float) -> float:
    if given.choice("balance") != "known":
        return balance.guessed_eccentricity(given.choice("balance"), diameter, operation(given) == "rough")
    known = given.si("eccentricity")
    if known > diameter / 2 * (1 + 1e-9):
        raise InputError("eccentricity", "outside-rim", given=str(given.write(known, "length")), found=str(given.write(diameter / 2, "length")))
    return known


def _mount(given: Given, size: float) -> Mount:
    kind = given.choice("hold")
    if kind == "chuck":
        return Tenon(size, hold.tenon_strength(given.choice("tenon_of")))
    if kind == "faceplate":
        wood, gauge = given.choice("into"), given.choice("gauge")
        return Screws(
            across_m=size,
            count=round(given.si("screws")),
            screw_m=hold.screw_diameter("8" if gauge == "drywall" else gauge),
            bite_m=given.si("bite"),
            gravity=value("screw_woods", "soft" if wood == "resin" else wood),
            end_grain=given.choice("grain") == "end",
            sound=wood != "resin" and gauge != "drywall",
        )
    bead = given.si("bead") if given.choice("lies") == "ring" else None
    if bead is not None and bead > size / 2 * (1 + 1e-9):
        raise InputError("bead", "wide-bead", given=str(given.write(bead, "length")), found=str(given.write(size, "length")))
    pull, shear = glue_strength(given)
    return Glue(size, bead, pull, shear, given.si("warm"), given.choice("face") != "slick")


def glue_strength(given: Given) -> tuple[float, float]:
    """Pull and shear of cool glue, Pa: ours, or the maker's; a pull below ours takes the shear down with it."""
    pull, shear = glue.strength("resin" if given.choice("face") == "slick" else given.choice("face"))
    own_pull, own_shear = given.maybe("pull"), given.maybe("shear")
    if own_shear is None and own_pull is not None:
        own_shear = shear * min(1.0, own_pull / pull)
    return own_pull or pull, own_shear or shear
