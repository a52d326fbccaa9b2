"""In which order to pour, or to eat, and why each step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.compose import compose, left_out
from assistant.answers.context import Context
from assistant.answers.own_order import own_order
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.facts import wording
from assistant.evening.flight_reasons import reason as step_reason
from assistant.evening.flight_reasons import swapped
from assistant.evening.food_order import eating_order
from assistant.language.follow_lines import says_only
from assistant.pairing.flight import pour_order
from assistant.pairing.glass import Glass

WHY = "why"


def order(context: Context) -> Answer:
    """The order of pouring with the reason of each step; where no wine is named, that of eating."""
    if not context.frame.wines:
        return _of_foods(context)
    glasses = [context.engine.glasses[context.knowledge.style(w)] for w in context.frame.wines]
    ordered = pour_order(glasses, context.knowledge.constants)
    labels = [context.knowledge.wines[g.wine].label for g in ordered]
    if len(labels) == 1:
        return _of_one(context, labels[0])
    if (own := own_order(context, ordered)) is not None:
        return own
    lines = []
    for i, name in enumerate(labels):
        reason = context.wording("order", step_reason(ordered, i, context.knowledge.constants))
        lines.append(context.wording("line", "order-step", number=i + 1, wine=name, reason=reason))
    lines += _broken_lines(context, ordered)
    say = context.wording("say", "order", first=labels[0], last=labels[-1])
    if WHY in context.frame.text.cues or says_only(context.frame, "doubts"):
        reason = context.wording("order", step_reason(ordered, 0, context.knowledge.constants))
        say = capital(context.wording("line", "order-first", wine=labels[0], reason=reason))
    wines = [glass.wine for glass in ordered]
    matches = context.engine.judge_each(context.table(), wines) if context.frame.dishes else []
    return compose(context, say, [say, *lines], picks=matches)


def _of_one(context: Context, wine: str) -> Answer:
    """One wine has no order; a word beside it that was not known may be the other."""
    words = listed([f"“{word}”" for word in left_out(context)])
    say = context.wording("say", "order-unknown" if words else "order-one", wine=wine, words=words)
    answer = compose(context, say, [say])
    return replace(answer, clarify=say, understood=False) if words else answer


def _of_foods(context: Context) -> Answer:
    """The order of eating with the reason of each step: the quiet before the loud, the sweet last."""
    plates = [context.engine.plate(dish) for dish in context.frame.dishes]
    steps = eating_order(plates, context.knowledge.constants)
    names = [context.one_dish(context.frame.dishes[step.food]) for step in steps]
    reasons = [step.reason for step in steps[:-1]] + [f"last-{steps[-1].reason}"]
    lines = [
        context.wording("line", "order-step", number=i + 1, wine=name, reason=wording()("eat", reason))
        for i, (name, reason) in enumerate(zip(names, reasons, strict=True))
    ]
    say = context.wording("say", "eating-order", first=names[0], last=names[-1])
    return compose(context, say, [say, *lines])


def _broken_lines(context: Context, ordered: Sequence[Glass]) -> list[str]:
    """What breaks most where two neighbours change places, where anything does."""
    worst = max(swapped(ordered, context.knowledge.constants), key=lambda b: b.cost, default=None)
    if worst is None or worst.cost <= 0:
        return []
    label = context.knowledge.label
    what = context.wording("swapped", worst.mechanism)
    fields = {"first": label(worst.first), "second": label(worst.second), "what": what}
    return [context.wording("line", "swapped", **fields)]
