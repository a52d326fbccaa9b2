"""What is asked of foods with wines: the best of each food, what fights, where host and book differ."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.answers.context import Context
from assistant.notebook import Entry, Statement
from assistant.pairing.dish import Dish, table_of
from assistant.pairing.match import Match
from assistant.pairing.score import DISLIKED, LIKED
from assistant.rehearse.expected import Expected, say, spoken
from assistant.rehearse.flags import flags
from assistant.taught.keeper import AUTHOR, Keeper
from assistant.taught.pairs import HOST, apart, first_of, said_of, verdict_of

MOST_REASONS = 2
Ranked = Sequence[tuple[Dish, Sequence[Match]]]


def ranked(context: Context) -> Ranked:
    """Each dish of the table with the wines on it, the best first."""
    tonight = context.tonight
    found = context.engine.rank_each([table_of([dish]) for dish in tonight.dishes], tonight.wines)
    return list(zip(tonight.dishes, found, strict=True))


def best_asked(context: Context, found: Ranked, entries: Sequence[Entry]) -> Iterator[Expected]:
    """`What goes with the brie?`"""
    for dish, matches in found:
        best, worst = matches[0], matches[-1]
        fields = {**_named(context, dish, best), "spoken": _spoken(context, best)}
        told = [
            say(context, "best" if best.verdict in LIKED else "none", **fields),
            *_reasons(context, best, good=True),
        ]
        if worst.verdict != best.verdict:
            name = "away" if worst.verdict in DISLIKED else "least"
            told.insert(2, say(context, name, **_named(context, dish, worst), spoken=_spoken(context, worst)))
        question = say(context, "ask-best", **fields)
        yield Expected("best", question, spoken(told), flags(context, dish, best, entries))


def clash_asked(context: Context, found: Ranked, entries: Sequence[Entry]) -> Iterator[Expected]:
    """`Why not the Malbec with the oysters?`, the worst first."""
    bad = [(dish, m, matches[0]) for dish, matches in found for m in matches if m.verdict in DISLIKED]
    for dish, match, best in sorted(bad, key=lambda one: one[1].score):
        fields = {**_named(context, dish, match), "spoken": _spoken(context, match)}
        told = [say(context, "clash", **fields), *_reasons(context, match, good=False), *_fix(context, match)]
        if best.verdict not in DISLIKED:
            told.append(say(context, "rather", wine=context.knowledge.label(best.wine)))
        yield Expected(
            "clash", say(context, "ask-clash", **fields), spoken(told), flags(context, dish, match, entries)
        )


def host_asked(
    context: Context, found: Ranked, entries: Sequence[Entry], keeper: Keeper
) -> Iterator[Expected]:
    """`You say Syrah with the Gouda, the book does not: who is right?`, the furthest apart first."""
    said = [(dish, m, one) for dish, ms in found for m in ms if (one := said_of(dish, m.wine, keeper))]
    steps = [(apart(verdict_of(one), m.verdict, context.knowledge), dish, m, one) for dish, m, one in said]
    for away, dish, match, one in sorted(steps, key=lambda row: -abs(row[0])):
        if not away:
            continue
        fields = {**_named(context, dish, match), **_voices(context, one, match)}
        first = "host-first" if first_of(one.about, keeper) == HOST else "book-first"
        told = [
            say(context, first, **fields),
            *_reasons(context, match, good=away < 0),
            say(context, "try-both"),
        ]
        flag = say(context, "flag-host", steps=context.wording("taught-steps", str(abs(away))), **fields)
        more = flags(context, dish, match, entries)
        yield Expected("host", say(context, "ask-host", **fields), spoken(told), (flag, *more))


def _voices(context: Context, one: Statement, match: Match) -> dict[str, str]:
    """What both say, and how the one who says it is called, aloud and in writing."""
    own = one.author == AUTHOR
    who = context.wording("rehearse", "you") if own else one.author
    speaker = context.wording("rehearse", "i-say" if own else "they-say", who=one.author)
    when = context.wording.date(one.when)
    book = {"book": match.verdict, "score": f"{match.score:+.1f}"}
    return {**book, "who": who, "speaker": speaker, "date": when, "host": verdict_of(one)}


def _named(context: Context, dish: Dish, match: Match) -> dict[str, str]:
    return {"food": context.one_dish(dish), "wine": context.knowledge.label(match.wine)}


def _spoken(context: Context, match: Match) -> str:
    return next(band.spoken for band in context.knowledge.bands if band.verdict == match.verdict)


def _reasons(context: Context, match: Match, good: bool) -> list[str]:
    """The strongest reasons of the wanted side, each a sentence."""
    rules = context.knowledge.rules
    found = (rules[e.rule].because for e in match.path if e.rule in rules and (e.effect > 0) == good)
    return [f"{because[:1].upper()}{because[1:]}." for because in list(dict.fromkeys(found))[:MOST_REASONS]]


def _fix(context: Context, match: Match) -> list[str]:
    rules = context.knowledge.rules
    fixes = (rules[e.rule].fix for e in match.path if e.effect < 0 and e.rule in rules)
    fix = next((f for f in fixes if f), None)
    return [say(context, "fix", fix=fix)] if fix else []
