"""`My uncle's diabetic becca's allergic to nuts`: needs dictated in one breath, put apart guest by guest."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold
from assistant.language.retold import either
from assistant.language.spelling import is_english

STOPS = (",", ";", ".", "!", ":")


@dataclass(frozen=True, slots=True)
class RunOn:
    """The table `run_on` of corpus/language/guests.toml: somebody with a need, and what goes on before it.

    `told`: what is told behind a name; `names`: those that are words too.
    """

    somebody: re.Pattern[str]
    told: re.Pattern[str]
    joins: frozenset[str]
    names: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> RunOn:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table = tables["run_on"]
        counted, of, my, law, is_, so, needs, verbs = (
            either(table[key]) for key in ("counted", "of", "my", "law", "is", "so", "needs", "verbs")
        )
        kin = either(tables["named"]["kin"])
        told = rf"(?:{is_}(?:\s{so}){{0,2}}\s{needs}|\s{verbs})\b"
        some = rf"(?:\d{{1,3}}|{counted})(?:\s{of}){{0,2}}"
        family = rf"{my}\s(?:\w{{1,20}}\s)?{kin}(?:\s{law})?(?:\s\w{{1,20}}?)?"
        return cls(
            re.compile(
                rf"(?<![\w'’-])(?:(?P<sure>{some}|{family})|(?P<name>[^\W\d]\w{{1,30}}?)){told}",
                re.IGNORECASE,
            ),
            re.compile(rf"\w{{1,30}}?{told}", re.IGNORECASE),
            frozenset((*table["joins"], *tables["named"]["kin"])),
            frozenset((*tables["named"]["everyday"], *table["names"])),
        )


@lru_cache(maxsize=1)
def _run_on() -> RunOn:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", RunOn.of)


def parted(typed: str) -> str:
    """The line with a comma in front of each guest who is told of behind another without one."""
    for found in reversed(list(_run_on().somebody.finditer(typed))):
        before = typed[: found.start()].rstrip()
        if before and not _goes_on(before) and (found["sure"] or _is_name(found["name"])):
            typed = f"{before}, {typed[found.start() :]}"
    return typed


def tells_need(said: str) -> bool:
    """Whether a text opens with one word and a need told of it (`ray's diabetic`)."""
    return bool(_run_on().told.match(said))


def _goes_on(before: str) -> bool:
    """Whether what is told of somebody began before: behind a stop, `and` or `Lena's` nobody else does."""
    last = fold(before.split()[-1])
    return before.endswith(STOPS) or last in _run_on().joins or last.endswith(("'s", "’s"))


def _is_name(word: str) -> bool:
    """Whether a word may be what somebody is called."""
    return word[:1].isupper() or fold(word) in _run_on().names or not is_english(fold(word))
