"""Is it enough? The resin that the moulds want, how sure that is, and the odds that what is on the shelf covers it."""

from __future__ import annotations

from calc.answers import Answer, Carry, Figure, figure
from calc.quantity.writing import Shown, trimmed
from calc.questions import Given, Question, Rule, Table
from calc.questions._is_it_enough import changes, drawing, dry, words
from calc.questions._is_it_enough.case import Case
from calc.questions._is_it_enough.fields import FIELDS
from calc.questions._is_it_enough.handed import layers
from calc.questions._is_it_enough.words import amount, grams, volume
from calc.questions._is_it_enough.working import sources, working

WORDS = {
    "core-too-wide": "{label}: {given} is no narrower than the ring, {ring}. Measure both again, or choose Round.",
    "slot-too-wide": "{label}: {given} is more than the length over all, {length}. Swap the two.",
    "bowl-too-deep": "{label}: {given} is more than half of the rim, {rim}. A bowl as deep as that closes in again: choose Ball, or Tapered round.",
    "odd-flats": "{label}: with {sides} sides a corner lies opposite each flat. Measure one side, or from the centre to a corner.",
    "no-width": "{label}: at least one of them has to be more than zero.",
    "odd-corners": "{label}: {count} numbers came, and each corner has two. Write along, then across, for each in turn.",
    "crossing": "{label}: that outline touches or crosses itself. Go round the mould corner by corner, in one direction.",
    "over-the-wall": "{label}: {given} stands over the rim; the wall is {wall}. Fill it less, or measure the wall again.",
    "over-the-top": "{label}: {given} is more than the mould is across, {across}.",
    "closes": "{label}: {given} closes the mould below the fill line. Measure floor and top again.",
    "bulge": "{label}: a floor that bulges up by {given} stands out of the resin. Measure it again.",
    "bigger-than-mould": "{label}: {wood} of wood does not go into {found} of mould. Enter only what lies below the fill line.",
    "other-count": "{label}: {count} came, and {wanted} would do: one for each, in the same order.",
    "too-many-kits": "{label}: too many ways to put that together. Leave out the smallest; more than {most} of a kind is not tried.",
    "both-or-none": "{label} is missing: the level and the grams tell something only together.",
    "past-the-line": "{label}: {given} is at or over the fill line, {depth}. The mould is full.",
    **{
        f"{name}:{code}": "{label}: that is no weight. Count resin by volume: choose so at 'Resin is counted by'. Or type g, kg, oz or lb."
        for name in ("have", "kits")
        for code in ("unit", "fluid-ounce", "which-gallon")
    },
    "all-full": "{label}: {given} would be all of the {count}. Then nothing is left to pour into them.",
}


def work(given: Given) -> Answer:
    """Answer the question."""
    case = Case(given)
    case.mould.check()
    if case.mould.dry:
        return dry.answer(case)
    pouring = case.pouring
    drawn = drawing.drawing(case)
    total = amount_to_weigh(case)
    return Answer(
        headline=words.headline(case),
        lines=words.lines(case),
        changes=changes.changes(case),
        band=None if pouring else words.band(case),
        cautions=words.cautions(case),
        working=working(case),
        sources=sources(case),
        grids=words.grids(case),
        drawings=() if drawn is None else (drawn,),
        carries=()
        if pouring
        else (layers(case), Carry("how-much-to-weigh", {"known": "weight", "total": total}), Carry("before-a-pour", _what_the_moulds_take(case))),
        values=values(case),
    )


def amount_to_weigh(case: Case) -> str:
    """The amount for the odds asked for, as a maker types it."""
    return str(_order(case))


def _order(case: Case) -> Shown:
    return grams(case, case.wanted_kg.for_odds(case.sure), "up")


def _what_the_moulds_take(case: Case) -> dict[str, str]:
    """The likely amount, and what the odds asked for add to it as both are shown."""
    likely, order = grams(case, case.wanted_kg.likely), _order(case)
    if order.si <= likely.si:
        return {"moulds_take": str(order)}
    spare = grams(case, order.si - likely.si, figures=6)
    return {"moulds_take": str(likely), "spare": f"{trimmed(spare.text)} {spare.unit}"}


