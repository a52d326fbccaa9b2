"""How a wine is served: how cold, in which glass, with how much air, and how long an open bottle keeps."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.items import wine_item
from assistant.answers.record import Answer
from assistant.answers.wording import capital, span
from assistant.knowledge.concepts import Amount, Wine
from assistant.pairing.choose import COMMONEST


def service(context: Context) -> Answer:
    """What is known of serving the wines named, the first one to say aloud; of a kind, the range."""
    words = _words(context)
    styles = [w for w in words if w in context.knowledge.wines]
    if not styles:
        return _of_kinds(context, words)
    wines = [context.knowledge.wines[w] for w in styles]
    lines = [line for word in words for line in _of_word(context, word)]
    answer = compose(context, capital(_served(context, wines[0])), [capital(line) for line in lines])
    items = tuple(
        wine_item(w, context.engine.glasses[w.id], "neutral", (), context.knowledge, context.wording)
        for w in wines
    )
    keeping = context.knowledge.keeps_open(wines[0].id)
    return replace(answer, picks=items, figures=_figures(wines[0], keeping))


def _of_word(context: Context, word: str) -> list[str]:
    wine = context.knowledge.wines.get(word)
    return _lines(context, wine) if wine else [_kind_line(context, word)]


def _words(context: Context) -> list[str]:
    """The wines and kinds of wine named; `the white` stands among the limits."""
    kinds = [p.wanted for p in context.frame.preferences if p.property == "kind" and not p.banned]
    return [*context.frame.wines, *(k for k in kinds if k and context.knowledge.styles_of(k))]


def _of_kinds(context: Context, words: list[str]) -> Answer:
    """How cold the common styles of each kind are served; without a kind, the wine is asked for."""
    if not words:
        which = context.wording("say", "serve-which")
        return replace(compose(context, which, [which]), clarify=which, understood=False)
    lines = [capital(_kind_line(context, word)) for word in words]
    return compose(context, lines[0], [*lines, context.wording("line", "serve-style")])


def _kind_line(context: Context, kind: str) -> str:
    wines = [context.knowledge.wines[style] for style in context.knowledge.styles_of(kind)]
    common = [w for w in wines if w.availability >= COMMONEST and w.serve] or [w for w in wines if w.serve]
    degrees = sorted(w.serve.typical for w in common if w.serve)
    told = {"kind": context.knowledge.label(kind), "degrees": span(degrees[0], degrees[-1])}
    return context.wording("say", "serve-kind", **told)


def _lines(context: Context, wine: Wine) -> list[str]:
    air = wine.air.typical if wine.air else 0.0
    lines = [_served(context, wine)]
    lines.append(context.wording("line", "air" if air else "no-air", minutes=_range(wine.air)))
    keeping = context.knowledge.keeps_open(wine.id)
    return [*lines, context.wording("line", "keeps", days=_range(keeping))] if keeping else lines


def _served(context: Context, wine: Wine) -> str:
    glass = context.wording("glass", wine.glass or "white-small")
    return context.wording("say", "serve", wine=wine.label, degrees=_range(wine.serve), glass=glass)


def _range(amount: Amount | None) -> str:
    return span(amount.low, amount.high) if amount else ""


def _figures(wine: Wine, keeping: Amount | None) -> dict[str, dict[str, object]]:
    """Degrees, minutes of air and days, as the record has them."""
    found = {"celsius": (wine.serve, "°C"), "minutes": (wine.air, "min"), "days": (keeping, "day")}
    return {
        name: {"value": amount.typical, "low": amount.low, "high": amount.high, "unit": unit}
        for name, (amount, unit) in found.items()
        if amount is not None
    }
