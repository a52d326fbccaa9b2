"""A popular claim: where it holds, where it fails, and how it does on the foods of the table."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.claim import claim
from assistant.answers.compose import label
from assistant.answers.context import Context
from assistant.answers.judge import judge_pair
from assistant.answers.notes import note_lines, noted, rule_lines
from assistant.answers.record import Answer
from assistant.answers.trial import Trial, trials
from assistant.answers.trouble import trouble
from assistant.answers.unnamed import unnamed
from assistant.knowledge.concepts import Entry, first
from assistant.pairing.match import Match

SORT = "myth/"


def myth(context: Context) -> Answer:
    """The claims named; where none is known, the pair that was doubted, or that it is not known."""
    claims = context.frame.entries
    if not claims:
        return _unnamed(context)
    if not claims[0].startswith(SORT):  # a fault that was doubted
        return trouble(context)
    entries = [context.knowledge.entry(claim) for claim in claims]
    tried = trials(context, claims[0])
    say = str(first(entries[0], "say"))
    lines = [*_claim_lines(context, claims[0]), *(_shown(context, t) for t in tried)]
    lines += [*_rule_lines(context, entries[0], tried), *note_lines(context, entries[0])]
    lines += [line for claim in claims[1:] for line in _other(context, claim)]
    picks = tuple(context.item(match) for match in _picks(tried))
    return replace(noted(context, say, lines, entries), picks=picks)


def _claim_lines(context: Context, claim: str) -> list[str]:
    entry = context.knowledge.entry(claim)
    name = context.knowledge.label(claim)
    lines = [context.wording("line", "claim", claim=name, truth=first(entry, "truth"))]
    return lines + [context.wording("line", side, where=first(entry, side)) for side in ("holds", "fails")]


def _shown(context: Context, trial: Trial) -> str:
    """Which way the claim goes with one dish, with both verdicts."""
    noise = context.knowledge.constants["noise"]
    way = "fails" if trial.lead >= noise else "holds" if trial.lead <= -noise else "either"
    return context.wording(
        "line",
        f"tried-{way}",
        dish=context.one_dish(trial.dish),
        breaks=label(context, trial.breaks),
        breaks_verdict=trial.breaks.verdict,
        keeps=label(context, trial.keeps),
        keeps_verdict=trial.keeps.verdict,
    )


def _picks(tried: list[Trial]) -> list[Match]:
    """The wines shown, best first, each once."""
    best: dict[str, Match] = {}
    for match in sorted((m for t in tried for m in (t.keeps, t.breaks)), key=lambda m: (-m.score, m.wine)):
        best.setdefault(match.wine, match)
    return list(best.values())


def _rule_lines(context: Context, entry: Entry, tried: list[Trial]) -> list[str]:
    """The rules that speak to the claim: where it was tried, those at work there."""
    names = entry.get("spokenFor", ())
    if tried:
        at_work = {effect.rule for t in tried for match in (t.keeps, t.breaks) for effect in match.path}
        names = [name for name in names if name in at_work]
    return rule_lines(context, names)


def _other(context: Context, claim: str) -> list[str]:
    entry = context.knowledge.entry(claim)
    fields = {"claim": context.knowledge.label(claim), "say": first(entry, "say")}
    return [context.wording("line", "claim-too", **fields), *note_lines(context, entry)]


def _unnamed(context: Context) -> Answer:
    """No claim that is known: the claim or pair is judged; otherwise it is said that nothing is known."""
    frame = context.frame
    if not frame.topics and (judged := claim(context)) is not None:
        return judged
    wines = frame.wines or tuple(p.wanted for p in frame.preferences if p.wanted and not p.banned)
    wines = tuple(wine for wine in wines if context.knowledge.styles_of(wine))
    if frame.dishes and wines and not frame.topics:
        return judge_pair(replace(context, frame=replace(frame, wines=wines)))
    return unnamed(context, "claim-unknown", "claim-ask")
