"""How much wood is in it? What the maker reads, case by case."""

from __future__ import annotations

from typing import Any

import pytest

from calc import desk
from calc.fields import Choice
from calc.questions import all_questions

DIPPED = {"rise": "1378", "weight": "842"}
WEIGHED = {"way": "weigh", "mass": "1240", "species": "maple-bigleaf", "moisture": "8"}
OUTLINED = {"way": "outline", "length": "600", "widths": "120 135 128 140 110", "thickness": "45"}
FACES = {"way": "live", "length": "300", "top": "300 300 300", "middle": "320 320 320", "bottom": "340 340 340", "thickness": "45"}


def ask(units: str = "metric", **inputs: str) -> dict[str, Any]:
    confirmed = {name: text for name, text in inputs.items() if text}
    return desk.answer("how-much-wood", confirmed, units, confirmed)


def cautions(reply: dict[str, Any]) -> set[str]:
    return {caution["id"] for caution in reply["cautions"]}


def code(reply: dict[str, Any]) -> tuple[str, str]:
    assert reply["headline"] is None and len(reply["errors"]) == 1 and reply["errors"][0]["message"]
    return reply["errors"][0]["field"], reply["errors"][0]["code"]


def hints(id: str, name: str) -> dict[str, str]:
    field = all_questions()[id].named(name)
    assert isinstance(field, Choice)
    return {option.value: option.hint for option in field.options}


def test_dipped_and_weighed() -> None:
    reply = ask(**DIPPED)
    assert (reply["headline"]["text"], reply["headline"]["unit"], reply["headline"]["tone"]) == ("1380", "mL", "go")
    # 2 x (1100 x 1.3805 - 842) g = 1353 g, rounded up
    assert reply["headline"]["say"] == "Take it off the mould's volume. It floats: hold it down with 1.4 kg."
    assert reply["values"]["density"]["si"] == pytest.approx(609.9, abs=0.1)


def test_the_surest_way_comes_first_and_says_why() -> None:
    ways = next(field for field in desk.describe("how-much-wood")["fields"] if field["name"] == "way")
    assert ways["default"]["metric"] == ways["options"][0]["value"] == "dip"
    assert "surest" in ways["options"][0]["hint"] and "third" in ways["options"][0]["hint"]


def test_a_weight_takes_the_kind_of_wood_and_carries_its_spread() -> None:
    reply = ask(**WEIGHED)
    # G12 0.48, S0 11.6 %: 1080 x 0.48 x (1 - 0.0696) / (1 - 0.08507) = 527.2 kg/m3
    assert reply["values"]["volume"]["si"] == pytest.approx(1.240 / 527.2, rel=0.001)
    assert reply["headline"]["tone"] == "caution" and reply["changes"][0]["do"].startswith("Dip it")
    assert ask(**WEIGHED, form="burl")["values"]["volume_u"]["si"] == pytest.approx(0.15 * 1.240 / 527.2, rel=0.001)


def test_a_weight_alone_is_no_volume() -> None:
    assert code(ask(way="weigh", mass="1240")) == ("species", "no-density")
    assert code(ask(way="weigh", mass="1240", form="stabilised", species="walnut-black")) == ("density", "stabilised")


def test_a_measured_density_overrules_the_table() -> None:
    reply = ask(**WEIGHED, density="0.62")
    assert reply["values"]["volume"]["si"] == pytest.approx(1.240 / 620, rel=1e-6) and reply["headline"]["tone"] == "go"


def test_stabilised_wood_that_sinks() -> None:
    reply = ask(way="weigh", mass="1240", form="stabilised", density="1.25")
    assert reply["headline"]["say"].endswith("It lies on the floor by itself.")
    assert reply["values"]["hold"]["si"] == 0 and "glue" not in cautions(reply)


def test_wood_near_the_resin_s_weight_may_just_float() -> None:
    reply = ask(rise="898.4", weight="991")  # 900 mL at 1101 kg/m3 in 1100: 1 g heavy; 1.645 x 1.5 % of 990 g is 24 g
    assert "It may just float: hold it down with 30 g." in reply["headline"]["say"]


def test_an_outline_counts_holes_until_they_are_taken_off() -> None:
    reply = ask(**OUTLINED)
    assert reply["values"]["volume"]["si"] == pytest.approx(3568.5e-6) and "voids" in cautions(reply) and reply["headline"]["tone"] == "caution"
    reply = ask(**OUTLINED, voids="150", weight="2180")
    assert reply["values"]["volume"]["si"] == pytest.approx(3418.5e-6) and "voids" not in cautions(reply) and reply["headline"]["tone"] == "go"
    assert "voids" not in cautions(ask(**OUTLINED, voids="0"))
    assert code(ask(**OUTLINED, voids="3568.5")) == ("voids", "voids-bigger")


