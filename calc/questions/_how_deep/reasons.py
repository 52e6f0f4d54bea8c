"""What speaks against a pour, the gravest first, and what would change it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.answers import Change, Tone
from calc.casting.cure.kinetics import WORKING_END
from calc.casting.cure.plan import STRAIN_CAUTION_K, STRAIN_STOP_K, tier_of
from calc.questions._how_deep.case import Case
from calc.questions._how_deep.runs import Looked, widened
from calc.questions._how_deep.words import depth, hours, typed_depth, warm
from calc.questions._when.hours import after, rounded
from calc.words import risk


@dataclass(frozen=True)
class Reason:
    """One thing that speaks against it: a stop or a caution."""

    id: str
    tone: Tone
    text: str


def reasons(case: Case, found: Looked) -> tuple[Reason, ...]:
    """All of them, stops first.

    Parameters
    ----------
    case, found : the pour, and what was worked out.

    Returns
    -------
    tuple of Reason
    """
    return tuple(sorted(_reasons(case, found), key=lambda reason: reason.tone != "stop"))


def _reasons(case: Case, found: Looked) -> Iterator[Reason]:
    given, outlook = case.given, found.outlook
    hot, middle = outlook.hot, outlook.middle
    assert hot is not None and middle is not None
    plan = outlook.plan
    in_bucket, within = (None, None) if outlook.bucket is None else (outlook.bucket.runs_s, outlook.bucket.within_s)
    if middle.moments[0].most >= WORKING_END or (in_bucket is not None and plan.bucket_s >= in_bucket):
        yield Reason("set-in-bucket", "stop", f"After {hours(given, plan.bucket_s)} in the bucket it is past pouring.")
    tier = tier_of(hot.peak.hottest_k)
    past = outlook.planned > outlook.stop
    if tier.tone == "stop" or past:
        peak = warm(given, hot.peak.hottest_k)
        where, how_hot = "On that layer" if plan.beneath else "In one go", "hotter than" if hot.ran_away else "as hot as"
        how = f"{where} it could get {how_hot} {peak.removeprefix('over ')}"
        odds = "" if plan.beneath or case.quick else f"; {risk(outlook.odds)} of such resins would run away here"
        yield Reason("runaway", "stop", f"{how}{odds}. {tier.why if tier.tone != 'go' else ''}".rstrip())
    elif tier.tone == "caution" or outlook.planned > outlook.go:
        yield Reason("edge", "caution", f"It could get as hot as {warm(given, hot.peak.hottest_k)}. {tier.why}")
    if in_bucket is not None and within is not None and within < plan.bucket_s < in_bucket:
        yield Reason("late", "caution", f"Plan to have it out of the bucket within {after(within, 'down')}: it may well be so fast.")
    ready = found.below_ready_s
    if plan.beneath is not None and ready is not None and rounded(ready, "up") > plan.beneath.since_s:
        yield Reason("too-soon", "caution", f"Wait until {after(ready, 'up')} after the layer below was poured: its skin firm, its core cool.")
    yield from _sheet(case, found)
    if tier.tone != "stop":
        strain = hot.difference_k
        if strain > STRAIN_CAUTION_K:
            told = given.write(strain, "temperature difference", "up")
            text = f"Middle and skin could be {told} apart at the peak: it may crack as it cools."
            yield Reason("strain", "stop" if strain > STRAIN_STOP_K else "caution", text)
    limit = case.material.gives_way_k
    if limit is not None and outlook.mould_k[2] > limit:
        sure = outlook.mould_k[1] > limit
        name = case.material.name
        text = f"{name} gives way from {given.write(limit, 'temperature', 'down')} on; where the resin touches it, it {'gets' if sure else 'could get'} "
        text += f"{warm(given, outlook.mould_k[1 if sure else 2])}."
        yield Reason("mould", "stop" if sure else "caution", text)
    if found.known.agreement == "deep":
        yield Reason("disagree", "caution", "Its pot life does not go with so deep a sheet: ask the supplier, or make a test cup.")
    share = case.wood_share
    if share and plan.mould.wood_share < share * 0.95:
        yield Reason("thick-wood", "caution", f"Wood thicker than {depth(given, case.reach_m(plan.resin))} warms too slowly for this resin: it counts in part.")


def _sheet(case: Case, found: Looked) -> Iterator[Reason]:
    given, sheet = case.given, case.sheet_m
    planned = found.outlook.plan.mould.depth_m
    if sheet is None or planned <= sheet * (1 + 1e-9):
        return
    equal = found.outlook.equal_m
    told = f"The sheet allows {depth(given, sheet)} in one layer, {typed_depth(given, 'depth')} is planned."
    if equal is not None and equal <= sheet:
        told += f" In this mould that gets as hot as a wide pour of {depth(given, equal, 'up')}. Going on is your call."
        yield Reason("over-sheet", "caution", told)
    else:
        yield Reason("over-sheet", "stop", told)


def changes(case: Case, found: Looked) -> tuple[Change, ...]:
    """What would change the line most, the largest gain first.

    Parameters
    ----------
    case, found : the pour, and what was worked out.

    Returns
    -------
    tuple of Change
    """
    given, outlook = case.given, found.outlook
    told = {
        "cooler": f"Keep the shop {given.write(5.0, 'temperature difference')} cooler for the first day",
        "fan": "A fan over it, about a brisk breeze",
        "metal": f"A mould of aluminium, {given.pick('3 mm', '1/8 in')}, raised on strips",
        "cup": "A test cup first",
    }
    gains = dict(found.changed)
    if found.known.level.id != "cup" and not case.quick:
        gains["cup"] = widened(found.known, outlook.go)
    ceiling = case.sheet_m if not outlook.plan.tall else None
    lines: list[Change] = []
    if ceiling is not None and ceiling <= outlook.go:
        return tuple(lines)
    for id, line in sorted(gains.items(), key=lambda one: -one[1]):
        if line < outlook.go * 1.02:
            continue
        shown = depth(given, line * case.narrowest_m if outlook.plan.tall else min(line, ceiling or line))
        wide = " across" if outlook.plan.tall else ""
        sheet = ", the sheet's own" if ceiling is not None and line > ceiling else ""
        where = f"about {shown}{wide} if it comes out as expected{sheet}" if id == "cup" else f"no stop found up to {shown}{wide}{sheet}"
        lines.append(Change(told[id], where))
    return tuple(lines)


def layered(case: Case, found: Looked) -> str:
    """How to pour it in layers, in a sentence; empty where there is no such way."""
    layers = found.layers
    if layers is None:
        return ""
    given = case.given
    each, wait = depth(given, layers.depth_m), after(layers.window.first_s or 0.0, "up")
    if layers.count == 2:
        return f"Pour {each}, wait {wait}, pour the rest."
    return f"Pour it in {layers.count} layers of no more than {each}, {wait} between them."
