"""`She eats fish now`, `Joe isn't driving after all`: a diet or driving told of a guest that changes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.drivers_change import still_drives
from assistant.evening.guest_meant import spoken_of
from assistant.evening.needs import understood
from assistant.evening.needs_by_talk import needs_by_talk
from assistant.language.drinks_only import with_another
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.guest_named import guests_named
from assistant.language.guests import Asked, Told
from assistant.language.party import party_words
from assistant.language.same_guests import diet_of
from assistant.session import Session
from assistant.table.liked_again import likes_it_now
from assistant.table.tonight import needing

FISH, SETS = "pescatarian", "set-table"
NO, MEAT, EATEN = "no", "kind/meat", ("kind/fish", "food/fish")
Answers = Callable[[Context, Session], Answer | None]


def need_changed(frame: Frame, session: Session) -> Answers | None:
    """What takes the change down; None where none is told, or something is asked, which is answered by it."""
    guests = guests_named(frame.text.typed, session.tonight.needs) or spoken_of(frame, session)
    if len(guests) != 1:
        return None
    asks = opens(frame, "guest-may") or "?" in frame.text.stems
    if _eats_fish(frame, guests[0], session):
        told = Told((Asked(guests[0], FISH), *_but(guests[0], frame, session)))
        return partial(_asked_too, told) if asks else needs_by_talk(told)
    if (drinks := _drinks_too(guests[0], frame, session)) and not asks:
        return partial(_drinks, drinks)
    gone = _gone(guests[0], frame, session) if says(frame, "need-gone") and not asks else ()
    gone = () if still_drives(guests[0], frame) else gone
    mine = (one for one in session.tonight.needs if one.guest == guests[0])
    gone = gone or tuple(one for one in mine if likes_it_now(frame, one))
    return (lambda context, session: _without(gone, context, session)) if gone else None


def _drinks_too(guest: str, frame: Frame, session: Session) -> Asked | None:
    """The need of a guest who keeps to one sort of wine, and will have one other (`... after all`)."""
    told = says(frame, "drinks-too") and says(frame, "drinks-after") and len(_poured(frame, session)) == 1
    own = (one for one in session.tonight.needs if one.guest == guest and told)
    return next((one for one in own if any(n.of_taste for n in understood(one.need, session))), None)


def _poured(frame: Frame, session: Session) -> list[str]:
    """The wines of the table that are named."""
    return [reading.id for reading in frame.text.readings if reading.id in session.tonight.wines]


def _drinks(need: Asked, context: Context, session: Session) -> Answer:
    """That this guest has that wine too; a taste is no matter of health."""
    wine = context.knowledge.label(_poured(context.frame, session)[0])
    now = replace(need, need=with_another(need.need, wine))
    needs = tuple(now if one == need else one for one in session.tonight.needs)
    session.tonight = replace(session.tonight, needs=needs)
    say = context.wording("plan", "drinks-too", guest=need.guest, wine=wine)
    return replace(compose(context.all_used(), say, [say]), dish=None, intent=SETS)


def _but(guest: str, frame: Frame, session: Session) -> list[Asked]:
    """What else is not eaten: `fish but no shellfish`."""
    known = session.knowledge
    others = (food for food in frame.barred if MEAT not in (food, *known.broader(food)))
    return [Asked(guest, f"{NO} {name}") for name in dict.fromkeys(map(known.label, others))]


def _of_others(frame: Frame) -> Frame:
    """The frame about the dishes named beside what the guest is said to eat."""
    dishes = tuple(dish for dish in frame.dishes if dish.main.food not in EATEN)
    readings = tuple(reading for reading in frame.text.readings if reading.id not in EATEN)
    return replace(frame, dishes=dishes, text=replace(frame.text, readings=readings)) if dishes else frame


def _asked_too(told: Told, context: Context, session: Session) -> Answer | None:
    """What is asked in the same breath, answered by what the guest eats now."""
    from assistant.evening.guest_asks import guest_asks  # which asks here first

    for one in told.asked:
        session.tonight = needing(session.tonight, one)
    frame = _of_others(context.frame)
    asked = guest_asks(frame, session)
    return asked(replace(context, frame=frame, tonight=session.tonight), session) if asked else None


def _eats_fish(frame: Frame, guest: str, session: Session) -> bool:
    """Whether a guest who ate none is said to eat fish."""
    diets = {diet_of(one.need) for one in session.tonight.needs if one.guest == guest}
    told = says(frame, "eats-fish") and not says(frame, "eats-asked")
    return told and FISH not in diets and bool(diets & party_words().instead)


def _gone(guest: str, frame: Frame, session: Session) -> tuple[Asked, ...]:
    """The needs of a guest that are named and may be so no longer: a diet, or driving."""
    may = (party_words().instead if says(frame, "diet-said") else frozenset()) | (
        party_words().sober if says(frame, "sober-said") else frozenset()
    )
    return tuple(one for one in session.tonight.needs if one.guest == guest and diet_of(one.need) in may)


def _without(gone: tuple[Asked, ...], context: Context, session: Session) -> Answer:
    """That these needs are so no longer; who drank nothing is counted among those who drink."""
    tonight = session.tonight
    drinks = sum(diet_of(one.need) in party_words().sober for one in gone)
    needs = tuple(one for one in tonight.needs if one not in gone)
    sober = max(0.0, tonight.non_drinkers - drinks)
    session.tonight = replace(tonight, needs=needs, non_drinkers=sober)
    line = "need-gone" if all(diet_of(one.need) for one in gone) else "dislike-gone"
    say = context.wording("plan", line, guest=gone[0].guest, need=listed([one.need for one in gone], "or"))
    return replace(compose(context.all_used(), say, [say]), dish=None, intent=SETS)
