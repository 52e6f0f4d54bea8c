"""Gates and checklists by property: more of a hazard never ends a stop, a gap never passes, and no press is a shortcut."""

from __future__ import annotations

import json
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from calc import desk
from calc.quantity.kinds import SYSTEMS
from calc.safety import gates, wording
from calc.safety.findings import State

figures = st.floats(1e-4, 1e3, allow_nan=False)
maybe = st.none() | figures
grows = st.floats(1.0, 50.0)
RANK = {State.CLEAR: 0, State.UNCHECKED: 1, State.STOP: 2}


@given(figures, maybe, grows)
def test_a_deeper_layer_never_ends_a_stop(depth: float, limit: float | None, factor: float) -> None:
    assert RANK[gates.pour.depth(depth * factor, limit).state] >= RANK[gates.pour.depth(depth, limit).state]


@given(figures, maybe, maybe, grows)
def test_a_heavier_batch_never_ends_a_stop(mass: float, sheet: float | None, moulds: float | None, factor: float) -> None:
    assert RANK[gates.pour.batch(mass * factor, sheet, moulds).state] >= RANK[gates.pour.batch(mass, sheet, moulds).state]


@given(figures, maybe, st.floats(0.1, 1.0), grows)
def test_more_time_at_the_bucket_never_ends_a_stop(handling: float, working: float | None, share: float, factor: float) -> None:
    longer = gates.pour.working_time(handling * factor, working, share)
    assert RANK[longer.state] >= RANK[gates.pour.working_time(handling, working, share).state]


@given(figures, maybe, maybe, maybe, maybe, grows)
def test_more_pressure_never_ends_a_stop(
    planned: float, pot: float | None, relief: float | None, hose: float | None, gauge: float | None, factor: float
) -> None:
    more = gates.vessels.pot_pressure(planned * factor, pot, relief, hose, gauge)
    assert RANK[more.state] >= RANK[gates.vessels.pot_pressure(planned, pot, relief, hose, gauge).state]


@given(figures, maybe, maybe, maybe, grows, st.booleans())
def test_more_speed_never_ends_a_stop(
    speed: float, ceiling: float | None, highest: float | None, marked: float | None, factor: float, must_be_read: bool
) -> None:
    more, less = (gates.lathe.dial(rpm, ceiling, highest, marked, marked=must_be_read) for rpm in (speed * factor, speed))
    assert RANK[more.state] >= RANK[less.state]
    assert RANK[gates.lathe.out_of_balance(speed * factor, ceiling).state] >= RANK[gates.lathe.out_of_balance(speed, ceiling).state]


@given(st.sampled_from(["mould", "rough", "sand", "use"]), figures, maybe, maybe, st.sampled_from([None, True, False]), maybe, maybe, grows)
def test_a_younger_casting_never_ends_a_stop(
    then: str, age: float, leave: float | None, full: float | None, hard: bool | None, coolest: float | None, sheet: float | None, factor: float
) -> None:
    younger, older = (gates.shop.cured(then, hours, leave, full, hard, coolest, sheet) for hours in (age, age * factor))
    assert RANK[younger.state] >= RANK[older.state]


@given(st.sampled_from([None, "glue", "faceplate", "chuck", "centres"]), st.sampled_from([None, True, False]), figures, maybe, grows)
def test_reaching_further_out_never_ends_a_stop(hold: str | None, tailstock: bool | None, overhang: float, across: float | None, factor: float) -> None:
    far, near = (gates.lathe.second_hold(hold, tailstock, reach, across) for reach in (overhang * factor, overhang))
    assert RANK[far.state] >= RANK[near.state]


@given(figures, maybe, grows)
def test_a_wider_blank_never_ends_a_stop(sweeps: float, swing: float | None, factor: float) -> None:
    assert RANK[gates.lathe.swing(sweeps * factor, swing, 0.005).state] >= RANK[gates.lathe.swing(sweeps, swing, 0.005).state]


