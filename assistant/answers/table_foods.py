"""Which of tonight's foods goes best with a wine, and which fights it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context, say_reason
from assistant.answers.eating import eaten, kept_to
from assistant.answers.items import groups_of, path_entries, total
from assistant.answers.record import Answer, Item
from assistant.knowledge.kinds_meant import kinds_meant
from assistant.pairing.dish import Dish, table_of
from assistant.pairing.match import Match
from assistant.pairing.score import DISLIKED, LIKED


def of_table(context: Context) -> tuple[Dish, ...]:
    """Tonight's foods that are asked of: those of the kinds named, else all; none where others are asked."""
    laid, named, known = context.tonight.dishes, context.frame.dishes, context.knowledge
    if context.frame.anywhere or not named:
        return () if context.frame.anywhere else laid
    kinds = {kind for dish in named for kind in kinds_meant(dish.main.food, known)}
    return tuple(d for d in laid if kinds.intersection((d.main.food, *known.broader(d.main.food))))


def table_foods(context: Context, asked: Sequence[Dish]) -> Answer:
    """These foods, best with the wine first; those that are not eaten are left out."""
    wine = context.knowledge.style(context.frame.wines[0])
    dishes = [dish for dish in asked if _wanted(context, dish)]
    judged = context.engine.rank_each([table_of([dish]) for dish in dishes], [wine])
    ranked = sorted(
        [(dish, match) for dish, (match,) in zip(dishes, judged, strict=True)],
        key=lambda pair: -pair[1].score,
    )
    if not ranked:
        none = context.wording("line", "none-eaten")
        return compose(context, none, [none])
    lines = [_line(context, dish, match) for dish, match in ranked]
    say = _spoken(context, ranked[0], context.knowledge.wines[wine].label)
    answer = compose(context, say, [say, *lines, *kept_to(context)])
    items = tuple(_item(context, dish, match) for dish, match in ranked)
    return replace(answer, picks=items[: context.top], avoid=_fighting(items[context.top :])[-1:])


def _wanted(context: Context, dish: Dish) -> bool:
    """Whether all of it is eaten; and told already it is only looked at again where its kind is named."""
    told = not context.frame.dishes and dish.main.food in context.frame.named_before
    foods = [part.food for part in dish.parts]
    return not told and eaten(foods, context) == foods


def _spoken(context: Context, best: tuple[Dish, Match], wine: str) -> str:
    kind = "foods" if best[1].verdict in LIKED else "foods-none"
    return context.wording("say", kind, wine=wine, food=context.one_dish(best[0]))


def _line(context: Context, dish: Dish, match: Match) -> str:
    reason = say_reason(match, context.knowledge, match.verdict in LIKED) or context.wording(
        "reason", "little"
    )
    return context.wording(
        "line", "compare-line", wine=context.one_dish(dish), verdict=match.verdict, reason=reason
    )


def _item(context: Context, dish: Dish, match: Match) -> Item:
    path = path_entries(match.path, context.knowledge, context.wording)
    food = dish.main.food
    groups = groups_of(context.knowledge.broader(food), context.knowledge)
    return Item(food, context.one_dish(dish), "food", groups, total(path), match.verdict, path)


def _fighting(items: tuple[Item, ...]) -> tuple[Item, ...]:
    return tuple(item for item in items if item.verdict in DISLIKED)
