"""What each set-up reaches of a blank, so that both are planned before the first gluing."""

from __future__ import annotations

from calc.answers import Grid
from calc.questions._does_it_fit.turn import Turn, length
from calc.turning.fit import standard

FIRST, ROUND = "First set-up", "Turned round"


def grid(turn: Turn) -> Grid:
    """Place by place; each row says which set-up it is of, since on a phone the rows stand under each other."""
    tail, rim = _tail(turn), _rim(turn)
    if turn.ends_held:
        spot = "the spur" if turn.hold == "centres" else f"the arbor, {turn.hides} across"
        side, near, far = "side or rim", "end at the headstock", "end at the tailstock"
        first = (f"all but {spot}", "all but the live centre's mark" if turn.tailed else "all of it, to the middle")
        again = ("all but the live centre's mark", f"all but {spot}")
    else:
        side, near, far = "rim", "face to the headstock", "face to the tailstock"
        first, again = (_back(turn), tail), (tail, f"hidden within the mount, {turn.hides} across")
    rows = (
        (f"Either set-up: {side}", rim),
        (f"{FIRST}: {far}", first[1]),
        (f"{FIRST}: {near}", first[0]),
        (f"{ROUND}: {far}", again[1]),
        (f"{ROUND}: {near}", again[0]),
    )
    return Grid("What each set-up reaches", ("Set-up and place", "What it reaches"), rows)


def _back(turn: Turn) -> str:
    if turn.covers >= turn.inner:
        return "nothing: the mount covers it"
    if turn.mount < standard("tool room"):
        return f"not: {turn.stands_out} behind it is no room for a tool"
    return f"outside the mount, {turn.hides} across" + ("" if turn.passes else "; the banjo has to stand there before you mount the work")


def _tail(turn: Turn) -> str:
    return "all but the live centre's mark, which comes last, with light cuts" if turn.tailed else "all of it, to the middle"


def _rim(turn: Turn) -> str:
    if not turn.reached:
        return f"only {length(turn.given, standard('rest back'), 'down')} of it from either end, until it passes over the banjo"
    return "all of it" if turn.passes else f"by a rest that reaches {length(turn.given, turn.along, 'up')} from beyond its face"
