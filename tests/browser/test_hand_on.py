"""What an answer hands on arrives at the next question, over nothing that was typed there; drawings follow what is typed; long work gives way."""

from __future__ import annotations

from tests.browser import calc_says
from tests.browser.maker import Maker

MOULD = {"across": "350", "depth": "50", "wood": "2400"}
PICTURE = "document.querySelector('.drawing__picture')?.innerHTML ?? ''"


def test_an_answer_hands_its_figure_on_and_keeps_what_was_typed_there(maker: Maker) -> None:
    maker.go("how-much-to-weigh/")
    maker.enter(ratio="100:45", total="99")
    maker.choose(by="weight")
    maker.figure()
    maker.go("is-it-enough/")
    maker.enter(**MOULD)
    maker.figure()
    layers, carry = calc_says.answer("is-it-enough", **MOULD)["carries"][:2]
    assert (layers["to"], carry["to"]) == ("how-deep-how-hot", "how-much-to-weigh")
    weigh = '.carry[href*="how-much-to-weigh"]'
    maker.wait_text(carry["says"], css=weigh)
    maker.tap(css=weigh)
    maker.wait_value("total", carry["inputs"]["total"])
    assert maker.value("ratio") == "100:45"
    maker.wait_figure(calc_says.figure("how-much-to-weigh", ratio="100:45", by="weight", **carry["inputs"]))


HELD = {"diameter": "340", "thickness": "70"}


def test_a_verdict_that_changed_since_it_was_taken_over_is_told_where_the_speed_stands(chromium: Maker) -> None:
    """A faceplate held and was taken over; then a block is asked about, which does not: How fast? and its card say so before anything spins."""
    chromium.go("will-the-mount-hold/")
    chromium.choose(hold="faceplate")
    chromium.enter(circle="130", screws="6", **HELD)
    chromium.figure()
    chromium.tap(css='.carry[href*="how-fast"]')
    chromium.wait_text("Holds", css="[data-field=found]")
    chromium.choose(condition="solid", balance="even", lathe="floor")
    chromium.figure()
    assert not chromium.sees(css=".newer")
    chromium.go("will-the-mount-hold/")
    chromium.choose(hold="glue")
    chromium.enter(block="60")
    chromium.wait_text("No", css=".hero")
    chromium.ask()
    chromium.go("how-fast/card/")
    chromium.wait_text("says otherwise", css=".newer")
    chromium.go("how-fast/")
    chromium.wait_text("says otherwise", css=".newer")
    chromium.tap("button", "Take it over")
    chromium.wait_text("Mend the mount first", css=".hero")
    assert not chromium.sees(css=".newer")


def test_a_drawing_follows_what_is_typed_and_says_it_in_words(chromium: Maker) -> None:
    chromium.go("is-it-enough/")
    chromium.enter(**MOULD)
    chromium.figure()
    drawing = calc_says.answer("is-it-enough", **MOULD)["drawings"][0]
    chromium.wait_text(drawing["says"], css=".drawing figcaption")
    marks = chromium.eval("document.querySelectorAll('.drawing__picture > *').length")
    assert marks == len(drawing["marks"])
    before = chromium.eval(PICTURE)
    chromium.enter(depth="120")
    deeper = calc_says.answer("is-it-enough", **MOULD | {"depth": "120"})["drawings"][0]
    chromium.wait_text(deeper["says"], css=".drawing figcaption")
    assert chromium.eval(PICTURE) != before


def test_a_field_shows_where_the_choice_it_hangs_on_stands_under_more(chromium: Maker) -> None:
    chromium.go("is-it-enough/")
    assert chromium.sees(css='[data-field="have"] input')
    chromium.choose(shelf_by="volume")
    assert chromium.sees(css='[data-field="have_volume"] input') and not chromium.sees(css='[data-field="have"] input')


DEEP = {"deepest": "50", "depth": "30", "length": "600", "width": "300", "room": "20"}
LISTEN = """(() => {
  window.said = [];
  const words = document.querySelector('[data-part="readout-words"]');
  new MutationObserver(() => said.push(words.textContent)).observe(words, { childList: true, characterData: true, subtree: true });
  return true;
})()"""


def test_long_work_tells_how_far_it_is_and_gives_way_to_the_next_entry(maker: Maker) -> None:
    maker.go("how-deep-how-hot/")
    maker.count_starts()
    maker.enter(**{name: text for name, text in DEEP.items() if name != "room"})
    maker.eval(LISTEN)
    maker.enter(room=DEEP["room"])
    maker.wait_figure(calc_says.figure("how-deep-how-hot", **DEEP))
    shares = [int(text.split()[-2]) for text in maker.eval("said") if text.endswith("%")]
    assert shares and shares == sorted(shares), "progress is told, and only goes up"
    maker.enter(depth="20")
    maker.enter(depth="15")
    maker.wait_text(calc_says.answer("how-deep-how-hot", **DEEP | {"depth": "15"})["headline"]["say"], css="#answer")
    assert maker.starts() == 0, "an entry ends the work before it without a new start"


