"""What a standing piece hands on: its sizes, to whether it fits the lathe and whether its mount holds."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Carry
from calc.questions._will_it_stand.piece import Piece, length
from calc.turning import fit

_FIT_ACROSS, _MOUNT_ACROSS = (0.005, 2.0), (0.010, 1.5)  # what those fields take, m
_FIT_ALONG, _MOUNT_ALONG = (0.002, 3.0), (0.003, 2.0)
_MOUNT_KG = (0.005, 300.0)


def carries(piece: Piece) -> Iterator[Carry]:
    """The whole piece as it turns about its upright axis: its widest, all its parts in one length, its weight where it was weighed."""
    given = piece.given
    widest, square = max(piece.widths), piece.section == "square"
    sweeps = fit.sweep(widest, 4 if square else 0)
    if _within(widest, _FIT_ACROSS) and _within(piece.tall, _FIT_ALONG):
        told = {"form": "square" if square else "round", "across": str(length(given, widest, "up")), "along": str(length(given, piece.tall, "up"))}
        yield Carry("does-it-fit-the-lathe", told | _weight(piece))
    if _within(sweeps, _MOUNT_ACROSS) and _within(piece.tall, _MOUNT_ALONG):
        told = {"diameter": str(length(given, sweeps, "up")), "thickness": str(length(given, piece.tall, "up"))}
        yield Carry("will-the-mount-hold", told | _weight(piece))


def _weight(piece: Piece) -> dict[str, str]:
    """Its weight, if it was weighed."""
    if piece.masses is None or not _within(piece.bare.mass, _MOUNT_KG) or piece.bare.mass < 0.01:
        return {}
    return {"mass": str(piece.given.write(piece.bare.mass, "mass", "up"))}


def _within(value: float, limits: tuple[float, float]) -> bool:
    return limits[0] * 1.001 <= value <= limits[1] * 0.99
