"""What every screen of a mixing run is made with: the state, the clock, and buttons in the scale's own steps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from calc.casting.standards import standard
from calc.quantity.writing import Shown
from calc.runs import button
from calc.runs._mix_state import OUT_OF_THE_BUCKET, State

LAST_STOP = "Last cheap moment to stop: is all of checklist C1 done?"


def press(kind: str, label: str, type_: str, **details: Any) -> dict[str, Any]:
    """A button that appends one event; ``kind`` as in :func:`calc.runs.button`."""
    name = f"{type_}-tared" if details.get("tared") else type_
    return button(name, label, kind, {"type": type_, **details})


@dataclass(frozen=True)
class View:
    """A state at a moment; ``now`` in epoch seconds."""

    state: State
    now: float

    @property
    def pot_ends(self) -> float | None:
        """When this bucket is to be poured, by its mass; None with no clock, or nothing met."""
        return self._after_met(1.0)

    @property
    def pot_warns(self) -> float | None:
        """When most of that time is over: the same share of it as of a sheet's."""
        return self._after_met(standard("working share"))

    @property
    def overdue(self) -> bool:
        """Its time is over, and resin is still in the bucket."""
        return self._past(self.pot_ends)

    @property
    def hurry(self) -> bool:
        """Little of its time is left."""
        return self._past(self.pot_warns) and not self.overdue

    def mass(self, kg: float) -> Shown:
        """A mass as the scale shows it."""
        return self.state.job.face.show(kg)

    def big(self, label: str, kg: float) -> dict[str, str]:
        """The figure to read from afar."""
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
        """The button for a scale that switched itself off."""
        return press("other", "The scale went off", "off")

    def _after_met(self, share: float) -> float | None:
        within = self.state.within
        return None if self.state.met is None or within is None else self.state.met + share * within

    def _past(self, moment: float | None) -> bool:
        return moment is not None and self.now > moment and self.state.phase not in OUT_OF_THE_BUCKET
