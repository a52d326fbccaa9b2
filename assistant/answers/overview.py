"""What goes with what on tonight's table: for each food its best wine and the one to keep from it."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose, label
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.language.follow_lines import says
from assistant.pairing.dish import Dish, table_of
from assistant.pairing.match import Match
from assistant.pairing.score import DISLIKED, LIKED

ASKED = "check-board"


def overview(context: Context) -> Answer:
    """A line for each food on the table, and in the spoken sentence what clashes, if anything does."""
    tables = [table_of([dish]) for dish in context.tonight.dishes]
    found = context.engine.rank_each(tables, context.tonight.wines)
    ranked = list(zip(context.tonight.dishes, found, strict=True))
    bad = [(dish, found[-1]) for dish, found in ranked if found[-1].verdict in DISLIKED]
    say = _best(context, ranked) if says(context.frame, "best-pair") else _spoken(context, bad)
    lines = [say, *(_line(context, dish, found) for dish, found in ranked)]
    avoid = list({match.wine: match for _, match in bad}.values())
    answer = compose(context.of_evening(), say, lines, avoid=avoid)
    return replace(answer, intent=ASKED, dish=None)


def _best(context: Context, ranked: list[tuple[Dish, list[Match]]]) -> str:
    dish, found = max(ranked, key=lambda pair: pair[1][0].score)
    return context.wording(
        "overview", "best-of-all", wine=label(context, found[0]), food=context.one_dish(dish)
    )


def _spoken(context: Context, bad: list[tuple[Dish, Match]]) -> str:
    if not bad:
        return context.wording("overview", "no-clash")
    pairs = [
        context.wording("overview", "pair", wine=label(context, m), food=context.one_dish(d)) for d, m in bad
    ]
    return context.wording("overview", "clash", pairs=listed(pairs[:2]))


def _line(context: Context, dish: Dish, found: list[Match]) -> str:
    best, worst = found[0], found[-1]
    kind = "best" if best.verdict in LIKED else "none"
    told = {"food": context.one_dish(dish), "wine": label(context, best), "verdict": best.verdict}
    line = capital(context.wording("overview", kind, **told))
    if worst.verdict not in DISLIKED or worst.wine == best.wine:
        return line
    return f"{line} {context.wording('overview', 'not', wine=label(context, worst), verdict=worst.verdict)}"
