"""`write jen's message`, `follow-up for everyone`: thanks with two hits, one thing to try, an answer owed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.after.ballots import MIDDLE, ballots
from assistant.after.by_hands import counted, winners
from assistant.after.liking import Liking, liking_of, said_now
from assistant.after.names import guests_named, known_guests, plain, tonights
from assistant.after.parked import PARKED, answer_to, asked
from assistant.after.phrases import one_of, phrases, said
from assistant.after.privacy import private, sendable, tells_need
from assistant.after.trying import cares_of, next_bite, next_wine
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.language.fold import fold
from assistant.language.frame import Text
from assistant.taught.telling import plain as bare_answer

if TYPE_CHECKING:
    from assistant.session import Session

MOST_HITS, FOOD = 2, "food/"


@dataclass(frozen=True, slots=True)
class Message:
    """The sentences to one guest, how many of their questions were left out, whether a vote was known, and
    which drinks they liked that stay out of the text."""

    guest: str
    sentences: tuple[str, ...]
    left_out: int = 0
    voted: bool = True
    kept_out: tuple[str, ...] = ()


def message(context: Context, session: Session) -> Answer:
    """The text for the guest named, with what is said of them in the same breath."""
    session.written = context.frame
    guest = guests_named(context.frame, session)[0]
    written = written_to(guest, said_now(context, session, guest), context, session)
    lines = [*written.sentences, *_remarks(written), said("message", "check")]
    return bare_answer(context, said("message", "say", guest=guest), lines)


def messages(context: Context, session: Session) -> Answer:
    """A text for every guest known by name; one for all where no name is known, but what they liked is."""
    guests, session.written, table = known_guests(session), context.frame, context.tonight
    known = counted(context, session) or (session.taught.keeps and ballots(context, session))
    missing = not guests or len(guests) < (table.guests or 0)
    told = bool(known or table.wines or table.dishes)
    if told and (missing or not known) and (not guests or not _several(context.frame.text)):
        return message_for_all(context, session)
    if not guests:
        return bare_answer(context, said("message", "none"), understood=False)
    return _one_each(guests, missing, context, session)


def _manner(name: str, session: Session) -> str:
    """The template of this name in the manner that is wanted."""
    return f"{name}-warm" if session.warm_texts else name


def _several(text: Text) -> bool:
    """Whether one for each is asked for: `messages`, `a text each`, and not `a text for everyone`."""
    return one_of(text.stems, "each") or _plural(text)


def _plural(text: Text) -> bool:
    """Whether `messages` and not `a message` is asked for."""
    texts = phrases().sets["messages"]
    return any(fold(word) != one for word, one in zip(text.words, text.stems, strict=True) if one in texts)


def _one_each(guests: Sequence[str], missing: bool, context: Context, session: Session) -> Answer:
    """A text for each, and how to write to those whose names are `missing`."""
    written = [written_to(guest, (), context, session) for guest in guests]
    lines = [line for one in written for line in ("", *one.sentences, *_remarks(one))]
    say = said("message", "say-all" if len(guests) > 1 else "say-all-one", count=len(guests))
    others = [said("message", "others")] if missing else []
    return bare_answer(context, say, [*lines, "", said("message", "check"), *others])


def message_for_all(context: Context, session: Session) -> Answer:
    """One text for all guests: what awaits who is still to come, else thanks and what was liked best."""
    session.written, stems = context.frame, context.frame.text.stems
    if own := _own_words(context.frame.text.typed, session):
        lines = [said("message", _manner("greeting-own", session)), own]
        lines += [said("message", _manner("close-coming", session)), said("message", "check")]
        return bare_answer(context, said("message", "say-one"), lines)
    coming = "-coming" if one_of(stems, "to_come") else ""
    title = context.tonight.title
    evening = said("message", "evening", title=title) if title else ""
    lines = [
        said("message", _manner(f"greeting-all{coming}", session), evening=evening),
        *(_menu(context) if coming else _hits_of_all(context, session)),
        said("message", _manner(f"close{coming}", session)),
        said("message", "check"),
        *([said("message", "each")] if known_guests(session) else []),
    ]
    return bare_answer(context, said("message", "say-one"), lines)


def _own_words(typed: str, session: Session) -> str:
    """What the host wants said, behind a colon, as a sentence; empty where it tells of anybody's needs."""
    told = typed.partition(":")[2].strip(" .!")
    kept = sendable([told], "", session) if told else []
    return f"{capital(kept[0])}." if kept and not tells_need(kept[0], session) else ""


