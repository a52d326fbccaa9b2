"""What a question about a guest takes up without naming it: the things asked before, or a pair."""

from __future__ import annotations

from dataclasses import dataclass, replace

from assistant.answers.context import Context
from assistant.evening.by_talk import evening_of
from assistant.evening.guest_table import of_asked
from assistant.evening.records import Evening, FoodLine
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.language.standing import WHYS, wines_of
from assistant.pairing.dish import Dish
from assistant.session import Session

TAKEN_UP = ("guest-also", "guest-it")
KEPT = ("Wine", "Drink", "Food")
PAIRED = ("wines-for-food", "judge-pair", "foods-for-wine", "one-bottle", "why", "what-if", "compare")


@dataclass(frozen=True, slots=True)
class Before:
    """The question just before, where it was about a guest: its things, whether a drink was chosen."""

    things: Evening | None = None
    drink: bool = False
    asked: bool = False


def names_thing(frame: Frame) -> bool:
    """Whether a food, a wine or a drink is named, as such or as a kind (`the rosé`)."""
    return any(r.type in KEPT or r.kind in (*EDIBLE, "preference") for r in frame.text.readings)


def asks_little(frame: Frame) -> bool:
    """Whether only a little of it is asked for (`just a bite`), and nobody had it already."""
    return says(frame, "guest-little") and not says(frame, "guest-drank")


def takes_up(frame: Frame) -> bool:
    """Whether a text names nothing and asks on about what was asked of another guest, or why."""
    on = opens(frame, "guest-on") or any(says(frame, line) for line in TAKEN_UP) or asks_little(frame)
    of_all = says(frame, "guest-which") or says(frame, "guest-all")
    return (on or frame.intent in WHYS) and not (names_thing(frame) or of_all)


def asked_things(context: Context, session: Session, before: Before) -> Evening:
    """The evening with no more on its table than what is asked about."""
    evening, things = evening_of(context), before.things
    others = _others(evening, context, session)
    if others:
        return replace(evening, foods=others, wines=())
    eaten = says(context.frame, "guest-eats") and not says(context.frame, "guest-sip")
    if things is not None and takes_up(context.frame):
        eaten = eaten and bool(things.foods)
        return replace(evening, foods=things.foods, wines=() if eaten else things.wines)
    if says(context.frame, "guest-it") and not (names_thing(context.frame) or context.frame.dishes):
        context = replace(context, frame=replace(context.frame, dishes=_standing_dishes(session)))
    return of_asked(context, evening, () if eaten else _standing_wines(session))


def _others(evening: Evening, context: Context, session: Session) -> tuple[FoodLine, ...]:
    """The foods of the table that were not asked about for these guests: `the other two cheeses`."""
    looked = session.spoken.looked.get(session.spoken.asked, set())
    named = any(r.type in KEPT for r in context.frame.text.readings)  # `the rest of the Riesling`
    if named or not (looked and says(context.frame, "guest-others")):
        return ()
    kinds = {r.id for r in context.frame.text.readings if r.kind in EDIBLE and r.type == "Kind"}
    left = (line for line in evening.foods if line.food not in looked)
    return tuple(line for line in left if not kinds or kinds & set(context.knowledge.broader(line.food)))


def looked_at(asked: Evening, context: Context, session: Session) -> None:
    """Remembers the foods asked about, where it was not all that is on the table."""
    foods = {part.food for line in asked.foods for dish in line.dishes for part in dish.parts}
    if asked.foods != evening_of(context).foods:
        session.spoken.looked.setdefault(session.spoken.asked, set()).update(foods)


def drinks_too(frame: Frame, session: Session, before: Before) -> bool:
    """`and for Omar?` after a wine for a dish, `and with the tart` after a drink: a drink is chosen."""
    if before.asked:
        with_it = names_thing(frame) and opens(frame, "guest-with")
        return before.drink and not frame.wines and (with_it or (takes_up(frame) and not _asks_it(frame)))
    return _pair_stands(session) and takes_up(frame) and not _asks_it(frame)


def with_things(context: Context, session: Session, before: Before) -> Context:
    """The same about the dishes that stand, where none is named and a drink was or is chosen with them."""
    if names_thing(context.frame) or not drinks_too(context.frame, session, before):
        return context
    stands = () if before.asked else _standing_dishes(session)
    dishes = dishes_of(before.things) or stands
    return replace(context, frame=replace(context.frame, dishes=dishes))


def dishes_of(things: Evening | None) -> tuple[Dish, ...]:
    """The dishes that were asked about; none where nothing was."""
    return tuple(dish for line in things.foods for dish in line.dishes) if things else ()


def _asks_it(frame: Frame) -> bool:
    """Whether it is asked if what stands will do, and not what else."""
    return says(frame, "guest-it") or opens(frame, "yes-no") or frame.intent in WHYS


def _pair_stands(session: Session) -> bool:
    return bool(session.talk and session.talk.frame.intent == PAIRED[0] and session.talk.picks)


def _standing_wines(session: Session) -> tuple[str, ...]:
    """The wine that stands beside the food, first of those picked; none where no pair stands."""
    talk = session.talk
    if talk is None or talk.frame.intent not in PAIRED:
        return ()
    chosen = wines_of(talk.picks[:1])
    return chosen if chosen and talk.frame.intent == PAIRED[0] else talk.frame.wines or chosen


def _standing_dishes(session: Session) -> tuple[Dish, ...]:
    return session.talk.frame.dishes if session.talk else ()
