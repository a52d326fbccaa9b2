"""The words that were not known, the commonest first, each with the sentence that teaches it."""

from __future__ import annotations

import re

import pytest

from assistant.session import Session
from tests.taught.told import Talk


@pytest.fixture
def stumbled(talk: Talk) -> Session:
    """A conversation in which two words were not known, one of them more often."""
    opened = talk()
    for said in ("what goes with zorblat", "what goes with zorblat and brie", "what goes with fribblewort"):
        opened.ask(said)
    return opened


@pytest.mark.parametrize(
    "said",
    [
        "what didn't you know",
        "what didnt you know",
        "which words didn't you know",
        "what did you not understand",
        "what don't you know",
        "what should i teach you",
    ],
)
def test_unknown_words_are_told_by_how_often(stumbled: Session, said: str) -> None:
    answer = stumbled.ask(said)
    lines = answer.text.splitlines()
    assert (answer.intent, answer.say) == ("help", "2 words I did not know; “zorblat” came up most.")
    assert lines[1].startswith("“zorblat” (2 ×, last on ")
    assert lines[2].startswith("“fribblewort” (1 ×")


def test_the_sentence_teaches_the_word(stumbled: Session) -> None:
    line = stumbled.ask("what didn't you know").text.splitlines()[1]
    sentence = re.search(r"say: (.+) \(a food I know\)", line)
    assert sentence
    assert stumbled.ask(sentence[1].replace("…", "burrata")).say == "Kept: “zorblat”, like burrata."
    assert stumbled.ask("what didn't you know").say == "I do not know “fribblewort” yet."


def test_a_word_told_to_be_unknown_is_known_now_or_taught(stumbled: Session) -> None:
    assert stumbled.ask("it didnt know burrata fix that").say == "I know “burrata” now: burrata."
    answer = stumbled.ask("it didnt know zorblat fix that")
    assert answer.say == "I do not know “zorblat” yet."
    assert "new food: zorblat, like" in answer.text


def test_nothing_unknown_is_said(talk: Talk) -> None:
    opened = talk()
    opened.ask("what goes with brie")
    assert opened.ask("what didn't you know").say == "I find no word in the log that I do not know by now."


def test_without_a_log_it_is_said(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("what didn't you know")
    assert (answer.understood, answer.say) == (
        False,
        "I keep no log of answers now, so I cannot tell what I did not know.",
    )
