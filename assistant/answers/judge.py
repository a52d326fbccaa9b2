"""Do these go together: a verdict, the forces both ways, and what would help."""

from __future__ import annotations

from assistant.answers.compose import compose, label
from assistant.answers.context import Context, say_reason
from assistant.answers.eating import fits
from assistant.answers.record import Answer
from assistant.pairing import choose
from assistant.pairing.match import Match
from assistant.pairing.score import LIKED


def judge_pair(context: Context) -> Answer:
    """A verdict on the wines named with the dishes named, and something better if it is poor."""
    matches = [judged(context, wine) for wine in context.frame.wines]
    match = matches[0]
    good = match.verdict in LIKED
    reason = say_reason(match, context.knowledge, good)
    fields = {"wine": label(context, match), "dish": context.dish_name(), "reason": reason}
    long = (f"judge-{match.verdict}", f"judge-brief-{match.verdict}") if reason else ()
    say = context.wording.spoken(*long, f"judge-short-{match.verdict}", **fields)
    lines = [
        context.wording("line", "verdict", verdict=m.verdict, wine=label(context, m), dish=fields["dish"])
        for m in matches
    ]
    lines = [say, *lines, *forces(context, match), *([] if good else repairs(context, match)), *fits(context)]
    return compose(context, say, lines, picks=matches, verdict=match.verdict)


def judged(context: Context, wine: str) -> Match:
    """A style's match; for a whole kind of wine, the match of its middle member."""
    if wine in context.knowledge.wines:
        return context.engine.judge(context.table(), wine)
    ranked = context.engine.rank(context.table(), context.knowledge.styles_of(wine))
    return ranked[len(ranked) // 2]


def forces(context: Context, match: Match) -> list[str]:
    """The fewest reasons on both sides that carry most of the effect."""
    rules = context.knowledge.rules
    lines = []
    for name, sign in (("plus", 1), ("minus", -1)):
        found = [rules[e.rule].because for e in match.path if e.effect * sign > 0 and e.rule in rules]
        if found:
            lines.append(context.wording("line", name, reasons="; ".join(found[:2])))
    return lines


def repairs(context: Context, match: Match) -> list[str]:
    """The fix of the rule that costs most, and the wine that does best instead."""
    rules = context.knowledge.rules
    fixes = (rules[e.rule].fix for e in match.path if e.effect < 0 and e.rule in rules)
    fix = next((f for f in fixes if f), None)
    ranked = context.engine.rank(context.table(), context.candidates())
    best = choose.picks(ranked, 1, context.knowledge)
    lines = [context.wording("line", "fix", fix=fix)] if fix else []
    return lines + [context.wording("line", "better", wine=label(context, m)) for m in best]
