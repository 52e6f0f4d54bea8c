"""How much to weigh? A and B for a batch, split into pours that the scale and the bucket can take."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from calc.answers import Answer, Band, Caution, Change, Headline, Limit, Line, Working, figure
from calc.casting import mixing
from calc.casting.batch import Job, ScaleFace, Way, face_of
from calc.casting.mixing import Parts
from calc.casting.mixing import Ratio as Proportion
from calc.casting.standards import standard
from calc.errors import InputError
from calc.fields import Choice, Option, Ratio, measure
from calc.quantity import Shown, Style, from_si, read, to_si, trimmed, write
from calc.questions import Given, Question, Rule, Table
from calc.words import both

_BY_WEIGHT = (("by", ("weight",)),)
_BY_VOLUME = (("by", ("volume",)),)
_KIT = ("how", ("kit",))
_WEIGHED = (("how", ("pour", "decant")),)
#: The pours are listed one by one up to this many.
_LISTED = 4

FIELDS = (
    Choice(
        name="known",
        label="What I know is",
        options=(Option("weight", "the weight"), Option("volume", "the volume")),
        default="weight",
    ),
    measure("total", "Mixed resin wanted", "g", 1, 200_000, usual=(20, 50_000), hint="A and B together.", when=(("known", ("weight",)),)),
    measure("volume", "Volume of mixed resin wanted", "mL", 1, 200_000, usual=(20, 50_000), hint="A and B together.", when=(("known", ("volume",)),)),
    Ratio(name="ratio", label="Ratio A:B", hint="A first, as on the label: 100:45 or 2:1."),
    Choice(
        name="by",
        label="The label gives that ratio",
        hint="The two differ. The label says which.",
        options=(Option("weight", "by weight"), Option("volume", "by volume")),
    ),
    measure(
        "density_a", "Density of A", "g/mL", 0.7, 2.5,
        usual=(0.85, 1.6), hint="From the data sheet: a ratio by volume needs both to be weighed.", when=_BY_VOLUME,
    ),
    measure("density_b", "Density of B", "g/mL", 0.7, 2.5, usual=(0.85, 1.6), hint="From the data sheet.", when=_BY_VOLUME),
    measure(
        "capacity", "The scale weighs up to", "g", 50, 300_000,
        usual=(200, 150_000), default=(f"{standard('scale capacity') * 1000:g}", "11 lb"), basis="practice",
    ),
    measure("step", "The scale shows steps of", "g", 0.001, 500, usual=(0.01, 50), default=(f"{standard('scale step'):g}", "0.1"), basis="practice"),
    measure("bucket", "Mixing bucket, full to the brim", "L", 0.05, 200, usual=(0.1, 60), required=False),
    Choice(
        name="how",
        label="How it is weighed",
        options=(
            Option("pour", "Into the bucket, on the scale"),
            Option("decant", "Out of the jug, on the scale", "The jug stands on the scale and its figure falls."),
            Option("kit", "Whole kits, both jugs tipped in", "Checked by what the emptied jugs weigh."),
        ),
        default="pour",
        fold=True,
    ),
    measure(
        "empty", "Empty bucket weighs", "g", 1, 20_000,
        usual=(5, 5_000), hint="Weighed and written down, it saves the batch when the scale switches itself off.",
        default=(f"{standard('empty bucket'):g}", "9"), basis="judgement", fold=True, when=(("how", ("pour",)),),
    ),
    measure(
        "jug", "Fullest jug weighs", "g", 10, 300_000,
        hint="It has to stand on the scale.", required=False, fold=True, when=(("how", ("decant", "kit")),),
    ),
    measure("kit_a", "A in one kit", "g", 10, 300_000, hint="From the label.", fold=True, when=(_KIT, *_BY_WEIGHT)),
    measure("kit_b", "B in one kit", "g", 5, 300_000, fold=True, when=(_KIT, *_BY_WEIGHT)),
    measure("kit_a_volume", "A in one kit", "L", 0.01, 300, hint="From the label.", fold=True, when=(_KIT, *_BY_VOLUME)),
    measure("kit_b_volume", "B in one kit", "L", 0.005, 300, fold=True, when=(_KIT, *_BY_VOLUME)),
    measure(
        "in_a", "A already in the bucket", "g", 0, 200_000,
        hint="Poured too much? Type what is in it.", required=False, fold=True, when=_WEIGHED,
    ),
    measure("in_b", "B already in the bucket", "g", 0, 200_000, required=False, fold=True, when=_WEIGHED),
    measure(
        "fill", "Fill the bucket to", "%", 10, 100,
        hint="Room to stir without spilling.", default=f"{standard('bucket fill') * 100:g}", basis="practice", fold=True,
    ),
    measure(
        "density", "Density of the mixed resin", "g/mL", 0.7, 2.5,
        usual=(0.95, 1.6), hint="The label's figure is better.",
        default=f"{standard('density usual'):.2f}", basis="practice", fold=True, when=_BY_WEIGHT,
    ),
    measure(
        "tolerance", "The sheet lets the ratio be off by", "%", 0.1, 20,
        usual=(0.5, 10), hint="Where the sheet is silent: 2 %, and 5 % at the very worst.", required=False, fold=True,
    ),
    measure(
        "working", "Working time on the sheet", "min", 2, 1_440,
        usual=(5, 600), hint="For the clock. Slow deep-pour systems often give 40 to 60 min (common practice).", required=False, fold=True,
    ),
    measure(
        "mixing", "Mixing time on the sheet", "min", 0.5, 60,
        usual=(1, 20), hint="Where the sheet is silent: 3 to 5 min by hand (common practice).", required=False, fold=True,
    ),
)

WORDS = {
    "heavy-jug": "{label}: {given} is more than the scale weighs. Use a bigger scale, or weigh into the bucket.",
}


def job_of(given: Given) -> Job:
    """The job in SI, from the fields; also what the step-by-step run goes by.

    Examples
    --------
    >>> from calc.fields import Typed
    >>> inputs = {"total": "2600", "ratio": "100:45", "by": "weight", "bucket": "1.5", "capacity": "2000", "empty": "60"}
    >>> given, _ = QUESTION.parse({name: Typed(text) for name, text in inputs.items()}, "metric", {})
    >>> len(job_of(given).pours())
    2
    """
    a, b = given.ratio("ratio")
    if given.choice("by") == "volume":
        density_a, density_b = given.si("density_a"), given.si("density_b")
        ratio = mixing.ratio_by_weight(a, b, density_a, density_b)
        density = mixing.mixed_density(ratio, density_a, density_b)
    else:
        ratio, density = Proportion(a, b), given.si("density")
    total = given.si("total") if given.choice("known") == "weight" else given.si("volume") * density
    way = _way(given)
    capacity = given.si("capacity")
    sheet = given.maybe("tolerance")
    return Job(
        total=total,
        ratio=ratio,
        face=_face(given),
        step=given.si("step"),
        capacity=capacity,
        limit=mixing.pour_limit(
            scale_capacity=capacity if way == "pour" else None,
            empty_bucket=given.si("empty") if way == "pour" else 0.0,
            bucket_volume=given.maybe("bucket"),
            fill_share=given.si("fill"),
            density=density,
        ),
        density=density,
        good=standard("ratio good") if sheet is None else sheet,
        worst=standard("ratio worst") if sheet is None else sheet,
        tolerance_from_sheet=sheet is not None,
        way=way,
        in_a=given.maybe("in_a") or 0.0,
        in_b=given.maybe("in_b") or 0.0,
        empty=given.si("empty") if given.typed("empty") else None,
        working=given.maybe("working"),
        mixing=given.maybe("mixing"),
        kit=_kit(given),
    )


def _way(given: Given) -> Way:
    chosen = given.choice("how")
    return "decant" if chosen == "decant" else "kit" if chosen == "kit" else "pour"


def _face(given: Given) -> ScaleFace:
    """A unit written after the step is the scale's own; else the page's system says it."""
    unit = given.pick("g", "oz")
    return face_of(given.si("step"), read("step", given.text("step"), "mass", unit).unit)


def _kit(given: Given) -> Parts | None:
    if given.choice("how") != "kit":
        return None
    if given.choice("by") == "weight":
        return Parts(given.si("kit_a"), given.si("kit_b"))
    return Parts(
        given.si("kit_a_volume") * given.si("density_a"),
        given.si("kit_b_volume") * given.si("density_b"),
    )


def work(given: Given) -> Answer:
    """Answer the question; a stop leads with what would make it possible."""
    job = job_of(given)
    jug = given.maybe("jug")
    if jug is not None and jug > job.capacity:
        raise InputError("jug", "heavy-jug", given=str(job.face.show(jug)))
    if not job.weighable:
        return _no_room(given, job)
    pours = job.pours()
    if job.way != "kit" and not job.in_b and pours[0].total > job.net:
        planned = replace(job, in_a=0.0).pours()
        return _Weighing(given, job, planned, take_out=job.in_a - planned[0].a).answer()
    return _Weighing(given, job, pours).answer()


def _no_room(given: Given, job: Job) -> Answer:
    """The bucket alone is more than the scale weighs."""
    show = job.face.show
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
            Limit("scale", "Scale", "0", job.face.unit, f"it weighs up to {capacity}, and the bucket alone is {bucket}", rules=True),
        ),
        changes=(Change("Weigh out of the jug", "the bucket no longer loads the scale"),),
        working=(Working("Room for resin", "capacity − bucket", f"{capacity} − {bucket}", str(show(job.capacity - given.si("empty")))),),
        sources=("arithmetic",),
        values={name: figure(None, "mass") for name in ("a", "b", "total", "smallest_batch")} | {"pours": figure(None, "count")},
    )


@dataclass(frozen=True)
class _Weighing:
    """The answer's parts for one job that can be weighed."""

    given: Given
    job: Job
    pours: tuple[Parts, ...]
    #: Clean A that has to leave the bucket first, kg.
    take_out: float = 0.0

    # --- figures ---------------------------------------------------------------------------------

    @property
    def first(self) -> Parts:
        return self.pours[0]

    @property
    def later(self) -> Parts | None:
        """A pour after the first, where it differs from the first."""
        return self.pours[1] if len(self.pours) > 1 and self.pours[1] != self.first else None

    @property
    def smallest(self) -> Parts:
        return min(self.pours, key=lambda pour: pour.total)

    @property
    def poured(self) -> float:
        return sum(pour.total for pour in self.pours)

    @property
    def hold(self) -> float:
        """What the scale may make of the ratio of the smallest pour, as a fraction."""
        return standard("coverage") * mixing.ratio_uncertainty(self.smallest, mixing.net_uncertainty(self.job.step))

    @property
    def grade(self) -> mixing.Grade:
        return mixing.grade(self.hold, self.job.good, self.job.worst)

    @property
    def least(self) -> float:
        """The smallest batch that this scale holds to the good tolerance, kg."""
        return mixing.smallest_batch(self.job.ratio, self.job.step, self.job.good, standard("coverage"))

    @property
    def kit_error(self) -> float:
        return mixing.ratio_error(self.first, self.job.ratio) if self.job.way == "kit" else 0.0

    @property
    def too_big(self) -> bool:
        """The first pour is past the limit, by what is in the bucket or by the kit's own size."""
        return bool(self.take_out) or self.first.total > self.job.net * (1 + 1e-9)

    def mass(self, kg: float) -> Shown:
        return self.job.face.show(kg)

    def capacity(self) -> Shown:
        return write(self.job.capacity, ("mass", Style(self.job.face.unit, figures=4)), rounding="down")

    def least_shown(self) -> Shown:
        """The smallest batch, up to the scale's next step."""
        return self.mass(mixing.weighable(self.least, self.job.ratio, self.job.face.step_kg).total)

    def percent(self, fraction: float) -> str:
        return str(self.given.write(abs(fraction), "share")).replace(".0 ", " ")

    def litres(self, volume: float) -> Shown:
        return self.given.write(volume, "large volume", "up")

    def bucket_for(self, mass: float) -> Shown:
        """The bucket that takes ``mass`` kg below its fill line."""
        return self.litres(mass / self.job.density / self.given.si("fill"))

    def finer(self) -> Shown:
        """The next scale step (1, 2, 5) that holds the ratio of the smallest pour."""
        job = self.job
        wanted = mixing.coarsest_step(self.smallest.total, job.ratio, job.good, standard("coverage"))
        if wanted >= job.step:
            wanted = job.step / 10
        return _nice_step(wanted, job.face.unit)

    # --- the answer ------------------------------------------------------------------------------

    def answer(self) -> Answer:
        job = self.job
        return Answer(
            headline=self.headline(),
            lines=self.lines(),
            limits=self.limits(),
            changes=self.changes(),
            band=self.band(),
            cautions=self.cautions(),
            working=self.working(),
            sources=self.sources(),
            values={
                "a": figure(self.mass(self.first.a), "mass", self.first.a),
                "b": figure(self.mass(self.first.b), "mass", self.first.b),
                "total": figure(self.mass(self.poured), "mass", self.poured),
                "pours": figure(self.given.write(len(self.pours), "count"), "count"),
                "limit": figure(None if job.limit.rules == "" else self.mass(job.net), "mass", job.net if job.limit.rules else None),
                "smallest_batch": figure(self.least_shown(), "mass", self.least),
                "ratio_held": figure(self.given.write(self.hold, "share"), "share", self.hold),
                "b_per_100_a": figure(self.given.write(100 * job.ratio.b_per_a, ("count", Style("", step=0.1))), "count"),
                "mixed_density": figure(self.given.write(job.density, "density"), "density", job.density),
            },
            extra={
                "batch_kg": max(pour.total for pour in self.pours),
                "ratio_by": self.given.choice("by"),
                "ratio_held": self.hold,
                "ratio_tolerance": job.good if job.tolerance_from_sheet else None,
                "working_s": job.working,
            },
        )

    def headline(self) -> Headline:
        show, first, unit = self.mass, self.first, self.job.face.unit
        if self.take_out:
            out = show(self.take_out)
            say = f"Take {out} of clean A back out: {show(first.a)} stays in, then B {show(first.b)}."
            return Headline("Take A back out", out.text, out.unit, say, "stop")
        if self.too_big:
            return self.stop_too_big()
        if self.grade == "red":
            finer = self.finer()
            say = f"Weigh this batch on a scale with {finer} steps, or mix {self.least_shown()} or more on this one."
            return Headline("Finer scale", str(finer.text), f"{finer.unit} steps", say, "stop")
        tone = mixing.grade(self.kit_error, self.job.good, self.job.worst)
        if self.job.way == "kit":
            return self.kit_headline(tone)
        count = len(self.pours)
        caution = self.grade == "amber" or self.grown
        text = f"A {show(first.a).text} + B {show(first.b).text}"
        if self.job.in_a or self.job.in_b:
            return Headline(
                "Pour 1, in the bucket in the end" if count > 1 else "In the bucket in the end",
                text,
                unit,
                self.say_what_is_missing(),
                "caution" if caution else "go",
            )
        say = f"Weigh A {show(first.a)}, then B {show(first.b)}."
        if count > 1:
            say = f"{count} pours: each A {show(first.a)}, then B {show(first.b)}."
        return Headline(f"Each of {count} pours" if count > 1 else "One pour", text, unit, say, "caution" if caution else "go")

    @property
    def grown(self) -> bool:
        """What is in the bucket makes the batch bigger than was asked for."""
        return len(self.pours) == 1 and self.poured > self.job.total + 2 * self.job.face.step_kg and bool(self.job.in_a or self.job.in_b)

    def say_what_is_missing(self) -> str:
        add_a, add_b = self.first.a - self.job.in_a, self.first.b - self.job.in_b
        half = self.job.face.step_kg / 2
        adds = [f"{part} {self.mass(add)}" for part, add in (("A", add_a), ("B", add_b)) if add > half]
        say = f"Add {both(adds)}." if adds else "Nothing is missing: it is on ratio."
        if self.grown:
            say += f" It makes {self.mass(self.poured)}, {self.mass(self.poured - self.job.total)} more than you asked for."
        return say

    def stop_too_big(self) -> Headline:
        job, first = self.job, self.first
        bigger = self.bucket_for(first.total)
        if job.way == "kit":
            say = f"A whole kit needs a bucket of {bigger}, brim-full. Or weigh it out in smaller pours."
            return Headline("Bigger bucket", bigger.text, bigger.unit, say, "stop")
        say = f"A and B have met: tip it all into a bucket of {bigger} now, and add what is missing there. {self.say_what_is_missing()}"
        return Headline("Bigger bucket", bigger.text, bigger.unit, say, "stop")

    def kit_headline(self, fits: mixing.Grade) -> Headline:
        count = len(self.pours)
        if fits == "red":
            error = f"{self.percent(self.kit_error)} {'over' if self.kit_error > 0 else 'short'} in B"
            needed = self.mass(self.first.a * self.job.ratio.b_per_a)
            say = f"Weigh A {self.mass(self.first.a)} and B {needed} out of each kit: whole jugs are {error}."
            return Headline("Do not tip in whole jugs", "Weigh", "", say, "stop")
        say = "Tip in all of A, weigh its emptied jug, then all of B, and weigh that jug too."
        if count > 1:
            say = f"One kit at a time. {say}"
        return Headline("Whole kits", str(count), "kit" if count == 1 else "kits", say, "go" if fits == "green" else "caution")

    def lines(self) -> tuple[Line, ...]:
        job, show = self.job, self.mass
        unit = job.face.unit
        out: list[Line] = []
        if job.way == "kit":
            for part, other, mass in (("A", "B", self.first.a), ("B", "A", self.first.b)):
                note = f"while jug {other} is empty: {self.percent(job.good)} off"
                out.append(Line.of(f"{part} may leave in its jug", show(job.face.down(mass * job.good)), note))
        elif self.grade == "red":
            finer = self.finer()
            pour = mixing.weighable(job.total, job.ratio, finer.si)
            face = face_of(finer.si, unit)
            out.append(Line("On that scale", f"A {face.show(pour.a).text}, then B {face.show(pour.b).text}", unit))
            return tuple(out)
        else:
            for number, pour in list(enumerate(self.pours, 1))[:_LISTED]:
                out.append(Line(f"Pour {number}", f"A {show(pour.a).text}, then B {show(pour.b).text}", unit, self.pour_note(pour)))
            if len(self.pours) > _LISTED:
                out.append(Line(f"Pours {_LISTED + 1} to {len(self.pours)}", "the same", "", ""))
        if self.given.choice("by") == "volume":
            a, b = (self.litres(mass / self.given.si(name)) for mass, name in ((self.first.a, "density_a"), (self.first.b, "density_b")))
            out.append(Line("The same in volume", f"A {a.text}, B {b.text}", b.unit, "a check by the marks on the bucket"))
        out.append(Line.of("A in all", show(sum(pour.a for pour in self.pours))))
        out.append(Line.of("B in all", show(sum(pour.b for pour in self.pours))))
        spare = self.poured - job.total
        over = f"{show(spare)} over what you asked for" if spare > job.face.step_kg else ""
        out.append(Line.of("Mixed in all", show(self.poured), over))
        if job.working is not None:
            within = self.given.write(job.working * standard("working share"), "minutes", "down")
            note = f"{self.percent(standard('working share'))} of the working time, from when A meets B"
            out.append(Line.of("Mixed and poured within", within, note))
        return tuple(out)

    def pour_note(self, pour: Parts) -> str:
        """What the scale shows with the bucket on it and nothing tared away."""
        job = self.job
        if job.way != "pour" or job.empty is None:
            return f"{self.mass(pour.total)} mixed"
        return f"the scale shows {self.mass(job.empty + pour.a).text}, then {self.mass(job.empty + pour.total)} with the bucket"

    def limits(self) -> tuple[Limit, ...]:
        job, given = self.job, self.given
        out = []
        if job.limit.scale is not None:
            why = f"it weighs up to {self.capacity()}, and the bucket is {self.mass(given.si('empty'))} of that"
            out.append(self.rung("scale", "Scale, most in one pour", job.limit.scale, why))
        if job.limit.bucket is not None:
            size = given.write(given.si("bucket"), "large volume")
            why = f"{size} filled to {self.percent(given.si('fill'))}, at {given.write(job.density, 'density')}"
            out.append(self.rung("bucket", "Bucket, most in one pour", job.limit.bucket, why))
        why = f"{self.mass(job.face.step_kg)} steps hold the ratio within {self.percent(job.good)} from there up"
        least = self.least_shown()
        out.append(Limit("step", "Scale, smallest batch", least.text, least.unit, why, rules=self.grade == "red"))
        return tuple(out)

    def rung(self, id: str, name: str, mass: float, why: str) -> Limit:
        shown = self.mass(self.job.face.down(mass))
        rules = self.grade != "red" and (self.too_big or (len(self.pours) > 1 and self.job.way != "kit")) and self.job.limit.rules == id
        return Limit(id, name, shown.text, shown.unit, why, rules)

    def changes(self) -> tuple[Change, ...]:
        out = []
        count = len(self.pours)
        if self.grade != "green" or self.hold > self.job.good / 3:
            finer = self.finer()
            least = mixing.smallest_batch(self.job.ratio, finer.si, self.job.good, standard("coverage"))
            shown = _nice_mass(least, finer.unit)
            out.append(Change(f"A scale with {finer} steps instead of {self.mass(self.job.face.step_kg)}", f"smallest batch {shown}"))
        if count > 1 and self.job.way != "kit":
            share = self.job.total / (count - 1)
            then = "1 pour" if count == 2 else f"{count - 1} pours"
            if self.job.limit.rules == "bucket":
                then = then if self.fits_scale(share) else f"{then}, on a bigger scale"
                out.append(Change(f"A bucket of {self.bucket_for(share)}", then))
            elif self.job.limit.rules == "scale":
                bigger = self.mass(share + self.given.si("empty"))
                out.append(Change(f"A scale for {bigger}", then if self.fits_bucket(share) else f"{then}, in a bigger bucket"))
                if self.fits_bucket(self.job.total):
                    out.append(Change("Weigh out of the jug, with the jug on the scale", "1 pour"))
        return tuple(out)

    def fits_scale(self, mass: float) -> bool:
        return self.job.limit.scale is None or mass <= self.job.limit.scale

    def fits_bucket(self, mass: float) -> bool:
        return self.job.limit.bucket is None or mass <= self.job.limit.bucket

    def band(self) -> Band:
        low, high = (self.smallest.b * (1 + sign * self.hold) for sign in (-1, 1))
        text = f"About 19 times in 20, this scale's steps keep the ratio within {self.percent(self.hold)}"
        text += f" (in the smallest pour, B as if {self.mass(low).text} to {self.mass(high)})."
        if self.given.choice("known") == "volume" and not self.given.typed("density") and self.given.choice("by") == "weight":
            light, heavy = (self.given.si("volume") * to_si(standard(name), "density", "g/mL") for name in ("density low", "density high"))
            text += f" That volume may weigh {self.mass(light).text} to {self.mass(heavy)}: the label's density would settle it."
        return Band(text, str(self.mass(low)), str(self.mass(high)))

    def cautions(self) -> tuple[Caution, ...]:
        job, given = self.job, self.given
        out = []
        if self.grade == "amber":
            aim = f"{self.percent(job.good)} is what to aim for"
            text = f"This scale holds the ratio of this batch only within {self.percent(self.hold)}; {aim}."
            out.append(Caution("coarse-scale", "caution", text))
        if given.choice("by") == "volume":
            a, b = given.ratio("ratio")
            wrong = b / a / job.ratio.b_per_a - 1
            text = f"That ratio is by volume. On the scale it is 100:{100 * job.ratio.b_per_a:.1f}"
            if abs(wrong) > job.good:
                text += f"; weighing {given.text('ratio')} would be {self.percent(wrong)} {'too much' if wrong > 0 else 'too little'} B"
            out.append(Caution("ratio-by-volume", "caution", text + "."))
        if job.ratio.b > job.ratio.a:
            out.append(Caution("more-b", "caution", "More B than A is rare. Check that A stands first in the ratio."))
        if job.way == "kit" and mixing.grade(self.kit_error, job.good, job.worst) == "amber":
            off = f"{self.percent(self.kit_error)} {'more' if self.kit_error > 0 else 'less'} B"
            text = f"The jugs as labelled hold {off} than the ratio asks for. Ask the maker of the resin, or weigh."
            out.append(Caution("kit-off-ratio", "caution", text))
        if job.in_a and job.in_b:
            text = "A and B have met: add what is missing now, mix again, and only while it is still liquid and cool."
            out.append(Caution("met", "caution", text))
        if job.limit.bucket is None:
            out.append(Caution("bucket-not-checked", "caution", "Bucket size not given: whether a pour fits is not checked."))
        if job.way in ("decant", "kit") and given.maybe("jug") is None:
            text = f"Not checked: the fullest jug has to stand on a scale that weighs up to {self.capacity()}."
            out.append(Caution("jug-not-checked", "caution", text))
        if len(self.pours) > 1:
            text = "Mix the next pour only when the last one is out of the bucket. Each has its own clock."
            out.append(Caution("one-at-a-time", "caution", text))
        text = "Both parts by scale, never by eye. A fluid ounce is a volume, not an ounce on a scale. The label wins over this page."
        out.append(Caution("by-eye", "caution", text))
        return tuple(out)

    def working(self) -> tuple[Working, ...]:
        job, given, face = self.job, self.given, self.job.face
        ratio, first = job.ratio, self.first
        density = given.write(job.density, ("density", Style("g/mL", step=0.0001)))
        out = []
        if given.choice("by") == "volume":
            a, b = given.ratio("ratio")
            ra, rb = (given.write(given.si(name), ("density", Style("g/mL", step=0.001))).text for name in ("density_a", "density_b"))
            out.append(Working("Ratio by weight", "w = v × ρB / ρA", f"100 × {b:g}/{a:g} × {rb} / {ra}", f"100:{ratio.b:.2f}"))
            numbers = f"{100 + ratio.b:.2f} / (100/{ra} + {ratio.b:.2f}/{rb})"
            out.append(Working("Density of the mix", "ρ = (mA + mB) / (mA/ρA + mB/ρB)", numbers, str(density)))
        if given.choice("known") == "volume":
            volume = given.write(given.si("volume"), "volume")
            out.append(Working("Weight wanted", "M = ρ V", f"{density} × {volume}", str(self.mass(job.total))))
        if job.way != "kit":
            share = mixing.split(job.total / len(self.pours), ratio)
            fine = ScaleFace(face.unit, face.step / 10)
            if job.limit.rules and self.later is None and not (job.in_a or job.in_b):
                numbers = f"ceil({self.mass(job.total).text} / {self.mass(job.net).text})"
                out.append(Working("Pours", "n = ceil(M / limit), and one more where rounding needs it", numbers, str(len(self.pours))))
            if not (job.in_a or job.in_b):
                formula = "mA = (M/n) a/(a+b), up to the scale's next step"
                numbers = f"{self.mass(job.total).text}/{len(self.pours)} × {ratio.a:.4g}/{ratio.a + ratio.b:.4g}"
                numbers += f" = {fine.show(share.a).text}"
                out.append(Working("A in each pour", formula, numbers, str(self.mass(first.a))))
            exact = first.a * ratio.b_per_a
            numbers = f"{self.mass(first.a).text} × {ratio.b:.4g}/{ratio.a:.4g} = {fine.show(exact).text}"
            out.append(Working("B from that A", "mB = mA b/a, to the nearest step", numbers, str(self.mass(first.b))))
        u = mixing.net_uncertainty(job.step)
        out.append(Working("One weighing", "u = d / √6", f"{self.mass(job.step).text} / √6", _fine(u, face.unit)))
        fine_u = _fine(u, face.unit)
        numbers = f"2 × √(({fine_u} / {self.mass(self.smallest.a)})² + ({fine_u} / {self.mass(self.smallest.b)})²)"
        out.append(Working("Ratio held within", "k u(R)/R = k √((u/mA)² + (u/mB)²), k = 2", numbers, self.percent(self.hold)))
        numbers = f"2 × {fine_u} × {ratio.a + ratio.b:.4g} × √(1/{ratio.a:.4g}² + 1/{ratio.b:.4g}²) / {self.percent(job.good)}"
        formula = "M = k u (a+b) √(1/a² + 1/b²) / τ"
        out.append(Working("Smallest batch", formula, numbers, str(_nice_mass(self.least, face.unit))))
        return tuple(out)

    def sources(self) -> tuple[str, ...]:
        keys = ["arithmetic", "gum"]
        if not self.job.tolerance_from_sheet:
            keys.append("resin-makers")
        return (*keys, "judgement")


