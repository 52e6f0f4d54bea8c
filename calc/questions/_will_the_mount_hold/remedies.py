"""What would make a mount hold, or hold more: everything a maker could do about it, tried and put in order."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from calc.questions import Given
from calc.questions._will_the_mount_hold.words import handy, length
from calc.sources import value
from calc.turning import balance, glue, hold
from calc.turning.held import Glue, Held, Screws, Tenon, least_across
from calc.words import inside

MOST_CHANGES = 4  # more are not read
MOST_TOGETHER = 3  # a longer list first is another mount
MOST_SCREWS = int(value("turning", "most screws"))


@dataclass(frozen=True)
class Remedy:
    """One thing to do: its sort, what it makes of a case (none where it has nothing to do), in short, and as a sentence."""

    sort: str
    change: Callable[[Held], Held | None]
    short: Callable[[Held], str]
    words: Callable[[Held], str]


@dataclass(frozen=True)
class Better:
    """One or more things to do, and the piece as it is then held."""

    sorts: tuple[str, ...]
    short: str
    steps: tuple[str, ...]
    after: Held

    @property
    def words(self) -> str:
        """All of it in one sentence."""
        first, *rest = self.steps
        return "; and ".join([first, *map(inside, rest)])


def better(given: Given, case: Held, speed_rpm: float, own_rpm: float | None, tells: Callable[[Held], str]) -> list[Better]:
    """What makes it bear more, most first; for a mount that does not hold, what makes it hold, the tailstock first.

    Parameters
    ----------
    given : the question's inputs, for the words.
    case : as it is.
    speed_rpm : at this speed the times are compared, rpm.
    own_rpm : the speed asked for, rpm; a size that is made to hold is made for it, or for the rim's ceiling once the other changes are made.
    tells : what the maker reads of a case: a change that would read as it is now is left out.

    Returns
    -------
    list of Better
        at most :data:`MOST_CHANGES`; two or three things together only where fewer are not enough.
    """
    known = list(_remedies(given, own_rpm))
    if case.ceiling_rpm is not None:
        single = [found for remedy in known if (found := _tried(case, (remedy,)))]
        more = [found for found in single if found.after.factor(speed_rpm) > case.factor(speed_rpm) * 1.05 and tells(found.after) != tells(case)]
        return sorted(more, key=lambda found: -found.after.factor(speed_rpm))[:MOST_CHANGES]
    for together in range(1, MOST_TOGETHER + 1):
        enough = _enough(case, known, together)
        if enough:
            with_tailstock = [] if together > 1 else [found for found in _enough(case, known, 2) if "live" in found.sorts]
            led = any("live" in found.sorts for found in enough)
            return [*enough, *([] if led else with_tailstock)][:MOST_CHANGES]
    return []


def _enough(case: Held, known: list[Remedy], together: int) -> list[Better]:
    """What makes it hold, that many things together; with the tailstock first, then most first."""
    tried = [found for several in itertools.combinations(known, together) if (found := _tried(case, several))]
    enough = [found for found in tried if found.after.ceiling_rpm is not None]
    return sorted(enough, key=lambda found: ("live" not in found.sorts, -found.after.factor(_at(found.after))))


def _at(case: Held) -> float:
    return case.ceiling_rpm or 0.0


def _tried(case: Held, several: tuple[Remedy, ...]) -> Better | None:
    after, shorts, steps = case, [], []
    for remedy in several:
        changed = remedy.change(after)
        if changed is None:
            return None
        shorts.append(remedy.short(changed))
        steps.append(remedy.words(changed))
        after = changed
    return Better(tuple(remedy.sort for remedy in several), shorts[0], tuple(steps), after)


def _remedies(given: Given, own_rpm: float | None) -> Iterator[Remedy]:
    """In the order they are done: what stands in the way first, the size last, so that it counts on the rest."""
    yield Remedy("face", _bare, lambda it: "Bare and scuff it first", lambda it: "Cut the face bare where the block goes, scuff both, wipe, glue anew")
    wood = "Screw into wood" if given.choice("hold") == "faceplate" and given.choice("into") == "resin" else "Change the screws"
    yield Remedy("screws", _right_screws, lambda it: wood, lambda it: "Wood screws of number 10 or thicker, into a wood block, not into resin")
    yield Remedy("grain", _side_grain, lambda it: "Screw into side grain", lambda it: "Turn the waste block so that the screws go in across the grain")
    yield Remedy("cool", _cooled, lambda it: "Let it cool", lambda it: f"Let the glue cool to {given.pick('30 °C', '86 °F')} or less")
    yield Remedy(
        "live",
        lambda it: None if it.far_end == "live" else replace(it, far_end="live"),
        lambda it: "Bring up the tailstock",
        lambda it: "Bring up the tailstock with a live centre, in wood or waste",
    )
    yield Remedy(
        "pad",
        lambda it: replace(it, far_end="pad") if it.far_end == "none" else None,
        lambda it: "Press a pad on",
        lambda it: "Press a flat pad on with the tailstock: no point, no mark",
    )
    yield Remedy("full", _full_face, lambda it: "Glue the full face", lambda it: "Glue over the full face, not a ring of it")
    yield Remedy("balance", _balanced, lambda it: "Balance it", lambda it: "Balance it with weights on a free spindle")
    yield Remedy("close", lambda it: _closer(given, it), lambda it: "Mount it closer", lambda it: "Mount it closer: only its own half thickness out")
    yield Remedy("count", _more_screws, lambda it: f"{_count(it)} screws", lambda it: f"{_count(it)} screws on the same circle")
    yield Remedy("across", lambda it: _wider(given, it, own_rpm), lambda it: f"Make it {length(given, it.mount.across_m)}", lambda it: _made(given, it))


def _bare(case: Held) -> Held | None:
    return replace(case, mount=replace(case.mount, sound=True)) if isinstance(case.mount, Glue) and not case.mount.sound else None


def _right_screws(case: Held) -> Held | None:
    if not isinstance(case.mount, Screws) or case.mount.sound:
        return None
    return replace(case, mount=replace(case.mount, sound=True, screw_m=max(case.mount.screw_m, hold.screw_diameter("10"))))


def _side_grain(case: Held) -> Held | None:
    return replace(case, mount=replace(case.mount, end_grain=False)) if isinstance(case.mount, Screws) and case.mount.end_grain else None


def _cooled(case: Held) -> Held | None:
    warm = isinstance(case.mount, Glue) and case.mount.warm_k > glue.FULL_HOLD_K
    return replace(case, mount=replace(case.mount, warm_k=glue.FULL_HOLD_K)) if warm and isinstance(case.mount, Glue) else None


def _full_face(case: Held) -> Held | None:
    return replace(case, mount=replace(case.mount, bead_m=None)) if isinstance(case.mount, Glue) and case.mount.bead_m is not None else None


def _balanced(case: Held) -> Held | None:
    done = balance.guessed_eccentricity("done", case.diameter_m, out_of_round=False)
    return replace(case, eccentricity_m=done) if case.eccentricity_m > done else None


def _closer(given: Given, case: Held) -> Held | None:
    close = given.si("thickness") / 2
    return replace(case, overhang_m=close) if case.overhang_m > 1.2 * close else None


def _more_screws(case: Held) -> Held | None:
    if not isinstance(case.mount, Screws) or case.mount.count >= MOST_SCREWS:
        return None
    return replace(case, mount=replace(case.mount, count=min(2 * case.mount.count, MOST_SCREWS)))


def _wider(given: Given, case: Held, own_rpm: float | None) -> Held | None:
    """The least size that holds; where it holds already, a quarter more."""
    if case.ceiling_rpm is not None:
        size = 1.25 * case.mount.across_m
    else:
        least = least_across(case, own_rpm)
        if least is None:
            return None
        size = least
    size = handy(given, size).si
    if size > case.diameter_m or size <= case.mount.across_m:
        return None
    return replace(case, mount=replace(case.mount, across_m=size))


def _size(given: Given, case: Held) -> str:
    shown = length(given, case.mount.across_m)
    if isinstance(case.mount, Glue):
        return f"A block of {shown}"
    return f"A tenon of {shown}" if isinstance(case.mount, Tenon) else f"Screws on a circle of {shown}"


def _made(given: Given, case: Held) -> str:
    return _size(given, case).replace("A ", "Make it a ", 1)


def _count(case: Held) -> int:
    return case.mount.count if isinstance(case.mount, Screws) else 0
