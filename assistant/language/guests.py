"""What is said of a guest (`R. is allergic to nuts`)."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import dropwhile
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.aged import with_age
from assistant.language.arriving import without_arrivals
from assistant.language.clauses import again_allergic, clauses, of_another, sentences, without_too
from assistant.language.data import read_data
from assistant.language.drinks_only import dislikes, said_plainly, says_dislike
from assistant.language.retold import as_called, as_told, first_hand, named_first
from assistant.language.run_on import parted
from assistant.language.said_of import of_one_there, plainly
from assistant.language.so_is import each_told
from assistant.language.sober import is_sober, plainly_driving

NAMED = (
    "everyday", "grouped", "called", "called_then", "passing", "passing_now", "passing_about",
    "passing_for", "passing_kept", "passing_verbs", "passing_asks", "does", "kin", "before_one",
    "eaten_too",
)  # fmt: skip
KEPT_OUT = (("is", "eating"), ("is", "denies"), ("no_name", "asks"), ("no_name", "verbs"), ("is", "owns"))
OWNS = ("'s", "’s")
MOST_NAME, MOST_NEED = 4, 8
WORD = re.compile(r"\w[\w.-]*(?:['’](?!s\b)\w+)?|['’]s\b|[^\w\s]")


@dataclass(frozen=True, slots=True)
class Asked:
    """A guest as called, and what that guest asks to be spared, both as typed."""

    guest: str
    need: str


@dataclass(frozen=True, slots=True)
class Told:
    """The guests told of with their needs, and the parts of what was said that tell of none, as typed."""

    asked: tuple[Asked, ...] = ()
    unread: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class GuestWords:
    """The words of corpus/language/guests.toml."""

    is_: frozenset[str]
    lead: frozenset[str]
    asks: frozenset[str]
    in_allergy: frozenset[str]
    allergic: frozenset[str]
    things: frozenset[str]
    nobody: frozenset[str]
    at: frozenset[str]
    no_clock: frozenset[str]
    days: Mapping[str, int]
    soon: Mapping[str, int]
    evening_until: int
    everyday: frozenset[str]
    grouped: frozenset[str]
    called: frozenset[str]
    called_then: frozenset[str]
    passing: frozenset[str]
    passing_now: frozenset[str]
    passing_about: frozenset[str]
    passing_for: frozenset[str]
    passing_kept: frozenset[str]
    passing_verbs: frozenset[str]
    passing_asks: frozenset[str]
    does: frozenset[str]
    kin: frozenset[str]
    before_one: frozenset[str]
    eaten_too: frozenset[str]
    eating: frozenset[str]
    denies: frozenset[str]
    no_name: frozenset[str]
    no_name_verbs: frozenset[str]
    owns: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> GuestWords:
        """The words read from the file's tables. Raises KeyError for a table that is missing."""
        in_allergy, allergic = (frozenset(tables["asks"][key]) for key in ("in_allergy", "allergic"))
        is_, lead, asks, things, nobody, at = (
            frozenset(tables[name]["words"]) for name in ("is", "lead", "asks", "things", "nobody", "at")
        )
        until = int(tables["evening"]["until"])
        days, soon = dict(tables["days"]), dict(tables["soon"])
        named = (
            frozenset(tables[table][key]) for table, key in (*(("named", key) for key in NAMED), *KEPT_OUT)
        )
        no_clock = frozenset(tables["at"]["not_before"])
        return cls(
            is_, lead, asks, in_allergy, allergic, things, nobody, at, no_clock, days, soon, until, *named
        )


@lru_cache(maxsize=1)
def guest_words() -> GuestWords:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", GuestWords.of)


