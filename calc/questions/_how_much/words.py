"""What a maker reads of a weighing: the headline, the pours, what limits them, what would help, the cautions."""

from __future__ import annotations

from calc.answers import Answer, Band, Caution, Change, Headline, Limit, Line, Working, figure
from calc.casting import off_ratio, weighing
from calc.casting.batch import Job, face_of
from calc.casting.mixing import Parts
from calc.casting.standards import standard
from calc.quantity.units import to_si
from calc.questions import Given
from calc.questions._how_much.plan import Plan, nice_mass, step_text
from calc.words import both

#: The pours are listed one by one up to this many.
_LISTED = 4


def headline(plan: Plan) -> Headline:
    """What to weigh, or what makes it possible."""
    show, first, unit = plan.mass, plan.first, plan.job.face.unit
    if plan.take_out:
        out = show(plan.take_out)
        say = f"Take {out} of clean A back out: {show(first.a)} stays in, then B {show(first.b)}."
        return Headline("Take A back out", out.text, out.unit, say, "stop")
    if plan.too_big:
        return _too_big(plan)
    if plan.grade == "red":
        finer = plan.finer()
        say = f"Weigh this batch on a scale with {step_text(finer)} steps, or mix {plan.least_shown()} or more on this one."
        return Headline("Finer scale", str(finer.text), f"{finer.unit} steps", say, "stop")
    tone = off_ratio.grade(plan.kit_error, plan.job.good, plan.job.worst)
    if plan.job.way == "kit":
        return _kit_headline(plan, tone)
    count = len(plan.pours)
    caution = plan.grade == "amber" or plan.grown
    text = f"A {show(first.a).text} + B {show(first.b).text}"
    if plan.job.in_a or plan.job.in_b:
        return Headline(
            "Pour 1, in the bucket in the end" if count > 1 else "In the bucket in the end",
            text,
            unit,
            _what_is_missing(plan),
            "caution" if caution else "go",
        )
    if plan.grade == "amber":
        finer = plan.finer()
        each = f"{count} pours, each A {show(first.a)}, then B {show(first.b)}" if count > 1 else f"A {show(first.a)}, then B {show(first.b)}"
        say = f"Or mix {plan.least_shown()} or more at a time. On this scale: {each}, the ratio off by up to {plan.percent(plan.hold)}."
        return Headline("Finer scale", str(finer.text), f"{finer.unit} steps", say, "caution")
    say = f"Weigh A {show(first.a)}, then B {show(first.b)}."
    if count > 1:
        say = f"{count} pours: each A {show(first.a)}, then B {show(first.b)}."
    return Headline(f"Each of {count} pours" if count > 1 else "One pour", text, unit, say, "caution" if caution else "go")


def lines(plan: Plan) -> tuple[Line, ...]:
    """The pours one by one, then the totals."""
    job, show = plan.job, plan.mass
    unit = job.face.unit
    out: list[Line] = []
    if job.way == "kit":
        for part, other, mass in (("A", "B", plan.first.a), ("B", "A", plan.first.b)):
            note = f"while jug {other} is empty: {plan.percent(job.good)} off"
            out.append(Line.of(f"{part} may leave in its jug", show(job.face.down(mass * job.good)), note))
    elif plan.grade == "red":
        finer = plan.finer()
        pour = weighing.weighable(job.total, job.ratio, finer.si)
        face = face_of(finer.si, unit)
        out.append(Line("On that scale", f"A {face.show(pour.a).text}, then B {face.show(pour.b).text}", unit))
        return tuple(out)
    else:
        for number, pour in list(enumerate(plan.pours, 1))[:_LISTED]:
            out.append(Line(f"Pour {number}", f"A {show(pour.a).text}, then B {show(pour.b).text}", unit, _pour_note(plan, pour)))
        if len(plan.pours) > _LISTED:
            out.append(Line(f"Pours {_LISTED + 1} to {len(plan.pours)}", "the same", "", ""))
    if plan.given.choice("by") == "volume":
        a, b = (
            plan.given.write(mass / plan.given.si(name), "volume", "up") for mass, name in ((plan.first.a, "density_a"), (plan.first.b, "density_b"))
        )
        out.append(Line("The same in volume", f"A {a.text}, B {b.text}", b.unit, "a check by the marks on the bucket"))
    out.append(Line.of("A in all", show(sum(pour.a for pour in plan.pours))))
    out.append(Line.of("B in all", show(sum(pour.b for pour in plan.pours))))
    spare = plan.poured - job.total
    over = f"{plan.over()} over what you asked for" if spare > job.face.step_kg else ""
    out.append(Line.of("Mixed in all", show(plan.poured), over))
    if plan.within is not None:
        note = "each bucket, from when A meets B; it may well be so fast"
        out.append(Line.of("Mixed and poured within", plan.given.write(plan.within, "minutes", "down"), note))
    return tuple(out)


