"""When hot dishes go in the oven, asked of one or of all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, datetime, timedelta
from itertools import groupby

from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.chill_by_talk import as_poured
from assistant.evening.clock import pours
from assistant.evening.facts import Row, amount
from assistant.evening.hot import ROAST, heating, hot_dishes, hot_row
from assistant.evening.temperatures import temperatures
from assistant.pairing.dish import Dish
from assistant.table.served import served_then, time_served


def heated(dishes: Sequence[Dish], context: Context) -> Iterator[str]:
    """A sentence for dishes that are made hot alike and eaten at the same time."""
    planned = _planned(context)
    found = []
    for dish in dishes:
        if row := hot_row(dish, context.knowledge):
            label = _label(dish, context)
            found.append((row, planned.get(label) or _told(dish, context), label))
    for (_, at), some in groupby(found, key=lambda one: (one[0]["id"], one[1])):
        rows = list(some)
        yield _sentence(listed([label for _, _, label in rows]), rows[0][0], at, context)


def _label(dish: Dish, context: Context) -> str:
    """The dish as the table calls it; `in the oven` is no part of its name."""
    laid = next((d for d in context.tonight.dishes if d.main.food == dish.main.food), None)
    cooked = "methods" in (hot_row(dish, context.knowledge) or {})
    return context.one_dish(laid or dish) if laid or cooked else context.knowledge.label(dish.main.food)


def _planned(context: Context) -> dict[str, datetime]:
    """When the hot dishes of the table are on it, as the plan has it; none where no start is known."""
    evening = as_poured(evening_of(context), context.engine)
    if not (evening.start and evening.wines):
        return {}
    rows = temperatures(evening, context.knowledge)
    moments = [pour.at for pour in pours(evening, rows, context.knowledge)]
    return {hot.label: hot.at for hot in hot_dishes(evening, moments, context.knowledge)}


def _told(dish: Dish, context: Context) -> datetime | None:
    """When a dish is told to be eaten, be it in this very line."""
    now = served_then(context.frame, context.tonight, context.knowledge)
    at = now.get(dish.main.food) or time_served(dish, context.tonight, context.knowledge)
    return datetime.combine(date.today(), at) if at else None


def _sentence(foods: str, row: Row, at: datetime | None, context: Context) -> str:
    rest = amount(row["rest"]).typical
    lead = amount(row["minutes"]).typical + rest
    fields = heating(foods, row)[1]
    fields["rest"] = context.wording("line", "heat-rest", minutes=f"{rest:g}") if rest else ""
    fields["lead"] = f"{lead:g}"
    if at:
        fields |= {"at": f"{at:%H:%M}", "put": f"{at - timedelta(minutes=lead):%H:%M}"}
    name = f"heat{'-roast' if row['id'] == ROAST else ''}{'-at' if at else ''}"
    return context.wording("line", name, **fields)
