"""Does it fit the lathe? What the maker reads, case by case."""

from __future__ import annotations

import math
from typing import Any

import pytest

from calc import desk
from calc.fields import Choice
from calc.questions import all_questions
from calc.turning import fit

MEASURED = {"across": "300", "along": "50", "swing": "460", "banjo": "440", "centres": "900", "mount": "80", "tail": "up"}
WHEEL = {"ask": "wheel", "disc": "300", "wheel": "150", "stands": "120", "swing": "305", "bed_wide": "140", "housing": "85"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("does-it-fit-the-lathe", confirmed, units, confirmed)


def cautions(reply: dict[str, Any]) -> dict[str, str]:
    return {caution["id"]: caution["text"] for caution in reply["cautions"]}


def code(reply: dict[str, Any]) -> tuple[str, str]:
    assert reply["headline"] is None and len(reply["errors"]) == 1 and reply["errors"][0]["message"]
    return reply["errors"][0]["field"], reply["errors"][0]["code"]


def reaches(reply: dict[str, Any]) -> dict[str, tuple[str, str]]:
    """Place -> what the first set-up reaches of it, and what the other does; each row says which it is of."""
    found: dict[str, dict[str, str]] = {}
    for row, what in reply["grids"][0]["rows"]:
        set_up, where = row.split(": ")
        found.setdefault(where, {}).update(dict.fromkeys(("First set-up", "Turned round") if set_up == "Either set-up" else (set_up,), what))
    return {where: (told["First set-up"], told["Turned round"]) for where, told in found.items()}


def rules(reply: dict[str, Any]) -> list[str]:
    return [limit["id"] for limit in reply["limits"] if limit["rules"]]


def test_all_measured_and_clear() -> None:
    reply = ask(**MEASURED)
    assert (reply["headline"]["text"], reply["headline"]["unit"], reply["headline"]["tone"]) == ("17", "mm", "go")
    assert reply["headline"]["say"] == "Over the bed, all round. Along the bed 785 mm to spare, the tailstock's travel taken off."
    assert "X9" not in cautions(reply) and "Guessed" not in reply["band"]["text"]


def test_imperial_reads_in_inches() -> None:
    reply = ask("imperial", across="12", along="2", swing="18", banjo="17 1/2", centres="36", mount="3")
    # 12 in square sweeps 16.97 in: 0.515 in to spare, in sixteenths 1/2
    assert (reply["headline"]["text"], reply["headline"]["unit"]) == ("1/2", "in")
    assert " mm" not in reply["text"]


def test_a_stop_leads_with_the_fewest_cuts_and_their_order() -> None:
    headline = ask(across="300", along="50", swing="400")["headline"]
    assert (headline["text"], headline["tone"]) == ("Saw it to eight sides", "stop")
    assert headline["say"].startswith("Then it sweeps 325 mm: 37 mm to spare.")
    assert "87 mm from each corner" in headline["steps"][1] and "true the rim first" in headline["steps"][-1]
    headline = ask(across="300", along="50", swing="320")["headline"]
    assert headline["text"] == "Saw it to sixteen sides" and len(headline["steps"]) == 4
    assert ask(across="300", along="50", swing="312")["headline"]["text"] == "Saw it round"


def test_sawing_really_gives_that_sweep() -> None:
    """Corners marked off and joined: the farthest of the eight new corners."""
    for side in (0.05, 0.3, 1.0):
        leg = fit.corner_cut(side)
        assert 2 * math.hypot(side / 2, side / 2 - leg) == pytest.approx(fit.sweep(side, 8))
        assert (side - leg) / math.sqrt(2) == pytest.approx(side / 2)  # the cut just touches the round


def test_nothing_to_saw_off_is_a_smaller_round() -> None:
    headline = ask(form="round", across="300", along="50", swing="305")["headline"]
    assert headline["text"] == "Saw it to 295 mm at most" and "comes too near" in headline["say"]
    headline = ask(form="other", widest="500", along="50", swing="460")["headline"]
    assert headline["text"] == "Saw it to 450 mm at most" and "strikes" in headline["say"]


def test_a_rectangle_is_first_sawn_square() -> None:
    reply = ask(form="rect", length="400", width="200", along="60", swing="330")
    assert reply["headline"]["text"] == "Saw it to a square" and "square of 200 mm" in reply["headline"]["steps"][1]
    assert reply["values"]["sweep"]["si"] == pytest.approx(math.hypot(0.4, 0.2))


def test_the_round_wanted_lets_more_come_off() -> None:
    assert ask(across="300", along="50", swing="320", wanted="270")["headline"]["text"] == "Saw it to eight sides"
    assert code(ask(across="300", along="50", wanted="301")) == ("wanted", "round-too-big")


def test_the_banjo_is_kept_out_where_it_does_not_pass() -> None:
    reply = ask(**MEASURED | {"banjo": "350"})
    assert reply["headline"]["tone"] == "caution" and "a rest that reaches 50 mm back" in reply["headline"]["say"]
    assert "banjo" in cautions(reply)["X9"]
    assert "from beyond its face" in reaches(reply)["rim"][0]
    assert "before you mount" in reaches(reply)["face to the headstock"][0]


def test_no_rest_reaches_all_along_a_log() -> None:
    log = {"form": "square", "across": "200", "along": "400", "hold": "centres", "swing": "300", "banjo": "230", "centres": "900"}
    reply = ask(**log)
    assert "saw it to eight sides, then it passes" in reply["headline"]["say"] and "only 150 mm" in reaches(reply)["side or rim"][0]
    assert "stand of its own" in ask(**log | {"form": "round", "across": "240"})["headline"]["say"]


def test_a_strike_is_said_when_it_strikes_and_not_when_it_is_near() -> None:
    assert cautions(ask(across="300", along="50", swing="400"))["X9"].startswith("It will strike.")
    assert not cautions(ask(form="round", across="300", along="50", swing="305"))["X9"].startswith("It will strike.")


def test_too_long_leads_with_what_to_saw_off() -> None:
    reply = ask(form="round", across="60", along="305", swing="300", hold="chuck", centres="380", mount="95", tail="up")
    # 380 + 25 - 95 - 10 = 300
    assert reply["headline"]["text"] == "Saw 5 mm off its length" and "Or hold it between centres: then 65 mm to spare" in reply["headline"]["say"]
    assert ask(form="round", across="60", along="305", swing="300", hold="chuck", centres="380", mount="95")["headline"]["tone"] == "go"
    between = ask(form="round", across="60", along="400", swing="300", hold="centres", centres="380")
    assert between["headline"]["text"] == "Saw 30 mm off its length" and "two parts" in between["headline"]["say"]
    assert "shorter mount" in ask(form="round", across="60", along="10", swing="300", hold="chuck", centres="100", mount="120", tail="up")["headline"]["text"]


def test_too_wide_and_too_long_says_both() -> None:
    assert "length" in cautions(ask(across="300", along="700", swing="400", centres="380", tail="up"))


def test_what_neither_side_reaches() -> None:
    found = reaches(ask(**MEASURED, covers="120"))
    assert "hidden within the mount, 120 mm" in found["face to the tailstock"][1]
    assert "outside the mount, 120 mm" in found["face to the headstock"][0]
    assert "no room for a tool" in reaches(ask(**MEASURED | {"mount": "30"}))["face to the headstock"][0]
    assert "covers it" in reaches(ask(**MEASURED | {"mount": "90"}, covers="400"))["face to the headstock"][0]
    assert reaches(ask(**MEASURED | {"tail": "none"}))["face to the tailstock"][0] == "all of it, to the middle"
    ends = reaches(ask(form="round", across="50", along="300", hold="centres", swing="300", centres="500"))
    assert "spur" in ends["end at the headstock"][0] and "spur" in ends["end at the tailstock"][1]


def test_both_set_ups_are_planned_before_the_glue() -> None:
    said = cautions(ask(**MEASURED))["plan"]
    assert "bare for the glue" in said and "wheel" in said
    assert "ends" in cautions(ask(form="round", across="50", along="300", hold="centres", swing="300", centres="500"))


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_one_figure_for_how_far_the_mount_stands_out(units: str) -> None:
    reply = ask(units, across="8 in", along="2 in", swing="16 in")
    told = reply["band"]["text"].split("mount ")[1].split(" long")[0]
    assert f"stands out {told} on its mount" in reply["drawings"][0]["says"]
    assert "stands out 85 mm" in ask(**MEASURED | {"mount": "85"})["drawings"][0]["says"]


@pytest.mark.parametrize(
    ("units", "block", "bare"), [("metric", "", "120 mm"), ("imperial", "", "4 13/16 in"), ("metric", "127 mm", "147 mm"), ("imperial", "5 in", "5 13/16 in")]
)
def test_the_bare_spot_is_ten_millimetres_more_than_the_block_all_round(units: str, block: str, bare: str) -> None:
    """As the mount tells it, for a block that holds: 13/16 in is the next sixteenth over 20 mm. For one that does not, the mount asks for more."""
    said = cautions(ask(units, across="12 in", along="2 in", swing="20 in", covers=block))["plan"]
    assert f"leave {bare} or more bare" in said
    assert ("guessed block" in said) is not block


@pytest.mark.parametrize(
    ("more", "decides"),
    [
        ({}, "banjo"),  # 17 mm over the bed, 7 over the banjo, 785 along
        ({"swing": "400", "banjo": "390"}, "bed"),
        ({"banjo": "350"}, "banjo"),
        ({"across": "100", "banjo": "450", "centres": "200"}, "length"),  # 85 mm to spare, 154 over the banjo
        ({"across": "100", "centres": "100"}, "length"),
        ({"across": "300", "swing": "400", "banjo": "390", "centres": "100"}, "bed"),
    ],
)
def test_what_decides_is_what_fails_or_has_least_to_spare(more: dict[str, str], decides: str) -> None:
    reply = ask(**MEASURED | more)
    assert rules(reply) == [decides] and "length" in [limit["id"] for limit in reply["limits"]]
    room = next(limit for limit in reply["limits"] if limit["id"] == "length")
    assert next(line for line in reply["lines"] if line["label"] == "Room along the bed")["text"] == room["text"]


@pytest.mark.parametrize(
    ("inputs", "measured"),
    [({"across": "300", "along": "50"}, {"swing": "400"}), ({"form": "round", "across": "60", "along": "500", "hold": "centres"}, {"centres": "380"})],
)
def test_nothing_is_sawn_off_for_a_lathe_that_nobody_named(inputs: dict[str, str], measured: dict[str, str]) -> None:
    reply = ask(**inputs)
    assert reply["headline"]["text"] == "Measure your lathe" and reply["headline"]["tone"] == "stop"
    assert "Saw" not in reply["headline"]["say"] and not reply["headline"]["steps"] and not reply["changes"]
    chosen, typed = ask(**inputs, lathe="bench")["headline"], ask(**inputs, **measured)["headline"]
    assert "Measure the " in " ".join((chosen["say"], *chosen["steps"])) and "only usual" in " ".join((chosen["say"], *chosen["steps"]))
    assert typed["text"].startswith("Saw ") and "only usual" not in " ".join((typed["say"], *typed["steps"]))


def test_flats_are_asked_of_what_has_flats() -> None:
    question = all_questions()["does-it-fit-the-lathe"]
    assert "flats" not in str(question.named("across").hint)
    form = question.named("form")
    assert isinstance(form, Choice) and [option.value for option in form.options if "flats" in option.hint] == ["square", "eight"]


def test_a_lathe_never_chosen_and_a_block_never_typed_are_not_handed_on() -> None:
    for more, block in ({}, None), ({"lathe": "midi", "covers": "120 mm"}, "120 mm"):
        carries = {carry["to"]: carry["inputs"] for carry in ask(**MEASURED | more)["carries"]}
        assert carries["will-the-mount-hold"].get("block") == block and ("lathe" in carries["how-fast"]) is bool(more)


def test_slender_work_whips() -> None:
    assert "X14" in cautions(ask(form="round", across="25", along="320", hold="centres", swing="300", centres="500"))
    assert "X14" not in cautions(ask(form="round", across="50", along="320", hold="centres", swing="300", centres="500"))


def test_outboard_has_a_swing_of_its_own_and_no_tailstock() -> None:
    reply = ask(across="300", along="50", side="outboard", outboard_swing="700")
    assert reply["headline"]["text"] == "137" and "length_spare" not in reply["values"] and "banjo_gap" not in reply["values"]
    assert "No tailstock" in cautions(reply)["outboard"]


def test_a_gap_in_the_bed_helps_what_turns_within_it() -> None:
    gap = {"across": "300", "along": "50", "swing": "400", "gap_bed": "yes", "gap_swing": "600", "mount": "60"}
    reply = ask(**gap, gap_long="150")
    assert reply["headline"]["text"] == "87" and "gap" not in cautions(reply)
    reply = ask(**gap, gap_long="100")
    assert reply["headline"]["tone"] == "stop" and "gap" in cautions(reply)
    assert code(ask(**gap | {"gap_swing": "400"}, gap_long="150")) == ("gap_swing", "gap-under-bed")


def test_a_banjo_stands_on_the_bed() -> None:
    assert code(ask(across="300", along="50", swing="400", banjo="400")) == ("banjo", "banjo-over-bed")


def test_more_than_lathe_or_chuck_is_marked_for() -> None:
    heavy = MEASURED | {"load": "5"}
    # 0.3 x 0.3 x 0.05 m of resin at 1150 kg/m3 is 5.2 kg
    assert ask(**heavy)["headline"]["text"] == "5.00 kg at most"
    assert ask(**heavy, mass="4.5")["headline"]["tone"] == "go"


def test_a_guessed_swing_is_a_caution_and_named() -> None:
    reply = ask(form="round", across="100", along="50")
    assert reply["headline"]["tone"] == "caution" and "swing 254 mm" in reply["band"]["text"] and "Measure yours" in reply["band"]["text"]


def test_it_goes_on_to_its_speed_only_when_it_fits() -> None:
    carries = {carry["to"]: carry["inputs"] for carry in ask(**MEASURED)["carries"]}
    assert list(carries) == ["how-fast", "will-the-mount-hold", "where-is-the-weight", "before-the-lathe"]
    assert carries["how-fast"]["diameter"] == "425 mm" and carries["how-fast"]["hold"] == "glue"
    assert carries["where-is-the-weight"]["side"] == "300 mm" and carries["where-is-the-weight"]["blank"] == "square"
    assert [carry["to"] for carry in ask(across="300", along="50", swing="400")["carries"]] == ["before-the-lathe"]


@pytest.mark.parametrize(
    ("typed", "swing", "state"),
    [
        ({"swing": "460 mm", "banjo": "440 mm"}, "440 mm", "no stop found"),  # 424.3 and two gaps of 5 mm: 434.3
        ({"swing": "460 mm", "banjo": "430 mm", "along": "200 mm"}, "430 mm", "stop"),  # no rest reaches so far back from beyond its face
        ({"swing": "460 mm", "along": "200 mm"}, "345 mm", "stop"),  # three quarters of it, as the page says where the banjo is not measured
        ({"swing": "460 mm", "banjo": "430 mm"}, "460 mm", "no stop found"),  # told to stand beyond its face
        ({"side": "outboard", "outboard_swing": "700 mm"}, "700 mm", "no stop found"),
    ],
)
def test_the_clearance_that_counts_is_the_one_the_last_look_goes_by(typed: dict[str, str], swing: str, state: str) -> None:
    told = next(carry["inputs"] for carry in ask(**{"across": "300 mm", "along": "50 mm"} | typed)["carries"] if carry["to"] == "before-the-lathe")
    stands = {} if "side" in typed else {"banjo": "beyond" if swing == "460 mm" else "under"}
    assert told == {"sweeps": "425 mm", "swing": swing} | stands
    gates = desk.answer("before-the-lathe", told)["extra"]["gates"]
    assert [gate["state"] for gate in gates if gate["id"] == "G11"] == [state]


def test_a_swing_that_was_never_measured_is_not_handed_on_and_the_tailstock_is_preset_alike() -> None:
    reply = ask(across="100", along="50", lathe="bench")
    assert "before-the-lathe" not in [carry["to"] for carry in reply["carries"]] and "far_end" not in reply["carries"][0]["inputs"]
    presets = {id: next(field.default for field in all_questions()[id].fields if field.name == name)
               for id, name in (("does-it-fit-the-lathe", "tail"), ("will-the-mount-hold", "far_end"), ("how-fast", "far_end"))}  # fmt: skip
    assert set(presets.values()) == {"none"}
    assert ask(**MEASURED)["carries"][0]["inputs"]["far_end"] == "live"


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize(
    "form, size", [("square", {"across": "250"}), ("round", {"across": "250"}), ("rect", {"length": "300", "width": "200"}), ("eight", {"across": "250"})]
)
def test_what_it_hands_on_is_taken(form: str, size: dict[str, str], units: str) -> None:
    """A rectangle is as long one way as the other side the other; eight sides are no shape of the balance question."""
    inputs = {"form": form, **size, "along": "50", "swing": "460", "mass": "4 kg", "hold": "chuck"}
    typed = {name: {"typed": text, "units": "metric"} for name, text in inputs.items()}
    carries = {carry["to"]: carry["inputs"] for carry in desk.answer("does-it-fit-the-lathe", typed, units, inputs)["carries"]}
    assert ("where-is-the-weight" in carries) == (form != "eight") and {"how-fast", "will-the-mount-hold"} < {*carries, ""}
    missing = {"where-is-the-weight": {"wood1_shape": "half"}, "will-the-mount-hold": {"tenon": "80 mm"}}
    for to, told in carries.items():
        taken = desk.answer(to, told | missing.get(to, {}), units, {})
        assert taken["headline"] and not taken["unasked"], taken["text"]


def test_a_wheel_that_does_not_reach_leads_with_what_frees_it() -> None:
    reply = ask(**WHEEL)
    assert reply["headline"]["text"] == "Stand the wheel 165 mm out from the headstock" and reply["headline"]["tone"] == "stop"
    assert reply["headline"]["say"].startswith("And take a wheel of 170 mm. Then it reaches the middle.")
    # half the disc 150: past the bed 152.5 - 15 leaves 12.5, past the headstock 120 - 15 leaves 45
    assert reply["values"]["unreached"]["si"] == pytest.approx(2 * math.hypot(0.0125, 0.045))
    after = ask(**WHEEL | {"stands": "165", "wheel": "170"})
    assert after["values"]["unreached"]["si"] == 0 and after["headline"]["tone"] == "go"


def test_a_wheel_wider_than_all_behind_it_reaches_anything() -> None:
    reply = ask(**WHEEL | {"wheel": "200", "disc": "900"})
    assert reply["headline"]["text"] == "The middle" and not reply["limits"]


def test_where_no_wheel_goes_the_hand_does() -> None:
    reply = ask(**WHEEL | {"bed_wide": "400", "stands": "200"})
    assert reply["headline"]["text"] == "Polish it on its mount" and "paste" in reply["headline"]["say"]


def test_a_tailstock_in_the_way() -> None:
    reply = ask(**WHEEL | {"wheel": "100", "stands": "200", "swing": "400"}, end="tail", to_tail="90")
    assert "tailstock" in reply["headline"]["say"] and "tailstock" in reply["headline"]["text"]
    reply = ask(**WHEEL | {"wheel": "100", "stands": "100", "swing": "400"}, end="tail", to_tail="90")
    assert "cannot be held" in reply["headline"]["say"] and reply["values"]["unreached"]["si"] == pytest.approx(0.3)


@pytest.mark.parametrize("inputs", [MEASURED, WHEEL, MEASURED | {"side": "outboard", "outboard_swing": "700"}, MEASURED | {"hold": "centres"}])
def test_the_drawing_is_told_in_words(inputs: dict[str, str]) -> None:
    (drawing,) = ask(**inputs)["drawings"]
    assert len(drawing["says"]) > 60 and drawing["height"] <= 300
    assert all(-1 <= y <= drawing["height"] + 1 for mark in drawing["marks"] for _, y in mark["points"])


@pytest.mark.parametrize("across, expected", [("0", "not-positive"), ("-20", "not-positive"), ("5000", "too-large"), ("1", "too-small")])
def test_absurd_sizes_are_told_apart(across: str, expected: str) -> None:
    assert code(ask(across=across, along="50")) == ("across", expected)


def test_only_the_sawing_that_helps_is_told() -> None:
    """A 300 mm square sweeps 424.3 mm, sawn to eight sides 324.7, to sixteen 305.9; 5 mm stay free all round."""

    def told(**lathe: str) -> list[str]:
        return [f"{change['do']}, {change['then']}" for change in ask(across="300", along="50", **lathe)["changes"]]

    assert told(swing="440", banjo="430") == ["Saw it to eight sides, 325 mm: clears bed and banjo"]  # as it is, too near the banjo
    assert told(swing="350", banjo="300") == [
        "Saw it to eight sides, 325 mm: clears the bed, not the banjo",
        "Saw it to sixteen sides, 306 mm: clears the bed, not the banjo",
        "Saw it round, 300 mm: clears the bed, not the banjo",
    ]
    assert not told(swing="305", banjo="230") and not told(swing="500", banjo="450")  # nothing clears 295 mm; nothing has to be sawn
