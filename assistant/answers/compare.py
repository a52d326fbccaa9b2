"""Which is better, or how two wines or foods differ."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose, label
from assistant.answers.context import Context, say_reason
from assistant.answers.judge import judged
from assistant.answers.record import Answer
from assistant.answers.wording import capital
from assistant.language.follow_lines import says
from assistant.pairing.dish import Dish
from assistant.pairing.match import Match
from assistant.pairing.score import LIKED

COMPARED = {"sweetness", "acid", "tannin", "body", "alcohol", "oak", "bubbles", "aroma"}
CLEAR, SLIGHT = 0.3, 0.1  # points from which a difference is told, and from which one that is asked about is
TASTED = ("fat", "sugar", "acid", "salt", "umami", "heat", "bitter", "smoke", "aroma", "weight")

PAIR = 2


def compare(context: Context) -> Answer:
    """Which of the wines does better with the dish; how they differ without one, or where that is asked."""
    if len(context.frame.wines) == 1 and len(context.frame.dishes) > 1 and not _differ_asked(context):
        return _foods_with(context, context.frame.wines[0])
    if len(context.frame.wines) < 2 or not context.frame.dishes:
        return _differences(context)
    if _differ_asked(context) and not any(r.type == "Food" for r in context.frame.text.readings):
        return _differences(context.of_evening())
    matches = sorted((judged(context, w) for w in context.frame.wines), key=lambda m: -m.score)
    noise = context.knowledge.constants["noise"]
    tie = matches[0].score - matches[-1].score < noise
    name = "compare-tie" if tie else "compare-many" if len(matches) > PAIR else "compare"
    say = capital(context.wording("say", name, winner=label(context, matches[0])))
    lines = [say]
    for match in matches:
        fields = {"verdict": match.verdict, "reason": _reason(context, match)}
        lines.append(context.wording("line", "compare-line", wine=label(context, match), **fields))
    return compose(context, say, lines, picks=matches)


def _foods_with(context: Context, wine: str) -> Answer:
    """Which of the foods does better with the one wine, and how each does."""
    found = [(context.one_dish(dish), judged(_eating(context, dish), wine)) for dish in context.frame.dishes]
    found.sort(key=lambda row: -row[1].score)
    tie = found[0][1].score - found[-1][1].score < context.knowledge.constants["noise"]
    say = capital(context.wording("say", "compare-tie-foods" if tie else "compare", winner=found[0][0]))
    lines = [
        context.wording(
            "line", "compare-line", wine=capital(food), verdict=match.verdict, reason=_reason(context, match)
        )
        for food, match in found
    ]
    return replace(compose(context, say, [say, *lines]), dish=None)


def _eating(context: Context, dish: Dish) -> Context:
    return replace(context, frame=replace(context.frame, dishes=(dish,)))


def _reason(context: Context, match: Match) -> str:
    reason = say_reason(match, context.knowledge, match.verdict in LIKED)
    return reason or context.wording("reason", "little")


def _differ_asked(context: Context) -> bool:
    """Whether it is asked how the wines differ, or which is more of something."""
    names = ("differs", *(f"asks-{name}" for name in COMPARED))
    return any(says(context.frame, name) for name in names)


def _differences(context: Context) -> Answer:
    """The two wines' largest differences in points, in words."""
    if len(context.frame.wines) < 2:
        return _food_differences(context)
    wines = [context.knowledge.style(w) for w in context.frame.wines[:2]]
    a, b = (context.engine.glasses[w] for w in wines)
    asked = {name for name in COMPARED if says(context.frame, f"asks-{name}")}
    gaps = sorted(a.points, key=lambda n: (n not in asked, -abs(a.points[n] - b.points[n])))
    least = dict.fromkeys(COMPARED, CLEAR) | dict.fromkeys(asked, SLIGHT)
    shown = [n for n in gaps if n in COMPARED and abs(a.points[n] - b.points[n]) >= least[n]][:3]
    words = [_more(context, n, a.points[n] > b.points[n], wines) for n in shown]
    if asked and not asked.intersection(shown):
        labels = [context.knowledge.wines[wine].label for wine in wines]
        words.insert(0, context.wording("differs", "equal", one=labels[0], two=labels[1]))
    say = context.wording("say", "differ" if words else "alike", first=words[0] if words else "")
    return compose(context, say, [say, *words[1:]])


def _more(context: Context, name: str, first_is_more: bool, wines: list[str]) -> str:
    more, less = wines if first_is_more else reversed(wines)
    labels = {"more": context.knowledge.wines[more].label, "less": context.knowledge.wines[less].label}
    return capital(context.wording("differs", name, **labels))


def _food_differences(context: Context) -> Answer:
    plates = [(context.one_dish(d), context.engine.plate(d).points) for d in context.frame.dishes[:2]]
    (one, a), (two, b) = plates
    gaps = sorted((n for n in TASTED if n in a), key=lambda n: -abs(a[n] - b[n]))
    words = [
        context.wording("differs-food", n, more=one if a[n] > b[n] else two, less=two if a[n] > b[n] else one)
        for n in gaps[:3]
        if abs(a[n] - b[n]) >= 0.3
    ]
    say = context.wording("say", "differ" if words else "alike", first=words[0] if words else "")
    return compose(context, say, [say, *words[1:]])
