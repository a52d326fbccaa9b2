"""In which order to pour, and why each step."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.pairing.flight import carry_over, pour_order
from assistant.pairing.glass import Glass


def order(context: Context) -> Answer:
    """The order of pouring with the reason of each step."""
    glasses = [context.engine.glasses[context.knowledge.style(w)] for w in context.frame.wines]
    ordered = pour_order(glasses, context.knowledge.constants)
    labels = [context.knowledge.wines[g.wine].label for g in ordered]
    lines = []
    for i, name in enumerate(labels):
        reason = _step_reason(context, ordered, i)
        lines.append(context.wording("line", "order-step", number=i + 1, wine=name, reason=reason))
    say = context.wording("say", "order", first=labels[0], last=labels[-1])
    matches = [context.engine.judge(context.table(), g.wine) for g in ordered] if context.frame.dishes else []
    return compose(context, say, [say, *lines], picks=matches)


def _step_reason(context: Context, ordered: Sequence[Glass], at: int) -> str:
    """What swapping the wine with the next one would cost most by; for the last, with the one before."""
    last = at == len(ordered) - 1
    if len(ordered) == 1:
        return context.wording("order", "alone")
    before, after = (at - 1, at) if last else (at, at + 1)
    costs = carry_over(ordered[after], ordered[before], context.knowledge.constants)
    name = max(costs, key=lambda n: costs[n]) if any(costs.values()) else "alike"
    return context.wording("order", f"last-{name}" if last else name)
