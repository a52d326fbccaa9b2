"""What food goes with that wine: foods that love it, kinds mixed, and one that fights it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.eating import eaten, kept_to
from assistant.answers.items import groups_of, path_entries, total
from assistant.answers.record import Answer, Item
from assistant.answers.table_foods import table_foods
from assistant.answers.wording import listed
from assistant.pairing import choose
from assistant.pairing.engine import key_of
from assistant.pairing.larder import TABLE_KINDS
from assistant.pairing.score import LIKED, Score

MOST_CLASSICS = 2


def foods_for_wine(context: Context) -> Answer:
    """Foods that love the wine, kinds mixed, and one that fights it; what is on the table goes first."""
    if context.tonight.dishes and not (context.frame.dishes or context.frame.anywhere):
        return table_foods(context)
    wine = context.knowledge.style(context.frame.wines[0])
    foods = [f for f in _tasting_foods(context) if f not in context.frame.named_before]
    foods = eaten(foods, context) or eaten(_standing(TABLE_KINDS, context), context)
    if not foods:
        none = context.wording("line", "none-eaten")
        return compose(context, none, [none])
    ranked = context.engine.rank_foods(wine, foods)
    chosen = _varied(context, _classics_first(context, wine, ranked), context.top)
    worst = ranked[-1]
    label = context.knowledge.wines[wine].label
    names = [context.knowledge.label(food) for food, _ in chosen]
    say = context.wording("say", "foods", wine=label, food=names[0])
    reason = _food_reason(context, worst[1])
    lines = [say, context.wording("line", "foods-safe", foods=listed(names))]
    lines.append(
        context.wording("line", "foods-avoid", food=context.knowledge.label(worst[0]), reason=reason)
    )
    lines += kept_to(context)
    answer = compose(context, say, lines)
    items = tuple(_food_item(context, food, score) for food, score in chosen)
    return _with_items(answer, items, (_food_item(context, *worst),))


def _tasting_foods(context: Context) -> list[str]:
    """Foods that can stand on a table by themselves, or those of the kinds the guest named."""
    named = [d.main.food for d in context.frame.dishes]
    return _standing(tuple(f for f in named if f.startswith("kind/")) or TABLE_KINDS, context)


def _standing(kinds: Sequence[str], context: Context) -> list[str]:
    """The foods of these kinds that the engine can taste."""
    found = (f for kind in kinds for f in context.knowledge.members(kind))
    return [food for food in dict.fromkeys(found) if key_of(food) in context.engine.larder]


def _classics_first(context: Context, wine: str, ranked: list[tuple[str, Score]]) -> list[tuple[str, Score]]:
    """For a short list: up to two foods that custom pours the wine with come first, where the rules agree."""
    if context.top > choose.VARIED_UP_TO:
        return ranked
    custom = context.knowledge.wines[wine].classics
    classics = [(food, score) for food, score in ranked if food in custom and score.verdict in LIKED]
    first = classics[:MOST_CLASSICS]
    return [*first, *(row for row in ranked if row not in first)]


def _varied(context: Context, ranked: list[tuple[str, Score]], count: int) -> list[tuple[str, Score]]:
    if count > choose.VARIED_UP_TO:
        return ranked[:count]
    chosen: list[tuple[str, Score]] = []
    seen: set[str] = set()
    for food, score in ranked:
        kind = next(iter(context.knowledge.broader(food)), food)
        if kind not in seen:
            chosen.append((food, score))
            seen.add(kind)
        if len(chosen) == count:
            break
    return chosen


def _food_reason(context: Context, score: Score) -> str:
    rules = context.knowledge.rules
    found = (rules[e.rule].because for e in score.path if e.effect < 0 and e.rule in rules)
    return next(found, context.wording("reason", "limit-quiet"))


def _food_item(context: Context, food: str, score: Score) -> Item:
    path = path_entries(score.path, context.knowledge, context.wording)
    return Item(
        id=food,
        label=context.knowledge.label(food),
        kind="food",
        groups=groups_of(context.knowledge.broader(food), context.knowledge),
        score=total(path),
        verdict=score.verdict,
        path=path,
    )


def _with_items(answer: Answer, picks: tuple[Item, ...], avoid: tuple[Item, ...]) -> Answer:
    return replace(answer, picks=picks, avoid=avoid)
