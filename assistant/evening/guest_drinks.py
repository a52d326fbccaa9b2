"""`what can Mia drink with cod`: who may not have alcohol is offered drinks without it, never a wine."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import cautions
from assistant.answers.why import why
from assistant.answers.wines import wines_for_food
from assistant.answers.wording import listed
from assistant.evening.alcohol_free import alcohol_free_drinks
from assistant.evening.by_talk import evening_of
from assistant.evening.care import GuestCare, care
from assistant.language.dish_edits import POURED
from assistant.language.eating import WITHOUT_ALCOHOL
from assistant.language.follow_lines import says
from assistant.language.frame import Frame, Preference
from assistant.language.guest_named import guests_named
from assistant.language.guests import Asked
from assistant.language.preferences import of_drinks, sparkling
from assistant.language.sorting import EDIBLE
from assistant.language.standing import WHYS, wines_of
from assistant.pairing.dish import Dish
from assistant.session import Session

SAFETY = "safety"
TOASTS = frozenset(("kind/dealcoholised-wine", "kind/juice-drink", "kind/mocktail"))
MINORS = "minors"
PAIRS = ("wines-for-food", "one-bottle", "choose-wines")


def is_drunk(frame: Frame) -> bool:
    """Whether a wine is asked of, by its name or as what somebody drinks."""
    return _poured(frame) or says(frame, "guest-sip")


def chooses_drink(sure: bool, frame: Frame) -> bool:
    """Whether something to drink is to be chosen; `sure`: what a guest may have is asked."""
    if tastes(frame) and frame.intent in PAIRS and not (_poured(frame) or says(frame, "guest-it")):
        return True
    drink = says(frame, "guest-sip") or (not sure and frame.intent in PAIRS)
    pours = says(frame, "guest-pours") and not says(frame, "guest-eats")
    return (pours or (drink and says(frame, "guest-what"))) and not _poured(frame)


def pairs_for(frame: Frame, rows: Sequence[GuestCare]) -> bool:
    """Whether what goes with a food is asked for guests by name who all drink none (`Theo wants a cola`)."""
    named = guests_named(frame.text.typed, [Asked(row.guest, "") for row in rows])
    eaten = any(reading.kind in EDIBLE for reading in frame.text.readings)
    asks = frame.intent in PAIRS and says(frame, "guest-wants") and not frame.wines
    return asks and eaten and bool(named) and all(row.sober for row in rows)


def drinks_told(
    context: Context,
    rows: Sequence[GuestCare],
    session: Session,
    more: Sequence[str] = (),
    stands: bool = False,
) -> Answer:
    """Drinks without alcohol for the food named, else for what the guests may have of the table.

    What of the food is not for a guest is said first, the cautions of the guests' needs last, and of
    `more` topics. `stands`: the dishes of the frame are meant though the text does not name them.
    """
    named = bool({reading.kind for reading in context.frame.text.readings} & set(EDIBLE)) or stands
    dishes = context.frame.dishes if named else _allowed(context, rows)
    toast = says(context.frame, "toasts")
    dishes = () if toast else dishes
    limit = Preference(context.knowledge.label(WITHOUT_ALCOHOL), "kind", wanted=WITHOUT_ALCOHOL)
    bubbles = sparkling(session.parser.limit_words)
    wishes = (*context.frame.preferences, *((bubbles,) if toast else ()))
    limits = (limit, *_tastes(of_drinks((limit, *wishes), bubbles)))
    away = _not_theirs(context, [row.guest for row in rows], session)
    frame = replace(context.frame, dishes=dishes, wines=(), preferences=limits, named_before=away)
    drunk = replace(context, frame=frame)
    answer = _raised(drunk) if toast else wines_for_food(drunk)
    topics = tuple(dict.fromkeys((*(topic for row in rows for topic in row.topics), *more)))
    told = cautions(replace(context, frame=replace(frame, topics=topics, dishes=dishes if named else ())))
    barred = [*_young(context, rows), *(_barred(context, rows) if named else [])]
    text = "\n".join([*barred, answer.text, *(one["text"] for one in told)])
    return replace(answer, say=" ".join([*barred, answer.say]), text=text, cautions=told, intent=SAFETY)


def eats_named(frame: Frame) -> bool:
    """Whether a food is named with which something is drunk (`what does Mo drink with the pasta`)."""
    return says(frame, "drunk") and not {reading.kind for reading in frame.text.readings}.isdisjoint(EDIBLE)


def drinks_with_it(frame: Frame, asked: bool) -> bool:
    """Whether a wine is asked for with what a guest was just asked about; `asked`: whether one was."""
    named = any(reading.type in ("Wine", "Drink", "Food") for reading in frame.text.readings)
    return asked and not named and says(frame, "drinks-with-it") and says(frame, "guest-what")


def sort_told(context: Context, limits: Sequence[Preference], before: Sequence[Dish]) -> Answer:
    """A wine of the sort that a guest drinks, for the food named or asked about, else for the table."""
    dishes = context.frame.dishes or tuple(before) or context.tonight.dishes
    frame = replace(context.frame, dishes=dishes, wines=(), preferences=(*limits, *tastes(context.frame)))
    return replace(wines_for_food(replace(context, frame=frame)), intent=PAIRS[0])


def _raised(context: Context) -> Answer:
    """What is raised in place of sparkling wine; no food is asked for, and plain soft drinks are left."""
    wines = context.knowledge.wines.values()
    soft = (wine.id for wine in wines if not TOASTS.intersection(wine.kinds))
    frame = replace(context.frame, named_before=(*context.frame.named_before, *soft))
    answer = wines_for_food(replace(context, frame=frame))
    asked = context.wording("line", "which-food")
    text = "\n".join(line for line in answer.text.splitlines() if line != asked)
    return replace(answer, text=text, clarify=None)


def asks_why(frame: Frame, session: Session) -> bool:
    """Whether it is asked why the drink that was just chosen, or why no wine; of another food it is not."""
    eaten = {reading.kind for reading in frame.text.readings} & set(EDIBLE)
    return frame.intent in WHYS and not eaten and bool(session.talk and session.talk.picks)


def drink_explained(context: Context, session: Session) -> Answer:
    """Why this drink: who drinks no alcohol and why, how it goes with the food; the cautions stay."""
    asked = session.spoken.asked
    rows = [row for row in care(evening_of(context), session) if row.sober and row.guest in asked]
    limits = [
        context.wording("plan", "guest-sober", guest=row.guest, need=listed(list(row.needs))) for row in rows
    ]
    chosen = session.talk.picks[:1] if session.talk else ()
    answer = why(
        replace(context, frame=replace(context.frame, wines=wines_of(chosen) or context.frame.wines))
    )
    topics = tuple(dict.fromkeys(topic for row in rows for topic in row.topics))
    told = cautions(replace(context, frame=replace(context.frame, topics=topics, dishes=())))
    text = "\n".join([*limits, answer.text, *(one["text"] for one in told)])
    return replace(answer, say=" ".join([*limits, answer.say]), text=text, cautions=told, intent=SAFETY)


def tastes(frame: Frame) -> tuple[Preference, ...]:
    """What a drink should taste like (`she hates sweet`), no kind of wine being asked for."""
    return _tastes(frame.preferences)


def _tastes(limits: Iterable[Preference]) -> tuple[Preference, ...]:
    return tuple(dict.fromkeys(one for one in limits if one.property != "kind"))


def _poured(frame: Frame) -> bool:
    return bool(frame.wines) and any(reading.kind in POURED for reading in frame.text.readings)


def _allowed(context: Context, rows: Sequence[GuestCare]) -> tuple[Dish, ...]:
    """The dishes of the table that are for all of these guests; all of them where none is."""
    away = {thing for row in rows for thing in row.keep_away}
    lines = evening_of(context).foods
    allowed = [dish for line in lines if line.label not in away for dish in line.dishes]
    return tuple(allowed) or context.tonight.dishes


def _not_theirs(context: Context, guests: Sequence[str], session: Session) -> tuple[str, ...]:
    """The drinks that are not for one of these guests, or hold alcohol.

    Those to be asked about count among them, where others are left.
    """
    nothing = replace(evening_of(context), foods=(), wines=())
    free = alcohol_free_drinks(context.engine)
    rows = [row for row in care(nothing, session, free) if row.guest in guests]
    away = {thing for row in rows for thing in row.keep_away}
    asked = away | {thing for row in rows for thing in row.check_label}
    label = context.knowledge.label
    theirs = [d for d in free if label(d) not in asked] or [d for d in free if label(d) not in away]
    return tuple(wine.id for wine in context.knowledge.wines.values() if wine.id not in theirs)


def _young(context: Context, rows: Sequence[GuestCare]) -> list[str]:
    """That there is no alcohol for a guest under age."""
    return [
        context.wording("plan", "guest-sober", guest=row.guest, need=listed(list(row.needs)))
        for row in rows
        if MINORS in row.topics
    ]


def _barred(context: Context, rows: Sequence[GuestCare]) -> list[str]:
    """What of the food named is not for a guest."""
    return [
        context.wording("plan", "guest-no", guest=row.guest, things=listed(list(row.keep_away)))
        for row in rows
        if row.keep_away
    ]
