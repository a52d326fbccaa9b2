"""`I'm allergic to nuts`: the need of whoever speaks, told as that of a guest who is called `you`."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.frame import Frame
from assistant.language.guests import MOST_NEED, Asked, Told, guest_words
from assistant.language.retold import either
from assistant.language.sober import is_sober


@dataclass(frozen=True, slots=True)
class OwnWords:
    """The table `own` of corpus/language/guests.toml: how who speaks is `called`, `whose` somebody of theirs
    is, `needs` as told, `asks`.

    `ails`: the words for what ails somebody.
    """

    called: str
    whose: str
    needs: re.Pattern[str]
    asks: re.Pattern[str]
    ails: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> OwnWords:
        """The words read from the file's tables. Raises KeyError for a key that is missing."""
        own, lead = tables["own"], either(tables["lead"]["words"])
        ails = rf"{either(own['has'])}\s+(?=.*\b{either(own['ails'])}$)"
        told = rf"(?:{either(own['is'])}\s+|{ails}|i\s+(?={either(own['does'])}\s))(?P<need>.+)$"
        needs, asks = rf"^(?:{lead}\s+)*{told}", rf"\b{either(own['asks'])}\b"
        told_by, asked_by = (re.compile(line, re.IGNORECASE) for line in (needs, asks))
        return cls(own["called"], own["whose"], told_by, asked_by, frozenset(own["ails"]))


@lru_cache(maxsize=1)
def own_words() -> OwnWords:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", OwnWords.of)


def own_told(frame: Frame) -> Told:
    """The need that whoever speaks tells of, where nothing is asked; to drive is no need at the board."""
    typed = frame.text.typed.replace("’", "'").strip(" .!")
    asks = guest_words().asks.intersection(re.findall(r"[\w']+|\?", typed.lower()))
    found = own_words().needs.match(typed)
    if found is None or asks or not (frame.topics or frame.diets or frame.barred):
        return Told()
    return Told((Asked(own_words().called, found["need"]),)) if _is_need(found["need"]) else Told()


def _is_need(need: str) -> bool:
    """Whether it is short, denies nothing (`I'm not vegan`) and tells of nobody else (`R may have Brie`)."""
    words, known = need.lower().split(), guest_words()
    other = known.denies.intersection(words[:1]) or known.no_name_verbs.intersection(words)
    return len(words) <= MOST_NEED and not other and not is_sober(need)


def asks_for_own(typed: str, needs: Sequence[Asked]) -> str:
    """Whoever spoke of a need and asks now (`what can I have`), as called; empty where nobody does."""
    words = own_words()
    told = any(one.guest == words.called for one in needs)
    return words.called if told and words.asks.search(typed.replace("’", "'")) else ""
