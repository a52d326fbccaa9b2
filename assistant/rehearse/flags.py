"""What of a verdict is contested: how near another lies, what pulls both ways, how it is known."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from assistant.answers.context import Context
from assistant.evening.facts import fact
from assistant.notebook import Entry
from assistant.pairing.dish import Dish
from assistant.pairing.match import Match
from assistant.pairing.score import Effect
from assistant.rehearse.expected import say
from assistant.rehearse.words import rehearse_words

JUDGED = "judged"


def flags(context: Context, dish: Dish, match: Match, entries: Sequence[Entry]) -> tuple[str, ...]:
    """The sentences, one for each reason; none for a pair that is sure."""
    found = [
        *_near(context, match),
        *_both_ways(context, match),
        *_unsure(context, match),
        *_judged(context, dish),
        *before(context, dish, match, entries),
    ]
    return tuple(found)


def _near(context: Context, match: Match) -> Iterator[str]:
    """A score that might as well have the next verdict."""
    within = fact("rehearse", "rehearsal", "near_floor").typical
    bands = context.knowledge.bands
    for above, below in pairwise(bands):
        if abs(match.score - above.floor) < within:
            other = below.verdict if match.verdict == above.verdict else above.verdict
            fields = {"verdict": match.verdict, "score": f"{match.score:+.1f}", "other": other}
            yield say(context, "flag-near", floor=f"{above.floor:+.1f}", **fields)


def opposed(path: Sequence[Effect], context: Context) -> tuple[Effect, Effect] | None:
    """The strongest rule for and the strongest against, where each is strong by itself."""
    least, rules = fact("rehearse", "conflict", "effect").typical, context.knowledge.rules
    of_rules = [effect for effect in path if effect.rule in rules]
    best = max(of_rules, key=lambda e: e.effect, default=None)
    worst = min(of_rules, key=lambda e: e.effect, default=None)
    if best is None or worst is None or min(best.effect, -worst.effect) < least:
        return None
    return best, worst


def _both_ways(context: Context, match: Match) -> Iterator[str]:
    found = opposed(match.path, context)
    if found:
        because = [context.knowledge.rules[effect.rule].because for effect in found]
        sizes = [f"{effect.effect:+.1f}" for effect in found]
        fields = {"plus": because[0], "minus": because[1], "more": sizes[0], "less": sizes[1]}
        yield say(context, "flag-both", **fields)


def _unsure(context: Context, match: Match) -> Iterator[str]:
    """The rule that counts most, where it is not well established."""
    rules = context.knowledge.rules
    first = next((rules[effect.rule] for effect in match.path if effect.rule in rules), None)
    if first and first.confidence in rehearse_words().weak:
        yield say(context, "flag-weak", because=first.because, confidence=first.confidence)


def _judged(context: Context, dish: Dish) -> Iterator[str]:
    """Foods whose figures are mostly of our own judgement."""
    for food in dict.fromkeys(part.food for part in dish.parts):
        bases = [amount.basis for amount in context.knowledge.food(food).amounts.values()]
        if bases and 2 * bases.count(JUDGED) > len(bases):
            yield say(context, "flag-judged", food=context.knowledge.label(food))


def before(context: Context, dish: Dish, match: Match, entries: Sequence[Entry]) -> Iterator[str]:
    """What was answered of the same pair when it was last answered otherwise."""
    parts = dish.parts
    ids = {match.wine, *(name for part in parts for name in (part.food, *part.methods))}
    same = [one for one in entries if one.verdict and set(one.ids) == ids and not dish.added]
    other = next((one for one in reversed(same) if one.verdict != match.verdict), None)
    if other:
        when = context.wording.date(other.time)
        fields = {"date": when, "old": other.verdict, "new": match.verdict}
        named = {"food": context.one_dish(dish), "wine": context.knowledge.label(match.wine)}
        yield say(context, "flag-before", **fields, **named)
