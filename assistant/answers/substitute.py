"""What instead: the wines most like one that is not to be had, or the foods most like a food."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context, say_reason
from assistant.answers.items import food_item
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.language.follow_lines import says
from assistant.pairing.choose import COMMONEST
from assistant.pairing.likeness import alike_foods, alike_wines, unlike
from assistant.pairing.match import Match
from assistant.pairing.score import LIKED

NEAREST = 12


def substitute(context: Context) -> Answer:
    """For a wine its nearest kin, those that suit the dish first where one stands; else for a food."""
    if context.frame.wines:
        return _for_wine(context, context.knowledge.style(context.frame.wines[0]))
    named = [r.id for r in context.frame.text.readings if r.type == "Food"]
    foods = [*(dish.main.food for dish in context.frame.dishes), *named]
    if foods:
        return for_food(context, foods[0])
    which = context.wording("say", "instead-which")
    return replace(compose(context, which, [which]), clarify=which, understood=False)


def _for_wine(context: Context, wine: str) -> Answer:
    if _asks_price(context):  # what the table has is paid for
        context = replace(context, frame=replace(context.frame, anywhere=True))
    near = _near(context, wine)[:NEAREST]
    if not near:
        none = context.wording("line", "none-left")
        return compose(context, none, [none])
    if not context.frame.dishes:
        return _named(context, wine, [Match(w, 0.0, "neutral") for w in near[: context.top]])
    matches = context.engine.judge_each(context.table(), near)
    liked = [m for m in matches if m.verdict in LIKED]
    return _named(context, wine, [*liked, *(m for m in matches if m not in liked)][: context.top])


def _asks_price(context: Context) -> bool:
    """Whether one is asked for that costs more, or less."""
    return says(context.frame, "dearer") or says(context.frame, "cheaper")


def _near(context: Context, wine: str) -> list[str]:
    """The wines most like one, but for those left out; from a shop only what is easy to buy, if any is."""
    known = context.knowledge.wines
    among = [w for w in context.candidates() if w not in context.frame.named_before]
    near = alike_wines(wine, among, context.engine)
    if says(context.frame, "dearer") and (of_name := _of_its_name(context, wine)):
        return of_name
    easy = [w for w in near if known[w].availability >= COMMONEST] if context.frame.anywhere else []
    return easy or near


def _of_its_name(context: Context, wine: str) -> list[str]:
    """The wines that bear its name and say more on the label (Reserva, cru), the most alike first."""
    known, glasses = context.knowledge, context.engine.glasses
    narrower = [w for w in context.all_candidates() if wine in known.wines[w].kinds]
    return sorted(narrower, key=lambda w: (round(unlike(glasses[wine], glasses[w], known), 1), w))


def _in_shop(context: Context, wine: str, told: Sequence[str]) -> list[str]:
    """What a shop has in the place of a wine, where only the table was looked at."""
    if not context.at_table(told):
        return []
    shop = replace(context, frame=replace(context.frame, anywhere=True))
    near = [w for w in _near(shop, wine) if w not in context.tonight.wines][: context.top - 1]
    wines = listed([context.knowledge.label(w) for w in near])
    return [context.wording("line", "instead-shop", wines=wines)] if near else []


def _named(context: Context, wine: str, matches: list[Match]) -> Answer:
    labels = [context.knowledge.wines[m.wine].label for m in matches]
    old = context.knowledge.wines[wine].label
    say = context.wording("say", "instead", first=labels[0], old=old)
    lines = [say]
    if labels[1:]:
        lines.append(context.wording("line", "instead-next", wines=listed(labels[1:])))
    reason = say_reason(matches[0], context.knowledge, good=True) if context.frame.dishes else None
    if context.frame.dishes and matches[0].verdict not in LIKED:
        verdict = matches[0].verdict
        lines.append(context.wording("line", "instead-poor", dish=context.dish_name(), verdict=verdict))
    elif reason:
        lines.append(context.wording("line", "instead-dish", dish=context.dish_name(), reason=reason))
    lines += _in_shop(context, wine, [m.wine for m in matches])
    if _asks_price(context) and not context.stock:
        lines.append(context.wording("line", "no-prices"))
    return compose(context, say, lines, picks=matches)


def for_food(context: Context, food: str, leave_out: Collection[str] = ()) -> Answer:
    """The foods most like one, but for those left out."""
    near = alike_foods(food, context.engine, leave_out)[: context.top]
    if not near:
        none = context.wording("say", "instead-none", food=context.knowledge.label(food))
        return compose(context, none, [none])
    labels = [context.knowledge.label(f) for f in near]
    say = context.wording("say", "instead", first=labels[0], old=context.knowledge.label(food))
    lines = [say, context.wording("line", "instead-next", wines=listed(labels[1:]))] if labels[1:] else [say]
    return replace(compose(context, say, lines), picks=tuple(food_item(f, context.knowledge) for f in near))
