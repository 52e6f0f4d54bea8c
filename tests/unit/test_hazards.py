"""What the hazard pages rest on: facts with sources, registered signs, cards that exist; and figures that follow by arithmetic."""

from __future__ import annotations

import math
import re
from typing import Any

import pytest

from calc import sources
from calc.safety import reading
from calc.safety.facts import all_facts

HAZARDS: dict[str, Any] = reading.everything()["hazards"]
#: The codes named in the listing that was read; M is must, W warns, P forbids, E and F show where help is.
LISTED = (
    "M001 M002 M003 M004 M006 M009 M010 M011 M013 M017 M021 M026 M027 M056 M057 W001 W002 W012 W016 W017 W018 W019 W021 W022 W023 W029 W035 W071 W072 "
    "P002 P003 P010 P011 P022 P028 P036 E003 E004 E011 E012 F001 F016"
).split()
SHAPES = {"M": "must", "W": "warn", "P": "not", "E": "help", "F": "fire"}


def test_the_hazards_are_all_there() -> None:
    assert set(HAZARDS) == {"epoxy", "runaway", "dust", "lathe", "pressure", "flame", "noise", "rags", "children", "food"}


@pytest.mark.parametrize("id", HAZARDS)
def test_a_hazard_rests_on_facts_with_a_source(id: str) -> None:
    assert HAZARDS[id]["facts"]
    assert all(fact["source"] and fact["seen"] for fact in HAZARDS[id]["facts"])


def test_every_sign_is_a_registered_one_in_its_own_shape() -> None:
    for code, sign in reading.signs().items():
        assert code in LISTED
        assert sign["shape"] == SHAPES[code[0]]
        assert sign["meaning"]


def test_every_sign_stands_on_a_page_and_says_when() -> None:
    shown = [sign for one in (*HAZARDS.values(), reading.everything()["index"]) for sign in one["signs"]]
    assert {sign["code"] for sign in shown} == set(reading.signs())
    assert all(sign["when"].endswith(".") for sign in shown)


def test_counter_rotating_rollers_and_a_plain_mask_stand_for_nothing_here() -> None:
    assert not {"W025", "M016"} & set(reading.signs())


@pytest.mark.parametrize(("key", "wrong"), [("facts", ["99.9"]), ("cards", ["e99"]), ("signs", [["W025", "At the lathe."]])])
def test_a_hazard_with_an_unknown_part_does_not_load(monkeypatch: pytest.MonkeyPatch, key: str, wrong: Any) -> None:
    document = dict(sources.document("hazards"))
    document["hazard"] = [{**document["hazard"][0], key: wrong}]
    real = sources.document
    monkeypatch.setattr(sources, "document", lambda name: document if name == "hazards" else real(name))
    with pytest.raises(LookupError):
        reading.everything()


def test_a_thrown_piece_carries_what_the_fact_says() -> None:
    speed = math.pi * 0.250 * 1000 / 60
    told = [float(text) for text in re.findall(r"(\d+) (?:m/s|J)\b", all_facts()["5.9"].text)]
    assert told == [round(speed), round(speed**2 / 2)]


def test_the_hours_of_noise_follow_their_rule() -> None:
    told = re.findall(r"(\d+) dBA (?:for )?(\d+) (hour|minute)", all_facts()["5.14b"].text)
    hours = {int(level): float(time) / (60 if unit == "minute" else 1) for level, time, unit in told}
    assert hours == {level: 8 / 2 ** ((level - 85) / 3) for level in (85, 88, 94, 100)}


def test_the_alcohol_that_a_room_takes_follows_from_its_vapour() -> None:
    """400 ppm of 60.1 g/mol in air of 24.45 L/mol, as liquid of 0.785 g/mL; the fact rounds down."""
    per_m3 = 400e-6 * 60.1 / 24.45e-3 / 0.785
    each, shop = (float(text) for text in re.findall(r"([\d.]+) mL", all_facts()["7.3"].text))
    assert each <= per_m3 < each + 0.1
    assert shop <= 30 * per_m3 < shop + 2
