"""Of a statement: who said it in which words, what the book says, and what it changes on the table."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.answers.context import Context
from assistant.answers.sanitise import safe
from assistant.answers.wording import capital
from assistant.notebook import Statement
from assistant.pairing.dish import Dish, single, table_of
from assistant.taught.describe import LONGEST, USED
from assistant.taught.keeper import AUTHOR, Keeper
from assistant.taught.pairs import apart, halves, verdict_of
from assistant.taught.teach import differing, evening, verdicts
from assistant.taught.telling import words

HEARD = (*USED, "first-voice")


def beside(group: Sequence[Statement], context: Context, keeper: Keeper) -> str:
    """A sentence; empty for words that are only kept."""
    first = group[0]
    if first.kind not in HEARD:
        return ""
    who = words(context, "by-you") if first.author == AUTHOR else first.author
    said = first.said if len(first.said) <= LONGEST else first.said[:LONGEST] + "…"
    parts = [words(context, "beside", said=safe(said), who=safe(who)), *_book(first, context, keeper)]
    return capital("; ".join([*parts, *_changes(group, context, keeper)])) + "."


def _book(one: Statement, context: Context, keeper: Keeper) -> Iterator[str]:
    """What the book says of a pair, with its signed score and how far apart the two are."""
    wines, foods = halves(one, context.knowledge)
    dish = _dish(one, foods, keeper) if one.kind == "pairing" else None
    if dish is None or len(wines) != 1 or wines[0] not in context.knowledge.wines:
        return
    match = context.engine.judge(table_of([dish]), wines[0])
    steps = apart(verdict_of(one), match.verdict, context.knowledge)
    fields = {"book": match.verdict, "score": f"{match.score:+.1f}"}
    if not steps:
        yield words(context, "beside-book", **fields)
        return
    way = words(context, "beside-lower" if steps > 0 else "beside-higher")
    count = context.wording("taught-steps", str(abs(steps)))
    yield words(context, "beside-apart", steps=count, way=way, **fields)


def _dish(one: Statement, foods: set[str], keeper: Keeper) -> Dish | None:
    """The one food of a pair, by its id or the host's own name for it."""
    if len(foods) != 1:
        return None
    (name,) = foods
    own = {food.name: food.like for food in keeper.overlay.foods}
    if name in own:
        return replace_called(single(own[name]), name, keeper)
    return single(name) if name in keeper.knowledge.digest else None


def replace_called(dish: Dish, name: str, keeper: Keeper) -> Dish:
    """The dish called and tasted as the host's own food of this name."""
    return Dish(dish.parts, dict(keeper.overlay.amounts_of(name)), name)


def _changes(group: Sequence[Statement], context: Context, keeper: Keeper) -> Iterator[str]:
    """In how many pairs on the table the verdict told first would be another without it."""
    if not (context.tonight.wines and context.tonight.dishes):
        return
    now = verdicts(context, keeper)
    with keeper.without(group):
        count = differing(verdicts(context, keeper), now)
    if count:
        name = "beside-changes-one" if count == 1 else "beside-changes"
        yield words(context, name, count=count, when=evening(context))
