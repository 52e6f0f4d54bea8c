"""Work that takes its time: a generator that pauses now and then, tells the share that is done where it can, and returns what it found."""

from __future__ import annotations

from collections.abc import Generator
from typing import Any, TypeVar, cast

Found = TypeVar("Found")


def at_once(steps: Generator[Any, None, Found]) -> Found:
    """What the work returns, with no pause for anybody.

    Examples
    --------
    >>> def halves():
    ...     yield 0.5
    ...     return "done"
    >>> at_once(halves())
    'done'
    """
    while True:
        try:
            next(steps)
        except StopIteration as done:
            return cast(Found, done.value)


def part(steps: Generator[float, None, Found], low: float, high: float) -> Generator[float, None, Found]:
    """Work that tells its own share, as a part of the whole: from ``low`` to ``high``, 0 to 1."""
    while True:
        try:
            share = next(steps)
        except StopIteration as done:
            return cast(Found, done.value)
        yield low + share * (high - low)


def unmeasured(steps: Generator[None, None, Found], low: float, high: float, stride: float = 0.0) -> Generator[float, None, Found]:
    """Work that tells no share, as a part of the whole: from ``low`` on, each pause takes ``stride`` of what is left to ``high``."""
    share = low
    while True:
        try:
            next(steps)
        except StopIteration as done:
            return cast(Found, done.value)
        share += (high - share) * stride
        yield share
