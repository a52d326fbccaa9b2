"""`Yusuf's pregnant wife is coming`, `Leila, she's preggo`: what is said of a guest, put plainly."""

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

OWNS = ("'s", "’s")


@dataclass(frozen=True, slots=True)
class SaidOf:
    """The table `said_of` of corpus/language/guests.toml, as patterns.

    `plain`: words of talk and the need they mean; `before`: a need told in front of whom it is of
    (`Tom's vegan girlfriend`); `she`: a name, and what is said of it behind a comma; `there`: what stands
    before the need of one who is there.
    """

    plain: Mapping[str, str]
    slang: re.Pattern[str]
    before: re.Pattern[str]
    she: re.Pattern[str]
    there: re.Pattern[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> SaidOf:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table, retold = tables["said_of"], tables["retold"]
        plain = {word: need for need, words in table["plain"].items() for word in words}
        opens, whose, comes = (either(table[key]) for key in ("opens", "whose", "comes"))
        kin = either((*tables["named"]["kin"], *tables["someone"]["words"]))
        need, who = either((*retold["short_needs"], *plain)), either(retold["who"])
        before = (
            rf"(?:^|(?<=[,;.]\s))(?:{opens}\s)*(?P<whose>{whose}|[^\W\d]\w*['’]s)\s(?P<need>{need})\s"
            rf"(?P<kin>{kin}(?:(?!{comes}\b)\s[^\W\d]\w+)?){comes}(?=\s|$|[.,;!])"
        )
        she = rf"(?:^|(?<=[,;.]\s))(?P<name>[^\W\d]\w*),\s?{who}(?P<is>['’]?s|\sis|\shas)\b(?=\s)"
        return cls(
            plain,
            re.compile(rf"(?<![\w'’-]){either(plain)}(?![\w'’-])", re.IGNORECASE),
            re.compile(before, re.IGNORECASE),
            re.compile(she, re.IGNORECASE),
            re.compile(rf"^{either(table['there'])}\s(?=\S+$)", re.IGNORECASE),
        )


@lru_cache(maxsize=1)
def _words() -> SaidOf:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", SaidOf.of)


def of_one_there(need: str) -> str:
    """The need of one who is there (`have a vegetarian`), without that; any other as it is."""
    return _words().there.sub("", need)


def plainly(typed: str) -> str:
    """The text with each need behind whom it is of, in plain words; any other text as it is."""
    words = _words()
    told = words.she.sub(_named, words.before.sub(_behind, typed))
    return words.slang.sub(lambda found: words.plain[found[0].lower()], told)


def _behind(found: re.Match[str]) -> str:
    """`Tom's vegan girlfriend` as Tom's girlfriend who is vegan, Tom written as a name."""
    whose = found["whose"]
    whose = whose[0].upper() + whose[1:] if whose.endswith(OWNS) else whose
    return f"{whose} {found['kin']} is {found['need']}"


def _named(found: re.Match[str]) -> str:
    """`Leila, she's pregnant` as `Leila is pregnant`; what is no name is left (`sorry, she's vegan`)."""
    return f"{found['name']}{found['is']}" if fold(found["name"]) in given_names() else found[0]
