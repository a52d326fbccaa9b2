"""`R. is allergic to nuts`: taken down for tonight, with what of the table is not for that guest."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import caution
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.care import GuestCare, care
from assistant.evening.guest_meant import doubt, pronoun_in, says_pronoun, says_single, spoken_of
from assistant.evening.needs import understood, with_sober
from assistant.language.drinks_only import dislikes
from assistant.language.fold import fold, key
from assistant.language.follow_lines import opens
from assistant.language.frame import Frame
from assistant.language.guest_named import guests_named, has_name, own_name
from assistant.language.guests import Asked, Told, guest_words
from assistant.language.party import party_words
from assistant.language.quantities import numbers
from assistant.language.retold import comes_too, tells_habit
from assistant.language.same_guests import diet_of
from assistant.session import Session
from assistant.table.tonight import Tonight, needing
from assistant.taught.note import as_note, noted
from assistant.taught.teach import taught
from assistant.taught.telling import Hearing, no_notebook, not_kept, words
from assistant.taught.words import taught_words

NAMED = ("Wine", "Drink", "Food")
ONE = "one"
OWN = {"note": noted, "teach": taught}
PARTS = (("keep-away", "keep_away"), ("label-first", "check_label"), ("may-have", "may_have"))


def needs_by_talk(told: Told) -> Callable[[Context, Session], Answer | None]:
    """The answer to guests' needs; None where nothing is understood and they are read otherwise."""
    return lambda context, session: _taken(told, context, session)


def own_by_talk(own: Told, told: Told) -> Callable[[Context, Session], Answer | None]:
    """The same where something is on the table and the need is of whoever speaks; `told`: as read else."""

    def taken(context: Context, session: Session) -> Answer | None:
        laid = session.tonight.dishes or session.tonight.wines
        return _taken(own if laid else told, context, session) if laid or told.asked else None

    return taken


def _taken(told: Told, context: Context, session: Session) -> Answer | None:
    if any(_names(part, session) for part in told.unread):
        return None  # `my sister is vegan, red for the curry` asks
    urgent = [name for name in context.frame.topics if session.parser.topics.by_id[name].urgent]
    if urgent and (told.unread or not tells_habit(context.frame.text.typed)):
        return None  # what is here now is no habit: `Mark gets hives from nuts, he has them now`
    guest = _meant_by_pronoun(told, context, session)
    named = (replace(one, guest=one.guest or guest) for one in told.asked)
    asked = [_as_called(one, session) for one in named if not _names(one.guest, session)]
    meant = {a: needs for a in asked if (needs := understood(a.need, session))}
    if not meant:
        own = OWN.get(context.frame.intent) if session.taught.keeps else None
        return own(Hearing(context, session.taught)) if own else None
    if all(dislikes(one.need) for one in meant) and not _prepared(session.tonight):
        return None  # `my sister hates red` limits the wine of the dish that stands
    known = {one.guest for one in session.tonight.needs}
    for one in meant:
        session.tonight = needing(session.tonight, one)
    if comes_too(context.frame.text.typed):
        session.tonight = _more(session.tonight, sum(one.guest not in known for one in meant))
    session.tonight = with_sober(session.tonight, session)
    named_now = tuple(dict.fromkeys(one.guest for one in meant if has_name(one.guest)))
    session.spoken.of = named_now or _one_nameless(meant) or session.spoken.of
    if len(named_now) == 1 and (said := pronoun_in(context.frame.text.stems)):
        session.spoken.called[named_now[0]] = said  # `Lena turned up, she's vegan`
    rows = care(evening_of(replace(context, tonight=session.tonight)), session)
    found = [next((row for row in reversed(rows) if _is_of(one, row)), None) for one in meant]
    topics = dict.fromkeys(topic for needs in meant.values() for need in needs for topic in need.topics)
    topics |= dict.fromkeys(urgent)  # told last: when to call for help
    base = dict.fromkeys(c for topic in topics for c in session.parser.topics.by_id[topic].base)
    cautions = tuple(caution(context, name) for name in base)
    heads = [_noted(one, context) for one in meant]
    parts = (_parts(row, context) if row else [] for row in found)
    lines = [line for head, row in zip(heads, parts, strict=True) for line in (head, *row)]
    left = (a for a in asked if a not in meant and not _counts(a, session))
    unread = [*(f"{a.guest} {a.need}".strip() for a in left), *told.unread]
    lines += [context.wording("plan", "need-unread", said=part) for part in unread]
    lines += [*(record["text"] for record in cautions), *_kept(context, session)]
    answer = compose(context.all_used(), " ".join(heads), lines)
    return replace(answer, cautions=cautions, dish=None, intent="set-table")