def limits(plan: Plan) -> tuple[Limit, ...]:
    """What the scale and the bucket take, and the smallest batch the scale holds."""
    job, given = plan.job, plan.given
    out = []
    if job.limit.scale is not None:
        why = f"It weighs up to {plan.capacity()}, and the bucket is {plan.mass(given.si('empty'))} of that."
        out.append(_rung(plan, "scale", "Scale, most in one pour", job.limit.scale, why))
    if job.limit.bucket is not None:
        size = given.write(given.si("bucket"), "large volume")
        why = f"{size} filled to {plan.percent(given.si('fill'))}, at {given.write(job.density, 'density')}."
        out.append(_rung(plan, "bucket", "Bucket, most in one pour", job.limit.bucket, why))
    why = f"Steps of {plan.mass(job.face.step_kg)} hold the ratio within {plan.percent(job.good)} from there up."
    least = plan.least_shown()
    out.append(Limit("step", "Scale, smallest batch", least.text, least.unit, why, rules=plan.grade == "red"))
    return tuple(out)


def changes(plan: Plan) -> tuple[Change, ...]:
    """What would give a finer ratio or fewer pours."""
    out = []
    count = len(plan.pours)
    if plan.grade != "green" or plan.hold > plan.job.good / 3:
        finer = plan.finer()
        least = weighing.smallest_batch(plan.job.ratio, finer.si, plan.job.good, standard("coverage"))
        shown = nice_mass(least, finer.unit)
        out.append(Change(f"A scale with {step_text(finer)} steps instead of {plan.mass(plan.job.face.step_kg)}", f"smallest batch {shown}"))
    if count > 1 and plan.job.way != "kit":
        share = plan.job.total / (count - 1)
        then = "1 pour" if count == 2 else f"{count - 1} pours"
        if plan.job.limit.rules == "bucket":
            then = then if plan.fits_scale(share) else f"{then}, on a bigger scale"
            out.append(Change(f"A bucket of {plan.bucket_for(share)}", then))
        elif plan.job.limit.rules == "scale":
            bigger = plan.mass(share + plan.given.si("empty"))
            out.append(Change(f"A scale for {bigger}", then if plan.fits_bucket(share) else f"{then}, in a bigger bucket"))
            if plan.fits_bucket(plan.job.total):
                out.append(Change("Weigh out of the jug, with the jug on the scale", "1 pour"))
    return tuple(out)


def band(plan: Plan) -> Band:
    """How well the scale holds the ratio; for a volume of resin, what it may weigh."""
    low, high = (plan.smallest.b * (1 + sign * plan.hold) for sign in (-1, 1))
    text = f"About 19 times in 20, this scale's steps keep the ratio within {plan.percent(plan.hold)}"
    text += f" (in the smallest pour, B may be {plan.mass(low).text} to {plan.mass(high)})."
    if plan.given.choice("known") == "volume" and not plan.given.typed("density") and plan.given.choice("by") == "weight":
        light, heavy = (plan.given.si("volume") * to_si(standard(name), "density", "g/mL") for name in ("density low", "density high"))
        text += f" That volume may weigh {plan.mass(light).text} to {plan.mass(heavy)}: the label's density would settle it."
    return Band(text, str(plan.mass(low)), str(plan.mass(high)))


