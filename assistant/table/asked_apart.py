"""`is the salami ok for Moira, and which wine does she get`: what is asked or told of each guest."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import TYPE_CHECKING

from assistant.builders import BUILDERS
from assistant.language.aged import known_name
from assistant.language.clean import MAX_CHARACTERS
from assistant.language.fold import fold
from assistant.language.guest_named import POSSESSIVE, guests_named
from assistant.language.guests import guest_words
from assistant.language.retold import either
from assistant.language.small_words import small_words

if TYPE_CHECKING:
    from assistant.session import Session

MOST_PARTS = 3
NO_QUESTION = ("help", "smalltalk", "unclear", "note", "undo")
_JOIN = re.compile(
    r"(?:(?<=\w)[?,;.]?\s(?:and|but|while|plus)|(?<=\w)[?;,]|(?<=\w{3})\.)\s(?=\w)", re.IGNORECASE
)  # a short word before a full stop is an initial
_SHE = re.compile(r"\b(?P<who>she|he)\b", re.IGNORECASE)


def asked_apart(typed: str, session: Session) -> list[str]:
    """The questions of a line of which one is about a guest with a need, or what is told of two guests.

    Empty for any other line: then it is read as a whole.
    """
    if not session.tonight.needs or len(typed) > MAX_CHARACTERS:
        return []
    return _questions(typed, session) or _told(typed, session)


def _questions(typed: str, session: Session) -> list[str]:
    """The parts where each of them asks; `she` is put as the one guest named before."""
    parts = list(_parts(typed, _asks_itself))
    named = [guests_named(part, session.tonight.needs) for part in parts]
    if not 1 < len(parts) <= MOST_PARTS or not any(named) or not _asks_itself(parts[0]):
        return []
    if any(
        not (who or _SHE.search(part) or _names(part, session))
        for part, who in zip(parts, named, strict=True)
    ):
        return []  # `what can Lucy have and which wine with it`
    first = named[0][0] if len(named[0]) == 1 else ""
    others = [
        _SHE.sub(first, part, count=1) if first and not who else part
        for part, who in zip(parts[1:], named[1:], strict=True)
    ]
    return [parts[0], *others]


def _names(part: str, session: Session) -> bool:
    """Whether a part names anything to eat or to drink itself."""
    return bool(session.parser.parse(part).text.readings)


def _told(typed: str, session: Session) -> list[str]:
    """The parts where each tells of somebody, a guest with a need among them who is not well."""
    parts = list(_parts(typed, _tells_of_one))
    if not 1 < len(parts) <= MOST_PARTS or not _tells_of_one(parts[0]):
        return []
    frames = [session.parser.parse(part, standing=True) for part in parts]
    known = any(guests_named(part, session.tonight.needs) for part in parts)
    ailing = [bool(frame.topics) for frame in frames]
    others = (
        frame.intent in BUILDERS and frame.intent not in NO_QUESTION for frame in frames if not frame.topics
    )
    return parts if known and any(ailing) and not all(ailing) and all(others) else []


def _parts(typed: str, opens: Callable[[str], bool]) -> Iterator[str]:
    """The parts of a line, each of which begins with what `opens` one."""
    start = 0
    for join in _JOIN.finditer(typed):
        if opens(typed[join.end() :]):
            yield typed[start : join.start()].strip(" ,;")
            start = join.end()
    yield typed[start:].strip(" ,;")


@lru_cache(maxsize=1)
def _opening() -> re.Pattern[str]:
    return re.compile(rf"(?:and\s|so\s|ok\s)?{either(small_words()['behind-also'])}\b", re.IGNORECASE)


def _asks_itself(part: str) -> bool:
    return bool(_opening().match(part))


def _tells_of_one(part: str) -> bool:
    """Whether a name stands in front and something is told of it (`Sue's got`, `Carol wants`)."""
    words = part.split()
    if len(words) < 2 or not known_name(POSSESSIVE.sub("", words[0])):
        return False
    known = guest_words()
    return bool(POSSESSIVE.search(words[0])) or fold(words[1]) in known.is_ | known.does
