"""How warm hot glue is told, wherever it is."""

from __future__ import annotations

from calc.turning import glue


def strength_left(warm_k: float) -> str:
    """What hot glue keeps of its strength at a warmth (K), in twentieths, never more than it is.

    >>> strength_left(313.15), strength_left(333.15)
    ('about 65 % of its strength', 'none of its strength')
    """
    share = int(20 * glue.warmth(warm_k) + 1e-9) * 5
    return f"about {share} % of its strength" if share else "none of its strength"