def cautions(plan: Plan) -> tuple[Caution, ...]:
    """What may go wrong, each with its trigger."""
    job, given = plan.job, plan.given
    several = f" The {len(plan.pours)} pours here are what scale or bucket takes, not layers." if len(plan.pours) > 1 else ""
    text = f"All of it goes into the mould in one go only where 'How deep and how hot?' finds no stop. Else weigh one layer at a time.{several}"
    out = [Caution("layers", "caution", text)]
    if plan.grade == "amber":
        aim = f"{plan.percent(job.good)} is what to aim for"
        text = f"This scale holds the ratio of this batch only within {plan.percent(plan.hold)}; {aim}."
        out.append(Caution("coarse-scale", "caution", text))
    if given.choice("by") == "volume":
        a, b = given.ratio("ratio")
        wrong = b / a / job.ratio.b_per_a - 1
        text = f"That ratio is by volume. On the scale it is 100:{100 * job.ratio.b_per_a:.1f}"
        if abs(wrong) > job.good:
            text += f"; weighing {given.text('ratio')} would be {plan.percent(wrong)} {'too much' if wrong > 0 else 'too little'} B"
        out.append(Caution("ratio-by-volume", "caution", text + "."))
    if job.ratio.b > job.ratio.a:
        out.append(Caution("more-b", "caution", "More B than A is rare. Are the two swapped? Check that A stands first in the ratio."))
    if job.way == "kit" and off_ratio.grade(plan.kit_error, job.good, job.worst) == "amber":
        off = f"{plan.percent(plan.kit_error)} {'more' if plan.kit_error > 0 else 'less'} B"
        text = f"The jugs as labelled hold {off} than the ratio asks for. Ask the maker of the resin, or weigh."
        out.append(Caution("kit-off-ratio", "caution", text))
    if job.in_a and job.in_b:
        text = "Add it only while the mix is still liquid and cool, then mix it all again."
        out.append(Caution("met", "caution", text))
    if job.limit.bucket is None:
        out.append(Caution("bucket-not-checked", "caution", "Bucket size not given: whether a pour fits is not checked."))
    if job.way in ("decant", "kit") and given.maybe("jug") is None:
        text = f"Not checked: the fullest jug has to stand on a scale that weighs up to {plan.capacity()}."
        out.append(Caution("jug-not-checked", "caution", text))
    if plan.within is not None and plan.within < (alone := standard("mix shortest") * 60 if job.mixing is None else job.mixing):
        left, takes = given.write(plan.within, "minutes", "down"), given.write(alone, "minutes", "up")
        text = f"Too fast for a bucket: mixing alone takes {takes}, and this one has {left}. Take a slower resin."
        out.append(Caution("bucket-time", "stop", text))
    if len(plan.pours) > 1:
        text = "Mix the next pour only when the last one is out of the bucket. Each has its own clock."
        out.append(Caution("one-at-a-time", "caution", text))
    if given.system == "imperial":
        out.append(Caution("fluid-ounce", "caution", "A fluid ounce is a volume, not an ounce on a scale."))
    return tuple(out)


