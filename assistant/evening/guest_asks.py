"""`can Mo have the salami`, `what may R drink`: answered from what the guests of tonight ask to be spared."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import cautions
from assistant.answers.wording import capital, listed
from assistant.evening.care import GuestCare, because, care
from assistant.evening.eased import eased_first, eaten_first, says_eased, urgent_first
from assistant.evening.guest_advice import (
    advised,
    apart,
    asks_first,
    asks_whole,
    general,
    had_already,
    is_asked,
    reasons_told,
)
from assistant.evening.guest_drinks import (
    asks_why,
    chooses_drink,
    drink_explained,
    drinks_told,
    drinks_with_it,
    eats_named,
    is_drunk,
    pairs_for,
    sort_told,
)
from assistant.evening.guest_free import free_from
from assistant.evening.guest_kinds import kinds_told, with_examples
from assistant.evening.guest_meant import KEPT, doubt, everybody, kept, names_another, spoken_of
from assistant.evening.guest_sorts import OTHER, asks_for_guest, goes_on, has_asked
from assistant.evening.guest_swaps import guest_swaps
from assistant.evening.guest_things import (
    Before,
    asked_things,
    dishes_of,
    drinks_too,
    looked_at,
    takes_up,
    with_things,
)
from assistant.evening.guest_touched import touched_guests, touched_told, traces_told, with_touched
from assistant.evening.guest_untold import untold, untold_too
from assistant.evening.need_corrected import need_corrected
from assistant.evening.records import Evening
from assistant.evening.sorts_drunk import by_taste, nearly_told, sorts_drunk
from assistant.evening.who_needs import who_needs
from assistant.evening.young_asks import no_wine_asks
from assistant.language.eating import diets_of
from assistant.language.fold import fold, key, stem
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.guest_named import guests_named, words_of_guests
from assistant.language.guests import Asked
from assistant.pairing.dish import BASE, Dish
from assistant.session import Session

SAFETY, BOARD = "safety", "check-board"
LAST = -2
NAMED = (*KEPT, "Method")
PARTS = (("guest-no", "keep_away"), ("guest-ask", "check_label"), ("guest-yes", "may_have"))


def guest_asks(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What answers a question about what a guest may have, or that one is well again; None for any other."""
    asked = _asks_of_guest(frame, session)
    return eased_first(asked) if says_eased(frame, session) else asked


