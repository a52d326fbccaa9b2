"""What a word means: terms that are plain words too are known where their meaning is asked."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("what does racy mean", "Racy means"),
        ("what do they mean when they say a wine is tight", "Tight means"),
        ("whats it mean if a wine is hot", "Hot means"),
        ("what is orange wine", "Orange wine is"),
        ("whats a foudre", "Foudre is"),
        ("what does resveratrol mean", "Resveratrol is"),
        ("what does dessert wine mean", "Sweet wine: wine with"),
        ("what does garrigue mean", "Garrigue: hot stony"),
        ("what does vin jaune mean", "Vin jaune: dry"),
        ("what is tannin", "Tannin is"),
        ("what does racy acidity mean", "Racy means"),
    ],
)
def test_the_meaning_is_told(session: Session, asked: str, said: str) -> None:
    session.new_conversation()
    answer = session.ask(asked)
    assert answer.say.startswith(said)
    assert answer.understood
    assert not answer.left_out


@pytest.mark.parametrize(
    "asked",
    [
        "a crisp white for oysters",
        "a rich red for stew",
        "hot wings, what wine",
        "it has to be clean and fresh",
    ],
)
def test_elsewhere_such_words_are_what_they_were(session: Session, asked: str) -> None:
    session.new_conversation()
    assert session.ask(asked).intent != "define"
    assert not session.parser.parse(asked).terms
