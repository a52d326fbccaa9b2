"""`Greg only drinks red`, `Ida hates oak`: a guest who drinks one sort of wine and no other, or not some."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.retold import either


@dataclass(frozen=True, slots=True)
class OnlyWords:
    """The table `only` of corpus/language/guests.toml: all turns that mean `said`, and the like for food."""

    turns: re.Pattern[str]
    said: str
    drinks: re.Pattern[str]
    eats: re.Pattern[str]
    dislikes: re.Pattern[str]
    one: re.Pattern[str]
    too: str

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> OnlyWords:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table = tables["only"]
        turns, wine = either(table["turns"]), either(table["wine"])
        return cls(
            re.compile(rf"\s{turns}\s(?P<sort>\w+)(?:\s{wine}\b)?", re.IGNORECASE),
            table["said"],
            re.compile(rf"\b(?:{re.escape(table['said'])}|^{either(table['drinks'])})\s(?P<sort>.+)"),
            re.compile(rf"\b{either(table['eats'])}\s"),
            _dislikes(tables["dislikes"]),
            re.compile(
                rf"{either(tables['dislikes']['opens'])}\s{either(tables['dislikes']['one'])}\b", re.I
            ),
            table["too"],
        )


def _dislikes(table: Mapping[str, Any]) -> re.Pattern[str]:
    """What opens a dislike of a sort, and not of one wine (`hates the rosé`)."""
    return re.compile(rf"\b{either(table['opens'])}\s(?!{either(table['one'])}\b)", re.IGNORECASE)


@lru_cache(maxsize=1)
def _words() -> OnlyWords:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", OnlyWords.of)


def said_plainly(typed: str) -> str:
    """`Greg sticks to red wine` as `Greg only drinks red`; any other text as it is."""
    return _words().turns.sub(lambda found: f" {_words().said} {found['sort']}", typed)


def sort_drunk(need: str) -> str:
    """What alone is drunk, in the words said; empty where the need is another one."""
    found = _words().drinks.search(need)
    return found["sort"] if found else ""


def with_another(need: str, wine: str) -> str:
    """The need of a guest who drinks one wine beside the sort that alone is drunk."""
    return f"{need} {_words().too} {wine}"


def drunk_too(sort: str) -> tuple[str, str]:
    """A sort of wine, and what is drunk beside it (empty for most)."""
    first, _, behind = sort.partition(f" {_words().too} ")
    return first, behind


def dislikes(need: str) -> bool:
    """Whether something is said not to be liked (`hates oak`)."""
    return _words().dislikes.match(need) is not None


def says_dislike(text: str) -> bool:
    """Whether it is said somewhere in a text that something is not liked."""
    return _words().dislikes.search(text) is not None


def dislikes_one(need: str) -> bool:
    """Whether one wine is said not to be liked (`can't stand the Rioja`), which is a vote and no need."""
    return _words().one.match(need) is not None


def eats_only(need: str) -> bool:
    """Whether one food alone is said to be eaten, which tells of no food that is left out."""
    return bool(_words().eats.search(need))
