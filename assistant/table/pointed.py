"""`The other cheese`, `the two whites`, `the second best`: names for what was spoken of or is there."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold
from assistant.language.follow_words import follow_words
from assistant.language.retold import either
from assistant.language.standing import last_wine, wines_of

if TYPE_CHECKING:
    from assistant.language.standing import Talk
    from assistant.session import Session

PAIR = 2


@lru_cache(maxsize=1)
def pointed_patterns() -> dict[str, re.Pattern[str]]:
    """The turns of corpus/language/by-number.toml. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "by-number.toml", _read)


def _read(tables: dict[str, Any]) -> dict[str, re.Pattern[str]]:
    said = {name: either(words) for name, words in tables["pointed"].items()}
    turns = {
        "other": rf"\bthe\s{said['other']}\s(?P<kind>[^\W\d]\w{{2,20}})\b(?!\s{said['one']}\b)",
        "all": rf"\b{said['all']}\s(?P<kind>[^\W\d]\w{{2,20}})\b",
        "that": rf"\b{said['that']}\s(?P<kind>[^\W\d]\w{{2,20}})\b",
        "best": rf"\bthe\s(?P<place>\w{{2,9}})[\s-]{said['best']}\b(?:\s{said['one']}\b)?",
    }
    return {name: re.compile(turn, re.IGNORECASE) for name, turn in turns.items()}


def pointed_at(typed: str, session: Session) -> dict[str, str]:
    """Each such turn of a text with the names of what it means."""
    ways = (_others, _that_one, _all_of, _placed)
    return {said: meant for way in ways for said, meant in way(typed, session)}


def _others(typed: str, session: Session) -> Iterator[tuple[str, str]]:
    """`the other cheese`: the first of that kind on the table that was not asked about yet."""
    for match in pointed_patterns()["other"].finditer(typed) if session.talk else ():
        here = _here(match["kind"], session)
        last, asked = _last_spoken_of(session), _asked_about(session.talk)
        left = [one for one in here if one not in last]
        fresh = [one for one in left if one not in asked] or left
        if fresh and len(left) < len(here):
            yield match[0], f"the {session.knowledge.label(fresh[0])}"


def _asked_about(talk: Talk | None) -> set[str]:
    """The foods that were asked about one by one, and not as a board."""
    found: set[str] = set()
    while talk is not None:
        found |= {dish.main.food for dish in talk.frame.dishes if len(talk.frame.dishes) == 1}
        talk = talk.before
    return found


def _that_one(typed: str, session: Session) -> Iterator[tuple[str, str]]:
    """`that red again`: the wine last spoken of, where it is of that kind."""
    last = last_wine(session.talk)
    for match in pointed_patterns()["that"].finditer(typed) if last else ():
        if last[0] in _here(match["kind"], session):
            yield match[0], f"the {session.knowledge.label(last[0])}"


def _last_spoken_of(session: Session) -> tuple[str, ...]:
    """What was last spoken of: the dishes and wines of the turn that stands, else what it picked first."""
    talk = session.talk
    if talk is None:
        return ()
    wines = talk.frame.wines or wines_of(talk.picks[:1])
    return (*(dish.main.food for dish in talk.frame.dishes), *wines)


def _all_of(typed: str, session: Session) -> Iterator[tuple[str, str]]:
    """`the two whites`: all of that kind on the table, where there are two."""
    for match in pointed_patterns()["all"].finditer(typed):
        here = _here(match["kind"], session)
        if len(here) == PAIR:
            yield match[0], " and ".join(f"the {session.knowledge.label(one)}" for one in here)


def _placed(typed: str, session: Session) -> Iterator[tuple[str, str]]:
    """`the second best`: at this place of the list just told."""
    picks = session.talk.picks if session.talk else ()
    for match in pointed_patterns()["best"].finditer(typed):
        at = follow_words().places.get(fold(match["place"]), 0)
        if 1 < at <= len(picks):
            yield match[0], f"the {session.knowledge.label(picks[at - 1])}"


def _here(kind: str, session: Session) -> list[str]:
    """The foods, else the wines, of the table that are of a kind named by one word."""
    tonight, known = session.tonight, session.knowledge
    read = session.parser.parse(kind).text.readings
    if len(read) != 1 or read[0].type != "Kind":
        return []
    foods = [dish.main.food for dish in tonight.dishes]
    return [one for one in (*foods, *tonight.wines) if read[0].id in known.broader(one)]
