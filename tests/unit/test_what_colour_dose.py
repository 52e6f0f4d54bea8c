"""What colour dose? What the maker reads, case by case."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk
from calc.casting import colour
from calc.questions.what_colour_dose import EFFECTS

PASTE = {"batches": "900", "kind_1": "paste", "effect_1": "translucent", "step": "0.01"}
AGAIN = {"way": "repeat", "was_resin": "900", "was_1": "12", "kind_1": "paste", "batches": "900", "step": "0.1"}
SHARE = {"way": "repeat", "was": "share", "batches": "900", "step": "0.1"}
BUCKET = {"way": "tinting", "tinted": "900", "added_1": "6 3 2", "kind_1": "paste", "step": "0.1"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("what-colour-dose", confirmed, units, confirmed)


def head(reply: dict[str, Any]) -> tuple[str, str, str]:
    return reply["headline"]["text"], reply["headline"]["unit"], reply["headline"]["tone"]


def lines(reply: dict[str, Any]) -> dict[str, str]:
    return {line["label"]: f"{line['text']} {line['unit']}".strip() for line in reply["lines"]}


def notes(reply: dict[str, Any]) -> dict[str, str]:
    return {line["label"]: line["note"] for line in reply["lines"]}


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


def code(reply: dict[str, Any]) -> tuple[str, str]:
    assert reply["headline"] is None and len(reply["errors"]) == 1 and reply["errors"][0]["message"]
    return reply["errors"][0]["field"], reply["errors"][0]["code"]


# --- from an effect ------------------------------------------------------------------------------


def test_a_start_is_a_dose_and_how_to_judge_it() -> None:
    reply = ask(**PASTE, depth="25")
    assert head(reply) == ("1.80", "g", "go")  # 0.2 % of 900 g
    assert reply["headline"]["say"] == "Stir it in, then judge it in a clear cup, 25 mm deep on white. Too pale? Half of that again at a time."
    assert lines(reply)["At a time, at most"] == "0.9 g"
    assert ask(**PASTE, depth="2")["headline"]["say"].startswith("Stir it in, then judge it as a smear 2 mm thick on white.")


def test_a_start_is_rounded_down() -> None:
    assert head(ask(**{**PASTE, "batches": "999"}))[0] == "1.99"  # 1.998 g


def test_every_start_is_ours_low_and_says_so() -> None:
    for effect in EFFECTS:
        able = colour.kinds_for(effect.value)
        assert able
        for kind in able:
            assert (colour.start(effect.value, kind) or 1) <= 0.5 * colour.kinds()[kind].caution
            reply = ask(batches="2000", kind_1=kind, effect_1=effect.value, step="0.001")
            assert reply["headline"]["tone"] == "go" and "label rules" in notes(reply)["Share"]
            assert {"Our judgement", "Common practice, no source"} <= {source["title"] for source in reply["sources"]}


def test_a_dye_in_thinner_resin_starts_higher_but_never_near_its_line() -> None:
    dye = {**PASTE, "kind_1": "dye"}
    assert ask(**dye, depth="100")["values"]["share"]["si"] == pytest.approx(0.0005)  # 0.1 % x 50 / 100
    assert ask(**dye, depth="2")["values"]["share"]["si"] == pytest.approx(0.0025)  # half of 0.5 %
    assert ask(**PASTE, depth="2")["values"]["share"] == ask(**PASTE)["values"]["share"]


@pytest.mark.parametrize(
    ("kind", "effect", "take"), [("dye", "opaque", "paste, mica or metal powder"), ("paste", "pearl", "mica"), ("paste", "glow", "glow powder")]
)
def test_a_kind_that_cannot_is_a_stop_with_one_that_can(kind: str, effect: str, take: str) -> None:
    reply = ask(**{**PASTE, "kind_1": kind, "effect_1": effect})
    assert head(reply) == (take, "", "stop") and reply["changes"][0]["do"] == f"With {take}"


@pytest.mark.parametrize("way", [PASTE, AGAIN, BUCKET])
def test_water_based_colour_is_a_stop_everywhere(way: dict[str, str]) -> None:
    assert head(ask(**{**way, "kind_1": "water"})) == ("a colour made for resin", "", "stop")


# --- all batches, all colours, before the first spoon --------------------------------------------


def test_colour_is_summed_over_all_batches_and_shared_by_weight() -> None:
    reply = ask(**{**PASTE, "batches": "900 900 400"}, jar_1="30")
    assert lines(reply)["In all"] == "4.4 g" and notes(reply)["In all"] == "25.6 g left in the jar"
    (grid,) = reply["grids"]
    assert [row[2] for row in grid["rows"]] == ["1.80 g", "1.80 g", "0.80 g", "4.40 g", "30 g"]


def test_a_jar_that_is_short_is_found_before_the_first_spoon() -> None:
    reply = ask(**{**PASTE, "batches": "900 900 400"}, jar_1="3")
    assert head(reply) == ("1.4", "g", "stop") and reply["headline"]["label"] == "More paste to get first"
    assert "Or shared out, 0.136 % in every batch." in reply["headline"]["say"]  # 3 / 2200
    assert ask(**{**PASTE, "batches": "900 900 400"}, jar_1="4.4")["headline"]["tone"] == "go"  # equal is enough
    assert "smears" in notes(ask(**{**PASTE, "batches": "900 900 400"}, jar_1="4.5"))["In all"]


def test_every_jar_is_looked_at() -> None:
    reply = ask(**{**PASTE, "batches": "900 900"}, colours="2", kind_2="mica", effect_2="pearl", jar_1="30", jar_2="20", name_1="blue")
    assert head(reply) == ("7", "g", "stop") and reply["headline"]["label"] == "More mica to get first"  # 27 - 20
    both = ask(**{**PASTE, "batches": "900 900"}, colours="2", kind_2="mica", effect_2="pearl", jar_1="1", jar_2="20", name_1="blue")
    assert both["values"]["stops"]["si"] == 2 and both["headline"]["label"] == "More blue to get first"
    assert next(caution["text"] for caution in both["cautions"] if caution["tone"] == "stop").startswith("More mica to get first: 7 g.")


def test_two_colours_of_a_kind_are_told_apart() -> None:
    reply = ask(**PASTE, colours="2", kind_2="paste", effect_2="tint")
    assert reply["headline"]["label"] == "Start with paste 1 and paste 2" and reply["headline"]["text"] == "1.80 + 0.45"


def test_several_colours_use_up_the_lines_together() -> None:
    reply = ask(**SHARE, colours="2", kind_1="paste", share_1="1.5", kind_2="mica", share_2="2")
    assert reply["values"]["load"]["si"] == pytest.approx(1.15)  # 1.5/2 + 2/5
    assert reply["headline"]["tone"] == "caution" and "strong" in cautions(reply)
    worse = ask(**SHARE, colours="2", kind_1="dye", share_1="0.9", kind_2="paste", share_2="4")
    assert head(worse) == ("58", "% of that", "stop")  # 1 / (0.9 + 0.8), rounded down
    assert "carrier" in cautions(worse) and not worse["grids"]


# --- a colour that was right ---------------------------------------------------------------------


def test_the_same_again() -> None:
    reply = ask(**{**AGAIN, "batches": "260"})
    assert head(reply) == ("3.5", "g", "go") and "paste 1.33 %" in reply["headline"]["say"]


def test_a_covering_colour_keeps_its_share_at_any_depth_and_a_dye_does_not() -> None:
    deep = {"was_depth": "60", "depth": "25", "share_1": "0.1"}
    assert ask(**SHARE, **deep, kind_1="paste")["values"]["share"]["si"] == pytest.approx(0.001)
    assert ask(**SHARE, **deep, kind_1="dye")["values"]["share"]["si"] == pytest.approx(0.0024)
    assert "depth" in cautions(ask(**SHARE, share_1="0.1", kind_1="dye", depth="25"))
    assert "depth" not in cautions(ask(**SHARE, **deep, kind_1="dye"))


@pytest.mark.parametrize(
    ("kind", "share", "tone"),
    [("dye", "0.5", "go"), ("dye", "0.51", "caution"), ("dye", "1.01", "stop"), ("paste", "5", "caution"), ("mica", "10.1", "stop"), ("metal", "10", "go")],
)
def test_the_lines_of_its_kind(kind: str, share: str, tone: str) -> None:
    reply = ask(**SHARE, kind_1=kind, share_1=share)
    assert reply["headline"]["tone"] == tone
    if tone == "stop":
        assert reply["headline"]["label"].endswith("at most") and "Paler" in reply["headline"]["say"]


def test_the_label_overrules_our_lines_both_ways() -> None:
    assert ask(**SHARE, kind_1="paste", share_1="4")["headline"]["tone"] == "caution"
    assert ask(**SHARE, kind_1="paste", share_1="4", most_1="6")["headline"]["tone"] == "go"
    strict = ask(**SHARE, kind_1="paste", share_1="1", most_1="0.5")
    assert head(strict) == ("4.5", "g", "stop") and "the label's most" in strict["headline"]["say"]


# --- too small for the scale ---------------------------------------------------------------------


def test_a_dose_too_small_leads_with_what_would_weigh_it() -> None:
    reply = ask(**{**PASTE, "step": "0.1", "batches": "900 900 400"})  # 0.8 g, and 16.3 steps are 1.63 g
    assert head(reply) == ("1.8", "g", "caution")
    assert reply["headline"]["say"].startswith("The smallest dose, 0.8 g, is too little for steps of 0.1 g. Weigh the bottle or stick")
    assert "steps of 0.01 g" in reply["headline"]["say"]
    assert lines(reply)["Or pre-mix"] == "4.4 g in 17.6 g of part A"  # 20 %, of which even 0.8 g of colour is 4 g
    assert lines(reply)["Or count drops"] == "about 36"


def test_a_pre_mix_that_is_mostly_waste_is_not_offered() -> None:
    assert "Or pre-mix" not in lines(ask(**{**PASTE, "step": "1"}))  # 16 g of colour for a dose of 1.8 g


def test_powder_is_not_counted_in_drops() -> None:
    reply = ask(batches="100", kind_1="mica", effect_1="pearl", step="1")
    assert "Or count drops" not in lines(reply) and "or drops" not in reply["headline"]["say"]


def test_a_pre_mix_the_maker_has_is_what_goes_on_the_scale() -> None:
    reply = ask(**{**SHARE, "batches": "1000"}, kind_1="dye", share_1="0.035", strength_1="5")
    assert head(reply) == ("7.0", "g", "go") and reply["headline"]["label"] == "The same again, pre-mix of dye"
    assert notes(reply)["Pre-mix, first batch"] == "for 0.35 g of dye; 6.65 g of it counts as part A"
    assert "premix" in cautions(reply)


def test_a_pre_mix_too_strong_for_the_scale_says_how_strong_it_may_be() -> None:
    reply = ask(**{**SHARE, "batches": "1000", "step": "1"}, kind_1="dye", share_1="0.035", strength_1="5")
    assert reply["headline"]["tone"] == "caution" and "A pre-mix of 2 % colour or less" in reply["headline"]["say"]


def test_a_pre_mix_too_weak_to_fit_is_an_error() -> None:
    assert code(ask(**SHARE, kind_1="paste", share_1="3", strength_1="4")) == ("strength_1", "weak-premix")


# --- a bucket being tinted -----------------------------------------------------------------------


def test_the_ledger_says_the_share_what_may_still_go_in_and_what_the_others_take() -> None:
    reply = ask(**BUCKET, rest="900 300", jar_1="20")
    assert head(reply) == ("1.22", "%", "go") and reply["headline"]["say"].startswith("That is 11 g of paste in 900 g. Next batch: 11.0 g.")
    assert lines(reply)["May still go in"] == "7 g" and lines(reply)["At a time, at most"] == "5.5 g"
    assert lines(reply)["For the other batches"] == "14.7 g" and notes(reply)["For the other batches"] == "5.33 g left in the jar"


def test_the_bottle_before_and_now_is_a_ledger_too() -> None:
    reply = ask(way="tinting", tinted="900", ledger="bottle", before_1="150.2", after_1="141.4", kind_1="mica", step="0.1")
    assert reply["values"]["share"]["si"] == pytest.approx(8.8 / 900)


def test_drops_are_a_ledger_with_their_spread() -> None:
    reply = ask(way="tinting", tinted="900", ledger="drops", drops_1="6 4", kind_1="dye")
    assert reply["values"]["share"]["si"] == pytest.approx(0.5 / 900) and "drops" in cautions(reply)
    low, high = float(reply["band"]["low"].split()[0]), float(reply["band"]["high"].split()[0])
    # 2 sqrt(0.0866^2 + (0.2887/10)^2) = 18.3 % either way
    assert (low, high) == (pytest.approx(0.0454, abs=0.0002), pytest.approx(0.0657, abs=0.0002))


def test_a_jar_that_will_not_last_is_found_while_tinting() -> None:
    reply = ask(**BUCKET, rest="900 300", jar_1="10")
    assert head(reply) == ("4.67", "g", "stop") and reply["headline"]["say"] == "The other batches take 14.7 g, the jar has 10 g."


def test_past_where_to_take_care_no_more_goes_in() -> None:
    reply = ask(**{**BUCKET, "added_1": "10 10"})
    assert reply["headline"]["tone"] == "caution" and reply["headline"]["say"].endswith("No more: it is past where to take care.")
    assert lines(reply)["May still go in"] == "0 g" and "At a time, at most" not in lines(reply)


def test_an_overdone_bucket_is_brought_back_by_clear_resin() -> None:
    reply = ask(**{**BUCKET, "added_1": "30 30"})  # 60 g: 5 % of 1200 g
    assert head(reply) == ("300", "g", "stop") and reply["headline"]["label"] == "Clear resin to add"


def test_the_bucket_looks_stronger_than_the_casting() -> None:
    assert lines(ask(**BUCKET, depth="20", bucket_depth="120"))["In the bucket it looks"] == "6 times as deep"


# --- cautions and errors -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("kind", "told"),
    [("dye", {"solvent"}), ("paste", {"ratio"}), ("mica", {"powder"}), ("metal", {"metal", "sinks"}), ("glow", {"powder", "sinks"})],
)
def test_cautions_go_by_kind(kind: str, told: set[str]) -> None:
    found = cautions(ask(**SHARE, kind_1=kind, share_1="0.3"))
    assert told <= found and len(found) <= 5
    assert not found & ({"solvent", "ratio", "powder", "metal", "sinks"} - told)


@pytest.mark.parametrize(
    ("change", "expected"),
    [
        ({"batches": "0"}, ("batches", "not-positive")),
        ({"batches": "900 -4"}, ("batches", "not-positive")),
        ({"batches": "900000"}, ("batches", "too-large")),
        ({"was_1": "0"}, ("was_1", "not-positive")),
        ({"was_1": "1000"}, ("was_1", "more-colour")),
        ({"step": "0"}, ("step", "not-positive")),
    ],
)
def test_what_cannot_be_names_its_field(change: dict[str, str], expected: tuple[str, str]) -> None:
    assert code(ask(**{**AGAIN, **change})) == expected


def test_contradictions_while_tinting_have_words_of_their_own() -> None:
    bottle = {"way": "tinting", "tinted": "900", "ledger": "bottle", "kind_1": "mica"}
    assert code(ask(**bottle, before_1="150", after_1="161")) == ("after_1", "heavier-now")
    assert code(ask(**bottle, before_1="150", after_1="150")) == ("after_1", "nothing-in")
    assert code(ask(**{**BUCKET, "added_1": "0"})) == ("added_1", "nothing-in")
    assert code(ask(**{**BUCKET, "added_1": "600 600"})) == ("added_1", "more-colour")


def test_ounces_read_as_well() -> None:
    reply = ask("imperial", batches="32 32 16", kind_1="mica", effect_1="pearl", step="0.01", depth="1 1/2")
    assert head(reply) == ("0.48", "oz", "go") and "1 1/2 in deep on white" in reply["headline"]["say"]


def test_the_finer_scale_is_fine_enough_for_the_smallest_of_several_doses() -> None:
    two = {"batches": "900 400", "colours": "2", "kind_1": "mica", "effect_1": "pearl", "kind_2": "dye", "effect_2": "tint", "depth": "25"}
    other = {**two, "kind_1": "dye", "effect_1": "tint", "kind_2": "mica", "effect_2": "pearl"}
    steps = [next(change["do"] for change in ask(**asked)["changes"] if "steps" in change["do"]) for asked in (two, other)]
    assert steps[0] == steps[1] and ask(**two)["headline"]["say"].startswith("The smallest dose of dye")


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_a_part_of_the_batch_is_coloured_as_that_much_resin_would_be(units: str) -> None:
    sixty = ask(units, batches="2810 g 1000 g", kind_1="paste", effect_1="translucent", part="60")
    alone = ask(units, batches="1686 g 600 g", kind_1="paste", effect_1="translucent")  # 60 % of each
    assert sixty["values"] == alone["values"] and sixty["headline"] == alone["headline"]
    line = next(line for line in sixty["lines"] if line["label"] == "Resin to colour, batch 1")
    assert line["note"].startswith("60 % of ") and (units == "imperial" or (line["text"], line["unit"]) == ("1686", "g"))
    assert ask(batches="900", kind_1="paste", effect_1="tint", part="0")["errors"] and "Resin to colour" not in alone["text"]


def test_two_jars_that_are_short_are_told_by_their_names() -> None:
    two = {"colours": "2", "kind_1": "dye", "kind_2": "dye", "effect_1": "tint", "effect_2": "tint"}
    reply = ask(batches="900", **two, jar_1="0", jar_2="0", name_1="Blue", name_2="Red")
    (short,) = [caution["text"] for caution in reply["cautions"] if caution["id"] == "short"]
    assert " of Blue, the jar has 0 g." in reply["headline"]["say"] and " of Red, the jar has 0 g." in short