def test_a_wrapped_dip_counts_holes_and_a_bare_one_does_not() -> None:
    assert "voids" not in cautions(ask(**DIPPED))
    assert "voids" in cautions(ask(**DIPPED, wrapped="yes"))
    assert ask(**DIPPED, wrapped="yes", wrapped_voids="80")["values"]["volume"]["si"] == pytest.approx(1300.5e-6, rel=1e-4)


def test_live_edge_faces_and_no_face_in_the_middle() -> None:
    assert ask(**FACES)["values"]["volume"]["si"] == pytest.approx(4320e-6)  # 900, 960, 1020 cm2, 45 mm
    reply = ask(**{**FACES, "middle": ""})
    assert reply["values"]["volume"]["si"] == pytest.approx(4320e-6)
    assert reply["values"]["volume_u"]["si"] == pytest.approx(0.04 * 4320e-6)  # the mean stands in: less sure


def test_level_rise_in_a_box_and_a_round_tub() -> None:
    assert ask(way="level", tub_length="400", tub_width="300", level="20")["values"]["volume"]["si"] == pytest.approx(2400e-6)
    reply = ask(way="level", tub="round", tub_across="300", level="3")
    assert reply["values"]["volume"]["si"] == pytest.approx(212.06e-6, rel=1e-4)
    # two readings to half a millimetre: sqrt(2/3) x 0.5 / 3 = 13.6 %, more than the usual 4 %
    assert reply["values"]["volume_u"]["si"] == pytest.approx(0.1361 * 212.06e-6, rel=1e-3)


def test_only_the_part_below_the_fill_line_counts() -> None:
    reply = ask(**DIPPED, height="60", fill="30")
    assert reply["values"]["volume"]["si"] == pytest.approx(1380.5e-6 / 2, rel=1e-4)
    assert reply["headline"]["label"] == "Wood below the fill line" and "straight" in cautions(reply)
    assert ask(**DIPPED, height="60", fill="40", raised="10")["values"]["volume"]["si"] == pytest.approx(1380.5e-6 / 2, rel=1e-4)
    assert ask(**DIPPED, height="60", fill="80")["values"]["volume"]["si"] == pytest.approx(1380.5e-6, rel=1e-4)


def test_resin_that_does_not_reach_the_lift_depth_lifts_nothing() -> None:
    # 60 mm x 609.9 / 1100 = 33.3 mm; reckoned light, 1.645 x 1.5 % sooner: 32.4 mm
    low, high = ask(**DIPPED, height="60", fill="30"), ask(**DIPPED, height="60", fill="40")
    assert low["values"]["lifts_at"]["shown"] == high["values"]["lifts_at"]["shown"] == "32 mm"
    assert low["values"]["hold"]["si"] == 0 and "It lies on the floor by itself." in low["headline"]["say"]
    assert high["values"]["hold"]["si"] > 0
    assert [limit["id"] for limit in high["limits"] if limit["rules"]] == ["lift"]
    assert not [limit for limit in low["limits"] if limit["rules"]]


def test_contradictions_have_their_own_words() -> None:
    assert code(ask(**DIPPED, fill="30")) == ("height", "no-height")
    assert code(ask(**DIPPED, height="60", fill="20", raised="30")) == ("fill", "under-the-wood")
    assert code(ask(rise="1378", weight="100")) == ("weight", "too-light")
    assert code(ask(rise="1378", weight="3000")) == ("weight", "too-heavy")
    assert code(ask(way="weigh", mass="1240", species="lignum-vitae", moisture="80")) == ("moisture", "too-wet")
    assert code(ask(**{**WEIGHED, "moisture": "120"})) == ("moisture", "too-large")
    assert "too wet to cast" in ask(**{**WEIGHED, "moisture": "120"})["errors"][0]["message"]
    assert code(ask(**{**OUTLINED, "widths": "0 0 0"})) == ("widths", "no-width")
    assert code(ask(**{**OUTLINED, "widths": "120 130"})) == ("widths", "too-few")


def test_a_weight_that_does_not_fit_the_size_asks_for_a_second_look() -> None:
    assert "odd" in cautions(ask(rise="1378", weight="300")) and "odd" not in cautions(ask(**DIPPED))
    assert "odd" in cautions(ask(**DIPPED, species="olive"))


def test_without_a_weight_or_a_kind_floating_is_not_known() -> None:
    reply = ask(rise="1378")
    assert reply["values"]["hold"]["si"] is None and "whether it floats is not known" in reply["headline"]["say"]
    assert reply["headline"]["tone"] == "caution"
    assert ask(rise="1378", species="walnut-black")["values"]["hold"]["si"] > 0


