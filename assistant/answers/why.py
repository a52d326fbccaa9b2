"""Answers to why and why not, at three depths: one reason, the forces, the rules themselves."""

from __future__ import annotations

from assistant.answers.compose import LIKED, compose, label
from assistant.answers.context import Context, say_reason
from assistant.answers.items import source_text
from assistant.answers.judge import forces, judged, repairs
from assistant.answers.record import Answer
from assistant.pairing.engine import Match
from assistant.pairing.score import Effect

CARRIES = 0.7


def why(context: Context) -> Answer:
    """Explains the first wine of the frame with its dishes, from the rules that fired."""
    match = judged(context, context.frame.wines[0])
    good = match.verdict in LIKED
    reason = say_reason(match, context.knowledge, good) or say_reason(match, context.knowledge, not good)
    fields = {"wine": label(context, match), "dish": context.dish_name(), "reason": reason}
    long = f"judge-{match.verdict}" if reason else f"judge-short-{match.verdict}"
    say = context.wording.spoken(long, f"judge-short-{match.verdict}", **fields)
    lines = [_mouthful(context, match)]
    if context.frame.depth > 1:
        lines = forces(context, match)
    if context.frame.depth > 2:
        lines += [*_rule_lines(context, match), *_query_lines(context, match)]
    if not good and context.frame.depth < 3:
        lines += repairs(context, match)
    return compose(context, say, [say, *lines], picks=[match], verdict=match.verdict)


def telling(match: Match) -> list[Effect]:
    """The fewest effects, strongest first, that carry most of the whole."""
    total = sum(abs(e.effect) for e in match.path)
    told: list[Effect] = []
    covered = 0.0
    for effect in match.path:
        if covered >= CARRIES * total:
            break
        told.append(effect)
        covered += abs(effect.effect)
    return told


def _mouthful(context: Context, match: Match) -> str:
    """The one mechanism that counts most, as a clause."""
    rules = context.knowledge.rules
    strongest = next((e for e in match.path if e.rule in rules), None)
    if strongest is None:
        return context.wording("reason", "limit-quiet")
    because = rules[strongest.rule].because
    return because[:1].upper() + because[1:] + "."


def _rule_lines(context: Context, match: Match) -> list[str]:
    lines = []
    for effect in telling(match):
        rule = context.knowledge.rules.get(effect.rule)
        if rule is None:
            continue
        source = f"({rule.confidence}; {source_text(rule.source, context.knowledge)})"
        seen = ", ".join(f"{name} {value:.1f}" for name, value in effect.values.items())
        detail = f"{rule.detail} [{seen}]"
        lines.append(
            context.wording(
                "line", "why-deep", label=rule.label, effect=effect.effect, detail=detail, source=source
            )
        )
    lines.append(context.wording("line", "total", total=match.score, verdict=match.verdict))
    return lines


def _query_lines(context: Context, match: Match) -> list[str]:
    rules = context.knowledge.rules
    strongest = next((e for e in match.path if e.rule in rules), None)
    if strongest is None:
        return []
    return [context.wording("line", "why-query"), rules[strongest.rule].construct]
