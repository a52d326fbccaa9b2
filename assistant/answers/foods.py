"""What food goes with that wine: foods that love it, kinds mixed, and one that fights it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import islice

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.eating import eaten, kept_to
from assistant.answers.items import groups_of, path_entries, total
from assistant.answers.record import Answer, Item
from assistant.answers.table_foods import of_table, table_foods
from assistant.answers.wording import listed
from assistant.knowledge.kinds_meant import kinds_meant
from assistant.pairing import choose
from assistant.pairing.score import LIKED, Score

MOST_CLASSICS, CHEESES = 3, "course/cheese"
TABLE_KINDS = (
    "kind/cheese", "kind/meat", "kind/seafood", "kind/nut", "kind/olive-kind", "kind/pate-food", "kind/dish",
    "kind/sweet-food", "kind/egg-dish",
)  # fmt: skip


def foods_for_wine(context: Context) -> Answer:
    """Foods that love the wine, kinds mixed, and one that fights it; what is on the table goes first."""
    if asked := of_table(context):
        return table_foods(context, asked)
    wine = context.knowledge.style(context.frame.wines[0])
    foods = [f for f in _tasting_foods(context) if f not in context.frame.named_before]
    foods = eaten(foods, context) or eaten(_standing((), context), context)
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
    named = [kind for dish in context.frame.dishes for kind in kinds_meant(dish.main.food, context.knowledge)]
    return _standing(named, context)


def _standing(kinds: Sequence[str], context: Context) -> list[str]:
    """The foods of these kinds; no dips and herbs of a kind as wide as food itself."""
    members = context.knowledge.members
    table = [food for kind in TABLE_KINDS for food in members(kind)]
    wide = {above for kind in TABLE_KINDS for above in context.knowledge.broader(kind)}
    narrow = [food for kind in kinds if kind not in wide for food in members(kind)]
    within = {food for kind in kinds if kind in wide for food in members(kind)}
    return list(dict.fromkeys([*narrow, *(food for food in table if food in within or not kinds)]))


def _classics_first(context: Context, wine: str, ranked: list[tuple[str, Score]]) -> list[tuple[str, Score]]:
    """For a short list: up to three foods that custom pours the wine with come first, where the rules agree.

    One of a meal leads, if there is one: a cheese goes with many a wine.
    """
    if context.top > choose.VARIED_UP_TO:
        return ranked
    custom = context.knowledge.wines[wine].classics
    classics = [(food, score) for food, score in ranked if food in custom and score.verdict in LIKED]
    eaten = [row for row in classics if context.knowledge.food(row[0]).course != CHEESES]
    first = list(dict.fromkeys([*eaten[:1], *classics]))[:MOST_CLASSICS]
    return [*first, *(row for row in ranked if row not in first)]


def _varied(context: Context, ranked: list[tuple[str, Score]], count: int) -> list[tuple[str, Score]]:
    if count > choose.VARIED_UP_TO:
        return ranked[:count]
    first: dict[str, tuple[str, Score]] = {}
    for row in ranked:
        first.setdefault(next(iter(context.knowledge.broader(row[0])), row[0]), row)
        if len(first) == count:
            break
    chosen = list(first.values())
    return [*chosen, *islice((row for row in ranked if row not in chosen), count - len(chosen))]


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