def asked_by(typed: str) -> Asked | None:
    """The guest a sentence is about and what is said of that guest; None for a question or anything else."""
    known, words = guest_words(), WORD.findall(first_hand(typed.strip()))
    while words and words[0].lower() in known.lead:
        words.pop(0)
    at = _told_at(words)
    lower = [word.lower() for word in words]
    if at is None or _asks(lower) or known.things.intersection(lower[:1]):
        return None
    need = as_called(without_too(" ".join(words[at + 1 :])))
    nobody = known.is_.intersection(lower[:1]) | known.no_name.intersection(lower[:at])
    if nobody or known.no_name_verbs.intersection(lower[1:at]):
        return None
    said = f"{words[at]} {need}"
    if lower[at] in known.denies and not (is_sober(said) or dislikes(said)):
        return None
    named = words[0].lower() not in known.nobody
    if words[at].lower() not in ("is", "are", "'s", "’s", "s", "was"):
        need = plainly_driving(f"{words[at]} {need}".strip())
        need = need if named else of_one_there(need)
    return Asked(_called(words[:at]) if named or at > 1 else "", need) if _few(need) else None


def _asks(words: Sequence[str]) -> bool:
    """Whether one of these words asks; wine that somebody is allergic to or dislikes is not asked for."""
    known = guest_words()
    tells = known.allergic.intersection(words) or says_dislike(" ".join(words))
    spared = known.in_allergy | known.does if tells else frozenset()
    return not (known.asks - spared).isdisjoint(words)


def _told_at(words: list[str]) -> int | None:
    """Where what is told of a guest begins; `Lena's husband is vegan` tells of the husband."""
    found = [i for i, word in enumerate(words[: MOST_NAME + 1]) if i and word.lower() in guest_words().is_]
    owns = len(found) > 1 and words[found[0]] in OWNS and found[1] > found[0] + 1
    return found[owns] if found else None


def _called(words: list[str]) -> str:
    """What a guest is called (`Marcus he just`); a name that was typed small is written as a name."""
    again = (i for i, word in enumerate(words) if i and word.lower() in guest_words().nobody)
    words = words[: next(again, len(words))]
    if len(words) == 1 and words[0].isalpha() and words[0] not in guest_words().grouped:
        return words[0][0].upper() + words[0][1:]
    return " ".join(words).replace(" 's", "'s").replace(" ’s", "’s")


def all_asked(typed: str) -> tuple[Asked, ...]:
    """The guests of a sentence in several parts (`two are vegan and one is coeliac`), each with a need.

    A part without a guest of its own goes on with the need before it (`allergic to nuts and shellfish`).
    None where a part is something else: `my sister is vegan, something for the curry` asks.
    """
    told = all_told(typed)
    return () if told.unread else told.asked


def all_told(typed: str) -> Told:
    """The guests of a line with their needs, and the parts that tell of none behind them."""
    parts = sentences(parted(each_told(typed)))
    told = [said_plainly(without_arrivals(with_age(as_told(plainly(part))))) for part in parts]
    words = list(dropwhile(guest_words().lead.__contains__, map(str.lower, WORD.findall(" ".join(told)))))
    if _asks(words):
        return Told()
    found: list[Asked] = []
    unread: list[str] = []
    for sentence in told:
        _hear(sentence, found, unread)
    return Told(tuple(found), tuple(part for part in unread if part))


def _hear(sentence: str, found: list[Asked], unread: list[str]) -> None:
    """Adds the guests of a sentence to those found, and the parts that tell of none behind a guest."""
    for link, part in clauses(named_first(sentence)):
        ends = bool(unread) or "and" not in link.split() or of_another(part)
        if asked := asked_by(named_first(part)):
            found.append(asked)
        elif found and (ends or is_sober(found[-1].need)) and not _goes_on(link, part):
            unread.append(part.strip(" .!"))
        elif found:
            found[-1] = replace(found[-1], need=f"{found[-1].need}{link}{part.strip(' .!')}")


def _goes_on(link: str, part: str) -> bool:
    """Whether a part still tells of the guest before it (`Yusuf is halal, doesn't drink at all`)."""
    return again_allergic(link, part) or is_sober(part.strip(" .!"))


def _few(need: str) -> bool:
    return 0 < len(need.split()) <= MOST_NEED