def message_to_all(context: Context, session: Session) -> Answer:
    """The same as it was asked for: to friends it is warm; `messages` are one for each known by name."""
    if _plural(context.frame.text) and known_guests(session):
        return messages(context, session)
    session.warm_texts = session.warm_texts or one_of(context.frame.text.stems, "friends")
    return message_for_all(context, session)


def _menu(context: Context) -> list[str]:
    """What is eaten and poured, of a table that is set."""
    label, table = context.knowledge.label, context.tonight
    foods = [context.one_dish(dish) for dish in table.dishes]
    told = (("menu-foods", foods), ("menu-wines", [label(wine) for wine in table.wines]))
    return [said("message", name, things=listed(things)) for name, things in told if things]


def _hits_of_all(context: Context, session: Session) -> list[str]:
    """Who won the show of hands, a tie told; without one, what the table liked best."""
    counts = counted(context, session)
    kind, most = "hits-all", MOST_HITS
    if counts:
        things: list[str | None] = [*winners(counts)]
        kind, most = "hits-won" if len(things) == 1 else "hits-tie", len(things)
    else:
        voted = sorted(ballots(context, session), key=lambda one: (-one.votes.mean, -one.votes.n))
        things = [one.wine or one.food for one in voted if one.votes.mean > MIDDLE]
    names = [f"the {context.knowledge.label(thing)}" for thing in dict.fromkeys(things) if thing]
    none = [said("message", "hits-all-none")]
    return [capital(said("message", kind, things=listed(names[:most])))] if names else none


def written_to(guest: str, now: Sequence[Liking], context: Context, session: Session) -> Message:
    """The message to one guest, from their votes and questions; `now`: what was just said of them."""
    known = liking_of(guest, now, context, session)
    sober = any(one.sober for one in cares_of(guest, context, session))
    liked = [one for one in known if one.thing.startswith(FOOD) or not sober]
    kept_out = tuple(context.knowledge.label(one.thing) for one in known if one not in liked)
    owed, kept_back = _owed(guest, session)
    title = context.tonight.title
    where = sendable([said("message", "evening", title=title)], guest, session) if title else []
    greeting = said("message", _manner("greeting", session), guest=guest, evening="".join(where))
    sentences = sendable(
        [_hits(liked, context), *_try(guest, liked, context, session), *owed], guest, session
    )
    close = said("message", _manner("close", session))
    return Message(guest, (greeting, *sentences, close), kept_back, bool(known), kept_out)


def _hits(liked: Sequence[Liking], context: Context) -> str:
    """The two things liked best; a drink without alcohol is never named."""
    things = [context.knowledge.label(one.thing) for one in liked][:MOST_HITS]
    return (
        said("message", "hits", things=listed([f"the {t}" for t in things]))
        if things
        else said("message", "hits-none")
    )


def _try(guest: str, liked: Sequence[Liking], context: Context, session: Session) -> list[str]:
    """One wine or, for who had none or takes none, one bite to try next."""
    wine = next_wine(guest, liked, context, session)
    found = wine or next_bite(guest, liked, context, session)
    return [found] if found else []


def _owed(guest: str, session: Session) -> tuple[list[str], int]:
    """The answers to what this guest asked, and how many questions are answered in person instead."""
    theirs = [
        one for one in tonights(session) if one.kind == PARKED and _asked_by(one.value.get("guest"), guest)
    ]
    found, kept_back = [], 0
    for one in theirs:
        answer = answer_to(one, session)
        told = said("message", "question", question=asked(one), answer=answer.say) if answer else ""
        if answer and not private(asked(one), answer, session) and sendable([told], guest, session):
            found.append(told)
        else:
            kept_back += 1
    return found, kept_back


def _asked_by(name: object, guest: str) -> bool:
    return name is not None and plain(str(name)) == plain(guest)


def _remarks(written: Message) -> list[str]:
    """What the host is told beside the text."""
    lines = [] if written.voted else [said("message", "no-votes", guest=written.guest)]
    told = {"guest": written.guest, "things": listed([f"the {t}" for t in written.kept_out])}
    lines += [said("message", "no-drinks", **told)] if written.kept_out else []
    return [*lines, *([said("message", "left-out")] if written.left_out else [])]
