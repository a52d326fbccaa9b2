"""Answers to why and why not, at three depths: one reason, the forces, the rules themselves."""

from __future__ import annotations

from assistant.answers.compose import compose
from assistant.answers.context import Context, strongest
from assistant.answers.items import source_text
from assistant.answers.judge import called, forces, judged, repairs, stand_ins
from assistant.answers.record import Answer
from assistant.answers.wording import capital
from assistant.knowledge.concepts import Rule
from assistant.language.follow_lines import says
from assistant.pairing.match import Match
from assistant.pairing.score import LIKED, Effect

CARRIES = 0.7


def why(context: Context) -> Answer:
    """Explains the first wine of the frame with its dishes, from the rules that fired."""
    match = judged(context, context.frame.wines[0])
    good = match.verdict in LIKED
    told = strongest(match, context.knowledge, good) or strongest(match, context.knowledge, not good)
    name = called(context, context.frame.wines[0])
    if told is None:
        say = context.wording("say", f"judge-short-{match.verdict}")
    else:
        say = capital(context.wording("line", "pick", wine=name, reason=told.say))
    told_of = {"wine": name, "dish": context.dish_name(), "verdict": match.verdict}
    lines = [capital(context.wording("line", "verdict", **told_of))]
    lines += [*stand_ins(context, [match]), *_reasons(context, match, told)]
    return compose(context, say, [say, *lines], picks=[match], verdict=match.verdict)


def _reasons(context: Context, match: Match, told: Rule | None) -> list[str]:
    """One mechanism, then the forces both ways, then the rules themselves, as deep as asked."""
    depth = context.frame.depth
    lines = forces(context, match) if depth > 1 else [_mouthful(told, context)]
    if depth > 2:
        query = _query_lines(context, match) if says(context.frame, "rule-shown") else []
        return [*lines, *_rule_lines(context, match), *query]
    return lines if match.verdict in LIKED else lines + repairs(context, match)


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


def _mouthful(told: Rule | None, context: Context) -> str:
    """The mechanism that was spoken of, as a sentence."""
    return f"{capital(told.because)}." if told else context.wording("reason", "limit-quiet")


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
