"""Turning it round: how far off it comes back, the stock that takes, whether the new mount holds, the ring to leave bare, and the block off again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from calc.answers import Answer, Carry, Caution, Change, Figure, Headline, Line, Tone, figure
from calc.errors import InputError, InputErrors
from calc.fields import Typed
from calc.quantity.writing import Shown, Style
from calc.questions import Given, all_questions
from calc.questions._how_fast.handed import along
from calc.questions._will_the_mount_hold import case as cases
from calc.questions._will_the_mount_hold import working
from calc.questions._will_the_mount_hold.holds import holds
from calc.questions._will_the_mount_hold.picture import bare_ring
from calc.questions._will_the_mount_hold.words import ACROSS, handy, length, tenths
from calc.turning import remounting

#: What stands there of its balance, and the maker's own limit: how far off it comes back adds to them.
_THERE = ("balance", "eccentricity", "own")
_WAYS = {
    "eye": "By eye to a drawn ring",
    "point": "By the tailstock's point in a centre mark",
    "register": "A recess or step turned to fit",
}


def turned(given: Given) -> Answer:
    """The stock to leave on the rim, or what to take off a piece that is back on the lathe.

    Raises
    ------
    InputError
        ``off-the-rim`` for a runout as large as the work, ``same-marks`` between centres.
    """
    if given.choice("hold") == "centres":
        raise InputError("hold", "same-marks")
    diameter, dial = given.si("diameter"), given.maybe("runout")
    if dial is not None and dial >= diameter:
        raise InputError("runout", "off-the-rim", given=str(length(given, dial)), found=str(length(given, diameter)))
    off = remounting.off_centre(given.choice("centred")) if dial is None else dial / 2
    held = cases.across(given)
    stock, mass = given.maybe("stock"), cases.mass(given)
    unbalance = mass * off
    anew = _mounted_anew(given)
    bare = remounting.bare_across(max(held, _asked_for(given, anew)))
    return Answer(
        _warned(_headline(given, off, stock, dial, diameter), anew),
        lines=(_whether_it_holds(anew), *_lines(given, off, unbalance, diameter, bare)),
        changes=tuple(_changes(given, off)),
        cautions=tuple(_cautions(given)),
        working=tuple(working.turned(off, diameter, mass)),
        sources=("judgement", "practice", "arithmetic", "hot-melt") if given.choice("hold") == "glue" else ("judgement", "practice", "arithmetic"),
        drawings=(bare_ring(given, diameter, given.si("thickness"), held, min(bare, diameter), off),),
        carries=tuple(_carries(given, off, diameter, anew)),
        values={
            "stock": figure(tenths(given, off, "up"), "length", off),
            "runout": figure(tenths(given, 2 * off, "up"), "length", 2 * off),
            "unbalance": Figure(unbalance, "mass times length", f"{1000 * unbalance:.3g} kg·mm"),
        },
    )


def _asked_for(given: Given, anew: Answer | None) -> float:
    """The block that the new mount is asked to be where it does not hold as it is, m: that one has to find its place bare; 0 where none would do."""
    least = None if anew is None or anew.values["ceiling"].si is not None else anew.values["least"].si
    return 0.0 if least is None else handy(given, least).si


def _as_held(given: Given) -> dict[str, str]:
    """The new mount as 'Does it hold?' is asked of it: all else as usual there."""
    hold = given.choice("hold")
    told = {name: given.as_typed(name) for name in ("diameter", "thickness", "mass", ACROSS[hold]) if given.typed(name)}
    return {"asked": "holds", "hold": hold} | told


def _mounted_anew(given: Given) -> Answer | None:
    """What this question says of the new mount with no tailstock; None where it wants to know more, as of screws."""
    typed = {name: Typed(text, given.system) for name, text in _as_held(given).items()}
    try:
        return holds(all_questions()["will-the-mount-hold"].parse(typed, given.system, {})[0])
    except (InputError, InputErrors):
        return None


def _warned(headline: Headline, anew: Answer | None) -> Headline:
    if anew is None or anew.headline.tone == "go":
        return headline
    if anew.values["ceiling"].si is not None:
        return headline
    tone: Tone = "stop" if headline.tone == "stop" else "caution"
    return replace(headline, say=f"{headline.say} Before that: with no tailstock the new mount does not hold.", tone=tone)


def _whether_it_holds(anew: Answer | None) -> Line:
    if anew is None:
        return Line("Does the new mount hold?", "Not worked out", note="It goes by the screws as well. Taken on, below, with these sizes.")
    note = "With no tailstock, wood mostly to one side. Taken on, below, to say how yours is."
    return Line("Does the new mount hold?", anew.headline.text, anew.headline.unit, note)


def _carries(given: Given, off: float, diameter: float, anew: Answer | None) -> Iterator[Carry]:
    """To whether the new mount holds, to its speed and to the lists. How far off it comes back adds to its balance there, and never replaces it."""
    closer = Style(given.pick("mm", "in"), step=0.1 if given.system == "metric" else 0.01)
    back = {"set_back": str(given.write(off, ("length", closer), "up"))}
    yield Carry("will-the-mount-hold", _as_held(given))
    if anew is not None:
        given_on = {carry.to: dict(carry.inputs) for carry in anew.carries}
        yield Carry("how-fast", {name: text for name, text in given_on["how-fast"].items() if name not in _THERE} | back, _THERE)
        yield Carry("before-the-lathe", given_on["before-the-lathe"])
        return
    told = {"operation": "rough", "diameter": str(length(given, diameter, "up")), "hold": given.choice("hold")} | back
    if given.typed("thickness"):
        told |= along(given.choice("hold"), given.as_typed("thickness"))
    yield Carry("how-fast", told | ({"mass": given.as_typed("mass")} if given.typed("mass") else {}), _THERE)


def _headline(given: Given, off: float, stock: float | None, dial: float | None, diameter: float) -> Headline:
    needed, true = tenths(given, off, "up"), _across(given, max(remounting.trued_diameter(diameter, off), 0.0))
    if stock is not None and stock < off - 1e-9:
        if dial is None and off > remounting.off_centre("register") and stock >= remounting.off_centre("register"):
            enough = tenths(given, remounting.off_centre("register"), "up")
            say = f"Then {enough} is enough. Why: as planned it asks for {needed} all round, and you have {tenths(given, stock)}."
            return Headline("Turning it round", "Cut a register", "", say, "stop")
        say = f"Centre it anew, or let it come out at {true}. Why: true asks for {needed} all round, and you have {tenths(given, stock)}."
        return Headline("Turning it round", "Not true at this size", "", say, "stop")
    if dial is not None:
        return Headline(
            "Comes off the rim", needed.text, needed.unit, f"All round, until it runs true at {true} across. Or loosen it and centre it anew.", "go"
        )
    say = f"All round, until it is turned round and trued: it comes out at {true} or less. Leave the same on the face."
    return Headline("Leave on the rim", needed.text, needed.unit, say, "go")


def _across(given: Given, metres: float) -> Shown:
    return tenths(given, metres, "down") if given.system == "metric" else length(given, metres, "down")


def _lines(given: Given, off: float, unbalance: float, diameter: float, bare: float) -> Iterator[Line]:
    hold = given.choice("hold")
    at_rim = given.write(unbalance / (diameter / 2), "small mass", "up")
    yield Line.of("Out of balance by", at_rim, f"At the rim, until it is trued; the rim moves in and out by {tenths(given, 2 * off, 'up')}. Start slow again.")
    if hold == "glue":
        ring = length(given, min(bare, diameter), "up")
        yield Line(
            "Leave bare",
            f"{ring.text}",
            f"{ring.unit} across",
            "Where the next block goes: no paste, no oil, no finish, before it is glued. Glue holds on none of them.",
        )
    deep, skin = given.pick("2 mm", "1/16 in"), given.pick("2 or 3 mm", "about 1/8 in")
    note = f"Turn it in the same set-up, a snug fit for the next mount, {deep} deep. Common practice, no source."
    yield Line("Register", "A recess or a step", note=note)
    if hold == "glue":
        yield Line("Block off: first", "Saw or part it to a thin skin", note=f"Leave {skin} of wood. Stop the lathe; hand on the piece.")
        yield Line(
            "Then", "Cold", note="Out in the cold or a cold pack on it: cold hot glue is brittle. Wood or plastic wedge, from all round, never one side."
        )
        yield Line(
            "Then",
            "A drop of isopropyl alcohol",
            note="Along the edge; let it creep under for some minutes; wedge again. Try it on an offcut first. No flame, no spark.",
        )
        yield Line("Last", "The rest of the skin, by scraper", note="Roll off what glue is left with a finger. Common practice, no source.")


def _changes(given: Given, off: float) -> Iterator[Change]:
    for way, words in _WAYS.items():
        least = tenths(given, remounting.off_centre(way), "up")
        if least.si < tenths(given, off, "up").si - 1e-9:  # a change that reads as it is now is none
            yield Change(words, f"{least} on the rim")


def _cautions(given: Given) -> Iterator[Caution]:
    if given.choice("hold") == "glue":
        heat = given.pick("90 to 105 °C, cast resin often at 45 to 60 °C", "194 to 221 °F, cast resin often at 113 to 140 °F")
        yield Caution("heat", "stop", f"No heat gun, no iron: hot glue softens at {heat}. The resin marks before the glue lets go.")
    if given.maybe("runout") is None:
        yield Caution("judgement", "caution", "How far off it comes back is our judgement. Turn it by hand against a pencil and enter what it shows.")
    if given.choice("hold") in ("faceplate", "chuck"):
        yield Caution("X8", "caution", "Same thread, same seat: clean the shoulder, screw it home, lock screw in before reverse.")
