"""Answers to compare, pour order, define, help and what was not understood."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.context import Context, say_reason
from assistant.answers.pairing import LIKED, _answer, _judged, _label, _style
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.knowledge.concepts import first
from assistant.pairing.flight import carry_over, pour_order


def compare(context: Context) -> Answer:
    """Which of the wines does better with the dish; without a dish, how they differ."""
    if not context.frame.dishes:
        return _differences(context)
    matches = sorted((_judged(context, w) for w in context.frame.wines), key=lambda m: -m.score)
    noise = context.knowledge.constants["noise"]
    tie = matches[0].score - matches[-1].score < noise
    say = context.wording("say", "compare-tie" if tie else "compare", winner=_label(context, matches[0]))
    lines = [say]
    for match in matches:
        reason = say_reason(match, context.knowledge, match.verdict in LIKED) or "says little"
        lines.append(
            context.wording(
                "line", "compare-line", wine=_label(context, match), verdict=match.verdict, reason=reason
            )
        )
    return _answer(context, say, lines, picks=matches)


def _differences(context: Context) -> Answer:
    """The two wines' largest differences in points, in words."""
    wines = [_style(context, w) for w in context.frame.wines[:2]]
    if len(wines) < 2:
        return _food_differences(context)
    a, b = (context.engine.glasses[w] for w in wines)
    gaps = sorted(a.points, key=lambda n: -abs(a.points[n] - b.points[n]))
    shown = [n for n in gaps if n in _COMPARED and abs(a.points[n] - b.points[n]) >= 0.3][:3]
    words = [_more(context, n, a.points[n] > b.points[n], wines) for n in shown]
    say = context.wording("say", "differ" if words else "alike", first=words[0] if words else "")
    return _answer(context, say, [say, *words[1:]])


_COMPARED = {"sweetness", "acid", "tannin", "body", "alcohol", "oak", "bubbles", "aroma"}


def _more(context: Context, name: str, first_is_more: bool, wines: list[str]) -> str:
    more, less = wines if first_is_more else reversed(wines)
    labels = {"more": context.knowledge.wines[more].label, "less": context.knowledge.wines[less].label}
    return context.wording("differs", name, **labels)


def _food_differences(context: Context) -> Answer:
    plates = [(context.one_dish(d), context.engine.plate(d).points) for d in context.frame.dishes[:2]]
    (one, a), (two, b) = plates
    gaps = sorted((n for n in _TASTED if n in a), key=lambda n: -abs(a[n] - b[n]))
    words = [
        context.wording("differs-food", n, more=one if a[n] > b[n] else two, less=two if a[n] > b[n] else one)
        for n in gaps[:3]
        if abs(a[n] - b[n]) >= 0.3
    ]
    say = context.wording("say", "differ" if words else "alike", first=words[0] if words else "")
    return _answer(context, say, [say, *words[1:]])


_TASTED = ("fat", "sugar", "acid", "salt", "umami", "heat", "bitter", "smoke", "aroma", "weight")


def order(context: Context) -> Answer:
    """The order of pouring with the reason of each step."""
    glasses = [context.engine.glasses[_style(context, w)] for w in context.frame.wines]
    ordered = pour_order(glasses)
    labels = [context.knowledge.wines[g.wine].label for g in ordered]
    lines = []
    for i, glass in enumerate(ordered):
        follower = ordered[i + 1] if i + 1 < len(ordered) else None
        reason = context.wording("order", _step_reason(glass, follower))
        lines.append(context.wording("line", "order-step", number=i + 1, wine=labels[i], reason=reason))
    say = context.wording("say", "order", first=labels[0], last=labels[-1])
    matches = [context.engine.judge(context.table(), g.wine) for g in ordered] if context.frame.dishes else []
    return _answer(context, say, [say, *lines], picks=matches)


def _step_reason(glass, follower) -> str:  # type: ignore[no-untyped-def]
    if follower is None:
        return "last-sweet" if glass.points["sweetness"] >= 2 else "last"
    if glass.points["bubbles"] >= 3:
        return "bubbles"
    costs = carry_over(follower, glass)
    return max(costs, key=lambda name: costs[name]) if any(costs.values()) else "alike"


def define(context: Context) -> Answer:
    """A term of the trade in one sentence."""
    term = context.frame.terms[0]
    entry = context.knowledge.entry(term)
    say = str(first(entry, "say") or first(entry, "definition"))
    return _answer(context, say, [str(first(entry, "definition"))])


def help_(context: Context) -> Answer:
    """What can be asked."""
    return _answer(context, context.wording("help", "say"), [context.wording("help", "text")])


def smalltalk(context: Context) -> Answer:
    """A friendly word back."""
    say = context.wording("smalltalk", "say")
    return _answer(context, say, [say])


def outside(context: Context) -> Answer:
    """The question was recognised, but answering it is not built yet."""
    say = context.wording("say", "outside")
    return replace(_answer(context, say, [say]), understood=False)


def unclear(context: Context, name: str = "text") -> Answer:
    """Says that nothing was understood, and names the words that were not known."""
    words = context.frame.text.left_out
    quoted = listed([f"“{w}”" for w in words[:5]])
    say = context.wording("say", "unknown", words=quoted) if words else context.wording("say", "unclear")
    lines = [say, context.wording("unclear", name)]
    clarify = context.wording("line", "clarify-more")
    return replace(_answer(context, say, lines), clarify=clarify, understood=False)

