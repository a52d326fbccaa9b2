"""`Jo just told me she is pregnant, which cheeses are ok`: told of a guest first, then asked for that one."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import islice
from typing import TYPE_CHECKING

from assistant.builders import BUILDERS, enough
from assistant.language.clean import MAX_CHARACTERS
from assistant.language.cues import Lines
from assistant.language.fold import key
from assistant.language.follow_lines import follow_lines, says
from assistant.language.guest_named import has_name
from assistant.language.guests import all_told, guest_words
from assistant.language.in_line import questions_in
from assistant.language.same_guests import diet_of
from assistant.language.small_words import small_words
from assistant.language.young import young_told
from assistant.table.asked_apart import asked_apart
from assistant.table.told_beside import told_beside

if TYPE_CHECKING:
    from assistant.session import Session

_STOP = re.compile(r"(?:[,;.!]|\s[-–]|\sso)\s|\s(?=what\s(?:can|may|should)\s)", re.IGNORECASE)
_SHE_MAY = re.compile(
    r"(?P<may>what (?:can|may|should)) (?:she|he|they) (?P<have>(?:have|eat|drink|try)\b.*)", re.IGNORECASE
)
# By these nothing is asked that needs an answer of its own.
NO_QUESTION = ("help", "smalltalk", "unclear", "set-table", "undo")
ASKED_ON = ("quantity", "service", "pour-order", "safety")
MOST_STOPS = 12
Asks = Callable[[str], bool]


def questions_of(typed: str, asks: Asks, asks_on: Asks, session: Session) -> list[str]:
    """What a line tells of a guest, then what it asks for that guest or lays; else its questions in order."""
    if _tells_leave(typed, session):
        return [typed]
    eased = _eased_first(typed, session) if session.spoken.reacted else []
    return (
        eased
        or _young_first(typed, session)
        or _told_first(typed, session)
        or told_beside(typed, session)
        or asked_apart(typed, session)
        or questions_in(typed, asks, asks_on)
    )


def _tells_leave(typed: str, session: Session) -> bool:
    """Whether a guest with needs is let drink by a pharmacist or doctor, which is heard as a whole."""
    stems = key(typed[:MAX_CHARACTERS])
    told = _line("leave-told").stand_in(stems) and not _line("leave-not").stand_in(stems)
    return bool(told and session.tonight.needs)


def asks(session: Session, text: str) -> bool:
    """Whether a text is a question by itself, with all it needs."""
    frame = session.parser.parse(text)
    named = frame.dishes or frame.wines or frame.terms or frame.topics
    return bool(named) and frame.intent in BUILDERS and frame.intent not in NO_QUESTION and enough(frame)


def asks_on(session: Session, text: str) -> bool:
    """Whether a text asks of what stands, naming nothing itself."""
    return session.parser.parse(text, standing=True).intent in ASKED_ON


def _told_first(typed: str, session: Session) -> list[str]:
    """The two parts of such a line; empty for any other."""
    for told, asked in _halves(typed):
        guest = _guest(told, session) if _asks_for_guest(asked, session) else ""
        if guest:
            _called(guest, asked, session)
            return [told, asked if _takes_up(asked) else f"{asked.rstrip(' ?')} for {guest}?"]
    return next(filter(None, (_of_diet(*halves) for halves in _halves(typed))), [])


def _young_first(typed: str, session: Session) -> list[str]:
    """That somebody is under age, then what is asked or said of wine or food in the same line."""
    named = session.parser.lexicon.find
    found = young_told(typed, lambda word: bool(named(word))) if len(typed) <= MAX_CHARACTERS else None
    if found is None:
        return []
    told, rest = found
    guest = told.partition(" is ")[0]
    _called(guest, typed, session)
    frame = session.parser.parse(rest, standing=True)
    goes_on = (
        frame.dishes
        or frame.wines
        or frame.topics
        or frame.intent not in NO_QUESTION
        or says(frame, "young-drink")
    )
    return [told, rest] if rest and goes_on else [told]


def _of_diet(told: str, asked: str) -> list[str]:
    """The two parts where the guest told of has a diet and no name (`she's vegan what can she have`)."""
    found = all_told(told)
    nameless = len(found.asked) == 1 and not found.unread and not has_name(found.asked[0].guest)
    diet = diet_of(found.asked[0].need) if nameless else ""
    she = _SHE_MAY.match(asked.strip()) if diet else None
    return [told, f"{she['may']} the {diet} {she['have']}"] if she else []


def _halves(typed: str) -> Iterator[tuple[str, str]]:
    """What stands before and behind each of the first stops."""
    for stop in islice(_STOP.finditer(typed[:MAX_CHARACTERS]), MOST_STOPS):
        yield typed[: stop.start()], typed[stop.end() :]


def _eased_first(typed: str, session: Session) -> list[str]:
    """That a guest is well again, and what is asked behind it; empty for any other line."""
    for told, asked in _halves(typed):
        asks = guest_words().asks.intersection(asked.lower().replace("?", " ?").split())
        if asks and _line("feels-well").stand_in(key(told)) and not _line("feels-well").stand_in(key(asked)):
            return [told, asked]
    return []


def _called(guest: str, asked: str, session: Session) -> None:
    """Remembers that `she` or `he` was said of the guest, so that nobody else may be meant."""
    from assistant.evening.guest_meant import pronoun_in

    said = pronoun_in(key(asked))
    if said:
        session.spoken.called[guest] = said


def _guest(told: str, session: Session) -> str:
    """The guest with a name of whom alone a known need is told; empty where there is none."""
    from assistant.evening.needs import understood  # loaded late: a plan needs so much

    found = all_told(told)
    sure = len(found.asked) == 1 and not found.unread and has_name(found.asked[0].guest)
    return found.asked[0].guest if sure and understood(found.asked[0].need, session) else ""


def _asks_for_guest(asked: str, session: Session) -> bool:
    """Whether what a guest may have is asked (`which cheeses are ok`): not for a host, and of no pair."""
    stems = key(asked)
    if not _line("told-then-asked").stand_in(stems):
        return False
    host = small_words()["first-person"].intersection(stems[:3])
    return _takes_up(asked) or not (host or session.parser.parse(asked).wines)


def _takes_up(asked: str) -> bool:
    return _line("guest-she").stand_in(key(asked))


def _line(name: str) -> Lines:
    return follow_lines()[name]
