"""`Josh is popping in, he's 17, can he have a glass`: that a guest is under age, told apart from the rest."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from spacy.lang.en.stop_words import STOP_WORDS

from assistant.knowledge.files import corpus_dir
from assistant.language.aged import known_name
from assistant.language.data import read_data
from assistant.language.fold import fold
from assistant.language.retold import either

_WORD = re.compile(r"(?<![\w'’-])[^\W\d][\w-]*+")
_STOP = re.compile(r"(?<=\w)(?:[,;.!?]++\s++(?:(?:and|but|so)\s)?|\s(?:and|but|so)\s)")
_WANTS = re.compile(r"^(?P<who>[^\W\d]\w*)\s(?:and|but)\s")
MOST_TOLD = 4
IsThing = Callable[[str], bool]
_EMPTY = re.compile(r"\s*+[,;]?\s*+(?=[,;.!?]|$)|^[\s,;.–-]+")


@dataclass(frozen=True, slots=True)
class YoungWords:
    """The table `young` of corpus/language/guests.toml: an age at which nobody drinks, as it is told.

    `told`: each way to tell of it; `kin`: whom it may be said of who has no name, `he` and `she` where nobody
    is named at all; `need`, `under`: what is noted of an age in years, and of any other; `asks`: what opens
    a question; `ages`: those in words as figures; `no_name`: what has a number and is nobody.
    """

    told: tuple[re.Pattern[str], ...]
    kin: re.Pattern[str]
    she: Mapping[str, str]
    need: str
    under: str
    asks: re.Pattern[str]
    ages: Mapping[str, str]
    no_name: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> YoungWords:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table, aged = tables["young"], tables["aged"]
        names = ("under", "isnt", "because", "aged", "whose", "mine", "kin", "asks")
        under, isnt, because, of_age, whose, mine, kin, asks = (either(table[name]) for name in names)
        ages, years, small, then = (either(aged[name]) for name in ("ages", "years", "small", "then"))
        years = years.replace("\\ ", r"[\s-]")  # `16-year-old`
        is_, she = either(table["is"]), either(table["she"])
        number = rf"(?:{of_age}\s)?(?P<age>{ages})(?:[\s-]?{years})?"
        said = rf"(?:{is_}\s(?:{small}\s)*(?:{number}|{under})|{isnt})"
        ends = rf"(?=\s?[,;.!?)]|\s?$|\s(?:{because}|{then}|and|but|so)\b)"
        told = (
            rf"(?:^|(?<=[,;.?!])|\s{because}\b|(?<=\w)\s[-–]|(?<=\w)\sand\b|(?<=\w)\sbut\b)\s?(?:{she}){said}{ends}",
            rf"(?<![\w'’-])(?P<who>[^\W\d][\w-]*){said}{ends}",
            rf"\s?\((?:{she})?(?:{is_})?\s?(?:{small}\s)*(?:{number}|{under})\)",
            rf",\s?(?:{small}\s)*(?:{number}|{under})(?=\s?[,.]|\s?$)",
            rf"\s(?:{of_age})\s(?P<age>{ages}){ends}",
            rf"\b(?P<age>{ages})[\s-]?{years}[\s-](?:old\s)?(?=(?P<next>[^\W\d]\w*(?:\s\w+)?))",
            rf"(?<=\s){under}\s(?=(?P<next>[^\W\d]\w*(?:\s\w+)?))",
            rf"\b(?P<mine>{mine})\s(?P<age>{ages})[\s-]?{years}\b",
        )
        return cls(
            tuple(re.compile(one, re.IGNORECASE) for one in told),
            re.compile(
                rf"(?<![\w'’-])(?:{whose}\s|[^\W\d]\w*['’]?s\s){{1,2}}(?:\w+\s)?{kin}\b", re.IGNORECASE
            ),
            dict(table["nobody"]),
            aged["told"],
            table["told"],
            re.compile(rf"^{asks}\b", re.IGNORECASE),
            dict(zip(aged["ages"][len(aged["ages"]) // 2 :], aged["ages"], strict=False)),
            frozenset((*table["no_name"], *tables["days"], *tables["things"]["words"])),
        )


@lru_cache(maxsize=1)
def _words() -> YoungWords:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", YoungWords.of)


def young_told(typed: str, is_thing: IsThing) -> tuple[str, str] | None:
    """Who is told to be under age, in plain words, and the rest of the line; None where nobody is.

    `is_thing`: whether a word names a food or a wine. Of people in general (`can a 17 year old drink`)
    nothing is told.
    """
    told: list[str] = []
    rest = typed
    while len(told) < MOST_TOLD and (found := _first(rest, is_thing)):
        who, turn = found
        age = (turn.groupdict().get("age") or "").lower()
        age = _words().ages.get(age, age)
        told.append(f"{who} is {_words().need.format(age=age) if age else _words().under}")
        rest = _EMPTY.sub("", f"{rest[: turn.start()]}{_stays(turn, who)}{rest[turn.end() :]}")
    return (". ".join(told), _asked(rest)) if told else None


def _first(typed: str, is_thing: IsThing) -> tuple[str, re.Match[str]] | None:
    """Somebody told to be under age, and the words that tell of it."""
    turns = (found for turn in _words().told for found in turn.finditer(typed))
    people = ((_who(found, typed, is_thing), found) for found in turns)
    return next((pair for pair in people if pair[0]), None)


def _stays(found: re.Match[str], who: str) -> str:
    """What of the words that tell of the age is still wanted in the rest: whom they name, or a space."""
    groups = found.groupdict()
    if groups.get("mine"):
        return who
    return groups.get("who") or (" " if found[0][:1].isspace() and found[0][-1:].isspace() else "")


def _who(found: re.Match[str], typed: str, is_thing: IsThing) -> str:
    """Of whom it is told: the name in it, the last one before it, the first behind, else who has none."""
    kin = _words().kin.search(typed)
    if who := found.groupdict().get("who"):
        name = known_name(who) or (who[0].isupper() and not _is_nobody(who, is_thing))
        return _written(who) if name else kin[0] if kin and kin[0].endswith(who) else ""
    if behind := found.groupdict().get("next"):  # `our 17 year old cousin Josh`
        return next((_written(word) for word in behind.split() if known_name(word)), "")
    names = _names(typed[: found.start()], is_thing)[::-1] + _names(typed[found.end() :], is_thing)
    if names or kin:
        return _written(names[0]) if names else kin[0] if kin else ""
    said = fold(found[0]).replace("'", " ").replace("’", " ").split()
    return next((who for she, who in _words().she.items() if she in said), "")


def _names(text: str, is_thing: IsThing) -> list[str]:
    """What people are called in a text: by known names, or by a capital letter that no thing has."""
    words = _WORD.findall(re.sub(r"['’]s\b", "", text))
    unknown = {w for w in words[1:] if w[0].isupper() and not _is_nobody(w, is_thing)}
    return [word for word in words if known_name(word) or word in unknown]


def _is_nobody(word: str, is_thing: IsThing) -> bool:
    return fold(word) in _words().no_name or fold(word) in STOP_WORDS or is_thing(word)


def _written(name: str) -> str:
    return name[0].upper() + name[1:]


def _asked(rest: str) -> str:
    """What is asked in the rest, from where it is asked on; all of it where nothing is."""
    parts = [match.end() for match in _STOP.finditer(rest)]
    starts = [at for at in (0, *parts) if _words().asks.match(rest[at:].lstrip())]
    asked = rest[starts[0] :] if starts else rest
    return _WANTS.sub(r"\g<who> ", asked.strip(" ,;.–-"))
