"""A wine that came off the table: what of the table, of the evening's other bottles or of the list does best
in its place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.wording import capital, listed
from assistant.language.follow_lines import says
from assistant.pairing.dish import Dish
from assistant.pairing.match import Match
from assistant.stock.answering import told_bottle
from assistant.table.taken_off import drops


def instead(context: Context) -> list[str]:
    """What to pour in the place of the wine that went, first what is said; empty where none is asked for."""
    gone = _gone(context)
    if not (gone and context.frame.dishes and says(context.frame, "table-instead")):
        return []
    foods = _its_foods(gone, context)
    label, first = context.knowledge.label, _best(foods, context.frame.wines, context)
    off = {"gone": label(gone), "wine": label(first[0].wine) if first else ""}
    say = capital(context.wording("line", "gone-pour" if first else "gone-nothing", **off))
    why = [_line("gone-why", match, foods, context) for match in first]
    return [say, *why, *_better(gone, foods, first, context), *_another(gone, context)]


def _better(gone: str, foods: Sequence[Dish], first: Sequence[Match], context: Context) -> list[str]:
    """What could be opened and does clearly better than the table."""
    noise = context.knowledge.constants["noise"]
    best = _best(foods, _others(gone, context), context)
    return [
        _line("gone-better", m, foods, context) for m in best if not first or m.score > first[0].score + noise
    ]


def _gone(context: Context) -> str | None:
    """The wine that this question took off the table."""
    named = [r.id for r in context.frame.text.readings if r.id in context.knowledge.wines]
    named += [w for r in context.frame.text.readings for w in context.knowledge.styles_of(r.id)[:1]]
    gone = [wine for wine in named if wine not in context.frame.wines]
    return gone[0] if gone and drops(context.frame) else None


def _its_foods(gone: str, context: Context) -> tuple[Dish, ...]:
    """The foods that no wine on the table suits as well as the one that went; else all."""
    frame, wines = context.frame, [*context.frame.wines, gone]
    its = (dish for dish in frame.dishes if _best((dish,), wines, context)[0].wine == gone)
    return tuple(its) or frame.dishes


def _best(foods: Sequence[Dish], wines: Sequence[str], context: Context) -> list[Match]:
    """The wine that does best with these foods, if there is any wine."""
    eaten = replace(context, frame=replace(context.frame, dishes=tuple(foods)))
    return context.engine.rank(eaten.table(), wines)[:1] if wines else []


def _others(gone: str, context: Context) -> list[str]:
    """What else could be opened: the evening's bottles not poured, and those left in the list."""
    wines = dict.fromkeys((*context.tonight.reserve, *context.in_list()))
    return [wine for wine in wines if wine != gone and wine not in context.frame.wines]


def _line(name: str, match: Match, foods: Sequence[Dish], context: Context) -> str:
    label = context.knowledge.label(match.wine)
    bottle = next(iter(context.stock.fitting(match.wine)), None)
    shown = f"{label} ({told_bottle(bottle, context.stock)})" if bottle else label
    told = listed([context.one_dish(dish) for dish in foods])
    return capital(context.wording("line", name, wine=shown, foods=told, verdict=match.verdict))


def _another(gone: str, context: Context) -> list[str]:
    """Another bottle of the same wine, unless it is said to have run out."""
    bottle = next(iter(context.stock.fitting(gone)), None)
    if bottle is None or says(context.frame, "table-used-up"):
        return []
    return [context.wording("line", "gone-same", bottle=told_bottle(bottle, context.stock))]