def test_soak_in_follows_the_wood_and_a_seal_ends_it() -> None:
    whole = ask(**DIPPED)["values"]["volume"]["si"]
    for form, share in (("plain", 0.02), ("burl", 0.05), ("spalted", 0.10)):
        assert ask(**DIPPED, form=form)["values"]["soak"]["si"] == pytest.approx(share * whole)
    assert ask(**DIPPED, soak="4")["values"]["soak"]["si"] == pytest.approx(0.04 * whole)
    sealed = ask(**DIPPED, sealed="yes", height="45")
    assert sealed["values"]["soak"]["si"] == 0 and sealed["values"]["seal_coat"]["si"] is None and "air" not in cautions(sealed)


def test_no_more_soaks_in_than_the_wood_has_air() -> None:
    reply = ask(way="weigh", mass="1000", species="lignum-vitae", moisture="12", soak="50")
    volume, soak = reply["values"]["volume"]["si"], reply["values"]["soak"]["si"]
    gravity = 1.0 / volume / 1000 / 1.12
    assert soak / volume == pytest.approx(max(0.0, 1 - gravity * (1 / 1.54 + 0.12))) and soak / volume < 0.5


def test_the_seal_coat_goes_by_the_surface() -> None:
    # 1380.5 mL at 45 mm: two faces of 306.8 cm2 and 1.25 x 4 x 17.5 cm x 4.5 cm of edge = 1008 cm2, at 150 g/m2
    assert ask(**DIPPED, height="45")["values"]["seal_coat"]["si"] == pytest.approx(0.0151, abs=0.0001)


def test_wet_wood_is_sent_to_dry() -> None:
    assert ask(**DIPPED, moisture="13")["headline"]["tone"] == "caution"
    wet = next(entry for entry in ask(**DIPPED, moisture="20")["cautions"] if entry["id"] == "wet")
    assert wet["tone"] == "stop" and "Dry enough?" in wet["text"]


def test_imperial_leads_in_fluid_ounces_and_adds_cubic_inches() -> None:
    reply = ask("imperial", rise="3 lb", weight="1 lb 14 oz", height="1 3/4")
    assert reply["headline"]["unit"] == "US fl oz" and "lb" in reply["headline"]["say"]
    assert any(line["unit"] == "in³" for line in reply["lines"])


def test_the_volume_is_rounded_down_and_the_hold_up() -> None:
    values = ask(**DIPPED)["values"]
    assert float(values["volume"]["shown"].split()[0]) <= 1e6 * values["volume"]["si"]
    assert float(values["hold"]["shown"].split()[0]) >= values["hold"]["si"]


def test_the_wood_goes_on_with_its_spread() -> None:
    carry = ask(**DIPPED, form="burl")["carries"][0]
    # 1380.5 mL, off by twice 1.5 %: 41.4 mL, up
    assert carry["to"] == "is-it-enough" and carry["inputs"]["wood"] == "1380 mL" and carry["inputs"]["wood_off"] == "41.5 mL"
    assert carry["inputs"]["wood_way"] == "dip" and "± 3 %" in hints("is-it-enough", "wood_way")["dip"]
    assert not all_questions()["is-it-enough"].named("wood_off").fold, "the spread handed over is the one shown"
    plain = {carry["to"]: carry["inputs"] for carry in ask(**DIPPED)["carries"]}["is-it-enough"]
    assert not any(all_questions()["is-it-enough"].named(name).fold for name in plain), "More stays closed"
    taken = desk.answer("is-it-enough", {"across": "200 mm", "depth": "60 mm", **carry["inputs"]}, "metric", {})
    assert taken["values"]["in_one"]["si"] == pytest.approx(3.14159 * 0.1**2 * 0.06 - 0.95 * 1380e-6, rel=1e-4)


def test_the_thickness_goes_on_to_the_mould_and_wet_wood_to_its_dryness() -> None:
    wet = ask(**DIPPED, species="elm-wych", moisture="18", height="30")
    carried = {carry["to"]: carry["inputs"] for carry in wet["carries"]}
    assert carried["how-thick-how-tall"] == {"slab": "30 mm"}
    assert carried["dry-enough"] == {"readings": "18 %", "figure": "plain", "species": "elm-wych", "mass": "842 g"}
    taken = desk.answer("dry-enough", carried["dry-enough"], "metric", {})
    assert not taken["errors"] and not taken["unasked"] and taken["headline"]["tone"] == "stop"
    assert [carry["to"] for carry in ask(**DIPPED)["carries"]] == ["is-it-enough"]


def test_wood_all_under_the_resin_has_no_part_above_the_line() -> None:
    under = ask(**DIPPED, height="30", fill="42", raised="")
    assert "straight" not in cautions(under) and under["headline"]["label"] == "The wood takes up"
    assert "straight" in cautions(ask(**DIPPED, height="50", fill="42"))


def test_every_way_says_its_spread_as_the_next_question_does() -> None:
    told, asked = hints("how-much-wood", "way"), hints("is-it-enough", "wood_way")
    assert all(asked[way] in hint for way, hint in told.items())
    assert "3 %" in told["dip"] and "too heavy for the scale" in told["level"]
