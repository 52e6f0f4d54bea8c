"""What goes on to 'How deep and how hot?': how much may be poured at a time comes before how much to weigh."""

from __future__ import annotations

from calc.answers import Carry
from calc.quantity.writing import Style
from calc.questions import taking
from calc.questions._is_it_enough.case import Case

#: Moulds as that question sees them from above, each by its largest sizes: none is cooler for being taken as larger.
_SEEN = {
    "round": ("round", {"across": "across"}),
    "cup": ("round", {"across": "top_across"}),
    "box": ("oblong", {"length": "length", "width": "width"}),
    "tray": ("oblong", {"length": "top_length", "width": "top_width"}),
    "oval": ("oblong", {"length": "length", "width": "width"}),
    "slot": ("oblong", {"length": "length", "width": "width"}),
}
_LEVEL = 0.0005  # m; nearer to the fill line the wood reaches it


def layers(case: Case) -> Carry:
    """The mould as far as a plain one is like it, the share of wood rounded down, and the resin's density where it was told.

    Wood that ends below the fill line lies in places: the resin over it decides there.
    """
    given, mould = case.given, case.mould
    told: dict[str, str] = {}
    if mould.shape is not None:
        told["depth"] = given.as_typed("depth")
    seen = _SEEN.get(mould.kind)
    if seen is not None:
        told |= {"shape": seen[0]} | {name: given.as_typed(own) for name, own in seen[1].items()}
    top = given.maybe("wood_height")
    covered = top is not None and top < mould.depth - _LEVEL  # the resin over the wood holds none, and gets as hot as resin alone
    share = min(taking("how-deep-how-hot", "wood").limits_si[1], case.wood.volume / mould.volume)
    told["wood"] = str(given.write(share, ("share", Style("%", step=1)), "down"))
    told |= {"lies": "parts"} if covered else {}
    return Carry("how-deep-how-hot", told | ({"density": given.as_typed("density")} if given.typed("density") else {}))
