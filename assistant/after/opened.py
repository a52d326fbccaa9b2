"""`my fizz is 3 days open`, `half a cab how long`: whether an open bottle is still good, and until when.

Days are those of the knowledge (`gw:keepsOpen`); the emptier the bottle, the nearer to the shortest.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from assistant.after.phrases import phrases, said
from assistant.after.telling import days_in_words, told
from assistant.after.times import days_open
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed, span
from assistant.evening.facts import fact
from assistant.knowledge.concepts import Amount
from assistant.table.table_set import wines_called

if TYPE_CHECKING:
    from assistant.session import Session

FULL, LOW = "full", "low"
KINDS = ("kind/sparkling-wine", "kind/white-wine", "kind/red-wine")
SPARKLING = "kind/sparkling-wine"


def opened(context: Context, session: Session) -> Answer | None:
    """The verdict on the bottle named, or what holds for any where none is; None for a drink without wine."""
    wine = next(iter(wines_meant(context)), None)
    days = days_open(context.frame.text.typed, datetime.now().date())
    if wine is None:
        return told(context, _of_any(context, days)) if days is not None else _of_kinds(context)
    keeping = context.knowledge.keeps_open(wine)
    if keeping is None:
        return None
    name = capital(_name(context, wine))
    lines = [_spoken(name, keeping, fill_said(context.frame.text.stems), days)]
    lines.append(said("open", "range", low=f"{keeping.low:g}", high=f"{keeping.high:g}"))
    fizz = SPARKLING in context.engine.glasses[wine].kinds
    cook = fact("after", "open", "cook_days")
    lines += [said("open", "fizz" if fizz else "cold")]
    lines += [said("open", "cook", days=span(cook.low, cook.high)), said("open", "taste")]
    until = lasts(keeping, fill_said(context.frame.text.stems))
    days_kept = {"value": until, "low": keeping.low, "high": keeping.high, "unit": "day"}
    return replace(told(context, lines), figures={"days": days_kept})


def wines_meant(context: Context) -> list[str]:
    """The styles of the wines named, `the white` among them; on the table first."""
    known = context.knowledge
    named = [*context.frame.wines, *(p.wanted for p in context.frame.preferences if p.property == "kind")]
    styles = [style for name in named if name for style in _of_name(name, context)]
    return list(dict.fromkeys(style for style in styles if style in known.wines))


def _of_name(name: str, context: Context) -> list[str]:
    known = context.knowledge
    tonight = wines_called(name, context.tonight.wines, known)
    return tonight or ([known.style(name)] if known.styles_of(name) else [])


def _name(context: Context, wine: str) -> str:
    """As it was called, where that was a kind of wine."""
    kinds = [p.wanted for p in context.frame.preferences if p.property == "kind" and p.wanted]
    kind = next((k for k in kinds if k in context.engine.glasses[wine].kinds), None)
    at_table = wine in context.tonight.wines
    return context.knowledge.label(kind if kind and not at_table else wine)


def fill_said(stems: tuple[str, ...]) -> str | None:
    """How full the bottle is said to be."""
    return next((name for name, lines in phrases().fill.items() if lines.stand_in(stems)), None)


def lasts(keeping: Amount, fill: str | None) -> float:
    """Days from opening that a bottle this full keeps, in the range of its wine; the usual where not said."""
    return {FULL: keeping.high, LOW: keeping.low}.get(fill or "", keeping.typical)


def _spoken(name: str, keeping: Amount, fill: str | None, days: float | None) -> str:
    until = lasts(keeping, fill)
    if days is None:
        if fill is None:
            return said("open", "keeps-plain", wine=name, low=f"{keeping.low:g}", high=f"{keeping.high:g}")
        return said("open", "keeps", wine=name, fill=said("open", fill), days=f"{until:g}")
    kind = "fine" if days < until else "edge" if days <= keeping.high else "past"
    if days > keeping.high + fact("after", "open", "cook_days").high:
        kind = "gone"
    ends = {"low": f"{keeping.low:g}", "high": f"{keeping.high:g}"}
    return said("open", kind, wine=name, days=days_in_words(days), until=f"{until:g}", **ends)


def _of_any(context: Context, days: float) -> list[str]:
    """What holds for so many days where no wine is named."""
    of = [context.knowledge.keeps_open(kind) for kind in KINDS]
    fizz, still = of[0], of[1]
    kind = (
        "any-early"
        if fizz and days <= fizz.low
        else "any-fine"
        if still and days <= still.high
        else "any-past"
    )
    lines = [capital(said("open", kind, days=days_in_words(days)))]
    cook = fact("after", "open", "cook_days")
    more = [said("open", "cook", days=span(cook.low, cook.high)), said("open", "taste")]
    return [*lines, said("open", "which", list=_listed(context)), *more]


def _of_kinds(context: Context) -> Answer:
    say = said("open", "which", list=_listed(context))
    return told(context, [say, said("open", "cold")], understood=False)


def _listed(context: Context) -> str:
    found = []
    for kind in KINDS:
        keeping = context.knowledge.keeps_open(kind)
        days = span(keeping.low, keeping.high) if keeping else ""
        found.append(said("open", "kind", kind=context.knowledge.label(kind), days=days))
    return listed(found)
