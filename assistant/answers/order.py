"""In which order to pour, and why each step."""

from __future__ import annotations

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.foods import style
from assistant.answers.record import Answer
from assistant.pairing.flight import carry_over, pour_order
from assistant.pairing.glass import Glass


def order(context: Context) -> Answer:
    """The order of pouring with the reason of each step."""
    glasses = [context.engine.glasses[style(context, w)] for w in context.frame.wines]
    ordered = pour_order(glasses)
    labels = [context.knowledge.wines[g.wine].label for g in ordered]
    lines = []
    for i, glass in enumerate(ordered):
        follower = ordered[i + 1] if i + 1 < len(ordered) else None
        reason = context.wording("order", _step_reason(glass, follower))
        lines.append(context.wording("line", "order-step", number=i + 1, wine=labels[i], reason=reason))
    say = context.wording("say", "order", first=labels[0], last=labels[-1])
    matches = [context.engine.judge(context.table(), g.wine) for g in ordered] if context.frame.dishes else []
    return compose(context, say, [say, *lines], picks=matches)


def _step_reason(glass: Glass, follower: Glass | None) -> str:
    if follower is None:
        return "last-sweet" if glass.points["sweetness"] >= 2 else "last"
    if glass.points["bubbles"] >= 3:
        return "bubbles"
    costs = carry_over(follower, glass)
    return max(costs, key=lambda name: costs[name]) if any(costs.values()) else "alike"
