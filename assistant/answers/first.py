"""When the evening starts and what comes first, each in a line of its own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.compose import compose, label
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.taken_down import when
from assistant.answers.wording import capital
from assistant.evening.facts import tables
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.pairing.dish import Dish, table_of
from assistant.pairing.flight import pour_order
from assistant.pairing.match import Match
from assistant.pairing.score import LIKED

PLAN, ORDERS, WAITING = "plan", "pour-order", "pours-waiting"
POURS = ("service", "wines-for-food", "pour-order", "choose-wines", "one-bottle", "unclear", "plan")


def asks_while_waiting(frame: Frame) -> bool:
    """Whether it is asked what is poured until the food is ready."""
    return frame.intent in POURS and says(frame, WAITING) and not frame.text.topics


def start_told(context: Context) -> Answer:
    """When the evening starts, or that nobody told yet."""
    start = context.tonight.start
    name = "start-told" if start else "start-none"
    say = context.wording(PLAN, name, when=when(start, context) if start else "")
    return _in_a_line(context, say, PLAN)


def first_told(context: Context) -> Answer:
    """The wine poured first, with the food of the table that likes it best.

    While all wait for the food that is something to nibble, where there is any.
    """
    tonight, engine = context.tonight, context.engine
    glasses = [engine.glasses[wine] for wine in tonight.wines]
    first, dishes = pour_order(glasses, context.knowledge.constants)[0].wine, _at_first(context)
    found = engine.rank_each([table_of([dish]) for dish in dishes], [first])
    pairs = zip(dishes, found, strict=True)
    liked = [(match, dish) for dish, (match, *_) in pairs if match.verdict in LIKED]
    if not liked:
        return _in_a_line(context, context.wording(PLAN, "first-alone", wine=context.knowledge.label(first)))
    match, dish = max(liked, key=lambda pair: pair[0].score)
    fields = {"wine": label(context, match), "food": context.one_dish(dish)}
    name = "wait-told" if asks_while_waiting(context.frame) else "first-told"
    return _in_a_line(context, context.wording(PLAN, name, **fields), picks=[match])


def _at_first(context: Context) -> tuple[Dish, ...]:
    return eaten_first(context) if asks_while_waiting(context.frame) else context.tonight.dishes


def eaten_first(context: Context) -> tuple[Dish, ...]:
    """What of the table is eaten before the meal; all of it where nothing is."""
    dishes, broader = context.tonight.dishes, context.knowledge.broader
    standing = set(tables("amounts")["standing"]["kinds"])
    return tuple(d for d in dishes if standing.intersection(broader(d.main.food))) or dishes


def _in_a_line(context: Context, say: str, intent: str = ORDERS, picks: Sequence[Match] = ()) -> Answer:
    said = capital(say)
    return replace(compose(context.of_evening(), said, [said], picks), dish=None, intent=intent)
