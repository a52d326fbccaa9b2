"""`R forgot to say she's lactose intolerant`: what is retold of a guest, put first hand."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data


@dataclass(frozen=True, slots=True)
class Retold:
    """What is left out of what is retold: `mine` in front, `theirs` between a guest and the need.

    `where`: the place behind a guest; `the_one`: that this is who has the need; `behind`: somebody, a need,
    and only then the name of who has it; `short`: a name run together with `is` in front of a need.
    """

    mine: re.Pattern[str]
    theirs: re.Pattern[str]
    where: re.Pattern[str]
    the_one: re.Pattern[str]
    short: re.Pattern[str]
    behind: re.Pattern[str]
    several: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> Retold:
        """The turns of the table `retold`. Raises KeyError for a key that is missing."""
        table = tables["retold"]
        names = ("mine", "verbs", "who", "where", "the_one", "short_needs", "ones", "named_by")
        mine, verbs, who, where, the_one, short, ones, named_by = (either(table[key]) for key in names)
        days = either(tables["days"])  # `somebody is late, it's Friday`
        return cls(
            re.compile(rf"{mine}\s(?:that\s)?", re.IGNORECASE),
            re.compile(rf"\s{verbs}\s(?:that\s)?{who}(?:(?P<is>s\b|re\b)|\b)", re.IGNORECASE),
            re.compile(rf"(?<=\w)\s{where}(?=\s|['’]s\b)", re.IGNORECASE),
            re.compile(rf"(?<=\w){the_one}(?=\s)", re.IGNORECASE),
            re.compile(rf"^(?P<name>[a-z]\w+)s(?=\s{short}\b)", re.IGNORECASE),
            re.compile(
                rf"\b(?i:{ones})\s(?P<need>[^,;.?!]+)[,;]\s(?i:{named_by})\s(?!(?i:{days})\b)(?P<name>[A-Z]\w+)"
            ),
            frozenset(table["several"]),
        )


@lru_cache(maxsize=1)
def _retold() -> Retold:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", Retold.of)


def first_hand(typed: str) -> str:
    """What is said, without that somebody said it; any other text as it is."""
    known = _retold()
    found = known.mine.match(typed)
    said = known.where.sub("", typed[found.end() :] if found else typed, count=1)
    said = known.the_one.sub("", said, count=1)
    said = known.theirs.sub(lambda match: " is" if match["is"] else "", said, count=1)
    return known.short.sub(_apart, said)


def _apart(match: re.Match[str]) -> str:
    """`Marks allergic` as `Mark is allergic`; several people called by a word (`two guests`) are left so."""
    return match[0] if match[0].lower() in _retold().several else f"{match['name']} is"


def named_first(typed: str) -> str:
    """`One of them is pregnant, that's Nell` as it is said of Nell; any other text as it is."""
    return _retold().behind.sub(r"\g<name> \g<need>", typed, count=1)


def either(words: Iterable[str]) -> str:
    """A pattern of any of these words, the longest first."""
    return f"(?:{'|'.join(re.escape(word) for word in sorted(words, key=len, reverse=True))})"