def values(case: Case) -> dict[str, Figure]:
    """Figures for tests, the shell and other questions. Masses, whatever the shelf is counted by."""
    wanted, have = case.wanted_kg, case.have
    kg = case.in_kg
    pour, top = case.pouring, case.top_up
    soon, later = (None, None) if top is None else (case.density * top.soon, case.density * top.later)
    made: dict[str, float | None] = {
        "likely": wanted.likely,
        "u": wanted.u,
        "wanted": wanted.for_odds(case.sure),
        "wanted_90": wanted.for_odds(0.90),
        "wanted_95": wanted.for_odds(0.95),
        "wanted_99": wanted.for_odds(0.99),
        "more": None if have is None else kg(case.more),
        "spare": None if have is None else kg(have - case.wanted.likely),
        "takes": case.forecast.likely if pour else None,
        "owed": case.forecast.likely - case.given.si("used") if pour else None,
        "still": case.still.for_odds(case.sure) if pour else None,
        "top_up_soon": soon,
        "top_up_later": later,
    }
    odds = case.odds if not pour else None if case.left is None else case.still.odds(case.left)
    return {
        **{name: figure(None if value is None else grams(case, value), "mass", value) for name, value in made.items()},
        "odds": figure(None if odds is None else case.given.write(odds, "share", "down"), "share", odds),
        "mould": figure(volume(case, case.mould.volume), "volume", case.mould.volume),
        "in_one": figure(volume(case, case.one.likely), "volume", case.one.likely),
        "in_these": figure(amount(case, case.weighed(case.these).likely), "volume" if case.by_volume else "mass", case.weighed(case.these).likely),
    }


#: One plain mould before the pour: what the rules below are about. Everything that may contradict it is left empty.
_PLAIN = {field.name: "" for field in FIELDS} | {"shape": "round", "across": "300 mm", "depth": "60 mm", "wood_by": "volume", "wood": "1200 mL"}
_PLAIN |= {"wood_way": "figured", "have": "3 kg"}
_POURED = _PLAIN | {"used": "900 g", "reached": "25 mm"}

QUESTION = Question(
    id="is-it-enough",
    name="Is it enough?",
    moment="before the pour",
    order=16,
    summary="The resin that the moulds want, and the odds that what is on the shelf covers it.",
    lead="How much resin to have ready, how sure that is, which kits to open, and what is still owed once the pour is under way.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="Resin for a round mould with no wood in it, enough 19 times in 20",
        rows=("across", (("100", "150", "200", "250", "300", "350", "400"), ("4", "6", "8", "10", "12", "14", "16"))),
        columns=("depth", (("20", "30", "40", "50", "60"), ("3/4", "1 1/4", "1 1/2", "2", "2 1/2"))),
        fixed={"wood_by": "none"},
        note="Resin of 1.10 g/mL in one batch; sizes to 0.5 mm (1/32 in), depth to 1 mm (1/32 in), set with a level. Wood takes its own volume off.",
    ),
    rules=(
        Rule("have", "odds", "falls", given=_PLAIN, why="more resin on the shelf never means a smaller chance"),
        Rule("across", "wanted", "falls", given=_PLAIN, span=(200, 1500), why="a larger mould never needs less"),
        Rule("depth", "wanted", "falls", given=_PLAIN, span=(40, 400), why="a deeper fill never needs less"),
        Rule("length", "wanted", "falls", given=_PLAIN | {"shape": "box", "width": "200 mm"}, span=(150, 1500), why="a longer mould never needs less"),
        Rule("wood", "wanted", "rises", given=_PLAIN, span=(0, 3500), why="more wood never needs more resin: it takes up more than soaks in"),
        Rule("count", "wanted", "falls", given=_PLAIN, why="more moulds never need less"),
        Rule("pours", "wanted", "falls", given=_PLAIN, why="more batches never leave less behind"),
        Rule("soak", "wanted", "falls", given=_PLAIN, why="wood that drinks more never needs less"),
        Rule("wood_off", "wanted", "falls", given=_PLAIN, why="wood known worse never needs less to be as sure"),
        Rule("sure", "wanted", "falls", order=("0.9", "0.95", "0.99"), given=_PLAIN, why="to be surer never needs less"),
        Rule("used", "takes", "falls", given=_POURED, span=(1, 3000), why="more poured for one level never means that the mould takes less"),
        Rule("reached", "takes", "rises", given=_POURED, span=(5, 55), why="a higher level from the same grams never means that the mould takes more"),
    ),
)
