"""A list of words answers as a set of them would."""

from __future__ import annotations

import json

from hypothesis import given
from hypothesis import strategies as st
from spellchecker import SpellChecker

from assistant.language.spelling import english
from assistant.language.word_list import WordList, shelved

WORDS = st.text("abc'é", min_size=1, max_size=6)


@given(st.sets(WORDS), st.sets(st.text("abc'é ", max_size=8)))
def test_it_holds_what_a_set_holds(words: set[str], asked: set[str]) -> None:
    listed = WordList(json.loads(json.dumps(shelved(words))))
    assert len(listed) == len(words)
    assert {word for word in words | asked if word in listed} == words


def test_two_neighbours_are_no_word() -> None:
    assert "tannic tannin" not in WordList(shelved(["tannic", "tannin"]))


def test_all_of_the_english_list_is_kept() -> None:
    words = SpellChecker(language="en", distance=1).word_frequency.dictionary
    assert len(english()) == len(words)
    assert all(word in english() for word in words)
