"""Which whole kits to open, so that enough comes together and little is left over. Sizes in any one unit, prices in any one money."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

#: More kits of one size than this is a slip or another trade, and more ways than this to put them together take too long to try.
MOST_KITS = 40
MOST_WAYS = 4000
MOST_SIZES = 4
_NEAR = 1e-9


@dataclass(frozen=True)
class Choice:
    """So many of each size. ``left`` is what is over; ``price`` is None where prices are not known."""

    counts: tuple[int, ...]
    left: float
    price: float | None = None

    @property
    def kits(self) -> int:
        """How many kits that is."""
        return sum(self.counts)


def can_be_tried(wanted: float, sizes: Sequence[float]) -> bool:
    """Whether every way to put these kits together can be tried.

    Parameters
    ----------
    wanted, sizes : as for :func:`fewest_left`.

    Returns
    -------
    bool

    Examples
    --------
    >>> can_be_tried(3.24, [1.5, 3.0]), can_be_tried(200.0, [0.5])
    (True, False)

    References
    ----------
    Our judgement.
    """
    counts = [wanted / size + 1 for size in sizes]
    return len(sizes) <= MOST_SIZES and max(counts) <= MOST_KITS + 1 and math.prod(counts) / math.factorial(len(counts)) <= MOST_WAYS


def fewest_left(wanted: float, sizes: Sequence[float], stock: Sequence[int] | None = None, prices: Sequence[float] | None = None) -> Choice | None:
    """Whole kits that hold at least what is wanted, with the least left over; of equals, the fewest kits.

    Parameters
    ----------
    wanted : of resin, more than 0.
    sizes : what one kit holds, A and B together; at most :data:`MOST_SIZES`.
    stock : how many there are of each; None for as many as it takes.
    prices : of one kit, in the order of the sizes; only told in the result.

    Returns
    -------
    Choice or None
        None where all that there is does not come to it.

    Raises
    ------
    ValueError
        too many kits, sizes or ways; see :func:`can_be_tried`.

    Examples
    --------
    >>> fewest_left(3.24, [1.5, 3.0, 6.0])
    Choice(counts=(1, 1, 0), left=1.26, price=None)

    References
    ----------
    Every combination is tried.
    """
    return _best(wanted, sizes, stock, prices, lambda choice: (round(choice.left / wanted, 9), choice.kits, choice.counts))


def cheapest(wanted: float, sizes: Sequence[float], prices: Sequence[float], stock: Sequence[int] | None = None) -> Choice | None:
    """Whole kits that hold at least what is wanted, for the least money; of equals, the least left over.

    Parameters
    ----------
    wanted, sizes, stock : as for :func:`fewest_left`.
    prices : of one kit, in the order of the sizes.

    Returns
    -------
    Choice or None

    Raises
    ------
    ValueError
        as for :func:`fewest_left`.

    Examples
    --------
    >>> cheapest(3.24, [1.5, 3.0, 6.0], [60, 105, 150])
    Choice(counts=(0, 0, 1), left=2.76, price=150)

    References
    ----------
    Every combination is tried.
    """
    return _best(wanted, sizes, stock, prices, lambda choice: (choice.price, round(choice.left / wanted, 9), choice.kits, choice.counts))


def _best(
    wanted: float, sizes: Sequence[float], stock: Sequence[int] | None, prices: Sequence[float] | None, rank: Callable[[Choice], tuple[Any, ...]]
) -> Choice | None:
    if not can_be_tried(wanted, sizes):
        raise ValueError("too many kits, or sizes of them")
    most = tuple(stock) if stock is not None else (MOST_KITS,) * len(sizes)
    made = [
        Choice(counts, sum(n * size for n, size in zip(counts, sizes, strict=True)) - wanted, _price(counts, prices))
        for counts in _combinations(wanted, sizes, most)
    ]
    return min(made, key=rank, default=None)


def _price(counts: Sequence[int], prices: Sequence[float] | None) -> float | None:
    return None if prices is None else sum(n * price for n, price in zip(counts, prices, strict=True))


def _combinations(wanted: float, sizes: Sequence[float], most: Sequence[int]) -> list[tuple[int, ...]]:
    """All counts that reach what is wanted and of which no kit of the last size could be left out."""
    size, limit = sizes[0], most[0]
    enough = max(0, math.ceil(wanted / size - _NEAR))
    if len(sizes) == 1:
        return [(enough,)] if enough <= limit else []
    return [(n, *rest) for n in range(min(enough, limit) + 1) for rest in _combinations(wanted - n * size, sizes[1:], most[1:])]
