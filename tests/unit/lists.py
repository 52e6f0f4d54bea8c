"""What the tests of the checklists share: a plan for each list, its screen, and its presses."""

from __future__ import annotations

import json
from typing import Any

from calc import desk
from calc.safety.checklists import all_checklists

LISTS = ("C0", "C1", "C2", "C3", "C4", "C5", "C6", "C7", "C8", "C9", "C10", "C11")
#: A plan with every figure there and none past its limit.
FINE = {
    "depth": "40 mm", "sheet_depth": "50 mm", "own_depth": "55 mm", "mass": "2200 g", "sheet_mass": "5 kg", "moulds_take": "3 kg",
    "working": "60 min", "handling": "20 min", "room": "21 C", "resin": "21 C", "lowest": "18 C", "highest": "25 C",
    "ratio_by": "same", "ratio": "100:45", "weighed_a": "1000 g", "weighed_b": "450 g", "tolerance": "2 %", "beneath": "none",
    "mask": "tight", "filters": "sheet", "filter_hours": "2 h", "filter_schedule": "8 h", "filter_date": "yes",
    "shaved": "yes", "fit_tested": "yes", "sealed": "yes", "tray_length": "500 mm", "tray_width": "400 mm",
    "planned_peak": "45 C", "hottest": "30 C", "earliest": "8 h", "latest": "24 h", "surface": "22 C",
    "solvent": "30 mL", "room_length": "4 m", "room_width": "3 m", "room_height": "2.5 m", "put_away": "yes", "wiped_dry": "yes",
}  # fmt: skip
POT = {"pressure": "3 bar", "rated": "4 bar", "relief": "4 bar", "hose": "10 bar", "gauge_scale": "7 bar", "demould": "24 h"}
VACUUM = {"chamber": "yes", "pump": "5 min", "hands": "10 min", "working": "60 min", "batch": "500 g", "bucket": "2 L", "deepest": "98 kPa"}
LATHE = {
    "then": "rough", "age": "80 h", "leave": "24 h", "full": "72 h", "sheet_temperature": "20 C", "coolest": "20 C", "hard": "yes",
    "hold": "glue", "tailstock": "yes", "mount": "100 mm", "least": "80 mm", "overhang": "40 mm", "sound": "yes",
    "sweeps": "290 mm", "swing": "300 mm", "balanced": "500 rpm", "ceiling": "450 rpm", "highest": "3000 rpm", "sand_ceiling": "400 rpm", "speed": "350 rpm",
    "mask": "tight", "filters": "particles", "filter_date": "yes", "shaved": "yes", "fit_tested": "yes", "sealed": "yes",
    "noise": "94", "heard": "1 h", "loose": "10 g",
}  # fmt: skip
PLANS = {id: LATHE if id in ("C4", "C5", "C6", "C7") else FINE for id in LISTS} | {"C8": POT, "C9": VACUUM}
END = "No stop found - your call"


def screen(id: str, events: list[dict[str, Any]], inputs: dict[str, str] | None = None, now: float | None = None) -> dict[str, Any]:
    at = max([event["at"] for event in events], default=0.0) if now is None else now
    request = {"call": "run", "args": {"id": id, "inputs": inputs or {}, "units": "metric", "events": events, "now": at}}
    reply = json.loads(desk.handle(json.dumps(request)))
    assert reply["ok"], reply
    result: dict[str, Any] = reply["result"]
    return result


def press(shown: dict[str, Any], number: int, at: float, which: int = 0, **more: Any) -> dict[str, Any]:
    return {**shown["items"][number - 1]["buttons"][which]["event"], "at": at, **more}


def press_all(id: str, inputs: dict[str, str] | None = None) -> list[dict[str, Any]]:
    """The main press of every line in order, then the end."""
    events: list[dict[str, Any]] = []
    for number in range(1, len(all_checklists()[id].items) + 1):
        events.append(press(screen(id, events, inputs), number, 10.0 * number))
    shown = screen(id, events, inputs)
    end = next(button for button in shown["buttons"] if button["id"] == "end")
    return [*events, {**end["event"], "at": 10.0 * (len(events) + 1)}]
