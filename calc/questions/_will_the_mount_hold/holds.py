"""Will it hold at this speed: the ceiling on this mount, or what would make it hold."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from calc.answers import Answer, Band, Caution, Change, Figure, Headline, Limit, Line, Tone, figure
from calc.quantity.writing import rpm_text
from calc.questions import Given
from calc.questions._how_fast.rounded import told_rpm
from calc.questions._mount_found import ALONE, NO, TAILSTOCK
from calc.questions._warm_glue import strength_left
from calc.questions._will_the_mount_hold import case as cases
from calc.questions._will_the_mount_hold import working
from calc.questions._will_the_mount_hold.handed import handed
from calc.questions._will_the_mount_hold.picture import on_mount
from calc.questions._will_the_mount_hold.remedies import Better, better
from calc.questions._will_the_mount_hold.words import ACROSS, CATCH, bears, least_size, length, times
from calc.turning import caps, discs, glue, remounting
from calc.turning.held import MOST_DIAMETER, MOST_OVERHANG, REFUSED, Glue, Held, Screws, least_across

_NAME = {"glue": "Glue", "faceplate": "Screws", "chuck": "Tenon"}
_SOURCES = {
    "glue": ("hot-melt",),
    "faceplate": ("wood-handbook-8", "screw-allowable", "screw-gauge", "club-rules"),
    "chuck": ("record-1914", "epoxy-fracture", "tenon-trade"),
}


@dataclass(frozen=True)
class Asked:
    """One piece, what was asked of its mount, and what would help.

    ``speed_rpm`` is where the times are told: the speed asked, but no more than the rim may run.
    """

    given: Given
    held: Held
    own_rpm: float | None
    unlocked: bool
    changes: tuple[Better, ...]

    @property
    def speed_rpm(self) -> float:
        return _told_at(self.held, self.own_rpm)

    @property
    def factor(self) -> float:
        return self.held.factor(self.speed_rpm)

    @property
    def ceiling_rpm(self) -> float | None:
        return None if self.unlocked else self.held.ceiling_rpm

    @property
    def found(self) -> str:
        """In one word, for the pages after this one: it holds alone, with the tailstock up, or not."""
        if self.ceiling_rpm is not None:
            return ALONE if self.held.far_end == "none" else TAILSTOCK
        held_up = replace(self.held, far_end="live").ceiling_rpm is not None and not self.unlocked
        return TAILSTOCK if held_up and self.held.far_end == "none" else NO

    @property
    def mount_decides(self) -> bool:
        """The mount gives out before its rim is too fast."""
        return self.held.mount_rpm < self.held.rim_rpm

    @property
    def kind(self) -> str:
        return self.given.choice("hold")

    @property
    def catch(self) -> str:
        return CATCH[self.given.choice("catch")]


def _told_at(held: Held, own_rpm: float | None) -> float:
    ceiling = held.rim_rpm if held.ceiling_rpm is None else held.ceiling_rpm
    return ceiling if own_rpm is None else min(own_rpm, ceiling)


def holds(given: Given) -> Answer:
    """The ceiling on this mount, or what makes it hold."""
    held, own = cases.held(given), given.maybe("speed")
    unlocked = given.choice("runs") == "reverse" and given.choice("lock") == "no"
    asked = Asked(given, held, own, unlocked, tuple(better(given, held, _told_at(held, own), own, lambda after: _then(after, own))))
    sources = ("judgement", "practice", *_SOURCES[asked.kind], "lathe-manuals", "z87-1")
    return Answer(
        _headline(asked),
        lines=tuple(_lines(asked)),
        limits=_ladder(asked),
        changes=tuple(Change(found.words, _then(found.after, own)) for found in asked.changes),
        band=_band(asked),
        cautions=tuple(_cautions(asked)),
        working=tuple(working.holds(given, held, asked.speed_rpm)),
        sources=(*sources, "lathe-lock-manual") if given.choice("runs") != "forward" else sources,
        drawings=(on_mount(given, held),),
        carries=handed(given, held, asked.found, asked.ceiling_rpm, own, by_mount=asked.mount_decides),
        values=_values(asked),
    )


def _headline(asked: Asked) -> Headline:
    given, ceiling = asked.given, asked.ceiling_rpm
    told = _told(asked)
    if ceiling is not None:
        now = f"{_it(asked)} {told} at {told_rpm(asked.speed_rpm)} rpm; we ask for {asked.held.mount.wanted:.0f}."
        if asked.own_rpm is not None and asked.own_rpm > ceiling:
            say = f"Your {rpm_text(asked.own_rpm)} rpm is over it: go no higher. {now}"
            return Headline("Does it hold?", f"No: only up to {told_rpm(ceiling)}", "rpm", say, "caution")
        if not asked.mount_decides:
            own = "" if asked.own_rpm is None else f"Your {rpm_text(asked.own_rpm)} rpm is under the ceiling from its rim. "
            say = f"How fast? tells the speed to run: it knows balance and cracks. {own}{now} Start at the lowest, light cuts."
            return Headline("Does it hold?", "Yes", "", say, _tone(asked))
        say = f"{now} Start at the lowest, light cuts." if asked.own_rpm is None else f"Your {rpm_text(asked.own_rpm)} rpm is under it. {now}"
        return Headline("Does it hold?", f"Yes, up to {told_rpm(ceiling)}", "rpm", say, _tone(asked))
    lock = "Set the lock screw on chuck or faceplate, or run forward"
    if asked.unlocked and asked.held.ceiling_rpm is not None:
        return Headline("Does it hold?", "No: lock it first", "", f"{lock}. In reverse it can unscrew.", "stop")
    if not asked.changes:
        say = f"Turn it between centres, or make it smaller. Why: {_it(asked).lower()} {told}; we ask for {asked.held.mount.wanted:.0f}."
        return Headline("Does it hold?", "No: not on this one", "", say, "stop")
    best = asked.changes[0]
    steps = best.steps if len(best.steps) > 1 else ()
    after = best.after.factor(_told_at(best.after, asked.own_rpm))
    say = f"Then it {bears(after, given.choice('catch'))}, to {told_rpm(best.after.ceiling_rpm or 0.0)} rpm at most."
    if asked.unlocked:
        return Headline("Does it hold?", "No: lock it first", "", say, "stop", (lock, *best.steps))
    helped = "live" in best.sorts or "pad" in best.sorts
    tone: Tone = "caution" if len(best.sorts) == 1 and helped and asked.factor >= REFUSED else "stop"
    return Headline("Does it hold?", f"No: {_small(best.short)}", "", say, tone, steps)


def _told(asked: Asked) -> str:
    told = bears(asked.factor, asked.given.choice("catch"))
    return told.replace("bears", "bear", 1) if isinstance(asked.held.mount, Screws) else told


def _it(asked: Asked) -> str:
    size = length(asked.given, asked.held.mount.across_m)
    if isinstance(asked.held.mount, Screws):
        return f"{asked.held.mount.count} screws on {size}"
    return f"A {'block' if asked.kind == 'glue' else 'tenon'} of {size}"


def _small(text: str) -> str:
    """Begun small, after a colon or within a sentence."""
    return text[:1].lower() + text[1:]


def _tone(asked: Asked) -> Tone:
    mount = asked.held.mount
    strained = isinstance(mount, Glue) and not glue.BRITTLE_K <= mount.warm_k <= glue.FULL_HOLD_K
    unlocked = asked.given.choice("runs") == "brake" and asked.given.choice("lock") == "no"
    return "caution" if strained or unlocked or (isinstance(mount, Screws) and mount.end_grain) else "go"


def _then(after: Held, own_rpm: float | None) -> str:
    told = times(after.factor(_told_at(after, own_rpm)))
    return told if after.ceiling_rpm is None else f"{told}, to {told_rpm(after.ceiling_rpm)} rpm"


def _lines(asked: Asked) -> Iterator[Line]:
    given, held = asked.given, asked.held
    least = least_across(held, asked.own_rpm)
    what = {"glue": "Least block", "faceplate": "Least screw circle", "chuck": "Least tenon"}[asked.kind]
    if least is None:
        yield Line(what, "None would do", note="As it stands, not even one as wide as the work.")
    else:
        yield Line.of(what, least_size(given, least, held.mount.across_m), "All else as it is.")
    if asked.found == TAILSTOCK and held.far_end == "none":
        with_it = least_across(replace(held, far_end="live"), asked.own_rpm)
        if with_it is not None:
            yield Line.of("With the tailstock up", least_size(given, with_it, held.mount.across_m), "The least then.")
    if asked.ceiling_rpm is not None:
        if not asked.mount_decides:
            yield Line("Ceiling from its rim", told_rpm(asked.ceiling_rpm), "rpm", "No speed to run: How fast? may go far lower, for balance and cracks.")
        if asked.kind == "glue" and held.far_end == "none":
            widest = length(given, MOST_DIAMETER * held.mount.across_m, "down")
            out = length(given, held.mount.across_m, "down")
            asks = f"{held.mount.wanted:.0f} times a catch, its middle at most {out} out, at most {widest} across"
            yield Line("No tailstock", "Not stopped for it", note=f"'Before the lathe runs' asks of a glued mount without one: {asks}. This one has all three.")
        yield Line("Before each start", "Push the rim by hand", note="Turn it one full round. Nothing creaks, nothing moves. Again after it has been warm.")


def _ladder(asked: Asked) -> tuple[Limit, ...]:
    held, given = asked.held, asked.given
    share = {1.0: "", 0.875: " Seven eighths of it: glue and a pad.", 0.75: " Three quarters of it: glue, and nothing at the far end."}
    allowed = held.rim_rpm / caps.speed_at_rim_speed(held.diameter_m, caps.operation_rim_speed(held.operation, held.diameter_m))
    reach = "Up to here it bears" if held.mount_rpm > 0 else "At no speed does it bear"
    cut = "roughing out of round" if held.operation == "rough" else "any cut"
    mount_rules = asked.mount_decides
    return (
        Limit(
            "mount", _NAME[asked.kind], *((told_rpm(held.mount_rpm), "rpm") if math.isfinite(held.mount_rpm) else ("any", "")),
            f"{reach} {held.mount.wanted:.0f} times {CATCH[given.choice('catch')]}. The catch decides more than the speed.", mount_rules,
        ),
        Limit("rim", "Rim", told_rpm(held.rim_rpm), "rpm", f"How fast a rim may run at most, {cut}.{share.get(round(allowed, 3), '')}", not mount_rules),
    )  # fmt: skip


def _band(asked: Asked) -> Band | None:
    if asked.kind != "glue" or asked.given.typed("pull") or asked.factor <= 0:
        return None
    low, high = times(asked.factor / 2), times(asked.factor * 2)
    return None if low == high else Band(f"Glue differs, from half our figure to twice: {_small(_it(asked))} may bear {low} to {high} the catch.", low, high)


def _cautions(asked: Asked) -> Iterator[Caution]:
    given, held, ceiling = asked.given, asked.held, asked.ceiling_rpm
    mount = held.mount
    if asked.unlocked:
        yield Caution("X8", "stop", "Reverse turns the thread loose. Only with the lock screw in.")
    if held.ceiling_rpm is None and asked.factor < mount.wanted:
        how_far = f" {_it(asked)} {_told(asked)}; we ask for {mount.wanted:.0f}." if asked.changes else ""  # with nothing to change the headline tells it
        yield Caution("X5", "stop", f"Why not: a dig-in may tear it off.{how_far}")
    besides = "Besides" if asked.factor < mount.wanted else "Why not"
    if held.wants_far_end and isinstance(mount, Screws):
        yield Caution("X7", "stop", f"{besides}: screws along the grain are not to be the only hold.")
    elif held.wants_far_end:
        out, wide = held.overhang_m > MOST_OVERHANG * mount.across_m, held.diameter_m > MOST_DIAMETER * mount.across_m
        broad = f"is over three times as wide as {'it' if out else 'the mount'}"
        which = " and ".join(words for said, words in ((out, "stands out further than the mount is wide"), (wide, broad)) if said)
        however = "Even where it bears enough," if asked.factor < mount.wanted else f"It {_told(asked)}, but"
        yield Caution("size", "stop", f"{besides}: the work {which}. {however} the far end is to be held then.")
    yield from _glue_cautions(asked)
    if isinstance(mount, Screws) and not mount.sound:
        drywall = given.choice("gauge") == "drywall"
        yield Caution("X7", "stop", "Drywall and deck screws snap." if drywall else "No figure exists for screws in resin: nothing is counted on.")
    elif isinstance(mount, Screws) and mount.end_grain and not held.wants_far_end:
        yield Caution("X7", "caution", "Screws along the grain hold half, and never alone: keep the tailstock up.")
    if asked.kind == "chuck" and ceiling is not None:
        yield Caution("seat", "caution", "The work's shoulder sits on the jaws, the tenon does not touch the bottom. Common practice, no source.")
    if given.choice("runs") == "brake" and given.choice("lock") == "no":
        stop = remounting.unscrewing_by_stop(held.mass_kg, held.diameter_m, asked.speed_rpm, given.si("stop"))
        ratio = stop / remounting.unscrewing_by_sanding(held.diameter_m)
        pulls = f"pulls at the thread {times(ratio)} as much as sanding" if ratio > 1 else "can turn the thread loose"
        yield Caution("X8", "caution", f"A stop that hard {pulls}: lock screw in, or let it coast.")
    if asked.own_rpm is not None and caps.rim_speed(held.diameter_m, asked.own_rpm) > caps.caps()["finish"]["rim"] * (1 + 1e-9):
        yield Caution("X11", "stop", "At your speed the rim is over our highest for any cut.")
    if ceiling is not None:
        lump = discs.shield_fragment_mass(caps.rim_speed(held.diameter_m, asked.speed_rpm))
        if held.mass_kg > lump:
            yield Caution("X12", "caution", "A face shield does not stop this piece. Stand out of the line of the rim. Ask How fast? for balance and cracks.")


def _glue_cautions(asked: Asked) -> Iterator[Caution]:
    mount, given = asked.held.mount, asked.given
    if not isinstance(mount, Glue):
        return
    if not mount.sound:
        yield Caution("slick", "stop", "Glue on wax, oil, polish or finish holds by chance: nothing is counted on.")
    if mount.warm_k >= 313.15 - 1e-6:
        kept = strength_left(mount.warm_k)
        yield Caution("X6", "caution", f"That warm the glue keeps {kept} and creeps. Stop, cool, push the rim by hand before you go on.")
    if mount.warm_k > 313.15 + 1e-6:
        yield Caution("X15", "caution", "Resin that warm is soft too: let it cool before any cut.")
    if mount.warm_k < glue.BRITTLE_K:
        yield Caution("cold", "caution", "Cold hot glue is brittle: a knock can break it off. Warm the shop and the piece first, and glue no cold resin.")
    if not given.typed("pull"):
        on = "wood" if given.choice("face") == "wood" else "resin"
        text = f"No one has published how hot glue holds on {on}: ours is our judgement. Try yours on an offcut, set it under 'More'."
        yield Caution("glue", "caution", text)


def _values(asked: Asked) -> dict[str, Figure]:
    ceiling, held = asked.ceiling_rpm, asked.held
    rim = caps.speed_at_rim_speed(held.diameter_m, caps.operation_rim_speed(held.operation, held.diameter_m))
    factor = held.factor(rim if asked.own_rpm is None else asked.own_rpm)  # where the mount has no say: a stronger one is never told at a higher speed
    least = least_across(held, asked.own_rpm)
    return {
        "hold": Figure(factor, "share", times(factor)),
        "ceiling": figure(None if ceiling is None else asked.given.write(ceiling, "speed", "down"), "rotational speed", ceiling),
        "least": Figure(least, "length", "none" if least is None else str(least_size(asked.given, least, held.mount.across_m))),
        ACROSS[asked.kind]: figure(length(asked.given, held.mount.across_m), "length", held.mount.across_m),
    }
