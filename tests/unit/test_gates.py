"""Gates: each tells missing, past its limit and within it apart, and a figure equal to its limit is within it."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from typing import Any

import pytest

from calc import desk
from calc.quantity.kinds import SYSTEMS
from calc.safety import gates, wording
from calc.safety.findings import Finding, Part, State

STOP, CLEAR, UNCHECKED = State.STOP, State.CLEAR, State.UNCHECKED
H = 3600.0
MASK_FINE = ("tight", "sheet", 2 * H, 8 * H, True, True, True, True)


def dial(speed: float | None, ceiling: float | None, highest: float | None, marked: float | None, must_be_read: bool) -> Finding:
    return gates.lathe.dial(speed, ceiling, highest, marked, marked=must_be_read)


def far_end(found: str, sweeps: float | None, hold: str, tailstock: bool | None, overhang: float | None, across: float | None) -> Finding:
    return gates.lathe.second_hold(hold, tailstock, overhang, across, found=found, sweeps_m=sweeps)


def weak_mount(across: float | None, least: float | None, sound: bool | None, sized: bool) -> Finding:
    return gates.lathe.grip(across, least, sound, sized=sized, found="no")


#: Gates that remind and stop nobody.
REMIND = (gates.worn.gloves, gates.shop.solvent, gates.lathe.noise, gates.lathe.throw)
#: gate, arguments, what it must say. Hand-made: limits are what a sheet might print.
CASES: list[tuple[Callable[..., Finding], tuple[Any, ...], State]] = [
    (gates.pour.depth, (0.049, 0.05, None, 0.05), CLEAR),
    (gates.pour.depth, (0.05, 0.05, None, 0.06), CLEAR),
    (gates.pour.depth, (2 * 0.0254, 0.0508, None, 0.0508), CLEAR),  # the same depth, typed in inches
    (gates.pour.depth, (0.042, 0.05), UNCHECKED),  # a quick resin burns at that: the sheet alone clears no deep layer
    (gates.pour.depth, (0.012, 0.05), CLEAR),
    (gates.pour.depth, (0.0121, 0.05), UNCHECKED),
    (gates.pour.depth, (0.01, 0.03), CLEAR),
    (gates.pour.depth, (0.0101, 0.03), UNCHECKED),
    (gates.pour.depth, (0.0501, 0.05), STOP),
    (gates.pour.depth, (None, 0.05), UNCHECKED),
    (gates.pour.depth, (0.05, None), UNCHECKED),
    (gates.pour.depth, (0.06, 0.05, 0.051), STOP),
    (gates.pour.depth, (0.04, 0.05, 0.03), UNCHECKED),
    (gates.pour.depth, (0.05, 0.05, None, 0.009), STOP),  # the lower of the two
    (gates.pour.depth, (0.06, 0.05, None, 0.08), STOP),
    (gates.pour.depth, (0.05, 0.05, None, 0.05), CLEAR),
    (gates.pour.depth, (0.009, None, None, 0.01), UNCHECKED),  # the sheet is still to be read
    (gates.pour.depth, (0.02, None, None, 0.01), STOP),
    (gates.pour.depth, (0.06, 0.05, 0.04, 0.055), STOP),  # narrow: the sheet passes it as a wide pour, what was worked out does not
    (gates.pour.depth, (0.06, 0.05, 0.04, 0.03), STOP),
    (gates.pour.batch, (5.0, 5.0, 5.0), CLEAR),
    (gates.pour.batch, (5.001, 5.0, 9.0), STOP),
    (gates.pour.batch, (2.81, 5.0, 2.69, 0.12), CLEAR),  # what Is it enough? adds to its own likely figure
    (gates.pour.batch, (2.82, 5.0, 2.69, 0.12), STOP),
    (gates.pour.batch, (2.81, 5.0, 2.69), UNCHECKED),
    (gates.pour.batch, (2.81, 2.0, 2.69), STOP),
    (gates.pour.batch, (5.501, None, 5.0), STOP),  # what the moulds take stops it, whatever the sheet leaves out
    (gates.pour.batch, (5.0, None, 5.0), UNCHECKED),
    (gates.pour.batch, (5.0, 5.0, None), UNCHECKED),
    (gates.pour.temperature_range, (291.15, 298.15, 291.15, 298.15), CLEAR),
    (gates.pour.temperature_range, (291.14, 298.15, 291.15, 298.15), STOP),
    (gates.pour.temperature_range, (291.15, 298.16, 291.15, 298.15), STOP),
    (gates.pour.temperature_range, (None, 295.0, 291.15, 298.15), UNCHECKED),
    (gates.pour.temperature_range, (None, 299.0, 291.15, 298.15), STOP),
    (gates.pour.temperature_range, (295.0, 295.0, 291.15, None), UNCHECKED),
    (gates.pour.hotter_than_planned, (313.15, 313.15), CLEAR),
    (gates.pour.hotter_than_planned, (313.25, 313.15), STOP),
    (gates.pour.hotter_than_planned, (None, 313.15), UNCHECKED),
    (gates.pour.hotter_than_planned, (353.15, None), UNCHECKED),
    (gates.pour.hotter_than_planned, (353.25, None), STOP),
    (gates.pour.hotter_than_planned, (353.25, 400.0), STOP),
    (gates.pour.working_time, (0.6 * 2400.0, 2400.0, 0.6), CLEAR),
    (gates.pour.working_time, (1441.0, 2400.0, 0.6), STOP),
    (gates.pour.working_time, (1441.0, 2400.0, 0.7), CLEAR),
    (gates.pour.working_time, (None, 2400.0, 0.6), UNCHECKED),
    (gates.pour.working_time, (600.0, None, 0.6), UNCHECKED),
    (gates.ratio.ratio_unit, ("same",), CLEAR),
    (gates.ratio.ratio_unit, ("densities",), CLEAR),
    (gates.ratio.ratio_unit, ("other",), STOP),
    (gates.ratio.ratio_unit, (None,), UNCHECKED),
    (gates.ratio.ratio_measured, (1.0, 0.459, 0.45, 0.02), CLEAR),  # 2 % over, 2 % allowed
    (gates.ratio.ratio_measured, (1.0, 0.4595, 0.45, 0.02), STOP),
    (gates.ratio.ratio_measured, (1.0, 0.459, 0.45, None), UNCHECKED),  # the sheet does not say
    (gates.ratio.ratio_measured, (1.0, 0.48, 0.45, None), STOP),  # 6.7 %: past the worst two makers allow
    (gates.ratio.ratio_measured, (1.0, None, 0.45, 0.02), UNCHECKED),
    (gates.ratio.ratio_measured, (1.0, 0.60, 0.45, 0.02, "densities"), UNCHECKED),  # a ratio by volume says nothing of weights
    (gates.ratio.ratio_measured, (1.0, 0.60, 0.45, 0.02, "other"), UNCHECKED),
    (gates.ratio.ratio_measured, (1.0, 0.60, 0.45, 0.02, None), UNCHECKED),
    (gates.pour.next_layer, ("none", None, None, None, None, None), CLEAR),
    (gates.pour.next_layer, (None, 9 * H, 8 * H, 24 * H, 295.0, 294.0), UNCHECKED),
    (gates.pour.next_layer, ("layer", 8 * H, 8 * H, 24 * H, 299.15, 294.15), CLEAR),
    (gates.pour.next_layer, ("layer", 24 * H, 8 * H, 24 * H, 294.15, 294.15), CLEAR),
    (gates.pour.next_layer, ("layer", 7.9 * H, 8 * H, 24 * H, 294.15, 294.15), STOP),
    (gates.pour.next_layer, ("layer", 24.1 * H, 8 * H, 24 * H, 294.15, 294.15), STOP),
    (gates.pour.next_layer, ("layer", 9 * H, 8 * H, 24 * H, 299.35, 294.15), STOP),
    (gates.pour.next_layer, ("layer", 9 * H, 8 * H, None, 294.15, 294.15), UNCHECKED),
    (gates.pour.next_layer, ("layer", 9 * H, 8 * H, 24 * H, None, 294.15), UNCHECKED),
    (gates.worn.mask, MASK_FINE, CLEAR),
    (gates.worn.mask, ("hood", "sheet", 8 * H, 8 * H, True, None, None, None), CLEAR),  # a hood has no seal on the face
    (gates.worn.mask, ("none", None, None, None, None, None, None, None), CLEAR),
    (gates.worn.mask, (None,) * 8, UNCHECKED),
    (gates.worn.mask, ("tight", "particles", 2 * H, 8 * H, True, True, True, True), STOP),
    (gates.worn.mask, ("tight", "vapour", 2 * H, 8 * H, True, True, True, True), UNCHECKED),
    (gates.worn.mask, ("tight", "sheet", 8.1 * H, 8 * H, True, True, True, True), STOP),
    (gates.worn.mask, ("tight", "sheet", 2 * H, 8 * H, False, True, True, True), STOP),
    (gates.worn.mask, ("tight", "sheet", 2 * H, 8 * H, True, False, True, True), STOP),
    (gates.worn.mask, ("tight", "sheet", 2 * H, 8 * H, True, True, False, True), STOP),
    (gates.worn.mask, ("tight", "sheet", 2 * H, 8 * H, True, True, True, False), STOP),
    (gates.worn.mask, ("tight", "sheet", 2 * H, None, True, True, True, True), UNCHECKED),
    (gates.worn.mask, ("tight", "sheet", 2 * H, 8 * H, True, True, True, None), UNCHECKED),
    (gates.worn.gloves, (1800.0,), CLEAR),
    (gates.worn.gloves, (1801.0,), State.REMINDER),
    (gates.worn.gloves, (60.0, 1800.0, True), State.REMINDER),
    (gates.worn.gloves, (None,), UNCHECKED),
    (gates.pour.tray, (0.010, 0.05), CLEAR),
    (gates.pour.tray, (0.0101, 0.05), STOP),
    (gates.pour.tray, (0.006, 0.006), CLEAR),
    (gates.pour.tray, (0.0061, 0.006), STOP),
    (gates.pour.tray, (0.008, None), UNCHECKED),
    (gates.pour.tray, (0.012, None), STOP),
    (gates.pour.tray, (None, 0.05), UNCHECKED),
    (gates.vessels.pot_pressure, (4e5, 4e5, 4e5, 4e5, 4e5), CLEAR),
    (gates.vessels.pot_pressure, (60 * 6894.757293168361, 413685.4375901, 5e5, 10e5, 7e5), CLEAR),  # 60 psi, typed in both units
    (gates.vessels.pot_pressure, (4.01e5, 4e5, 5e5, 10e5, 7e5), STOP),
    (gates.vessels.pot_pressure, (4e5, 5e5, 3.9e5, 10e5, 7e5), STOP),
    (gates.vessels.pot_pressure, (4e5, 5e5, 5e5, 3.9e5, 7e5), STOP),
    (gates.vessels.pot_pressure, (4e5, 5e5, 5e5, 10e5, 3.9e5), STOP),
    (gates.vessels.pot_pressure, (4e5, 3.9e5, None, None, None), STOP),
    (gates.vessels.pot_pressure, (4e5, 5e5, None, 10e5, 7e5), UNCHECKED),
    (gates.vessels.pot_pressure, (None, 5e5, 5e5, 10e5, 7e5), UNCHECKED),
    (gates.vessels.relief_setting, (4e5, 4e5), CLEAR),
    (gates.vessels.relief_setting, (4.1e5, 4e5), STOP),
    (gates.vessels.relief_setting, (None, 4e5), UNCHECKED),
    (gates.vessels.full_vacuum, (True,), CLEAR),
    (gates.vessels.full_vacuum, (False,), STOP),
    (gates.vessels.full_vacuum, (None,), UNCHECKED),
    (gates.shop.cured, ("mould", 24 * H, 24 * H, None, None, 293.15, 293.15), CLEAR),
    (gates.shop.cured, ("mould", 23.9 * H, 24 * H, None, None, 293.15, 293.15), STOP),
    (gates.shop.cured, ("mould", 48 * H, 24 * H, None, None, 292.15, 293.15), STOP),  # stood cooler than the times are for
    (gates.shop.cured, ("mould", 48 * H, 24 * H, None, None, None, 293.15), UNCHECKED),
    (gates.shop.cured, ("rough", 48 * H, 24 * H, None, True, 293.15, 293.15), CLEAR),  # full cure is not asked of a rough cut
    (gates.shop.cured, ("rough", 48 * H, 24 * H, None, False, 293.15, 293.15), STOP),
    (gates.shop.cured, ("rough", 48 * H, 24 * H, None, None, 293.15, 293.15), UNCHECKED),
    (gates.shop.cured, ("sand", 168 * H, None, 168 * H, True, 293.15, 293.15), CLEAR),
    (gates.shop.cured, ("sand", 167 * H, None, 168 * H, True, 293.15, 293.15), STOP),
    (gates.shop.cured, ("use", 167 * H, 24 * H, 168 * H, True, 293.15, 293.15), STOP),
    (gates.shop.cured, ("use", 168 * H, 24 * H, None, True, 293.15, 293.15), UNCHECKED),
    (gates.shop.cured, (None, 168 * H, 24 * H, 168 * H, True, 293.15, 293.15), UNCHECKED),
    (gates.worn.dust_mask, ("tight", "particles", True, True, True, True), CLEAR),
    (gates.worn.dust_mask, ("hood", "particles", True, None, None, None), CLEAR),
    (gates.worn.dust_mask, ("tight", "other", True, True, True, True), STOP),
    (gates.worn.dust_mask, ("none", None, None, None, None, None), STOP),
    (gates.worn.dust_mask, ("tight", "particles", True, False, True, True), STOP),
    (gates.worn.dust_mask, ("tight", "lesser", True, True, True, True), UNCHECKED),
    (gates.worn.dust_mask, ("tight", "particles", True, True, True, None), UNCHECKED),
    (gates.worn.dust_mask, (None,) * 6, UNCHECKED),
    (gates.shop.solvent, (36e-6, 30.0), CLEAR),
    (gates.shop.solvent, (36.1e-6, 30.0), State.REMINDER),
    (gates.shop.solvent, (36e-6, None), UNCHECKED),
    (gates.shop.solvent, (None, 30.0), UNCHECKED),
    (gates.shop.put_away, (True,), CLEAR),
    (gates.shop.put_away, (False,), STOP),
    (gates.shop.put_away, (None,), UNCHECKED),
    (gates.shop.dried, (True, 36e-6, 30.0), CLEAR),
    (gates.shop.dried, (True, None, None), CLEAR),
    (gates.shop.dried, (False, 40e-6, 30.0), STOP),  # wet comes before how much
    (gates.shop.dried, (None, 40e-6, 30.0), UNCHECKED),
    (gates.lathe.out_of_balance, (400.0, 400.0), CLEAR),
    (gates.lathe.out_of_balance, (401.0, 400.0), STOP),
    (gates.lathe.out_of_balance, (400.0, None), UNCHECKED),
    (gates.lathe.out_of_balance, (None, 400.0), UNCHECKED),
    (gates.lathe.grip, (2 * 0.0254, 0.0508, True), CLEAR),
    (gates.lathe.grip, (0.050, 0.051, True), STOP),
    (gates.lathe.grip, (0.060, 0.051, False), STOP),
    (gates.lathe.grip, (0.060, None, True), UNCHECKED),
    (gates.lathe.grip, (0.060, 0.051, None), UNCHECKED),
    (gates.lathe.second_hold, ("centres", None, None, None), CLEAR),
    (gates.lathe.second_hold, ("glue", True, None, None), CLEAR),
    (gates.lathe.second_hold, ("glue", False, 0.01, 0.1), STOP),
    (gates.lathe.second_hold, ("glue", None, 0.01, 0.1), UNCHECKED),
    (far_end, ("alone", None, "glue", False, 0.01, 0.1), CLEAR),
    (far_end, ("alone", None, "glue", False, None, None), CLEAR),
    (far_end, ("alone", None, "glue", None, 0.01, 0.1), UNCHECKED),
    (far_end, ("alone", None, "glue", False, 0.11, 0.1), STOP),
    (far_end, ("alone", 0.3, "glue", False, 0.01, 0.1), CLEAR),
    (far_end, ("alone", 0.31, "glue", False, 0.01, 0.1), STOP),
    (far_end, ("tailstock", None, "chuck", False, 0.01, 0.06), STOP),
    (far_end, ("tailstock", None, "chuck", True, 0.01, 0.06), CLEAR),
    (weak_mount, (0.1, 0.05, True, True), STOP),
    (weak_mount, (None, None, True, False), CLEAR),
    (weak_mount, (None, None, None, False), UNCHECKED),
    (gates.lathe.second_hold, ("chuck", False, 0.06, 0.06), CLEAR),
    (gates.lathe.second_hold, ("chuck", None, 0.06, 0.06), CLEAR),
    (gates.lathe.second_hold, ("chuck", False, 0.061, 0.06), STOP),
    (gates.lathe.second_hold, ("chuck", None, 0.061, 0.06), UNCHECKED),
    (gates.lathe.second_hold, ("faceplate", False, None, 0.06), UNCHECKED),
    (gates.lathe.second_hold, (None, True, 0.01, 0.06), UNCHECKED),
    (dial, (400.0, 400.0, 3000.0, None, False), CLEAR),
    (dial, (400.0, 450.0, 3000.0, 400.0, True), CLEAR),
    (dial, (401.0, 400.0, None, None, True), STOP),
    (dial, (401.0, 450.0, 400.0, None, False), STOP),
    (dial, (401.0, 450.0, 3000.0, 400.0, False), STOP),  # a marking that was read counts on any mount
    (dial, (400.0, 450.0, 3000.0, None, True), UNCHECKED),
    (dial, (400.0, None, 3000.0, None, False), UNCHECKED),
    (dial, (None, 450.0, 3000.0, None, False), UNCHECKED),
    (gates.lathe.sanding_speed, (400.0, 400.0), CLEAR),
    (gates.lathe.sanding_speed, (401.0, 400.0), STOP),
    (gates.lathe.sanding_speed, (None, 400.0), UNCHECKED),
    (gates.lathe.swing, (0.290, 0.300, 0.005), CLEAR),
    (gates.lathe.swing, (0.291, 0.300, 0.005), STOP),
    (gates.lathe.swing, (None, 0.300, 0.005), UNCHECKED),
    (gates.lathe.swing, (0.290, None, 0.005), UNCHECKED),
    (gates.lathe.noise, (94.0, H, False), CLEAR),
    (gates.lathe.noise, (94.0, 1.1 * H, None), State.REMINDER),
    (gates.lathe.noise, (100.0, H, True), CLEAR),
    (gates.lathe.noise, (94.0, None, False), UNCHECKED),
    (gates.lathe.noise, (None, H, False), UNCHECKED),
    (gates.lathe.throw, (1.0, 0.25, 1000.0), State.REMINDER),  # 86 J
    (gates.lathe.throw, (0.07, 0.25, 1000.0), CLEAR),  # 6.0 J
    (gates.lathe.throw, (None, 0.25, 1000.0), UNCHECKED),
    (gates.lathe.throw, (1.0, 0.25, None), UNCHECKED),
]


@pytest.mark.parametrize(("gate", "arguments", "state"), CASES)
def test_each_gate_tells_missing_past_and_within_apart(gate: Callable[..., Finding], arguments: tuple[Any, ...], state: State) -> None:
    assert gate(*arguments).state is state


def test_every_gate_there_is_stands_among_the_cases() -> None:
    """Nineteen gates by number, and every function that makes a finding."""
    made = {one for room in (getattr(gates, name) for name in gates.__all__) for one in vars(room).values()
            if inspect.isfunction(one) and one.__module__ == room.__name__ and one.__annotations__.get("return") == "Finding"}  # fmt: skip
    tried = {case[0] for case in CASES}
    named = {dial: gates.lathe.dial, far_end: gates.lathe.second_hold, weak_mount: gates.lathe.grip}
    assert made == {named.get(one, one) for one in tried}
    assert {gate(*arguments).gate for gate, arguments, _ in CASES} == {f"G{number}" for number in range(1, 20)}


@pytest.mark.parametrize("gate", sorted({case[0] for case in CASES}, key=lambda gate: gate.__name__), ids=lambda gate: gate.__name__)
def test_the_cases_cover_every_state_of_every_gate(gate: Callable[..., Finding]) -> None:
    past = State.REMINDER if gate in REMIND else STOP
    assert {state for case, _, state in CASES if case is gate} == {CLEAR, UNCHECKED, past}


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize(("gate", "arguments", "state"), CASES)
def test_a_gate_says_what_its_state_asks_for(gate: Callable[..., Finding], arguments: tuple[Any, ...], state: State, system: Any) -> None:
    said = wording.say(gate(*arguments), system)
    assert said.text and said.name and said.limit_from
    assert "{" not in said.text + said.action + said.record
    if state is STOP:
        assert said.word == "STOP" and said.action and said.record
    if state is UNCHECKED:
        assert said.word == "Not checked" and said.text.startswith("Missing: ") and said.record
    if state is CLEAR:
        assert said.word == "No stop found" and not said.record


@pytest.mark.parametrize("system", ["metric", "imperial"])
def test_over_the_sheet_but_not_as_a_wide_pour_is_the_makers_call(system: Any) -> None:
    finding = gates.pour.depth(0.06, 0.05, 0.04)
    said = wording.say(finding, system)
    assert finding.state is UNCHECKED and said.word == "Your call" and "as a wide pour" in said.record
    assert "{" not in said.text + said.record and said.text.endswith("one press, and it is noted.")


def test_the_sheets_depth_and_the_wide_pour_held_against_it_are_told_alike() -> None:
    said = wording.say(gates.pour.depth(0.06, 0.05, 0.0496), "imperial")  # 2.3622, 1.9685 and 1.9528 in
    assert said.text.startswith("2.363 in planned, the sheet allows 1.968 in. In a mould this narrow that gets as hot as a wide pour of 1.953 in.")
    assert said.record == "layer 2.363 in, the sheet's 1.968 in, as a wide pour 1.953 in"


def test_a_room_out_of_range_is_told_before_the_bottles_that_stand_in_it() -> None:
    both = [gates.pour.temperature_range(at, at, 291.15, 298.15).deciding for at in (283.15, 305.15)]
    assert [part.id for part in both if part] == ["room-cold", "room-warm"]
    assert (gates.pour.temperature_range(294.15, 305.15, 291.15, 298.15).deciding or both[0]).id == "resin-warm"  # type: ignore[union-attr]


def test_both_figures_show_and_differ_when_they_differ() -> None:
    said = wording.say(gates.pour.depth(0.05004, 0.05), "metric")
    assert said.text == "50.04 mm planned, the sheet allows 50 mm."
    assert wording.pair(Part("depth", "length", 0.0500001, 0.05), "metric") == ("50.0001 mm", "50 mm")
    assert wording.pair(Part("depth", "length", 2.001 * 0.0254, 2 * 0.0254), "imperial") == ("2.001 in", "2 in")
    assert wording.pair(Part("time", "duration", 1500.0, 1440.0), "metric") == ("25 min", "24 min")
    assert wording.pair(Part("too-warm", "temperature difference", 6.0, 5.0), "imperial") == ("10.8 °F", "9 °F")


@pytest.mark.parametrize(
    ("part", "system", "texts"),
    [
        (Part("tray", "length", 0.932 * 0.0254 + 1e-6, 0.01), "imperial", ("15/16 in", "3/8 in")),  # 10 mm are 0.3937 in
        (Part("tray", "length", 0.008658, 0.01), "metric", ("9 mm", "10 mm")),
        (Part("tray", "length", 0.00993, 0.01), "metric", ("9.93 mm", "10 mm")),  # 10 against 10 would hide the difference
        (Part("time", "duration", 40 * 60.0, 0.6 * 4 * H), "metric", ("40 min", "2.4 h")),  # not 0.6667 h
        (Part("time", "duration", 20 * 60.0, 0.6 * 41 * 60), "metric", ("20 min", "24.6 min")),
        (Part("time", "duration", 20 * 60.0, 0.61234 * 41 * 60), "metric", ("20 min", "25 min")),
        (Part("ratio", "share", 0.12361, 0.05), "metric", ("13 %", "5 %")),
        (Part("resin-cold", "temperature", 288.23, 292.04, at_most=False), "metric", ("15 °C", "19 °C")),  # 15.08 down, 18.89 up
        (Part("tray", "length", 0.01, 0.01), "imperial", ("3/8 in", "3/8 in")),
        (Part("depth", "length", 0.0625, 0.05), "metric", ("62.5 mm", "50 mm")),  # as it was typed
        (Part("time", "duration", 115 * 60.0, 126 * 60.0), "metric", ("115 min", "126 min")),  # not 2.1 h
    ],
)
def test_figures_are_rounded_to_the_safe_side(part: Part, system: Any, texts: tuple[str, str]) -> None:
    assert wording.pair(part, system) == texts


@pytest.mark.parametrize(
    ("value_in", "limit_mm", "at_most", "texts"),
    [
        (2.0, 50.0, True, ("2 in", "1 15/16 in")),  # 1.9685 in, down; never 1.96 beside a fraction
        (1.75, 47.2, True, ("1 3/4 in", "1 13/16 in")),  # 1.858 in, down
        (50 / 25.4, 49.7, True, ("1 31/32 in", "1 15/16 in")),  # 1.9685 up to a thirty-second, 1.9567 down
        (1.5, 36.83, False, ("1 1/2 in", "1 15/32 in")),  # 1.45 in, up
        (9.8 / 25.4, 10.0, True, ("0.386 in", "0.393 in")),  # closer than a tape reads: both in thousandths
        (2.44, 50.0, True, ("2.44 in", "1.96 in")),  # typed in hundredths
        (0.39313, 10.0, True, ("0.393 in", "0.393 in")),  # no stop, and less than a thousandth apart
        (0.3941, 10.0, True, ("0.3941 in", "0.3937 in")),  # a stop: told apart however close
    ],
)
def test_two_lengths_in_one_sentence_have_one_precision(value_in: float, limit_mm: float, at_most: bool, texts: tuple[str, str]) -> None:
    assert wording.pair(Part("depth", "length", value_in * 0.0254, limit_mm / 1000, at_most), "imperial") == texts


def test_one_depth_is_told_in_one_way_against_all_its_limits() -> None:
    told = wording.say(gates.pour.tray(0.0098, 0.05), "imperial").text  # 0.386 in; the limits are 10 mm and 50 mm
    assert told == "Leftovers would stand 0.386 in deep in the tray; 0.393 in is the most, the sheet allows 1.968 in."
    line = next(line for line in desk.answer("before-a-pour", TRAY, units="imperial")["lines"] if line["label"] == "Depth in the waste tray")
    assert (line["text"], line["unit"]) == ("0.386", "in")


#: 60 psi, Pa.
PSI60 = 60 * 6894.757293168


@pytest.mark.parametrize(
    ("finding", "system", "text"),
    [
        # a figure at one of its limits is written as that limit is: 6 mm are 0.236 in
        (gates.pour.tray(0.006, 0.006), "imperial", "Leftovers would stand 3/16 in deep in the tray; 3/8 in is the most, the sheet allows 3/16 in."),
        (
            gates.vessels.pot_pressure(PSI60, PSI60, 5e5, 10e5, 7e5),
            "imperial",
            "60 psi planned, the pot's plate says 60 psi, the relief valve opens at 72 psi, hose and fittings are marked 145 psi, the gauge ends at 101 psi.",
        ),
        (gates.pour.batch(2.2, 5.0, 3.0), "metric", "2.2 kg in one batch, the sheet allows 5 kg, the moulds take 3 kg."),
        (
            gates.pour.next_layer("layer", 9 * H, 8 * H, 24 * H, 296.0, 296.0),
            "metric",
            "9 h since the layer beneath, the sheet asks 8 h, and it bonds until 24 h. Surface and room 0 °C apart; 5 °C is as far as they may be.",
        ),
    ],
)
def test_a_figure_with_several_limits_is_told_once_with_all_of_them(finding: Finding, system: Any, text: str) -> None:
    assert wording.say(finding, system).text == text


#: 2156 g at 1.1 g/mL over 500 x 400 mm: 9.8 mm.
TRAY = {"mass": "2156 g", "tray_length": "500 mm", "tray_width": "400 mm", "sheet_depth": "50 mm"}


def test_what_a_room_takes_is_told_of_the_liquid_it_was_worked_out_for_and_not_to_a_hundredth() -> None:
    text = wording.say(gates.shop.solvent(100e-6, 4 * 3 * 2.4), "metric").text  # 1.2 mL for each of 28.8 m3: 34.56 mL, down
    assert text.startswith("100 mL of isopropyl alcohol indoors; from 34.5 mL on")


def test_where_the_sheet_does_not_say_the_way_on_is_named() -> None:
    assert "Going on is your call" in wording.say(gates.pour.depth(0.05, None), "metric").hint
    assert wording.say(gates.pour.depth(None, 0.05), "metric").hint == ""


FLAGS = [(gate, arguments) for gate, arguments, state in CASES if state is STOP and (deciding := gate(*arguments).deciding) and deciding.kind == "flag"]


@pytest.mark.parametrize(("gate", "arguments"), FLAGS)
def test_a_yes_or_no_that_stops_states_what_failed(gate: Callable[..., Finding], arguments: tuple[Any, ...]) -> None:
    finding = gate(*arguments)
    assert finding.deciding is not None
    words = wording.gate_words(finding.gate)["parts"][finding.deciding.id]
    assert wording.say(finding, "metric").text == words.get("failed", words["both"])
    assert "failed" in words or words["both"].startswith("A particle filter alone")  # this one has no passing side


@pytest.mark.parametrize(
    ("weights", "system", "action"),
    [
        ((0.5, 0.278, 0.5), "metric", "add 56 g of A."),  # 278 / 0.5 - 500
        ((0.5, 0.2, 0.5), "metric", "add 50 g of B."),  # 0.5 x 500 - 200
        ((0.5, 0.278, 0.5), "imperial", "add 2 oz of A."),  # 56 / 28.3495 = 1.9753, to the nearest twentieth
        ((0.010, 0.0054, 0.5), "metric", "add 0.80 g of A."),  # 5.4 / 0.5 - 10
    ],
)
def test_a_stop_on_the_ratio_names_the_part_and_the_amount(weights: tuple[float, float, float], system: Any, action: str) -> None:
    said = wording.say(gates.ratio.ratio_measured(*weights, 0.02), system)
    assert said.word == "STOP" and said.action == f"While nothing is mixed, {action}"


def test_what_is_told_to_add_ends_the_stop() -> None:
    assert gates.ratio.ratio_measured(0.5 + 0.056, 0.278, 0.5, 0.02).state is CLEAR
    assert gates.ratio.ratio_measured(0.5, 0.2 + 0.05, 0.5, 0.02).state is CLEAR


def test_weights_are_not_held_against_a_ratio_by_volume() -> None:
    said = wording.say(gates.ratio.ratio_measured(1.0, 0.4, 0.5, 0.02, "densities"), "metric")
    assert said.word == "Not checked" and not said.action
    assert said.text == "Missing: the ratio by weight: turn it with both densities ('How much to weigh?' does), nothing to add yet."


def test_a_failed_fit_test_reads_as_failed() -> None:
    said = wording.say(gates.worn.mask("tight", "sheet", 2 * H, 8 * H, True, True, False, True), "metric")
    assert (said.word, said.text) == ("STOP", "Not fit-tested on you.")
    assert wording.say(gates.ratio.ratio_unit("other"), "metric").text == "In another unit, densities not known."


def test_a_stop_decides_over_a_gap() -> None:
    finding = gates.pour.batch(5.0, None, 4.0)
    assert finding.state is STOP
    assert finding.deciding is not None and finding.deciding.id == "moulds"


def test_spread_depth_of_a_whole_batch() -> None:
    # 2.2 kg / 1100 kg/m3 = 2 L on 0.2 m2: 10 mm, by hand
    assert gates.pour.spread_depth(2.2, 0.5, 0.4, 1100.0) == pytest.approx(0.010)


def test_hours_of_noise_are_those_published() -> None:
    """8 h at 85, and half for each 3 dB: 88 is 4 h, 94 is 1 h, 100 is 15 min (NIOSH 98-126)."""
    assert [gates.lathe.noise_time(level) / H for level in (85, 88, 94, 100)] == pytest.approx([8, 4, 1, 0.25])


def test_a_stop_never_says_that_what_failed_holds() -> None:
    told = [
        wording.say(finding, "metric").text
        for finding in (gates.shop.dried(False), gates.lathe.grip(0.1, 0.05, False), gates.vessels.full_vacuum(False), gates.ratio.ratio_unit("other"))
    ]
    assert not [text for text in told if "your reading" in text] and len(set(told)) == len(told)


def test_dry_surfaces_in_a_room_full_of_vapour_still_remind() -> None:
    said = wording.say(gates.shop.dried(True, 40e-6, 30.0), "metric")
    assert said.state == "reminder" and "Door open, no flame." in said.text


def test_the_solvent_a_room_takes_is_400_ppm_of_it_rounded_down() -> None:
    """400 ppm of a gas of 60.1 g/mol, 24.45 L/mol at 25 °C, from a liquid of 786 g/L: 1.25 mL for each m3."""
    per_m3 = 400e-6 / 24.45e-3 * 60.1 / 786e3
    assert gates.shop.SOLVENT_SHARE <= per_m3 < 1.05 * gates.shop.SOLVENT_SHARE
