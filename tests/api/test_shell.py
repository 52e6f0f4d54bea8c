"""The same door from a shell."""

from __future__ import annotations

import json

import pytest

from calc import desk
from calc.__main__ import main
from tests.api.test_desk import IDS, PLAIN


def _words(id: str) -> list[str]:
    return [f"{name}={text}" for name, text in PLAIN[id].items()]


def test_list_names_every_question(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["list"]) == 0
    out = capsys.readouterr().out
    assert all(id in out for id in IDS)


@pytest.mark.parametrize("id", IDS)
def test_describe_tells_every_field(id: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["describe", id, "--units", "imperial"]) == 0
    out = capsys.readouterr().out
    assert all(f"{field['name']}:" in out for field in desk.describe(id)["fields"])


@pytest.mark.parametrize("id", IDS)
def test_an_answer_reads_as_on_the_page(id: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([id, *_words(id)]) == 0
    assert capsys.readouterr().out.strip() == desk.answer(id, PLAIN[id])["text"]


@pytest.mark.parametrize("id", IDS)
def test_json_has_si_beside_what_is_shown(id: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([id, *_words(id), "--json"]) == 0
    values = json.loads(capsys.readouterr().out)["values"]
    assert values and all({"si", "dimension", "shown"} == set(value) for value in values.values())


def test_bad_input_is_exit_2_with_the_error_text(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["how-fast", "diameter=wide"]) == 2
    assert "'wide' is not a number" in capsys.readouterr().err


def test_a_slip_is_asked_about_and_kept_on_yes(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["how-fast", "diameter=15 mm"]) == 2
    assert "--yes keeps it" in capsys.readouterr().err
    assert main(["how-fast", "diameter=15 mm", "--yes"]) == 0


def test_an_input_that_another_choice_leaves_unasked_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["how-fast", "diameter=300", "steps=200 400"]) == 0
    assert capsys.readouterr().err == "Not used: steps (asked when speeds is steps).\n"
    assert main(["how-fast", "diameter=300", "steps=200 400", "speeds=steps"]) == 0
    assert capsys.readouterr().err == ""


@pytest.mark.parametrize("words", [["how-far"], ["describe", "nothing"], ["how-fast", "diameter=300", "colour=blue"]])
def test_what_does_not_exist_is_exit_2(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(words) == 2
    assert capsys.readouterr().err


@pytest.mark.parametrize("words", [[], ["describe"], ["how-fast", "diameter"], ["list", "--units", "cubits"]])
def test_wrong_use_is_exit_2(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(words)
    assert stopped.value.code == 2
    assert "usage" in capsys.readouterr().err
