"""Answers out of the host's list: what is left, the cheapest that goes, and the bottles behind each pick."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer, Item
from assistant.answers.wording import capital, listed
from assistant.pairing.match import Match
from assistant.pairing.score import LIKED
from assistant.stock.asked import ANYTHING, cheapest_asked, left_asked, price_asked
from assistant.stock.records import Bottle, Stock
from assistant.stock.words import wording

SHOWN, IN_RECORD, MOST_WINES = 3, 10, 12
PICKING = ("wines-for-food", "one-bottle", "choose-wines")
JUDGING = ("judge-pair", "compare", "substitute")
ASKING = (
    *PICKING, "unclear", "substitute", "quantity", "compare", "set-table", "note", "foods-for-wine",
    "describe", "judge-pair", "plan", "help",
)  # fmt: skip


def of_list(context: Context) -> Answer | None:
    """The answer where the list itself is asked for, or None."""
    frame = context.frame
    if not context.stock or frame.intent not in ASKING:
        return None
    if left_asked(frame.text.typed) and not any(r.kind == "food" for r in frame.text.readings):
        return _left(context)
    return _cheapest(context) if cheapest_asked(frame.text.typed) else None


def with_list(answer: Answer, context: Context) -> Answer:
    """The answer with the bottles of the list behind each wine, named below what is spoken."""
    if not context.stock:
        return answer
    price = price_asked(context.frame.text.typed)
    answer = replace(
        answer,
        picks=tuple(_with_bottles(item, context.stock, price) for item in answer.picks),
        avoid=tuple(_with_bottles(item, context.stock, ANYTHING) for item in answer.avoid),
        other_colour=answer.other_colour and _with_bottles(answer.other_colour, context.stock, price),
    )
    if not answer.picks or cheapest_asked(context.frame.text.typed):
        return answer
    if answer.intent not in PICKING:
        return _judged(answer, context)
    head, *rest = answer.text.split("\n")
    return replace(answer, text="\n".join([head, *_pick_lines(answer, context), *rest]))


def _judged(answer: Answer, context: Context) -> Answer:
    """The answer with the bottles of the wines that are judged."""
    judged = answer.picks if answer.intent in JUDGING else ()
    lines = [line for item in judged[:SHOWN] if (line := _line(item.id, context, ANYTHING))]
    return replace(answer, text="\n".join([*answer.text.split("\n"), *lines]))


def _pick_lines(answer: Answer, context: Context) -> list[str]:
    """A line for each pick with bottles; picks that are not in the list; a better one outside."""
    price = price_asked(context.frame.text.typed)
    most = len(answer.picks) if answer.intent == "choose-wines" else max(SHOWN, len(context.tonight.wines))
    wines = [item for item in answer.picks if item.kind != "food"][:most]
    lines = [line for item in wines if (line := _line(item.id, context, price))]
    outside = [item.label for item in wines if item.id not in context.stock.of]
    if price != ANYTHING and not any(item.bottles for item in wines):
        lines.insert(0, wording()("answer", "none"))
    lines += [wording()("answer", "outside", wines=listed(outside))] if outside else []
    return lines + ([] if outside else _better(answer, context))


def _better(answer: Answer, context: Context) -> list[str]:
    """The best wine of all where the list's best is clearly behind it."""
    frame = context.frame
    if answer.intent == "choose-wines" or not frame.dishes or context.tonight.wines:
        return []
    best = context.engine.rank(context.table(), context.all_candidates())[0]
    ahead = best.score - answer.picks[0].score > 2 * context.knowledge.constants["noise"]
    if not ahead or context.stock.has(best.wine):
        return []
    label = context.knowledge.label(best.wine)
    return [wording()("answer", "better", wine=label, verdict=best.verdict)]


def _line(wine: str, context: Context, price: tuple[float | None, float | None]) -> str:
    """`Off-dry Riesling: Grey Heron 2025, $14, 6 in stock.`"""
    found = context.stock.fitting(wine, *price) or context.stock.of.get(wine, ())
    if not found:
        return ""
    told = [told_bottle(bottle, context.stock) for bottle in found[:SHOWN]]
    if len(found) > SHOWN:
        told.append(wording()("answer", "more", count=len(found) - SHOWN))
    label = capital(context.knowledge.label(wine))
    return wording()("answer", "bottle", wine=label, bottles="; ".join(told))


