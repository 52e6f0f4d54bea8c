"""Height of parts that are stacked: what each is cast to, how long the dowels are, and what is left between the sockets.

Lengths in m; parts from the bottom up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from calc.guards import require_positive

Kind = Literal["dowel", "tenon", "flat"]


@dataclass(frozen=True)
class Part:
    """One part, all in m: ``finished`` height, ``tenon`` on its top, ``cast`` height, ``sockets`` in it, what is ``left`` of it between them."""

    finished: float
    tenon: float
    cast: float
    sockets: int
    left: float


@dataclass(frozen=True)
class Joint:
    """How parts are joined, m.

    Parameters
    ----------
    kind : a loose dowel in two sockets; a tenon turned on the lower part, in a socket of the next; or flat faces glued.
    socket : how deep a socket is; 0 for flat faces.
    gap : room left at the bottom of a socket, so that the shoulders close.

    Raises
    ------
    ValueError
        a joint with a socket of nothing, or a gap as deep as the socket.

    Examples
    --------
    >>> round(Joint("dowel", 0.015, 0.001).dowel, 4)
    0.028
    """

    kind: Kind
    socket: float = 0.0
    gap: float = 0.0

    def __post_init__(self) -> None:
        if self.kind != "flat":
            require_positive(socket=self.socket, room_in_the_socket=self.socket - self.gap)

    @property
    def tenon(self) -> float:
        """Length of a turned tenon."""
        return self.socket - self.gap if self.kind == "tenon" else 0.0

    @property
    def dowel(self) -> float:
        """Length of a loose dowel."""
        return 2 * (self.socket - self.gap) if self.kind == "dowel" else 0.0

    def sockets(self, place: int, count: int) -> int:
        """How many sockets the part at ``place`` (0 at the bottom) of ``count`` has."""
        if self.kind == "flat":
            return 0
        below, above = place > 0, place < count - 1 and self.kind == "dowel"
        return int(below) + int(above)


def parts(heights: Sequence[float], joint: Joint, face: float) -> tuple[Part, ...]:
    """What each part of a stack is cast to: h + tenon + 2 f, and what its sockets leave of it.

    Parameters
    ----------
    heights : finished, bottom first, m, each more than zero.
    joint : between each two.
    face : off each end, m.

    Returns
    -------
    tuple of Part
        ``left`` below zero where the sockets meet.

    Examples
    --------
    >>> bottom, middle, top = parts([0.040, 0.120, 0.025], Joint("dowel", 0.015, 0.001), 0.0015)
    >>> round(middle.cast, 4), round(middle.left, 4), round(top.left, 4)
    (0.123, 0.09, 0.01)

    References
    ----------
    Exact arithmetic.
    """
    require_positive(lowest_height=min(heights))
    out = []
    for place, height in enumerate(heights):
        tenon = joint.tenon if place < len(heights) - 1 else 0.0
        sockets = joint.sockets(place, len(heights))
        out.append(Part(height, tenon, height + tenon + 2 * face, sockets, height - sockets * joint.socket))
    return tuple(out)


def deepest_socket(stack: Sequence[Part], web: float) -> float:
    """The deepest sockets that leave every part its web: the least of (h - w) / n.

    Parameters
    ----------
    stack : as :func:`parts` gives it; a part without a socket sets no limit.
    web : what has to be left, m.

    Returns
    -------
    float
        m; zero or less where even the shallowest leaves too little; infinite where no part has a socket.

    Examples
    --------
    >>> round(deepest_socket(parts([0.040, 0.020, 0.040], Joint("dowel", 0.015, 0.001), 0.0015), 0.006), 4)
    0.007

    References
    ----------
    Exact arithmetic.
    """
    return min(((part.finished - web) / part.sockets for part in stack if part.sockets), default=float("inf"))