def _asks_of_guest(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What answers a question about what a guest may have; None for any other.

    A follow-up (`and the brie?`) is about the guest last asked of.
    """
    if asked := need_corrected(frame, session) or who_needs(frame, session) or no_wine_asks(frame, session):
        return asked
    named = guests_named(frame.text.typed, session.tonight.needs)
    if not named and any(session.parser.topics.by_id[topic].another for topic in frame.topics):
        return None
    if swaps := guest_swaps(frame, named, session):
        return swaps
    before = _just_asked(session)
    if before.drink and asks_why(frame, session):
        session.spoken.drink = True
        return drink_explained
    if asks_whole(frame, before):
        return lambda context, session: _answer(session.spoken.asked, True, before, context, session)
    if not named and session.spoken.asked and goes_on(frame) and takes_up(frame) and diets_of(frame):
        return partial(_diet_told, before)  # `and the vegan?`, where nobody is
    if nobody := untold(frame, named, session):
        session.spoken.things = before.things
        return nobody
    on = session.spoken.asked if goes_on(frame) else ()
    spoken = spoken_of(frame, session)
    all_of_them = everybody(frame, session) if not (named or spoken) else ()
    session.spoken.asked = named or spoken or all_of_them or on or touched_guests(frame, session)
    session.spoken.of = named or (() if names_another(frame, session) else session.spoken.of)
    kept(frame, session)
    if not session.spoken.asked and _of_a_diet(frame):
        return partial(_diet_told, before)
    further = bool(named) and (takes_up(frame) or has_asked(frame))  # `and for Tom?`
    if not session.spoken.asked or not asks_for_guest(frame, named):
        return None
    sure = (says(frame, "guest-may") and not says(frame, "guest-wine")) or not (named or spoken) or further
    return lambda context, session: _told(sure, before, context, session)


def _just_asked(session: Session) -> Before:
    """What was asked for a guest just before, which counts for this question only."""
    spoken = session.spoken
    before = Before(spoken.things, spoken.drink, bool(spoken.asked))
    spoken.things, spoken.drink = None, False
    return before


def _of_a_diet(frame: Frame) -> bool:
    """`is the port vegan`: of something named it is asked whether it fits a diet."""
    named = {r.id for r in frame.text.readings if r.type in ("Wine", "Food") or r.kind == "preference"}
    it = not named and says(frame, "guest-it") and bool(frame.wines or frame.dishes)
    asks = opens(frame, "diet-of") and not says(frame, "guest-wine") and frame.intent not in (*OTHER, BOARD)
    said = set(frame.text.stems[LAST:])  # `is there a vegan cheese` asks for one
    ends = any(said & set(key(diet.partition("/")[2])) for diet in diets_of(frame)) or says(frame, "eats")
    return (len(named) == 1 or it) and asks and ends


def _diet_told(before: Before, context: Context, session: Session) -> Answer | None:
    """Whether what is named is for a guest with the diet."""
    label = context.knowledge.label
    needs = tuple(
        Asked(context.wording("plan", "guest-of-diet", diet=label(diet)), label(diet))
        for diet in diets_of(context.frame)
    )
    frame = replace(context.frame, dishes=_named_alone(context.frame))
    of_diet = replace(context, frame=frame, tonight=replace(context.tonight, needs=needs))
    return _answer(tuple(need.guest for need in needs), True, before, of_diet, session)


def _named_alone(frame: Frame) -> tuple[Dish, ...]:
    """What is named of the dishes, without what stood before; all of them where they name it together."""
    named = {reading.id for reading in frame.text.readings}
    apart = [part for dish in frame.dishes for part in dish.parts if part.food in named]
    whole = all(dish.main.food in named for dish in frame.dishes)
    return frame.dishes if whole or not apart else tuple(Dish((replace(p, role=BASE),)) for p in apart)


def _told(sure: bool, before: Before, context: Context, session: Session) -> Answer | None:
    """What the guests last asked of may have, and for whom `she` was taken where that may be another."""
    answer = _answer(session.spoken.asked, sure, before, context, session)
    if answer is None:
        return None
    lines = untold_too(context.frame, context, session)
    if unsure := doubt(context.frame, session):
        said, meant, others = unsure
        lines.append(context.wording("plan", "guest-taken", said=said, meant=meant, others=others))
    return replace(answer, text="\n".join([answer.text, *lines]))


def _answer(
    guests: Sequence[str], sure: bool, before: Before, context: Context, session: Session
) -> Answer | None:
    """What the guests may have of what is asked, or of the table; None where a pairing alone is asked."""
    if (made := free_from(guests, context, session)) is not None:
        return made
    evening, too = asked_things(context, session, before), drinks_too(context.frame, session, before)
    evening = replace(evening, wines=()) if too else evening
    looked_at(evening, context, session)
    rows = [row for row in care(evening, session) if is_asked(row, guests, context)]
    rows = with_touched(rows, evening, context, session.spoken)
    rows.sort(key=lambda row: (not row.keep_away, not row.check_label))
    topics = dict.fromkeys(t for row in rows for t in row.topics)
    barred = any(row.keep_away for row in rows) and bool(context.frame.dishes)
    if says(context.frame, "guest-drank"):
        topics = {**had_already(rows, evening), **topics}  # who ate it already is watched for signs
    others = [name for name in apart(context) if name not in topics]
    if others and (not barred or any(context.topics[name].urgent for name in others)):
        return None
    sober = any(row.sober for row in rows)
    session.spoken.things = evening
    paired = not sure and pairs_for(context.frame, rows)
    if sober and (too or paired or chooses_drink(sure, context.frame)):
        session.spoken.drink = True
        heard = with_things(_heard(context, rows), session, before)
        return drinks_told(heard, rows, session, stands=too and bool(heard.frame.dishes))
    limits, first = sorts_drunk(rows, session), asks_first(rows, context, session)
    chosen = (limits or eats_named(context.frame)) and (too or chooses_drink(sure, context.frame))
    if not (sober or barred or first) and (chosen or drinks_with_it(context.frame, before.asked)):
        return sort_told(context, limits, dishes_of(before.things))
    sure = sure or first or (sober and is_drunk(context.frame))
    if not (sure or barred):
        return None
    spoken = tuple(dict.fromkeys((*topics, *others, *general(context, evening))))
    asked_of = replace(context, frame=replace(context.frame, topics=spoken))
    return _said(with_examples(rows, evening, context, session), evening, asked_of, session)


def _said(rows: Sequence[GuestCare], evening: Evening, context: Context, session: Session) -> Answer | None:
    """What is not for whom, why, and the cautions of it; None where nothing is on the table."""
    lines = [line for row in rows for line in _lines(row, context)]
    if not lines:
        return _nothing_laid(rows, context)
    against = any(row.keep_away or row.check_label for row in rows if not by_taste(row, session))
    asked_of = replace(context.frame, dishes=tuple(d for food in evening.foods for d in food.dishes))
    cautioned = asked_of.topics and (against or context.frame.text.topics)
    told = cautions(replace(context, frame=asked_of)) if cautioned else ()
    label = [context.wording("plan", "guest-label")] if against or any(r.allergy for r in rows) else []
    first = [line for row in rows for line in _lines(row, context)[: bool(row.keep_away)]] or lines[:1]
    lines[:0] = first[:0] = traces_told(rows, context)
    if nearly := nearly_told(rows, evening, context, session):
        first, lines = (nearly, nearly) if len(lines) == 1 else (first, [*lines, *nearly])
    lines += touched_told(rows, context) + kinds_told(rows, evening, context)
    lines += because(rows, evening, session) if reasons_told(told, context) else []
    answer = compose(_heard(context, rows), " ".join(first), [*lines, *advised(told, context), *label])
    answer = replace(answer, cautions=told, dish=None, intent=SAFETY)
    return urgent_first(eaten_first(answer, rows, context), context)


def _nothing_laid(rows: Sequence[GuestCare], context: Context) -> Answer | None:
    """That there is nothing on the table to look at, where a guest is asked about."""
    if not rows or context.tonight.dishes or context.tonight.wines:
        return None
    guests = listed(list(dict.fromkeys(row.guest for row in rows)))
    say = context.wording("plan", "guest-nothing", guests=guests)
    return replace(compose(_heard(context, rows), say, [say]), dish=None, intent=SAFETY)


def _lines(row: GuestCare, context: Context) -> list[str]:
    """What of it is not for a guest, what is to be asked about, what there is nothing against."""
    found = ((name, getattr(row, part)) for name, part in PARTS)
    told = ((name, listed(list(things))) for name, things in found if things)
    return [capital(context.wording("plan", name, guest=row.guest, things=things)) for name, things in told]


def _heard(context: Context, rows: Sequence[GuestCare]) -> Context:
    """The same, the names of the guests and their needs taken for heard, and words of the trade not."""
    names = words_of_guests([*(row.guest for row in rows), *(need for row in rows for need in row.needs)])
    text = context.frame.text
    left = tuple(word for word in text.left_out if not names & {fold(word).strip("."), stem(fold(word))})
    read = tuple(reading for reading in text.readings if reading.type in NAMED)
    return replace(context, frame=replace(context.frame, text=replace(text, left_out=left, readings=read)))
