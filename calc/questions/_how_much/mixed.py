"""A and B are mixed and the ratio was off: its class, what that means, and what can still be done."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from calc.answers import Answer, Band, Caution, Change, Figure, Headline, Limit, Line, Tone, Working, figure
from calc.casting import off_ratio, weighing
from calc.casting.batch import Job
from calc.casting.mixing import Parts
from calc.casting.off_ratio import Grade, consequences
from calc.casting.standards import standard
from calc.quantity.writing import Shown, Style
from calc.questions import Given
from calc.words import inside

_TONES: Mapping[Grade, Tone] = {"green": "go", "amber": "caution", "red": "stop"}
_FINE = ("share", Style("%", step=0.1))
_TRAY = "spread it shallow in a metal tray, outside, clear of all that burns"


@dataclass(frozen=True)
class Mixed:
    """A batch that has been stirred together."""

    given: Given
    job: Job

    @property
    def inside(self) -> Parts:
        """What is in the bucket, kg."""
        return Parts(self.job.in_a, self.job.in_b)

    @property
    def error(self) -> float:
        """How far B is over or short, a fraction."""
        return off_ratio.ratio_error(self.inside, self.job.ratio)

    @property
    def grade(self) -> Grade:
        """Its class."""
        return off_ratio.grade(self.error, self.job.good, self.job.worst)

    @property
    def hold(self) -> float:
        """How far the scale's steps alone may move it, a fraction."""
        return standard("coverage") * weighing.ratio_uncertainty(self.inside, weighing.net_uncertainty(self.job.step))

    @property
    def short(self) -> str:
        """The part that is short."""
        return off_ratio.correction(self.inside, self.job.ratio).part

    @property
    def add(self) -> Parts:
        """What to add, kg: nothing within the good tolerance, or less than the scale shows."""
        mended = self.job.mended
        return Parts(mended.a - self.inside.a, mended.b - self.inside.b)

    @property
    def nothing(self) -> bool:
        """There is nothing to add."""
        return self.add.total < self.job.face.step_kg / 2

    def off(self, error: float) -> str:
        """``B 5.3 % over``."""
        shown = self.percent(error)
        return "B on ratio" if float(shown.text) == 0 else f"B {shown} {'over' if error > 0 else 'short'}"

    def percent(self, error: float) -> Shown:
        """The size of an error, in tenths of a percent."""
        return self.given.write(abs(error), _FINE)

    def share(self, fraction: float) -> str:
        """A limit: ``5 %``."""
        return str(self.given.write(fraction, "share")).replace(".0 ", " ")

    @property
    def class_words(self) -> str:
        """Where the error stands against the limits."""
        job = self.job
        if job.tolerance_from_sheet:
            return f"{'within' if self.grade == 'green' else 'past'} the sheet's {self.share(job.good)}"
        if self.grade == "green":
            return f"within the {self.share(job.good)} to weigh to"
        if self.grade == "amber":
            return f"past the {self.share(job.good)} to weigh to, within the {self.share(job.worst)} that makers allow at the very worst"
        return f"past the {self.share(job.worst)} that makers allow at the very worst"

    @property
    def rows(self) -> tuple[Mapping[str, str], ...]:
        """What it comes to if it stays."""
        return () if self.grade == "green" else consequences(self.error)

    def meaning(self) -> str:
        """The same, in one sentence."""
        texts = "; ".join(row["text"] for row in self.rows)
        side = "little" if self.error < 0 else "much"
        return f"Left as it is, too {side} B (where B is the hardener) can mean: {texts}. How much of it for each percent is not known."

    def limits(self) -> tuple[Limit, ...]:
        """The classes, as a ladder."""
        job = self.job
        if job.tolerance_from_sheet:
            return (Limit("good", "The sheet allows", self.share(job.good), "", "Its own figure goes before any other.", rules=self.grade == "red"),)
        why = "Two makers' advice; a lopsided ratio (10:1) is more sensitive than 1:1."
        return (
            Limit("good", "Weigh to within", self.share(job.good), "", why, rules=self.grade == "amber"),
            Limit("worst", "At the very worst", self.share(job.worst), "", "Beyond it the batch is off ratio.", rules=self.grade == "red"),
        )

    def band(self) -> Band:
        """What the scale's steps leave open."""
        low, high = self.error - self.hold, self.error + self.hold
        text = f"By this scale's steps, about 19 times in 20 it is between {inside(self.off(low))} and {inside(self.off(high))}."
        return Band(text, self.off(low), self.off(high))

    def cautions(self) -> tuple[Caution, ...]:
        """What it means; that nothing can be taken out; the label."""
        out = [Caution("off-ratio", _TONES[self.grade], self.meaning())] if self.rows else []
        out.append(Caution("one-way", "caution", "Mixed resin can only be added to: nothing comes back out, and more hardener never hurries a good batch."))
        return tuple(out)

    def working(self) -> tuple[Working, ...]:
        """The error, and what corrects it."""
        show, ratio = self.job.face.show, self.job.ratio
        numbers = f"({show(self.inside.b)} / {show(self.inside.a)}) / ({ratio.b:.4g} / {ratio.a:.4g}) − 1"
        error = Working("How far off", "(mB / mA) / (b / a) − 1", numbers, f"{100 * self.error:+.2f} %")
        fix = off_ratio.correction(self.inside, ratio)
        formula = "mA b/a − mB" if fix.part == "B" else "mB a/b − mA"
        first, second = (self.inside.a, self.inside.b) if fix.part == "B" else (self.inside.b, self.inside.a)
        parts = (ratio.b, ratio.a) if fix.part == "B" else (ratio.a, ratio.b)
        numbers = f"{show(first)} × {parts[0]:.4g} / {parts[1]:.4g} − {show(second)}"
        return error, Working(f"{fix.part} missing", formula, numbers, str(show(fix.mass)))

    def values(self) -> dict[str, Figure]:
        """Figures of the mixed batch."""
        show = self.job.face.show
        return {
            "ratio_error": figure(self.given.write(self.error, _FINE), "share", self.error),
            "add_a": figure(show(self.add.a), "mass", self.add.a),
            "add_b": figure(show(self.add.b), "mass", self.add.b),
        }


