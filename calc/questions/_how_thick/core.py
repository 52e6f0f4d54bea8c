"""A core through a casting, to scale: the layers of its thickness from the floor up, and the wood in them."""

from __future__ import annotations

from collections.abc import Sequence

from calc.casting.thickness import Budget
from calc.drawing import Drawing, Look, Sketch
from calc.questions import Given
from calc.questions._how_thick.words import fine, labels, length
from calc.words import inside

#: Parts of the drawing, as shares of the depth: where the core ends, where the words start, where the floor line ends on either side.
_CORE, _WORDS, _LEFT, _RIGHT = 0.45, 0.55, -0.42, 1.35
_SPACING = 0.1  # least distance of two lines of words
_SHORT = {"Faced off below": "off below", "Faced off on top": "off the top", "Falls as it cures": "falls", "Out of level": "level", "Wood's bow": "bow"}


def core(given: Given, budget: Budget, layers: Sequence[tuple[str, float, str]], slab: float | None, depth: float) -> Drawing:
    """Draw it.

    Parameters
    ----------
    given : for the units.
    budget : the allowances; layers : each layer from the floor up, with its name.
    slab : thickness of the wood, m; None draws what the budget asks for or allows.
    depth : poured, m.

    Returns
    -------
    Drawing
    """
    sketch = Sketch()
    low = 0.0
    marks, told = [], []
    for name, thick, _ in layers:
        look: Look = "resin" if name == "Finished" else "void"
        sketch.polygon(_box(0.0, depth * _CORE, low, low + thick), look)
        marks.append((low + thick / 2, f"{_SHORT.get(name, inside(name))} {fine(given, thick)}"))
        told.append(f"{inside(name)}, {fine(given, thick)}")
        if name == "Finished":
            bottom, top = low, low + thick
        low += thick
    wood = slab or budget.slab or (max(0.0, budget.most_wood) if budget.most_wood is not None else 0.0)
    if wood:
        start = budget.raised
        sketch.polygon(_box(depth * _CORE * 0.25, depth * _CORE * 0.75, start, min(start + wood, 1.15 * depth)), "wood")
    sketch.line([(0.0, bottom), (depth * _CORE, bottom)], "limit").line([(0.0, top), (depth * _CORE, top)], "limit")
    sketch.line([(depth * _LEFT, 0.0), (depth * _RIGHT, 0.0)], "mould")
    sketch.line([(depth * -0.06, low), (depth * (_CORE + 0.06), low)], "level")
    sketch.measure((depth * _LEFT * 0.95, 0.0), (depth * _LEFT * 0.95, low), str(length(given, depth)))
    labels(sketch, depth * _CORE, depth * _WORDS, depth * _SPACING, marks)
    says = f"From the floor up: {'; '.join(told)}. In all {fine(given, low, 'up')}, poured to {length(given, depth)}."
    if wood:
        held = f", held {fine(given, budget.raised)} over the floor" if budget.raised else ""
        says += f" The wood is {length(given, wood)} thick{held}."
    return sketch.drawing("A core through it, to scale", says)


def _box(left: float, right: float, low: float, high: float) -> list[tuple[float, float]]:
    return [(left, low), (right, low), (right, high), (left, high)]
