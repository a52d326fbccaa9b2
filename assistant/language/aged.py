"""`Theo's fourteen`, `my nephew is 14`: how old a young guest is, told as a need."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold
from assistant.language.retold import either, given_names


@dataclass(frozen=True, slots=True)
class AgeWords:
    """The table `aged` of corpus/language/guests.toml: `turn` tells of an age, `told` is how it is written.

    `kin`: words for people who have no other name; `bare`: what is written alone; `names`: those that stand
    in lists of words too, `everyday`: those that are words.
    """

    turn: re.Pattern[str]
    told: str
    bare: re.Pattern[str]
    kin: frozenset[str]
    names: frozenset[str]
    everyday: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> AgeWords:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table = tables["aged"]
        is_, small, ages, years, then = (
            either(table[key]) for key in ("is", "small", "ages", "years", "then")
        )
        turn = (
            rf"(?<![\w'’-])(?P<who>[^\W\d]\w*){is_}\s(?:{small}\s)*(?P<age>{ages})(?:[\s-]?{years})?"
            rf"(?=[ .!]*$|\s?[,;]|\s{then}\b)"
        )
        bare = re.compile(re.escape(table["told"]).replace(r"\{age\}", ages), re.IGNORECASE)
        named, names = tables["named"], frozenset(tables["run_on"]["names"])
        turn_ = re.compile(turn, re.IGNORECASE)
        return cls(turn_, table["told"], bare, frozenset(named["kin"]), names, frozenset(named["everyday"]))


@lru_cache(maxsize=1)
def _words() -> AgeWords:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", AgeWords.of)


def with_age(typed: str) -> str:
    """`Theo's only 14` as `Theo is 14 years old`; of grown-up people and of things it is left as it is."""
    return _words().turn.sub(_told, typed)


def tells_age(need: str) -> bool:
    """Whether nothing else is said of a guest than an age at which nobody drinks."""
    return bool(_words().bare.fullmatch(need.strip(" .!")))


def _told(found: re.Match[str]) -> str:
    person = fold(found["who"]) in _words().kin or known_name(found["who"])
    return f"{found['who']} is {_words().told.format(age=found['age'])}" if person else found[0]


def known_name(word: str) -> bool:
    """Whether a word is what people are called; one that is a word too only as names are written."""
    name = fold(word)
    everyday = word[:1].isupper() and name in _words().everyday
    return everyday or name in _words().names or name in given_names()
