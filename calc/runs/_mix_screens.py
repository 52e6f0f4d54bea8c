"""The words and buttons of a mixing run, step by step; see :mod:`calc.runs.mix`."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from calc.casting import mixing, weighing
from calc.casting.mixing import Parts
from calc.casting.standards import standard
from calc.quantity import Shown
from calc.runs import Screen, button, undo
from calc.runs._mix_state import OUT_OF_THE_BUCKET, STEPS, State, fix_by_amount, half_step, how_far_off, shown_for

_MINUTE = 60.0
#: An error of the ratio that is not worth a word.
_ON_RATIO = 0.0005


def _button(kind: str, label: str, type_: str, **details: Any) -> dict[str, Any]:
    name = f"{type_}-tared" if details.get("tared") else type_
    return button(name, label, kind, {"type": type_, **details})


@dataclass(frozen=True)
class MixScreen:
    """Words and buttons for a state."""

    state: State
    now: float
    started: bool
    error: str

    def screen(self) -> Screen:
        state, job = self.state, self.state.job
        screen: Screen = {
            "id": "mix",
            "title": self.title(),
            "step": "",
            "progress": self.progress(),
            "ended": state.phase == "end",
            "big": None,
            "say": "",
            "note": "",
            "tone": "plain",
            "buttons": [],
            "totals": self.totals(),
            "clocks": self.clocks(),
            "items": [],
            "cautions": [],
            "errors": [{"field": "reading", "code": "refused", "message": self.error, "given": ""}] if self.error else [],
            "record": list(state.record),
            "carry": self.carry(),
        }
        screen |= self.doubt() if state.doubt is not None else _SCREENS[(job.way, state.phase)](self)
        if self.overdue:
            screen["tone"] = "stop"
            if state.phase in ("mix", "second", "clear", "colour", "pour"):
                screen["note"] = f"{_OVERDUE_WAY_OUT} Still thin and cool? {screen['say']}"
                screen["say"] = _OVERDUE
                screen["buttons"].append(_button("danger", "Too thick or warm: do not pour it", "discard"))
            elif state.phase in ("b", "fix", "left-b") and state.doubt is None:
                screen["note"] = f"Thick, stringy or warm: into the tray. Still thin and cool? {screen['say']}"
                screen["say"] = "Past the working time."
                screen["buttons"].append(_button("danger", "Too thick or warm: do not pour it", "discard"))
        if self.started:
            screen["buttons"].append(undo("Undo"))
        return screen

    # --- parts of every screen ---

    def title(self) -> str:
        state = self.state
        if state.phase == "end":
            return "All poured"
        count = len(state.done) + len(state.todo)
        return f"Pour {state.number} of {count}" if count > 1 else "One pour"

    def progress(self) -> list[int]:
        state = self.state
        steps = STEPS[state.job.way]
        pours = len(state.done) + len(state.todo)
        if state.phase == "end":
            return [pours * len(steps), pours * len(steps)]
        phase = state.back_to if state.phase == "off" else state.phase
        index = next(n for n, group in enumerate(steps) if phase in group)
        return [len(state.done) * len(steps) + index + 1, pours * len(steps)]

    def totals(self) -> list[dict[str, str]]:
        state, show = self.state, self.state.job.face.show
        if state.phase == "end":
            return [
                {
                    "label": f"Pour {number}: B {how_far_off(pour.error)}" if pour.checked else f"Pour {number}: not checked",
                    "text": f"A {show(pour.parts.a).text} + B {show(pour.parts.b).text}",
                    "unit": state.job.face.unit,
                }
                for number, pour in enumerate(state.done, 1)
            ]
        rows = [("A in the bucket", state.a), ("B in the bucket", state.b), ("In the mould", state.poured)]
        return [{"label": label, "text": show(mass).text, "unit": state.job.face.unit} for label, mass in rows if mass > 0]

    @property
    def pot_ends(self) -> float | None:
        state = self.state
        return None if state.met is None or state.job.working is None else state.met + state.job.working

    @property
    def overdue(self) -> bool:
        return self.pot_ends is not None and self.now > self.pot_ends and self.state.phase not in OUT_OF_THE_BUCKET

    def clocks(self) -> list[dict[str, Any]]:
        state, job = self.state, self.state.job
        clocks: list[dict[str, Any]] = []
        if state.met is None or state.phase in OUT_OF_THE_BUCKET:
            return clocks
        ends = self.pot_ends
        clocks.append(
            {
                "id": "pot",
                "label": "Since A met B" if ends is None else "Pour within",
                "starts": state.met,
                "ends": ends,
                "warns": None if job.working is None else state.met + standard("working share") * job.working,
                "overdue_label": "Overdue by",
                "alarm": ends is not None,
            }
        )
        if state.phase == "mix" and not self.overdue:
            seconds = job.mixing if job.mixing is not None else standard("mix longest") * _MINUTE
            label = {"label": "Mix on for", "overdue_label": "Mixing time over by"}
            clocks.append({"id": "mix", "starts": state.since, "ends": state.since + seconds, "warns": None, "alarm": False} | label)
        return clocks

    def carry(self) -> list[dict[str, Any]]:
        """What the checklists of the same batch begin with: when A met B, last."""
        state = self.state
        met = state.met if state.met is not None and not state.discarded else state.met_before
        return [] if met is None else [{"type": "mixed", "at": met}]

    def mass(self, kg: float) -> Shown:
        return self.state.job.face.show(kg)

    def big(self, label: str, kg: float) -> dict[str, str]:
        shown = self.mass(kg)
        return {"label": label, "text": shown.text, "unit": shown.unit}

    def ask(self, type_: str, label: str, prompt: str, start: float | None, kind: str = "other") -> dict[str, Any]:
        """A button that opens the keypad, filled with ``start`` kg."""
        face = self.state.job.face
        return {
            "id": f"{type_}-typed",
            "label": label,
            "kind": kind,
            "event": {"type": type_, "unit": face.unit},
            "ask": {
                "label": prompt,
                "unit": face.unit,
                "kind": "number",
                "field": "reading",
                "start": "" if start is None else self.mass(start).text,
                "step": face.step_text,
                "choices": [],
            },
        }

    def scale_off(self) -> dict[str, Any]:
        return _button("other", "The scale went off", "off")

    # --- the steps ---

    def base_pour(self) -> Screen:
        state = self.state
        inside = state.a + state.b
        put = "Put the bucket on the scale, with what is in it." if inside else "Put the empty bucket on the scale."
        if state.empty is None:
            put += " Set it to 0, or key in what it shows."
        buttons = []
        start: float | None = None
        if state.empty is not None:
            start = state.empty + inside
            buttons.append(_button("main", f"It shows {self.mass(start)}", "base"))
        buttons.append(_button("other" if buttons else "main", "It shows 0", "base", tared=True))
        buttons.append(self.ask("base", "It shows something else", "The scale shows", start))
        note = "No need to set it to 0: the figures here count the bucket in."
        if state.empty is None:
            note = "Write the empty bucket's weight down: it saves the batch if the scale switches itself off."
        if state.number > 1:
            note += " Old resin in a bucket sets the new one off sooner: take a clean one."
        big = None if start is None else self.big("The scale should show", start)
        return {"step": "Bucket", "say": put, "note": note, "big": big, "buttons": buttons}

    def base_decant(self) -> Screen:
        part = "A" if self.state.target.a - self.state.a > half_step(self.state) else "B"
        return {
            "step": f"Jug of {part}",
            "say": f"Put the jug of {part} on the scale.",
            "note": "Weigh out of the jug: its figure falls as you pour.",
            "buttons": [
                _button("main", "It shows 0", "base", tared=True),
                self.ask("base", "It shows something else", "The scale shows", None),
            ],
        }

    def a(self) -> Screen:
        state = self.state
        target = shown_for(state, "a", state.target.a)
        decant = state.job.way == "decant"
        return {
            "step": "Weigh A",
            "big": self.big("The jug falls to" if decant else "The scale goes up to", target),
            "say": "Pour A out of the jug." if decant else "Pour A in, slowly at the end.",
            "note": f"A {self.mass(state.target.a - state.a)} goes in.",
            "buttons": [
                _button("main", "Done as shown", "a"),
                self.ask("a", "It shows something else", "The scale shows", target),
                self.scale_off(),
            ],
        }

    def a_over(self) -> Screen:
        state = self.state
        planned = state.todo[0]
        target = shown_for(state, "a", planned.a)
        out = self.mass(state.a - planned.a)
        return {
            "step": "Too much A",
            "tone": "caution",
            "big": self.big("The jug comes up to" if state.job.way == "decant" else "The scale comes down to", target),
            "say": f"Take {out} of clean A back out.",
            "note": "With its B it would be more than the scale or the bucket takes.",
            "buttons": [
                _button("main", "Done as shown", "a"),
                self.ask("a", "It shows something else", "The scale shows", target),
                self.scale_off(),
            ],
        }

    def meet(self) -> Screen:
        state = self.state
        planned = state.todo[0]
        part = {"step": "B is next", "tone": "caution", "say": _LAST_STOP}
        buttons: list[dict[str, Any]] = []
        if state.job.way == "decant":
            start = "Then put the jug of B on the scale. The clock starts when you press."
            buttons = [
                _button("main", "It shows 0: pour B", "meet", tared=True),
                self.ask("meet", "It shows something else", "The scale shows", None),
            ]
            big = self.big("B needed", state.target.b - state.b)
        else:
            start = "The clock starts when you press."
            buttons = [_button("main", "B goes in now", "meet")]
            big = self.big("The scale will go up to", shown_for(state, "b", state.target.b))
        if state.a < planned.a - half_step(state):
            buttons.append(_button("other", f"First add the missing A: {self.mass(planned.a - state.a)}", "more-a"))
        if state.job.way == "pour":
            buttons.append(self.scale_off())
        return part | {"big": big, "note": f"{self.changed(planned)} {start}", "buttons": buttons}

    def changed(self, planned: Parts) -> str:
        """What an A that is not as planned does to B and to the total."""
        state = self.state
        difference = state.a - planned.a
        if abs(difference) < half_step(state):
            return f"B {self.mass(state.target.b)} goes in."
        total = state.target.total - planned.total
        what = f"A is {self.mass(abs(difference))} {'over' if difference > 0 else 'short'}."
        then = f" B is now {self.mass(state.target.b)} instead of {self.mass(planned.b)}."
        return what + then + f" This pour comes out {self.mass(abs(total))} {'bigger' if total > 0 else 'smaller'}."

    def b(self) -> Screen:
        state = self.state
        target = shown_for(state, "b", state.target.b)
        decant = state.job.way == "decant"
        return {
            "step": "Weigh B",
            "big": self.big("The jug falls to" if decant else "The scale goes up to", target),
            "say": "Pour B out of the jug." if decant else "Pour B in, slowly at the end.",
            "note": f"B {self.mass(state.target.b - state.b)} for the A that is in.",
            "buttons": [
                _button("main", "Done as shown", "b"),
                self.ask("b", "It shows something else", "The scale shows", target),
                self.scale_off(),
            ],
        }

    def fix(self) -> Screen:
        state, job = self.state, self.state.job
        error = mixing.ratio_error(state.parts, job.ratio)
        fix = mixing.correction(state.parts, job.ratio)
        amber = mixing.grade(error, job.good, job.worst) == "amber"
        by_amount = fix_by_amount(state)
        target = fix.mass if by_amount else state.base + state.a + state.b + fix.mass
        total = state.a + state.b + fix.mass
        worst = "Within the worst that makers allow, but not right." if amber else "Off ratio."
        note = f"B is {how_far_off(error)}. {worst} Add {fix.part} {self.mass(fix.mass)}: it makes {self.mass(total)}."
        if total > job.net:
            note += " That is over the fill line: have a bigger bucket at hand."
        prompt = f"{fix.part} added" if by_amount else "The scale shows"
        buttons = [
            _button("main", f"Added: {self.mass(target)}" if by_amount else "Done as shown", "fix"),
            self.ask("fix", "Other amount" if by_amount else "It shows something else", prompt, target),
        ]
        if amber:
            buttons.append(_button("other", f"Go on with B {how_far_off(error)}", "accept"))
        buttons.append(_button("danger", "It cannot be put right", "give-up"))
        label = f"Add {fix.part}, weighed in a clean cup" if by_amount else "The scale goes up to"
        return {
            "step": f"Add {fix.part}",
            "tone": "caution" if amber else "stop",
            "big": self.big(label, target),
            "say": f"Add {fix.part} now, while all of it is still liquid.",
            "note": note,
            "buttons": buttons,
        }

    def give_up(self) -> Screen:
        state = self.state
        error = mixing.ratio_error(state.parts, state.job.ratio)
        return {
            "step": "Off ratio",
            "tone": "stop",
            "say": f"B is {how_far_off(error)}. Spread it in the tray; it is not for the mould.",
            "note": "Off ratio it may stay soft or sticky for good. The label's tolerance comes first.",
            "buttons": [
                _button("main", "Back: add what is missing", "back"),
                _button("danger", "Spread it in the tray", "discard"),
                _button("danger", f"Use it with B {how_far_off(error)}: my call", "use"),
            ],
        }

    def mix(self) -> Screen:
        state, job = self.state, self.state.job
        error = mixing.ratio_error(state.parts, job.ratio)
        how_long = "The sheet's mixing time."
        if job.mixing is None:
            shortest, longest = standard("mix shortest"), standard("mix longest")
            how_long = f"{shortest:g} to {longest:g} min by hand (common practice). The sheet's time comes first."
        ratio = ""
        if job.way != "kit" or state.full_b is not None:
            ratio = f" Weighed: B {how_far_off(error)}." if abs(error) >= _ON_RATIO else " Weighed: on ratio."
        return {
            "step": "Mix",
            "tone": "go",
            "say": "Scrape walls and floor. Fold it, do not whip.",
            "note": how_long + ratio,
            "buttons": [_button("main", "Mixed", "mixed")],
        }

    def second(self) -> Screen:
        return {
            "step": "Second bucket",
            "tone": "go",
            "say": "Tip it into a second clean bucket, and stir again.",
            "note": "Let it drain, but do not scrape the wall film over: that is where unmixed resin hides.",
            "buttons": [_button("main", "In the second bucket, stirred", "second")],
        }

    def clear(self) -> Screen:
        return {
            "step": "Clear?",
            "tone": "go",
            "say": "No streaks against the light? Only then colour.",
            "note": "Mixed clear first: colour hides streaks.",
            "buttons": [
                _button("main", "Clear: colour goes in", "colour"),
                _button("other", "Clear: no colour", "plain"),
                _button("other", "Streaks: stir on", "streaks"),
            ],
        }

    def colour(self) -> Screen:
        return {
            "step": "Colour",
            "tone": "go",
            "say": "Stir the colour in, walls and floor too.",
            "note": "Write down the weight of colour for the next pour.",
            "buttons": [_button("main", "One even colour", "coloured")],
        }

    def pour(self) -> Screen:
        return {
            "step": "Pour",
            "tone": "go",
            "say": "Pour to the mark, and stop there.",
            "note": "What clings to the bucket stays there: do not drain it into the mould.",
            "buttons": [_button("main", "Poured", "poured")],
        }

    def tray(self) -> Screen:
        last = len(self.state.todo) == 1 and not self.state.discarded
        return {
            "step": "Leftovers",
            "tone": "go",
            "say": "Spread what is left in the shallow tray, now.",
            "note": "A full bucket is what gets hot. Look at your gloves: splashed or half an hour old, peel them.",
            "buttons": [_button("main", "Spread: all poured" if last else "Spread: next pour", "tray")],
        }

    def end(self) -> Screen:
        state = self.state
        return {
            "step": "Done",
            "big": self.big("Mixed and poured", state.poured),
            "say": "Watch the cure: checklist C3.",
            "note": " ".join((*self.shortfall(), *state.record)),
        }

    def shortfall(self) -> tuple[str, ...]:
        short = self.state.job.total - self.state.poured
        return (f"That is {self.mass(short)} less than you asked for.",) if short > 2 * self.state.job.face.step_kg else ()

    def full(self) -> Screen:
        part = self.state.phase[-1].upper()
        return {
            "step": f"Full jug of {part}",
            "say": f"Put the full jug of {part} on the scale, lid off.",
            "note": "What the jugs weigh before and after is the only check that all of it went in.",
            "buttons": [
                self.ask("full", "Key in what it shows", "The scale shows", None, kind="main"),
                _button("other", "Go on without weighing", "skip"),
            ],
        }

    def tip_a(self) -> Screen:
        return {
            "step": "All of A",
            "say": "Tip all of A into the bucket. Let the jug drain.",
            "note": f"About {self.mass(self.state.target.a)}.",
            "buttons": [_button("main", "A is in", "tipped")],
        }

    def left(self) -> Screen:
        state = self.state
        part = state.phase[-1]
        full = state.full_a if part == "a" else state.full_b
        assert full is not None  # the phase is only entered with a full jug weighed
        target = weighing.emptied_jug(full, getattr(state.target, part))
        return {
            "step": f"Emptied jug of {part.upper()}",
            "big": self.big("The emptied jug weighs", target),
            "say": f"Put the emptied jug of {part.upper()} back on the scale.",
            "note": "Heavier? Let it drain on." if part == "b" else "B is worked out from the A that really went in.",
            "buttons": [
                _button("main", "As shown", "left"),
                self.ask("left", "It shows something else", "The scale shows", target),
            ],
        }

    def meet_kit(self) -> Screen:
        state = self.state
        big = None
        note = "Tip all of B in, and let the jug drain."
        if state.full_b is not None:
            big = self.big("Jug of B falls to", weighing.emptied_jug(state.full_b, state.target.b))
            note = f"Tip B in: {self.mass(state.target.b)} for the A that went in."
        return {
            "step": "B is next",
            "tone": "caution",
            "big": big,
            "say": _LAST_STOP,
            "note": f"{note} The clock starts when you press.",
            "buttons": [_button("main", "B goes in now", "meet")],
        }

    def off(self) -> Screen:
        state = self.state
        buttons: list[dict[str, Any]] = []
        if state.job.way == "decant":
            buttons.append(_button("main", "Nothing poured since: it shows 0", "off-zero"))
            buttons.append(self.ask("off-reading", "Nothing poured since: it shows", "The jug shows", None))
            note = "If some was poured since, weigh the bucket: less its empty weight, that is what is in it."
        else:
            buttons.append(_button("main", "Nothing poured since: it shows 0", "off-zero"))
            if state.empty is not None:
                buttons.append(self.ask("off-reading", "Bucket off, scale to 0, bucket back on", "The scale shows", None))
                note = f"The empty bucket weighs {self.mass(state.empty)}, so nothing is lost."
            else:
                buttons.append(self.ask("twin", "Weigh an empty bucket like it", "The empty bucket weighs", None))
                note = "If some was poured since, the empty weight is needed: weigh a bucket like this one."
        return {
            "step": "Scale went off",
            "tone": "caution",
            "say": "Switch it on with everything still on it.",
            "note": note,
            "buttons": buttons,
        }

    def doubt(self) -> Screen:
        """A weight far from its target: asked about, not believed."""
        event = self.state.doubt
        assert event is not None  # only called with a doubt
        given = f"{event.get('reading')} {event.get('unit') or self.state.job.face.unit}"
        return {
            "step": "Is that right?",
            "tone": "caution",
            "big": {"label": "You keyed in", "text": str(event.get("reading")), "unit": str(event.get("unit") or "")},
            "say": "That is far from what was to be weighed.",
            "note": "Look at the scale again.",
            "buttons": [
                button("again", "No: key it in again", "main", None),
                button("sure", f"Yes: {given}", "other", {key: value for key, value in event.items() if key != "at"} | {"sure": True}),
            ],
        }


_LAST_STOP = "Last cheap moment to stop: is all of checklist C1 done?"
_OVERDUE = "Past the working time. Thick, stringy or warm: it does not go into the mould."
_OVERDUE_WAY_OUT = "Spread it in the tray. Smoke: get out, card E1b."

_WEIGHING: Mapping[str, Callable[[MixScreen], Screen]] = {
    "a": MixScreen.a, "a-over": MixScreen.a_over, "meet": MixScreen.meet, "b": MixScreen.b, "off": MixScreen.off,
}  # fmt: skip
_COMMON: Mapping[str, Callable[[MixScreen], Screen]] = {
    "fix": MixScreen.fix, "give-up": MixScreen.give_up, "mix": MixScreen.mix, "second": MixScreen.second, "clear": MixScreen.clear,
    "colour": MixScreen.colour, "pour": MixScreen.pour, "tray": MixScreen.tray, "end": MixScreen.end,
}  # fmt: skip
_BY_WAY: Mapping[str, Mapping[str, Callable[[MixScreen], Screen]]] = {
    "pour": {"base": MixScreen.base_pour} | dict(_WEIGHING) | dict(_COMMON),
    "decant": {"base": MixScreen.base_decant} | dict(_WEIGHING) | dict(_COMMON),
    "kit": {
        "full-a": MixScreen.full, "full-b": MixScreen.full, "a": MixScreen.tip_a, "left-a": MixScreen.left, "meet": MixScreen.meet_kit,
        "left-b": MixScreen.left,
    } | dict(_COMMON),
}  # fmt: skip
_SCREENS: Mapping[tuple[str, str], Callable[[MixScreen], Screen]] = {
    (way, phase): show for way, phases in _BY_WAY.items() for phase, show in phases.items()
}
