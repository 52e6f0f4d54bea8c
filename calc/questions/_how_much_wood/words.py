"""How surely each way tells the volume of wood, in words: the same wherever it is asked."""

from calc.casting.wood import standard


def give_or_take(way: str) -> str:
    """How far the volume may be off by the way it was measured.

    >>> give_or_take("dip")
    '± 3 %, 19 times in 20.'
    """
    return f"± {100 * standard('both sides') * standard(f'spread {way}'):.0f} %, 19 times in 20."
