"""`and Ann?`: who is asked about and was never told of; no other guest's answer is given for theirs."""

from __future__ import annotations

from collections.abc import Callable, Sequence, Set
from dataclasses import replace
from functools import partial

from spacy.lang.en.stop_words import STOP_WORDS

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.guest_meant import is_meant
from assistant.evening.guest_sorts import goes_on
from assistant.evening.guest_things import names_thing, takes_up
from assistant.language.fold import fold
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.guest_named import POSSESSIVE, words_of_guests
from assistant.language.guests import guest_words
from assistant.language.own_needs import own_words
from assistant.language.small_words import small_words
from assistant.session import Session

SAFETY = "safety"


def untold(frame: Frame, named: Sequence[str], session: Session) -> Callable[..., Answer] | None:
    """What answers a question about somebody who was not told of; None where only others are asked about."""
    on = bool(session.spoken.asked) and goes_on(frame) and takes_up(frame)
    may = opens(frame, "guest-may") and (says(frame, "guest-has") or says(frame, "guest-it"))
    topics = [session.parser.topics.by_id[topic] for topic in frame.topics]
    told_of = any(not topic.general for topic in topics) or names_thing(frame)
    alone = may and not told_of  # `can Ann have it`, `what can Ann have`
    if named or not (on or alone):
        return None
    who = strangers(frame, session)
    if not who and on and (unknown := _unknown(frame)):
        return partial(_told, "guest-unknown", unknown)
    return partial(_told, "guest-untold", who) if who else None


def untold_too(frame: Frame, context: Context, session: Session) -> list[str]:
    """That nothing was told of somebody who is asked about beside guests with needs."""
    who = strangers(frame, session) if goes_on(frame) and takes_up(frame) else ()
    return [context.wording("plan", "guest-untold", guests=listed(who))] if who else []


def strangers(frame: Frame, session: Session) -> tuple[str, ...]:
    """The people a short question names of whom no need was told, as they are to be called."""
    told = {one.guest for one in session.tonight.needs}
    known = words_of_guests(told)
    at = [i for i in _free(frame) if fold(frame.text.words[i]) not in known]
    found = [_called(frame, i, known, session) for i in at]
    return tuple(name for name in dict.fromkeys(found) if name and name not in told)


def _free(frame: Frame) -> list[int]:
    """Where a word of the text is nothing that was read."""
    taken = {at for reading in frame.text.readings for at in range(reading.start, reading.end)}
    return [at for at, word in enumerate(frame.text.words) if at not in taken and word[:1].isalpha()]


def _called(frame: Frame, at: int, known: Set[str], session: Session) -> str:
    """How somebody is called who is named at this place; empty where nobody is."""
    words = frame.text.words
    word, before = fold(words[at]), [fold(one) for one in words[:at]]
    if word in small_words()["who-speaks"]:
        return own_words().called
    if word in small_words()["else"] and small_words()["all-guests"].intersection(before[-1:]):
        return " ".join(words[at - 1 : at + 1])
    if word in guest_words().kin:
        return _of_somebody(words, at)
    opens_it = all(one in STOP_WORDS or one in guest_words().lead or one in known for one in before)
    thing = small_words()["names-things"].intersection(before[-1:]) or POSSESSIVE.search(words[at])
    stands = (opens_it or is_meant(words, at)) and not thing
    return capital(words[at]) if stands and _is_name(frame, at, session) else ""


def _is_name(frame: Frame, at: int, session: Session) -> bool:
    """Whether a word is a given name, or is written as one and is no word that is told as unknown."""
    word = frame.text.words[at]
    capital_inside = at > 0 and word[:1].isupper() and not frame.text.typed.isupper()
    named = capital_inside and word not in frame.text.left_out and fold(word) not in STOP_WORDS
    return fold(word) in session.parser.people or named


def _of_somebody(words: Sequence[str], at: int) -> str:
    """`my sister` as she is to be called, or `Kevin's wife`; empty where nobody is told whose it is."""
    whose = words[:at][-1:]
    if small_words()["whose"].intersection(map(fold, whose)):
        return f"{own_words().whose} {words[at]}"
    return f"{whose[0]} {words[at]}" if whose and POSSESSIVE.search(whose[0]) else ""


def _unknown(frame: Frame) -> tuple[str, ...]:
    """The words that are not known, where nothing that does any work stands before them."""
    words = frame.text.words
    left = [at for at in _free(frame) if words[at] in frame.text.left_out]
    first = all(fold(word) in STOP_WORDS for word in words[: left[0]]) if left else False
    return tuple(words[at] for at in left) if first else ()


def _told(kind: str, names: Sequence[str], context: Context, session: Session) -> Answer:
    """That nothing was told of them, and what to do; nothing is said of any other guest."""
    session.spoken.of = ()  # `she` means nobody who was told of
    say = context.wording("plan", kind, guests=listed(list(names)))
    bare = replace(context, frame=replace(context.frame, dishes=(), wines=()))
    answer = compose(bare.all_used(), say, [say])
    return replace(answer, clarify=say, understood=False, dish=None, intent=SAFETY)
