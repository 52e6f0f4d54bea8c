"""How much more a blank with three woods takes than a plain answer, both in this Python, taken in turn."""

from __future__ import annotations

import statistics
import timeit

from calc import desk

ROUNDS = 5
PLAIN = ("how-fast", {"diameter": "350 mm"})
THREE_WOODS = (
    "where-is-the-weight",
    {"across": "300", "thickness": "50", "wood1_across": "80", "wood1_out": "60", "wood2_shape": "slice", "wood2_angle": "60", "wood2_clock": "9"}
    | {"wood3_shape": "outline", "wood3_points": "-20 60 20 60 30 100 0 170 -30 100"},
)


def seconds_of_balance() -> tuple[float, float]:
    """Seconds of an answer with three woods, and of a plain one; the median of several rounds of both."""
    times: dict[str, list[float]] = {id: [] for id, _ in (PLAIN, THREE_WOODS)}
    for _ in range(ROUNDS + 1):  # the first fetches tables: not counted
        for id, inputs in (PLAIN, THREE_WOODS):
            times[id].append(timeit.timeit(lambda id=id, inputs=inputs: answer(id, inputs), number=10) / 10)  # type: ignore[misc]
    return statistics.median(times[THREE_WOODS[0]][1:]), statistics.median(times[PLAIN[0]][1:])


def answer(id: str, inputs: dict[str, str]) -> None:
    """One answer, looked at."""
    if desk.answer(id, inputs, "metric", inputs)["headline"] is None:
        raise SystemExit(f"bench: no answer from {id}")