def _one_nameless(meant: Iterable[Asked]) -> tuple[str, ...]:
    """The one guest without a name who is told of (`someone's vegetarian`), so that `she` is that one."""
    guests = [one.guest for one in meant]
    single = len(guests) == 1 and (not guests[0] or says_single(guests[0]))
    return tuple(guests) if single else ()


def _prepared(tonight: Tonight) -> bool:
    return bool(tonight.wines or tonight.guests or tonight.needs)


def _more(tonight: Tonight, number: int) -> Tonight:
    """The table with so many guests more, where they are counted."""
    return replace(tonight, guests=tonight.guests + number) if tonight.guests else tonight


def _counts(asked: Asked, session: Session) -> bool:
    """Whether only all guests were counted (`we are twelve tomorrow`), which was taken down as that."""
    found = numbers(key(asked.need))
    return not asked.guest and bool(found) and found[0][::2] == (0, session.tonight.guests)


def _kept(context: Context, session: Session) -> list[str]:
    """Where it is to be remembered, it is kept as a note, and that is said, or why it was not."""
    if not taught_words().lines["keeps"].stand_in(context.frame.text.stems):
        return []
    heard = Hearing(context, session.taught)
    if not heard.keeper.keeps:
        return [no_notebook(context).say]
    problems = heard.keeper.keep(as_note(heard))
    return [not_kept(context, problems).say if problems else words(context, "need-kept")]


def _noted(asked: Asked, context: Context) -> str:
    guest = asked.guest or context.wording("plan", "guest")
    return context.wording("plan", "need", guest=guest, need=asked.need)


def _names(said: str, session: Session) -> bool:
    """Whether a food or a wine is named (`the brie is vegan`) and no guest."""
    return any(reading.type in NAMED for reading in session.parser.parse(said).text.readings)


def _meant_by_pronoun(told: Told, context: Context, session: Session) -> str:
    """The guest of `Omar wants a glass, he drives`, or who was just spoken of; empty where none is sure."""
    nameless = sum(not one.guest for one in told.asked)
    if nameless != 1 or not says_pronoun(context.frame) or _says_one(context.frame):
        return ""
    here = [one.guest for one in told.asked if has_name(one.guest)]  # `Tim is coming, he's vegan`
    if here:
        return here[0] if len(here) == 1 else ""
    named = guests_named(context.frame.text.typed, session.tonight.needs)
    opened = opens(context.frame, "guest-she") and not doubt(context.frame, session)
    changed = _eats_otherwise(told, spoken_of(context.frame, session), session)
    meant = named or (spoken_of(context.frame, session) if opened or changed else ())
    return meant[0] if len(meant) == 1 else ""


def _says_one(frame: Frame) -> bool:
    """Whether one of the guests is told of who is nobody named (`one's driving, and Dana ...`)."""
    behind = guest_words().is_ | {word for need in party_words().needs for word in need[:1]}
    return any(word == ONE and after in behind for word, after in pairwise(frame.text.stems))


def _eats_otherwise(told: Told, spoken: Sequence[str], session: Session) -> bool:
    """Whether it is told of one with a diet that there is another one instead (`she's just veggie`)."""
    diets = party_words().instead
    had = {diet_of(one.need) for one in session.tonight.needs if one.guest in spoken}
    return bool(diets & had) and any(diet_of(one.need) in diets for one in told.asked)


def _as_called(asked: Asked, session: Session) -> Asked:
    """The same with the guest as called before (`R` is `R.`), so that all needs stand together.

    A number is no name: so many guests are meant.
    """
    if asked.guest.isdigit():
        return replace(asked, guest=party_words().many.format(number=asked.guest))
    known = [need for need in session.tonight.needs if has_name(need.guest)]
    same = [one for one in known if _bare(one.guest) == _bare(asked.guest)]
    return replace(asked, guest=same[0].guest) if same else asked


def _bare(guest: str) -> str:
    return " ".join(fold(" ".join(own_name(guest)) or guest).replace(".", " ").split())


def _is_of(asked: Asked, row: GuestCare) -> bool:
    return asked.need in row.needs and (asked.guest == row.guest or not has_name(asked.guest))


def _parts(found: GuestCare, context: Context) -> list[str]:
    """What of the table the guest may not, may perhaps and may have."""
    rows = ((name, getattr(found, field)) for name, field in PARTS)
    return [context.wording("plan", name, things=listed(list(things))) for name, things in rows if things]
