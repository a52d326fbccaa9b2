"""`Bo rated the malbec`: a word in the place of a person, which is no slip for a food or a wine."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from spacy.tokens import Doc, Token

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold
from assistant.language.frame import Reading
from assistant.language.guest_named import POSSESSIVE
from assistant.language.guests import guest_words
from assistant.language.run_on import tells_need


def is_person(doc: Doc, start: int, end: int) -> bool:
    """Whether the words from `start` to `end` (exclusive) open a sentence and do what only people do.

    Typed small, it is a person only where what is done was swallowed as well (`bo rated` is no burrata).
    """
    if end == start + 2 and fold(doc[start].text) in _persons().asked and doc[start + 1].is_title:
        return True  # `and can Ann` is no Chinon
    if end <= start or start + 1 >= len(doc) or not _opens(doc, start):
        return False
    does = fold(doc[start + 1].text) in guest_words().does
    return does and (doc[start].text[:1].isupper() or end > start + 1)


def _opens(doc: Doc, at: int) -> bool:
    """Whether a text, a part of it or a second name starts here."""
    return at == 0 or not doc[at - 1].text[:1].isalnum() or fold(doc[at - 1].text) in guest_words().lead


@dataclass(frozen=True, slots=True)
class Persons:
    """The table `persons` of corpus/language/guests.toml: what only people do, and what is asked of them."""

    does: frozenset[str]
    asked: frozenset[str]
    may: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> Persons:
        """The words of the file. Raises KeyError for a key that is missing."""
        return cls(*(frozenset(tables["persons"][key]) for key in ("does", "asked", "may")))


@lru_cache(maxsize=1)
def _persons() -> Persons:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", Persons.of)


def is_called_so(doc: Doc, reading: Reading) -> bool:
    """Whether a name that is a word too is somebody's here: `uncle ray`, `can ray have`."""
    known, token = guest_words(), doc[reading.start]
    name = fold(POSSESSIVE.sub("", token.text))
    if reading.end != reading.start + 1 or name not in known.everyday:
        return False
    before = fold(token.nbor(-1).text) if token.i else ""
    if before in known.kin:
        return True
    return name not in known.eaten_too and (_does(token) or _may(token, before))


def _does(token: Token) -> bool:
    """Whether what stands behind is what only people do or need."""
    behind = token.doc[token.i + 1 :]
    does = len(behind) > 0 and fold(behind[0].text) in guest_words().does | _persons().does
    return does or tells_need(f"{token.text} {behind.text}")


def _may(token: Token, before: str) -> bool:
    """Whether it is asked what somebody may do."""
    behind = token.doc[token.i + 1 : token.i + 2].text
    return before in _persons().asked and fold(behind) in _persons().may
