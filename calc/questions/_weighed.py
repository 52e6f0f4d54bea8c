"""A weight and the sizes beside it, held against each other: a diameter typed in cm is not taken for millimetres."""

from __future__ import annotations

from math import pi

from calc.errors import InputError
from calc.quantity.writing import Style
from calc.questions import Given
from calc.sources import figures
from calc.turning.discs import RESIN_DENSITY

#: What the lightest hollow work and the heaviest castings weigh for the room they take, kg/m3.
DENSITIES = figures("turning")


def in_keeping(given: Given, name: str, across: str, along: str) -> None:
    """Refuse a weight that no round piece of these sizes can have; a figure that was not typed is not judged.

    Parameters
    ----------
    given : the question's inputs.
    name, across, along : the fields of the weight, the widest across, and the thickness or length.

    Raises
    ------
    InputError
        ``weight-size`` at the weight, with both sizes and the density that they would come to.
    """
    if not all(map(given.typed, (name, across, along))):
        return
    density = given.si(name) / (pi / 4 * given.si(across) ** 2 * given.si(along))
    if DENSITIES("lightest") <= density <= DENSITIES("heaviest"):
        return
    raise InputError(
        name,
        "weight-size",
        given=given.as_typed(name),
        across=given.as_typed(across),
        along=given.as_typed(along),
        found=str(given.write(density, ("density", Style("g/mL", figures=2)))),
        usual=str(given.write(RESIN_DENSITY, "density")),
    )
