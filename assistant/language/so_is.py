"""`Priya is vegetarian and so is Helen`, `both Kate and Jo drive`: the need told of each guest in full."""

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
class SoIs:
    """The table `so_is` of corpus/language/guests.toml: `too` tells the same of others, `both` is left."""

    too: re.Pattern[str]
    both: re.Pattern[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> SoIs:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table, lead = tables["so_is"], either(tables["lead"]["words"])
        told, so, ends = (either(table[name]) for name in ("told", "so", "ends"))
        name = r"(?:(?:my|our)\s\w+(?:\s[A-Z]\w*)?|[^\W\d]\w*)"
        names = rf"{name}(?:(?:,\s(?:and\s)?|\sand\s){name}){{0,3}}"
        return cls(
            re.compile(
                rf"^(?:{lead}\s)*(?P<who>{names})(?P<told>{told}\s[^,;.?!]+?),?\s(?:and\s)?{so}\s(?P<others>{names})"
                rf"(?:\s{ends})*[ .!]*$",
                re.IGNORECASE,
            ),
            re.compile(
                rf"(?<![\w'’-])(?:both|all of)\s(?={name}(?:,\s{name})*\sand\s{name}\s)", re.IGNORECASE
            ),
        )


@lru_cache(maxsize=1)
def _words() -> SoIs:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", SoIs.of)


def each_told(typed: str) -> str:
    """The text with what is told of one guest told of the others in full; any other text as it is."""
    return _words().too.sub(_in_full, _words().both.sub("", typed))


def _in_full(found: re.Match[str]) -> str:
    guests = re.split(r",\s(?:and\s)?|\sand\s", f"{found['who']} and {found['others']}", flags=re.IGNORECASE)
    return " and ".join(f"{guest}{found['told']}" for guest in guests)