def _fine(mass: float, unit: str) -> str:
    """A small mass with three figures."""
    return f"{from_si(mass, 'mass', unit):.3g} {unit}"


def _nice_mass(mass: float, unit: str) -> Shown:
    """A mass with three figures, upwards."""
    return write(mass, ("mass", Style(unit, figures=3)), rounding="up")


def _nice_step(step: float, unit: str) -> Shown:
    """The next finer step that scales come with: 1, 2 or 5 times a power of ten."""
    value = from_si(step, "mass", unit) * (1 + 1e-9)
    decade = 10.0 ** math.floor(math.log10(value))
    nice = next(digit * decade for digit in (5, 2, 1) if digit * decade <= value)
    return Shown(trimmed(f"{nice:.6f}"), unit, to_si(nice, "mass", unit))


def _cell(answer: Answer) -> str:
    """``A 334 + B 167``, and how many times."""
    if answer.headline.tone == "stop":
        return "needs a finer scale"
    pours = answer.values["pours"].si or 0
    text = answer.headline.text
    return text if pours == 1 else f"{text}, {pours:.0f} times"


#: A plain weighing into an empty bucket: what the rules below are about.
_POURED = {"known": "weight", "total": "2600 g", "by": "weight", "how": "pour", "in_a": "0", "in_b": "0"}