def no_room(given: Given, job: Job) -> Answer:
    """Not even a step of either part goes in: the bucket is too small for such a scale, or too heavy for it."""
    show = job.face.show
    values = {name: figure(None, "mass") for name in ("a", "b", "total")} | {"pours": figure(None, "count")}
    least = weighing.smallest_batch(job.ratio, job.step, job.good, standard("coverage"))
    values["smallest_batch"] = figure(show(weighing.weighable(least, job.ratio, job.face.step_kg).total), "mass", least)
    if job.limit.rules == "bucket":
        takes, step = given.write(job.net, "mass", "down"), given.write(job.step, "mass")
        say = f"Or a larger bucket: this one takes {takes} at a time, and the scale shows steps of {step}."
        return Answer(
            headline=Headline("Not on this scale", "Finer scale", "", say, "stop"),
            limits=(Limit("bucket", "Bucket, most in one pour", takes.text, takes.unit, "Too little for one step of each part.", rules=True),),
            changes=(Change("A scale with finer steps", "the same bucket will do"),),
            working=(Working("Room for resin", "bucket × fill share × density", f"{takes} against steps of {step}", "less than a step of each part"),),
            sources=("arithmetic",),
            values=values,
        )
    bucket, capacity = show(given.si("empty")), show(job.capacity)
    return Answer(
        headline=Headline(
            label="Not on this scale",
            text="Decant",
            unit="",
            say=f"Put the jug on the scale instead and let its figure fall, or use a bucket well under {capacity}.",
            tone="stop",
        ),
        limits=(
            Limit("scale", "Scale", "0", job.face.unit, f"It weighs up to {capacity}, and the bucket alone is {bucket}.", rules=True),
        ),
        changes=(Change("Weigh out of the jug", "the bucket no longer loads the scale"),),
        working=(Working("Room for resin", "capacity − bucket", f"{capacity} − {bucket}", str(show(job.capacity - given.si("empty")))),),
        sources=("arithmetic",),
        values=values,
    )


def _kit_headline(plan: Plan, fits: off_ratio.Grade) -> Headline:
    count = len(plan.pours)
    if fits == "red":
        error = f"{plan.percent(plan.kit_error)} {'over' if plan.kit_error > 0 else 'short'} in B"
        needed = plan.mass(plan.first.a * plan.job.ratio.b_per_a)
        say = f"Weigh A {plan.mass(plan.first.a)} and B {needed} out of each kit: whole jugs are {error}."
        return Headline("Do not tip in whole jugs", "Weigh", "", say, "stop")
    say = "Tip in all of A, weigh its emptied jug, then all of B, and weigh that jug too."
    if count > 1:
        say = f"One kit at a time. {say}"
    return Headline("Whole kits", str(count), "kit" if count == 1 else "kits", say, "go" if fits == "green" else "caution")


def _too_big(plan: Plan) -> Headline:
    job, first = plan.job, plan.first
    bigger = plan.bucket_for(first.total)
    if job.way == "kit":
        say = f"A whole kit needs a bucket of {bigger}, brim-full. Or weigh it out in smaller pours."
        return Headline("Bigger bucket", bigger.text, bigger.unit, say, "stop")
    say = f"A and B have met: tip it all into a bucket of {bigger} now, and add what is missing there. {_what_is_missing(plan)}"
    return Headline("Bigger bucket", bigger.text, bigger.unit, say, "stop")


def _what_is_missing(plan: Plan) -> str:
    add_a, add_b = plan.first.a - plan.job.in_a, plan.first.b - plan.job.in_b
    half = plan.job.face.step_kg / 2
    adds = [f"{part} {plan.mass(add)}" for part, add in (("A", add_a), ("B", add_b)) if add > half]
    say = f"Add {both(adds)}." if adds else "Nothing is missing: it is on ratio."
    if plan.grown:
        say += f" It makes {plan.mass(plan.poured)}, {plan.over()} more than you asked for."
    return say


def _pour_note(plan: Plan, pour: Parts) -> str:
    """What the scale shows: with the bucket on it and nothing tared away, where the bucket's weight is known."""
    job = plan.job
    if job.way != "pour":
        return f"{plan.mass(pour.total)} mixed"
    if job.empty is None:
        return f"bucket set to 0, the scale shows {plan.mass(pour.a).text}, then {plan.mass(pour.total)}"
    return f"the scale shows {plan.mass(job.empty + pour.a).text}, then {plan.mass(job.empty + pour.total)} with the bucket"


def _rung(plan: Plan, id: str, name: str, mass: float, why: str) -> Limit:
    shown = plan.mass(plan.job.face.down(mass))
    rules = plan.grade != "red" and (plan.too_big or (len(plan.pours) > 1 and plan.job.way != "kit")) and plan.job.limit.rules == id
    return Limit(id, name, shown.text, shown.unit, why, rules)
