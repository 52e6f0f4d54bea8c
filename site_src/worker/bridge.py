"""The Python side of the worker: JSON text in, JSON text out, and getting ready for a memory snapshot."""

import gc
import random

from calc import desk

handle = desk.handle


def settle() -> None:
    """Load everything that will ever be needed, so that a snapshot taken now holds it."""
    desk.warm()
    gc.collect()


def reseed() -> None:
    """Random numbers anew after a snapshot, which has frozen them."""
    random.seed()