QUESTION = Question(
    id="how-much-to-weigh",
    name="How much to weigh?",
    moment="at the bench",
    order=20,
    summary="A and B for a batch, split to fit the scale and the bucket.",
    lead="How much of A and of B to weigh, in how many pours, and whether this scale is good enough for it.",
    fields=FIELDS,
    work=work,
    words=WORDS,
    table=Table(
        caption="A and B to weigh for a ratio by weight",
        rows=("total", (("100", "250", "500", "1000", "2000", "4000"), ("8", "16", "32", "64", "128", "160"))),
        columns=("ratio", ("1:1", "2:1", "100:45", "100:30")),
        fixed={"by": "weight", "capacity": ("5000", "11 lb"), "step": ("1", "0.1")},
        cell=_cell,
        note="On a scale that weighs 5 kg in 1 g steps (11 lb in 0.1 oz). A goes up to the next step. The label's ratio must be by weight.",
    ),
    rules=(
        Rule("total", "pours", "falls", given=_POURED, refusal=1e9, why="more resin never needs fewer pours"),
        Rule("capacity", "pours", "rises", given=_POURED, refusal=1e9, why="a scale that weighs more never needs more pours"),
        Rule("bucket", "pours", "rises", given=_POURED, refusal=1e9, why="a bigger bucket never needs more pours"),
        Rule("empty", "pours", "falls", given=_POURED, refusal=1e9, why="a heavier bucket never needs fewer pours"),
        Rule("step", "smallest_batch", "falls", given=_POURED, refusal=1e9, why="coarser steps never allow a smaller batch"),
        Rule("tolerance", "smallest_batch", "rises", given=_POURED, refusal=1e9, why="a wider tolerance never asks for a bigger batch"),
    ),
)