def added(answer: Answer, job: Job, given: Given) -> Answer:
    """The answer for a mixed batch that is still thin and cool: what to add now.

    Parameters
    ----------
    answer : for the batch as it will be, and the pours after it.
    job : with what is in the bucket; given : for the units.

    Returns
    -------
    Answer
    """
    case = Mixed(given, job)
    show, mended = job.face.show, job.mended
    after = off_ratio.ratio_error(mended, job.ratio)
    lines = [Line("As it is", case.off(case.error), "", case.class_words)]
    changes: tuple[Change, ...] = ()
    if case.nothing:
        say = f"{case.off(case.error)}, {case.class_words}."
        if case.grade != "green":
            say += " What is missing is less than this scale shows."
        headline = Headline("Already mixed", "Add nothing", "", say, "go" if case.grade == "green" else "caution")
    else:
        mass = show(case.add.total)
        minutes = f"{standard('mix shortest'):g} to {standard('mix longest'):g} min" if job.mixing is None else str(given.write(job.mixing, "minutes"))
        say = f"Weigh it in a clean cup, tip all of it in and mix again, {minutes}. Only while everything is thin and cool: {case.off(case.error)} now."
        headline = Headline(f"Add {case.short} now", mass.text, mass.unit, say, "stop" if case.grade == "red" else "caution")
        lines.append(Line.of("It makes", show(mended.total), f"then {inside(case.off(after))}"))
        changes = (Change(f"No {case.short} left: leave it as it is", f"{case.off(case.error)}, {case.class_words}"),)
    if mended.total > job.net * (1 + 1e-9):
        lines.append(Line("Over the fill line", "Bigger bucket", "", "tip all of it over first, then add"))
    later = job.pours()[1:]
    if later:
        label = "Pour 2" if len(later) == 1 else f"Pours 2 to {len(later) + 1}, each"
        text = f"A {show(later[0].a).text}, then B {show(later[0].b).text}"
        lines.append(Line(label, text, job.face.unit, "in a fresh bucket, never into this one"))
    return _with(answer, case, headline, lines, changes)


def fresh(answer: Answer, job: Job, given: Given) -> Answer:
    """The answer for a mixed batch that is thick or warm: nothing goes in any more.

    Parameters
    ----------
    answer : for a fresh batch of all that is wanted.
    job : with what is in the bucket; given : for the units.

    Returns
    -------
    Answer
    """
    case = Mixed(given, job)
    lines = [Line("As it is", case.off(case.error), "", case.class_words)]
    if case.grade == "green":
        say = f"{case.off(case.error)}: nothing is missing. Pour it at once if it still runs thin, else {_TRAY}."
        headline = Headline("Mixed, thick or warm", "Add nothing", "", say, "stop")
        return _with(answer, case, headline, lines, ())
    say = f"{_TRAY[0].upper()}{_TRAY[1:]}, and weigh a fresh batch: {inside(answer.headline.say)}"
    headline = Headline("Mixed, thick or warm", "Add nothing", "", f"{say} {case.off(case.error)}, and it is too late to mix more in.", "stop")
    lines += answer.lines
    return _with(answer, case, headline, lines, ())


def _with(answer: Answer, case: Mixed, headline: Headline, lines: list[Line], changes: tuple[Change, ...]) -> Answer:
    """The plan's answer with the mixed batch's own parts in front."""
    return replace(
        answer,
        headline=headline,
        lines=tuple(lines),
        limits=case.limits(),
        changes=changes,
        band=case.band(),
        cautions=(*case.cautions(), *(caution for caution in answer.cautions if caution.id in ("fluid-ounce", "two-scales"))),
        working=(*case.working(), *answer.working),
        sources=tuple(dict.fromkeys((*answer.sources, "army-two-part", *(row["source"] for row in case.rows)))),
        values=answer.values | case.values(),
    )