def test_a_list_opened_under_an_answer_goes_by_its_figures_and_keeps_them(maker: Maker) -> None:
    maker.go("how-fast/")
    maker.choose(condition="solid", balance="even", lathe="floor")
    maker.enter(diameter="150")
    maker.figure()
    carry = calc_says.answer("how-fast", diameter="150", condition="solid", balance="even", lathe="floor")["carries"][0]
    assert carry["to"] == "before-the-lathe"
    maker.wait_text(carry["says"], css=".carry")
    maker.tap(css='[data-part="lists"] a[href*="/c5/"]')
    maker.wait_text(carry["inputs"]["ceiling"], css='[data-part="figures"]')
    maker.go("before-the-lathe/")
    maker.wait_value("ceiling", carry["inputs"]["ceiling"])


TAKEN = "location.pathname.endsWith('/c5/') && !location.hash"


def test_a_list_is_never_judged_with_the_mount_of_the_piece_before(chromium: Maker) -> None:
    blocked, centred = {"diameter": "300", "block": "150"}, {"hold": "centres", "diameter": "60", "length": "300"}
    handed = {carry["to"]: carry["inputs"] for carry in calc_says.answer("will-the-mount-hold", **blocked)["carries"]}
    assert "150" in handed["before-the-lathe"]["mount"]
    assert [carry["to"] for carry in calc_says.answer("will-the-mount-hold", **centred)["carries"]] == ["how-fast"], "it has no word for the lists"
    chromium.go("before-the-lathe/")
    chromium.enter(sweeps="280")  # handed over, it is laid over; what is said of nothing handed stays
    chromium.choose(sound="yes")
    chromium.go("will-the-mount-hold/")
    chromium.enter(**blocked)
    chromium.figure()
    chromium.tap(css='[data-part="lists"] a[href*="/c5/"]')
    chromium.wait_for(TAKEN)
    chromium.go("before-the-lathe/c4/")
    chromium.wait_text("150 mm", css="#c4-5 [data-part=gate]")
    chromium.go("will-the-mount-hold/")
    chromium.choose(hold="centres")
    chromium.enter(diameter="60", length="300")
    chromium.wait_figure(calc_says.figure("will-the-mount-hold", **centred))
    chromium.tap(css='[data-part="lists"] a[href*="/c5/"]')
    chromium.wait_for(TAKEN)
    chromium.go("before-the-lathe/c4/")
    chromium.wait_for("document.querySelector('#c4-5 [data-part=gate]').dataset.state === 'not checked'")
    assert "150" not in chromium.text("#c4-5 [data-part=gate]")
    chromium.go("before-the-lathe/")
    assert {name: typed["typed"] for name, typed in chromium.stored("drafts", "before-the-lathe")["inputs"].items()} == {"sound": "yes"}


def test_what_was_handed_on_before_is_taken_back_but_not_what_was_typed_there(chromium: Maker) -> None:
    blank = {"form": "round", "across": "300", "along": "50", "hold": "block", "lathe": "floor", "covers": "120"}
    to_mount = '.carry[href*="will-the-mount-hold"]'
    chromium.go("does-it-fit-the-lathe/")
    chromium.choose(form="round", hold="block", lathe="floor")
    chromium.enter(across="300", along="50", covers="120")
    for again in (False, True):
        if again:
            chromium.go("does-it-fit-the-lathe/")
            chromium.enter(across="320", covers="")
        now = blank | ({"across": "320", "covers": ""} if again else {})
        carry = next(carry for carry in calc_says.answer("does-it-fit-the-lathe", **now)["carries"] if carry["to"] == "will-the-mount-hold")
        assert ("block" in carry["inputs"]) is not again
        chromium.wait_text(carry["says"], css=to_mount)
        chromium.tap(css=to_mount)
        chromium.wait_value("diameter", carry["inputs"]["diameter"])
        chromium.wait_value("block", carry["inputs"].get("block", ""))
        if again:
            assert chromium.value("mass") == "6"
        else:
            chromium.enter(mass="6")
    chromium.enter(block="130")
    chromium.wait_for("!location.hash")
    chromium.go("does-it-fit-the-lathe/")
    chromium.wait(css=to_mount)
    chromium.tap(css=to_mount)
    chromium.wait_value("block", "130")
