"""A food put on the table that a guest told of may not have is told at once, before anything else."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.made_for import foods_of, heard
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.pairing.dish import BASE, Dish
from assistant.table.tonight import Tonight

if TYPE_CHECKING:
    from assistant.evening.care import GuestCare
    from assistant.session import Session

SUPPOSES, SAFETY = "what-if", "safety"
PAIRS = ("wines-for-food", "judge-pair", "one-bottle")
CHOOSES, PLANS = "choose-wines", "plan"


def warned(answer: Answer, before: Tonight, context: Context, session: Session) -> Answer:
    """The answer behind a line for each guest from whom something new on the table is to be kept.

    In front of one for each guest for whom no wine is left.
    """
    return _with_unserved(_with_kept_from(answer, before, context, session), before, context, session)


def _with_kept_from(answer: Answer, before: Tonight, context: Context, session: Session) -> Answer:
    """The answer behind what is new on the table and not for a guest; an allergy is told with its labels."""
    made = heard(context.frame, replace(context, tonight=session.tonight), session)
    new = _new(before, session.tonight, context.frame) if session.tonight.needs else ()
    new = tuple(dish for dish in new if not any(foods_of(dish) < foods_of(one) for one in made))
    answer = _with_made(answer, made, context)
    named = _named(session.tonight, context.frame) if session.tonight.needs and not new else ()
    told = answer.intent == SAFETY and not (named and _comes(context.frame))
    if not (new or named) or told or not answer.understood:
        return answer
    rows = [row for row in _care(new or named, context, session) if row.guest not in answer.text or new]
    harmed = [row for row in rows if row.allergy and row.keep_away]
    lines = [line for row in (rows if new else harmed) for line in _lines(row, context)]
    if not lines:
        return answer
    lines += [context.wording("plan", "best-left")] if harmed else []
    text = lines if harmed and _comes(context.frame) else [*lines, answer.text]
    said = " ".join([*lines, *([answer.say] if text is not lines else [])]).strip()
    return replace(answer, say=said, text="\n".join(text))


def _with_made(answer: Answer, made: Sequence[Dish], context: Context) -> Answer:
    """The answer behind what has to be so in a dish that is told to be for vegetarians."""
    lines = [context.wording("plan", "made-for", thing=capital(context.one_dish(dish))) for dish in made]
    said = " ".join([*lines, answer.say]).strip()
    return replace(answer, say=said, text="\n".join([*lines, answer.text])) if lines else answer


def _comes(frame: Frame) -> bool:
    """Whether a food is only said to come, so that nothing is to be poured with it."""
    return frame.intent in PAIRS and says(frame, "comes-too")


def _named(now: Tonight, frame: Frame) -> tuple[Dish, ...]:
    """The foods that are named in what goes with them and lie on no table yet."""
    there = {part.food for dish in now.dishes for part in dish.parts}
    named = {r.id for r in frame.text.readings if r.kind in EDIBLE} if frame.intent in PAIRS else set()
    parts = (part for dish in frame.dishes for part in dish.parts if part.food in named - there)
    return tuple(Dish((replace(part, role=BASE),)) for part in parts)


def _with_unserved(answer: Answer, before: Tonight, context: Context, session: Session) -> Answer:
    """The answer with a line for each guest of tonight for whom none of the wines poured or chosen is.

    Only where the wines or the guests are others than before, or the evening is planned.
    """
    tonight, chosen = session.tonight, tuple(pick.id for pick in answer.picks)
    whole = tonight.wines != before.wines or answer.intent in (CHOOSES, PLANS)
    guests = {one.guest for one in tonight.needs if whole or one not in before.needs}
    if not guests:
        return answer
    from assistant.evening.by_talk import evening_of  # loaded late: a plan needs so much
    from assistant.evening.care import care
    from assistant.evening.unserved import unserved

    dishes = context.frame.dishes or tonight.dishes
    table = replace(tonight, wines=chosen, dishes=dishes) if answer.intent == CHOOSES and chosen else tonight
    evening = evening_of(replace(context, tonight=table))
    found = unserved([row for row in care(evening, session) if row.guest in guests], evening, session)
    lines = [context.wording("plan", "unserved", guest=row.guest, wine=wine) for row, wine in found]
    return replace(answer, say=" ".join([answer.say, *lines]).strip(), text="\n".join([answer.text, *lines]))


def _new(before: Tonight, now: Tonight, frame: Frame) -> tuple[Dish, ...]:
    """The foods that were not on the table before, and what is named where something is only put to it."""
    there = {part.food for dish in before.dishes for part in dish.parts}
    named = {r.id for r in frame.text.readings if r.kind in EDIBLE} if frame.intent == SUPPOSES else set()
    kept = set() if frame.intent == SUPPOSES else {p.food for dish in now.dishes for p in dish.parts} - there
    parts = [part for dish in (*now.dishes, *frame.dishes) for part in dish.parts]
    foods = {part.food: part for part in parts if part.food in named | kept}
    dressed = _dressed(before, now)
    apart = (part for part in foods.values() if not any(part in dish.parts for dish in dressed))
    return (*dressed, *(Dish((replace(part, role=BASE),)) for part in apart))


def _dressed(before: Tonight, now: Tonight) -> tuple[Dish, ...]:
    """The dishes that were there with less on them (`there are walnuts in the quiche`)."""
    there = {dish.main.food: {part.food for part in dish.parts} for dish in before.dishes}
    again = (dish for dish in now.dishes if dish.main.food in there)
    return tuple(d for d in again if {part.food for part in d.parts} - there[d.main.food])


def _care(dishes: Sequence[Dish], context: Context, session: Session) -> list[GuestCare]:
    """What of these dishes each guest may have."""
    from assistant.evening.by_talk import evening_of  # loaded late: a plan needs so much
    from assistant.evening.care import care
    from assistant.evening.records import FoodLine

    evening = evening_of(replace(context, tonight=session.tonight))
    foods = tuple(FoodLine(context.one_dish(dish), (dish,)) for dish in dishes)
    return care(replace(evening, foods=foods, wines=()), session)


def _lines(row: GuestCare, context: Context) -> list[str]:
    parts = [("guest-no", row.keep_away), ("guest-ask", row.check_label if row.allergy else ())]
    return [
        context.wording("plan", name, guest=row.guest, things=listed(list(things)))
        for name, things in parts
        if things
    ]