@given(maybe, maybe, st.floats(60, 120), maybe, maybe)
def test_what_only_reminds_never_stops(used: float | None, room: float | None, level: float, heard: float | None, mass: float | None) -> None:
    findings = (gates.shop.solvent(used, room), gates.lathe.noise(level, heard, False), gates.lathe.throw(mass, room, 500.0))
    assert State.STOP not in {finding.state for finding in findings}


@given(figures, maybe, grows)
def test_a_deeper_tray_never_ends_a_stop(depth: float, sheet: float | None, factor: float) -> None:
    assert RANK[gates.pour.tray(depth * factor, sheet).state] >= RANK[gates.pour.tray(depth, sheet).state]


@given(figures, figures, figures, st.none() | st.floats(0.001, 0.2))
def test_the_ratio_counts_not_the_size_of_the_batch(a: float, b: float, scale: float, tolerance: float | None) -> None:
    nudged = 1.037  # well off any boundary
    large, small = (gates.ratio.ratio_measured(a * times, b * nudged * times, b / a, tolerance) for times in (scale, 1.0))
    assert large.state is small.state


@given(maybe, maybe, maybe, maybe)
def test_taking_a_figure_away_never_turns_anything_into_no_stop(
    room: float | None, resin: float | None, low: float | None, high: float | None
) -> None:
    full = gates.pour.temperature_range(room, resin, low, high)
    for gap in range(4):
        given_figures = [room, resin, low, high]
        given_figures[gap] = None
        assert gates.pour.temperature_range(*given_figures).state is not State.CLEAR
    assert full.state is not State.CLEAR or None not in (room, resin, low, high)


@given(figures, st.floats(1e-7, 1e-3))
def test_figures_that_differ_are_never_written_alike_on_a_stop(limit: float, by: float) -> None:
    finding = gates.pour.depth(limit * (1 + by), limit)
    for system in SYSTEMS:
        if finding.state is State.STOP and finding.deciding is not None:
            value, written_limit = wording.pair(finding.deciding, system)
            assert value != written_limit


#: A plan for each list that goes over one of its limits.
OVER = {
    **{id: {"depth": "62 mm", "sheet_depth": "50 mm"} for id in ("C0", "C1", "C2", "C3")},
    "C8": {"pressure": "5 bar", "rated": "4 bar"},
    "C9": {"chamber": "no"},
    **{
        id: {"then": "use", "age": "2 h", "full": "72 h", "speed": "900 rpm", "ceiling": "400 rpm", "sand_ceiling": "300 rpm"}
        for id in ("C4", "C5", "C6", "C7")
    },
    "C10": {"put_away": "no"},
    "C11": {"mass": "2 kg", "tray_length": "200 mm", "tray_width": "200 mm"},
}
EVENT_KINDS = ("tick", "noted", "past", "away", "no", "gloves", "round", "new-batch", "mixed", "anew", "end", "leave")
events = st.lists(
    st.fixed_dictionaries(
        {"type": st.sampled_from(EVENT_KINDS), "item": st.integers(1, 5), "figures": st.just(""), "reason": st.sampled_from(["", "none here"])}
    ),
    max_size=14,
)


@settings(max_examples=2 * settings.default.max_examples)
@given(st.sampled_from(list(OVER)), events)
def test_whatever_is_pressed_a_list_ends_clear_only_when_every_line_is_closed(id: str, pressed: list[dict[str, Any]]) -> None:
    timed = [{**event, "at": 60.0 * number} for number, event in enumerate(pressed)]
    inputs = OVER[id]
    reply = json.loads(desk.handle(json.dumps({"call": "run", "args": {"id": id, "inputs": inputs, "units": "metric", "events": timed, "now": 1e4}})))
    assert reply["ok"], reply
    screen = reply["result"]
    done, count = screen["progress"]
    assert done == sum(bool(item["closed"]) for item in screen["items"])
    if screen["outcome"] in ("clear", "past"):
        assert screen["ended"] and done == count
    for item in screen["items"]:
        gate = item["gate"]
        if gate and gate["state"] == "stop" and gate["id"] != "G6":
            assert item["closed"] in (("",) if gate["id"] in ("G12", "G13") else ("", "past", "no"))
        if gate and item["closed"] == "away":
            raise AssertionError("a gate took 'does not apply'")
