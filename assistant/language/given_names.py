"""`Carmen adored the Torrontés`: what people are called, which is neither food nor wine."""

from __future__ import annotations

from collections.abc import Set

from spacy.tokens import Doc, Token

from assistant.language.fold import fold
from assistant.language.frame import Reading
from assistant.language.guest_named import POSSESSIVE
from assistant.language.small_words import small_words
from assistant.language.spelling import is_english


def is_given_name(token: Token, names: Set[str]) -> bool:
    """Whether the word is a given name that stands for somebody.

    It stands for a thing behind an article or what calls things by names (`a Carmen`, `cheese called Otto`),
    and as a part of a longer name (`Tessa Blue`); in small letters also where a food may stand.
    """
    word = POSSESSIVE.sub("", token.text)
    if fold(word) not in names:
        return False
    return word != token.text or not (_of_a_thing(token) or _goes_on(token) or _ends(token, names))


def is_somebody(doc: Doc, reading: Reading, names: Set[str]) -> bool:
    """Whether what a food is called in the plural is a person's name (`Tomas` is no toma)."""
    word = doc[reading.start]
    alone = reading.end == reading.start + 1 and word.text[:1].isupper() and word.norm_ != fold(word.text)
    return alone and is_given_name(word, names)


def _of_a_thing(token: Token) -> bool:
    """Whether the word before tells that a thing is named, or something to eat."""
    before = token.nbor(-1).norm_ if token.i else ""
    eaten = token.text.islower() and before in small_words()["names-eaten"]
    return eaten or before in small_words()["names-things"]


def _goes_on(token: Token) -> bool:
    """Whether a word with a capital letter, or one that is not English, stands behind it."""
    if token.i + 1 >= len(token.doc) or not token.nbor().is_alpha:
        return False
    behind = token.nbor()
    return behind.text[:1].isupper() or not (is_english(behind.norm_) or behind.is_stop)


def _ends(token: Token, names: Set[str]) -> bool:
    """Whether a word with a capital letter that is neither English nor a name stands before it."""
    before = token.nbor(-1) if token.i else token
    strange = before is not token and before.text[:1].isupper() and fold(before.text) not in names
    return strange and not (is_english(before.norm_) or before.is_stop)
