"""`Jo just told me she is pregnant, which cheeses are ok`: told of a guest first, then asked for that one."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import islice
from typing import TYPE_CHECKING

from assistant.answers.extremes import extremes_asked, of_taste_asked
from assistant.builders import BUILDERS, enough
from assistant.language.clean import MAX_CHARACTERS
from assistant.language.cues import Lines
from assistant.language.fold import key
from assistant.language.follow_lines import follow_lines, says
from assistant.language.guest_named import guests_named, has_name
from assistant.language.guests import all_told, guest_words
from assistant.language.in_line import questions_in
from assistant.language.same_guests import diet_of
from assistant.language.small_words import small_words
from assistant.language.sober import is_sober
from assistant.language.young import young_told
from assistant.table.asked_apart import asked_apart
from assistant.table.told_beside import told_beside

if TYPE_CHECKING:
    from assistant.session import Session

_ASKS = r"what\s(?:can|may|should)|which\s(?:can|may|should|wine|one|of|is|has|bottle)"
_STOP = re.compile(rf"(?:[,;.!]|\s[-–]|\sso)\s|\s(?=(?:{_ASKS})\s)", re.IGNORECASE)
_AND = re.compile(r",? and\s(?=(?:what|which|can|could|may|is|are)\s)", re.IGNORECASE)
_SHE_MAY = re.compile(
    r"(?P<may>what (?:can|may|should)) (?:she|he|they) (?P<have>(?:have|eat|drink|try)\b.*)", re.IGNORECASE
)
# By these nothing is asked that needs an answer of its own.
NO_QUESTION = ("help", "smalltalk", "unclear", "set-table", "undo")
ASKED_ON = ("quantity", "service", "pour-order", "safety")
PAIRED = ("judge-pair", "wines-for-food", "foods-for-wine", "compare")
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
        or _then_for_guest(typed, session)
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


def _then_for_guest(typed: str, session: Session) -> list[str]:
    """A question, and what is asked behind it for a guest with needs (`..., and can Megan have it?`)."""
    for join in islice(_AND.finditer(typed[:MAX_CHARACTERS]), MOST_STOPS):
        first, then = typed[: join.start()], typed[join.end() :]
        of_guest = guests_named(then, session.tonight.needs) and not guests_named(
            first, session.tonight.needs
        )
        if of_guest and _line("asked-for-guest").stand_in(key(then)) and _pairs(first, session):
            return [first, then]
    return []


def _pairs(text: str, session: Session) -> bool:
    """Whether what goes with what is asked, with all it needs."""
    return asks(session, text) and session.parser.parse(text).intent in PAIRED


def _told_first(typed: str, session: Session) -> list[str]:
    """The two parts of such a line; empty for any other."""
    for told, asked in _halves(typed):
        guest = _guest(told, session) if _asks_for_guest(asked, session) else ""
        if guest:
            _called(guest, asked, session)
            return [told, asked if _takes_up(asked) else f"{asked.rstrip(' ?')} for {guest}?"]
        if found := next((p for p in ((told, asked), (asked, told)) if _is_of_taste(*p, session)), None):
            return list(found)
    return next(filter(None, (_of_diet(*halves) for halves in _halves(typed))), [])


def _is_of_taste(told: str, asked: str, session: Session) -> bool:
    """Whether a need is told that bars no wine, and which has most or least of something is asked."""
    frame = session.parser.parse(asked) if _line("which-one").stand_in(key(asked)) else None
    if frame is None or not (extremes_asked(frame) or of_taste_asked(frame)):
        return False
    topics = [session.parser.topics.by_id[name] for name in session.parser.parse(told).topics]
    return bool(topics) and len(all_told(told).asked) == 1 and not any(topic.no_alcohol for topic in topics)


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
    for part in (part for part in found.unread if _line("name-unknown").stand_in(key(part))):
        told, found = told.replace(part, "").strip(" ,;-–"), replace(found, unread=())
    nameless = len(found.asked) == 1 and not found.unread and not has_name(found.asked[0].guest)
    diet = diet_of(found.asked[0].need) if nameless and not is_sober(found.asked[0].need) else ""
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
