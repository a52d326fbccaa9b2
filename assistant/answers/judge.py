"""Do these go together: a verdict, the forces both ways, and what would help."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.compose import compose, label
from assistant.answers.context import Context, say_reason
from assistant.answers.eating import fits
from assistant.answers.record import Answer
from assistant.answers.wording import capital
from assistant.language.eating import WITHOUT_ALCOHOL
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Preference
from assistant.pairing import choose
from assistant.pairing.match import Match
from assistant.pairing.score import LIKED

FORTIFIED, DRINK = "kind/fortified-wine", "Drink"


def judge_pair(context: Context) -> Answer:
    """A verdict on the wines named with the dishes named, and something better if it is poor."""
    matches = [judged(context, wine) for wine in context.frame.wines]
    match = matches[0]
    good = match.verdict in LIKED
    reason = say_reason(match, context.knowledge, good)
    names = [called(context, wine) for wine in context.frame.wines]
    fields = {"wine": names[0], "dish": context.dish_name(), "reason": reason}
    say = context.wording.spoken(*_ways(context, match.verdict, bool(reason)), **fields)
    lines = [
        capital(context.wording("line", "verdict", verdict=m.verdict, wine=name, dish=fields["dish"]))
        for name, m in zip(names, matches, strict=True)
    ]
    lines += stand_ins(context, matches)
    lines = [say, *lines, *forces(context, match), *([] if good else repairs(context, match)), *fits(context)]
    return compose(context, say, lines, picks=matches, verdict=match.verdict)


def _ways(context: Context, verdict: str, reasoned: bool) -> list[str]:
    """Templates of what is said, longest first; blame is denied where it goes well."""
    doubted = opens(context.frame, "too-much") or says(context.frame, "blames")
    ways = ["doubt"] if doubted else ["", "brief"]
    found = [f"judge-{way}-{verdict}".replace("--", "-") for way in (*(ways if reasoned else ()), "short")]
    return found


def judged(context: Context, wine: str) -> Match:
    """A style's match; for a kind of wine, the match of the middle one of those sold everywhere."""
    known = context.knowledge.wines
    if wine in known:
        return context.engine.judge(context.table(), wine)
    styles = context.knowledge.styles_of(wine)
    if FORTIFIED not in context.knowledge.broader(wine):  # nobody means port by red wine
        styles = [style for style in styles if FORTIFIED not in known[style].kinds] or styles
    common = [style for style in styles if known[style].availability >= choose.COMMONEST]
    ranked = context.engine.rank(context.table(), common or styles)
    return ranked[len(ranked) // 2]


def called(context: Context, wine: str) -> str:
    """The name of what was asked about: a kind of wine stays one."""
    return context.knowledge.label(wine)


def stand_ins(context: Context, matches: Sequence[Match]) -> list[str]:
    """Which wine of a kind was tasted in its place."""
    pairs = zip(context.frame.wines, matches, strict=False)
    kinds = ((wine, match) for wine, match in pairs if wine not in context.knowledge.wines)
    return [
        context.wording("line", "middle-of", kind=called(context, kind), wine=label(context, match))
        for kind, match in kinds
    ]


def forces(context: Context, match: Match) -> list[str]:
    """The fewest reasons on both sides that carry most of the effect."""
    rules = context.knowledge.rules
    lines = []
    for name, sign in (("plus", 1), ("minus", -1)):
        found = [rules[e.rule].because for e in match.path if e.effect * sign > 0 and e.rule in rules]
        if found:
            lines.append(context.wording("line", name, reasons="; ".join(found[:2])))
    return lines


def _without_alcohol(context: Context) -> Context:
    """The same where drinks without alcohol are asked for and nothing else."""
    limit = Preference(context.knowledge.label(WITHOUT_ALCOHOL), "kind", wanted=WITHOUT_ALCOHOL)
    return replace(context, frame=replace(context.frame, preferences=(limit,)))


def repairs(context: Context, match: Match) -> list[str]:
    """The fix of the rule that costs most, and the wine that does best instead."""
    rules = context.knowledge.rules
    free = context.knowledge.wines[match.wine].type == DRINK  # in its place stands no wine, and no bigger one
    fixes = (rules[e.rule].fix for e in match.path if e.effect < 0 and e.rule in rules and not free)
    fix = next((f for f in fixes if f), None)
    ranked = context.engine.rank(
        context.table(), (_without_alcohol(context) if free else context).candidates()
    )
    best = choose.picks(ranked, 1, context.knowledge)
    lines = [context.wording("line", "fix", fix=fix)] if fix else []
    return lines + [
        context.wording("line", "better", wine=label(context, m)) for m in best if m.wine != match.wine
    ]
