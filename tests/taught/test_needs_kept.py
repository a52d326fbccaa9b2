"""What a guest must not have and is to be remembered: the caution, the table and the notebook."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.taught.told import Talk, told


@pytest.mark.parametrize("said", ["Remember jo is allergic to nuts", "note that jo is allergic to nuts"])
def test_it_is_kept_and_cautioned_and_stands_for_the_table(talk: Talk, file: Path, said: str) -> None:
    opened = talk()
    opened.ask("got a malbec, brie and dark chocolate")
    answer = opened.ask(said)
    assert answer.text.startswith("Noted for Jo: allergic to nuts.")
    assert answer.cautions
    assert "Kept in the notebook, in your words." in answer.text
    assert [(one.kind, one.said) for one in told(file)] == [("note", said)]
    assert [need.guest for need in opened.tonight.needs] == ["Jo"]


def test_what_is_only_said_is_not_kept(talk: Talk, file: Path) -> None:
    opened = talk()
    assert opened.ask("jo is allergic to nuts").cautions
    assert told(file) == []
    assert [need.guest for need in opened.tonight.needs] == ["Jo"]


def test_a_note_of_something_else_is_kept_as_ever(talk: Talk, file: Path) -> None:
    talk().ask("note that jo is late")
    assert [one.said for one in told(file)] == ["note that jo is late"]
