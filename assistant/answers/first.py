"""When the evening starts and what comes first, each in a line of its own."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose, label
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.taken_down import when
from assistant.answers.wording import capital
from assistant.pairing.dish import table_of
from assistant.pairing.flight import pour_order
from assistant.pairing.score import LIKED

PLAN, ORDERS = "plan", "pour-order"


def start_told(context: Context) -> Answer:
    """When the evening starts, or that nobody told yet."""
    start = context.tonight.start
    name = "start-told" if start else "start-none"
    say = context.wording(PLAN, name, when=when(start, context) if start else "")
    return _in_a_line(context, say, PLAN)


def first_told(context: Context) -> Answer:
    """The wine poured first, with the food of the table that likes it best."""
    tonight, engine = context.tonight, context.engine
    glasses = [engine.glasses[wine] for wine in tonight.wines]
    first = pour_order(glasses, context.knowledge.constants)[0].wine
    found = engine.rank_each([table_of([dish]) for dish in tonight.dishes], [first])
    pairs = zip(tonight.dishes, found, strict=True)
    liked = [(match, dish) for dish, (match, *_) in pairs if match.verdict in LIKED]
    if not liked:
        return _in_a_line(context, context.wording(PLAN, "first-alone", wine=context.knowledge.label(first)))
    match, dish = max(liked, key=lambda pair: pair[0].score)
    fields = {"wine": label(context, match), "food": context.one_dish(dish)}
    return _in_a_line(context, context.wording(PLAN, "first-told", **fields))


def _in_a_line(context: Context, say: str, intent: str = ORDERS) -> Answer:
    said = capital(say)
    return replace(compose(context.of_evening(), said, [said]), dish=None, intent=intent)