def told_bottle(bottle: Bottle, stock: Stock) -> str:
    """`Grey Heron 2025, $14, 6 in stock`."""
    facts = wording()("answer", "price", price=stock.money(bottle.price)) if bottle.price is not None else ""
    if bottle.left is not None:
        facts += wording()("answer", "left" if bottle.left else "none-left", count=bottle.left)
    return wording()("answer", "named", label=bottle.name, facts=facts)


def _with_bottles(item: Item, stock: Stock, price: tuple[float | None, float | None]) -> Item:
    found = stock.fitting(item.id, *price)[:IN_RECORD]
    return replace(item, bottles=tuple(_record(bottle, stock) for bottle in found)) if found else item


def _record(bottle: Bottle, stock: Stock) -> dict[str, Any]:
    return {
        "label": bottle.name, "price": bottle.price, "currency": stock.currency.strip() or None,
        "in_stock": bottle.left, "vintage": bottle.vintage, "alcohol_percent": bottle.alcohol,
        "line": bottle.line,
    }  # fmt: skip


def _left(context: Context) -> Answer:
    """The bottles that are left, within the limits, by wine; whatever stands to be eaten."""
    context = replace(context, frame=replace(context.frame, dishes=()))
    price, label = price_asked(context.frame.text.typed), context.knowledge.label
    drinks = [w for w in context.stock.of if context.knowledge.wines[w].type == "Drink"]
    wines = [*context.in_list(), *(w for w in drinks if not context.frame.preferences)]
    wines = sorted(dict.fromkeys(w for w in wines if context.stock.has(w, *price)), key=label)
    if not wines:
        say = wording()("answer", "left-none")
        return compose(context, say, [say])
    counts = [b.left for w in wines for b in context.stock.fitting(w, *price)]
    total = sum(count or 0 for count in counts)
    say = wording()("answer", "left-say" if total else "left-uncounted", bottles=total, count=len(wines))
    lines = [_line(wine, context, price) for wine in wines[:MOST_WINES]]
    more = len(wines) - MOST_WINES
    lines += [wording()("answer", "left-more", count=more)] if more > 0 else []
    answer = compose(context, say, [say, *lines])
    return replace(answer, intent="set-table", dish=None)


def _cheapest(context: Context) -> Answer:
    """The cheapest bottle that goes with what is eaten, or within the limits where nothing is named."""
    price = price_asked(context.frame.text.typed)
    named = {style for wine in context.frame.wines for style in context.knowledge.styles_of(wine)}
    wines = [wine for wine in context.in_list() if not named or wine in named]
    ranked = context.engine.rank(context.table(), wines) if context.frame.dishes and wines else []
    good = [m for m in ranked if m.verdict in LIKED] or [m for m in ranked if m.verdict == ranked[0].verdict]
    matches = good or [Match(wine, 0.0, "neutral") for wine in wines]
    priced = sorted(
        (bottle.price, -m.score, bottle.line, bottle, m)
        for m in matches
        for bottle in context.stock.fitting(m.wine, *price)[:1]
        if bottle.price is not None
    )
    if not priced:
        say = wording()("answer", "no-prices")
        return replace(compose(context, say, [say]), intent="wines-for-food", understood=bool(wines))
    kind = "cheapest-plain" if not ranked else "cheapest" if good[0].verdict in LIKED else "cheapest-poor"
    return _told_cheapest(context, kind, [(row[3], row[4]) for row in priced])


def _told_cheapest(context: Context, kind: str, priced: Sequence[tuple[Bottle, Match]]) -> Answer:
    bottle, first = priced[0]
    label = capital(context.knowledge.label(first.wine))
    money = context.stock.money(bottle.price or 0.0)
    say = wording()("answer", kind, label=bottle.name, price=money)
    lines = [_line(m.wine, context, price_asked(context.frame.text.typed)) for _, m in priced[: context.top]]
    if context.frame.dishes:
        lines.insert(0, wording()("answer", "verdict", wine=label, verdict=first.verdict))
    answer = compose(context, say, [say, *lines], picks=[m for _, m in priced[: context.top]])
    return replace(answer, intent="wines-for-food", verdict=None)
